#include "engine/follow_up/morning.h"

#include "engine/base/units.h"
#include "engine/follow_up/sensor_faults.h"
#include "engine/pond/pond_words.h"
#include "engine/ramps/log.h"

#include <algorithm>
#include <cmath>
#include <map>

namespace engine {
namespace {

constexpr double kAroundSunrise = 3.0 * kHour;

double sunriseOf(const PondModel& model, int day) {
    return WeatherSeries(model.pond, {true, std::nullopt}, day, day).sunrise(day);
}

}  // namespace

MorningReadings readingsBetween(const PondModel& model, double from, double to) {
    std::map<double, const Reading*> byDepth;
    MorningReadings out;
    const std::vector<Reading> readings = readingsInForce(model.pond);
    const std::vector<SensorFault> faults = sensorFaults(readings, model.parameters.site.airPressure);
    for (std::size_t i = 0; i < readings.size(); ++i) {
        const Reading& reading = readings[i];
        const double time = secondsOf(model.pond, *reading.at);
        if (time < from || time > to) {
            continue;
        }
        out.smell = reading.smell ? reading.smell : out.smell;
        out.fish = reading.fish ? reading.fish : out.fish;
        if (reading.depth && reading.oxygen && faults[i] == SensorFault::None) {
            byDepth[*reading.depth] = &reading;
        }
    }
    for (const Event& event : eventsInForce(model.pond)) {
        const double time = secondsOf(model.pond, *event.at);
        const auto kind = eventKind(event.kind);
        if (time >= from && time <= to && (kind == EventKind::FishDistress || kind == EventKind::Kill)) {
            out.fish = FishBehaviour::Piping;
        }
    }
    if (byDepth.empty()) {
        return out;
    }
    const Reading& top = *byDepth.begin()->second;
    const Reading& low = *byDepth.rbegin()->second;
    out.surface = *top.oxygen;
    out.temperatureSurface = top.temperature ? std::optional<double>(*top.temperature) : std::nullopt;
    if (byDepth.size() > 1 && *low.depth >= 0.5 * model.basin.maxDepth()) {
        out.bottom = *low.oxygen;
        out.temperatureBottom = low.temperature ? std::optional<double>(*low.temperature) : std::nullopt;
    }
    const double half = 0.5 * (*top.depth + *low.depth);
    double nearest = 1e300;
    for (const auto& [depth, reading] : byDepth) {
        const bool isEnd = reading == &top || (reading == &low && out.bottom);
        if (!isEnd && std::fabs(depth - half) < nearest) {
            nearest = std::fabs(depth - half);
            out.middle = *reading->oxygen;
        }
    }
    return out;
}

std::optional<double> MorningReadings::fishWater() const {
    if (surface && middle) {
        return std::min(*surface, *middle);
    }
    return surface ? surface : middle;
}

MorningReadings morningOf(const PondModel& model, int day) {
    const double rise = sunriseOf(model, day);
    return readingsBetween(model, rise - kAroundSunrise, rise + kAroundSunrise);
}

MorningReadings lastReadings(const PondModel& model, double time) {
    return readingsBetween(model, time - kAroundSunrise, time);
}

std::optional<Profile> presentProfile(const Pond& pond, LocalTime at) {
    std::map<double, const Reading*> byDepth;
    const std::vector<Reading> readings = readingsInForce(pond);
    for (const Reading& reading : readings) {
        if (*reading.at > at - std::chrono::hours(3) && *reading.at <= at && reading.depth &&
            reading.oxygen && reading.temperature) {
            byDepth[*reading.depth] = &reading;
        }
    }
    if (byDepth.size() < 2) {
        return std::nullopt;
    }
    Profile out;
    out.at = at;
    for (const auto& [depth, reading] : byDepth) {
        out.depth.push_back(depth);
        out.temperature.push_back(*reading->temperature);
        out.oxygen.push_back(*reading->oxygen);
    }
    if (pond.profile && !pond.profile->salinity.empty()) {
        for (const double depth : out.depth) {
            out.salinity.push_back(interpolate(pond.profile->depth, pond.profile->salinity, depth));
        }
    }
    return out;
}

Pond presentPond(const Pond& pond, const Profile& profile) {
    Pond now = pond;
    now.profile = profile;
    now.place.firstDay = Date(std::chrono::floor<std::chrono::days>(*profile.at));
    now.water.changes.clear();  // its dates lie before
    now.ramps.clear();
    return now;
}

}  // namespace engine
