#include "engine/base/error.h"

#include "engine/base/text.h"
#include "engine/base/text_file.h"

#include <algorithm>
#include <cmath>

namespace engine {

std::string format(const Diagnostic& diagnostic) {
    std::string text;
    if (!diagnostic.file.empty()) {
        text += diagnostic.file + ':';
        if (diagnostic.line > 0) {
            text += std::to_string(diagnostic.line) + ':';
        }
        text += ' ';
    }
    if (diagnostic.severity == Severity::Warning) {
        text += "warning: ";
    }
    if (!diagnostic.key.empty()) {
        text += diagnostic.key + ": ";
    }
    return onOneLine(text + diagnostic.sentence);
}

bool hasErrors(const Diagnostics& diagnostics) {
    return std::any_of(diagnostics.begin(), diagnostics.end(),
                       [](const Diagnostic& d) { return d.severity == Severity::Error; });
}

void ensure(bool condition, std::string_view what, const char* file, int line) {
    if (!condition) {
        throw InternalError("A fault of our own: this does not hold: " + std::string(what) + " (" + file +
                            ":" + std::to_string(line) + ").");
    }
}

void requireRange(std::string_view name, double value, double low, double high, std::string_view unit) {
    if (!(value >= low && value <= high)) {
        const std::string shown = std::isfinite(value) ? shortest(value) : "not a finite number";
        throw ArgumentError(std::string(name) + " is " + shown + ", but must be from " + shortest(low) +
                            " to " + shortest(high) + " " + std::string(unit) + ".");
    }
}

}  // namespace engine
