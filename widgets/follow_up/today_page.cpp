#include "widgets/follow_up/today_page.h"

#include "engine/follow_up/outlook.h"
#include "engine/follow_up/replan.h"
#include "engine/pond/local_time.h"
#include "engine/wording/sentence_today.h"
#include "widgets/controls/sentence_sheet.h"
#include "widgets/document/document.h"
#include "widgets/document/to_qstring.h"
#include "widgets/document/wording.h"
#include "widgets/follow_up/dawn_form.h"
#include "widgets/follow_up/log_entry.h"

#include <QBoxLayout>
#include <QComboBox>
#include <QLabel>
#include <QPushButton>
#include <QScrollBar>
#include <QTextBrowser>

namespace widgets {
namespace {

using engine::SentenceKey;
using engine::SentencePart;

constexpr double kLargeWord = 2.2;  // of the window's type

/// @param planned  The schedule planned anew, behind the ramp's own.
QString todayHtml(const engine::Today& today, const QString& planned) {
    const std::vector<engine::Sentence> sentences = engine::sentencesOf(today);
    return htmlOf(sentences,
                  {{SentencePart::Today,
                    TodayPage::tr("Why"),
                    true,
                    {SentenceKey::TodayReason, SentenceKey::TodayFishWater}},
                   {SentencePart::Today,
                    TodayPage::tr("Tonight"),
                    false,
                    {SentenceKey::TodayTonight, SentenceKey::TodayNoFit, SentenceKey::TodaySurfaceAir,
                     SentenceKey::FitDisagrees}},
                   {SentencePart::Today, TodayPage::tr("The next step"), false, {}},
                   {SentencePart::DaysAhead, TodayPage::tr("The ramp from today on"), true}},
                  SentenceKey::TodayVerdict) +
           planned +
           htmlOf(sentences, {{SentencePart::Assumption, TodayPage::tr("What it rests on")},
                              {SentencePart::Caution, TodayPage::tr("Cautions")}});
}

QString plannedHtml(const engine::Plan& plan) {
    using enum SentenceKey;
    const QString head =
        QStringLiteral("<h4>%1</h4>").arg(TodayPage::tr("Planned anew from today, if every morning says go"));
    return head + (plan.end == engine::PlanEnd::Completed
                       ? htmlOf(engine::sentencesOf(plan),
                                {{SentencePart::Plan, {}, false, {}, {PlanDay, PlanDayPulses, PlanDayHeld}}})
                       : QStringLiteral("<p>%1</p>").arg(toQString(plan.message).toHtmlEscaped()));
}

}  // namespace

TodayPage::TodayPage(Document& document, QWidget* parent, engine::TodayOptions options)
    : AnswerPage(document, kLargeWord, parent),
      m_options(options),
      m_form(new DawnForm(DawnForm::Extent::Short, this)),
      m_outlook(new QComboBox(this)) {
    auto* what =
        new QLabel(tr("This morning's readings. Left empty, the last ones of the log are taken."), this);
    what->setWordWrap(true);
    left().addWidget(what);
    left().addWidget(m_form);
    setFocusProxy(m_form);
    m_outlook->addItems(
        {tr("as the weather table has it"), tr("clear"), tr("half cloudy"), tr("dull"), tr("dull and calm")});
    m_outlook->setAccessibleName(tr("Outlook for today and tomorrow"));
    m_outlook->setToolTip(
        tr("Changes cloud, and wind if calm, of these two days for this decision only; the table stays."));
    m_outlook->setAccessibleDescription(m_outlook->toolTip());
    auto* label = new QLabel(tr("&Outlook for today and tomorrow"), this);
    label->setBuddy(m_outlook);
    left().addWidget(label);
    left().addWidget(m_outlook);
    QPushButton* enter = addAsking(
        tr("Enter in the &Log and Decide"),
        tr("Puts the readings into the log, where they stay, and says go, hold, back or stop (Ctrl+Enter)."));
    enter->setShortcut(QKeySequence(Qt::CTRL | Qt::Key_Return));
    connect(enter, &QPushButton::clicked, this, [this] { decide(true); });
    QPushButton* only =
        addAsking(tr("Decide &without Entering"), tr("To see what other readings would say."));
    connect(only, &QPushButton::clicked, this, [this] { decide(false); });
    m_add =
        addButton(tr("Add the &New Schedule to the Pond"),
                  tr("As a ramp beside the others, whose day 1 is today. It is run once the log says that "
                     "it was started. Can be undone."));
    connect(m_add, &QPushButton::clicked, this, &TodayPage::addRamp);
    m_add->setEnabled(false);
    left().addStretch(1);
    introduce(tr(
        "Three readings at dawn, their time and the outlook: that is all it takes. The answer is go, hold, "
        "back or stop, with its reasons, by rules that the pond file can change."));
    documentChanged();
}

void TodayPage::proposeTime() {
    if (!document().isEmpty()) {
        m_form->propose(nextDawn(document().pond(), clockOf(document().pond())));
    }
}

void TodayPage::startAnew() {
    AnswerPage::startAnew();
    m_form->startAnew();
    forgetAnswer();
    m_outlook->setCurrentIndex(0);
}

void TodayPage::documentChanged() {
    AnswerPage::documentChanged();
    if (document().isEmpty()) {
        return;
    }
    const engine::Pond& pond = document().pond();
    m_form->setPond(pond);
    proposeTime();
    m_outlook->setEnabled(pond.weather.hours.empty());
    if (!m_outlook->isEnabled()) {
        m_outlook->setCurrentIndex(0);
    }
}

void TodayPage::forgetAnswer() {
    m_today = nullptr;
    m_plan = nullptr;
    m_add->setEnabled(false);
}

void TodayPage::addRamp() {
    engine::Ramp ramp = *m_plan->ramp;
    const engine::Date day(std::chrono::floor<std::chrono::days>(m_today->at));
    ramp.name = tr("from %1").arg(toQString(engine::formatDate(day))).toStdString();
    emit rampWanted(ramp);
    say(tr(
        "The new schedule stands beside the other ramps. It is run once the log says that it was started."));
}

void TodayPage::decide(bool isEntered) {
    std::optional<Question> question = ask(*m_form, m_options, isEntered);
    if (!question) {
        return;
    }
    if (question->options.at) {
        question->pond = engine::withOutlook(std::move(question->pond),
                                             static_cast<engine::Outlook>(m_outlook->currentIndex()),
                                             *question->options.at);
    }
    forgetAnswer();
    work(
        tr("Deciding, and looking at the coming night"),
        [pond = std::move(question->pond), options = question->options](const std::stop_token& stop,
                                                                        const Job::Progress& progress) {
            return std::make_shared<const engine::Today>(
                engine::decideToday(pond, options, {stop, progress}));
        },
        [this, said = question->said,
         options = question->options](const std::shared_ptr<const engine::Today>& today) {
            show(today);
            if (!said.isEmpty()) {
                say(said);
            }
            if (m_today != nullptr) {
                planAnew(options);
            }
        });
}

void TodayPage::planAnew(const engine::TodayOptions& options) {
    goOn(
        tr("Planning the schedule anew from today"), tr("Stopped; there is no new schedule."),
        [today = m_today, options](const std::stop_token& stop, const Job::Progress& progress) {
            return std::make_shared<const engine::Plan>(engine::replanned(*today, options, {stop, progress}));
        },
        [this](const std::shared_ptr<const engine::Plan>& plan) { showPlan(plan); });
}

void TodayPage::showPlan(const std::shared_ptr<const engine::Plan>& plan) {
    m_plan = plan->end == engine::PlanEnd::Completed ? plan : nullptr;
    m_add->setEnabled(m_plan != nullptr && m_plan->ramp);
    const int at = browser().verticalScrollBar()->value();  // it may be being read
    showAnswer(verdict(), todayHtml(*m_today, plannedHtml(*plan)));
    browser().verticalScrollBar()->setValue(at);
}

void TodayPage::show(const std::shared_ptr<const engine::Today>& today) {
    if (!today->isDecided) {
        say(toQString(today->message));
        return;
    }
    m_today = today;
    showAnswer(localizedFirst(engine::sentencesOf(*today), SentenceKey::TodayVerdict), todayHtml(*today, {}));
    say({});
}

}  // namespace widgets
