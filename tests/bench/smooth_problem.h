#pragma once

#include <string>
#include <vector>

namespace bench {

/// What one setting of one solver costs and how far off it is.
struct WorkPoint {
    std::string setting;  ///< "75 s" or "1e-5"
    double time_ms = 0.0;
    double error = 0.0;    ///< [g/m^3]
    long evaluations = 0;  ///< Our steps, or calls of rates()
};

struct WorkCurve {
    std::string solver;
    std::vector<WorkPoint> points;
};

/// Our steps and CVODE (BDF of SUNDIALS) on the same smooth problem: prescribed mixing, a frozen plume, light
/// and air that stay, two hours of one running window of the column of tests/accuracy, all its states.
struct SmoothComparison {
    int layers = 0;
    WorkCurve ours;
    std::vector<WorkCurve> cvode;     ///< One a linear solver
    double referenceMiss = 0.0;       ///< Between the reference and our own steps of 1 s [g/m^3]
    std::vector<std::string> gaveUp;  ///< Settings with which CVODE did not arrive
};

/// @param repeats  Of which the median counts.
[[nodiscard]] SmoothComparison compareOnSmoothProblem(int layers, int repeats);

/// The fastest point that is off by no more than `wanted`; nullptr if there is none.
[[nodiscard]] const WorkPoint* fastestWithin(const std::vector<WorkCurve>& curves, double wanted);

}  // namespace bench
