#include "engine/ramps/schedule.h"

#include "engine/base/error.h"
#include "engine/base/units.h"
#include "engine/ramps/hold_rules.h"
#include "engine/water/constants_exchange.h"

#include <algorithm>
#include <cmath>

namespace engine {

int ruleMinutes(const Ramp& ramp, int step) {
    double minutes = kMinutesPerDay;
    switch (ramp.kind) {
        case RampKind::Continuous:
            break;
        case RampKind::Doubling:
            minutes = *ramp.first_min * std::pow(ramp.factor ? ramp.factor->value : 2.0, step - 1);
            break;
        case RampKind::Linear:
            minutes = *ramp.first_min + *ramp.add_minPerDay * (step - 1);
            break;
        case RampKind::Table:
            minutes =
                ramp.minutes[std::min<std::size_t>(static_cast<std::size_t>(step), ramp.minutes.size()) - 1];
            break;
        case RampKind::Capped:
            ensure(false, "a capped ramp has no rule of minutes");
    }
    return static_cast<int>(std::lround(std::clamp(minutes, 0.0, static_cast<double>(kMinutesPerDay))));
}

int ruleLength(const Ramp& ramp) {
    for (int day = 1; day <= kLongestRamp; ++day) {
        if (ruleMinutes(ramp, day) >= kMinutesPerDay) {
            return day;
        }
    }
    return ramp.kind == RampKind::Table ? std::min(static_cast<int>(ramp.minutes.size()), kLongestRamp)
                                        : kLongestRamp;
}

SurfaceAir surfaceAirOf(const Ramp& ramp) {
    if (!ramp.surfaceAir_kW) {
        return {};
    }
    constexpr ClockWindow kNight{{22 * 60}, {8 * 60}};
    const ClockWindow window = ramp.surfaceAirWindow.value_or(kNight);
    return {*ramp.surfaceAir_kW * kSurfaceAir_kgPerKWh.value * kGramPerKilogram / kHour,
            window.from.minutes * kMinute, window.to.minutes * kMinute};
}

double onDay(const ByDay& list, int day) {
    return list.values[std::min<std::size_t>(static_cast<std::size_t>(day), list.values.size()) - 1];
}

double dayStart(const Ramp& ramp, int day) {
    const int minutes = ramp.startTime ? ramp.startTime->minutes
                        : ramp.window  ? ramp.window->from.minutes
                                       : 600;
    return (day - 1) * kDay + minutes * kMinute;
}

DayAeration dayAeration(const Ramp& ramp, const Aerator& aerator, int day) {
    DayAeration out;
    out.open = static_cast<int>(ramp.diffusers ? onDay(*ramp.diffusers, day) : aerator.diffusers->value);
    out.depth = ramp.depth ? onDay(*ramp.depth, day) : aerator.depth->value;
    return out;
}

void addDayRuns(const Ramp& ramp, const Aerator& aerator, int day, int minutes, Schedule& schedule,
                double& cutMinutes) {
    const DayAeration air = dayAeration(ramp, aerator, day);
    if (minutes <= 0 || air.open <= 0) {
        return;
    }
    const double first = dayStart(ramp, day);
    double windowStart = first, windowEnd = first + kDay;
    if (ramp.window) {
        windowStart = (day - 1) * kDay + ramp.window->from.minutes * kMinute;
        const int length = ramp.window->to.minutes - ramp.window->from.minutes;
        windowEnd = windowStart + (length > 0 ? length : length + kMinutesPerDay) * kMinute;
    }
    const int pulses = ramp.pulses ? static_cast<int>(onDay(*ramp.pulses, day)) : 1;
    const double spacing = (pulses > 1 && ramp.window ? windowEnd - windowStart : kDay) / pulses;
    const double origin = pulses > 1 && ramp.window ? windowStart : first;
    double given = 0.0;
    for (int k = 0; k < pulses; ++k) {
        const double start = origin + k * spacing;
        const double end = start + minutes * kMinute / pulses;
        const double from = std::max(start, windowStart), to = std::min(end, windowEnd);
        if (to > from) {
            schedule.push_back({from, to, air.open, air.depth, day});
            given += to - from;
        }
    }
    cutMinutes += std::max(minutes - given / kMinute, 0.0);
}

Schedule scheduleOf(const Ramp& ramp, const Aerator& aerator, int lastDay, double end,
                    const std::vector<int>& holdDays, double& cutMinutes) {
    Schedule schedule;
    int step = 0;
    for (int day = 1; day <= lastDay; ++day) {
        // Air that runs around the clock is no start and no step: a hold does not stop it.
        const bool isSteady = step > 0 && ruleMinutes(ramp, step) == kMinutesPerDay;
        if (!isSteady && hasDay(holdDays, day)) {
            continue;
        }
        addDayRuns(ramp, aerator, day, ruleMinutes(ramp, ++step), schedule, cutMinutes);
    }
    for (RunBlock& block : schedule) {
        block.end = std::min(block.end, end);
    }
    std::erase_if(schedule, [](const RunBlock& block) { return !(block.end > block.start); });
    return joined(schedule);
}

Schedule joined(const Schedule& schedule) {
    Schedule out;
    for (const RunBlock& block : schedule) {
        const bool meets = !out.empty() && block.start <= out.back().end;
        if (meets && out.back().open == block.open && out.back().depth == block.depth) {
            out.back().end = std::max(out.back().end, block.end);
            continue;
        }
        if (meets) {
            out.back().end = block.start;
        }
        out.push_back(block);
    }
    return out;
}

double runningBetween(const Schedule& schedule, double from, double to) {
    double seconds = 0.0;
    for (const RunBlock& block : schedule) {
        seconds += std::max(0.0, std::min(block.end, to) - std::max(block.start, from));
    }
    return seconds;
}

std::optional<int> daysToContinuous(const Schedule& schedule, double end) {
    if (schedule.empty() || schedule.back().end < end) {
        return std::nullopt;
    }
    std::size_t first = schedule.size() - 1;
    while (first > 0 && schedule[first - 1].end >= schedule[first].start) {
        --first;
    }
    // A run that is merely on when the series ends is not one that never stops.
    return schedule[first].start <= end - kDay ? std::optional(schedule[first].day) : std::nullopt;
}

}  // namespace engine
