#include "engine/base/files.h"

#include <gtest/gtest.h>

#include <fstream>
#include <sstream>
#include <unistd.h>

namespace engine {
namespace {

namespace fs = std::filesystem;

class Files : public testing::Test {
protected:
    void SetUp() override {
        const auto* test = testing::UnitTest::GetInstance()->current_test_info();
        m_folder = fs::temp_directory_path() /
                   ("dawnline-files-" + std::string(test->name()) + "-" + std::to_string(::getpid()));
        fs::remove_all(m_folder);
        fs::create_directory(m_folder);
    }
    void TearDown() override { fs::remove_all(m_folder); }

    static std::string textOf(const fs::path& path) {
        std::ostringstream text;
        text << std::ifstream(path, std::ios::binary).rdbuf();
        return text.str();
    }
    static void put(const fs::path& path, const std::string& text) { std::ofstream(path) << text; }
    static int countIn(const fs::path& folder) {
        return static_cast<int>(std::distance(fs::directory_iterator(folder), fs::directory_iterator()));
    }

    fs::path m_folder;
    const std::vector<TextFile> m_files{{"a.csv", "first"}, {"b.csv", "second\r\n"}, {"c.csv", ""}};
};

TEST_F(Files, AreWrittenIntoANewFolderWithItsParents) {
    EXPECT_EQ(writeFiles(m_folder / "new" / "deep" / "", m_files), std::nullopt);
    EXPECT_EQ(textOf(m_folder / "new/deep/a.csv"), "first");
    EXPECT_EQ(textOf(m_folder / "new/deep/b.csv"), "second\r\n");
    EXPECT_EQ(countIn(m_folder / "new/deep"), 3) << "no file of another name is left";
}

TEST_F(Files, ReplaceTheirOwnNamesAndNoOthers) {
    put(m_folder / "a.csv", "old");
    put(m_folder / "notes.txt", "mine");
    EXPECT_EQ(writeFiles(m_folder, m_files), std::nullopt);
    EXPECT_EQ(textOf(m_folder / "a.csv"), "first");
    EXPECT_EQ(textOf(m_folder / "notes.txt"), "mine");
    EXPECT_EQ(countIn(m_folder), 4);
}

TEST_F(Files, LeaveAllAsItWasIfOneCannotTakeItsPlace) {
    put(m_folder / "a.csv", "old");
    fs::create_directory(m_folder / "c.csv");  // a folder stands where the last file should go
    const auto fault = writeFiles(m_folder, m_files);
    ASSERT_TRUE(fault);
    EXPECT_NE(fault->find("c.csv"), std::string::npos) << *fault;
    EXPECT_EQ(textOf(m_folder / "a.csv"), "old");
    EXPECT_FALSE(fs::exists(m_folder / "b.csv"));
    EXPECT_EQ(countIn(m_folder), 2);
}

TEST_F(Files, TakeBackAFolderTheyMadeInVain) {
    const std::vector<TextFile> bad{{"a.csv", "first"}, {"no/such/folder.csv", "second"}};
    EXPECT_TRUE(writeFiles(m_folder / "new" / "deep", bad));
    EXPECT_EQ(countIn(m_folder), 0);
}

TEST_F(Files, AreNotWrittenIntoAFile) {
    put(m_folder / "file", "mine");
    for (const fs::path& folder : {m_folder / "file", m_folder / "file" / "below"}) {
        const auto fault = writeFiles(folder, m_files);
        ASSERT_TRUE(fault) << folder;
        EXPECT_NE(fault->find("is a file, not a folder"), std::string::npos) << *fault;
        EXPECT_EQ(folderFault(folder), fault);
    }
    EXPECT_EQ(textOf(m_folder / "file"), "mine");
    EXPECT_TRUE(folderFault(""));
}

TEST_F(Files, AFolderThatCouldBeMadeHasNoFault) {
    EXPECT_EQ(folderFault(m_folder), std::nullopt);
    EXPECT_EQ(folderFault(m_folder / "new" / "deep"), std::nullopt);
    EXPECT_EQ(countIn(m_folder), 0) << "asking changes nothing";
}

}  // namespace
}  // namespace engine
