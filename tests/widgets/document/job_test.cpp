#include "widgets/document/job.h"

#include <QElapsedTimer>
#include <QSignalSpy>
#include <QTest>
#include <QThread>

#include <gtest/gtest.h>

#include <algorithm>
#include <atomic>
#include <chrono>
#include <memory>
#include <new>
#include <stdexcept>
#include <string>
#include <thread>
#include <utility>
#include <vector>

namespace widgets {
namespace {

constexpr int kPatience_ms = 20000;  // only a hanging test waits that long

/// Spins the event loop until `done()`; false if it never is.
template <class Predicate>
bool spinUntil(Predicate done) {
    return QTest::qWaitFor(done, kPatience_ms);
}

/// Lets everything that has been posted arrive.
void spinOut() {
    QTest::qWait(120);  // two periods of the progress timer and more
}

/// A latch shared by the work and the test.
using Flag = std::shared_ptr<std::atomic<bool>>;

Flag makeFlag() {
    return std::make_shared<std::atomic<bool>>(false);
}

void waitFor(const Flag& flag) {
    while (!*flag) {
        std::this_thread::sleep_for(std::chrono::milliseconds(1));
    }
}

void waitForStop(const std::stop_token& stop) {
    while (!stop.stop_requested()) {
        std::this_thread::sleep_for(std::chrono::milliseconds(1));
    }
}

TEST(Job, DeliversOnItsOwnThreadWhatWasWorkedOutOnAnother) {
    Job job;
    QSignalSpy finished(&job, &Job::finished);
    QSignalSpy failed(&job, &Job::failed);
    std::vector<int> delivered;
    QThread* worker = nullptr;
    QThread* receiver = nullptr;
    bool runningAtDelivery = true;
    EXPECT_FALSE(job.isRunning());
    job.start(
        [](const std::stop_token&, const Job::Progress&) { return std::pair(42, QThread::currentThread()); },
        [&](std::pair<int, QThread*> result) {
            delivered.push_back(result.first);
            worker = result.second;
            receiver = QThread::currentThread();
            runningAtDelivery = job.isRunning();
            EXPECT_EQ(finished.size(), 0) << "finished() comes after the delivery";
        });
    EXPECT_TRUE(job.isRunning());
    EXPECT_TRUE(delivered.empty()) << "start() delivered before it returned";
    ASSERT_TRUE(spinUntil([&] { return finished.size() == 1; }));
    EXPECT_EQ(delivered, std::vector<int>{42});
    EXPECT_EQ(receiver, job.thread());
    EXPECT_NE(worker, job.thread());
    EXPECT_FALSE(runningAtDelivery);
    EXPECT_FALSE(job.isRunning());
    EXPECT_EQ(failed.size(), 0);
}

TEST(Job, MovesTheValueIn) {
    Job job;
    std::unique_ptr<int> received;
    job.start([](const std::stop_token&, const Job::Progress&) { return std::make_unique<int>(7); },
              [&](std::unique_ptr<int> value) { received = std::move(value); });
    ASSERT_TRUE(spinUntil([&] { return received != nullptr; }));
    EXPECT_EQ(*received, 7);
}

TEST(Job, OnlyTheLatestStartIsDelivered) {
    Job job;
    QSignalSpy finished(&job, &Job::finished);
    const Flag begun = makeFlag();
    const Flag oldStopped = makeFlag();
    const Flag middleBegun = makeFlag();
    std::vector<std::string> delivered;
    const auto deliver = [&](const std::string& value) { delivered.push_back(value); };

    job.start(
        [=](const std::stop_token& stop, const Job::Progress& progress) {
            *begun = true;
            waitForStop(stop);
            progress(0.9);
            *oldStopped = true;
            return std::string("old");
        },
        deliver);
    waitFor(begun);
    job.start(
        [=](const std::stop_token&, const Job::Progress&) {
            *middleBegun = true;
            return std::string("middle");
        },
        deliver);
    job.start([](const std::stop_token&, const Job::Progress&) { return std::string("new"); }, deliver);
    EXPECT_TRUE(job.isRunning());
    ASSERT_TRUE(spinUntil([&] { return finished.size() == 1; }));
    spinOut();
    EXPECT_EQ(delivered, std::vector<std::string>{"new"});
    EXPECT_EQ(finished.size(), 1);
    EXPECT_TRUE(*oldStopped) << "the old work was not asked to stop";
}

TEST(Job, AResultThatWasAlreadyPostedIsDroppedByANewStart) {
    Job job;
    QSignalSpy progressed(&job, &Job::progressed);
    QSignalSpy finished(&job, &Job::finished);
    std::vector<int> delivered;
    const auto deliver = [&](int value) { delivered.push_back(value); };
    const Flag almostDone = makeFlag();
    job.start(
        [=](const std::stop_token&, const Job::Progress& progress) {
            progress(0.9);
            *almostDone = true;
            return 1;
        },
        deliver);
    waitFor(almostDone);
    QThread::msleep(50);  // no event loop runs: the first result now waits in the queue
    job.start([](const std::stop_token&, const Job::Progress&) { return 2; }, deliver);
    ASSERT_TRUE(spinUntil([&] { return finished.size() == 1; }));
    spinOut();
    EXPECT_EQ(delivered, std::vector<int>{2});
    EXPECT_EQ(progressed.size(), 0) << "progress of the older work was shown";
}

TEST(Job, TheArrivalOfAnOlderResultLeavesTheProgressOfTheLatest) {
    Job job;
    QSignalSpy progressed(&job, &Job::progressed);
    QSignalSpy finished(&job, &Job::finished);
    const Flag begun = makeFlag();
    const Flag seen = makeFlag();
    job.start(
        [=](const std::stop_token& stop, const Job::Progress&) {
            *begun = true;
            waitForStop(stop);
            return 1;
        },
        [](int) {});
    waitFor(begun);
    job.start(
        [=](const std::stop_token& stop, const Job::Progress& progress) {
            std::this_thread::sleep_for(std::chrono::milliseconds(100));  // the older result is there by now
            progress(0.5);
            while (!*seen && !stop.stop_requested()) {
                std::this_thread::sleep_for(std::chrono::milliseconds(1));
            }
            return 2;
        },
        [](int) {});
    EXPECT_TRUE(spinUntil([&] { return progressed.size() == 1; })) << "progress was no longer shown";
    *seen = true;
    ASSERT_TRUE(spinUntil([&] { return finished.size() == 1; }));
    ASSERT_EQ(progressed.size(), 1);
    EXPECT_EQ(progressed.first().first().toDouble(), 0.5);
}

TEST(Job, StartingAgainFromTheDeliveryKeepsItRunning) {
    Job job;
    QSignalSpy finished(&job, &Job::finished);
    std::vector<int> delivered;
    const auto work = [](int value) {
        return [value](const std::stop_token&, const Job::Progress&) { return value; };
    };
    job.start(work(1), [&](int value) {
        delivered.push_back(value);
        job.start(work(2), [&](int second) { delivered.push_back(second); });
    });
    ASSERT_TRUE(spinUntil([&] { return finished.size() == 1; }));
    spinOut();
    EXPECT_EQ(delivered, (std::vector<int>{1, 2}));
    EXPECT_EQ(finished.size(), 1);
}

TEST(Job, CancelDeliversWhatThereIs) {
    Job job;
    QSignalSpy finished(&job, &Job::finished);
    QSignalSpy failed(&job, &Job::failed);
    const Flag begun = makeFlag();
    std::string delivered;
    job.start(
        [=](const std::stop_token& stop, const Job::Progress&) {
            *begun = true;
            waitForStop(stop);
            return std::string("half a night");
        },
        [&](const std::string& value) { delivered = value; });
    waitFor(begun);
    EXPECT_TRUE(job.isRunning());
    job.cancel();
    EXPECT_TRUE(job.isRunning()) << "the result has not arrived yet";
    ASSERT_TRUE(spinUntil([&] { return finished.size() == 1; }));
    EXPECT_EQ(delivered, "half a night");
    EXPECT_EQ(failed.size(), 0);
}

TEST(Job, CancelWithoutWorkDoesNothingToTheNext) {
    Job job;
    job.cancel();
    int delivered = 0;
    job.start(
        [](const std::stop_token& stop, const Job::Progress&) { return stop.stop_requested() ? -1 : 1; },
        [&](int value) { delivered = value; });
    ASSERT_TRUE(spinUntil([&] { return delivered != 0; }));
    EXPECT_EQ(delivered, 1);
}

/// Starts work that throws what `fault()` throws, and returns the sentence of failed().
template <class Fault>
std::string failureOf(Fault fault) {
    Job job;
    QSignalSpy finished(&job, &Job::finished);
    QSignalSpy failed(&job, &Job::failed);
    bool delivered = false;
    job.start(
        [fault](const std::stop_token&, const Job::Progress&) {
            fault();
            return 1;
        },
        [&](int) { delivered = true; });
    EXPECT_TRUE(spinUntil([&] { return finished.size() == 1; }));
    EXPECT_FALSE(delivered);
    EXPECT_FALSE(job.isRunning());
    EXPECT_EQ(failed.size(), 1);
    return failed.isEmpty() ? std::string() : failed.first().first().toString().toStdString();
}

TEST(Job, AnExceptionBecomesASentence) {
    EXPECT_EQ(failureOf([] { throw std::runtime_error("Layer 3 at 12.5 °C ran dry."); }),
              "Layer 3 at 12.5 °C ran dry.");
    EXPECT_NE(failureOf([] { throw std::bad_alloc(); }).find("memory"), std::string::npos);
    EXPECT_NE(failureOf([] { throw std::runtime_error(""); }).find("fault of our own"), std::string::npos);
    EXPECT_NE(failureOf([] { throw 3; }).find("fault of our own"), std::string::npos);
}

TEST(Job, AnExceptionOfTheDeliveryBecomesASentenceToo) {
    Job job;
    QSignalSpy finished(&job, &Job::finished);
    QSignalSpy failed(&job, &Job::failed);
    job.start([](const std::stop_token&, const Job::Progress&) { return 1; },
              [](int) { throw std::runtime_error("The chart has no room."); });
    ASSERT_TRUE(spinUntil([&] { return finished.size() == 1; }));
    ASSERT_EQ(failed.size(), 1);
    EXPECT_EQ(failed.first().first().toString().toStdString(), "The chart has no room.");
}

TEST(Job, AFailureOfOlderWorkIsNotShown) {
    Job job;
    QSignalSpy finished(&job, &Job::finished);
    QSignalSpy failed(&job, &Job::failed);
    const Flag begun = makeFlag();
    job.start(
        [=](const std::stop_token& stop, const Job::Progress&) -> int {
            *begun = true;
            waitForStop(stop);
            throw std::runtime_error("old");
        },
        [](int) {});
    waitFor(begun);
    int delivered = 0;
    job.start([](const std::stop_token&, const Job::Progress&) { return 2; },
              [&](int value) { delivered = value; });
    ASSERT_TRUE(spinUntil([&] { return finished.size() == 1; }));
    spinOut();
    EXPECT_EQ(delivered, 2);
    EXPECT_EQ(failed.size(), 0);
}

TEST(Job, DestructionAsksToStopWaitsAndDeliversNothing) {
    const Flag begun = makeFlag();
    const Flag ended = makeFlag();
    bool delivered = false;
    {
        Job job;
        job.start(
            [=](const std::stop_token& stop, const Job::Progress&) {
                *begun = true;
                waitForStop(stop);
                std::this_thread::sleep_for(std::chrono::milliseconds(50));
                *ended = true;
                return 1;
            },
            [&](int) { delivered = true; });
        waitFor(begun);
        EXPECT_FALSE(*ended);
    }
    EXPECT_TRUE(*ended) << "the destructor did not wait";
    spinOut();
    EXPECT_FALSE(delivered);
}

TEST(Job, DestructionDropsWorkThatHasNotBegun) {
    const Flag begun = makeFlag();
    const Flag queuedBegun = makeFlag();
    {
        Job job;
        job.start(
            [=](const std::stop_token& stop, const Job::Progress&) {
                *begun = true;
                waitForStop(stop);
                std::this_thread::sleep_for(std::chrono::milliseconds(50));
                return 1;
            },
            [](int) {});
        waitFor(begun);
        job.start(
            [=](const std::stop_token&, const Job::Progress&) {
                *queuedBegun = true;
                return 2;
            },
            [](int) {});
    }
    EXPECT_FALSE(*queuedBegun);
}

TEST(Job, TheDeliveryMayDestroyTheJob) {
    auto job = std::make_unique<Job>();
    bool finishedSeen = false;
    QObject::connect(job.get(), &Job::finished, [&] { finishedSeen = true; });
    job->start([](const std::stop_token&, const Job::Progress&) { return 1; }, [&](int) { job.reset(); });
    ASSERT_TRUE(spinUntil([&] { return job == nullptr; }));
    spinOut();
    EXPECT_FALSE(finishedSeen);
}

TEST(Job, ProgressRisesAndDoesNotFloodTheEventLoop) {
    Job job;
    QSignalSpy progressed(&job, &Job::progressed);
    QSignalSpy finished(&job, &Job::finished);
    QElapsedTimer clock;
    clock.start();
    job.start(
        [](const std::stop_token&, const Job::Progress& progress) {
            const auto end = std::chrono::steady_clock::now() + std::chrono::milliseconds(400);
            int calls = 0;
            double fraction = 0.0;
            while (std::chrono::steady_clock::now() < end) {
                fraction = std::min(0.99, fraction + 1e-6);
                progress(calls % 3 == 0 ? fraction * 0.5 : fraction);  // a work that errs must not step back
                ++calls;
            }
            progress(1.0);
            return calls;
        },
        [](int calls) { EXPECT_GT(calls, 1000); });
    ASSERT_TRUE(spinUntil([&] { return finished.size() == 1; }));
    const qint64 elapsed_ms = clock.elapsed();
    spinOut();
    ASSERT_GE(progressed.size(), 2);
    EXPECT_LE(progressed.size(), elapsed_ms / 47 + 1);  // coarse timers may be 5 % early
    double last = 0.0;
    for (const auto& arguments : progressed) {
        const double fraction = arguments.first().toDouble();
        EXPECT_GT(fraction, last);
        EXPECT_LE(fraction, 1.0);
        last = fraction;
    }
    EXPECT_EQ(last, 1.0) << "the last progress is shown before the result";
}

}  // namespace
}  // namespace widgets
