#include "engine/run/profile_check.h"

#include "engine/run/constants_run.h"
#include "engine/water/constants_start.h"
#include "engine/water/parameters.h"
#include "engine/water/water.h"

#include <algorithm>
#include <cmath>

namespace engine {
namespace {

/// The profile with what its water can hold.
struct Readings {
    const Profile& profile;
    std::vector<double> salinity, saturation, seaLevel, density;
    [[nodiscard]] std::size_t size() const { return profile.depth.size(); }
    [[nodiscard]] double share(std::size_t i) const { return profile.oxygen[i] / saturation[i]; }
    [[nodiscard]] ProfileFinding at(ProfileDoubt doubt, std::size_t i) const {
        return {doubt,         profile.depth[i], profile.depth[i], profile.oxygen[i], profile.oxygen[i],
                saturation[i], seaLevel[i]};
    }
    [[nodiscard]] ProfileFinding between(ProfileDoubt doubt, std::size_t i, std::size_t j,
                                         const std::vector<double>& values) const {
        return {doubt, profile.depth[i], profile.depth[j], values[i], values[j], saturation[i], seaLevel[i]};
    }
};

Readings readingsOf(const Pond& pond) {
    const Profile& profile = *pond.profile;
    Readings out{profile, profile.salinity, {}, {}, {}};
    out.salinity.resize(profile.depth.size(), 0.0);
    const double pressure = airPressure(*pond.place.elevation);
    for (std::size_t i = 0; i < profile.depth.size(); ++i) {
        const double temperature = std::clamp(profile.temperature[i], -2.0, 45.0);
        out.saturation.push_back(oxygenSaturation(temperature, out.salinity[i], pressure));
        out.seaLevel.push_back(oxygenSaturation(temperature, out.salinity[i], kStandardPressure));
        out.density.push_back(waterDensity(temperature, out.salinity[i]));
    }
    return out;
}

bool hasPlants(const Pond& pond) {
    const MaybeQuantity& cover = pond.water.weedsCover_percent;
    return startChlorophyll(pond) >= kPlantChlorophyll.value ||
           (cover && cover->value >= kPlantCover_percent.value);
}

bool isBeforeSun(const Profile& profile) {
    const auto midnight = std::chrono::floor<std::chrono::days>(*profile.at);
    return *profile.at - midnight < std::chrono::hours(static_cast<int>(kSunAtWork_h.value));
}

/// A meter that takes the air for sea level's reads high by the same factor at all depths.
bool isSeaLevelMeter(const Readings& readings) {
    const double factor = readings.seaLevel[0] / readings.saturation[0];
    const double ofSeaLevel = readings.profile.oxygen[0] / readings.seaLevel[0];
    return factor > 1.0 / kThinAir.value && ofSeaLevel >= kSeaLevelLow.value &&
           ofSeaLevel <= kSeaLevelHigh.value;
}

void findSaturation(const Pond& pond, const Readings& readings, std::vector<ProfileFinding>& out) {
    if (readings.saturation[0] < kThinAir.value * readings.seaLevel[0]) {
        out.push_back(readings.at(ProfileDoubt::ThinAir, 0));
    }
    const bool isSeaLevel = isSeaLevelMeter(readings);
    if (isSeaLevel) {
        out.push_back(readings.at(ProfileDoubt::SeaLevelMeter, 0));
    }
    std::size_t most = 0;
    for (std::size_t i = 1; i < readings.size(); ++i) {
        most = readings.share(i) > readings.share(most) ? i : most;
    }
    // What the meter's setting explains is not said twice.
    const double least = isSeaLevel
                             ? kSupersaturated.value * readings.seaLevel[most] / readings.saturation[most]
                             : kSupersaturated.value;
    if (readings.share(most) > kImpossibleShare.value) {
        out.push_back(readings.at(ProfileDoubt::Impossible, most));
    } else if (readings.share(most) >= least) {
        const bool isExplained = hasPlants(pond) && !isBeforeSun(readings.profile);
        out.push_back(
            readings.at(isExplained ? ProfileDoubt::Supersaturated : ProfileDoubt::Unexplained, most));
    }
}

/// Density by which water may seem lighter than it is through its meters' errors.
double densityError(const Readings& readings, std::size_t i) {
    const double temperature = readings.profile.temperature[i], salinity = readings.salinity[i];
    const double byHeat = std::fabs(waterDensity(temperature + 0.5 * kInversion.value, salinity) -
                                    waterDensity(temperature - 0.5 * kInversion.value, salinity));
    const double bySalt = waterDensity(temperature, (1.0 + kSalinityError.value) * salinity) -
                          waterDensity(temperature, salinity);
    return byHeat + bySalt;
}

void findLayers(const Readings& readings, std::vector<ProfileFinding>& out) {
    const Profile& profile = readings.profile;
    double worst = 0.0;
    std::size_t above = 0, below = 0;
    for (std::size_t i = 0; i < readings.size(); ++i) {
        for (std::size_t j = i + 1; j < readings.size(); ++j) {
            const double excess = readings.density[i] - readings.density[j] - densityError(readings, i);
            if (excess > worst) {
                worst = excess;
                above = i;
                below = j;
            }
        }
    }
    const bool isFresh = profile.salinity.empty();
    if (worst > 0.0) {
        const double fall = profile.oxygen[above] - profile.oxygen[below];
        out.push_back(readings.between(
            isFresh && fall >= kLayerOxygen.value ? ProfileDoubt::HiddenSalt : ProfileDoubt::Inverted, above,
            below, profile.temperature));
        return;
    }
    const auto [coldest, warmest] =
        std::minmax_element(profile.temperature.begin(), profile.temperature.end());
    if (!isFresh || *warmest - *coldest >= kUniformTemperature.value) {
        return;
    }
    for (std::size_t i = 1; i < readings.size(); ++i) {
        if (profile.oxygen[i - 1] - profile.oxygen[i] >= kOxygenStep.value) {
            out.push_back(readings.between(ProfileDoubt::UniformLayer, i - 1, i, profile.oxygen));
            return;
        }
    }
}

void findSamples(const Pond& pond, const Readings& readings, std::vector<ProfileFinding>& out) {
    const std::vector<double>& oxygen = readings.profile.oxygen;
    for (std::size_t i = 1; i < readings.size(); ++i) {
        if (oxygen[i - 1] < kThinOxygen.value && oxygen[i] - oxygen[i - 1] > kBottleOxygen.value) {
            out.push_back(readings.between(ProfileDoubt::RisingOxygen, i - 1, i, oxygen));
            return;
        }
    }
    const bool hasSulfide =
        pond.bottom.smell == Smell::Strong ||
        (pond.water.totalSulfide && pond.water.totalSulfide->value > kTellingSulfide.value);
    const auto least = std::min_element(oxygen.begin(), oxygen.end());
    if (hasSulfide && *least > kBottleOxygen.value) {
        out.push_back(
            readings.at(ProfileDoubt::AeratedSample, static_cast<std::size_t>(least - oxygen.begin())));
    }
}

}  // namespace

std::vector<ProfileFinding> profileFindings(const Pond& pond) {
    std::vector<ProfileFinding> out;
    if (!pond.profile) {
        return out;
    }
    const Readings readings = readingsOf(pond);
    findSaturation(pond, readings, out);
    findLayers(readings, out);
    findSamples(pond, readings, out);
    return out;
}

}  // namespace engine
