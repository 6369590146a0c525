#include "engine/run/air_clock.h"

#include "engine/base/units.h"
#include "engine/ramps/hold_rules.h"
#include "engine/run/shares.h"
#include "engine/run/triage.h"
#include "engine/water/layering.h"

#include <algorithm>
#include <cmath>

namespace engine {
AirClock::AirClock(const PondModel& model, const Ramp* ramp, const RunRequest& request, double end)
    : m_model(model), m_ramp(ramp), m_end(end) {
    if (request.schedule) {
        m_schedule = *request.schedule;
    } else if (ramp != nullptr && ramp->kind == RampKind::Capped) {
        m_capped = true;
        m_lastDay = request.days + 1;  // the run ends at the noon after the last day
        m_road = request.road;
        if (ramp->weatherHold) {
            m_held = holdDays(model.pond);
        }
        m_held.insert(m_held.end(), m_road.held.begin(), m_road.held.end());
        if (!model.bottom.exists() && !ramp->hold) {
            m_liftedDay = 1;
        }
    } else if (ramp != nullptr) {
        m_schedule = scheduleOf(*ramp, *model.pond.aerator, request.days + 1, end,
                                ramp->weatherHold ? holdDays(model.pond) : std::vector<int>{}, m_cutMinutes);
    }
    m_nightAir = request.surfaceAir ? *request.surfaceAir
                 : ramp != nullptr  ? surfaceAirOf(*ramp)
                                    : SurfaceAir{};
    const auto& surface = model.pond.surfaceAerator;
    if (surface && (surface->existing || ramp != nullptr)) {
        m_surface = true;
        m_surfaceFrom = surface->existing ? -kNever : 0.0;
        m_surfaceStart = surface->startTime ? surface->startTime->minutes * kMinute : 0.0;
        m_surfaceEnd = surface->endTime ? surface->endTime->minutes * kMinute : m_surfaceStart;
    }
}

Aeration AirClock::at(double time) const {
    Aeration now;
    for (const RunBlock& block : m_schedule) {
        if (time >= block.start - kInstant && time < block.end - kInstant) {
            now.open = block.open;
            now.depth = block.depth;
        }
    }
    now.surface = m_surface && surfaceRuns(time);
    now.surfaceTransfer = nightAirRuns(time) ? m_nightAir.transfer : 0.0;
    return now;
}

double AirClock::nextSwitch(double time) const {
    double next = kNever;
    for (const RunBlock& block : m_schedule) {
        for (const double mark : {block.start, block.end}) {
            if (mark > time + kInstant) {
                next = std::min(next, mark);
            }
        }
    }
    const double midnight = std::floor(time / kDay) * kDay;
    const auto daily = [&](double from, double until) {
        for (const double mark : {from, until, from + kDay, until + kDay}) {
            if (midnight + mark > time + kInstant) {
                next = std::min(next, midnight + mark);
            }
        }
    };
    if (m_surface) {
        daily(m_surfaceStart, m_surfaceEnd);
    }
    if (m_nightAir.transfer > 0.0) {
        daily(m_nightAir.from, m_nightAir.until);
    }
    return next;
}

double AirClock::lastSwitch(double time) const {
    double last = -kNever;
    for (const RunBlock& block : m_schedule) {
        for (const double mark : {block.start, block.end}) {
            if (mark <= time + kInstant) {
                last = std::max(last, mark);
            }
        }
    }
    return last;
}

bool AirClock::watching(double time) const {
    return m_capped && m_cap > 0.0 && time >= m_start - kInstant && time < m_latest - kInstant && m_open;
}

double AirClock::allowance(double time, double hypolimneticLift) const {
    const double remaining = std::max(m_cap - m_liftedVolume, 0.0);
    const double reach = hypolimneticLift > 0.0 ? remaining / hypolimneticLift : kNever;
    // Whole minutes of run, rounded down, at least one.
    const double elapsed = time - m_start;
    const double whole = std::max(std::floor((elapsed + reach) / kMinute + 1e-9), 1.0) * kMinute;
    return std::max(whole - elapsed, 0.0);
}

void AirClock::endRun(double time) {
    m_open = false;
    m_schedule.back().end = std::max(time, m_schedule.back().start + kMinute);
}

void AirClock::dawn(int day, double topMinusBottom, double bottomOxygen) {
    if (m_capped && !m_ramp->hold && !m_liftedDay && day <= m_lastDay &&
        isMixedAtDawn(topMinusBottom, bottomOxygen)) {
        m_liftedDay = m_plannedDay + 1;  // the next day's start is the first that can heed it
    }
}

void AirClock::startDay(int day, double debtShare) {
    if (m_capped) {
        planDay(day, debtShare);
    }
}

double AirClock::nextDayStart(double time) const {
    if (!m_capped) {
        return kNever;
    }
    for (int day = m_plannedDay + 1; day <= m_lastDay; ++day) {
        const double start = dayStart(*m_ramp, day);
        if (start > time + kInstant) {
            return start;
        }
    }
    return kNever;
}

void AirClock::hold(int lastDay, double end) {
    m_capped = false;
    m_schedule = joined(m_schedule);
    const bool continuous = daysToContinuous(m_schedule, m_end).has_value();
    if (continuous) {
        m_schedule.back().end = end;
        return;
    }
    // The run of the day after the last, cut by the end of the run, gives way to the last day's.
    std::erase_if(m_schedule, [&](const RunBlock& block) { return block.day > lastDay; });
    const Schedule before = m_schedule;
    for (const RunBlock& block : before) {
        for (int extra = 1; block.day == lastDay && block.start + extra * kDay < end; ++extra) {
            m_schedule.push_back({block.start + extra * kDay, std::min(block.end + extra * kDay, end),
                                  block.open, block.depth, block.day + extra});
        }
    }
    std::sort(m_schedule.begin(), m_schedule.end(),
              [](const RunBlock& a, const RunBlock& b) { return a.start < b.start; });
}

namespace {

/// Whether a time lies in a window of each day, which may pass midnight.
bool isWithin(double time, double from, double until) {
    const double clock = time - std::floor((time + kInstant) / kDay) * kDay;
    const bool afterStart = clock >= from - kInstant, beforeEnd = clock < until - kInstant;
    return from < until ? afterStart && beforeEnd : afterStart || beforeEnd;
}

}  // namespace

bool AirClock::surfaceRuns(double time) const {
    if (time < m_surfaceFrom - kInstant || m_surfaceStart == m_surfaceEnd) {
        return time >= m_surfaceFrom - kInstant;
    }
    return isWithin(time, m_surfaceStart, m_surfaceEnd);
}

bool AirClock::nightAirRuns(double time) const {
    // Not before the day on which the ramp begins.
    return m_nightAir.transfer > 0.0 && time >= kDay / 2 - kInstant &&
           isWithin(time, m_nightAir.from, m_nightAir.until);
}

std::optional<double> AirClock::dose(double debtShare) const {
    const double own = *m_ramp->dose_percent;
    if (!m_road.risingDose) {
        return own;
    }
    const auto ratio = debtToReserve(m_model);
    const auto cap = ratio ? doseCap_percent(ratioBand(*ratio * debtShare)) : std::optional(own);
    return cap && !m_hasRun ? std::min(*cap, own) : cap;
}

void AirClock::planDay(int day, double debtShare) {
    m_plannedDay = day;
    m_start = dayStart(*m_ramp, day);
    m_latest = m_start + kDay;
    m_cap = 0.0;
    m_open = true;
    // Air that runs around the clock is no start and no step: a hold does not stop it.
    const bool isSteady = m_liftedDay && day > *m_liftedDay && m_hasRun;
    if (!isSteady && hasDay(m_held, day)) {
        m_latest = m_start;
        if (m_liftedDay && day == *m_liftedDay) {
            ++*m_liftedDay;  // the half day that comes first waits
        }
        return;
    }
    const auto most = dose(debtShare);
    if (!most && (!m_liftedDay || day < *m_liftedDay)) {
        m_liftedDay = day;
    }
    m_hasRun = true;
    Schedule runs;
    if (m_liftedDay && day >= *m_liftedDay) {
        const int minutes = day == *m_liftedDay ? kMinutesPerDay / 2 : kMinutesPerDay;
        addDayRuns(*m_ramp, *m_model.pond.aerator, day, minutes, runs, m_cutMinutes);
    } else {
        m_cap = 0.01 * *most * m_model.bottom.volume;
        m_liftedVolume = 0.0;
        double cutOfTheLongest = 0.0;
        addDayRuns(*m_ramp, *m_model.pond.aerator, day, kMinutesPerDay, runs, cutOfTheLongest);
        if (m_road.until) {
            const double until = (day - 1) * kDay + *m_road.until;
            for (RunBlock& block : runs) {
                block.end = std::min(block.end, until);
            }
        }
        if (!runs.empty()) {
            m_latest = runs.back().end;
        }
    }
    // A run that is still on at the next start goes on.
    for (RunBlock& block : runs) {
        block.end = std::min(block.end, m_end);
        if (block.end > block.start) {
            m_schedule.push_back(block);
        }
    }
}

}  // namespace engine
