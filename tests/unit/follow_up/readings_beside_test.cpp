#include "engine/follow_up/readings_beside.h"

#include "tests/made_up_comparison.h"

#include <gtest/gtest.h>

namespace engine {
namespace {

using test::madeUpComparison;

/// A run of two hours around the reading of 05:40 on day 1, in which oxygen is a line in time and depth.
Comparison linear() {
    Comparison comparison = madeUpComparison();
    RampRun& run = comparison.runs[1];
    run.hours.clear();
    run.layers.clear();
    for (const double hour : {5.0, 6.0}) {
        HourRow row;
        row.time = hour * 3600.0;
        run.hours.push_back(row);
        std::vector<LayerRow> layers;
        for (const double depth : comparison.model.grid.middle) {
            layers.push_back({20.0, hour - depth, 0.0});
        }
        run.layers.push_back(layers);
    }
    return comparison;
}

TEST(ReadingsBeside, TheModelIsReadAtTheReadingsOwnDepthAndTime) {
    const Comparison comparison = linear();
    const auto beside = readingsBeside(comparison.model, comparison.runs[1]);
    ASSERT_EQ(beside.size(), 1U);
    EXPECT_DOUBLE_EQ(beside[0].time, 5.0 * 3600.0 + 40.0 * 60.0);
    EXPECT_DOUBLE_EQ(beside[0].depth, 0.5);
    EXPECT_DOUBLE_EQ(beside[0].oxygen, 5.1);
    EXPECT_NEAR(*beside[0].model, 5.0 + 40.0 / 60.0 - 0.5, 1e-12);
}

TEST(ReadingsBeside, OutsideTheRunThereIsNoModel) {
    Comparison comparison = linear();
    comparison.runs[1].hours[0].time = 5.9 * 3600.0;
    EXPECT_FALSE(readingsBeside(comparison.model, comparison.runs[1])[0].model);
    comparison.runs[1].hours[0].time = 4.0 * 3600.0;
    comparison.runs[1].hours[1].time = 5.0 * 3600.0;
    EXPECT_FALSE(readingsBeside(comparison.model, comparison.runs[1])[0].model);
    comparison.runs[1].layers.clear();
    EXPECT_FALSE(readingsBeside(comparison.model, comparison.runs[1])[0].model);
}

TEST(ReadingsBeside, ReadingsWithoutOxygenOrDepthAreLeftOutAndTheRestIsInOrder) {
    Comparison comparison = linear();
    Reading early = comparison.model.pond.readings.front();
    early.at = *early.at - std::chrono::minutes(30);
    Reading onlySecchi = early;
    onlySecchi.oxygen.reset();
    comparison.model.pond.fileReadings = {early, onlySecchi};
    const auto beside = readingsBeside(comparison.model, comparison.runs[1]);
    ASSERT_EQ(beside.size(), 2U);
    EXPECT_LT(beside[0].time, beside[1].time);
}

}  // namespace
}  // namespace engine
