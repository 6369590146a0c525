#include "engine/water/fish_water.h"

#include "tests/support/columns.h"

#include <gtest/gtest.h>

#include <numeric>
#include <vector>

namespace {

using FishWater = engine::FishWater<double>;
using engine::Grid;
using engine::test::evenTank;

constexpr double kNoLimit = 1e9;

// Five layers of a fifth each with 8, 6, 4, 2, 0: their mid-volumes lie at 10, 30, 50, 70 and 90 %, so that
// the best 20 % have more than 7, the best 10 % more than 8, the best half more than 4.
TEST(FishWater, OxygenOfTheBestShare) {
    const Grid grid = evenTank(5, 3.0, 1000.0);
    const std::vector<double> cool(5, 20.0);
    for (const std::vector<double>& oxygen :
         {std::vector<double>{8, 6, 4, 2, 0}, {0, 2, 4, 6, 8}, {2, 8, 0, 6, 4}}) {
        FishWater water(grid);
        EXPECT_DOUBLE_EQ(water.oxygen(oxygen, cool, 0.2, kNoLimit), 7.0);
        EXPECT_DOUBLE_EQ(water.oxygen(oxygen, cool, 0.1, kNoLimit), 8.0);
        EXPECT_DOUBLE_EQ(water.oxygen(oxygen, cool, 0.02, kNoLimit), 8.0);
        EXPECT_DOUBLE_EQ(water.oxygen(oxygen, cool, 0.5, kNoLimit), 4.0);
        EXPECT_DOUBLE_EQ(water.oxygen(oxygen, cool, 1.0, kNoLimit), 0.0);
    }
}

TEST(FishWater, GoesByVolume) {
    Grid grid = evenTank(3, 3.0, 1000.0);
    grid.volume = {600.0, 300.0, 100.0};  // mid-volumes from the bottom up: 5, 25, 70 %
    FishWater water(grid);
    EXPECT_DOUBLE_EQ(water.oxygen({1.0, 5.0, 9.0}, {20, 20, 20}, 0.2, kNoLimit), 9.0 - 4.0 * 15.0 / 20.0);
}

TEST(FishWater, WarmWaterDoesNotCount) {
    const Grid grid = evenTank(5, 3.0, 1000.0);
    const std::vector<double> warmTop = {24, 22, 19, 16, 14};
    FishWater water(grid);
    // Left are 4, 2 and 0 at 10, 30 and 50 %.
    EXPECT_DOUBLE_EQ(water.oxygen({8, 6, 4, 2, 0}, warmTop, 0.2, 20.0), 3.0);
    EXPECT_DOUBLE_EQ(water.oxygen({8, 6, 4, 2, 0}, warmTop, 0.2, 10.0), 0.0);
}

// The kept order must not outlive the water it was made for.
TEST(FishWater, FollowsTheWater) {
    const Grid grid = evenTank(5, 3.0, 1000.0);
    const std::vector<double> cool(5, 20.0);
    FishWater water(grid);
    EXPECT_DOUBLE_EQ(water.oxygen({8, 6, 4, 2, 0}, cool, 0.2, kNoLimit), 7.0);
    EXPECT_DOUBLE_EQ(water.oxygen({1, 2, 5, 9, 3}, cool, 0.2, kNoLimit), 7.0);
    EXPECT_DOUBLE_EQ(water.oxygen({3, 3, 3, 3, 3}, cool, 0.2, kNoLimit), 3.0);
}

TEST(FishWater, FishSpreadAboveTheirLine) {
    const Grid grid = evenTank(5, 3.0, 1000.0);
    const std::vector<double> cool(5, 20.0);
    FishWater water(grid);
    std::vector<double> places(5);
    const std::vector<double> good = {8, 7, 6, 2, 0};
    water.places(water.oxygen(good, cool, 0.2, kNoLimit), 4.0, places);
    for (int i = 0; i < 5; ++i) {
        EXPECT_NEAR(places[i], i < 3 ? 1.0 / 3.0 : 0.0, 1e-12) << i;
    }
    // Nowhere above the line: they crowd into the best share, not less than that.
    const std::vector<double> poor = {3, 1, 0.5, 0, 0};
    const double best = water.oxygen(poor, cool, 0.2, kNoLimit);
    EXPECT_DOUBLE_EQ(best, 2.0);
    water.places(best, 4.0, places);
    EXPECT_NEAR(places[0], 1.0, 1e-12);
    // Even water: all of it.
    const std::vector<double> even(5, 1.0);
    water.places(water.oxygen(even, cool, 0.2, kNoLimit), 4.0, places);
    for (const double place : places) {
        EXPECT_NEAR(place, 0.2, 1e-12);
    }
}

}  // namespace
