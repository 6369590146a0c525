#include "widgets/forms/compare_dialog.h"

#include "widgets/controls/plain_text.h"
#include "widgets/document/pond_differences.h"
#include "widgets/document/recomputation.h"
#include "widgets/document/to_qstring.h"
#include "widgets/document/wording.h"

#include <QDialogButtonBox>
#include <QHeaderView>
#include <QLabel>
#include <QTableWidget>
#include <QVBoxLayout>

namespace widgets {

CompareDialog::CompareDialog(const engine::Pond& here, const engine::Pond& there, const QString& thereName,
                             const OutcomePtr& outcome, QWidget* parent)
    : QDialog(parent), m_outcome(outcome), m_lows(new QLabel(this)) {
    setAttribute(Qt::WA_DeleteOnClose);
    setWindowTitle(tr("Compare with %1").arg(thereName));
    resize(760, 520);
    auto* column = new QVBoxLayout(this);
    const auto found = differencesOf(here, there);
    auto* headline = new QLabel(found.empty()       ? tr("Both say the same.")
                                : found.size() == 1 ? tr("They differ in one key.")
                                                    : tr("They differ in %1 keys.").arg(found.size()),
                                this);
    QFont bold = font();
    bold.setBold(true);
    headline->setFont(bold);
    column->addWidget(headline);
    auto* table = new QTableWidget(static_cast<int>(found.size()), 3, this);
    table->setAccessibleName(tr("Differences"));
    table->setHorizontalHeaderLabels({tr("Key"), tr("Here"), thereName});
    table->setEditTriggers(QAbstractItemView::NoEditTriggers);
    table->setTabKeyNavigation(false);
    table->horizontalHeader()->setSectionResizeMode(QHeaderView::Stretch);
    table->verticalHeader()->hide();
    for (int row = 0; row < static_cast<int>(found.size()); ++row) {
        const PondDifference& one = found[static_cast<std::size_t>(row)];
        int at = 0;
        for (const std::string* text : {&one.key, &one.here, &one.there}) {
            auto* item = new QTableWidgetItem(toQString(*text));
            item->setToolTip(plainTip(item->text()));
            table->setItem(row, at++, item);
        }
    }
    column->addWidget(table, 1);
    m_lows->setWordWrap(true);
    m_lows->setTextFormat(Qt::PlainText);
    m_lows->setText(tr("The other version is being computed."));
    column->addWidget(m_lows);
    auto* buttons = new QDialogButtonBox(QDialogButtonBox::Close, this);
    connect(buttons, &QDialogButtonBox::rejected, this, &QDialog::reject);
    column->addWidget(buttons);
    connect(&m_job, &Job::failed, m_lows, &QLabel::setText);
    const std::optional<int> nights =
        outcome == nullptr ? std::nullopt : std::optional(outcome->comparison.days);
    m_job.start(
        [there, nights](const std::stop_token& stop, const Job::Progress&) {
            return std::make_shared<const Outcome>(outcomeOf(there, nights, false, nullptr, {stop, nullptr}));
        },
        [this](const OutcomePtr& other) { showLows(*other); });
}

void CompareDialog::showLows(const Outcome& there) {
    QStringList lines;
    for (std::size_t i = 0; i < there.comparison.runs.size(); ++i) {
        const engine::RampRun& other = there.comparison.runs[i];
        for (std::size_t j = 0; m_outcome != nullptr && j < m_outcome->comparison.runs.size(); ++j) {
            const engine::RampRun& own = m_outcome->comparison.runs[j];
            if (own.name == other.name && isDrawn(own) && isDrawn(other)) {
                lines << tr("%1: lowest %2 mg/L here, %3 mg/L there.")
                             .arg(rampText(own.name, j), oxygenText(own.worst().lowest),
                                  oxygenText(other.worst().lowest));
            }
        }
    }
    m_lows->setText(lines.isEmpty() ? tr("They have no ramp in common.") : lines.join(QLatin1Char('\n')));
}

}  // namespace widgets
