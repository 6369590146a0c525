#include "widgets/forms/schedule_page.h"

#include "engine/ramps/schedule.h"
#include "engine/run/shares.h"
#include "widgets/controls/sheet_editor.h"
#include "widgets/document/key_rules.h"
#include "widgets/document/selection.h"
#include "widgets/forms/ramp_actions.h"
#include "widgets/forms/schedule_grid.h"

#include <QBoxLayout>
#include <QLabel>
#include <QSplitter>

#include <algorithm>
#include <cmath>

namespace widgets {
namespace {

SheetSpec minutesSheet(const Selection& selection, const OutcomePtr& outcome) {
    SheetSpec spec;
    spec.name = SchedulePage::tr("Minutes by day");
    spec.step = SchedulePage::tr("Change the minutes of a ramp");
    spec.columns = {
        {SchedulePage::tr("Minutes"), SheetColumn::Kind::Number, rampRule("minutes"), true, false,
         SchedulePage::tr(
             "Of air on that day, 0 to 1440; the last row is kept for all days after it. Typing turns a rule "
             "into a table.")},
        {SchedulePage::tr("Dose, %"),
         SheetColumn::Kind::Number,
         {0.0, 1e6, "percent"},
         false,
         true,
         SchedulePage::tr("What the minutes came to: the share of the bottom water that the day lifted.")}};
    const auto runOf = [&outcome, &selection]() -> const engine::RampRun* {
        if (outcome == nullptr || selection.ramp() >= outcome->comparison.runs.size() ||
            !isDrawn(outcome->comparison.runs[selection.ramp()])) {
            return nullptr;
        }
        return &outcome->comparison.runs[selection.ramp()];
    };
    spec.read = [&selection, &outcome, runOf](const engine::Pond& pond) {
        SheetRows rows;
        const std::size_t at = selection.ramp();
        if (at == 0 || at > pond.ramps.size()) {
            return rows;
        }
        const engine::RampRun* run = runOf();
        const engine::Ramp table = asTable(pond.ramps[at - 1], run);
        const auto& minutes =
            pond.ramps[at - 1].kind == engine::RampKind::Table ? pond.ramps[at - 1].minutes : table.minutes;
        for (std::size_t day = 0; day < minutes.size(); ++day) {
            SheetCell dose;
            if (run != nullptr && day < run->days.size() && outcome->comparison.model.bottom.exists()) {
                dose.number = std::round(engine::doseOf(outcome->comparison.model, run->days[day]));
            }
            rows.push_back({{minutes[day], {}}, dose});
        }
        return rows;
    };
    spec.write = [&selection, runOf](engine::Pond& pond, const SheetRows& rows) {
        const std::size_t at = selection.ramp();
        if (at == 0 || at > pond.ramps.size() || rows.empty()) {
            return;
        }
        engine::Ramp& ramp = pond.ramps[at - 1];
        if (ramp.kind != engine::RampKind::Table) {
            ramp = asTable(ramp, runOf());
        }
        ramp.minutes.clear();
        for (const SheetRow& row : rows) {
            ramp.minutes.push_back(*row[0].number);
        }
    };
    return spec;
}

}  // namespace

SchedulePage::SchedulePage(Document& document, Selection& selection, QWidget* parent)
    : QWidget(parent),
      m_selection(selection),
      m_grid(new ScheduleGrid(document, selection, this)),
      m_table(new SheetEditor(document, minutesSheet(m_selection, m_outcome), this)) {
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(0, 0, 0, 0);
    auto* help = new QLabel(tr("Drag the end of a block to change the minutes of its day, a whole block to "
                               "change the hour of the start. What is "
                               "drawn makes the ramp a table of minutes."),
                            this);
    help->setWordWrap(true);
    column->addWidget(help);
    auto* split = new QSplitter(Qt::Horizontal, this);
    split->setChildrenCollapsible(false);
    split->addWidget(m_grid);
    split->addWidget(m_table);
    split->setStretchFactor(0, 4);
    split->setStretchFactor(1, 1);
    column->addWidget(split, 1);
    connect(&selection, &Selection::changed, this, [this] { m_table->model().reload(); });
}

void SchedulePage::setOutcome(const OutcomePtr& outcome) {
    m_outcome = outcome;
    m_grid->setOutcome(outcome);
    m_table->model().reload();
}

}  // namespace widgets
