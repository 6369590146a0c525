#include "engine/ensemble/spread.h"

#include "engine/base/error.h"

#include <gtest/gtest.h>

#include <cmath>

namespace engine {
namespace {

// Scores are good to a few units in the last place; their multiples too.
constexpr double kRounding = 1e-12;

Quantity quantity(double value, Confidence confidence) {
    Quantity out(value);
    out.confidence = confidence;
    return out;
}

TEST(Spread, ScoresOfTheNormalDistribution) {
    // NIST/SEMATECH e-Handbook, table of the standard normal distribution, from memory: 1.645 at 95 %, 1.960
    // at 97.5 %.
    EXPECT_NEAR(normalScore(0.95), 1.645, 5e-4);
    EXPECT_NEAR(normalScore(0.975), 1.960, 5e-4);
    EXPECT_EQ(normalScore(0.5), 0.0);
    EXPECT_NEAR(normalScore(0.05), -normalScore(0.95), kRounding);
    EXPECT_THROW(static_cast<void>(normalScore(0.0)), ArgumentError);
    EXPECT_THROW(static_cast<void>(normalScore(1.0)), ArgumentError);
}

TEST(Spread, LowAndHighAreThe5And95PercentPoints) {
    const Spread debt = spreadBetween(14.0, 6.0, 30.0);
    EXPECT_TRUE(debt.isLog);
    EXPECT_NEAR(debt.quantile(0.05), 6.0, 1e-11);
    EXPECT_EQ(debt.quantile(0.5), 14.0);
    EXPECT_NEAR(debt.quantile(0.95), 30.0, 1e-11);
    // Half-way in scores is half-way in logarithms, on each side for itself.
    EXPECT_NEAR(debt.atScore(0.5 * normalScore(0.95)), std::sqrt(14.0 * 30.0), 1e-11);
    EXPECT_NEAR(debt.atScore(0.5 * normalScore(0.05)), std::sqrt(14.0 * 6.0), 1e-11);
}

TEST(Spread, ALowEndOf0MakesItNormalAndCutAt0) {
    const Spread debt = spreadBetween(0.3, 0.0, 1.0);
    EXPECT_FALSE(debt.isLog);
    EXPECT_NEAR(debt.quantile(0.05), 0.0, kRounding);
    EXPECT_EQ(debt.quantile(0.5), 0.3);
    EXPECT_NEAR(debt.quantile(0.95), 1.0, kRounding);
    EXPECT_NEAR(debt.atScore(0.5 * normalScore(0.95)), 0.65, kRounding);
    EXPECT_EQ(debt.quantile(0.001), 0.0);
    // Below 0 there is something for a temperature that says so.
    EXPECT_LT(spreadBetween(1.0, -2.0, 4.0).quantile(0.01), -2.0);
}

TEST(Spread, APlainNumberIsAsGoodAsItsMeter) {
    const Prior prior{1.2, 0.5, 2.5, "test"};
    const Spread factor = spreadOf(Quantity(70.0), prior, {0.0, 1.12});
    EXPECT_NEAR(factor.atScore(1.0), 70.0 * 1.12, 1e-11);
    EXPECT_NEAR(factor.atScore(-1.0), 70.0 / 1.12, 1e-11);
    const Spread amount = spreadOf(Quantity(0.5), prior, {1.1, 1.0});
    EXPECT_NEAR(amount.atScore(1.0), 1.6, kRounding);
    EXPECT_EQ(amount.atScore(-1.0), 0.0) << "never below 0";
    EXPECT_EQ(spreadOf(quantity(70.0, Confidence::Measured), prior, {0.0, 1.12}).atScore(1.0),
              factor.atScore(1.0));
}

TEST(Spread, EstimatedTakesHalfAndGuessedAllOfThePriorsLogSpread) {
    const Prior prior{1.2, 0.5, 2.5, "test"};
    const Spread guessed = spreadOf(quantity(3.0, Confidence::Guessed), prior, {});
    EXPECT_NEAR(guessed.quantile(0.05), 3.0 * 0.5 / 1.2, kRounding);
    EXPECT_NEAR(guessed.quantile(0.95), 3.0 * 2.5 / 1.2, kRounding);
    const Spread estimated = spreadOf(quantity(3.0, Confidence::Estimated), prior, {});
    EXPECT_NEAR(estimated.quantile(0.05), 3.0 * std::sqrt(0.5 / 1.2), kRounding);
    EXPECT_NEAR(estimated.quantile(0.95), 3.0 * std::sqrt(2.5 / 1.2), kRounding);
    // A prior down to 0 has no logarithm: the same over its value.
    const Spread clean = spreadOf(quantity(0.6, Confidence::Estimated), {0.3, 0.0, 1.0, "test"}, {});
    EXPECT_NEAR(clean.quantile(0.05), 0.3, kRounding);
    EXPECT_NEAR(clean.quantile(0.95), 0.6 + 0.5 * 0.7 / 0.3 * 0.6, kRounding);
    EXPECT_EQ(clean.quantile(1e-6), 0.0);
}

TEST(Spread, ItsOwnEndsGoBeforeWhatItIsSaidToBe) {
    Quantity debt = quantity(14.0, Confidence::Estimated);
    debt.low = 6.0;
    debt.high = 30.0;
    EXPECT_NEAR(spreadOf(debt, {10.0, 4.0, 30.0, "test"}, {}).quantile(0.95), 30.0, 1e-11);
}

TEST(Spread, MeasuredIsWhatIsPlainOrSaysSo) {
    EXPECT_TRUE(isMeasured(Quantity(1.0)));
    EXPECT_TRUE(isMeasured(quantity(1.0, Confidence::Measured)));
    EXPECT_FALSE(isMeasured(quantity(1.0, Confidence::Estimated)));
    EXPECT_FALSE(isMeasured(quantity(1.0, Confidence::Guessed)));
    Quantity banded(1.0);
    banded.low = 0.5;
    banded.high = 2.0;
    EXPECT_FALSE(isMeasured(banded));
    banded.confidence = Confidence::Measured;
    EXPECT_TRUE(isMeasured(banded));
}

}  // namespace
}  // namespace engine
