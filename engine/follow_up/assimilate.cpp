#include "engine/follow_up/assimilate.h"

#include "engine/base/error.h"
#include "engine/ensemble/spread.h"
#include "engine/follow_up/thin_svd.h"

#include <Eigen/Cholesky>

#include <algorithm>
#include <cmath>
#include <random>

namespace engine {
namespace {

// A correlation counts as none up to the one and in full from the other, both over the root of the members.
constexpr double kNone = 2.0, kFull = 4.0;

Eigen::MatrixXd centred(const Eigen::MatrixXd& ensemble) {
    return ensemble.colwise() - ensemble.rowwise().mean();
}

/// Share of a correlation, 0 to 1, that counts as more than chance.
double kept(double correlation, double members) {
    const double x = (std::fabs(correlation) * std::sqrt(members) - kNone) / (kFull - kNone);
    const double share = std::clamp(x, 0.0, 1.0);
    return share * share * (3.0 - 2.0 * share);
}

}  // namespace

Eigen::MatrixXd standardNormals(Eigen::Index rows, Eigen::Index columns, std::uint64_t seed) {
    std::mt19937_64 engine(seed);
    Eigen::MatrixXd out(rows, columns);
    for (Eigen::Index j = 0; j < columns; ++j) {
        for (Eigen::Index i = 0; i < rows; ++i) {
            // By the inverse, since the library's own normal draws differ from library to library.
            out(i, j) = normalScore((static_cast<double>(engine() >> 11U) + 0.5) * 0x1p-53);
        }
    }
    return out;
}

double nextShare(const Eigen::MatrixXd& predictions, const Eigen::VectorXd& readings,
                 const Eigen::MatrixXd& errors, double left) {
    const Eigen::LLT<Eigen::MatrixXd> root(errors);
    ensure(root.info() == Eigen::Success, "errors of readings have a positive definite covariance");
    const Eigen::MatrixXd apart = root.matrixL().solve((-predictions).colwise() + readings);
    const Eigen::RowVectorXd misfit = 0.5 * apart.colwise().squaredNorm();
    const double half = 0.5 * static_cast<double>(readings.size());
    const double variance = (misfit.array() - misfit.mean()).square().mean();
    const double share =
        std::max(half / std::max(misfit.mean(), 1e-12), std::sqrt(half / std::max(variance, 1e-12)));
    return std::min(share, left);
}

void assimilate(Eigen::MatrixXd& states, const Eigen::MatrixXd& predictions, const Eigen::VectorXd& readings,
                const Eigen::MatrixXd& errors, double alpha, std::uint64_t seed) {
    const auto members = static_cast<double>(states.cols());
    const Eigen::MatrixXd x = centred(states) / std::sqrt(members - 1.0);
    const Eigen::LLT<Eigen::MatrixXd> root(errors);
    ensure(root.info() == Eigen::Success, "errors of readings have a positive definite covariance");
    // Readings in units of their errors, turned onto the principal components of the predictions.
    const Eigen::MatrixXd y = root.matrixL().solve(centred(predictions)) / std::sqrt(members - 1.0);
    const ThinSvd turned = thinSvd(y);
    const Eigen::MatrixXd noise =
        std::sqrt(alpha) * centred(standardNormals(readings.size(), states.cols(), seed));
    const Eigen::MatrixXd innovation =
        turned.u.transpose() * (noise + root.matrixL().solve((-predictions).colwise() + readings));
    const Eigen::VectorXd& spread = turned.values;
    Eigen::MatrixXd gain = x * turned.v;  // in units of the spread of each turned reading
    const Eigen::VectorXd sx = x.rowwise().norm();
    for (Eigen::Index i = 0; i < gain.rows(); ++i) {
        for (Eigen::Index j = 0; j < gain.cols(); ++j) {
            gain(i, j) *= sx[i] > 0.0 ? kept(gain(i, j) / sx[i], members) : 0.0;
            gain(i, j) *= spread[j] / (spread[j] * spread[j] + alpha);
        }
    }
    states += gain * innovation;
}

}  // namespace engine
