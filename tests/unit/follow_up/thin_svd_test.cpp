#include "engine/follow_up/thin_svd.h"

#include "engine/follow_up/assimilate.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <utility>

namespace engine {
namespace {

// Of entries about 1 and sums of some dozens of terms, rounding leaves some 1e-14.
constexpr double kRounding = 1e-12;

TEST(ThinSvd, PutsTheMatrixTogetherAgainFromOrthogonalColumns) {
    for (const auto& [rows, columns] : {std::pair(30, 7), std::pair(7, 30), std::pair(12, 12)}) {
        const Eigen::MatrixXd matrix = standardNormals(rows, columns, 5);
        const ThinSvd svd = thinSvd(matrix);
        const Eigen::Index least = std::min(rows, columns);
        ASSERT_EQ(svd.values.size(), least);
        ASSERT_EQ(svd.u.cols(), least);
        ASSERT_EQ(svd.v.cols(), least);
        EXPECT_LT((svd.u * svd.values.asDiagonal() * svd.v.transpose() - matrix).norm(), kRounding);
        const Eigen::MatrixXd one = Eigen::MatrixXd::Identity(least, least);
        EXPECT_LT((svd.u.transpose() * svd.u - one).norm(), kRounding);
        EXPECT_LT((svd.v.transpose() * svd.v - one).norm(), kRounding);
        for (Eigen::Index i = 1; i < least; ++i) {
            EXPECT_LE(svd.values[i], svd.values[i - 1]);
        }
        EXPECT_GT(svd.values[least - 1], 0.0);
    }
}

TEST(ThinSvd, FindsKnownValuesAndOneThatIsNought) {
    Eigen::MatrixXd matrix(3, 2);
    matrix << 3.0, 3.0, 0.0, 0.0, 4.0, 4.0;  // of rank 1: 5 times the root of 2
    const ThinSvd svd = thinSvd(matrix);
    EXPECT_NEAR(svd.values[0], 5.0 * std::sqrt(2.0), kRounding);
    EXPECT_NEAR(svd.values[1], 0.0, kRounding);
}

}  // namespace
}  // namespace engine
