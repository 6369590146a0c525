#include "engine/output/bundle.h"
#include "engine/pond/pond_io.h"
#include "tests/cli/run_cli.h"
#include "tests/temporary_folder.h"

#include <algorithm>
#include <map>
#include <sys/stat.h>

namespace engine {
namespace {

using test::fileText;
using test::TemporaryFolder;

struct Ended {
    int code = -1;
    std::string out, err;
};

/// Runs the window program without a display, in a folder.
Ended run(const TemporaryFolder& folder, const std::string& arguments, const std::string& before = "") {
    const std::string command =
        "cd '" + folder.path().string() +
        "' && unset DISPLAY WAYLAND_DISPLAY QT_QPA_PLATFORM; export XDG_CONFIG_HOME=$PWD/config; { " +
        before + " '" DAWNLINE_WINDOW "' " + arguments + "; } > out.txt 2> err.txt";
    const int status = std::system(command.c_str());
    return {WIFEXITED(status) ? WEXITSTATUS(status) : -1, fileText(folder.path() / "out.txt"),
            fileText(folder.path() / "err.txt")};
}

const std::string kPond = " '" DAWNLINE_SCENARIOS "/new-clay.toml'";

int countIn(const std::filesystem::path& folder) {
    return static_cast<int>(
        std::distance(std::filesystem::directory_iterator(folder), std::filesystem::directory_iterator()));
}

TEST(PapersProgram, WritesThePapersAndABundleThatItVerifies) {
    const TemporaryFolder folder;
    std::filesystem::create_directories(folder.path() / "config/dawnline");
    std::ofstream(folder.path() / "config/dawnline/consultant.toml")
        << "business = \"Still Water\"\npage = \"letter\"\n";
    const Ended made =
        run(folder, "--papers 'a/b of c' --members 4 --seed 3" + kPond, "SOURCE_DATE_EPOCH=1781427600");
    ASSERT_EQ(made.code, 0) << made.err;
    const auto papers = folder.path() / "a/b of c";
    EXPECT_EQ(countIn(papers), 14);
    EXPECT_NE(fileText(papers / "proposal.pdf").find("Still Water"), std::string::npos);
    const Ended whole = run(folder, "--verify 'a/b of c/bundle.zip'");
    EXPECT_EQ(whole.code, 0) << whole.err;
    const std::size_t at = made.out.find("Run ");
    ASSERT_NE(at, std::string::npos);
    EXPECT_NE(whole.out.find(made.out.substr(at + 4, 64)), std::string::npos) << whole.out;

    // The same run once more gives the same bytes, all of them.
    const Ended again =
        run(folder, "--papers again --members 4 --seed 3" + kPond, "SOURCE_DATE_EPOCH=1781427600");
    ASSERT_EQ(again.code, 0) << again.err;
    for (const auto& file : std::filesystem::directory_iterator(papers)) {
        EXPECT_EQ(fileText(file.path()) == fileText(folder.path() / "again" / file.path().filename()), true)
            << file.path();
    }
    std::string bytes = fileText(papers / "bundle.zip");
    bytes[bytes.size() / 2] = static_cast<char>(bytes[bytes.size() / 2] ^ 0x10);
    folder.write("bent.zip", bytes);
    EXPECT_EQ(run(folder, "--verify bent.zip").code, 2);
}

// A bundle held against the same pond, against another, and against itself, by the command line.
TEST(PapersProgram, ABundleSaysHowItsAnswerHasChanged) {
    const TemporaryFolder folder;
    ASSERT_EQ(run(folder, "--papers p --members 4" + kPond).code, 0);
    const auto changes = [&](const std::string& later) {
        const int status =
            std::system(("cd '" + folder.path().string() + "' && '" DAWNLINE_CLI "' changes p/bundle.zip " +
                         later + " > said.txt 2> err.txt")
                            .c_str());
        EXPECT_EQ(status, 0) << fileText(folder.path() / "err.txt");
        return fileText(folder.path() / "said.txt");
    };
    for (const std::string& same : {std::string("p/bundle.zip"), kPond}) {
        const std::string said = changes(same);
        EXPECT_NE(said.find("Nothing in the answer has changed."), std::string::npos) << said;
        EXPECT_NE(said.find("are the same as then."), std::string::npos) << said;
    }
    const std::string other = changes("'" DAWNLINE_SCENARIOS "/pea-soup.toml'");
    EXPECT_NE(other.find("The answer: before no ramp needed, now wait."), std::string::npos) << other;
    EXPECT_NE(other.find("The papers of the earlier answer are void."), std::string::npos) << other;
    EXPECT_NE(other.find("Not the same as then: the pond file."), std::string::npos) << other;
    std::string bytes = fileText(folder.path() / "p/bundle.zip");
    bytes[bytes.size() / 2] = static_cast<char>(bytes[bytes.size() / 2] ^ 0x10);
    folder.write("bent.zip", bytes);
    EXPECT_NE(std::system(("'" DAWNLINE_CLI "' changes '" + (folder.path() / "bent.zip").string() + "' " +
                           kPond + " 2> /dev/null")
                              .c_str()),
              0);
}

TEST(PapersProgram, AFullDiskLeavesNothingBehindAndSaysSo) {
    const TemporaryFolder folder;
    // A file may have 40 KiB only, as on a disk that is full after that.
    const Ended ended = run(folder, "--papers new --members 1" + kPond, "trap '' XFSZ; ulimit -f 40;");
    EXPECT_EQ(ended.code, 2);
    EXPECT_NE(ended.err.find("cannot be written (File too large). Nothing was written."), std::string::npos)
        << ended.err;
    EXPECT_FALSE(std::filesystem::exists(folder.path() / "new"));
}

TEST(PapersProgram, AFullDiskLeavesEarlierPapersWhole) {
    const TemporaryFolder folder;
    ASSERT_EQ(run(folder, "--papers old --members 1 --seed 1" + kPond).code, 0);
    std::map<std::string, std::string> before;
    for (const auto& file : std::filesystem::directory_iterator(folder.path() / "old")) {
        before[file.path().filename().string()] = fileText(file.path());
    }
    const Ended ended =
        run(folder, "--papers old --members 1 --seed 2" + kPond, "trap '' XFSZ; ulimit -f 40;");
    EXPECT_EQ(ended.code, 2);
    EXPECT_NE(ended.err.find("Nothing was written."), std::string::npos) << ended.err;
    EXPECT_EQ(countIn(folder.path() / "old"), static_cast<int>(before.size()))
        << "nothing half-written is left";
    for (const auto& [name, text] : before) {
        EXPECT_EQ(fileText(folder.path() / "old" / name) == text, true) << name;
    }
}

TEST(PapersProgram, ATitleWithSlashesNamesNoFile) {
    const TemporaryFolder folder;
    std::string text = fileText(DAWNLINE_SCENARIOS "/new-clay.toml");
    const std::size_t title = text.find("title");
    ASSERT_NE(title, std::string::npos);
    text.replace(title, text.find('\n', title) - title, "title = '/tmp/../a\\b: \u00e9tang / sud?'");
    folder.write("p.toml", text);
    const Ended ended = run(folder, "--papers out --members 1 p.toml");
    ASSERT_EQ(ended.code, 0) << ended.err;
    EXPECT_EQ(countIn(folder.path() / "out"), 14);
    EXPECT_EQ(countIn(folder.path()), 4) << "p.toml, out, out.txt and err.txt";
    EXPECT_EQ(run(folder, "--verify out/bundle.zip").code, 0);
}

TEST(PapersProgram, PapersAreOfTheRampThatIsAskedFor) {
    const TemporaryFolder folder;
    const Ended none = run(folder, "--papers x --members 1 --ramp 'no such'" + kPond);
    EXPECT_EQ(none.code, 2);
    EXPECT_NE(none.err.find("The pond has no ramp of the name \"no such\"."), std::string::npos) << none.err;
    EXPECT_FALSE(std::filesystem::exists(folder.path() / "x"));
    EXPECT_EQ(run(folder, "--papers x --ramp ''" + kPond).code, 2);
    const PondReading pond = readPond(DAWNLINE_SCENARIOS "/new-clay.toml");
    ASSERT_TRUE(pond.pond);
    const std::string& first = pond.pond->ramps.front().name;
    ASSERT_NE(first, pond.pond->chosenRamp);
    const Ended made = run(folder, "--papers y --members 1 --ramp '" + first + "'" + kPond);
    ASSERT_EQ(made.code, 0) << made.err;
    ASSERT_EQ(std::system(("cd '" + folder.path().string() +
                           "' && pdftotext y/start-up-schedule.pdf && qpdf --check y/proposal.pdf > q.txt")
                              .c_str()),
              0);
    EXPECT_NE(fileText(folder.path() / "y/start-up-schedule.txt").find("Ramp \"" + first), std::string::npos);
}

TEST(PapersProgram, PapersCanBeOfARampThatIsFoundFirst) {
    const TemporaryFolder folder;
    const Ended made = run(folder, "--papers y --members 64 --plan" + kPond);
    ASSERT_EQ(made.code, 0) << made.err;
    ASSERT_EQ(std::system(("cd '" + folder.path().string() +
                           "' && pdftotext y/start-up-schedule.pdf && '" DAWNLINE_SYSTEM_PYTHON
                           "' -m zipfile -e y/bundle.zip z")
                              .c_str()),
              0);
    EXPECT_NE(fileText(folder.path() / "y/start-up-schedule.txt").find("Ramp \"planned\""),
              std::string::npos);
    const PondReading bundled = readPond(folder.path() / "z/pond.toml");
    ASSERT_TRUE(bundled.pond);
    EXPECT_EQ(bundled.pond->ramps.back().name, "planned") << "who verifies it has the ramp too";
    const Ended both = run(folder, "--papers x --plan --ramp planned" + kPond);
    EXPECT_EQ(both.code, 2);
    EXPECT_NE(both.err.find("no --ramp"), std::string::npos) << both.err;
    EXPECT_EQ(run(folder, "--plan" + kPond).code, 2);
    const Ended none = run(folder, "--papers x --members 64 --plan '" DAWNLINE_SCENARIOS "/pea-soup.toml'");
    EXPECT_EQ(none.code, 0) << none.err;
    EXPECT_EQ(fileText(folder.path() / "x/advice.csv").rfind("field,value\r\nkind,wait_until\r\n", 0), 0U);
    EXPECT_TRUE(std::filesystem::exists(folder.path() / "x/letter.pdf"));
    EXPECT_FALSE(std::filesystem::exists(folder.path() / "x/start-up-schedule.pdf"));
    EXPECT_FALSE(std::filesystem::exists(folder.path() / "x/owners-sheet.pdf"));
}

TEST(PapersProgram, FoldersAndFilesThatDoNotDoAreRefusedInWords) {
    const TemporaryFolder folder;
    folder.write("file", "x");
    EXPECT_EQ(run(folder, "--papers file" + kPond).code, 2);
    EXPECT_EQ(run(folder, "--papers file/in/it" + kPond).code, 2);
    std::filesystem::create_directory(folder.path() / "shut");
    std::filesystem::permissions(folder.path() / "shut",
                                 std::filesystem::perms::owner_read | std::filesystem::perms::owner_exec);
    // Root may write everywhere, so that it has to become nobody first.
    const std::string nobody =
        ::geteuid() == 0 ? "setpriv --reuid=65534 --regid=65534 --clear-groups --inh-caps=-all" : "";
    if (nobody.empty() || std::system((nobody + " test -x '" DAWNLINE_WINDOW "'").c_str()) == 0) {
        std::filesystem::permissions(
            folder.path(), std::filesystem::perms::others_read | std::filesystem::perms::others_exec,
            std::filesystem::perm_options::add);
        std::filesystem::permissions(
            folder.path() / "shut", std::filesystem::perms::others_read | std::filesystem::perms::others_exec,
            std::filesystem::perm_options::add);
        for (const char* where : {"shut", "shut/new"}) {
            const Ended shut = run(folder, std::string("--papers ") + where + " --members 1" + kPond, nobody);
            EXPECT_EQ(shut.code, 2);
            EXPECT_NE(shut.err.find("cannot be written to"), std::string::npos) << shut.err;
        }
        EXPECT_EQ(countIn(folder.path() / "shut"), 0);
    } else {
        std::printf("The read-only folder was not tried: root cannot become nobody here.\n");
    }
    const Ended proc = run(folder, "--papers /proc/new --members 1" + kPond);
    EXPECT_EQ(proc.code, 2);
    EXPECT_NE(proc.err.find("Nothing was written."), std::string::npos) << proc.err;
}

TEST(PapersProgram, OptionsThatDoNotDoAreRefusedInWords) {
    const TemporaryFolder folder;
    EXPECT_NE(run(folder, "--papers x").err.find("--papers needs a pond file."), std::string::npos);
    EXPECT_NE(run(folder, "--papers x --members 0" + kPond).err.find("from 1 to 10000"), std::string::npos);
    EXPECT_NE(run(folder, "--papers x --seed -1" + kPond).err.find("--seed is a whole number"),
              std::string::npos);
    folder.write("who.toml", "logo = \"none.png\"\n");
    const Ended logo = run(folder, "--papers x --profile who.toml" + kPond);
    EXPECT_EQ(logo.code, 2);
    EXPECT_NE(logo.err.find("who.toml: logo: The picture \"none.png\" cannot be read"), std::string::npos)
        << logo.err;
    EXPECT_EQ(run(folder, "--papers x --profile gone.toml" + kPond).code, 2);
    EXPECT_EQ(run(folder, "--verify gone.zip").code, 2);
}

TEST(PapersProgram, ALogoThatIsAPipeIsRefusedAndHoldsNothingUp) {
    const TemporaryFolder folder;
    ASSERT_EQ(::mkfifo((folder.path() / "logo.png").c_str(), 0600), 0);
    folder.write("who.toml", "logo = \"logo.png\"\n");
    const Ended ended = run(folder, "--papers x --profile who.toml" + kPond, "timeout 60");
    EXPECT_EQ(ended.code, 2) << "124 says that it did not end by itself";
    EXPECT_NE(ended.err.find(
                  "who.toml: logo: The picture \"logo.png\" cannot be read: This is not a regular file."),
              std::string::npos)
        << ended.err;
    EXPECT_FALSE(std::filesystem::exists(folder.path() / "x"));
}

TEST(PapersProgram, APondWithoutARampIsRefused) {
    const TemporaryFolder folder;
    std::string text = fileText(DAWNLINE_SCENARIOS "/new-clay.toml");
    text.resize(text.find("[[ramp]]"));
    const std::size_t chosen = text.find("chosen_ramp");
    if (chosen != std::string::npos) {
        text.erase(chosen, text.find('\n', chosen) - chosen);
    }
    folder.write("p.toml", text);
    const Ended ended = run(folder, "--papers x p.toml");
    EXPECT_EQ(ended.code, 2);
    EXPECT_NE(ended.err.find("The pond has no ramp, so there is nothing to put on paper."), std::string::npos)
        << ended.err;
    EXPECT_FALSE(std::filesystem::exists(folder.path() / "x"));
}

}  // namespace
}  // namespace engine
