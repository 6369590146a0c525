// Every key is said somewhere, with all its values, and promises nothing.
#include "engine/ensemble/measure.h"
#include "engine/wording/sentence.h"
#include "engine/wording/sentence_measure.h"
#include "engine/wording/wording.h"
#include "tests/made_up_comparison.h"
#include "tests/sentences.h"

#include <gtest/gtest.h>

#include <set>

namespace engine {
namespace {

using test::inTrouble;
using test::kPlainPond;
using test::madeUpComparison;
using test::with;

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
    other.model.balance = {10.0, 1.0, 1.0, true, {}, -2.0, 0.5};
    other.model.parameters.thresholds.altitudeCut = true;
    other.model.parameters.thresholds.fishMax = 20.0;
    other.runs[0].usualDays = 2;
    kinds.push_back(other);
    other.model.balance.loggerDepth = 0.5;
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

TEST(EverySentence, IsSaidWithAllItsValues) {
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

TEST(EverySentence, PromisesNoSurvivalOrSafety) {
    for (int i = 0; i < static_cast<int>(SentenceKey::Count); ++i) {
        const std::string_view text = englishTemplate(static_cast<SentenceKey>(i));
        for (const char* word : {"safe", "guarantee", "will survive", "% survive", "eliminate"}) {
            EXPECT_EQ(text.find(word), std::string_view::npos) << text;
        }
    }
}

}  // namespace
}  // namespace engine
