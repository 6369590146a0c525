#include "engine/run/shares.h"

#include "engine/base/units.h"

#include <algorithm>

namespace engine {

std::optional<double> dosePercent(const BottomWater& bottom, double liftedVolume) {
    return bottom.exists() ? std::optional(100.0 * liftedVolume / bottom.volume) : std::nullopt;
}

std::optional<double> largestDosePercent(const PondModel& model, const RampRun& run) {
    const DayRow* largest = run.largestDose();
    return largest == nullptr ? std::nullopt : dosePercent(model.bottom, largest->liftedVolume);
}

double debtLeftPercent(const RampRun& run) {
    return 100.0 * run.days.back().debtLeft;
}

std::optional<double> debtToReserve(const PondModel& model) {
    return model.oxygenReserve_kg > 0.0 ? std::optional(model.debt_kg / model.oxygenReserve_kg)
                                        : std::nullopt;
}

bool owesMoreThanReserve(const PondModel& model) {
    return model.bottom.exists() && model.debt_kg > model.oxygenReserve_kg;
}

std::optional<double> bottomPercent(const PondModel& model) {
    return model.bottom.exists() ? std::optional(100.0 * model.bottom.volume / model.basin.volume())
                                 : std::nullopt;
}

double percentBelow(const Basin& basin, double depth) {
    return 100.0 * basin.volumeBelow(depth) / basin.volume();
}

double turnoversPerDay(const PondModel& model, const DayRow& row) {
    return row.liftedVolume / (row.runMinutes / 60.0) * 24.0 / model.basin.volume();
}

double waterPressure(double depth) {
    constexpr double kFreshWater = 1000.0;  // [kg/m^3]
    return kFreshWater * kGravity * depth;
}

ToxicPeaks toxicPeaks(const RampRun& run) {
    ToxicPeaks peaks;
    for (const HourRow& hour : run.hours) {
        peaks.ammonia_ugPerL =
            std::max(peaks.ammonia_ugPerL, hour.unionisedAmmonia * kMicrogramsPerMilligram);
        peaks.sulfide_ugPerL = std::max(peaks.sulfide_ugPerL, hour.hydrogenSulfide * kMicrogramsPerMilligram);
    }
    return peaks;
}

}  // namespace engine
