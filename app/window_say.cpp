#include "app/window_say.h"

#include "engine/base/text_file.h"

#include <cstdio>

namespace app {

void complain(const std::string& sentence) {
    std::fprintf(stderr, "dawnline: %s\n", engine::onOneLine(sentence).c_str());
}

void complain(const engine::Diagnostics& diagnostics) {
    for (const engine::Diagnostic& diagnostic : diagnostics) {
        std::fprintf(stderr, "%s\n", engine::format(diagnostic).c_str());
    }
}

void say(const std::string& line) {
    std::printf("%s\n", engine::onOneLine(line).c_str());
}

void sayWritten(const std::filesystem::path& folder, const std::vector<engine::TextFile>& files) {
    for (const engine::TextFile& file : files) {
        say((folder / file.name).string());
    }
}

int saidAll() {
    if (std::fflush(stdout) == 0 && std::ferror(stdout) == 0) {
        return 0;
    }
    complain("Standard output cannot be written to.");
    return 2;
}

}  // namespace app
