// Sentences for readers of US units.
#include "engine/pond/pond_io.h"
#include "engine/run/balance.h"
#include "engine/wording/sentence.h"
#include "engine/wording/wording.h"
#include "tests/scenario.h"
#include "tests/sentences.h"

#include <gtest/gtest.h>

namespace engine {
namespace {

std::string inUs(std::string_view pattern, const SentenceValue& value) {
    return filled(pattern, {value}, shownValue, UnitSystem::Us);
}

// Expected by hand: 1.6 m / 0.3048 = 5.25 ft, 28.3 degC = 82.94 degF.
TEST(UsUnits, StandBeforeTheMetricOnes) {
    const SentenceValue depth{"depth", Measure::Depth, 1.6, {}};
    EXPECT_EQ(inUs("hang them at {depth} m, no lower", depth), "hang them at 5.2 ft (1.6 m), no lower");
    EXPECT_EQ(inUs("at {depth} m", depth), "at 5.2 ft (1.6 m)");
    EXPECT_EQ(inUs("above {limit} degC.", {"limit", Measure::Degrees, 28.3, {}}),
              "above 82.9 degF (28.3 degC).");
    EXPECT_EQ(inUs("above {limit} degC.", {"limit", Measure::Degrees, 30.0, {}}), "above 86 degF (30 degC).");
}

TEST(UsUnits, LeaveWhatIsNoLengthAndNoTemperature) {
    EXPECT_EQ(inUs("{low} mg/L", {"low", Measure::Oxygen, 4.0, {}}), "4.0 mg/L");
    EXPECT_EQ(inUs("{depth} mg/L", {"depth", Measure::Depth, 4.0, {}}), "4.0 mg/L");
    EXPECT_EQ(inUs("differ by {degrees} degC", {"degrees", Measure::Oxygen, 7.9, {}}), "differ by 7.9 degC");
}

double bottomShare_percent(const Pond& pond) {
    const PondModel model = prepareUnbalanced(pond);
    return 100.0 * model.bottom.volume / model.basin.volume();
}

TEST(UsUnits, AreThoseOfThePondFile) {
    Pond pond = test::scenario("grandfathers-pond");
    pond.profile->oxygen = {8.5, 7.8, 6.8, 3, 0.3, 0.1, 0};
    pond.profile->temperature = {28.5, 28, 27.5, 25, 22, 20.5, 20};
    const auto said = [&] {
        const auto sentences = sentencesOf(pond, "pond.toml", {});
        const Sentence* bottom = test::find(sentences, SentenceKey::BottomByDensity);
        return bottom == nullptr ? "" : english(*bottom);
    };
    const std::string behind = ", where density is half-way between surface and bottom; it is " +
                               shownValue({"share", Measure::Percent, bottomShare_percent(pond), {}}) +
                               " % of the pond's volume.";
    EXPECT_EQ(said(), "Bottom water begins at 1.6 m" + behind);
    pond.units = UnitSystem::Us;
    EXPECT_EQ(said(), "Bottom water begins at 5.2 ft (1.6 m)" + behind);
}

}  // namespace
}  // namespace engine
