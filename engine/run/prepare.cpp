#include "engine/base/error.h"
#include "engine/base/units.h"
#include "engine/ramps/log.h"
#include "engine/run/balance.h"
#include "engine/run/constants_run.h"
#include "engine/run/member_run.h"
#include "engine/water/light.h"
#include "engine/water/water.h"

#include <algorithm>
#include <array>
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

/// Slopes are taken anew where the last search ended.
constexpr int kSearches = 2;

void balance(PondModel& model) {
    BalanceResult& result = model.balance;
    const BalanceTarget target = balanceTarget(model);
    result.usedDawn = target[kOfDawn].oxygen && !target[kOfDawn].isChange;
    if (target[kOfDawn].oxygen && target[kOfDawn].isChange) {
        result.loggerDepth = target[kOfDawn].depth;
    }
    const std::array<ReadOxygen, 1> read{readOxygen(target)};
    BalanceMiss miss;
    const OrganicParameters<double> organic = model.parameters.organic;
    for (int i = 0; i < kSearches; ++i) {
        model.parameters.organic = organic;
        MemberPack<double> pack{model.parameters, model.start, {PackOffset<double>{}}};
        balancePack(model, balanceSlopes(model), read, pack, std::span(&miss, 1), {});
        model.parameters = pack.parameters;
    }
    result.respiration = model.parameters.respiration.factor;
    result.photosynthesis = model.parameters.growth.factor;
    result.wind = model.parameters.surface.windFactor;
    result.missOxygen = miss.oxygen;
    result.missTemperature = miss.temperature;
}

}  // namespace

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
