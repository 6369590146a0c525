#pragma once

#include "engine/lane.h"
#include "engine/priors.h"

#include <vector>

namespace engine {

/// What makes and eats oxygen in each layer over one step, size N each; rates per second.
template <class Real>
struct Reactions {
    // Sources [g/m^3/s]
    std::vector<Real> photosynthesis, bubbles, aerator;
    // Demands at ample oxygen [g/m^3/s]
    std::vector<Real> respiration, fish, sediment;
    // First-order losses [1/s]
    std::vector<Real> stripped;         ///< By bubbles out of water that holds more than they
    std::vector<Real> fast, medium, slow;  ///< Oxidation of the pools at ample oxygen
    // Debt set free [g/m^3/s] whatever the oxygen: stirred muck
    std::vector<Real> stirredFast, stirredMedium;
    // Surface exchange, layer 0 only
    Real surfaceRate = 0.0;  ///< Piston velocity times area over volume [1/s]
    Real saturation = 0.0;   ///< [g/m^3]
    // Of the demand that oxygen cannot meet
    Real regeneration = 0.0;  ///< Share that comes out as debt
    Real fastShare = 0.0;

    explicit Reactions(int n)
        : photosynthesis(n, Real(0.0)), bubbles(n, Real(0.0)), aerator(n, Real(0.0)),
          respiration(n, Real(0.0)), fish(n, Real(0.0)), sediment(n, Real(0.0)), stripped(n, Real(0.0)),
          fast(n, Real(0.0)), medium(n, Real(0.0)), slow(n, Real(0.0)), stirredFast(n, Real(0.0)),
          stirredMedium(n, Real(0.0)) {}
};

/// What one layer's reactions did: amounts of oxygen over a step [g/m^3] or rates [g/m^3/s]; all positive.
template <class Real>
struct ReactionAmounts {
    Real respiration, fish, sediment, fast, medium, slow, surfaceIn, surfaceOut, stripped, regenerated;
};

/// Limitation by oxygen, c / (half + c).
template <class Real>
[[nodiscard]] Real monod(const Real& oxygen, double half) {
    return oxygen / (half + oxygen);
}

/// Rates at an instant. Fish breathe in full down to kFishConformsBelow and in proportion below it.
template <class Real>
[[nodiscard]] ReactionAmounts<Real> reactionRates(const Reactions<Real>& r, int i, const Real& oxygen,
                                                  const Real& fast, const Real& medium, const Real& slow) {
    ReactionAmounts<Real> a;
    a.respiration = r.respiration[i] * monod(oxygen, kRespirationHalf.value);
    a.fish = r.fish[i] * min(oxygen / kFishConformsBelow.value, Real(1.0));
    a.sediment = r.sediment[i] * monod(oxygen, kSedimentHalf.value);
    a.fast = r.fast[i] * fast * monod(oxygen, kFastHalf.value);
    a.medium = r.medium[i] * medium * monod(oxygen, kMediumHalf.value);
    a.slow = r.slow[i] * slow * monod(oxygen, kSlowHalf.value);
    a.surfaceIn = i == 0 ? r.surfaceRate * r.saturation : Real(0.0);
    a.surfaceOut = i == 0 ? r.surfaceRate * oxygen : Real(0.0);
    a.stripped = r.stripped[i] * oxygen;
    a.regenerated = r.regeneration * (r.sediment[i] - a.sediment);
    return a;
}

/// Backward Euler over `dt` of one layer: oxygen and its debts use each other up together.
///
/// The end value solves a rising concave equation; Newton from the left of its root never passes it, so that the
/// amounts taken at any iterate leave oxygen and every pool positive, and what oxygen loses is exactly what the
/// amounts say. @return the amounts [g/m^3]; the state is changed.
template <class Real>
ReactionAmounts<Real> reactionStep(const Reactions<Real>& r, int i, double dt, Real& oxygen, Real& fast,
                                   Real& medium, Real& slow) {
    constexpr double hr = kRespirationHalf.value, hs = kSedimentHalf.value, hf = kFastHalf.value,
                     hm = kMediumHalf.value, hl = kSlowHalf.value;
    constexpr double fishSlope = 1.0 / kFishConformsBelow.value;
    // A pool p with rate k ends at p / (1 + k dt s), s the limitation, so that its payment is
    // k dt p c / (half + (1 + k dt) c): of the same form as the other limited demands.
    const Real kf = dt * r.fast[i], km = dt * r.medium[i], ks = dt * r.slow[i];
    const Real owedFast = kf * fast, owedMedium = km * medium, owedSlow = ks * slow;
    const Real exchange = i == 0 ? dt * r.surfaceRate : Real(0.0);
    const Real stripped = dt * r.stripped[i];
    const Real linear = 1.0 + exchange + stripped;
    const Real surfaceIn = exchange * r.saturation;
    const Real budget = oxygen + dt * (r.photosynthesis[i] + r.bubbles[i] + r.aerator[i]) + surfaceIn;
    const Real resp = dt * r.respiration[i], fish = dt * r.fish[i], sed = dt * r.sediment[i];

    // Newton's first step from zero, which is left of the root: every limited demand at its steepest.
    const Real steepest = linear + resp / hr + sed / hs + owedFast / hf + owedMedium / hm + owedSlow / hl +
                          fish * fishSlope;
    const Real fromZero = budget / steepest;
    // The tangent at the old value also falls short of the root; after it, each iterate only rises.
    Real c = oxygen;
    constexpr int kIterations = 3;
    for (int iteration = 0; iteration < kIterations; ++iteration) {
        const Real qr = 1.0 / (hr + c), qs = 1.0 / (hs + c), qf = 1.0 / (hf + (1.0 + kf) * c),
                   qm = 1.0 / (hm + (1.0 + km) * c), ql = 1.0 / (hl + (1.0 + ks) * c);
        const Real ar = resp * qr, as = sed * qs, af = owedFast * qf, am = owedMedium * qm, al = owedSlow * ql;
        const Real conforming = wherePositive(kFishConformsBelow.value - c, Real(1.0), Real(0.0));
        const Real excess = c * (linear + ar + as + af + am + al) + fish * min(c * fishSlope, Real(1.0)) - budget;
        const Real slope = linear + hr * ar * qr + hs * as * qs + hf * af * qf + hm * am * qm + hl * al * ql +
                           fish * fishSlope * conforming;
        c = max(iteration == 0 ? fromZero : c, c - excess / slope);
    }

    ReactionAmounts<Real> a;
    a.respiration = resp * c / (hr + c);
    a.fish = fish * min(c * fishSlope, Real(1.0));
    a.sediment = sed * c / (hs + c);
    a.fast = owedFast * c / (hf + (1.0 + kf) * c);
    a.medium = owedMedium * c / (hm + (1.0 + km) * c);
    a.slow = owedSlow * c / (hl + (1.0 + ks) * c);
    a.surfaceIn = surfaceIn;
    a.surfaceOut = exchange * c;
    a.stripped = stripped * c;
    a.regenerated = r.regeneration * (sed - a.sediment);
    oxygen = budget - (a.respiration + a.fish + a.sediment + a.fast + a.medium + a.slow + a.surfaceOut +
                       a.stripped);
    fast += r.fastShare * a.regenerated + dt * r.stirredFast[i] - a.fast;
    medium += (1.0 - r.fastShare) * a.regenerated + dt * r.stirredMedium[i] - a.medium;
    slow -= a.slow;
    return a;
}

}  // namespace engine
