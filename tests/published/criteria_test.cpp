#include "engine/water/criteria.h"

#include <gtest/gtest.h>

#include <optional>

namespace {

using namespace engine;

constexpr std::optional<double> kNone;

void expectLimits(const OxygenCriteria& found, std::optional<double> mean30Days,
                  std::optional<double> mean7Days, std::optional<double> meanMinimum7Days, double minimum) {
    EXPECT_EQ(found.mean30Days, mean30Days);
    EXPECT_EQ(found.mean7Days, mean7Days);
    EXPECT_EQ(found.meanMinimum7Days, meanMinimum7Days);
    EXPECT_EQ(found.minimum, minimum);
}

// EPA 440/5-86-003 (1986), Table 1, as in EPA's fact sheet 841F21007B (July 2021): every cell of the water
// column's values. Exact.
TEST(Criteria, Epa1986Table) {
    expectLimits(epa1986(WaterKind::Warm, LifeStage::Other), 5.5, kNone, 4.0, 3.0);
    expectLimits(epa1986(WaterKind::Cold, LifeStage::Other), 6.5, kNone, 5.0, 4.0);
    expectLimits(epa1986(WaterKind::Warm, LifeStage::Early), kNone, 6.0, kNone, 5.0);
    expectLimits(epa1986(WaterKind::Cold, LifeStage::Early), kNone, 9.5, kNone, 8.0);
}

}  // namespace
