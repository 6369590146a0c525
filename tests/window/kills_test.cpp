// Windows that are killed while they save or keep what is not saved: 24, 500 with DAWNLINE_SLOW=1.

#include "app/recovery.h"
#include "engine/pond/pond_io.h"
#include "tests/widgets/child_environment.h"
#include "tests/window/driven.h"

#include <QElapsedTimer>
#include <QProcess>

#include <gtest/gtest.h>

#include <algorithm>
#include <csignal>
#include <cstdio>
#include <iostream>
#include <random>
#include <thread>
#include <vector>

namespace app {
namespace {

using engine::test::TemporaryFolder;
using test::Driven;
using test::scenario;

constexpr unsigned kSeed = 20261201;
constexpr int kPatience_ms =
    600000;  // a window that hangs; a machine that is busy takes a minute to start one
constexpr const char* kFile = "DAWNLINE_TEST_EDIT";  // that tests/window/main.cpp knows too
constexpr const char* kFrom = "DAWNLINE_TEST_FROM";

int kills() {
    return qEnvironmentVariable("DAWNLINE_SLOW") == QLatin1String("1") ? 500 : 24;
}

/// A pond of its own for each number.
engine::Pond pondOf(int number) {
    engine::Pond pond = *engine::readPond(scenario("new-clay.toml")).pond;
    pond.title = std::to_string(number);
    return pond;
}

/// The number of a pond that is whole, -1 for anything else.
int numberOf(const engine::Pond& pond) {
    const int number = QString::fromStdString(pond.title).toInt();
    return number > 0 && pond == pondOf(number) ? number : -1;
}

int numberIn(const std::filesystem::path& file) {
    const engine::PondReading reading = engine::readPond(file);
    return reading.pond ? numberOf(*reading.pond) : -1;
}

void say(const char* what, int number) {
    std::printf("%s %d\n", what, number);
    std::fflush(stdout);
}

/// The file in which a window keeps what is not saved, if it holds this pond.
bool isKept(int number) {
    const std::filesystem::path folder =
        std::filesystem::path(qEnvironmentVariable("XDG_STATE_HOME").toStdString()) / "dawnline" / "recovery";
    std::error_code none;
    const std::filesystem::directory_iterator files(folder, none);
    return std::any_of(begin(files), end(files), [&](const auto& file) {
        return file.path().extension() == ".toml" &&
               engine::test::fileText(file.path()).find("title = \"" + std::to_string(number) + '"') !=
                   std::string::npos;
    });
}

/// Not a test: the window of the test below, in a process of its own. It edits again and again; every other
/// edit is kept at once, and two of three are saved. It says what it is about to do, and what it has done.
TEST(KillsOfTheWindow, DISABLED_EditsKeepsAndSaves) {
    const QString path = qEnvironmentVariable(kFile);
    if (path.isEmpty()) {
        GTEST_SKIP() << "run by another test";
    }
    Driven driven(std::filesystem::path(path.toStdString()), 1);
    driven.window.recomputation().setMembers(1);
    widgets::Document& document = driven.window.document();
    const Recovery recovery(document, nullptr, 0);
    for (int number = qEnvironmentVariableIntValue(kFrom);; ++number) {
        document.edit(QStringLiteral("edit"),
                      [&](engine::Pond& pond) { pond.title = std::to_string(number); });
        if (number % 2 == 0) {
            say("now", number);
            while (!isKept(number)) {  // without the pauses that QTest makes
                QCoreApplication::processEvents();
            }
            say("kept", number);
        }
        if (number % 3 != 0) {
            say("now", number);
            ASSERT_TRUE(driven.window.save());
            say("saved", number);
        }
    }
}

/// Names in a folder.
std::vector<std::filesystem::path> filesOf(const std::filesystem::path& folder) {
    std::vector<std::filesystem::path> names;
    std::error_code none;
    for (const auto& file : std::filesystem::directory_iterator(folder, none)) {
        names.push_back(file.path().filename());
    }
    return names;
}

/// What a window said before it was killed.
struct Killed {
    int begun = 0, reported = 0, saved = 0;  ///< The last numbers; those before it where there is none
};

/// Starts a window and kills it a moment after it has said that it is about to do something.
class Killer {
public:
    Killer(std::filesystem::path file, std::filesystem::path state)
        : m_file(std::move(file)), m_state(std::move(state)), m_random(kSeed) {}

    /// @param inFile  Number of the pond in the file
    /// @param last    The last that any window used
    Killed kill(int inFile, int last) {
        QProcess window;
        QProcessEnvironment environment = widgets::test::childEnvironment();
        environment.insert(QString::fromLatin1(kFile), QString::fromStdString(m_file.string()));
        environment.insert(QString::fromLatin1(kFrom), QString::number(last + 1));
        environment.insert(QStringLiteral("XDG_STATE_HOME"), QString::fromStdString(m_state.string()));
        window.setProcessEnvironment(environment);
        window.start(QCoreApplication::applicationFilePath(),
                     {QStringLiteral("--gtest_filter=KillsOfTheWindow.DISABLED_EditsKeepsAndSaves"),
                      QStringLiteral("--gtest_also_run_disabled_tests")});
        m_killed = {inFile, inFile, inFile};
        m_said.clear();
        for (int more = std::uniform_int_distribution<int>(1, 6)(m_random); more > 0;) {
            if (!window.canReadLine() && !window.waitForReadyRead(kPatience_ms)) {
                ADD_FAILURE() << "the window "
                              << (window.state() == QProcess::Running ? "runs and says nothing" : "has ended")
                              << ": " << m_said.toStdString() << window.readAllStandardError().toStdString();
                break;
            }
            while (more > 0 && window.canReadLine()) {
                more -= take(window.readLine()) ? 1 : 0;
            }
        }
        std::this_thread::sleep_for(std::chrono::microseconds(
            std::uniform_int_distribution<qint64>(0, m_longest_ns / 800)(m_random)));
        ::kill(static_cast<pid_t>(window.processId()), SIGKILL);
        EXPECT_TRUE(window.waitForFinished());
        EXPECT_EQ(window.exitStatus(), QProcess::CrashExit) << "it went on until it was killed";
        while (window.canReadLine()) {
            take(window.readLine());
        }
        return m_killed;
    }

private:
    /// @return whether it is about to do something.
    bool take(const QByteArray& line) {
        m_said += line;
        const QList<QByteArray> words = line.trimmed().split(' ');
        const int number = words.size() == 2 ? words[1].toInt() : 0;
        if (number > 0 && words[0] == "now") {
            m_killed.begun = number;
            m_since.start();
            return true;
        }
        if (number > 0 && (words[0] == "kept" || words[0] == "saved")) {
            m_killed.reported = number;
            m_killed.saved = words[0] == "saved" ? number : m_killed.saved;
            // How long such a thing takes here.
            m_longest_ns = std::clamp<qint64>(m_since.nsecsElapsed(), m_longest_ns, 20000000);
        }
        return false;
    }

    std::filesystem::path m_file, m_state;
    std::mt19937_64 m_random;
    QElapsedTimer m_since;
    qint64 m_longest_ns = 2000000;
    Killed m_killed;
    QByteArray m_said;
};

TEST(KillsOfTheWindow, LoseNothingThatWasSavedOrKept) {
    const TemporaryFolder folder, state;
    const QByteArray before = qgetenv("XDG_STATE_HOME");
    qputenv("XDG_STATE_HOME", QByteArray::fromStdString(state.path().string()));
    const std::filesystem::path file = folder.write("pond.toml", engine::writePond(pondOf(1)));
    Killer killer(file, state.path());
    int inFile = 1, last = 1, newOnes = 0, offered = 0, half = 0, kill = 0;
    for (; kill < kills() && !testing::Test::HasFailure(); ++kill) {
        SCOPED_TRACE("kill " + std::to_string(kill) + " of seed " + std::to_string(kSeed));
        const Killed killed = killer.kill(inFile, last);
        // One window's leavings are the next one's to take away.
        const auto kept = filesOf(state.path() / "dawnline" / "recovery");
        EXPECT_LE(kept.size(), 6U) << testing::PrintToString(kept);
        inFile = numberIn(file);
        EXPECT_GE(inFile, killed.saved) << "the pond file is the old one or the new one, and opens";
        EXPECT_LE(inFile, killed.begun);
        EXPECT_TRUE(!std::filesystem::exists(file.string() + ".bak") || numberIn(file.string() + ".bak") > 0);
        int best = inFile;
        for (const LeftBehind& left : Recovery::leftBehind()) {
            EXPECT_EQ(left.original, file);
            EXPECT_GT(numberOf(left.pond), 0);
            EXPECT_LE(numberOf(left.pond), killed.begun);
            best = std::max(best, numberOf(left.pond));
            ++offered;
        }
        EXPECT_GE(best, killed.reported) << "what was kept is offered or saved";
        newOnes += inFile > killed.saved ? 1 : 0;
        half += std::filesystem::exists(engine::newBeside(file)) ? 1 : 0;
        last = std::max(last, killed.begun);
        for (const auto& name : filesOf(state.path() / "dawnline" / "recovery")) {
            if (name.extension() == ".toml" && !name.string().starts_with('.')) {  // as if brought back
                std::filesystem::remove(state.path() / "dawnline" / "recovery" / name);
            }
        }
    }
    qputenv("XDG_STATE_HOME", before);
    std::cout << kill << " windows killed, seed " << kSeed << ": " << last << " edits, " << half
              << " files half written beside the pond, " << newOnes << " saved and not yet said so, "
              << offered << " offered again\n";
}

}  // namespace
}  // namespace app
