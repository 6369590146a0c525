#include "engine/pond/pond_io.h"
#include "engine/pond/pond_keys.h"
#include "tests/epw_text.h"
#include "tests/temporary_folder.h"
#include "tests/widgets/typing.h"

#include <QSignalSpy>

#include <fstream>
#include <sstream>
#include <unistd.h>

namespace widgets {
namespace {

using engine::test::kPlainPond;
using engine::test::TemporaryFolder;

/// A document on the plain pond in a folder of its own.
class OnADocument : public testing::Test {
protected:
    void SetUp() override { test::open(document, folder, kPlainPond); }
    [[nodiscard]] std::filesystem::path file() const { return folder.path() / "pond.toml"; }
    engine::Diagnostics rename(const char* title, const char* mergeKey = "") {
        return document.edit(
            QStringLiteral("Change the title"), [title](engine::Pond& pond) { pond.title = title; },
            QString::fromUtf8(mergeKey));
    }

    TemporaryFolder folder;
    Document document;
};
using DocumentTest = OnADocument;

TEST(DocumentWithoutAPond, IsEmptyAndUnmodified) {
    const Document document;
    EXPECT_TRUE(document.isEmpty());
    EXPECT_FALSE(document.isModified());
    EXPECT_FALSE(document.title().isEmpty());
}

TEST_F(DocumentTest, OpensAFile) {
    EXPECT_FALSE(document.isEmpty());
    EXPECT_EQ(document.pond().title, "Test pond");
    EXPECT_EQ(document.path(), file());
    EXPECT_FALSE(document.isModified());
    EXPECT_EQ(document.undoStack().count(), 0);
}

TEST_F(DocumentTest, AFaultyFileLeavesItAsItWas) {
    rename("kept");
    QSignalSpy changed(&document, &Document::changed);
    const auto faulty = folder.write("faulty.toml", "format = 1\n[place]\nlatitud = 3\n");
    EXPECT_TRUE(engine::hasErrors(document.open(faulty)));
    EXPECT_TRUE(engine::hasErrors(document.open(folder.path() / "nowhere.toml")));
    EXPECT_EQ(document.pond().title, "kept");
    EXPECT_EQ(document.path(), file());
    EXPECT_TRUE(document.isModified());
    EXPECT_EQ(changed.size(), 0);
}

TEST_F(DocumentTest, AnEditIsOneNamedStep) {
    QSignalSpy changed(&document, &Document::changed);
    EXPECT_TRUE(rename("new").empty());
    EXPECT_EQ(document.pond().title, "new");
    EXPECT_TRUE(document.isModified());
    EXPECT_EQ(test::plain(document.undoStack().undoText()), "Change the title");
    ASSERT_EQ(changed.size(), 1);
    EXPECT_EQ(changed.first().first().value<Document::Parts>(), Document::Others);
    document.undoStack().undo();
    EXPECT_EQ(document.pond().title, "Test pond");
    EXPECT_FALSE(document.isModified());
    document.undoStack().redo();
    EXPECT_EQ(document.pond().title, "new");
    EXPECT_EQ(changed.size(), 3);
}

TEST_F(DocumentTest, ChangedNamesTheParts) {
    QSignalSpy changed(&document, &Document::changed);
    const auto partsOf = [&](const std::function<void(engine::Pond&)>& change) {
        changed.clear();
        EXPECT_TRUE(document.edit(QStringLiteral("x"), change).empty());
        return changed.isEmpty() ? Document::Parts() : changed.first().first().value<Document::Parts>();
    };
    EXPECT_EQ(partsOf([](engine::Pond& pond) { pond.ramps[1].first_min = engine::Quantity(20.0); }),
              Document::Ramps);
    EXPECT_EQ(partsOf([](engine::Pond& pond) { pond.chosenRamp = "doubling"; }), Document::Ramps);
    EXPECT_EQ(partsOf([](engine::Pond& pond) { pond.limits.stress = engine::Quantity(5.0); }),
              Document::LimitsPart);
    EXPECT_EQ(partsOf([](engine::Pond& pond) { pond.aerator->depth = engine::Quantity(2.0); }),
              Document::AeratorPart);
    EXPECT_EQ(partsOf([](engine::Pond& pond) { pond.water.secchi = engine::Quantity(1.0); }),
              Document::Others);
}

TEST_F(DocumentTest, AnEditThatChangesNothingIsNoStep) {
    QSignalSpy changed(&document, &Document::changed);
    EXPECT_TRUE(rename("Test pond").empty());
    EXPECT_EQ(document.undoStack().count(), 0);
    EXPECT_EQ(changed.size(), 0);
    EXPECT_FALSE(document.isModified());
}

TEST_F(DocumentTest, AnEditThatBreaksAnythingIsRefused) {
    QSignalSpy changed(&document, &Document::changed);
    const engine::Pond before = document.pond();
    const auto faults = document.edit(
        QStringLiteral("x"), [](engine::Pond& pond) { pond.aerator->depth = engine::Quantity(3.4); });
    ASSERT_EQ(faults.size(), 1U);
    EXPECT_EQ(faults.front().key, "aerator.depth_m");
    EXPECT_TRUE(document.pond() == before);
    EXPECT_EQ(document.undoStack().count(), 0);
    EXPECT_EQ(changed.size(), 0);
}

TEST_F(DocumentTest, StepsOfOneKeyInARowAreOne) {
    rename("a", "key");
    rename("b", "key");
    EXPECT_EQ(document.undoStack().count(), 1);
    rename("c", "other");
    rename("d");
    rename("e");
    EXPECT_EQ(document.undoStack().count(), 4);
    document.undoStack().setIndex(1);
    EXPECT_EQ(document.pond().title, "b");
    document.undoStack().undo();
    EXPECT_EQ(document.pond().title, "Test pond");
}

TEST_F(DocumentTest, MergedStepsThatLeadBackAreNone) {
    rename("a", "key");
    rename("Test pond", "key");
    EXPECT_EQ(document.undoStack().count(), 0);
    EXPECT_FALSE(document.isModified());
}

TEST_F(DocumentTest, SavingMakesItClean) {
    rename("new");
    EXPECT_FALSE(document.save().has_value());
    EXPECT_FALSE(document.isModified());
    EXPECT_EQ(engine::test::fileText(file()), engine::writePond(document.pond()));
    document.undoStack().undo();
    EXPECT_TRUE(document.isModified()) << "the file holds the other title";
    document.undoStack().redo();
    EXPECT_FALSE(document.isModified());
}

TEST_F(DocumentTest, AStepAfterSavingIsNotMergedIntoTheSavedOne) {
    rename("a", "key");
    EXPECT_FALSE(document.save().has_value());
    rename("b", "key");
    EXPECT_TRUE(document.isModified());
    document.undoStack().undo();
    EXPECT_EQ(document.pond().title, "a");
    EXPECT_FALSE(document.isModified());
}

TEST_F(DocumentTest, KeepsWhatStoodInTheFile) {
    rename("new");
    EXPECT_FALSE(document.save().has_value());
    EXPECT_EQ(engine::test::fileText(file().string() + ".bak"), kPlainPond);
}

TEST_F(DocumentTest, APondThatWouldNotOpenAgainIsNotSavedOverOneThatDoes) {
    document.edit(QStringLiteral("notes"), [](engine::Pond& pond) {
        engine::Event event;
        event.at = pond.profile->at;
        event.kind = "note";
        event.note = std::string(engine::kLongestText_bytes, '\\');
        pond.events.assign(300, event);
    });
    const auto fault = document.save();
    ASSERT_TRUE(fault);
    EXPECT_NE(test::plain(*fault).find("5.7 MiB in the form in which it is saved"), std::string::npos)
        << test::plain(*fault);
    EXPECT_TRUE(document.isModified());
    EXPECT_EQ(engine::test::fileText(file()), kPlainPond);
}

TEST_F(DocumentTest, SavesUnderAnotherName) {
    QSignalSpy moved(&document, &Document::pathChanged);
    rename("new");
    const auto other = folder.path() / "other.toml";
    EXPECT_FALSE(document.saveAs(other).has_value());
    EXPECT_EQ(document.path(), other);
    EXPECT_EQ(moved.size(), 1);
    EXPECT_FALSE(document.isModified());
    EXPECT_EQ(engine::test::fileText(file()), kPlainPond) << "the first file is left alone";
    EXPECT_EQ(engine::test::fileText(other), engine::writePond(document.pond()));
    document.undoStack().undo();
    EXPECT_EQ(document.pond().title, "Test pond");
}

TEST_F(DocumentTest, CompanionsAreFoundFromAnotherFolder) {
    folder.write("logger.csv",
                 "at,depth_m,temperature_c,oxygen_mg_per_l\r\n2026-06-14T05:40:00,0.5,27,5.1\r\n");
    folder.write("year.epw", engine::test::epwText());
    const std::string text =
        std::string(kPlainPond) + "\n[readings]\nfile = \"logger.csv\"\n[climate]\nfile = \"year.epw\"\n";
    Document withLogger;
    const auto faults = withLogger.open(folder.write("logged.toml", text));
    ASSERT_FALSE(engine::hasErrors(faults)) << engine::format(faults.front());
    ASSERT_EQ(withLogger.pond().fileReadings.size(), 1U);
    std::filesystem::create_directories(folder.path() / "sent" / "june");
    const auto there = folder.path() / "sent" / "june" / "pond.toml";
    ASSERT_FALSE(withLogger.saveAs(there).has_value());
    EXPECT_EQ(withLogger.pond().readingsFile.name, "../../logger.csv");
    EXPECT_EQ(withLogger.pond().climate.file, "../../year.epw");
    EXPECT_FALSE(withLogger.isModified());
    Document again;
    EXPECT_FALSE(engine::hasErrors(again.open(there)));
    EXPECT_TRUE(again.pond() == withLogger.pond());
}

TEST_F(DocumentTest, CompanionsStayWhereTheyAreBesideAFileNamedWithoutAFolder) {
    folder.write("logger.csv",
                 "at,depth_m,temperature_c,oxygen_mg_per_l\r\n2026-06-14T05:40:00,0.5,27,5.1\r\n");
    folder.write("logged.toml", std::string(kPlainPond) + "\n[readings]\nfile = \"logger.csv\"\n");
    const auto before = std::filesystem::current_path();
    std::filesystem::current_path(folder.path());
    Document logged;
    logged.open("logged.toml");
    const auto fault = logged.saveAs("other.toml");
    const auto nameless = logged.saveAs("");
    std::filesystem::current_path(before);
    EXPECT_FALSE(fault.has_value());
    EXPECT_TRUE(nameless.has_value());
    EXPECT_EQ(logged.pond().readingsFile.name, "logger.csv");
    EXPECT_EQ(logged.path(), "other.toml");
    EXPECT_TRUE(std::filesystem::exists(folder.path() / "other.toml"));
}

TEST_F(DocumentTest, SaysThatCommentsWouldBeLost) {
    EXPECT_FALSE(document.losesComments()) << "the plain pond stands in our own form";
    Document commented;
    commented.open(folder.write("commented.toml", "# a note\n" + std::string(kPlainPond)));
    EXPECT_TRUE(commented.losesComments());
    ASSERT_FALSE(commented.save().has_value());
    EXPECT_FALSE(commented.losesComments());
}

/// Takes the rights of a user without any, which root ignores, for as long as it lives.
class WithoutRights {
public:
    WithoutRights() { m_isDropped = ::geteuid() == 0 && ::seteuid(65534) == 0; }
    ~WithoutRights() {
        if (m_isDropped && ::seteuid(0) != 0) {
            std::abort();
        }
    }
    WithoutRights(const WithoutRights&) = delete;
    WithoutRights& operator=(const WithoutRights&) = delete;

private:
    bool m_isDropped = false;
};

TEST_F(DocumentTest, AFolderThatIsReadOnlyLeavesFileAndModifiedState) {
    namespace fs = std::filesystem;
    rename("new");
    fs::permissions(folder.path(), fs::perms::owner_read | fs::perms::owner_exec | fs::perms::others_read |
                                       fs::perms::others_exec);
    std::optional<QString> fault;
    {
        const WithoutRights rights;
        fault = document.save();
    }
    fs::permissions(folder.path(), fs::perms::owner_all);
    ASSERT_TRUE(fault.has_value());
    EXPECT_NE(test::plain(*fault).find(file().string()), std::string::npos) << test::plain(*fault);
    EXPECT_TRUE(document.isModified());
    EXPECT_EQ(engine::test::fileText(file()), kPlainPond);
    EXPECT_EQ(document.pond().title, "new");
    EXPECT_EQ(std::distance(fs::directory_iterator(folder.path()), {}), 1) << "something was left behind";
}

TEST_F(DocumentTest, SavingAsToNowhereKeepsTheOldName) {
    rename("new");
    ASSERT_TRUE(document.saveAs(folder.path() / "no" / "such" / "pond.toml").has_value());
    EXPECT_EQ(document.path(), file());
    EXPECT_TRUE(document.isModified());
}

}  // namespace
}  // namespace widgets
