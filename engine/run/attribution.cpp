#include "engine/run/attribution.h"

#include "engine/base/units.h"

#include <algorithm>

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

bool isZero(const std::vector<double>& values) {
    return std::all_of(values.begin(), values.end(), [](double value) { return value == 0.0; });
}

/// True where leaving the thing out leaves the run as it is, to the bit.
bool wouldChangeNothing(const PondModel& model, const RampRun& run, CauseKind kind) {
    const Parameters<double>& p = model.parameters;
    const StartState<double>& start = model.start;
    switch (kind) {
        case CauseKind::BottomDebt:
            return isZero(start.fast) && isZero(start.medium) && isZero(start.slow) && isZero(start.sulfide);
        case CauseKind::BottomDeficit: {
            PondModel filled = model;
            fillBottomOxygen(filled);
            return filled.start.oxygen == start.oxygen;
        }
        case CauseKind::StirredMuck:
            return p.muck.store == 0.0 || run.schedule.empty();
        case CauseKind::SedimentDemand:
            return p.sediment.demand == 0.0;
        case CauseKind::AlgalRespiration:
            return p.respiration.perChlorophyll == 0.0 && (p.weeds.respiration == 0.0 || p.weeds.mass == 0.0);
        case CauseKind::Fish:
            return p.fish.stock == 0.0;
        case CauseKind::Weather:
            return false;
        case CauseKind::Dying:
            return model.pond.water.changes.empty();
    }
    return false;
}

}  // namespace

double gainWithout(const PondModel& model, const Ramp* ramp, const RampRun& run, CauseKind kind, int night) {
    if (wouldChangeNothing(model, run, kind)) {
        return 0.0;
    }
    PondModel changed = model;
    RunRequest request;
    request.days = static_cast<int>(run.days.size());
    request.keepLayers = false;
    request.schedule = run.schedule;
    request.stopAfterNight = night;
    Parameters<double>& p = changed.parameters;
    switch (kind) {
        case CauseKind::BottomDebt:
            for (auto* demandFraction :
                 {&changed.start.fast, &changed.start.medium, &changed.start.slow, &changed.start.sulfide}) {
                demandFraction->assign(demandFraction->size(), 0.0);
            }
            break;
        case CauseKind::BottomDeficit:
            fillBottomOxygen(changed);
            break;
        case CauseKind::StirredMuck:
            p.muck.store = 0.0;
            break;
        case CauseKind::SedimentDemand:
            p.sediment.demand = 0.0, p.organic.mudDecay = 0.0;
            break;
        case CauseKind::AlgalRespiration:
            p.respiration.perChlorophyll = 0.0, p.weeds.respiration = 0.0;
            p.organic.maintenance = p.organic.breathedAtOnce = 0.0;
            break;
        case CauseKind::Fish:
            p.fish.stock = 0.0;
            break;
        case CauseKind::Weather:
            request.weather.usualThroughout = true;
            break;
        case CauseKind::Dying:
            changed.pond.water.changes.clear();
            break;
    }
    const RampRun without = runRamp(changed, ramp, request);
    return without.days[night - 1].lowest - run.days[night - 1].lowest;
}

}  // namespace engine
