// A start held against the dawns that were read after it.
#include "engine/follow_up/start_check.h"

#include "engine/output/start_ledger.h"
#include "engine/pond/local_time.h"
#include "engine/ramps/schedule.h"
#include "engine/wording/sentence_review.h"
#include "tests/sentences.h"
#include "tests/temporary_folder.h"
#include "tests/unit/follow_up/logged_pond.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <thread>
#include <vector>

namespace engine {
namespace {

void readDawn(Pond& pond, int day, double oxygen) {
    const std::string at = "2026-06-" + std::to_string(day) + " 05:00";
    test::readAt(pond, at.c_str(), oxygen, oxygen + 0.2, 0.5);
}

/// The headline pond with its doubling ramp begun at a time.
Pond startedOn(const char* at) {
    Pond pond = test::scenario("grandfathers-pond");
    test::happened(pond, at, "started");
    pond.events.back().ramp = "doubling from 30 min";
    return pond;
}

TEST(StartCheck, HoldsTheRunOfTheStartAgainstTheDawnsRead) {
    Pond pond = test::startedPond();
    readDawn(pond, 15, 5.0);
    readDawn(pond, 16, 5.0);
    const StartCheck check = checkStart(pond);
    ASSERT_TRUE(check.isChecked()) << check.message;
    EXPECT_EQ(check.dawns, 2);
    EXPECT_EQ(check.ramp, "doubling from 30 min");
    EXPECT_EQ(check.pond, pond.title);
    // One reading higher by 1 mg/L takes half of that from the mean of two.
    Pond higher = test::startedPond();
    readDawn(higher, 15, 5.0);
    readDawn(higher, 16, 6.0);
    const StartCheck other = checkStart(higher);
    EXPECT_NEAR(check.miss - other.miss, 0.5, 1e-9) << "and the run has not seen the readings";
    EXPECT_GE(check.distance, std::fabs(check.miss) - 1e-12);
}

TEST(StartCheck, TakesUpARampThatWasBegunLaterFromItsDayOn) {
    Pond pond = startedOn("2026-06-16 09:00");
    for (const int day : {17, 18, 19, 20}) {
        readDawn(pond, day, 5.0);
    }
    const StartCheck check = checkStart(pond);
    ASSERT_TRUE(check.isChecked()) << check.message;
    EXPECT_EQ(formatDate(check.firstDay), "2026-06-16");
    EXPECT_EQ(check.dawns, 4);
    // Nights before the start are none of the ramp's.
    Pond before = pond;
    readDawn(before, 15, 9.0);
    readDawn(before, 16, 9.0);
    EXPECT_EQ(checkStart(before).dawns, 4);
    // Days 3 to 6 of a pond without air until then: the same as a table of minutes that begins on day 3.
    Pond table = pond;
    const auto ramp = std::find_if(table.ramps.begin(), table.ramps.end(),
                                   [](const Ramp& one) { return one.name == "doubling from 30 min"; });
    ASSERT_NE(ramp, table.ramps.end());
    const Ramp doubling = *ramp;
    ramp->kind = RampKind::Table;
    ramp->minutes = {0, 0};
    for (int step = 1; step <= ruleLength(doubling); ++step) {
        ramp->minutes.push_back(ruleMinutes(doubling, step));
    }
    table.events.back().at = parseLocalTime("2026-06-14 09:00");
    EXPECT_NEAR(checkStart(table).miss, check.miss, 1e-9);
}

TEST(StartCheck, SaysInWordsWhyThereIsNone) {
    Pond pond = test::scenario("grandfathers-pond");
    EXPECT_EQ(checkStart(pond).message, "The log has no start.");
    pond = test::startedPond();
    readDawn(pond, 15, 5.0);
    EXPECT_EQ(checkStart(pond).message, "The log has 1 dawn reading after the start; two are needed.");
    EXPECT_EQ(checkStart(startedOn("2026-06-22 09:00")).message,
              "The air started on day 9 of the pond file. Papers hold from its first day for seven days, so "
              "that none can be held against this start.");
    EXPECT_EQ(checkStart(startedOn("2026-06-13 09:00")).message.substr(0, 26), "The air started on day 0 o");
}

StartCheck madeUp(const char* pond, double distance) {
    StartCheck out;
    out.pond = pond;
    out.firstDay = Date(std::chrono::year(2026) / 6 / 14);
    out.ramp = "gentle, \"twelve\" days";
    out.dawns = 6;
    out.miss = -0.31;
    out.distance = distance;
    return out;
}

TEST(StartLedger, IsReadAsItWasWrittenAndHoldsAStartOnce) {
    const test::TemporaryFolder folder;
    const StartLedger two = withStart(withStart({}, madeUp("Weir", 0.5)), madeUp("Mill", 1.0));
    EXPECT_DOUBLE_EQ(two.meanDistance(), 0.75);
    EXPECT_DOUBLE_EQ(StartLedger().meanDistance(), 0.0);
    const StartLedgerReading read = readStartLedger(folder.write("starts.csv", startLedgerCsv(two)));
    ASSERT_TRUE(read.ledger) << (read.diagnostics.empty() ? "" : format(read.diagnostics.front()));
    ASSERT_EQ(read.ledger->starts.size(), 2U);
    EXPECT_EQ(read.ledger->starts[0].ramp, "gentle, \"twelve\" days");
    EXPECT_EQ(startLedgerCsv(*read.ledger), startLedgerCsv(two));
    const StartLedger again = withStart(two, madeUp("Weir", 2.0));
    ASSERT_EQ(again.starts.size(), 2U);
    EXPECT_DOUBLE_EQ(again.meanDistance(), 1.5);
    EXPECT_TRUE(readStartLedger(folder.path() / "none.csv").ledger) << "no file is an empty ledger";
    const StartLedgerReading bad =
        readStartLedger(folder.write("bad.csv",
                                     "first_day,pond,ramp,dawns,mean_miss_mg_per_l,mean_distance_mg_per_l\r\n"
                                     "soon,Weir,slow,many,0,-1\r\n"));
    EXPECT_FALSE(bad.ledger);
    EXPECT_EQ(bad.diagnostics.size(), 3U);
}

TEST(StartLedgerParallel, KeepsEachOfTheStartsThatAreNotedAtOnce) {
    const test::TemporaryFolder folder;
    const auto path = folder.path() / "profiles" / "starts.csv";
    constexpr int kThreads = 4, kEach = 15;
    std::vector<std::thread> consultants;
    for (int thread = 0; thread < kThreads; ++thread) {
        consultants.emplace_back([&path, thread] {
            for (int i = 0; i < kEach; ++i) {
                const std::string pond = std::to_string(thread) + "-" + std::to_string(i);
                const NotedStart noted = noteStart(path, madeUp(pond.c_str(), 0.5));
                EXPECT_TRUE(noted.ledger && !noted.notSaved) << noted.notSaved.value_or("");
            }
        });
    }
    for (std::thread& consultant : consultants) {
        consultant.join();
    }
    EXPECT_EQ(readStartLedger(path).ledger->starts.size(), std::size_t{kThreads} * kEach);
}

TEST(StartLedger, IsSaidInWords) {
    const auto sentences = sentencesOf(madeUp("Weir", 0.5), 3, 0.75);
    EXPECT_EQ(test::englishSaid(sentences, SentenceKey::StartChecked),
              "Held against 6 dawn readings, what was computed for \"gentle, \"twelve\" days\" was -0.3 mg/L "
              "off on "
              "average (computed minus read); without the sign 0.5 mg/L.");
    EXPECT_EQ(test::englishSaid(sentences, SentenceKey::StartsChecked),
              "Starts in the ledger: 3. On average they were 0.8 mg/L off, and the papers say so.");
}

}  // namespace
}  // namespace engine
