#pragma once

#include <Eigen/Core>

#include <vector>

namespace engine {

/// A reading of one quantity that a fit compares with the model, or a place at which it is asked for.
struct FitPoint {
    double time = 0.0;   ///< [s after midnight of day 1]
    double depth = 0.0;  ///< [m]
};

/// What is between a pond and its model besides the inputs: meter and model kept apart.
///
/// The error of the model is a Gaussian process (Kennedy and O'Hagan 2001, J. R. Statist. Soc. B 63:425-464)
/// of three parts: one passes within hours, as clouds and mixing do that the model does not see; one is
/// forgotten as the upper water is renewed (1 m at a piston velocity of 0.5 m/d, common practice); one
/// comes back at the same time of day for days, as the periodic kernel with decay of Rasmussen and Williams
/// (2006), Gaussian Processes for Machine Learning, section 5.4.3. The scales are judgement; how much each
/// part has is estimated from the readings (errorFrom()).
struct ModelError {
    double passingSigma = 0.0, forgottenSigma = 0.0, dailySigma = 0.0;  ///< 1 sigma, in the quantity's unit
    double meter = 0.0;              ///< 1 sigma of a meter, independent from reading to reading
    double passing = 3 * 3600.0;     ///< [s]
    double forgotten = 2 * 86400.0;  ///< [s]
    double daily = 4 * 86400.0;      ///< [s] over which a daily error fades
    double depth = 1.0;              ///< [m] over which it fades

    /// Of all parts together.
    [[nodiscard]] double sigma() const;
};

/// An error that is shared out evenly between the three parts, as long as nothing is known of it.
[[nodiscard]] ModelError evenError(double sigma, double meter);

/// Covariance of the model's error between two lists of points, without the meter.
[[nodiscard]] Eigen::MatrixXd modelCovariance(const ModelError& error, const std::vector<FitPoint>& a,
                                              const std::vector<FitPoint>& b);

/// The error that explains best what is left between readings and model: greatest posterior density of the
/// three sigmas and the time after which the forgotten part is forgotten (type II maximum likelihood,
/// Rasmussen and Williams 2006, section 5.4.1), each with a log-normal prior about that of `expected`, a
/// factor of e wide (judgement), so that few readings say little. It is never smaller than expected. The
/// latest 240 readings count.
/// @param residuals  Reading minus model, by point.
[[nodiscard]] ModelError errorFrom(const ModelError& expected, const std::vector<FitPoint>& points,
                                   const Eigen::VectorXd& residuals);

}  // namespace engine
