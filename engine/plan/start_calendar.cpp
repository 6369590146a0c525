#include "engine/plan/start_calendar.h"

#include "engine/base/parallel.h"
#include "engine/ensemble/chances.h"
#include "engine/ensemble/compare.h"
#include "engine/plan/plan_road.h"

#include <algorithm>
#include <atomic>
#include <chrono>

namespace engine {
namespace {

using namespace std::chrono;

/// The next 15th of a month from a day on.
Date nextMiddle(Date day, int month) {
    const auto in = [&](year y) { return Date(y / std::chrono::month(static_cast<unsigned>(month)) / 15); };
    return in(day.year()) >= day ? in(day.year()) : in(day.year() + years(1));
}

bool judge(MonthOfStart& out, const Pond& pond, const CalendarOptions& options, const std::stop_token& stop) {
    CompareOptions asked;
    asked.days = defaultDays(pond);
    asked.threads = 1;
    asked.resolution = options.resolution;
    asked.attribution = false;  // end states are among the conditions
    asked.members = options.members;
    asked.seed = options.seed;
    const Comparison comparison = compare(pond, asked, {stop, {}});
    if (!isWhole(comparison)) {
        return false;
    }
    const RampRun &nothing = comparison.runs.front(), &run = comparison.runs.back();
    out.lowest = run.worst().lowest;
    out.alone = nothing.worst().lowest;
    out.lethal = chancesOf(comparison, run).belowLethal;
    out.lethalAlone = chancesOf(comparison, nothing).belowLethal;
    out.unmet = unmetBy(comparison, 1);
    return true;
}

}  // namespace

StartCalendar startCalendar(const PondModel& model, const Ramp& ramp, const CalendarOptions& options,
                            const std::stop_token& stop) {
    const ClimateYear climate = climateOf(model.pond);
    StartCalendar out;
    out.origin = climate.origin;
    const std::vector<MonthState> states = usualYear(model, climate, stop);
    out.months.resize(states.size());
    std::atomic<bool> isWhole = true;
    const std::size_t done =
        forEachIndex(states.size(), threadsFor(options.threads), stop, [&](std::size_t i) {
            const MonthState& state = states[i];
            MonthOfStart& one = out.months[i];
            one.from = nextMiddle(*model.pond.place.firstDay, state.month);
            one.isIcy = state.isIcy;
            one.isAired = state.isAired;
            one.debt = state.debt;
            if (!one.isIcy) {
                Pond pond = inMonth(model.pond, climate, state, kShortestPlanRun + kLongestRoad);
                pond.ramps = {ramp};
                pond.chosenRamp.clear();
                if (!judge(one, pond, options, stop)) {
                    isWhole = false;
                }
            }
        });
    if (done < states.size() || !isWhole) {
        return {out.origin, {}};
    }
    std::sort(out.months.begin(), out.months.end(),
              [](const MonthOfStart& a, const MonthOfStart& b) { return a.from < b.from; });
    return out;
}

std::optional<StartWindow> nextWindow(const StartCalendar& calendar, Date after) {
    const auto first =
        std::find_if(calendar.months.begin(), calendar.months.end(), [&](const MonthOfStart& one) {
            return one.mayStart() && Date(one.from.year() / one.from.month() / 1) > after;
        });
    if (first == calendar.months.end()) {
        return std::nullopt;
    }
    const auto end = std::find_if_not(first, calendar.months.end(),
                                      [](const MonthOfStart& one) { return one.mayStart(); });
    const Date last = std::prev(end)->from;
    return StartWindow{first->from.year() / first->from.month() / 1,
                       Date(local_days(last.year() / last.month() / std::chrono::last))};
}

}  // namespace engine
