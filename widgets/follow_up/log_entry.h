#pragma once

#include "engine/pond/pond.h"

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

/// When the next reading at dawn is likely: half past five of the day after the last one or of the first day,
/// but of today at the earliest where today is a day of the pond.
/// @param now  On the pond's clock.
[[nodiscard]] std::optional<engine::LocalTime> nextDawn(const engine::Pond& pond, engine::LocalTime now);

/// When something is entered that is seen now: to the minute, where today is a day of the pond; the next dawn
/// where it is not, as with a pond that is looked at as an exercise.
[[nodiscard]] std::optional<engine::LocalTime> nextVisit(const engine::Pond& pond, engine::LocalTime now);

/// The machine's time on the pond's clock.
[[nodiscard]] engine::LocalTime clockOf(const engine::Pond& pond);

}  // namespace widgets
