#include "engine/follow_up/morning.h"

#include "engine/base/units.h"
#include "engine/follow_up/constants_follow_up.h"
#include "engine/pond/pond_words.h"

#include <algorithm>
#include <cmath>
#include <map>

namespace engine {
namespace {

constexpr double kAroundSunrise = kOneMorning_h.value * kHour;

}  // namespace

MorningReadings readingsBetween(const PondModel& model, const JudgedLog& log, double from, double to) {
    std::map<double, const Reading*> byDepth;
    MorningReadings out;
    const std::vector<Reading>& readings = log.inForce.readings;
    for (std::size_t i = 0; i < readings.size(); ++i) {
        const Reading& reading = readings[i];
        const double time = secondsOf(model.pond, *reading.at);
        if (time < from || time > to) {
            continue;
        }
        out.smell = reading.smell ? reading.smell : out.smell;
        out.fish = reading.fish ? reading.fish : out.fish;
        if (reading.depth && reading.oxygen && log.faults[i] == SensorFault::None) {
            byDepth[*reading.depth] = &reading;
        }
    }
    for (const Event& event : log.inForce.events) {
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
    if (byDepth.size() > 1 && *low.depth >= kBottomReading.value * model.basin.maxDepth()) {
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
            out.isMiddleBelow = top.temperature && reading->temperature &&
                                *top.temperature - *reading->temperature > kStratified.value;
        }
    }
    return out;
}

std::optional<double> MorningReadings::fishWater() const {
    if (surface && middle && !isMiddleBelow) {
        return std::min(*surface, *middle);
    }
    return surface ? surface : middle;
}

MorningReadings readingsAtDawn(const PondModel& model, const JudgedLog& log, double sunrise) {
    return readingsBetween(model, log, sunrise - kAroundSunrise, sunrise + kAroundSunrise);
}

MorningReadings lastReadings(const PondModel& model, const JudgedLog& log, double time) {
    return readingsBetween(model, log, time - kAroundSunrise, time);
}

std::optional<Profile> presentProfile(const Pond& pond, const std::vector<Reading>& readings, LocalTime at) {
    std::map<double, const Reading*> byDepth;
    const LocalTime from = at - std::chrono::hours(static_cast<int>(kOneMorning_h.value));
    for (const Reading& reading : readings) {
        if (*reading.at > from && *reading.at <= at && reading.depth && reading.oxygen &&
            reading.temperature) {
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
