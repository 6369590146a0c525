#pragma once

#include "engine/ensemble/compare.h"
#include "engine/pond/pond_io.h"
#include "engine/run/run.h"
#include "tests/pond_texts.h"

#include <gtest/gtest.h>

#include <string>
#include <string_view>

namespace engine::test {

/// A completed run of two days with made-up numbers; `low` is the lowest of night 2.
inline RampRun madeUpRun(const std::string& name, double low) {
    RampRun run;
    run.end = RunEnd::Completed;
    run.name = name;
    run.hours.push_back({-6.5 * 3600.0, 8.5, 8.25, 0.0, 5.0, 28.5, 20.0, 0.0});
    run.hours.push_back({36000.0, 8.0, 7.75, 0.125, 5.5, 29.0, 20.5, 0.5});
    const std::size_t layers = 12;
    run.layers.resize(run.hours.size(), std::vector<LayerRow>(layers, {21.5, 6.25, 14.0}));
    run.days.push_back({1, 30.0, 400.0, 5.5, 104400.0, 5.75, 0.5, 7.5, 0.75});
    run.days.push_back({2, 60.0, 800.0, low, 193180.0, low + 0.5, 1.5, 3.25, 1.25});
    for (int day = 0; day <= 3; ++day) {
        BudgetRow row;
        row.day = day;
        row.terms = {9000.0, -5000.0, -1000.0, -1500.0, -500.0, 250.0, 125.0, -0.0, 0.0};
        row.storedChange = 1375.0;
        run.budget.push_back(row);
    }
    run.energy_kWh = 0.6;
    return run;
}

/// A comparison whose numbers are made up, about a pond file's text; do-nothing and its ramps.
inline Comparison madeUpComparison(std::string_view text = kPlainPond) {
    const PondReading reading = readPondText(text, "made-up.toml");
    EXPECT_TRUE(reading.pond) << (reading.diagnostics.empty() ? "" : format(reading.diagnostics.front()));
    Comparison comparison;
    Resolution resolution;
    resolution.layers = 12;
    comparison.model = prepareUnbalanced(reading.pond.value(), resolution);
    comparison.days = 2;
    comparison.runs.push_back(madeUpRun("do-nothing", 5.25));
    comparison.runs.front().energy_kWh = 0.0;
    for (DayRow& day : comparison.runs.front().days) {
        day.runMinutes = day.liftedVolume = 0.0;
    }
    for (const Ramp& ramp : comparison.model.pond.ramps) {
        comparison.runs.push_back(madeUpRun(ramp.name, 3.25));
        comparison.runs.back().hoursBelowStress = 4.5;
    }
    return comparison;
}

/// The same below its lines, left alone and with a ramp.
inline Comparison inTrouble() {
    Comparison comparison = madeUpComparison();
    RampRun& nothing = comparison.runs[0];
    nothing.days[1].lowest = 1.26;
    nothing.hoursBelowStress = 12.26;
    nothing.hoursBelowLethal = 0.02;
    nothing.endState = 4.0;
    nothing.endDrift = -0.2;
    RampRun& ramp = comparison.runs[1];
    ramp.days[1].lowest = 0.75;
    ramp.hoursBelowLethal = 3.0;
    ramp.endState = 4.75;
    ramp.endDrift = 0.15;
    ramp.daysToContinuous = 1;
    ramp.cutMinutes = 12.0;
    return comparison;
}

/// The same with members whose numbers are made up: percentiles 1 to 5 g/m^3 above the number of the hour or
/// night.
inline Comparison withMembers(Comparison comparison) {
    EnsembleResult& ensemble = comparison.ensemble.emplace();
    ensemble.end = EnsembleEnd::Completed;
    ensemble.asked = ensemble.members = 200;
    ensemble.effective = 200.0;
    ensemble.seed = 7;
    for (const RampRun& run : comparison.runs) {
        RampEnsemble& ramp = ensemble.ramps.emplace_back();
        ramp.name = run.name;
        for (std::size_t hour = 0; hour < run.hours.size(); ++hour) {
            const auto base = static_cast<double>(hour);
            ramp.hours.push_back(run.hours[hour].time);
            ramp.fishWater.push_back({base + 1.0, base + 2.0, base + 3.0, base + 4.0, base + 5.0});
        }
        const bool isNothing = run.name == "do-nothing";
        ramp.chanceBelowStress = isNothing ? 0.3 : 0.46;
        ramp.chanceBelowLethal = isNothing ? 0.0 : 0.015;
        ramp.plainBelowLethal = ramp.chanceBelowLethal;
    }
    return comparison;
}

}  // namespace engine::test
