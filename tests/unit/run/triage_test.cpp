#include "engine/run/triage.h"

#include "engine/wording/sentence.h"
#include "engine/wording/wording.h"
#include "tests/made_up_comparison.h"
#include "tests/scenario.h"
#include "tests/sentences.h"

#include <gtest/gtest.h>

#include <algorithm>

namespace engine {
namespace {

using test::isSaid;
using test::scenario;

Triage triage(const std::string& name) {
    return triageOf(prepareUnbalanced(scenario(name)));
}

TEST(Triage, BandsOfTheRatio) {
    EXPECT_EQ(ratioBand(0.149), RatioBand::Low);
    EXPECT_EQ(ratioBand(0.15), RatioBand::RampRequired);
    EXPECT_EQ(ratioBand(0.5), RatioBand::High);
    EXPECT_EQ(ratioBand(1.0), RatioBand::High);
    EXPECT_EQ(ratioBand(1.01), RatioBand::DoNotStart);
    EXPECT_FALSE(doseCap_percent(RatioBand::Low));
    EXPECT_EQ(doseCap_percent(RatioBand::RampRequired), 25.0);
    EXPECT_EQ(doseCap_percent(RatioBand::DoNotStart), 10.0);
}

TEST(Triage, ScenariosFallWhereTheTradePutsThem) {
    EXPECT_EQ(triage("new-clay").band, RatioBand::Low);
    EXPECT_EQ(triage("grandfathers-pond").band, RatioBand::High);
    EXPECT_EQ(triage("salt-lens").band, RatioBand::DoNotStart);
    EXPECT_EQ(triage("windy-dugout").band, std::nullopt);
}

TEST(Triage, ThirtyMinutesAreNoDose) {
    // The trade's table has 104 % of the bottom water gross in the koi pond and 10 % in the farm pond.
    const auto koi = triage("courtyard-koi").firstDose, farm = triage("grandfathers-pond").firstDose;
    ASSERT_TRUE(koi && farm);
    EXPECT_GT(koi->ofBottom_percent, 25.0);
    EXPECT_LT(farm->ofBottom_percent, 10.0);
    const PondModel model = prepareUnbalanced(scenario("courtyard-koi"));
    EXPECT_NEAR(koi->ofPond_percent / koi->ofBottom_percent, model.bottom.volume / model.basin.volume(),
                1e-12);
    EXPECT_FALSE(triage("windy-dugout").firstDose);
}

TEST(Triage, TheFirstDoseIsWhatTheColumnLifts) {
    const PondModel model = prepareUnbalanced(scenario("grandfathers-pond"));
    RunRequest request;
    request.days = 1;
    request.keepLayers = false;
    const Ramp ramp = test::minutesEachDay(30.0);
    const RampRun run = runRamp(model, &ramp, request);
    const double lifted = 100.0 * run.days.front().liftedVolume / model.bottom.volume;
    // The run starts the morning after the profile, on water that a night has cooled.
    EXPECT_NEAR(triageOf(model).firstDose->ofBottom_percent, lifted, 0.25 * lifted);
}

TEST(Triage, TemperatureAloneDoesNotMakeAMixedPond) {
    EXPECT_EQ(triage("windy-dugout").layering.kind, Layering::Kind::Mixed);
    Pond lens = scenario("salt-lens");
    lens.profile->temperature.assign(lens.profile->depth.size(), 28.0);
    EXPECT_EQ(triageOf(prepareUnbalanced(lens)).layering.kind, Layering::Kind::OnlyByTemperature);
    EXPECT_EQ(triage("grandfathers-pond").layering.kind, Layering::Kind::Layered);
    // Salt alone, and oxygen alone.
    Pond pond = scenario("windy-dugout");
    pond.profile->salinity = {0.1, 0.1, 0.5, 1.2};
    EXPECT_EQ(triageOf(prepareUnbalanced(pond)).layering.kind, Layering::Kind::OnlyByTemperature);
    pond = scenario("windy-dugout");
    pond.profile->oxygen = {7.9, 7.8, 6.5, 5.5};
    EXPECT_EQ(triageOf(prepareUnbalanced(pond)).layering.kind, Layering::Kind::OnlyByTemperature);
}

TEST(Triage, TheSeasonSpeaksWhereItMatters) {
    EXPECT_EQ(triage("grandfathers-pond").season, StartSeason::LastResort);
    EXPECT_EQ(triage("courtyard-koi").season, StartSeason::Warm);
    EXPECT_EQ(triage("new-clay").season, std::nullopt) << "no debt, so that any season will do";
    EXPECT_EQ(triage("windy-dugout").season, std::nullopt);
    Pond pond = scenario("grandfathers-pond");
    pond.profile->temperature = {13, 13, 12.5, 12, 12, 11.5, 11};
    EXPECT_EQ(triageOf(prepareUnbalanced(pond)).season, StartSeason::CoolButPoor);
    pond.profile->oxygen = {10, 10, 10, 9, 9, 8, 7};
    EXPECT_EQ(triageOf(prepareUnbalanced(pond)).season, StartSeason::Best);
    pond.profile->temperature = {1, 1.5, 2, 3, 3.5, 4, 4};
    EXPECT_EQ(triageOf(prepareUnbalanced(pond)).season, StartSeason::Freezing);
}

TEST(Triage, NeverOverrulesDoNothing) {
    Comparison comparison = test::madeUpComparison();
    EXPECT_FALSE(isSaid(sentencesOf(comparison), SentenceKey::TriageNothingFirst));
    comparison.runs.front().days[1].lowest = 1.0;
    const auto sentences = sentencesOf(comparison);
    const auto first = std::find_if(sentences.begin(), sentences.end(), [](const Sentence& sentence) {
        return sentence.part == SentencePart::Triage;
    });
    ASSERT_NE(first, sentences.end());
    EXPECT_EQ(first->key, SentenceKey::TriageNothingFirst);
    // Where nothing was run, that is said instead.
    const auto checked = sentencesOf(scenario("pea-soup"), "pea-soup.toml", {});
    EXPECT_TRUE(isSaid(checked, SentenceKey::TriageOfTheStart));
    EXPECT_TRUE(isSaid(checked, SentenceKey::RatioRampRequired));
}

TEST(Triage, NamesTheMinutesThatADoseIs) {
    const auto sentences = sentencesOf(scenario("courtyard-koi"), "koi.toml", {});
    const auto minutes = test::numberSaid(sentences, SentenceKey::TriageFirstDoseTooLarge, "minutes");
    ASSERT_TRUE(minutes);
    const auto koi = triage("courtyard-koi");
    ASSERT_TRUE(koi.band && doseCap_percent(*koi.band));
    EXPECT_NEAR(*minutes, 30.0 * *doseCap_percent(*koi.band) / koi.firstDose->ofBottom_percent, 1e-9);
}

}  // namespace
}  // namespace engine
