// Every pond of scenarios/ in clear weather under the trade's six plans, its worst lows printed beside those
// of a rough two-box model. That model is common practice, not a source and not a target: it has no heat, no
// wind and no plume that detrains below the surface. Where the two order plans differently, the table says
// so; only what must hold of any run is asserted.
#include "engine/base/text.h"
#include "engine/run/run.h"
#include "tests/scenario.h"

#include <gtest/gtest.h>

#include <array>
#include <cmath>
#include <cstdio>
#include <iostream>
#include <optional>

namespace engine::test {
namespace {

constexpr int kDays = 14;
constexpr double kTie = 0.3;       // [g/m^3], the issue: smaller differences are ties
constexpr double kClosing = 1e-9;  // Of the throughput of a day

constexpr std::size_t kPlans = 6;
constexpr std::array<const char*, kPlans> kPlanNames{"nothing", "at once",  "doubling",
                                                     "S-shape", "cap 10 %", "cap 25 %"};

/// The plans of the two-box table: its caps are held for all fourteen days.
std::array<std::optional<Ramp>, kPlans> plans() {
    std::array<std::optional<Ramp>, kPlans> all;
    for (std::size_t i = 1; i < kPlans; ++i) {
        all[i].emplace().name = kPlanNames[i];
    }
    all[2]->kind = RampKind::Doubling;
    all[2]->first_min = 30.0;
    all[3]->kind = RampKind::Table;
    all[3]->minutes = {30, 60, 90, 120, 120, 150, 180, 240, 360, 600, 960, 1440};
    for (const std::size_t cap : {std::size_t{4}, std::size_t{5}}) {
        all[cap]->kind = RampKind::Capped;
        all[cap]->dose_percent = cap == 4 ? 10.0 : 25.0;
        all[cap]->hold = true;
    }
    return all;
}

struct PondCase {
    const char* name;
    std::array<double, kPlans> twoBox;  ///< Worst low by plan [g/m^3]; negative: not given
};

constexpr std::array<double, kPlans> kNotGiven{-1, -1, -1, -1, -1, -1};
constexpr std::array<PondCase, 11> kPonds{{
    {"new-clay", {7.8, 7.4, 7.4, 7.4, 7.6, 7.5}},
    {"grandfathers-pond", {5.9, 1.5, 2.1, 2.5, 5.0, 4.3}},
    {"windy-dugout", kNotGiven},
    {"spring-trout", {8.3, 7.6, 7.5, 7.5, 7.8, 7.7}},
    {"pea-soup", {4.1, 0.4, 0.5, 0.5, 3.5, 2.8}},
    {"old-quarry", kNotGiven},
    {"salt-lens", {5.9, 0.5, 2.0, 2.6, 4.7, 3.7}},
    {"high-meadow", {6.4, 4.6, 4.9, 5.2, 5.9, 5.4}},
    {"courtyard-koi", {6.6, 3.8, 4.3, 4.3, 6.2, 5.7}},
    {"weedy-woodland", {7.8, 4.6, 5.1, 5.7, 7.1, 6.4}},
    {"fee-cats", {4.3, 0.7, 0.7, 0.7, 3.9, 3.4}},
}};

void PrintTo(const PondCase& one, std::ostream* stream) {
    *stream << one.name;
}

void expectWhole(const RampRun& run) {
    ASSERT_EQ(run.end, RunEnd::Completed) << run.message;
    for (const DayRow& row : run.days) {
        ASSERT_TRUE(std::isfinite(row.lowest)) << run.name << ", night " << row.day;
    }
    for (const HourRow& row : run.hours) {
        ASSERT_TRUE(std::isfinite(row.mean) && std::isfinite(row.surface) && std::isfinite(row.bottom) &&
                    std::isfinite(row.surfaceTemperature) && std::isfinite(row.bottomTemperature))
            << run.name << ", time " << row.time;
    }
    for (const BudgetRow& row : run.budget) {
        ASSERT_LE(std::fabs(row.closingError()), kClosing * row.throughput())
            << run.name << ", day " << row.day;
    }
    ASSERT_LE(std::fabs(run.debtClosing), kClosing) << run.name;
}

/// "new-clay   7.8 (d3) | 7.4 ..." and the orders that differ by more than a tie in both.
void printRow(const PondCase& one, const std::array<DayRow, kPlans>& worst) {
    std::string text;
    for (std::size_t i = 0; i < kPlans; ++i) {
        const bool given = one.twoBox[i] >= 0.0;
        text += std::string(kPlanNames[i]) + " " + fixed(worst[i].lowest, 1) + " (n" +
                std::to_string(worst[i].day) + ") / " + (given ? fixed(one.twoBox[i], 1) : "-") +
                (i + 1 < kPlans ? ", " : "");
    }
    std::cout << one.name << ": " << text << "\n";
    for (std::size_t i = 0; i < kPlans; ++i) {
        for (std::size_t j = i + 1; j < kPlans && one.twoBox[0] >= 0.0; ++j) {
            const double here = worst[i].lowest - worst[j].lowest, there = one.twoBox[i] - one.twoBox[j];
            const bool bothSpeak = std::fabs(here) >= kTie && std::fabs(there) >= kTie;
            if (bothSpeak && (here > 0.0) != (there > 0.0)) {
                std::cout << "    other order: " << kPlanNames[i] << " and " << kPlanNames[j] << ", here "
                          << fixed(here, 1) << ", two boxes " << fixed(there, 1) << "\n";
            }
        }
    }
}

class ClearWeather : public testing::TestWithParam<PondCase> {};

TEST_P(ClearWeather, IsRunToTheEndUnderEveryPlan) {
    const PondModel model = prepare(inClearWeather(scenario(GetParam().name)));
    RunRequest request;
    request.days = kDays;
    std::array<DayRow, kPlans> worst;
    const auto all = plans();
    for (std::size_t i = 0; i < kPlans; ++i) {
        const RampRun run = runRamp(model, all[i] ? &*all[i] : nullptr, request);
        expectWhole(run);
        if (HasFatalFailure()) {
            return;
        }
        worst[i] = run.worst();
    }
    printRow(GetParam(), worst);
}

INSTANTIATE_TEST_SUITE_P(Ponds, ClearWeather, testing::ValuesIn(kPonds), [](const auto& row) {
    std::string name = row.param.name;
    std::replace(name.begin(), name.end(), '-', '_');
    return name;
});

}  // namespace
}  // namespace engine::test
