#include "engine/ramps/climate.h"

#include "engine/base/error.h"
#include "engine/base/units.h"
#include "engine/pond/pond_keys.h"
#include "engine/ramps/constants_climate.h"
#include "engine/water/water.h"

#include <algorithm>
#include <cmath>

namespace engine {
namespace {

constexpr std::size_t kMonths = 12;
constexpr double kDaysOfYear = 365.25;

/// A usual day in numbers that can be added and taken from each other.
struct UsualDay {
    double mean = 0.0, swing = 0.0;  ///< Air, and its highest less its lowest [degC, K]
    double humidity_percent = 0.0, wind = 0.0, cloud_percent = 0.0;
};
constexpr std::array kParts{&UsualDay::mean, &UsualDay::swing, &UsualDay::humidity_percent, &UsualDay::wind,
                            &UsualDay::cloud_percent};

/// Mean air of a year at sea level [degC], every 10 degrees from 70 S to 70 N. Source: Haurwitz & Austin
/// (1944), Climatology, from memory.
double zonalMean(double latitude_deg) {
    constexpr std::array<double, 15> kMeans{-13.6, -3.4, 5.8,  11.9, 18.4, 22.9, 25.3, 26.2,
                                            26.7,  25.3, 20.4, 14.1, 5.8,  -1.1, -10.7};
    constexpr double kSouth = -70.0, kStep = 10.0;
    const double at =
        std::clamp((latitude_deg - kSouth) / kStep, 0.0, static_cast<double>(kMeans.size() - 1));
    const std::size_t i = std::min(static_cast<std::size_t>(at), kMeans.size() - 2);
    return std::lerp(kMeans[i], kMeans[i + 1], at - static_cast<double>(i));
}

/// How far inland a place is, 0 by the sea to 1.
double inlandShare(const Place& place) {
    const double sea_km = place.sea_km ? place.sea_km->value : kUsualSea_km.value;
    return 1.0 - std::exp(-sea_km / kSeaReach_km.value);
}

/// By which Conrad (1946) takes off what the latitude does to the year's range.
double shiftedSine(const Place& place) {
    constexpr double kShift_deg = 10.0;
    return std::sin((std::abs(*place.latitude_deg) + kShift_deg) * kPi / 180.0);
}

/// What Conrad's index is over the year's range of a place at its latitude [1/K].
double indexOfRange(const Place& place) {
    return 1.7 / shiftedSine(place);
}

/// A usual day in the middle of a month, January being 0, from the place alone.
UsualDay usualOf(const Place& place, std::size_t month) {
    constexpr double kOffset = 14.0;                                // of Conrad's index
    constexpr double kLongestNorth = 172.0, kLongestSouth = 355.0;  // 21 June and 21 December
    const double latitude_deg = *place.latitude_deg;
    const double inland = inlandShare(place);
    const auto between = [&](const Constant& coast, const Constant& farFromIt) {
        return std::lerp(coast.value, farFromIt.value, inland);
    };
    const double range = (between(kContinentalityCoast, kContinentalityInland) + kOffset) /
                         indexOfRange(place) * std::min(std::abs(latitude_deg) / kTropics_deg.value, 1.0);
    const double middle = (static_cast<double>(month) + 0.5) * kDaysOfYear / static_cast<double>(kMonths);
    const double warmest =
        (latitude_deg < 0.0 ? kLongestSouth : kLongestNorth) + between(kLagCoast_days, kLagInland_days);
    UsualDay out;
    out.mean = zonalMean(latitude_deg) - kLapse.value * *place.elevation / 1000.0 +
               0.5 * range * std::cos(2.0 * kPi * (middle - warmest) / kDaysOfYear);
    out.swing = between(kDailySwingCoast, kDailySwingInland);
    out.humidity_percent = between(kHumidityCoast_percent, kHumidityInland_percent);
    out.wind = between(kWindCoast, kWindInland);
    out.cloud_percent = kUsualCloud_percent.value;
    return out;
}

UsualDay usualOf(const ClimateMonth& month) {
    UsualDay out;
    out.mean = 0.5 * (*month.airMin + *month.airMax);
    out.swing = *month.airMax - *month.airMin;
    out.humidity_percent =
        month.humidity_percent
            ? month.humidity_percent->value
            : std::min(100.0 * vapourPressure(*month.dewPoint) / vapourPressure(out.mean), kPercentRule.high);
    out.wind = *month.wind;
    out.cloud_percent = *month.cloud_percent;
    return out;
}

/// As it could stand in a pond file.
ClimateMonth monthOf(std::size_t index, const UsualDay& day) {
    const auto held = [](double value, const NumberRule& rule) {
        return Quantity(std::clamp(value, rule.low, rule.high));
    };
    const double half = 0.5 * std::max(day.swing, 0.0);
    ClimateMonth out;
    out.month = Quantity(static_cast<double>(index + 1));
    out.airMin = held(day.mean - half, kAirTemperatureRule);
    out.airMax = held(day.mean + half, kAirTemperatureRule);
    out.humidity_percent = held(day.humidity_percent, kPercentRule);
    out.wind = held(day.wind, kWindRule);
    out.cloud_percent = held(day.cloud_percent, kPercentRule);
    return out;
}

using GivenMonths = std::array<const ClimateMonth*, kMonths>;

/// An estimate that goes through the months that are given. @pre one is.
ClimateMonth filled(const Place& place, const GivenMonths& given, std::size_t month) {
    std::size_t before = 0, after = 0;  // months away
    while (given[(month + kMonths - before) % kMonths] == nullptr) {
        ++before;
    }
    while (given[(month + after) % kMonths] == nullptr) {
        ++after;
    }
    const std::size_t first = (month + kMonths - before) % kMonths, second = (month + after) % kMonths;
    const UsualDay here = usualOf(*given[first]), hereByPlace = usualOf(place, first);
    const UsualDay there = usualOf(*given[second]), thereByPlace = usualOf(place, second);
    UsualDay out = usualOf(place, month);
    for (const auto part : kParts) {
        out.*part += std::lerp(here.*part - hereByPlace.*part, there.*part - thereByPlace.*part,
                               static_cast<double>(before) / static_cast<double>(before + after));
    }
    return monthOf(month, out);
}

/// What the year's range may add to a month's mean, one standard deviation [K]: of the warmest and the
/// coldest month, which are those of most use.
double rangeBand(const Place& place) {
    const double index = place.sea_km ? kContinentalitySpread.value
                                      : std::hypot(kContinentalitySpread.value, kContinentalityOfSea.value);
    return 0.5 * index / indexOfRange(place);
}

double placeBand(const Place& place) {
    return std::hypot(kMeanSpread.value * shiftedSine(place), rangeBand(place),
                      kLapseSpread.value * *place.elevation / 1000.0);
}

}  // namespace

ClimateYear climateOf(const Pond& pond) {
    const Climate& climate = pond.climate;
    const bool hasFile = !climate.fileMonths.empty();
    ensure(!hasFile || climate.fileMonths.size() == kMonths, "a typical year has twelve months");
    GivenMonths given{};
    for (const ClimateMonth& month : climate.months) {
        given[static_cast<std::size_t>(month.month->value) - 1] = &month;
    }
    const auto count = static_cast<std::size_t>(
        std::count_if(given.begin(), given.end(), [](const ClimateMonth* one) { return one != nullptr; }));
    ClimateYear out;
    for (std::size_t i = 0; i < kMonths; ++i) {
        out.months[i] = given[i] != nullptr ? *given[i]
                        : hasFile           ? climate.fileMonths[i]
                        : count > 0         ? filled(pond.place, given, i)
                                            : monthOf(i, usualOf(pond.place, i));
    }
    if (count == kMonths) {
        out.origin = ClimateOrigin::Months;
        out.band = kMonthsBand.value;
    } else if (hasFile) {
        out.origin = ClimateOrigin::TypicalYear;
        out.band = kTypicalYearBand.value;
    } else if (count > 0) {
        out.origin = ClimateOrigin::Months;
        out.band = std::hypot(kMonthsBand.value, rangeBand(pond.place));
    } else {
        out.band = placeBand(pond.place);
    }
    return out;
}

}  // namespace engine
