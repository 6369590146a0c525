// Tables, sentences, papers, calendar and the text for the phone: the same answer, for every scenario.
#include "engine/base/text.h"
#include "engine/follow_up/incident.h"
#include "engine/follow_up/today.h"
#include "engine/output/advice_io.h"
#include "engine/plan/plan.h"
#include "engine/plan/start_conditions.h"
#include "engine/ramps/hold_rules.h"
#include "engine/ramps/weather.h"
#include "engine/wording/sentence_advice.h"
#include "engine/wording/sentence_incident.h"
#include "engine/wording/sentence_today.h"
#include "engine/wording/wording.h"
#include "tests/papers/made_papers.h"
#include "tests/scenario_names.h"
#include "tests/sentences.h"

#include <QRegularExpression>

#include <algorithm>
#include <array>
#include <set>

namespace widgets {
namespace {

using test::MadePapers;

/// The fields of advice.csv as they are written.
std::map<std::string, std::string> fieldsOf(const std::string& csv) {
    std::map<std::string, std::string> out;
    for (const QString& line : QString::fromStdString(csv).split(QStringLiteral("\r\n"))) {
        const qsizetype comma = line.indexOf(QLatin1Char(','));
        if (comma > 0) {
            out[line.first(comma).toStdString()] =
                line.sliced(comma + 1).remove(QLatin1Char('"')).toStdString();
        }
    }
    return out;
}

/// All that a pattern's group finds in a text.
std::set<std::string> found(const std::string& text, const QString& pattern, int group = 1) {
    std::set<std::string> out;
    auto matches = QRegularExpression(pattern).globalMatch(QString::fromStdString(text).simplified());
    while (matches.hasNext()) {
        out.insert(matches.next().captured(group).toStdString());
    }
    return out;
}

std::string oneDecimal(const std::string& number) {
    return engine::fixed(std::stod(number), 1);
}

void expectOneAnswer(const MadePapers& made) {
    const engine::Advice& advice = made.run.advice();
    ASSERT_TRUE(advice.kind);
    auto table = fieldsOf(made.bytes("advice.csv"));
    EXPECT_EQ(table["kind"], engine::wordOf(*advice.kind));

    // A start has a schedule and runs; where not to start nothing can be read as one.
    const std::vector<std::string> names = made.papers();
    const auto isThere = [&](const char* name) {
        return std::find(names.begin(), names.end(), name) != names.end();
    };
    for (const char* name : {"start-up-schedule.pdf", "owners-sheet.pdf", "consent.pdf", "proposal.pdf"}) {
        EXPECT_EQ(isThere(name), advice.mayStart()) << name;
    }
    EXPECT_EQ(isThere("letter.pdf"), !advice.mayStart());
    const std::string& calendar = made.bytes("schedule.ics");
    EXPECT_EQ(calendar.find("Air on") != std::string::npos, advice.mayStart());
    const std::string& message = made.bytes("message.txt");
    EXPECT_LT(message.size(), 300U) << message;
    EXPECT_EQ(message.find("Leave the bottom air off") != std::string::npos, !advice.mayStart()) << message;

    // Ramp, night, lows and end states of the table stand in the verdict, and the verdict on the paper.
    const engine::Sentence verdict = verdictOf(advice, made.run.comparison().model);
    const std::string said = english(verdict);
    const bool isOfEnd = advice.kind == engine::AdviceKind::NoGain;
    if (advice.kind != engine::AdviceKind::WaitUntil) {
        EXPECT_NE(said.find('"' + table["ramp"] + '"'), std::string::npos) << said;
        const std::string& low = isOfEnd ? table["end_state_mg_per_l"] : table["worst_mg_per_l"];
        EXPECT_NE(said.find(oneDecimal(low) + " mg/L"), std::string::npos) << said;
    } else {
        EXPECT_NE(said.find(table["wait_from"]), std::string::npos) << said;
        EXPECT_NE(said.find('"' + table["ramp"] + '"'), std::string::npos) << said;
    }
    const std::string lead = made.text(advice.mayStart() ? "proposal.pdf" : "letter.pdf", false);
    EXPECT_TRUE(QString::fromStdString(lead)
                    .simplified()
                    .remove(QLatin1Char(' '))
                    .contains(QString::fromStdString(said).remove(QLatin1Char(' '))))
        << said << "\n"
        << lead;

    // Chances: one number with the ramp, one left alone, on whatever page.
    const auto of100 = [](double share) {
        return engine::shownValue({"", engine::Measure::Of100, share, {}});
    };
    ASSERT_TRUE(advice.lethal);
    EXPECT_NEAR(std::stod(table["lethal_chance_percent"]), 100.0 * advice.lethal->with, 0.01);
    EXPECT_NEAR(std::stod(table["lethal_chance_alone_percent"]), 100.0 * advice.lethal->alone, 0.01);
    const std::set<std::string> saysChances{"owners-sheet.pdf", "consent.pdf", "proposal.pdf", "letter.pdf"};
    for (const std::string& name : names) {
        const std::string text = made.text(name, false);
        const std::set<std::string> chances =
            found(text, QStringLiteral("100 ponds like (?:this one|yours), ([\\w ]+?) (?:go below the lethal "
                                       "line of [\\d.]+ mg/L with|get so low that fish can die with)"));
        for (const std::string& with : chances) {
            EXPECT_EQ(with, of100(advice.lethal->with)) << name;
        }
        EXPECT_TRUE(!chances.empty() || !saysChances.contains(name)) << name;
        for (const std::string& night : found(text, QStringLiteral("lowest on night (\\d+) at [\\d:]+, "
                                                                   "[\\d.]+ mg/L; left alone"))) {
            EXPECT_EQ(night, table["worst_night"]) << name;
        }
        for (const std::string& end :
             found(text, QStringLiteral("dawn low (?:ends|settles) near ([\\d.]+)"))) {
            EXPECT_EQ(end, oneDecimal(table["end_state_mg_per_l"])) << name;
        }
        if (advice.surfaceAir.transfer > 0.0 && advice.mayStart()) {
            for (const std::string& power : found(text, QStringLiteral("surface air of ([\\d.]+) kW"))) {
                EXPECT_EQ(power, table["surface_air_kw"]) << name;
            }
        }
        EXPECT_EQ(text.find("PROVISIONAL") != std::string::npos, table["provisional"] == "yes") << name;
    }
    EXPECT_EQ(table["run"], engine::nameOf(*made.run.frozen));

    // What is told to start is not told to hold on the same day.
    if (advice.mayStart()) {
        EXPECT_EQ(table["hold_days"].find(table["first_day"]), std::string::npos) << table["hold_days"];
        EXPECT_NE(made.text("start-up-schedule.pdf").find(paperDate(advice.firstDay).toStdString()),
                  std::string::npos);
        EXPECT_NE(message.find(paperDay(advice.firstDay).toStdString()), std::string::npos) << message;
        EXPECT_FALSE(haltedByMornings(made.run.comparison().model, made.run.comparison().runs[advice.run]));
    }
}

class OneAnswer : public testing::TestWithParam<const char*> {};

TEST_P(OneAnswer, IsTheSameInEveryOutput) {
    expectOneAnswer(MadePapers(engine::test::scenario(GetParam()), test::madeUpConsultant(), 8));
}

/// A pond of no file, with what makes another pond of a scenario.
struct InventedPond {
    const char *title, *scenario;
    double area, debt, stock, secchi;  // Times as much
};

class InventedPonds : public testing::TestWithParam<InventedPond> {};

// Plan, papers, five mornings and an incident of one pond.
TEST_P(InventedPonds, AreToldOneThing) {
    const InventedPond& made = GetParam();
    engine::Pond pond = engine::test::scenario(made.scenario);
    const auto times = [](auto& quantity, double factor) {
        if (quantity) {
            quantity->value *= factor;
            for (auto* point : {&quantity->low, &quantity->high}) {
                *point = *point ? std::optional(**point * factor) : std::nullopt;
            }
        }
    };
    pond.title = made.title;
    times(pond.basin.area, made.area);
    times(pond.bottom.oxygenDebt, made.debt);
    times(pond.water.secchi, made.secchi);
    for (engine::FishStock& fish : pond.fish) {
        times(fish.stock_kgPerHa, made.stock);
    }
    engine::PlanOptions options;
    options.members = 64;
    options.resolution = {14, 1800.0};
    options.isBrief = true;
    const engine::Plan plan = engine::makePlan(pond, options);
    ASSERT_EQ(plan.end, engine::PlanEnd::Completed) << plan.message;
    const engine::Answered answer = engine::answered(plan);
    ASSERT_TRUE(answer.advice.kind);
    for (std::size_t i = 0; i + 1 < plan.days.size(); ++i) {
        const bool isHeld =
            plan.heedsHolds && std::any_of(plan.holds.begin(), plan.holds.end(), [&](const auto& hold) {
                return hold.day == static_cast<int>(i) + 1;
            });
        EXPECT_TRUE(!isHeld || plan.days[i].minutes == 0) << "day " << i + 1;
    }
    pond.ramps = answer.comparison.model.pond.ramps;
    pond.chosenRamp = answer.advice.run > 0 ? answer.advice.ramp : answer.advice.leastHarmful;
    const MadePapers papers(pond, test::madeUpConsultant(), 16);
    expectOneAnswer(papers);

    // Five mornings: good, good, under go, good, under the limit of stopping.
    const engine::DawnLimits limits =
        dawnLimits(papers.run.comparison().model, papers.run.comparison().model.profile.temperature.front());
    const std::array oxygen{limits.go + 0.8, limits.go + 0.5, limits.go - 0.4, limits.go + 0.2,
                            limits.back - 0.3};
    engine::Event started;
    started.kind = "started";
    started.at = engine::LocalTime(std::chrono::local_days(*pond.place.firstDay)) + std::chrono::hours(9);
    started.ramp = pond.chosenRamp;
    pond.events.push_back(started);
    const std::vector<int> held = engine::holdDays(pond);
    engine::TodayOptions quick;
    quick.members = 8;
    quick.resolution = {14, 1800.0};
    for (std::size_t i = 0; i < oxygen.size(); ++i) {
        const int day = static_cast<int>(i) + 2;
        for (const double depth : {0.5, 1.0, pond.aerator->depth->value - 0.1}) {
            engine::Reading reading;
            reading.at = engine::LocalTime(std::chrono::local_days(engine::dateOfDay(pond, day))) +
                         std::chrono::hours(5) + std::chrono::minutes(40);
            reading.depth = engine::Quantity(depth);
            reading.oxygen = engine::Quantity(depth > 1.0 ? 0.4 : oxygen[i]);
            reading.temperature = engine::Quantity(depth > 1.0 ? 21.0 : 26.0);
            pond.readings.push_back(reading);
        }
        const engine::Today today = decideToday(pond, quick);
        ASSERT_TRUE(today.isDecided) << today.message;
        EXPECT_EQ(today.limits.go, limits.go) << "the papers' limits are the morning's";
        const engine::DawnVerdict verdict = today.decision.verdict;
        if (verdict == engine::DawnVerdict::Go) {
            EXPECT_GE(oxygen[i], limits.go) << "morning " << day;
            EXPECT_EQ(std::count(held.begin(), held.end(), day), 0) << "morning " << day;
        }
        EXPECT_EQ(verdict == engine::DawnVerdict::Stop, oxygen[i] < limits.back) << "morning " << day;
    }
    const engine::Today today = decideToday(pond, quick);
    const engine::Incident incident = judgeIncident(pond, quick);
    ASSERT_TRUE(incident.isJudged) << incident.message;
    EXPECT_EQ(incident.state, today.state);
    EXPECT_EQ(bottomAirIn(incident.state), engine::BottomAir::Off) << "five degrees from top to bottom";
    EXPECT_EQ(engine::test::textsOf(sentencesOf(today), engine::SentenceKey::TodayBottomAir, "advice"),
              engine::test::textsOf(sentencesOf(incident), engine::SentenceKey::IncidentAdvice, "advice"));
}

INSTANTIATE_TEST_SUITE_P(Of, InventedPonds,
                         testing::Values(InventedPond{"Mill Tail", "grandfathers-pond", 0.5, 0.4, 0.6, 1.4},
                                         InventedPond{"Heron Water", "fee-cats", 0.6, 0.8, 0.5, 1.2},
                                         InventedPond{"Alder Pool", "weedy-woodland", 0.7, 1.3, 1.2, 0.9}),
                         [](const auto& of) {
                             std::string name = of.param.title;
                             std::erase(name, ' ');
                             return name;
                         });

INSTANTIATE_TEST_SUITE_P(Of, OneAnswer, testing::ValuesIn(engine::test::kScenarioNames), [](const auto& of) {
    std::string name = of.param;
    std::replace(name.begin(), name.end(), '-', '_');
    return name;
});

}  // namespace
}  // namespace widgets
