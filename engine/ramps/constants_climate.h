#pragma once

#include "engine/water/constant.h"

namespace engine {
// clang-format off

// What a place of which nothing is told but latitude, height and distance to the sea has for a climate. Ranges
// are what nine of ten places of a kind have. "By the sea" and "inland" are the ends between which a place's
// distance puts it (kSeaReach_km).

inline constexpr Constant kUsualSea_km{300.0, 20.0, 1200.0, "km",
    "where a pond file does not say; judgement"};
inline constexpr Constant kSeaReach_km{500.0, 250.0, 900.0, "km",
    "over which the sea's hold on the air falls to 1/e; judgement"};
inline constexpr Constant kLapse{5.5, 4.5, 6.5, "K/km",
    "of the year's mean air over land; Rolland (2003), J. Climate 16:1032-1046, has 5.1 to 5.8 in the Alps, from "
    "memory; the standard atmosphere has 6.5"};

// Conrad (1946), Trans. Am. Geophys. Union 27:663-664, from memory: the index of continentality is
// 1.7 A / sin(latitude + 10 degrees) - 14, A being the difference between the warmest and the coldest month's
// mean in K; 0 stands for Thorshavn and 100 for Verkhoyansk.
inline constexpr Constant kContinentalityCoast{10.0, 0.0, 45.0, "-",
    "index by the sea: 0 to 10 where westerlies come from it, 30 to 45 where they come over a continent; judgement"};
inline constexpr Constant kContinentalityInland{60.0, 40.0, 100.0, "-", "index far from any sea; judgement"};
inline constexpr Constant kTropics_deg{10.0, 5.0, 15.0, "degrees",
    "of latitude, within which the year's course dies out towards the equator; judgement"};

inline constexpr Constant kLagCoast_days{50.0, 40.0, 70.0, "days",
    "from the longest day to the warmest, by the sea; judgement"};
inline constexpr Constant kLagInland_days{28.0, 20.0, 35.0, "days", "the same inland; judgement"};

inline constexpr Constant kDailySwingCoast{6.0, 3.0, 9.0, "K",
    "between a usual day's lowest and highest air, by the sea; judgement"};
inline constexpr Constant kDailySwingInland{12.0, 9.0, 17.0, "K", "the same inland; judgement"};
inline constexpr Constant kHumidityCoast_percent{80.0, 70.0, 88.0, "percent", "by the sea; judgement"};
inline constexpr Constant kHumidityInland_percent{65.0, 40.0, 78.0, "percent", "inland; judgement"};
inline constexpr Constant kWindCoast{5.0, 3.0, 8.0, "m/s", "mean at 10 m, by the sea; judgement"};
inline constexpr Constant kWindInland{3.0, 2.0, 5.0, "m/s", "the same inland; judgement"};
inline constexpr Constant kUsualCloud_percent{55.0, 25.0, 75.0, "percent",
    "of the sky; judgement, near the 52 over all land of Warren et al. (1986), from memory"};

// How far off the means of the air may be: one standard deviation each, independent of each other.
inline constexpr Constant kMeanSpread{4.0, 3.0, 5.0, "K",
    "of the year's mean at sea level among places of one latitude, times the sine of latitude plus 10 degrees; "
    "judgement: at 50 degrees north they go from about 0 on the Amur to 11 at the Channel, near the equator from 25 "
    "to 28"};
inline constexpr Constant kContinentalitySpread{15.0, 10.0, 25.0, "-",
    "of the index among places as far from the sea: the two coasts of a continent are 30 to 40 apart; judgement"};
inline constexpr Constant kContinentalityOfSea{15.0, 10.0, 25.0, "-",
    "more, where the distance to the sea is not told: from 20 to 1200 km the index rises by 45; judgement"};
inline constexpr Constant kLapseSpread{1.0, 0.5, 1.5, "K/km", "valleys, slopes and plateaus differ; judgement"};
inline constexpr Constant kMonthsBand{1.0, 0.3, 2.0, "K",
    "of months that a pond file gives: a station near by, means of other years; judgement"};
inline constexpr Constant kTypicalYearBand{1.5, 0.5, 2.5, "K",
    "of a typical year, which is made of single months that come near the mean; judgement"};
// clang-format on

}  // namespace engine
