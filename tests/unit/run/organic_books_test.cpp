#include "engine/run/organic_books.h"

#include "engine/base/units.h"
#include "tests/scenario.h"

#include <gtest/gtest.h>

#include <cmath>

namespace engine::test {
namespace {

constexpr double kOpen = 10000.0, kArea = 8000.0;  // [m^3], [m^2]

TEST(OrganicBooks, WhatIsUsedBeyondWhatIsMadeComesIn) {
    OrganicParameters<double> p;
    closeBooks(p, {100000.0, 90000.0, 0.0, 0.0}, kOpen, kArea);
    EXPECT_NEAR(p.load * kOpen * kDay, 10000.0, 1e-6);
    EXPECT_EQ(p.loss, 0.0);
    EXPECT_EQ(p.settling, OrganicParameters<double>().settling);
}

TEST(OrganicBooks, WhatIsMadeBeyondWhatIsUsedSettlesAndThenLeaves) {
    OrganicParameters<double> little, much;
    closeBooks(little, {100000.0, 101000.0, 0.0, 0.0}, kOpen, kArea);
    EXPECT_EQ(little.load, 0.0);
    EXPECT_NEAR(little.loss * kDay, 0.0, 1e-15);
    const double mean = 100500.0 / kOpen;
    const double more = little.settling - OrganicParameters<double>().settling;
    EXPECT_NEAR(more * mean * kArea * kDay, 1000.0, 1e-6);
    closeBooks(much, {100000.0, 160000.0, 0.0, 0.0}, kOpen, kArea);
    EXPECT_NEAR(much.settling * kDay, kMostSettling_mPerDay.value, 1e-12);
    const double settles = (much.settling - OrganicParameters<double>().settling) * 13.0 * kArea;
    EXPECT_NEAR((settles + much.loss * 13.0 * kOpen) * kDay, 60000.0, 1e-6);
}

TEST(OrganicBooks, FeedLeavesItsWasteWhateverIsMade) {
    OrganicParameters<double> p;
    p.feedWaste = 2000.0 / kDay;
    closeBooks(p, {100000.0, 100000.0, 0.0, 0.0}, kOpen, kArea);
    EXPECT_NEAR(p.load * kOpen * kDay, 2000.0, 1e-9);
    EXPECT_GT(p.settling, OrganicParameters<double>().settling);
}

TEST(OrganicBooks, WeedsGiveAwayWhatTheyDoNotBreathe) {
    OrganicParameters<double> p;
    closeBooks(p, {100000.0, 100000.0, 5000.0, 2000.0}, kOpen, kArea);
    EXPECT_NEAR(p.weedsGive, 0.6, 1e-12);
    OrganicParameters<double> starving;
    closeBooks(starving, {100000.0, 100000.0, 1000.0, 2000.0}, kOpen, kArea);
    EXPECT_EQ(starving.weedsGive, 0.0);
}

// The water starts with as much labile matter as breathes what is known of it in the dark.
TEST(OrganicBooks, TheStartBreathesWhatIsKnown) {
    const PondModel model = prepareUnbalanced(scenario("new-clay"));
    const Column<double> column(model.grid, model.parameters, model.aerator, model.bottom, model.start);
    const Parameters<double>& p = model.parameters;
    const double chlorophyll = model.start.chlorophyll.front();
    const double known = p.respiration.base + p.respiration.perChlorophyll * chlorophyll;
    const double labile = column.solutes(kLabile, 0).front();
    const double living = std::min(p.organic.ofChlorophyll * chlorophyll, labile);
    EXPECT_NEAR(p.organic.decay * labile + p.organic.maintenance * living, known, 1e-12 * known);
}

}  // namespace
}  // namespace engine::test
