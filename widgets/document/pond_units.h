#pragma once

#include "engine/pond/pond_keys.h"
#include "engine/pond/pond_units.h"

#include <QString>

#include <optional>
#include <vector>

namespace widgets {

using ShownUnit = engine::KeyUnit;

/// The system of the user's locale.
[[nodiscard]] engine::UnitSystem unitsOfLocale();

/// The system of a pond: its own, or that of the user's locale.
[[nodiscard]] engine::UnitSystem unitsOf(const engine::Pond& pond);

/// In which unit numbers of a key are shown. @param unit  As the rule of the key says it.
[[nodiscard]] ShownUnit shownUnitOf(const char* unit, engine::UnitSystem system);

/// The unit that a typed word means for a key, such as "ac" or "acres" for square metres; nothing if none.
[[nodiscard]] std::optional<ShownUnit> typedUnit(const char* unit, const QString& word);

/// Units that are understood for a key, for sentences.
[[nodiscard]] QString typedUnits(const char* unit);

/// A rule in the unit in which its numbers are shown.
[[nodiscard]] engine::NumberRule shownRule(const engine::NumberRule& rule, engine::UnitSystem system);

/// A number of the pond file as it is shown: exactly in the file's unit, to six digits in others.
[[nodiscard]] double shownNumber(double file, const ShownUnit& unit);

/// A number as people say it: two figures below ten, whole numbers above.
[[nodiscard]] QString roundedText(double shown);

/// A number of the pond file with its unit, as people say it: "2.2 mph", "10 ft", "1.8 acres".
/// @param unit  As the rule of its key says it.
[[nodiscard]] QString amountText(double file, const char* unit, engine::UnitSystem system);

/// A depth as people say it [m].
[[nodiscard]] QString depthText(double depth, engine::UnitSystem system);

/// The name of the unit that a key's numbers are shown in, for an axis.
[[nodiscard]] QString unitText(const char* unit, engine::UnitSystem system);

}  // namespace widgets
