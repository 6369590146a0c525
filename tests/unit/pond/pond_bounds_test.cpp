// How much the readers of files take, and that what they take can be saved and opened again.
#include "engine/pond/csv.h"
#include "engine/pond/pond_check.h"
#include "engine/pond/pond_io.h"
#include "engine/pond/pond_keys.h"
#include "engine/pond/readings_csv.h"
#include "engine/pond/weather_csv.h"
#include "tests/pond_bad_input.h"
#include "tests/pond_texts.h"

#include <gtest/gtest.h>

#include <algorithm>

namespace engine::test {
namespace {

std::string repeated(std::string_view text, std::size_t times) {
    std::string out;
    for (std::size_t i = 0; i < times; ++i) {
        out += text;
    }
    return out;
}

Pond plainPond() {
    return *readPondText(kPlainPond, "bad.toml").pond;
}

/// The sentences of all errors that a check of the pond gives.
std::string errorsOf(const Pond& pond) {
    std::string text;
    for (const Diagnostic& one : checkPond(pond)) {
        text += one.severity == Severity::Error ? format(one) + '\n' : "";
    }
    return text;
}

TEST(PondBounds, APondThatCouldNotBeOpenedAgainOnceItIsSavedIsNotOpened) {
    // A backslash in a text takes one byte in single quotes and two in the form in which we save.
    std::string text(kPlainPond);
    for (int i = 0; i < 300; ++i) {
        text += "\n[[event]]\nat = 2026-06-15T05:40:00\nkind = \"note\"\nnote = '" +
                std::string(kLongestText_bytes, '\\') + "'\n";
    }
    ASSERT_LT(text.size(), std::size_t{4} << 20);
    const PondReading reading = readPondText(text, "bad.toml");
    EXPECT_FALSE(reading.pond);
    EXPECT_NE(said(reading).find("takes 5.7 MiB in the form in which it is saved"), std::string::npos)
        << said(reading).substr(0, 2000);
}

TEST(PondBounds, WhatIsOpenedCanBeSaved) {
    EXPECT_EQ(savingFault(plainPond()), std::nullopt);
    Pond pond = plainPond();
    pond.title = "\x1B\n\t\"\\'\x7F";
    pond.title += "\xE2\x80\xAE";
    Event event;
    event.at = pond.profile->at;
    event.kind = "note";
    event.note = pond.title;
    pond.events.push_back(event);
    pond.title = "as it was";
    EXPECT_EQ(savingFault(pond), std::nullopt);
    pond.ramps.front().name = "a\nb";  // no file may hold that
    ASSERT_TRUE(savingFault(pond));
    EXPECT_NE(savingFault(pond)->find("could not be opened again"), std::string::npos);
}

TEST(PondBounds, MoreThanAFileMayHoldIsRefusedWhereverItComesFrom) {
    Pond pond = plainPond();
    pond.title = std::string(kLongestText_bytes + 1, 'x');
    EXPECT_NE(errorsOf(pond).find("title: The text has 10001 bytes, but may have at most 10000."),
              std::string::npos);
    pond = plainPond();
    pond.readings.assign(kMostTables + 1, pond.readings.front());
    EXPECT_NE(errorsOf(pond).find("reading: The list has 5001 items, but may have at most 5000."),
              std::string::npos);
    pond = plainPond();
    for (std::size_t i = 0; pond.ramps.size() <= kMostRamps; ++i) {
        pond.ramps.push_back(pond.ramps.front());
        pond.ramps.back().name = "ramp " + std::to_string(i);
    }
    EXPECT_NE(errorsOf(pond).find("61 ramps, but may have at most 60"), std::string::npos);
    pond.ramps.pop_back();
    EXPECT_EQ(errorsOf(pond), "");
}

/// The first sentence that is said of a CSV text.
template <class Read>
std::string firstSaid(const std::string& text, Read read) {
    Diagnostics diagnostics;
    read(text, diagnostics);
    const auto error = std::find_if(diagnostics.begin(), diagnostics.end(),
                                    [](const Diagnostic& one) { return one.severity == Severity::Error; });
    return error == diagnostics.end() ? std::string() : error->sentence;
}

std::string loggerSaid(const std::string& text) {
    return firstSaid(text, [](const std::string& csv, Diagnostics& said) {
        static_cast<void>(readReadingsCsv(csv, "logger.csv", {}, 5.0, said));
    });
}

TEST(CsvBounds, RowsCellsAndTheirLengthAreBoundedInWords) {
    const std::string header = "at,depth_m,oxygen_mg_per_l\n", row = "2026-06-14 05:40,0.5,5\n";
    EXPECT_EQ(loggerSaid(header + repeated(row, kMostCsvRows)), "");
    EXPECT_NE(loggerSaid(header + repeated(row, kMostCsvRows + 1)).find("more than 200000 rows"),
              std::string::npos);
    const std::string wide = "at,depth_m,oxygen_mg_per_l" + std::string(900, ',') + "\n";
    EXPECT_NE(loggerSaid(wide + repeated("2026-06-14 05:40,0.5,5" + std::string(900, ',') + "\n", 3000))
                  .find("more than 2000000 cells"),
              std::string::npos);
    EXPECT_NE(loggerSaid(std::string(kLongestCell_bytes + 1, 'x')).find("more than 10000 bytes"),
              std::string::npos);
    EXPECT_NE(loggerSaid('"' + std::string(kLongestCell_bytes + 1, 'x') + '"').find("more than 10000 bytes"),
              std::string::npos);
    const std::string weather =
        firstSaid("at,air_c,humidity_percent,wind_m_per_s,cloud_percent\n" +
                      repeated("2026-06-14 05:00,20,50,2,50\n", kMostCsvRows + 1),
                  [](const std::string& csv, Diagnostics& said) {
                      static_cast<void>(readWeatherCsv(csv, "hours.csv", HourStamp::Start, said));
                  });
    EXPECT_NE(weather, "");
}

}  // namespace
}  // namespace engine::test
