#pragma once

#include "engine/base/percentile.h"
#include "engine/ramps/schedule.h"
#include "engine/run/balance.h"

#include <cstdint>
#include <string>
#include <vector>

namespace engine {

/// What becomes of one ramp over all members.
struct RampEnsemble {
    std::string name;   ///< As in the central run
    Schedule schedule;  ///< Of all members
    SurfaceAir surfaceAir;
    bool isDoNothing = false;
    std::vector<double> hours;           ///< Start and each whole hour [s after midnight of day 1]
    std::vector<Percentiles> fishWater;  ///< Oxygen of the fish water at those hours [g/m^3]
    std::vector<Percentiles> nightLows;  ///< Its lowest of each night, 1 to N [g/m^3]
    double chanceBelowStress =
        0.0;  ///< Weighted share of members below the line at any step of nights 1 to N
    double chanceBelowLethal = 0.0;
    double plainBelowStress = 0.0, plainBelowLethal = 0.0;  ///< The same without weights
    std::vector<float> lowest;                              ///< Of each member, nights 1 to N [g/m^3]
    std::vector<std::uint8_t> isBelowStress;                ///< Of each member
    std::vector<float> endStates;  ///< Of each member [g/m^3]; empty unless asked for
};

enum class EnsembleEnd { NotRun, Completed, Cancelled, NotFinite, Refused };

/// What `runMembers` gives: nothing but the end and its sentence unless it completed.
struct EnsembleResult {
    EnsembleEnd end = EnsembleEnd::NotRun;
    std::string message;  ///< A sentence unless completed
    int asked = 0;        ///< Members asked for
    int members = 0;      ///< As many as ran: more where the past leaves too few of them
    std::uint64_t seed = 1;
    int atFactorEnd = 0;                  ///< Members whose balance came to the end of a factor's range
    std::vector<BalanceFactors> factors;  ///< Of each member; empty if they were not balanced
    /// Of each member, by what is known of the past (engine/ensemble/past.h), their mean 1; empty if all
    /// are 1.
    std::vector<double> weights;
    double effective = 0.0;  ///< As many members of equal weight would tell as much
    /// Share of members for which something holds, weighted. @param holds  One a member.
    [[nodiscard]] double shareOf(const std::vector<std::uint8_t>& holds) const;
    std::vector<RampEnsemble> ramps;  ///< In the order asked for
};

}  // namespace engine
