#include "engine/follow_up/today.h"

#include "engine/base/units.h"
#include "engine/ramps/hold_rules.h"

#include <algorithm>
#include <cmath>
#include <map>

namespace engine {
namespace {

constexpr int kDaysAhead = 10;
constexpr double kAfterStop = 0.25;  // trade 3.8
constexpr double kReducedStart = 0.25;

double minutesOn(const Schedule& schedule, int day) {
    return runningBetween(schedule, (day - 1) * kDay, day * kDay) / kMinute;
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

/// The schedule from today on, day by day.
class Steps {
public:
    Steps(Today& today, const Ramp* ramp, const LoggedAir& air, const Schedule& rampRuns,
          const RunControl& control)
        : m_today(today), m_ramp(ramp), m_air(air), m_rampRuns(rampRuns), m_control(control) {
        for (int day = 1; day < today.day; ++day) {
            take(std::lround(minutesOn(air.schedule, day)));
        }
    }

    /// Days in a row, up to yesterday, that repeated their minutes although the ramp goes on from there.
    [[nodiscard]] int holds() const { return m_holds; }

    /// Minutes of the coming days if every morning said go.
    [[nodiscard]] std::vector<int> going() const {
        const bool isWhole = m_today.restart && m_today.restart->restart == Restart::WholeRamp;
        return from(isWhole ? 1 : m_step + 1, kDaysAhead);
    }

    [[nodiscard]] std::vector<int> minutes(DawnVerdict verdict, bool runsToday, double share) const {
        std::vector<int> out;
        const int last = static_cast<int>(std::lround(m_last));
        switch (verdict) {
            case DawnVerdict::Go:
                out = going();
                break;
            case DawnVerdict::Hold:
                out = {last};  // before the first start: nothing
                append(out, from(m_step + 1, kDaysAhead - 1));
                break;
            case DawnVerdict::Back:
                out = {0};
                append(out, resumed(std::max(last / 2, m_last > 0.0 ? 1 : 0), kDaysAhead - 1));
                break;
            case DawnVerdict::Stop:
                out.assign(kDaysAfterStop, 0);
                append(out, resumed(static_cast<int>(std::lround(kAfterStop * last)),
                                    kDaysAhead - kDaysAfterStop));
                break;
        }
        for (int& one : out) {
            one = static_cast<int>(std::lround(one * share));
        }
        if (!runsToday && !out.empty()) {
            out.front() = 0;
        }
        return out;
    }

    /// Runs of those minutes, a run a day at the ramp's clock.
    [[nodiscard]] Schedule schedule(const std::vector<int>& minutes) const {
        Schedule out;
        double cutOff = 0.0;
        for (std::size_t i = 0; i < minutes.size() && m_ramp != nullptr; ++i) {
            if (minutes[i] > 0) {
                addDayRuns(*m_ramp, *m_today.model.pond.aerator, m_today.day + static_cast<int>(i),
                           minutes[i], out, cutOff);
            }
        }
        return out;
    }

    /// Doses of the coming days [% of the bottom water]; empty without bottom water.
    std::vector<double> doses(const std::vector<int>& minutes) {
        std::vector<double> out;
        if (!m_today.model.bottom.exists()) {
            return out;
        }
        RunRequest request;
        request.days = m_today.day + static_cast<int>(minutes.size()) - 1;
        request.keepLayers = false;
        const double midnight = (m_today.day - 1) * kDay;
        request.schedule = joinedAt(m_air.schedule, schedule(minutes), midnight);
        m_run = runRamp(m_today.model, m_ramp, request, {m_control.stop, nullptr});
        if (m_run.end != RunEnd::Completed) {
            return out;
        }
        for (std::size_t i = 0; i < minutes.size(); ++i) {
            const auto day = static_cast<std::size_t>(m_today.day - 1) + i;
            out.push_back(100.0 * m_run.days[day].liftedVolume / m_today.model.bottom.volume);
        }
        return out;
    }

    [[nodiscard]] const RampRun& run() const { return m_run; }
    /// Why there are no doses although there is bottom water; empty if there are.
    [[nodiscard]] std::string whyNoDoses() const {
        return m_run.end == RunEnd::NotFinite    ? m_run.message
               : m_control.stop.stop_requested() ? "The decision was stopped before it was made."
                                                 : std::string();
    }
    [[nodiscard]] bool hasRun() const { return m_last > 0.0; }

private:
    static void append(std::vector<int>& to, const std::vector<int>& more) {
        to.insert(to.end(), more.begin(), more.end());
    }
    /// A day that ran. One that was held repeats its minutes and is no step; where the ramp itself is level,
    /// the same minutes are a step all the same.
    void take(long minutes) {
        if (minutes == 0) {
            m_holds = 0;
            return;
        }
        const bool isCapped = m_ramp != nullptr && m_ramp->kind == RampKind::Capped;
        if (m_step == 0 || minutes >= rule(m_step + 1)) {
            ++m_step;
            m_holds = 0;
        } else if (minutes == std::lround(m_last)) {
            ++m_holds;
        } else {
            m_step += isCapped ? 1 : 0;
            m_holds = 0;
        }
        // The ramp stands where its minutes are.
        while (!isCapped && m_step > 1 && rule(m_step) > minutes) {
            --m_step;
        }
        m_last = static_cast<double>(minutes);
    }
    [[nodiscard]] int rule(int step) const {
        if (m_ramp == nullptr) {
            return 0;
        }
        if (m_ramp->kind == RampKind::Capped) {
            return static_cast<int>(std::lround(minutesOn(m_rampRuns, step)));
        }
        return ruleMinutes(*m_ramp, step);
    }
    [[nodiscard]] std::vector<int> from(int step, int count) const {
        std::vector<int> out;
        for (int i = 0; i < count; ++i) {
            out.push_back(rule(step + i));
        }
        return out;
    }
    /// From `minutes` on as the ramp goes on from the step that is nearest below.
    [[nodiscard]] std::vector<int> resumed(int minutes, int count) const {
        int step = 1;
        while (step < 60 && rule(step + 1) <= minutes && rule(step + 1) > rule(step)) {
            ++step;
        }
        std::vector<int> out{minutes};
        append(out, from(step + 1, std::max(count - 1, 0)));
        return out;
    }

    Today& m_today;
    const Ramp* m_ramp;
    const LoggedAir& m_air;
    const Schedule& m_rampRuns;
    const RunControl& m_control;
    double m_last = 0.0;
    int m_step = 0;  ///< Of the ramp, that ran last
    int m_holds = 0;
    RampRun m_run;
};

std::optional<RestartAdvice> restartOf(const Today& today, const LoggedAir& air) {
    const double now = (today.day - 1) * kDay + kDay / 4;
    const std::optional<double> last = lastAir(air.schedule, now);
    if (!last || now - *last < 1.5 * kDay) {
        return std::nullopt;
    }
    const PondModel& model = today.model;
    RestartAdvice out;
    out.daysOff = (now - *last) / kDay;
    const Morning& morning = today.morning;
    const bool isMixed = morning.temperatureSurface && morning.temperatureBottom && morning.bottom &&
                         morning.surface &&
                         std::fabs(*morning.temperatureSurface - *morning.temperatureBottom) < 1.0 &&
                         std::fabs(*morning.surface - *morning.bottom) < 1.5;
    out.restart = restartAfter(out.daysOff,
                               morning.temperatureBottom.value_or(model.profile.temperature.back()), isMixed);
    if (model.bottom.exists()) {
        const double thickness = model.bottom.volume / model.basin.area(model.bottom.depth);
        const double before = interpolate(model.profile.depth, model.profile.oxygen, model.bottomDepth);
        out.accumulated = demandAccumulated(out.daysOff, thickness, before);
        const double first = model.debt_kg * kGramPerKilogram / model.bottom.volume;
        out.share = first > 0.0 ? std::min(out.accumulated.debt / first, 1.0) : 0.0;
    }
    return out;
}

}  // namespace

Today decideToday(const Pond& pond, const TodayOptions& options, const RunControl& control) {
    Today today;
    const std::optional<LocalTime> at = options.at ? options.at : lastEntry(pond);
    if (!at) {
        today.message = "There is no reading to decide by.";
        return today;
    }
    today.at = *at;
    const Pond known = knownAt(pond, *at);
    if (!hasWeather(known)) {
        today.message = "Less than half a day of weather was known by then.";
        return today;
    }
    today.model = prepare(known, options.resolution);
    const PondModel& model = today.model;
    const double now = secondsOf(pond, *at);
    today.day = static_cast<int>(std::floor(now / kDay)) + 1;
    if (today.day < 1) {
        today.message = "The time asked for lies before the first day of the pond file.";
        return today;
    }
    MorningReadings read = morningOf(model, today.day);
    if (!read.fishWater()) {
        read = lastReadings(model, now);
    }
    Morning& morning = today.morning;
    morning.surface = read.surface;
    morning.middle = read.middle;
    morning.bottom = read.bottom;
    morning.temperatureSurface = read.temperatureSurface;
    morning.temperatureBottom = read.temperatureBottom;
    morning.smell = read.smell;
    morning.fish = read.fish;
    if (!read.fishWater()) {
        today.message = "There is no sound reading of the upper water of that morning to decide by.";
        return today;
    }
    const LoggedAir soFar = airOfLog(known, nullptr, today.day, today.day * kDay);
    morning.isStarted = soFar.isStarted || !soFar.schedule.empty();
    const int startDay =
        morning.isStarted ? (soFar.isStarted ? soFar.firstDay : soFar.schedule.front().day) : today.day;
    for (int day = std::min(startDay, today.day - 1); day > startDay - 14 && !morning.beforeStart; --day) {
        morning.beforeStart = morningOf(model, day).fishWater();
    }
    morning.yesterday = morningOf(model, today.day - 1).fishWater();
    const MorningReadings late =
        readingsBetween(model, (today.day - 1) * kDay + 9.0 * kHour, (today.day - 1) * kDay + 11.5 * kHour);
    morning.midMorning =
        now >= (today.day - 1) * kDay + 9.0 * kHour && late.surface ? late.surface : std::nullopt;
    const std::vector<int> held = holdDays(known);
    morning.weatherHolds = std::find(held.begin(), held.end(), today.day) != held.end();

    const Ramp* ramp = rampMeant(model.pond);
    Schedule rampRuns;
    if (ramp != nullptr && ramp->kind == RampKind::Capped) {
        RunRequest request;
        request.days = today.day + kDaysAhead;
        request.keepLayers = false;
        rampRuns = runRamp(model, ramp, request, {control.stop, nullptr}).schedule;
    }
    const LoggedAir air =
        airOfLog(known, rampRuns.empty() ? nullptr : &rampRuns, today.day - 1, (today.day - 1) * kDay);
    today.restart = restartOf(today, air);
    Steps steps(today, ramp, air, rampRuns, control);
    const std::vector<double> goingDoses = steps.doses(steps.going());
    if (today.message = steps.whyNoDoses(); !today.message.empty()) {
        return today;
    }
    if (goingDoses.size() > 1) {
        morning.nextDose_percent = std::max(goingDoses[0], goingDoses[1]);
    }
    morning.debtRatio = model.oxygenReserve_kg > 0.0 ? model.debt_kg / model.oxygenReserve_kg : 0.0;
    if (model.bottom.exists() && today.day > 1) {
        // What is left of it by the central run with the air of the log.
        today.debtLeft = steps.run().days[static_cast<std::size_t>(today.day - 2)].debtLeft;
        morning.debtRatio *= today.debtLeft;
    }
    morning.holdsBefore = steps.holds();
    today.group = model.parameters.thresholds.group;
    const double warm = morning.temperatureSurface.value_or(model.profile.temperature.front());
    today.limits = dawnLimits(model, warm);
    today.decision = decideAtDawn(morning, today.limits);

    const auto shareOf = [&] {
        if (today.restart && today.restart->restart == Restart::ReducedStart) {
            return kReducedStart;
        }
        return 1.0;
    };
    std::vector<int> minutes = steps.minutes(today.decision.verdict, today.decision.runsToday, shareOf());
    std::vector<double> doses = steps.doses(minutes);
    // Less air on one day changes what a minute lifts on the next, so that a few turns are needed.
    constexpr int kTurns = 4;
    const auto cap = today.decision.doseCap_percent;
    for (int turn = 0; turn < kTurns && cap && !doses.empty(); ++turn) {
        bool isOver = false;
        for (std::size_t i = 0; i < minutes.size(); ++i) {
            if (doses[i] > *cap) {
                minutes[i] = static_cast<int>(std::floor(minutes[i] * *cap / doses[i]));
                isOver = true;
            }
        }
        if (!isOver) {
            break;
        }
        doses = steps.doses(minutes);
    }
    if (today.message = steps.whyNoDoses(); !today.message.empty()) {
        return today;
    }
    const Schedule ahead = steps.schedule(minutes);
    for (std::size_t i = 0; i < minutes.size(); ++i) {
        const int day = today.day + static_cast<int>(i);
        today.steps.push_back({day, minutes[i], ramp != nullptr ? dayStart(*ramp, day) : 0.0,
                               doses.empty() ? std::nullopt : std::optional(doses[i])});
    }

    FitOptions fitted;
    fitted.until = at;
    fitted.members = options.members;
    fitted.seed = options.seed;
    fitted.threads = options.threads;
    fitted.resolution = options.resolution;
    fitted.hours = 32;
    fitted.ahead = ahead;
    FitResult fit = fitPond(pond, fitted, control);
    if (today.message = steps.whyNoDoses(); !today.message.empty()) {
        return today;
    }
    today.dusk = duskLine(model, today.day);
    if (today.dusk) {
        morning.tonight = today.dusk->dawn;
    }
    if (fit.end == FitEnd::Completed) {
        const auto tonight = std::find_if(fit.nights.begin(), fit.nights.end(),
                                          [&](const NightAhead& night) { return night.night == today.day; });
        if (tonight != fit.nights.end()) {
            morning.tonight = std::min(tonight->low.p50, morning.tonight.value_or(tonight->low.p50));
        }
        today.fit = std::move(fit);
    } else {
        today.fitMessage = fit.message;
    }
    if (morning.tonight) {
        today.decision = decideAtDawn(morning, today.limits);
    }
    today.isDecided = true;
    return today;
}

}  // namespace engine
