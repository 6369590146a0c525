#include "engine/follow_up/review.h"

#include "engine/base/parallel.h"
#include "engine/base/percentile.h"
#include "engine/base/units.h"
#include "engine/follow_up/fit_forecast.h"
#include "engine/follow_up/today.h"
#include "engine/pond/pond_words.h"

#include <algorithm>
#include <cmath>

namespace engine {
namespace {

constexpr double kAlgaeLow = 0.08, kAlgaeHigh = 0.13;  // [g O2 per mg chlorophyll], trade 3.7 after Boyd 1973
constexpr double kSecchiNoise = 0.2;  // of the depth, from day to day (trade 2.1: 15 to 25 %)

Band bandOf(std::vector<float> sample) {
    const Percentiles p = percentilesOf(sample);
    return {p[0], p[2], p[4]};
}

/// Oxygen at each dawn at two depths, days x members.
struct Dawns {
    std::vector<std::vector<float>> surface, bottom;
};

/// A part of the algae that dies, evenly over some days.
struct DeadAlgae {
    double share = 0.0;
    double from = 0.0;  ///< [s after midnight of day 1]
};

Dawns dawnsOf(const FitResult& fit, const Schedule& schedule, bool isNothing, const DeadAlgae& dead,
              const std::vector<double>& rises, int threads, const RunControl& control) {
    const EnsembleRamp air{"review", schedule, isNothing};
    MemberPlan plan = memberPlan(fit.model, air, static_cast<int>(rises.size()), false);
    double time = fit.model.startTime;
    for (MemberStep& step : plan.steps) {
        time += step.dt;
        step.plants.chlorophyll *=
            1.0 - dead.share * std::clamp((time - dead.from) / (kKillTakes_d * kDay), 0.0, 1.0);
    }
    std::vector<MemberWatch::Point> points;
    for (const double depth : {fit.model.surfaceDepth, fit.model.bottomDepth}) {
        for (const double rise : rises) {
            points.push_back({rise, depth});
        }
    }
    const MemberTrace trace = runFitted(fit.model, plan, fit.members, points, threads, control.stop);
    Dawns out;
    for (std::size_t i = 0; i < points.size(); ++i) {
        std::vector<float> values;
        for (std::size_t k = 0; k < trace.members; ++k) {
            values.push_back(static_cast<float>(trace.watch.oxygen[i * trace.members + k]));
        }
        (i < rises.size() ? out.surface : out.bottom).push_back(std::move(values));
    }
    return out;
}

/// Mean over some days of each member, as a band; the error of the model lasts and is added once.
Band meanBand(const std::vector<std::vector<float>>& days, const std::vector<std::size_t>& which,
              double sigma) {
    std::vector<float> means(days.front().size(), 0.0F);
    for (std::size_t k = 0; k < means.size(); ++k) {
        double sum = 0.0;
        for (const std::size_t day : which) {
            sum += static_cast<double>(days[day][k]);
        }
        // Even scores of a normal, in an order that has nothing to do with the members'.
        const double share =
            (static_cast<double>((k * 37U) % means.size()) + 0.5) / static_cast<double>(means.size());
        const double mean = sum / static_cast<double>(which.size()) + sigma * normalScore(share);
        means[k] = static_cast<float>(std::max(mean, 0.0));
    }
    return bandOf(std::move(means));
}

/// Days between two changes: those after the first, up to the morning of the second.
struct Between {
    int after = 0, upTo = 0;
    [[nodiscard]] bool holds(int day) const { return day > after && day <= upTo; }
};

ReviewFinding oxygenFinding(ReviewMeasure measure, const std::vector<ReviewRow>& rows, const Between& days,
                            const Dawns& without, double sigma) {
    ReviewFinding out;
    out.measure = measure;
    std::vector<std::size_t> read;
    for (std::size_t i = 0; i < rows.size(); ++i) {
        const ReviewRow& row = rows[i];
        const auto& value = measure == ReviewMeasure::DawnLow ? row.dawn : row.bottom;
        if (value && days.holds(row.day)) {
            out.reading += *value;
            read.push_back(i);
        }
    }
    out.count = static_cast<int>(read.size());
    if (out.count >= kFewestReadings) {
        out.reading /= out.count;
        out.without =
            meanBand(measure == ReviewMeasure::DawnLow ? without.surface : without.bottom, read, sigma);
        out.standsOut = out.reading < out.without.p05 || out.reading > out.without.p95;
    }
    return out;
}

/// Secchi has no model: its mean before the change and what days scatter about it.
/// @param since  Day from which readings count as before; the pond file's depth is before all.
ReviewFinding secchiFinding(const Pond& pond, std::optional<int> since, const Between& days) {
    ReviewFinding out;
    out.measure = ReviewMeasure::Secchi;
    double before = since ? 0.0 : pond.water.secchi->value, count = since ? 0.0 : 1.0;
    for (const Reading& reading : readingsInForce(pond)) {
        if (!reading.secchi) {
            continue;
        }
        const int day = dayNumber(pond, Date(std::chrono::floor<std::chrono::days>(*reading.at)));
        // A disc read on the day of the change is read when one is there for it.
        if (day <= days.after && (!since || day > *since)) {
            before += *reading.secchi;
            count += 1.0;
        } else if (days.holds(day)) {
            out.reading += *reading.secchi;
            ++out.count;
        }
    }
    if (out.count < kFewestReadings || count == 0.0) {
        out.count = count == 0.0 ? 0 : out.count;
        return out;
    }
    out.reading /= out.count;
    before /= count;
    const double sigma = kSecchiNoise * std::sqrt(1.0 / count + 1.0 / out.count);
    out.without = {before * std::exp(-1.645 * sigma), before, before * std::exp(1.645 * sigma)};
    out.standsOut = out.reading < out.without.p05 || out.reading > out.without.p95;
    return out;
}

/// Of each member the lowest dawn from a row on.
Band lowestDawn(const std::vector<std::vector<float>>& days, std::size_t from) {
    std::vector<float> lows = days[from];
    for (std::size_t i = from + 1; i < days.size(); ++i) {
        for (std::size_t k = 0; k < lows.size(); ++k) {
            lows[k] = std::min(lows[k], days[i][k]);
        }
    }
    return bandOf(std::move(lows));
}

/// The mean of the upper water's readings of the last week lies below the stress line.
bool isLowAtTheEnd(const Review& review) {
    constexpr int kWeek = 7;
    double sum = 0.0;
    int count = 0;
    for (const ReviewRow& row : review.rows) {
        if (row.dawn && row.day > review.lastDay - kWeek) {
            sum += *row.dawn;
            ++count;
        }
    }
    return count > 0 && sum / count < review.fit.model.parameters.thresholds.stress;
}

}  // namespace

CopperGate copperGate(const Water& water) {
    return !water.alkalinity                       ? CopperGate::Unknown
           : *water.alkalinity < kCopperAlkalinity ? CopperGate::Low
                                                   : CopperGate::Open;
}

std::vector<ReviewTreatment> treatmentsOf(const Pond& pond, std::optional<int> startDay) {
    std::vector<ReviewTreatment> out;
    for (const Event& event : eventsInForce(pond)) {
        if (eventKind(event.kind) == EventKind::Treatment) {
            out.push_back(
                {event, dayNumber(pond, Date(std::chrono::floor<std::chrono::days>(*event.at))), true, {}});
        }
    }
    for (ReviewTreatment& one : out) {
        one.isAttributable = !startDay || one.day - *startDay >= kWatch_d || *startDay > one.day;
        for (const ReviewTreatment& other : out) {
            const bool isOther = &other != &one;
            one.isAttributable = one.isAttributable && !(isOther && std::abs(other.day - one.day) < kWatch_d);
        }
    }
    return out;
}

Review reviewPond(const Pond& pond, const FitOptions& options, const RunControl& control) {
    Review out;
    const std::optional<LocalTime> until = options.until ? options.until : lastEntry(pond);
    if (!until) {
        out.message = "There is no reading to review.";
        return out;
    }
    const Pond known = knownAt(pond, *until);
    out.lastDay = dayNumber(pond, Date(std::chrono::floor<std::chrono::days>(*until)));
    const LoggedAir soFar = airOfLog(known, nullptr, out.lastDay, out.lastDay * kDay);
    if (!soFar.isStarted && soFar.schedule.empty()) {
        out.message = "By the log the aerator never ran: an event of kind \"started\" or \"run\" is needed.";
        return out;
    }
    out.startDay = soFar.isStarted ? soFar.firstDay : soFar.schedule.front().day;
    out.treatments = treatmentsOf(known, out.startDay);
    for (const ReviewTreatment& one : out.treatments) {
        out.cost += one.event.cost ? one.event.cost->value : 0.0;
    }
    for (const Event& event : eventsInForce(known)) {
        if (eventKind(event.kind) == EventKind::NotBought) {
            out.notBought.push_back(event);
            out.notBoughtCost += event.cost ? event.cost->value : 0.0;
        }
    }
    // The whole weather that came goes into both runs; only readings after the first treatment stay out.
    Pond fitted = known;
    if (!out.treatments.empty()) {
        const LocalTime first = *out.treatments.front().event.at;
        const auto isLater = [first](const Reading& reading) { return reading.at && *reading.at > first; };
        std::erase_if(fitted.readings, isLater);
        std::erase_if(fitted.fileReadings, isLater);
    }
    FitOptions asked = options;
    asked.until = until;
    asked.hours = 12;
    out.fit = fitPond(fitted, asked, control);
    if (out.fit.end != FitEnd::Completed) {
        out.message = out.fit.message;
        return out;
    }
    const int threads = threadsFor(options.threads);
    const std::vector<double>& chlorophyll = out.fit.model.start.chlorophyll;  // [ug/L]
    const double algae = chlorophyll.empty() ? 0.0 : chlorophyll.front();
    const WeatherSeries sun(known, {true, std::nullopt}, 1, out.lastDay + 1);
    std::vector<double> rises;
    for (int day = 1; day <= out.lastDay; ++day) {
        rises.push_back(sun.sunrise(day));
    }
    const Dawns with = dawnsOf(out.fit, out.fit.air.schedule, false, {}, rises, threads, control);
    const Dawns without = dawnsOf(out.fit, {}, true, {}, rises, threads, control);
    if (out.lastDay > kKilled_d && algae > 0.0) {
        ReviewKill kill;
        kill.day = out.lastDay - kKilled_d;
        const auto from = static_cast<std::size_t>(kill.day);  // the dawn after
        const auto killed = [&](double share) {
            const DeadAlgae dead{share, (kill.day - 1) * kDay + kDay / 2};
            return lowestDawn(
                dawnsOf(out.fit, out.fit.air.schedule, false, dead, rises, threads, control).surface, from);
        };
        kill.leftAlone = lowestDawn(with.surface, from);
        kill.quarter = killed(0.25);
        kill.all = killed(1.0);
        out.kill = kill;
    }
    if (control.stop.stop_requested()) {
        out.message = "The review was stopped before it was done.";
        return out;
    }
    PondModel readingModel = out.fit.model;
    readingModel.pond = known;
    for (int day = 1; day <= out.lastDay; ++day) {
        const auto i = static_cast<std::size_t>(day - 1);
        ReviewRow row;
        row.day = day;
        row.dawnWith = bandOf(with.surface[i]);
        row.dawnWithout = bandOf(without.surface[i]);
        row.bottomWith = bandOf(with.bottom[i]);
        row.bottomWithout = bandOf(without.bottom[i]);
        const MorningReadings read = morningOf(readingModel, day);
        row.dawn = read.surface;
        row.bottom = read.bottom;
        for (const Reading& reading : readingsInForce(known)) {
            const bool isToday =
                dayNumber(known, Date(std::chrono::floor<std::chrono::days>(*reading.at))) == day;
            row.secchi = isToday && reading.secchi ? std::optional<double>(*reading.secchi) : row.secchi;
        }
        out.rows.push_back(row);
    }
    // What is seen after a change is put beside a pond without it, up to the next change.
    const double sigma = out.fit.oxygenError.sigma();
    const auto findings = [&](int change, std::optional<int> since, const Dawns& unchanged) {
        Between days{change, out.lastDay};
        for (const ReviewTreatment& one : out.treatments) {
            days.upTo = one.day > change ? std::min(days.upTo, one.day) : days.upTo;
        }
        return std::vector<ReviewFinding>{
            oxygenFinding(ReviewMeasure::DawnLow, out.rows, days, unchanged, sigma),
            oxygenFinding(ReviewMeasure::BottomOxygen, out.rows, days, unchanged, sigma),
            secchiFinding(known, since, days)};
    };
    out.findings = findings(out.startDay, std::nullopt, without);
    int since = out.startDay;
    for (ReviewTreatment& one : out.treatments) {
        if (one.isAttributable && one.day > out.startDay) {
            one.findings = findings(one.day, since, with);
        }
        since = std::max(since, one.day);
    }
    out.copper = copperGate(known.water);
    out.algaeBillLow = kAlgaeLow * algae;
    out.algaeBillHigh = kAlgaeHigh * algae;
    const int lastChange =
        out.treatments.empty() ? out.startDay : std::max(out.startDay, out.treatments.back().day);
    const auto isWorse = [](const std::vector<ReviewFinding>& all) {
        return std::any_of(all.begin(), all.end(), [](const ReviewFinding& one) {
            return one.standsOut && one.reading < one.without.p05;
        });
    };
    const bool isTreatedWorse = std::any_of(out.treatments.begin(), out.treatments.end(),
                                            [&](const auto& one) { return isWorse(one.findings); });
    out.verdict = out.lastDay - lastChange < kWatch_d                             ? ReviewVerdict::Wait
                  : isWorse(out.findings) || isTreatedWorse || isLowAtTheEnd(out) ? ReviewVerdict::OneThing
                                                                                  : ReviewVerdict::LeaveAlone;
    out.isDone = true;
    return out;
}

}  // namespace engine
