#include "engine/ensemble/draws.h"

#include "engine/base/error.h"

#include <Eigen/Cholesky>
#include <Eigen/Eigenvalues>
#include <boost/random/sobol.hpp>

namespace engine {
namespace {

constexpr double kWithinBottom = 0.6;      // trade; common practice, no source
constexpr double kLeastEigenvalue = 1e-9;  // leaves Cholesky's square roots far above rounding
constexpr int kDigits = 32;

/// A good 64-bit hash: the finaliser of SplitMix64 (Steele, Lea and Flood 2014, OOPSLA, 453-472).
std::uint64_t mixed(std::uint64_t x) {
    x += 0x9e3779b97f4a7c15U;
    x = (x ^ (x >> 30U)) * 0xbf58476d1ce4e5b9U;
    x = (x ^ (x >> 27U)) * 0x94d049bb133111ebU;
    return x ^ (x >> 31U);
}

/// Owen's scrambling of the first digits of a number below 1, given as 32 binary digits.
std::uint32_t scrambled(std::uint32_t digits, std::uint64_t key) {
    std::uint32_t out = 0;
    // What stands before a digit, with a one in front, so that 0 and 00 differ.
    std::uint64_t before = 1;
    for (int digit = kDigits - 1; digit >= 0; --digit) {
        const std::uint32_t bit = (digits >> static_cast<unsigned>(digit)) & 1U;
        const auto flip = static_cast<std::uint32_t>(mixed(key ^ (before * 0x9e3779b97f4a7c15U)) >> 63U);
        out = (out << 1U) | (bit ^ flip);
        before = (before << 1U) | bit;
    }
    return out;
}

double correlation(const UncertainInput& a, const UncertainInput& b) {
    if (a.measured || b.measured || a.group != b.group) {
        return 0.0;
    }
    switch (a.group) {
        case InputGroup::Alone:
            return 0.0;
        case InputGroup::Bottom:
            return kWithinBottom;
        case InputGroup::Algae:
            return a.withChlorophyll * b.withChlorophyll;
    }
    return 0.0;
}

}  // namespace

std::vector<double> normalScores(int count, int dimensions, std::uint64_t seed) {
    requireRange("dimensions of the draws", dimensions, 1, 3667, "");
    boost::random::sobol sequence(static_cast<std::size_t>(dimensions));
    std::vector<std::uint64_t> keys;
    for (int d = 0; d < dimensions; ++d) {
        keys.push_back(mixed(mixed(seed) + static_cast<std::uint64_t>(d)));
    }
    std::vector<double> scores;
    scores.reserve(static_cast<std::size_t>(count) * static_cast<std::size_t>(dimensions));
    for (int i = 0; i < count; ++i) {
        for (int d = 0; d < dimensions; ++d) {
            // Boost's sequence leaves out its first point, 0, without which no 2^n points would be even.
            const std::uint64_t point = i == 0 ? 0 : sequence();
            const auto digits = static_cast<std::uint32_t>(point >> (64U - kDigits));
            scores.push_back(normalScore((scrambled(digits, keys[d]) + 0.5) * 0x1p-32));
        }
    }
    return scores;
}

Eigen::MatrixXd correlations(const std::vector<UncertainInput>& inputs) {
    const auto size = static_cast<Eigen::Index>(inputs.size());
    Eigen::MatrixXd matrix = Eigen::MatrixXd::Identity(size, size);
    for (Eigen::Index i = 0; i < size; ++i) {
        for (Eigen::Index j = 0; j < i; ++j) {
            matrix(i, j) = matrix(j, i) = correlation(inputs[i], inputs[j]);
        }
    }
    return matrix;
}

Eigen::MatrixXd choleskyFactor(const Eigen::MatrixXd& correlation) {
    const Eigen::SelfAdjointEigenSolver<Eigen::MatrixXd> solver(correlation, Eigen::EigenvaluesOnly);
    const double least = solver.eigenvalues().minCoeff();
    Eigen::MatrixXd matrix = correlation;
    if (least < kLeastEigenvalue) {
        const double share = (kLeastEigenvalue - least) / (1.0 - least);
        matrix = (1.0 - share) * matrix +
                 share * Eigen::MatrixXd::Identity(correlation.rows(), correlation.cols());
    }
    const Eigen::LLT<Eigen::MatrixXd> factor(matrix);
    ensure(factor.info() == Eigen::Success, "a positive definite matrix has its Cholesky factor");
    return factor.matrixL();
}

void drawValues(const std::vector<UncertainInput>& inputs, const Eigen::MatrixXd& factor,
                std::span<const double> scores, std::span<double> values) {
    ensure(scores.size() == inputs.size() && values.size() == inputs.size(), "each input has its score");
    for (std::size_t i = 0; i < inputs.size(); ++i) {
        double score = 0.0;
        for (std::size_t j = 0; j <= i; ++j) {
            score += factor(static_cast<Eigen::Index>(i), static_cast<Eigen::Index>(j)) * scores[j];
        }
        values[i] = inputs[i].spread.atScore(score);
    }
}

}  // namespace engine
