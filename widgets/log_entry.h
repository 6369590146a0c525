#pragma once

#include "engine/pond.h"

#include <QString>

#include <optional>
#include <vector>

namespace widgets {

class Document;

/// What came of entries on their way into the log.
struct Entered {
    bool isInLog = false;
    QString said;  ///< Faults, or why it is not in the file yet; empty if all is well
};

/// Puts entries into the log of the document, behind those that are there.
[[nodiscard]] Entered enter(Document& document, const std::vector<engine::Reading>& readings,
                            const std::vector<engine::Event>& events);

/// When the next reading is likely: half past five of the day after the last entry, or of the first day.
[[nodiscard]] std::optional<engine::LocalTime> nextDawn(const engine::Pond& pond);

}  // namespace widgets
