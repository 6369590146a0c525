#include "engine/follow_up/review.h"

#include "engine/base/parallel.h"
#include "engine/base/percentile.h"
#include "engine/base/units.h"
#include "engine/follow_up/constants_follow_up.h"
#include "engine/follow_up/fit_forecast.h"
#include "engine/follow_up/today.h"
#include "engine/pond/pond_words.h"
#include "engine/water/priors.h"

#include <algorithm>
#include <cmath>

namespace engine {
namespace {

Band bandOf(std::vector<float> sample) {
    const Percentiles p = percentilesOf(sample);
    return {p[0], p[2], p[4]};
}

int dayOf(const Pond& pond, LocalTime at) {
    return dayNumber(pond, Date(std::chrono::floor<std::chrono::days>(at)));
}

/// Oxygen at each dawn at two depths, days x members.
struct Dawns {
    std::vector<std::vector<float>> surface, bottom;
};

/// The plan of the members with some air, or without any.
MemberPlan planUnder(const FitResult& fit, const Schedule& schedule, bool isNothing, int days) {
    return memberPlan(fit.model, {"review", schedule, isNothing}, days, false);
}

/// A plan in which a part of the algae dies at an even rate.
/// @param share  Of the algae.
/// @param from   [s after midnight of day 1].
MemberPlan withDeadAlgae(MemberPlan plan, double startTime, double share, double from) {
    double time = startTime;
    for (MemberStep& step : plan.steps) {
        time += step.dt;
        step.plants.chlorophyll *=
            1.0 - share * std::clamp((time - from) / (kKillTakes_d.value * kDay), 0.0, 1.0);
    }
    return plan;
}

/// @param rises  Sunrises of days 1, 2, ...
Dawns dawnsOf(const FitResult& fit, const MemberPlan& plan, const std::vector<double>& rises, int threads,
              const RunControl& control) {
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
/// @param readings  Of that pond, in force.
/// @param since     Day from which readings count as before; the pond file's depth is before all.
ReviewFinding secchiFinding(const Pond& pond, const std::vector<Reading>& readings, std::optional<int> since,
                            const Between& days) {
    ReviewFinding out;
    out.measure = ReviewMeasure::Secchi;
    double before = since ? 0.0 : pond.water.secchi->value, count = since ? 0.0 : 1.0;
    for (const Reading& reading : readings) {
        if (!reading.secchi) {
            continue;
        }
        const int day = dayOf(pond, *reading.at);
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
    const double sigma = kSecchiNoise.value * std::sqrt(1.0 / count + 1.0 / out.count);
    out.without = {before * std::exp(-kFivePercent.value * sigma), before,
                   before * std::exp(kFivePercent.value * sigma)};
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

/// The pond of a review, and what its log says of changes.
struct ReviewPond {
    Pond known;  ///< As it was known on the last day
    LocalTime until{};
    LogInForce log;
};

/// The day on which the aerator first ran by the log; nothing if it never did.
std::optional<int> startDayOf(const ReviewPond& pond, int lastDay) {
    const LoggedAir air = airOfLog(pond.known, pond.log.events, nullptr, lastDay, lastDay * kDay);
    return air.isStarted           ? std::optional(air.firstDay)
           : !air.schedule.empty() ? std::optional(air.schedule.front().day)
                                   : std::nullopt;
}

/// What was bought and what was left out.
void addTreatments(Review& review, const ReviewPond& pond) {
    review.treatments = treatmentsOf(pond.known, pond.log.events, review.startDay);
    for (const ReviewTreatment& one : review.treatments) {
        review.cost += one.event.cost ? one.event.cost->value : 0.0;
    }
    for (const Event& event : pond.log.events) {
        if (eventKind(event.kind) == EventKind::NotBought) {
            review.notBought.push_back(event);
            review.notBoughtCost += event.cost ? event.cost->value : 0.0;
        }
    }
}

/// The members fitted to what was read up to the first treatment. The whole weather that came goes into it.
FitResult fitBefore(const ReviewPond& pond, const std::vector<ReviewTreatment>& treatments,
                    const FitOptions& options, const RunControl& control) {
    Pond fitted = pond.known;
    if (!treatments.empty()) {
        const LocalTime first = *treatments.front().event.at;
        const auto isLater = [first](const Reading& reading) { return reading.at && *reading.at > first; };
        std::erase_if(fitted.readings, isLater);
        std::erase_if(fitted.fileReadings, isLater);
    }
    FitOptions asked = options;
    asked.until = pond.until;
    asked.hours = 12;
    return fitPond(fitted, asked, control);
}

/// What the members have at dawn, with the air of the log and without any.
struct DawnsBothWays {
    Dawns with, without;
    std::optional<ReviewKill> kill;
};

DawnsBothWays dawnsBothWays(const Review& review, const std::vector<double>& rises, double chlorophyll,
                            int threads, const RunControl& control) {
    const FitResult& fit = review.fit;
    const MemberPlan air = planUnder(fit, fit.air.schedule, false, review.lastDay);
    DawnsBothWays out;
    out.with = dawnsOf(fit, air, rises, threads, control);
    out.without = dawnsOf(fit, planUnder(fit, {}, true, review.lastDay), rises, threads, control);
    if (review.lastDay > kKilled_d && chlorophyll > 0.0) {
        ReviewKill kill;
        kill.day = review.lastDay - kKilled_d;
        const auto from = static_cast<std::size_t>(kill.day);  // the dawn after
        const double noon = (kill.day - 1) * kDay + kDay / 2;
        const auto killed = [&](double share) {
            const MemberPlan dying = withDeadAlgae(air, fit.model.startTime, share, noon);
            return lowestDawn(dawnsOf(fit, dying, rises, threads, control).surface, from);
        };
        kill.leftAlone = lowestDawn(out.with.surface, from);
        kill.quarter = killed(0.25);
        kill.all = killed(1.0);
        out.kill = kill;
    }
    return out;
}

/// A row a day: both ways, and what was read.
std::vector<ReviewRow> rowsOf(const ReviewPond& pond, const PondModel& model, const DawnsBothWays& dawns,
                              const std::vector<double>& rises) {
    std::vector<ReviewRow> out(rises.size());
    const JudgedLog log = judgedLog(pond.log, model);
    for (std::size_t i = 0; i < rises.size(); ++i) {
        ReviewRow& row = out[i];
        row.day = static_cast<int>(i) + 1;
        row.dawnWith = bandOf(dawns.with.surface[i]);
        row.dawnWithout = bandOf(dawns.without.surface[i]);
        row.bottomWith = bandOf(dawns.with.bottom[i]);
        row.bottomWithout = bandOf(dawns.without.bottom[i]);
        const MorningReadings read = readingsAtDawn(model, log, rises[i]);
        row.dawn = read.surface;
        row.bottom = read.bottom;
    }
    for (const Reading& reading : pond.log.readings) {
        const int day = dayOf(pond.known, *reading.at);
        if (reading.secchi && day >= 1 && day <= static_cast<int>(out.size())) {
            out[static_cast<std::size_t>(day - 1)].secchi = *reading.secchi;
        }
    }
    return out;
}

/// What is seen after a change beside a pond without it, up to the next change.
/// @param since  As secchiFinding() has it.
std::vector<ReviewFinding> findingsAfter(int change, std::optional<int> since, const Review& review,
                                         const ReviewPond& pond, const Dawns& unchanged) {
    Between days{change, review.lastDay};
    for (const ReviewTreatment& one : review.treatments) {
        days.upTo = one.day > change ? std::min(days.upTo, one.day) : days.upTo;
    }
    const double sigma = review.fit.oxygenError.sigma();
    return {oxygenFinding(ReviewMeasure::DawnLow, review.rows, days, unchanged, sigma),
            oxygenFinding(ReviewMeasure::BottomOxygen, review.rows, days, unchanged, sigma),
            secchiFinding(pond.known, pond.log.readings, since, days)};
}

void addFindings(Review& review, const ReviewPond& pond, const DawnsBothWays& dawns) {
    review.findings = findingsAfter(review.startDay, std::nullopt, review, pond, dawns.without);
    int since = review.startDay;
    for (ReviewTreatment& one : review.treatments) {
        if (one.isAttributable && one.day > review.startDay) {
            one.findings = findingsAfter(one.day, since, review, pond, dawns.with);
        }
        since = std::max(since, one.day);
    }
}

bool isWorse(const std::vector<ReviewFinding>& findings) {
    return std::any_of(findings.begin(), findings.end(), [](const ReviewFinding& one) {
        return one.standsOut && one.reading < one.without.p05;
    });
}

ReviewVerdict verdictOf(const Review& review) {
    const int lastChange =
        review.treatments.empty() ? review.startDay : std::max(review.startDay, review.treatments.back().day);
    if (review.lastDay - lastChange < kWatch_d) {
        return ReviewVerdict::Wait;
    }
    const bool isTreatedWorse = std::any_of(review.treatments.begin(), review.treatments.end(),
                                            [](const ReviewTreatment& one) { return isWorse(one.findings); });
    return isWorse(review.findings) || isTreatedWorse || isLowAtTheEnd(review) ? ReviewVerdict::OneThing
                                                                               : ReviewVerdict::LeaveAlone;
}

}  // namespace

CopperGate copperGate(const Water& water) {
    return !water.alkalinity                             ? CopperGate::Unknown
           : *water.alkalinity < kCopperAlkalinity.value ? CopperGate::Low
                                                         : CopperGate::Open;
}

std::vector<ReviewTreatment> treatmentsOf(const Pond& pond, const std::vector<Event>& events,
                                          std::optional<int> startDay) {
    std::vector<ReviewTreatment> out;
    for (const Event& event : events) {
        if (eventKind(event.kind) == EventKind::Treatment) {
            out.push_back({event, dayOf(pond, *event.at), true, {}});
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
    ReviewPond reviewed{knownAt(pond, *until), *until, {}};
    reviewed.log = logInForce(reviewed.known);
    out.lastDay = dayOf(pond, *until);
    const std::optional<int> startDay = startDayOf(reviewed, out.lastDay);
    if (!startDay) {
        out.message = "By the log the aerator never ran: an event of kind \"started\" or \"run\" is needed.";
        return out;
    }
    out.startDay = *startDay;
    addTreatments(out, reviewed);
    out.fit = fitBefore(reviewed, out.treatments, options, control);
    if (out.fit.end != FitEnd::Completed) {
        out.message = out.fit.message;
        return out;
    }
    const std::vector<double>& chlorophyll = out.fit.model.start.chlorophyll;  // [ug/L]
    const double algae = chlorophyll.empty() ? 0.0 : chlorophyll.front();
    const WeatherSeries sun(reviewed.known, {true}, 1, out.lastDay + 1);
    std::vector<double> rises;
    for (int day = 1; day <= out.lastDay; ++day) {
        rises.push_back(sun.sunrise(day));
    }
    const DawnsBothWays dawns = dawnsBothWays(out, rises, algae, threadsFor(options.threads), control);
    if (control.stop.stop_requested()) {
        out.message = "The review was stopped before it was done.";
        return out;
    }
    out.kill = dawns.kill;
    out.rows = rowsOf(reviewed, out.fit.model, dawns, rises);
    addFindings(out, reviewed, dawns);
    out.copper = copperGate(reviewed.known.water);
    out.algaeBillLow = kOxygenOfChlorophyll.low * algae;
    out.algaeBillHigh = kOxygenOfChlorophyll.high * algae;
    out.verdict = verdictOf(out);
    out.isDone = true;
    return out;
}

}  // namespace engine
