#include "engine/run/prepare.h"

#include "engine/base/error.h"
#include "engine/base/units.h"
#include "engine/ramps/log.h"
#include "engine/run/constants_run.h"
#include "engine/run/member_run.h"
#include "engine/water/light.h"
#include "engine/water/water.h"

#include <algorithm>
#include <cmath>

namespace engine {
namespace {

/// Deepest diffuser that any ramp of the file uses [m]; half the pond's depth without an aerator.
double deepestDiffuser(const Pond& pond, const Basin& basin) {
    double deepest = pond.aerator && pond.aerator->depth ? pond.aerator->depth->value : 0.0;
    for (const Ramp& ramp : pond.ramps) {
        if (ramp.depth) {
            for (const double depth : ramp.depth->values) {
                deepest = std::max(deepest, depth);
            }
        }
    }
    return deepest > 0.0 ? deepest : 0.5 * basin.maxDepth();
}

/// Oxygen of a do-nothing run under the usual day: of the fish water a day after the start, and at a
/// reading's depth and hour.
struct TrialDay {
    double fishWaterAfterDay = 0.0;
    double atReading = 0.0;
};

TrialDay trialDay(const PondModel& model, double readingTime, double readingDepth) {
    Column<double> column(model.grid, model.parameters, model.aerator, model.bottom, model.start);
    TrialDay out;
    bool isRead = false;
    for (const MemberStep& step : trialSteps(model, readingTime, model.startTime + kDay)) {
        const Forcing& f = step.air;
        column.step(step.dt, {f.shortwave, f.air, f.vapourPressure, f.wind10, f.cloud}, {});
        if (step.endsHour && !isRead) {
            isRead = true;
            out.atReading = interpolate(model.grid.middle, column.solutes(kOxygen, 0), readingDepth);
        }
    }
    out.fishWaterAfterDay = column.fishWater();
    return out;
}

/// The factor at which `excess` (model minus wanted) vanishes, searched in 0.1 to 10 by bisection on its
/// logarithm with secant steps where they stay inside; its sign must change monotonically.
/// @param miss  What is left if an end of the range is reached.
template <class Excess>
double findFactor(const Excess& excess, double& miss) {
    double low = std::log(kLeastBalance), high = std::log(kGreatestBalance);
    double atLow = excess(kLeastBalance), atHigh = excess(kGreatestBalance);
    miss = 0.0;
    if ((atLow > 0.0) == (atHigh > 0.0)) {
        const bool lowIsNearer = std::fabs(atLow) < std::fabs(atHigh);
        miss = lowIsNearer ? atLow : atHigh;
        return lowIsNearer ? kLeastBalance : kGreatestBalance;
    }
    // Illinois: false position that halves the weight of an end that does not move.
    double middle = 0.0;
    int side = 0;
    for (int i = 0; i < 40 && high - low > 1e-6; ++i) {
        middle = (low * atHigh - high * atLow) / (atHigh - atLow);
        const double value = excess(std::exp(middle));
        if (std::fabs(value) < 1e-4) {
            break;
        }
        if ((value > 0.0) == (atHigh > 0.0)) {
            high = middle;
            atHigh = value;
            atLow *= side == 1 ? 0.5 : 1.0;
            side = 1;
        } else {
            low = middle;
            atLow = value;
            atHigh *= side == -1 ? 0.5 : 1.0;
            side = -1;
        }
    }
    return std::exp(middle);
}

/// The last dawn reading before day 1: within two hours of sunrise, with depth and oxygen.
std::optional<Reading> dawnReading(const PondModel& model) {
    std::optional<Reading> found;
    double foundTime = -1e18;
    const int first = -30;
    const WeatherSeries sun(model.pond, {true, std::nullopt}, first, 1);
    for (const auto* list : {&model.pond.readings, &model.pond.fileReadings}) {
        for (const Reading& reading : *list) {
            if (!reading.at || !reading.oxygen || !reading.depth) {
                continue;
            }
            const double time = secondsOf(model.pond, *reading.at);
            const int day = static_cast<int>(std::floor(time / kDay)) + 1;
            if (day < first || day >= 1 ||
                std::fabs(time - sun.sunrise(day)) > kDawnReading_h.value * kHour) {
                continue;
            }
            // Of several on one morning, the one nearest sunrise counts.
            const bool sameDay = std::floor(time / kDay) == std::floor(foundTime / kDay);
            const bool nearer = std::fabs(time - sun.sunrise(day)) < std::fabs(foundTime - sun.sunrise(day));
            if ((sameDay && nearer) || (!sameDay && time > foundTime)) {
                found = reading;
                foundTime = time;
            }
        }
    }
    return found;
}

void balance(PondModel& model) {
    FishWater water(model.grid);
    OxygenThresholds& thresholds = model.parameters.thresholds;
    const OxygenThresholds asked = thresholds;
    // What the pond respires does not depend on how warm its fish like it, and water that crosses their limit
    // within a day would be balanced against nothing.
    thresholds.fishMax = OxygenThresholds{}.fishMax;
    const double wanted =
        water.oxygen(model.start.oxygen, model.start.temperature, thresholds.fishShare, thresholds.fishMax);
    BalanceResult& result = model.balance;
    const BalanceTarget target = balanceTarget(model);
    const MaybeQuantity& dawn = target.dawnOxygen;
    result.usedDawn = dawn.has_value();
    const auto rise = [&](double factor) {
        model.parameters.growth.factor = factor;
        return trialDay(model, target.readingTime, target.readingDepth).fishWaterAfterDay - wanted;
    };
    const auto fall = [&](double factor) {
        model.parameters.respiration.factor = factor;
        return trialDay(model, target.readingTime, target.readingDepth).atReading - *dawn;
    };
    double missFall = 0.0, missRise = 0.0;
    // Each factor hardly moves the other's target, so that a few turns settle both.
    for (int turn = 0; turn < (dawn ? 4 : 1); ++turn) {
        if (dawn) {
            result.respiration = findFactor(fall, missFall);
            model.parameters.respiration.factor = result.respiration;
        }
        result.photosynthesis = findFactor(rise, missRise);
        model.parameters.growth.factor = result.photosynthesis;
    }
    thresholds = asked;
    result.miss = std::fabs(missFall) > std::fabs(missRise) ? missFall : missRise;
}

}  // namespace

BalanceTarget balanceTarget(const PondModel& model) {
    BalanceTarget target{std::nullopt, model.startTime + kDay / 2, model.surfaceDepth};
    if (const std::optional<Reading> dawn = dawnReading(model)) {
        // The same clock hour of the night that follows the profile.
        const double time = secondsOf(model.pond, *dawn->at);
        target.readingTime =
            model.startTime + std::fmod(std::fmod(time - model.startTime, kDay) + kDay, kDay);
        target.readingTime = std::max(target.readingTime, model.startTime + 60.0);
        target.readingDepth = *dawn->depth;
        target.dawnOxygen = dawn->oxygen;
    }
    return target;
}

PondModel prepareUnbalanced(const Pond& pond, const Resolution& resolution) {
    PondModel model;
    model.pond = pond;
    model.pond.weather = weatherKnownAt(pond, std::nullopt);  // of a day known twice, what was known last
    model.profile = startProfile(pond);
    model.profileIsGuess = !pond.profile;
    model.basin = Basin(pond.basin);
    model.bottom = bottomWater(model.profile, model.basin);
    model.resolution = resolution;
    const double deepest = deepestDiffuser(pond, model.basin);
    std::vector<double> density;
    for (std::size_t i = 0; i < model.profile.depth.size(); ++i) {
        density.push_back(waterDensity(model.profile.temperature[i],
                                       model.profile.salinity.empty() ? 0.0 : model.profile.salinity[i]));
    }
    model.grid = makeGrid(model.basin, resolution.layers, deepest, model.profile.depth, density);
    model.parameters = centralParameters(pond, model.profile);
    model.start = startState(pond, model.profile, model.bottom, model.grid);
    if (pond.aerator) {
        model.aerator.diffusers = static_cast<int>(pond.aerator->diffusers->value);
        model.aerator.freeAir = fromLitrePerMinute(*pond.aerator->freeAir_lPerMin);
        model.aerator.bubbleDiameter =
            1e-3 * (pond.aerator->bubble_mm ? pond.aerator->bubble_mm->value : kBubble_mm.value);
    }
    model.startTime = secondsOf(pond, *model.profile.at);
    const double maxDepth = model.basin.maxDepth();
    model.surfaceDepth = maxDepth < 1.0 ? 0.5 * maxDepth : 0.5;
    model.bottomDepth = std::min(std::max(maxDepth - 0.5, 0.5 * maxDepth), deepest);
    const double zb = model.bottom.exists() ? model.bottom.depth : maxDepth;
    for (int i = 0; i < model.grid.layers(); ++i) {
        const double above = std::clamp((zb - model.grid.face[i]) / model.grid.thickness[i], 0.0, 1.0);
        model.oxygenReserve_kg += above * model.grid.volume[i] * model.start.oxygen[i] / kGramPerKilogram;
    }
    for (int i = 0; i < model.grid.layers(); ++i) {
        model.debt_kg +=
            model.grid.volume[i] * (model.start.fast[i] + model.start.medium[i]) / kGramPerKilogram;
    }
    return model;
}

PondModel prepare(const Pond& pond, const Resolution& resolution) {
    PondModel model = prepareUnbalanced(pond, resolution);
    balance(model);
    return model;
}

}  // namespace engine
