#include "widgets/document/number_text.h"

#include <gtest/gtest.h>

#include <cmath>
#include <utility>
#include <vector>

namespace widgets {
namespace {

const QLocale kGerman(QLocale::German, QLocale::Germany);
const QLocale kAmerican(QLocale::English, QLocale::UnitedStates);
const std::vector<QLocale> kLocales{kAmerican, kGerman, QLocale::c(), QLocale(QLocale::French),
                                    QLocale(QLocale::German, QLocale::Switzerland)};
constexpr engine::NumberRule kDepth{0.1, 60.0, "m"};
constexpr engine::NumberRule kMinutes{0.0, 1440.0, "min", false, true};

TEST(NumberText, CommaAndPointAreBothDecimalSignsInEveryLocale) {
    for (const QLocale& locale : kLocales) {
        for (const char* text : {"1.5", "1,5", " 1.5 ", "1.500", "1,500", "+1,5", "01.5"}) {
            const auto reading = readNumber(QString::fromUtf8(text), locale);
            EXPECT_TRUE(reading.fault.isEmpty()) << text << ": " << reading.fault.toStdString();
            EXPECT_EQ(reading.value, 1.5) << text << " in " << locale.name().toStdString();
        }
        EXPECT_EQ(readNumber(QStringLiteral("-2"), locale).value, -2.0);
        EXPECT_EQ(readNumber(QStringLiteral("\u2212,5"), locale).value, -0.5);
        EXPECT_EQ(readNumber(QStringLiteral("5,"), locale).value, 5.0);
        EXPECT_FALSE(std::signbit(readNumber(QStringLiteral("-0"), locale).value));
    }
}

TEST(NumberText, WhatIsNoNumberIsRefusedInWords) {
    for (const QLocale& locale : kLocales) {
        for (const char* text : {"1.234,5", "1,234.5", "1.2.3", "1,,5", "1 000", "1'000", "abc", "e3", "nan",
                                 "inf", "0x10", "--1", "", ".", "-", "5 min"}) {
            EXPECT_FALSE(readNumber(QString::fromUtf8(text), locale).fault.isEmpty()) << text;
        }
    }
    EXPECT_EQ(readNumber(QStringLiteral("1.234,5"), kGerman).fault.toStdString(),
              "“1.234,5” has more than one decimal sign.");
}

TEST(NumberText, OutOfRangeIsSaidWithValueUnitAndRange) {
    EXPECT_EQ(readNumber(QStringLiteral("60,5"), kDepth, kGerman).fault.toStdString(),
              "The value is 60,5 m, but must be from 0,1 to 60 m.");
    EXPECT_EQ(readNumber(QStringLiteral("0"), engine::NumberRule{0.0, 1.0, "degC", true}, kAmerican)
                  .fault.toStdString(),
              "The value is 0 °C, but must be above 0 and at most 1 °C.");
    EXPECT_EQ(readNumber(QStringLiteral("1.5"), kMinutes, kAmerican).fault.toStdString(),
              "The value is 1.5 min, but must be a whole number.");
    EXPECT_TRUE(readNumber(QStringLiteral("0.1"), kDepth, kAmerican).fault.isEmpty());
    EXPECT_TRUE(readNumber(QStringLiteral("60"), kDepth, kAmerican).fault.isEmpty());
}

TEST(NumberText, IsShownShortestWithTheLocalesSign) {
    EXPECT_EQ(numberText(1234567.25, kGerman).toStdString(), "1234567,25");
    EXPECT_EQ(numberText(1234567.25, kAmerican).toStdString(), "1234567.25");
    EXPECT_EQ(numberText(0.1, kGerman).toStdString(), "0,1");
    EXPECT_EQ(numberText(30.0, kGerman).toStdString(), "30");
}

TEST(NumberText, EveryNumberReadsBack) {
    for (const QLocale& locale : kLocales) {
        for (const double value :
             {0.0, 0.1, -2.5, 1.0 / 3.0, 1440.0, 1234.5, 0.05, 1e-7, 1e12, 123456789.125}) {
            EXPECT_EQ(readNumber(numberText(value, locale), locale).value, value);
        }
        for (const std::vector<double>& values :
             {std::vector<double>{30.0}, {30.0, 60.0, 120.0}, {2.5, 3.0, 0.1}, {}}) {
            const auto reading = readNumbers(numbersText(values, locale), {0.0, 1440.0, ""}, locale);
            EXPECT_TRUE(reading.fault.isEmpty()) << reading.fault.toStdString();
            EXPECT_EQ(reading.value, values) << locale.name().toStdString();
        }
    }
}

struct ListCase {
    const char* text;
    std::vector<double> german, american;  ///< Empty: refused.
};

TEST(NumberText, ListsOfWholeNumbers) {
    for (const char* text : {"30, 60, 120", "30; 60; 120", "30;60;120", "30 60 120", "30,60,120",
                             " 30 ,60 , 120; ", "30,  60\t120"}) {
        for (const QLocale& locale : kLocales) {
            const auto reading = readNumbers(QString::fromUtf8(text), kMinutes, locale);
            EXPECT_EQ(reading.value, (std::vector<double>{30.0, 60.0, 120.0}))
                << text << ": " << reading.fault.toStdString();
        }
    }
    EXPECT_FALSE(readNumbers(QStringLiteral("30;;60"), kMinutes, kAmerican).fault.isEmpty());
    EXPECT_FALSE(readNumbers(QStringLiteral("30; 2000"), kMinutes, kAmerican).fault.isEmpty());
    EXPECT_FALSE(readNumbers(QStringLiteral("30; x"), kMinutes, kAmerican).fault.isEmpty());
    EXPECT_TRUE(readNumbers(QStringLiteral("  "), kMinutes, kAmerican).value.empty());
}

TEST(NumberText, ListsOfDecimalsNeverGuess) {
    const ListCase cases[] = {
        {"1.5, 2.5", {1.5, 2.5}, {1.5, 2.5}},
        {"1,5; 2,5", {1.5, 2.5}, {1.5, 2.5}},
        {"1,5 2,5", {1.5, 2.5}, {}},  // in a point locale it could be four numbers
        {"1,5", {1.5}, {}},           // one number, or two
        {"1, 5", {1.0, 5.0}, {1.0, 5.0}},
        {"1.5,2.5", {}, {1.5, 2.5}},
        {"1,5,2", {}, {1.0, 5.0, 2.0}},
        {"2.5", {2.5}, {2.5}},
    };
    for (const ListCase& one : cases) {
        for (const auto& [locale, expected] :
             {std::pair(kGerman, one.german), std::pair(kAmerican, one.american)}) {
            const auto reading = readNumbers(QString::fromUtf8(one.text), kDepth, locale);
            EXPECT_EQ(reading.fault.isEmpty(), !expected.empty())
                << one.text << " in " << locale.name().toStdString() << ": " << reading.fault.toStdString();
            if (reading.fault.isEmpty()) {
                EXPECT_EQ(reading.value, expected) << one.text << " in " << locale.name().toStdString();
            }
        }
    }
}

}  // namespace
}  // namespace widgets
