#include "engine/advice/frozen_run.h"

#include "engine/base/digest.h"
#include "engine/output/results_io.h"
#include "engine/pond/pond_io.h"
#include "tests/epw_text.h"
#include "tests/pond_texts.h"
#include "tests/temporary_folder.h"

#include <gtest/gtest.h>

#include <algorithm>

namespace engine {
namespace {

using test::TemporaryFolder;

const std::chrono::sys_seconds kTime =
    std::chrono::sys_days(std::chrono::year(2026) / 6 / 14) + std::chrono::hours(9);

Pond plainPond() {
    const PondReading reading = readPondText(test::kPlainPond, "pond.toml");
    if (!reading.pond) {
        throw std::runtime_error("the plain pond cannot be read");
    }
    return *reading.pond;
}

TEST(FrozenRun, ItsStatementNamesAllThatDecidesItsNumbers) {
    EXPECT_EQ(statementOf({{"pond.toml", "abc"}}, {"0.1.0", kTime, 7, 200, 19, "gentle"}),
              "Dawnline run\nversion 0.1.0\ntime 2026-06-14T09:00:00Z\nseed 7\nmembers 200\nnights 19\nramp "
              "gentle\n"
              "sha256 ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad  pond.toml\n");
}

TEST(FrozenRun, APondIsFrozenInOurOwnForm) {
    const auto frozen = std::get<FrozenPond>(freeze(plainPond(), "folder/any name.toml"));
    ASSERT_EQ(frozen.files.size(), 1U);
    EXPECT_EQ(frozen.files[0].name, "pond.toml");
    const PondReading again = readPondText(frozen.files[0].text, "pond.toml");
    ASSERT_TRUE(again.pond.has_value());
    EXPECT_EQ(*again.pond, plainPond());
}

TEST(FrozenRun, ACsvFileIsFrozenUnderANameOfItsOwn) {
    const TemporaryFolder folder;
    const std::string csv = "at,depth_m,temperature_c,oxygen_mg_per_l\r\n2026-06-14 06:00,0.5,25,4\r\n";
    folder.write("my logger.csv", csv);
    Pond pond = plainPond();
    pond.readingsFile.name = "my logger.csv";
    const auto frozen = std::get<FrozenPond>(freeze(pond, folder.path() / "pond.toml"));
    ASSERT_EQ(frozen.files.size(), 2U);
    EXPECT_EQ(frozen.files[1].name, "readings.csv");
    EXPECT_EQ(frozen.files[1].text, csv);
    EXPECT_EQ(frozen.pond.fileReadings.size(), 1U);
    // The frozen files are a pond of their own.
    const TemporaryFolder other;
    for (const TextFile& file : frozen.files) {
        other.write(file.name, file.text);
    }
    EXPECT_TRUE(readPond(other.path() / "pond.toml").pond.has_value());
}

TEST(FrozenRun, ATypicalYearIsFrozenToo) {
    const TemporaryFolder folder;
    folder.write("my year.epw", test::epwText());
    folder.write("pond.toml", std::string(test::kPlainPond) + "\n[climate]\nfile = \"my year.epw\"\n");
    const Pond pond = readPond(folder.path() / "pond.toml").pond.value();
    ASSERT_EQ(pond.climate.fileMonths.size(), 12U);
    const auto frozen = std::get<FrozenPond>(freeze(pond, folder.path() / "pond.toml"));
    ASSERT_EQ(frozen.files.size(), 2U);
    EXPECT_EQ(frozen.files[1].name, "climate.epw");
    EXPECT_EQ(frozen.files[1].text, test::epwText());
    const TemporaryFolder other;
    for (const TextFile& file : frozen.files) {
        other.write(file.name, file.text);
    }
    const PondReading again = readPond(other.path() / "pond.toml");
    ASSERT_TRUE(again.pond.has_value());
    EXPECT_EQ(again.pond->climate.fileMonths, pond.climate.fileMonths);
    EXPECT_EQ(*again.pond, frozen.pond);
}

TEST(FrozenRun, ACsvFileThatIsGoneIsNamed) {
    Pond pond = plainPond();
    pond.readingsFile.name = "gone.csv";
    const auto frozen = freeze(pond, "pond.toml");
    ASSERT_TRUE(std::holds_alternative<std::string>(frozen));
    EXPECT_NE(std::get<std::string>(frozen).find("\"gone.csv\""), std::string::npos);
}

RampRun madeUp(const std::string& name, double low, std::optional<int> days) {
    RampRun run;
    run.end = RunEnd::Completed;
    run.name = name;
    run.daysToContinuous = days;
    run.days.push_back({1, 30.0, 10.0, low});
    return run;
}

TEST(FrozenRun, ThePlanIsTheChosenRampOrTheGentlest) {
    Comparison comparison;
    comparison.model.parameters.thresholds.stress = 4.0;
    comparison.days = 14;
    comparison.runs = {madeUp("do-nothing", 5.0, {}), madeUp("fast", 3.0, 1), madeUp("middle", 4.5, 6),
                       madeUp("slow", 4.6, 12)};
    comparison.model.pond.ramps.resize(3);
    for (std::size_t i = 0; i < 3; ++i) {
        comparison.model.pond.ramps[i].name = comparison.runs[i + 1].name;
    }
    EXPECT_EQ(plannedRamp(comparison), 3U);
    EXPECT_EQ(fastestRamp(comparison, plannedRamp(comparison)), 1U);
    comparison.model.pond.chosenRamp = "middle";
    EXPECT_EQ(plannedRamp(comparison), 2U);
    EXPECT_EQ(plannedRamp(comparison, "slow"), 3U) << "what is asked for comes first";
    comparison.model.pond.chosenRamp = "fast";
    EXPECT_EQ(fastestRamp(comparison, plannedRamp(comparison)), std::nullopt);
}

TEST(FrozenRun, ARampThatTheLogStartedComesBeforeTheChosenOne) {
    Comparison comparison;
    comparison.days = 14;
    comparison.runs = {madeUp("do-nothing", 5.0, {}), madeUp("fast", 3.0, 1), madeUp("slow", 4.6, 12)};
    Pond& pond = comparison.model.pond;
    pond = plainPond();
    pond.ramps.resize(1);
    pond.ramps.push_back(pond.ramps.front());
    pond.ramps[0].name = pond.chosenRamp = "fast";
    pond.ramps[1].name = "slow";
    EXPECT_EQ(plannedRamp(comparison), 1U);
    Event event;
    event.at = LocalTime(std::chrono::sys_days(*pond.place.firstDay).time_since_epoch());
    event.kind = "started";
    event.ramp = "slow";
    pond.events = {event};
    EXPECT_EQ(plannedRamp(comparison), 2U);
    EXPECT_EQ(plannedRamp(comparison, "fast"), 1U) << "what is asked for comes before the log";
}

// As from the window, whose pond names its files otherwise than the frozen one and has its members already.
TEST(FrozenRun, WhatAnEarlierComparisonHasIsTakenOverToTheBit) {
    const TemporaryFolder folder;
    folder.write("my logger.csv",
                 "at,depth_m,temperature_c,oxygen_mg_per_l\r\n2026-06-14 06:00,0.5,25,4\r\n");
    folder.write("p.toml", std::string(test::kPlainPond) + "\n[readings]\nfile = \"my logger.csv\"\n");
    Pond pond = readPond(folder.path() / "p.toml").pond.value();
    const RunStamp stamp{"1", kTime, 1, 4, 0, ""};
    const auto run = [&](const Comparison* earlier) {
        return runFrozen(std::get<FrozenPond>(freeze(pond, folder.path() / "p.toml")), stamp, 2, {}, earlier);
    };
    const FrozenRun fresh = run(nullptr);
    CompareOptions options;
    options.days = 2;
    options.members = stamp.members;
    Comparison earlier = compare(pond, options);
    pond.client = Client{"Owner", ""};
    const auto same = [](const FrozenRun& a, const FrozenRun& b) {
        const auto one = comparisonFiles(a.comparison), other = comparisonFiles(b.comparison);
        return std::equal(one.begin(), one.end(), other.begin(), other.end(),
                          [](const TextFile& x, const TextFile& y) { return x.text == y.text; });
    };
    EXPECT_TRUE(same(run(&earlier), fresh));
    earlier.ensemble->ramps.front().fishWater.front().front() = 99.0;  // only the taken over has it
    EXPECT_EQ(run(&earlier).comparison.ensemble->ramps.front().fishWater.front().front(), 99.0);
    pond.water.secchi = Quantity(pond.water.secchi ? pond.water.secchi->value * 0.5 : 0.3);
    EXPECT_NE(run(&earlier).comparison.ensemble->ramps.front().fishWater.front().front(), 99.0)
        << "another water";
}

}  // namespace
}  // namespace engine
