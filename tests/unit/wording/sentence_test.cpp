#include "engine/wording/sentence.h"

#include "engine/ensemble/measure.h"
#include "engine/wording/sentence_measure.h"
#include "engine/wording/wording.h"
#include "tests/made_up_comparison.h"
#include "tests/sentences.h"

#include <gtest/gtest.h>

#include <set>

namespace engine {
namespace {

using test::find;
using test::kPlainPond;
using test::madeUpComparison;
using test::numberSaid;
using test::with;

std::string said(const Comparison& comparison, SentenceKey key) {
    return test::englishSaid(sentencesOf(comparison), key);
}

/// Place of the first sentence of a part, from a place on.
std::size_t firstOf(const std::vector<Sentence>& sentences, SentencePart part, std::size_t from = 0) {
    const auto begin = sentences.begin() + static_cast<std::ptrdiff_t>(from);
    return static_cast<std::size_t>(
        std::find_if(begin, sentences.end(), [&](const Sentence& one) { return one.part == part; }) -
        sentences.begin());
}

Comparison inTrouble() {
    Comparison comparison = madeUpComparison();
    RampRun& nothing = comparison.runs[0];
    nothing.days[1].lowest = 1.26;
    nothing.hoursBelowStress = 12.26;
    nothing.hoursBelowLethal = 0.02;
    nothing.endState = 4.0;
    nothing.endDrift = -0.2;
    RampRun& ramp = comparison.runs[1];
    ramp.days[1].lowest = 0.75;
    ramp.hoursBelowLethal = 3.0;
    ramp.endState = 4.75;
    ramp.endDrift = 0.15;
    ramp.daysToContinuous = 1;
    ramp.cutMinutes = 12.0;
    return comparison;
}

TEST(Sentence, ARampSaysItsWorstNightWithDoNothingBesideIt) {
    Comparison comparison = madeUpComparison();
    comparison.runs[0].days[1].lowest = 5.26;
    comparison.runs[1].days[1].lowest = 3.26;
    // 193180 s is 05:39:40 on the morning after night 2, which begins on 15 June.
    EXPECT_EQ(said(comparison, SentenceKey::RampWorst),
              "at once: lowest on night 2 at 05:40 on 2026-06-16, 3.3 mg/L in the fish water; left alone "
              "that night's "
              "low is 5.3 mg/L.");
}

TEST(Sentence, TheClockAndTheDateAreRoundedTogether) {
    Comparison comparison = madeUpComparison();
    comparison.runs[1].days[1].lowestTime = 2.0 * 86400.0 - 10.0;  // ten seconds to midnight
    const auto sentences = sentencesOf(comparison);
    EXPECT_EQ(numberSaid(sentences, SentenceKey::RampWorst, "clock"), 2.0 * 86400.0);
    EXPECT_EQ(numberSaid(sentences, SentenceKey::RampWorst, "date"), 20620.0) << "16 June 2026";
}

TEST(Sentence, DoNothingBelowTheStressLineComesFirstAndNamesNoCulprit) {
    const auto sentences = sentencesOf(inTrouble());
    ASSERT_EQ(sentences[0].key, SentenceKey::Title);
    const std::size_t first = firstOf(sentences, SentencePart::DoNothing);
    ASSERT_EQ(sentences[first].key, SentenceKey::NothingBelowStress);
    EXPECT_LT(first, firstOf(sentences, SentencePart::Pond, 1));
    EXPECT_EQ(
        english(sentences[first]),
        "Left alone this pond goes below its stress line of 5.0 mg/L, first on night 2, for 12.3 of 48 h. It "
        "is lowest on night 2 at 05:40 on 2026-06-16, 1.3 mg/L in the fish water.");
    EXPECT_EQ(find(sentences, SentenceKey::NothingWorst), nullptr);
    EXPECT_EQ(said(inTrouble(), SentenceKey::NothingBelowLethal),
              "It spends under 0.1 of 48 h below the lethal line of 2.0 mg/L, first on night 2.");
}

TEST(Sentence, DoNothingAboveTheStressLineIsSaidFirstToo) {
    const auto sentences = sentencesOf(madeUpComparison());
    const std::size_t first = firstOf(sentences, SentencePart::DoNothing);
    EXPECT_EQ(sentences[first].key, SentenceKey::NothingWorst);
    EXPECT_EQ(sentences[first + 1].key, SentenceKey::NothingAbove);
    EXPECT_EQ(find(sentences, SentenceKey::NothingBelowStress), nullptr);
}

TEST(Sentence, HoursAndDosesCarryTheirNumbers) {
    Comparison comparison = inTrouble();
    EXPECT_EQ(said(comparison, SentenceKey::RampBelowLethal),
              "It spends 3.0 of 48 h below the lethal line of 2.0 mg/L, first on night 2; left alone under "
              "0.1 h.");
    comparison.model.bottom.volume = 1000.0;
    EXPECT_EQ(said(comparison, SentenceKey::RampLargestDose),
              "The largest dose is 80 % of the bottom water, on day 2 with 60 min of air.");
    comparison.model.bottom.volume = 4e5;
    EXPECT_EQ(said(comparison, SentenceKey::RampLargestDose),
              "The largest dose is under 1 % of the bottom water, on day 2 with 60 min of air.");
    EXPECT_EQ(said(comparison, SentenceKey::EndStateDrift),
              "It has not settled: the dawn low still changes by -0.2 mg/L a day.");
}

TEST(Sentence, TheDebtRatioFallsIntoTheTradesFourBands) {
    Comparison comparison = madeUpComparison();
    comparison.model.oxygenReserve_kg = 100.0;
    const auto band = [&](double debt_kg) {
        comparison.model.debt_kg = debt_kg;
        const auto sentences = sentencesOf(comparison);
        return (find(sentences, SentenceKey::DebtRatio) + 1)->key;
    };
    EXPECT_EQ(band(0.0), SentenceKey::RatioLow);
    EXPECT_EQ(band(14.9), SentenceKey::RatioLow);
    EXPECT_EQ(band(15.0), SentenceKey::RatioRampRequired);
    EXPECT_EQ(band(49.9), SentenceKey::RatioRampRequired);
    EXPECT_EQ(band(50.0), SentenceKey::RatioHigh);
    EXPECT_EQ(band(100.0), SentenceKey::RatioHigh);
    EXPECT_EQ(band(101.0), SentenceKey::RatioDoNotStart);
    EXPECT_EQ(
        said(comparison, SentenceKey::DebtRatio),
        "The oxygen debt of the bottom water is 101 kg and the oxygen above it 100 kg: a debt-to-pool ratio "
        "of 1.01.");
    for (const SentenceKey key : {SentenceKey::RatioLow, SentenceKey::RatioRampRequired,
                                  SentenceKey::RatioHigh, SentenceKey::RatioDoNotStart}) {
        EXPECT_NE(englishTemplate(key).find("common practice, no published source"), std::string_view::npos);
    }
}

TEST(Sentence, AMixedPondIsSaidToBeMixedAndHasNoDoses) {
    Comparison comparison = madeUpComparison();
    comparison.model.bottom = BottomWater{};
    const auto sentences = sentencesOf(comparison);
    EXPECT_NE(find(sentences, SentenceKey::Mixed), nullptr);
    EXPECT_EQ(find(sentences, SentenceKey::DebtRatio), nullptr);
    EXPECT_EQ(find(sentences, SentenceKey::RampLargestDose), nullptr);
    EXPECT_NE(find(sentences, SentenceKey::RampCapNotNeeded), nullptr);
}

TEST(Sentence, WhatIsGivenIsNotCalledAssumed) {
    const auto assumed = [](std::string_view text) {
        std::set<SentenceKey> keys;
        for (const Sentence& sentence : sentencesOf(madeUpComparison(text))) {
            keys.insert(sentence.key);
        }
        return keys;
    };
    const auto plain = assumed(kPlainPond);
    EXPECT_TRUE(plain.contains(SentenceKey::GuessedWindShelter));
    EXPECT_TRUE(plain.contains(SentenceKey::NoPower));
    EXPECT_FALSE(plain.contains(SentenceKey::GuessedFish));
    EXPECT_FALSE(plain.contains(SentenceKey::GuessedDebt));
    const std::string sheltered =
        with(kPlainPond, "utc_offset_h = -6", "utc_offset_h = -6\nwind_shelter = 0.5");
    EXPECT_FALSE(assumed(sheltered).contains(SentenceKey::GuessedWindShelter));
    const std::string fishless = with(kPlainPond, "[[fish]]\nkind = \"bass\"\nstock_kg_per_ha = 120\n", "");
    EXPECT_TRUE(assumed(fishless).contains(SentenceKey::GuessedFish));
    EXPECT_FALSE(assumed(fishless).contains(SentenceKey::GuessedFishMass));
}

TEST(Sentence, TheMassTakenForAFishIsTheOneThatIsSaid) {
    const auto stock = [](const char* mass) {
        const std::string text = with(kPlainPond, "stock_kg_per_ha = 120", mass);
        return madeUpComparison(text).model.parameters.fish.stock;
    };
    const auto sentences = sentencesOf(madeUpComparison());
    const Sentence* guessed = find(sentences, SentenceKey::GuessedFishMass);
    ASSERT_NE(guessed, nullptr);
    EXPECT_EQ(english(*guessed), "No mean mass is given for the bass: 250 g is taken.");
    EXPECT_EQ(stock("stock_kg_per_ha = 120"), stock("stock_kg_per_ha = 120\nmean_mass_g = 250"));
}

TEST(Sentence, AnUnusualBalanceWarnsAndItsMissIsSaid) {
    Comparison comparison = madeUpComparison();
    comparison.model.balance = {2.9, 1.0, 1.1, false, -0.66, 0.4};
    const auto sentences = sentencesOf(comparison);
    EXPECT_EQ(said(comparison, SentenceKey::BalanceUnusual), "");
    EXPECT_EQ(numberSaid(sentences, SentenceKey::Balance, "photosynthesis"), 2.9);
    EXPECT_EQ(numberSaid(sentences, SentenceKey::Balance, "respiration"), 1.0);
    EXPECT_EQ(numberSaid(sentences, SentenceKey::Balance, "wind"), 1.1);
    EXPECT_EQ(said(comparison, SentenceKey::BalanceMiss),
              "A usual day after the profile the computed water is off by -0.7 mg/L and 0.4 degC where it is "
              "off most "
              "(computed minus measured).");
    EXPECT_EQ(said(comparison, SentenceKey::BalanceContrary), "");
    comparison.model.balance = {1.0, 0.2, 1.0, true, -1.6, 0.4};
    EXPECT_NE(said(comparison, SentenceKey::BalanceUnusual), "");
    EXPECT_EQ(said(comparison, SentenceKey::BalanceMiss), "");
    EXPECT_NE(said(comparison, SentenceKey::BalanceContrary), "");
    comparison.model.balance = {1.0, 1.0, 1.0, true, 0.2, -1.2};
    EXPECT_NE(said(comparison, SentenceKey::BalanceContrary), "");
}

TEST(Sentence, ARunThatEndedEarlyIsSaidAndNotCompared) {
    Comparison comparison = madeUpComparison();
    comparison.runs[2].end = RunEnd::NotFinite;
    comparison.runs[2].message = "It broke at hour 7.";
    comparison.runs[3].end = RunEnd::NotRun;
    comparison.runs[3].days.clear();
    const auto sentences = sentencesOf(comparison);
    EXPECT_EQ(english(*find(sentences, SentenceKey::RampEndedEarly)),
              "doubling: the run ended early. It broke at hour 7.");
    EXPECT_EQ(test::sentencesWith(sentences, SentenceKey::RampWorst).size(), 1U);
}

TEST(Sentence, TheCautionsCloseEveryComparison) {
    const auto sentences = sentencesOf(madeUpComparison());
    EXPECT_EQ(sentences.back().key, SentenceKey::CautionIce);
    for (const SentenceKey key :
         {SentenceKey::CautionComparison, SentenceKey::CautionReadings, SentenceKey::CautionPermits,
          SentenceKey::CautionLifeSupport, SentenceKey::CentralRunOnly}) {
        EXPECT_NE(find(sentences, key), nullptr) << english({SentencePart::Caution, key, {}});
    }
}

/// Comparisons that together say everything there is to be said.
std::vector<Comparison> allKinds() {
    std::vector<Comparison> kinds{madeUpComparison(), inTrouble()};
    kinds.front().runs[2].endState = 3.0;
    kinds.front().runs[0].endState = 6.0;
    kinds.front().runs[2].days[0].liftedVolume = kinds.front().runs[2].days[1].liftedVolume = 0.0;
    kinds.front().runs[3].days[0].lowest = kinds.front().runs[3].days[1].lowest = 5.125;
    kinds.front().runs[3].hoursBelowStress = 0.0;

    kinds.push_back(test::withMembers(madeUpComparison()));
    kinds.back().ensemble->atFactorEnd = 3;
    kinds.push_back(test::withMembers(madeUpComparison()));
    kinds.back().model.pond.weather.observed = true;

    Comparison other = inTrouble();
    other.runs[3].capLiftedDay = 2;
    other.runs[2].end = RunEnd::Cancelled;
    other.runs[2].message = "It was stopped.";
    other.model.oxygenReserve_kg = 0.0;
    other.model.bottom.cause = BottomWater::Cause::Density;
    other.model.balance = {10.0, 1.0, 1.0, true, -2.0, 0.5};
    other.model.parameters.thresholds.altitudeCut = true;
    other.model.parameters.thresholds.fishMax = 20.0;
    other.runs[0].usualDays = 2;
    kinds.push_back(other);
    for (const double debt_kg : {10.0, 30.0, 70.0, 130.0}) {
        other = madeUpComparison();
        other.model.oxygenReserve_kg = 100.0;
        other.model.debt_kg = debt_kg;
        other.model.bottom.cause = BottomWater::Cause::Oxygen;
        kinds.push_back(other);
    }
    const std::string bare =
        with(with(with(with(kPlainPond,
                            "oxygen_debt_mg_per_l = { value = 14, low = 6, high = 30, sure = \"estimated\", "
                            "source = \"age and smell\" }\n",
                            ""),
                       "[[fish]]\nkind = \"bass\"\nstock_kg_per_ha = 120\n", ""),
                  "chlorophyll_ug_per_l = 70\n", ""),
             "dose_percent = 10", "dose_percent = 10\nhold = true");
    kinds.push_back(madeUpComparison(bare));
    kinds.push_back(
        madeUpComparison(with(bare, "smell = \"strong\"", "smell = \"strong\"\nstratified_days = 40")));
    kinds.back().model.bottom = BottomWater{};
    kinds.back().model.pond.ramps[2].hold = false;
    kinds.push_back(
        madeUpComparison(with(bare, "smell = \"strong\"", "smell = \"strong\"\nstratified_days = 40")));
    kinds.push_back(madeUpComparison(
        with(with(kPlainPond, "species_group = \"sport\"", "stress_mg_per_l = 4.5\nlethal_mg_per_l = 2"),
             "title = \"Test pond\"\n", "")));
    kinds.back().model.profileIsGuess = true;

    // Trout, salt, toxicants, a dated table, hold days, a surface aerator; and every number of causes.
    other = madeUpComparison(
        with(with(with(with(kPlainPond, "species_group = \"sport\"", "species_group = \"trout\""),
                       "[water]\n", "[water]\ntotal_ammonia_mg_per_l = 1\ntotal_sulfide_mg_per_l = 40\n"),
                  "[aerator]\n", "[surface_aerator]\nstandard_transfer_kg_per_h = 1\n\n[aerator]\n"),
             "dose_percent = 10", "dose_percent = 10\nweather_hold = true"));
    other.model.pond.weather.holdDays = {*other.model.pond.place.firstDay};
    other.model.pond.water.changes.emplace_back().date = *other.model.pond.place.firstDay;
    other.model.profile.salinity.assign(other.model.profile.depth.size(), 4.0);
    other.model.profile.salinity.back() = 12.0;
    other.model.profile.temperature.back() = other.model.profile.temperature.front();
    const std::array<double, 4> gains{2.0, 1.0, 0.5, 0.01};
    for (std::size_t i = 0; i < other.runs.size(); ++i) {
        RampRun& run = other.runs[i];
        run.days.front().lowest = 0.0;
        run.days.front().lowestTime = run.hours.front().time;
        for (HourRow& row : run.hours) {
            row.mean = 9.0;
            row.habitat = i == 0 ? 0.5 : 0.0;
            row.unionisedAmmonia = i == 1 ? 1.0 : 0.02;
            row.hydrogenSulfide = i == 1 ? 0.01 : 0.001;
        }
        for (std::size_t k = i; k < gains.size(); ++k) {
            run.attribution.push_back({CauseKind::Fish, gains[k]});
        }
    }
    kinds.push_back(other);
    return kinds;
}

/// Ponds whose readings give rise to every doubt, and to all that triage says of a start.
std::vector<Pond> oddPonds() {
    std::vector<Pond> ponds;
    const auto odd = [&](const std::vector<double>& temperature, const std::vector<double>& oxygen) -> Pond& {
        Pond& pond = ponds.emplace_back(madeUpComparison().model.pond);
        pond.profile->temperature = temperature;
        pond.profile->oxygen = oxygen;
        return pond;
    };
    const std::vector<double> layered{28.5, 27.5, 22, 20}, poor{8.5, 6.8, 0.3, 0};
    odd(layered, {12, 6.8, 0.3, 0}).bottom.age_years = Quantity(10);
    odd(layered, {12, 6.8, 0.3, 0}).water.chlorophyll_ugPerL = Quantity(5);
    odd(layered, {38, 6.8, 0.3, 0}).bottom.smell = Smell::None;
    ponds.back().bottom.age_years = Quantity(10);
    odd(layered, {7.5, 6.8, 0.3, 0}).place.elevation = Quantity(2400);
    odd(layered, poor).aerator->diffusers = Quantity(40);
    odd({27, 28.5, 22, 20}, poor);
    odd({27, 27.5, 27.5, 28}, poor);
    odd({27, 27, 27, 27}, poor);
    odd(layered, {8.5, 6.8, 1, 0.8});
    odd(layered, {8.5, 6.8, 0.3, 1.2}).aerator->depth = Quantity(1.0);
    odd({13, 13, 12, 10}, {10, 10, 9, 8});
    odd({13, 13, 12, 10}, poor);
    odd({1, 2, 3, 4}, poor);
    odd({24, 24, 24, 24}, {8, 8, 8, 8});

    // Every way to the debt, given and not given.
    const auto bottle = [](double parts, double oxygen) {
        return BottleTest{Quantity(parts),
                          Quantity(7.0),
                          Quantity(0.0),
                          {},
                          {},
                          {{Quantity(1440.0), Quantity(oxygen), Quantity(0.25)}}};
    };
    odd(layered, poor).bottleTest = bottle(3.0, 2.5);
    odd(layered, poor).bottom.oxygenDebt.reset();
    ponds.back().bottleTest = bottle(3.0, 6.5);
    ponds.back().water.methane = Quantity(20.0);
    ponds.back().water.totalAmmonia = Quantity(10.0);
    odd(layered, poor).bottom.oxygenDebt.reset();
    ponds.back().bottleTest = bottle(3.0, 0.5);
    return ponds;
}

MeasureResult madeUpMeasure(double share) {
    MeasureResult result;
    result.model = madeUpComparison().model;
    result.ramp = "gentle";
    result.members = 1000;
    result.low = 2.0;
    result.median = 4.0;
    result.high = 6.0;
    result.inputs.push_back({"oxygen_debt_mg_per_l", "mg/L", 6.0, 30.0, 5.0, 3.0, share, 0.8 * share,
                             1.2 * share, measuringWay("oxygen_debt_mg_per_l"), 1.0 - share});
    return result;
}

TEST(Sentence, EveryKeyIsSaidWithAllItsValues) {
    std::set<SentenceKey> keys;
    const auto note = [&](const std::vector<Sentence>& sentences) {
        for (const Sentence& sentence : sentences) {
            keys.insert(sentence.key);
            const std::string text = english(sentence);  // throws if a value is missing
            EXPECT_EQ(text.find_first_of("{}"), std::string::npos) << text;
            EXPECT_TRUE(text.ends_with('.') || sentence.key == SentenceKey::FileTitle) << text;
        }
    };
    const auto noteNights = [&](const Comparison& comparison) {
        for (std::size_t i = 0; i < comparison.runs.size(); ++i) {
            note(sentencesOfNight(comparison, 1, i));
            note(sentencesOfNight(comparison, 2, i));
            note(sentencesOfNights(comparison, i));
        }
    };
    for (const Comparison& comparison : allKinds()) {
        note(sentencesOf(comparison));
        noteNights(comparison);
    }
    Comparison alone = madeUpComparison();
    alone.runs.resize(1);
    noteNights(alone);
    Comparison caused = madeUpComparison();
    caused.runs[1].attribution.push_back({CauseKind::Fish, 1.0});  // of night 2, its worst
    noteNights(caused);
    note({filesWritten("\"out\"")});
    for (const Pond& odd : oddPonds()) {
        note(sentencesOf(odd, "odd.toml", {}));
    }
    Comparison weighed = test::withMembers(madeUpComparison());
    weighed.ensemble->weights.assign(200, 1.0);
    note(sentencesOf(weighed));
    note(sentencesOf(madeUpMeasure(0.3)));
    note(sentencesOf(madeUpMeasure(0.0)));
    Pond pond = madeUpComparison().model.pond;
    note(sentencesOf(pond, "pond.toml", {}));
    pond.ramps.clear();
    note(sentencesOf(pond, "pond.toml", {}));
    for (int i = 0; i < static_cast<int>(SentenceKey::Count); ++i) {
        const auto key = static_cast<SentenceKey>(i);
        if (key >= SentenceKey::LogTitle && key < SentenceKey::CautionComparison) {
            continue;  // of the log: said in sentence_log_test.cpp
        }
        if (key >= SentenceKey::AdviceCompared && key <= SentenceKey::CalendarMeaning) {
            continue;  // of the answer: said in sentence_advice_test.cpp
        }
        if (key >= SentenceKey::ChangeTitle && key <= SentenceKey::ChangeNoInput) {
            continue;  // of two answers: said in answer_change_test.cpp
        }
        if (key >= SentenceKey::PlanTitle && key <= SentenceKey::StressWorst) {
            continue;  // of plans: said in sentence_plan_test.cpp
        }
        EXPECT_TRUE(keys.contains(key)) << englishTemplate(key);
    }
}

TEST(Sentence, NoSentencePromisesSurvivalOrSafety) {
    for (int i = 0; i < static_cast<int>(SentenceKey::Count); ++i) {
        const std::string_view text = englishTemplate(static_cast<SentenceKey>(i));
        for (const char* word : {"safe", "guarantee", "will survive", "% survive", "eliminate"}) {
            EXPECT_EQ(text.find(word), std::string_view::npos) << text;
        }
    }
}

TEST(Sentence, APondFileSaysWhatItHolds) {
    const Pond pond = madeUpComparison().model.pond;
    const Diagnostics warnings{{Severity::Warning, "p.toml", 3, "title", "Odd."}};
    const std::string text = englishText(sentencesOf(pond, "p.toml", warnings));
    EXPECT_EQ(text.substr(0, text.find("\nTriage\n")),
              "p.toml: Test pond\n"
              "  Day 1 is 2026-06-14.\n"
              "  The weather covers 2026-06-14 to 2026-06-15.\n"
              "  Ramp \"at once\": continuous from the first day.\n"
              "  Ramp \"doubling\": run time multiplied from day to day.\n"
              "  Ramp \"gentle\": a cap on the daily dose.\n"
              "  Number of warnings: 1.\n");
}

}  // namespace
}  // namespace engine
