#pragma once

#include "tests/bench/smooth_problem.h"

#include <string>
#include <vector>

namespace bench {

/// One pair of logarithmic axes: processor time [ms] to the right, error [mg/L] upwards.
struct WorkPanel {
    std::string title, below;  ///< Below: what the error is of
    std::vector<WorkCurve> curves;
    double wanted = 0.05;  ///< A line across [mg/L]
};

/// The work-precision diagram as SVG 1.1: light ground, colours of Okabe and Ito's set for the colour-blind,
/// and each curve with a mark of its own, so that it reads in grey.
[[nodiscard]] std::string workPrecisionSvg(const std::vector<WorkPanel>& panels);

}  // namespace bench
