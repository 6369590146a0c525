#include "engine/column/reactions.h"

#include <gtest/gtest.h>

#include <cmath>
#include <random>

namespace {

using engine::OxygenAndDebt;
using engine::ReactionAmounts;
using engine::Reactions;

// Whatever the rates, the water and the step (a second to a month): nothing negative, and what each layer
// loses is what the amounts say, to 1e-12 of what was there or came.
TEST(Reactions, NeverNegativeAndAlwaysAccountedFor) {
    std::mt19937 random(5);
    std::uniform_real_distribution<double> unit(0.0, 1.0);
    const auto some = [&](double largest) { return unit(random) < 0.3 ? 0.0 : largest * unit(random); };
    constexpr int kLayers = 7;
    for (int trial = 0; trial < 3000; ++trial) {
        const double dt = std::pow(10.0, 6.4 * unit(random));
        Reactions<double> r(kLayers);
        OxygenAndDebt<double> state(kLayers);
        ReactionAmounts<double> a(kLayers);
        r.regeneration = unit(random);
        r.fastShare = unit(random);
        r.aeratorSaturation = 15.0 * unit(random);
        r.bubblingOut = some(1e-3);
        for (int i = 0; i < kLayers; ++i) {
            r.photosynthesis[i] = some(1e-3);
            r.bubbles[i] = some(1e-4);
            r.aerator[i] = some(1e-3);
            r.respiration[i] = some(1e-3);
            r.fish[i] = some(1e-3);
            r.sediment[i] = some(1e-3);
            r.stripped[i] = some(1e-2);
            r.fast[i] = some(1e-2);
            r.medium[i] = some(1e-4);
            r.slow[i] = some(1e-5);
            r.labile[i] = some(1e-4);
            r.organic[i] = some(1e-3);
            r.nitrogen[i] = some(1e-4);
            r.mostOxygen[i] = some(30.0);
            r.stirredFast[i] = some(1e-3);
            r.stirredMedium[i] = some(1e-3);
            state.oxygen[i] = some(20.0);
            state.fast[i] = some(50.0);
            state.medium[i] = some(50.0);
            state.slow[i] = some(50.0);
            state.labile[i] = some(50.0);
        }
        const OxygenAndDebt<double> before = state;
        engine::reactionStep(r, dt, state, a);
        for (int i = 0; i < kLayers; ++i) {
            ASSERT_GE(state.oxygen[i], 0.0) << trial;
            ASSERT_GE(state.fast[i], 0.0) << trial;
            ASSERT_GE(state.medium[i], 0.0) << trial;
            ASSERT_GE(state.slow[i], 0.0) << trial;
            ASSERT_GE(state.labile[i], 0.0) << trial;
            const double made = before.oxygen[i] + dt * (r.photosynthesis[i] + r.bubbles[i]) + a.aerated[i];
            const double used = a.respiration[i] + a.fish[i] + a.sediment[i] + a.fast[i] + a.medium[i] +
                                a.slow[i] + a.labile[i] + a.spilled[i] + a.stripped[i] + a.bubbled[i];
            ASSERT_NEAR(state.oxygen[i], made - used, 1e-12 * made) << trial;
            const double debt = before.fast[i] + before.medium[i] + before.slow[i] + a.regenerated[i] +
                                dt * (r.stirredFast[i] + r.stirredMedium[i] + r.nitrogen[i]);
            ASSERT_NEAR(state.fast[i] + state.medium[i] + state.slow[i],
                        debt - a.fast[i] - a.medium[i] - a.slow[i], 1e-12 * debt)
                << trial;
            const double organic = before.labile[i] + dt * r.organic[i];
            ASSERT_NEAR(state.labile[i], organic - a.labile[i], 1e-12 * organic) << trial;
            // The sediment takes its demand or gives the stated share of the rest as debt.
            ASSERT_NEAR(a.regenerated[i], r.regeneration * (dt * r.sediment[i] - a.sediment[i]),
                        1e-12 * dt * r.sediment[i] + 1e-300)
                << trial;
        }
    }
}

TEST(Reactions, NothingIsTakenFromWaterWithoutOxygen) {
    Reactions<double> r(1);
    r.respiration[0] = r.fish[0] = r.sediment[0] = 1e-3;
    r.fast[0] = r.medium[0] = r.slow[0] = 1e-3;
    r.regeneration = 0.4;
    r.fastShare = 0.25;
    OxygenAndDebt<double> state(1);
    state.fast[0] = state.medium[0] = state.slow[0] = 5.0;
    ReactionAmounts<double> a(1);
    engine::reactionRates(r, state, a);
    for (const double taken :
         {a.respiration[0], a.fish[0], a.sediment[0], a.fast[0], a.medium[0], a.slow[0]}) {
        EXPECT_EQ(taken, 0.0);
    }
    EXPECT_DOUBLE_EQ(a.regenerated[0], 0.4e-3);
    engine::reactionStep(r, 1000.0, state, a);
    EXPECT_EQ(state.oxygen[0], 0.0);
    EXPECT_DOUBLE_EQ(state.fast[0], 5.0 + 0.25 * 0.4);
    EXPECT_DOUBLE_EQ(state.medium[0], 5.0 + 0.75 * 0.4);
    EXPECT_EQ(state.slow[0], 5.0);
}

}  // namespace
