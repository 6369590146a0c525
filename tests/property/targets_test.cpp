// How far the three scenarios must reach: the central run at the default resolution. No scenario,
// tolerance or default moves for a target.
#include "engine/ensemble/compare.h"
#include "tests/scenario.h"

#include <gtest/gtest.h>

#include <cmath>
#include <cstdlib>
#include <iomanip>
#include <iostream>

namespace engine::test {
namespace {

Comparison compared(const std::string& name, const Resolution& resolution = {}) {
    CompareOptions options;
    options.days = 14;
    options.resolution = resolution;
    options.endStates = false;
    options.attribution = false;
    return compare(scenario(name), options);
}

const Comparison& headline() {
    static const Comparison result = compared("grandfathers-pond");
    return result;
}

const RampRun& runOf(const Comparison& comparison, RampKind kind) {
    const Ramp& ramp = rampOfKind(comparison.model.pond, kind);
    return *std::find_if(comparison.runs.begin(), comparison.runs.end(),
                         [&](const RampRun& run) { return run.name == ramp.name; });
}

double low(const RampRun& run, int night) {
    return run.days[static_cast<std::size_t>(night - 1)].lowest;
}

void print(const RampRun& run) {
    std::cout << std::fixed << std::setprecision(2) << std::setw(28) << std::left << run.name << std::right;
    for (const DayRow& row : run.days) {
        std::cout << ' ' << row.lowest;
    }
    std::cout << " mg/L\n";
}

TEST(Targets, HeadlineDoNothingStaysAboveFourOnTheFirstTwoNights) {
    print(headline().runs.front());
    EXPECT_GT(low(headline().runs.front(), 1), 4.0);
    EXPECT_GT(low(headline().runs.front(), 2), 4.0);
}

TEST(Targets, HeadlineContinuousFallsBelowTwoOnTheFirstTwoNights) {
    const RampRun& run = runOf(headline(), RampKind::Continuous);
    print(run);
    EXPECT_LT(std::min(low(run, 1), low(run, 2)), 2.0);
}

TEST(Targets, HeadlineDoublingGapsMostOnNightsFourToEightByMoreThanTwo) {
    const RampRun& run = runOf(headline(), RampKind::Doubling);
    print(run);
    int night = 1;
    const auto gap = [&](int n) { return low(headline().runs.front(), n) - low(run, n); };
    for (int n = 1; n <= headline().days; ++n) {
        night = gap(n) > gap(night) ? n : night;
    }
    std::cout << "largest gap " << gap(night) << " mg/L on night " << night << "\n";
    EXPECT_GE(night, 4);
    EXPECT_LE(night, 8);
    EXPECT_GT(gap(night), 2.0);
}

TEST(Targets, HeadlineTenPercentCapStaysNearDoNothing) {
    const RampRun& run = runOf(headline(), RampKind::Capped);
    print(run);
    for (int n = 1; n <= 7; ++n) {
        EXPECT_LE(std::fabs(low(run, n) - low(headline().runs.front(), n)), 1.5) << "night " << n;
    }
}

TEST(Targets, NewClayNeedsNoRamp) {
    const Comparison clay = compared("new-clay");
    double least = 1e9, most = 0.0;
    for (const RampRun& run : clay.runs) {  // do-nothing is one of them
        print(run);
        least = std::min(least, run.worst().lowest);
        most = std::max(most, run.worst().lowest);
    }
    std::cout << "worst lows " << least << " to " << most << " mg/L\n";
    EXPECT_LE(most - least, 0.7);
    EXPECT_GT(least, 6.0);
}

TEST(Targets, KoiMinutesAreNotADose) {
    const Comparison koi = compared("courtyard-koi");
    const auto share = [](const Comparison& comparison) {
        const RampRun& run = runOf(comparison, RampKind::Doubling);
        EXPECT_EQ(run.days.front().runMinutes, 30.0);
        return run.days.front().liftedVolume / comparison.model.bottom.volume;
    };
    std::cout << "30 minutes lift " << 100.0 * share(koi) << " % in the court, " << 100.0 * share(headline())
              << " % in the headline pond\n";
    EXPECT_GE(share(koi), 1.0 / 3.0);
    EXPECT_GE(share(koi), 4.0 * share(headline()));
}

/// Design 4: in depth, at the default layers, every night's low within 0.2 mg/L of the converged one; 160
/// layers stand for it, and steps of 75 s on both sides leave the step out of it. All scenarios with
/// DAWNLINE_SLOW=1.
TEST(Targets, DefaultLayersAreConverged) {
    const char* slow = std::getenv("DAWNLINE_SLOW");
    std::vector<std::string> names{"grandfathers-pond"};
    if (slow != nullptr && std::string_view(slow) == "1") {
        names.insert(names.end(), {"new-clay", "courtyard-koi"});
    }
    for (const std::string& name : names) {
        const Comparison coarse = compared(name, {Resolution{}.layers, 75.0}),
                         fine = compared(name, {160, 75.0});
        for (std::size_t ramp = 0; ramp < fine.runs.size(); ++ramp) {
            double most = 0.0;
            int night = 0;
            for (int n = 1; n <= fine.days; ++n) {
                const double miss = std::fabs(low(coarse.runs[ramp], n) - low(fine.runs[ramp], n));
                night = miss > most ? n : night;
                most = std::max(most, miss);
            }
            std::cout << name << ", " << fine.runs[ramp].name << ": " << std::setprecision(3) << most
                      << " mg/L on night " << night << "\n";
            EXPECT_LE(most, 0.2) << name << ", " << fine.runs[ramp].name << ", night " << night;
        }
    }
}

/// Design 4: in time, at the default settings, every night's low within 0.05 mg/L of the converged one; steps
/// of 37.5 s stand for it, themselves within about 0.02 mg/L of steps of 18.75 s. Design 4 also asks that of
/// 99 % of the hours, which is missed: the test prints the share of hours that are off by more, 2 to 33 %
/// when this was written, the more the longer the air is on by day.
TEST(Targets, NightLowsAreConvergedInTime) {
    const Comparison fine = compared("grandfathers-pond", {Resolution{}.layers, 37.5});
    for (std::size_t ramp = 0; ramp < fine.runs.size(); ++ramp) {
        const RampRun &coarse = headline().runs[ramp], &converged = fine.runs[ramp];
        double most = 0.0;
        int night = 0, over = 0;
        for (int n = 1; n <= fine.days; ++n) {
            const double miss = std::fabs(low(coarse, n) - low(converged, n));
            night = miss > most ? n : night;
            most = std::max(most, miss);
        }
        for (std::size_t h = 0; h < converged.hours.size(); ++h) {
            over += std::fabs(coarse.hours[h].fishWater - converged.hours[h].fishWater) > 0.05 ? 1 : 0;
        }
        const double share = static_cast<double>(over) / static_cast<double>(converged.hours.size());
        std::cout << std::setprecision(3) << coarse.name << ": " << most << " mg/L on night " << night << ", "
                  << 100.0 * share << " % of hours off by more than 0.05\n";
        EXPECT_LE(most, 0.05) << coarse.name << ", night " << night;
    }
}

}  // namespace
}  // namespace engine::test
