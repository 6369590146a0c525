#include "engine/output/run_list.h"

#include "engine/base/csv_table.h"
#include "engine/base/error.h"
#include "engine/base/text.h"
#include "engine/base/units.h"
#include "engine/ensemble/chances.h"
#include "engine/output/results_io.h"
#include "engine/pond/local_time.h"
#include "engine/ramps/weather.h"
#include "engine/run/shares.h"

#include <algorithm>
#include <cmath>

namespace engine {
namespace {

ClockTime clockOf(double seconds) {
    const auto minutes = static_cast<long>(std::lround(seconds / kMinute));
    return {static_cast<int>(((minutes % kMinutesPerDay) + kMinutesPerDay) % kMinutesPerDay)};
}

}  // namespace

RunRow dayOf(const Comparison& comparison, std::size_t index, int day) {
    const RampRun& run = comparison.runs[index];
    RunRow row;
    row.day = day;
    row.date = dateOfDay(comparison.model.pond, day);
    const DayRow& own = run.days[static_cast<std::size_t>(day - 1)];
    row.dose_percent = dosePercent(comparison.model.bottom, own.liftedVolume);
    row.lowest = row.lowestP05 = row.lowestP50 = own.lowest;
    if (const RampEnsemble* members = membersOf(comparison, index)) {
        const Percentiles& lows = members->nightLows[static_cast<std::size_t>(day - 1)];
        row.lowestP05 = lows[0];
        row.lowestP50 = lows[2];
    }
    return row;
}

std::vector<RunRow> runList(const Comparison& comparison, std::size_t index) {
    std::vector<RunRow> rows;
    if (index == 0) {
        return rows;
    }
    const RampRun& run = comparison.runs[index];
    ensure(run.end == RunEnd::Completed, "a run list is made of a completed run");
    const Schedule blocks = joined(run.schedule);
    const int last = std::min(run.daysToContinuous.value_or(comparison.days), comparison.days);
    for (int day = 1; day <= last; ++day) {
        const std::size_t before = rows.size();
        for (const RunBlock& block : blocks) {
            if (block.day != day) {
                continue;
            }
            RunRow row = dayOf(comparison, index, day);
            row.start = block.start;
            row.minutes = (block.end - block.start) / kMinute;
            row.open = block.open;
            row.depth = block.depth;
            const bool staysOn = &block == &blocks.back() && run.daysToContinuous == day;
            row.stop = staysOn ? std::nullopt : std::optional(block.end);
            rows.push_back(row);
        }
        if (rows.size() == before) {
            rows.push_back(dayOf(comparison, index, day));
        }
    }
    return rows;
}

std::string runListCsv(const std::vector<RunRow>& rows, const SurfaceAir& surfaceAir) {
    CsvWriter table(kScheduleHeader);
    for (const RunRow& row : rows) {
        table.number(row.day).text(formatDate(row.date));
        if (row.start) {
            table.text(formatClock(clockOf(*row.start)))
                .number(row.minutes)
                .number(row.open)
                .number(row.depth);
        } else {
            table.nothing().number(0.0).nothing().nothing();
        }
        table.number(row.dose_percent).number(row.lowestP05).number(row.lowestP50);
        if (surfaceAir.transfer > 0.0) {
            table.text(formatClock(clockOf(surfaceAir.from)))
                .text(formatClock(clockOf(surfaceAir.until)))
                .end();
        } else {
            table.nothing().nothing().end();
        }
    }
    return table.take();
}

}  // namespace engine
