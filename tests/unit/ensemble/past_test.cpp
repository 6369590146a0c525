// What the past of a pond says of its members.
#include "engine/ensemble/past.h"

#include "engine/ensemble/constants_past.h"
#include "tests/scenario.h"

#include <gtest/gtest.h>

#include <cmath>
#include <numeric>

namespace engine::test {
namespace {

TEST(Past, ANightUnderALineFollowsFromTheNightsThatWereRun) {
    const std::vector<double> even{3.0, 4.0, 5.0};  // mean 4, scatter 1
    EXPECT_NEAR(chanceBelow(even, 4.0), 0.5, 1e-12);
    EXPECT_NEAR(chanceBelow(even, 3.0), 0.158655, 1e-6) << "one sigma of the normal distribution";
    const std::vector<double> same{4.0, 4.0, 4.0};
    EXPECT_NEAR(chanceBelow(same, 4.0 - kLowScatter.value), 0.158655, 1e-6)
        << "a run is off by so much at least";
}

TEST(Past, LethalNightsThatNobodyNoticedAreUnlikely) {
    Pond pond = scenario("grandfathers-pond");
    EXPECT_EQ(pastLikelihood(pond, {0.0, 0.0}), 0.0);
    // One in ten: seven and a half spells, each unnoticed with 1 - 0.7 x 0.1.
    EXPECT_NEAR(pastLikelihood(pond, {0.1, 0.0}), 7.5 * std::log(0.93), 1e-12);
    const double without = pastLikelihood(pond, {0.1, 0.02});
    pond.history.yearsWithoutKill = Quantity(5.0);
    const double quiet = std::pow(1.0 - 0.7 * 0.02, 15.0);
    EXPECT_NEAR(pastLikelihood(pond, {0.1, 0.02}), without + 5.0 * std::log(0.5 + 0.5 * quiet), 1e-12);
    pond.history.yearsWithoutKill = Quantity(50.0);
    EXPECT_NEAR(pastLikelihood(pond, {0.1, 0.02}), without + 10.0 * std::log(0.5 + 0.5 * quiet), 1e-12)
        << "older years say nothing of this pond";
}

TEST(Past, AKillThatWasSeenSpeaksForPondsThatKill) {
    Pond pond = scenario("grandfathers-pond");
    pond.history.kills = {Date(std::chrono::local_days(*pond.place.firstDay) - std::chrono::days(400))};
    EXPECT_GT(pastLikelihood(pond, {0.0, 0.2}), pastLikelihood(pond, {0.0, 0.0}));
    pond.history.kills = {Date(std::chrono::local_days(*pond.place.firstDay) - std::chrono::days(5000))};
    EXPECT_EQ(pastLikelihood(pond, {0.0, 0.0}), 0.0) << "too long ago";
}

TEST(Past, WeightsHaveAMeanOfOneAndAnEffectiveSize) {
    EXPECT_TRUE(weightsOf(std::vector<double>{-1.0, -1.0}).empty()) << "all the same";
    const std::vector<double> weights = weightsOf(std::vector<double>{std::log(3.0), 0.0, 0.0, 0.0});
    EXPECT_NEAR(std::accumulate(weights.begin(), weights.end(), 0.0), 4.0, 1e-12);
    EXPECT_NEAR(weights[0] / weights[1], 3.0, 1e-12);
    EXPECT_NEAR(effectiveSize(weights), 36.0 / 12.0, 1e-12) << "(3 + 1 + 1 + 1)^2 / (9 + 1 + 1 + 1)";
}

TEST(Past, ResamplingGivesEachMemberItsShare) {
    EXPECT_EQ(resampled({}, 4, 4), (std::vector<std::size_t>{0, 1, 2, 3}));
    EXPECT_EQ(resampled(std::vector<double>{2.0, 0.0, 1.0, 1.0}, 4, 4),
              (std::vector<std::size_t>{0, 0, 2, 3}));
    EXPECT_EQ(resampled(std::vector<double>{0.0, 0.0, 4.0, 0.0}, 4, 2), (std::vector<std::size_t>{2, 2}));
}

// Fish that are alive outweigh ponds in which they would not be.
TEST(Past, DrawnMembersThatWouldHaveKilledCountForLess) {
    Pond pond = scenario("fee-cats");
    const PondModel model = prepare(pond, {12, 1800.0});
    EnsembleOptions options;
    options.members = 16;
    const DrawnMembers drawn = drawnMembers(model, options);
    ASSERT_FALSE(drawn.weights.empty());
    EXPECT_GE(drawn.members.size(), 16U);
    EXPECT_NEAR(drawn.effective, effectiveSize(drawn.weights), 1e-9);
    EnsembleResult result = runMembers(model, {{"do-nothing", {}, true}}, options);
    EXPECT_EQ(result.weights, drawn.weights);
    EXPECT_LT(result.ramps.front().chanceBelowLethal, result.ramps.front().plainBelowLethal);
    options.past = false;
    const EnsembleResult plain = runMembers(model, {{"do-nothing", {}, true}}, options);
    EXPECT_TRUE(plain.weights.empty());
    EXPECT_EQ(plain.members, 16);
    // A dawn that was read tells more.
    Reading dawn;
    dawn.at = *pond.profile->at - std::chrono::hours(11);
    dawn.depth = Quantity(0.5);
    dawn.oxygen = Quantity(4.0);
    pond.readings = {dawn};
    EXPECT_FALSE(countsPast(prepareUnbalanced(pond, {12, 1800.0})));
    EXPECT_TRUE(countsPast(model));
}

}  // namespace
}  // namespace engine::test
