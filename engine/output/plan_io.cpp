#include "engine/output/plan_io.h"

#include "engine/base/units.h"
#include "engine/output/results_io.h"
#include "engine/output/run_list.h"
#include "engine/pond/pond_io.h"

#include <algorithm>

namespace engine {
namespace {

/// Runs by the day on which they start. A run that goes on for days is cut at the starts of its days.
std::vector<RunRow> rowsOf(const Plan& plan) {
    const Pond& pond = plan.comparison.model.pond;
    std::vector<RunRow> rows;
    for (int day = 1; day <= plan.comparison.days; ++day) {
        Schedule runs;
        double cut = 0.0;
        const std::size_t index = std::min(static_cast<std::size_t>(day), plan.days.size()) - 1;
        addDayRuns(*plan.ramp, *pond.aerator, day, plan.days[index].minutes, runs, cut);
        RunRow row = dayOf(plan.comparison, plan.comparison.runs.size() - 1, day);
        const std::optional<double> dose_percent = row.dose_percent;
        if (runs.empty()) {
            rows.push_back(row);
        }
        for (const RunBlock& run : runs) {
            row.start = run.start;
            row.stop = run.end;
            row.minutes = (run.end - run.start) / kMinute;
            row.open = run.open;
            row.depth = run.depth;
            // The dose of the run: the calendar day's, times the run's share of the day's minutes.
            const double minutes =
                plan.comparison.runs.back().days[static_cast<std::size_t>(day - 1)].runMinutes;
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
    return runListCsv(plan.ramp ? rowsOf(plan) : std::vector<RunRow>());
}

std::vector<TextFile> planFiles(const Plan& plan, const Pond& pond, const std::filesystem::path& path,
                                const std::filesystem::path& folder) {
    Pond with = pond;
    if (plan.ramp) {
        with.ramps.push_back(*plan.ramp);
    }
    for (std::string* named : {&with.weather.file, &with.readingsFile.name}) {
        *named = seenFrom(*named, path, folder);
    }
    return {{"schedule.csv", scheduleCsv(plan)},
            {"summary.csv", summaryCsv(plan.comparison)},
            {"pond.toml", writePond(with)}};
}

}  // namespace engine
