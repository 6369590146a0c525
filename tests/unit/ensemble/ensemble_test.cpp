#include "engine/ensemble/ensemble.h"

#include "engine/base/error.h"
#include "engine/run/kernel.h"
#include "tests/scenario.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <chrono>
#include <cmath>
#include <pthread.h>
#include <thread>
#include <time.h>

namespace engine {
namespace {

using test::rampOfKind;
using test::scenario;

/// A coarse pond and two of its runs, so that the tests are quick under the thread sanitizer too.
class EnsembleParallel : public testing::Test {
protected:
    EnsembleParallel() {
        Resolution coarse;
        coarse.layers = 12;
        coarse.largestStep = 1800.0;
        m_model = prepare(scenario("grandfathers-pond"), coarse);
        RunRequest request;
        request.days = kDays;
        request.keepLayers = false;
        for (const Ramp* ramp :
             {static_cast<const Ramp*>(nullptr), &rampOfKind(m_model.pond, RampKind::Continuous),
              &rampOfKind(m_model.pond, RampKind::Capped)}) {
            m_central.push_back(runRamp(m_model, ramp, request));
            m_ramps.push_back(ensembleRamp(m_central.back()));
        }
    }
    [[nodiscard]] EnsembleResult run(int members, int threads = 1, std::uint64_t seed = 1,
                                     bool balance = true) const {
        EnsembleOptions options;
        options.days = kDays;
        options.members = members;
        options.threads = threads;
        options.seed = seed;
        options.balance = balance;
        options.past = false;  // tests/unit/ensemble/past_test.cpp
        EnsembleResult result = runMembers(m_model, m_ramps, options);
        EXPECT_EQ(result.end, EnsembleEnd::Completed) << result.message;
        return result;
    }
    static void expectSame(const EnsembleResult& a, const EnsembleResult& b) {
        ASSERT_EQ(a.ramps.size(), b.ramps.size());
        for (std::size_t r = 0; r < a.ramps.size(); ++r) {
            EXPECT_EQ(a.ramps[r].fishWater, b.ramps[r].fishWater);
            EXPECT_EQ(a.ramps[r].nightLows, b.ramps[r].nightLows);
            EXPECT_EQ(a.ramps[r].lowest, b.ramps[r].lowest);
            EXPECT_EQ(a.ramps[r].isBelowStress, b.ramps[r].isBelowStress);
        }
    }

    static constexpr int kDays = 2;
    PondModel m_model;
    std::vector<RampRun> m_central;
    std::vector<EnsembleRamp> m_ramps;
};

TEST_F(EnsembleParallel, SameBitsForAnyNumberOfThreads) {
    const EnsembleResult one = run(10, 1);
    for (const int threads : {2, 3, 8}) {
        SCOPED_TRACE(threads);
        expectSame(one, run(10, threads));
    }
}

TEST_F(EnsembleParallel, AMemberIsTheSameInAnyPack) {
    // Members 1 to 5 in packs that are full and packs that are not; a last pack repeats its last member.
    const EnsembleResult nine = run(9, 2);
    for (const int members : {1, 2, 3, 5, 8}) {
        const EnsembleResult fewer = run(members, 2);
        for (std::size_t r = 0; r < m_ramps.size(); ++r) {
            for (int i = 0; i < members; ++i) {
                EXPECT_EQ(fewer.ramps[r].lowest[i], nine.ramps[r].lowest[i])
                    << members << " members, number " << i;
            }
        }
    }
}

TEST_F(EnsembleParallel, RowsStandAtTheCentralRunsHours) {
    const EnsembleResult result = run(6);
    ASSERT_EQ(result.ramps.size(), 3U);
    for (std::size_t r = 0; r < result.ramps.size(); ++r) {
        const RampEnsemble& ramp = result.ramps[r];
        EXPECT_EQ(ramp.name, m_central[r].name);
        ASSERT_EQ(ramp.hours.size(), m_central[r].hours.size());
        for (std::size_t i = 0; i < ramp.hours.size(); ++i) {
            EXPECT_NEAR(ramp.hours[i], m_central[r].hours[i].time, 1e-6);
        }
        EXPECT_EQ(ramp.fishWater.size(), ramp.hours.size());
        EXPECT_EQ(ramp.nightLows.size(), static_cast<std::size_t>(kDays));
        for (const Percentiles& hour : ramp.fishWater) {
            EXPECT_TRUE(std::is_sorted(hour.begin(), hour.end()));
        }
        EXPECT_EQ(ramp.lowest.size(), 6U);
    }
}

TEST_F(EnsembleParallel, SeedsDrawOtherPonds) {
    const EnsembleResult one = run(4, 1, 1), two = run(4, 1, 2);
    EXPECT_NE(one.ramps[0].lowest, two.ramps[0].lowest);
    const MemberDraws first = drawMembers(m_model, 3, 2, 1), longer = drawMembers(m_model, 5, 9, 1);
    for (int i = 0; i < 3; ++i) {
        EXPECT_EQ(first.values[i], longer.values[i]) << "a member's inputs depend on seed and number only";
    }
}

TEST_F(EnsembleParallel, ChancesCountMembers) {
    const EnsembleResult result = run(12);
    for (const RampEnsemble& ramp : result.ramps) {
        double below = 0.0, lethal = 0.0;
        const OxygenThresholds& thresholds = m_model.parameters.thresholds;
        for (int i = 0; i < 12; ++i) {
            const auto low = static_cast<double>(ramp.lowest[i]);
            below += low < thresholds.stress ? 1.0 / 12.0 : 0.0;
            lethal += low < thresholds.lethal ? 1.0 / 12.0 : 0.0;
        }
        EXPECT_NEAR(ramp.chanceBelowStress, below, 1e-12);
        EXPECT_NEAR(ramp.chanceBelowLethal, lethal, 1e-12);
        EXPECT_EQ(ramp.plainBelowStress, ramp.chanceBelowStress) << "all weigh the same";
    }
    EXPECT_GT(result.ramps[1].chanceBelowLethal, 0.0) << "air around the clock kills in some of these ponds";
}

TEST_F(EnsembleParallel, EndStatesAreThereWhenAskedFor) {
    EnsembleOptions options;
    options.days = kDays;
    options.members = 2;
    options.balance = false;
    options.endStates = true;
    const EnsembleResult result = runMembers(m_model, {m_ramps[0]}, options);
    ASSERT_EQ(result.ramps[0].endStates.size(), 2U);
    for (const float end : result.ramps[0].endStates) {
        EXPECT_TRUE(std::isfinite(end));
        EXPECT_GT(end, 0.0F);
    }
    EXPECT_NE(result.ramps[0].endStates[0], result.ramps[0].endStates[1]) << "each member has its own";
    EXPECT_TRUE(run(2).ramps[0].endStates.empty());
}

TEST_F(EnsembleParallel, ProgressRisesToOneAndAStopEndsIt) {
    EnsembleOptions options;
    options.days = kDays;
    options.members = 40;
    options.threads = 2;
    std::stop_source stop;
    double last = 0.0;
    RunControl control{stop.get_token(), [&](double share) {
                           EXPECT_GT(share, last);
                           last = share;
                       }};
    EXPECT_EQ(runMembers(m_model, m_ramps, options, control).end, EnsembleEnd::Completed);
    EXPECT_NEAR(last, 1.0, 1e-9);

    control.progress = [&](double) { stop.request_stop(); };
    const EnsembleResult stopped = runMembers(m_model, m_ramps, options, control);
    EXPECT_EQ(stopped.end, EnsembleEnd::Cancelled);
    EXPECT_FALSE(stopped.message.empty());
    EXPECT_TRUE(stopped.ramps.empty());
}

/// What a thread has computed so far [s].
double computed(clockid_t clock) {
    timespec now{};
    clock_gettime(clock, &now);
    return static_cast<double>(now.tv_sec) + 1e-9 * static_cast<double>(now.tv_nsec);
}

/// A window waits for a stop: at most 50 ms of this thread's own time, whenever it comes. Under sanitizers,
/// whose code is several times slower, that is not judged.
TEST_F(EnsembleParallel, AStopEndsWithinFiftyMilliseconds) {
#if defined(__SANITIZE_ADDRESS__) || defined(__SANITIZE_THREAD__)
    constexpr double kMost = 5.0;
#else
    constexpr double kMost = 0.05;
#endif
    EnsembleOptions options;
    options.days = 14;
    options.members = 100;
    options.threads = 1;
    options.endStates = true;
    const PondModel model = prepareUnbalanced(scenario("grandfathers-pond"));
    clockid_t own{};
    ASSERT_EQ(pthread_getcpuclockid(pthread_self(), &own), 0);
    for (const double wait : {0.005, 0.05, 0.15, 0.4}) {  // [s] into drawing, balance and runs
        std::stop_source stop;
        const double begin = computed(own);
        double asked = 0.0;
        std::jthread stopper([&] {
            while (computed(own) - begin < wait) {
                std::this_thread::sleep_for(std::chrono::milliseconds(1));
            }
            asked = computed(own);
            stop.request_stop();
        });
        EXPECT_EQ(runMembers(model, m_ramps, options, {stop.get_token(), {}}).end, EnsembleEnd::Cancelled);
        const double end = computed(own);
        stopper.join();
        EXPECT_LT(end - asked, kMost) << "asked after " << wait << " s";
    }
}

/// Once for each pack that is balanced, and once for each that runs under a ramp.
int callsFor(std::size_t members, std::size_t ramps) {
    return static_cast<int>(packsOf(members) * (1 + ramps));
}

/// Whoever watches hears of it at least each hundredth of the work or each pack.
TEST_F(EnsembleParallel, EveryPackIsReported) {
    EnsembleOptions options;
    options.days = kDays;
    options.members = 40;
    options.threads = 2;
    options.past = false;
    int calls = 0;
    const RunControl control{{}, [&](double) { ++calls; }};
    ASSERT_EQ(runMembers(m_model, m_ramps, options, control).end, EnsembleEnd::Completed);
    EXPECT_EQ(calls, callsFor(40, m_ramps.size()));
}

TEST_F(EnsembleParallel, WhatAnEditDidNotTouchIsTakenOver) {
    const EnsembleResult before = run(10);
    EnsembleOptions options;
    options.days = kDays;
    options.members = 10;
    options.threads = 1;
    options.past = false;
    options.earlier = &before;
    // The second ramp's air comes on an hour later; the others stay, in another order.
    std::vector<EnsembleRamp> edited{m_ramps[0], m_ramps[2], m_ramps[1]};
    for (RunBlock& block : edited[2].schedule) {
        block.start += 3600.0;
    }
    int calls = 0;
    const RunControl control{{}, [&](double) { ++calls; }};
    const EnsembleResult after = runMembers(m_model, edited, options, control);
    options.earlier = nullptr;
    expectSame(after, runMembers(m_model, edited, options));
    EXPECT_EQ(calls, static_cast<int>(packsOf(10))) << "packs of one ramp and no balance";

    // Other seeds, numbers or days are other members and other runs.
    options.earlier = &before;
    options.seed = 2;
    calls = 0;
    expectSame(runMembers(m_model, m_ramps, options, control), run(10, 1, 2));
    EXPECT_EQ(calls, callsFor(10, m_ramps.size()));
    options.seed = 1;
    options.members = 5;
    calls = 0;
    expectSame(runMembers(m_model, m_ramps, options, control), run(5));
    EXPECT_EQ(calls, callsFor(5, m_ramps.size()));
}

TEST_F(EnsembleParallel, RunsEndOnceTooManyAreBelowTheLethalLine) {
    constexpr int kMany = 48;
    EnsembleOptions options;
    options.days = kDays;
    options.members = kMany;
    options.past = false;
    const EnsembleResult all = run(kMany);
    double most = 0.0;
    for (const RampEnsemble& ramp : all.ramps) {
        most = std::max(most, ramp.chanceBelowLethal);
    }
    ASSERT_GT(most, 0.0) << "some die";
    for (const int threads : {1, 3}) {
        options.threads = threads;
        options.mostLethal = most;
        const EnsembleResult let = runMembers(m_model, m_ramps, options);
        EXPECT_EQ(let.end, EnsembleEnd::Completed) << "as many as allowed";
        expectSame(let, all);
        options.mostLethal = most - 0.5 / kMany;
        const EnsembleResult refused = runMembers(m_model, m_ramps, options);
        EXPECT_EQ(refused.end, EnsembleEnd::Refused);
        EXPECT_TRUE(refused.ramps.empty());
        EXPECT_FALSE(refused.message.empty());
    }
}

TEST_F(EnsembleParallel, MembersOutsideTheirRangeAreRefused) {
    EnsembleOptions options;
    options.members = 0;
    EXPECT_THROW(static_cast<void>(runMembers(m_model, m_ramps, options)), ArgumentError);
    options.members = kMostMembers + 1;
    EXPECT_THROW(static_cast<void>(runMembers(m_model, m_ramps, options)), ArgumentError);
}

}  // namespace
}  // namespace engine
