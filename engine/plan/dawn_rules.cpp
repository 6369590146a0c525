#include "engine/plan/dawn_rules.h"

#include "engine/base/error.h"
#include "engine/run/constants_run.h"
#include "engine/run/run.h"
#include "engine/water/debt_estimate.h"
#include "engine/water/layering.h"
#include "engine/water/sediment.h"
#include "engine/water/water.h"

#include <algorithm>
#include <cmath>

namespace engine {
namespace {

constexpr int kHoldsToReview = 3;

}  // namespace

DawnVerdict verdictOf(DawnReason reason) {
    switch (reason) {
        case DawnReason::FishWaterGood:
        case DawnReason::NoMorningRise:
        case DawnReason::NightBelowLine:
        case DawnReason::ThreeHolds:
            return DawnVerdict::Go;
        case DawnReason::FishWaterHold:
        case DawnReason::FallHold:
        case DawnReason::SmellFaint:
        case DawnReason::WeatherHold:
        case DawnReason::DoseTooLarge:
            return DawnVerdict::Hold;
        case DawnReason::FishWaterBack:
        case DawnReason::FallBack:
        case DawnReason::SmellStrong:
        case DawnReason::FishOffFeed:
            return DawnVerdict::Back;
        case DawnReason::FishWaterStop:
        case DawnReason::FishPiping:
            return DawnVerdict::Stop;
    }
    return DawnVerdict::Hold;
}

DawnLimits dawnLimits(SpeciesGroup group, double saturation, const std::optional<DawnRules>& own) {
    DawnLimits out;
    const auto set = [&](double go, double hold, double back) {
        out.go = go;
        out.hold = hold;
        out.back = back;
    };
    switch (group) {
        case SpeciesGroup::Sport:
        case SpeciesGroup::Percid:
            break;
        case SpeciesGroup::Catfish:
        case SpeciesGroup::Carp:
            set(kCatfishGo.value, kCatfishHold.value, kCatfishBack.value);
            break;
        case SpeciesGroup::Koi:
            set(kKoiGo.value, kKoiHold.value, kKoiBack.value);
            break;
        case SpeciesGroup::Trout:
            set(kTroutGo.value, kTroutHold.value, kTroutBack.value);
            break;
    }
    const double down = std::max(out.go - kGoSaturation.value * saturation, 0.0);
    set(out.go - down, out.hold - down, out.back - down);
    if (own) {
        const auto take = [](double& to, const MaybeQuantity& from) { to = from ? from->value : to; };
        take(out.go, own->go);
        take(out.hold, own->hold);
        take(out.back, own->back);
        take(out.fallHold, own->fallHold);
        take(out.fallBack, own->fallBack);
        take(out.doseHigh, own->doseHigh_percent);
        take(out.doseMiddle, own->doseMiddle_percent);
        take(out.morningRise, own->morningRise);
    }
    return out;
}

DawnLimits dawnLimits(const PondModel& model, double temperature) {
    const double saturation =
        oxygenSaturation(std::clamp(temperature, 0.0, 40.0), 0.0, model.parameters.site.airPressure);
    return dawnLimits(model.parameters.thresholds.group, saturation, model.pond.dawnRules);
}

std::optional<double> doseCap(double debtRatio, bool isMixed, const DawnLimits& limits) {
    if (isMixed || debtRatio < kRampRequiredRatio.value) {
        return std::nullopt;
    }
    return debtRatio > kHighRatio.value ? limits.doseHigh : limits.doseMiddle;
}

DawnDecision decideAtDawn(const Morning& morning, const DawnLimits& limits) {
    ensure(morning.surface || morning.middle, "a decision needs a reading of the upper water");
    DawnDecision out;
    out.fishWater = std::min(morning.surface.value_or(1e300), morning.middle.value_or(1e300));
    out.isMixed = morning.temperatureSurface && morning.temperatureBottom && morning.bottom &&
                  isMixedAtDawn(*morning.temperatureSurface - *morning.temperatureBottom, *morning.bottom);
    out.doseCap_percent = doseCap(morning.debtRatio, out.isMixed, limits);
    const auto because = [&](DawnReason reason) { out.reasons.push_back(reason); };
    because(out.fishWater >= limits.go     ? DawnReason::FishWaterGood
            : out.fishWater >= limits.hold ? DawnReason::FishWaterHold
            : out.fishWater >= limits.back ? DawnReason::FishWaterBack
                                           : DawnReason::FishWaterStop);
    const double night = morning.yesterday ? *morning.yesterday - out.fishWater : 0.0;
    const double since = morning.beforeStart ? *morning.beforeStart - out.fishWater : 0.0;
    if (night > limits.fallBack) {
        because(DawnReason::FallBack);
    } else if (std::max(since, night) > limits.fallHold) {
        because(DawnReason::FallHold);
    }
    if (morning.smell == Smell::Strong) {
        because(DawnReason::SmellStrong);
    } else if (morning.smell == Smell::Faint) {
        because(DawnReason::SmellFaint);
    }
    if (morning.fish == FishBehaviour::Piping) {
        because(DawnReason::FishPiping);
    } else if (morning.fish == FishBehaviour::OffFeed) {
        because(DawnReason::FishOffFeed);
    }
    if (morning.weatherHolds) {
        because(DawnReason::WeatherHold);
    }
    if (morning.nextDose_percent && out.doseCap_percent && *morning.nextDose_percent > *out.doseCap_percent) {
        because(DawnReason::DoseTooLarge);
    }
    out.verdict = DawnVerdict::Go;
    for (const DawnReason reason : out.reasons) {
        out.verdict = std::max(out.verdict, verdictOf(reason));
    }
    if (out.verdict == DawnVerdict::Hold && morning.holdsBefore + 1 >= kHoldsToReview) {
        because(DawnReason::ThreeHolds);
    }
    out.runsToday = out.verdict == DawnVerdict::Go || out.verdict == DawnVerdict::Hold;
    if (morning.midMorning && morning.surface &&
        *morning.midMorning - *morning.surface < limits.morningRise) {
        because(DawnReason::NoMorningRise);
        out.runsToday = false;
    }
    out.wantsSurfaceAir = out.verdict >= DawnVerdict::Back;
    std::stable_sort(out.reasons.begin(), out.reasons.end(),
                     [](DawnReason a, DawnReason b) { return verdictOf(a) > verdictOf(b); });
    if (morning.tonight) {
        heedTonight(out, *morning.tonight, limits);
    }
    return out;
}

void heedTonight(DawnDecision& decision, double tonight, const DawnLimits& limits) {
    if (tonight < limits.hold) {
        decision.reasons.push_back(DawnReason::NightBelowLine);  // no reason is milder
        decision.wantsSurfaceAir = true;
    }
}

Restart restartAfter(double daysOff, double bottomWater, bool isMixed) {
    if (isMixed) {
        return Restart::Formality;
    }
    if (daysOff > kManyDays.value) {
        return Restart::WholeRamp;
    }
    const double few =
        bottomWater < kCoolBottom.value ? kCoolSlowness.value * kFewDays.value : kFewDays.value;
    return daysOff > few ? Restart::ReducedStart : Restart::GoOn;
}

RestartDebt demandAccumulated(const SedimentParameters<double>& sediment, double temperature, double daysOff,
                              double thickness, double oxygenBefore) {
    ensure(thickness > 0.0, "bottom water has a thickness");
    const double taken = sedimentDemandAt_gPerM2Day(sediment, temperature) * daysOff / thickness;
    return {debtFromDays(returnedDebt_gPerM2Day(sediment, temperature), daysOff, thickness),
            std::max(oxygenBefore - taken, 0.0)};
}

}  // namespace engine
