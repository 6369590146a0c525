#include "app/cli_say.h"

#include "engine/base/text_file.h"

#include <cmath>
#include <cstdio>

namespace app {
namespace {

/// @return false if standard output does not take it all.
bool say(const std::string& all) {
    const std::string text = engine::forTerminal(all);
    return std::fwrite(text.data(), 1, text.size(), stdout) == text.size() && std::fflush(stdout) == 0;
}

}  // namespace

void complain(const std::string& sentence) {
    std::fprintf(stderr, "dawnline-cli: %s\n", engine::onOneLine(sentence).c_str());
}

int saidAll(const std::string& text) {
    if (say(text)) {
        return kDone;
    }
    complain("Standard output cannot be written to.");
    return kBadInput;
}

engine::PondReading readAloud(const std::string& path) {
    engine::PondReading reading = engine::readPond(path);
    for (const engine::Diagnostic& diagnostic : reading.diagnostics) {
        std::fprintf(stderr, "%s\n", engine::format(diagnostic).c_str());
    }
    return reading;
}

std::function<void(double)> progressOf(const CliOptions& options) {
    if (!options.progress) {
        return {};
    }
    return [said = -1](double fraction) mutable {
        const int percent = static_cast<int>(std::floor(100.0 * fraction));
        if (percent > said) {
            said = percent;
            std::fprintf(stderr, "%d %%\n", percent);
        }
    };
}

}  // namespace app
