#include "engine/ensemble/measure_choice.h"

#include <gtest/gtest.h>

namespace engine {
namespace {

MeasuredInput input(double share, bool isMeasurable, double left) {
    static constexpr MeasuringWay kWay{"debt", 2, "bottle test"};
    MeasuredInput made;
    made.share = share;
    made.way = isMeasurable ? &kWay : nullptr;
    made.left = left;
    return made;
}

TEST(MeasureChoice, InputsWithTheShareOfChanceAreLeftOut) {
    MeasureResult result;
    result.inputs = {input(0.5, false, 1.0), input(0.2, true, 0.9), input(0.03, true, 0.99),
                     input(0.029, true, 0.98)};
    EXPECT_EQ(tellingInputs(result, 10).size(), 3U);
    ASSERT_EQ(tellingInputs(result, 2).size(), 2U);
    EXPECT_EQ(tellingInputs(result, 2)[1].share, 0.2);
    EXPECT_TRUE(tellingInputs({}, 10).empty());
}

TEST(MeasureChoice, TheBestReadingNarrowsTheSpreadMost) {
    MeasureResult result;
    EXPECT_EQ(bestReading(result), nullptr);
    result.inputs = {input(0.5, false, 0.2), input(0.3, true, 0.8), input(0.1, true, 0.7),
                     input(0.1, true, 0.7)};
    EXPECT_EQ(gainOf(result.inputs[0]), 0.0) << "what cannot be measured brings nothing";
    EXPECT_DOUBLE_EQ(gainOf(result.inputs[1]), 0.2);
    EXPECT_EQ(bestReading(result), &result.inputs[2]);
    result.inputs = {input(0.5, false, 0.2), input(0.3, true, 0.995)};
    EXPECT_EQ(bestReading(result), nullptr) << "half a percent is not worth a visit";
}

}  // namespace
}  // namespace engine
