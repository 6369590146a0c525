#include "engine/ensemble/variance_share.h"

#include "engine/base/error.h"
#include "engine/ensemble/draws.h"

#include <Eigen/QR>

#include <algorithm>
#include <cmath>
#include <numeric>
#include <random>

namespace engine {
namespace {

constexpr int kKnots = 12;       // a curve of four humps over the sample is still followed
constexpr int kTruths = 256;     // members taken for the truth in turn
constexpr double kFewest = 8.0;  // members that a reading must leave, by weight, to tell a variance from

/// Normal scores of a sample's ranks; equal values share the score of their middle.
class RankScores {
public:
    explicit RankScores(std::span<const double> values) : m_sorted(values.begin(), values.end()) {
        std::sort(m_sorted.begin(), m_sorted.end());
    }
    [[nodiscard]] double operator()(double value) const {
        const auto [first, last] = std::equal_range(m_sorted.begin(), m_sorted.end(), value);
        const auto count = static_cast<double>(m_sorted.size());
        const double middle =
            0.5 * static_cast<double>((first - m_sorted.begin()) + (last - m_sorted.begin()));
        return normalScore(std::clamp(middle / count, 0.5 / count, 1.0 - 0.5 / count));
    }

private:
    std::vector<double> m_sorted;
};

/// Natural cubic splines (Hastie, Tibshirani and Friedman 2009, eq 5.4): 1, x, and K - 2 more.
class SplineBasis {
public:
    explicit SplineBasis(std::vector<double> scores) {
        std::sort(scores.begin(), scores.end());
        for (int k = 0; k < kKnots; ++k) {
            const double share = (k + 0.5) / kKnots;
            const double knot = scores[static_cast<std::size_t>(share * static_cast<double>(scores.size()))];
            if (m_knots.empty() || knot > m_knots.back() + 1e-9) {
                m_knots.push_back(knot);
            }
        }
    }
    [[nodiscard]] Eigen::Index size() const { return static_cast<Eigen::Index>(m_knots.size()); }
    [[nodiscard]] Eigen::RowVectorXd at(double x) const {
        Eigen::RowVectorXd row(size());
        row(0) = 1.0;
        if (size() > 1) {
            row(1) = x;
        }
        const std::size_t last = m_knots.size() - 1;
        for (Eigen::Index k = 2; k < size(); ++k) {
            row(k) = slope(static_cast<std::size_t>(k - 2), x) - slope(last - 1, x);
        }
        return row;
    }

private:
    [[nodiscard]] double slope(std::size_t k, double x) const {
        const auto cube = [x](double knot) { return x > knot ? (x - knot) * (x - knot) * (x - knot) : 0.0; };
        return (cube(m_knots[k]) - cube(m_knots.back())) / (m_knots.back() - m_knots[k]);
    }
    std::vector<double> m_knots;
};

/// 1 minus the residual variance over the variance, each over its degrees of freedom.
double adjusted(double residual, double total, double members, double columns) {
    return total > 0.0 ? 1.0 - (residual / (members - columns)) / (total / (members - 1.0)) : 0.0;
}

/// The same of members that count several times.
double resampledShare(const Eigen::MatrixXd& basis, const Eigen::VectorXd& outputs,
                      const std::vector<double>& counts) {
    const Eigen::Map<const Eigen::VectorXd> weights(counts.data(), outputs.size());
    const Eigen::MatrixXd weighted = weights.asDiagonal() * basis;
    const Eigen::VectorXd right = weighted.transpose() * outputs;
    const Eigen::VectorXd fitted = (basis.transpose() * weighted).ldlt().solve(right);
    const double count = weights.sum(), mean = weights.dot(outputs) / count;
    const double total = weights.dot((outputs.array() - mean).square().matrix());
    const double residual = weights.dot((outputs - basis * fitted).array().square().matrix());
    return adjusted(residual, total, count, static_cast<double>(basis.cols()));
}

}  // namespace

ShareEstimator::ShareEstimator(std::vector<double> outputs, int resamples, std::uint64_t seed)
    : m_outputs(std::move(outputs)) {
    const std::size_t members = m_outputs.size();
    requireRange("members", static_cast<double>(members), 50.0, 1e9, "members");
    const double count = static_cast<double>(members);
    const double mean = std::accumulate(m_outputs.begin(), m_outputs.end(), 0.0) / count;
    for (const double output : m_outputs) {
        m_deviation += (output - mean) * (output - mean) / (count - 1.0);
    }
    m_deviation = std::sqrt(m_deviation);
    std::mt19937_64 random(seed);
    for (int i = 0; i < resamples; ++i) {
        std::vector<double>& counts = m_counts.emplace_back(members, 0.0);
        for (std::size_t k = 0; k < members; ++k) {
            counts[static_cast<std::size_t>(random() % members)] += 1.0;
        }
    }
}

VarianceShare ShareEstimator::share(std::span<const double> inputs, double low, double high) const {
    ensure(inputs.size() == m_outputs.size(), "each member has its input and its output");
    const auto members = static_cast<Eigen::Index>(inputs.size());
    const RankScores scoreOf(inputs);
    std::vector<double> scores;
    for (const double input : inputs) {
        scores.push_back(scoreOf(input));
    }
    const SplineBasis splines(scores);
    Eigen::MatrixXd columns(members, splines.size());
    for (Eigen::Index i = 0; i < members; ++i) {
        columns.row(i) = splines.at(scores[static_cast<std::size_t>(i)]);
    }
    const Eigen::Map<const Eigen::VectorXd> outputs(m_outputs.data(), members);
    Eigen::ColPivHouseholderQR<Eigen::MatrixXd> solver(columns);
    solver.setThreshold(1e-9);
    const Eigen::Index rank = solver.rank();
    const Eigen::VectorXd fit = solver.solve(outputs);
    const double residual = (outputs - columns * fit).squaredNorm();
    const double total = (outputs.array() - outputs.mean()).square().sum();
    VarianceShare out;
    out.share = adjusted(residual, total, static_cast<double>(members), static_cast<double>(rank));
    out.atLow = splines.at(scoreOf(low)) * fit;
    out.atHigh = splines.at(scoreOf(high)) * fit;
    if (m_counts.empty() || rank < 2) {
        return out;
    }
    // Orthogonal columns keep the normal equations of the resamples well behaved.
    const Eigen::MatrixXd basis = solver.householderQ() * Eigen::MatrixXd::Identity(members, rank);
    double sum = 0.0, squares = 0.0;
    for (const std::vector<double>& counts : m_counts) {
        const double again = resampledShare(basis, outputs, counts);
        sum += again;
        squares += again * again;
    }
    const double count = static_cast<double>(m_counts.size());
    out.deviation = std::sqrt(std::max(squares / count - (sum / count) * (sum / count), 0.0));
    return out;
}

std::optional<double> ShareEstimator::leftAfter(std::span<const double> inputs, const MeterError& meter,
                                                std::uint64_t seed) const {
    ensure(inputs.size() == m_outputs.size(), "each member has its input and its output");
    const bool isFactor = meter.factor > 1.0;
    const double sigma = isFactor ? std::log(meter.factor) : meter.amount;
    if (!(sigma > 0.0) || !(m_deviation > 0.0)) {
        return std::nullopt;
    }
    // In units of the meter's error.
    std::vector<double> units;
    for (const double input : inputs) {
        units.push_back((isFactor ? std::log(std::max(input, 1e-12)) : input) / sigma);
    }
    const std::size_t members = units.size();
    const std::size_t truths = std::min<std::size_t>(members, kTruths);
    std::vector<double> errors = normalScores(static_cast<int>(truths), 1, seed);
    std::mt19937_64 random(seed);
    for (std::size_t t = truths; t > 1; --t) {
        std::swap(errors[t - 1], errors[static_cast<std::size_t>(random() % t)]);
    }
    double variances = 0.0;
    std::size_t told = 0;
    for (std::size_t t = 0; t < truths; ++t) {
        const double reading = units[t * members / truths] + errors[t];
        double weight = 0.0, squared = 0.0, mean = 0.0, square = 0.0;
        for (std::size_t i = 0; i < members; ++i) {
            const double off = reading - units[i];
            const double w = std::exp(-0.5 * off * off);
            weight += w;
            squared += w * w;
            mean += w * m_outputs[i];
            square += w * m_outputs[i] * m_outputs[i];
        }
        const double left = weight * weight / std::max(squared, 1e-300);
        if (!(weight > 0.0) || left < kFewest) {
            continue;
        }
        mean /= weight;
        // The weighted variance is too small by 1 - 1 / left.
        variances += std::max(square / weight - mean * mean, 0.0) / (1.0 - 1.0 / left);
        ++told;
    }
    if (2 * told < truths) {
        return std::nullopt;
    }
    return std::sqrt(variances / static_cast<double>(told)) / m_deviation;
}

}  // namespace engine
