#pragma once

#include "engine/ensemble/uncertain_inputs.h"

#include <Eigen/Core>

#include <cstdint>
#include <vector>

namespace engine {

/// Scrambled points of a Sobol sequence as standard normal scores.
///
/// Owen's nested uniform scrambling (Owen 1995, Monte Carlo and Quasi-Monte Carlo Methods, 299-317): each
/// binary digit is flipped or not by a hash of the seed, the dimension and the digits before it, so that the
/// points stay as even as Sobol's and each is uniform. Digits: 32. Point i depends on the seed and i only.
/// @param count       Points, from 1.
/// @param dimensions  1 to 3667, what Boost's table of direction numbers holds.
/// @return  Row-major, count x dimensions.
[[nodiscard]] std::vector<double> normalScores(int count, int dimensions, std::uint64_t seed);

/// Correlations of the scores of inputs, in their order (numbers of the trade, common practice
/// without a source): 0.6 within the bottom group; in the algae group the product of both correlations with
/// chlorophyll; none with a measured input.
[[nodiscard]] Eigen::MatrixXd correlations(const std::vector<UncertainInput>& inputs);

/// The lower Cholesky factor of a correlation matrix. One that is not positive definite is first mixed with
/// the identity by the smallest share that lifts its least eigenvalue to 1e-9, which shrinks all correlations
/// alike and keeps the ones on the diagonal.
/// @pre symmetric with ones on its diagonal
[[nodiscard]] Eigen::MatrixXd choleskyFactor(const Eigen::MatrixXd& correlation);

/// Scores of independent draws turned into correlated ones (Gaussian copula) and into values.
/// @param scores  One an input, independent.
/// @param factor  Of choleskyFactor().
/// @param values  Filled, one an input.
void drawValues(const std::vector<UncertainInput>& inputs, const Eigen::MatrixXd& factor,
                std::span<const double> scores, std::span<double> values);

}  // namespace engine
