#include "engine/follow_up/start_check.h"

#include "engine/base/units.h"
#include "engine/ensemble/compare.h"
#include "engine/follow_up/known_pond.h"
#include "engine/follow_up/morning.h"
#include "engine/ramps/log.h"
#include "engine/ramps/weather.h"

#include <algorithm>
#include <cmath>

namespace engine {
namespace {

constexpr int kFewestDawns = 2;  // of one alone a mean says nothing
// The papers of a start are void seven days after its first day (common practice, no published source).
constexpr int kLatestStart = 8;

StartCheck cannot(StartCheck check, std::string message) {
    check.message = std::move(message);
    return check;
}

/// The nights of a ramp that begins on a day, on a pond as it was known then: the air is off until that day.
RampRun runFrom(int startDay, const Ramp& ramp, const PondModel& model, RunRequest& request,
                const RunControl& control) {
    const RunControl stoppable{control.stop, nullptr};
    request.days = defaultDays(model.pond) + startDay - 1;
    request.keepLayers = false;
    if (startDay > 1) {
        const Schedule capped =
            ramp.kind == RampKind::Capped ? runRamp(model, &ramp, request, stoppable).schedule : Schedule{};
        request.schedule = airOfLog(model.pond, eventsInForce(model.pond), &capped, request.days + 1,
                                    request.days * kDay + kDay / 2)
                               .schedule;
    }
    return runRamp(model, &ramp, request, stoppable);
}

}  // namespace

StartCheck checkStart(const Pond& pond, const RunControl& control) {
    StartCheck out;
    out.pond = pond.title;
    out.firstDay = *pond.place.firstDay;
    if (!hasWeather(pond)) {
        return cannot(out, "Less than half a day of weather is known.");
    }
    const LogInForce log = logInForce(pond);
    const auto started = std::find_if(log.events.begin(), log.events.end(),
                                      [](const Event& one) { return one.kind == "started"; });
    if (started == log.events.end()) {
        return cannot(out, "The log has no start.");
    }
    const int startDay = static_cast<int>(std::floor(secondsOf(pond, *started->at) / kDay)) + 1;
    if (startDay < 1 || startDay > kLatestStart) {
        return cannot(out,
                      "The air started on day " + std::to_string(startDay) +
                          " of the pond file. Papers hold from its first day for seven days, so that none "
                          "can be held against this start.");
    }
    out.firstDay = dateOfDay(pond, startDay);
    const Ramp* meant = rampMeant(pond, log.events);
    const Pond known = knownAt(pond, *started->at);
    const auto ramp = std::find_if(known.ramps.begin(), known.ramps.end(), [&](const Ramp& one) {
        return meant != nullptr && one.name == meant->name;
    });
    if (ramp == known.ramps.end()) {
        return cannot(out, "The log does not say which ramp was started.");
    }
    out.ramp = ramp->name;
    const PondModel model = prepare(known, {});
    RunRequest request;
    const RampRun run = runFrom(startDay, *ramp, model, request, control);
    if (run.end != RunEnd::Completed) {
        return cannot(out, "The run of the start ended early.");
    }
    const JudgedLog judged = judgedLog(log, model);
    const WeatherSeries sun(known, {true}, 2, request.days + 1);
    for (int day = startDay + 1; day <= request.days + 1; ++day) {
        const std::optional<double> read = readingsAtDawn(model, judged, sun.sunrise(day)).fishWater();
        if (read) {
            const double miss = run.days[static_cast<std::size_t>(day - 2)].lowest - *read;
            ++out.dawns;
            out.miss += miss;
            out.distance += std::fabs(miss);
        }
    }
    if (out.dawns < kFewestDawns) {
        return cannot(out, "The log has " + std::to_string(out.dawns) +
                               (out.dawns == 1 ? " dawn reading" : " dawn readings") +
                               " after the start; two are needed.");
    }
    out.miss /= out.dawns;
    out.distance /= out.dawns;
    return out;
}

}  // namespace engine
