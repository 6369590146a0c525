#pragma once

#include "engine/base/error.h"
#include "engine/base/text_file.h"

#include <cstdio>
#include <cstdlib>
#include <string>
#include <string_view>

namespace engine::test {

/// Stops at an input for which a law of a reader does not hold, as a sanitizer does.
inline void hold(bool law, const char* words) {
    if (!law) {
        std::fprintf(stderr, "This does not hold: %s\n", words);
        std::abort();
    }
}

/// What must hold of everything that a reader says: it is one line that no terminal is upset by, and no fault
/// of our own, unless the input itself says those words.
inline void holdSaid(const Diagnostics& diagnostics, std::string_view input) {
    constexpr std::string_view kOwnFault = "fault of the program";
    const bool isInInput = input.find(kOwnFault) != std::string_view::npos;
    hold(diagnostics.size() <= 3000, "what is said of a file is bounded");
    for (const Diagnostic& one : diagnostics) {
        const std::string line = format(one);
        hold(onOneLine(line) == line, "a diagnostic is one plain line");
        hold(!one.sentence.empty(), "a diagnostic has a sentence");
        hold(isInInput || one.sentence.find(kOwnFault) == std::string::npos,
             "a reader makes no fault of its own");
    }
}

}  // namespace engine::test
