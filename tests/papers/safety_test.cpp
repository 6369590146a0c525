// What the papers say where it can hurt: dawn limits, the lethal line, the head of the log.
#include "engine/follow_up/log_chain.h"
#include "tests/papers/made_papers.h"
#include "widgets/papers/paper_parts.h"
#include "widgets/papers/paper_pdf.h"

namespace widgets {
namespace {

using test::headline;
using test::printed;

/// The headline run, changed by a test, without running it again; its answer is of the changed run.
template <class Change>
PaperRun changed(const Change& change) {
    PaperRun run = headline().run;
    auto outcome = std::make_shared<Outcome>(*run.outcome);
    change(outcome->comparison);
    auto frozen = std::make_shared<engine::FrozenRun>(*run.frozen);
    const auto kind = frozen->advice.kind;
    frozen->advice = engine::adviceOn(outcome->comparison, run.plan);
    frozen->advice.kind = kind;
    run.frozen = std::move(frozen);
    run.outcome = std::move(outcome);
    return run;
}

/// The words of a paper, and on how many pages.
struct OnPaper {
    QString text;
    int pages = 0;
};
OnPaper onPaper(const PaperRun& run, const Paper& paper) {
    const engine::test::TemporaryFolder folder;
    const QString path =
        QString::fromStdString(folder.write("p.pdf", pdfOf(paper, imprintOf(run), run.format)).string());
    return {QString::fromStdString(
                printed(QStringLiteral("pdftotext"), {QStringLiteral("-raw"), path, QStringLiteral("-")}))
                .simplified(),
            QString::fromStdString(printed(QStringLiteral("qpdf"), {QStringLiteral("--show-npages"), path}))
                .toInt()};
}

TEST(PaperSafety, DawnLimitsAreThePondsOwn) {
    const PaperRun run = changed([](engine::Comparison& comparison) {
        engine::DawnRules own;
        own.go = engine::Quantity(5.7);
        own.hold = engine::Quantity(4.6);
        own.back = engine::Quantity(3.4);
        own.fallBack = engine::Quantity(1.5);
        own.morningRise = engine::Quantity(0.7);
        comparison.model.pond.dawnRules = own;
    });
    const QString owners = onPaper(run, ownerSheet(run)).text;
    EXPECT_TRUE(owners.contains(QStringLiteral("5.7 or more"))) << owners.toStdString();
    EXPECT_TRUE(owners.contains(QStringLiteral("4.6 to 5.7")));
    EXPECT_TRUE(owners.contains(QStringLiteral("3.4 to 4.6")));
    EXPECT_TRUE(owners.contains(QStringLiteral("under 3.4")));
    EXPECT_TRUE(owners.contains(QStringLiteral("more than 1.5 mg/L below the dawn before")));
    EXPECT_TRUE(
        onPaper(run, schedulePaper(run)).text.contains(QStringLiteral("0.7 mg/L above that of dawn")));
    const engine::Calendar calendar = scheduleCalendar(run);
    EXPECT_NE(calendar.events.front().description.find("5.7 mg/L or more"), std::string::npos);
}

// Trout want 7 mg/L at dawn; at 75 kPa and 28 degC saturation is about 5.7 mg/L (Benson and Krause), of which
// 80 % is about 4.6: a paper that still said 7 would never let anyone start.
TEST(PaperSafety, NoGoLimitIsAboveWhatTheWaterCanHold) {
    const PaperRun run = changed([](engine::Comparison& comparison) {
        comparison.model.parameters.thresholds.group = engine::SpeciesGroup::Trout;
        comparison.model.pond.dawnRules.reset();
        comparison.model.parameters.site.airPressure = 75000.0;
        comparison.model.profile.temperature.front() = 28.0;
    });
    const engine::DawnLimits limits = dawnLimits(run);
    EXPECT_NEAR(limits.go, 4.6, 0.1);
    EXPECT_NEAR(limits.go - limits.back, 2.0, 1e-9);
    EXPECT_EQ(valuesOf(run).value(QStringLiteral("go")), fixedText(limits.go, 1));
}

// The pond's clock is fixed at UTC-6; in June the clocks of Chicago are an hour ahead of it (tz database).
TEST(PaperSafety, AnOwnersSummerTimeIsSaidBesideThePondsClock) {
    const auto inZone = [](const char* zone) {
        PaperRun run =
            changed([&](engine::Comparison& comparison) { comparison.model.pond.place.timeZone = zone; });
        auto frozen = std::make_shared<engine::FrozenRun>(*run.frozen);
        frozen->advice.holdDays.clear();  // on a hold day nothing starts at any hour
        run.frozen = std::move(frozen);
        return run;
    };
    const PaperRun summer = inZone("America/Chicago");
    for (const Paper& paper : {ownerSheet(summer), schedulePaper(summer)}) {
        const OnPaper seen = onPaper(summer, paper);
        EXPECT_TRUE(seen.text.contains(QStringLiteral("Your clocks (America/Chicago) show 1 h more.")))
            << seen.text.toStdString();
        EXPECT_TRUE(paper.file != QLatin1String("owners-sheet") || seen.pages == 1);
    }
    EXPECT_TRUE(ownerMessage(summer).contains(QStringLiteral("from 10:00 (11:00 on your clock)")))
        << ownerMessage(summer).toStdString();
    EXPECT_LT(ownerMessage(summer).size(), 300);
    for (const char* zone : {"", "America/Regina"}) {  // Saskatchewan keeps UTC-6 all year
        const PaperRun same = inZone(zone);
        EXPECT_FALSE(onPaper(same, schedulePaper(same)).text.contains(QStringLiteral("Your clocks"))) << zone;
        EXPECT_FALSE(ownerMessage(same).contains(QStringLiteral("your clock"))) << zone;
    }
}

TEST(PaperSafety, NobodyIsToldToStartOnAHoldDay) {
    engine::Pond pond = test::startingPond();
    pond.weather.holdDays.clear();  // those of the rules: the first six days
    const PaperRun run = paperRun(test::frozenRun(pond, 8), test::madeUpConsultant());
    const engine::Advice& advice = run.advice();
    ASSERT_TRUE(advice.mayStart());
    ASSERT_FALSE(advice.holdDays.empty());
    const auto isHeld = [&](const engine::Date& date) {
        return std::find(advice.holdDays.begin(), advice.holdDays.end(), date) != advice.holdDays.end();
    };
    EXPECT_FALSE(isHeld(advice.firstDay));
    for (const engine::RunRow& row : engine::runList(run.comparison(), run.plan)) {
        EXPECT_FALSE(row.start && isHeld(engine::dateOfDay(pond, row.day))) << row.day;
    }
    const QString message = ownerMessage(run);
    EXPECT_TRUE(message.startsWith(paperDay(advice.firstDay))) << message.toStdString();
    EXPECT_FALSE(message.contains(QStringLiteral("is a hold day"))) << message.toStdString();
    for (const Paper& paper : {ownerSheet(run), schedulePaper(run)}) {
        const OnPaper seen = onPaper(run, paper);
        EXPECT_TRUE(seen.text.contains(QStringLiteral("by the forecast: 14 Jun")))
            << paper.file.toStdString();
        EXPECT_TRUE(seen.text.contains(paperDate(advice.firstDay))) << paper.file.toStdString();
        EXPECT_TRUE(paper.file != QLatin1String("owners-sheet") || seen.pages == 1);
    }
    EXPECT_FALSE(scheduleCalendar(run).events.front().summary.starts_with("Hold day"));
}

void setLows(engine::Comparison& comparison, std::size_t ramp, int below) {
    engine::RampEnsemble& members = comparison.ensemble->ramps[ramp];
    for (std::size_t i = 0; i < members.lowest.size(); ++i) {
        members.lowest[i] = static_cast<int>(i) < below ? 0.5F : 4.5F;
    }
    members.chanceBelowLethal = static_cast<double>(below) / static_cast<double>(members.lowest.size());
}

TEST(PaperSafety, EveryPaperOfAStartHasTheChancesOfTheAnswer) {
    const std::size_t plan = headline().run.plan;
    const PaperRun more = changed([&](engine::Comparison& comparison) {
        setLows(comparison, 0, 2);
        setLows(comparison, plan, 6);  // of eight: 75 of 100 against 25
    });
    for (const Paper& paper : {ownerSheet(more), consentPaper(more), proposal(more), letter(more)}) {
        const OnPaper seen = onPaper(more, paper);
        const qsizetype with = seen.text.indexOf(QRegularExpression(QStringLiteral("75 g(o|et) ")));
        EXPECT_GE(with, 0) << paper.file.toStdString() << ": " << seen.text.toStdString();
        EXPECT_GT(seen.text.indexOf(QStringLiteral("25"), with), with) << paper.file.toStdString();
        EXPECT_TRUE(paper.file != QLatin1String("owners-sheet") || seen.pages == 1);
    }
}

TEST(PaperSafety, TheWeatherThatHoldsIsWordedOnce) {
    const PaperRun& run = headline().run;
    const QString weather = valuesOf(run).value(QStringLiteral("holdWeather"));
    EXPECT_TRUE(weather.contains(QStringLiteral("2 dull days in the next 3"))) << weather.toStdString();
    for (const Paper& paper : {ownerSheet(run), schedulePaper(run), proposal(run), commissioningSheet(run)}) {
        // A bullet's mark is read between its lines.
        const QString text = onPaper(run, paper).text.remove(QChar(0x2022)).simplified();
        EXPECT_TRUE(text.contains(weather)) << paper.file.toStdString();
    }
}

// A ramp is the minutes of each day, a plan the answer with all that goes with it.
TEST(PaperSafety, ARampIsNeverCalledAPlan) {
    const PaperRun& run = headline().run;
    const QString name = QString::fromStdString(run.planRun().name);
    for (const Paper& paper : allPapers(run)) {
        const QString text = onPaper(run, paper).text;
        EXPECT_FALSE(text.contains(QStringLiteral("lan \"") + name)) << paper.file.toStdString();
        EXPECT_FALSE(text.contains(QStringLiteral("plan: ") + name)) << paper.file.toStdString();
        EXPECT_FALSE(text.contains(QStringLiteral("with the plan"))) << paper.file.toStdString();
    }
}

TEST(PaperSafety, TheHeadOfALogStandsOnThePapersThatFollowIt) {
    EXPECT_FALSE(valuesOf(changed([](engine::Comparison& comparison) {
                     engine::Pond& pond = comparison.model.pond;
                     pond.readings.clear();
                     pond.events.clear();
                     pond.fileReadings.clear();
                 })).has(QStringLiteral("logHead")));
    const PaperRun run = changed([](engine::Comparison& comparison) {
        engine::Event event;
        event.at = engine::LocalTime(
            std::chrono::sys_days(*comparison.model.pond.place.firstDay).time_since_epoch());
        event.kind = "feed";
        comparison.model.pond.events.push_back(event);
    });
    const QString head = QString::fromStdString(engine::shown(engine::logHead(run.comparison().model.pond)));
    for (const Paper& paper : {schedulePaper(run), dailyLog(run), proposal(run), sixtyDayReview(run)}) {
        const OnPaper seen = onPaper(run, paper);
        QString joined = seen.text;  // a long word may be parted at a line's end
        EXPECT_TRUE(joined.remove(QLatin1Char(' ')).contains(head)) << paper.file.toStdString();
    }
}

}  // namespace
}  // namespace widgets
