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
/// of three equal parts: one passes within hours, as clouds and mixing do that the model does not see; one is
/// forgotten as the upper water is renewed (1 m at a piston velocity of 0.5 m/d, the trade's prior); one
/// comes back at the same time of day for days, as the periodic kernel with decay of Rasmussen and Williams
/// (2006), Gaussian Processes for Machine Learning, section 5.4.3. The scales are judgement. Without the
/// first part a fit trusts the model's hour-to-hour changes to the meter's error, and gives up the level for
/// them.
struct ModelError {
    double sigma = 0.0;              ///< 1 sigma, in the quantity's unit
    double meter = 0.0;              ///< 1 sigma of a meter, independent from reading to reading
    double passing = 3 * 3600.0;     ///< [s]
    double forgotten = 2 * 86400.0;  ///< [s]
    double daily = 4 * 86400.0;      ///< [s] over which a daily error fades
    double depth = 1.0;              ///< [m] over which it fades
};

/// Covariance of the model's error between two lists of points, without the meter.
[[nodiscard]] Eigen::MatrixXd modelCovariance(const ModelError& error, const std::vector<FitPoint>& a,
                                              const std::vector<FitPoint>& b);

}  // namespace engine
