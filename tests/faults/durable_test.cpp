#include "engine/base/durable.h"

#include "tests/faults/failing_calls.h"
#include "tests/temporary_folder.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cerrno>
#include <chrono>
#include <fstream>
#include <iterator>
#include <memory>
#include <sstream>
#include <string>
#include <thread>

namespace engine {
namespace {

using test::TemporaryFolder;

TEST(DurableSave, WritesANewFileWithoutABackup) {
    const TemporaryFolder folder;
    EXPECT_FALSE(saveDurably(folder.path() / "a.toml", "one\n").has_value());
    EXPECT_EQ(test::fileText(folder.path() / "a.toml"), "one\n");
    EXPECT_FALSE(std::filesystem::exists(folder.path() / "a.toml.bak"));
}

TEST(DurableSave, KeepsWhatWasThere) {
    const TemporaryFolder folder;
    const auto file = folder.write("a.toml", "one");
    EXPECT_FALSE(saveDurably(file, "two").has_value());
    EXPECT_EQ(test::fileText(file), "two");
    EXPECT_EQ(test::fileText(file.string() + ".bak"), "one");
    EXPECT_FALSE(saveDurably(file, "three").has_value());
    EXPECT_EQ(test::fileText(file.string() + ".bak"), "two");
    EXPECT_FALSE(saveDurably(file, "three").has_value());
    EXPECT_EQ(test::fileText(file.string() + ".bak"), "two")
        << "saving the same again must not eat the backup";
}

TEST(DurableSave, FlushesTheFileAndThenTheFolderThatHoldsItsName) {
    const TemporaryFolder folder;
    const test::WatchedCalls calls;
    ASSERT_FALSE(saveDurably(folder.path() / "a.toml", "one").has_value());
    std::vector<test::Call> flushes;
    std::copy_if(calls.all().begin(), calls.all().end(), std::back_inserter(flushes),
                 [](const test::Call& call) { return call.name == "fsync"; });
    ASSERT_GE(flushes.size(), 2U);
    EXPECT_FALSE(flushes.front().isFolder);
    EXPECT_TRUE(flushes.back().isFolder);
    EXPECT_EQ(flushes.back().path, std::filesystem::canonical(folder.path()).string());
}

TEST(DurableSave, FollowsALinkAndKeepsPermissions) {
    const TemporaryFolder folder;
    const auto file = folder.write("real.toml", "one");
    std::filesystem::permissions(file,
                                 std::filesystem::perms::owner_read | std::filesystem::perms::owner_write);
    const auto link = folder.path() / "link.toml";
    std::filesystem::create_symlink("real.toml", link);
    ASSERT_FALSE(saveDurably(link, "two").has_value());
    EXPECT_TRUE(std::filesystem::is_symlink(link));
    EXPECT_EQ(test::fileText(file), "two");
    EXPECT_EQ(test::fileText(file.string() + ".bak"), "one");
    EXPECT_EQ(std::filesystem::status(file).permissions(),
              std::filesystem::perms::owner_read | std::filesystem::perms::owner_write);
}

TEST(DurableSave, WithoutABackupNothingIsReplaced) {
    const TemporaryFolder folder;
    const auto file = folder.write("a.toml", "one");
    std::filesystem::create_directory(file.string() + ".bak");
    const auto fault = saveDurably(file, "two");
    ASSERT_TRUE(fault.has_value());
    EXPECT_NE(fault->find("a.toml"), std::string::npos) << *fault;
    EXPECT_EQ(test::fileText(file), "one");
}

TEST(DurableSave, ALinkInThePlaceOfTheBackupIsReplacedAndNotFollowed) {
    const TemporaryFolder folder, elsewhere;
    const auto file = folder.write("a.toml", "one");
    const auto stranger = elsewhere.write("diary.txt", "mine");
    std::filesystem::create_symlink(stranger, file.string() + ".bak");
    ASSERT_FALSE(saveDurably(file, "two").has_value());
    EXPECT_EQ(test::fileText(stranger), "mine");
    EXPECT_FALSE(std::filesystem::is_symlink(file.string() + ".bak"));
    EXPECT_EQ(test::fileText(file.string() + ".bak"), "one");
}

TEST(DurableSave, TheBackupIsNoMoreOpenToOthersThanTheFile) {
    const TemporaryFolder folder;
    const auto file = folder.write("a.toml", "one");
    std::filesystem::permissions(file,
                                 std::filesystem::perms::owner_read | std::filesystem::perms::owner_write);
    ASSERT_FALSE(saveDurably(file, "two").has_value());
    EXPECT_EQ(std::filesystem::status(file.string() + ".bak").permissions(),
              std::filesystem::status(file).permissions());
}

/// A full disk, a quota and a disk that gives out, at each call in turn until a save passes.
TEST(DurableSave, IsWholeWhicheverCallFails) {
    const std::string before = "one\n", after = "two\n" + std::string(9000, 'x');
    for (const int error : {ENOSPC, EDQUOT, EIO}) {
        bool hasPassed = false;
        for (int number = 1; !hasPassed; ++number) {
            ASSERT_LT(number, 100) << "a save makes fewer calls";
            const TemporaryFolder folder;
            const auto file = folder.write("a.toml", before);
            folder.write("a.toml.bak", "zero\n");
            std::optional<std::string> fault;
            std::string failed;
            {
                test::WatchedCalls calls;
                calls.failAt(number, error);
                fault = saveDurably(file, after);
                hasPassed = !calls.hasFailed();
                failed = hasPassed ? "nothing" : calls.all()[static_cast<std::size_t>(number) - 1].name;
            }
            SCOPED_TRACE(failed + " failed as call " + std::to_string(number));
            const std::string kept = test::fileText(file.string() + ".bak");
            EXPECT_TRUE(kept == "zero\n" || kept == before) << kept.size();
            const bool isSaved = test::fileText(file) == after;
            EXPECT_TRUE(isSaved || test::fileText(file) == before) << test::fileText(file).size();
            EXPECT_TRUE(fault.has_value() || isSaved) << "what is reported as saved is saved";
            EXPECT_EQ(std::distance(std::filesystem::directory_iterator(folder.path()), {}), 2)
                << "something was left behind";
            if (failed == "write" || failed == "fsync" || failed == "rename") {
                EXPECT_TRUE(fault.has_value()) << "a call that failed is no success";
            }
        }
    }
}

TEST(DurableSave, WhatAKilledProcessLeftDoesNotStopTheNextSave) {
    const TemporaryFolder folder;
    const auto file = folder.write("a.toml", "one");
    folder.write(newBeside(file).filename().string(), "half of");
    ASSERT_FALSE(saveDurably(file, "two").has_value());
    EXPECT_EQ(test::fileText(file), "two");
    EXPECT_FALSE(std::filesystem::exists(newBeside(file)));
}

TEST(FolderLockParallel, HoldsTheNextWriterOffUntilItIsGone) {
    const TemporaryFolder folder;
    const auto file = folder.write("a.toml", "one");
    auto lock = std::make_unique<FolderLock>(folder.path());
    ASSERT_FALSE(lock->fault());
    std::optional<std::string> fault = "not run";
    std::thread other([&] { fault = saveDurably(file, "two"); });
    std::this_thread::sleep_for(std::chrono::milliseconds(100));
    EXPECT_EQ(test::fileText(file), "one");
    lock.reset();
    other.join();
    EXPECT_FALSE(fault) << *fault;
    EXPECT_EQ(test::fileText(file), "two");
}

TEST(FolderLockParallel, WritersOnManyThreadsLoseNothing) {
    const TemporaryFolder folder;
    const auto file = folder.write("log.txt", "");
    constexpr int kThreads = 4, kEach = 25;
    std::vector<std::thread> writers;
    for (int thread = 0; thread < kThreads; ++thread) {
        writers.emplace_back([&] {
            for (int i = 0; i < kEach; ++i) {
                const FolderLock lock(folder.path());
                EXPECT_FALSE(lock.fault());
                EXPECT_FALSE(saveDurably(lock, file, test::fileText(file) + "x\n", OldFile::Replaced));
            }
        });
    }
    for (std::thread& writer : writers) {
        writer.join();
    }
    EXPECT_EQ(test::fileText(file).size(), std::size_t{2} * kThreads * kEach);
}

TEST(DurableSave, AFolderInItsPlaceIsAFault) {
    const TemporaryFolder folder;
    std::filesystem::create_directory(folder.path() / "a.toml");
    EXPECT_TRUE(saveDurably(folder.path() / "a.toml", "one").has_value());
    EXPECT_TRUE(std::filesystem::is_directory(folder.path() / "a.toml"));
}

}  // namespace
}  // namespace engine
