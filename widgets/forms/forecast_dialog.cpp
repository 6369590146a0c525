#include "widgets/forms/forecast_dialog.h"

#include "engine/intake/joined_weather.h"
#include "engine/pond/local_time.h"
#include "engine/ramps/log.h"
#include "widgets/controls/line_entry.h"
#include "widgets/controls/plain_table.h"
#include "widgets/document/number_text.h"
#include "widgets/document/pond_units.h"
#include "widgets/document/to_qstring.h"

#include <QApplication>
#include <QBoxLayout>
#include <QClipboard>
#include <QDialogButtonBox>
#include <QFontDatabase>
#include <QFormLayout>
#include <QLabel>
#include <QPlainTextEdit>
#include <QPushButton>
#include <QScrollArea>
#include <QTableWidget>

#include <chrono>

namespace widgets {
namespace {

/// The day that a forecast copied now most likely begins with: the pond's first, or once it is run, the day
/// after the newest reading.
engine::Date likelyFirstDay(const engine::Pond& pond) {
    engine::Date day = pond.place.firstDay.value_or(engine::Date{});
    for (const engine::Reading& reading : engine::readingsInForce(pond)) {
        if (reading.at) {
            const auto next = std::chrono::floor<std::chrono::days>(*reading.at) + std::chrono::days(1);
            day = std::max(day, engine::Date(next));
        }
    }
    return day;
}

/// A number of the table; what the text did not give is said to be the usual one.
QTableWidgetItem* itemOf(const engine::MaybeQuantity& value, const char* unit, engine::UnitSystem system) {
    QString text = value ? roundedText(shownUnitOf(unit, system).toShown(value->value)) : QString();
    if (value && value->confidence == engine::Confidence::Guessed) {
        text = ForecastDialog::tr("%1 (filled)").arg(text);
    }
    auto* item = new QTableWidgetItem(text);
    item->setTextAlignment(Qt::AlignRight | Qt::AlignVCenter);
    return item;
}

}  // namespace

ForecastDialog::ForecastDialog(Document& document, QWidget* parent)
    : QDialog(parent),
      m_document(document),
      m_text(new QPlainTextEdit(this)),
      m_firstDay(new LineEntry(LineEntry::Kind::Date, this)),
      m_said(new QLabel(this)) {
    const engine::UnitSystem system = unitsOf(m_document.pond());
    const auto headed = [system](const QString& name, const char* unit) {
        return name.arg(shownUnit(shownUnitOf(unit, system).text));
    };
    m_days = plainTable(
        {tr("Date"), headed(tr("Coldest, %1"), "degC"), headed(tr("Warmest, %1"), "degC"), tr("Humidity, %"),
         headed(tr("Wind, %1"), "m/s"), tr("Cloud, %"), headed(tr("Rain, %1"), "mm")},
        tr("The days as they are understood"), this);
    setWindowTitle(tr("Paste a forecast"));
    setObjectName(QStringLiteral("forecast"));
    resize(760, 680);
    auto* column = new QVBoxLayout(this);
    auto* what = new QLabel(tr("Copy the days of a forecast from a web page or a spreadsheet and paste them "
                               "here: day, high, low, "
                               "wind, and the sky in words. Headings and units may be there or not."),
                            this);
    what->setWordWrap(true);
    column->addWidget(what);
    m_text->setAccessibleName(tr("Text of the forecast"));
    m_text->setAccessibleDescription(what->text());
    m_text->setPlaceholderText(tr("Sat 91/70 F, wind 8 mph, sunny\nSun 88/69 F, wind 10 mph, showers"));
    m_text->setTabChangesFocus(true);
    m_text->setFont(QFontDatabase::systemFont(QFontDatabase::FixedFont));
    column->addWidget(m_text, 3);
    auto* form = new QFormLayout;
    m_firstDay->setAccessibleName(tr("First day of the text"));
    m_firstDay->setToolTip(
        tr("For a text without dates: the day of its first line. Weekdays are counted on from here, and "
           "\u201ctomorrow\u201d is this day."));
    m_firstDay->setAccessibleDescription(m_firstDay->toolTip());
    m_firstDay->setMaximumWidth(160);
    m_firstDay->setValue(engine::formatDate(likelyFirstDay(m_document.pond())));
    form->addRow(tr("&First day of the text"), m_firstDay);
    column->addLayout(form);
    column->addWidget(m_days, 3);
    m_said->setWordWrap(true);
    m_said->setTextFormat(Qt::PlainText);
    m_said->setAccessibleName(tr("What is taken of the text, and what is not"));
    m_said->setAlignment(Qt::AlignTop);
    auto* area = new QScrollArea(this);
    area->setWidgetResizable(true);
    area->setFrameShape(QFrame::NoFrame);
    area->setWidget(m_said);
    area->setAccessibleName(m_said->accessibleName());
    column->addWidget(area, 2);
    auto* buttons = new QDialogButtonBox(QDialogButtonBox::Cancel, this);
    m_take = buttons->addButton(tr("&Take These Days"), QDialogButtonBox::AcceptRole);
    column->addWidget(buttons);
    connect(buttons, &QDialogButtonBox::accepted, this, &ForecastDialog::take);
    connect(buttons, &QDialogButtonBox::rejected, this, &QDialog::reject);
    connect(m_text, &QPlainTextEdit::textChanged, this, &ForecastDialog::readAgain);
    connect(&m_firstDay->entry(), &Entry::committed, this, &ForecastDialog::readAgain);
    m_text->setPlainText(QApplication::clipboard()->text());
    readAgain();
    if (m_read.days.empty()) {
        m_text->clear();
    }
    m_text->setFocus();
}

QString ForecastDialog::said() const {
    return m_said->text();
}

void ForecastDialog::readAgain() {
    const engine::Pond& pond = m_document.pond();
    const std::string text = m_text->toPlainText().toStdString();
    m_read = engine::readPastedWeather(text, *engine::parseDate(m_firstDay->value()), unitsOf(pond));
    QStringList lines;
    if (m_text->document()->isEmpty()) {
        lines << tr("Nothing is pasted yet.");
    } else if (!m_read.fault.empty()) {
        lines << toQString(m_read.fault);
    } else {
        for (const std::string& sentence : m_read.said) {
            lines << toQString(sentence);
        }
        lines << toQString(engine::joinWeather(pond.weather, m_read.days).said);  // may be nothing
    }
    m_said->setText(lines.join(QLatin1Char('\n')));
    m_take->setEnabled(!m_read.days.empty());
    showDays();
}

void ForecastDialog::showDays() {
    const engine::UnitSystem system = unitsOf(m_document.pond());
    m_days->setRowCount(static_cast<int>(m_read.days.size()));
    for (int row = 0; row < m_days->rowCount(); ++row) {
        const engine::WeatherDay& day = m_read.days[static_cast<std::size_t>(row)];
        m_days->setItem(row, 0, new QTableWidgetItem(toQString(engine::formatDate(day.date))));
        m_days->setItem(row, 1, itemOf(day.airMin, "degC", system));
        m_days->setItem(row, 2, itemOf(day.airMax, "degC", system));
        m_days->setItem(row, 3, itemOf(day.humidity_percent, "percent", system));
        m_days->setItem(row, 4, itemOf(day.wind, "m/s", system));
        m_days->setItem(row, 5, itemOf(day.cloud_percent, "percent", system));
        m_days->setItem(row, 6, itemOf(day.rain_mm, "mm", system));
    }
}

void ForecastDialog::take() {
    if (!m_firstDay->entry().commit() || m_read.days.empty()) {
        return;
    }
    QStringList sentences;
    for (const engine::Diagnostic& fault :
         m_document.edit(tr("Take a pasted forecast"), [this](engine::Pond& pond) {
             pond.weather.days = engine::joinWeather(pond.weather, m_read.days).days;
             pond.weather.file.clear();
             pond.weather.stamp.reset();
             pond.weather.hours.clear();
         })) {
        sentences << toQString(fault.sentence);
    }
    if (sentences.isEmpty()) {
        accept();
        return;
    }
    m_said->setText(sentences.join(QLatin1Char(' ')));
}

}  // namespace widgets
