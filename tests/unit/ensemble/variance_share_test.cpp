#include "engine/ensemble/variance_share.h"

#include "engine/base/error.h"

#include <gtest/gtest.h>

#include <cmath>

namespace engine {
namespace {

std::vector<double> ramp(int members) {
    std::vector<double> values;
    for (int i = 0; i < members; ++i) {
        values.push_back(std::fmod(0.618034 * i, 1.0));  // even, in no order
    }
    return values;
}

TEST(VarianceShare, WhatDoesNothingHasNoShare) {
    const std::vector<double> outputs = ramp(200);
    const ShareEstimator estimator(outputs, 20, 1);
    const VarianceShare constant = estimator.share(std::vector<double>(200, 3.0), 3.0, 3.0);
    EXPECT_NEAR(constant.share, 0.0, 1e-12);
    EXPECT_NEAR(constant.atLow, 0.5, 0.01);
    const VarianceShare itself = estimator.share(outputs, 0.05, 0.95);
    EXPECT_NEAR(itself.share, 1.0, 1e-3);
    EXPECT_NEAR(itself.atLow, 0.05, 0.02);
    EXPECT_NEAR(itself.atHigh, 0.95, 0.02);
}

TEST(VarianceShare, OutputsThatAreAllTheSameHaveNothingToShare) {
    const ShareEstimator estimator(std::vector<double>(100, 2.0), 10, 1);
    EXPECT_EQ(estimator.share(ramp(100), 0.05, 0.95).share, 0.0);
    EXPECT_FALSE(estimator.leftAfter(ramp(100), {0.1, 1.0}, 1));
}

TEST(VarianceShare, TiesShareTheirScore) {
    // Half of the members at the same value, as where a number is cut off at 0.
    std::vector<double> inputs = ramp(400), outputs;
    for (double& input : inputs) {
        input = std::max(input - 0.5, 0.0);
        outputs.push_back(2.0 * input);
    }
    const VarianceShare share = ShareEstimator(outputs, 0, 1).share(inputs, 0.0, 0.45);
    EXPECT_GT(share.share, 0.95);
    EXPECT_NEAR(share.atLow, 0.0, 0.05);
    EXPECT_NEAR(share.atHigh, 0.9, 0.05);
}

TEST(VarianceShare, TheSameSeedIsTheSameNumber) {
    const std::vector<double> inputs = ramp(300);
    std::vector<double> outputs;
    for (const double input : inputs) {
        outputs.push_back(input * input + std::fmod(7.77 * input, 0.3));
    }
    const ShareEstimator a(outputs, 20, 5), b(outputs, 20, 5);
    EXPECT_EQ(a.share(inputs, 0.1, 0.9).deviation, b.share(inputs, 0.1, 0.9).deviation);
    EXPECT_EQ(a.leftAfter(inputs, {0.1, 1.0}, 5), b.leftAfter(inputs, {0.1, 1.0}, 5));
}

TEST(VarianceShare, FewMembersAreRefused) {
    EXPECT_THROW(ShareEstimator(ramp(49), 0, 1), ArgumentError);
}

}  // namespace
}  // namespace engine
