#include "engine/ensemble/night_band.h"

#include "engine/base/units.h"

#include <gtest/gtest.h>

namespace engine {
namespace {

/// Hours from midnight of day 1, whose percentiles are the hour and so much more.
RampEnsemble hourly(int hours) {
    RampEnsemble members;
    for (int hour = 0; hour < hours; ++hour) {
        members.hours.push_back(hour * kHour);
        members.fishWater.push_back({hour + 0.0, hour + 1.0, hour + 2.0, hour + 3.0, hour + 4.0});
    }
    return members;
}

TEST(NightBand, GoesFromNoonToNoonAndFrom5To95Percent) {
    RampEnsemble members = hourly(80);
    const PercentileBand band = nightBand(members, 2);
    ASSERT_EQ(band.hour.size(), 25U);
    EXPECT_EQ(band.hour.front(), 0.0);
    EXPECT_EQ(band.hour.back(), 24.0);
    EXPECT_EQ(band.low.front(), 36.0);
    EXPECT_EQ(band.high.front(), 40.0);
    EXPECT_EQ(band.low.back(), 60.0);
    EXPECT_EQ(band.lowest(), 0U);
    members.fishWater[53][0] = 1.0;
    EXPECT_EQ(nightBand(members, 2).lowest(), 17U);
    EXPECT_TRUE(nightBand(members, 9).hour.empty());
}

TEST(NightBand, PercentilesAreOfWholeHours) {
    const RampEnsemble members = hourly(5);
    ASSERT_NE(percentilesAt(members, 3.0 * kHour), nullptr);
    EXPECT_EQ(percentilesAt(members, 3.0 * kHour)->back(), 7.0);
    EXPECT_EQ(percentilesAt(members, 3.5 * kHour), nullptr);
    EXPECT_EQ(percentilesAt(members, 5.0 * kHour), nullptr);
    EXPECT_EQ(percentilesAt(RampEnsemble{}, 0.0), nullptr);
}

}  // namespace
}  // namespace engine
