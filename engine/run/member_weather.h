#pragma once

#include "engine/base/lane.h"
#include "engine/pond/pond.h"
#include "engine/ramps/weather.h"

#include <span>
#include <vector>

namespace engine {

/// How the weather of the members scatters about the pond file's on one day (1 sigma).
struct WeatherScatter {
    double air = 0.0;      ///< [degC]
    double logWind = 0.0;  ///< Of its logarithm
    double cloud = 0.0;    ///< Share of sky
};

/// Scatter by day from `firstDay` to `lastDay` (all judgement): up to day 1 that of a forecast,
/// air 1.5 degC, wind a factor of 1.35 and cloud 0.20; from day 6 on that of the table's days about the usual
/// day, where that is more; between them in equal steps. None for observed weather.
/// @param lastDay  Days after it have none (end state: usual days).
[[nodiscard]] std::vector<WeatherScatter> weatherScatter(const Pond& pond, int firstDay, int lastDay);

/// What sets the weather of a member off on one day.
struct WeatherOffset {
    double air = 0.0;         ///< Added at noon [degC]; between two noons it goes linearly
    double windFactor = 1.0;  ///< All day, the member's sheltering in it
    double cloud = 0.0;       ///< Added all day, share of sky
};

/// Correlation of the scores of a quantity on two days that follow each other (judgement).
inline constexpr double kDayToDay = 0.6;
/// Scores that a day takes: air, wind, cloud.
inline constexpr int kWeatherScores = 3;

/// Offsets by day, as many as there are of scatter.
/// @param scores      Standard normal, kWeatherScores a day, independent.
/// @param windFactor  Of the member's sheltering.
[[nodiscard]] std::vector<WeatherOffset> weatherOffsets(std::span<const WeatherScatter> scatter,
                                                        std::span<const double> scores, double windFactor);

/// Offsets of the members of a pack on one day.
template <class Real>
struct PackOffset {
    Real air = 0.0, windFactor = 1.0, cloud = 0.0;
};

/// The air over members whose weather is set off: light by FAO-56's 0.25 + 0.50 (1 - cloud) of the new cloud
/// over the old, clouds kept within 0 to 1, vapour pressure so that the relative humidity stays.
/// @param day        Of the calendar.
/// @param airOffset  At this moment [degC].
template <class Real>
struct MemberForcing {
    Real shortwave, air, vapourPressure, wind10, cloud;
};
template <class Real>
[[nodiscard]] MemberForcing<Real> memberForcing(const Forcing& central, const PackOffset<Real>& day,
                                                const Real& airOffset) {
    MemberForcing<Real> out;
    out.cloud = min(max(central.cloud + day.cloud, Real(0.0)), Real(1.0));
    out.shortwave = (0.75 - 0.5 * out.cloud) * (central.shortwave / (0.75 - 0.5 * central.cloud));
    out.air = central.air + airOffset;
    // d ln(saturation pressure)/dT of Tetens' equation at the old temperature, FAO-56 equation 13.
    const double slope = 17.27 * 237.3 / ((central.air + 237.3) * (central.air + 237.3));
    out.vapourPressure = central.vapourPressure * rateExp(min(max(slope * airOffset, Real(-2.0)), Real(2.0)));
    out.wind10 = day.windFactor * central.wind10;
    return out;
}

}  // namespace engine
