#include "engine/base/percentile.h"

#include "engine/base/error.h"

#include <gtest/gtest.h>

#include <vector>

namespace engine {
namespace {

TEST(Percentile, Type7OfSmallSamples) {
    // By hand from Hyndman and Fan (1996), definition 7: the place is 1 + (n - 1) p.
    const std::vector<float> four{1.0F, 2.0F, 4.0F, 8.0F};
    EXPECT_EQ(sortedQuantile(four, 0.0), 1.0);
    EXPECT_EQ(sortedQuantile(four, 0.25), 1.75);
    EXPECT_EQ(sortedQuantile(four, 0.5), 3.0);
    EXPECT_EQ(sortedQuantile(four, 0.75), 5.0);
    EXPECT_EQ(sortedQuantile(four, 1.0), 8.0);
    EXPECT_NEAR(sortedQuantile(four, 0.95), 4.0 + 0.85 * 4.0, 1e-12);
    const std::vector<float> one{3.5F};
    EXPECT_EQ(sortedQuantile(one, 0.05), 3.5);
    EXPECT_EQ(sortedQuantile(one, 1.0), 3.5);
}

TEST(Percentile, AllFiveOfASampleInAnyOrder) {
    // 0 to 20 in steps of 1: the place of p is 20 p.
    std::vector<float> sample;
    for (int i = 0; i <= 20; ++i) {
        sample.push_back(static_cast<float>((i * 8) % 21));
    }
    const Percentiles found = percentilesOf(sample);
    const Percentiles wanted{1.0, 5.0, 10.0, 15.0, 19.0};
    for (std::size_t i = 0; i < found.size(); ++i) {
        EXPECT_NEAR(found[i], wanted[i], 1e-12);
    }
}

TEST(Percentile, AnEmptySampleOrAShareOutsideIsAFault) {
    EXPECT_THROW(static_cast<void>(sortedQuantile({}, 0.5)), InternalError);
    const std::vector<float> one{1.0F};
    EXPECT_THROW(static_cast<void>(sortedQuantile(one, 1.5)), ArgumentError);
}

TEST(Percentile, WeightsOfTheSameSizeChangeNothing) {
    std::vector<float> sample{5.0F, 1.0F, 4.0F, 2.0F, 3.0F}, again = sample;
    const Percentiles plain = percentilesOf(sample);
    const Percentiles weighted = percentilesOf(again, std::vector<double>(5, 0.7));
    for (std::size_t i = 0; i < plain.size(); ++i) {
        EXPECT_NEAR(weighted[i], plain[i], 1e-12) << i;
    }
}

TEST(Percentile, AValueOfWeightTwoStandsForTwo) {
    // 1, 2, 2, 3 by type 7 has its median at 2; with a weight of nothing a value is not there.
    std::vector<float> sample{1.0F, 2.0F, 3.0F, 9.0F};
    const Percentiles found = percentilesOf(sample, std::vector<double>{1.0, 2.0, 1.0, 0.0});
    EXPECT_NEAR(found[2], 2.0, 1e-12);
    EXPECT_LE(found.back(), 3.0);
    std::vector<float> heavy{1.0F, 2.0F};
    EXPECT_GT(percentilesOf(heavy, std::vector<double>{1.0, 9.0})[2], 1.4);
}

}  // namespace
}  // namespace engine
