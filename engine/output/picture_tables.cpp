#include "engine/output/picture_tables.h"

#include "engine/base/csv_table.h"
#include "engine/base/text.h"
#include "engine/base/units.h"
#include "engine/ensemble/night_band.h"
#include "engine/follow_up/readings_beside.h"
#include "engine/pond/local_time.h"
#include "engine/ramps/weather.h"
#include "engine/run/day_air.h"
#include "engine/run/depths.h"
#include "engine/run/nights.h"
#include "engine/run/shares.h"

#include <string_view>
#include <utility>

namespace engine {
namespace {

bool isCompleted(const RampRun& run) {
    return run.end == RunEnd::Completed;
}

void curveRows(CsvWriter& table, const Comparison& comparison, const RunNight& of) {
    const RampRun& run = comparison.runs[of.run];
    const RampEnsemble* members = membersOf(comparison, of.run);
    const NightCurve curve = nightCurve(run, of.night);
    for (std::size_t i = 0; i < curve.hour.size(); ++i) {
        const double time = noonOf(of.night) + curve.hour[i] * kHour;
        table.text(run.name).number(of.night).number(time / kHour).number(curve.oxygen[i]);
        // A low between two hours has no percentiles.
        const Percentiles* at = members == nullptr ? nullptr : percentilesAt(*members, time);
        table.number(at == nullptr ? std::nullopt : std::optional(at->front()));
        table.number(at == nullptr ? std::nullopt : std::optional(at->back())).end();
    }
}

void profileRows(CsvWriter& table, const Comparison& comparison, const RampRun& run, std::string_view when,
                 std::size_t hour) {
    const auto& layers = run.layers[hour];
    for (std::size_t layer = 0; layer < layers.size(); ++layer) {
        table.text(run.name).text(when).number(run.hours[hour].time / kHour);
        table.number(comparison.model.grid.middle[layer]);
        table.number(layers[layer].temperature).number(layers[layer].oxygen).end();
    }
}

}  // namespace

std::string nightCurvesCsv(const Comparison& comparison, const std::vector<RunNight>& curves,
                           std::size_t readingsOf, std::optional<int> readingsNight) {
    CsvWriter table("line,night,time_h,fish_water_mg_per_l,fish_water_p05,fish_water_p95");
    for (const RunNight& curve : curves) {
        curveRows(table, comparison, curve);
    }
    for (const ReadingBeside& reading : readingsBeside(comparison.model, comparison.runs[readingsOf])) {
        const int night = nightAt(reading.time);
        if (!readingsNight || night == *readingsNight) {
            table.text("reading at " + shortest(reading.depth) + " m").number(night);
            table.number(reading.time / kHour).number(reading.oxygen).nothing().nothing().end();
        }
    }
    return table.take();
}

std::string nightLowsCsv(const Comparison& comparison) {
    CsvWriter table("ramp,night,date,lowest_mg_per_l,lowest_time_h,do_nothing_mg_per_l");
    const RampRun& nothing = comparison.runs.front();
    for (const RampRun& run : comparison.runs) {
        for (std::size_t i = 0; isCompleted(run) && i < run.days.size(); ++i) {
            const DayRow& row = run.days[i];
            table.text(run.name).number(row.day);
            table.text(formatDate(dateOfDay(comparison.model.pond, row.day)));
            table.number(row.lowest).number(row.lowestTime / kHour);
            table.number(isCompleted(nothing) ? std::optional(nothing.days[i].lowest) : std::nullopt).end();
        }
    }
    return table.take();
}

std::string wholeRunCsv(const Comparison& comparison, const Backdrop& backdrop) {
    CsvWriter table(
        "ramp,time_h,fish_water_mg_per_l,running,air_c,wind_m_per_s,cloud_percent,shortwave_w_per_m2");
    for (const RampRun& run : comparison.runs) {
        for (const HourRow& hour : run.hours) {
            table.text(run.name).number(hour.time / kHour).number(hour.fishWater).number(hour.running);
            if (const AirHour* air = airAt(backdrop, hour.time)) {
                table.number(air->air).number(air->wind).number(100.0 * air->cloud);
                table.number(air->shortwave);
            } else {
                table.nothing().nothing().nothing().nothing();
            }
            table.end();
        }
    }
    return table.take();
}

std::string nightHoursCsv(const Comparison& comparison, std::size_t run) {
    CsvWriter table("ramp,night,time_h,fish_water_mg_per_l,running");
    const RampRun& all = comparison.runs[run];
    for (const HourRow& hour : all.hours) {
        table.text(all.name).number(nightAt(hour.time)).number(hour.time / kHour);
        table.number(hour.fishWater).number(hour.running).end();
    }
    return table.take();
}

std::string nightsBesideNothingCsv(const Comparison& comparison, std::size_t run) {
    CsvWriter table("ramp,night,time_h,fish_water_mg_per_l,do_nothing_mg_per_l");
    const RampRun &shown = comparison.runs[run], &nothing = comparison.runs[0];
    for (std::size_t i = 0; i < shown.hours.size(); ++i) {
        const HourRow& hour = shown.hours[i];
        const int night = nightAt(hour.time);
        if (night >= 1 && night <= comparison.days) {
            table.text(shown.name).number(night).number(hour.time / kHour).number(hour.fishWater);
            table.number(isCompleted(nothing) ? std::optional(nothing.hours[i].fishWater) : std::nullopt);
            table.end();
        }
    }
    return table.take();
}

std::string debtCsv(const Comparison& comparison) {
    CsvWriter table("ramp,day,debt_left_percent,dose_percent,run_minutes");
    for (const RampRun& run : comparison.runs) {
        for (const DayRow& row : run.days) {
            table.text(run.name).number(row.day).number(100.0 * row.debtLeft);
            table.number(dosePercent(comparison.model.bottom, row.liftedVolume)).number(row.runMinutes).end();
        }
    }
    return table.take();
}

std::string gasMicrogramsCsv(const Comparison& comparison) {
    CsvWriter table("ramp,time_h,unionised_ammonia_ug_per_l,hydrogen_sulfide_ug_per_l");
    for (const RampRun& run : comparison.runs) {
        for (const HourRow& hour : run.hours) {
            table.text(run.name).number(hour.time / kHour);
            table.number(kMicrogramsPerMilligram * hour.unionisedAmmonia);
            table.number(kMicrogramsPerMilligram * hour.hydrogenSulfide).end();
        }
    }
    return table.take();
}

std::string profilesCsv(const Comparison& comparison, const Backdrop& backdrop,
                        const std::vector<std::size_t>& runs, int night) {
    CsvWriter table("ramp,when,time_h,depth_m,temperature_c,oxygen_mg_per_l");
    for (const std::size_t i : runs) {
        const RampRun& run = comparison.runs[i];
        profileRows(table, comparison, run, "start", 0);
        profileRows(table, comparison, run, "dawn", dawnHour(backdrop, run, night));
    }
    return table.take();
}

std::string riskCsv(const Comparison& comparison, const std::vector<RampRisk>& risks) {
    CsvWriter table(
        "ramp,days_to_continuous,chance_below_stress,chance_below_lethal,chance_added,chance_added_lethal");
    for (const RampRisk& risk : risks) {
        table.text(comparison.runs[risk.run].name).number(risk.daysToContinuous);
        table.number(risk.chances.belowStress).number(risk.chances.belowLethal);
        table.number(risk.chances.added).number(risk.chances.addedLethal).end();
    }
    return table.take();
}

}  // namespace engine
