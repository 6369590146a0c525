#include "engine/intake/usual_ramp.h"

#include "engine/pond/pond_check.h"
#include "engine/ramps/schedule.h"

#include <algorithm>
#include <cmath>

namespace engine {
namespace {

constexpr double kFirst_min = 30.0;
constexpr double kAdd_minPerDay = 30.0;
constexpr double kDose_percent = 10.0;
constexpr int kLongestTable = 60;  ///< Days; as long as a capped ramp may take.

/// The minutes that a rule gives, up to the first day of continuous running.
std::vector<double> minutesOf(const Ramp& ramp) {
    std::vector<double> minutes;
    for (int day = 1; day <= kLongestTable; ++day) {
        minutes.push_back(ruleMinutes(ramp, day));
        if (minutes.back() >= kMinutesPerDay) {
            break;
        }
    }
    return minutes;
}

std::vector<double> startTable(const Ramp& ramp) {
    if (ramp.kind == RampKind::Doubling || ramp.kind == RampKind::Linear) {
        return minutesOf(ramp);
    }
    Ramp usual;
    usual.kind = RampKind::Doubling;
    usual.first_min = Quantity(kFirst_min);
    return minutesOf(usual);
}

/// Several runs a day cannot know of each other when a capped day's dose is reached.
void dropPulses(Ramp& ramp) {
    const auto several = [](double pulses) { return pulses > 1.0; };
    if (ramp.pulses && std::any_of(ramp.pulses->values.begin(), ramp.pulses->values.end(), several)) {
        ramp.pulses.reset();
    }
}

}  // namespace

void changeKind(Ramp& ramp, RampKind kind) {
    if (ramp.kind == kind) {
        return;
    }
    const Ramp old = ramp;
    ramp.kind = kind;
    ramp.first_min.reset();
    ramp.factor.reset();
    ramp.add_minPerDay.reset();
    ramp.dose_percent.reset();
    ramp.hold = false;
    ramp.minutes.clear();
    switch (kind) {
        case RampKind::Continuous:
            break;
        case RampKind::Linear:
            ramp.add_minPerDay = Quantity(kAdd_minPerDay);
            [[fallthrough]];
        case RampKind::Doubling:
            ramp.first_min = old.first_min.value_or(Quantity(kFirst_min));
            if (!old.minutes.empty() && old.minutes.front() >= 1.0) {
                ramp.first_min = Quantity(old.minutes.front());
            }
            break;
        case RampKind::Capped:
            ramp.dose_percent = Quantity(kDose_percent);
            dropPulses(ramp);
            break;
        case RampKind::Table:
            ramp.minutes = startTable(old);
            break;
    }
}

Ramp usualRamp(RampKind kind, const std::string& name) {
    Ramp ramp;
    ramp.name = name;
    changeKind(ramp, kind);
    return ramp;
}

Aerator usualAerator(const BasinShape& basin) {
    constexpr double kFreeAir_lPerMin = 45.0;
    constexpr double kAboveBottom = 0.4;
    constexpr double kShallowest = 0.1;
    const double deepest = deepestPoint(basin).value_or(0.0);
    const double depth = std::floor(10.0 * (deepest - kAboveBottom)) / 10.0;
    Aerator aerator;
    aerator.freeAir_lPerMin = Quantity(kFreeAir_lPerMin);
    aerator.diffusers = Quantity(1.0);
    aerator.depth = Quantity(std::max(depth, kShallowest));
    return aerator;
}

}  // namespace engine
