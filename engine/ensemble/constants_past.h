#pragma once

#include "engine/water/constant.h"

namespace engine {
// clang-format off

// What the past of a pond says of its members (engine/ensemble/past.h).

inline constexpr Constant kPastNights{10.0, 10.0, 10.0, "nights",
    "of usual weather with its scatter, left alone, of which each member's lows are known; judgement"};
inline constexpr Constant kSeenKill{0.7, 0.5, 0.9, "-", "chance that a kill, or a lethal night, was noticed; judgement"};
inline constexpr Constant kKillShare{0.5, 0.3, 1.0, "-",
    "of the lethal line, which a kill of past years took; judgement"};
inline constexpr Constant kKillHours{6.0, 4.0, 12.0, "h", "under it, as of a kill; judgement"};
inline constexpr Constant kNightsBefore{30.0, 14.0, 60.0, "nights",
    "before the start in which the weather was like this and the fish lived; judgement"};
inline constexpr Constant kNightsOfSpell{4.0, 2.0, 6.0, "nights",
    "that go together: with a correlation of 0.6 from day to day, (1 + 0.6) / (1 - 0.6)"};
inline constexpr Constant kLikeNights{60.0, 30.0, 90.0, "nights",
    "of a year that are as hard as these; judgement"};
inline constexpr Constant kOtherPond{0.5, 0.3, 0.7, "-",
    "chance that in a past year algae and stock were so different that it says nothing of this one; judgement"};
inline constexpr Constant kYearsBack{10.0, 5.0, 15.0, "years", "that count at most; judgement"};
inline constexpr Constant kLowScatter{0.3, 0.2, 0.5, "g/m^3",
    "of a member's lows at least, 1 sigma: how far a run is off; judgement"};
inline constexpr Constant kLeastEffective{100.0, 100.0, 100.0, "members",
    "of equal weight, below which more are drawn; judgement"};
// clang-format on

}  // namespace engine
