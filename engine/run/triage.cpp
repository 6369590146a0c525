#include "engine/run/triage.h"

#include "engine/column/plume.h"
#include "engine/run/constants_run.h"
#include "engine/run/shares.h"
#include "engine/water/layering.h"
#include "engine/water/water.h"

#include <cmath>

namespace engine {
namespace {

double across(const PondModel& model, const std::vector<double>& values) {
    const std::vector<double>& depth = model.profile.depth;
    return interpolate(depth, values, model.surfaceDepth) - interpolate(depth, values, model.bottomDepth);
}

Layering layeringOf(const PondModel& model) {
    const Profile& profile = model.profile;
    Layering out;
    out.temperature = across(model, profile.temperature);
    out.oxygen = across(model, profile.oxygen);
    out.salinity = profile.salinity.empty() ? 0.0 : -across(model, profile.salinity);
    const bool byRest =
        isMixedThrough(out.temperature, out.oxygen) && std::fabs(out.salinity) < kMixedSalinity.value;
    out.kind = !hasOneTemperature(out.temperature) ? Layering::Kind::Layered
               : byRest                            ? Layering::Kind::Mixed
                                                   : Layering::Kind::OnlyByTemperature;
    return out;
}

std::optional<FirstDose> firstDoseOf(const PondModel& model) {
    if (!model.pond.aerator || !model.bottom.exists()) {
        return std::nullopt;
    }
    FirstDose dose;
    dose.depth = *model.pond.aerator->depth;
    const StartState<double>& start = model.start;
    std::vector<double> density;
    for (std::size_t i = 0; i < start.temperature.size(); ++i) {
        density.push_back(densityOverOrigin(start.temperature[i], start.salinity[i]));
    }
    const PlumeSource source{dose.depth, model.aerator.freeAir, model.aerator.diffusers,
                             model.aerator.bubbleDiameter, model.parameters.site.airPressure};
    const Plume plume = integratePlume(
        source, {model.grid, start.temperature, start.salinity, density, start.oxygen}, model.bottom.depth);
    const double liftedVolume =
        model.parameters.bubbles.nonRecirculatedShare * plume.hypolimneticLift * dose.minutes * kMinute;
    dose.ofBottom_percent = dosePercent(model.bottom, liftedVolume).value_or(0.0);
    dose.ofPond_percent = 100.0 * liftedVolume / model.basin.volume();
    return dose;
}

std::optional<StartSeason> seasonOf(const PondModel& model, const Triage& triage) {
    const Profile& profile = model.profile;
    const double surface = interpolate(profile.depth, profile.temperature, model.surfaceDepth);
    const double top = interpolate(profile.depth, profile.oxygen, model.surfaceDepth);
    const double bottom = interpolate(profile.depth, profile.oxygen, model.bottomDepth);
    if (surface < kDensestWater.value) {
        return StartSeason::Freezing;
    }
    if (surface < kCoolStart.value) {
        return top > kAiredStart.value && bottom > kAiredStart.value ? StartSeason::Best
                                                                     : StartSeason::CoolButPoor;
    }
    const bool isHarmless = !triage.band || *triage.band == RatioBand::Low;
    if (surface < kWarmStart.value || isHarmless || triage.layering.kind == Layering::Kind::Mixed) {
        return std::nullopt;
    }
    return pondClass(model.pond.bottom) == PondClass::Mucky ? StartSeason::LastResort : StartSeason::Warm;
}

}  // namespace

RatioBand ratioBand(double ratio) {
    return ratio < kRampRequiredRatio.value  ? RatioBand::Low
           : ratio < kHighRatio.value        ? RatioBand::RampRequired
           : ratio <= kDoNotStartRatio.value ? RatioBand::High
                                             : RatioBand::DoNotStart;
}

std::optional<double> doseCap_percent(RatioBand band) {
    switch (band) {
        case RatioBand::Low:
            return std::nullopt;
        case RatioBand::RampRequired:
            return kCapRequired_percent.value;
        case RatioBand::High:
        case RatioBand::DoNotStart:
            return kCapHigh_percent.value;
    }
    return std::nullopt;
}

Triage triageOf(const PondModel& model) {
    Triage out;
    if (model.bottom.exists()) {
        out.ratio = debtToReserve(model);
        out.band = out.ratio ? ratioBand(*out.ratio) : RatioBand::DoNotStart;
    }
    out.firstDose = firstDoseOf(model);
    out.layering = layeringOf(model);
    out.season = seasonOf(model, out);
    return out;
}

}  // namespace engine
