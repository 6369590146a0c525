#pragma once

#include <QString>
#include <QStringList>

#include <cstdint>
#include <optional>
#include <string>

namespace app {

/// What the window program is asked for.
struct WindowOptions {
    std::string pond;     ///< Path; empty: a window without a pond
    std::string charts;   ///< Folder for the charts, without a window; empty: open the window
    std::string papers;   ///< Folder for the papers, without a window
    std::string bundle;   ///< To be verified, without a window
    bool isRecomputed = false;  ///< The bundle's tables are computed again
    std::string profile;  ///< Of the consultant; empty: the one in the config folder
    int members = 200;    ///< Of the papers' run
    std::uint64_t seed = 1;
    std::string ramp;        ///< Whose papers; empty: the pond's own
    bool isPlanned = false;  ///< A ramp is looked for, and the papers are of that one
};

/// Options if and only if there is something to do; else what to print and the exit code.
struct WindowParse {
    std::optional<WindowOptions> options;
    QString said;
    int code = 0;
};

/// @param arguments  The program's name first; Qt's own options are taken out already.
[[nodiscard]] WindowParse parseWindowOptions(const QStringList& arguments);

/// True if nothing of what is asked needs a display.
[[nodiscard]] bool needsNoDisplay(int argc, const char* const* argv);

}  // namespace app
