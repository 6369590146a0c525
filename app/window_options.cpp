#include "app/window_options.h"

#include "engine/ensemble/ensemble.h"

#include <QCommandLineParser>

#include <algorithm>
#include <array>
#include <string_view>

namespace app {
namespace {

WindowParse refused(const QString& sentence) {
    return {std::nullopt, QStringLiteral("dawnline: %1\nTry dawnline --help.\n").arg(sentence), 2};
}

/// What the program understands.
struct Grammar {
    QCommandLineOption help{{QStringLiteral("h"), QStringLiteral("help")},
                            QStringLiteral("Print this help and exit.")};
    QCommandLineOption version{QStringLiteral("version"), QStringLiteral("Print the version and exit.")};
    QCommandLineOption charts{QStringLiteral("charts"),
                              QStringLiteral("Write PNG, SVG and CSV of every view into a folder, without a "
                                             "window."),
                              QStringLiteral("DIR")};
    QCommandLineOption papers{
        QStringLiteral("papers"),
        QStringLiteral("Write every paper as PDF, the schedule as a calendar and a bundle of "
                       "all into a folder, without a window."),
        QStringLiteral("DIR")};
    QCommandLineOption profile{
        QStringLiteral("profile"),
        QStringLiteral("Your business details: name, address, logo, prices (TOML); without it "
                       "dawnline/consultant.toml in the config folder."),
        QStringLiteral("FILE")};
    QCommandLineOption members{QStringLiteral("members"),
                               QStringLiteral("Ponds like this one that the papers draw (200)."),
                               QStringLiteral("N")};
    QCommandLineOption seed{QStringLiteral("seed"), QStringLiteral("Of the papers' draws (1)."),
                            QStringLiteral("N")};
    QCommandLineOption ramp{
        QStringLiteral("ramp"),
        QStringLiteral("Ramp that the papers are about, instead of the one started by the log or chosen."),
        QStringLiteral("NAME")};
    QCommandLineOption plan{
        QStringLiteral("plan"),
        QStringLiteral("Find a ramp first that harms few ponds in few days; the papers are about that one.")};
    QCommandLineOption verify{QStringLiteral("verify"),
                              QStringLiteral("Say whether a bundle of papers is whole, without a window."),
                              QStringLiteral("BUNDLE")};
    QCommandLineOption recompute{
        QStringLiteral("recompute"),
        QStringLiteral("With --verify: compute its tables again from the inputs inside and compare them.")};
};

// Each of the following reads some of the options and returns a sentence, empty if there is nothing to
// refuse.

/// The folders of charts and papers, which both need a pond.
QString readFolders(const QCommandLineParser& parser, const Grammar& grammar, WindowOptions& options) {
    if (parser.isSet(grammar.charts)) {
        options.charts = parser.value(grammar.charts).toStdString();
        if (options.charts.empty()) {
            return QStringLiteral("--charts needs a folder.");
        }
        if (options.pond.empty()) {
            return QStringLiteral("--charts needs a pond file.");
        }
    }
    if (parser.isSet(grammar.papers)) {
        options.papers = parser.value(grammar.papers).toStdString();
        if (options.papers.empty()) {
            return QStringLiteral("--papers needs a folder.");
        }
        if (options.pond.empty()) {
            return QStringLiteral("--papers needs a pond file.");
        }
    }
    return {};
}

/// Members and seed of the papers' run.
QString readDraws(const QCommandLineParser& parser, const Grammar& grammar, WindowOptions& options) {
    if (parser.isSet(grammar.members)) {
        bool isNumber = false;
        options.members = parser.value(grammar.members).toInt(&isNumber);
        if (!isNumber || options.members < 1 || options.members > engine::kMostMembers) {
            return QStringLiteral("--members is a whole number from 1 to %1, not \"%2\".")
                .arg(engine::kMostMembers)
                .arg(parser.value(grammar.members));
        }
    }
    if (parser.isSet(grammar.seed)) {
        bool isNumber = false;
        options.seed = parser.value(grammar.seed).toULongLong(&isNumber);
        if (!isNumber) {
            return QStringLiteral("--seed is a whole number from 0, not \"%1\".")
                .arg(parser.value(grammar.seed));
        }
    }
    return {};
}

/// Which ramp the papers are about and whose they are; the bundle to be verified.
QString readPapers(const QCommandLineParser& parser, const Grammar& grammar, WindowOptions& options) {
    options.ramp = parser.value(grammar.ramp).toStdString();
    if (parser.isSet(grammar.ramp) && (options.ramp.empty() || options.papers.empty())) {
        return QStringLiteral("--ramp needs a ramp's name and --papers.");
    }
    options.isPlanned = parser.isSet(grammar.plan);
    if (options.isPlanned && (options.papers.empty() || !options.ramp.empty())) {
        return QStringLiteral("--plan needs --papers, and no --ramp: it finds the ramp itself.");
    }
    options.bundle = parser.value(grammar.verify).toStdString();
    if (parser.isSet(grammar.verify) && options.bundle.empty()) {
        return QStringLiteral("--verify needs a bundle.");
    }
    options.isRecomputed = parser.isSet(grammar.recompute);
    if (options.isRecomputed && options.bundle.empty()) {
        return QStringLiteral("--recompute needs --verify and a bundle.");
    }
    options.profile = parser.value(grammar.profile).toStdString();
    return {};
}

}  // namespace

WindowParse parseWindowOptions(const QStringList& arguments) {
    const Grammar grammar;
    QCommandLineParser parser;
    parser.setApplicationDescription(QStringLiteral(
        "Shows how the dissolved oxygen of a pond would go under start-up ramps of bottom aeration.\n"
        "Results compare ramps under stated assumptions; they are no prediction of survival."));
    parser.addOptions({grammar.help, grammar.version, grammar.charts, grammar.papers, grammar.verify,
                       grammar.profile, grammar.members, grammar.seed, grammar.ramp, grammar.plan,
                       grammar.recompute});
    parser.addPositionalArgument(QStringLiteral("POND"), QStringLiteral("Pond file to open."),
                                 QStringLiteral("[POND]"));
    if (!parser.parse(arguments)) {
        return refused(parser.errorText());
    }
    if (parser.isSet(grammar.help)) {
        return {std::nullopt, parser.helpText(), 0};
    }
    if (parser.isSet(grammar.version)) {
        return {std::nullopt, QStringLiteral("dawnline " DAWNLINE_VERSION "\n"), 0};
    }
    const QStringList ponds = parser.positionalArguments();
    if (ponds.size() > 1) {
        return refused(QStringLiteral("One pond file is opened at a time; %1 were given.").arg(ponds.size()));
    }
    WindowOptions options;
    options.pond = ponds.isEmpty() ? std::string() : ponds.front().toStdString();
    for (const auto read : {readFolders, readDraws, readPapers}) {
        if (const QString fault = read(parser, grammar, options); !fault.isEmpty()) {
            return refused(fault);
        }
    }
    return {options, {}, 0};
}

bool needsNoDisplay(int argc, const char* const* argv) {
    constexpr std::array<std::string_view, 8> kQuiet{"--charts",    "--papers", "--plan", "--verify",
                                                     "--recompute", "--help",   "-h",     "--version"};
    return std::any_of(argv + 1, argv + argc, [&](const char* argument) {
        const std::string_view word =
            std::string_view(argument).substr(0, std::string_view(argument).find('='));
        return std::find(kQuiet.begin(), kQuiet.end(), word) != kQuiet.end();
    });
}

}  // namespace app
