#include "engine/intake/first_pond.h"

#include "engine/base/units.h"
#include "engine/intake/usual_ramp.h"

#include <algorithm>
#include <array>
#include <chrono>
#include <cmath>

namespace engine {
namespace {

constexpr int kDaysOfWeather = 8;  // the day of the profile and the week after it

Quantity told(double value) {
    Quantity quantity(value);
    quantity.confidence = Confidence::Estimated;
    quantity.source = "told by the owner";
    return quantity;
}

Quantity guessed(double value, double low, double high, const char* source) {
    Quantity quantity(value);
    quantity.low = low;
    quantity.high = high;
    quantity.confidence = Confidence::Guessed;
    quantity.source = source;
    return quantity;
}

/// Value with its 5 and 95 % points.
struct Row {
    double value, low, high;
};

template <std::size_t N, class E>
const Row& row(const std::array<Row, N>& rows, E which) {
    return rows[static_cast<std::size_t>(which)];
}

template <std::size_t N, class E>
Quantity taken(const std::array<Row, N>& rows, E which, const char* source) {
    const Row& one = row(rows, which);
    return guessed(one.value, one.low, one.high, source);
}

// Of the trade's table of unknown ponds (common practice, no source).
constexpr std::array<Row, 4> kMuck_m{{{0.05, 0.0, 0.15}, {0.25, 0.1, 0.5}, {0.6, 0.3, 1.2}, {1.0, 0.5, 1.8}}};
constexpr std::array<Row, 3> kSecchi_m{{{1.8, 0.9, 4.0}, {0.8, 0.4, 1.6}, {0.35, 0.15, 0.7}}};
constexpr std::array<Row, 4> kWeeds_percent{
    {{0.0, 0.0, 5.0}, {15.0, 5.0, 30.0}, {50.0, 30.0, 70.0}, {85.0, 60.0, 100.0}}};
constexpr std::array<Row, 3> kStock_kgPerHa{
    {{60.0, 20.0, 150.0}, {200.0, 80.0, 450.0}, {350.0, 150.0, 900.0}}};
constexpr std::array<double, 3> kCloud_percent{{10.0, 45.0, 90.0}};
constexpr std::array<double, 3> kWind_mPerS{{0.8, 2.0, 4.5}};
constexpr Row kMeanOverMax{0.5, 0.4, 0.55};   // common practice, no source
constexpr double kDiffusersPerHectare = 3.0;  // common practice: 2 to 5 a hectare

const char* fishName(SpeciesGroup group) {
    switch (group) {
        case SpeciesGroup::Sport:
            return "largemouth bass";
        case SpeciesGroup::Catfish:
            return "channel catfish";
        case SpeciesGroup::Carp:
            return "common carp";
        case SpeciesGroup::Koi:
            return "koi";
        case SpeciesGroup::Trout:
            return "rainbow trout";
        case SpeciesGroup::Percid:
            return "perch";
    }
    return "fish";
}

}  // namespace

double cloudOf(FirstAnswers::Sky sky) {
    return kCloud_percent[static_cast<std::size_t>(sky)];
}

double windOf(FirstAnswers::Wind wind) {
    return kWind_mPerS[static_cast<std::size_t>(wind)];
}

Pond pondFrom(const FirstAnswers& answers) {
    const char* const byEye = "by eye, over the telephone";
    Pond pond;
    pond.title = answers.name;
    pond.place.latitude_deg = Quantity(answers.latitude_deg);
    pond.place.longitude_deg = Quantity(answers.longitude_deg);
    pond.place.elevation = Quantity(answers.elevation);
    pond.place.firstDay = answers.firstDay;
    constexpr double kDegreesPerHour = 15.0;
    pond.place.utcOffset_h =
        Quantity(std::clamp(std::round(answers.longitude_deg / kDegreesPerHour), -12.0, 14.0));
    pond.basin.area = told(answers.area);
    pond.basin.maxDepth = told(answers.maxDepth);
    pond.basin.meanDepth = guessed(kMeanOverMax.value * answers.maxDepth, kMeanOverMax.low * answers.maxDepth,
                                   kMeanOverMax.high * answers.maxDepth, "half of the deepest point");
    pond.bottom.age_years = told(answers.age_years);
    pond.bottom.muck = taken(kMuck_m, answers.muck, byEye);
    pond.bottom.smell = answers.smell;
    pond.water.secchi = taken(kSecchi_m, answers.colour, byEye);
    pond.water.weedsCover_percent = taken(kWeeds_percent, answers.weeds, byEye);
    FishStock fish;
    fish.kind = fishName(answers.fish);
    fish.stock_kgPerHa = taken(kStock_kgPerHa, answers.stock, "the owner's guess");
    pond.fish.push_back(fish);
    pond.limits.speciesGroup = answers.fish;
    if (answers.feed_kgPerDay > 0.0) {
        pond.feed_kgPerDay = told(answers.feed_kgPerDay);
    }
    pond.weather.days = answers.forecast;
    for (int day = 0; day < (answers.forecast.empty() ? kDaysOfWeather : 0); ++day) {
        WeatherDay weather;
        weather.date = Date(std::chrono::sys_days(answers.firstDay) + std::chrono::days(day - 1));
        weather.airMin = Quantity(answers.airMin);
        weather.airMax = Quantity(answers.airMax);
        weather.humidity_percent = Quantity(kUsualHumidity_percent);
        weather.wind = Quantity(windOf(answers.wind));
        weather.cloud_percent = Quantity(cloudOf(answers.sky));
        pond.weather.days.push_back(weather);
    }
    pond.aerator = usualAerator(pond.basin);
    pond.aerator->diffusers = Quantity(answers.diffusers.value_or(
        std::max(1.0, std::round(kDiffusersPerHectare * answers.area / kSquareMetrePerHectare))));
    pond.aerator->freeAir_lPerMin =
        Quantity(answers.freeAir_lPerMin.value_or(pond.aerator->freeAir_lPerMin->value));
    pond.ramps.push_back(usualRamp(RampKind::Continuous, "on at once"));
    pond.ramps.push_back(usualRamp(RampKind::Doubling, "doubling from 30 min"));
    pond.ramps.push_back(usualRamp(RampKind::Capped, "tenth of the bottom a day"));
    pond.chosenRamp = pond.ramps.back().name;
    return pond;
}

}  // namespace engine
