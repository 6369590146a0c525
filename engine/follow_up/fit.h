// The fit of the uncertain inputs to the readings of the log, and the forecast from it.
//
// fitPond() is an ensemble smoother with multiple data assimilation (assimilate(); nextShare() doses the
// updates by their misfit). A member's state are the scores of its inputs (so that bounds hold), the
// logarithms of its two balance factors, which are drawn by the balance with a spread of their own and then
// left to the readings, and the scores of past weather unless it was observed. Members run under the air of
// the log (airOfLog()), watched at the readings (MemberWatch, interpolated between hours). Readings of one
// hour and depth are put together.
//
// Meter and model are off independently: the meter from reading to reading, the model as a Gaussian process
// of three parts (engine/follow_up/model_error.h); together they are kModelOxygen or more, and how much each
// has is found by turns with the inputs, from what the fit leaves. The forecast carries each member's
// residuals forward by the same process. tests/property/fit_test.cpp holds the twin experiment and, with
// trial data, a measured pond.
#pragma once

#include "engine/ensemble/ensemble.h"
#include "engine/follow_up/known_pond.h"
#include "engine/follow_up/model_error.h"

#include <optional>
#include <string>
#include <vector>

namespace engine {

/// What a fit is asked for.
struct FitOptions {
    std::optional<LocalTime> until;  ///< Nothing later is used; the last reading if there is none
    int members = kMembersOfBand;
    std::uint64_t seed = 1;
    int threads = 0;  ///< 0: as many as cores
    int hours = 48;   ///< How far the forecast goes
    Resolution resolution;
};

/// 5, 50 and 95 % points over members.
struct Band {
    double p05 = 0.0, p50 = 0.0, p95 = 0.0;
};

/// One input before and after the readings.
struct FittedInput {
    std::string name, unit;
    Band prior, fitted;
};

/// A reading that went into the fit, and what the members have there.
struct FitResidual {
    double time = 0.0;   ///< [s after midnight of day 1]
    double depth = 0.0;  ///< [m]
    bool isTemperature = false;
    double reading = 0.0;  ///< [g/m^3] or [degC]; of several within an hour their mean
    Band prior, fitted;    ///< Of the members, errors of meter and model left out
};

struct ForecastRow {
    double time = 0.0, depth = 0.0;
    Band oxygen;               ///< [g/m^3]
    double temperature = 0.0;  ///< [degC]
};

/// How a quantity's readings lie about the fitted members: 1 is as expected of meter and model.
struct FitMisfit {
    std::size_t readings = 0;
    double mean = 0.0;   ///< Reading minus model, its median
    double ratio = 0.0;  ///< Root of the mean square over sigma, decorrelated; more where all lie to one side
};

/// The coming night's fish water [g/m^3].
struct NightAhead {
    int night = 0;
    Band low;
    double lowTime = 0.0;  ///< Of the median member [s]
    double chanceBelowStress = 0.0, chanceBelowLethal = 0.0;
};

enum class FitEnd { NotRun, NoReadings, Completed, Cancelled, NotFinite };

struct FitResult {
    FitEnd end = FitEnd::NotRun;
    std::string message;  ///< A sentence unless completed
    Pond known;           ///< The pond as it was known then
    PondModel model;
    LocalTime until{};
    double untilTime = 0.0;                ///< [s after midnight of day 1]
    int days = 0;                          ///< Of the members' runs
    EnsembleRamp air;                      ///< What the log and the ramp meant run
    std::size_t flagged = 0, outside = 0;  ///< Readings left out: of faulty sensors, before the run's start
    std::vector<FittedInput> inputs;
    std::vector<FitResidual> residuals;
    FitMisfit oxygen, temperature;
    std::vector<ForecastRow> forecast;
    std::vector<NightAhead> nights;
    std::vector<WeatheredMember> members;  ///< Fitted, with the weather to come
    ModelError oxygenError;                ///< As the forecast takes it
};

/// Fits the uncertain inputs of a pond, with its two balance factors, to the readings of its log by an
/// ensemble smoother with multiple data assimilation (engine/follow_up/assimilate.h), from the profile on.
/// The state of a member are the scores of its inputs, so that every bound of a spread holds, the logarithms
/// of its factors, and the scores of its weather up to `until`. Readings of one depth and hour are put
/// together; those of flagged sensors are left out and counted. The forecast goes on from each fitted member
/// and carries what is left between model and readings forward as the model's error has it
/// (engine/follow_up/model_error.h).
///
/// @param pond  Passed its checks.
[[nodiscard]] FitResult fitPond(const Pond& pond, const FitOptions& options, const RunControl& control = {});
/// The same of a pond that is prepared, up to its own time and with its own resolution.
/// @param air  What runs from day 1 to the end, instead of the log's air and the ramp meant.
[[nodiscard]] FitResult fitKnown(const KnownPond& known, const FitOptions& options,
                                 const std::optional<Schedule>& air = {}, const RunControl& control = {});

}  // namespace engine
