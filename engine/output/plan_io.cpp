#include "engine/output/plan_io.h"

#include "engine/base/units.h"
#include "engine/output/advice_io.h"
#include "engine/output/results_io.h"
#include "engine/output/run_list.h"
#include "engine/pond/pond_io.h"

#include <algorithm>

namespace engine {
namespace {

/// Runs by the day on which they start. A run that goes on for days is cut at the starts of its days.
/// @param run  Of a comparison, that went as the plan has it.
std::vector<RunRow> rowsOf(const Plan& plan, const Comparison& comparison, std::size_t run) {
    const Pond& pond = comparison.model.pond;
    std::vector<RunRow> rows;
    for (int day = 1; day <= comparison.days; ++day) {
        Schedule runs;
        double cut = 0.0;
        const std::size_t index = std::min(static_cast<std::size_t>(day), plan.days.size()) - 1;
        addDayRuns(*plan.ramp, *pond.aerator, day, plan.days[index].minutes, runs, cut);
        RunRow row = dayOf(comparison, run, day);
        const std::optional<double> dose_percent = row.dose_percent;
        if (runs.empty()) {
            rows.push_back(row);
        }
        for (const RunBlock& block : runs) {
            row.start = block.start;
            row.stop = block.end;
            row.minutes = (block.end - block.start) / kMinute;
            row.open = block.open;
            row.depth = block.depth;
            // The dose of the run: the calendar day's, times the run's share of the day's minutes.
            const double minutes = comparison.runs[run].days[static_cast<std::size_t>(day - 1)].runMinutes;
            const double share = minutes > 0.0 ? std::min(row.minutes / minutes, 1.0) : 0.0;
            row.dose_percent = dose_percent ? std::optional(share * *dose_percent) : std::nullopt;
            rows.push_back(row);
        }
    }
    return rows;
}

/// A file named relative to one pond file's folder, named relative to another folder.
std::string seenFrom(const std::string& named, const std::filesystem::path& path,
                     const std::filesystem::path& folder) {
    if (named.empty() || std::filesystem::path(named).is_absolute()) {
        return named;
    }
    const auto whole = [](const std::filesystem::path& one) {
        return std::filesystem::absolute(one).lexically_normal();
    };
    return whole(path.parent_path() / named).lexically_relative(whole(folder / "")).generic_string();
}

}  // namespace

std::string scheduleCsv(const Plan& plan) {
    const std::size_t last = plan.comparison.runs.size() - 1;
    return runListCsv(plan.ramp ? rowsOf(plan, plan.comparison, last) : std::vector<RunRow>());
}

std::vector<TextFile> planFiles(const Plan& plan, const Answered& answer, const Pond& pond,
                                const std::filesystem::path& path, const std::filesystem::path& folder,
                                const TypedNumbers& typed) {
    const Comparison& comparison = answer.comparison;
    const Advice& advice = answer.advice;
    Pond with = pond;
    const std::vector<Ramp>& ramps = comparison.model.pond.ramps;
    with.ramps.insert(with.ramps.end(), ramps.begin() + static_cast<std::ptrdiff_t>(pond.ramps.size()),
                      ramps.end());
    if (advice.run > pond.ramps.size()) {
        with.chosenRamp = advice.ramp;
    }
    for (std::string* named : {&with.weather.file, &with.climate.file, &with.readingsFile.name}) {
        *named = seenFrom(*named, path, folder);
    }
    std::vector<RunRow> rows;
    if (plan.ramp) {
        rows = rowsOf(plan, comparison, advice.run);
    } else if (advice.run > 0) {
        rows = runList(comparison, advice.run);
    }
    const std::string schedule = runListCsv(rows, advice.surfaceAir);
    std::vector<TextFile> files{{"schedule.csv", advice.mayStart() ? schedule : runListCsv({})},
                                {"summary.csv", summaryCsv(comparison)},
                                adviceFile(advice),
                                {"months.csv", calendarCsv(advice)},
                                {"pond.toml", writePond(with, typed)}};
    if (!advice.mayStart()) {
        files.push_back({"later.csv", schedule});
    }
    return files;
}

}  // namespace engine
