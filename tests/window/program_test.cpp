#include "engine/base/text_file.h"
#include "tests/temporary_folder.h"
#include "tests/window/driven.h"

#include <QImage>
#include <QProcess>

#include <gtest/gtest.h>

namespace app {
namespace {

using engine::test::TemporaryFolder;
using test::plain;
using test::scenario;

struct Ended {
    int code = -1;
    std::string out, err;
};

/// Runs the window program without a display.
Ended run(const QStringList& arguments) {
    QProcess program;
    QProcessEnvironment environment = QProcessEnvironment::systemEnvironment();
    environment.remove(QStringLiteral("DISPLAY"));
    environment.remove(QStringLiteral("WAYLAND_DISPLAY"));
    environment.remove(QStringLiteral("QT_QPA_PLATFORM"));
    program.setProcessEnvironment(environment);
    program.start(QStringLiteral(DAWNLINE_WINDOW), arguments);
    EXPECT_TRUE(program.waitForFinished(120000));
    return {program.exitStatus() == QProcess::NormalExit ? program.exitCode() : -1,
            program.readAllStandardOutput().toStdString(), program.readAllStandardError().toStdString()};
}

QString named(const std::filesystem::path& path) {
    return QString::fromStdString(path.string());
}

TEST(Program, WritesEveryViewWithoutADisplay) {
    const TemporaryFolder folder;
    const auto charts = folder.path() / "charts";
    const Ended ended = run({QStringLiteral("--charts"), named(charts), named(scenario("new-clay.toml"))});
    ASSERT_EQ(ended.code, 0) << ended.err;
    for (const char* name : {"night", "nights", "lows", "run", "days", "hours", "depth", "budget", "debt",
                             "profiles", "gases", "risk"}) {
        for (const char* ending : {".png", ".svg", ".csv"}) {
            const auto path = charts / (std::string(name) + ending);
            EXPECT_TRUE(std::filesystem::exists(path)) << path;
            EXPECT_NE(ended.out.find(path.string()), std::string::npos) << path;
        }
        const QImage image(named(charts / (std::string(name) + ".png")));
        EXPECT_NEAR(image.dotsPerMeterX() * 0.0254, 300.0, 0.1) << name;
    }
}

TEST(Program, ABadPondIsRefusedInWordsAndNothingIsWritten) {
    const TemporaryFolder folder;
    const auto bad = folder.write("bad.toml", "format = 1\nbasin = 3\n");
    const Ended ended = run({QStringLiteral("--charts"), named(folder.path() / "charts"), named(bad)});
    EXPECT_EQ(ended.code, 2);
    EXPECT_NE(ended.err.find("bad.toml:2: basin: "), std::string::npos) << ended.err;
    EXPECT_FALSE(std::filesystem::exists(folder.path() / "charts"));
}

TEST(Program, AFolderThatIsAFileIsRefused) {
    const TemporaryFolder folder;
    const auto file = folder.write("charts", "x");
    const Ended ended = run({QStringLiteral("--charts"), named(file), named(scenario("new-clay.toml"))});
    EXPECT_EQ(ended.code, 2);
    EXPECT_NE(ended.err.find("is a file, not a folder"), std::string::npos) << ended.err;
}

TEST(Program, WhatIsNotThereIsRefused) {
    EXPECT_EQ(run({QStringLiteral("--chart"), QStringLiteral("--version=1")}).code, 2);
    EXPECT_EQ(run({QStringLiteral("--charts"), QStringLiteral("x")}).code, 2);
}

TEST(Program, SaysItsVersionAndItsHelp) {
    const Ended version = run({QStringLiteral("--version")});
    EXPECT_EQ(version.code, 0);
    EXPECT_EQ(version.out, "dawnline " DAWNLINE_VERSION "\n");
    const Ended help = run({QStringLiteral("--help")});
    EXPECT_EQ(help.code, 0);
    EXPECT_NE(help.out.find("--charts"), std::string::npos);
    EXPECT_NE(help.out.find("no prediction of survival"), std::string::npos);
}

}  // namespace
}  // namespace app
