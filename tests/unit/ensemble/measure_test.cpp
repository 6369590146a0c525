#include "engine/ensemble/measure.h"

#include "engine/base/error.h"
#include "engine/ensemble/ensemble.h"
#include "engine/ensemble/uncertain_inputs.h"
#include "tests/scenario.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>

namespace engine {
namespace {

using test::scenario;

/// Coarse, so that it is quick.
MeasureOptions quick(const std::string& ramp = "") {
    MeasureOptions options;
    options.ramp = ramp;
    options.members = 128;
    options.resolution.layers = 16;
    options.resolution.largestStep = 1200.0;
    return options;
}

TEST(Measure, FindsTheRampThatIsMeant) {
    Pond pond = scenario("grandfathers-pond");
    EXPECT_EQ(rampToMeasure(pond, ""), "tenth of the bottom a day");
    EXPECT_EQ(rampToMeasure(pond, "on at once"), "on at once");
    EXPECT_EQ(rampToMeasure(pond, "do-nothing"), "do-nothing");
    EXPECT_EQ(rampToMeasure(pond, "at once"), std::nullopt);
    pond.chosenRamp.clear();
    EXPECT_EQ(rampToMeasure(pond, ""), "on at once");
    pond.ramps.clear();
    EXPECT_EQ(rampToMeasure(pond, ""), "do-nothing");
}

TEST(Measure, RanksTheInputsOfARampAndSaysWhatAMeasurementBrings) {
    const Pond pond = scenario("grandfathers-pond");
    const MeasureResult result = measure(pond, quick("doubling from 30 min"));
    ASSERT_EQ(result.end, EnsembleEnd::Completed) << result.message;
    EXPECT_EQ(result.inputs.size(), uncertainInputs(result.model).size());
    EXPECT_TRUE(
        std::is_sorted(result.inputs.begin(), result.inputs.end(),
                       [](const MeasuredInput& a, const MeasuredInput& b) { return a.share > b.share; }));
    EXPECT_LT(result.low, result.median);
    EXPECT_LT(result.median, result.high);
    EXPECT_GT(result.inputs.front().shareLow, 0.0) << "the first of them is beyond chance";
    for (const MeasuredInput& input : result.inputs) {
        EXPECT_LT(input.low, input.high) << input.name;
        EXPECT_LE(input.shareLow, input.share) << input.name;
        EXPECT_GE(input.shareHigh, input.share) << input.name;
        EXPECT_GE(input.left, 0.0) << input.name;
        EXPECT_LE(input.left, 1.0) << input.name;
    }
    const auto debt =
        std::find_if(result.inputs.begin(), result.inputs.end(),
                     [](const MeasuredInput& input) { return input.name == "oxygen_debt_mg_per_l"; });
    ASSERT_NE(debt, result.inputs.end());
    EXPECT_NEAR(debt->low, 4.5, 1e-9);
    EXPECT_NEAR(debt->high, 22.5, 1e-9);
    EXPECT_GT(debt->worstAtLow, debt->worstAtHigh) << "more debt, less oxygen";
    ASSERT_NE(debt->way, nullptr);
    EXPECT_LT(debt->left, 1.0);
    // What was measured already is not measured again.
    const auto secchi = std::find_if(result.inputs.begin(), result.inputs.end(),
                                     [](const MeasuredInput& input) { return input.name == "secchi_m"; });
    ASSERT_NE(secchi, result.inputs.end());
    EXPECT_EQ(secchi->way, nullptr);
}

TEST(Measure, TheSameOnAnyNumberOfThreads) {
    MeasureOptions options = quick();
    options.members = 100;
    options.threads = 1;
    const auto one = measureFiles(measure(scenario("new-clay"), options));
    options.threads = 3;
    const auto three = measureFiles(measure(scenario("new-clay"), options));
    ASSERT_EQ(one.size(), 2U);
    EXPECT_EQ(one[0].text, three[0].text);
    EXPECT_EQ(one[1].text, three[1].text);
    EXPECT_TRUE(one[0].text.starts_with(
        "input,low,high,worst_at_low_mg_per_l,worst_at_high_mg_per_l,share_of_variance\r\n"));
}

TEST(Measure, StopsAndReportsItsProgress) {
    std::stop_source stop;
    double furthest = 0.0;
    const RunControl control{stop.get_token(), [&](double share) {
                                 furthest = std::max(furthest, share);
                                 stop.request_stop();
                             }};
    const MeasureResult stopped = measure(scenario("new-clay"), quick(), control);
    EXPECT_EQ(stopped.end, EnsembleEnd::Cancelled);
    EXPECT_FALSE(stopped.message.empty());
    EXPECT_GT(furthest, 0.0);
    EXPECT_LT(furthest, 1.0);
}

TEST(Measure, FewMembersAreRefused) {
    MeasureOptions options;
    options.members = kLeastMembersToMeasure - 1;
    EXPECT_THROW(static_cast<void>(measure(scenario("new-clay"), options)), ArgumentError);
}

TEST(Measure, EveryWayBelongsToAnInputWithAMeter) {
    // A renamed input would lose its way in silence.
    for (const char* name :
         {"oxygen_debt_mg_per_l", "sediment_demand_g_per_m2_d", "muck_m", "secchi_m", "chlorophyll_ug_per_l",
          "community respiration at 20 degC", "wind_shelter", "net_share", "free_air_l_per_min", "bubble_mm",
          "area_m2", "error of the profile's oxygen", "slow debt over oxygen debt", "weeds_cover_percent"}) {
        const auto inputs = uncertainInputs(prepareUnbalanced(scenario("grandfathers-pond")));
        const auto found = std::find_if(inputs.begin(), inputs.end(),
                                        [&](const UncertainInput& input) { return input.name == name; });
        ASSERT_NE(found, inputs.end()) << name;
        EXPECT_TRUE(found->meter) << name;
        EXPECT_NE(measuringWay(name), nullptr) << name;
    }
    EXPECT_EQ(measuringWay("albedo"), nullptr);
    EXPECT_EQ(inputWords("slow debt over oxygen debt"), "slow part of the oxygen debt")
        << "not as a fraction";
}

}  // namespace
}  // namespace engine
