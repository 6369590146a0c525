#pragma once

#include <Eigen/Core>

#include <cstdint>

namespace engine {

/// One of the updates of an ensemble smoother with multiple data assimilation (Emerick and Reynolds 2013,
/// Computers & Geosciences 55:3-15): the readings are assimilated several times, each time with the
/// covariance of their errors inflated by `alpha`, where the sum of 1/alpha over the updates is 1.
///
/// States and readings go together through covariances of a small ensemble; those that chance alone would
/// give are shrunk out of the update (after the correlation-based localisation of Luo, Bhakta and Naevdal
/// 2018, SPE Journal 23:396-427): a correlation r counts as none up to 2/sqrt(members), in full from
/// 4/sqrt(members) on. The correlations are those with the members' principal components at the readings, in
/// units of the errors: readings of one logger go together so much that their gains cancel, and shrunk one by
/// one they would no longer.
/// @param states       State x members, changed in place; best in scores, so that bounds hold by themselves
/// @param predictions  Readings x members, what the members have at the readings
/// @param readings     As read
/// @param errors       Covariance of readings about the model: meter and model
/// @param seed         Of the noise that is added to the readings, another for each update
void assimilate(Eigen::MatrixXd& states, const Eigen::MatrixXd& predictions, const Eigen::VectorXd& readings,
                const Eigen::MatrixXd& errors, double alpha, std::uint64_t seed);

/// The share of the readings, 1/alpha, that the next update may take in, so that it does not leave the range
/// in which covariances speak for the model: data-misfit controller of Iglesias and Yang (2021), Inverse
/// Problems 37:025008, M/2 over the mean misfit or the root of M/2 over its variance, whichever is more, M
/// readings.
/// @param left  Of 1, what earlier updates have left; never more is given.
[[nodiscard]] double nextShare(const Eigen::MatrixXd& predictions, const Eigen::VectorXd& readings,
                               const Eigen::MatrixXd& errors, double left);

/// Independent standard normal numbers, the same for a seed everywhere.
[[nodiscard]] Eigen::MatrixXd standardNormals(Eigen::Index rows, Eigen::Index columns, std::uint64_t seed);

}  // namespace engine
