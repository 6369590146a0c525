#pragma once

#include "engine/base/error.h"
#include "engine/pond/pond.h"
#include "engine/pond/pond_source.h"

#include <optional>
#include <string>

namespace engine {

/// Everything that must hold of a pond before it can be run: ranges, required keys, and what keys
/// have to do with each other. In the order of the file's tables; lines come from `source`, and
/// nothing is said about what could not be read.
[[nodiscard]] Diagnostics checkPond(const Pond& pond, const PondSource& source = {});

/// Deepest point of the basin [m], from its contours or its key; nothing if neither is there.
[[nodiscard]] std::optional<double> deepestPoint(const BasinShape& basin);

/// Dates of ponds lie in the years 1900 to 2200.
[[nodiscard]] bool isSaneYear(Date date);

/// Where faults of a pond are said.
class PondFaults {
public:
    PondFaults(const PondSource& source, Diagnostics& out) : m_source(source), m_out(out) {}

    void add(const std::string& path, std::string sentence) const;
    void warn(const std::string& path, std::string sentence) const;
    void missing(const std::string& path) const { add(path, "This key is missing."); }
    [[nodiscard]] bool isUnread(std::string_view path) const { return m_source.isUnread(path); }
    [[nodiscard]] bool isWritten(std::string_view path) const { return m_source.isWritten(path); }
    [[nodiscard]] bool hasFile() const { return !m_source.lines.empty() || !m_source.file.empty(); }

private:
    const PondSource& m_source;
    Diagnostics& m_out;
};

// The passes of checkPond, one source file each.
void checkKeys(const Pond& pond, const PondFaults& faults);
void checkTables(const Pond& pond, const PondFaults& faults);
void checkRamps(const Pond& pond, const PondFaults& faults);
/// What tables have to do with each other.
void checkTogether(const Pond& pond, const PondFaults& faults);
/// What is unusual, each number by itself and together, as warnings. @pre No error was said and nothing is unread.
void checkUsual(const Pond& pond, const PondFaults& faults);

}  // namespace engine
