// Entries of the log in the document: into the file at once, behind what is there, and past undo.

#include "engine/log_chain.h"
#include "engine/pond_io.h"
#include "tests/widgets/typing.h"
#include "widgets/log_entry.h"

#include <fstream>
#include <sstream>

namespace widgets {
namespace {

/// The plain pond with an empty log.
std::string withoutReadings() {
    const std::string_view text = engine::test::kPlainPond;
    return std::string(text.substr(0, text.find("[[reading]]")));
}

using engine::test::TemporaryFolder;

std::string contentOf(const std::filesystem::path& path) {
    std::ostringstream text;
    text << std::ifstream(path, std::ios::binary).rdbuf();
    return text.str();
}

engine::Reading reading(double oxygen) {
    engine::Reading out;
    out.at = engine::LocalTime(std::chrono::local_days(std::chrono::year(2026) / 6 / 15) +
                               std::chrono::minutes(340));
    out.depth = engine::Quantity(0.5);
    out.oxygen = engine::Quantity(oxygen);
    return out;
}

class DocumentLog : public testing::Test {
protected:
    void SetUp() override { test::open(document, folder, withoutReadings() + "# a comment\n"); }
    [[nodiscard]] std::filesystem::path file() const { return folder.path() / "pond.toml"; }
    [[nodiscard]] engine::Pond onDisk() const { return *engine::readPond(file()).pond; }

    TemporaryFolder folder;
    Document document;
};

TEST_F(DocumentLog, AnEntryIsInTheFileAtOnceAndTheRestOfTheFileStays) {
    const std::string before = contentOf(file());
    const Entered entered = enter(document, {reading(5.6)}, {});
    ASSERT_TRUE(entered.isInLog);
    EXPECT_EQ(test::plain(entered.said), "");
    EXPECT_EQ(contentOf(file()).substr(0, before.size()), before) << "comments stay";
    EXPECT_TRUE(onDisk() == document.pond());
    EXPECT_FALSE(document.isModified());
    EXPECT_FALSE(document.isChangedOnDisk());
}

TEST_F(DocumentLog, OtherEditsAreNotWrittenWithIt) {
    document.edit(QStringLiteral("e"), [](engine::Pond& pond) { pond.title = "unsaved"; });
    ASSERT_TRUE(enter(document, {reading(5.6)}, {}).isInLog);
    EXPECT_EQ(onDisk().title, "Test pond");
    EXPECT_EQ(onDisk().readings.size(), 1U);
    EXPECT_TRUE(document.isModified());
    ASSERT_FALSE(document.save());
    EXPECT_TRUE(onDisk() == document.pond());
    ASSERT_TRUE(enter(document, {reading(5.2)}, {}).isInLog);
    EXPECT_EQ(contentOf(file()), engine::writePond(document.pond())) << "our form stays our form";
}

TEST_F(DocumentLog, UndoAndRedoLeaveItAlone) {
    document.edit(QStringLiteral("e"), [](engine::Pond& pond) { pond.title = "other"; });
    const int steps = document.undoStack().count();
    ASSERT_TRUE(enter(document, {reading(5.6)}, {}).isInLog);
    EXPECT_EQ(document.undoStack().count(), steps);
    document.undoStack().undo();
    EXPECT_EQ(document.pond().title, "Test pond");
    EXPECT_EQ(document.pond().readings.size(), 1U);
    document.undoStack().redo();
    EXPECT_EQ(document.pond().title, "other");
    EXPECT_EQ(document.pond().readings.size(), 1U);
}

TEST_F(DocumentLog, AnEntryThatBreaksTheChecksIsRefusedAndOneThatChangesAnotherIsOurFault) {
    engine::Reading deep = reading(5.0);
    deep.depth = engine::Quantity(50.0);
    const Entered entered = enter(document, {deep}, {});
    EXPECT_FALSE(entered.isInLog);
    EXPECT_NE(test::plain(entered.said).find("below the bottom"), std::string::npos);
    EXPECT_TRUE(document.pond().readings.empty());
    ASSERT_TRUE(enter(document, {reading(5.6)}, {}).isInLog);
    EXPECT_THROW(
        document.append([](engine::Pond& pond) { pond.readings[0].oxygen = engine::Quantity(9.0); }, ""),
        engine::InternalError);
    EXPECT_THROW(document.append([](engine::Pond& pond) { pond.title = "x"; }, ""), engine::InternalError);
}

TEST_F(DocumentLog, WhereTheFileWasChangedTheEntryIsKeptUntilItIsSaved) {
    std::ofstream(file(), std::ios::app) << "# from elsewhere\n";
    const Entered entered = enter(document, {reading(5.6)}, {});
    EXPECT_TRUE(entered.isInLog);
    EXPECT_NE(test::plain(entered.said).find("Another program"), std::string::npos);
    EXPECT_TRUE(document.isModified());
    ASSERT_FALSE(document.save());
    EXPECT_FALSE(document.isModified());
    EXPECT_EQ(onDisk().readings.size(), 1U);
}

TEST(DocumentLogOfAPondInNoFile, WaitsToBeSaved) {
    Document document;
    document.start(*engine::readPondText(withoutReadings(), "pond.toml").pond);
    const Entered entered = enter(document, {reading(5.6)}, {});
    EXPECT_TRUE(entered.isInLog);
    EXPECT_NE(test::plain(entered.said).find("no file yet"), std::string::npos);
}

}  // namespace
}  // namespace widgets
