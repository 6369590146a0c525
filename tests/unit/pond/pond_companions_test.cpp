// The CSV files of a pond file, found beside it, and what is said when they are not as they should be.
#include "engine/pond/local_time.h"
#include "engine/pond/pond_io.h"
#include "tests/epw_text.h"
#include "tests/pond_texts.h"
#include "tests/temporary_folder.h"
#include "tests/trial_data.h"

#include <gtest/gtest.h>

#include <clocale>
#include <filesystem>

namespace engine {
namespace {

using test::kPlainPond;

class PondCompanions : public testing::Test {
protected:
    /// Reads a pond file; the test's folder is left out of what is said.
    PondReading read(const std::string& text) {
        m_folder.write("pond.toml", text);
        PondReading reading = readPond(m_folder.path() / "pond.toml");
        m_said.clear();
        for (const auto& diagnostic : reading.diagnostics) {
            std::string line = format(diagnostic);
            const std::string folder = m_folder.path().string() + "/";
            for (auto at = line.find(folder); at != std::string::npos; at = line.find(folder)) {
                line.erase(at, folder.size());
            }
            m_said += line + '\n';
        }
        return reading;
    }

    /// The plain pond with weather of hours in place of days.
    static std::string hourly(const std::string& table) {
        std::string text(kPlainPond);
        const auto from = text.find("[[weather.day]]");
        return text.replace(from, text.find("[aerator]") - from, table + "\n");
    }

    static std::string hours() {
        std::string rows = "at,air_c,humidity_percent,wind_m_per_s,cloud_percent\n";
        for (int i = 0; i < 48; ++i) {
            rows += "2026-06-" + std::to_string(14 + i / 24) + " " + formatClock({60 * (i % 24)}) +
                    ",20,60,2,30\n";
        }
        return rows;
    }

    test::TemporaryFolder m_folder;
    std::string m_said;
};

constexpr const char* kHourlyTable = "[weather]\nfile = \"hours.csv\"\nstamp = \"end\"\n";  // lines 36 to 38

TEST_F(PondCompanions, AreReadFromBesideThePondFile) {
    m_folder.write("hours.csv", hours());
    m_folder.write("logger.csv", "at,depth_m,temperature_c,oxygen_mg_per_l\n2026-06-13 05:00,0.5,25,4\n");
    const auto reading = read(hourly(kHourlyTable) + "\n[readings]\nfile = \"logger.csv\"\n");
    ASSERT_TRUE(reading.pond) << m_said;
    EXPECT_EQ(reading.pond->weather.hours.size(), 48U);
    EXPECT_EQ(reading.pond->weather.hours[0].start, parseLocalTime("2026-06-13 23:00"));
    EXPECT_EQ(reading.pond->fileReadings.size(), 1U);
    EXPECT_EQ(reading.pond->readings.size(), 1U);
}

TEST_F(PondCompanions, WarningsLeaveThePond) {
    std::string rows = hours();
    rows.replace(rows.find("cloud_percent\n"), 14, "cloud_percent,mist_mm\n");
    for (auto at = rows.find(",30\n"); at != std::string::npos; at = rows.find(",30\n")) {
        rows.replace(at, 4, ",30,0\n");
    }
    m_folder.write("hours.csv", rows);
    EXPECT_TRUE(read(hourly(kHourlyTable)).pond);
    EXPECT_EQ(m_said, "hours.csv:1: warning: This column is not used: \"mist_mm\".\n");
}

TEST_F(PondCompanions, WhatIsNotThereIsSaidAtItsKey) {
    EXPECT_FALSE(read(hourly(kHourlyTable)).pond);
    EXPECT_EQ(m_said, "pond.toml:37: weather.file: \"hours.csv\" cannot be used: There is no such file.\n");
    std::filesystem::create_directory(m_folder.path() / "hours.csv");
    EXPECT_FALSE(read(hourly(kHourlyTable)).pond);
    EXPECT_EQ(m_said,
              "pond.toml:37: weather.file: \"hours.csv\" cannot be used: This is a directory, not a file.\n");
    EXPECT_FALSE(read(std::string(kPlainPond) + "[readings]\nfile = \"\"\n").pond);
    EXPECT_EQ(m_said, "pond.toml:79: readings.file: The text must not be empty.\n");
    EXPECT_FALSE(read(std::string(kPlainPond) + "[readings]\n").pond);
    EXPECT_EQ(m_said, "pond.toml:78: readings.file: This key is missing.\n");
    EXPECT_FALSE(read(std::string(kPlainPond) + "[readings]\nfile = \"a\\u0000b\"\n").pond);
    EXPECT_EQ(m_said,
              "pond.toml:79: readings.file: The text \"a\\x00b\" must not hold line breaks or other control "
              "characters.\n");
}

TEST_F(PondCompanions, ATypicalYearIsReadFromBesideThePondFile) {
    const std::string text = std::string(kPlainPond) + "\n[climate]\nfile = \"year.epw\"\n";
    EXPECT_FALSE(read(text).pond);
    EXPECT_EQ(m_said, "pond.toml:80: climate.file: \"year.epw\" cannot be used: There is no such file.\n");
    m_folder.write("year.epw", test::epwText());
    const auto reading = read(text);
    ASSERT_TRUE(reading.pond) << m_said;
    EXPECT_EQ(m_said, "");
    EXPECT_EQ(reading.pond->climate.fileMonths.size(), 12U);
    EXPECT_TRUE(reading.pond->climate.months.empty());
    EXPECT_FALSE(savingFault(*reading.pond)) << "the months of the file are not part of the pond's";
    read(test::with(text, "latitude_deg = 36", "latitude_deg = 39"));
    EXPECT_EQ(
        m_said,
        "year.epw:1: warning: latitude_deg: The file's station is at 36.2 degrees north, but the pond is "
        "at 39 degrees north: its weather may be another.\n");
    m_folder.write("year.epw", "at,air_c\n");
    EXPECT_FALSE(read(text).pond);
    EXPECT_EQ(m_said,
              "year.epw:1: Line 1 of a typical year in the EPW form begins with LOCATION, but this one with "
              "\"at\".\n");
}

TEST_F(PondCompanions, AFileNeedsItsStamp) {
    m_folder.write("hours.csv", hours());
    EXPECT_FALSE(read(hourly("[weather]\nfile = \"hours.csv\"\n")).pond);
    EXPECT_TRUE(m_said.starts_with("pond.toml:36: weather.stamp: This key is missing; an hourly file needs"))
        << m_said;
    EXPECT_FALSE(read(hourly("[weather]\nfile = \"hours.csv\"\nstamp = \"middle\"\n")).pond);
    EXPECT_EQ(
        m_said,
        "pond.toml:38: weather.stamp: This is the text \"middle\", but must be \"start\" or \"end\".\n");
    EXPECT_FALSE(read(hourly("[weather]\nfile = 3\nstamp = \"end\"\n")).pond);
    EXPECT_EQ(m_said, "pond.toml:37: weather.file: This is the number 3, but must be a text in quotes.\n");
}

TEST_F(PondCompanions, TheirFaultsComeAfterThoseOfThePondFile) {
    m_folder.write("hours.csv", "at;air_c\n");
    m_folder.write("logger.csv", "at,depth_m,temperature_c,oxygen_mg_per_l\n2026-06-13 05:00,3.5,25,4\n");
    std::string text = hourly(kHourlyTable) + "\n[readings]\nfile = \"logger.csv\"\n";
    text = test::with(text, "smell = \"strong\"", "smell = \"odd\"");
    EXPECT_FALSE(read(text).pond);
    EXPECT_EQ(m_said,
              "pond.toml:20: bottom.smell: This is the text \"odd\", but must be \"none\", \"faint\" or "
              "\"strong\".\n"
              "hours.csv:1: The columns are separated by semicolons, but must be separated by commas, with a "
              "point in "
              "decimal numbers.\n"
              "logger.csv:2: depth_m: The depth 3.5 m lies below the bottom, which is at 3.4 m.\n");
}

TEST_F(PondCompanions, RubbishIsRefused) {
    m_folder.write("hours.csv", std::string(1000, '\xFF'));
    EXPECT_FALSE(read(hourly(kHourlyTable)).pond);
    EXPECT_EQ(m_said,
              "hours.csv:1: This is not a text in UTF-8: the byte FF (hexadecimal) cannot stand here.\n");
    m_folder.write("hours.csv", "");
    std::filesystem::resize_file(m_folder.path() / "hours.csv", (std::uintmax_t{64} << 20) + 1);
    EXPECT_FALSE(read(hourly(kHourlyTable)).pond);
    EXPECT_EQ(m_said,
              "pond.toml:37: weather.file: \"hours.csv\" cannot be used: The file is larger than 64 MiB, the "
              "most that "
              "is read of such a file.\n");
}

TEST_F(PondCompanions, ADecimalCommaLocaleChangesNothing) {
    const std::string before = std::setlocale(LC_ALL, nullptr);
    const bool hasComma =
        std::setlocale(LC_ALL, "de_DE.UTF-8") != nullptr || std::setlocale(LC_ALL, "fr_FR.UTF-8");
    m_folder.write("hours.csv", hours());
    const auto days = read(std::string(kPlainPond));
    const auto withHours = read(hourly(kHourlyTable));
    std::setlocale(LC_ALL, before.c_str());
    ASSERT_TRUE(days.pond && withHours.pond) << m_said;
    EXPECT_EQ(days.pond->place.latitude_deg, Quantity(36.0));
    EXPECT_EQ(days.pond->basin.maxDepth, Quantity(3.4));
    EXPECT_EQ(writePond(*days.pond), kPlainPond);
    if (!hasComma) {
        GTEST_SKIP() << "this machine has no locale with a decimal comma";
    }
}

TEST(TrialData, ThePondOfTheTrialDataIsRead) {
    const auto folder = test::trialData("pond-c");
    if (!folder) {
        GTEST_SKIP() << test::kNoTrialData << "pond-c";
    }
    const auto pondC = *folder / "pond-c";
    std::string text(kPlainPond);
    const auto from = text.find("[[weather.day]]");
    text.replace(from, text.find("[aerator]") - from,
                 "[weather]\nfile = \"" + (pondC / "weather.csv").string() +
                     "\"\nstamp = \"end\"\nobserved = true\n\n");
    text += "\n[readings]\nfile = \"" + (pondC / "readings.csv").string() + "\"\n";
    const auto reading = readPondText(text, "trial.toml");
    ASSERT_TRUE(reading.pond) << format(reading.diagnostics.front());
    EXPECT_GE(reading.pond->weather.hours.size(), 24U * 7U);
    EXPECT_GE(reading.pond->fileReadings.size(), 300U);
    EXPECT_EQ(reading.pond->weather.hours.front().start, parseLocalTime("2020-05-23 23:00"));
}

}  // namespace
}  // namespace engine
