#include "engine/run/gas_limits.h"

#include "engine/run/constants_run.h"
#include "engine/water/toxic.h"

#include <algorithm>
#include <cmath>

namespace engine {
namespace {

constexpr double kSulfurOfSulfide = kSulfurMass / (kSulfurMass + 2.0 * kHydrogenMass);
constexpr int kMeanHours = 96;

/// Mean of the hours of a run up to one, at most four days of them [g/m^3].
double meanUntil(const std::vector<HourRow>& hours, std::size_t at) {
    const std::size_t first = at + 1 > kMeanHours ? at + 1 - kMeanHours : 0;
    double sum = 0.0;
    for (std::size_t i = first; i <= at; ++i) {
        sum += hours[i].hydrogenSulfide;
    }
    return sum / kMeanHours;  // before the run there was none
}

/// The two branches of the criterion about pH 7.204.
double branches(double ph, double acid, double alkaline) {
    constexpr double kMiddle = 7.204;
    return acid / (1.0 + std::pow(10.0, kMiddle - ph)) + alkaline / (1.0 + std::pow(10.0, ph - kMiddle));
}

void note(GasPeak& gas, double value, double limit, double time) {
    gas.hoursAbove += value > limit ? 1.0 : 0.0;
    if (gas.limit <= 0.0 || value * gas.limit > gas.peak * limit) {
        gas.peak = value;
        gas.limit = limit;
        gas.time = time;
    }
}

}  // namespace

double acuteTotalAmmonia(double temperature, double ph, bool salmonids) {
    const double byTemperature = 23.12 * std::pow(10.0, 0.036 * (20.0 - temperature));
    const double mussels = 0.7249 * branches(ph, 0.0114, 1.6181);
    if (salmonids) {
        return std::min(branches(ph, 0.275, 39.0), mussels * byTemperature);
    }
    return mussels * std::min(51.93, byTemperature);
}

GasLimits gasLimits(SpeciesGroup group, double temperature, double ph) {
    const double total = acuteTotalAmmonia(temperature, ph, group == SpeciesGroup::Trout);
    return {total * unionisedAmmoniaShare(temperature, ph), kSulfurOfSulfide * kSulfideHour.value,
            kSulfurOfSulfide * kSulfideCriterion.value};
}

GasPeaks gasPeaks(const PondModel& model, const RampRun& run) {
    GasPeaks out;
    const Parameters<double>& parameters = model.parameters;
    for (std::size_t i = 0; i < run.hours.size(); ++i) {
        const HourRow& hour = run.hours[i];
        const GasLimits limits = gasLimits(parameters.thresholds.group, hour.warmth, hour.ph);
        note(out.ammonia, hour.unionisedAmmonia, limits.ammonia, hour.time);
        const double mean = meanUntil(run.hours, i);
        const bool isMean = mean * limits.sulfide > hour.hydrogenSulfide * limits.sulfideMean;
        note(out.sulfide, isMean ? mean : hour.hydrogenSulfide, isMean ? limits.sulfideMean : limits.sulfide,
             hour.time);
    }
    return out;
}

bool passesGasLimits(const PondModel& model, const RampRun& run) {
    const GasPeaks peaks = gasPeaks(model, run);
    return peaks.ammonia.isPassed() || peaks.sulfide.isPassed();
}

}  // namespace engine
