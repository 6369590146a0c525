#include "engine/run/nights.h"

#include "engine/base/units.h"

#include <algorithm>
#include <cmath>

namespace engine {
namespace {

constexpr double kHourRounding = 1e-6;  // [h]; what a whole hour may be off after it was reckoned in seconds

}  // namespace

double noonOf(int night) {
    return (night - 0.5) * kDay;
}

int nightAt(double time) {
    constexpr double kDayRounding = 1e-9;  // [d]
    return static_cast<int>(std::floor(time / kDay - 0.5 + kDayRounding)) + 1;
}

const DayRow& nightRow(const RampRun& run, int night) {
    return run.days[static_cast<std::size_t>(night - run.days.front().day)];
}

NightCurve nightCurve(const RampRun& run, int night) {
    NightCurve curve;
    const DayRow& row = nightRow(run, night);
    curve.low = row.lowest;
    curve.lowTime = row.lowestTime;
    curve.lowHour = (row.lowestTime - noonOf(night)) / kHour;
    bool isLowIn = false;
    for (const HourRow& hour : run.hours) {
        const double at = (hour.time - noonOf(night)) / kHour;
        if (at < -kHourRounding || at > 24.0 + kHourRounding) {
            continue;
        }
        if (!isLowIn && curve.lowHour < at) {
            curve.hour.push_back(curve.lowHour);
            curve.oxygen.push_back(curve.low);
            isLowIn = true;
        }
        curve.hour.push_back(at);
        curve.oxygen.push_back(hour.fishWater);
    }
    return curve;
}

int nightsBelow(const RampRun& run, double line) {
    return static_cast<int>(std::count_if(run.days.begin(), run.days.end(),
                                          [line](const DayRow& row) { return row.lowest < line; }));
}

int HoursBelow::worstHour() const {
    return static_cast<int>(std::max_element(nightsAt.begin(), nightsAt.end()) - nightsAt.begin());
}

HoursBelow hoursBelow(const RampRun& run, double line) {
    HoursBelow below;
    for (const HourRow& hour : run.hours) {
        // The noon at which the last night ends would be its second.
        const int night = nightAt(hour.time);
        if (hour.fishWater < line && night >= 1 && night <= static_cast<int>(run.days.size())) {
            ++below.hours;
            ++below.nightsAt[static_cast<std::size_t>(((std::lround(hour.time / kHour) % 24) + 24) % 24)];
        }
    }
    return below;
}

std::optional<std::size_t> lowestRun(const std::vector<RampRun>& runs, const std::vector<std::size_t>& among,
                                     int night) {
    std::optional<std::size_t> lowest;
    for (const std::size_t i : among) {
        if (!lowest || nightRow(runs[i], night).lowest < nightRow(runs[*lowest], night).lowest) {
            lowest = i;
        }
    }
    return lowest;
}

}  // namespace engine
