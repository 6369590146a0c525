#include "app/window_options.h"

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
    const QCommandLineOption papers(QStringLiteral("papers"), QStringLiteral("Not built yet."),
                                    QStringLiteral("DIR"));
    const QCommandLineOption language(
        QStringLiteral("language"),
        QStringLiteral("Show the window in this language, such as de, instead of the system's."),
        QStringLiteral("CODE"));
    parser.addOptions({help, version, charts, papers, language});
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
    if (parser.isSet(papers)) {
        return refused(QStringLiteral("--papers is not built yet."));
    }
    const QStringList ponds = parser.positionalArguments();
    if (ponds.size() > 1) {
        return refused(QStringLiteral("One pond file is opened at a time; %1 were given.").arg(ponds.size()));
    }
    WindowOptions options;
    options.pond = ponds.isEmpty() ? std::string() : ponds.front().toStdString();
    options.language = parser.value(language);
    if (parser.isSet(charts)) {
        options.charts = parser.value(charts).toStdString();
        if (options.charts.empty()) {
            return refused(QStringLiteral("--charts needs a folder."));
        }
        if (options.pond.empty()) {
            return refused(QStringLiteral("--charts needs a pond file."));
        }
    }
    return {options, {}, 0};
}

bool needsNoDisplay(int argc, const char* const* argv) {
    constexpr std::array<std::string_view, 5> kQuiet{"--charts", "--papers", "--help", "-h", "--version"};
    return std::any_of(argv + 1, argv + argc, [&](const char* argument) {
        const std::string_view word =
            std::string_view(argument).substr(0, std::string_view(argument).find('='));
        return std::find(kQuiet.begin(), kQuiet.end(), word) != kQuiet.end();
    });
}

}  // namespace app
