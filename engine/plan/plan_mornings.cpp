#include "engine/plan/plan_mornings.h"

#include "engine/plan/plan_search.h"
#include "engine/run/shares.h"
#include "engine/water/layering.h"

#include <algorithm>
#include <vector>

namespace engine {

bool heedsCaps(const PondModel& model, const RampRun& run, int days, const DawnLimits& limits) {
    const std::optional<double> ratio = debtToReserve(model);
    if (!model.bottom.exists() || !ratio) {
        return true;
    }
    const int count = std::min(days, static_cast<int>(run.days.size()));
    for (int day = 1; day <= count; ++day) {
        const DayRow* before = day > 1 ? &run.days[static_cast<std::size_t>(day - 2)] : nullptr;
        const bool isMixed =
            before != nullptr && isMixedAtDawn(before->dawnTopMinusBottom, before->dawnBottom);
        const auto cap = doseCap(before != nullptr ? *ratio * before->debtLeft : *ratio, isMixed, limits);
        if (cap && doseOf(model, run.days[static_cast<std::size_t>(day - 1)]) > *cap) {
            return false;
        }
    }
    return true;
}

bool isLeftByMornings(const PondModel& model, const PlanMornings& mornings, std::span<const DayAction> days,
                      ClockTime start, std::optional<int> standsUntil, const std::stop_token& stop) {
    const std::size_t first = mornings.firstDays.size();
    for (std::size_t i = 0; i < std::min(first, days.size()); ++i) {
        if (days[i].minutes != mornings.firstDays[i]) {
            return false;
        }
    }
    if (mornings.most && days.size() > first && days[first].minutes > *mornings.most) {
        return false;
    }
    if (!model.bottom.exists()) {
        return true;
    }
    RunRequest request;
    request.days = standsUntil.value_or(static_cast<int>(days.size()));
    request.keepLayers = false;
    const std::vector<DayAction> actions(days.begin(), days.end());
    request.schedule = scheduleOf(actions, start, *model.pond.aerator, request.days);
    const Ramp ramp = rampOf(actions, start);
    return heedsCaps(model, runRamp(model, &ramp, request, {stop, {}}), request.days, mornings.limits);
}

}  // namespace engine
