#include "engine/intake/pasted_summary.h"

#include "engine/base/text.h"
#include "engine/intake/first_pond.h"
#include "engine/pond/local_time.h"
#include "engine/pond/pond_units.h"

#include <array>
#include <cmath>

namespace engine {
namespace {

/// To a tenth, as forecasts are said.
std::string tenths(double value) {
    return shortest(std::round(10.0 * value) / 10.0);
}

KeyUnit degreesIn(UnitSystem units) {
    KeyUnit unit = unitIn("degC", units);
    unit.text = units == UnitSystem::Us ? "\u00b0F" : "\u00b0C";
    return unit;
}

std::string amount(double value, const KeyUnit& unit) {
    return tenths(unit.toShown(value)) + " " + unit.text;
}

std::string headOf(const std::vector<WeatherDay>& days, UnitSystem units) {
    const WeatherDay& day = days.front();
    const KeyUnit degrees = degreesIn(units);
    return (days.size() == 1 ? "One day of weather is"
                             : std::to_string(days.size()) + " days of weather are") +
           " taken, from " + formatDate(day.date) + " to " + formatDate(days.back().date) +
           "; the first: " + tenths(degrees.toShown(*day.airMin)) + " to " + amount(*day.airMax, degrees) +
           ", wind " + amount(*day.wind, unitIn("m/s", units)) + ", cloud " + tenths(*day.cloud_percent) +
           " %.";
}

std::string unitsOf(const PastedCounts& counts) {
    constexpr std::array kWinds{"m/s", "km/h", "mph", "knots"};
    return std::string("Temperatures are read as ") +
           (counts.temperature == TemperatureUnit::Fahrenheit ? "\u00b0F" : "\u00b0C") + ", wind as " +
           kWinds[static_cast<std::size_t>(*counts.wind)] +
           (counts.isWindUnitTaken ? ", which the text does not say." : ".");
}

}  // namespace

std::vector<std::string> pastedSentences(const std::vector<WeatherDay>& days, const PastedCounts& counts,
                                         UnitSystem units) {
    std::vector<std::string> said{headOf(days, units), unitsOf(counts)};
    const auto filled = [&said](int count, const char* what, const std::string& taken) {
        if (count > 0) {
            said.push_back(std::string(what) + " missing on " + std::to_string(count) +
                           (count == 1 ? " day: " : " days: ") + taken + " taken (judgement).");
        }
    };
    const KeyUnit degrees = degreesIn(units);
    const std::string span = tenths(kUsualSpan / degrees.factor) + " " + degrees.text;
    filled(counts.humidities, "Humidity is", tenths(kUsualHumidity_percent) + " % is");
    filled(counts.winds, "Wind is", amount(windOf(FirstAnswers::Wind::Light), unitIn("m/s", units)) + " is");
    filled(counts.clouds, "The sky is", tenths(cloudOf(FirstAnswers::Sky::Mixed)) + " % of cloud is");
    filled(counts.lows, "The low is", span + " under the high is");
    filled(counts.highs, "The high is", span + " above the low is");
    filled(counts.gaps, "All weather is", "the day before is");
    if (counts.twice > 0) {
        said.emplace_back("A day comes twice; the later line is taken.");
    }
    if (counts.hasRainChance) {
        said.emplace_back("Chances of rain in percent are not taken, since they do not say how much falls.");
    }
    if (counts.left > 0) {
        std::string list;
        for (const std::string& one : counts.firstLeft) {
            list += (list.empty() ? "" : "; ") + one;
        }
        said.push_back("Not taken, since no temperature stands there: " + list +
                       (counts.left > static_cast<int>(counts.firstLeft.size()) ? " and more." : "."));
    }
    said.emplace_back(
        "Forecasts often give the day's strongest wind; the model wants its mean. Put lower numbers in where "
        "that is so.");
    return said;
}

}  // namespace engine
