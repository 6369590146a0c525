#include "engine/follow_up/assimilate.h"

#include "engine/follow_up/model_error.h"

#include <Eigen/Cholesky>
#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <iterator>

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

// A logger's readings go nearly all together. What an update takes out as chance must not be taken from the
// single readings then: the gains of such readings are large and of either sign, and stand only as a whole.
TEST(Assimilate, ReadingsThatGoTogetherNeverWidenWhatIsKnown) {
    constexpr Eigen::Index kReadings = 240, kMembers = 100, kStates = 30;
    Eigen::MatrixXd states = standardNormals(kStates, kMembers, 7);
    const Eigen::MatrixXd before = states;
    Eigen::VectorXd hour(kReadings);
    hour.setLinSpaced(0.0, 10.0 * 6.2831853);
    // Level, rise, and a day's swing of what is read; the other states have no part in it.
    Eigen::MatrixXd parts(kReadings, 3);
    parts << 3.0 * Eigen::VectorXd::Ones(kReadings), 0.05 * hour, hour.array().sin().matrix();
    ModelError error = evenError(1.5, 0.2);
    std::vector<FitPoint> points;
    for (Eigen::Index i = 0; i < kReadings; ++i) {
        points.push_back({3600.0 * static_cast<double>(i), 0.5});
    }
    Eigen::MatrixXd errors = modelCovariance(error, points, points);
    errors.diagonal().array() += error.meter * error.meter;
    const Eigen::VectorXd truth = Eigen::Vector3d(0.5, -0.5, 1.0);
    for (int update = 0; update < 4; ++update) {
        const Eigen::MatrixXd predictions = parts * states.topRows(3);
        assimilate(states, predictions, parts * truth, errors, 4.0, static_cast<std::uint64_t>(30 + update));
    }
    for (Eigen::Index i = 0; i < kStates; ++i) {
        EXPECT_LT(variance(states, i), 1.05 * variance(before, i)) << i;
    }
    for (Eigen::Index i = 0; i < 3; ++i) {
        EXPECT_LT(std::fabs(states.row(i).mean() - truth[i]), std::fabs(before.row(i).mean() - truth[i]))
            << i;
    }
}

TEST(Assimilate, AnUpdateTakesInNoMoreThanCovariancesSpeakFor) {
    const Eigen::MatrixXd errors = Eigen::MatrixXd::Identity(8, 8);
    const Eigen::VectorXd readings = Eigen::VectorXd::Constant(8, 3.0);
    // Misfits of 0.5 x 8 x 2^2 = 16 and 0.5 x 8 x 4^2 = 64: mean 40, deviation 24. By the mean 4 / 40, by the
    // variance 2 / 24: the greater.
    Eigen::MatrixXd predictions(8, 2);
    predictions.col(0).setConstant(1.0);
    predictions.col(1).setConstant(-1.0);
    EXPECT_NEAR(nextShare(predictions, readings, errors, 1.0), 0.1, 1e-12);
    EXPECT_NEAR(nextShare(predictions, readings, errors, 0.04), 0.04, 1e-12);
    // All equally far: their spread speaks for a full update.
    predictions.col(1).setConstant(1.0);
    EXPECT_NEAR(nextShare(predictions, readings, errors, 1.0), 1.0, 1e-12);
}

/// What a pond of that error leaves at half-metre depth, every two hours of eight days.
struct Left {
    std::vector<FitPoint> points;
    Eigen::VectorXd residuals;
};

Left leftBy(const ModelError& error, std::uint64_t seed) {
    Left out;
    for (int i = 0; i < 96; ++i) {
        out.points.push_back({i * 7200.0, 0.5});
    }
    Eigen::MatrixXd covariance = modelCovariance(error, out.points, out.points);
    covariance.diagonal().array() += error.meter * error.meter;
    const Eigen::LLT<Eigen::MatrixXd> root(covariance);
    out.residuals = root.matrixL() * standardNormals(96, 1, seed).col(0);
    return out;
}

TEST(ModelError, IsFoundInWhatItLeaves) {
    // Eight days of errors of one kind, 1.5 where 0.5 was expected: that kind is found the greatest, and the
    // whole within a factor of 1.6 of the truth (a part that lasts for days shows itself a few times only).
    const ModelError expected = evenError(0.5, 0.2);
    for (int kind = 0; kind < 3; ++kind) {
        ModelError truth = expected;
        truth.passingSigma = kind == 0 ? 1.5 : 0.1;
        truth.forgottenSigma = kind == 1 ? 1.5 : 0.1;
        truth.dailySigma = kind == 2 ? 1.5 : 0.1;
        const Left left = leftBy(truth, 40U + static_cast<std::uint64_t>(kind));
        const ModelError found = errorFrom(expected, left.points, left.residuals);
        const double parts[] = {found.passingSigma, found.forgottenSigma, found.dailySigma};
        EXPECT_EQ(std::max_element(std::begin(parts), std::end(parts)) - std::begin(parts), kind);
        EXPECT_NEAR(std::log(found.sigma() / truth.sigma()), 0.0, std::log(1.6)) << kind;
    }
}

TEST(ModelError, IsNeverSmallerThanExpected) {
    const ModelError expected = evenError(0.5, 0.2);
    const Left left = leftBy(expected, 50);
    EXPECT_NEAR(errorFrom(expected, left.points, Eigen::VectorXd::Zero(96)).sigma(), 0.5, 1e-9);
    EXPECT_NEAR(errorFrom(expected, {}, {}).sigma(), 0.5, 1e-12);
}

TEST(ModelError, ComesBackAtTheSameHourAndFades) {
    const ModelError error = evenError(0.5, 0.0);
    const std::vector<FitPoint> points{
        {0.0, 0.5}, {43200.0, 0.5}, {86400.0, 0.5}, {864000.0, 0.5}, {0.0, 3.5}};
    const Eigen::MatrixXd covariance = modelCovariance(error, points, points);
    EXPECT_NEAR(covariance(0, 0), 0.25, 1e-12);
    // By hand, each part a third: 3 h pass, 2 d are forgotten, 4 d fade; the daily part is least at 12 h.
    const auto expected = [](double hours, double wave) {
        return 0.25 / 3.0 *
               (std::exp(-hours / 3.0) + std::exp(-hours / 48.0) + std::exp(-hours / 96.0 - 2.0 * wave));
    };
    EXPECT_NEAR(covariance(0, 1), expected(12.0, 1.0), 1e-9);
    EXPECT_NEAR(covariance(0, 2), expected(24.0, 0.0), 1e-9);
    EXPECT_NEAR(covariance(0, 3), expected(240.0, 0.0), 1e-9);
    EXPECT_NEAR(covariance(0, 4), 0.25 * std::exp(-3.0), 1e-12);
}

}  // namespace
}  // namespace engine
