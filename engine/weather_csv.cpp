#include "engine/weather_csv.h"

#include "engine/csv.h"
#include "engine/local_time.h"
#include "engine/pond_keys.h"

#include <array>
#include <chrono>

namespace engine {
namespace {

constexpr std::chrono::seconds kHourStep = std::chrono::hours(1);
/// The usual day is the mean of the days, so that less than one is of no use.
constexpr std::size_t kFewestHours = 24;

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
                        kLights[1].column, kLights[2].column});
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
    std::optional<LocalTime> expected;
    while (table.nextRow()) {
        WeatherHour hour;
        auto at = table.time("at");
        if (at && (at->time_since_epoch() % kHourStep).count() != 0) {
            faults.add(table.line(), "at", "The time " + formatLocalTime(*at) + " is not a whole hour.");
            at = std::nullopt;
        }
        if (expected) {
            *expected += table.skipped() * kHourStep;  // rows that cannot be read count as their hours
        }
        if (at && expected) {
            checkStep(*at, *expected, table.line(), faults);
        }
        if (at || expected) {
            expected = at.value_or(*expected) + kHourStep;
        }
        hour.start = at.value_or(LocalTime{}) - (stamp == HourStamp::End ? kHourStep : kHourStep * 0);
        hour.air = table.number("air_c", kAirTemperatureRule).value_or(0.0);
        hour.wind = table.number("wind_m_per_s", kWindRule).value_or(0.0);
        if (columns.hasDewPoint) {
            hour.dewPoint = table.number("dew_point_c", kDewPointRule);
        } else {
            hour.humidity_percent = table.number("humidity_percent", kPercentRule);
        }
        hour.*(columns.light->member) = table.number(columns.light->column, columns.light->rule);
        hours.push_back(hour);
    }
    if (!faults.any() && hours.size() < kFewestHours) {
        faults.add(table.line(), "",
                   "The file has " + std::to_string(hours.size()) + " hours, but must have at least " +
                       std::to_string(kFewestHours) + ".");
    }
    return finish();
}

}  // namespace engine
