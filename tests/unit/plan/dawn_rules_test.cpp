#include "engine/plan/dawn_rules.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>

namespace engine {
namespace {

constexpr double kSaturation = 9.0;

DawnLimits limits(SpeciesGroup group = SpeciesGroup::Sport) {
    return dawnLimits(group, kSaturation, std::nullopt);
}

/// A good morning of a ramp under way.
Morning good() {
    Morning morning;
    morning.surface = 6.0;
    morning.middle = 5.6;
    morning.bottom = 1.0;
    morning.beforeStart = 6.0;
    morning.yesterday = 5.8;
    morning.temperatureSurface = 26.0;
    morning.temperatureBottom = 21.0;
    morning.debtRatio = 0.8;
    morning.nextDose_percent = 8.0;
    morning.isStarted = true;
    return morning;
}

bool says(const DawnDecision& decision, DawnReason reason) {
    return std::find(decision.reasons.begin(), decision.reasons.end(), reason) != decision.reasons.end();
}

DawnVerdict verdict(const Morning& morning, SpeciesGroup group = SpeciesGroup::Sport) {
    return decideAtDawn(morning, limits(group)).verdict;
}

// The rows of the trade's table, common practice.
struct Row {
    SpeciesGroup group;
    double oxygen;
    DawnVerdict verdict;
};

class DawnTable : public testing::TestWithParam<Row> {};

TEST_P(DawnTable, TheWorstOfTheUpperTwoDecides) {
    Morning morning;
    morning.surface = GetParam().oxygen + 1.5;
    morning.middle = GetParam().oxygen;
    morning.bottom = 0.0;
    EXPECT_EQ(verdict(morning, GetParam().group), GetParam().verdict);
    std::swap(morning.surface, morning.middle);
    EXPECT_EQ(verdict(morning, GetParam().group), GetParam().verdict);
}

INSTANTIATE_TEST_SUITE_P(
    Rows, DawnTable,
    testing::Values(
        Row{SpeciesGroup::Sport, 5.0, DawnVerdict::Go}, Row{SpeciesGroup::Sport, 4.9, DawnVerdict::Hold},
        Row{SpeciesGroup::Sport, 4.0, DawnVerdict::Hold}, Row{SpeciesGroup::Sport, 3.9, DawnVerdict::Back},
        Row{SpeciesGroup::Sport, 3.0, DawnVerdict::Back}, Row{SpeciesGroup::Sport, 2.9, DawnVerdict::Stop},
        Row{SpeciesGroup::Percid, 4.9, DawnVerdict::Hold}, Row{SpeciesGroup::Catfish, 4.0, DawnVerdict::Go},
        Row{SpeciesGroup::Catfish, 3.9, DawnVerdict::Hold}, Row{SpeciesGroup::Carp, 2.9, DawnVerdict::Back},
        Row{SpeciesGroup::Carp, 2.4, DawnVerdict::Stop}, Row{SpeciesGroup::Koi, 5.9, DawnVerdict::Hold},
        Row{SpeciesGroup::Koi, 6.0, DawnVerdict::Go}, Row{SpeciesGroup::Trout, 7.0, DawnVerdict::Go},
        Row{SpeciesGroup::Trout, 6.9, DawnVerdict::Hold}, Row{SpeciesGroup::Trout, 5.9, DawnVerdict::Back},
        Row{SpeciesGroup::Trout, 4.9, DawnVerdict::Stop}));

TEST(DawnRules, AGoodMorningGoes) {
    const DawnDecision decision = decideAtDawn(good(), limits());
    EXPECT_EQ(decision.verdict, DawnVerdict::Go);
    EXPECT_TRUE(decision.runsToday);
    EXPECT_FALSE(decision.wantsSurfaceAir);
    EXPECT_EQ(decision.doseCap_percent, 15.0);
}

TEST(DawnRules, NothingIsStartedBelowTheGoLimitOrWithASmell) {
    // Trade 3.3: no start under 5 mg/L at dawn (trout 7), nor with a smell of sulfide.
    Morning morning;
    morning.surface = 4.9;
    EXPECT_EQ(verdict(morning), DawnVerdict::Hold);
    morning.surface = 6.9;
    EXPECT_EQ(verdict(morning), DawnVerdict::Go);
    EXPECT_EQ(verdict(morning, SpeciesGroup::Trout), DawnVerdict::Hold);
    morning.smell = Smell::Faint;
    EXPECT_EQ(verdict(morning), DawnVerdict::Hold);
    morning.smell = Smell::Strong;
    EXPECT_EQ(verdict(morning), DawnVerdict::Back);
}

TEST(DawnRules, AFallHoldsAndAGreatOneInANightStepsBack) {
    Morning morning = good();
    morning.beforeStart = 5.6 + 1.05;
    EXPECT_EQ(verdict(morning), DawnVerdict::Hold);
    EXPECT_TRUE(says(decideAtDawn(morning, limits()), DawnReason::FallHold));
    morning = good();
    morning.yesterday = 5.6 + 2.05;
    EXPECT_EQ(verdict(morning), DawnVerdict::Back);
    EXPECT_TRUE(says(decideAtDawn(morning, limits()), DawnReason::FallBack));
}

TEST(DawnRules, SmellAndFishSpeakWhateverTheMeterSays) {
    Morning morning = good();
    morning.smell = Smell::Faint;
    EXPECT_EQ(verdict(morning), DawnVerdict::Hold);
    morning.smell = Smell::Strong;
    EXPECT_EQ(verdict(morning), DawnVerdict::Back);
    morning.smell = Smell::None;
    EXPECT_EQ(verdict(morning), DawnVerdict::Go);
    morning.fish = FishBehaviour::OffFeed;
    EXPECT_EQ(verdict(morning), DawnVerdict::Back);
    morning.fish = FishBehaviour::Piping;
    EXPECT_EQ(verdict(morning), DawnVerdict::Stop);
}

TEST(DawnRules, TheWeatherHolds) {
    Morning morning = good();
    morning.weatherHolds = true;
    EXPECT_EQ(verdict(morning), DawnVerdict::Hold);
    EXPECT_TRUE(says(decideAtDawn(morning, limits()), DawnReason::WeatherHold));
}

TEST(DawnRules, TomorrowsDoseHoldsNotOnlyTodaysReading) {
    Morning morning = good();
    morning.nextDose_percent = 15.1;
    EXPECT_EQ(verdict(morning), DawnVerdict::Hold);
    morning.debtRatio = 0.3;
    EXPECT_EQ(verdict(morning), DawnVerdict::Go);
    morning.nextDose_percent = 25.1;
    EXPECT_EQ(verdict(morning), DawnVerdict::Hold);
    morning.debtRatio = 0.1;
    EXPECT_EQ(verdict(morning), DawnVerdict::Go);
    morning.debtRatio = 0.8;
    morning.bottom = 2.1;
    morning.temperatureBottom = 25.1;  // mixed: the debt is out
    EXPECT_EQ(verdict(morning), DawnVerdict::Go);
    EXPECT_TRUE(decideAtDawn(morning, limits()).isMixed);
    morning.bottom = 1.9;  // temperature alone does not prove it
    EXPECT_EQ(verdict(morning), DawnVerdict::Hold);
}

TEST(DawnRules, ThreeHoldsAskForAReview) {
    Morning morning = good();
    morning.weatherHolds = true;
    morning.holdsBefore = 1;
    EXPECT_FALSE(says(decideAtDawn(morning, limits()), DawnReason::ThreeHolds));
    morning.holdsBefore = 2;
    EXPECT_TRUE(says(decideAtDawn(morning, limits()), DawnReason::ThreeHolds));
}

TEST(DawnRules, NoRiseInTheMorningNoRun) {
    Morning morning = good();
    morning.midMorning = 6.9;
    EXPECT_FALSE(decideAtDawn(morning, limits()).runsToday);
    EXPECT_TRUE(says(decideAtDawn(morning, limits()), DawnReason::NoMorningRise));
    morning.midMorning = 7.0;
    EXPECT_TRUE(decideAtDawn(morning, limits()).runsToday);
    EXPECT_FALSE(says(decideAtDawn(morning, limits()), DawnReason::NoMorningRise));
}

TEST(DawnRules, ALowNightAheadWantsSurfaceAirBeforeMidnight) {
    Morning morning = good();
    morning.tonight = 3.9;
    EXPECT_TRUE(decideAtDawn(morning, limits()).wantsSurfaceAir);
    EXPECT_TRUE(says(decideAtDawn(morning, limits()), DawnReason::NightBelowLine));
    morning.tonight = 4.1;
    EXPECT_FALSE(decideAtDawn(morning, limits()).wantsSurfaceAir);
}

TEST(DawnRules, TheGravestReasonStandsFirst) {
    Morning morning = good();
    morning.weatherHolds = true;
    morning.fish = FishBehaviour::Piping;
    EXPECT_EQ(decideAtDawn(morning, limits()).reasons.front(), DawnReason::FishPiping);
}

TEST(DawnRules, HighWaterLowersTheLimits) {
    // A saturation of 6.9 mg/L, so that 7 for trout cannot be had: 80 % of it is taken.
    const DawnLimits high = dawnLimits(SpeciesGroup::Trout, 6.9, std::nullopt);
    EXPECT_NEAR(high.go, 0.8 * 6.9, 1e-12);
    EXPECT_NEAR(high.go - high.hold, 1.0, 1e-9);
}

TEST(DawnRules, TheFileMaySetThem) {
    DawnRules own;
    own.go = Quantity(5.5);
    own.doseHigh_percent = Quantity(10.0);
    const DawnLimits set = dawnLimits(SpeciesGroup::Sport, kSaturation, own);
    EXPECT_EQ(set.go, 5.5);
    EXPECT_EQ(set.hold, 4.0);
    EXPECT_EQ(doseCap(0.8, false, set), 10.0);
}

TEST(DawnRules, AStopAsksForTheRampAgain) {
    EXPECT_EQ(restartAfter(2.0, 20.0, false), Restart::GoOn);
    EXPECT_EQ(restartAfter(5.0, 20.0, false), Restart::ReducedStart);
    EXPECT_EQ(restartAfter(5.0, 8.0, false), Restart::GoOn);  // cool
    EXPECT_EQ(restartAfter(15.0, 20.0, false), Restart::WholeRamp);
    EXPECT_EQ(restartAfter(15.0, 20.0, true), Restart::Formality);
}

TEST(DawnRules, DebtGathersByTheSedimentsLaw) {
    SedimentParameters<double> sediment;
    sediment.demand = fromPerDay(0.9);
    sediment.regenerationShare = 0.2;
    // 60 days over 1 m of bottom water at 20 degC: 60 times 0.2 of 0.9 g/m^2/d.
    EXPECT_NEAR(demandAccumulated(sediment, 20.0, 60.0, 1.0, 0.0).debt, 10.8, 1e-9);
    EXPECT_NEAR(demandAccumulated(sediment, 20.0, 2.0, 1.0, 3.0).oxygen, 1.2, 1e-9);
    EXPECT_EQ(demandAccumulated(sediment, 20.0, 20.0, 1.0, 3.0).oxygen, 0.0);
    EXPECT_NEAR(demandAccumulated(sediment, 30.0, 60.0, 1.0, 0.0).debt, 10.8 * std::pow(1.065, 10.0), 1e-9);
    EXPECT_NEAR(demandAccumulated(sediment, 4.0, 60.0, 1.0, 0.0).debt, 0.5 * 10.8 * std::pow(1.065, -16.0),
                1e-9)
        << "half of the rule in cold water";
}

}  // namespace
}  // namespace engine
