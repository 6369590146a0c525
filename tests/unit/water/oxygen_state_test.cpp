#include "engine/water/oxygen_state.h"

#include <gtest/gtest.h>

namespace engine {
namespace {

TEST(OxygenState, WhatIsAtALineIsNotBelowIt) {
    OxygenThresholds thresholds;
    thresholds.stress = 4.0;
    thresholds.lethal = 2.0;
    EXPECT_EQ(stateOf(4.0, thresholds), OxygenState::Enough);
    EXPECT_EQ(stateOf(3.99, thresholds), OxygenState::Stress);
    EXPECT_EQ(stateOf(2.0, thresholds), OxygenState::Stress);
    EXPECT_EQ(stateOf(1.99, thresholds), OxygenState::Lethal);
}

}  // namespace
}  // namespace engine
