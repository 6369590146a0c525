#include "engine/follow_up/model_error.h"

#include "engine/base/units.h"

#include <Eigen/Cholesky>

#include <algorithm>
#include <array>
#include <cmath>
#include <numeric>

namespace engine {
namespace {

constexpr std::size_t kMostForError = 240;
constexpr double kFirstStep = 1.0, kLastStep = 0.1;  // of the logarithms of the sigmas
constexpr int kParts = 3;

using Parts = std::array<double, kParts>;
/// Logarithms of the sigmas, and of the time after which the forgotten part is forgotten.
using Logs = std::array<double, kParts + 1>;

/// Correlation of each part between two points.
Parts shapesOf(const ModelError& error, const FitPoint& a, const FitPoint& b) {
    const double apart = std::fabs(a.time - b.time);
    const double wave = std::sin(kPi * apart / kDay);
    const double deep = std::exp(-std::fabs(a.depth - b.depth) / error.depth);
    return {deep * std::exp(-apart / error.passing), deep * std::exp(-apart / error.forgotten),
            deep * std::exp(-apart / error.daily - 2.0 * wave * wave)};
}

/// How likely residuals of some readings are under an error of the model.
class Evidence {
public:
    Evidence(const ModelError& expected, const std::vector<FitPoint>& points,
             const Eigen::VectorXd& residuals)
        : m_expected(expected), m_prior(logsOf(expected)) {
        std::vector<std::size_t> latest(points.size());
        std::iota(latest.begin(), latest.end(), std::size_t{0});
        std::stable_sort(latest.begin(), latest.end(),
                         [&](std::size_t a, std::size_t b) { return points[a].time > points[b].time; });
        latest.resize(std::min(latest.size(), kMostForError));
        const auto n = static_cast<Eigen::Index>(latest.size());
        m_residuals.resize(n);
        for (Eigen::Index i = 0; i < n; ++i) {
            const std::size_t at = latest[static_cast<std::size_t>(i)];
            m_residuals[i] = residuals[static_cast<Eigen::Index>(at)];
            m_points.push_back(points[at]);
        }
    }

    static Logs logsOf(const ModelError& error) {
        return {std::log(error.passingSigma), std::log(error.forgottenSigma), std::log(error.dailySigma),
                std::log(error.forgotten)};
    }

    [[nodiscard]] ModelError errorAt(const Logs& logs) const {
        ModelError out = m_expected;
        out.passingSigma = std::exp(logs[0]);
        out.forgottenSigma = std::exp(logs[1]);
        out.dailySigma = std::exp(logs[2]);
        out.forgotten = std::exp(logs[3]);
        return out;
    }

    /// Logarithm of the posterior density, but for a constant.
    [[nodiscard]] double at(const Logs& logs) const {
        Eigen::MatrixXd covariance = modelCovariance(errorAt(logs), m_points, m_points);
        covariance.diagonal().array() += m_expected.meter * m_expected.meter;
        const Eigen::LLT<Eigen::MatrixXd> root(covariance);
        if (root.info() != Eigen::Success) {
            return -1e300;
        }
        double out = 0.0;
        for (std::size_t k = 0; k < logs.size(); ++k) {
            out -= 0.5 * (logs[k] - m_prior[k]) * (logs[k] - m_prior[k]);
        }
        return out - 0.5 * root.matrixL().solve(m_residuals).squaredNorm() -
               root.matrixLLT().diagonal().array().log().sum();
    }

private:
    ModelError m_expected;
    Logs m_prior;
    Eigen::VectorXd m_residuals;
    std::vector<FitPoint> m_points;
};

}  // namespace

double ModelError::sigma() const {
    return std::sqrt(passingSigma * passingSigma + forgottenSigma * forgottenSigma + dailySigma * dailySigma);
}

ModelError evenError(double sigma, double meter) {
    ModelError out;
    out.passingSigma = out.forgottenSigma = out.dailySigma = sigma / std::sqrt(3.0);
    out.meter = meter;
    return out;
}

Eigen::MatrixXd modelCovariance(const ModelError& error, const std::vector<FitPoint>& a,
                                const std::vector<FitPoint>& b) {
    const double passing = error.passingSigma * error.passingSigma,
                 forgotten = error.forgottenSigma * error.forgottenSigma,
                 daily = error.dailySigma * error.dailySigma;
    Eigen::MatrixXd out(a.size(), b.size());
    for (std::size_t i = 0; i < a.size(); ++i) {
        for (std::size_t j = 0; j < b.size(); ++j) {
            const Parts shapes = shapesOf(error, a[i], b[j]);
            out(static_cast<Eigen::Index>(i), static_cast<Eigen::Index>(j)) =
                passing * shapes[0] + forgotten * shapes[1] + daily * shapes[2];
        }
    }
    return out;
}

ModelError errorFrom(const ModelError& expected, const std::vector<FitPoint>& points,
                     const Eigen::VectorXd& residuals) {
    if (points.empty()) {
        return expected;
    }
    const Evidence evidence(expected, points, residuals);
    Logs best = Evidence::logsOf(expected);
    double most = evidence.at(best);
    // Compass search, which needs no derivatives of the four logarithms.
    for (double step = kFirstStep; step >= kLastStep;) {
        bool isBetter = false;
        for (std::size_t k = 0; k < best.size(); ++k) {
            for (const double by : {step, -step}) {
                Logs tried = best;
                tried[k] += by;
                if (const double value = evidence.at(tried); value > most) {
                    most = value;
                    best = tried;
                    isBetter = true;
                    break;
                }
            }
        }
        step = isBetter ? step : 0.5 * step;
    }
    ModelError out = evidence.errorAt(best);
    const double up = std::max(expected.sigma() / out.sigma(), 1.0);
    out.passingSigma *= up;
    out.forgottenSigma *= up;
    out.dailySigma *= up;
    return out;
}

}  // namespace engine
