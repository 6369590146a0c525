#pragma once

#include "engine/water/constant.h"

namespace engine {
// clang-format off

// Thresholds by which a start, a profile and what fish meet are judged.

// Triage: debt of the bottom water over the oxygen above it, and the dose a day that it allows.
inline constexpr Constant kRampRequiredRatio{0.15, 0.15, 0.15, "-",
    "from which on a start needs a ramp; common practice, no source"};
inline constexpr Constant kHighRatio{0.5, 0.5, 0.5, "-",
    "from which on the debt is high; common practice, no source"};
inline constexpr Constant kDoNotStartRatio{1.0, 1.0, 1.0, "-",
    "above which nothing is started: there is less oxygen than debt; common practice, no source"};
inline constexpr Constant kCapRequired_percent{25.0, 25.0, 25.0, "% of the bottom water",
    "where a ramp is needed; common practice, no source"};
inline constexpr Constant kCapHigh_percent{10.0, 10.0, 15.0, "% of the bottom water",
    "where the debt is high; common practice, no source"};

// Triage: the season.
inline constexpr Constant kCoolStart{15.0, 12.0, 15.0, "degC",
    "surface water, under which the time is best; the upper end of 12 to 15, common practice, no source"};
inline constexpr Constant kWarmStart{18.0, 18.0, 18.0, "degC",
    "surface water, from which on a start is a warm one; between the two a pond is on its way; judgement"};
inline constexpr Constant kDensestWater{4.0, 3.98, 4.0, "degC", "under it the warm water is below; textbook"};
inline constexpr Constant kAiredStart{5.0, 5.0, 5.0, "g/m^3",
    "oxygen at top and bottom, above which cool water starts well; common practice, no source"};

// Doubts about a profile.
inline constexpr Constant kThinAir{0.9, 0.9, 0.9, "-",
    "saturation over sea level's, under which thin air is said: from about 900 m up; judgement"};
inline constexpr Constant kSupersaturated{1.2, 1.2, 1.2, "-",
    "oxygen over saturation, from which on it needs an explanation; judgement"};
inline constexpr Constant kImpossibleShare{2.5, 2.0, 2.5, "-",
    "oxygen over saturation, above which no pond is: fed ponds reach twice on hot afternoons; judgement"};
inline constexpr Constant kPlantChlorophyll{15.0, 15.0, 15.0, "ug/L",
    "under which algae make no such excess; judgement"};
inline constexpr Constant kPlantCover_percent{10.0, 10.0, 10.0, "%",
    "of weeds, under which they make no such excess; judgement"};
inline constexpr Constant kSunAtWork_h{7.0, 7.0, 7.0, "h",
    "of the clock, before which the night has taken what the day made; judgement"};
inline constexpr Constant kSeaLevelLow{0.92, 0.92, 0.92, "-",
    "oxygen over sea level's saturation, from which on water may be aired; judgement"};
inline constexpr Constant kSeaLevelHigh{1.04, 1.04, 1.04, "-", "up to which; judgement"};
inline constexpr Constant kInversion{0.3, 0.3, 0.3, "K", "twice a meter's error; judgement"};
inline constexpr Constant kSalinityError{0.02, 0.02, 0.02, "-", "of a reading; judgement"};
inline constexpr Constant kLayerOxygen{2.0, 2.0, 2.0, "g/m^3",
    "a fall that overturned water would not keep; judgement"};
inline constexpr Constant kUniformTemperature{0.5, 0.5, 0.5, "K",
    "from coldest to warmest, under which a profile has one temperature; judgement"};
inline constexpr Constant kOxygenStep{4.0, 4.0, 4.0, "g/m^3",
    "between two neighbouring depths, from which on there is a layer; judgement"};
inline constexpr Constant kTellingSulfide{0.2, 0.2, 0.2, "g/m^3",
    "less is not told from none with a kit; judgement"};
inline constexpr Constant kBottleOxygen{0.5, 0.5, 2.0, "g/m^3",
    "what a sample takes on in a plain bottle, at least; common practice, no source"};

// What fish meet.
inline constexpr Constant kSulfideCriterion{2e-3, 2e-3, 2e-3, "g H2S/m^3",
    "as the mean of four days; EPA, Quality Criteria for Water (1986), from memory"};
inline constexpr Constant kSulfideHour{10e-3, 5e-3, 20e-3, "g H2S/m^3", "in any hour; judgement"};

// Readings and the sun.
inline constexpr Constant kDawnReading_h{2.0, 2.0, 2.0, "h",
    "from sunrise, within which a reading is the dawn's that a pond is balanced to; judgement"};
inline constexpr Constant kCivilHeight_deg{-6.0, -6.0, -6.0, "deg", "of the sun at civil dusk; definition"};
inline constexpr Constant kNauticalHeight_deg{-12.0, -12.0, -12.0, "deg", "at nautical dusk; definition"};

// A pond's usual year.
inline constexpr int kEveningBefore_min = 6 * 60;  // before midnight: profiles are of 18:00; judgement
inline constexpr int kMostOpenDays = 365;               // without ice
inline constexpr Constant kYearScale{4.0, 2.0, 10.0, "-",
    "by which the debt of a computed year is scaled up or down at most, to be the pond's on the day of its profile; "
    "judgement"};
inline constexpr Constant kYearDebtBand{2.2, 1.5, 4.0, "-",
    "5 and 95 % points of a month's debt, over and under it; as wide as the trade's table of unknown ponds, judgement"};
// clang-format on

}  // namespace engine
