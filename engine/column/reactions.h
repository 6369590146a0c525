#pragma once

#include "engine/base/lane.h"
#include "engine/water/priors.h"

#include <array>
#include <cmath>
#include <vector>

namespace engine {

/// Sources and demands of oxygen in each layer over one step, arrays of size N; rates per second.
template <class Real>
struct Reactions {
    static constexpr double kNoLimit = 1e9;
    using Layers = std::vector<Real>;
    // Sources [g/m^3/s]
    Layers photosynthesis, bubbles;
    Layers organic;   ///< Labile matter that is made and loaded
    Layers nitrogen;  ///< Slow debt that feed brings
    // Demands at ample oxygen [g/m^3/s]
    Layers respiration, fish, sediment;
    // First-order losses [1/s]
    Layers stripped;            ///< By bubbles out of water that holds more than they
    Layers fast, medium, slow;  ///< Oxidation of the demand fractions at ample oxygen
    Layers labile;              ///< Respiration of labile matter at ample oxygen
    Layers mostOxygen;          ///< Above this bubbles form by themselves [g/m^3]
    double bubblingOut = 0.0;   ///< Of what is above it [1/s]
    // Debt set free whatever the oxygen [g/m^3/s]: stirred muck
    Layers stirredFast, stirredMedium;
    // Surface aerator
    Layers aerator;                ///< [1/s]
    Real aeratorSaturation = 0.0;  ///< What it drives the water to [g/m^3]
    // Of the demand that oxygen cannot meet
    Real regeneration = 0.0;  ///< Share that comes out as debt
    Real fastShare = 0.0;

    explicit Reactions(int n) {
        for (Layers* layers :
             {&photosynthesis, &bubbles, &organic, &nitrogen, &aerator, &respiration, &fish, &sediment,
              &stripped, &fast, &medium, &slow, &labile, &stirredFast, &stirredMedium}) {
            layers->assign(n, Real(0.0));
        }
        mostOxygen.assign(n, Real(kNoLimit));
    }
};

/// Oxygen, its debts and labile matter [g/m^3], size N.
template <class Real>
struct OxygenAndDebt {
    std::vector<Real> oxygen, fast, medium, slow, labile;
    explicit OxygenAndDebt(int n)
        : oxygen(n, Real(0.0)), fast(oxygen), medium(oxygen), slow(oxygen), labile(oxygen) {}
};

/// What the reactions of each layer did: amounts of oxygen over a step [g/m^3], or rates [g/m^3/s]; size N,
/// all positive.
template <class Real>
struct ReactionAmounts {
    std::vector<Real> respiration, fish, sediment, fast, medium, slow, labile, aerated, spilled, stripped,
        bubbled, regenerated;  ///< aerated and spilled: given and taken by the surface aerator
    explicit ReactionAmounts(int n)
        : respiration(n, Real(0.0)),
          fish(respiration),
          sediment(respiration),
          fast(respiration),
          medium(respiration),
          slow(respiration),
          labile(respiration),
          aerated(respiration),
          spilled(respiration),
          stripped(respiration),
          bubbled(respiration),
          regenerated(respiration) {}
};

/// Limitation by oxygen, c / (half + c).
template <class Real>
[[nodiscard]] Real monod(const Real& oxygen, double half) {
    return oxygen / (half + oxygen);
}

/// Rates at an instant. Fish respire in full down to kFishConformsBelow and in proportion below it.
template <class Real>
void reactionRates(const Reactions<Real>& r, const OxygenAndDebt<Real>& state, ReactionAmounts<Real>& a) {
    for (std::size_t i = 0; i < state.oxygen.size(); ++i) {
        const Real& oxygen = state.oxygen[i];
        a.respiration[i] = r.respiration[i] * monod(oxygen, kRespirationHalf.value);
        a.fish[i] = r.fish[i] * min(oxygen / kFishConformsBelow.value, Real(1.0));
        a.sediment[i] = r.sediment[i] * monod(oxygen, kSedimentHalf.value);
        a.fast[i] = r.fast[i] * state.fast[i] * monod(oxygen, kFastHalf.value);
        a.medium[i] = r.medium[i] * state.medium[i] * monod(oxygen, kMediumHalf.value);
        a.slow[i] = r.slow[i] * state.slow[i] * monod(oxygen, kSlowHalf.value);
        a.labile[i] = r.labile[i] * state.labile[i] * monod(oxygen, kRespirationHalf.value);
        a.bubbled[i] = r.bubblingOut * max(oxygen - r.mostOxygen[i], Real(0.0));
        a.aerated[i] = r.aerator[i] * r.aeratorSaturation;
        a.spilled[i] = r.aerator[i] * oxygen;
        a.stripped[i] = r.stripped[i] * oxygen;
        a.regenerated[i] = r.regeneration * (r.sediment[i] - a.sediment[i]);
    }
}

/// One over each of six numbers from one division; they must be of a size whose product is one of a double.
template <class Real>
[[nodiscard]] std::array<Real, 6> inverses(const Real& a, const Real& b, const Real& c, const Real& d,
                                           const Real& e, const Real& f) {
    const Real ab = a * b, cd = c * d, ef = e * f, cdef = cd * ef;
    const Real all = 1.0 / (ab * cdef);
    const Real ofAb = cdef * all, ofRest = ab * all, ofCd = ef * ofRest, ofEf = cd * ofRest;
    return {b * ofAb, a * ofAb, d * ofCd, c * ofCd, f * ofEf, e * ofEf};
}

/// What a layer has over a step and what wants it [g/m^3]. A demand fraction p with rate k ends at
/// p / (1 + k dt s), s the limitation, so that its payment is k dt p c / (half + (1 + k dt) c): of the same
/// form as the other limited demands.
template <class Real>
struct LayerDemands {
    Real budget;                       ///< Oxygen with all that is gained
    Real linear;                       ///< 1 plus what is lost in proportion to the end value, over it [-]
    Real respiration, fish, sediment;  ///< At ample oxygen
    Real owedFast, owedMedium, owedSlow, owedLabile;  ///< k dt p
    Real gainFast, gainMedium, gainSlow, gainLabile;  ///< 1 + k dt [-]

    /// One over what limits respiration, sediment, fast, medium and slow debt and labile matter at an end
    /// value `c`.
    [[nodiscard, gnu::always_inline]] std::array<Real, 6> limits(const Real& c) const {
        return inverses(kRespirationHalf.value + c, kSedimentHalf.value + c, kFastHalf.value + gainFast * c,
                        kMediumHalf.value + gainMedium * c, kSlowHalf.value + gainSlow * c,
                        kRespirationHalf.value + gainLabile * c);
    }

    /// Newton's first step from zero, which is left of the root: every limited demand at its steepest.
    [[nodiscard, gnu::always_inline]] Real fromZero() const {
        const Real steepest = linear + (respiration + owedLabile) * (1.0 / kRespirationHalf.value) +
                              sediment * (1.0 / kSedimentHalf.value) + owedFast * (1.0 / kFastHalf.value) +
                              owedMedium * (1.0 / kMediumHalf.value) + owedSlow * (1.0 / kSlowHalf.value) +
                              fish * (1.0 / kFishConformsBelow.value);
        return budget / steepest;
    }

    /// Newton's step from `c`.
    [[nodiscard, gnu::always_inline]] Real newton(const Real& c) const {
        constexpr double hr = kRespirationHalf.value, hs = kSedimentHalf.value, hf = kFastHalf.value,
                         hm = kMediumHalf.value, hl = kSlowHalf.value, hFish = kFishConformsBelow.value;
        const auto [qr, qs, qf, qm, ql, qo] = limits(c);
        const Real ar = respiration * qr, as = sediment * qs, af = owedFast * qf, am = owedMedium * qm,
                   al = owedSlow * ql, ao = owedLabile * qo;
        const Real excess =
            c * (linear + ar + as + af + am + al + ao) + fish * min(c * (1.0 / hFish), Real(1.0)) - budget;
        const Real slope = linear + hr * ar * qr + hs * as * qs + hf * af * qf + hm * am * qm + hl * al * ql +
                           hr * ao * qo + wherePositive(hFish - c, fish * (1.0 / hFish), Real(0.0));
        return c - excess / slope;
    }
};

/// Backward Euler over `dt`, layer by layer: oxygen and its debts use each other up together.
///
/// The end value solves a rising concave equation; Newton from the left of its root never passes it, so that
/// the amounts taken at any iterate leave oxygen and every demand fraction positive, and what oxygen loses is
/// exactly what the amounts say.
///
/// All of a layer stands in one loop, long as it is, so that layers are computed side by side.
template <class Real>
void reactionStep(const Reactions<Real>& r, double dt, OxygenAndDebt<Real>& state, ReactionAmounts<Real>& a) {
    const std::size_t n = state.oxygen.size();
    Real *const oxygen = state.oxygen.data(), *const fast = state.fast.data(),
                *const medium = state.medium.data(), *const slow = state.slow.data(),
                *const labile = state.labile.data();
    Real *const outRespiration = a.respiration.data(), *const outFish = a.fish.data(),
                *const outSediment = a.sediment.data(), *const outFast = a.fast.data(),
                *const outMedium = a.medium.data(), *const outSlow = a.slow.data(),
                *const outAerated = a.aerated.data(), *const outSpilled = a.spilled.data(),
                *const outStripped = a.stripped.data(), *const outRegenerated = a.regenerated.data(),
                *const outLabile = a.labile.data(), *const outBubbled = a.bubbled.data();
    const Real *const rateFast = r.fast.data(), *const rateMedium = r.medium.data(),
                      *const rateSlow = r.slow.data(), *const rateStripped = r.stripped.data(),
                      *const photosynthesis = r.photosynthesis.data(), *const bubbles = r.bubbles.data(),
                      *const aerator = r.aerator.data(), *const respiration = r.respiration.data(),
                      *const fishDemand = r.fish.data(), *const sediment = r.sediment.data(),
                      *const stirredFast = r.stirredFast.data(),
                      *const stirredMedium = r.stirredMedium.data(), *const rateLabile = r.labile.data(),
                      *const organic = r.organic.data(), *const nitrogen = r.nitrogen.data(),
                      *const mostOxygen = r.mostOxygen.data();
    const double bubblingShare = -std::expm1(-dt * r.bubblingOut);
    const Real aeratorSaturation = r.aeratorSaturation, regeneration = r.regeneration,
               fastShare = r.fastShare;
    // The arrays do not overlap, so that the layers can be computed side by side.
    DAWNLINE_SIDE_BY_SIDE
    for (std::size_t i = 0; i < n; ++i) {
        const Real kf = dt * rateFast[i], km = dt * rateMedium[i], ks = dt * rateSlow[i],
                   kl = dt * rateLabile[i];
        const Real bubbled = bubblingShare * max(oxygen[i] - mostOxygen[i], Real(0.0));
        const Real labileThere = labile[i] + dt * organic[i], slowThere = slow[i] + dt * nitrogen[i];
        const Real stripped = dt * rateStripped[i], stirred = dt * aerator[i];
        const Real aerated = stirred * aeratorSaturation;
        const LayerDemands<Real> layer{
            .budget = oxygen[i] + dt * (photosynthesis[i] + bubbles[i]) + aerated - bubbled,
            .linear = 1.0 + stripped + stirred,
            .respiration = dt * respiration[i],
            .fish = dt * fishDemand[i],
            .sediment = dt * sediment[i],
            .owedFast = kf * fast[i],
            .owedMedium = km * medium[i],
            .owedSlow = ks * slowThere,
            .owedLabile = kl * labileThere,
            .gainFast = 1.0 + kf,
            .gainMedium = 1.0 + km,
            .gainSlow = 1.0 + ks,
            .gainLabile = 1.0 + kl};
        // The tangent at the old value also falls short of the root; after it, each iterate only rises. A
        // third step moves no hour of any scenario by as much as the steps' own error does.
        const Real first = max(layer.fromZero(), layer.newton(oxygen[i]));
        const Real c = max(first, layer.newton(first));

        const auto [qr, qs, qf, qm, ql, qo] = layer.limits(c);
        const Real respired = layer.respiration * c * qr, takenBySediment = layer.sediment * c * qs;
        const Real paidFast = layer.owedFast * c * qf, paidMedium = layer.owedMedium * c * qm,
                   paidSlow = layer.owedSlow * c * ql, respiredLabile = layer.owedLabile * c * qo;
        const Real takenByFish = layer.fish * min(c * (1.0 / kFishConformsBelow.value), Real(1.0));
        const Real regenerated = regeneration * (layer.sediment - takenBySediment);
        outRespiration[i] = respired;
        outFish[i] = takenByFish;
        outSediment[i] = takenBySediment;
        outFast[i] = paidFast;
        outMedium[i] = paidMedium;
        outSlow[i] = paidSlow;
        outLabile[i] = respiredLabile;
        outBubbled[i] = bubbled;
        outAerated[i] = aerated;
        outSpilled[i] = stirred * c;
        outStripped[i] = stripped * c;
        outRegenerated[i] = regenerated;
        oxygen[i] = layer.budget - (respired + takenByFish + takenBySediment + paidFast + paidMedium +
                                    paidSlow + respiredLabile + stirred * c + stripped * c);
        fast[i] += fastShare * regenerated + dt * stirredFast[i] - paidFast;
        medium[i] += (1.0 - fastShare) * regenerated + dt * stirredMedium[i] - paidMedium;
        slow[i] = slowThere - paidSlow;
        labile[i] = labileThere - respiredLabile;
    }
}

}  // namespace engine
