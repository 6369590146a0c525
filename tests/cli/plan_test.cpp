#include "engine/pond/pond_io.h"
#include "tests/cli/run_cli.h"
#include "tests/epw_text.h"
#include "tests/sentences.h"

#include <gtest/gtest.h>

#include <algorithm>

namespace engine {
namespace {

using test::CliRun;
using test::expectContains;
using test::fileText;
using test::placesSaid;
using test::saidIn;
using Texts = std::vector<std::string>;

/// Coarse, so that a plan takes about a second.
constexpr const char* kCoarse = " --layers 12 --step-s 1800 --members 256 ";

class CliPlan : public test::Cli {};

std::size_t linesOf(const std::string& text) {
    return static_cast<std::size_t>(std::count(text.begin(), text.end(), '\n'));
}

TEST_F(CliPlan, AYoungPondNeedsNoRamp) {
    const CliRun plan = run("plan " + scenario("new-clay") + kCoarse + "--out out");
    ASSERT_EQ(plan.code, 0) << plan.err;
    EXPECT_EQ(saidIn(plan.out, SentenceKey::AdviceNoRamp).size(), 1U) << plan.out;
    EXPECT_EQ(saidIn(plan.out, SentenceKey::PlanCourtesy).size(), 1U) << plan.out;
    EXPECT_EQ(placesSaid(plan.out, SentenceKey::AdviceChance, "with").front(), "none") << plan.out;
    const std::string advice = fileText(m_folder / "out/advice.csv");
    EXPECT_TRUE(advice.starts_with("field,value\r\nkind,no_ramp_needed\r\nramp,planned\r\n")) << advice;
    EXPECT_EQ(saidIn(plan.out, SentenceKey::CautionComparison).size(), 1U);
    const std::string schedule = fileText(m_folder / "out/schedule.csv");
    EXPECT_TRUE(
        schedule.starts_with("day,date,start_time,run_minutes,diffusers,depth_m,dose_percent,"
                             "lowest_p05_mg_per_l,lowest_p50_mg_per_l,surface_air_from,surface_air_"
                             "until\r\n1,2026-05-26,10:00,720,2,"))
        << schedule;
    EXPECT_EQ(linesOf(schedule), 15U) << "a row for each of 14 days";
    const std::string summary = fileText(m_folder / "out/summary.csv");
    const Texts ramps = test::firstColumn(summary);
    ASSERT_EQ(ramps.size(), 8U) << "do-nothing, five ramps of the file and the planned one";
    EXPECT_EQ(ramps.back(), "planned");
    expectContains(summary, "\r\nplanned,2,");
    const PondReading pond = readPond(m_folder / "out/pond.toml");
    ASSERT_TRUE(pond.pond);
    EXPECT_EQ(pond.pond->ramps.back().name, "planned");
    EXPECT_EQ(run("compare out/pond.toml --days 2 --layers 12 --out again").code, 0) << "it can be run";
}

TEST_F(CliPlan, NotToStartIsAnAnswer) {
    const CliRun plan = run("plan " + scenario("pea-soup") + kCoarse + "--out out");
    ASSERT_EQ(plan.code, 0) << plan.err;
    EXPECT_EQ(saidIn(plan.out, SentenceKey::PlanDoNotStartLethal).size(), 1U) << plan.out;
    EXPECT_LT(plan.out.find(englishHeading(SentencePart::Advice)),
              plan.out.find(englishHeading(SentencePart::Plan)))
        << "the answer comes first";
    expectContains(fileText(m_folder / "out/advice.csv"), "kind,wait_until\r\n");
    const std::string schedule = fileText(m_folder / "out/schedule.csv");
    EXPECT_EQ(linesOf(schedule), 1U) << schedule;
    const std::vector<Ramp> ramps = readPond(m_folder / "out/pond.toml").pond->ramps;
    ASSERT_EQ(ramps.size(), 6U);
    EXPECT_TRUE(ramps.back().weatherHold) << "of the ramp that is spoken of, with no air on hold days";
    EXPECT_TRUE(std::filesystem::exists(m_folder / "out/summary.csv"));
}

TEST_F(CliPlan, SeedDecidesAndThreadsDoNot) {
    const std::string call = "plan " + scenario("new-clay") + kCoarse;
    ASSERT_EQ(run(call + "--threads 1 --out one").code, 0);
    ASSERT_EQ(run(call + "--threads 3 --out three").code, 0);
    ASSERT_EQ(run(call + "--seed 2 --chance 1 --out other").code, 0);
    for (const char* file : {"schedule.csv", "summary.csv", "advice.csv", "pond.toml"}) {
        EXPECT_EQ(fileText(m_folder / "one" / file), fileText(m_folder / "three" / file)) << file;
    }
    EXPECT_NE(fileText(m_folder / "one/summary.csv"), fileText(m_folder / "other/summary.csv"));
}

TEST_F(CliPlan, WhatCannotBeIsRefused) {
    const std::string pond = scenario("grandfathers-pond");
    const auto expectRefused = [&](const std::string& options, const std::string& sentence) {
        const CliRun refused = run("plan " + pond + " --out out " + options);
        EXPECT_EQ(refused.code, 2) << options;
        EXPECT_EQ(refused.out, "");
        expectContains(refused.err, sentence);
        EXPECT_FALSE(std::filesystem::exists(m_folder / "out"));
    };
    expectRefused("--line 12", "holds no more than 7.4 mg/L at saturation");
    expectRefused("--line 0", "must be above 0");
    expectRefused("--line 1", "lethal line");
    expectRefused("--line 21", "must be a number from 0 to 20 mg/L");
    expectRefused("--chance 1.5", "must be a number from 0 to 1");
    expectRefused("--chance 0", "must be above 0");
    expectRefused("--members 20", "that takes 59");
    expectRefused("--days 3", "There is no option \"--days\"");
}

TEST_F(CliPlan, AnInterruptEndsItEarly) {
    const CliRun stopped = run("plan " + scenario("old-quarry") + " --members 10000 --progress --out out",
                               "timeout --preserve-status --signal=INT 2");
    EXPECT_EQ(stopped.code, 1) << stopped.err;
    EXPECT_LT(stopped.seconds, 6.0);
    expectContains(stopped.err, "Nothing was written.");
    EXPECT_FALSE(std::filesystem::exists(m_folder / "out"));
}

TEST_F(CliPlan, FilesOfThePondAreNamedFromTheNewFolder) {
    std::filesystem::create_directory(m_folder / "ponds");
    std::string hours = "at,air_c,humidity_percent,wind_m_per_s,cloud_percent\n";
    for (int hour = 0; hour < 72; ++hour) {
        hours += "2026-06-" + std::to_string(13 + hour / 24) + " " + (hour % 24 < 10 ? "0" : "") +
                 std::to_string(hour % 24) + ":00,24,65,2,20\n";
    }
    std::string text = fileText(DAWNLINE_SCENARIOS "/grandfathers-pond.toml");
    const auto first = text.find("[[weather.day]]"), after = text.find("[aerator]");
    text = text.substr(0, first) +
           "[weather]\nfile = \"hours.csv\"\nstamp = \"start\"\n\n[climate]\nfile = \"year.epw\"\n\n" +
           text.substr(after);
    put("ponds/pond.toml", text);
    put("ponds/hours.csv", hours);
    put("ponds/year.epw", test::epwText());
    const CliRun plan = run("plan ponds/pond.toml --out out/deeper" + std::string(kCoarse));
    ASSERT_EQ(plan.code, 0) << plan.err;
    expectContains(fileText(m_folder / "out/deeper/pond.toml"), "file = \"../../ponds/hours.csv\"");
    expectContains(fileText(m_folder / "out/deeper/pond.toml"), "file = \"../../ponds/year.epw\"");
    EXPECT_EQ(run("check out/deeper/pond.toml").code, 0);
}

}  // namespace
}  // namespace engine
