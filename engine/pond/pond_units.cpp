#include "engine/pond/pond_units.h"

#include "engine/base/text.h"
#include "engine/base/text_file.h"
#include "engine/base/units.h"

#include <algorithm>
#include <charconv>
#include <cmath>

namespace engine {
namespace {

// Exact by definition: the inch and the US gallon; 1 hp is 550 ft lbf/s.
constexpr double kFoot = kMetrePerFoot;
constexpr double kInch = 0.0254;
constexpr double kGallon_l = 3.785411784;
constexpr double kCubicFoot_l = 1000.0 * kFoot * kFoot * kFoot;
constexpr double kHorsepower_kW = 0.74569987158227;
constexpr double kFahrenheitOffset = -160.0 / 9.0;
constexpr double kPoundPerAcre = kKilogramPerPound * kSquareMetrePerHectare / kSquareMetrePerAcre;

/// One unit with the words that mean it, in small letters.
struct Words {
    KeyUnit unit;
    std::vector<std::string_view> written;
};

struct Dimension {
    std::string_view unit;     ///< Of the pond file's rules
    KeyUnit us;                ///< Shown in the US system
    std::vector<Words> words;  ///< The key's own unit first
};

/// All that a number may be measured in: data, one entry a dimension.
const std::vector<Dimension>& dimensions() {
    static const std::vector<Dimension> kAll{
        {"m",
         {"ft", kFoot},
         {{{"m"}, {"m", "metre", "metres", "meter", "meters"}},
          {{"cm", 0.01}, {"cm"}},
          {{"mm", 0.001}, {"mm"}},
          {{"ft", kFoot}, {"ft", "'", "feet", "foot"}},
          {{"in", kInch}, {"in", "\"", "inch", "inches"}},
          {{"yd", 3.0 * kFoot}, {"yd", "yard", "yards"}}}},
        {"km",
         {"mi", kMetrePerMile / 1000.0},
         {{{"km"}, {"km"}}, {{"mi", kMetrePerMile / 1000.0}, {"mi", "mile", "miles"}}}},
        {"m2",
         {"ac", kSquareMetrePerAcre},
         {{{"m2"}, {"m2", "m\u00b2", "m^2", "sq m", "sqm"}},
          {{"ha", kSquareMetrePerHectare}, {"ha", "hectare", "hectares"}},
          {{"ac", kSquareMetrePerAcre}, {"ac", "acre", "acres"}},
          {{"ft2", kFoot * kFoot}, {"ft2", "ft\u00b2", "ft^2", "sq ft", "sqft", "square feet"}},
          {{"km2", 1e6}, {"km2"}}}},
        {"L/min",
         {"cfm", kCubicFoot_l},
         {{{"L/min"}, {"l/min", "lpm"}},
          {{"cfm", kCubicFoot_l}, {"cfm", "scfm", "ft3/min"}},
          {{"m3/h", 1000.0 / 60.0}, {"m3/h"}}}},
        {"degC",
         {"\u00b0F", 5.0 / 9.0, kFahrenheitOffset},
         {{{"\u00b0C"}, {"c", "\u00b0c", "degc", "deg c", "celsius"}},
          {{"\u00b0F", 5.0 / 9.0, kFahrenheitOffset}, {"f", "\u00b0f", "degf", "deg f", "fahrenheit"}}}},
        {"kg/ha",
         {"lb/ac", kPoundPerAcre},
         {{{"kg/ha"}, {"kg/ha"}},
          {{"lb/ac", kPoundPerAcre}, {"lb/ac", "lbs/ac", "lb/acre", "lbs/acre", "pounds/acre"}},
          {{"g/m2", 10.0}, {"g/m2"}}}},
        {"g",
         {"lb", 1000.0 * kKilogramPerPound},
         {{{"g"}, {"g", "grams"}},
          {{"kg", 1000.0}, {"kg"}},
          {{"lb", 1000.0 * kKilogramPerPound}, {"lb", "lbs", "pound", "pounds"}},
          {{"oz", 1000.0 * kKilogramPerPound / 16.0}, {"oz", "ounces"}}}},
        {"kg",
         {"lb", kKilogramPerPound},
         {{{"kg"}, {"kg"}}, {{"g", 0.001}, {"g"}}, {{"lb", kKilogramPerPound}, {"lb", "lbs", "pounds"}}}},
        {"kg/d",
         {"lb/d", kKilogramPerPound},
         {{{"kg/d"}, {"kg/d", "kg/day", "kg"}},
          {{"lb/d", kKilogramPerPound}, {"lb/d", "lb/day", "lbs/day", "lb", "lbs", "pounds"}}}},
        {"kg/h",
         {"lb/h", kKilogramPerPound},
         {{{"kg/h"}, {"kg/h", "kg"}}, {{"lb/h", kKilogramPerPound}, {"lb/h", "lb/hr", "lb", "lbs"}}}},
        {"m/s",
         {"mph", kMetrePerMile / 3600.0},
         {{{"m/s"}, {"m/s"}},
          {{"km/h", 1.0 / 3.6}, {"km/h", "kph", "kmh"}},
          {{"mph", kMetrePerMile / 3600.0}, {"mph", "mi/h"}},
          {{"kn", 1852.0 / 3600.0}, {"kn", "kt", "kts", "knots"}}}},
        {"L/s",
         {"gpm", kGallon_l / 60.0},
         {{{"L/s"}, {"l/s"}},
          {{"gpm", kGallon_l / 60.0}, {"gpm", "gal/min"}},
          {{"L/min", 1.0 / 60.0}, {"l/min"}},
          {{"m3/h", 1.0 / 3.6}, {"m3/h"}},
          {{"cfs", kCubicFoot_l}, {"cfs", "ft3/s"}}}},
        {"kW", {"kW"}, {{{"kW"}, {"kw"}}, {{"W", 0.001}, {"w"}}, {{"hp", kHorsepower_kW}, {"hp"}}}},
        {"mm",
         {"mm"},
         {{{"mm"}, {"mm"}},
          {{"cm", 10.0}, {"cm"}},
          {{"in", 1000.0 * kInch}, {"in", "\"", "inch", "inches"}}}},
        {"mg/L",
         {"mg/L"},
         {{{"mg/L"}, {"mg/l"}},
          {{"ppm"}, {"ppm"}},
          {{"g/m3"}, {"g/m3"}},
          {{"ug/L", 0.001}, {"ug/l", "ppb"}}}},
        {"ug/L", {"ug/L"}, {{{"ug/L"}, {"ug/l", "\u00b5g/l"}}, {{"mg/m3"}, {"mg/m3"}}, {{"ppb"}, {"ppb"}}}},
        {"min", {"min"}, {{{"min"}, {"min", "minutes"}}, {{"h", 60.0}, {"h", "hr", "hours"}}}},
        {"min/d", {"min/d"}, {{{"min/d"}, {"min/d", "min"}}, {{"h/d", 60.0}, {"h/d", "h"}}}},
        {"h", {"h"}, {{{"h"}, {"h", "hours"}}}},
        {"percent", {"%"}, {{{"%"}, {"%", "percent"}}}},
        {"g/m2/d", {"g/m2/d"}, {{{"g/m2/d"}, {"g/m2/d", "g/m2/day"}}}},
        {"degrees north",
         {"degrees north"},
         {{{"N"}, {"n", "\u00b0n", "\u00b0 n", "degrees north", "degrees", "deg", "\u00b0"}},
          {{"S", -1.0}, {"s", "\u00b0s", "\u00b0 s", "degrees south"}}}},
        {"degrees east",
         {"degrees east"},
         {{{"E"}, {"e", "\u00b0e", "\u00b0 e", "degrees east", "degrees", "deg", "\u00b0"}},
          {{"W", -1.0}, {"w", "\u00b0w", "\u00b0 w", "degrees west"}}}},
        {"days", {"days"}, {{{"days"}, {"days", "day", "d"}}, {{"weeks", 7.0}, {"weeks", "week"}}}},
        {"years", {"years"}, {{{"years"}, {"years", "year", "yr", "yrs", "a"}}}},
    };
    return kAll;
}

const Dimension* dimensionOf(std::string_view unit) {
    const auto found = std::find_if(dimensions().begin(), dimensions().end(),
                                    [unit](const Dimension& dimension) { return dimension.unit == unit; });
    return found == dimensions().end() ? nullptr : &*found;
}

std::string_view trimmed(std::string_view text) {
    const auto first = text.find_first_not_of(" \t");
    return first == std::string_view::npos ? std::string_view()
                                           : text.substr(first, text.find_last_not_of(" \t") - first + 1);
}

bool isOfNumber(char c) {
    return (c >= '0' && c <= '9') || c == '.' || c == ',' || c == '-' || c == '+';
}

double toTwelveDigits(double value) {
    char digits[40];
    const auto end =
        std::to_chars(std::begin(digits), std::end(digits), value, std::chars_format::general, 12).ptr;
    return toNumber(std::string_view(digits, static_cast<std::size_t>(end - digits))).value_or(value);
}

/// A number and what stands behind it up to the next number that follows a blank or a foot's mark.
struct Part {
    std::string_view number, word, rest;
};
Part nextPart(std::string_view text) {
    const std::string_view all = trimmed(text);
    const std::size_t end = static_cast<std::size_t>(
        std::find_if(all.begin(), all.end(), [](char c) { return !isOfNumber(c); }) - all.begin());
    std::size_t next = end;
    while (next < all.size() &&
           !(isOfNumber(all[next]) && next > end && (all[next - 1] == ' ' || all[next - 1] == '\''))) {
        ++next;
    }
    return {all.substr(0, end), trimmed(all.substr(end, next - end)), all.substr(next)};
}

}  // namespace

KeyUnit unitIn(const char* unit, UnitSystem system) {
    const Dimension* dimension = dimensionOf(unit);
    return system == UnitSystem::Us && dimension != nullptr ? dimension->us : KeyUnit{unit};
}

std::optional<KeyUnit> unitNamed(std::string_view unit, std::string_view word) {
    std::string plain;
    for (const char c : trimmed(word)) {
        plain += c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c;
    }
    if (plain.size() > 1 && plain.ends_with('.')) {
        plain.pop_back();  // an abbreviation with its point
    }
    const Dimension* dimension = dimensionOf(unit);
    for (std::size_t i = 0; dimension != nullptr && i < dimension->words.size(); ++i) {
        const Words& words = dimension->words[i];
        if (std::find(words.written.begin(), words.written.end(), plain) != words.written.end()) {
            return words.unit;
        }
    }
    return std::nullopt;
}

std::vector<std::string> unitsKnown(std::string_view unit) {
    std::vector<std::string> known;
    if (const Dimension* dimension = dimensionOf(unit)) {
        for (const Words& words : dimension->words) {
            known.emplace_back(words.unit.text);
        }
    }
    return known;
}

std::string unitList(std::string_view unit) {
    const std::vector<std::string> known = unitsKnown(unit);
    std::string list;
    for (std::size_t i = 0; i < known.size(); ++i) {
        list += (i == 0 ? "" : i + 1 == known.size() ? " or " : ", ") + known[i];
    }
    return list;
}

TypedNumber readTyped(std::string_view text, std::string_view unit) {
    double sum = 0.0;
    std::string_view left = trimmed(text);
    do {
        const Part part = nextPart(left);
        const auto number = toNumber(part.number.starts_with('+') ? part.number.substr(1) : part.number);
        if (!number) {
            std::string pointed(part.number);
            std::replace(pointed.begin(), pointed.end(), ',', '.');
            return {std::nullopt, toNumber(pointed)
                                      ? "The number in " + shownText(text) +
                                            " has a decimal comma; write a point: " + pointed + "."
                                      : "No number stands at the front of " + shownText(text) + "."};
        }
        if (part.word.empty()) {
            return {std::nullopt,
                    "A number in quotes needs its unit behind it" +
                        (unitList(unit).empty() ? std::string() : ", one of " + unitList(unit)) +
                        "; a plain number stands without quotes."};
        }
        const auto named = unitNamed(unit, part.word);
        if (!named) {
            const std::string list = unitList(unit);
            return {std::nullopt, "The unit " + shownText(part.word) + " is not known here; " +
                                      (list.empty() ? "this is a number without a unit."
                                                    : "write " + list + " behind the number.")};
        }
        sum += named->toFile(*number);
        left = part.rest;
    } while (!left.empty());
    return {toTwelveDigits(sum) + 0.0, ""};
}

}  // namespace engine
