// The trade's law (b) at scale: more oxygen debt, more demand of the mud or more respiration never betters a
// night's low, over seeded random ponds, balance factors and schedule kept.
#include "engine/run.h"
#include "tests/runnable_pond.h"

#include <gtest/gtest.h>

#include <array>
#include <cstdlib>
#include <iostream>

namespace engine::test {
namespace {

constexpr unsigned kSeed = 20260714;
constexpr int kDays = 3;
const Resolution kCoarse{20, 900.0};

int ponds() {
    const char* slow = std::getenv("DAWNLINE_SLOW");
    return slow != nullptr && std::string_view(slow) == "1" ? 3000 : 300;
}

enum class Input { Debt, SedimentDemand, Respiration };
constexpr std::array<std::pair<Input, const char*>, 3> kInputs{
    {{Input::Debt, "debt"}, {Input::SedimentDemand, "sediment demand"}, {Input::Respiration, "respiration"}}};

PondModel raised(PondModel model, Input input, double factor) {
    Parameters<double>& p = model.parameters;
    switch (input) {
        case Input::Debt:
            for (auto* pool : {&model.start.fast, &model.start.medium, &model.start.slow}) {
                for (double& value : *pool) {
                    value *= factor;
                }
            }
            break;
        case Input::SedimentDemand:
            p.sedimentDemand *= factor;
            break;
        case Input::Respiration:
            p.respirationBase *= factor;
            p.respirationPerChlorophyll *= factor;
            p.weedRespiration *= factor;
            break;
    }
    return model;
}

TEST(Monotone, NightLowsNeverRiseWithDebtDemandOrRespiration) {
    // Bubbles give more to poorer water, stay smaller and drive the plume a little less, so that the lows of
    // a poorer pond may stand out by what that moves: below the design's tolerance in time.
    constexpr double kRoom = 0.05;
    std::array<int, kInputs.size()> falls{};
    double worst = 0.0;
    for (int draw = 0; draw < ponds(); ++draw) {
        SCOPED_TRACE("seed " + std::to_string(kSeed + draw));
        Dice dice(kSeed + draw);
        const Pond pond = runnablePond(dice);
        // Each tenth with the balance, whose factors stay.
        const PondModel central = draw % 10 == 0 ? prepare(pond, kCoarse) : prepareUnbalanced(pond, kCoarse);
        const Ramp& ramp = central.pond.ramps[static_cast<std::size_t>(draw) % central.pond.ramps.size()];
        RunRequest request;
        request.days = kDays;
        request.keepLayers = false;
        const RampRun before = runRamp(central, &ramp, request);
        request.schedule = before.schedule;  // else a cap is lifted on another day
        for (std::size_t i = 0; i < kInputs.size(); ++i) {
            double fall = 0.0;
            const RampRun after = runRamp(raised(central, kInputs[i].first, 1.3), &ramp, request);
            const RampRun less = runRamp(raised(central, kInputs[i].first, 0.7), &ramp, request);
            for (int n = 0; n < kDays; ++n) {
                const auto night = static_cast<std::size_t>(n);
                EXPECT_LE(after.days[night].lowest, before.days[night].lowest + kRoom)
                    << kInputs[i].second << " raised, " << ramp.name << ", night " << n + 1;
                EXPECT_GE(less.days[night].lowest, before.days[night].lowest - kRoom)
                    << kInputs[i].second << " lowered, " << ramp.name << ", night " << n + 1;
                worst = std::max({worst, after.days[night].lowest - before.days[night].lowest,
                                  before.days[night].lowest - less.days[night].lowest});
                fall = std::max(fall, before.days[night].lowest - after.days[night].lowest);
            }
            falls[i] += fall > 1e-3 ? 1 : 0;
        }
    }
    std::cout << ponds() << " ponds; greatest rise against the law " << worst << " mg/L; lows fall in "
              << falls[0] << " with debt, " << falls[1] << " with demand, " << falls[2]
              << " with respiration\n";
    for (const int count : falls) {
        EXPECT_GE(count, ponds() / 10);
    }
}

}  // namespace
}  // namespace engine::test
