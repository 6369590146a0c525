// When a start is advised.
#include "engine/advice/advice.h"

#include "engine/advice/telling_readings.h"
#include "engine/plan/start_conditions.h"
#include "engine/plan/surface_air_ramp.h"
#include "engine/ramps/hold_rules.h"
#include "tests/made_up_comparison.h"
#include "tests/scenario.h"

#include <gtest/gtest.h>

namespace engine::test {
namespace {

constexpr Resolution kCoarse{12, 1800.0};

Comparison coarse(const Pond& pond, int members = 16) {
    CompareOptions options;
    options.resolution = kCoarse;
    options.members = members;
    options.attribution = false;
    return compare(pond, options);
}

bool isUnmet(const Advice& advice, StartCondition condition) {
    return std::any_of(advice.unmet.begin(), advice.unmet.end(),
                       [&](const UnmetCondition& one) { return one.condition == condition; });
}

TEST(Advice, LimitsAreThePondFilesBeforeCommonPractice) {
    Pond pond = scenario("grandfathers-pond");
    EXPECT_EQ(startLimits(pond).lethal_percent, 5.0);
    EXPECT_EQ(startLimits(pond).lethalAlone_percent, 10.0);
    EXPECT_EQ(startLimits(pond).lethalAdded_percent, 2.0);
    EXPECT_EQ(startLimits(pond).daysAfterAlgaecide, 21.0);
    pond.startRules.emplace();
    pond.startRules->lethal_percent = Quantity(3.0);
    EXPECT_EQ(startLimits(pond).lethal_percent, 3.0);
    EXPECT_EQ(startLimits(pond).lethalAdded_percent, 2.0);
}

TEST(Advice, IsAboutTheRampsOwnWorstNight) {
    Comparison comparison = madeUpComparison();
    comparison.runs[1].days[0].lowest = 2.25;
    const Advice advice = adviceOn(comparison, 1);
    EXPECT_EQ(advice.worst.day, 1);
    EXPECT_EQ(advice.worst.lowest, 2.25);
    EXPECT_EQ(advice.worstAlone.day, 2) << "and left alone about its own";
    EXPECT_FALSE(advice.kind) << "nobody asked for an answer";
    EXPECT_FALSE(advice.lethal) << "without members there are no chances";
}

TEST(Advice, ACleanPondNeedsNoRampAndARichOneIsNotStarted) {
    const Answered clean = answered(coarse(scenario("new-clay")), 1);
    EXPECT_EQ(clean.advice.kind, AdviceKind::NoRampNeeded);
    EXPECT_TRUE(clean.advice.unmet.empty());
    EXPECT_TRUE(clean.advice.mayStart());
    const Answered rich = answered(coarse(scenario("pea-soup")), 1);
    EXPECT_FALSE(rich.advice.mayStart());
    EXPECT_FALSE(rich.advice.unmet.empty());
    if (rich.advice.kind == AdviceKind::WaitUntil) {
        ASSERT_TRUE(rich.advice.wait);
        EXPECT_GT(std::chrono::local_days(rich.advice.wait->dates.from),
                  std::chrono::local_days(rich.advice.firstDay));
    }
}

TEST(Advice, AnAlgaecideIsWaitedOut) {
    Pond pond = scenario("new-clay");
    Event event;
    event.at = LocalTime(std::chrono::local_days(*pond.place.firstDay)) - std::chrono::hours(24 * 10);
    event.kind = "algaecide";
    pond.events.push_back(event);
    const Advice advice = answered(coarse(pond, 1), 1).advice;
    ASSERT_TRUE(isUnmet(advice, StartCondition::Algaecide));
    EXPECT_EQ(advice.kind, AdviceKind::WaitUntil);
    EXPECT_NEAR(advice.unmet.front().value, 10.0, 1.0);
}

TEST(Advice, ALowDawnReadingIsNotStartedFrom) {
    Pond pond = scenario("new-clay");
    Reading dawn;
    dawn.at = *pond.profile->at - std::chrono::hours(12);
    dawn.depth = Quantity(0.5);
    dawn.oxygen = Quantity(2.0);
    pond.readings = {dawn};
    EXPECT_TRUE(isUnmet(answered(coarse(pond, 1), 1).advice, StartCondition::DawnReading));
}

// A schedule whose own morning rule would stop it cannot stand.
TEST(Advice, LowsAtWhichTheMorningRuleStopsAreNotAdvised) {
    Pond pond = scenario("new-clay");
    pond.dawnRules.emplace();
    pond.dawnRules->back = Quantity(9.5);
    pond.dawnRules->hold = Quantity(9.6);
    pond.dawnRules->go = Quantity(9.7);
    const Advice advice = answered(coarse(pond, 1), 1).advice;
    EXPECT_TRUE(isUnmet(advice, StartCondition::MorningStops));
    EXPECT_FALSE(advice.mayStart());
}

TEST(Advice, SurfaceAirIsTriedWhereOnlyOxygenStandsAgainstAStart) {
    Pond pond = scenario("grandfathers-pond");
    std::erase_if(pond.ramps, [](const Ramp& ramp) { return ramp.kind != RampKind::Doubling; });
    pond.chosenRamp.clear();
    pond.startRules.emplace();
    pond.startRules->lethal_percent = Quantity(60.0);
    pond.startRules->lethalAlone_percent = Quantity(0.0);
    pond.dawnRules.emplace();
    pond.dawnRules->go = Quantity(0.4);
    pond.dawnRules->hold = Quantity(0.3);
    pond.dawnRules->back = Quantity(0.2);
    pond.weather.holdDays = {dateOfDay(pond, 30)};
    pond.bottom.smell = Smell::None;
    const Comparison comparison = coarse(pond);
    const Answered answer = answered(comparison, 1);
    ASSERT_EQ(answer.advice.kind, AdviceKind::StartWithSurfaceAir);
    EXPECT_EQ(answer.comparison.runs.size(), comparison.runs.size() + 1);
    EXPECT_EQ(answer.advice.run, comparison.runs.size());
    EXPECT_GT(answer.advice.surfaceAir_kW, 0.0);
    EXPECT_GT(answer.advice.worst.lowest, *answer.advice.worstWithoutSurfaceAir);
    EXPECT_NEAR(answer.comparison.model.pond.ramps.back().surfaceAir_kW->value, answer.advice.surfaceAir_kW,
                1e-9);
    for (std::size_t i = 0; i < comparison.runs.size(); ++i) {
        EXPECT_EQ(answer.comparison.runs[i].worst().lowest, comparison.runs[i].worst().lowest)
            << "taken over";
    }
}

// "Start on the 10th" beside "the 10th is a hold day" cannot be signed.
TEST(Advice, HoldDaysAreTakenOutOfTheRampThatIsAdvised) {
    Pond pond = scenario("grandfathers-pond");
    const Comparison comparison = coarse(pond, 1);
    const std::vector<int> held = holdDays(pond);
    ASSERT_FALSE(held.empty());
    ASSERT_EQ(held.front(), 1);
    ASSERT_TRUE(stepsOnHoldDay(comparison.model, comparison.runs[2]));
    const Answered answer = answered(comparison, 2);
    const RampRun& run = answer.comparison.runs[answer.advice.run];
    EXPECT_FALSE(stepsOnHoldDay(answer.comparison.model, run));
    EXPECT_EQ(answer.advice.firstDay, dateOfDay(pond, run.schedule.front().day));
    EXPECT_EQ(std::count(held.begin(), held.end(), run.schedule.front().day), 0);
    EXPECT_EQ(answer.advice.ramp, comparison.runs[2].name + ", no air on hold days");
    EXPECT_EQ(rampMadeOf(pond, answer.advice.ramp), comparison.runs[2].name);
}

// Around the clock from the first day is no dose for a pond with muck, whatever the chances say.
TEST(Advice, ALargeFirstDayStandsAgainstAStart) {
    const Pond pond = scenario("grandfathers-pond");
    const Comparison comparison = coarse(pond, 1);
    ASSERT_EQ(comparison.runs[1].name, "on at once");
    const std::vector<UnmetCondition> unmet = unmetBy(comparison, 1);
    const auto dose = std::find_if(unmet.begin(), unmet.end(), [](const UnmetCondition& one) {
        return one.condition == StartCondition::FirstDose;
    });
    ASSERT_NE(dose, unmet.end());
    EXPECT_GT(dose->value, dose->limit);
}

TEST(Advice, IsProvisionalUntilDebtProfileAndDawnsAreMeasured) {
    Pond pond = scenario("grandfathers-pond");
    pond.bottom.oxygenDebt.reset();
    pond.readings.clear();
    const Advice bare = answered(coarse(pond, 1), 1).advice;
    EXPECT_EQ(bare.provisional, (std::vector{ProvisionalReason::DebtGuessed, ProvisionalReason::OneProfile,
                                             ProvisionalReason::FewDawns}));
    pond.bottom.oxygenDebt = Quantity(10.0);
    pond.bottom.oxygenDebt->confidence = Confidence::Measured;
    for (const int day : {2, 1}) {
        for (const double depth : {0.5, 1.5, 2.5}) {
            Reading reading;
            reading.at = *pond.profile->at - std::chrono::hours(12) - std::chrono::hours(24 * (day - 1));
            reading.depth = Quantity(depth);
            reading.oxygen = Quantity(6.0);
            reading.temperature = Quantity(25.0);
            pond.readings.push_back(reading);
        }
    }
    const Advice known = answered(coarse(pond, 1), 1).advice;
    EXPECT_TRUE(known.provisional.empty());
    EXPECT_EQ(known.dawnsRead, 2);
}

TEST(Advice, ThePowerOfSurfaceAirMeetsTheRefugesNight) {
    const Comparison comparison = coarse(scenario("grandfathers-pond"), 1);
    const double power = refugeAir_kW(comparison.model, comparison.runs[1]);
    EXPECT_GT(power, 0.2);
    EXPECT_LT(power, 20.0);
    EXPECT_NEAR(power / 0.25, std::round(power / 0.25), 1e-9) << "in steps of a quarter";
    PondModel twice = comparison.model;
    twice.parameters.thresholds.fishShare *= 2.0;
    EXPECT_GT(refugeAir_kW(twice, comparison.runs[1]), 1.5 * power) << "of twice the refuge";
}

// The first reading named is one whose halves of the members differ most; what it turns to is on the other
// side.
TEST(Advice, ReadingsThatTellAreThoseThatPartTheMembers) {
    const Comparison comparison = coarse(scenario("grandfathers-pond"), 64);
    const std::vector<TellingReading> readings = tellingReadings(comparison, 1, 5.0);
    EXPECT_LE(readings.size(), 2U);
    ASSERT_FALSE(readings.empty());
    EXPECT_TRUE(tellingReadings(coarse(scenario("grandfathers-pond"), 1), 1, 5.0).empty())
        << "without members";
}

}  // namespace
}  // namespace engine::test
