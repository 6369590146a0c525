#include "engine/base/units.h"
#include "engine/ramps/inflow.h"
#include "engine/run/air_clock.h"
#include "engine/run/member_run.h"
#include "engine/run/step_clock.h"

#include <algorithm>
#include <cmath>

namespace engine {
namespace {

int dayOf(double time) {
    return static_cast<int>(std::floor(time / kDay)) + 1;
}

/// Cuts spans between marks into the even steps that a run takes.
class StepMaker {
public:
    StepMaker(const PondModel& model, const WeatherSeries& weather, WeatherDays offsets)
        : m_weather(weather),
          m_plants(model.pond, model.startTime),
          m_inflow(model.pond),
          m_offsets(offsets),
          m_longest(model.resolution.largestStep) {}

    /// Steps from `time` to `until`; the last one ends an hour if it says so.
    void add(double time, double until, const Aeration& aeration, double sinceSwitch, bool endsHour,
             std::vector<MemberStep>& out) const {
        const auto [count, dt] = evenSteps(time, until, m_longest, sinceSwitch);
        for (int i = 0; i < count; ++i) {
            const double begin = time + i * dt, middle = begin + 0.5 * dt, end = begin + dt;
            MemberStep step;
            step.dt = dt;
            step.air = m_weather.at(middle);
            step.plants = m_plants.at(end);
            step.aeration = aeration;
            step.inflow = m_inflow.at(middle, step.air);
            step.day = offsetOf(dayOf(middle));
            const double noons = middle / kDay + 0.5;  // 1 at noon of day 1
            step.noon = offsetOf(static_cast<int>(std::floor(noons)));
            step.pastNoon = noons - std::floor(noons);
            // Nights run from noon to noon.
            step.night = static_cast<int>(std::floor((end - kInstant - kDay / 2) / kDay));
            step.findsPlume = 2 * i == count;
            step.endsHour = endsHour && i + 1 == count;
            out.push_back(step);
        }
    }

private:
    /// Days outside take the usual day's place after the last.
    [[nodiscard]] int offsetOf(int day) const {
        const int usual = m_offsets.last - m_offsets.first + 1;
        return day > m_offsets.last ? usual : std::max(day - m_offsets.first, 0);
    }

    const WeatherSeries& m_weather;
    PlantTable m_plants;
    InflowTable m_inflow;
    WeatherDays m_offsets;
    double m_longest;
};

/// What is as it was before the start: no plants that change, nothing that runs in.
void leaveAsIs(std::vector<MemberStep>& steps) {
    for (MemberStep& step : steps) {
        step.plants = {};
        step.inflow = {};
    }
}

/// A member plan under a plan for its weather.
MemberPlan planUnder(const WeatherPlan& weatherPlan, const PondModel& model, const EnsembleRamp& ramp,
                     int days, bool endState) {
    MemberPlan plan;
    plan.nights = days;
    const double end = days * kDay + kDay / 2;
    const double endOfAll = end + (endState ? kEndStateDays * kDay : 0.0);
    RunRequest request;
    request.days = days;
    request.schedule = ramp.schedule;
    request.surfaceAir = ramp.surfaceAir;
    const Ramp any;  // with a schedule, a ramp only says that this is not do-nothing
    AirClock clock(model, ramp.isDoNothing ? nullptr : &any, request, end);
    const WeatherSeries weather(model.pond, weatherPlan, dayOf(model.startTime) - 1,
                                days + 1 + (endState ? kEndStateDays : 0));
    const StepMaker maker(model, weather, weatherDays(model, days));
    double time = model.startTime;
    plan.hours.push_back(time);
    while (time < endOfAll - kInstant) {
        if (endState && std::fabs(time - end) < kInstant) {
            clock.hold(days, endOfAll);
        }
        const bool after = time > end - kInstant;
        const double hour = nextWholeHour(time);
        double mark = std::min({hour, clock.nextSwitch(time), after ? endOfAll : end});
        for (int day = dayOf(time); day <= dayOf(time) + 1 && !after; ++day) {
            const double rise = weather.sunrise(day);
            mark = rise > time + kInstant ? std::min(mark, rise) : mark;
        }
        const bool endsHour = std::fabs(mark - hour) < kInstant;
        maker.add(time, mark, clock.at(time), time - clock.lastSwitch(time), endsHour,
                  after ? plan.endSteps : plan.steps);
        if (endsHour && !after) {
            plan.hours.push_back(mark);
        }
        time = mark;
    }
    return plan;
}

}  // namespace

WeatherDays weatherDays(const PondModel& model, int days) {
    return {dayOf(model.startTime) - 1, days + 1};
}

MemberPlan memberPlan(const PondModel& model, const EnsembleRamp& ramp, int days, bool endState) {
    return planUnder({false, endState ? std::optional(days + 1) : std::nullopt, {}}, model, ramp, days,
                     endState);
}

MemberPlan pastPlan(const PondModel& model, int days) {
    MemberPlan plan =
        planUnder({true, std::nullopt, dayOf(model.startTime)}, model, {"do-nothing", {}, true}, days, false);
    leaveAsIs(plan.steps);
    return plan;
}

std::vector<MemberStep> trialSteps(const PondModel& model, const std::vector<double>& marks) {
    const int first = dayOf(model.startTime), last = dayOf(marks.back());
    const WeatherSeries weather(model.pond, {true, std::nullopt, first}, first - 1, last + 1);
    // Every day is a usual one.
    const StepMaker maker(model, weather, {first, first - 1});
    std::vector<MemberStep> steps;
    double time = model.startTime;
    for (const double mark : marks) {
        while (time < mark - kInstant) {
            const double next = std::min(nextWholeHour(time), mark);
            maker.add(time, next, {}, kNever, std::fabs(next - mark) < kInstant, steps);
            time = next;
        }
    }
    leaveAsIs(steps);  // the balance is about the pond as it is
    return steps;
}

MemberTrace::MemberTrace(std::size_t count, const MemberPlan& plan)
    : members(count),
      hours(count * plan.hours.size()),
      lows(count * static_cast<std::size_t>(plan.nights)),
      endStates(plan.endSteps.empty() ? 0 : count),
      isBelowStress(count),
      isBelowLethal(count),
      isFinite(count, 1) {}

}  // namespace engine
