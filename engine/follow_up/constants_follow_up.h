#pragma once

#include "engine/water/constant.h"

namespace engine {
// clang-format off

// Thresholds by which readings, mornings, incidents and changes are judged.

// A morning's readings.
inline constexpr Constant kOneMorning_h{3.0, 3.0, 3.0, "h",
    "about sunrise, or before a question, within which readings belong together; judgement"};
inline constexpr Constant kBottomReading{0.5, 0.5, 0.5, "-",
    "of the pond's depth, from which on the deepest reading is the bottom's; judgement"};
inline constexpr Constant kFromTen_h{9.0, 9.0, 9.0, "h",
    "of the clock, earliest reading of about 10:00; judgement"};
inline constexpr Constant kUntilTen_h{11.5, 11.5, 11.5, "h", "its latest; judgement"};

// Stops.
inline constexpr Constant kStop_d{1.5, 1.5, 1.5, "d",
    "since air last ran, from which on it was off for more than a day; judgement"};
inline constexpr Constant kReducedStart{0.25, 0.25, 0.25, "-",
    "of the minutes, after a stop of some days; common practice, no source"};
inline constexpr Constant kAfterStop{0.25, 0.25, 0.25, "-",
    "of the minutes that ran last, after the verdict to stop; common practice, no source"};

// The evening's line of two readings: Francis-Floyd, Dissolved Oxygen for Fish Production, University of
// Florida, second hand. Hours of the clock.
inline constexpr Constant kFirstDusk_h{17.5, 17.5, 17.5, "h", "nearest to which the first is; Francis-Floyd"};
inline constexpr Constant kFirstDuskFrom_h{16.0, 16.0, 16.0, "h", "its earliest; judgement"};
inline constexpr Constant kFirstDuskTo_h{19.0, 19.0, 19.0, "h", "its latest; judgement"};
inline constexpr Constant kSecondDusk_h{21.0, 21.0, 21.0, "h",
    "nearest to which the second is; Francis-Floyd"};
inline constexpr Constant kSecondDuskFrom_h{19.5, 19.5, 19.5, "h", "its earliest; judgement"};
inline constexpr Constant kSecondDuskTo_h{23.0, 23.0, 23.0, "h", "its latest; judgement"};
inline constexpr Constant kDuskApart_h{2.0, 2.0, 2.0, "h", "between the two, at least; judgement"};
inline constexpr Constant kLineEnds_h{7.0, 7.0, 7.0, "h",
    "of the dawn, to which the line is drawn; no source"};
inline constexpr Constant kOneProfile_h{0.25, 0.25, 0.25, "h",
    "on either side, within which readings of several depths are of one time; judgement"};

// Errors of meter and model.
inline constexpr Constant kFivePercent{1.645, 1.645, 1.645, "sigma", "to 5 and 95 % of a normal; definition"};
inline constexpr Constant kModelOxygen{0.5, 0.4, 0.5, "g/m^3",
    "1 sigma of a member's fish water at dawn, on top of the members; published dawn skill, Madenjian and "
    "others (1987)"};
inline constexpr Constant kModelTemperature{0.8, 0.8, 0.8, "K", "1 sigma, as well; judgement"};
inline constexpr Constant kMeterTemperature{0.2, 0.2, 0.2, "K", "1 sigma; common practice, no source"};
inline constexpr Constant kBeyondNoise{1.75, 1.75, 1.75, "-",
    "root mean square of residuals over sigma, above which pond and model disagree; noise passes it once in "
    "100 times with 5 readings, less often with more; judgement"};
inline constexpr Constant kLevelBeyondNoise{2.58, 2.58, 2.58, "sigma",
    "of an offset common to all readings, that is taken for as much: noise passes it once in 100 times"};
inline constexpr Constant kFactorSpread{0.25, 0.25, 0.25, "-",
    "1 sigma of the logarithms of the balance's factors: it takes the day before for a usual one, and days "
    "of a week differ by a factor of about 1.3 in light; judgement"};

// An incident.
inline constexpr Constant kIncidentAhead_h{24.0, 24.0, 24.0, "h", "of which the lowest is said; judgement"};
inline constexpr Constant kLongestRecovery_h{48.0, 48.0, 48.0, "h",
    "within which the line must be reached for good; judgement"};
inline constexpr Constant kStaysAbove_h{3.0, 3.0, 3.0, "h",
    "before its end, to count as for good; judgement"};
inline constexpr Constant kEmergency_kWPerHa{2.5, 1.8, 3.7, "kW/ha",
    "of a surface aerator for an emergency where the pond has none; common practice, no source"};
inline constexpr Constant kStratified{2.0, 2.0, 2.0, "K",
    "from top to bottom, above which a pond is stratified; common practice, no source"};
inline constexpr Constant kIceWater{1.0, 0.0, 1.0, "degC",
    "surface water, up to which there may be ice; judgement"};

// What a user may say of the coming night's sky.
inline constexpr Constant kClearOutlook_percent{10.0, 10.0, 10.0, "%", "cloud of a clear sky; judgement"};
inline constexpr Constant kHalfOutlook_percent{50.0, 50.0, 50.0, "%", "of a half cloudy one; definition"};
inline constexpr Constant kDullOutlook_percent{95.0, 95.0, 95.0, "%", "of a dull one; judgement"};
inline constexpr Constant kCalmOutlook{1.0, 0.0, 1.5, "m/s",
    "wind of a calm day, under the 1.5 at which the hold rules call it calm; judgement"};

// A review.
inline constexpr Constant kSecchiNoise{0.2, 0.15, 0.25, "-",
    "1 sigma of the depth, from day to day; common practice, no source"};
inline constexpr Constant kKillTakes_d{3.0, 3.0, 3.0, "d", "over which treated algae die; judgement"};
inline constexpr Constant kCopperAlkalinity{50.0, 50.0, 50.0, "g/m^3 as CaCO3",
    "under which copper harms fish; University of Kentucky, second hand"};
inline constexpr Constant kLeastDawnForCopper{5.0, 5.0, 5.0, "g/m^3",
    "asked for before algae or weeds are killed; common practice, no source"};

// Faults of sensors; common practice and judgement.
inline constexpr Constant kStuck_h{3.0, 3.0, 3.0, "h", "of one number, from which on it is stuck; judgement"};
inline constexpr Constant kNoOxygen{0.1, 0.1, 0.1, "g/m^3",
    "up to which water has none, and may stay so; judgement"};
inline constexpr Constant kStepDrop{2.0, 2.0, 2.0, "g/m^3",
    "in one step, from which on it is one; judgement"};
inline constexpr Constant kDropIsOver{1.0, 1.0, 1.0, "g/m^3",
    "within this of the reading before the drop; judgement"};
inline constexpr Constant kOneStep_h{1.0, 1.0, 1.0, "h", "the longest step between two readings; judgement"};
inline constexpr Constant kComesBack_h{6.0, 6.0, 6.0, "h",
    "after which a pond that stays low has turned over; judgement"};
inline constexpr Constant kAirStep{3.0, 3.0, 3.0, "K", "in one step, out of the water; judgement"};
inline constexpr Constant kNearSaturation{0.07, 0.07, 0.07, "-", "off saturation, in the air; judgement"};
inline constexpr Constant kDrift{0.5, 0.5, 0.5, "g/m^3",
    "against another meter, above which it is one; judgement"};
inline constexpr Constant kDriftCorrelation{0.9, 0.9, 0.9, "-",
    "of the difference with time, above which it is one; judgement"};
inline constexpr Constant kDriftSpan_d{2.0, 2.0, 2.0, "d", "of the pairs that show it, at least; judgement"};
inline constexpr Constant kSamePair{0.25, 0.25, 0.25, "m",
    "apart at most, readings of two meters; judgement"};
inline constexpr Constant kSamePair_min{30.0, 30.0, 30.0, "min", "as well; judgement"};
inline constexpr Constant kSamePlace{0.05, 0.05, 0.05, "m", "apart at most, values for one depth; judgement"};
inline constexpr Constant kSameTime_min{2.0, 2.0, 2.0, "min", "apart at most, values of one time; judgement"};
inline constexpr Constant kDisagreement{3.0, 3.0, 3.0, "sigma",
    "of a meter in good order, above which two values disagree; judgement"};
// clang-format on

}  // namespace engine
