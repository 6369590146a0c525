#pragma once

#include <optional>
#include <span>

namespace engine {

// Ambient water quality criteria for dissolved oxygen, EPA 440/5-86-003 (1986), Table 1, as repeated in
// EPA's fact sheet 841F21007B (2021). Water column values; the ones for gravel are left out.

enum class WaterKind { Warm, Cold };
enum class LifeStage { Early, Other };  ///< Early: eggs, larvae and the youngest fish are there.

/// Limits [g/m^3]; empty where the table has none for this water and stage.
struct OxygenCriteria {
    std::optional<double> mean30Days;
    std::optional<double> mean7Days;
    std::optional<double> meanMinimum7Days;  ///< Mean of the daily minima of seven days in a row.
    std::optional<double> minimum;           ///< To be kept at all times.
};

[[nodiscard]] OxygenCriteria epa1986(WaterKind water, LifeStage stage);

/// The lowest value of each kind in a series [g/m^3]; empty where the series is too short for it.
struct OxygenLows {
    std::optional<double> mean30Days;
    std::optional<double> mean7Days;
    std::optional<double> meanMinimum7Days;
    std::optional<double> minimum;
};

/// Days are blocks of 24 values from the start of the series, windows move by one day, and hours after
/// the last whole day count for the minimum alone.
/// @param hourly  Oxygen [g/m^3], one value an hour without a gap.
/// @throws ArgumentError if a value is not finite or outside 0 to 1000.
[[nodiscard]] OxygenLows oxygenLows(std::span<const double> hourly);

/// Which limits a series breaks. A limit that the table lacks, or that the series is too short to judge,
/// is not broken; OxygenLows tells the two apart.
struct CriteriaBroken {
    bool mean30Days = false;
    bool mean7Days = false;
    bool meanMinimum7Days = false;
    bool minimum = false;

    bool operator==(const CriteriaBroken&) const = default;
};

/// A value equal to its limit keeps it.
[[nodiscard]] CriteriaBroken brokenCriteria(const OxygenLows& lows, const OxygenCriteria& criteria);

}  // namespace engine
