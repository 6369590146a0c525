#pragma once

#include "engine/follow_up/fit.h"

#include <Eigen/Core>

#include <vector>

namespace engine {

/// Members of a fit as columns of numbers: scores of the inputs, logarithms of the two factors, scores of the
/// weather that is past.
class FitState {
public:
    /// Draws the prior and balances it. Fewer members than asked for if a stop came.
    FitState(const PondModel& model, const FitOptions& options, double until, int days, int threads,
             const RunControl& control);

    Eigen::MatrixXd states;  ///< State x members

    [[nodiscard]] std::vector<WeatheredMember> members() const;
    /// Values of an input over the members; past the inputs come the two factors.
    [[nodiscard]] std::vector<float> values(std::size_t input) const;
    [[nodiscard]] std::size_t inputs() const { return m_inputs.size() + 2; }
    [[nodiscard]] std::string nameOf(std::size_t input) const;
    [[nodiscard]] std::string unitOf(std::size_t input) const;

private:
    const PondModel& m_model;
    MemberSource m_source;
    std::vector<UncertainInput> m_inputs;
    std::vector<WeatherScatter> m_scatter;
    std::vector<std::vector<double>> m_weather;  ///< Scores, by member
    std::size_t m_past = 0;                      ///< Of them, those that readings can say something about
    [[nodiscard]] Member memberAt(Eigen::Index column) const;
};

/// Scatter of the weather about the file's as weatherScatter() has it, but for observed weather growing from
/// the last known day on as a forecast's does from day 1.
/// @param known  Number of that day.
[[nodiscard]] std::vector<WeatherScatter> scatterAfter(const Pond& pond, int firstDay, int lastDay,
                                                       int known);

}  // namespace engine
