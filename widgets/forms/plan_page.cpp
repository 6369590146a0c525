#include "widgets/forms/plan_page.h"

#include "engine/ramps/ramp_names.h"
#include "engine/wording/sentence_advice.h"
#include "widgets/controls/number_box.h"
#include "widgets/controls/progress_line.h"
#include "widgets/controls/sentence_sheet.h"
#include "widgets/document/document.h"
#include "widgets/document/to_qstring.h"

#include <QFormLayout>
#include <QHBoxLayout>
#include <QLabel>
#include <QPushButton>
#include <QTextBrowser>
#include <QVBoxLayout>

namespace widgets {
namespace {

constexpr double kMostHarmed = 50.0;  // of a hundred; more is no wish

std::vector<SheetSection> sections() {
    using engine::SentencePart;
    using enum engine::SentenceKey;
    return {{SentencePart::Advice, {}},
            {SentencePart::Plan, {}, false, {}, {PlanDay, PlanDayPulses, PlanDayHeld}},
            {SentencePart::DoNothing, PlanPage::tr("Left alone")},
            {SentencePart::EndStates,
             PlanPage::tr("What the pond can run for good"),
             false,
             {},
             {EndStateRow, EndStateOfNothing}},
            {SentencePart::Calendar,
             PlanPage::tr("The next twelve months"),
             false,
             {},
             {CalendarMay, CalendarNot, CalendarIce}},
            {SentencePart::Holds, PlanPage::tr("Days to hold"), false, {}, {HoldOne}},
            {SentencePart::Sensitivity,
             PlanPage::tr("Faster and slower"),
             false,
             {},
             {SensitivityPoint, SensitivityPointNoEnd, SensitivitySearched}},
            {SentencePart::Assumption, PlanPage::tr("Assumptions")},
            {SentencePart::Grounds, PlanPage::tr("What this stands on, worst first"), false, {}, {Ground}},
            {SentencePart::Caution, PlanPage::tr("Cautions")}};
}

}  // namespace

QString daysText(int days) {
    return days == 1 ? PlanPage::tr("Start: a ramp of one day")
                     : PlanPage::tr("Start: a ramp of %1 days").arg(days);
}

QString verdictText(const PlanAnswer& found) {
    using engine::AdviceKind;
    const engine::Advice& advice = found.answer.advice;
    switch (advice.kind.value_or(AdviceKind::WaitUntil)) {
        case AdviceKind::Start:
            return found.plan.verdict == engine::PlanVerdict::AtOnce
                       ? PlanPage::tr("Start at once")
                       : daysText(advice.daysToSustained.value_or(found.answer.comparison.days) - 1);
        case AdviceKind::StartWithSurfaceAir:
            return PlanPage::tr("Start with surface air");
        case AdviceKind::NoRampNeeded:
            return PlanPage::tr("No ramp is needed");
        case AdviceKind::NoGain:
            return PlanPage::tr("Do not start: no gain");
        case AdviceKind::WaitUntil:
            break;
    }
    return PlanPage::tr("Do not start now: wait");
}

QString soFarText(const engine::PlanSoFar& found) {
    QStringList minutes;
    for (const engine::DayAction& day : found.days) {
        minutes << QString::number(day.minutes);
    }
    const QString days =
        PlanPage::tr("Minutes of air day by day: %1.").arg(minutes.join(QStringLiteral(", ")));
    return found.harm ? PlanPage::tr(
                            "A ramp was found: %1 Of the %2 ponds of the search, %3 go below the lethal "
                            "line. It is now tried on other ponds; Stop keeps it as it is.")
                            .arg(days)
                            .arg(found.harm->members)
                            .arg(found.harm->count)
                      : PlanPage::tr("A first ramp: %1 It was not tried on other ponds yet.").arg(days);
}

QString planHtml(const PlanAnswer& found) {
    return htmlOf(engine::sentencesOf(found.plan, found.answer.advice), sections());
}

const engine::Ramp* PlanPage::ramp() const {
    if (m_soFar && m_soFar->harm) {
        return &m_soFar->ramp;
    }
    if (m_plan == nullptr || m_plan->answer.advice.run <= m_asked.ramps.size()) {
        return nullptr;
    }
    return &m_plan->answer.comparison.model.pond.ramps[m_plan->answer.advice.run - 1];
}

PlanPage::PlanPage(Document& document, QWidget* parent, engine::Resolution resolution)
    : QWidget(parent),
      m_document(document),
      m_resolution(resolution),
      m_line(new NumberBox({0.0, 20.0, "mg/L", true}, 0.5, NumberBox::Empty::Allowed, this)),
      m_harmed(new NumberBox({0.5, kMostHarmed, ""}, 1.0, NumberBox::Empty::Refused, this)),
      m_members(new NumberBox({1.0, 10000.0, "", false, true}, 100.0, NumberBox::Empty::Refused, this)),
      m_verdict(new QLabel(this)),
      m_state(new QLabel(this)),
      m_text(sentenceBrowser(tr("What was found"), this)),
      m_progress(new ProgressLine(this)),
      m_find(new QPushButton(tr("Fi&nd"), this)),
      m_add(new QPushButton(tr("Add &to the Pond"), this)) {
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(0, 6, 8, 0);
    column->setSpacing(10);
    column->addWidget(wishes());
    QFont large = font();
    large.setPointSizeF(large.pointSizeF() * 1.4);
    large.setBold(true);
    m_verdict->setFont(large);
    m_verdict->setTextFormat(Qt::PlainText);
    m_verdict->setAccessibleName(tr("The answer"));
    m_verdict->hide();
    m_state->setWordWrap(true);
    m_state->setTextFormat(Qt::PlainText);
    m_state->setAccessibleName(tr("State of the search"));
    column->addWidget(m_verdict);
    column->addWidget(m_state);
    column->addWidget(m_text, 1);
    column->addWidget(m_progress);
    column->addWidget(buttons());
    m_state->setText(
        tr("Looks for the fewest days to a schedule that the pond can run for good, on a few hundred ponds "
           "like this one, and reports it on others. It may also answer not to start."));
    connect(&m_job, &Job::progressed, m_progress, &ProgressLine::set);
    connect(&m_job, &Job::failed, m_state, &QLabel::setText);
    connect(&m_job, &Job::finished, m_progress, &ProgressLine::finish);
    connect(&m_job, &Job::finished, this, &PlanPage::enable);
    connect(m_progress, &ProgressLine::stopped, this, [this] {
        m_job.cancel();
        m_state->setText(tr("Stopping."));
    });
    connect(&m_document, &Document::changed, this, &PlanPage::documentChanged);
    enable();
}

QWidget* PlanPage::wishes() {
    auto* part = new QWidget(this);
    auto* form = new QFormLayout(part);
    form->setContentsMargins(0, 0, 0, 0);
    m_line->setPlaceholder(tr("the pond's"));
    m_line->setToolTip(tr("The stress line to keep. Empty: the pond's own, which follows its fish."));
    m_harmed->setValue(5.0);
    m_harmed->setToolTip(
        tr("Ponds harmed are those whose fish water goes below the line, or lower than it would without "
           "the aerator, because of the start. Draws cannot show that it never happens."));
    m_members->setValue(engine::PlanOptions{}.members);
    m_members->setToolTip(
        tr("Ponds like this one that the search has not seen, on which the answer is reported. Fewer "
           "are quicker."));
    const auto add = [form](const QString& label, NumberBox* box) {
        box->setAccessibleName(QString(label).remove(QLatin1Char('&')));
        box->setAccessibleDescription(box->toolTip());
        box->setMaximumWidth(180);
        form->addRow(label, box);
    };
    add(tr("Stress &line, mg/L"), m_line);
    add(tr("At &most harmed, of 100 ponds"), m_harmed);
    add(tr("Report on so many &ponds"), m_members);
    return part;
}

QWidget* PlanPage::buttons() {
    auto* part = new QWidget(this);
    auto* row = new QHBoxLayout(part);
    row->setContentsMargins(0, 0, 0, 0);
    m_add->setToolTip(
        tr("Adds the found ramp to the pond, where it stands beside the others. Can be undone."));
    row->addStretch(1);
    row->addWidget(m_find);
    row->addWidget(m_add);
    connect(m_find, &QPushButton::clicked, this, &PlanPage::find);
    connect(m_add, &QPushButton::clicked, this, [this] { emit rampWanted(*ramp()); });
    return part;
}

engine::PlanOptions PlanPage::options() const {
    engine::PlanOptions options;
    options.resolution = m_resolution;
    options.line = m_line->value();
    options.chance = m_harmed->value().value_or(5.0) / 100.0;
    options.members = static_cast<int>(m_members->value().value_or(options.members));
    return options;
}

void PlanPage::find() {
    if (m_document.isEmpty() || !m_line->entry().commit() || !m_harmed->entry().commit() ||
        !m_members->entry().commit()) {
        return;
    }
    engine::PlanOptions options = this->options();
    if (const auto faults = engine::planFaults(m_document.pond(), options); !faults.empty()) {
        QStringList sentences;
        for (const std::string& fault : faults) {
            sentences << toQString(fault);
        }
        m_state->setText(sentences.join(QLatin1Char(' ')));
        return;
    }
    m_plan = nullptr;
    m_soFar.reset();
    m_asked = m_document.pond();
    m_verdict->hide();
    m_text->clear();
    m_state->show();
    m_state->setText(tr("Searching."));
    m_progress->start(tr("Finding a ramp"));
    // Called on the worker's thread, while this dialog waits for the work before it goes.
    options.soFar = [this, generation = ++m_search](const engine::PlanSoFar& found) {
        QMetaObject::invokeMethod(
            this,
            [this, found, generation] {
                if (generation == m_search && m_job.isRunning()) {
                    m_soFar = found;
                    m_soFar->ramp.name = engine::freeRampName(m_asked, found.ramp.name);
                    m_state->setText(soFarText(found));
                }
            },
            Qt::QueuedConnection);
    };
    m_job.start(
        [pond = m_document.pond(), options](const std::stop_token& stop, const Job::Progress& progress) {
            PlanAnswer found{engine::makePlan(pond, options, {stop, progress}), {}};
            if (found.plan.end == engine::PlanEnd::Completed) {
                found.answer = engine::answered(found.plan, options.threads, {stop, {}});
            }
            return std::make_shared<const PlanAnswer>(std::move(found));
        },
        [this](std::shared_ptr<const PlanAnswer> found) { take(std::move(found)); });
    enable();
}

void PlanPage::take(std::shared_ptr<const PlanAnswer> found) {
    if (found->plan.end != engine::PlanEnd::Completed) {
        m_state->setText(
            m_soFar && m_soFar->harm
                ? tr("Stopped. %1 of the %2 ponds of the search go below the lethal line with the "
                     "ramp that was found; it was not tried on others, so there is no answer. It can "
                     "be added to the pond and compared.")
                      .arg(m_soFar->harm->count)
                      .arg(m_soFar->harm->members)
                : toQString(found->plan.message));
        return;
    }
    m_soFar.reset();
    m_plan = std::move(found);
    m_state->hide();
    m_verdict->setText(verdictText(*m_plan));
    m_verdict->show();
    m_text->setHtml(planHtml(*m_plan));
}

/// A found ramp stays when the pond is edited, but never goes into another pond.
void PlanPage::documentChanged() {
    const engine::Pond& pond = m_document.pond();
    if (m_document.isEmpty() || pond.title != m_asked.title || pond.basin != m_asked.basin) {
        m_job.cancel();
        m_plan = nullptr;
        m_soFar.reset();
        m_verdict->hide();
        m_text->clear();
        m_state->show();
        m_state->setText(tr("Nothing was searched for this pond yet."));
    } else if ((m_plan != nullptr || m_job.isRunning()) && pond != m_asked) {
        m_state->show();
        m_state->setText(tr("Of the pond before your last edit."));
    }
    enable();
}

void PlanPage::enable() {
    m_find->setEnabled(!m_job.isRunning() && !m_document.isEmpty());
    m_add->setEnabled(!m_job.isRunning() && ramp() != nullptr);
}

QString PlanPage::verdict() const {
    return m_verdict->text();
}

QString PlanPage::text() const {
    return m_text->toPlainText();
}

}  // namespace widgets
