// How a column mixes and moves in a step (engine/column/column.h).
//
// Measured temperatures do not tell closures apart. A column of heat alone with the laws of
// engine/water/constants_heat.h, each stretch from one profile; mean absolute error and bias in K, of a
// pond's chain of loggers over eight days in May 2020 and of a reservoir's profiles over 24 stretches of 7 to
// 11 days (left unchanged: 1.05):
//   this one                                                     0.51 -0.07    0.75 +0.60
//   the published flux, convection by blocks at their mean       0.53 -0.09    0.75 +0.59
//   energy budget: 0.2 u*^3 / (kappa z) raises the layers        0.58 +0.10    0.99 +0.88
//   k-profile, mixed down to a bulk Richardson number of 0.3     0.54 -0.02    0.73 +0.56
//   before, with light by 1.7 / Secchi and older laws of heat    1.13 -0.78    0.83 +0.66
// So it is the one that hangs on nothing but the face. What is left on the reservoir is heat, not its place:
// with 87 % of the file's light, which exceeds what falls there, 0.66 and +0.30.
#include "engine/base/row.h"
#include "engine/column/column.h"
#include "engine/column/mixing.h"
#include "engine/water/water.h"

#include <algorithm>

namespace engine {
namespace {

// Turns of Newton's method for the density at the end of a stage. The second stage goes on from the first's
// answer, and a second turn there betters no low of any scenario by 0.02 g/m^3.
constexpr int kFirstTurns = 2, kSecondTurns = 1;

/// From a stage's base to the next one's: base + kOnwards (end - base) is the second stage's base.
constexpr double kOnwards = (1.0 - kStageShare) / kStageShare;

}  // namespace

template <class Real>
void Column<Real>::stirring(const Air<Real>& air) {
    std::vector<Real>& diffusivity = m_mixing.diffusivity;
    if (m_switches.fixedDiffusivity >= 0.0) {
        std::fill(diffusivity.begin(), diffusivity.end(), Real(m_switches.fixedDiffusivity));
    } else if (m_switches.mixing) {
        setStirring(m_grid, m_water.density, air.wind10, m_bubbles.jet, m_parameters.site.latitude_deg,
                    m_parameters.mixing, m_mixing.stirring);
        m_mixing.density = m_water.density;
    } else {
        std::fill(diffusivity.begin(), diffusivity.end(), Real(0.0));
    }
}

/// Density that plume and inflow bring into each layer, as the water was last found.
template <class Real>
void Column<Real>::returnedDensity() {
    const Flows<Real>& flows = m_transport.flows;
    std::fill(m_mixing.returned.begin(), m_mixing.returned.end(), Real(0.0));
    if (!flows.moving) {
        return;
    }
    const int layers = m_layers;
    Real* const returned = m_mixing.returned.data();
    const Real* const brought = m_transport.densityBrought.data();
    for (int i = 0; i < layers; ++i) {
        returned[i] = brought[i] * m_perVolume[i];
    }
    for (int k = 0; k < flows.segments; ++k) {
        const Real *const taken = flows.taken[k].data(), *const back = flows.returned[k].data();
        Real total = 0.0, carried = 0.0;
        for (int i = 0; i < layers; ++i) {
            total += taken[i];
            carried += taken[i] * m_mixing.density[i];
        }
        const Real mean = wherePositive(total, carried / max(total, Real(kTiny<Real>)), Real(0.0));
        for (int i = 0; i < layers; ++i) {
            returned[i] += back[i] * mean * m_perVolume[i];
        }
    }
}

/// The diffusivities that the water has at the end of a stage of `dt`, whose base is the state.
///
/// Newton's method: the flux of density through a face is linear in its end value about the last guess, with
/// the slope of the flux as diffusivity, and the rest of it goes from layer to layer as a fixed amount. What
/// plumes return is taken from the last guess, which spares the matrix its dense rows.
template <class Real>
void Column<Real>::diffusivityAtEnd(double dt, int turns) {
    if (!mixingChanges()) {
        return;
    }
    const int layers = m_layers;
    Real* const start = m_mixing.start.data();
    Real* const density = m_mixing.density.data();
    for (int i = 0; i < layers; ++i) {
        m_water.temperature[i] = m_state.heat[i][0];
        m_water.salinity[i] = m_state.solutes[i][kSalt];
    }
    const Real met = dt * m_perVolume[0] * m_sun.air.rate;
    m_water.temperature[0] += met * (m_sun.air.target - m_water.temperature[0]) / (1.0 + met);
    const Real *const temperature = m_water.temperature.data(), *const salinity = m_water.salinity.data();
    DAWNLINE_SIDE_BY_SIDE
    for (int i = 0; i < layers; ++i) {
        start[i] = densityOverOrigin(temperature[i], salinity[i]);
    }
    const Real *const diffusivity = m_mixing.diffusivity.data(), *const slope = m_mixing.slope.data();
    for (int turn = 0; turn < turns; ++turn) {
        turbulentDiffusivity(m_mixing.stirring, m_mixing.density, m_mixing.diffusivity, m_mixing.slope);
        returnedDensity();
        Real fromAbove = 0.0;
        for (int i = 0; i < layers; ++i) {
            Real toBelow = 0.0;
            if (i + 1 < layers) {
                toBelow = dt * (diffusivity[i + 1] - slope[i + 1]) *
                          (m_grid.faceArea[i + 1] / m_grid.distance[i + 1]) * (density[i] - density[i + 1]);
            }
            m_mixing.carried[i][0] = start[i] + m_perVolume[i] * (fromAbove - toBelow);
            fromAbove = toBelow;
        }
        m_transport.density.advanceAlone(dt, m_mixing.slope, kMolecularHeat.value, m_transport.flows,
                                         m_mixing.returned, m_mixing.carried);
        for (int i = 0; i < layers; ++i) {
            density[i] = m_mixing.carried[i][0];
        }
    }
    turbulentDiffusivity(m_mixing.stirring, m_mixing.density, m_mixing.diffusivity, m_mixing.slope);
}

/// Lays the base of a stage of `dt` into the state, with all that the stage brings but what moves.
template <class Real>
void Column<Real>::startStage(bool isFirst, double dt) {
    const double onwards = isFirst ? 0.0 : kOnwards;
    using Carried = Row<Real, kSolutes, kSolutes>;
    for (int i = 0; i < m_layers; ++i) {
        Real& heat = m_state.heat[i][0];
        const Real before = m_transport.heatBefore[i][0];
        heat = before + onwards * (heat - before) + dt * m_sun.heating[i];
        const Carried start(m_transport.before[i]), now(m_state.solutes[i]), reacted(m_transport.reacted[i]);
        (start + Real(onwards) * (now - start) + Real(kStageShare) * (reacted - start))
            .put(m_state.solutes[i]);
    }
}

template <class Real>
std::array<Real, kSolutes> Column<Real>::carrySolutes(Fields<Real, kSolutes>& fields) {
    return m_transport.hasToxicants
               ? m_transport.solutes.template advance<kSolutes, kSolutes>(
                     m_transport.flows, m_transport.brought, m_transport.oxygenExchange, fields)
               : m_transport.solutes.template advance<kAlwaysCarried, kSolutes>(
                     m_transport.flows, m_transport.brought, m_transport.oxygenExchange, fields);
}

template <class Real>
void Column<Real>::move(double dt) {
    m_transport.heatBefore = m_state.heat;
    const double stage = kStageShare * dt;
    std::array<Real, kSolutes> surface{};  // Mean of the step, as the ledger's fluxes see it
    for (const bool isFirst : {true, false}) {
        startStage(isFirst, stage);
        diffusivityAtEnd(stage, isFirst ? kFirstTurns : kSecondTurns);
        Transport<Real>::prepareBoth(stage, m_mixing.diffusivity, m_transport.flows, m_transport.heat,
                                     kMolecularHeat.value, m_sun.air, m_transport.solutes,
                                     kMolecularSolute.value);
        m_transport.heat.template advance<1, 1>(m_transport.flows, m_transport.heatBrought, {}, m_state.heat);
        const std::array<Real, kSolutes> met = carrySolutes(m_state.solutes);
        const double share = isFirst ? 1.0 - kStageShare : kStageShare;
        for (int c = 0; c < kSolutes; ++c) {
            surface[c] += share * met[c];
        }
    }
    keepPositive(dt, surface);
    const AirExchange<Real>& air = m_transport.oxygenExchange;
    m_ledger.oxygen[kSurface] += dt * air.rate * (air.target - surface[kOxygen]);
    if (m_transport.flows.enters) {
        const Real over = dt * m_transport.flows.overflow;
        m_ledger.oxygen[kInflow] += dt * m_transport.inflow[kOxygen] - over * surface[kOxygen];
        m_ledger.debtInflow -= over * (surface[kFast] + surface[kMedium]);
        m_ledger.organic[kLoaded] += dt * m_transport.inflow[kLabile];
        m_ledger.organic[kLost] += over * surface[kLabile];
    }
}

/// Where two stages took a solute below zero, it comes back towards what one implicit stage over the whole
/// step makes of it, by no more than it takes.
template <class Real>
void Column<Real>::keepPositive(double dt, std::array<Real, kSolutes>& surface) {
    using Carried = Row<Real, kSolutes, kSolutes>;
    Carried lowest;
    for (int i = 0; i < m_layers; ++i) {
        lowest = min(lowest, Carried(m_state.solutes[i]));
    }
    std::array<Real, kSolutes> least{};
    lowest.put(least);
    double negative = 0.0;
    for (const Real& value : least) {
        negative = std::max(negative, largestLane(Real(-value)));
    }
    if (!(negative > 0.0)) {
        return;
    }
    m_transport.cautious = m_transport.reacted;
    m_transport.solutes.prepare(dt, m_mixing.diffusivity, kMolecularSolute.value, m_transport.flows);
    const std::array<Real, kSolutes> met = carrySolutes(m_transport.cautious);
    for (int c = 0; c < kSolutes; ++c) {
        Real kept = 1.0;  // Of the two stages
        for (int i = 0; i < m_layers; ++i) {
            const Real &two = m_state.solutes[i][c], &one = m_transport.cautious[i][c];
            const Real room = kJustUnderOne<Real> * one / max(one - two, Real(kTiny<Real>));
            kept = min(kept, wherePositive(-two, room, Real(1.0)));
        }
        const Real returns = 1.0 - kept;
        for (int i = 0; i < m_layers; ++i) {
            Real& two = m_state.solutes[i][c];
            const Real& one = m_transport.cautious[i][c];
            // Numbers too small to be normal round by more than the room that kJustUnderOne leaves.
            two = wherePositive(returns, max(Real(one + kept * (two - one)), Real(0.0)), two);
        }
        surface[c] = wherePositive(returns, Real(met[c] + kept * (surface[c] - met[c])), surface[c]);
    }
}

template void Column<double>::stirring(const Air<double>&);
template void Column<double>::move(double);
template void Column<DoubleLanes>::stirring(const Air<DoubleLanes>&);
template void Column<DoubleLanes>::move(double);
template void Column<Lanes>::stirring(const Air<Lanes>&);
template void Column<Lanes>::move(double);

}  // namespace engine
