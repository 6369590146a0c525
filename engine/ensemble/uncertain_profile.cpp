#include "engine/ensemble/uncertain_list.h"
#include "engine/run/balance.h"

#include <algorithm>

namespace engine {
namespace {

// One meter reads the whole profile, so that its error is the same at all depths (trade, 1 sigma).
constexpr double kTemperatureError = 0.15;  // [degC], +-0.1 to 0.2
constexpr double kOxygenError = 0.2;        // [g/m^3], optical handheld in the field
constexpr double kDepthError = 0.1;         // [m], cable
constexpr double kThinOxygen = 1.0;  // [g/m^3]; below it a meter's error goes to nothing with the oxygen
// A profile that no one measured (judgement).
constexpr double kGuessedTemperature = 2.0;
constexpr double kGuessedOxygen = 1.0;
constexpr double kGuessedDepth = 0.4;
constexpr MeterError kOxygenMeter{kOxygenError, 1.0};
constexpr Prior kDawnGuess{1.0, 0.7, 1.4, "a dawn reading that was guessed; judgement"};

void addError(UncertainList& list, const char* name, const char* unit, double sigma, double meter,
              std::function<void(MemberSource&, double)> into) {
    Spread spread;
    spread.below = spread.above = sigma;
    UncertainInput& input = list.add(name, unit, spread);
    input.measured = !list.model().profileIsGuess;
    input.meter = MeterError{meter, 1.0};
    input.intoSource = std::move(into);
}

}  // namespace

void addProfileInputs(UncertainList& list) {
    const bool guess = list.model().profileIsGuess;
    addError(list, "error of the profile's oxygen", "mg/L", guess ? kGuessedOxygen : kOxygenError,
             kOxygenError, [](MemberSource& s, double error) {
                 for (double& oxygen : s.profile.oxygen) {
                     oxygen = std::max(oxygen + error * std::min(oxygen / kThinOxygen, 1.0), 0.0);
                 }
             });
    addError(list, "error of the profile's temperature", "degC",
             guess ? kGuessedTemperature : kTemperatureError, kTemperatureError,
             [](MemberSource& s, double error) {
                 for (double& temperature : s.profile.temperature) {
                     temperature += error;
                 }
             });
    addError(list, "error of the profile's depth", "m", guess ? kGuessedDepth : kDepthError, kDepthError,
             [](MemberSource& s, double error) {
                 for (double& depth : s.profile.depth) {
                     depth += error;
                 }
             });
    const BalanceTarget target = balanceTarget(list.model());
    for (std::size_t i = 0; i < target.size(); ++i) {
        if (const MaybeQuantity& read = target[i].oxygen) {
            const char* const name = !target[i].isChange ? "dawn reading"
                                     : i == kOfDawn      ? "loss by dawn, by the logger"
                                                         : "gain by evening, by the logger";
            UncertainInput& input = list.add(name, "mg/L", spreadOf(*read, kDawnGuess, kOxygenMeter));
            if (!target[i].isChange) {
                input.spread.least = 0.0;
            }
            input.measured = isMeasured(*read);
            input.intoSource = [i](MemberSource& s, double value) { s.read[i] = value; };
        }
    }
}

}  // namespace engine
