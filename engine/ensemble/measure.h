// What to measure next, from one ensemble of one ramp.
//
// The share of an input is that of a natural cubic spline of its normal score, less what so many columns
// explain by chance (adjusted R squared); its error comes from a bootstrap over the members. Of 8,192 members
// shares agree with closed forms to 0.02 (tests/published/variance_share_test.cpp); of 1,000 their own
// sampling error is 0.005 to 0.02 (1 sigma). What a measurement would bring weights the same members by how
// likely a reading of that quality is for each. An input that can be measured has a meter
// (UncertainInput::meter); how it is measured, and what that costs, is its MeasuringWay.
#pragma once

#include "engine/base/files.h"
#include "engine/ensemble/ensemble_result.h"
#include "engine/ensemble/site_visit.h"
#include "engine/run/run.h"

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

namespace engine {

/// Fewer tell no shares apart; 1,000 know a share to 3 points of a hundred (1.645 sigma).
inline constexpr int kLeastMembersToMeasure = 100;
inline constexpr int kMembersToMeasure = 1000;

struct MeasureOptions {
    std::string ramp;  ///< Its name or "do-nothing"; empty: the chosen one, else the first, else do-nothing
    int members = kMembersToMeasure;  ///< kLeastMembersToMeasure to kMostMembers
    std::uint64_t seed = 1;
    int threads = 0;  ///< 0: as many as cores
    Resolution resolution;
};

/// What one input does to the worst low of a run.
struct MeasuredInput {
    std::string name, unit;
    double low = 0.0, high = 0.0;                ///< Its 5 and 95 % points
    double worstAtLow = 0.0, worstAtHigh = 0.0;  ///< Conditional mean of the worst low there [g/m^3]
    double share = 0.0;                          ///< Of the variance, 0 to 1
    double shareLow = 0.0, shareHigh = 0.0;      ///< 5 and 95 % points of the share, by the bootstrap
    const MeasuringWay* way = nullptr;           ///< Null where no measurement is usual or it was measured
    double left = 1.0;  ///< Of the worst low's spread once it is measured, 0 to 1; 1 without a way
};

struct MeasureResult {
    PondModel model;
    std::string ramp;
    int days = 14;
    int members = 0;
    std::uint64_t seed = 1;
    EnsembleEnd end = EnsembleEnd::NotRun;
    std::string message;                         ///< A sentence unless completed
    double low = 0.0, median = 0.0, high = 0.0;  ///< Of the members' worst lows, 5, 50 and 95 % [g/m^3]
    std::vector<MeasuredInput> inputs;           ///< The greatest share first
};

/// The name of the ramp that is meant; nothing if the pond has no ramp of that name.
[[nodiscard]] std::optional<std::string> rampToMeasure(const Pond& pond, const std::string& asked);

/// Which input moves the worst low of a ramp most, and what measuring it would bring. One ensemble of that
/// one ramp, as many days as `compare` would give it alone; the worst low is a member's lowest fish water
/// over all nights. The same numbers for any number of threads.
///
/// Members are even points of some hundred dimensions, of which single pairs are unlucky: an input that does
/// nothing may come to 0.025 with one seed of 1,000 members and to 0 with the next (seen on the headline
/// pond), which the bootstrap does not see. Great shares move by about 0.02 from seed to seed.
/// @pre rampToMeasure() finds the ramp
[[nodiscard]] MeasureResult measure(const Pond& pond, const MeasureOptions& options,
                                    const RunControl& control = {});

/// measure.csv, and measure_gain.csv, which has the shares' 5 and 95 % points and what measuring
/// brings.
[[nodiscard]] std::vector<TextFile> measureFiles(const MeasureResult& result);

}  // namespace engine
