#include "engine/base/parallel.h"

#include "engine/base/error.h"

#include <gtest/gtest.h>

#include <atomic>
#include <chrono>
#include <cmath>
#include <mutex>
#include <set>
#include <stdexcept>
#include <string>
#include <thread>
#include <vector>

namespace engine {
namespace {

constexpr int kThreadCounts[] = {1, 2, 3, 8};

/// Keeps the other threads from emptying a loop while the one that ends it is waiting for a core.
constexpr auto kPause = std::chrono::milliseconds(1);

/// A few thousand operations whose rounding depends on their order within one index only.
double chaoticValue(std::size_t index) {
    double x = 0.1 + 0.8 * static_cast<double>(index) / 1000.0;
    for (int i = 0; i < 2000; ++i) {
        x = 3.9 * x * (1.0 - x);
    }
    return x + std::sin(static_cast<double>(index));
}

TEST(Parallel, SameBitsForAnyNumberOfThreads) {
    constexpr std::size_t kCount = 500;
    std::vector<double> expected(kCount);
    for (std::size_t i = 0; i < kCount; ++i) {
        expected[i] = chaoticValue(i);
    }
    for (const int threads : kThreadCounts) {
        std::vector<double> slots(kCount, -1.0);
        EXPECT_EQ(forEachIndex(kCount, threads, {}, [&](std::size_t i) { slots[i] = chaoticValue(i); }),
                  kCount);
        EXPECT_EQ(slots, expected) << threads << " threads";
    }
}

TEST(Parallel, EveryIndexRunsOnce) {
    for (const int threads : kThreadCounts) {
        for (const std::size_t count : {0UL, 1UL, 2UL, 7UL, 1000UL}) {
            std::vector<int> calls(count, 0);
            EXPECT_EQ(forEachIndex(count, threads, {}, [&](std::size_t i) { ++calls[i]; }), count);
            EXPECT_EQ(calls, std::vector<int>(count, 1)) << threads << " threads, " << count << " indices";
        }
    }
}

TEST(Parallel, OneThreadRunsInlineAndInOrder) {
    const auto caller = std::this_thread::get_id();
    std::vector<std::size_t> order;
    EXPECT_EQ(forEachIndex(5, 1, {},
                           [&](std::size_t i) {
                               EXPECT_EQ(std::this_thread::get_id(), caller);
                               order.push_back(i);
                           }),
              5U);
    EXPECT_EQ(order, (std::vector<std::size_t>{0, 1, 2, 3, 4}));
}

TEST(Parallel, AsManyThreadsWorkAtOnceAsWereAskedFor) {
    // Each index waits until three are inside: this ends only if three threads work at once.
    std::atomic<int> inside = 0;
    std::set<std::thread::id> seen;
    std::mutex seenMutex;
    const auto deadline = std::chrono::steady_clock::now() + std::chrono::seconds(20);
    EXPECT_EQ(forEachIndex(3, 3, {},
                           [&](std::size_t) {
                               ++inside;
                               while (inside < 3 && std::chrono::steady_clock::now() < deadline) {
                                   std::this_thread::yield();
                               }
                               const std::lock_guard lock(seenMutex);
                               seen.insert(std::this_thread::get_id());
                           }),
              3U);
    EXPECT_EQ(inside, 3);
    EXPECT_EQ(seen.size(), 3U);
}

TEST(Parallel, TheLowestThrowIsRethrownAfterTheJoin) {
    for (const int threads : kThreadCounts) {
        std::atomic<int> inside = 0;
        std::atomic<std::size_t> done = 0;
        const auto body = [&](std::size_t i) {
            ++inside;
            // The lower fault comes later in time, so that "first" means the index and not luck.
            if (i == 6) {
                std::this_thread::sleep_for(std::chrono::milliseconds(20));
            } else if (i > 7) {
                std::this_thread::sleep_for(kPause);
            }
            --inside;
            if (i == 6 || i == 7) {
                throw std::runtime_error("member " + std::to_string(i));
            }
            ++done;
        };
        try {
            (void)forEachIndex(100000, threads, {}, body);
            FAIL() << "nothing was thrown";
        } catch (const std::runtime_error& error) {
            EXPECT_STREQ(error.what(), "member 6") << threads << " threads";
        }
        EXPECT_EQ(inside, 0) << "a thread was still at work";
        EXPECT_GE(done, 6U);
        EXPECT_LT(done, 99998U) << "indices were handed out after the throw";
    }
}

TEST(Parallel, AStopLeavesAFinishedPrefix) {
    for (const int threads : kThreadCounts) {
        constexpr std::size_t kCount = 100000;
        std::stop_source source;
        std::vector<int> calls(kCount, 0);
        const std::size_t finished = forEachIndex(kCount, threads, source.get_token(), [&](std::size_t i) {
            ++calls[i];
            if (i == 40) {
                source.request_stop();
            } else if (i > 40) {
                std::this_thread::sleep_for(kPause);
            }
        });
        EXPECT_GT(finished, 40U);
        EXPECT_LT(finished, kCount) << threads << " threads";
        for (std::size_t i = 0; i < kCount; ++i) {
            ASSERT_EQ(calls[i], i < finished ? 1 : 0) << "index " << i << ", " << threads << " threads";
        }
    }
}

TEST(Parallel, AStopBeforeTheStartRunsNothing) {
    std::stop_source source;
    source.request_stop();
    for (const int threads : kThreadCounts) {
        EXPECT_EQ(forEachIndex(10, threads, source.get_token(), [](std::size_t) { FAIL(); }), 0U);
    }
}

TEST(Parallel, NoThreadsIsRefused) {
    EXPECT_THROW((void)forEachIndex(3, 0, {}, [](std::size_t) {}), ArgumentError);
    EXPECT_THROW((void)forEachIndex(3, -2, {}, [](std::size_t) {}), ArgumentError);
}

}  // namespace
}  // namespace engine
