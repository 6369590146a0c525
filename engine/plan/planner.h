#pragma once

#include "engine/base/parallel.h"
#include "engine/plan/plan.h"
#include "engine/plan/plan_members.h"
#include "engine/plan/plan_road.h"
#include "engine/plan/plan_search.h"
#include "engine/run/run.h"

#include <array>
#include <map>
#include <memory>
#include <optional>
#include <vector>

namespace engine {

/// The work of makePlan(): before the start roads (engine/plan/plan_road.h, planner_roads.cpp), under way
/// climbs from where the pond is (planner_candidates.cpp).
class Planner {
public:
    Planner(const Pond& pond, const PlanOptions& options, const RunControl& control)
        : m_pond(pond), m_options(options), m_control(control), m_threads(threadsFor(options.threads)) {}

    Plan go();

private:
    void prepareModels();
    void findEndStates();
    [[nodiscard]] std::vector<int> heldDays(const DayAction& sustainedAction) const;
    [[nodiscard]] std::vector<Ladder> laddersTo(const SustainedSchedule& target) const;
    [[nodiscard]] std::vector<DayAction> firstDays() const;
    [[nodiscard]] bool isAllowed(const std::vector<DayAction>& days, ClockTime start, bool stands) const;
    /// The search's members, or the scouts among them.
    [[nodiscard]] const PlanMembers& draws(int days, bool scouts);
    [[nodiscard]] std::optional<Candidate> atOnce(const PlanMembers& members, const SustainedSchedule& target,
                                                  int budget, bool& isHopeless) const;
    [[nodiscard]] std::optional<Candidate> bestClimb(const SustainedSchedule& target, int days, int budget);
    [[nodiscard]] std::optional<Candidate> candidateFor(const SustainedSchedule& target, bool mayClimb,
                                                        int budget);
    [[nodiscard]] bool isGoodOnOwnDraws(const Candidate& candidate, ClockTime start);
    [[nodiscard]] const Comparison& searchDraws(int nights);
    [[nodiscard]] bool isGoodOnSearchDraws(const Road& road);
    [[nodiscard]] bool takeRoad(const RoadGround& ground, std::size_t target, double surfaceAir);
    void searchRoads(const std::vector<std::size_t>& order);
    void climbTo(const std::vector<std::size_t>& order);
    void search();
    void report();
    void saySoFar(const PlanSoFar& found) {
        if (m_options.soFar && (found.harm || !m_isFirstSaid)) {
            m_isFirstSaid = true;
            m_options.soFar(found);
        }
    }
    void sayProgress(double share) const {
        if (m_control.progress) {
            m_control.progress(share);
        }
    }
    [[nodiscard]] bool isStopped() const { return m_control.stop.stop_requested(); }

    const Pond& m_pond;
    const PlanOptions& m_options;
    const RunControl& m_control;
    int m_threads = 1;
    PondModel m_model, m_rough;
    RampRun m_nothing;
    std::array<std::unique_ptr<PlanMembers>, 4> m_draws;  // Of two and four weeks; scouts of the same
    std::unique_ptr<PlanMembers> m_own;
    std::map<int, Comparison> m_searchDraws;  // Do-nothing on the search's draws, by nights
    bool m_isFirstSaid = false;
    Plan m_plan;
};

}  // namespace engine
