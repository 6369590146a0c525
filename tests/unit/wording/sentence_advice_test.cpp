#include "engine/wording/sentence_advice.h"

#include "engine/output/advice_io.h"
#include "engine/wording/wording.h"
#include "tests/made_up_comparison.h"
#include "tests/sentences.h"

#include <gtest/gtest.h>

#include <set>

namespace engine {
namespace {

/// Advice in which everything stands that can.
Advice fullAdvice(const Comparison& comparison) {
    Advice out = adviceOn(comparison, 1);
    out.surfaceAir = {1500.0 * 1.5 / 3600.0, 22 * 3600.0, 7.5 * 3600.0};
    out.surfaceAir_kW = 1.5;
    out.worstWithoutSurfaceAir = 1.75;
    out.weakest = WeakestMoment{Date(std::chrono::year(2026) / 6 / 16), 2.25, 3.0, 4};
    out.endState = 4.5;
    out.endStateAlone = 4.0;
    out.holdDays = {Date(std::chrono::year(2026) / 6 / 15)};
    out.readings = {{"oxygen_debt_mg_per_l", "mg/L", 8.0, true}, {"stock_kg_per_ha", "kg/ha", 400.0, false}};
    out.provisional = {ProvisionalReason::DebtGuessed, ProvisionalReason::OneProfile,
                       ProvisionalReason::FewDawns};
    for (const StartCondition condition :
         {StartCondition::LethalWith, StartCondition::LethalAlone, StartCondition::LethalAdded,
          StartCondition::DawnReading, StartCondition::Algaecide, StartCondition::FirstDose,
          StartCondition::Gases, StartCondition::MorningStops, StartCondition::MorningHolds,
          StartCondition::EndState, StartCondition::Frost}) {
        out.unmet.push_back({condition, 12.0, 5.0, 3});
    }
    return out;
}

TEST(SentenceAdvice, EveryKeyIsSaidWithAllItsValues) {
    const Comparison comparison = test::withMembers(test::madeUpComparison());
    std::set<SentenceKey> keys;
    const auto note = [&](const Advice& advice) {
        std::vector<Sentence> said = sentencesOf(advice, comparison.model);
        const std::vector<Sentence> months = sentencesOf(advice.calendar, comparison.model);
        said.insert(said.end(), months.begin(), months.end());
        for (const Sentence& sentence : said) {
            keys.insert(sentence.key);
            const std::string text = english(sentence);  // throws if a value is missing
            EXPECT_EQ(text.find_first_of("{}"), std::string::npos) << text;
            EXPECT_TRUE(text.ends_with('.')) << text;
            const std::string& named =
                sentence.key == SentenceKey::AdviceLeastHarmful ? advice.leastHarmful : advice.ramp;
            EXPECT_EQ(text.find("\""), text.find("\"" + named + "\"")) << text;
        }
    };
    for (const AdviceKind kind : {AdviceKind::Start, AdviceKind::StartWithSurfaceAir, AdviceKind::WaitUntil,
                                  AdviceKind::NoRampNeeded, AdviceKind::NoGain}) {
        Advice advice = fullAdvice(comparison);
        advice.kind = kind;
        advice.leastHarmful = advice.ramp;
        if (kind == AdviceKind::WaitUntil) {
            advice.wait = WaitWindow{
                {Date(std::chrono::year(2026) / 10 / 15), Date(std::chrono::year(2026) / 11 / 26)}, false};
            advice.calendar.months = {MonthOfStart()};
        } else {
            advice.readings = {{"muck_m", "m", std::nullopt, false}};
        }
        if (kind == AdviceKind::NoRampNeeded) {
            advice.holdDays.clear();
            advice.lethal = LineChance{0.1, 0.2};
            advice.stress = LineChance{0.5, 0.5};
        }
        note(advice);
    }
    Advice climate = fullAdvice(comparison);
    climate.kind = AdviceKind::WaitUntil;
    climate.wait =
        WaitWindow{{Date(std::chrono::year(2026) / 10 / 1), Date(std::chrono::year(2026) / 10 / 31)}, true};
    note(climate);
    MonthOfStart may, mayNot, ice;
    may.from = Date(std::chrono::year(2026) / 10 / 15);
    may.isAired = true;
    mayNot.from = Date(std::chrono::year(2026) / 7 / 15);
    mayNot.unmet = climate.unmet;
    ice.from = Date(std::chrono::year(2027) / 1 / 15);
    ice.isIcy = true;
    for (const ClimateOrigin origin :
         {ClimateOrigin::Months, ClimateOrigin::TypicalYear, ClimateOrigin::Place}) {
        climate.calendar = {origin, {mayNot, may, ice}};
        note(climate);
    }
    note(adviceOn(comparison, 1));
    note(adviceOn(comparison, 0));
    Advice none = adviceOn(comparison, 0);
    none.kind = AdviceKind::NoGain;
    none.endStateAlone = 3.0;
    note(none);
    none.kind = AdviceKind::WaitUntil;
    none.wait = climate.wait;
    note(none);
    for (const std::optional<AdviceKind> kind :
         {std::optional<AdviceKind>(), std::optional(AdviceKind::NoGain),
          std::optional(AdviceKind::WaitUntil)}) {
        Advice warm = adviceOn(comparison, 1);
        warm.kind = kind;
        warm.wait = climate.wait;
        warm.warm = warm.warmAlone = WarmNight{20.0, 20.0, 4.0, 18.5, 2.5, 3};
        note(warm);
    }
    Advice warm = adviceOn(comparison, 0);
    warm.warm = WarmNight{20.0, 20.0, 0.0, 21.5, 2.5, 3};
    note(warm);
    keys.insert(SentenceKey::HoldWeather);  // a part of a sentence, below
    for (int i = static_cast<int>(SentenceKey::AdviceCompared);
         i <= static_cast<int>(SentenceKey::CalendarMeaning); ++i) {
        EXPECT_TRUE(keys.contains(static_cast<SentenceKey>(i)))
            << englishTemplate(static_cast<SentenceKey>(i));
    }
}

TEST(SentenceAdvice, NamesTheWeatherThatHoldsByTheRulesOfTheCalendar) {
    HoldRules rules;
    EXPECT_EQ(
        english(holdWeather(rules)),
        "2 dull days in the next 3; air of 35 degC or more, or of 28 degC without wind; water of 30 degC or "
        "more; a storm or a front within 2 days");
    rules.hotAir = 33.0;
    rules.front_h = 72.0;
    const std::string other = english(holdWeather(rules));
    EXPECT_NE(other.find("air of 33 degC"), std::string::npos) << other;
    EXPECT_NE(other.find("within 3 days"), std::string::npos) << other;
}

TEST(AdviceIo, MonthsHaveARowEachAndOnesWithIceNoNumbers) {
    Advice advice;
    advice.ramp = "doubling";
    MonthOfStart june, january;
    june.from = Date(std::chrono::year(2026) / 6 / 15);
    june.debt = 8.5;
    june.lowest = 1.25;
    june.alone = 3.5;
    june.lethal = 0.12345;
    june.unmet = {{StartCondition::LethalWith, 12.0, 5.0, 0}};
    january.from = Date(std::chrono::year(2027) / 1 / 15);
    january.isIcy = true;
    advice.calendar.months = {june, january};
    EXPECT_EQ(calendarCsv(advice),
              "ramp,from,ice,oxygen_to_the_bottom,debt_mg_per_l,lowest_mg_per_l,lowest_alone_mg_per_l,"
              "lethal_chance_percent,lethal_chance_alone_percent,may_start\r\n"
              "doubling,2026-06-15,no,no,8.5,1.25,3.5,12.35,0,no\r\n"
              "doubling,2027-01-15,yes,,,,,,,\r\n");
}

TEST(AdviceIo, HasEveryFieldOfTheContractAndNothingWhereItDoesNotApply) {
    const Comparison comparison = test::withMembers(test::madeUpComparison());
    Advice advice = fullAdvice(comparison);
    advice.kind = AdviceKind::StartWithSurfaceAir;
    EXPECT_EQ(
        adviceCsv(advice, "abc"),
        "field,value\r\nkind,start_with_surface_air\r\nramp,at once\r\nfirst_day,2026-06-14\r\n"
        "days_to_sustained,\r\nworst_mg_per_l,3.25\r\nworst_night,2\r\nlethal_chance_percent,1.5\r\n"
        "lethal_chance_alone_percent,0\r\nlethal_chance_added_percent,1.5\r\nstress_chance_percent,46\r\n"
        "stress_chance_alone_percent,30\r\nstress_chance_added_percent,16\r\nend_state_mg_per_l,4.5\r\n"
        "end_state_alone_mg_per_l,4\r\ndebt_left_percent,125\r\nsurface_air_kw,1.5\r\nsurface_air_from,22:"
        "00\r\n"
        "surface_air_until,07:30\r\nwait_from,\r\nwait_until,\r\nhold_days,2026-06-15\r\n"
        "first_reading,oxygen_debt_mg_per_l below 8.00 mg/L\r\nsecond_reading,stock_kg_per_ha above 400 "
        "kg/ha\r\n"
        "provisional,yes\r\nrun,abc\r\ndull_days_from,2026-06-16\r\ndull_days_worst_mg_per_l,2.25\r\n"
        "dull_days_alone_mg_per_l,3\r\n");
    const std::string bare = adviceCsv(adviceOn(test::madeUpComparison(), 1));
    EXPECT_NE(bare.find("kind,\r\n"), std::string::npos) << "where no answer was asked for";
    EXPECT_NE(bare.find("lethal_chance_percent,\r\n"), std::string::npos) << "without members";
    EXPECT_NE(bare.find("surface_air_kw,\r\n"), std::string::npos);
}

}  // namespace
}  // namespace engine
