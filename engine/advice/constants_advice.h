#pragma once

#include "engine/water/constant.h"

namespace engine {
// clang-format off

inline constexpr Constant kTellingHalves{0.05, 0.03, 0.10, "-",
    "between the lethal chances of the lower and the upper half of an input, below which a reading tells nothing; "
    "judgement"};
inline constexpr Constant kSecondProfile_h{48.0, 24.0, 72.0, "h",
    "of a logger, or between two profiles, for an answer that is not provisional; common practice, no source"};
inline constexpr int kMembersPerCalendar = 4;  // of a comparison, for one of each month; judgement of time
// Where no month of the calendar will do: six weeks from mid October, half a year later south of the equator.
inline constexpr Constant kWaitMonth{10.0, 9.0, 11.0, "month", "common practice, no source"};
inline constexpr Constant kWaitDay{15.0, 15.0, 15.0, "day", "of it; common practice, no source"};
inline constexpr Constant kWaitDays{42.0, 42.0, 42.0, "d", "that the window lasts; common practice, no source"};
// clang-format on

}  // namespace engine
