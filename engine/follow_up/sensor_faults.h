#pragma once

#include "engine/pond/pond.h"

#include <string_view>
#include <vector>

namespace engine {

/// What is wrong with a reading's oxygen, as far as the readings about it show.
enum class SensorFault {
    None,
    Stuck,       ///< The same number for hours while the water goes on
    Drifting,    ///< Walks away from readings of another meter in the same water
    StepDrop,    ///< Falls by more than 2 mg/L in one step
    OutOfWater,  ///< Temperature jumps and oxygen goes to saturation: the sensor hangs in the air
    Disagrees    ///< Another meter, or a row of the same time, says something else there
};

/// A word for a list: "stuck", "drifting", "single-step drop", "out of water", "two values".
[[nodiscard]] std::string_view faultWord(SensorFault fault);

/// Looks through readings for faults of sensors. Flagged readings stay in the log; a fit leaves them out and
/// says so.
///
/// - Stuck: six or more readings in a row over three hours or more with the same number above 0.1 mg/L (water
///   without oxygen stays so).
/// - Single-step drop: more than 2 mg/L lower than the reading before, at most 1 h later; flagged until it is
///   back within 1 mg/L of what it fell from or, if it does not come back within 6 h, only the fall itself,
///   since a pond that turned over stays low.
/// - Out of water: temperature steps by more than 3 degC within an hour and oxygen is within 7 % of
/// saturation;
///   until it steps back.
/// - Drifting: against another meter within 0.25 m and 30 min, on three or more occasions over two days or
/// more;
///   the difference goes one way by more than 0.5 mg/L with a correlation above 0.9. Flagged from the first
///   pair that is more than 0.5 mg/L off the first pair's difference. A drift that no other meter sees is not
///   found.
/// - Disagrees: two values for one depth within 0.05 m and 2 min more than 0.6 mg/L (three times what a meter
/// in
///   good order is off) apart, unless one of them is flagged already.
///
/// The limits are common practice and judgement.
/// @param readings  In the order of time.
/// @param pressure  Of the air at the pond [Pa].
/// @return  One fault a reading.
[[nodiscard]] std::vector<SensorFault> sensorFaults(const std::vector<Reading>& readings, double pressure);

}  // namespace engine
