#pragma once

#include "engine/follow_up/fit.h"

#include <Eigen/Core>

#include <stop_token>
#include <vector>

namespace engine {

/// The part of a plan up to the first whole hour at or after a time.
[[nodiscard]] MemberPlan planUpTo(const MemberPlan& plan, double start, double until);

/// Runs members side by side under a plan and watches them. The same bits for any number of threads.
[[nodiscard]] MemberTrace runFitted(const PondModel& model, const MemberPlan& plan,
                                    const std::vector<WeatheredMember>& members,
                                    const std::vector<MemberWatch::Point>& points, int threads,
                                    const std::stop_token& stop);

/// Hours from `until` to `last` at the depths of the readings, of "surface" and "bottom", and half way.
[[nodiscard]] std::vector<FitPoint> forecastPoints(const FitResult& fit,
                                                   const std::vector<FitPoint>& readings, double last);

/// Readings of one quantity and what the fitted members have there.
struct FittedSeries {
    const std::vector<FitPoint>& points;
    Eigen::VectorXd readings;
    Eigen::MatrixXd members;  ///< Readings x members
    ModelError error;
    std::size_t firstPoint = 0;  ///< In the watch
};

/// Members' values at points ahead with what the readings say about the error of the model: each member's own
/// residuals carried forward (Gaussian process regression), and a draw of what they leave open.
/// @param ahead  Points x members, changed in place.
void addModelError(const FittedSeries& series, const std::vector<FitPoint>& points, Eigen::MatrixXd& ahead,
                   std::uint64_t seed);

/// Fills the forecast and the nights of a fit.
void addForecast(FitResult& fit, const MemberTrace& trace, const MemberPlan& plan, const FittedSeries& oxygen,
                 const FittedSeries& temperature, const std::vector<FitPoint>& points, std::size_t firstPoint,
                 std::uint64_t seed);

}  // namespace engine
