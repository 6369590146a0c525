#include "engine/follow_up/today.h"

#include "engine/base/units.h"
#include "engine/follow_up/constants_follow_up.h"
#include "engine/follow_up/known_pond.h"
#include "engine/follow_up/ramp_steps.h"
#include "engine/ramps/hold_rules.h"
#include "engine/ramps/weather.h"
#include "engine/run/shares.h"
#include "engine/water/layering.h"

#include <algorithm>
#include <cmath>
#include <utility>

namespace engine {
namespace {

constexpr int kDaysBeforeStart = 14;  // in which a dawn counts as the one before the start
constexpr int kForecastHours = 32;    // of the fit, past the coming dawn

/// What the log says of the air up to now.
struct AirSoFar {
    Schedule capped;        ///< Runs of the ramp meant if it is a capped one
    Schedule untilTonight;  ///< The ramp meant, where it runs, up to the coming midnight
    Schedule untilToday;    ///< The same up to the last midnight
    bool isStarted = false;
    int startDay = 0;  ///< Today as long as nothing ran
};

AirSoFar airSoFar(const KnownPond& known, int today, const RunControl& control) {
    AirSoFar out;
    out.capped = cappedRuns(known, today + kDaysAhead, control);
    const LoggedAir air = airOfLog(known, out.capped, today, today * kDay);
    out.untilTonight = air.schedule;
    out.untilToday = joinedAt(air.schedule, {}, (today - 1) * kDay);
    out.isStarted = air.isStarted || !air.schedule.empty();
    out.startDay = air.isStarted ? air.firstDay : out.isStarted ? air.schedule.front().day : today;
    return out;
}

/// Today's dawn, or the last hours before the question where nothing was read at dawn.
MorningReadings readingsOfToday(const KnownPond& known, int today) {
    const WeatherSeries sun(known.model.pond, {true}, today, today);
    MorningReadings read = readingsAtDawn(known.model, known.log, sun.sunrise(today));
    return read.fishWater() ? read : lastReadings(known.model, known.log, known.time);
}

/// This morning beside the dawns before it; what the ramp would lift and tonight are not in it yet.
Morning morningByReadings(const KnownPond& known, const MorningReadings& read, const AirSoFar& air,
                          int today) {
    Morning out;
    out.surface = read.surface;
    out.middle = read.middle;
    out.bottom = read.bottom;
    out.temperatureSurface = read.temperatureSurface;
    out.temperatureBottom = read.temperatureBottom;
    out.smell = read.smell;
    out.fish = read.fish;
    out.isStarted = air.isStarted;
    const int first = std::min(air.startDay - kDaysBeforeStart, today - 2) + 1;
    const WeatherSeries sun(known.model.pond, {true}, first, today - 1);
    const auto fishWaterOn = [&](int day) {
        return readingsAtDawn(known.model, known.log, sun.sunrise(day)).fishWater();
    };
    for (int day = std::min(air.startDay, today - 1);
         day > air.startDay - kDaysBeforeStart && !out.beforeStart; --day) {
        out.beforeStart = fishWaterOn(day);
    }
    out.yesterday = fishWaterOn(today - 1);
    const double midnight = (today - 1) * kDay;
    if (known.time >= midnight + kFromTen_h.value * kHour) {
        out.midMorning = readingsBetween(known.model, known.log, midnight + kFromTen_h.value * kHour,
                                         midnight + kUntilTen_h.value * kHour)
                             .surface;
    }
    out.weatherHolds = hasDay(holdDays(known.model.pond), today);
    return out;
}

/// Seconds after midnight of day 1 at which the air last ran; nothing if it never did.
std::optional<double> lastAir(const Schedule& schedule, double until) {
    std::optional<double> last;
    for (const RunBlock& block : schedule) {
        if (block.start < until) {
            last = std::max(last.value_or(-1e300), std::min(block.end, until));
        }
    }
    return last;
}

/// What a stop of more than a day asks for; nothing if the air ran yesterday or never.
std::optional<RestartAdvice> restartOf(const PondModel& model, const Morning& morning,
                                       const Schedule& untilToday, int today) {
    const double now = (today - 1) * kDay + kDay / 4;
    const std::optional<double> last = lastAir(untilToday, now);
    if (!last || now - *last < kStop_d.value * kDay) {
        return std::nullopt;
    }
    RestartAdvice out;
    out.daysOff = (now - *last) / kDay;
    const bool isMixed = morning.temperatureSurface && morning.temperatureBottom && morning.bottom &&
                         morning.surface &&
                         isMixedThrough(*morning.temperatureSurface - *morning.temperatureBottom,
                                        *morning.surface - *morning.bottom);
    out.restart = restartAfter(out.daysOff,
                               morning.temperatureBottom.value_or(model.profile.temperature.back()), isMixed);
    if (model.bottom.exists()) {
        const double thickness = model.bottom.volume / model.basin.area(model.bottom.depth);
        const double before = interpolate(model.profile.depth, model.profile.oxygen, model.bottomDepth);
        const double temperature = morning.temperatureBottom.value_or(model.profile.temperature.back());
        out.accumulated =
            demandAccumulated(model.parameters.sediment, temperature, out.daysOff, thickness, before);
        const double first = model.debt_kg * kGramPerKilogram / model.bottom.volume;
        out.share = first > 0.0 ? std::min(out.accumulated.debt / first, 1.0) : 0.0;
    }
    return out;
}

/// How the water stands by a morning's readings.
PresentState stateOf(const Morning& morning) {
    const bool isRead =
        morning.temperatureSurface && morning.temperatureBottom && morning.surface && morning.bottom;
    return isRead ? presentState(*morning.temperatureSurface - *morning.temperatureBottom,
                                 *morning.surface - *morning.bottom, *morning.temperatureSurface)
                  : PresentState::Unknown;
}

bool isRestart(const std::optional<RestartAdvice>& advice, Restart restart) {
    return advice && advice->restart == restart;
}

/// The question that minutes of the coming days are put to: how much of the bottom water they lift.
struct Ahead {
    const KnownPond& known;
    const Ramp* ramp;  ///< The ramp meant; null if none is
    const Schedule& untilToday;
    int today;
    const RunControl& control;
};

/// Minutes of the coming days and what the central run makes of them, with the air of the log before.
struct RunAhead {
    std::vector<int> minutes;
    Schedule schedule;          ///< A run a day at the ramp's clock
    RampRun run;                ///< Not run without bottom water
    std::vector<double> doses;  ///< By day [% of the bottom water]; empty unless the run completed
};

RunAhead runAhead(const Ahead& of, std::vector<int> minutes) {
    RunAhead out;
    out.minutes = std::move(minutes);
    const PondModel& model = of.known.model;
    double cutOff = 0.0;
    for (std::size_t i = 0; i < out.minutes.size() && of.ramp != nullptr; ++i) {
        if (out.minutes[i] > 0) {
            addDayRuns(*of.ramp, *model.pond.aerator, of.today + static_cast<int>(i), out.minutes[i],
                       out.schedule, cutOff);
        }
    }
    if (!model.bottom.exists()) {
        return out;
    }
    RunRequest request;
    request.days = of.today + static_cast<int>(out.minutes.size()) - 1;
    request.keepLayers = false;
    request.schedule = joinedAt(of.untilToday, out.schedule, (of.today - 1) * kDay);
    out.run = runRamp(model, of.ramp, request, {of.control.stop, nullptr});
    for (std::size_t i = 0; i < out.minutes.size() && out.run.end == RunEnd::Completed; ++i) {
        const DayRow& day = out.run.days[static_cast<std::size_t>(of.today - 1) + i];
        out.doses.push_back(doseOf(model, day));
    }
    return out;
}

/// Why there are no doses although there is bottom water; empty if there are.
std::string whyNoDoses(const RampRun& run, const RunControl& control) {
    return run.end == RunEnd::NotFinite    ? run.message
           : control.stop.stop_requested() ? "The decision was stopped before it was made."
                                           : std::string();
}

/// Minutes with each day's dose at most the cap [%].
RunAhead underCap(const Ahead& of, RunAhead ahead, double cap) {
    // Less air on one day changes what a minute lifts on the next, so that a few turns are needed.
    constexpr int kTurns = 4;
    for (int turn = 0; turn < kTurns && !ahead.doses.empty(); ++turn) {
        std::vector<int> minutes = ahead.minutes;
        for (std::size_t i = 0; i < minutes.size(); ++i) {
            if (ahead.doses[i] > cap) {
                minutes[i] = static_cast<int>(std::floor(minutes[i] * cap / ahead.doses[i]));
            }
        }
        if (minutes == ahead.minutes) {
            break;
        }
        ahead = runAhead(of, std::move(minutes));
    }
    return ahead;
}

/// What the ramp and the demand that is left add to a morning.
void addRamp(Morning& morning, double debtLeft, const RampSteps& steps, const RunAhead& going,
             const PondModel& model) {
    if (going.doses.size() > 1) {
        morning.nextDose_percent = std::max(going.doses[0], going.doses[1]);
    }
    morning.debtRatio = debtToReserve(model).value_or(0.0) * debtLeft;
    morning.holdsBefore = steps.holds();
}

/// Minutes of the coming days by the morning's decision, not yet under the cap.
std::vector<int> minutesBy(const DawnDecision& decision, const RampSteps& steps,
                           const std::optional<RestartAdvice>& restart) {
    std::vector<int> out = steps.minutesAfter(decision.verdict, isRestart(restart, Restart::WholeRamp));
    const double share = isRestart(restart, Restart::ReducedStart) ? kReducedStart.value : 1.0;
    for (int& one : out) {
        one = static_cast<int>(std::lround(one * share));
    }
    if (!decision.runsToday && !out.empty()) {
        out.front() = 0;
    }
    return out;
}

std::vector<StepAhead> stepsOf(const RunAhead& ahead, const Ramp* ramp, int today) {
    std::vector<StepAhead> out;
    for (std::size_t i = 0; i < ahead.minutes.size(); ++i) {
        const int day = today + static_cast<int>(i);
        out.push_back({day, ahead.minutes[i], ramp != nullptr ? dayStart(*ramp, day) : 0.0,
                       ahead.doses.empty() ? std::nullopt : std::optional(ahead.doses[i])});
    }
    return out;
}

/// The members fitted to the log, with its air up to now and what was decided from now on.
FitResult fitWithDecision(const KnownPond& known, const TodayOptions& options, const AirSoFar& air,
                          const Schedule& decided, const RunControl& control) {
    FitOptions fitted;
    fitted.members = options.members;
    fitted.seed = options.seed;
    fitted.threads = options.threads;
    fitted.hours = kForecastHours;
    return fitKnown(known, fitted, joinedAt(air.untilTonight, decided, known.time), control);
}

/// Tonight's low [g/m^3]: the lower of the evening's line and the fitted median; nothing without both.
std::optional<double> tonightOf(const std::optional<DuskLine>& dusk, const FitResult& fit, int today) {
    std::optional<double> out;
    if (dusk) {
        out = dusk->dawn;
    }
    const auto tonight = std::find_if(fit.nights.begin(), fit.nights.end(),
                                      [&](const NightAhead& night) { return night.night == today; });
    if (fit.end == FitEnd::Completed && tonight != fit.nights.end()) {
        out = std::min(tonight->low.p50, out.value_or(tonight->low.p50));
    }
    return out;
}

/// What the evening and the fit say of tonight. It asks for surface air at most; the verdict and the air of
/// the coming days, which the forecast has in it, stand.
void addTonight(Today& today, const KnownPond& known, FitResult fit) {
    today.dusk = duskLine(known.model, known.log, today.day);
    today.morning.tonight = tonightOf(today.dusk, fit, today.day);
    if (fit.end == FitEnd::Completed) {
        today.fit = std::move(fit);
    } else {
        today.fitMessage = fit.message;
    }
    if (today.morning.tonight) {
        heedTonight(today.decision, *today.morning.tonight, today.limits);
    }
}

/// All of a decision but the model.
Today decideKnown(const KnownPond& known, const TodayOptions& options, const RunControl& control) {
    Today today;
    today.at = known.at;
    today.day = static_cast<int>(std::floor(known.time / kDay)) + 1;
    if (today.day < 1) {
        today.message = "No morning readings yet: that time is before the first day of the pond file.";
        return today;
    }
    const PondModel& model = known.model;
    const MorningReadings read = readingsOfToday(known, today.day);
    if (!read.fishWater()) {
        today.message = "There is no sound reading of the upper water of that morning to decide by.";
        return today;
    }
    const AirSoFar air = airSoFar(known, today.day, control);
    Morning& morning = today.morning;
    morning = morningByReadings(known, read, air, today.day);
    today.restart = restartOf(model, morning, air.untilToday, today.day);

    const Ramp* ramp = rampMeant(model.pond, known.log.inForce.events);
    const RampSteps steps(ramp, air.capped, air.untilToday, today.day);
    const Ahead of{known, ramp, air.untilToday, today.day, control};
    RunAhead ahead = runAhead(of, steps.going(isRestart(today.restart, Restart::WholeRamp)));
    if (today.message = whyNoDoses(ahead.run, control); !today.message.empty()) {
        return today;
    }
    if (model.bottom.exists() && today.day > 1) {
        today.debtLeft = ahead.run.days[static_cast<std::size_t>(today.day - 2)].debtLeft;
    }
    addRamp(morning, today.debtLeft, steps, ahead, model);
    today.group = model.parameters.thresholds.group;
    today.limits = dawnLimits(model, morning.temperatureSurface.value_or(model.profile.temperature.front()));
    today.decision = decideAtDawn(morning, today.limits);
    today.state = stateOf(morning);
    // What has mixed the pond goes on renewing it.
    const bool staysOn = air.isStarted && today.decision.verdict >= DawnVerdict::Back &&
                         bottomAirIn(today.state) == BottomAir::KeepOn;
    today.decision.runsToday = today.decision.runsToday || staysOn;

    DawnDecision heeded = today.decision;
    heeded.verdict = staysOn ? DawnVerdict::Hold : heeded.verdict;
    std::vector<int> minutes = minutesBy(heeded, steps, today.restart);
    if (minutes != ahead.minutes) {
        ahead = runAhead(of, std::move(minutes));
    }
    if (today.decision.doseCap_percent) {
        ahead = underCap(of, std::move(ahead), *today.decision.doseCap_percent);
    }
    if (today.message = whyNoDoses(ahead.run, control); !today.message.empty()) {
        return today;
    }
    today.steps = stepsOf(ahead, ramp, today.day);

    FitResult fit = fitWithDecision(known, options, air, ahead.schedule, control);
    if (today.message = whyNoDoses(ahead.run, control); !today.message.empty()) {
        return today;
    }
    addTonight(today, known, std::move(fit));
    today.isDecided = true;
    return today;
}

}  // namespace

Today decideToday(const Pond& pond, const TodayOptions& options, const RunControl& control) {
    Today none;
    const std::optional<LocalTime> at = options.at ? options.at : lastEntry(pond);
    if (!at) {
        none.message = "There is no reading to decide by.";
        return none;
    }
    const Pond asKnown = knownAt(pond, *at);
    if (!hasWeather(asKnown)) {
        none.at = *at;
        none.message = "Less than half a day of weather was known by then.";
        return none;
    }
    KnownPond known = preparedPond(asKnown, *at, options.resolution);
    Today today = decideKnown(known, options, control);
    today.model = std::move(known.model);
    return today;
}

}  // namespace engine
