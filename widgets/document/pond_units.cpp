#include "widgets/document/pond_units.h"

#include "widgets/document/number_text.h"
#include "widgets/document/to_qstring.h"

#include <QLocale>
#include <QStringList>

#include <cmath>

namespace widgets {
namespace {

double toDigits(double value, int digits) {
    if (value == 0.0 || !std::isfinite(value)) {
        return value;
    }
    const double power = std::pow(10.0, digits - 1 - std::floor(std::log10(std::abs(value))));
    return std::round(value * power) / power;
}

}  // namespace

engine::UnitSystem unitsOf(const engine::Pond& pond) {
    return pond.units.value_or(unitsOfLocale());
}

engine::UnitSystem unitsOfLocale() {
    return QLocale().measurementSystem() == QLocale::ImperialUSSystem ? engine::UnitSystem::Us
                                                                      : engine::UnitSystem::Metric;
}

ShownUnit shownUnitOf(const char* unit, engine::UnitSystem system) {
    return engine::unitIn(unit, system);
}

std::optional<ShownUnit> typedUnit(const char* unit, const QString& word) {
    return engine::unitNamed(unit, word.toStdString());
}

QString typedUnits(const char* unit) {
    QStringList names;
    for (const std::string& name : engine::unitsKnown(unit)) {
        names << toQString(name);
    }
    return names.join(QStringLiteral(", "));
}

engine::NumberRule shownRule(const engine::NumberRule& rule, engine::UnitSystem system) {
    const ShownUnit unit = shownUnitOf(rule.unit, system);
    if (unit.factor == 1.0 && unit.offset == 0.0) {
        return rule;
    }
    engine::NumberRule shown = rule;
    shown.unit = unit.text;
    constexpr int kDigits = 5;
    shown.low = toDigits(unit.toShown(rule.low), kDigits);
    shown.high = toDigits(unit.toShown(rule.high), kDigits);
    return shown;
}

double shownNumber(double file, const ShownUnit& unit) {
    constexpr int kDigits = 6;
    return unit.factor == 1.0 && unit.offset == 0.0 ? file : toDigits(unit.toShown(file), kDigits);
}

QString unitText(const char* unit, engine::UnitSystem system) {
    return shownUnit(shownUnitOf(unit, system).text);
}

QString roundedText(double shown) {
    const int decimals = std::abs(shown) >= 9.95 ? 0 : std::abs(shown) >= 0.095 ? 1 : 2;
    const double power = std::pow(10.0, decimals);
    return QLocale().toString(std::round(shown * power) / power, 'g', 12);
}

QString amountText(double file, const char* unit, engine::UnitSystem system) {
    return QStringLiteral("%1\u00a0%2")
        .arg(roundedText(shownUnitOf(unit, system).toShown(file)), unitText(unit, system));
}

QString depthText(double depth, engine::UnitSystem system) {
    return amountText(depth, "m", system);
}

}  // namespace widgets
