#include "engine/water/criteria.h"

#include <gtest/gtest.h>

#include <vector>

namespace {

using namespace engine;

CriteriaBroken judgeConstant(double oxygen, WaterKind water, LifeStage stage) {
    const std::vector<double> hourly(30 * 24, oxygen);
    return brokenCriteria(oxygenLows(hourly), epa1986(water, stage));
}

// EPA 440/5-86-003 (1986), Table 1, as in EPA's fact sheet 841F21007B (July 2021). Exact.
TEST(Criteria, WarmWaterOtherLifeStages) {
    const auto judge = [](double oxygen) { return judgeConstant(oxygen, WaterKind::Warm, LifeStage::Other); };
    EXPECT_EQ(judge(5.5), CriteriaBroken{});
    EXPECT_EQ(judge(5.4), (CriteriaBroken{.mean30Days = true}));
    EXPECT_EQ(judge(3.9), (CriteriaBroken{.mean30Days = true, .meanMinimum7Days = true}));
    EXPECT_EQ(judge(2.9), (CriteriaBroken{.mean30Days = true, .meanMinimum7Days = true, .minimum = true}));
}

TEST(Criteria, ColdWaterOtherLifeStages) {
    const auto judge = [](double oxygen) { return judgeConstant(oxygen, WaterKind::Cold, LifeStage::Other); };
    EXPECT_EQ(judge(6.5), CriteriaBroken{});
    EXPECT_EQ(judge(6.4), (CriteriaBroken{.mean30Days = true}));
    EXPECT_EQ(judge(4.9), (CriteriaBroken{.mean30Days = true, .meanMinimum7Days = true}));
    EXPECT_EQ(judge(3.9), (CriteriaBroken{.mean30Days = true, .meanMinimum7Days = true, .minimum = true}));
}

TEST(Criteria, EarlyLifeStages) {
    const auto warm = [](double oxygen) { return judgeConstant(oxygen, WaterKind::Warm, LifeStage::Early); };
    const auto cold = [](double oxygen) { return judgeConstant(oxygen, WaterKind::Cold, LifeStage::Early); };
    EXPECT_EQ(warm(6.0), CriteriaBroken{});
    EXPECT_EQ(warm(5.9), (CriteriaBroken{.mean7Days = true}));
    EXPECT_EQ(warm(4.9), (CriteriaBroken{.mean7Days = true, .minimum = true}));
    EXPECT_EQ(cold(9.5), CriteriaBroken{});
    EXPECT_EQ(cold(9.4), (CriteriaBroken{.mean7Days = true}));
    EXPECT_EQ(cold(7.9), (CriteriaBroken{.mean7Days = true, .minimum = true}));
}

}  // namespace
