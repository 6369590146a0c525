// Waters that were measured, made into ponds of the program, and how far its temperatures are off from them.
//
// The data are public (Environmental Data Initiative) and lie outside the project, in the folder named by
// DAWNLINE_TRIAL_DATA:
// - pond-c, ponds-2020: small experimental ponds in central Iowa, 2020 (Butts, Johnson, Albright, Wilkinson
//   and others; Johnson and others, Limnol. Oceanogr. Lett., doi 10.1002/lol2.70121);
// - reservoir: Falling Creek Reservoir, Virginia, 2016 to 2018 (Carey and others), with hourly weather of a
//   land-data assimilation.
#pragma once

#include "engine/pond/pond.h"
#include "engine/ramps/schedule.h"
#include "engine/run/run.h"

#include <filesystem>
#include <functional>
#include <map>
#include <string>
#include <string_view>
#include <vector>

namespace engine::test {

/// One row of a CSV file by the names of its columns.
using TrialRow = std::map<std::string, std::string, std::less<>>;
/// @throws std::runtime_error if the file cannot be read or a row is not as long as its header
[[nodiscard]] std::vector<TrialRow> trialRows(const std::filesystem::path& file);
/// @throws std::runtime_error if the cell is not a number
[[nodiscard]] double numberOf(const TrialRow& row, std::string_view column);
/// @throws std::runtime_error if the cell is not a local time
[[nodiscard]] LocalTime timeOf(const TrialRow& row, std::string_view column);

/// What a trial may hold otherwise than the program takes it by itself.
struct WaterOptions {
    MaybeQuantity windShelter;       ///< Absent: what the program takes where a pond file says nothing, 0.6
    double attenuationFactor = 1.0;  ///< On the attenuation that belongs to the Secchi depth
    Resolution resolution;
};

/// Errors of temperature at one depth, model minus measured [K].
struct DepthErrors {
    double depth = 0.0;  ///< [m]
    int count = 0;
    double absolute = 0.0, sum = 0.0;  ///< Summed over `count`

    void add(double error);
    [[nodiscard]] double meanAbsolute() const;
    [[nodiscard]] double bias() const;
};

/// No errors yet, at some depths [m].
template <class Depths>
[[nodiscard]] std::vector<DepthErrors> noErrorsAt(const Depths& depths) {
    std::vector<DepthErrors> errors;
    for (const double depth : depths) {
        errors.push_back({depth, 0, 0.0, 0.0});
    }
    return errors;
}

/// All of them together, each value with the same weight.
[[nodiscard]] DepthErrors together(const std::vector<DepthErrors>& errors);

/// Prints mean absolute errors and biases, all depths together first.
void print(const std::string& title, const std::vector<DepthErrors>& errors);

/// Volume mean between two depths [m] of what `value` gives at a depth.
[[nodiscard]] double meanBetween(const Basin& basin, double top, double bottom,
                                 const std::function<double(double depth)>& value);

/// A pond made ready, and its run with all layers.
struct WaterRun {
    PondModel model;
    RampRun run;

    /// Temperature of an hour row at a depth, from the middle of the first layer down [degC].
    [[nodiscard]] double temperature(std::size_t hour, double depth) const;
    /// The same when the run ends.
    [[nodiscard]] double lastTemperature(double depth) const {
        return temperature(run.hours.size() - 1, depth);
    }
};

/// Runs a pond from its profile to the noon after day `days`, without its oxygen balance, which no
/// temperature depends on. @throws std::runtime_error if the pond fails its checks or the run ends early.
[[nodiscard]] WaterRun runWater(const Pond& pond, int days, const Schedule& air,
                                const Resolution& resolution);

// Pond B: 400 m2, 2 m at most, clear; 24 to 31 May 2020.

enum class WindOf {
    Station,  ///< Regional, its height not stated: taken as 10 m
    Mast      ///< The pond's own at 4 m, not sheltered; its cups stall in light wind
};
[[nodiscard]] Pond pondB(const std::filesystem::path& data, WindOf wind, const WaterOptions& options);

/// Hourly errors at the depths of the chain, from the hour after the start to 23:00 on 31 May.
[[nodiscard]] std::vector<DepthErrors> errorsOfPondB(const std::filesystem::path& data, WindOf wind,
                                                     const WaterOptions& options);

}  // namespace engine::test
