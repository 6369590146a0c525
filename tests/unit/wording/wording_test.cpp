#include "engine/wording/wording.h"

#include "engine/base/error.h"
#include "tests/sentences.h"

#include <gtest/gtest.h>

namespace engine {
namespace {

std::string shown(Measure measure, double number) {
    return shownValue({"x", measure, number, {}});
}

TEST(Wording, NumbersAreRoundedAsTheirMeasureAsks) {
    EXPECT_EQ(shown(Measure::Oxygen, 2.06), "2.1");
    EXPECT_EQ(shown(Measure::Oxygen, -0.04), "0.0");
    EXPECT_EQ(shown(Measure::Depth, 1.55), "1.6");
    EXPECT_EQ(shown(Measure::Minutes, 75.6), "76");
    EXPECT_EQ(shown(Measure::Percent, 9.96), "10");
    EXPECT_EQ(shown(Measure::Percent, 0.3), "under 1");
    EXPECT_EQ(shown(Measure::Percent, 0.0), "0");
    EXPECT_EQ(shown(Measure::Hours, 0.01), "under 0.1");
    EXPECT_EQ(shown(Measure::Hours, 0.0), "0.0");
    EXPECT_EQ(shown(Measure::Rate, 0.14), "+0.1");
    EXPECT_EQ(shown(Measure::Rate, -0.14), "-0.1");
    EXPECT_EQ(shown(Measure::Mass, 55.13), "55.1");
    EXPECT_EQ(shown(Measure::Mass, 334.2), "334");
    EXPECT_EQ(shown(Measure::Plain, 0.834), "0.83");
    EXPECT_EQ(shown(Measure::Plain, 0.0), "0");
    EXPECT_EQ(shown(Measure::Input, 2.5), "2.5");
}

TEST(Wording, AChanceIsOf100PondsAndNeverRoundedToNeverOrAlways) {
    EXPECT_EQ(shown(Measure::Of100, 0.0), "none");
    EXPECT_EQ(shown(Measure::Of100, 0.001), "fewer than 1");
    EXPECT_EQ(shown(Measure::Of100, 0.006), "1");
    EXPECT_EQ(shown(Measure::Of100, 0.254), "25");
    EXPECT_EQ(shown(Measure::Of100, 0.949), "95");
    EXPECT_EQ(shown(Measure::Of100, 0.999), "more than 99");
    EXPECT_EQ(shown(Measure::Of100, 1.0), "all");
}

TEST(Wording, ClocksWrapAroundMidnight) {
    EXPECT_EQ(shown(Measure::Clock, 5.0 * 3600.0 + 40.0 * 60.0), "05:40");
    EXPECT_EQ(shown(Measure::Clock, 86400.0 * 4.0 + 61.0), "00:01");
    EXPECT_EQ(shown(Measure::Clock, -3600.0), "23:00");
    EXPECT_EQ(shown(Measure::Clock, 86399.0), "00:00");
}

TEST(Wording, DaysAreDates) {
    EXPECT_EQ(shown(Measure::Day, 0.0), "1970-01-01");
    EXPECT_EQ(shown(Measure::Day, 20618.0), "2026-06-14");
}

TEST(Wording, ValuesMayStandInAnyOrderAndTheirBracesAreTheirOwn) {
    const std::vector<SentenceValue> values{{"low", Measure::Oxygen, 2.06, {}},
                                            {"ramp", Measure::Text, 0.0, "{low} and {nothing}"}};
    EXPECT_EQ(filled("{ramp}: {low} mg/L", values, shownValue), "{low} and {nothing}: 2.1 mg/L");
    EXPECT_EQ(filled("{low} mg/L: {ramp}", values, shownValue), "2.1 mg/L: {low} and {nothing}");
    EXPECT_EQ(filled("no place", values, shownValue), "no place");
    EXPECT_EQ(filled("", values, shownValue), "");
}

TEST(Wording, AMissingValueIsAFaultOfOurs) {
    EXPECT_THROW(static_cast<void>(filled("{low}", {}, shownValue)), InternalError);
    EXPECT_THROW(static_cast<void>(filled("{low", {}, shownValue)), InternalError);
    EXPECT_THROW(static_cast<void>(englishTemplate(SentenceKey::Count)), InternalError);
}

TEST(Wording, WhatWasPrintedIsKnownAgainByItsKey) {
    const Sentence dose{SentencePart::Ramp,
                        SentenceKey::RampLargestDose,
                        {{"dose", Measure::Percent, 80.0, {}},
                         {"day", Measure::Whole, 2.0, {}},
                         {"minutes", Measure::Minutes, 60.0, {}}}};
    const std::string text = "Heading\n    " + english(dose) + "\n" + english(dose);
    const auto found = test::saidIn(text, SentenceKey::RampLargestDose);
    ASSERT_EQ(found.size(), 2U);
    EXPECT_EQ(found[0], (test::Places{{"dose", "80"}, {"day", "2"}, {"minutes", "60"}}));
    EXPECT_EQ(test::placesSaid(text, SentenceKey::RampLargestDose, "day"),
              (std::vector<std::string>{"2", "2"}));
    EXPECT_TRUE(test::saidIn(text + " And more.", SentenceKey::RampLargestDose).size() == 1U);
    EXPECT_TRUE(test::saidIn("So: " + english(dose), SentenceKey::RampLargestDose).empty());
    EXPECT_TRUE(test::saidIn(text, SentenceKey::RampLiftsNothing).empty());
    EXPECT_TRUE(test::saidIn("", SentenceKey::RampLargestDose).empty());
}

TEST(Wording, TermsHaveTheirEnglish) {
    EXPECT_EQ(englishTerm("sport"), "sport fish");
    EXPECT_EQ(englishTerm("something else"), "something else");
}

}  // namespace
}  // namespace engine
