#include "engine/run/profile_check.h"

#include "engine/wording/wording.h"
#include "tests/scenario.h"

#include <gtest/gtest.h>

#include <map>
#include <set>

namespace engine {
namespace {

using test::scenario;
using Doubts = std::set<ProfileDoubt>;
using enum ProfileDoubt;

Doubts doubts(const Pond& pond) {
    Doubts out;
    for (const ProfileFinding& finding : profileFindings(pond)) {
        out.insert(finding.doubt);
    }
    return out;
}

ProfileFinding only(const Pond& pond) {
    const auto findings = profileFindings(pond);
    EXPECT_EQ(findings.size(), 1U);
    return findings.empty() ? ProfileFinding{} : findings.front();
}

TEST(ProfileCheck, SpeaksOfTheScenariosOnlyWhereTheTradeWould) {
    // Two ponds full of algae in the afternoon, and one in thin air.
    const std::map<std::string, Doubts> expected{
        {"courtyard-koi", {}},          {"fee-cats", {}},    {"grandfathers-pond", {Supersaturated}},
        {"high-meadow", {ThinAir}},     {"new-clay", {}},    {"old-quarry", {}},
        {"pea-soup", {Supersaturated}}, {"salt-lens", {}},   {"spring-trout", {}},
        {"weedy-woodland", {}},         {"windy-dugout", {}}};
    for (const auto& [name, wanted] : expected) {
        EXPECT_EQ(doubts(scenario(name)), wanted) << name;
    }
}

TEST(ProfileCheck, SaysNothingWithoutAProfile) {
    Pond pond = scenario("high-meadow");
    pond.profile.reset();
    EXPECT_TRUE(profileFindings(pond).empty());
}

TEST(ProfileCheck, AMeterSetForSeaLevelReadsNineInTheMountains) {
    Pond pond = scenario("high-meadow");
    // 98 % of what saturation would be at sea level, all the way down.
    for (double& oxygen : pond.profile->oxygen) {
        oxygen *= 9.28 / 6.95;
    }
    EXPECT_EQ(doubts(pond), (Doubts{ThinAir, SeaLevelMeter}));
    // The same reading at sea level is a good one.
    pond.place.elevation = Quantity(0.0);
    EXPECT_EQ(doubts(pond), Doubts{});
}

TEST(ProfileCheck, MoreThanSaturationWantsPlantsAndSun) {
    Pond weedy = scenario("weedy-woodland");
    weedy.profile->oxygen.front() = 12.0;
    Pond pond = weedy;
    EXPECT_EQ(doubts(pond), Doubts{Supersaturated});
    pond.water.weedsCover_percent.reset();
    EXPECT_EQ(doubts(pond), Doubts{Unexplained}) << "few algae";
    pond = weedy;
    *pond.profile->at -= std::chrono::hours(12);
    EXPECT_EQ(doubts(pond), Doubts{Unexplained}) << "half past five in the morning";
    pond.profile->oxygen.front() = 1.15 * only(weedy).saturation;
    EXPECT_EQ(doubts(pond), Doubts{});
    // A percentage in the column of mg/L.
    pond.profile->oxygen.front() = 38.0;
    EXPECT_EQ(doubts(pond), Doubts{Impossible});
}

TEST(ProfileCheck, LighterWaterDoesNotStayBelow) {
    Pond pond = scenario("new-clay");
    pond.profile->temperature = {23.4, 24, 23, 19.5, 18};
    const ProfileFinding found = only(pond);
    EXPECT_EQ(found.doubt, Inverted);
    EXPECT_EQ(found.depth, 0.0);
    EXPECT_EQ(found.below, 1.0);
    // A meter is off by 0.1 to 0.2 degC.
    pond.profile->temperature = {23.75, 24, 23, 19.5, 18};
    EXPECT_EQ(doubts(pond), Doubts{});
    // Under ice the colder water is the lighter one.
    pond.profile->temperature = {1, 2, 3, 3.7, 4};
    EXPECT_EQ(doubts(pond), Doubts{});
}

TEST(ProfileCheck, ALayerWithoutTemperatureAsksForTheSalinity) {
    Pond pond = scenario("salt-lens");
    pond.profile->temperature = {28, 27.5, 27, 27.5, 28, 27};
    pond.profile->oxygen = {7, 6.8, 6, 0.4, 0, 0};
    pond.profile->salinity.clear();
    const ProfileFinding found = only(pond);
    EXPECT_EQ(found.doubt, HiddenSalt);
    EXPECT_EQ(found.depth, 1.0);
    EXPECT_EQ(found.below, 2.0);
    // The same oxygen under one temperature.
    pond.profile->temperature.assign(6, 27.5);
    EXPECT_EQ(only(pond).doubt, UniformLayer);
    // Oxygen that fades evenly is what sediment makes of water that only diffuses.
    pond.profile->oxygen = {7, 6, 5, 4, 3, 2};
    pond.bottom.smell = Smell::None;
    pond.water.totalSulfide.reset();
    EXPECT_EQ(doubts(pond), Doubts{});
}

TEST(ProfileCheck, SulfideAndOxygenAreNotInOneBottle) {
    Pond pond = scenario("grandfathers-pond");
    pond.profile->oxygen = {8.5, 7.8, 6.8, 3, 1.5, 1.1, 1.0};
    EXPECT_EQ(only(pond).doubt, AeratedSample);
    pond.bottom.smell = Smell::Faint;
    EXPECT_EQ(doubts(pond), Doubts{});
    pond.water.totalSulfide = Quantity(1.0);
    EXPECT_EQ(doubts(pond), Doubts{AeratedSample});
    pond.profile->oxygen = {8.5, 7.8, 6.8, 3, 0.3, 0.1, 1.2};
    EXPECT_EQ(only(pond).doubt, RisingOxygen);
}

}  // namespace
}  // namespace engine
