#include "engine/output/results_io.h"

#include "engine/base/error.h"
#include "engine/base/units.h"
#include "engine/ensemble/chances.h"
#include "engine/pond/local_time.h"
#include "engine/ramps/weather.h"
#include "engine/run/shares.h"

#include <cmath>
#include <cstddef>
#include <string_view>

namespace engine {
namespace {

constexpr std::string_view kSummaryHeader =
    "ramp,days_to_continuous,worst_mg_per_l,worst_time_h,worst_day,hours_below_stress,hours_below_lethal,"
    "end_state_mg_per_l,largest_dose_percent,largest_dose_day,energy_kwh,chance_below_stress,"
    "chance_below_lethal,chance_added";
constexpr std::string_view kDailyHeader =
    "ramp,day,date,run_minutes,dose_percent,lowest_mg_per_l,lowest_time_h,dawn_surface_mg_per_l,"
    "dawn_bottom_mg_per_l,dawn_top_minus_bottom_c,debt_left_percent";
constexpr std::string_view kHourlyHeader =
    "ramp,time_h,surface_mg_per_l,fish_water_mg_per_l,bottom_mg_per_l,mean_mg_per_l,surface_c,bottom_c,"
    "running,fish_water_p05,fish_water_p25,fish_water_p50,fish_water_p75,fish_water_p95";
constexpr std::string_view kLayersHeader = "ramp,time_h,depth_m,temperature_c,oxygen_mg_per_l,debt_mg_per_l";
constexpr std::string_view kGasesHeader =
    "ramp,time_h,unionised_ammonia_mg_per_l,hydrogen_sulfide_mg_per_l,ph";
constexpr std::string_view kBudgetHeader =
    "ramp,day,photosynthesis_kg,respiration_kg,fish_kg,sediment_kg,debt_kg,surface_kg,bubbles_kg,"
    "surface_aerator_kg,inflow_kg,stored_change_kg,closing_error_kg,bubbling_out_kg";
constexpr std::string_view kOrganicHeader =
    "ramp,day,made_kg,loaded_kg,respired_kg,settled_kg,lost_kg,burnt_kg,stored_change_kg,closing_error_kg";

bool isDoNothing(const Comparison& comparison, const RampRun& run) {
    return &run == comparison.runs.data();
}

/// Dose of a day's lift [% of the bottom water]; do-nothing's is 0, a mixed pond has none.
std::optional<double> tableDose(const Comparison& comparison, const RampRun& run, double liftedVolume) {
    return isDoNothing(comparison, run) ? 0.0 : dosePercent(comparison.model.bottom, liftedVolume);
}

std::optional<double> energy(const Comparison& comparison, const RampRun& run) {
    if (isDoNothing(comparison, run)) {
        return 0.0;
    }
    const auto& aerator = comparison.model.pond.aerator;
    return aerator && aerator->power_kW ? std::optional(run.energy_kWh) : std::nullopt;
}

void summaryRow(CsvWriter& table, const Comparison& comparison, const RampRun& run) {
    const DayRow& worst = run.worst();
    table.number(run.daysToContinuous).number(worst.lowest).number(worst.lowestTime / kHour);
    table.number(worst.day).number(run.hoursBelowStress).number(run.hoursBelowLethal).number(run.endState);

    const DayRow* largest = isDoNothing(comparison, run) ? nullptr : run.largestDose();
    table.number(tableDose(comparison, run, largest != nullptr ? largest->liftedVolume : 0.0));
    const bool hasDose = largest != nullptr && comparison.model.bottom.exists();
    table.number(hasDose ? std::optional(largest->day) : std::nullopt);
    table.number(energy(comparison, run));

    const Chances chances = chancesOf(comparison, run);
    table.number(chances.belowStress).number(chances.belowLethal).number(chances.added);
}

}  // namespace

std::string summaryCsv(const Comparison& comparison) {
    CsvWriter table(kSummaryHeader);
    for (const RampRun& run : comparison.runs) {
        table.text(run.name);
        if (run.end == RunEnd::Completed) {
            summaryRow(table, comparison, run);
        } else {
            for (int column = 0; column < 13; ++column) {
                table.nothing();
            }
        }
        table.end();
    }
    return table.take();
}

std::string dailyCsv(const Comparison& comparison) {
    CsvWriter table(kDailyHeader);
    const bool hasDebt = comparison.model.debt_kg > 0.0;  // without debt there is no share of it left
    for (const RampRun& run : comparison.runs) {
        for (const DayRow& day : run.days) {
            table.text(run.name).number(day.day);
            table.text(formatDate(dateOfDay(comparison.model.pond, day.day))).number(day.runMinutes);
            table.number(tableDose(comparison, run, day.liftedVolume));
            table.number(day.lowest);
            table.number(std::isfinite(day.lowest) ? day.lowestTime / kHour : day.lowest);
            table.number(day.dawnSurface).number(day.dawnBottom).number(day.dawnTopMinusBottom);
            table.number(hasDebt ? std::optional(100.0 * day.debtLeft) : std::nullopt).end();
        }
    }
    return table.take();
}

std::string hourlyCsv(const Comparison& comparison) {
    CsvWriter table(kHourlyHeader);
    for (std::size_t i = 0; i < comparison.runs.size(); ++i) {
        const RampRun& run = comparison.runs[i];
        const RampEnsemble* members = membersOf(comparison, i);
        ensure(members == nullptr || members->fishWater.size() == run.hours.size(),
               "members are written down at the hours of the central run");
        for (std::size_t row = 0; row < run.hours.size(); ++row) {
            const HourRow& hour = run.hours[row];
            table.text(run.name).number(hour.time / kHour).number(hour.surface).number(hour.fishWater);
            table.number(hour.bottom).number(hour.mean).number(hour.surfaceTemperature);
            table.number(hour.bottomTemperature).number(hour.running);
            for (std::size_t p = 0; p < kPercentiles.size(); ++p) {
                table.number(members != nullptr ? members->fishWater[row][p] : hour.fishWater);
            }
            table.end();
        }
    }
    return table.take();
}

std::string layersCsv(const Comparison& comparison) {
    CsvWriter table(kLayersHeader);
    const std::vector<double>& depth = comparison.model.grid.middle;
    for (const RampRun& run : comparison.runs) {
        ensure(run.layers.size() <= run.hours.size(), "each row of layers has its hour");
        for (std::size_t hour = 0; hour < run.layers.size(); ++hour) {
            ensure(run.layers[hour].size() == depth.size(), "a row of layers has as many as the grid");
            for (std::size_t i = 0; i < depth.size(); ++i) {
                const LayerRow& layer = run.layers[hour][i];
                table.text(run.name).number(run.hours[hour].time / kHour).number(depth[i]);
                table.number(layer.temperature).number(layer.oxygen).number(layer.debt).end();
            }
        }
    }
    return table.take();
}

std::string budgetCsv(const Comparison& comparison) {
    CsvWriter table(kBudgetHeader);
    for (const RampRun& run : comparison.runs) {
        for (const BudgetRow& day : run.budget) {
            table.text(run.name).number(day.day);
            for (int term = 0; term < kBubblingOut; ++term) {
                table.number(day.terms[static_cast<std::size_t>(term)] / kGramPerKilogram);
            }
            table.number(day.storedChange / kGramPerKilogram);
            table.number(day.closingError() / kGramPerKilogram);
            table.number(day.terms[kBubblingOut] / kGramPerKilogram).end();
        }
    }
    return table.take();
}

std::string organicCsv(const Comparison& comparison) {
    CsvWriter table(kOrganicHeader);
    for (const RampRun& run : comparison.runs) {
        for (const BudgetRow& day : run.budget) {
            table.text(run.name).number(day.day);
            for (const double term : day.organic) {
                table.number(term / kGramPerKilogram);
            }
            table.number(day.organicChange / kGramPerKilogram);
            table.number(day.organicClosingError() / kGramPerKilogram).end();
        }
    }
    return table.take();
}

std::string gasesCsv(const Comparison& comparison) {
    CsvWriter table(kGasesHeader);
    for (const RampRun& run : comparison.runs) {
        for (const HourRow& hour : run.hours) {
            table.text(run.name).number(hour.time / kHour);
            table.number(hour.unionisedAmmonia).number(hour.hydrogenSulfide).number(hour.ph).end();
        }
    }
    return table.take();
}

std::vector<TextFile> comparisonFiles(const Comparison& comparison) {
    return {{"summary.csv", summaryCsv(comparison)}, {"daily.csv", dailyCsv(comparison)},
            {"hourly.csv", hourlyCsv(comparison)},   {"layers.csv", layersCsv(comparison)},
            {"budget.csv", budgetCsv(comparison)},   {"gases.csv", gasesCsv(comparison)},
            {"organic.csv", organicCsv(comparison)}};
}

}  // namespace engine
