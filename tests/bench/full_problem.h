#pragma once

#include <string>
#include <vector>

namespace bench {

/// Fourteen days of the headline pond under continuous air by one solver at one setting.
struct FullRun {
    std::string setting;
    double time_ms = 0.0;
    double reached_d = 0.0;    ///< How far it got; less than asked for if it gave up or ran out of time
    std::string why;           ///< It did not get to the end
    std::vector<double> lows;  ///< Lowest fish water of each night by its whole hours [g/m^3]
};

struct FullComparison {
    int layers = 0, days = 0;
    std::vector<FullRun> ours, cvode;
};

/// @param budget_s  Processor time after which a setting of CVODE is stopped [s].
[[nodiscard]] FullComparison compareOnFullProblem(int layers, double budget_s);

/// The greatest and the mean difference that any two of the runs that got to the end have on a night.
struct Scatter {
    double most = 0.0, mean = 0.0;
    int runs = 0;
};
[[nodiscard]] Scatter scatterOf(const std::vector<FullRun>& runs, int days);

}  // namespace bench
