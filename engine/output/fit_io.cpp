#include "engine/output/fit_io.h"

#include "engine/base/csv_table.h"
#include "engine/base/units.h"

namespace engine {
namespace {

void addBand(CsvWriter& table, const Band& band) {
    table.number(band.p05).number(band.p50).number(band.p95);
}

}  // namespace

std::string fitCsv(const FitResult& fit) {
    CsvWriter table("input,prior_p05,prior_p50,prior_p95,fitted_p05,fitted_p50,fitted_p95");
    for (const FittedInput& input : fit.inputs) {
        table.text(input.name);
        addBand(table, input.prior);
        addBand(table, input.fitted);
        table.end();
    }
    return table.take();
}

std::string forecastCsv(const FitResult& fit) {
    CsvWriter table("time_h,depth_m,oxygen_p05,oxygen_p50,oxygen_p95,temperature_p50");
    for (const ForecastRow& row : fit.forecast) {
        table.number(row.time / kHour).number(row.depth);
        addBand(table, row.oxygen);
        table.number(row.temperature).end();
    }
    return table.take();
}

std::string residualsCsv(const FitResult& fit) {
    CsvWriter table(
        "time_h,depth_m,quantity,reading,prior_p05,prior_p50,prior_p95,fitted_p05,fitted_p50,fitted_p95");
    for (const FitResidual& row : fit.residuals) {
        table.number(row.time / kHour).number(row.depth);
        table.text(row.isTemperature ? "temperature_c" : "oxygen_mg_per_l").number(row.reading);
        addBand(table, row.prior);
        addBand(table, row.fitted);
        table.end();
    }
    return table.take();
}

std::vector<TextFile> fitFiles(const FitResult& fit) {
    return {
        {"fit.csv", fitCsv(fit)}, {"forecast.csv", forecastCsv(fit)}, {"residuals.csv", residualsCsv(fit)}};
}

}  // namespace engine
