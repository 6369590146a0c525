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

}  // namespace

WindowParse parseWindowOptions(const QStringList& arguments) {
    QCommandLineParser parser;
    parser.setApplicationDescription(QStringLiteral(
        "Shows how the dissolved oxygen of a pond would go under start-up ramps of bottom aeration.\n"
        "Results compare plans under stated assumptions; they are no prediction of survival."));
    const QCommandLineOption help({QStringLiteral("h"), QStringLiteral("help")},
                                  QStringLiteral("Print this help and exit."));
    const QCommandLineOption version(QStringLiteral("version"),
                                     QStringLiteral("Print the version and exit."));
    const QCommandLineOption charts(
        QStringLiteral("charts"),
        QStringLiteral("Write PNG, SVG and CSV of every view into a folder, without a "
                       "window."),
        QStringLiteral("DIR"));
    const QCommandLineOption papers(
        QStringLiteral("papers"),
        QStringLiteral("Write every paper as PDF, the schedule as a calendar and a bundle of "
                       "all into a folder, without a window."),
        QStringLiteral("DIR"));
    const QCommandLineOption profile(
        QStringLiteral("profile"),
        QStringLiteral("Whose papers they are: name, address, logo, prices (TOML); without it "
                       "dawnline/consultant.toml in the config folder."),
        QStringLiteral("FILE"));
    const QCommandLineOption members(QStringLiteral("members"),
                                     QStringLiteral("Ponds like this one that the papers draw (200)."),
                                     QStringLiteral("N"));
    const QCommandLineOption seed(QStringLiteral("seed"), QStringLiteral("Of the papers' draws (1)."),
                                  QStringLiteral("N"));
    const QCommandLineOption ramp(
        QStringLiteral("ramp"),
        QStringLiteral("Ramp that the papers are about, instead of the one started by the log or chosen."),
        QStringLiteral("NAME"));
    const QCommandLineOption plan(
        QStringLiteral("plan"),
        QStringLiteral("Find a ramp first that harms few ponds in few days; the papers are about that one."));
    const QCommandLineOption verify(
        QStringLiteral("verify"),
        QStringLiteral("Say whether a bundle of papers is whole, without a window."),
        QStringLiteral("BUNDLE"));
    parser.addOptions({help, version, charts, papers, verify, profile, members, seed, ramp, plan});
    parser.addPositionalArgument(QStringLiteral("POND"), QStringLiteral("Pond file to open."),
                                 QStringLiteral("[POND]"));
    if (!parser.parse(arguments)) {
        return refused(parser.errorText());
    }
    if (parser.isSet(help)) {
        return {std::nullopt, parser.helpText(), 0};
    }
    if (parser.isSet(version)) {
        return {std::nullopt, QStringLiteral("dawnline " DAWNLINE_VERSION "\n"), 0};
    }
    const QStringList ponds = parser.positionalArguments();
    if (ponds.size() > 1) {
        return refused(QStringLiteral("One pond file is opened at a time; %1 were given.").arg(ponds.size()));
    }
    WindowOptions options;
    options.pond = ponds.isEmpty() ? std::string() : ponds.front().toStdString();
    if (parser.isSet(charts)) {
        options.charts = parser.value(charts).toStdString();
        if (options.charts.empty()) {
            return refused(QStringLiteral("--charts needs a folder."));
        }
        if (options.pond.empty()) {
            return refused(QStringLiteral("--charts needs a pond file."));
        }
    }
    if (parser.isSet(papers)) {
        options.papers = parser.value(papers).toStdString();
        if (options.papers.empty()) {
            return refused(QStringLiteral("--papers needs a folder."));
        }
        if (options.pond.empty()) {
            return refused(QStringLiteral("--papers needs a pond file."));
        }
    }
    if (parser.isSet(members)) {
        bool isNumber = false;
        options.members = parser.value(members).toInt(&isNumber);
        if (!isNumber || options.members < 1 || options.members > engine::kMostMembers) {
            return refused(QStringLiteral("--members is a whole number from 1 to %1, not \"%2\".")
                               .arg(engine::kMostMembers)
                               .arg(parser.value(members)));
        }
    }
    if (parser.isSet(seed)) {
        bool isNumber = false;
        options.seed = parser.value(seed).toULongLong(&isNumber);
        if (!isNumber) {
            return refused(
                QStringLiteral("--seed is a whole number from 0, not \"%1\".").arg(parser.value(seed)));
        }
    }
    options.ramp = parser.value(ramp).toStdString();
    if (parser.isSet(ramp) && (options.ramp.empty() || options.papers.empty())) {
        return refused(QStringLiteral("--ramp needs a ramp's name and --papers."));
    }
    options.isPlanned = parser.isSet(plan);
    if (options.isPlanned && (options.papers.empty() || !options.ramp.empty())) {
        return refused(QStringLiteral("--plan needs --papers, and no --ramp: it finds the ramp itself."));
    }
    options.bundle = parser.value(verify).toStdString();
    if (parser.isSet(verify) && options.bundle.empty()) {
        return refused(QStringLiteral("--verify needs a bundle."));
    }
    options.profile = parser.value(profile).toStdString();
    return {options, {}, 0};
}

bool needsNoDisplay(int argc, const char* const* argv) {
    constexpr std::array<std::string_view, 7> kQuiet{"--charts", "--papers", "--plan",   "--verify",
                                                     "--help",   "-h",       "--version"};
    return std::any_of(argv + 1, argv + argc, [&](const char* argument) {
        const std::string_view word =
            std::string_view(argument).substr(0, std::string_view(argument).find('='));
        return std::find(kQuiet.begin(), kQuiet.end(), word) != kQuiet.end();
    });
}

}  // namespace app
