#pragma once

#include <stdexcept>
#include <string>
#include <string_view>
#include <vector>

namespace engine {

enum class Severity { Warning, Error };

/// One fault or remark about a file the user gave us.
struct Diagnostic {
    Severity severity = Severity::Error;
    std::string file;      ///< Path as the user gave it; empty if there is no file.
    int line = 0;          ///< 1-based; 0 if the fault has no line.
    std::string key;       ///< Dotted key path such as "basin.area_m2"; may be empty.
    std::string sentence;  ///< A whole sentence with the value, its unit and the rule.

    bool operator==(const Diagnostic&) const = default;
};

using Diagnostics = std::vector<Diagnostic>;

/// `file:line: key: sentence`, leaving out what is empty.
[[nodiscard]] std::string format(const Diagnostic& diagnostic);

/// True if any of the diagnostics is an error.
[[nodiscard]] bool hasErrors(const Diagnostics& diagnostics);

/// A caller broke a precondition: names the argument, its value, its unit and the range.
class ArgumentError : public std::invalid_argument {
public:
    using std::invalid_argument::invalid_argument;
};

/// We made a mistake.
class InternalError : public std::logic_error {
public:
    using std::logic_error::logic_error;
};

/// Throws InternalError naming the place unless `condition` holds; stays on in release builds.
/// `file` and `line` are the caller's: the builtins of both compilers, since Clang 14 with the
/// standard library of GCC 12 has no std::source_location.
void ensure(bool condition, std::string_view what, const char* file = __builtin_FILE(),
            int line = __builtin_LINE());

/// Throws ArgumentError naming `name`, the value and its range unless low <= value <= high (NaN fails).
void requireRange(std::string_view name, double value, double low, double high, std::string_view unit);

}  // namespace engine
