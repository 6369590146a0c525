#pragma once

#include "engine/run/run.h"

#include <gtest/gtest.h>

#include <cmath>

namespace engine::test {

inline constexpr double kClosing = 1e-9;  ///< Most closing error of a day, of its throughput

/// Expects that a run went to its end, that nothing in it is negative or no number, and that its ledgers
/// close.
inline void expectSound(const PondModel& model, const RampRun& run) {
    ASSERT_EQ(run.end, RunEnd::Completed) << run.message;
    for (std::size_t h = 0; h < run.layers.size(); ++h) {
        for (std::size_t i = 0; i < run.layers[h].size(); ++i) {
            const LayerRow& row = run.layers[h][i];
            ASSERT_TRUE(std::isfinite(row.temperature) && std::isfinite(row.oxygen) &&
                        std::isfinite(row.debt))
                << "row " << h << ", layer " << i;
            ASSERT_GE(row.oxygen, 0.0) << "row " << h << ", layer " << i;
            ASSERT_GE(row.debt, 0.0) << "row " << h << ", layer " << i;
        }
    }
    for (const BudgetRow& row : run.budget) {
        ASSERT_LE(std::fabs(row.closingError()), kClosing * row.throughput()) << "day " << row.day;
    }
    ASSERT_LE(std::fabs(run.debtClosing), kClosing);
    for (const DayRow& row : run.days) {
        ASSERT_TRUE(std::isfinite(row.lowest)) << "night " << row.day;
        ASSERT_GE(row.lowest, 0.0);
        ASSERT_GE(row.liftedVolume, 0.0);
        ASSERT_GE(row.debtLeft, 0.0);
        ASSERT_TRUE(std::isfinite(row.lowestTime) && std::isfinite(row.liftedVolume) &&
                    std::isfinite(row.debtLeft));
    }
    ASSERT_EQ(run.layers.size(), run.hours.size());
    ASSERT_EQ(static_cast<int>(run.layers.front().size()), model.grid.layers());
}

}  // namespace engine::test
