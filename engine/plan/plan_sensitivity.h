#pragma once

#include "engine/plan/plan.h"
#include "engine/plan/plan_members.h"

#include <stop_token>
#include <vector>

namespace engine {

/// Members that a ramp takes below a line at some time and do-nothing does not, of as many of equal weight as
/// tell as much.
[[nodiscard]] CountedChance addedBelow(const EnsembleResult& ensemble, std::size_t ramp, double line);

/// Days against added chance: the file's ramps and the planned one, on fresh draws.
[[nodiscard]] std::vector<TradeOffPoint> fileTradeOff(const Plan& plan);

/// The same for ramps whose minutes grow by one factor a day to a sustained schedule, from half an hour: at
/// once, within a few days, within a week; on the draws of the search.
[[nodiscard]] std::vector<TradeOffPoint> searchTradeOff(const PlanMembers& members,
                                                        const DayAction& sustainedAction, ClockTime start,
                                                        const std::stop_token& stop);

/// How slow is too slow: the debt that constant daily runs at the file's depth leave, central run under the
/// usual day. Empty without debt.
[[nodiscard]] std::vector<SlowPoint> slowSensitivity(const PondModel& model, int threads,
                                                     const std::stop_token& stop);

/// True if a run takes un-ionised ammonia or hydrogen sulfide where the fish are above its limit
/// (engine/run/gas_limits.h), and further than without the new aerator.
[[nodiscard]] bool addsToxicants(const PondModel& model, const RampRun& run, const RampRun& nothing);

}  // namespace engine
