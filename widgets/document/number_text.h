#pragma once

#include "engine/pond/pond_keys.h"
#include "widgets/document/text_reading.h"

#include <QLocale>
#include <QString>

#include <vector>

namespace widgets {

/// The shortest text of a number with the locale's decimal sign, without group separators.
[[nodiscard]] QString numberText(double value, const QLocale& locale);

/// Reads a number as people write it: comma and point are both decimal signs in any locale, and no sign
/// groups digits, so that "1.500" and "1,500" are both one and a half.
/// @return a sentence for anything else, two decimal signs included.
[[nodiscard]] TextReading<double> readNumber(const QString& text, const QLocale& locale);

/// The same, and within the rule; the sentence says value, unit and range.
[[nodiscard]] TextReading<double> readNumber(const QString& text, const engine::NumberRule& rule,
                                             const QLocale& locale);

/// A number with or without a unit behind it, in the unit of a rule: "2.5 ac" for square metres. Without one
/// it is in the unit that is shown. The rule is kept in the file's unit; its sentence speaks in the shown
/// one.
[[nodiscard]] TextReading<double> readQuantity(const QString& text, const engine::NumberRule& rule,
                                               engine::UnitSystem system, const QLocale& locale);

/// "30, 60, 120", or with semicolons where the comma is the locale's decimal sign.
[[nodiscard]] QString numbersText(const std::vector<double>& values, const QLocale& locale);

/// Reads a list of numbers within a rule. Semicolons, blanks and commas before a blank separate. A comma
/// between two digits is a decimal sign where the locale's is one, or where semicolons separate; it
/// separates whole numbers; it is refused where it could be either.
/// @return no numbers for an empty text.
[[nodiscard]] TextReading<std::vector<double>> readNumbers(const QString& text,
                                                           const engine::NumberRule& rule,
                                                           const QLocale& locale);

/// A unit of the pond file as it is printed: "degC" is "°C".
[[nodiscard]] QString shownUnit(const char* unit);

}  // namespace widgets
