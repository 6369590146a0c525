// Closed forms of variance shares.
//
// Ishigami and Homma (1990), Proc. ISUMA, 398-403, with a = 7 and b = 0.1; the function of Sobol as in
// Saltelli and Sobol (1995), Reliab. Eng. Syst. Saf. 50:225-239; both as printed in Saltelli and others
// (2008), Global Sensitivity Analysis: The Primer. A linear function of correlated normal inputs as in
// Kucherenko, Tarantola and Annoni (2012), Comput. Phys. Commun. 183:937-946. The publications are cited from
// memory; the closed forms are worked out below and need no table.
#include "engine/ensemble/variance_share.h"

#include "engine/ensemble/draws.h"

#include <gtest/gtest.h>

#include <cmath>
#include <functional>
#include <numbers>

namespace engine {
namespace {

constexpr double kWanted = 0.02;  // what the house asks of shares
constexpr int kMany = 8192;       // members with which that is kept; 1,000 have a sampling error of their own
constexpr double kPi = std::numbers::pi;

struct Sample {
    std::vector<std::vector<double>> inputs;  ///< Inputs x members
    std::vector<double> outputs;
};

/// Members of inputs that are even on [0, 1].
Sample evenly(int members, int inputs, std::uint64_t seed,
              const std::function<double(const std::vector<double>&)>& function) {
    Sample sample;
    sample.inputs.resize(static_cast<std::size_t>(inputs));
    const std::vector<double> scores = normalScores(members, inputs, seed);
    for (int i = 0; i < members; ++i) {
        std::vector<double> x;
        for (int k = 0; k < inputs; ++k) {
            x.push_back(0.5 *
                        std::erfc(-scores[static_cast<std::size_t>(i * inputs + k)] / std::numbers::sqrt2));
            sample.inputs[static_cast<std::size_t>(k)].push_back(x.back());
        }
        sample.outputs.push_back(function(x));
    }
    return sample;
}

double ishigami(const std::vector<double>& u) {
    const double x = kPi * (2.0 * u[0] - 1.0), y = kPi * (2.0 * u[1] - 1.0), z = kPi * (2.0 * u[2] - 1.0);
    return std::sin(x) + 7.0 * std::sin(y) * std::sin(y) + 0.1 * std::pow(z, 4.0) * std::sin(x);
}

std::vector<double> ishigamiShares() {
    const double a = 7.0, b = 0.1;
    const double first = 0.5 * std::pow(1.0 + b * std::pow(kPi, 4.0) / 5.0, 2.0), second = a * a / 8.0;
    const double total = second + b * std::pow(kPi, 4.0) / 5.0 + b * b * std::pow(kPi, 8.0) / 18.0 + 0.5;
    return {first / total, second / total, 0.0};
}

const std::vector<double> kSobol{0.0, 1.0, 4.5, 9.0, 99.0, 99.0, 99.0, 99.0};

double sobol(const std::vector<double>& u) {
    double product = 1.0;
    for (std::size_t i = 0; i < kSobol.size(); ++i) {
        product *= (std::fabs(4.0 * u[i] - 2.0) + kSobol[i]) / (1.0 + kSobol[i]);
    }
    return product;
}

std::vector<double> sobolShares() {
    double total = 1.0;
    std::vector<double> parts;
    for (const double a : kSobol) {
        parts.push_back(1.0 / (3.0 * (1.0 + a) * (1.0 + a)));
        total *= 1.0 + parts.back();
    }
    for (double& part : parts) {
        part /= total - 1.0;
    }
    return parts;
}

/// Y = X1 + X2 + X3 of normal inputs with deviations 1, 1, 2 and a correlation of rho between X2 and X3.
Sample linear(int members, double rho, std::uint64_t seed) {
    Sample sample;
    sample.inputs.resize(3);
    const std::vector<double> scores = normalScores(members, 3, seed);
    for (std::size_t i = 0; i < static_cast<std::size_t>(members); ++i) {
        const double one = scores[3 * i], two = scores[3 * i + 1];
        const double three = 2.0 * (rho * two + std::sqrt(1.0 - rho * rho) * scores[3 * i + 2]);
        sample.inputs[0].push_back(one);
        sample.inputs[1].push_back(two);
        sample.inputs[2].push_back(three);
        sample.outputs.push_back(one + two + three);
    }
    return sample;
}

std::vector<double> linearShares(double rho) {
    const double total = 1.0 + 1.0 + 4.0 + 2.0 * rho * 2.0;
    return {1.0 / total, std::pow(1.0 + 2.0 * rho, 2.0) / total, std::pow(2.0 + rho, 2.0) / total};
}

void expectShares(const Sample& sample, const std::vector<double>& wanted, const std::string& what) {
    const ShareEstimator estimator(sample.outputs, 0, 1);
    for (std::size_t i = 0; i < wanted.size(); ++i) {
        EXPECT_NEAR(estimator.share(sample.inputs[i], 0.05, 0.95).share, wanted[i], kWanted)
            << what << ", input " << i + 1;
    }
}

TEST(VarianceShare, AgreesWithClosedForms) {
    EXPECT_NEAR(ishigamiShares()[0], 0.3139, 1e-4);  // as printed
    EXPECT_NEAR(ishigamiShares()[1], 0.4424, 1e-4);
    EXPECT_NEAR(sobolShares()[0], 0.7162, 1e-4);
    for (const std::uint64_t seed : {1U, 2U, 3U}) {
        expectShares(evenly(kMany, 3, seed, ishigami), ishigamiShares(), "Ishigami");
        expectShares(evenly(kMany, 8, seed, sobol), sobolShares(), "Sobol");
        for (const double rho : {-0.7, 0.0, 0.6}) {
            expectShares(linear(kMany, rho, seed), linearShares(rho), "linear, " + std::to_string(rho));
        }
    }
}

TEST(VarianceShare, SharesOfInputsThatGoTogetherAddUpToMoreThanAll) {
    const std::vector<double> shares = linearShares(0.6);
    EXPECT_GT(shares[0] + shares[1] + shares[2], 1.2);
}

TEST(VarianceShare, ConditionalMeansAreThoseOfTheClosedForm) {
    const Sample sample = linear(kMany, 0.6, 1);
    const ShareEstimator estimator(sample.outputs, 0, 1);
    // E[Y | X2] = X2 (1 + 2 rho).
    const VarianceShare two = estimator.share(sample.inputs[1], -1.5, 1.5);
    EXPECT_NEAR(two.atLow, -1.5 * 2.2, 0.1);
    EXPECT_NEAR(two.atHigh, 1.5 * 2.2, 0.1);
}

TEST(VarianceShare, TheBootstrapKnowsTheErrorOfAThousandMembers) {
    // Thirty samples of 1,000 members: what the shares scatter is about what the bootstrap says.
    double scatter = 0.0, said = 0.0;
    for (std::uint64_t seed = 1; seed <= 30; ++seed) {
        const Sample sample = linear(1000, 0.0, seed);
        const VarianceShare share =
            ShareEstimator(sample.outputs, 60, seed).share(sample.inputs[2], -1.0, 1.0);
        scatter += std::pow(share.share - 4.0 / 6.0, 2.0) / 30.0;
        said += share.deviation / 30.0;
    }
    // Even draws scatter less than the independent ones that a bootstrap stands for, never more than by half.
    EXPECT_LT(std::sqrt(scatter), 1.5 * said);
    EXPECT_GT(said, 0.005);
    EXPECT_LT(said, 0.03);
}

TEST(VarianceShare, AMeasurementLeavesWhatNormalTheoryLeaves) {
    const double rho = 0.6;
    const Sample sample = linear(4096, rho, 1);
    const ShareEstimator estimator(sample.outputs, 0, 1);
    const double total = 6.0 + 4.0 * rho;
    for (const double error : {0.3, 0.5, 1.0, 3.0}) {
        // Reading X2: its own variance is 1, its covariance with Y 1 + 2 rho.
        const double gain = std::pow(1.0 + 2.0 * rho, 2.0) / (1.0 + error * error);
        const auto left = estimator.leftAfter(sample.inputs[1], {error, 1.0}, 1);
        ASSERT_TRUE(left);
        EXPECT_NEAR(*left, std::sqrt((total - gain) / total), kWanted) << error;
    }
    EXPECT_FALSE(estimator.leftAfter(sample.inputs[1], {1e-6, 1.0}, 1));
}

}  // namespace
}  // namespace engine
