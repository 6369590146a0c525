#pragma once

#include "engine/plan/plan.h"

#include <algorithm>
#include <optional>
#include <stop_token>
#include <vector>

namespace engine {

/// A way from the first day to a sustained schedule, as its central run has it.
struct Road {
    Ramp ramp;                    ///< Its days in minutes, and its surface air
    std::vector<DayAction> days;  ///< Day 1 to the first of the sustained schedule
    double worst = 0.0;           ///< Lowest computed night [g/m^3]
    [[nodiscard]] int length() const { return static_cast<int>(days.size()); }
};

inline constexpr int kShortestPlanRun = 14, kAfterPlannedRamp = 7;  ///< [d], as of a comparison
inline constexpr int kLongestRoad = 21;                             ///< That is looked for [d]

/// Nights that a road is judged by: 14, or its own days and a week.
[[nodiscard]] inline int nightsOf(int roadDays) {
    return std::max(kShortestPlanRun, roadDays + kAfterPlannedRamp);
}

/// What all roads of a pond go by, made once. The model must outlive it.
struct RoadGround {
    const PondModel& model;
    RampRun nothing;         ///< Left alone, over the nights of the longest road
    std::vector<int> held;   ///< Days of the hold calendar
    double latestEnd = 0.0;  ///< Of a day's run as long as bottom water is lifted in doses [s after midnight]
};
[[nodiscard]] RoadGround roadGround(const PondModel& model, const std::stop_token& stop = {});

/// All roads to a sustained schedule that a central run lets pass, the shortest first and of those the one
/// that is highest at its lowest: doses that stay, and doses that rise as the debt falls; with all diffusers
/// and with one; at the sustained depth, and lowered to it step by step from above the bottom water. On days
/// that the hold calendar names there is no air before the schedule is reached. A road passes if it reaches
/// the schedule within kLongestRoad days, no dawn on it would stop or hold it (haltedByMornings; a step that
/// a dawn would hold waits a day, a few times), and it does not add to ammonia or sulfide above their limits.
/// /// @param surfaceAir  At night: so many times what the refuge needs left alone (refugeAir_kW); 0: none.
[[nodiscard]] std::vector<Road> roadsTo(const RoadGround& ground, const SustainedSchedule& target,
                                        double surfaceAir, int threads, const std::stop_token& stop);

}  // namespace engine
