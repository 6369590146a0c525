// Entries of the log in the document: into the file at once, behind what is there, and past undo.

#include "engine/follow_up/log_chain.h"
#include "engine/pond/local_time.h"
#include "engine/pond/pond_io.h"
#include "tests/temporary_folder.h"
#include "tests/widgets/child_environment.h"
#include "tests/widgets/typing.h"
#include "widgets/follow_up/log_entry.h"
#include "widgets/follow_up/log_import.h"

#include <QProcess>
#include <QRegularExpression>
#include <QSet>

#include <algorithm>
#include <array>
#include <chrono>
#include <cstdio>
#include <fstream>
#include <iostream>
#include <memory>
#include <vector>

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

/// Puts a reading, an event or a row of the readings file into the log. @return whether it is reported as
/// saved.
bool putOne(Document& document, engine::LocalTime at, int sort) {
    engine::Reading one = reading(5.6);
    one.at = at;
    if (sort == 0) {
        return !takeRows(document, {one});
    }
    engine::Event seen;
    seen.at = at;
    seen.kind = "visit";
    const Entered entered = sort == 1 ? enter(document, {one}, {}) : enter(document, {}, {seen});
    return entered.isInLog && entered.said.isEmpty();
}

/// What a window does that enters something at every minute, as fast as it can, and reads the file again when
/// it has changed. Prints each entry that is reported as saved, with the head of the log that then stands on
/// papers.
void appendFor(std::chrono::milliseconds duration, const std::string& file, int firstMinute) {
    const auto end = std::chrono::steady_clock::now() + duration;
    Document document;
    for (int minute = firstMinute; std::chrono::steady_clock::now() < end; ++minute) {
        if (document.isEmpty() || document.isModified() || document.changedOnDisk()) {
            if (engine::hasErrors(document.open(file))) {
                std::fputs("cannot open\n", stdout);
                continue;
            }
        }
        const engine::LocalTime at = *reading(5.6).at + std::chrono::minutes(minute);
        const int sort = minute % 3;
        if (putOne(document, at, sort)) {
            std::printf("saved %d %s %s\n", sort, engine::formatIsoTime(at).c_str(),
                        engine::shown(engine::logHead(document.pond())).c_str());
        }
    }
}

constexpr const char* kAppendTo = "DAWNLINE_APPEND_TO";
constexpr const char* kAppendFrom = "DAWNLINE_APPEND_FROM";

int duration_ms() {
    return qEnvironmentVariableIsSet("DAWNLINE_SLOW") ? 300000 : 3000;
}

/// Not a test: what a second window does, run by the test below in processes of its own.
TEST(DocumentLogOfTwoWindows, DISABLED_AppendsInAnotherProcess) {
    appendFor(std::chrono::milliseconds(duration_ms()), qEnvironmentVariable(kAppendTo).toStdString(),
              qEnvironmentVariableIntValue(kAppendFrom));
}

/// What a window has reported as saved, as it prints it: the sort of entry, its time, and the head.
QStringList savedBy(QProcess& window) {
    EXPECT_TRUE(window.waitForFinished(4 * duration_ms() + 20000));
    EXPECT_EQ(window.exitCode(), 0);
    const QStringList lines = QString::fromUtf8(window.readAllStandardOutput()).split(u'\n');
    EXPECT_FALSE(lines.contains(QStringLiteral("cannot open"))) << "a reader never sees half a file";
    return lines.filter(QRegularExpression(QStringLiteral("^saved ")));
}

QStringList timesOf(const std::vector<engine::Reading>& readings) {
    QStringList times;
    for (const engine::Reading& one : readings) {
        times << QString::fromStdString(engine::formatIsoTime(*one.at));
    }
    return times;
}

/// Each entry that was reported is in the file once; none of the pond file is there that was not.
void expectAllIn(const engine::Pond& pond, const QStringList& saved) {
    QStringList events;
    for (const engine::Event& one : pond.events) {
        events << QString::fromStdString(engine::formatIsoTime(*one.at));
    }
    const std::array<QStringList, 3> inFile{timesOf(pond.fileReadings), timesOf(pond.readings), events};
    std::array<std::size_t, 3> reported{};
    std::array<QSet<QString>, 3> known;
    for (std::size_t sort = 0; sort < inFile.size(); ++sort) {
        known[sort] = QSet<QString>(inFile[sort].begin(), inFile[sort].end());
        EXPECT_EQ(known[sort].size(), inFile[sort].size()) << "an entry is there twice";
    }
    for (const QString& line : saved) {
        const QStringList parts = line.split(u' ');
        const std::size_t sort = parts[1].toUInt();
        ++reported[sort];
        EXPECT_TRUE(known[sort].contains(parts[2])) << test::plain(line);
    }
    // A row goes into its file first, so that one may be there whose pond file another window changed
    // meanwhile.
    EXPECT_GE(inFile[0].size(), reported[0]);
    EXPECT_EQ(inFile[1].size(), reported[1]);
    EXPECT_EQ(inFile[2].size(), reported[2]);
}

TEST_F(DocumentLog, TwoProcessesThatAppendLoseNothingThatWasReportedAsSaved) {
    std::vector<std::unique_ptr<QProcess>> windows;
    constexpr int kMinutesApart = 150000;
    for (int i = 0; i < 2; ++i) {
        auto& window = windows.emplace_back(std::make_unique<QProcess>());
        QProcessEnvironment environment = test::childEnvironment();
        environment.insert(QString::fromLatin1(kAppendTo), QString::fromStdString(file().string()));
        environment.insert(QString::fromLatin1(kAppendFrom), QString::number(i * kMinutesApart));
        window->setProcessEnvironment(environment);
        window->start(QCoreApplication::applicationFilePath(),
                      {QStringLiteral("--gtest_also_run_disabled_tests"),
                       QStringLiteral("--gtest_filter=*DISABLED_AppendsInAnotherProcess")});
    }
    QStringList saved;
    for (const auto& window : windows) {
        const QStringList mine = savedBy(*window);
        EXPECT_GT(mine.size(), 3) << "both come to write";
        saved += mine;
    }
    const engine::Pond pond = onDisk();
    expectAllIn(pond, saved);
    // In one chain: a head that either window has shown is that of the first entries of the file. Of many
    // some, since each is computed from the first entry on.
    const qsizetype apart = std::max<qsizetype>(1, saved.size() / 200);
    for (qsizetype i = saved.size() - 1; i >= 0; i -= apart) {
        const auto head = engine::parseLogHead(saved[i].section(u' ', 3).toStdString());
        ASSERT_TRUE(head);
        EXPECT_NE(engine::matchHead(pond, *head), engine::HeadMatch::Changed) << test::plain(saved[i]);
    }
    std::cout << saved.size() << " entries of two processes were reported as saved\n";
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
