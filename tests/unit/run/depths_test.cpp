#include "engine/run/depths.h"

#include <gtest/gtest.h>

namespace engine {
namespace {

/// Four layers of a metre each.
Grid fourMetres() {
    Grid grid;
    grid.face = {0.0, 1.0, 2.0, 3.0, 4.0};
    grid.middle = {0.5, 1.5, 2.5, 3.5};
    return grid;
}

std::vector<LayerRow> layersOf(const std::vector<double>& oxygen) {
    std::vector<LayerRow> layers;
    for (const double value : oxygen) {
        layers.push_back({20.0, value, 0.0});
    }
    return layers;
}

/// Rows at 17:30 before day 1, at 18:00, and at each whole hour of the next so many.
RampRun hourly(int hours) {
    RampRun run;
    run.hours.resize(static_cast<std::size_t>(hours) + 2);
    run.hours[0].time = -6.5 * kHour;
    for (int i = 0; i <= hours; ++i) {
        run.hours[static_cast<std::size_t>(i) + 1].time = (i - 6) * kHour;
    }
    return run;
}

TEST(Depths, TheHourNearATimeIsTheFirstWithinHalfAnHour) {
    const RampRun run = hourly(24);
    EXPECT_EQ(hourNear(run, 2.2 * kHour)->time, 2.0 * kHour);
    EXPECT_EQ(hourNear(run, 2.5 * kHour)->time, 2.0 * kHour);
    EXPECT_EQ(hourNear(run, 2.6 * kHour)->time, 3.0 * kHour);
    EXPECT_EQ(hourNear(run, -6.2 * kHour)->time, -6.5 * kHour);
    EXPECT_EQ(hourNear(run, 19.0 * kHour), nullptr);
    EXPECT_EQ(hourNear(run, 2.2 * kHour, 1.0), nullptr);
    EXPECT_EQ(hourNear(run, 2.0 * kHour, 1.0)->time, 2.0 * kHour);
}

TEST(Depths, DawnIsSunriseAndSixWhereTheSunDoesNotRise) {
    const RampRun run = hourly(60);
    Backdrop backdrop;
    backdrop.nights.resize(2);
    backdrop.nights[0].sunrise = 28.7 * kHour;
    EXPECT_EQ(run.hours[dawnHour(backdrop, run, 1)].time, 29.0 * kHour);
    EXPECT_EQ(run.hours[dawnHour(backdrop, run, 2)].time, 54.0 * kHour);
}

TEST(Depths, ThereIsEnoughDownToWhereTheLineIsDrawn) {
    const Grid grid = fourMetres();
    EXPECT_EQ(enoughDownTo(grid, layersOf({8.0, 4.0, 3.9, 7.0}), 4.0), 1.5) << "the middle of the second";
    EXPECT_DOUBLE_EQ(enoughDownTo(grid, layersOf({8.0, 5.0, 3.0, 7.0}), 4.0), 2.0) << "between two middles";
    EXPECT_EQ(enoughDownTo(grid, layersOf({3.0, 8.0, 8.0, 8.0}), 4.0), 0.0);
    EXPECT_EQ(enoughDownTo(grid, layersOf({8.0, 8.0, 8.0, 8.0}), 4.0), 4.0);
}

TEST(Depths, AFieldIsInterpolatedBetweenTheMiddlesOfTheLayers) {
    RampRun run = hourly(48);
    for (HourRow& hour : run.hours) {
        hour.fishWater = 7.0;
        run.layers.push_back(layersOf({8.0, 6.0, 4.0, 2.0}));
    }
    const OxygenField field = oxygenField(fourMetres(), run, 0.0, 1.0, 8);
    ASSERT_EQ(field.time.size(), 27U) << "a day, and an hour at each end";
    EXPECT_EQ(field.time.front(), -1.0 * kHour);
    EXPECT_EQ(field.time.back(), 25.0 * kHour);
    EXPECT_EQ(field.depth, 4.0);
    EXPECT_EQ(field.fishWater, std::vector<double>(27, 7.0));
    // Rows at 0.25, 0.75, ... 3.75 m; beyond the outer middles it stays.
    EXPECT_EQ(field.oxygen[3], (std::vector<double>{8.0, 7.5, 6.5, 5.5, 4.5, 3.5, 2.5, 2.0}));
}

}  // namespace
}  // namespace engine
