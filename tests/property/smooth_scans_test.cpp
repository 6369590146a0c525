// Answers that do not hang on a hair: an input in small steps, and the lows of all nights move in small
// steps. Slow.
#include "engine/base/units.h"
#include "engine/run/run.h"
#include "tests/scenario.h"
#include "tests/scenario_names.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <cstdio>
#include <cstdlib>
#include <functional>
#include <map>
#include <string>
#include <vector>

namespace engine::test {
namespace {

constexpr int kPoints = 25;
constexpr double kJump = 0.1;  // [g/m^3] as is asked

/// One input of a pond, from a share of its own value to another.
struct Scan {
    const char* name;
    double from, to;  ///< Over the file's value
    std::function<void(Pond& pond, double share)> set;
};

void scale(MaybeQuantity& quantity, double share) {
    if (quantity) {
        *quantity = Quantity(quantity->value * share);
    }
}

const std::vector<Scan> kScans{
    {"air flow", 0.5, 1.5, [](Pond& p, double share) { scale(p.aerator->freeAir_lPerMin, share); }},
    {"depth of the diffusers", 0.6, 1.0, [](Pond& p, double share) { scale(p.aerator->depth, share); }},
    {"first minutes", 0.5, 2.0, [](Pond& p, double share) { scale(p.ramps.front().first_min, share); }},
    {"Secchi depth", 0.7, 1.4, [](Pond& p, double share) { scale(p.water.secchi, share); }},
    {"oxygen debt", 0.5, 1.5, [](Pond& p, double share) { scale(p.bottom.oxygenDebt, share); }},
};

std::vector<double> lowsOf(const Pond& pond) {
    const PondModel model = prepare(pond);
    const RampRun run = runRamp(model, &pond.ramps.front(), {});
    std::vector<double> lows;
    for (const DayRow& day : run.days) {
        lows.push_back(day.lowest);
    }
    return lows;
}

struct Jumps {
    int found = 0, steps = 0;
    double most = 0.0;
    std::string where;
};

/// A step counts by how far it is from what the steps beside it are: a slope is no jump.
void addScan(const char* scenarioName, const Scan& scan, const Pond& pond, Jumps& jumps) {
    std::vector<std::vector<double>> lows;
    for (int i = 0; i < kPoints; ++i) {
        Pond one = pond;
        scan.set(one, scan.from + (scan.to - scan.from) * i / (kPoints - 1));
        lows.push_back(lowsOf(one));
    }
    for (std::size_t night = 0; night < lows.front().size(); ++night) {
        for (std::size_t i = 2; i + 1 < lows.size(); ++i) {
            const double before = lows[i - 1][night] - lows[i - 2][night],
                         here = lows[i][night] - lows[i - 1][night],
                         after = lows[i + 1][night] - lows[i][night];
            const double least = std::min(before, after), greatest = std::max(before, after);
            const double off = std::max({here - greatest, least - here, 0.0});
            ++jumps.steps;
            jumps.found += off > kJump ? 1 : 0;
            if (off > jumps.most) {
                jumps.most = off;
                jumps.where =
                    std::string(scenarioName) + ", " + scan.name + ", night " + std::to_string(night + 1);
            }
        }
    }
}

TEST(SmoothScans, SmallStepsOfAnInputAreSmallStepsOfTheLows) {
    if (std::getenv("DAWNLINE_SLOW") == nullptr) {
        GTEST_SKIP() << "DAWNLINE_SLOW asks for it";
    }
    std::map<std::string, Jumps> byInput;
    for (const char* name : kScenarioNames) {
        for (const Scan& scan : kScans) {
            Pond pond = scenario(name);
            // The trade's rule, whose first minutes are scanned; its doubling has no steps of its own.
            Ramp ramp;
            ramp.name = "doubling";
            ramp.kind = RampKind::Doubling;
            ramp.first_min = Quantity(25.0);
            pond.ramps = {ramp};
            Jumps jumps;
            addScan(name, scan, pond, jumps);
            std::printf("%-18s %-24s %3d of %4d steps of a low over %.1f mg/L, most %.2f (%s)\n", name,
                        scan.name, jumps.found, jumps.steps, kJump, jumps.most, jumps.where.c_str());
            Jumps& all = byInput[scan.name];
            all.found += jumps.found;
            all.steps += jumps.steps;
        }
    }
    for (const auto& [name, all] : byInput) {
        std::printf("%s: %d of %d\n", name.c_str(), all.found, all.steps);
        EXPECT_LT(all.found, all.steps / 10) << name;
    }
    EXPECT_EQ(byInput.at("oxygen debt").found, 0);
}

}  // namespace
}  // namespace engine::test
