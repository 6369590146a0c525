#include "widgets/forms/ramp_facts.h"

#include "engine/advice/frozen_run.h"
#include "engine/pond/local_time.h"
#include "engine/run/air_days.h"
#include "engine/run/shares.h"
#include "engine/wording/sentence_advice.h"
#include "widgets/controls/sentence_sheet.h"
#include "widgets/document/pond_units.h"
#include "widgets/document/to_qstring.h"
#include "widgets/document/wording.h"

#include <QBoxLayout>
#include <QEvent>
#include <QLabel>

#include <cmath>

namespace widgets {
namespace {

QString tr(const char* text) {
    return QCoreApplication::translate("RampFacts", text);
}

QString dayText(const Outcome& outcome, int day) {
    return tr("day %1 of %2").arg(day).arg(outcome.comparison.days);
}

/// Minutes and depth of a day, as it ran.
QString airOf(const Outcome& outcome, const engine::RampRun& run, int day) {
    double depth = 0.0;
    for (const engine::RunBlock& block : run.schedule) {
        depth = block.day == day ? std::max(depth, block.depth) : depth;
    }
    const double minutes = run.days[static_cast<std::size_t>(day - 1)].runMinutes;
    return tr("%1 min at %2")
        .arg(std::lround(minutes))
        .arg(depthText(depth, unitsOf(outcome.comparison.model.pond)));
}

}  // namespace

std::vector<std::pair<QString, QString>> rampFacts(const Outcome& outcome, std::size_t ramp) {
    const engine::Comparison& comparison = outcome.comparison;
    std::vector<std::pair<QString, QString>> facts;
    if (ramp == 0 || ramp >= comparison.runs.size() || !isDrawn(comparison.runs[ramp])) {
        return facts;
    }
    const engine::RampRun& run = comparison.runs[ramp];
    if (const auto first = engine::firstAirDay(run)) {
        facts.emplace_back(tr("First air, day %1").arg(*first), airOf(outcome, run, *first));
        if (comparison.model.bottom.exists()) {
            const auto& row = run.days[static_cast<std::size_t>(*first - 1)];
            facts.emplace_back(tr("Lifts of the bottom water"),
                               tr("%1 %").arg(std::lround(engine::doseOf(comparison.model, row))));
        }
    }
    const auto steady = engine::firstSustainedDay(run);
    facts.emplace_back(tr("Steady, the same every day, from"),
                       steady ? dayText(outcome, *steady) : tr("not within %1 days").arg(comparison.days));
    facts.emplace_back(tr("Day and night from"), run.daysToContinuous
                                                     ? dayText(outcome, *run.daysToContinuous)
                                                     : tr("not within %1 days").arg(comparison.days));
    if (run.surfaceAir.transfer > 0.0) {
        facts.emplace_back(
            tr("Surface air"),
            tr("%1 to %2").arg(clockText(run.surfaceAir.from), clockText(run.surfaceAir.until)));
    }
    if (run.endState) {
        facts.emplace_back(tr("Dawn low 30 days later"), tr("%1\u00a0mg/L").arg(oxygenText(*run.endState)));
    }
    return facts;
}

std::vector<QString> nextSteps(const Outcome& outcome) {
    using enum engine::SentenceKey;
    std::vector<QString> steps;
    if (outcome.answer == nullptr) {
        return steps;
    }
    const auto sentences = engine::sentencesOf(*outcome.answer, outcome.comparison.model);
    if (outcome.answer->mayStart()) {
        steps.push_back(tr("Start on %1.").arg(toQString(engine::formatDate(outcome.answer->firstDay))));
    } else if (outcome.answer->wait) {
        steps.push_back(
            tr("Look again on %1.").arg(toQString(engine::formatDate(outcome.answer->wait->dates.from))));
    }
    constexpr std::size_t kMost = 4;  // more would not be read
    for (const engine::SentenceKey key : {AdviceHolds, AdviceNoHolds, ProvisionalDawns, AdviceReadingBelow,
                                          AdviceReadingAbove, AdviceReadingAny, ProvisionalProfile}) {
        const QString text = localizedFirst(sentences, key);
        if (!text.isEmpty() && steps.size() < kMost) {
            steps.push_back(unbroken(text));
        }
    }
    return steps;
}

RampFacts::RampFacts(QWidget* parent)
    : QWidget(parent),
      m_name(new QLabel(this)),
      m_facts(new QLabel(this)),
      m_next(new QLabel(tr("Next"), this)),
      m_steps(new QLabel(this)) {
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(4, 6, 4, 2);
    column->setSpacing(3);
    for (QLabel* label : {m_name, m_facts, m_next, m_steps}) {
        label->setWordWrap(true);
        label->setTextInteractionFlags(Qt::TextSelectableByMouse);
        column->addWidget(label);
    }
    m_name->setTextFormat(Qt::PlainText);
    m_facts->setTextFormat(Qt::RichText);
    m_steps->setTextFormat(Qt::RichText);
    m_facts->setAccessibleName(tr("What the ramp does"));
    m_steps->setAccessibleName(tr("What comes next"));
    applyStyle();
    m_next->hide();
}

void RampFacts::applyStyle() {
    QFont strong = font();
    strong.setBold(true);
    m_name->setFont(strong);
    m_next->setFont(strong);
}

void RampFacts::changeEvent(QEvent* event) {
    QWidget::changeEvent(event);
    if (event->type() == QEvent::FontChange) {
        applyStyle();
    }
}

void RampFacts::show(const OutcomePtr& outcome, std::size_t ramp) {
    const auto& runs = outcome->comparison.runs;
    const QString name = ramp < runs.size() ? rampText(runs[ramp].name, ramp) : QString();
    m_name->setText(ramp > 0 && ramp == engine::plannedRamp(outcome->comparison)
                        ? tr("%1, for the papers").arg(name)
                        : name);
    QString rows;
    for (const auto& [label, value] : rampFacts(*outcome, ramp)) {
        rows += QStringLiteral("<tr><td>%1</td><td align=right>&nbsp;%2</td></tr>")
                    .arg(label.toHtmlEscaped(), value.toHtmlEscaped());
    }
    m_facts->setText(QStringLiteral("<table width=100%>%1</table>").arg(rows));
    m_facts->setVisible(!rows.isEmpty());
    QString list;
    for (const QString& step : nextSteps(*outcome)) {
        list +=
            QStringLiteral("<div style=\"margin-top:3px\">\u25cb&nbsp;%1</div>").arg(step.toHtmlEscaped());
    }
    m_steps->setText(list);
    m_next->setVisible(!list.isEmpty());
    m_steps->setVisible(!list.isEmpty());
}

}  // namespace widgets
