// Today, the incident and the sixty days as a user asks for them, held against the engine's own answers.

#include "engine/follow_up/outlook.h"
#include "engine/follow_up/replan.h"
#include "engine/output/review_io.h"
#include "engine/pond/pond_io.h"
#include "engine/wording/sentence_review.h"
#include "engine/wording/sentence_today.h"
#include "tests/scenario.h"
#include "tests/widgets/typing.h"
#include "widgets/document/document.h"
#include "widgets/document/wording.h"
#include "widgets/follow_up/incident_page.h"
#include "widgets/follow_up/log_entry.h"
#include "widgets/follow_up/review_page.h"
#include "widgets/follow_up/today_page.h"

#include <QComboBox>
#include <QPdfWriter>
#include <QPushButton>

namespace widgets {
namespace {

using test::fieldOf;
using test::plain;
using test::type;

constexpr int kPatience_ms = 60000;  // only a hanging test waits that long

engine::TodayOptions quick() {
    engine::TodayOptions options;
    options.members = 8;
    options.resolution = {14, 1800.0};
    options.threads = 1;
    return options;
}

engine::LocalTime at(int day, int minutes) {
    return engine::LocalTime(std::chrono::local_days(std::chrono::year(2026) / 6 / day) +
                             std::chrono::minutes(minutes));
}

class Answers : public testing::Test {
protected:
    void SetUp() override {
        engine::Pond pond = engine::test::scenario("grandfathers-pond");
        engine::Event started;
        started.at = at(14, 540);
        started.kind = "started";
        started.ramp = "doubling from 30 min";
        pond.events.push_back(started);
        test::open(document, folder, engine::writePond(pond));
    }
    /// Types the readings of one visit into a page's form.
    static void typeReadings(QWidget& page, const char* time, const std::array<const char*, 3>& temperature,
                             const std::array<const char*, 3>& oxygen) {
        type(fieldOf(page, "At"), time);
        const char* const names[3] = {"Surface", "Middle", "Bottom"};
        for (std::size_t i = 0; i < 3; ++i) {
            type(fieldOf(page, (std::string(names[i]) + ": temperature").c_str()), temperature[i]);
            type(fieldOf(page, (std::string(names[i]) + ": oxygen").c_str()), oxygen[i]);
        }
    }
    static void press(QWidget& page, const char* text) { test::button(page, text)->click(); }
    static bool wait(const AnswerPage& page) {
        return QTest::qWaitFor([&] { return !page.isRunning(); }, kPatience_ms);
    }

    /// Until there is a verdict, whether or not there is more to come.
    static bool waitForVerdict(const AnswerPage& page) {
        return QTest::qWaitFor([&] { return !page.isRunning() || page.isGoingOn(); }, kPatience_ms);
    }

    engine::test::TemporaryFolder folder;
    Document document;
};

TEST_F(Answers, ThreeInputsGiveTodaysVerdictAsTheEngineHasIt) {
    TodayPage page(document, nullptr, quick());
    test::showActive(page);
    typeReadings(page, "2026-06-15 05:40", {"27", "25", "21"}, {"3.4", "3.6", "0.1"});
    press(page, "Enter in the Log and Decide");
    ASSERT_TRUE(waitForVerdict(page));
    ASSERT_NE(page.today(), nullptr) << plain(page.state());
    ASSERT_EQ(document.pond().readings.size(), 3U);
    engine::TodayOptions options = quick();
    options.at = at(15, 340);
    const engine::Today expected = engine::decideToday(document.pond(), options);
    EXPECT_EQ(page.today()->decision.verdict, engine::DawnVerdict::Back);
    EXPECT_EQ(page.today()->decision.verdict, expected.decision.verdict);
    EXPECT_EQ(plain(page.verdict()).substr(0, 5), "BACK:");
    for (const engine::Sentence& sentence : engine::sentencesOf(expected)) {
        if (sentence.key != engine::SentenceKey::TodayVerdict) {
            EXPECT_TRUE(page.text().contains(localized(sentence).simplified())) << plain(localized(sentence));
        }
    }
    EXPECT_TRUE(engine::readPond(folder.path() / "pond.toml").pond->readings == document.pond().readings);
}

TEST_F(Answers, DecidingWithoutEnteringLeavesTheLogAlone) {
    TodayPage page(document, nullptr, quick());
    test::showActive(page);
    typeReadings(page, "2026-06-15 05:40", {"27", "25", "21"}, {"2.1", "2.6", "0.1"});
    press(page, "Decide without Entering");
    ASSERT_TRUE(waitForVerdict(page));
    EXPECT_EQ(plain(page.verdict()).substr(0, 5), "STOP:") << plain(page.state());
    EXPECT_TRUE(document.pond().readings.empty());
    document.edit(QStringLiteral("e"), [](engine::Pond& pond) { pond.title = "other"; });
    EXPECT_NE(plain(page.state()).find("before your last edit"), std::string::npos);
}

TEST_F(Answers, TheScheduleIsPlannedAnewBehindTheVerdictAndCanBeARamp) {
    document.start(engine::test::scenario("new-clay"));
    TodayPage page(document, nullptr, quick());
    test::showActive(page);
    typeReadings(page, "2026-05-27 05:40", {"21", "20", "17"}, {"7.1", "7.0", "4"});
    page.decide(false);
    ASSERT_TRUE(waitForVerdict(page));
    ASSERT_NE(page.today(), nullptr) << plain(page.state());
    const QString verdict = page.verdict();
    auto* add = test::button(page, "Add the New Schedule to the Pond");
    EXPECT_FALSE(add->isEnabled()) << "there is none yet";
    ASSERT_TRUE(wait(page));
    ASSERT_NE(page.plan(), nullptr) << plain(page.text());
    EXPECT_EQ(page.verdict(), verdict);
    const engine::Plan expected = engine::replanned(*page.today(), quick());
    EXPECT_EQ(page.plan()->days, expected.days);
    for (const engine::Sentence& sentence : engine::sentencesOf(expected)) {
        if (sentence.part == engine::SentencePart::Plan) {
            EXPECT_TRUE(page.text().contains(localized(sentence).simplified())) << plain(localized(sentence));
        }
    }
    EXPECT_LT(page.text().indexOf(QStringLiteral("Planned anew")),
              page.text().indexOf(QStringLiteral("Cautions")));
    ASSERT_TRUE(expected.ramp);
    std::optional<engine::Ramp> wanted;
    QObject::connect(&page, &TodayPage::rampWanted, &page, [&](const engine::Ramp& ramp) { wanted = ramp; });
    ASSERT_TRUE(add->isEnabled());
    add->click();
    ASSERT_TRUE(wanted);
    EXPECT_EQ(wanted->name, "from 2026-05-27");
    EXPECT_EQ(wanted->minutes, expected.ramp->minutes);
}

TEST_F(Answers, AStopOfTheNewScheduleLeavesTheVerdict) {
    TodayPage page(document, nullptr, quick());
    test::showActive(page);
    typeReadings(page, "2026-06-15 05:40", {"27", "25", "21"}, {"6.1", "6.0", "0.1"});
    page.decide(false);
    ASSERT_TRUE(waitForVerdict(page));
    ASSERT_TRUE(page.isGoingOn());
    const QString text = page.text();
    page.cancel();
    ASSERT_TRUE(wait(page));
    EXPECT_FALSE(page.verdict().isEmpty());
    EXPECT_EQ(page.text(), text);
    EXPECT_EQ(page.plan(), nullptr);
    EXPECT_NE(plain(page.state()).find("no new schedule"), std::string::npos);
}

TEST_F(Answers, WhatIsTypedStaysThroughAnEditAndGoesWithThePond) {
    TodayPage today(document, nullptr, quick());
    IncidentPage incident(document, nullptr, quick());
    for (AnswerPage* page : {static_cast<AnswerPage*>(&today), static_cast<AnswerPage*>(&incident)}) {
        test::showActive(*page);
        EXPECT_EQ(test::textOf(fieldOf(*page, "At")), "2026-06-14 05:30") << "the first day's dawn";
        type(fieldOf(*page, "At"), "2026-06-17 04:50");
        type(fieldOf(*page, "Surface: oxygen"), "3.2");
    }
    document.edit(QStringLiteral("e"), [](engine::Pond& pond) { pond.title = "other"; });
    for (const QWidget* page : {static_cast<QWidget*>(&today), static_cast<QWidget*>(&incident)}) {
        EXPECT_EQ(test::textOf(fieldOf(*page, "At")), "2026-06-17 04:50");
        EXPECT_EQ(test::textOf(fieldOf(*page, "Surface: oxygen")), "3.2");
    }
    incident.judge(false);
    engine::Pond another = document.pond();
    another.place.firstDay = std::chrono::year(2026) / 7 / 1;
    document.start(another);
    ASSERT_TRUE(wait(incident));
    for (const AnswerPage* page :
         {static_cast<const AnswerPage*>(&today), static_cast<const AnswerPage*>(&incident)}) {
        EXPECT_EQ(test::textOf(fieldOf(*page, "At")), "2026-07-01 05:30");
        EXPECT_EQ(test::textOf(fieldOf(*page, "Surface: oxygen")), "") << "it was read in another pond";
        EXPECT_EQ(plain(page->verdict()), "");
        EXPECT_EQ(plain(page->text()), "");
        EXPECT_EQ(plain(page->state()).find("Stop"), std::string::npos) << plain(page->state());
    }
    EXPECT_EQ(incident.incident(), nullptr);
}

TEST(NextVisit, IsNowInADayOfThePondAndTheNextDawnElsewhere) {
    engine::Pond pond = engine::test::scenario("grandfathers-pond");
    const auto last = std::chrono::local_days(pond.weather.days.back().date);
    EXPECT_EQ(nextVisit(pond, at(16, 317)), at(16, 317));
    EXPECT_EQ(nextVisit(pond, at(16, 317) + std::chrono::seconds(40)), at(16, 317));
    EXPECT_EQ(nextDawn(pond, at(16, 317)), at(16, 330)) << "today's, though no reading was taken before";
    for (const engine::LocalTime off : {at(1, 300), engine::LocalTime(last) + std::chrono::days(30)}) {
        EXPECT_EQ(nextVisit(pond, off), at(14, 330));
        EXPECT_EQ(nextDawn(pond, off), at(14, 330));
    }
    engine::Reading reading;
    reading.at = at(16, 340);
    pond.readings.push_back(reading);
    EXPECT_EQ(nextDawn(pond, at(16, 700)), at(17, 330)) << "today's is in the log";
    EXPECT_EQ(nextDawn(pond, at(18, 100)), at(18, 330));
    EXPECT_EQ(nextVisit(pond, at(18, 100)), at(18, 100));
}

TEST_F(Answers, TheOutlookChangesTodayAndTomorrowForTheDecisionAlone) {
    const engine::Pond before = document.pond();
    const engine::Pond dull = engine::withOutlook(before, engine::Outlook::DullAndCalm, at(15, 340));
    for (const engine::WeatherDay& day : dull.weather.days) {
        const auto date = std::chrono::local_days(day.date);
        const bool isMeant = date == std::chrono::floor<std::chrono::days>(at(15, 0)) ||
                             date == std::chrono::floor<std::chrono::days>(at(16, 0));
        EXPECT_EQ(isMeant, day.cloud_percent->value == 95.0 && day.wind->value == 1.0);
    }
    EXPECT_EQ(dull.weather.days.size(), before.weather.days.size());
    EXPECT_TRUE(engine::withOutlook(before, engine::Outlook::AsTheTable, at(15, 340)) == before);
}

TEST_F(Answers, TheOutlookTakesNothingFromRowsThatWereKnownLater) {
    engine::Pond pond = document.pond();
    pond.weather.observed = true;
    for (engine::WeatherDay& day : pond.weather.days) {
        if (std::chrono::local_days(day.date) >= std::chrono::floor<std::chrono::days>(at(15, 0))) {
            day.airMax = engine::Quantity(44.0);  // measured on that day's evening at the earliest
        }
    }
    const engine::Pond dull = engine::withOutlook(pond, engine::Outlook::Dull, at(15, 340));
    ASSERT_FALSE(dull.weather.days.empty());
    for (const engine::WeatherDay& day : dull.weather.days) {
        EXPECT_LT(day.airMax->value, 44.0);
    }
    EXPECT_EQ(dull.weather.days.back().date, engine::Date(std::chrono::year(2026) / 6 / 16));
    EXPECT_EQ(dull.weather.days.back().cloud_percent->value, 95.0);
}

TEST_F(Answers, WhatCannotBeDecidedSaysWhyAndAStopIsNoVerdict) {
    TodayPage page(document, nullptr, quick());
    test::showActive(page);
    press(page, "Decide without Entering");
    ASSERT_TRUE(wait(page));
    EXPECT_EQ(plain(page.verdict()), "");
    EXPECT_FALSE(page.state().isEmpty());
    typeReadings(page, "2026-06-15 05:40", {"27", "25", "21"}, {"6.1", "6.0", "0.1"});
    page.decide(false);
    page.cancel();
    ASSERT_TRUE(wait(page));
    EXPECT_EQ(plain(page.verdict()), "");
    EXPECT_NE(plain(page.state()).find("Stopped"), std::string::npos);
}

TEST_F(Answers, AnIncidentIsJudgedFromThreeReadings) {
    IncidentPage page(document, nullptr, quick());
    test::showActive(page);
    typeReadings(page, "2026-06-17 05:30", {"26", "24.5", "20"}, {"1.4", "1.2", "0.1"});
    press(page, "Enter in the Log and Judge");
    ASSERT_TRUE(wait(page));
    ASSERT_NE(page.incident(), nullptr) << plain(page.state());
    engine::TodayOptions options = quick();
    options.at = at(17, 330);
    const engine::Incident expected = engine::judgeIncident(document.pond(), options);
    EXPECT_EQ(page.incident()->state, engine::PresentState::Stratified);
    ASSERT_EQ(page.incident()->options.size(), expected.options.size());
    for (std::size_t i = 0; i < expected.options.size(); ++i) {
        EXPECT_EQ(page.incident()->options[i].lowest, expected.options[i].lowest);
        EXPECT_TRUE(page.text().contains(oxygenText(expected.options[i].lowest)));
    }
    EXPECT_NE(plain(page.verdict()).find("The pond is in layers"), std::string::npos);
    for (const char* part : {"Call: owner", "an algal toxin", "Write down", "No feed"}) {
        EXPECT_NE(plain(page.text()).find(part), std::string::npos) << part;
    }
    ASSERT_TRUE(page.chart().chart());
    EXPECT_EQ(page.chart().chart()->lines.size(), expected.options.size());
    {
        QPdfWriter paper(QString::fromStdString((folder.path() / "incident.pdf").string()));
        page.printTo(paper);
    }
    EXPECT_GT(std::filesystem::file_size(folder.path() / "incident.pdf"), 10000U);
}

TEST_F(Answers, TheReviewSaysWhatTheEngineSaysAndDrawsBoth) {
    const auto faults = document.edit(QStringLiteral("readings"), [](engine::Pond& pond) {
        for (int day = 14; day <= 19; ++day) {
            engine::Reading reading;
            reading.at = at(day, 340);
            reading.depth = engine::Quantity(0.5);
            reading.oxygen = engine::Quantity(5.5 - 0.1 * (day - 14));
            reading.temperature = engine::Quantity(25.0);
            pond.readings.push_back(reading);
        }
        engine::Event copper;
        copper.at = at(17, 600);
        copper.kind = "treatment";
        copper.what = "copper";
        pond.events.push_back(copper);
    });
    ASSERT_TRUE(faults.empty());
    engine::FitOptions options;
    options.members = 8;
    options.resolution = {14, 1800.0};
    options.threads = 1;
    ReviewPage page(document, nullptr, options);
    test::showActive(page);
    press(page, "Look Back");
    ASSERT_TRUE(wait(page));
    ASSERT_NE(page.review(), nullptr) << plain(page.state());
    const engine::Review expected = engine::reviewPond(document.pond(), options);
    for (const engine::Sentence& sentence : engine::sentencesOf(expected)) {
        const QString all = page.verdict() + page.text();
        EXPECT_TRUE(all.contains(localized(sentence).simplified())) << plain(localized(sentence));
    }
    ASSERT_TRUE(page.chart().chart());
    const LineChart& chart = *page.chart().chart();
    EXPECT_EQ(chart.lines.size(), 2U);
    EXPECT_EQ(chart.lines[0].x.size(), expected.rows.size());
    EXPECT_GE(chart.dots.size(), 5U);
    EXPECT_EQ(chart.marks.size(), 2U) << "the start and the treatment";
    EXPECT_EQ(chart.csv, engine::reviewCsv(expected));
    EXPECT_FALSE(page.chart().accessibleDescription().isEmpty());
    fieldOf<QComboBox>(page, "Shown")->setCurrentIndex(1);
    EXPECT_EQ(plain(page.chart().sheet().name), "sixty-days-bottom");
    EXPECT_FALSE(pngOf(page.chart().sheet()).isEmpty());
}

TEST_F(Answers, AStartIsNotedInTheLedgerWithItsDistance) {
    const auto file = folder.path() / "details" / "starts.csv";
    ReviewPage page(document);
    page.setLedger(file);
    test::showActive(page);
    press(page, "Note the Start");
    ASSERT_TRUE(wait(page));
    EXPECT_NE(plain(page.state()).find("dawn reading"), std::string::npos) << "there is none yet";
    EXPECT_FALSE(std::filesystem::exists(file));
    const auto faults = document.edit(QStringLiteral("readings"), [](engine::Pond& pond) {
        for (int day = 15; day <= 17; ++day) {
            engine::Reading reading;
            reading.at = at(day, 340);
            reading.depth = engine::Quantity(0.5);
            reading.oxygen = engine::Quantity(5.0);
            reading.temperature = engine::Quantity(25.0);
            pond.readings.push_back(reading);
        }
    });
    ASSERT_TRUE(faults.empty());
    press(page, "Note the Start");
    ASSERT_TRUE(wait(page));
    const engine::StartCheck expected = engine::checkStart(document.pond());
    ASSERT_TRUE(expected.isChecked()) << expected.message;
    const auto ledger = engine::readStartLedger(file).ledger;
    ASSERT_TRUE(ledger) << plain(page.state());
    ASSERT_EQ(ledger->starts.size(), 1U);
    EXPECT_EQ(ledger->starts.front().dawns, 3);
    EXPECT_NEAR(ledger->starts.front().distance, expected.distance, 1e-9);
    for (const engine::Sentence& sentence : engine::sentencesOf(expected, 1, expected.distance)) {
        const QString all = page.verdict() + page.text();
        EXPECT_TRUE(all.contains(localized(sentence).simplified())) << plain(localized(sentence));
    }
}

}  // namespace
}  // namespace widgets
