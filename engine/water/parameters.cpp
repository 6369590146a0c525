#include "engine/water/parameters.h"

#include "engine/water/constants_start.h"
#include "engine/water/debt_estimate.h"
#include "engine/water/light.h"
#include "engine/water/sky.h"
#include "engine/water/toxic.h"
#include "engine/water/water.h"

#include <algorithm>
#include <cmath>

namespace engine {
namespace {

double valueOr(const MaybeQuantity& quantity, double fallback) {
    return quantity ? quantity->value : fallback;
}

double salinityAt(const Profile& profile, std::size_t i) {
    return profile.salinity.empty() ? 0.0 : profile.salinity[i];
}

/// Carlson's relation between Secchi depth and chlorophyll of algal waters.
double chlorophyllFromSecchi(double secchi) {
    return std::exp((kCarlsonConstant.value - std::log(secchi)) / kCarlsonSlope.value);
}

SpeciesGroup groupOf(const std::string& kind) {
    const auto has = [&](std::string_view word) { return kind.find(word) != std::string::npos; };
    if (has("koi") || has("goldfish")) {
        return SpeciesGroup::Koi;
    }
    if (has("trout") || has("salmon") || has("char")) {
        return SpeciesGroup::Trout;
    }
    if (has("catfish")) {
        return SpeciesGroup::Catfish;
    }
    if (has("carp") || has("tench") || has("rudd") || has("bullhead") || has("minnow")) {
        return SpeciesGroup::Carp;
    }
    if (has("walleye") || has("perch") || has("pike") || has("zander")) {
        return SpeciesGroup::Percid;
    }
    return SpeciesGroup::Sport;
}

SpeciesGroup heaviestGroup(const Pond& pond) {
    SpeciesGroup group = SpeciesGroup::Sport;
    double heaviest = 0.0;
    for (const FishStock& fish : pond.fish) {
        if (valueOr(fish.stock_kgPerHa, 0.0) > heaviest) {
            heaviest = *fish.stock_kgPerHa;
            group = groupOf(fish.kind);
        }
    }
    return group;
}

double depthWhere(const std::vector<double>& depth, const std::vector<double>& values, double wanted) {
    for (std::size_t i = 0; i < depth.size(); ++i) {
        if ((values.front() < wanted) == (values[i] < wanted)) {
            continue;
        }
        const double share = (wanted - values[i - 1]) / (values[i] - values[i - 1]);
        return depth[i - 1] + share * (depth[i] - depth[i - 1]);
    }
    return -1.0;
}

}  // namespace

BottomWater bottomWater(const Profile& profile, const Basin& basin) {
    BottomWater bottom;
    std::vector<double> density;
    for (std::size_t i = 0; i < profile.depth.size(); ++i) {
        density.push_back(waterDensity(profile.temperature[i], salinityAt(profile, i)));
    }
    const double surfaceT = profile.temperature.front();
    // What one degree is worth at the surface's temperature, whichever way density falls there.
    constexpr double kHalf = 0.5 * kContrastSpan.value;
    const double oneDegree = std::fabs(waterDensity(surfaceT + kHalf, salinityAt(profile, 0)) -
                                       waterDensity(surfaceT - kHalf, salinityAt(profile, 0)));
    const double contrast = density.back() - density.front();
    if (contrast > oneDegree) {
        bottom.depth = depthWhere(profile.depth, density, density.front() + 0.5 * contrast);
        bottom.cause = BottomWater::Cause::Density;
    }
    double thin = profile.oxygen.front() < kThinOxygen.value
                      ? profile.depth.front()
                      : depthWhere(profile.depth, profile.oxygen, kThinOxygen.value);
    if (thin >= 0.0 && (!bottom.exists() || thin < bottom.depth)) {
        bottom.depth = thin;
        bottom.cause = BottomWater::Cause::Oxygen;
    }
    bottom.volume = bottom.exists() ? basin.volumeBelow(bottom.depth) : 0.0;
    if (bottom.volume <= 0.0) {
        bottom = BottomWater{};
    }
    bottom.isOxic = bottom.exists() &&
                    *std::min_element(profile.oxygen.begin(), profile.oxygen.end()) >= kThinOxygen.value;
    return bottom;
}

OxygenThresholds thresholdsOf(const Pond& pond, const Profile& profile) {
    OxygenThresholds thresholds;
    thresholds.group = pond.limits.speciesGroup.value_or(heaviestGroup(pond));
    const SpeciesLines& lines = speciesLines(thresholds.group);
    thresholds.stress = lines.stress;
    thresholds.lethal = lines.lethal;
    thresholds.fishMax = lines.fishMax;
    const double surface = profile.temperature.front();
    const double ceiling =
        kLineOfSaturation.value * oxygenSaturation(std::clamp(surface, -2.0, 45.0),
                                                   std::clamp(salinityAt(profile, 0), 0.0, 42.0),
                                                   airPressure(*pond.place.elevation));
    // Own numbers switch the modifiers off, each for its own line.
    if (pond.limits.stress) {
        thresholds.stress = *pond.limits.stress;
    } else {
        thresholds.warmWaterRaise = surface > lines.warmSurface;
        thresholds.stress += thresholds.warmWaterRaise ? kWarmRaise.value : 0.0;
        thresholds.altitudeCut = thresholds.stress > ceiling;
        thresholds.stress = std::min(thresholds.stress, ceiling);
    }
    thresholds.lethal = pond.limits.lethal ? pond.limits.lethal->value : std::min(thresholds.lethal, ceiling);
    thresholds.fishShare = 0.01 * valueOr(pond.limits.fishWater_percent, kFishWater_percent.value);
    thresholds.fishMax = valueOr(pond.limits.fishMax, thresholds.fishMax);
    return thresholds;
}

Profile startProfile(const Pond& pond) {
    if (pond.profile) {
        return *pond.profile;
    }
    // A plain guess, and said to be one: surface water at the mean air of the table's first days; below the
    // depth that light or wind reaches, cooler by up to 4 degC a metre in a pond deep enough and warm enough
    // to stratify; oxygen gone below in all but clean ponds.
    Profile profile;
    profile.at = LocalTime(std::chrono::local_days(*pond.place.firstDay)) - std::chrono::minutes(6 * 60 + 30);
    const Basin basin(pond.basin);
    double air = 0.0;
    int count = 0;
    for (const WeatherDay& day : pond.weather.days) {
        air += kGuessCoolShare.value * *day.airMin + kGuessWarmShare.value * *day.airMax;
        ++count;
    }
    for (const WeatherHour& hour : pond.weather.hours) {
        air += hour.air;
        ++count;
    }
    const double surface =
        std::clamp(air / std::max(count, 1), kGuessLeastSurface.value, kGuessMostSurface.value);
    const double mixed =
        std::clamp(kGuessMixed.value * *pond.water.secchi, kGuessLeastMixed.value, kGuessMostMixed.value);
    const bool stratified =
        surface > kGuessStratifiedFrom.value && basin.maxDepth() > mixed + kGuessStep.value;
    const PondClass kind = pondClass(pond.bottom);
    const double saturation = oxygenSaturation(surface, 0.0, airPressure(*pond.place.elevation));
    const double low = !stratified || kind == PondClass::Clean ? kGuessLowOxygen.value * saturation : 0.0;
    const int points = 13;
    for (int i = 0; i < points; ++i) {
        const double z = basin.maxDepth() * kGuessDeepest.value * i / (points - 1);
        const double below = stratified ? std::max(z - mixed, 0.0) : 0.0;
        profile.depth.push_back(z);
        profile.temperature.push_back(
            std::max(surface - std::min(kGuessGradient.value * below, kGuessContrast.value),
                     std::min(surface, kGuessColdest.value)));
        profile.oxygen.push_back(
            std::max(saturation - (saturation - low) * std::min(below / kGuessStep.value, 1.0), 0.0));
    }
    return profile;
}

double startChlorophyll(const Pond& pond) {
    return valueOr(pond.water.chlorophyll_ugPerL, chlorophyllFromSecchi(*pond.water.secchi));
}

double startDebt(const Pond& pond, const Profile& profile, const BottomWater& bottom, const Basin& basin) {
    if (!bottom.exists()) {
        return 0.0;
    }
    if (pond.bottom.oxygenDebt) {
        return pond.bottom.oxygenDebt->value;
    }
    const std::optional<DebtEstimate> estimate = estimateDebt(pond, profile, bottom, basin);
    return estimate ? estimate->value : 0.0;
}

namespace {

/// Light, algae and weeds, and what the water respires.
void takePlants(const Pond& pond, Parameters<double>& p) {
    const double chlorophyll = startChlorophyll(pond);
    const double cover = 0.01 * valueOr(pond.water.weedsCover_percent, 0.0);
    // Secchi at the start sets what chlorophyll does not explain; clear water keeps a little. Weeds are not
    // taken off, though they shade besides: a disc is lowered where they do not stand.
    p.light.attenuationRest =
        std::max(attenuationFromSecchi(*pond.water.secchi) - attenuationOfChlorophyll(chlorophyll),
                 kLeastRestAttenuation.value);
    p.growth.rate = fromPerHour(kPhotosynthesis_mgPerMgHour.value) *
                    temperatureFactor(kPhotosynthesisTheta.value, 15.0) /
                    1000.0;  // 25 -> 20 degC; ug/L -> g/m^3
    p.growth.saturationLight = kSaturationLight_umol.value;
    p.weeds.mass = cover * kWeedMass_gPerM2.value;
    p.weeds.cover = cover;
    p.weeds.photosynthesis = fromPerHour(kWeedPhotosynthesis_mgPerGHour.value) / kMilligramPerGram;
    p.weeds.respiration = fromPerHour(kWeedRespiration_mgPerGHour.value) / kMilligramPerGram;
    p.respiration.base = fromPerHour(kRespirationBase_mgPerLHour.value);
    p.respiration.perChlorophyll = fromPerHour(kRespirationPerChlorophyll.value);
    p.organic.benthic = fromPerHour(kBenthic_mgPerM2Hour.value) / kMilligramPerGram;
    const double feed = kGramPerKilogram * pond.feed_kgPerDay.value_or(Quantity(0.0)).value;
    p.organic.feedWaste = fromPerDay(kFeedWaste.value * feed);
    p.organic.feedNitrogen = fromPerDay(kFeedNitrogen.value * feed);
}

/// @param usualStock_kgPerHa  Of such a pond, where the file gives none.
FishParameters<double> fishOf(const Pond& pond, double usualStock_kgPerHa, double hectares) {
    FishParameters<double> out;
    std::vector<FishStock> fish = pond.fish;
    if (fish.empty()) {
        FishStock guess;
        guess.stock_kgPerHa = usualStock_kgPerHa;
        fish.push_back(guess);
    }
    out.mass_g = kReferenceFish_g.value;
    double stock = 0.0;
    for (const FishStock& one : fish) {
        const double mass_g = valueOr(one.meanMass_g, kFishMass_g.value);
        const double mass = valueOr(one.stock_kgPerHa, usualStock_kgPerHa) * hectares;
        stock += mass;
        // The equation's size and temperature parts separate, so that one fish can stand for all.
        out.stock += mass * fishRespiration(mass_g, 20.0) / fishRespiration(out.mass_g, 20.0);
    }
    if (pond.feed_kgPerDay && stock > 0.0) {
        const double ration = *pond.feed_kgPerDay / (kFullFeed_sharePerDay.value * stock);
        out.stock *= 1.0 + kFeedingFactor.value * std::min(ration, 1.0);
    }
    return out;
}

SpringParameters<double> springOf(const Spring& spring) {
    SpringParameters<double> out;
    out.flow = *spring.flow_lPerS / 1000.0;
    out.temperature = *spring.temperature;
    out.oxygen = *spring.oxygen;
    out.salinity = valueOr(spring.salinity, 0.0);
    return out;
}

/// Demand fractions of the bottom water at the start, as its mean where it has no oxygen [g/m^3].
struct DemandFractions {
    double fast = 0.0, medium = 0.0, slow = 0.0;
    double sulfide = 0.0;  ///< As sulfur, in the fast one
};

/// The fractions hold at least what the toxicants inside them need.
DemandFractions startFractions(const Pond& pond, const Profile& profile, const BottomWater& bottom,
                               const Basin& basin) {
    const double debt = startDebt(pond, profile, bottom, basin);
    const double ammonia = valueOr(pond.water.totalAmmonia, 0.0);
    DemandFractions out;
    const double usual = bottom.isOxic ? 0.0 : sulfideOfFastDebt(pond.bottom).value * kFastShare.value * debt;
    out.sulfide = valueOr(pond.water.totalSulfide, usual / kOxygenPerSulfur);
    out.fast = std::max(kFastShare.value * debt, kOxygenPerSulfur * out.sulfide);
    out.medium = (1.0 - kFastShare.value) * debt;
    out.slow = std::max(bottom.exists() ? valueOr(pond.bottom.slowDebt, kSlowOfDebt.value * debt) : 0.0,
                        kOxygenPerAmmoniaNitrogen * ammonia);
    return out;
}

/// Sulfide and ammonium in what holds them at the start; 0 where there is neither.
ToxicantParameters<double> toxicantsOf(const Pond& pond, const Profile& profile, const Basin& basin) {
    ToxicantParameters<double> out;
    out.known = {valueOr(pond.water.ph, kPh.value),
                 valueOr(pond.water.alkalinity, kAlkalinity_mgPerL.value) / kCalciumCarbonatePerCharge,
                 profile.oxygen.front(), std::clamp(profile.temperature.front(), 0.0, 50.0)};
    const BottomWater bottom = bottomWater(profile, basin);
    if (!bottom.exists()) {
        return out;
    }
    const DemandFractions there = startFractions(pond, profile, bottom, basin);
    const auto part = [](double amount, double of) { return of > 0.0 ? amount / of : 0.0; };
    out.sulfideOfFast = part(there.sulfide, there.fast);
    out.ammoniaOfSlow = part(valueOr(pond.water.totalAmmonia, 0.0), there.slow);
    return out;
}

}  // namespace

Parameters<double> centralParameters(const Pond& pond, const Profile& profile) {
    const ClassPriors& priors = classPriors(pondClass(pond.bottom));
    const Basin basin(pond.basin);
    Parameters<double> p;
    p.site.airPressure = airPressure(*pond.place.elevation);
    p.site.latitude_deg = *pond.place.latitude_deg;
    takePlants(pond, p);
    p.fish = fishOf(pond, priors.stock_kgPerHa.value, basin.area(0.0) / kSquareMetrePerHectare);
    p.sediment.demand =
        fromPerDay(valueOr(pond.bottom.sedimentDemand_gPerM2Day, priors.sedimentDemand_gPerM2Day.value));
    const double muck = valueOr(pond.bottom.muck, priors.muck.value);
    p.muck.store = kMuckStore_gPerM2.value * kStirredArea.value * std::min(muck / kMuckFullDepth.value, 1.0);
    if (pond.spring) {
        p.spring = springOf(*pond.spring);
    }
    if (pond.surfaceAerator) {
        p.surface.aeratorTransfer = *pond.surfaceAerator->transfer_kgPerH * kGramPerKilogram / kHour;
    }
    if (pond.aerator) {
        p.bubbles.nonRecirculatedShare =
            valueOr(pond.aerator->nonRecirculatedShare, kNonRecirculatedShare.value);
    }
    p.toxicants = toxicantsOf(pond, profile, basin);
    p.thresholds = thresholdsOf(pond, profile);
    return p;
}

StartState<double> startState(const Pond& pond, const Profile& profile, const BottomWater& bottom,
                              const Grid& grid) {
    StartState<double> start;
    const double chlorophyll = startChlorophyll(pond);
    const DemandFractions debt = startFractions(pond, profile, bottom, Basin(pond.basin));
    std::vector<double> weight, below;
    double held = 0.0, weighted = 0.0;
    for (int i = 0; i < grid.layers(); ++i) {
        const double z = grid.middle[i];
        start.temperature.push_back(interpolate(profile.depth, profile.temperature, z));
        start.salinity.push_back(profile.salinity.empty() ? 0.0
                                                          : interpolate(profile.depth, profile.salinity, z));
        start.oxygen.push_back(interpolate(profile.depth, profile.oxygen, z));
        below.push_back(bottom.exists()
                            ? std::clamp((grid.face[i + 1] - bottom.depth) / grid.thickness[i], 0.0, 1.0)
                            : 0.0);
        start.chlorophyll.push_back(chlorophyll * (1.0 - below[i] * (1.0 - kChlorophyllBelow.value)));
        weight.push_back(below[i] * std::clamp(1.0 - start.oxygen[i] / kThinOxygen.value, 0.0, 1.0));
        held += below[i] * grid.volume[i];
        weighted += weight[i] * grid.volume[i];
    }
    // Where the whole bottom water still holds oxygen, a given debt lies in it evenly, but nothing fast is
    // left.
    const bool anoxic = weighted > kAnoxicShare.value * held;
    for (int i = 0; i < grid.layers(); ++i) {
        const double share = !bottom.exists() ? 0.0 : anoxic ? weight[i] * held / weighted : below[i];
        const double fastShare = anoxic ? share : 0.0;
        start.fast.push_back(debt.fast * fastShare);
        start.medium.push_back(debt.medium * share);
        start.slow.push_back(debt.slow * share);
        start.sulfide.push_back(debt.sulfide * fastShare);
    }
    return start;
}

}  // namespace engine
