#include "engine/pond/weather_csv.h"

#include "engine/base/text.h"
#include "engine/pond/csv.h"
#include "engine/pond/local_time.h"
#include "engine/pond/pond_keys.h"

#include <algorithm>
#include <array>
#include <chrono>

namespace engine {
namespace {

constexpr std::chrono::seconds kHourStep = std::chrono::hours(1);
/// The usual day is the mean of the days, so that less than one is of no use.
constexpr std::size_t kFewestHours = 24;

// Sensors drift a little past what can be: a capacitive hygrometer in fog, a pyranometer that radiates to a
// clear night sky. Common practice, no source.
constexpr double kMostHumidity_percent = 105.0;
constexpr double kLeastShortwave = -10.0;  // [W/m^2]

/// A column whose values a little outside the range are taken as its end.
struct SensorColumn {
    std::string_view name;
    NumberRule read;   ///< What is accepted.
    NumberRule range;  ///< What can be.
    int moved = 0;     ///< Values taken as an end of the range.

    std::optional<double> number(CsvTable& table) {
        const auto given = table.number(name, read);
        if (!given || (*given >= range.low && *given <= range.high)) {
            return given;
        }
        ++moved;
        return std::clamp(*given, range.low, range.high);
    }

    void say(CsvFaults& faults) const {
        if (moved > 0) {
            faults.warn(0, name,
                        (moved == 1 ? "One value lies" : std::to_string(moved) + " values lie") +
                            " a little outside " + shortest(range.low) + " to " + shortest(range.high) + " " +
                            range.unit + (moved == 1 ? " and is" : " and are") + " taken as its nearer end.");
        }
    }
};

struct Light {
    std::string_view column;
    NumberRule rule;
    std::optional<double> WeatherHour::*member;
};

/// In the order of preference.
constexpr std::array<Light, 3> kLights{{
    {"shortwave_w_per_m2", kShortwaveRule, &WeatherHour::shortwave},
    {"par_umol_per_m2_s", kParRule, &WeatherHour::par_umolPerM2S},
    {"cloud_percent", kPercentRule, &WeatherHour::cloud_percent},
}};

struct Columns {
    bool hasDewPoint = false;
    const Light* light = nullptr;
};

/// Says what is missing and which of two columns is used.
Columns chooseColumns(CsvTable& table, CsvFaults& faults) {
    Columns columns;
    table.require("at");
    table.require("air_c");
    table.require("wind_m_per_s");
    columns.hasDewPoint = table.has("dew_point_c");
    const bool hasHumidity = table.has("humidity_percent");
    if (!columns.hasDewPoint && !hasHumidity) {
        faults.add(table.line(), "humidity_percent", "This column is missing; dew_point_c would do as well.");
    } else if (columns.hasDewPoint && hasHumidity) {
        faults.warn(table.line(), "humidity_percent", "The dew point is used instead of this column.");
    }
    for (const Light& light : kLights) {
        if (columns.light == nullptr && table.has(light.column)) {
            columns.light = &light;
        } else if (table.has(light.column)) {
            faults.warn(
                table.line(), light.column,
                "The column " + std::string(columns.light->column) + " is used instead of this column.");
        }
    }
    if (columns.light == nullptr) {
        faults.add(table.line(), "shortwave_w_per_m2",
                   "This column is missing; par_umol_per_m2_s or cloud_percent would do as well.");
    }
    table.warnOfOthers({"at", "air_c", "humidity_percent", "dew_point_c", "wind_m_per_s", kLights[0].column,
                        kLights[1].column, kLights[2].column, "rain_mm", "snow_mm"});
    return columns;
}

/// Says what is wrong with the place of a row in time: `expected` is the stamp that should come.
void checkStep(LocalTime at, LocalTime expected, int line, CsvFaults& faults) {
    const auto missing = (at - expected) / kHourStep;
    if (at == expected - kHourStep) {
        faults.add(line, "at", "The hour " + formatLocalTime(at) + " comes twice.");
    } else if (at < expected) {
        faults.add(line, "at",
                   "The hours must be in order, but " + formatLocalTime(at) + " follows " +
                       formatLocalTime(expected - kHourStep) + ".");
    } else if (missing == 1) {
        faults.add(line, "at", "The hour " + formatLocalTime(expected) + " is missing before this row.");
    } else if (missing > 1) {
        faults.add(line, "at",
                   "The " + std::to_string(missing) + " hours from " + formatLocalTime(expected) + " to " +
                       formatLocalTime(at - kHourStep) + " are missing before this row.");
    }
}

}  // namespace

std::vector<WeatherHour> readWeatherCsv(std::string_view text, const std::string& file, HourStamp stamp,
                                        Diagnostics& diagnostics) {
    std::vector<WeatherHour> hours;
    CsvFaults faults(file);
    CsvTable table(text, faults);
    const auto finish = [&] {
        for (Diagnostic& diagnostic : faults.take()) {
            diagnostics.push_back(std::move(diagnostic));
        }
        return std::move(hours);
    };
    if (!table.readHeader()) {
        return finish();
    }
    const Columns columns = chooseColumns(table, faults);
    if (faults.any()) {
        return finish();
    }
    SensorColumn humidity{"humidity_percent", {0.0, kMostHumidity_percent, "percent"}, kPercentRule, 0};
    SensorColumn light{columns.light->column, columns.light->rule, columns.light->rule, 0};
    if (columns.light->member == &WeatherHour::shortwave) {
        light.read.low = kLeastShortwave;
    }
    std::optional<LocalTime> expected;
    while (table.nextRow()) {
        WeatherHour hour;
        const auto at = table.time("at");
        const bool isWhole = at && (at->time_since_epoch() % kHourStep).count() == 0;
        if (at && !isWhole) {
            faults.add(table.line(), "at", "The time " + formatLocalTime(*at) + " is not a whole hour.");
        }
        const LocalTime start = isWhole ? *at : LocalTime{};
        if (expected) {
            *expected += table.skipped() * kHourStep;  // rows that cannot be read count as their hours
        }
        if (isWhole && expected) {
            checkStep(start, *expected, table.line(), faults);
        }
        if (isWhole) {
            expected = start + kHourStep;
        } else if (expected) {
            *expected += kHourStep;
        }
        hour.start = start - (stamp == HourStamp::End ? kHourStep : kHourStep * 0);
        hour.air = table.number("air_c", kAirTemperatureRule).value_or(0.0);
        hour.wind = table.number("wind_m_per_s", kWindRule).value_or(0.0);
        if (columns.hasDewPoint) {
            hour.dewPoint = table.number("dew_point_c", kDewPointRule);
        } else {
            hour.humidity_percent = humidity.number(table);
        }
        hour.*(columns.light->member) = light.number(table);
        hour.rain_mm = table.has("rain_mm") ? table.number("rain_mm", kRainRule) : std::nullopt;
        hour.snow_mm = table.has("snow_mm") ? table.number("snow_mm", kRainRule) : std::nullopt;
        hours.push_back(hour);
    }
    humidity.say(faults);
    light.say(faults);
    if (!faults.any() && hours.size() < kFewestHours) {
        faults.add(table.line(), "",
                   "The file has " + std::to_string(hours.size()) + " hours, but must have at least " +
                       std::to_string(kFewestHours) + ".");
    }
    return finish();
}

}  // namespace engine
