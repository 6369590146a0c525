#include "widgets/follow_up/import_dialog.h"

#include "engine/pond/local_time.h"
#include "engine/pond/readings_remarks.h"
#include "widgets/controls/number_box.h"
#include "widgets/controls/plain_table.h"
#include "widgets/document/key_rules.h"
#include "widgets/document/number_text.h"
#include "widgets/document/pond_units.h"
#include "widgets/document/to_qstring.h"

#include <QComboBox>
#include <QDialogButtonBox>
#include <QFormLayout>
#include <QHeaderView>
#include <QLabel>
#include <QPushButton>
#include <QScrollArea>
#include <QTableWidget>
#include <QVBoxLayout>

#include <algorithm>

namespace widgets {
namespace {

constexpr std::size_t kShownRows = 6;

}  // namespace

ImportDialog::ImportDialog(Document& document, const std::string& text, const QString& source,
                           QWidget* parent)
    : QDialog(parent),
      m_document(document),
      m_import(importText(text)),
      m_columns(
          plainTable({tr("Column"), tr("First value"), tr("Is taken for")}, tr("Columns and units"), this)),
      m_depth(new NumberBox(keyRule("reading.depth_m"), 0.5, NumberBox::Empty::Allowed, this)),
      m_order(new QComboBox(this)),
      m_said(new QLabel(this)) {
    const engine::UnitSystem system = unitsOf(m_document.pond());
    const QString metres = QString::fromUtf8(shownUnitOf("m", system).text);
    m_rows = plainTable({tr("When"), tr("Depth, %1").arg(metres),
                         tr("Temp., %1").arg(shownUnit(shownUnitOf("degC", system).text)), tr("Oxygen, mg/L"),
                         tr("Secchi, %1").arg(metres)},
                        tr("The first rows as they are understood"), this);
    setWindowTitle(tr("Rows from %1").arg(source));
    resize(760, 640);
    auto* column = new QVBoxLayout(this);
    auto* what = new QLabel(tr("Look at what each column is taken for before the rows go into the log, where "
                               "they stay."),
                            this);
    what->setWordWrap(true);
    column->addWidget(what);
    column->addWidget(m_columns, 3);
    makeColumns();
    auto* form = new QFormLayout;
    m_depth->setUnits(system);
    m_depth->setAccessibleName(tr("Depth of the logger"));
    m_depth->setToolTip(tr("Where no column gives the depth."));
    m_depth->setMaximumWidth(160);
    m_order->addItems({tr("as the file shows"), tr("day first"), tr("month first")});
    m_order->setAccessibleName(tr("Dates"));
    m_order->setToolTip(tr("Which comes first where a date could be read either way."));
    m_order->setMaximumWidth(220);
    form->addRow(tr("&Depth of the logger, %1").arg(metres), m_depth);
    form->addRow(tr("D&ates"), m_order);
    column->addLayout(form);
    column->addWidget(m_rows, 3);
    m_said->setWordWrap(true);
    m_said->setTextFormat(Qt::PlainText);
    m_said->setAccessibleName(tr("What there is to say about the rows"));
    m_said->setAlignment(Qt::AlignTop);
    auto* area = new QScrollArea(this);
    area->setWidgetResizable(true);
    area->setFrameShape(QFrame::NoFrame);
    area->setWidget(m_said);
    area->setAccessibleName(m_said->accessibleName());
    column->addWidget(area, 2);
    auto* buttons = new QDialogButtonBox(QDialogButtonBox::Cancel, this);
    m_take = buttons->addButton(tr("&Take into the Log"), QDialogButtonBox::AcceptRole);
    column->addWidget(buttons);
    connect(buttons, &QDialogButtonBox::accepted, this, [this] {
        if (m_depth->entry().commit() && isGood()) {
            accept();
        }
    });
    connect(buttons, &QDialogButtonBox::rejected, this, &QDialog::reject);
    connect(&m_depth->entry(), &Entry::committed, this, &ImportDialog::readAgain);
    connect(m_order, &QComboBox::currentIndexChanged, this, &ImportDialog::readAgain);
    readAgain();
}

void ImportDialog::makeColumns() {
    m_columns->setRowCount(static_cast<int>(m_import.columns.size()));
    for (std::size_t i = 0; i < m_import.columns.size(); ++i) {
        const int row = static_cast<int>(i);
        m_columns->setItem(row, 0, new QTableWidgetItem(m_import.columns[i].heading));
        m_columns->setItem(row, 1, new QTableWidgetItem(m_import.columns[i].first));
        auto* box = new QComboBox(m_columns);
        for (const ColumnMatch& match : columnMatches()) {
            box->addItem(match.text);
        }
        box->setAccessibleName(tr("What %1 is taken for").arg(m_import.columns[i].heading));
        box->setCurrentIndex(static_cast<int>(m_import.columns[i].match));
        m_columns->setCellWidget(row, 2, box);
        connect(box, &QComboBox::currentIndexChanged, this, [this, i](int index) {
            m_import.columns[i].match = static_cast<std::size_t>(index);
            readAgain();
        });
    }
    if (!m_import.columns.empty()) {
        m_columns->verticalHeader()->setDefaultSectionSize(matchBox(0)->sizeHint().height() + 2);
    }
}

QComboBox* ImportDialog::matchBox(int column) const {
    return qobject_cast<QComboBox*>(m_columns->cellWidget(column, 2));
}

bool ImportDialog::isGood() const {
    return !engine::hasErrors(m_read.said) && !m_read.readings.empty();
}

QString ImportDialog::said() const {
    return m_said->text();
}

/// What the engine says of the text, with its place there; what is to be said in this dialog is asked for.
QString ImportDialog::remark(const engine::Diagnostic& one) const {
    using engine::LoggerColumn;
    const bool hasDepth = std::any_of(
        m_import.columns.begin(), m_import.columns.end(),
        [](const auto& column) { return columnMatches()[column.match].column == LoggerColumn::Depth; });
    if (one.key == "depth_m" && !hasDepth && !m_depth->value()) {
        return tr("No column gives the depth: enter the depth of the logger above.");
    }
    if (one.key == "date_order") {
        return tr("Line %1: this date can be read with the day or the month first; choose under Dates.")
            .arg(one.line);
    }
    const QString place = one.line == 0     ? QString()
                          : one.key.empty() ? tr("Line %1: ").arg(one.line)
                                            : tr("Line %1, %2: ").arg(one.line).arg(toQString(one.key));
    return place + toQString(one.sentence);
}

void ImportDialog::readAgain() {
    engine::ReadingsFile shape;
    if (m_depth->value()) {
        shape.depth = engine::Quantity(*m_depth->value());
    }
    if (m_order->currentIndex() > 0) {
        shape.dateOrder =
            m_order->currentIndex() == 1 ? engine::DateOrder::DayFirst : engine::DateOrder::MonthFirst;
    }
    m_read = readImport(m_import, shape, m_document.pond());
    QStringList lines;
    if (m_import.columns.empty()) {
        lines << tr("There are no rows.");
    } else if (!engine::hasErrors(m_read.said)) {
        lines << toQString(engine::readingsTaken(m_read.readings, unitsOf(m_document.pond())));
    }
    if (m_import.hasHeadings && m_import.headingsAt > 0) {
        lines
            << tr("The headings are in line %1; what stands above is not used.").arg(m_import.headingsAt + 1);
    }
    for (const engine::Diagnostic& one : m_read.said) {
        lines << remark(one);
    }
    m_said->setText(lines.join(QLatin1Char('\n')));
    m_take->setEnabled(isGood());
    showRows();
}

void ImportDialog::showRows() {
    const engine::UnitSystem system = unitsOf(m_document.pond());
    const std::size_t count =
        engine::hasErrors(m_read.said) ? 0 : std::min(m_read.readings.size(), kShownRows);
    m_rows->setRowCount(static_cast<int>(count));
    for (std::size_t i = 0; i < count; ++i) {
        const engine::Reading& reading = m_read.readings[i];
        const auto put = [&](int column, const engine::MaybeQuantity& value, const char* unit) {
            const QString text =
                value ? QLocale().toString(shownUnitOf(unit, system).toShown(value->value), 'f', 1)
                      : QString();
            auto* item = new QTableWidgetItem(text);
            item->setTextAlignment(Qt::AlignRight | Qt::AlignVCenter);
            m_rows->setItem(static_cast<int>(i), column, item);
        };
        m_rows->setItem(
            static_cast<int>(i), 0,
            new QTableWidgetItem(reading.at ? toQString(engine::formatLocalTime(*reading.at)) : QString()));
        put(1, reading.depth, "m");
        put(2, reading.temperature, "degC");
        put(3, reading.oxygen, "mg/L");
        put(4, reading.secchi, "m");
    }
}

}  // namespace widgets
