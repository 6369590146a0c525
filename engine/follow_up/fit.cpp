#include "engine/follow_up/fit.h"

#include "engine/base/error.h"
#include "engine/base/parallel.h"
#include "engine/base/percentile.h"
#include "engine/base/units.h"
#include "engine/follow_up/assimilate.h"
#include "engine/follow_up/constants_follow_up.h"
#include "engine/follow_up/fit_forecast.h"
#include "engine/follow_up/fit_readings.h"
#include "engine/follow_up/fit_state.h"
#include "engine/follow_up/readings_beside.h"

#include <Eigen/Cholesky>

#include <algorithm>
#include <cmath>
#include <utility>

namespace engine {
namespace {

constexpr int kMostUpdates = 8;   // of the smoother in one pass; the last takes in what is left
constexpr int kPasses = 3;        // in which the model's error and the inputs are found by turns
constexpr double kSettled = 0.2;  // change of the logarithms of the error's sigmas that ends them
constexpr const char* kStopped = "The fit was stopped before it was done.";

/// What the members run under. @param asked  As in fitKnown().
EnsembleRamp airOf(const KnownPond& known, int days, const std::optional<Schedule>& asked,
                   const RunControl& control) {
    const Ramp* ramp = rampMeant(known.model.pond, known.log.inForce.events);
    const std::string name = ramp != nullptr ? ramp->name : "log";
    if (asked) {
        return {name, *asked, asked->empty()};
    }
    const Schedule capped = cappedRuns(known, days, control);
    const LoggedAir air = airOfLog(known, capped, days + 1, days * kDay + kDay / 2);
    return {name, air.schedule, !air.isStarted && air.schedule.empty()};
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

/// How far the model is off in each quantity.
struct ModelErrors {
    ModelError oxygen, temperature;
};

Joint jointOf(const FitReadings& data, const ModelErrors& errors) {
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
    out.errors.topLeftCorner(out.oxygens, out.oxygens) = errorsOf(data.oxygen, errors.oxygen);
    out.errors.bottomRightCorner(size - out.oxygens, size - out.oxygens) =
        errorsOf(data.temperature, errors.temperature);
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

bool isSettled(const ModelErrors& a, const ModelErrors& b) {
    return isSettled(a.oxygen, b.oxygen) && isSettled(a.temperature, b.temperature);
}

/// What the readings speak for when members have these predictions.
ModelErrors errorsFrom(const ModelErrors& expected, const FitReadings& data, const Joint& joint,
                       const Eigen::MatrixXd& predictions) {
    const Eigen::Index o = joint.oxygens, t = joint.readings.size() - o;
    return {errorFrom(expected.oxygen, data.oxygen.points,
                      residualsOf(predictions.topRows(o), joint.readings.head(o))),
            errorFrom(expected.temperature, data.temperature.points,
                      residualsOf(predictions.bottomRows(t), joint.readings.tail(t)))};
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
                         level * kBeyondNoise.value / kLevelBeyondNoise.value);
    return out;
}

/// What every stage of a fit goes by.
struct FitTask {
    const KnownPond& known;
    const FitOptions& options;
    const RunControl& control;
    int threads = 1;
    MemberPlan whole;      ///< To the end of the forecast
    MemberPlan past;       ///< To the time of the question
    ModelErrors expected;  ///< As long as the readings have said nothing
};

/// What the members have at the readings.
Eigen::MatrixXd predicted(const FitTask& task, const FitState& state, const Joint& joint) {
    return predictionsOf(runFitted(task.known.model, task.past, state.members(), joint.points, task.threads,
                                   task.control.stop),
                         joint);
}

/// Takes the readings into the state, a share at a time; ends early after a stop or where a prediction is not
/// finite.
/// @param predictions  Of the state; those of the updated state when it returns.
/// @param pass         Counted from 0, for the progress and nothing else.
void assimilateAll(const FitTask& task, const Joint& joint, int pass, FitState& state,
                   Eigen::MatrixXd& predictions) {
    double left = 1.0;
    for (int update = 0; update < kMostUpdates && left > 1e-9 && predictions.allFinite(); ++update) {
        const double share =
            update + 1 == kMostUpdates ? left : nextShare(predictions, joint.readings, joint.errors, left);
        assimilate(state.states, predictions, joint.readings, joint.errors, 1.0 / share,
                   task.options.seed * 1000U + static_cast<std::uint64_t>(update));
        left -= share;
        predictions = predicted(task, state, joint);
        if (task.control.stop.stop_requested()) {
            return;
        }
        if (task.control.progress) {
            task.control.progress((pass + 1.0 - left) / (kPasses + 0.2));
        }
    }
}

/// Readings and members before and after the one are taken into the other.
struct Smoothed {
    Joint expected;          ///< With the errors expected
    Joint joint;             ///< With the errors of the last pass
    Eigen::MatrixXd before;  ///< Of the prior, readings x members
    Eigen::MatrixXd after;   ///< With something in it that is not finite where the fit must end
    ModelErrors errors;      ///< As found
};

/// By turns the error that explains best what is left, and the inputs with that error, from the prior on: an
/// error taken too small, or as of another kind than it is, pulls the inputs far off for what they cannot
/// explain. What the prior leaves is the start, which is too wide rather than too narrow.
Smoothed smooth(const FitTask& task, const FitReadings& data, FitState& state) {
    Smoothed out;
    out.joint = out.expected = jointOf(data, task.expected);
    const Eigen::MatrixXd drawn = state.states;
    out.before = out.after = predicted(task, state, out.joint);
    for (int pass = 0; pass < kPasses && out.after.allFinite(); ++pass) {
        const ModelErrors next = errorsFrom(task.expected, data, out.joint, out.after);
        if (pass > 0 && isSettled(next, out.errors)) {
            break;
        }
        out.errors = next;
        out.joint = jointOf(data, next);
        state.states = drawn;
        out.after = out.before;
        assimilateAll(task, out.joint, pass, state, out.after);
        if (task.control.stop.stop_requested()) {
            break;
        }
    }
    return out;
}

std::vector<FittedInput> inputsOf(const FitState& state, const std::vector<std::vector<float>>& prior) {
    std::vector<FittedInput> out;
    for (std::size_t i = 0; i < state.inputs(); ++i) {
        out.push_back({state.nameOf(i), state.unitOf(i), bandOf(prior[i]), bandOf(state.values(i))});
    }
    return out;
}

std::vector<FitResidual> fitResiduals(const Joint& joint, const Eigen::MatrixXd& before,
                                      const Eigen::MatrixXd& after) {
    std::vector<FitResidual> out;
    for (Eigen::Index i = 0; i < joint.readings.size(); ++i) {
        const MemberWatch::Point& point = joint.points[static_cast<std::size_t>(i)];
        out.push_back({point.time, point.depth, i >= joint.oxygens, joint.readings[i], bandOf(row(before, i)),
                       bandOf(row(after, i))});
    }
    return out;
}

void end(FitResult& fit, FitEnd how, std::string message) {
    fit.end = how;
    fit.message = std::move(message);
}

/// Runs the fitted members once more to the end, and fills in what they say of the readings and of the time
/// ahead.
/// @param last  End of the forecast [s after midnight of day 1].
void addFitted(FitResult& fit, const FitTask& task, const FitReadings& data, const Smoothed& smoothed,
               double last) {
    const Joint& joint = smoothed.joint;
    std::vector<MemberWatch::Point> points = joint.points;
    const std::vector<FitPoint> ahead = forecastPoints(fit, data.oxygen.points, last);
    for (const FitPoint& point : ahead) {
        points.push_back({point.time, point.depth});
    }
    const MemberTrace trace =
        runFitted(fit.model, task.whole, fit.members, points, task.threads, task.control.stop);
    if (task.control.stop.stop_requested()) {
        return end(fit, FitEnd::Cancelled, kStopped);
    }
    const Eigen::MatrixXd after = predictionsOf(trace, joint);
    if (!after.allFinite()) {
        return end(fit, FitEnd::NotFinite,
                   "The oxygen of a fitted member is not a finite number at some reading.");
    }
    fit.residuals = fitResiduals(joint, smoothed.before, after);
    const Eigen::Index o = joint.oxygens, t = joint.readings.size() - o;
    const Eigen::MatrixXd& expected = smoothed.expected.errors;
    fit.oxygen = misfitOf(after.topRows(o), joint.readings.head(o), expected.topLeftCorner(o, o));
    fit.temperature = misfitOf(after.bottomRows(t), joint.readings.tail(t), expected.bottomRightCorner(t, t));
    addForecast(fit, trace, task.whole,
                {data.oxygen.points, joint.readings.head(o), after.topRows(o), smoothed.errors.oxygen, 0},
                {data.temperature.points, joint.readings.tail(t), after.bottomRows(t),
                 smoothed.errors.temperature, static_cast<std::size_t>(o)},
                ahead, joint.points.size(), task.options.seed);
    if (task.control.progress) {
        task.control.progress(1.0);
    }
    fit.end = FitEnd::Completed;
}

FitResult fitOf(const KnownPond& known) {
    FitResult fit;
    fit.until = known.at;
    fit.untilTime = known.time;
    fit.known = known.model.pond;
    fit.model = known.model;
    return fit;
}

void requireMembers(const FitOptions& options) {
    requireRange("members", options.members, 2, kMostMembers, "members");
}

}  // namespace

FitResult fitPond(const Pond& pond, const FitOptions& options, const RunControl& control) {
    requireMembers(options);
    FitResult none;
    const std::optional<LocalTime> until = options.until ? options.until : lastEntry(pond);
    if (!until) {
        end(none, FitEnd::NoReadings, "There is no reading to fit to.");
        return none;
    }
    const Pond known = knownAt(pond, *until);
    if (!hasWeather(known)) {
        none.until = *until;
        none.known = known;
        end(none, FitEnd::NoReadings, "Less than half a day of weather was known by then.");
        return none;
    }
    return fitKnown(preparedPond(known, *until, options.resolution), options, {}, control);
}

FitResult fitKnown(const KnownPond& known, const FitOptions& options, const std::optional<Schedule>& air,
                   const RunControl& control) {
    requireMembers(options);
    FitResult fit = fitOf(known);
    if (known.time < known.model.startTime) {
        end(fit, FitEnd::NoReadings, "The time asked for lies before the profile, at which the run starts.");
        return fit;
    }
    const FitReadings data = fitReadings(known);
    fit.flagged = data.flagged;
    fit.outside = data.outside;
    if (data.oxygen.values.empty() && data.temperature.values.empty()) {
        end(fit, FitEnd::NoReadings,
            "There is no sound reading between the profile and the time asked for to fit to.");
        return fit;
    }
    const double last = known.time + options.hours * kHour;
    fit.days = std::max(static_cast<int>(std::ceil((last - kDay / 2) / kDay)), 1);
    fit.air = airOf(known, fit.days, air, control);
    FitTask task{known,
                 options,
                 control,
                 threadsFor(options.threads),
                 memberPlan(known.model, fit.air, fit.days, false),
                 {},
                 {}};
    task.past = planUpTo(task.whole, known.model.startTime, known.time);
    task.expected = {evenError(kModelOxygen.value, kOxygenMeterError),
                     evenError(kModelTemperature.value, kMeterTemperature.value)};

    FitState state(known.model, options, known.time, fit.days, task.threads, control);
    std::vector<std::vector<float>> prior;
    for (std::size_t i = 0; i < state.inputs(); ++i) {
        prior.push_back(state.values(i));
    }
    const Smoothed smoothed = smooth(task, data, state);
    fit.oxygenError = smoothed.errors.oxygen;
    if (control.stop.stop_requested()) {
        end(fit, FitEnd::Cancelled, kStopped);
        return fit;
    }
    if (!smoothed.after.allFinite()) {
        end(fit, FitEnd::NotFinite, "The oxygen of a member is not a finite number at some reading.");
        return fit;
    }
    fit.members = state.members();
    fit.inputs = inputsOf(state, prior);
    addFitted(fit, task, data, smoothed, last);
    return fit;
}

}  // namespace engine
