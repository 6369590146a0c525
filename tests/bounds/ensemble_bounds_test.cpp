// Bounds that an ensemble keeps to: how long a stop takes, and how much memory its members need at most.
#include "engine/ensemble/ensemble.h"
#include "engine/run/balance.h"
#include "tests/bench/measure.h"
#include "tests/scenario.h"

#include <gtest/gtest.h>

#include <array>
#include <atomic>
#include <chrono>
#include <cstdlib>
#include <ctime>
#include <fstream>
#include <iostream>
#include <string>
#include <string_view>
#include <sys/wait.h>
#include <thread>
#include <unistd.h>

#if defined(__SANITIZE_ADDRESS__) || defined(__SANITIZE_THREAD__)
#define DAWNLINE_SANITIZED 1
#else
#define DAWNLINE_SANITIZED 0
#endif

namespace engine::test {
namespace {

/// Processor time of all threads [ms].
double busy_ms() {
    timespec now{};
    clock_gettime(CLOCK_PROCESS_CPUTIME_ID, &now);
    return 1e3 * static_cast<double>(now.tv_sec) + 1e-6 * static_cast<double>(now.tv_nsec);
}

std::vector<EnsembleRamp> allRamps(const PondModel& model, int days) {
    RunRequest request;
    request.days = days;
    request.keepLayers = false;
    std::vector<EnsembleRamp> ramps{ensembleRamp(runRamp(model, nullptr, request))};
    for (const Ramp& ramp : model.pond.ramps) {
        ramps.push_back(ensembleRamp(runRamp(model, &ramp, request)));
    }
    return ramps;
}

/// Processor time from the request to the return [ms].
/// @param when  Share of the work at which the stop is asked for; negative: that many ms after the start.
double stopTime_ms(const PondModel& model, const std::vector<EnsembleRamp>& ramps, int members, double when) {
    EnsembleOptions options;
    options.members = members;
    options.threads = 2;
    options.endStates = true;
    std::stop_source stop;
    std::atomic<bool> isAsked = false;
    double asked = 0.0;
    double last = 0.0;
    RunControl control{stop.get_token(), [&](double share) {
                           EXPECT_GE(share, last);
                           last = share;
                           if (when >= 0.0 && share >= when && !isAsked.exchange(true)) {
                               asked = busy_ms();
                               stop.request_stop();
                           }
                       }};
    std::jthread timer([&] {
        if (when < 0.0) {
            std::this_thread::sleep_for(std::chrono::duration<double, std::milli>(-when));
            asked = busy_ms();
            stop.request_stop();
        }
    });
    const EnsembleResult result = runMembers(model, ramps, options, control);
    const double back = busy_ms();
    timer.join();
    EXPECT_EQ(result.end, EnsembleEnd::Cancelled);
    EXPECT_TRUE(result.ramps.empty());
    return back - asked;
}

/// The 50 ms, whatever is being done: making members, balancing, runs of nights and of end states. On
/// a machine that is busy otherwise a thread may wait that long to be let on at all, so the best of three
/// counts.
TEST(EnsembleBounds, AStopTakesLessThanFiftyMilliseconds) {
    if (DAWNLINE_SANITIZED) {
        GTEST_SKIP() << "a sanitizer takes its own time";
    }
    const PondModel model = prepare(scenario("grandfathers-pond"));
    const std::vector<EnsembleRamp> ramps = allRamps(model, 14);
    struct Moment {
        const char* what;
        int members;
        double when;
    };
    for (const Moment& moment : {Moment{"while members are made", 1000, -2.0},
                                 {"early in the balance", 1000, -150.0},
                                 {"in the balance", 24, 0.05},
                                 {"in the runs", 24, 0.5}}) {
        const double took = stopTime_ms(model, ramps, moment.members, moment.when);
        std::cout << moment.what << ": " << took << " ms\n";
        EXPECT_LE(took, 50.0) << moment.what;
    }
}

/// Largest resident memory of a process of its own that runs members [MiB].
double peakOfMembers_MiB(const PondModel& model, const std::vector<EnsembleRamp>& ramps, int members) {
    std::array<int, 2> ends{};
    if (pipe(ends.data()) != 0) {
        return 0.0;
    }
    const pid_t child = fork();
    if (child == 0) {
        EnsembleOptions options;
        options.members = members;
        options.threads = 2;
        options.balance = false;
        const bool isDone = runMembers(model, ramps, options).end == EnsembleEnd::Completed;
        const double peak = isDone ? bench::peak_MiB() : -1.0;
        const bool isWritten = write(ends[1], &peak, sizeof peak) == sizeof peak;
        _exit(isWritten ? 0 : 1);
    }
    close(ends[1]);
    double peak = 0.0;
    const bool isRead = read(ends[0], &peak, sizeof peak) == sizeof peak;
    close(ends[0]);
    int status = 0;
    waitpid(child, &status, 0);
    return isRead ? peak : 0.0;
}

/// 1,000 members of five runs of 14 days in 150 MiB at most, percentiles included. Few layers and
/// long steps, since what is kept of a member does not depend on the steps, and on the layers by 72 bytes
/// each.
TEST(EnsembleBounds, AThousandMembersOfFiveRunsStayBelow150MiB) {
    if (DAWNLINE_SANITIZED) {
        GTEST_SKIP() << "a sanitizer keeps memory of its own";
    }
    const char* slow = std::getenv("DAWNLINE_SLOW");
    const bool isSlow = slow != nullptr && std::string_view(slow) == "1";
    const PondModel model =
        prepareUnbalanced(scenario("grandfathers-pond"), isSlow ? Resolution{} : Resolution{4, 1800.0});
    std::vector<EnsembleRamp> ramps = allRamps(model, 14);
    while (ramps.size() < 5) {
        ramps.push_back(ramps.back());
    }
    ramps.resize(5);
    const double few = peakOfMembers_MiB(model, ramps, 8), many = peakOfMembers_MiB(model, ramps, 1000);
    ASSERT_GT(few, 0.0);
    std::cout << "8 members " << few << " MiB, 1,000 members " << many << " MiB\n";
    EXPECT_LE(many, 150.0);
    // As kMostMembers says: 5 kB a member, and 1.5 kB for each ramp and two weeks, here taken three times
    // over for what the heap leaves unused and for the draws.
    EXPECT_LE(many - few, 3.0 * 1000.0 * (5.0 + 5 * 1.5) / 1024.0);
}

}  // namespace
}  // namespace engine::test
