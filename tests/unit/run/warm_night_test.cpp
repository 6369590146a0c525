// Habitat that is lost to warmth is told in degrees and metres, never as a low of oxygen.
#include "engine/run/warm_night.h"

#include "engine/advice/advice.h"
#include "engine/wording/sentence_advice.h"
#include "engine/wording/wording.h"
#include "tests/made_up_comparison.h"
#include "tests/pond_texts.h"
#include "tests/sentences.h"

#include <gtest/gtest.h>

#include <algorithm>

namespace engine {
namespace {

using test::isSaid;

/// Trout; under every ramp the lowest night finds all water above 20 degC, well aired; left alone some is
/// cool.
Comparison warmComparison() {
    Comparison comparison = test::madeUpComparison(
        test::with(test::kPlainPond, "species_group = \"sport\"", "species_group = \"trout\""));
    for (RampRun& run : comparison.runs) {
        const bool isNothing = &run == &comparison.runs.front();
        run.days[1].lowest = isNothing ? 4.0 : 0.0;
        run.days[1].lowestTime = run.hours.back().time;
        for (std::size_t hour = 0; hour < run.hours.size(); ++hour) {
            run.hours[hour].mean = 8.0;
            for (std::size_t i = 0; i < run.layers[hour].size(); ++i) {
                run.layers[hour][i].temperature =
                    isNothing && i > 5 ? 14.0 : 23.0 - 0.2 * static_cast<double>(i);
            }
        }
    }
    return comparison;
}

TEST(WarmNight, NamesTheCoolestWaterAndItsDepth) {
    const Comparison comparison = warmComparison();
    const RampRun& run = comparison.runs[1];
    const auto warm = warmNight(comparison.model, run, run.worst());
    ASSERT_TRUE(warm);
    EXPECT_EQ(warm->limit, 20.0);
    EXPECT_EQ(warm->cool_percent, 0.0);
    EXPECT_DOUBLE_EQ(warm->need_percent, 20.0);
    EXPECT_EQ(warm->hours, 2) << "both of the run";
    EXPECT_NEAR(warm->coolest, 23.0 - 0.2 * 11, 1e-12);
    EXPECT_DOUBLE_EQ(warm->depth, comparison.model.grid.middle.back());
    EXPECT_FALSE(warmNight(comparison.model, comparison.runs.front(), comparison.runs.front().worst()));
}

TEST(WarmNight, IsNoneWhereOxygenIsWanting) {
    Comparison comparison = warmComparison();
    RampRun& run = comparison.runs[1];
    run.days[1].lowest = 3.5;  // above the lethal line
    EXPECT_FALSE(warmNight(comparison.model, run, run.days[1]));
    run.days[1].lowest = 0.0;
    for (HourRow& hour : run.hours) {
        hour.mean = 0.5;  // warm, and without oxygen as well
    }
    EXPECT_FALSE(warmNight(comparison.model, run, run.days[1]));
    const Comparison sport = test::madeUpComparison();
    EXPECT_FALSE(warmNight(sport.model, run, run.days[1])) << "fish that take any warmth";
    // Enough water is cool: whatever is low then is oxygen.
    comparison = warmComparison();
    for (auto& layers : comparison.runs[1].layers) {
        std::for_each(layers.begin() + 4, layers.end(), [](LayerRow& layer) { layer.temperature = 12.0; });
    }
    EXPECT_FALSE(warmNight(comparison.model, comparison.runs[1], comparison.runs[1].worst()));
}

TEST(WarmNight, IsSaidInDegreesAndMetresAndNeverAsNoOxygen) {
    const Comparison comparison = warmComparison();
    for (const std::vector<Sentence>& said :
         {sentencesOf(comparison), sentencesOf(adviceOn(comparison, 1), comparison.model),
          sentencesOfNight(comparison, 2, 1), sentencesOfNights(comparison, 1)}) {
        std::string text;
        for (const Sentence& sentence : said) {
            // How far the balance is off is a difference, which may be none.
            text += sentence.part != SentencePart::Assumption ? english(sentence) + '\n' : "";
        }
        EXPECT_EQ(text.find(" 0.0 mg/L"), std::string::npos) << text;
        EXPECT_NE(text.find("0 % of the pond has 20 degC or less, and the coolest, at "), std::string::npos)
            << text;
        EXPECT_NE(text.find(" m, has 20.8 degC"), std::string::npos) << text;
    }
    EXPECT_TRUE(isSaid(sentencesOf(comparison), SentenceKey::RampTooWarm));
    EXPECT_TRUE(isSaid(sentencesOf(adviceOn(comparison, 1), comparison.model), SentenceKey::AdviceAlone))
        << "what the pond does left alone stands behind it";
}

}  // namespace
}  // namespace engine
