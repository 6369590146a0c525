#include "engine/assimilate.h"

#include "engine/model_error.h"

#include <gtest/gtest.h>

#include <cmath>

namespace engine {
namespace {

double variance(const Eigen::MatrixXd& states, Eigen::Index row) {
    const Eigen::RowVectorXd apart = states.row(row).array() - states.row(row).mean();
    return apart.squaredNorm() / static_cast<double>(states.cols() - 1);
}

TEST(Assimilate, ALinearGaussianProblemGetsItsExactAnswer) {
    // Prior N(0, 1), two readings of it with errors of variance 1 and correlation 0.5: the posterior's
    // precision is 1 + 1'R^-1 1 = 1 + 4/3 and its mean R^-1 weighted, (4/3) x 1.5 / (7/3) for readings 1
    // and 2.
    const Eigen::Index members = 4000;
    Eigen::MatrixXd states = standardNormals(2, members, 3);
    const Eigen::VectorXd readings = Eigen::Vector2d(1.0, 2.0);
    Eigen::MatrixXd errors(2, 2);
    errors << 1.0, 0.5, 0.5, 1.0;
    for (int update = 0; update < 4; ++update) {
        Eigen::MatrixXd predictions(2, members);
        predictions << states.row(0), states.row(0);
        assimilate(states, predictions, readings, errors, 4.0, static_cast<std::uint64_t>(10 + update));
    }
    // Sampling noise of 4000 members: 0.65/sqrt(4000) = 0.01 in the mean; four times that.
    EXPECT_NEAR(states.row(0).mean(), 6.0 / 7.0, 0.04);
    EXPECT_NEAR(variance(states, 0), 3.0 / 7.0, 0.04);
    // What has nothing to do with the readings keeps its spread.
    EXPECT_NEAR(states.row(1).mean(), 0.0, 0.06);
    EXPECT_NEAR(variance(states, 1), 1.0, 0.1);
}

TEST(Assimilate, ChanceCorrelationsOfFewMembersMoveNothingMuch) {
    Eigen::MatrixXd states = standardNormals(40, 100, 5);
    const Eigen::MatrixXd before = states;
    const Eigen::MatrixXd predictions = standardNormals(10, 100, 6);
    for (int update = 0; update < 4; ++update) {
        assimilate(states, predictions, Eigen::VectorXd::Constant(10, 3.0), Eigen::MatrixXd::Identity(10, 10),
                   4.0, static_cast<std::uint64_t>(20 + update));
    }
    double left = 0.0;
    for (Eigen::Index i = 0; i < 40; ++i) {
        left += variance(states, i) / variance(before, i) / 40.0;
    }
    EXPECT_GT(left, 0.9);
}

TEST(ModelError, ComesBackAtTheSameHourAndFades) {
    ModelError error;
    error.sigma = 0.5;
    const std::vector<FitPoint> points{
        {0.0, 0.5}, {43200.0, 0.5}, {86400.0, 0.5}, {864000.0, 0.5}, {0.0, 3.5}};
    const Eigen::MatrixXd covariance = modelCovariance(error, points, points);
    EXPECT_NEAR(covariance(0, 0), 0.25, 1e-12);
    EXPECT_GT(covariance(0, 2), 1.2 * covariance(0, 1));  // a day apart against half a day
    EXPECT_LT(covariance(0, 3), 0.02);
    EXPECT_NEAR(covariance(0, 4), 0.25 * std::exp(-3.0), 1e-12);
}

}  // namespace
}  // namespace engine
