#include "tests/cli/run_cli.h"

#include <gtest/gtest.h>

namespace engine {
namespace {

using test::Cli;
using test::CliRun;
using test::expectContains;

class CliOptions : public Cli {
protected:
    /// Refused with exit 2, this sentence, and nothing written or said on standard output.
    void expectRefused(const std::string& arguments, const std::string& sentence) const {
        SCOPED_TRACE(arguments);
        const CliRun refused = run(arguments);
        EXPECT_EQ(refused.code, 2);
        EXPECT_EQ(refused.out, "");
        expectContains(refused.err, "dawnline-cli: " + sentence);
        EXPECT_TRUE(std::filesystem::is_empty(m_folder));
    }
    /// The same of `compare` with a good pond file and folder.
    void expectCompareRefused(const std::string& options, const std::string& sentence) const {
        expectRefused("compare " + scenario("new-clay") + " --out out " + options, sentence);
    }
};

TEST_F(CliOptions, HelpAndVersionAreEverywhere) {
    for (const char* command : {"", "new ", "explain ", "check ", "compare ", "plan ", "measure ", "fit ", "today ",
                                "log ", "incident ", "review "}) {
        SCOPED_TRACE(command);
        const CliRun help = run(std::string(command) + "--help");
        EXPECT_EQ(help.code, 0);
        EXPECT_EQ(help.err, "");
        expectContains(help.out, "Usage: dawnline-cli " + std::string(command));
        const CliRun version = run(std::string(command) + "--version");
        EXPECT_EQ(version.code, 0);
        EXPECT_EQ(version.out, "dawnline-cli " DAWNLINE_VERSION "\n");
    }
    const std::string help = run("compare --help").out;
    for (const char* option :
         {"--out DIR", "--days N", "--members N", "--seed N", "--threads N", "--progress"}) {
        expectContains(help, option);
    }
}

TEST_F(CliOptions, WhatIsMissingIsNamed) {
    expectRefused("",
                  "A command is missing: new, explain, check, compare, plan, measure, fit, today, log, incident, "
                  "review or changes.");
    expectRefused("check", "The command check needs at least one pond file.");
    expectRefused("compare --out out", "The command compare needs a pond file.");
    expectRefused("compare pond.toml", "The command compare needs --out and a folder for its tables.");
    expectRefused("compare pond.toml --out", "The option --out needs a value.");
    expectRefused("fit pond.toml", "The command fit needs --out and a folder for its tables.");
    expectRefused("today", "The command today needs a pond file.");
    expectRefused(
        "today a.toml --at tomorrow",
        "The option --at is \"tomorrow\", but must be a date and time such as \"2026-06-13 17:30\".");
    expectRefused("today a.toml --until \"2026-06-13 17:30\"", "There is no option \"--until\"");
    expectRefused("compare pond.toml --out ''", "The option --out is empty, but must name a folder.");
    expectRefused("compare pond.toml --out --days 3",
                  "The option --out needs a value, but is followed by the option \"--days\".");
}

TEST_F(CliOptions, SlipsAreNamedWithTheNearest) {
    expectRefused("compre", "There is no command \"compre\"; the nearest is compare.");
    expectRefused(
        "zzzzzz",
        "There is no command \"zzzzzz\"; there are new, explain, check, compare, plan, measure, fit, today, log, "
        "incident, review and changes.");
    expectRefused("--hlep", "There is no option \"--hlep\"; the nearest is --help.");
    expectCompareRefused("--dasy 3", "There is no option \"--dasy\"; the nearest is --days.");
    expectCompareRefused("--seeds=3", "There is no option \"--seeds\"; the nearest is --seed.");
    expectCompareRefused("-x", "There is no option \"-x\".");
    expectRefused("compare a.toml b.toml --out out",
                  "The command compare takes one pond file; \"b.toml\" is one");
}

TEST_F(CliOptions, ValuesAreHeldToTheirRange) {
    const std::string days = ", but must be a whole number from 1 to 365 days.";
    for (const std::string value : {"0", "400", "-5", "2.5", "ten", "nan", "1e300", "''", "3d"}) {
        const std::string shown = value == "''" ? "" : value;
        expectCompareRefused("--days " + value, "The option --days is \"" + shown + "\"" + days);
    }
    expectCompareRefused("--members 0", "The option --members is \"0\"");
    expectCompareRefused("--members 10001",
                         "The option --members is \"10001\", but must be a whole number from 1 to 10000.");
    expectCompareRefused("--seed -1", "The option --seed is \"-1\"");
    expectCompareRefused("--threads 0", "The option --threads is \"0\"");
    expectCompareRefused("--layers 11",
                         "The option --layers is \"11\", but must be a whole number from 12 to 400.");
    expectCompareRefused("--step-s 0.5",
                         "The option --step-s is \"0.5\", but must be a number from 1 to 3600 s.");
    expectCompareRefused("--days 3 --days 4", "The option --days is given more than once.");
    expectCompareRefused("--progress=5", "The option --progress takes no value.");
}

TEST_F(CliOptions, EveryFaultIsNamedAtOnce) {
    const CliRun refused = run("compare --days 0 --threads none");
    expectContains(refused.err, "needs a pond file");
    expectContains(refused.err, "needs --out");
    expectContains(refused.err, "--days is \"0\"");
    expectContains(refused.err, "--threads is \"none\"");
}

}  // namespace
}  // namespace engine
