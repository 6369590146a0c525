#include "engine/follow_up/fit.h"

#include "engine/base/error.h"
#include "engine/base/parallel.h"
#include "engine/base/percentile.h"
#include "engine/base/units.h"
#include "engine/follow_up/assimilate.h"
#include "engine/follow_up/fit_forecast.h"
#include "engine/follow_up/fit_state.h"
#include "engine/follow_up/readings_beside.h"
#include "engine/water/water.h"

#include <Eigen/Cholesky>

#include <algorithm>
#include <cmath>
#include <map>

namespace engine {
namespace {

constexpr int kMostUpdates = 8;              // of the smoother in one pass; the last takes in what is left
constexpr int kPasses = 3;                   // in which the model's error and the inputs are found by turns
constexpr double kSettled = 0.2;             // change of the logarithms of the error's sigmas that ends them
constexpr std::size_t kMostReadings = 1500;  // of one quantity; the covariance of more would take too long

/// What of the log is compared with the model: one value an hour and depth.
struct FitData {
    std::vector<FitPoint> points;
    std::vector<double> values;
};

/// Means of the readings of each depth within each span of time; spans are an hour, or more where there would
/// be too many.
FitData thinned(const std::vector<std::pair<FitPoint, double>>& all) {
    for (double span = kHour;; span *= 2.0) {
        struct Sum {
            double time = 0.0, depth = 0.0, value = 0.0, count = 0.0;
        };
        std::map<std::pair<long, long>, Sum> sums;
        for (const auto& [point, value] : all) {
            Sum& sum = sums[{std::lround(std::floor(point.time / span)), std::lround(10.0 * point.depth)}];
            sum.time += point.time;
            sum.depth += point.depth;
            sum.value += value;
            sum.count += 1.0;
        }
        if (sums.size() > kMostReadings) {
            continue;
        }
        FitData out;
        for (const auto& [key, sum] : sums) {
            out.points.push_back({sum.time / sum.count, sum.depth / sum.count});
            out.values.push_back(sum.value / sum.count);
        }
        return out;
    }
}

struct FitReadings {
    FitData oxygen, temperature;
};

FitReadings readingsOf(FitResult& fit) {
    const std::vector<Reading> readings = readingsInForce(fit.known);
    const std::vector<SensorFault> faults = sensorFaults(readings, fit.model.parameters.site.airPressure);
    std::vector<std::pair<FitPoint, double>> oxygen, temperature;
    for (std::size_t i = 0; i < readings.size(); ++i) {
        const Reading& reading = readings[i];
        if (!reading.depth || (!reading.oxygen && !reading.temperature)) {
            continue;
        }
        const double time = secondsOf(fit.known, *reading.at);
        if (time <= fit.model.startTime) {
            ++fit.outside;
        } else if (faults[i] != SensorFault::None) {
            ++fit.flagged;
        } else {
            const FitPoint point{time, *reading.depth};
            if (reading.oxygen) {
                oxygen.emplace_back(point, *reading.oxygen);
            }
            if (reading.temperature) {
                temperature.emplace_back(point, *reading.temperature);
            }
        }
    }
    return {thinned(oxygen), thinned(temperature)};
}

/// The air as the log and the ramp meant have it.
EnsembleRamp airOf(const PondModel& model, int days, const RunControl& control) {
    const Ramp* ramp = rampMeant(model.pond);
    const double end = days * kDay + kDay / 2;
    std::optional<Schedule> capped;
    if (ramp != nullptr && ramp->kind == RampKind::Capped) {
        RunRequest request;
        request.days = days;
        request.keepLayers = false;
        capped = runRamp(model, ramp, request, {control.stop, nullptr}).schedule;
    }
    const LoggedAir air = airOfLog(model.pond, capped ? &*capped : nullptr, days + 1, end);
    return {ramp != nullptr ? ramp->name : "log", air.schedule, !air.isStarted && air.schedule.empty()};
}

Band bandOf(std::vector<float> sample) {
    const Percentiles p = percentilesOf(sample);
    return {p[0], p[2], p[4]};
}

Eigen::MatrixXd errorsOf(const FitData& data, const ModelError& error) {
    Eigen::MatrixXd out = modelCovariance(error, data.points, data.points);
    out.diagonal().array() += error.meter * error.meter;
    return out;
}

/// Two quantities in one list: oxygen first.
struct Joint {
    std::vector<MemberWatch::Point> points;
    Eigen::VectorXd readings;
    Eigen::MatrixXd errors;
    Eigen::Index oxygens = 0;
};

Joint jointOf(const FitReadings& data, const ModelError& oxygen, const ModelError& temperature) {
    Joint out;
    out.oxygens = static_cast<Eigen::Index>(data.oxygen.values.size());
    const auto size = out.oxygens + static_cast<Eigen::Index>(data.temperature.values.size());
    out.readings.resize(size);
    out.errors = Eigen::MatrixXd::Zero(size, size);
    for (const FitData* part : {&data.oxygen, &data.temperature}) {
        for (std::size_t i = 0; i < part->values.size(); ++i) {
            out.readings[static_cast<Eigen::Index>(out.points.size())] = part->values[i];
            out.points.push_back({part->points[i].time, part->points[i].depth});
        }
    }
    out.errors.topLeftCorner(out.oxygens, out.oxygens) = errorsOf(data.oxygen, oxygen);
    out.errors.bottomRightCorner(size - out.oxygens, size - out.oxygens) =
        errorsOf(data.temperature, temperature);
    return out;
}

/// What the members have at the readings.
Eigen::MatrixXd predictionsOf(const MemberTrace& trace, const Joint& joint) {
    Eigen::MatrixXd out(joint.readings.size(), static_cast<Eigen::Index>(trace.members));
    for (Eigen::Index i = 0; i < out.rows(); ++i) {
        const std::vector<double>& from = i < joint.oxygens ? trace.watch.oxygen : trace.watch.temperature;
        for (Eigen::Index k = 0; k < out.cols(); ++k) {
            out(i, k) = from[static_cast<std::size_t>(i) * trace.members + static_cast<std::size_t>(k)];
        }
    }
    return out;
}

std::vector<float> row(const Eigen::MatrixXd& matrix, Eigen::Index i) {
    std::vector<float> out;
    for (Eigen::Index k = 0; k < matrix.cols(); ++k) {
        out.push_back(static_cast<float>(matrix(i, k)));
    }
    return out;
}

/// Readings minus the median member.
Eigen::VectorXd residualsOf(const Eigen::MatrixXd& predictions, const Eigen::VectorXd& readings) {
    Eigen::VectorXd out = readings;
    for (Eigen::Index i = 0; i < readings.size(); ++i) {
        out[i] -= bandOf(row(predictions, i)).p50;
    }
    return out;
}

bool isSettled(const ModelError& a, const ModelError& b) {
    const auto isNear = [](double x, double y) { return std::fabs(std::log(x / y)) < kSettled; };
    return isNear(a.passingSigma, b.passingSigma) && isNear(a.forgottenSigma, b.forgottenSigma) &&
           isNear(a.dailySigma, b.dailySigma);
}

/// Residuals about the median member, decorrelated by the errors that were expected, and all of them
/// together.
FitMisfit misfitOf(const Eigen::MatrixXd& predictions, const Eigen::VectorXd& readings,
                   const Eigen::MatrixXd& errors) {
    FitMisfit out;
    out.readings = static_cast<std::size_t>(readings.size());
    if (out.readings == 0) {
        return out;
    }
    const Eigen::VectorXd residual = residualsOf(predictions, readings);
    out.mean = residual.mean();
    const Eigen::LLT<Eigen::MatrixXd> root(errors);
    const Eigen::VectorXd apart = root.matrixL().solve(residual);
    const Eigen::VectorXd ones = root.matrixL().solve(Eigen::VectorXd::Ones(readings.size()));
    const double level = std::fabs(ones.dot(apart)) / ones.norm();  // in sigmas of a common offset
    out.ratio = std::max(std::sqrt(apart.squaredNorm() / static_cast<double>(readings.size())),
                         level * kBeyondNoise / kLevelBeyondNoise);
    return out;
}

}  // namespace

FitResult fitPond(const Pond& pond, const FitOptions& options, const RunControl& control) {
    requireRange("members", options.members, 2, kMostMembers, "members");
    FitResult fit;
    const auto ended = [&](FitEnd end, std::string message) {
        fit.end = end;
        fit.message = std::move(message);
        return fit;
    };
    const std::optional<LocalTime> until = options.until ? options.until : lastEntry(pond);
    if (!until) {
        return ended(FitEnd::NoReadings, "There is no reading to fit to.");
    }
    const int threads = threadsFor(options.threads);
    fit.until = *until;
    fit.known = knownAt(pond, *until);
    if (!hasWeather(fit.known)) {
        return ended(FitEnd::NoReadings, "Less than half a day of weather was known by then.");
    }
    fit.untilTime = secondsOf(pond, *until);
    fit.model = prepare(fit.known, options.resolution);
    if (fit.untilTime < fit.model.startTime) {
        return ended(FitEnd::NoReadings,
                     "The time asked for lies before the profile, at which the run starts.");
    }
    const FitReadings data = readingsOf(fit);
    if (data.oxygen.values.empty() && data.temperature.values.empty()) {
        return ended(FitEnd::NoReadings,
                     "There is no sound reading between the profile and the time asked for to fit to.");
    }
    const double last = fit.untilTime + options.hours * kHour;
    fit.days = std::max(static_cast<int>(std::ceil((last - kDay / 2) / kDay)), 1);
    fit.air = airOf(fit.model, fit.days, control);
    if (options.ahead) {
        fit.air.schedule = joinedAt(fit.air.schedule, *options.ahead, fit.untilTime);
        fit.air.isDoNothing = fit.air.schedule.empty();
    }
    const ModelError expectedOxygen = evenError(kModelOxygen, kOxygenMeterError),
                     expectedTemperature = evenError(kModelTemperature, kMeterTemperature);

    FitState state(fit.model, options, fit.untilTime, fit.days, threads, control);
    std::vector<std::vector<float>> prior;
    for (std::size_t i = 0; i < state.inputs(); ++i) {
        prior.push_back(state.values(i));
    }
    const Joint expected = jointOf(data, expectedOxygen, expectedTemperature);
    Joint joint = expected;
    const MemberPlan whole = memberPlan(fit.model, fit.air, fit.days, false);
    const MemberPlan past = planUpTo(whole, fit.model.startTime, fit.untilTime);
    const Eigen::Index o = joint.oxygens, t = joint.readings.size() - o;
    const Eigen::MatrixXd drawn = state.states;
    const auto predicted = [&] {
        return predictionsOf(runFitted(fit.model, past, state.members(), joint.points, threads, control.stop),
                             joint);
    };
    const Eigen::MatrixXd before = predicted();
    Eigen::MatrixXd predictions = before;
    ModelError temperatureError;
    // By turns the error that explains best what is left, and the inputs with that error, from the prior on:
    // an error taken too small, or as of another kind than it is, pulls the inputs far off for what they
    // cannot explain. What the prior leaves is the start, which is too wide rather than too narrow.
    for (int pass = 0; pass < kPasses && predictions.allFinite(); ++pass) {
        const ModelError nextOxygen = errorFrom(expectedOxygen, data.oxygen.points,
                                                residualsOf(predictions.topRows(o), joint.readings.head(o)));
        const ModelError nextTemperature =
            errorFrom(expectedTemperature, data.temperature.points,
                      residualsOf(predictions.bottomRows(t), joint.readings.tail(t)));
        if (pass > 0 && isSettled(nextOxygen, fit.oxygenError) &&
            isSettled(nextTemperature, temperatureError)) {
            break;
        }
        fit.oxygenError = nextOxygen;
        temperatureError = nextTemperature;
        joint = jointOf(data, fit.oxygenError, temperatureError);
        state.states = drawn;
        predictions = before;
        double left = 1.0;
        for (int update = 0; update < kMostUpdates && left > 1e-9 && predictions.allFinite(); ++update) {
            const double share = update + 1 == kMostUpdates
                                     ? left
                                     : nextShare(predictions, joint.readings, joint.errors, left);
            assimilate(state.states, predictions, joint.readings, joint.errors, 1.0 / share,
                       options.seed * 1000U + static_cast<std::uint64_t>(update));
            left -= share;
            predictions = predicted();
            if (control.stop.stop_requested()) {
                return ended(FitEnd::Cancelled, "The fit was stopped before it was done.");
            }
            if (control.progress) {
                control.progress((pass + 1.0 - left) / (kPasses + 0.2));
            }
        }
    }
    if (control.stop.stop_requested()) {
        return ended(FitEnd::Cancelled, "The fit was stopped before it was done.");
    }
    if (!predictions.allFinite()) {
        return ended(FitEnd::NotFinite, "The oxygen of a member is not a finite number at some reading.");
    }
    fit.members = state.members();

    // Once more to the end, with the readings and the places of the forecast.
    std::vector<MemberWatch::Point> points = joint.points;
    const std::vector<FitPoint> ahead = forecastPoints(fit, data.oxygen.points, last);
    for (const FitPoint& point : ahead) {
        points.push_back({point.time, point.depth});
    }
    const MemberTrace trace = runFitted(fit.model, whole, fit.members, points, threads, control.stop);
    if (control.stop.stop_requested()) {
        return ended(FitEnd::Cancelled, "The fit was stopped before it was done.");
    }
    const Eigen::MatrixXd after = predictionsOf(trace, joint);
    if (!after.allFinite()) {
        return ended(FitEnd::NotFinite,
                     "The oxygen of a fitted member is not a finite number at some reading.");
    }
    for (std::size_t i = 0; i < state.inputs(); ++i) {
        fit.inputs.push_back({state.nameOf(i), state.unitOf(i), bandOf(prior[i]), bandOf(state.values(i))});
    }
    for (Eigen::Index i = 0; i < joint.readings.size(); ++i) {
        const MemberWatch::Point& point = joint.points[static_cast<std::size_t>(i)];
        fit.residuals.push_back({point.time, point.depth, i >= joint.oxygens, joint.readings[i],
                                 bandOf(row(before, i)), bandOf(row(after, i))});
    }
    fit.oxygen = misfitOf(after.topRows(o), joint.readings.head(o), expected.errors.topLeftCorner(o, o));
    fit.temperature =
        misfitOf(after.bottomRows(t), joint.readings.tail(t), expected.errors.bottomRightCorner(t, t));
    addForecast(fit, trace, whole,
                {data.oxygen.points, joint.readings.head(o), after.topRows(o), fit.oxygenError, 0},
                {data.temperature.points, joint.readings.tail(t), after.bottomRows(t), temperatureError,
                 static_cast<std::size_t>(o)},
                ahead, joint.points.size(), options.seed);
    if (control.progress) {
        control.progress(1.0);
    }
    fit.end = FitEnd::Completed;
    return fit;
}

}  // namespace engine
