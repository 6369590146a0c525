#include "engine/water/parameters.h"

#include "engine/pond/pond_io.h"
#include "engine/water/water.h"
#include "tests/pond_texts.h"

#include <gtest/gtest.h>

#include <string>
#include <vector>

namespace {

using namespace engine;

Pond scenario(const std::string& name) {
    return readPond(std::string(DAWNLINE_SCENARIOS) + "/" + name + ".toml").pond.value();
}

Pond plainPond() {
    return readPondText(test::kPlainPond, "plain.toml").pond.value();
}

struct Bottom3 {
    const char* name;
    BottomWater::Cause cause;
    double depth, volume;
};
/// By a separate script from the readings of the scenarios, with the density of Tanaka and others (2001):
/// half of the density difference lies at 1.4596, 0.6444 and 0.8778 m, 2 mg/L at 1.2973 and 1.2297 m and
/// nowhere.
constexpr Bottom3 kScenarios[] = {{"grandfathers-pond", BottomWater::Cause::Oxygen, 1.2973, 5201.6},
                                  {"courtyard-koi", BottomWater::Cause::Density, 0.6444, 254.27},
                                  {"new-clay", BottomWater::Cause::Density, 0.8778, 6550.0}};

// Tolerance 1 mm and 1 m^3 in 1000: the two densities differ by less than 0.1 % over these spans.
TEST(BottomWater, OfTheScenarios) {
    for (const Bottom3& wanted : kScenarios) {
        const Pond pond = scenario(wanted.name);
        const BottomWater bottom = bottomWater(*pond.profile, Basin(pond.basin));
        EXPECT_EQ(bottom.cause, wanted.cause) << wanted.name;
        EXPECT_NEAR(bottom.depth, wanted.depth, 1e-3) << wanted.name;
        EXPECT_NEAR(bottom.volume, wanted.volume, 1e-3 * wanted.volume) << wanted.name;
    }
}

Profile profileOf(std::vector<double> temperature, std::vector<double> oxygen,
                  std::vector<double> salinity = {}) {
    Profile profile;
    profile.depth = {0.0, 1.0, 2.0, 3.0};
    profile.temperature = std::move(temperature);
    profile.oxygen = std::move(oxygen);
    profile.salinity = std::move(salinity);
    return profile;
}

TEST(BottomWater, ByOxygenByDensityOrNotAtAll) {
    const Basin basin(plainPond().basin);
    const auto of = [&](const Profile& profile) { return bottomWater(profile, basin); };
    // Less than one degree between top and bottom and oxygen everywhere: mixed.
    EXPECT_FALSE(of(profileOf({25, 25, 24.5, 24.1}, {8, 8, 7, 6})).exists());
    EXPECT_EQ(of(profileOf({25, 25, 24.5, 24.1}, {8, 8, 7, 6})).volume, 0.0);
    // Colder on top of warmer is no layering, even by more than a degree.
    EXPECT_FALSE(of(profileOf({20, 21, 22, 23}, {8, 8, 7, 6})).exists());
    // Mixed by temperature, but 2 mg/L half way from 3 to 1.
    const BottomWater thin = of(profileOf({25, 25, 25, 25}, {8, 3, 1, 0}));
    EXPECT_EQ(thin.cause, BottomWater::Cause::Oxygen);
    EXPECT_NEAR(thin.depth, 1.5, 1e-12);
    // The shallower of the two counts.
    EXPECT_EQ(of(profileOf({25, 25, 20, 20}, {8, 1, 0, 0})).cause, BottomWater::Cause::Oxygen);
    EXPECT_NEAR(of(profileOf({25, 25, 20, 20}, {8, 1, 0, 0})).depth, 6.0 / 7.0, 1e-12);
    // Poor from the very top.
    EXPECT_EQ(of(profileOf({25, 25, 25, 25}, {1.5, 1, 0, 0})).depth, 0.0);
    EXPECT_NEAR(of(profileOf({25, 25, 25, 25}, {1.5, 1, 0, 0})).volume, basin.volume(), 1e-9);
    // Salt holds warm water down: half way at 1.5 m.
    const BottomWater salty = of(profileOf({20, 20, 20, 20}, {8, 8, 8, 8}, {0, 0, 5, 5}));
    EXPECT_EQ(salty.cause, BottomWater::Cause::Density);
    EXPECT_NEAR(salty.depth, 1.5, 1e-9);
}

OxygenThresholds thresholdsWith(SpeciesGroup group, double surface, double elevation = 0.0) {
    Pond pond = plainPond();
    pond.limits.speciesGroup = group;
    pond.place.elevation = elevation;
    return thresholdsOf(pond, profileOf({surface, 20, 18, 15}, {8, 8, 7, 6}));
}

TEST(OxygenThresholds, BySpeciesGroup) {
    struct Row {
        SpeciesGroup group;
        double stress, lethal;
    };
    for (const Row& row : {Row{SpeciesGroup::Sport, 4, 2},
                           {SpeciesGroup::Catfish, 3, 1},
                           {SpeciesGroup::Carp, 3, 1},
                           {SpeciesGroup::Koi, 6, 1},
                           {SpeciesGroup::Trout, 6, 3},
                           {SpeciesGroup::Percid, 4, 1.5}}) {
        const OxygenThresholds thresholds = thresholdsWith(row.group, 15.0);
        EXPECT_EQ(thresholds.stress, row.stress);
        EXPECT_EQ(thresholds.lethal, row.lethal);
        EXPECT_FALSE(thresholds.warmWaterRaise);
        EXPECT_FALSE(thresholds.altitudeCut);
        EXPECT_EQ(thresholds.fishShare, 0.2);
    }
    EXPECT_EQ(thresholdsWith(SpeciesGroup::Trout, 15.0).fishMax, 20.0);
    EXPECT_GT(thresholdsWith(SpeciesGroup::Sport, 15.0).fishMax, 100.0);
}

TEST(OxygenThresholds, WarmWaterRaisesTheStressLine) {
    EXPECT_EQ(thresholdsWith(SpeciesGroup::Sport, 28.0).stress, 4.0);
    EXPECT_EQ(thresholdsWith(SpeciesGroup::Sport, 28.1).stress, 5.0);
    EXPECT_TRUE(thresholdsWith(SpeciesGroup::Sport, 28.1).warmWaterRaise);
    EXPECT_EQ(thresholdsWith(SpeciesGroup::Sport, 28.1).lethal, 2.0);
    EXPECT_EQ(thresholdsWith(SpeciesGroup::Trout, 18.0).stress, 6.0);
    EXPECT_EQ(thresholdsWith(SpeciesGroup::Trout, 18.1).stress, 7.0);
}

TEST(OxygenThresholds, NeverAboveFourFifthsOfSaturation) {
    const OxygenThresholds high = thresholdsWith(SpeciesGroup::Koi, 27.0, 2500.0);
    EXPECT_TRUE(high.altitudeCut);
    EXPECT_NEAR(high.stress, 0.8 * oxygenSaturation(27.0, 0.0, airPressure(2500.0)), 1e-12);
    EXPECT_EQ(high.lethal, 1.0);
}

TEST(OxygenThresholds, OwnNumbersSwitchTheModifiersOff) {
    Pond pond = plainPond();
    pond.limits.stress = 4.5;
    pond.limits.lethal = 2.5;
    pond.limits.fishWater_percent = 30.0;
    pond.limits.fishMax = 25.0;
    const OxygenThresholds thresholds = thresholdsOf(pond, profileOf({31, 20, 18, 15}, {8, 8, 7, 6}));
    EXPECT_EQ(thresholds.stress, 4.5);
    EXPECT_EQ(thresholds.lethal, 2.5);
    EXPECT_NEAR(thresholds.fishShare, 0.3, 1e-12);
    EXPECT_EQ(thresholds.fishMax, 25.0);
    EXPECT_FALSE(thresholds.warmWaterRaise);
}

TEST(OxygenThresholds, GroupOfTheHeaviestFish) {
    Pond pond = plainPond();
    pond.limits.speciesGroup.reset();
    const auto group = [&](std::vector<FishStock> fish) {
        pond.fish = std::move(fish);
        return thresholdsOf(pond, *pond.profile).group;
    };
    EXPECT_EQ(group({}), SpeciesGroup::Sport);
    EXPECT_EQ(group({{"largemouth bass", 100.0, {}}, {"common carp", 150.0, {}}}), SpeciesGroup::Carp);
    EXPECT_EQ(group({{"rainbow trout", 80.0, {}}, {"bluegill", 20.0, {}}}), SpeciesGroup::Trout);
    EXPECT_EQ(group({{"channel catfish", 200.0, {}}, {"koi", 20.0, {}}}), SpeciesGroup::Catfish);
    EXPECT_EQ(group({{"walleye", 50.0, {}}}), SpeciesGroup::Percid);
    EXPECT_EQ(group({{"koi", 900.0, {}}}), SpeciesGroup::Koi);
}

// The debt of the bottom water is the stated one in the mean over its volume, however many layers there are.
// Tolerance 0.5 %: in the layer that z_b cuts, the share of the thickness stands for that of the volume.
TEST(StartState, HoldsTheStatedDebt) {
    const Pond pond = scenario("grandfathers-pond");
    const Basin basin(pond.basin);
    const BottomWater bottom = bottomWater(*pond.profile, basin);
    for (const int layers : {12, 40, 160}) {
        const Grid grid = makeGrid(basin, layers, 3.0, {}, {});
        const StartState<double> start = startState(pond, *pond.profile, bottom, grid);
        double fast = 0.0, medium = 0.0;
        for (int i = 0; i < layers; ++i) {
            fast += grid.volume[i] * start.fast[i] / bottom.volume;
            medium += grid.volume[i] * start.medium[i] / bottom.volume;
            if (grid.face[i + 1] <= bottom.depth) {
                EXPECT_EQ(start.fast[i] + start.medium[i] + start.slow[i], 0.0);
                EXPECT_NEAR(start.chlorophyll[i], 70.0, 1e-9);
            } else if (grid.face[i] >= bottom.depth) {
                EXPECT_NEAR(start.chlorophyll[i], 70.0 / 3.0, 1e-9);
            }
        }
        EXPECT_NEAR(fast + medium, 10.5, 0.005 * 10.5) << layers;
        EXPECT_NEAR(fast / (fast + medium), 0.55, 1e-9) << layers;
    }
}

// A bottom water that still holds oxygen throughout carries a given debt evenly, but nothing fast; of its age
// alone no debt follows.
TEST(StartState, DebtOfABottomThatStillHasOxygen) {
    Pond pond = scenario("new-clay");
    pond.bottom.oxygenDebt = 2.0;
    const Basin basin(pond.basin);
    const BottomWater bottom = bottomWater(*pond.profile, basin);
    const Grid grid = makeGrid(basin, 80, 3.6, {}, {});
    const StartState<double> start = startState(pond, *pond.profile, bottom, grid);
    for (int i = 0; i < 80; ++i) {
        if (grid.face[i] >= bottom.depth) {
            EXPECT_EQ(start.fast[i], 0.0) << i;
            EXPECT_NEAR(start.medium[i], 0.45 * 2.0, 1e-9) << i;
        }
    }
    pond.bottom.oxygenDebt.reset();
    pond.bottom.age_years = Quantity(60.0);
    pond.bottom.stratified_days = Quantity(90.0);
    EXPECT_TRUE(bottom.isOxic);
    EXPECT_EQ(startDebt(pond, startProfile(pond), bottom, basin), 0.0);
}

TEST(StartState, FollowsTheProfile) {
    const Pond pond = scenario("grandfathers-pond");
    const Basin basin(pond.basin);
    const Grid grid = makeGrid(basin, 34, 3.4, {}, {});
    const StartState<double> start = startState(pond, *pond.profile, bottomWater(*pond.profile, basin), grid);
    const int layer = grid.layerAt(1.25);
    EXPECT_NEAR(start.temperature[layer], 26.4, 1e-6);  // midway between 27.1 and 25.7 degC, 4.2 and 0.5 mg/L
    EXPECT_NEAR(start.oxygen[layer], 2.35, 1e-6);
    EXPECT_EQ(start.temperature.back(), 20.6);
    EXPECT_EQ(start.oxygen.back(), 0.0);
}

TEST(StartState, MixedPondHasNoDebt) {
    Pond pond = plainPond();
    const Profile mixed = profileOf({20, 20, 20, 20}, {8, 8, 8, 8});
    const Basin basin(pond.basin);
    const Grid grid = makeGrid(basin, 20, 3.0, {}, {});
    const StartState<double> start = startState(pond, mixed, bottomWater(mixed, basin), grid);
    for (int i = 0; i < 20; ++i) {
        EXPECT_EQ(start.fast[i] + start.medium[i] + start.slow[i], 0.0);
        EXPECT_NEAR(start.chlorophyll[i], 70.0, 1e-9);
    }
}

}  // namespace
