#include "widgets/durable_save.h"

#include "tests/temporary_folder.h"

#include <gtest/gtest.h>

#include <fstream>
#include <sstream>
#include <string>
#include <sys/stat.h>
#include <sys/syscall.h>
#include <unistd.h>
#include <vector>

namespace {

/// What was flushed, in order: the path behind each handle, and whether it was a folder.
struct Flush {
    std::string path;
    bool isFolder = false;
};
std::vector<Flush> g_flushes;

void note(int handle) {
    struct stat status {};
    char path[4096] = {};
    const std::string link = "/proc/self/fd/" + std::to_string(handle);
    const ssize_t length = ::readlink(link.c_str(), path, sizeof path - 1);
    g_flushes.push_back({length > 0 ? std::string(path) : std::string(),
                         ::fstat(handle, &status) == 0 && S_ISDIR(status.st_mode)});
}

}  // namespace

// These stand before the C library's, for our own code and for Qt's: they note the call and do it.
extern "C" int fsync(int handle) {
    note(handle);
    return static_cast<int>(::syscall(SYS_fsync, handle));
}
extern "C" int fdatasync(int handle) {
    note(handle);
    return static_cast<int>(::syscall(SYS_fdatasync, handle));
}

namespace widgets {
namespace {

using engine::test::TemporaryFolder;

std::string contentOf(const std::filesystem::path& path) {
    std::ostringstream text;
    text << std::ifstream(path, std::ios::binary).rdbuf();
    return text.str();
}

TEST(DurableSave, WritesANewFileWithoutABackup) {
    const TemporaryFolder folder;
    EXPECT_FALSE(saveDurably(folder.path() / "a.toml", "one\n").has_value());
    EXPECT_EQ(contentOf(folder.path() / "a.toml"), "one\n");
    EXPECT_FALSE(std::filesystem::exists(folder.path() / "a.toml.bak"));
}

TEST(DurableSave, KeepsWhatWasThere) {
    const TemporaryFolder folder;
    const auto file = folder.write("a.toml", "one");
    EXPECT_FALSE(saveDurably(file, "two").has_value());
    EXPECT_EQ(contentOf(file), "two");
    EXPECT_EQ(contentOf(file.string() + ".bak"), "one");
    EXPECT_FALSE(saveDurably(file, "three").has_value());
    EXPECT_EQ(contentOf(file.string() + ".bak"), "two");
    EXPECT_FALSE(saveDurably(file, "three").has_value());
    EXPECT_EQ(contentOf(file.string() + ".bak"), "two") << "saving the same again must not eat the backup";
}

TEST(DurableSave, FlushesTheFileAndThenTheFolderThatHoldsItsName) {
    const TemporaryFolder folder;
    g_flushes.clear();
    ASSERT_FALSE(saveDurably(folder.path() / "a.toml", "one").has_value());
    ASSERT_GE(g_flushes.size(), 2U);
    EXPECT_FALSE(g_flushes.front().isFolder);
    EXPECT_TRUE(g_flushes.back().isFolder);
    EXPECT_EQ(g_flushes.back().path, std::filesystem::canonical(folder.path()).string());
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
    EXPECT_EQ(contentOf(file), "two");
    EXPECT_EQ(contentOf(file.string() + ".bak"), "one");
    EXPECT_EQ(std::filesystem::status(file).permissions(),
              std::filesystem::perms::owner_read | std::filesystem::perms::owner_write);
}

TEST(DurableSave, WithoutABackupNothingIsReplaced) {
    const TemporaryFolder folder;
    const auto file = folder.write("a.toml", "one");
    std::filesystem::create_directory(file.string() + ".bak");
    const auto fault = saveDurably(file, "two");
    ASSERT_TRUE(fault.has_value());
    EXPECT_TRUE(fault->contains(QStringLiteral("a.toml"))) << fault->toStdString();
    EXPECT_EQ(contentOf(file), "one");
}

TEST(DurableSave, AFolderInItsPlaceIsAFault) {
    const TemporaryFolder folder;
    std::filesystem::create_directory(folder.path() / "a.toml");
    EXPECT_TRUE(saveDurably(folder.path() / "a.toml", "one").has_value());
    EXPECT_TRUE(std::filesystem::is_directory(folder.path() / "a.toml"));
}

}  // namespace
}  // namespace widgets
