#include "engine/advice/advice.h"

#include "engine/advice/constants_advice.h"
#include "engine/advice/telling_readings.h"
#include "engine/base/error.h"
#include "engine/base/parallel.h"
#include "engine/base/units.h"
#include "engine/ensemble/chances.h"
#include "engine/plan/constants_plan.h"
#include "engine/plan/plan_weather.h"
#include "engine/plan/surface_air_ramp.h"
#include "engine/ramps/hold_rules.h"
#include "engine/ramps/weather.h"
#include "engine/run/air_days.h"
#include "engine/run/power_use.h"
#include "engine/run/shares.h"
#include "engine/run/triage.h"
#include "engine/water/water.h"

#include <algorithm>
#include <chrono>
#include <cmath>
#include <tuple>
#include <utility>

namespace engine {
namespace {

/// The usual time of the autumn turnover after a day, by common practice.
StartWindow autumnAfter(const Place& place) {
    using namespace std::chrono;
    const Date day = *place.firstDay;
    const auto month = static_cast<unsigned>(kWaitMonth.value) - (*place.latitude_deg < 0.0 ? 6U : 0U);
    const auto in = [&](year y) {
        return Date(y / std::chrono::month(month) / static_cast<unsigned>(kWaitDay.value));
    };
    const Date from = in(day.year()) > day ? in(day.year()) : in(day.year() + years(1));
    return {from, Date(local_days(from) + days(static_cast<int>(kWaitDays.value)))};
}

WaitWindow waitWindow(const Pond& pond, const StartCalendar& calendar) {
    const auto computed = nextWindow(calendar, *pond.place.firstDay);
    return computed ? WaitWindow{*computed, true} : WaitWindow{autumnAfter(pond.place), false};
}

void addReadings(const Pond& pond, Advice& advice, const PondModel& model) {
    const WeatherSeries sun(pond, {true}, -30, 2);
    std::vector<int> dawns;
    double first = 1e300, last = -1e300, profileAt = model.startTime;
    bool isSecondProfile = false;
    std::vector<double> depths;
    for (const auto* list : {&pond.readings, &pond.fileReadings}) {
        for (const Reading& reading : *list) {
            if (!reading.at || !reading.oxygen || !reading.depth) {
                continue;
            }
            const double time = secondsOf(pond, *reading.at);
            const int day = static_cast<int>(std::floor(time / kDay)) + 1;
            if (day < -30 || day > 2) {
                continue;
            }
            if (std::fabs(time - sun.sunrise(day)) <= 2.0 * kHour &&
                std::find(dawns.begin(), dawns.end(), day) == dawns.end()) {
                dawns.push_back(day);
            }
            first = std::min(first, time);
            last = std::max(last, time);
            if (std::fabs(time - profileAt) > 12.0 * kHour && reading.temperature) {
                depths.push_back(*reading.depth);
            }
        }
    }
    std::sort(depths.begin(), depths.end());
    depths.erase(std::unique(depths.begin(), depths.end()), depths.end());
    constexpr std::size_t kDepthsOfProfile = 3;
    isSecondProfile = depths.size() >= kDepthsOfProfile || last - first >= kSecondProfile_h.value * kHour;
    advice.dawnsRead = static_cast<int>(dawns.size());
    const Water& water = pond.water;
    const bool isDebtMeasured = !model.bottom.exists() || model.bottom.isOxic || pond.bottleTest ||
                                water.totalSulfide || water.methane || water.ferrousIron ||
                                (pond.bottom.oxygenDebt && pond.bottom.oxygenDebt->confidence.value_or(
                                                               Confidence::Measured) == Confidence::Measured);
    if (!isDebtMeasured) {
        advice.provisional.push_back(ProvisionalReason::DebtGuessed);
    }
    if (!isSecondProfile) {
        advice.provisional.push_back(ProvisionalReason::OneProfile);
    }
    if (dawns.size() < 2) {
        advice.provisional.push_back(ProvisionalReason::FewDawns);
    }
}

/// What ramps are ranked by, the least first: share of ponds below the lethal line, then how low the worst
/// night is.
using Harm = std::tuple<double, double>;
Harm harmOf(const Comparison& comparison, const RampRun& run) {
    return {chancesOf(comparison, run).belowLethal, -run.worst().lowest};
}

void addLeastHarmful(const Comparison& comparison, Advice& advice) {
    if (membersOf(comparison, 0) == nullptr) {
        return;
    }
    std::optional<Harm> least;
    for (std::size_t i = 1; i < comparison.runs.size(); ++i) {
        const RampRun& run = comparison.runs[i];
        if (run.end != RunEnd::Completed || membersOf(comparison, i) == nullptr ||
            run.surfaceAir.transfer > 0.0) {
            continue;
        }
        const Harm harm = harmOf(comparison, run);
        if (!least || harm < *least) {
            least = harm;
            advice.leastHarmful = run.name;
            advice.leastHarmfulLethal = {std::get<0>(harm),
                                         chancesOf(comparison, comparison.runs.front()).belowLethal};
        }
    }
}

bool has(const Advice& advice, StartCondition condition) {
    return std::any_of(advice.unmet.begin(), advice.unmet.end(),
                       [&](const UnmetCondition& one) { return one.condition == condition; });
}

/// The same comparison with one ramp more, of which all else is taken over.
Comparison withRamp(const Comparison& comparison, const Ramp& ramp, int threads, const RunControl& control) {
    Pond pond = comparison.model.pond;
    pond.ramps.push_back(ramp);
    CompareOptions options;
    options.days = comparison.days;
    options.threads = threads;
    options.resolution = comparison.model.resolution;
    options.earlier = &comparison;
    if (comparison.ensemble) {
        options.members = comparison.ensemble->asked;
        options.seed = comparison.ensemble->seed;
    }
    options.endStates = comparison.runs.front().endState.has_value();
    options.attribution = !comparison.runs.front().attribution.empty();
    return compare(pond, options, control);
}

}  // namespace

std::string_view wordOf(AdviceKind kind) {
    switch (kind) {
        case AdviceKind::Start:
            return "start";
        case AdviceKind::StartWithSurfaceAir:
            return "start_with_surface_air";
        case AdviceKind::WaitUntil:
            return "wait_until";
        case AdviceKind::NoRampNeeded:
            return "no_ramp_needed";
        case AdviceKind::NoGain:
            return "no_gain";
    }
    return "";
}

Advice adviceOn(const Comparison& comparison, std::size_t run) {
    ensure(run < comparison.runs.size() && runsCompleted(comparison), "advice is about a run that completed");
    const PondModel& model = comparison.model;
    const RampRun &ramp = comparison.runs[run], &nothing = comparison.runs.front();
    Advice out;
    out.run = run;
    out.ramp = ramp.name;
    const int first = firstAirDay(ramp).value_or(1);
    out.firstDay = dateOfDay(model.pond, first);
    if (const auto sustained = firstSustainedDay(ramp)) {
        out.daysToSustained = *sustained - first + 1;
    }
    out.worst = ramp.worst();
    out.worstAlone = nothing.worst();
    out.warm = warmNight(model, ramp, out.worst);
    out.warmAlone = warmNight(model, nothing, out.worstAlone);
    if (membersOf(comparison, run) != nullptr && membersOf(comparison, 0) != nullptr) {
        const Chances with = chancesOf(comparison, ramp), alone = chancesOf(comparison, nothing);
        out.lethal = LineChance{with.belowLethal, alone.belowLethal};
        out.stress = LineChance{with.belowStress, alone.belowStress};
        out.plainLethalAlone = membersOf(comparison, 0)->plainBelowLethal;
        out.effective = comparison.ensemble->effective;
    }
    if (run > 0 && ramp.surfaceAir.transfer > 0.0) {
        out.worstWithoutSurfaceAir = worstWithoutAir(comparison, run);
    }
    out.endState = ramp.endState;
    out.endStateAlone = nothing.endState;
    if (model.debt_kg > 0.0) {
        out.debtLeft_percent = debtLeftPercent(ramp);
    }
    out.surfaceAir = ramp.surfaceAir;
    out.surfaceAir_kW = powerOf_kW(ramp.surfaceAir);
    for (const int day : holdDays(model.pond)) {
        out.holdDays.push_back(dateOfDay(model.pond, day));
    }
    addReadings(model.pond, out, model);
    addLeastHarmful(comparison, out);
    return out;
}

namespace {

/// What a comparison says of a ramp, and what stands against its start.
Answered judged(Comparison comparison, std::size_t run) {
    Answered out{std::move(comparison), {}};
    out.advice = adviceOn(out.comparison, run);
    if (run > 0) {
        out.advice.unmet = unmetBy(out.comparison, run);
    }
    return out;
}

/// Names the readings that tell on the answer about a ramp.
void addTellingReadings(Answered& answer) {
    answer.advice.readings = tellingReadings(answer.comparison, answer.advice.run,
                                             startLimits(answer.comparison.model.pond).lethal_percent);
}

/// The twelve months by a comparison's ramp, on a share of its members.
void addCalendar(Answered& answer, int threads, const std::stop_token& stop) {
    const Comparison& comparison = answer.comparison;
    CalendarOptions options;
    options.threads = threads;
    options.members = 1;
    if (comparison.ensemble) {
        options.members =
            std::clamp(comparison.ensemble->asked / kMembersPerCalendar, 1, options.mostMembers);
        options.seed = comparison.ensemble->seed;
    }
    options.resolution.layers = std::min(options.resolution.layers, comparison.model.resolution.layers);
    options.resolution.largestStep =
        std::max(options.resolution.largestStep, comparison.model.resolution.largestStep);
    answer.advice.calendar =
        startCalendar(comparison.model, comparison.model.pond.ramps[answer.advice.run - 1], options, stop);
}

void addWeakestMoment(Answered& answer, int threads, const std::stop_token& stop) {
    const PondModel& model = answer.comparison.model;
    if (const auto spell =
            weakestMoment(model, answer.comparison.runs[answer.advice.run], threadsFor(threads), stop)) {
        answer.advice.weakest = {dateOfDay(model.pond, spell->day), spell->lowest, spell->nothing,
                                 spell->worstNight};
    }
}

AdviceKind kindOfStart(const PondModel& model, const Advice& advice) {
    const bool isHarmless = !model.bottom.exists() || triageOf(model).band == RatioBand::Low;
    return advice.surfaceAir.transfer > 0.0 ? AdviceKind::StartWithSurfaceAir
           : isHarmless                     ? AdviceKind::NoRampNeeded
                                            : AdviceKind::Start;
}

/// The same ramp with surface air at night, where only oxygen stands against a start and that is enough.
std::optional<Answered> withAirAtNight(const Answered& answer, int threads, const RunControl& control) {
    const Advice& advice = answer.advice;
    const bool isOxygenAlone =
        std::all_of(advice.unmet.begin(), advice.unmet.end(),
                    [](const UnmetCondition& one) { return isOfOxygen(one.condition); });
    if (!isOxygenAlone || advice.surfaceAir.transfer > 0.0) {
        return std::nullopt;
    }
    const PondModel& model = answer.comparison.model;
    const Ramp aired =
        withSurfaceAir(model, model.pond.ramps[advice.run - 1], answer.comparison.days, control.stop);
    Comparison more = withRamp(answer.comparison, aired, threads, control);
    if (!isWhole(more)) {
        return std::nullopt;
    }
    const std::size_t last = more.runs.size() - 1;
    Answered out = judged(std::move(more), last);
    return out.advice.unmet.empty() ? std::optional(std::move(out)) : std::nullopt;
}

}  // namespace

Answered answered(Comparison comparison, std::size_t run, int threads, const RunControl& control) {
    if (run > 0 && stepsOnHoldDay(comparison.model, comparison.runs[run])) {
        Comparison more =
            withRamp(comparison, withHoldDaysOut(comparison.model.pond, run - 1), threads, control);
        if (isWhole(more)) {
            run = more.runs.size() - 1;
            comparison = std::move(more);
        }
    }
    Answered out = judged(std::move(comparison), run);
    if (run == 0) {
        out.advice.kind = AdviceKind::WaitUntil;
        out.advice.wait = waitWindow(out.comparison.model.pond, out.advice.calendar);
        return out;
    }
    if (has(out.advice, StartCondition::EndState)) {
        out.advice.kind = AdviceKind::NoGain;
    } else if (out.advice.unmet.empty()) {
        out.advice.kind = kindOfStart(out.comparison.model, out.advice);
    } else if (auto aired = withAirAtNight(out, threads, control)) {
        out = std::move(*aired);
        out.advice.kind = AdviceKind::StartWithSurfaceAir;
    } else {
        out.advice.kind = AdviceKind::WaitUntil;
    }
    addWeakestMoment(out, threads, control.stop);
    addCalendar(out, threads, control.stop);
    if (out.advice.kind == AdviceKind::WaitUntil) {
        out.advice.wait = waitWindow(out.comparison.model.pond, out.advice.calendar);
    }
    addTellingReadings(out);
    return out;
}

std::size_t spokenOf(const Plan& plan) {
    const Comparison& comparison = plan.comparison;
    if (plan.ramp) {
        return comparison.runs.size() - 1;
    }
    std::vector<std::pair<Harm, std::size_t>> order;
    for (std::size_t i = 1; i < comparison.runs.size(); ++i) {
        if (!endsLower(comparison.model, comparison.runs[i], comparison.runs.front())) {
            order.push_back({harmOf(comparison, comparison.runs[i]), i});
        }
    }
    if (order.empty()) {
        return 0;
    }
    std::sort(order.begin(), order.end());
    const auto mayStart = std::find_if(
        order.begin(), order.end(), [&](const auto& one) { return unmetBy(comparison, one.second).empty(); });
    return (mayStart != order.end() ? mayStart : order.begin())->second;
}

Answered answered(const Plan& plan, int threads, const RunControl& control) {
    const std::size_t run = spokenOf(plan);
    Answered out = answered(plan.comparison, run, threads, control);
    if (run == 0) {
        out.advice.kind = AdviceKind::NoGain;
        out.advice.wait.reset();
    }
    return out;
}

}  // namespace engine
