#include "engine/plan/plan.h"

#include "engine/output/plan_io.h"
#include "engine/plan/plan_sensitivity.h"
#include "engine/plan/plan_sustained.h"
#include "engine/plan/plan_weather.h"
#include "engine/pond/pond_io.h"
#include "engine/run/gas_limits.h"
#include "engine/wording/wording.h"
#include "tests/scenario.h"

#include <gtest/gtest.h>

#include <cmath>

namespace engine {
namespace {

using test::scenario;

TEST(Plan, TheUpperBoundIsThatOfClopperAndPearson) {
    // None of n: 1 - 0.05^(1/n), in closed form.
    EXPECT_NEAR((CountedChance{0, 59}).upper(), 1.0 - std::pow(0.05, 1.0 / 59.0), 1e-12);
    // One-sided 95 % of 3 in 20 is the two-sided 90 % upper limit, where the chance of 3 or fewer is 0.05.
    const double p = (CountedChance{3, 20}).upper();
    double tail = 0.0, ways = 1.0;
    for (int k = 0; k <= 3; ++k) {
        tail += ways * std::pow(p, k) * std::pow(1.0 - p, 20 - k);
        ways *= (20.0 - k) / (k + 1.0);
    }
    EXPECT_NEAR(tail, 0.05, 1e-9);
    EXPECT_EQ((CountedChance{20, 20}).upper(), 1.0);
    EXPECT_EQ((CountedChance{0, 0}).upper(), 1.0) << "nothing counted shows nothing";
}

TEST(Plan, CountsAreHeldToTheShareByTheirBound) {
    EXPECT_EQ(fewestMembers(0.05), 59);
    EXPECT_FALSE(largestCount(58, 0.05)) << "even none of 58 leaves more than 0.05 open";
    EXPECT_EQ(largestCount(59, 0.05), 0);
    EXPECT_EQ(largestCount(10, 1.0), 10);
    for (const int members : {64, 128, 256, 1000}) {
        const int most = largestCount(members, 0.05).value();
        EXPECT_LE((CountedChance{most, members}).upper(), 0.05);
        EXPECT_GT((CountedChance{most + 1, members}).upper(), 0.05);
    }
}

TEST(Plan, EndStatesAreJudgedBesideDoNothing) {
    EXPECT_EQ(endVerdict(4.0, 6.0, 4.0), EndVerdict::Keeps);
    EXPECT_EQ(endVerdict(3.9, 6.0, 4.0), EndVerdict::Fails) << "do-nothing keeps the line";
    EXPECT_EQ(endVerdict(2.8, 2.5, 4.0), EndVerdict::Better);
    EXPECT_EQ(endVerdict(2.6, 2.5, 4.0), EndVerdict::Fails) << "nothing that could be told apart is gained";
}

TEST(Plan, TheLongestDailyRunThatKeepsTheLineIsTriedFirst) {
    std::vector<SustainedSchedule> table(5);
    table[0].action = {1440, 1, 3.0, 1, false};
    table[1].action = {1440, 1, 2.0, 1, false};
    table[2].action = {1440, 1, 1.0, 1, false};
    table[3].action = {720, 1, 3.0, 1, false};
    table[4].action = {60, 1, 3.0, 1, false};
    table[0].verdict = EndVerdict::Fails;
    table[1].verdict = EndVerdict::Better;
    table[2].verdict = EndVerdict::Keeps;
    table[3].verdict = table[4].verdict = EndVerdict::Keeps;
    EXPECT_EQ(inOrderOfChoice(table), (std::vector<std::size_t>{2, 3, 4, 1}));
}

TEST(Plan, WhatCannotBePlannedIsSaidInSentences) {
    const Pond pond = scenario("grandfathers-pond");
    PlanOptions options;
    using Faults = std::vector<std::string>;
    EXPECT_EQ(planFaults(pond, options), Faults{});
    options.line = 12.0;
    EXPECT_EQ(planFaults(pond, options),
              Faults{"The line is 12 mg/L, but this pond's surface water holds no more than 7.4 mg/L at "
                     "saturation (30.2 degC): no plan keeps it above that."});
    options.line = 1.0;
    EXPECT_EQ(
        planFaults(pond, options),
        Faults{"The line is 1 mg/L, but this pond's lethal line is 2.0 mg/L: a plan keeps fish at least "
               "above that."});
    options.line = 0.0;
    EXPECT_EQ(planFaults(pond, options),
              Faults{"The line is 0 mg/L, but must be above 0: oxygen cannot fall below nothing."});
    options.line.reset();
    for (const auto& [chance, shown] : {std::pair(0.0, "0"), std::pair(-0.1, "-0.1"), std::pair(1.1, "1.1"),
                                        std::pair(std::nan(""), "not a number")}) {
        options.chance = chance;
        EXPECT_EQ(planFaults(pond, options),
                  Faults{std::string("The wanted chance is ") + shown +
                         ", but must be above 0 and at most 1: draws cannot show that something never "
                         "happens."});
    }
    options.chance = 0.05;
    options.members = 58;
    EXPECT_EQ(planFaults(pond, options),
              Faults{"With 58 members a chance of 0.05 cannot be shown: that takes 59, of which none may be "
                     "harmed."});
    Pond bare = pond;
    bare.aerator.reset();
    options.members = 1000;
    EXPECT_EQ(planFaults(bare, options),
              Faults{"The pond file has no aerator, so there is nothing to plan for."});
}

TEST(Plan, AWorseDayIsWorseOnThatDayAlone) {
    const Pond pond = scenario("new-clay");
    for (const StressKind kind : {StressKind::OvercastAndCalm, StressKind::ColdFront}) {
        const Pond worse = withWorseWeather(pond, kind, 3, 14);
        ASSERT_GE(worse.weather.days.size(), pond.weather.days.size());
        for (std::size_t i = 0; i < pond.weather.days.size(); ++i) {
            const bool isThatDay = dayNumber(pond, pond.weather.days[i].date) == 3;
            EXPECT_EQ(worse.weather.days[i] != pond.weather.days[i], isThatDay) << i;
        }
        EXPECT_EQ(dayNumber(pond, worse.weather.days.back().date), 15) << "to the noon after the last day";
    }
    const WeatherDay front = withWorseWeather(pond, StressKind::ColdFront, 12, 14).weather.days[12];
    EXPECT_EQ(front.wind->value, 6.0) << "days beyond the table can be worse too";
}

TEST(Plan, ADullSpellIsThreeDaysDullHotAndCalm) {
    const Pond pond = scenario("new-clay");
    const Pond worse = withWorseWeather(pond, StressKind::DullSpell, 3, 14);
    for (std::size_t i = 0; i < pond.weather.days.size(); ++i) {
        const int day = dayNumber(pond, pond.weather.days[i].date);
        const WeatherDay& dull = worse.weather.days[i];
        if (day < 3 || day > 5) {
            EXPECT_EQ(dull, pond.weather.days[i]) << day;
            continue;
        }
        EXPECT_DOUBLE_EQ(dull.airMin->value, pond.weather.days[i].airMin->value + 3.0);
        EXPECT_DOUBLE_EQ(dull.airMax->value, pond.weather.days[i].airMax->value + 3.0);
        EXPECT_GE(dull.cloud_percent->value, 95.0);
        EXPECT_LE(dull.wind->value, 0.8);
    }
}

TEST(Plan, TheWeakestMomentIsNoHigherThanADullSpellOnAnyDay) {
    const PondModel model = prepare(scenario("pea-soup"), {12, 1800.0});
    RunRequest request;
    request.days = 8;
    request.keepLayers = false;
    const RampRun run = runRamp(model, &model.pond.ramps.front(), request);
    const auto weakest = weakestMoment(model, run, 1, {});
    ASSERT_TRUE(weakest);
    EXPECT_LT(weakest->lowest, run.worst().lowest);
    for (int day = 1; day <= 6; ++day) {
        PondModel worse = model;
        worse.pond = withWorseWeather(model.pond, StressKind::DullSpell, day, request.days);
        request.stopAfterNight = std::min(day + 4, request.days);
        const RampRun dull = runRamp(worse, &model.pond.ramps.front(), request);
        for (int night = 0; night < *request.stopAfterNight; ++night) {
            EXPECT_GE(dull.days[static_cast<std::size_t>(night)].lowest, weakest->lowest - 1e-12) << day;
        }
    }
    EXPECT_FALSE(weakestMoment(model,
                               [&] {
                                   RampRun brief = run;
                                   brief.days.resize(2);
                                   return brief;
                               }(),
                               1, {}))
        << "three days do not go into two";
}

TEST(Plan, ToxicantsCountWhereTheyPassTheirLimitAndDoNothings) {
    Pond pond = scenario("salt-lens");
    const PondModel model = prepareUnbalanced(pond, {12, 1800.0});
    const double limit = gasLimits(model.parameters.thresholds.group, 25.0, 7.5).sulfide;
    RampRun run, nothing;
    run.hours.resize(2);
    nothing.hours.resize(2);
    for (RampRun* one : {&run, &nothing}) {
        for (HourRow& hour : one->hours) {
            hour.warmth = 25.0;
        }
    }
    EXPECT_FALSE(addsToxicants(model, run, nothing));
    run.hours[1].hydrogenSulfide = 1.01 * limit;
    EXPECT_TRUE(addsToxicants(model, run, nothing));
    nothing.hours[0].hydrogenSulfide = 2.0 * limit;
    EXPECT_FALSE(addsToxicants(model, run, nothing)) << "the pond brings more by itself";
    run.hours[0].hydrogenSulfide = 3.0 * limit;
    EXPECT_TRUE(addsToxicants(model, run, nothing)) << "but this is more still";
}

TEST(Plan, AClimateIsWrittenAndReadAgain) {
    Pond pond = scenario("new-clay");
    ClimateMonth one;
    one.month = Quantity(4.0);
    one.airMin = Quantity(5.0);
    one.airMax = Quantity(14.0);
    one.dewPoint = Quantity(4.0);
    one.wind = Quantity(3.5);
    one.cloud_percent = Quantity(55.0);
    pond.climate.months = {one};
    const PondReading reading = readPondText(writePond(pond), "pond.toml");
    ASSERT_TRUE(reading.pond);
    EXPECT_EQ(reading.pond->climate, pond.climate);
    pond.climate.months.push_back(one);
    EXPECT_FALSE(readPondText(writePond(pond), "pond.toml").pond) << "a month comes once";
    pond.climate.months = {one};
    pond.climate.months[0].humidity_percent = Quantity(50.0);
    EXPECT_FALSE(readPondText(writePond(pond), "pond.toml").pond) << "one way to say how moist";
}

}  // namespace
}  // namespace engine
