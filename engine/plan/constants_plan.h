#pragma once

#include "engine/water/constant.h"

namespace engine {
// clang-format off

// Thresholds of the rules of a morning, of stops, end states and worse weather.

// Fish water at dawn by group: at least the first to go on, at least the second to hold, at least the third
// to go back; under it to stop. A pond file's [dawn_rules] stand before them. Sport and percid:
inline constexpr Constant kSportGo{5.0, 5.0, 5.0, "g/m^3", "common practice, no source"};
inline constexpr Constant kSportHold{4.0, 4.0, 4.0, "g/m^3", "common practice, no source"};
inline constexpr Constant kSportBack{3.0, 3.0, 3.0, "g/m^3", "common practice, no source"};
// Catfish and carp:
inline constexpr Constant kCatfishGo{4.0, 4.0, 4.0, "g/m^3", "common practice, no source"};
inline constexpr Constant kCatfishHold{3.0, 3.0, 3.0, "g/m^3", "common practice, no source"};
inline constexpr Constant kCatfishBack{2.5, 2.5, 2.5, "g/m^3", "common practice, no source"};
inline constexpr Constant kKoiGo{6.0, 6.0, 6.0, "g/m^3", "common practice, no source"};
inline constexpr Constant kKoiHold{5.0, 5.0, 5.0, "g/m^3", "judgement"};
inline constexpr Constant kKoiBack{4.0, 4.0, 4.0, "g/m^3", "judgement"};
inline constexpr Constant kTroutGo{7.0, 7.0, 7.0, "g/m^3", "common practice, no source"};
inline constexpr Constant kTroutHold{6.0, 6.0, 6.0, "g/m^3", "common practice, no source"};
inline constexpr Constant kTroutBack{5.0, 5.0, 5.0, "g/m^3", "common practice, no source"};
inline constexpr Constant kGoSaturation{0.8, 0.8, 0.8, "-",
    "of saturation, above which no limit to go on is; judgement"};
inline constexpr Constant kFallHold{1.0, 1.0, 1.0, "g/m^3",
    "fall of the fish water, above which to hold; common practice, no source"};
inline constexpr Constant kFallBack{2.0, 2.0, 2.0, "g/m^3",
    "fall in one night, above which to go back; common practice, no source"};
inline constexpr Constant kMorningRise{1.0, 1.0, 1.0, "g/m^3",
    "of the surface's oxygen from dawn to 10:00, at least; common practice, no source"};
inline constexpr Constant kFirstDose_percent{10.0, 5.0, 10.0, "% of the bottom water",
    "of the first day of a road, at most; common practice, no source"};
inline constexpr Constant kBeforeSunset_h{4.0, 3.0, 4.0, "h",
    "by which a run ends while the bottom water is lifted in doses; common practice, no source"};
inline constexpr Constant kLoweringStep{0.3, 0.3, 0.5, "m",
    "by which diffusers are lowered after two days; common practice, no source"};
// The bounds of the debt's ratio between them are those of triage (engine/run/constants_run.h).
inline constexpr Constant kDoseHigh_percent{15.0, 10.0, 15.0, "% of the bottom water a day",
    "at most, where the debt is high; common practice, no source"};
inline constexpr Constant kDoseMiddle_percent{25.0, 25.0, 25.0, "% of the bottom water a day",
    "at most, where a ramp is needed; common practice, no source"};

// Stops.
inline constexpr Constant kFewDays{4.0, 3.0, 5.0, "d",
    "without air in warm water, up to which it goes on as before; common practice, no source"};
inline constexpr Constant kManyDays{14.0, 14.0, 14.0, "d",
    "above which the whole ramp is run again; common practice, no source"};
inline constexpr Constant kCoolBottom{12.0, 12.0, 12.0, "degC",
    "bottom water, under which debt gathers slowly; common practice, no source"};
inline constexpr Constant kCoolSlowness{2.0, 2.0, 2.0, "-",
    "times as many days there: what four warm days gather takes as much longer as the sediment is slower, "
    "and twice is kept to; judgement"};

// Lows and end states.
inline constexpr Constant kNoWorse{0.2, 0.2, 0.2, "g/m^3",
    "a low that is lower by no more is no worse, one that is higher by more is better: lows are computed to "
    "within it (tests/property/targets_test.cpp)"};
inline constexpr Constant kClearedDebt{0.1, 0.1, 0.1, "-",
    "of the debt at the start; with less left it is cleared; judgement"};
inline constexpr Constant kHopelessShare{0.25, 0.25, 0.25, "-",
    "of members harmed in the last nights, above which no ramp is looked for; judgement"};
inline constexpr Constant kShallowestDiffuser{0.5, 0.5, 0.5, "m",
    "higher up bubbles stir the surface and lift next to nothing; judgement"};
inline constexpr Constant kAboveBottomWater{0.1, 0.1, 0.1, "m",
    "of a diffuser that is to lift none of it; judgement"};

// Worse weather: a day without sun or wind, a cold front, and days without sun or wind that are hot.
inline constexpr Constant kOvercastCloud_percent{95.0, 95.0, 95.0, "%", "at least; judgement"};
inline constexpr Constant kOvercastWind{0.8, 0.8, 0.8, "m/s", "at most; judgement"};
inline constexpr Constant kOvercastCooler{4.0, 4.0, 4.0, "K", "of the greatest air; judgement"};
inline constexpr Constant kOvercastOverClear{0.35, 0.33, 0.37, "-",
    "of clear light: FAO-56's 0.25 + 0.5 (1 - cloud) over 0.75, at 95 to 100 % of cloud"};
inline constexpr Constant kFrontCloud_percent{80.0, 80.0, 80.0, "%", "at least; judgement"};
inline constexpr Constant kFrontWind{6.0, 6.0, 6.0, "m/s", "at least; judgement"};
inline constexpr Constant kFrontCooler{8.0, 8.0, 8.0, "K", "air all day; judgement"};
inline constexpr Constant kFrontLight{0.45, 0.45, 0.47, "-", "of clear light, FAO-56's at 80 % of cloud"};
inline constexpr Constant kDullSpellDays{3.0, 3.0, 3.0, "d",
    "dull, hot and calm in a row; common practice, no source"};
inline constexpr Constant kDullSpellWarmer{3.0, 2.0, 4.0, "K", "air all day; judgement"};
inline constexpr Constant kAfterDullSpell{2.0, 1.0, 3.0, "nights",
    "after it that still count: a pond that made little oxygen for days is lowest at its end; judgement"};
inline constexpr Constant kLeastSwing{1.0, 1.0, 1.0, "K",
    "between a day's least and greatest air; judgement"};
// clang-format on

}  // namespace engine
