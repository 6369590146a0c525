#pragma once

#include "engine/base/lane.h"
#include "engine/column/column.h"
#include "engine/water/parameters.h"

namespace engine {

/// What a usual day makes of the labile matter above z_b, nothing loaded and nothing lost, and of the weeds.
template <class Real>
struct OrganicDay {
    Real before = 0.0, after = 0.0;             ///< Held at its start and at its end [g O2]
    Real weedsMade = 0.0, weedsRespired = 0.0;  ///< Oxygen [g]
};

/// Closes the books of a usual day, so that the water above z_b holds as much labile matter after it as
/// before: where more is used than made, leaves and inflow bring the rest, and what feed leaves at least;
/// where more is made, more settles, up to kMostSettling_mPerDay, and then it leaves the pond. A stand of
/// weeds is taken to stay as it is: it gives away what it makes beyond what it breathes.
/// @param p   Of the day: without load and loss. @param open  Volume above z_b [m^3]. @param area  [m^2]
template <class Real>
void closeBooks(OrganicParameters<Real>& p, const OrganicDay<Real>& day, double open, double area) {
    const Real kept = min(Real(day.weedsRespired / max(day.weedsMade, Real(1e-30))), Real(1.0));
    const Real give = wherePositive(day.weedsMade, Real(1.0 - kept), p.weedsGive);
    const Real used =
        (day.before - day.after - (give - p.weedsGive) * day.weedsMade) * (1.0 / kDay);  // [g/s]
    p.weedsGive = give;
    const Real comes = max(used, p.feedWaste), excess = comes - used;
    p.load = comes * (1.0 / open);
    const Real mean = max(Real(0.5 * (day.before + day.after) / open), Real(1e-30));  // [g/m^3]
    const Real settles = min(Real(excess / (mean * area)),
                             max(Real(fromPerDay(kMostSettling_mPerDay.value) - p.settling), Real(0.0)));
    p.settling += settles;
    p.loss = max(Real(excess - settles * mean * area), Real(0.0)) / (mean * open);
}

}  // namespace engine
