#include "widgets/today_page.h"

#include "widgets/dawn_form.h"
#include "widgets/document.h"
#include "widgets/log_entry.h"
#include "widgets/sentence_sheet.h"
#include "widgets/shown.h"
#include "widgets/wording.h"

#include <QBoxLayout>
#include <QComboBox>
#include <QLabel>
#include <QPushButton>

#include <algorithm>

namespace widgets {
namespace {

using engine::SentenceKey;
using engine::SentencePart;

constexpr double kLargeWord = 2.2;  // of the window's type

/// The row of a date, put in beside its nearest row if there is none.
engine::WeatherDay& rowOf(std::vector<engine::WeatherDay>& days, engine::Date date) {
    auto at = std::find_if(days.begin(), days.end(),
                           [date](const engine::WeatherDay& day) { return day.date >= date; });
    if (at == days.end() || at->date != date) {
        engine::WeatherDay day = at == days.end() ? days.back() : *at;
        day.date = date;
        at = days.insert(at, day);
    }
    while (at + 1 != days.end() && (at + 1)->date == date) {
        ++at;  // rows of one date: the last is the latest known
    }
    return *at;
}

}  // namespace

engine::Pond withOutlook(engine::Pond pond, Outlook outlook, engine::LocalTime at) {
    if (outlook == Outlook::AsTheTable || pond.weather.days.empty()) {
        return pond;
    }
    constexpr double kCalm = 1.0;  // [m/s]; under the 1.5 at which the hold rules call it calm
    const double cloud = outlook == Outlook::Clear ? 10.0 : outlook == Outlook::HalfCloudy ? 50.0 : 95.0;
    const auto today = std::chrono::floor<std::chrono::days>(at);
    for (const auto day : {today, today + std::chrono::days(1)}) {
        engine::WeatherDay& row = rowOf(pond.weather.days, engine::Date(day));
        row.cloud_percent = engine::Quantity(cloud);
        if (outlook == Outlook::DullAndCalm) {
            row.wind = engine::Quantity(kCalm);
        }
        row.forecast = true;
        row.knownAt.reset();
    }
    return pond;
}

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
    QPushButton* enter = addButton(
        tr("Enter in the &Log and Decide"),
        tr("Puts the readings into the log, where they stay, and says go, hold, back or stop (Ctrl+Enter)."));
    enter->setShortcut(QKeySequence(Qt::CTRL | Qt::Key_Return));
    connect(enter, &QPushButton::clicked, this, [this] { decide(true); });
    QPushButton* only =
        addButton(tr("Decide &without Entering"), tr("To see what other readings would say."));
    connect(only, &QPushButton::clicked, this, [this] { decide(false); });
    left().addStretch(1);
    say(tr(
        "Three readings at dawn, their time and the outlook: that is all it takes. The answer is go, hold, "
        "back or stop, with its reasons, by rules that the pond file can change."));
    documentChanged();
}

void TodayPage::documentChanged() {
    AnswerPage::documentChanged();
    if (document().isEmpty()) {
        return;
    }
    const engine::Pond& pond = document().pond();
    m_form->setPond(pond);
    m_form->setTime(nextDawn(pond));
    m_outlook->setEnabled(pond.weather.hours.empty());
    if (!m_outlook->isEnabled()) {
        m_outlook->setCurrentIndex(0);
    }
}

void TodayPage::decide(bool isEntered) {
    std::optional<Question> question = ask(*m_form, m_options, isEntered);
    if (!question) {
        return;
    }
    if (question->options.at) {
        question->pond = withOutlook(std::move(question->pond),
                                     static_cast<Outlook>(m_outlook->currentIndex()), *question->options.at);
    }
    m_today = nullptr;
    work(
        tr("Deciding, and looking at the coming night"),
        [pond = std::move(question->pond), options = question->options](const std::stop_token& stop,
                                                                        const Job::Progress& progress) {
            return std::make_shared<const engine::Today>(
                engine::decideToday(pond, options, {stop, progress}));
        },
        [this, said = question->said](const std::shared_ptr<const engine::Today>& today) {
            show(today);
            if (!said.isEmpty()) {
                say(said);
            }
        });
}

void TodayPage::show(const std::shared_ptr<const engine::Today>& today) {
    if (!today->isDecided) {
        say(shown(today->message));
        return;
    }
    m_today = today;
    const std::vector<engine::Sentence> sentences = engine::sentencesOf(*today);
    // The schedule has a part of its own, so that a new one can take the place of the ramp's own.
    showAnswer(
        wordedFirst(sentences, SentenceKey::TodayVerdict),
        htmlOf(
            sentences,
            {{SentencePart::Today, tr("Why"), true, {SentenceKey::TodayReason, SentenceKey::TodayFishWater}},
             {SentencePart::Today,
              tr("Tonight"),
              false,
              {SentenceKey::TodayTonight, SentenceKey::TodayNoFit, SentenceKey::TodaySurfaceAir,
               SentenceKey::FitDisagrees}},
             {SentencePart::Today, tr("The next step"), false, {}},
             {SentencePart::DaysAhead, tr("The schedule from today on"), true},
             {SentencePart::Assumption, tr("What it rests on")},
             {SentencePart::Caution, tr("Cautions")}},
            SentenceKey::TodayVerdict));
    say({});
}

}  // namespace widgets
