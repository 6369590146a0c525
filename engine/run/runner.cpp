#include "engine/run/runner.h"

#include "engine/base/text.h"
#include "engine/base/units.h"

#include <algorithm>
#include <cmath>

namespace engine {
namespace {

Air<double> airOf(const Forcing& forcing, const PlantTable::Scale& plants) {
    return {forcing.shortwave,  forcing.air, forcing.vapourPressure, forcing.wind10, forcing.cloud,
            plants.chlorophyll, plants.weeds};
}

}  // namespace

double Runner::nextMark(double time) const {
    double mark = std::min(m_end, nextWholeHour(time));
    for (int day = dayOf(time); day <= dayOf(time) + 1; ++day) {
        const double rise = m_weather.sunrise(day);
        if (rise > time + kInstant) {
            mark = std::min(mark, rise);
        }
    }
    return std::min({mark, m_clock.nextSwitch(time), m_clock.nextDayStart(time)});
}

void Runner::stepColumn(double dt) {
    const double middle = m_time + 0.5 * dt;
    const Forcing now = m_weather.at(middle);
    m_column.step(dt, airOf(now, m_plants.at(m_time + dt)), m_clock.at(m_time), m_inflow.at(middle, now));
}

void Runner::oneStep(double dt) {
    stepColumn(dt);
    m_clock.addLiftedVolume(dt * m_column.hypolimneticLift());
    m_time += dt;
    const double after = m_column.fishWater();
    note(dt, m_fishWater, after);
    m_fishWater = after;
    ++m_run.steps;
}

EvenSteps Runner::stepsTo(double until) const {
    return evenSteps(m_time, until, m_model.resolution.largestStep, m_time - m_clock.lastSwitch(m_time));
}

void Runner::advance(double until) {
    while (m_time < until - kInstant) {
        double span = until - m_time;
        if (m_clock.watching(m_time)) {
            m_column.refreshPlume();  // the dose depends on it
            m_column.preparePlume(m_clock.at(m_time));
            span = std::min(span, m_clock.allowance(m_time, m_column.hypolimneticLift()));
            if (span <= kInstant) {
                m_clock.endRun(m_time);
                return;  // the marks have changed
            }
            // Whole minutes after the start of the run, so that it can end on one.
            const double step = std::min(span, m_model.resolution.largestStep);
            oneStep(step < span ? std::max(std::floor(step / kMinute), 1.0) * kMinute : step);
            continue;
        }
        const auto [count, dt] = stepsTo(until);
        for (int i = 0; i < count; ++i) {
            if (2 * i == count) {
                m_column.refreshPlume();  // halfway between marks, so at least every half hour
            }
            oneStep(dt);
        }
        m_time = until;
    }
}

RampRun Runner::go() {
    m_time = m_model.startTime;
    m_fishWater = m_column.fishWater();
    m_stored = m_column.oxygenStored();
    m_organic = m_column.organicStored();
    m_debtAtStart = m_column.debtStored();
    hourRow();
    while (m_time < m_end - kInstant) {
        if (m_control.stop.stop_requested()) {
            m_run.end = RunEnd::Cancelled;
            m_run.message = "The run was stopped at hour " + fixed(m_time / kHour, 0) + ".";
            finish();
            return std::move(m_run);
        }
        const double mark = nextMark(m_time);
        advance(mark);
        if (m_time < mark - kInstant) {
            continue;  // a capped run has just ended
        }
        if (!std::isfinite(m_fishWater)) {
            m_run.end = RunEnd::NotFinite;
            m_run.message = "The oxygen of ramp \"" + m_run.name + "\" is not a finite number at hour " +
                            fixed(m_time / kHour, 1) + " after midnight of day 1.";
            finish();
            return std::move(m_run);
        }
        const double hours = m_time / kHour;
        const bool wholeHour = std::fabs(hours - std::round(hours)) * kHour < kInstant;
        if (wholeHour && std::fmod(std::round(hours), 24.0) == 0.0) {
            midnight();
        }
        if (std::fabs(m_time - m_weather.sunrise(dayOf(m_time))) < kInstant) {
            dawn(dayOf(m_time));
        }
        if (std::fabs(m_time - m_clock.nextDayStart(m_time - 1.0)) < kInstant) {
            m_clock.startDay(dayOf(m_time),
                             m_debtAtStart > 0.0 ? m_column.debtStored() / m_debtAtStart : 0.0);
        }
        if (wholeHour) {
            hourRow();
            if (m_control.progress) {
                m_control.progress((m_time - m_model.startTime) / (m_end - m_model.startTime));
            }
        }
    }
    closeBudget(dayOf(m_end));
    m_run.end = RunEnd::Completed;
    finish();
    if (m_request.endState) {
        findEndState();
    }
    return std::move(m_run);
}

void Runner::findEndState() {
    // Only the fish water's lows are wanted of these days.
    const double end = m_end + kEndStateDays * kDay;
    m_clock.hold(m_request.days, end);
    std::vector<double> lows(kEndStateDays, kNever);
    while (m_time < end - kInstant && !m_control.stop.stop_requested()) {
        const int night = static_cast<int>((m_time - m_end + kInstant) / kDay);
        const double hour = nextWholeHour(m_time);
        const double mark = std::min({end, hour, m_clock.nextSwitch(m_time)});
        const auto [count, dt] = stepsTo(mark);
        for (int i = 0; i < count; ++i) {
            if (2 * i == count) {
                m_column.refreshPlume();
            }
            stepColumn(dt);
            m_time += dt;
            lows[night] = std::min(lows[night], m_column.fishWater());
        }
        m_time = mark;
        if (mark == hour) {
            m_column.refreshPlume();
        }
    }
    if (m_time < end - kInstant) {
        m_run.end = RunEnd::Cancelled;
        m_run.message = "The run was stopped before its end state was found.";
        return;
    }
    double mean = 0.0, slope = 0.0;
    for (int i = 0; i < kEndStateNights; ++i) {
        const double low = lows[static_cast<std::size_t>(kEndStateDays - kEndStateNights + i)];
        mean += low / kEndStateNights;
        slope += low * (i - 3) / 28.0;  // least squares over seven evenly spaced nights
    }
    m_run.endState = mean;
    m_run.endDrift = slope;
}

}  // namespace engine
