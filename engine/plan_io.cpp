#include "engine/plan_io.h"

#include "engine/csv_table.h"
#include "engine/local_time.h"
#include "engine/pond_io.h"
#include "engine/results_io.h"
#include "engine/run_list.h"
#include "engine/text.h"
#include "engine/units.h"
#include "engine/weather.h"

#include <cmath>

namespace engine {
namespace {

constexpr std::size_t kP05 = 0, kP50 = 2;  // in Percentiles

/// One run of a day, or a day without any.
struct Row {
    int day = 0;
    ClockTime start;
    double minutes = 0.0;
    int diffusers = 0;
    double depth = 0.0;
};

/// Runs by the day on which they start. A run that goes on for days is cut at the starts of its days.
std::vector<Row> rowsOf(const Plan& plan) {
    const Pond& pond = plan.comparison.model.pond;
    std::vector<Row> rows;
    for (int day = 1; day <= plan.comparison.days; ++day) {
        Schedule runs;
        double cut = 0.0;
        const std::size_t index = std::min(static_cast<std::size_t>(day), plan.days.size()) - 1;
        addDayRuns(*plan.ramp, *pond.aerator, day, plan.days[index].minutes, runs, cut);
        if (runs.empty()) {
            rows.push_back({day, *plan.ramp->startTime, 0.0, 0, plan.days[index].depth});
        }
        for (const RunBlock& run : runs) {
            const double clock = run.start - std::floor(run.start / kDay) * kDay;
            rows.push_back({day, ClockTime{static_cast<int>(std::lround(clock / kMinute))},
                            (run.end - run.start) / kMinute, run.open, run.depth});
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
    CsvWriter table(kScheduleHeader);
    if (!plan.ramp) {
        return table.take();
    }
    const Comparison& fresh = plan.comparison;
    const RampRun& run = fresh.runs.back();
    const RampEnsemble* members = membersOf(fresh, fresh.runs.size() - 1);
    for (const Row& row : rowsOf(plan)) {
        const DayRow& day = run.days[static_cast<std::size_t>(row.day - 1)];
        table.number(row.day).text(formatDate(dateOfDay(fresh.model.pond, row.day)));
        table.text(formatClock(row.start)).number(row.minutes).number(row.diffusers).number(row.depth);
        // A calendar day's dose, by the share of its minutes that this run is.
        const double share = day.runMinutes > 0.0 ? std::min(row.minutes / day.runMinutes, 1.0) : 0.0;
        table.number(fresh.model.bottom.exists()
                         ? std::optional(share * 100.0 * day.lifted / fresh.model.bottom.volume)
                         : std::nullopt);
        const auto night = static_cast<std::size_t>(row.day - 1);
        table.number(members != nullptr ? members->nightLows[night][kP05] : day.lowest);
        table.number(members != nullptr ? members->nightLows[night][kP50] : day.lowest).end();
    }
    return table.take();
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
