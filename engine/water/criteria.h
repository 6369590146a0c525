#pragma once

#include <optional>

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

}  // namespace engine
