#include "engine/causes.h"

#include "engine/units.h"

namespace engine {
namespace {

/// The start without the bottom water's lack of oxygen: as much below z_b as the mean above it.
void fillBottomOxygen(PondModel& model) {
    if (!model.bottom.exists()) {
        return;
    }
    const Grid& grid = model.grid;
    double held = 0.0, volume = 0.0;
    for (int i = 0; i < grid.layers(); ++i) {
        if (grid.middle[i] < model.bottom.depth) {
            held += grid.volume[i] * model.start.oxygen[i];
            volume += grid.volume[i];
        }
    }
    for (int i = 0; i < grid.layers(); ++i) {
        if (grid.middle[i] >= model.bottom.depth && volume > 0.0) {
            model.start.oxygen[i] = std::max(model.start.oxygen[i], held / volume);
        }
    }
}

}  // namespace

double gainWithout(const PondModel& model, const Ramp* ramp, const RampRun& run, CauseKind kind, int night) {
    PondModel changed = model;
    RunRequest request;
    request.days = static_cast<int>(run.days.size());
    request.keepLayers = false;
    request.schedule = run.schedule;
    request.stopAfterNight = night;
    Parameters<double>& p = changed.parameters;
    switch (kind) {
        case CauseKind::BottomDebt:
            for (auto* pool : {&changed.start.fast, &changed.start.medium, &changed.start.slow,
                               &changed.start.sulfide, &changed.start.ammonia}) {
                pool->assign(pool->size(), 0.0);
            }
            break;
        case CauseKind::BottomDeficit: fillBottomOxygen(changed); break;
        case CauseKind::StirredMuck: p.muckStore = 0.0; break;
        case CauseKind::SedimentDemand: p.sedimentDemand = 0.0; break;
        case CauseKind::AlgalRespiration: p.respirationPerChlorophyll = 0.0, p.weedRespiration = 0.0; break;
        case CauseKind::Fish: p.fishStock = 0.0; break;
        case CauseKind::Weather: request.weather.usualThroughout = true; break;
        case CauseKind::Dying: changed.pond.water.changes.clear(); break;
    }
    const RampRun without = runRamp(changed, ramp, request);
    return without.days[night - 1].lowest - run.days[night - 1].lowest;
}

}  // namespace engine
