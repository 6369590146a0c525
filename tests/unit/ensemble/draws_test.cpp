#include "engine/ensemble/draws.h"

#include "engine/base/error.h"

#include <Eigen/Eigenvalues>
#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <numbers>

namespace engine {
namespace {

constexpr int kPoints = 1024;

UncertainInput input(InputGroup group, double withChlorophyll, bool measured) {
    UncertainInput out;
    out.spread.below = out.spread.above = 1.0;  // its values are its scores
    out.group = group;
    out.withChlorophyll = withChlorophyll;
    out.measured = measured;
    return out;
}

double shareBelow(double score) {
    return 0.5 * std::erfc(-score / std::numbers::sqrt2);
}

TEST(Draws, EachDimensionIsEven) {
    // Scrambling keeps the property of Sobol's points that each of 1024 equal parts holds one of 1024 points.
    const int dimensions = 150;
    const std::vector<double> scores = normalScores(kPoints, dimensions, 7);
    for (int d = 0; d < dimensions; ++d) {
        std::vector<int> count(kPoints, 0);
        for (int i = 0; i < kPoints; ++i) {
            const int part = static_cast<int>(kPoints * shareBelow(scores[i * dimensions + d]));
            ++count[std::clamp(part, 0, kPoints - 1)];
        }
        EXPECT_EQ(*std::max_element(count.begin(), count.end()), 1) << "dimension " << d;
    }
}

TEST(Draws, FirstPairsOfDimensionsAreEvenTogether) {
    // Sobol's first two dimensions are a (0, 2)-sequence: each of 32 x 32 squares holds one of 1024 points.
    const std::vector<double> scores = normalScores(kPoints, 2, 3);
    std::vector<int> count(kPoints, 0);
    for (int i = 0; i < kPoints; ++i) {
        const int x = static_cast<int>(32.0 * shareBelow(scores[2 * i]));
        const int y = static_cast<int>(32.0 * shareBelow(scores[2 * i + 1]));
        ++count[32 * x + y];
    }
    EXPECT_EQ(*std::max_element(count.begin(), count.end()), 1);
}

TEST(Draws, APointDependsOnSeedAndNumberOnly) {
    const std::vector<double> few = normalScores(5, 9, 1), many = normalScores(300, 9, 1);
    EXPECT_TRUE(std::equal(few.begin(), few.end(), many.begin()));
    const std::vector<double> wide = normalScores(5, 12, 1);
    for (int i = 0; i < 5; ++i) {
        for (int d = 0; d < 9; ++d) {
            EXPECT_EQ(wide[i * 12 + d], few[i * 9 + d]);
        }
    }
    EXPECT_NE(normalScores(5, 9, 2), few);
}

TEST(Draws, CorrelationsAreTheTrades) {
    const std::vector<UncertainInput> inputs{
        input(InputGroup::Bottom, 0.0, false), input(InputGroup::Bottom, 0.0, false),
        input(InputGroup::Algae, 1.0, false),  input(InputGroup::Algae, -0.7, false),
        input(InputGroup::Algae, 0.8, false),  input(InputGroup::Algae, 0.3, false),
        input(InputGroup::Alone, 0.0, false)};
    const Eigen::MatrixXd wanted = correlations(inputs);
    EXPECT_EQ(wanted(0, 1), 0.6);
    EXPECT_EQ(wanted(2, 3), -0.7);            // chlorophyll and Secchi depth
    EXPECT_EQ(wanted(2, 4), 0.8);             // chlorophyll and respiration
    EXPECT_EQ(wanted(2, 5), 0.3);             // chlorophyll and fish
    EXPECT_NEAR(wanted(3, 4), -0.56, 1e-15);  // not listed: the product
    EXPECT_NEAR(wanted(4, 5), 0.24, 1e-15);
    EXPECT_EQ(wanted(0, 2), 0.0);
    EXPECT_EQ(wanted(6, 2), 0.0);

    // The draws have them: 4096 points of a scrambled sequence, where independent draws would scatter by
    // 0.016.
    const int count = 4096, size = static_cast<int>(inputs.size());
    const std::vector<double> scores = normalScores(count, size, 11);
    const Eigen::MatrixXd factor = choleskyFactor(wanted);
    Eigen::MatrixXd values(count, size);
    std::vector<double> row(inputs.size());
    for (int i = 0; i < count; ++i) {
        drawValues(inputs, factor, std::span(scores).subspan(i * size, size), row);
        for (int d = 0; d < size; ++d) {
            values(i, d) = row[d];
        }
    }
    const Eigen::MatrixXd centred = values.rowwise() - values.colwise().mean();
    const Eigen::MatrixXd found = centred.transpose() * centred / (count - 1);
    EXPECT_LT((found - wanted).cwiseAbs().maxCoeff(), 0.02);
}

TEST(Draws, MeasuredInputsAreCorrelatedWithNothing) {
    const std::vector<UncertainInput> inputs{
        input(InputGroup::Bottom, 0.0, true), input(InputGroup::Bottom, 0.0, false),
        input(InputGroup::Algae, 1.0, true), input(InputGroup::Algae, -0.7, false),
        input(InputGroup::Algae, 0.8, false)};
    const Eigen::MatrixXd found = correlations(inputs);
    for (int j = 1; j < 5; ++j) {
        EXPECT_EQ(found(0, j), 0.0);
        EXPECT_EQ(found(2, j), j == 2 ? 1.0 : 0.0);
    }
    EXPECT_NEAR(found(3, 4), -0.56, 1e-15) << "two that are not measured stay together";
}

TEST(Draws, AMatrixThatCannotBeIsShrunkTowardsIndependence) {
    Eigen::MatrixXd wrong(3, 3);
    wrong << 1.0, 0.9, -0.9, 0.9, 1.0, 0.9, -0.9, 0.9, 1.0;
    const Eigen::MatrixXd factor = choleskyFactor(wrong);
    const Eigen::MatrixXd made = factor * factor.transpose();
    EXPECT_LT((made.diagonal() - Eigen::VectorXd::Ones(3)).cwiseAbs().maxCoeff(), 1e-12);
    // By hand: the eigenvalues of `wrong` are 1.9, 1.9 and -0.8, so that a share of 0.8 / 1.8 is wanted.
    EXPECT_NEAR(made(0, 1), 0.9 * (1.0 - 0.8 / 1.8), 1e-8);
    EXPECT_NEAR(made(0, 2), -made(0, 1), 1e-12);
    const Eigen::MatrixXd good = Eigen::MatrixXd::Identity(3, 3);
    EXPECT_EQ(choleskyFactor(good), good);
}

}  // namespace
}  // namespace engine
