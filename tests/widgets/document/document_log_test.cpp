// Entries of the log in the document: into the file at once, behind what is there, and past undo.

#include "engine/follow_up/log_chain.h"
#include "engine/pond/local_time.h"
#include "engine/pond/pond_io.h"
#include "tests/temporary_folder.h"
#include "tests/widgets/typing.h"
#include "widgets/follow_up/log_entry.h"

#include <QProcess>
#include <QRegularExpression>
#include <QSet>

#include <chrono>
#include <cstdio>
#include <fstream>
#include <memory>
#include <sstream>

namespace widgets {
namespace {

/// The plain pond with an empty log.
std::string withoutReadings() {
    const std::string_view text = engine::test::kPlainPond;
    return std::string(text.substr(0, text.find("[[reading]]")));
}

using engine::test::TemporaryFolder;

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
    const std::string before = engine::test::fileText(file());
    const Entered entered = enter(document, {reading(5.6)}, {});
    ASSERT_TRUE(entered.isInLog);
    EXPECT_EQ(test::plain(entered.said), "");
    EXPECT_EQ(engine::test::fileText(file()).substr(0, before.size()), before) << "comments stay";
    EXPECT_TRUE(onDisk() == document.pond());
    EXPECT_FALSE(document.isModified());
    EXPECT_FALSE(document.changedOnDisk());
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
    EXPECT_EQ(engine::test::fileText(file()), engine::writePond(document.pond()))
        << "our form stays our form";
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
    const auto fault = document.save();
    ASSERT_TRUE(fault);
    EXPECT_NE(test::plain(*fault).find("Another program"), std::string::npos);
    EXPECT_NE(engine::test::fileText(file()).find("# from elsewhere"), std::string::npos)
        << "nothing is written over unasked";
    EXPECT_TRUE(document.isModified());
    ASSERT_FALSE(document.save(engine::test::fileText(file())));
    EXPECT_FALSE(document.isModified());
    EXPECT_EQ(onDisk().readings.size(), 1U);
}

/// Enters readings, one a minute, as fast as it can, and prints the time of each that is reported as saved.
void appendFor(std::chrono::milliseconds duration, const std::string& file, int firstMinute) {
    const auto end = std::chrono::steady_clock::now() + duration;
    for (int minute = firstMinute; std::chrono::steady_clock::now() < end; ++minute) {
        Document document;
        if (engine::hasErrors(document.open(file))) {
            std::fputs("cannot open\n", stdout);
            continue;
        }
        engine::Reading one = reading(5.6);
        *one.at += std::chrono::minutes(minute);
        const Entered entered = enter(document, {one}, {});
        if (entered.isInLog && entered.said.isEmpty()) {
            std::printf("saved %s\n", engine::formatLocalTime(*one.at).c_str());
        }
    }
}

constexpr const char* kAppendTo = "DAWNLINE_APPEND_TO";
constexpr const char* kAppendFrom = "DAWNLINE_APPEND_FROM";

int duration_ms() {
    return qEnvironmentVariableIsSet("DAWNLINE_SLOW") ? 60000 : 3000;
}

/// Not a test: what a second window does, run by the test below in processes of its own.
TEST(DocumentLogOfTwoWindows, DISABLED_AppendsInAnotherProcess) {
    appendFor(std::chrono::milliseconds(duration_ms()), qEnvironmentVariable(kAppendTo).toStdString(),
              qEnvironmentVariableIntValue(kAppendFrom));
}

TEST_F(DocumentLog, TwoProcessesThatAppendLoseNothingThatWasReportedAsSaved) {
    std::vector<std::unique_ptr<QProcess>> windows;
    constexpr int kMinutesApart = 100000;
    for (int i = 0; i < 2; ++i) {
        auto& window = windows.emplace_back(std::make_unique<QProcess>());
        QProcessEnvironment environment = QProcessEnvironment::systemEnvironment();
        environment.insert(QString::fromLatin1(kAppendTo), QString::fromStdString(file().string()));
        environment.insert(QString::fromLatin1(kAppendFrom), QString::number(i * kMinutesApart));
        window->setProcessEnvironment(environment);
        window->start(QCoreApplication::applicationFilePath(),
                      {QStringLiteral("--gtest_also_run_disabled_tests"),
                       QStringLiteral("--gtest_filter=*DISABLED_AppendsInAnotherProcess")});
    }
    QStringList saved;
    for (const auto& window : windows) {
        ASSERT_TRUE(window->waitForFinished(4 * duration_ms() + 20000));
        EXPECT_EQ(window->exitCode(), 0);
        const QStringList lines = QString::fromUtf8(window->readAllStandardOutput()).split(u'\n');
        EXPECT_FALSE(lines.contains(QStringLiteral("cannot open"))) << "a reader never sees half a file";
        const QStringList mine = lines.filter(QRegularExpression(QStringLiteral("^saved ")));
        EXPECT_GT(mine.size(), 3) << "both come to write";
        saved += mine;
    }
    QSet<QString> inFile;
    for (const engine::Reading& one : onDisk().readings) {
        inFile.insert(QString::fromStdString("saved " + engine::formatLocalTime(*one.at)));
    }
    for (const QString& one : saved) {
        EXPECT_TRUE(inFile.contains(one)) << test::plain(one);
    }
    EXPECT_EQ(inFile.size(), saved.size());
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
