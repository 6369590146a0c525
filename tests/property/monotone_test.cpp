// The trade's law (b) at scale: more oxygen debt, more demand of the sediment or more respiration never
// betters the worst low, over seeded random ponds, balance factors and schedule kept.
#include "engine/run/run.h"
#include "tests/runnable_pond.h"

#include <gtest/gtest.h>

#include <array>
#include <cstdlib>
#include <iostream>

namespace engine::test {
namespace {

constexpr unsigned kSeed = 20260714;
constexpr int kDays = 3;
const Resolution kResolution{20, 360.0};  // Half the default layers, the default steps

int ponds() {
    const char* slow = std::getenv("DAWNLINE_SLOW");
    return slow != nullptr && std::string_view(slow) == "1" ? 2000 : 200;
}

enum class Input { Debt, SedimentDemand, Respiration };
constexpr std::array<std::pair<Input, const char*>, 3> kInputs{
    {{Input::Debt, "debt"}, {Input::SedimentDemand, "sediment demand"}, {Input::Respiration, "respiration"}}};

PondModel raised(PondModel model, Input input, double factor) {
    Parameters<double>& p = model.parameters;
    switch (input) {
        case Input::Debt:
            for (auto* demandFraction : {&model.start.fast, &model.start.medium, &model.start.slow}) {
                for (double& value : *demandFraction) {
                    value *= factor;
                }
            }
            break;
        case Input::SedimentDemand:
            p.sediment.demand *= factor;
            break;
        case Input::Respiration:
            p.respiration.factor *= factor;
            break;
    }
    return model;
}

/// How far worst lows went against the law, and in how many ponds they fell as it says.
struct Outcome {
    int against = 0;  ///< By more than the room
    double most = 0.0;
    std::array<int, kInputs.size()> falls{};
};

template <class Broken>
Outcome raiseAndLower(bool dissolves, double room, const Broken& broken) {
    Outcome out;
    for (int draw = 0; draw < ponds(); ++draw) {
        Dice dice(kSeed + draw);
        const Pond pond = runnablePond(dice);
        // Each tenth with the balance, whose factors stay.
        const PondModel central =
            draw % 10 == 0 ? prepare(pond, kResolution) : prepareUnbalanced(pond, kResolution);
        const Ramp& ramp = central.pond.ramps[static_cast<std::size_t>(draw) % central.pond.ramps.size()];
        RunRequest request;
        request.days = kDays;
        request.keepLayers = false;
        request.switches.dissolution = dissolves;
        // One schedule for all, else a cap is lifted on another day; and run anew, since a capped ramp looks
        // for its plume in every step and not on the hour.
        request.schedule = runRamp(central, &ramp, request).schedule;
        const double worst = runRamp(central, &ramp, request).worst().lowest;
        for (std::size_t i = 0; i < kInputs.size(); ++i) {
            const auto worstWith = [&](double factor) {
                return runRamp(raised(central, kInputs[i].first, factor), &ramp, request).worst().lowest;
            };
            const double more = worstWith(1.3), less = worstWith(0.7);
            const double against = std::max(more - worst, worst - less);
            if (against > room) {
                ++out.against;
                broken(kSeed + static_cast<unsigned>(draw), kInputs[i].second, ramp.name, against);
            }
            out.most = std::max(out.most, against);
            out.falls[i] += worst - more > 1e-3 ? 1 : 0;
        }
    }
    std::cout << ponds() << " ponds; greatest step against the law " << out.most << " mg/L, " << out.against
              << " of more than " << room << "; lows fall in " << out.falls[0] << " with debt, "
              << out.falls[1] << " with demand, " << out.falls[2] << " with respiration\n";
    return out;
}

// Where bubbles give nothing, oxygen moves neither water nor heat, so that poorer water stays poorer but for
// the fish, which move, the limiter of the fluxes, and two stages of a step, which overshoot: what a step may
// cost at most, 0.15 g/m^3.
TEST(Monotone, TheWorstLowNeverRisesWithDebtDemandOrRespiration) {
    const Outcome outcome =
        raiseAndLower(false, 0.15, [](unsigned seed, const char* input, const std::string& ramp, double by) {
            ADD_FAILURE() << "seed " << seed << ", " << input << ", " << ramp << ": " << by << " mg/L";
        });
    for (const int count : outcome.falls) {
        EXPECT_GE(count, ponds() / 10);
    }
}

}  // namespace
}  // namespace engine::test
