#include "widgets/document/pond_units.h"

#include "engine/base/text.h"
#include "engine/base/units.h"
#include "widgets/document/number_text.h"

#include <QLocale>
#include <QStringList>

#include <cmath>
#include <cstring>

namespace widgets {
namespace {

// Exact by definition: the inch and the US gallon; 1 hp is 550 ft lbf/s.
constexpr double kFoot_m = engine::kMetrePerFoot;
constexpr double kInch_m = 0.0254;
constexpr double kAcre_m2 = engine::kSquareMetrePerAcre;
constexpr double kPound_kg = engine::kKilogramPerPound;
constexpr double kGallon_l = 3.785411784;
constexpr double kCubicFoot_l = 1000.0 * kFoot_m * kFoot_m * kFoot_m;
constexpr double kMile_m = engine::kMetrePerMile;
constexpr double kHorsepower_kW = 0.74569987158227;
constexpr double kFahrenheitOffset = -160.0 / 9.0;

struct Word {
    const char* written;  ///< Lower case
    ShownUnit unit;
};

struct Dimension {
    const char* unit;  ///< Of the pond file's rules
    ShownUnit us;      ///< Shown in the US system
    std::vector<Word> words;
};

/// All that a number may be measured in: data, one entry a dimension.
const std::vector<Dimension>& dimensions() {
    static const std::vector<Dimension> kAll{
        {"m",
         {"ft", kFoot_m},
         {{"m", {"m"}},
          {"cm", {"cm", 0.01}},
          {"mm", {"mm", 0.001}},
          {"ft", {"ft", kFoot_m}},
          {"'", {"ft", kFoot_m}},
          {"feet", {"ft", kFoot_m}},
          {"foot", {"ft", kFoot_m}},
          {"in", {"in", kInch_m}},
          {"\"", {"in", kInch_m}},
          {"inches", {"in", kInch_m}},
          {"yd", {"yd", 3.0 * kFoot_m}}}},
        {"m2",
         {"ac", kAcre_m2},
         {{"m2", {"m2"}},
          {"m\u00b2", {"m2"}},
          {"ha", {"ha", 1e4}},
          {"ac", {"ac", kAcre_m2}},
          {"acre", {"ac", kAcre_m2}},
          {"acres", {"ac", kAcre_m2}},
          {"ft2", {"ft2", kFoot_m * kFoot_m}},
          {"sq ft", {"ft2", kFoot_m * kFoot_m}},
          {"km2", {"km2", 1e6}}}},
        {"L/min",
         {"cfm", kCubicFoot_l},
         {{"l/min", {"L/min"}},
          {"lpm", {"L/min"}},
          {"cfm", {"cfm", kCubicFoot_l}},
          {"m3/h", {"m3/h", 1000.0 / 60.0}}}},
        {"degC",
         {"\u00b0F", 5.0 / 9.0, kFahrenheitOffset},
         {{"c", {"\u00b0C"}},
          {"\u00b0c", {"\u00b0C"}},
          {"degc", {"\u00b0C"}},
          {"f", {"\u00b0F", 5.0 / 9.0, kFahrenheitOffset}},
          {"\u00b0f", {"\u00b0F", 5.0 / 9.0, kFahrenheitOffset}},
          {"degf", {"\u00b0F", 5.0 / 9.0, kFahrenheitOffset}}}},
        {"kg/ha",
         {"lb/ac", kPound_kg * 1e4 / kAcre_m2},
         {{"kg/ha", {"kg/ha"}},
          {"lb/ac", {"lb/ac", kPound_kg * 1e4 / kAcre_m2}},
          {"lbs/ac", {"lb/ac", kPound_kg * 1e4 / kAcre_m2}},
          {"lb/acre", {"lb/ac", kPound_kg * 1e4 / kAcre_m2}}}},
        {"g",
         {"lb", 1000.0 * kPound_kg},
         {{"g", {"g"}},
          {"kg", {"kg", 1000.0}},
          {"lb", {"lb", 1000.0 * kPound_kg}},
          {"lbs", {"lb", 1000.0 * kPound_kg}},
          {"oz", {"oz", 1000.0 * kPound_kg / 16.0}}}},
        {"kg/d",
         {"lb/d", kPound_kg},
         {{"kg/d", {"kg/d"}}, {"kg", {"kg/d"}}, {"lb/d", {"lb/d", kPound_kg}}, {"lb", {"lb/d", kPound_kg}}}},
        {"kg/h",
         {"lb/h", kPound_kg},
         {{"kg/h", {"kg/h"}}, {"kg", {"kg/h"}}, {"lb/h", {"lb/h", kPound_kg}}, {"lb", {"lb/h", kPound_kg}}}},
        {"m/s",
         {"mph", kMile_m / 3600.0},
         {{"m/s", {"m/s"}},
          {"km/h", {"km/h", 1.0 / 3.6}},
          {"mph", {"mph", kMile_m / 3600.0}},
          {"kn", {"kn", 1852.0 / 3600.0}},
          {"kt", {"kn", 1852.0 / 3600.0}}}},
        {"L/s",
         {"gpm", kGallon_l / 60.0},
         {{"l/s", {"L/s"}},
          {"gpm", {"gpm", kGallon_l / 60.0}},
          {"l/min", {"L/min", 1.0 / 60.0}},
          {"m3/h", {"m3/h", 1.0 / 3.6}}}},
        {"kW", {"kW"}, {{"kw", {"kW"}}, {"w", {"W", 0.001}}, {"hp", {"hp", kHorsepower_kW}}}},
        {"mm", {"mm"}, {{"mm", {"mm"}}, {"in", {"in", 25.4}}, {"cm", {"cm", 10.0}}}},
        {"mg/L",
         {"mg/L"},
         {{"mg/l", {"mg/L"}}, {"ppm", {"mg/L"}}, {"g/m3", {"mg/L"}}, {"ug/l", {"ug/L", 0.001}}}},
        {"ug/L",
         {"ug/L"},
         {{"ug/l", {"ug/L"}}, {"\u00b5g/l", {"ug/L"}}, {"mg/m3", {"ug/L"}}, {"ppb", {"ug/L"}}}},
        {"min", {"min"}, {{"min", {"min"}}, {"h", {"h", 60.0}}, {"hours", {"h", 60.0}}}},
        {"percent", {"%"}, {{"%", {"%"}}, {"percent", {"%"}}}},
        {"degrees", {"degrees"}, {{"\u00b0", {"degrees"}}, {"degrees", {"degrees"}}, {"deg", {"degrees"}}}},
        {"days", {"days"}, {{"days", {"days"}}, {"d", {"days"}}, {"weeks", {"weeks", 7.0}}}},
        {"years", {"years"}, {{"years", {"years"}}, {"a", {"years"}}}},
    };
    return kAll;
}

const Dimension* dimensionOf(const char* unit) {
    for (const Dimension& dimension : dimensions()) {
        if (std::strcmp(dimension.unit, unit) == 0) {
            return &dimension;
        }
    }
    return nullptr;
}

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
    const Dimension* dimension = dimensionOf(unit);
    if (system == engine::UnitSystem::Us && dimension != nullptr) {
        return dimension->us;
    }
    return {unit};
}

std::optional<ShownUnit> typedUnit(const char* unit, const QString& word) {
    const Dimension* dimension = dimensionOf(unit);
    const QString plain = word.trimmed().toLower();
    for (std::size_t i = 0; dimension != nullptr && i < dimension->words.size(); ++i) {
        if (QString::fromUtf8(dimension->words[i].written) == plain) {
            return dimension->words[i].unit;
        }
    }
    return std::nullopt;
}

QString typedUnits(const char* unit) {
    QStringList names;
    if (const Dimension* dimension = dimensionOf(unit)) {
        for (const Word& word : dimension->words) {
            const QString name = QString::fromUtf8(word.unit.text);
            if (!names.contains(name)) {
                names << name;
            }
        }
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

}  // namespace widgets
