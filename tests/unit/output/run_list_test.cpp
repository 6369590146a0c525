#include "engine/output/run_list.h"

#include "engine/base/units.h"

#include <gtest/gtest.h>

namespace engine {
namespace {

/// Five days: a run, a hold day, two runs, the second over midnight, and from day 4 on without a stop.
Comparison madeUp() {
    Comparison comparison;
    comparison.days = 5;
    comparison.model.pond.place.firstDay = Date(std::chrono::year(2026) / 6 / 29);
    comparison.model.bottom = {BottomWater::Cause::Oxygen, 2.0, 1000.0};
    comparison.runs.resize(2);
    RampRun& run = comparison.runs[1];
    run.end = RunEnd::Completed;
    run.daysToContinuous = 4;
    const auto block = [](int day, double from_h, double to_h) {
        const double midnight = (day - 1) * kDay;
        return RunBlock{midnight + from_h * kHour, midnight + to_h * kHour, 2, 3.0, day};
    };
    run.schedule = {block(1, 10, 10.5), block(3, 10, 11), block(3, 23, 25), block(4, 10, 60)};
    for (int day = 1; day <= 5; ++day) {
        run.days.push_back({day, 0.0, 50.0 * day, 4.0 + day});
    }
    return comparison;
}

TEST(RunList, HasARowForEveryRunAndEveryDayWithout) {
    const auto rows = runList(madeUp(), 1);
    ASSERT_EQ(rows.size(), 5U);
    EXPECT_EQ(rows[0].minutes, 30.0);
    EXPECT_EQ(rows[0].dose_percent, 5.0);
    EXPECT_EQ(rows[1].start, std::nullopt);
    EXPECT_EQ(rows[2].day, 3);
    EXPECT_EQ(rows[3].stop, 3 * kDay + kHour);
    EXPECT_EQ(rows[4].day, 4);
    EXPECT_EQ(rows[4].stop, std::nullopt) << "the air stays on";
    EXPECT_EQ(rows[4].lowestP50, 8.0);
    EXPECT_TRUE(runList(madeUp(), 0).empty());
}

TEST(RunList, AsCsv) {
    const std::string csv = runListCsv(runList(madeUp(), 1));
    EXPECT_TRUE(
        csv.starts_with("day,date,start_time,run_minutes,diffusers,depth_m,dose_percent,lowest_p05_mg_per_l,"
                        "lowest_p50_mg_per_l,surface_air_from,surface_air_until\r\n1,2026-06-29,10:00,30,2,3,"
                        "5,5,5,,\r\n2,2026-06-30,,0,,,10,6,6,,\r\n"
                        "3,2026-07-01,10:00,60,"))
        << csv;
}

}  // namespace
}  // namespace engine
