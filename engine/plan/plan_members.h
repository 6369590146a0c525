#pragma once

#include "engine/base/lane.h"
#include "engine/ensemble/ensemble.h"
#include "engine/plan/plan.h"
#include "engine/run/run.h"

#include <limits>
#include <span>
#include <vector>

namespace engine {

/// All members at one moment under one schedule.
struct MembersRunState {
    double time = 0.0;  ///< [s after midnight of day 1]
    std::vector<PackRunState<Lanes>> packs;
};

/// In how many members a schedule does harm over the nights so far. Each is one member at most.
struct HarmCount {
    int members = 0;
    int addedStress = 0;  ///< Below the stress line at some time, but not in do-nothing
    int addedLethal = 0;  ///< The same for the lethal line
    int deepened =
        0;        ///< On some night below the stress line and lower than do-nothing's by more than kNoWorse
    int any = 0;  ///< Any of the three: what a plan is held to
};

/// Members of a plan's search, drawn once, on which schedules are tried: do-nothing beside each, going on
/// from any midnight. The same bits for any number of threads.
class PlanMembers {
public:
    /// Draws and balances the members and runs do-nothing. After a stop it is not ready.
    PlanMembers(const PondModel& model, int members, int days, std::uint64_t seed, int threads,
                const std::stop_token& stop);

    [[nodiscard]] bool isReady() const { return m_ready; }
    [[nodiscard]] int members() const { return static_cast<int>(m_members.size()); }
    [[nodiscard]] int days() const { return m_days; }
    [[nodiscard]] const PondModel& model() const { return m_model; }

    /// Before anything has run.
    [[nodiscard]] MembersRunState start() const;

    /// Runs members on under a schedule, and surface air if there is some, until a whole hour.
    [[nodiscard]] MembersRunState run(const MembersRunState& from, const Schedule& schedule, double until,
                                      const SurfaceAir& surfaceAir = {}) const;

    /// Harm over the nights `firstNight` to `lastNight` (1 is the first) against do-nothing.
    [[nodiscard]] HarmCount harm(const MembersRunState& at, int firstNight, int lastNight) const;

    /// The time that closes a night, its noon.
    [[nodiscard]] static double endOfNight(int night);

    /// Members times days that were run so far: what a search costs, whatever the machine.
    [[nodiscard]] double memberDays() const { return m_memberDays; }
    /// As many as a search may take; without a call, any number.
    void allow(double memberDays) { m_allowed = memberDays; }
    [[nodiscard]] bool isSpent() const { return m_memberDays >= m_allowed; }

private:
    [[nodiscard]] MembersRunState runPlan(const MembersRunState& from, const EnsembleRamp& ramp,
                                          double until) const;

    const PondModel& m_model;
    int m_days;
    int m_threads;
    std::stop_token m_stop;
    bool m_ready = false;
    std::vector<WeatheredMember> m_members;
    std::vector<MemberPack<Lanes>> m_packs;
    MembersRunState m_nothing;
    mutable double m_memberDays = 0.0;
    double m_allowed = std::numeric_limits<double>::infinity();
};

}  // namespace engine
