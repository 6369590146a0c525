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

TEST(OxygenState, TroutAreHeldAgainstTheCriteriaOfColdWater) {
    // U.S. EPA 440/5-86-003 (1986), table 1: one-day minimum of other life stages than early ones.
    OxygenThresholds thresholds;
    thresholds.group = SpeciesGroup::Trout;
    EXPECT_EQ(criteriaOf(thresholds).minimum, 4.0);
    thresholds.group = SpeciesGroup::Sport;
    EXPECT_EQ(criteriaOf(thresholds).minimum, 3.0);
}

}  // namespace
}  // namespace engine
