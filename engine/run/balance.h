#pragma once

#include "engine/run/member_pack.h"
#include "engine/run/run.h"

#include <Eigen/Core>

#include <array>
#include <optional>
#include <span>
#include <stop_token>

namespace engine {

// The balance: before any ramp is judged, a pond is brought to hold itself. Two usual days without air are
// run from the profile, and respiration, photosynthesis and wind are scaled so that the water a day and two
// days later is that of the profile, and the first dawn that of a dawn reading, as nearly as their priors and
// the meters allow: least squares, by Gauss and Newton's method. A logger that was read on several nights
// before tells more than one dawn: the water is to lose by the dawn and to gain by the evening what it mostly
// did at that depth. Then the books of labile matter are closed
// (engine/run/organic_books.h). The same for the central run and for each member.

/// What was read before the start, at one depth and hour, and the balance leads a pond to.
struct BalanceReading {
    MaybeQuantity oxygen;   ///< Nothing where it was not read [g/m^3]
    bool isChange = false;  ///< Since the profile's hour, a mean of several days
    double time = 0.0;      ///< In the day after the profile [s after midnight of day 1]
    double depth = 0.0;     ///< [m]
};
enum BalanceReadingOf { kOfDawn, kOfEvening, kBalanceReadings };
using BalanceTarget = std::array<BalanceReading, kBalanceReadings>;

/// By the logger where it was read on kNightsOfLogger nights at a depth, dawns and evenings, within
/// kDaysOfLogger days before the profile; else by the last dawn reading, if there is one.
[[nodiscard]] BalanceTarget balanceTarget(const PondModel& model);

/// What is read, one a reading.
[[nodiscard]] ReadOxygen readOxygen(const BalanceTarget& target);

/// The last reading before day 1 that is a dawn's, with depth and oxygen.
[[nodiscard]] std::optional<Reading> dawnReading(const PondModel& model);

inline constexpr double kLeastBalance = 0.1;      ///< Factors are searched from here ...
inline constexpr double kGreatestBalance = 10.0;  ///< ... to here

/// What is searched, as logarithms.
enum BalanceUnknown { kRespirationFactor, kGrowthFactor, kWindFactor, kBalanceUnknowns };
/// What of a day is held against the profile.
enum BalanceRow {
    kOxygenAbove,
    kOxygenSurface,
    kOxygenMetre,
    kWarmSurface,
    kWarmMetre,
    kWarmBottom,
    kRowsOfDay
};
inline constexpr int kBalanceDays = 2;
inline constexpr int kReadingRow = kBalanceDays * kRowsOfDay;  ///< The first of those of BalanceTarget
inline constexpr int kBalanceRows = kReadingRow + kBalanceReadings;

/// How the rows [g/m^3], [K] go with the logarithms of the factors.
using BalanceSlopes = Eigen::Matrix<double, kBalanceRows, kBalanceUnknowns>;

/// Those of the central run at the factors that it has, with which each member is searched; of no use once a
/// stop was asked for.
[[nodiscard]] BalanceSlopes balanceSlopes(const PondModel& model, const std::stop_token& stop = {});

/// What a day after the profile is off by, at its worst [g/m^3], [K]; model minus profile.
struct BalanceMiss {
    double oxygen = 0.0, temperature = 0.0;
};

/// Finds the balance of each member of a pack and puts it into its parameters, starting from the factors that
/// the members have and with the slopes as they are, each lane for itself.
/// @param read  What each lane's readings are; unused where the pond has none.
/// @param miss  Each lane's; empty if not wanted.
template <class Real>
void balancePack(const PondModel& model, const BalanceSlopes& slopes, std::span<const ReadOxygen> read,
                 MemberPack<Real>& pack, std::span<BalanceMiss> miss, const std::stop_token& stop);

/// What the balance found for one pond.
struct BalanceFactors {
    double respiration = 1.0, photosynthesis = 1.0, wind = 1.0;
    double load = 0.0, settling = 0.0, loss = 0.0, weedsGive = 0.0;  ///< As in OrganicParameters
};
template <class Real>
[[nodiscard]] BalanceFactors factorsOf(const Parameters<Real>& p, int k) {
    return {lane(p.respiration.factor, k), lane(p.growth.factor, k),    lane(p.surface.windFactor, k),
            lane(p.organic.load, k),       lane(p.organic.settling, k), lane(p.organic.loss, k),
            lane(p.organic.weedsGive, k)};
}
inline void setFactors(Parameters<double>& p, const BalanceFactors& factors) {
    p.respiration.factor = factors.respiration;
    p.growth.factor = factors.photosynthesis;
    p.surface.windFactor = factors.wind;
    p.organic.load = factors.load;
    p.organic.settling = factors.settling;
    p.organic.loss = factors.loss;
    p.organic.weedsGive = factors.weedsGive;
}

}  // namespace engine
