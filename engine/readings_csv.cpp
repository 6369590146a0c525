#include "engine/readings_csv.h"

#include "engine/csv.h"
#include "engine/local_time.h"
#include "engine/pond_keys.h"
#include "engine/text_file.h"

#include <map>

namespace engine {
namespace {

MaybeQuantity optionalNumber(CsvTable& table, std::string_view name, const NumberRule& rule) {
    if (table.cell(name).empty()) {
        return std::nullopt;
    }
    const auto value = table.number(name, rule);
    return value ? MaybeQuantity(*value) : std::nullopt;
}

/// Reads the row at which the table stands.
Reading readRow(CsvTable& table, std::optional<double> deepest, CsvFaults& faults) {
    Reading reading;
    reading.at = table.time("at");
    if (const auto depth = table.number("depth_m", kDepthRule)) {
        reading.depth = *depth;
        if (deepest && *depth > *deepest) {
            faults.add(table.line(), "depth_m",
                       "The depth " + shownNumber(*depth) + " m lies below the bottom, which is at " +
                           shownNumber(*deepest) + " m.");
        }
    }
    reading.temperature = optionalNumber(table, "temperature_c", kWaterTemperatureRule);
    reading.oxygen = optionalNumber(table, "oxygen_mg_per_l", kOxygenRule);
    if (table.cell("temperature_c").empty() && table.cell("oxygen_mg_per_l").empty()) {
        faults.add(table.line(), "", "The row has neither a temperature nor an oxygen value.");
    }
    return reading;
}

}  // namespace

std::vector<Reading> readReadingsCsv(std::string_view text, const std::string& file,
                                     std::optional<double> deepest, Diagnostics& diagnostics) {
    std::vector<Reading> readings;
    CsvFaults faults(file);
    CsvTable table(text, faults);
    bool isReadable = table.readHeader();
    if (isReadable) {
        for (const auto* column : {"at", "depth_m", "temperature_c", "oxygen_mg_per_l"}) {
            isReadable = table.require(column) && isReadable;
        }
        table.warnOfOthers({"at", "depth_m", "temperature_c", "oxygen_mg_per_l"});
    }
    std::map<std::pair<LocalTime, double>, int> lines;
    while (isReadable && table.nextRow()) {
        readings.push_back(readRow(table, deepest, faults));
        const Reading& last = readings.back();
        if (last.at && last.depth) {
            const auto [place, isNew] = lines.try_emplace({*last.at, last.depth->value}, table.line());
            if (!isNew) {
                faults.add(table.line(), "at",
                           "The reading of " + formatLocalTime(*last.at) + " at " + shownNumber(*last.depth) +
                               " m is there already, in line " + std::to_string(place->second) + ".");
            }
        }
    }
    for (Diagnostic& diagnostic : faults.take()) {
        diagnostics.push_back(std::move(diagnostic));
    }
    return readings;
}

}  // namespace engine
