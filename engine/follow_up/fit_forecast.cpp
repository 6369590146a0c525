#include "engine/follow_up/fit_forecast.h"

#include "engine/base/parallel.h"
#include "engine/base/percentile.h"
#include "engine/base/units.h"
#include "engine/follow_up/assimilate.h"
#include "engine/run/kernel.h"

#include <Eigen/Cholesky>
#include <Eigen/Eigenvalues>

#include <algorithm>
#include <cmath>

namespace engine {
namespace {

Band bandOf(std::vector<float> sample) {
    const Percentiles p = percentilesOf(sample);
    return {p[0], p[2], p[4]};
}

std::vector<float> row(const Eigen::MatrixXd& matrix, Eigen::Index i) {
    std::vector<float> out;
    for (Eigen::Index k = 0; k < matrix.cols(); ++k) {
        out.push_back(static_cast<float>(matrix(i, k)));
    }
    return out;
}

/// Lows of the nights ahead.
/// @param hours   Fish water with the error of the model in it, hours x members [g/m^3].
/// @param points  One an hour.
std::vector<NightAhead> nightsOf(const Eigen::MatrixXd& hours, const std::vector<FitPoint>& points,
                                 const OxygenThresholds& thresholds) {
    std::vector<NightAhead> out;
    const auto nightOf = [](double time) {
        return static_cast<int>(std::floor((time - kDay / 2) / kDay)) + 1;
    };
    for (std::size_t first = 0; first < points.size();) {
        std::size_t last = first;
        const int night = nightOf(points[first].time);
        while (last < points.size() && nightOf(points[last].time) == night) {
            ++last;
        }
        NightAhead one;
        one.night = night;
        std::vector<float> lows;
        std::vector<std::pair<double, double>> timed;
        for (Eigen::Index k = 0; k < hours.cols(); ++k) {
            Eigen::Index at = 0;
            const double low =
                hours.col(k)
                    .segment(static_cast<Eigen::Index>(first), static_cast<Eigen::Index>(last - first))
                    .minCoeff(&at);
            lows.push_back(static_cast<float>(low));
            timed.emplace_back(low, points[first + static_cast<std::size_t>(at)].time);
            one.chanceBelowStress += low < thresholds.stress ? 1.0 / static_cast<double>(hours.cols()) : 0.0;
            one.chanceBelowLethal += low < thresholds.lethal ? 1.0 / static_cast<double>(hours.cols()) : 0.0;
        }
        std::sort(timed.begin(), timed.end());
        one.lowTime = timed[timed.size() / 2].second;
        one.low = bandOf(std::move(lows));
        out.push_back(one);
        first = last;
    }
    return out;
}

}  // namespace

MemberPlan planUpTo(const MemberPlan& plan, double start, double until) {
    MemberPlan out;
    out.nights = plan.nights;
    out.hours.push_back(plan.hours.front());
    double time = start;
    for (const MemberStep& step : plan.steps) {
        if (time >= until && out.hours.back() >= until) {
            break;
        }
        time += step.dt;
        out.steps.push_back(step);
        if (step.endsHour) {
            out.hours.push_back(plan.hours[out.hours.size()]);
        }
    }
    return out;
}

MemberTrace runFitted(const PondModel& model, const MemberPlan& plan,
                      const std::vector<WeatheredMember>& members,
                      const std::vector<MemberWatch::Point>& points, int threads,
                      const std::stop_token& stop) {
    MemberTrace trace(members.size(), plan);
    trace.watch = MemberWatch(points, plan.hours, members.size());
    static_cast<void>(forEachIndex(packsOf(members.size()), threads, stop, [&](std::size_t pack) {
        const auto own = membersOfPack(std::span(members), pack);
        kernel().runPack(model, plan, packOf<Lanes>(own), pack * kPack, own.size(), trace, stop);
    }));
    return trace;
}

std::vector<FitPoint> forecastPoints(const FitResult& fit, const std::vector<FitPoint>& readings,
                                     double last) {
    std::vector<double> depths{fit.model.surfaceDepth, 0.5 * (fit.model.surfaceDepth + fit.model.bottomDepth),
                               fit.model.bottomDepth};
    for (const FitPoint& reading : readings) {
        depths.push_back(reading.depth);
    }
    std::sort(depths.begin(), depths.end());
    // Depths nearer than 5 cm are one.
    depths.erase(std::unique(depths.begin(), depths.end(), [](double a, double b) { return b - a < 0.05; }),
                 depths.end());
    constexpr std::size_t kMostDepths = 6;
    while (depths.size() > kMostDepths) {
        depths.erase(depths.begin() + static_cast<std::ptrdiff_t>(depths.size() / 2));
    }
    std::vector<FitPoint> out;
    for (double time = std::ceil(fit.untilTime / kHour - 1e-9) * kHour; time <= last + 1.0; time += kHour) {
        for (const double depth : depths) {
            out.push_back({time, depth});
        }
    }
    return out;
}

void addModelError(const FittedSeries& series, const std::vector<FitPoint>& points, Eigen::MatrixXd& ahead,
                   std::uint64_t seed) {
    Eigen::MatrixXd open = modelCovariance(series.error, points, points);
    if (series.readings.size() > 0) {
        Eigen::MatrixXd here = modelCovariance(series.error, series.points, series.points);
        here.diagonal().array() += series.error.meter * series.error.meter;
        const Eigen::LLT<Eigen::MatrixXd> root(here);
        const Eigen::MatrixXd across = modelCovariance(series.error, series.points, points);
        const Eigen::MatrixXd residuals = (-series.members).colwise() + series.readings;
        ahead += across.transpose() * root.solve(residuals);
        open -= across.transpose() * root.solve(across);
    }
    const Eigen::SelfAdjointEigenSolver<Eigen::MatrixXd> solver(open);
    const Eigen::MatrixXd spread =
        solver.eigenvectors() * solver.eigenvalues().cwiseMax(0.0).cwiseSqrt().asDiagonal();
    ahead += spread * standardNormals(ahead.rows(), ahead.cols(), seed);
}

void addForecast(FitResult& fit, const MemberTrace& trace, const MemberPlan& plan, const FittedSeries& oxygen,
                 const FittedSeries& temperature, const std::vector<FitPoint>& points, std::size_t firstPoint,
                 std::uint64_t seed) {
    const auto members = static_cast<Eigen::Index>(trace.members);
    Eigen::MatrixXd o(static_cast<Eigen::Index>(points.size()), members), t = o;
    for (Eigen::Index i = 0; i < o.rows(); ++i) {
        for (Eigen::Index k = 0; k < members; ++k) {
            const std::size_t at =
                (firstPoint + static_cast<std::size_t>(i)) * trace.members + static_cast<std::size_t>(k);
            o(i, k) = trace.watch.oxygen[at];
            t(i, k) = trace.watch.temperature[at];
        }
    }
    addModelError(oxygen, points, o, seed + 77U);
    addModelError(temperature, points, t, seed + 78U);
    o = o.cwiseMax(0.0);
    for (Eigen::Index i = 0; i < o.rows(); ++i) {
        const FitPoint& point = points[static_cast<std::size_t>(i)];
        fit.forecast.push_back({point.time, point.depth, bandOf(row(o, i)), bandOf(row(t, i)).p50});
    }
    // The fish water's error is taken as that of the surface, where the water with most oxygen mostly is.
    std::vector<FitPoint> hours;
    std::vector<std::size_t> at;
    for (std::size_t hour = 0; hour < plan.hours.size(); ++hour) {
        const double time = plan.hours[hour];
        if (time >= fit.untilTime - 1.0 && (points.empty() || time <= points.back().time + 1.0)) {
            hours.push_back({time, fit.model.surfaceDepth});
            at.push_back(hour);
        }
    }
    Eigen::MatrixXd fish(static_cast<Eigen::Index>(hours.size()), members);
    for (std::size_t i = 0; i < at.size(); ++i) {
        for (Eigen::Index k = 0; k < members; ++k) {
            fish(static_cast<Eigen::Index>(i), k) =
                static_cast<double>(trace.hours[at[i] * trace.members + static_cast<std::size_t>(k)]);
        }
    }
    if (!hours.empty()) {
        addModelError(oxygen, hours, fish, seed + 79U);
        fish = fish.cwiseMax(0.0);
        fit.nights = nightsOf(fish, hours, fit.model.parameters.thresholds);
    }
}

}  // namespace engine
