#include "engine/base/units.h"
#include "engine/pond/local_time.h"
#include "engine/ramps/weather.h"
#include "engine/run/balance.h"
#include "engine/run/constants_balance.h"
#include "engine/run/constants_run.h"
#include "engine/water/sky.h"

#include <algorithm>
#include <cmath>
#include <map>

namespace engine {
namespace {

constexpr double kNinetyPercent = 1.6449;  // sigmas from the middle to the 95 % point

/// A reading with what a balance needs of it.
struct Read {
    double time = 0.0;    ///< [s after midnight of day 1]
    double oxygen = 0.0;  ///< [g/m^3]
};

/// Oxygen read before the profile by depth, to the decimetre, in order of time.
std::map<long, std::vector<Read>> readBefore(const PondModel& model) {
    std::map<long, std::vector<Read>> out;
    const double from = model.startTime - kDaysOfLogger.value * kDay;
    for (const auto* list : {&model.pond.readings, &model.pond.fileReadings}) {
        for (const Reading& reading : *list) {
            if (reading.at && reading.oxygen && reading.depth) {
                const double time = secondsOf(model.pond, *reading.at);
                if (time >= from && time <= model.startTime) {
                    out[std::lround(10.0 * *reading.depth)].push_back({time, *reading.oxygen});
                }
            }
        }
    }
    for (auto& [depth, some] : out) {
        std::stable_sort(some.begin(), some.end(),
                         [](const Read& a, const Read& b) { return a.time < b.time; });
    }
    return out;
}

/// What is read nearest to a time; nothing where that is further off than kHourOfLogger_h.
std::optional<double> near(const std::vector<Read>& reads, double time) {
    const auto after = std::lower_bound(reads.begin(), reads.end(), time,
                                        [](const Read& read, double at) { return read.time < at; });
    std::optional<double> found;
    double least = kHourOfLogger_h.value * kHour;
    for (auto it = after == reads.begin() ? after : after - 1; it != reads.end() && it <= after; ++it) {
        if (std::fabs(it->time - time) <= least) {
            least = std::fabs(it->time - time);
            found = it->oxygen;
        }
    }
    return found;
}

/// Sunset of a day less an hour, when the light no longer makes what the water takes
/// [s after midnight of day 1].
double evening(const Pond& pond, int day) {
    const SunTimes sun = sunTimes(*pond.place.latitude_deg, *pond.place.longitude_deg,
                                  *pond.place.utcOffset_h, dayOfYear(dateOfDay(pond, day)));
    constexpr double kWithoutSun_h = 18.0;
    return (day - 1) * kDay + (sun.set_h.value_or(kWithoutSun_h) - 1.0) * kHour;
}

/// The mean of changes, with the error of a mean and of a meter.
Quantity meanOf(const std::vector<double>& changes) {
    const auto count = static_cast<double>(changes.size());
    double mean = 0.0, square = 0.0;
    for (const double change : changes) {
        mean += change / count;
    }
    for (const double change : changes) {
        square += (change - mean) * (change - mean);
    }
    const double error = std::hypot(kDawnError.value, std::sqrt(square / (count - 1.0) / count));
    Quantity out(mean);
    out.low = mean - kNinetyPercent * error;
    out.high = mean + kNinetyPercent * error;
    return out;
}

/// What a logger at a depth shows of usual days; nothing where it knows too few nights.
std::optional<BalanceTarget> byLogger(const PondModel& model, double depth, const std::vector<Read>& reads) {
    const WeatherSeries sun(model.pond, {true}, -static_cast<int>(kDaysOfLogger.value) - 2, 3);
    const auto timeOf = [&](BalanceReadingOf which, int day) {
        return which == kOfDawn ? sun.sunrise(day) : evening(model.pond, day);
    };
    BalanceTarget target;
    for (const BalanceReadingOf which : {kOfDawn, kOfEvening}) {
        // The first one after the profile, and those after the same hour of days before.
        const int startDay = static_cast<int>(std::floor(model.startTime / kDay)) + 1;
        int day = startDay;
        while (timeOf(which, day) <= model.startTime + kHour) {
            ++day;
        }
        const double later = timeOf(which, day) - model.startTime;
        std::vector<double> changes;
        for (int ago = 1; ago <= static_cast<int>(kDaysOfLogger.value); ++ago) {
            const double from = model.startTime - ago * kDay;
            const auto before = near(reads, from), after = near(reads, from + later);
            if (before && after && from + later <= model.startTime) {
                changes.push_back(*after - *before);
            }
        }
        if (static_cast<double>(changes.size()) < kNightsOfLogger.value) {
            return std::nullopt;
        }
        target[which] = {meanOf(changes), true, model.startTime + later, depth};
    }
    return target;
}

}  // namespace

std::optional<Reading> dawnReading(const PondModel& model) {
    std::optional<Reading> found;
    double foundTime = -1e18;
    const int first = -30;
    const WeatherSeries sun(model.pond, {true}, first, 1);
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

BalanceTarget balanceTarget(const PondModel& model) {
    std::optional<BalanceTarget> best;
    std::size_t most = 0;
    for (const auto& [decimetres, reads] : readBefore(model)) {
        if (reads.size() > most) {
            if (auto target = byLogger(model, 0.1 * static_cast<double>(decimetres), reads)) {
                best = std::move(target);
                most = reads.size();
            }
        }
    }
    if (best) {
        return *best;
    }
    BalanceTarget target;
    target[kOfDawn] = {std::nullopt, false, model.startTime + kDay / 2, model.surfaceDepth};
    target[kOfEvening] = {std::nullopt, false, model.startTime + kDay, model.surfaceDepth};
    if (const std::optional<Reading> dawn = dawnReading(model)) {
        // The same clock hour of the night that follows the profile.
        const double time = secondsOf(model.pond, *dawn->at);
        const double later = std::fmod(std::fmod(time - model.startTime, kDay) + kDay, kDay);
        target[kOfDawn] = {dawn->oxygen, false, model.startTime + std::max(later, 60.0), *dawn->depth};
    }
    return target;
}

ReadOxygen readOxygen(const BalanceTarget& target) {
    ReadOxygen out{};
    for (std::size_t i = 0; i < out.size(); ++i) {
        out[i] = target[i].oxygen ? target[i].oxygen->value : 0.0;
    }
    return out;
}

}  // namespace engine
