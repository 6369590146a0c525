#include "tests/property/measured_waters.h"

#include "engine/base/text.h"
#include "engine/base/text_file.h"
#include "engine/pond/csv.h"
#include "engine/pond/local_time.h"
#include "engine/pond/pond_check.h"
#include "engine/run/balance.h"

#include <algorithm>
#include <cmath>
#include <cstdio>
#include <stdexcept>

namespace engine::test {
namespace {

constexpr std::array<double, 5> kChainDepths{0.0, 0.25, 0.5, 0.75, 1.25};  // [m]
constexpr std::array<const char*, 5> kChainColumns{"temperature_0_0m_c", "temperature_0_25m_c",
                                                   "temperature_0_5m_c", "temperature_0_75m_c",
                                                   "temperature_1_25m_c"};

}  // namespace

std::vector<TrialRow> trialRows(const std::filesystem::path& file) {
    const FileText read = readWholeFile(file, kCsvFileLimit_bytes);
    if (!read.text) {
        throw std::runtime_error(shownPath(file) + " cannot be used: " + read.fault);
    }
    std::vector<TrialRow> rows;
    CsvRows table(*read.text);
    std::vector<std::string> header;
    while (table.next()) {
        const std::vector<std::string>& cells = table.cells();
        if (header.empty()) {
            header = cells;
            continue;
        }
        if (cells.size() != header.size()) {
            throw std::runtime_error("Line " + std::to_string(table.line()) + " of " + shownPath(file) +
                                     " is not as long as its header.");
        }
        TrialRow& row = rows.emplace_back();
        for (std::size_t i = 0; i < header.size(); ++i) {
            row[header[i]] = cells[i];
        }
    }
    return rows;
}

double numberOf(const TrialRow& row, std::string_view column) {
    const auto cell = row.find(column);
    const auto number = cell == row.end() ? std::nullopt : toNumber(cell->second);
    if (!number) {
        throw std::runtime_error("A row has no number in column " + std::string(column) + ".");
    }
    return *number;
}

LocalTime timeOf(const TrialRow& row, std::string_view column) {
    const auto cell = row.find(column);
    const auto time = cell == row.end() ? std::nullopt : parseLocalTime(cell->second);
    if (!time) {
        throw std::runtime_error("A row has no time in column " + std::string(column) + ".");
    }
    return *time;
}

void DepthErrors::add(double error) {
    ++count;
    absolute += std::fabs(error);
    sum += error;
}

double DepthErrors::meanAbsolute() const {
    return absolute / count;
}

double DepthErrors::bias() const {
    return sum / count;
}

DepthErrors together(const std::vector<DepthErrors>& errors) {
    DepthErrors all;
    for (const DepthErrors& one : errors) {
        all.count += one.count;
        all.absolute += one.absolute;
        all.sum += one.sum;
    }
    return all;
}

void print(const std::string& title, const std::vector<DepthErrors>& errors) {
    const DepthErrors all = together(errors);
    std::printf("%-34s    all", title.c_str());
    for (const DepthErrors& one : errors) {
        std::printf(" %6s", (shortest(one.depth) + " m").c_str());
    }
    std::printf("\n  mean absolute error [K]          %6.2f", all.meanAbsolute());
    for (const DepthErrors& one : errors) {
        std::printf(" %6.2f", one.meanAbsolute());
    }
    std::printf("\n  bias, model minus measured [K]   %6.2f", all.bias());
    for (const DepthErrors& one : errors) {
        std::printf(" %6.2f", one.bias());
    }
    std::printf("\n");
}

double meanBetween(const Basin& basin, double top, double bottom,
                   const std::function<double(double depth)>& value) {
    constexpr int kSlices = 200;
    const double thickness = (bottom - top) / kSlices;
    double sum = 0.0, area = 0.0;
    for (int i = 0; i < kSlices; ++i) {
        const double depth = top + (i + 0.5) * thickness;
        sum += basin.area(depth) * value(depth);
        area += basin.area(depth);
    }
    return sum / area;
}

double WaterRun::temperature(std::size_t hour, double depth) const {
    std::vector<double> values;
    for (const LayerRow& layer : run.layers.at(hour)) {
        values.push_back(layer.temperature);
    }
    return interpolate(model.grid.middle, values, depth);
}

WaterRun runWater(const Pond& pond, int days, const Schedule& air, const Resolution& resolution) {
    for (const Diagnostic& diagnostic : checkPond(pond)) {
        if (diagnostic.severity == Severity::Error) {
            throw std::runtime_error(format(diagnostic));
        }
    }
    WaterRun out;
    out.model = prepareUnbalanced(pond, resolution);
    RunRequest request;
    request.days = days;
    request.schedule = air;
    out.run = runRamp(out.model, nullptr, request);
    if (out.run.end != RunEnd::Completed) {
        throw std::runtime_error(out.run.message);
    }
    return out;
}

Pond pondB(const std::filesystem::path& data, WindOf wind, const WaterOptions& options) {
    using namespace std::chrono;
    const local_days first(2020y / May / 24), last(2020y / May / 31);
    Pond pond;
    pond.title = "a measured pond";
    pond.place = {42.11, -93.58, 315.0, {}, Date(first), -5.0, options.windShelter, {}};
    for (const TrialRow& row : trialRows(data / "pond-c" / "contours.csv")) {
        pond.basin.contours.push_back({numberOf(row, "depth_m"), numberOf(row, "area_m2")});
    }
    DepthErrors secchi;
    for (const TrialRow& row : trialRows(data / "ponds-2020" / "field.csv")) {
        const local_days day(*parseDate(row.at("day")));
        if (row.at("pond") == "B" && day >= first && day <= last && toNumber(row.at("secchi_m"))) {
            secchi.add(numberOf(row, "secchi_m"));
        }
    }
    pond.water.secchi = secchi.bias() / options.attenuationFactor;
    Profile& profile = pond.profile.emplace();
    profile.at = LocalTime(first);
    for (const TrialRow& row : trialRows(data / "ponds-2020" / "chain-b.csv")) {
        for (std::size_t i = 0; timeOf(row, "at") == *profile.at && i < kChainDepths.size(); ++i) {
            profile.depth.push_back(kChainDepths[i]);
            profile.temperature.push_back(numberOf(row, kChainColumns[i]));
            profile.oxygen.push_back(15.0);  // casts of the days around: 12 to 17 mg/L
        }
    }
    pond.weather.file = "weather.csv";
    pond.weather.stamp = HourStamp::End;
    pond.weather.observed = true;
    pond.weather.windHeight = wind == WindOf::Mast ? 4.0 : 10.0;
    if (wind == WindOf::Mast) {
        pond.place.windShelter = 1.0;  // it stands at the pond
    }
    for (const TrialRow& row : trialRows(data / "pond-c" / "weather.csv")) {
        WeatherHour hour;
        hour.start = timeOf(row, "at") - hours(1);
        hour.air = numberOf(row, "air_c");
        hour.humidity_percent = numberOf(row, "humidity_percent");
        hour.wind = numberOf(row, wind == WindOf::Mast ? "site_wind_m_per_s" : "wind_m_per_s");
        hour.shortwave = numberOf(row, "shortwave_w_per_m2");
        pond.weather.hours.push_back(hour);
    }
    return pond;
}

std::vector<DepthErrors> errorsOfPondB(const std::filesystem::path& data, WindOf wind,
                                       const WaterOptions& options) {
    const Pond pond = pondB(data, wind, options);
    const WaterRun water = runWater(pond, 8, {}, options.resolution);
    std::vector<DepthErrors> errors = noErrorsAt(kChainDepths);
    const LocalTime end = *pond.profile->at + std::chrono::hours(8 * 24);
    for (const TrialRow& row : trialRows(data / "ponds-2020" / "chain-b.csv")) {
        const LocalTime at = timeOf(row, "at");
        for (std::size_t i = 0; at > *pond.profile->at && at < end && i < kChainDepths.size(); ++i) {
            const auto hour = static_cast<std::size_t>((at - *pond.profile->at) / std::chrono::hours(1));
            if (const auto measured = toNumber(row.at(kChainColumns[i]))) {
                errors[i].add(water.temperature(hour, kChainDepths[i]) - *measured);
            }
        }
    }
    return errors;
}

}  // namespace engine::test
