#include "widgets/forms/weather_file.h"

#include "engine/base/text_file.h"
#include "engine/pond/weather_csv.h"
#include "widgets/controls/plain_text.h"
#include "widgets/document/to_qstring.h"
#include "widgets/forms/forecast_dialog.h"

#include <QFileDialog>
#include <QHBoxLayout>
#include <QLabel>
#include <QPushButton>

namespace widgets {

QString takeWeatherFile(Document& document, const std::filesystem::path& path, engine::HourStamp stamp) {
    const engine::FileText text = engine::readWholeFile(path, engine::kCsvFileLimit_bytes);
    if (!text.text) {
        return toQString(text.fault);
    }
    if (const auto fault = engine::findTextFault(*text.text)) {
        return toQString(fault->sentence);
    }
    engine::Diagnostics said;
    const auto hours = engine::readWeatherCsv(*text.text, path.string(), stamp, said);
    for (const engine::Diagnostic& one : said) {
        if (one.severity == engine::Severity::Error) {
            return toQString(engine::format(one));
        }
    }
    std::error_code none;
    std::string name = std::filesystem::absolute(path, none).string();
    if (!document.path().empty()) {  // pond files name it from where they stand
        const auto near =
            std::filesystem::proximate(name, std::filesystem::absolute(document.path()).parent_path(), none);
        name = none ? name : near.string();
    }
    QStringList sentences;
    for (const engine::Diagnostic& one :
         document.edit(WeatherFileRow::tr("Take an hourly weather file"), [&](engine::Pond& pond) {
             pond.weather.days.clear();
             pond.weather.file = name;
             pond.weather.stamp = stamp;
             pond.weather.hours = hours;
         })) {
        sentences << toQString(one.sentence);
    }
    return sentences.join(u' ');
}

WeatherFileRow::WeatherFileRow(Document& document, QWidget* parent)
    : QWidget(parent), m_document(document), m_file(new QLabel(this)) {
    auto* row = new QHBoxLayout(this);
    row->setContentsMargins(10, 0, 10, 0);
    m_file->setWordWrap(true);
    m_file->setTextFormat(Qt::PlainText);
    auto* choose = new QPushButton(tr("Hourly File…"), this);
    choose->setToolTip(
        tr("A CSV file with at, air_c, humidity_percent or dew_point_c, wind_m_per_s, and one of "
           "shortwave_w_per_m2, par_umol_per_m2_s, cloud_percent."));
    choose->setAccessibleDescription(choose->toolTip());
    connect(choose, &QPushButton::clicked, this, &WeatherFileRow::choose);
    auto* paste = new QPushButton(tr("Paste a Forecast…"), this);
    paste->setToolTip(
        tr("Days as they stand on a web page or in a spreadsheet: high, low, wind, sky in words."));
    paste->setAccessibleDescription(paste->toolTip());
    connect(paste, &QPushButton::clicked, this, [this] { ForecastDialog(m_document, this).exec(); });
    row->addWidget(m_file, 1);
    row->addWidget(paste);
    row->addWidget(choose);
    connect(&m_document, &Document::changed, this, &WeatherFileRow::showFile);
    showFile();
}

void WeatherFileRow::showFile() {
    const engine::Weather& weather = m_document.pond().weather;
    m_file->setText(weather.file.empty()
                        ? tr("The weather is the table of days below.")
                        : tr("The weather is %1: %2 hours. Typing in the table below puts it away.")
                              .arg(toQString(weather.file))
                              .arg(weather.hours.size()));
}

void WeatherFileRow::choose() {
    const QString name = QFileDialog::getOpenFileName(this, tr("Hourly weather file"), {},
                                                      tr("Tables (*.csv);;All files (*)"));
    if (name.isEmpty()) {
        return;
    }
    const auto end =
        askPlainly(this, tr("Hourly weather file"), tr("Is each row stamped with the end of its hour?"),
                   QMessageBox::Yes | QMessageBox::No);
    const QString fault =
        takeWeatherFile(m_document, name.toStdString(),
                        end == QMessageBox::Yes ? engine::HourStamp::End : engine::HourStamp::Start);
    if (!fault.isEmpty()) {
        m_file->setText(fault);
    }
}

}  // namespace widgets
