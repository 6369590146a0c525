#include "engine/run/day_air.h"

#include "engine/base/units.h"

#include <algorithm>
#include <cmath>

namespace engine {

std::map<int, DayAir> daysOfAir(const Backdrop& backdrop) {
    std::map<int, DayAir> days;
    for (const AirHour& hour : backdrop.hours) {
        DayAir& day = days[static_cast<int>(std::floor(hour.time / kDay)) + 1];
        day.lowest = std::min(day.lowest, hour.air);
        day.highest = std::max(day.highest, hour.air);
        day.wind += hour.wind;
        day.cloud += hour.cloud;
        ++day.hours;
    }
    for (auto& [number, day] : days) {
        day.wind /= day.hours;
        day.cloud /= day.hours;
    }
    return days;
}

const AirHour* airAt(const Backdrop& backdrop, double time) {
    constexpr double kRounding = 1.0;  // [s]
    const auto found =
        std::upper_bound(backdrop.hours.begin(), backdrop.hours.end(), time + kRounding,
                         [](double moment, const AirHour& hour) { return moment < hour.time; });
    return found == backdrop.hours.begin() ? nullptr : &*(found - 1);
}

}  // namespace engine
