#pragma once

#include "engine/ensemble/spread.h"

#include <cstdint>
#include <optional>
#include <span>
#include <vector>

namespace engine {

/// What one input does to an output that other inputs move too: share = Var(E[output | input]) / Var(output),
/// the first-order index of Sobol (1993), or the correlation ratio, which stays meaningful when inputs go
/// together (Saltelli and Tarantola 2002, J. Am. Stat. Assoc. 97:702-709); then shares need not add to 1.
struct VarianceShare {
    double share = 0.0;      ///< Unbiased, so that it may fall a little below 0
    double deviation = 0.0;  ///< 1 sigma of the share, by the bootstrap; 0 without resamples
    double atLow = 0.0;      ///< Conditional mean of the output at the input's `low`
    double atHigh = 0.0;     ///< The same at its `high`
};

/// A given-data estimate (Plischke, Borgonovo and Smith 2013, Eur. J. Oper. Res. 226:536-550): from one
/// sample drawn for any purpose, for all inputs in turn. The conditional mean is a natural cubic spline of
/// the input's normal score, with knots at even shares of the sample; the share is its adjusted R squared,
/// which takes off what a spline of so many columns explains of pure chance. Bins of equal count would need
/// many for a steep mean and would then be noisier; a spline is exact for a line of scores, and scores keep
/// the knots where the sample is.
class ShareEstimator {
public:
    /// @param outputs    One a member, at least 50, all finite.
    /// @param resamples  Of the bootstrap (Efron 1979), the same for all inputs; 0 for none.
    ShareEstimator(std::vector<double> outputs, int resamples, std::uint64_t seed);

    /// @param inputs  One a member, in the order of the outputs. Constant inputs have share 0.
    [[nodiscard]] VarianceShare share(std::span<const double> inputs, double low, double high) const;

    /// How far the output still scatters once the input was measured [0 to 1 of its standard deviation, may
    /// come out a little above]: the root of the expected posterior variance over the variance now. Members
    /// are taken for the truth in turn, a reading is drawn by the meter's error, and all members are weighted
    /// by how likely the reading would be for them; correlated inputs learn with it. Nothing where the meter
    /// is so good that hardly any members lie within its error: sqrt(1 - share) is the limit there.
    [[nodiscard]] std::optional<double> leftAfter(std::span<const double> inputs, const MeterError& meter,
                                                  std::uint64_t seed) const;

    [[nodiscard]] double deviation() const { return m_deviation; }  ///< Of the outputs, 1 sigma

private:
    std::vector<double> m_outputs;
    std::vector<std::vector<double>> m_counts;  ///< Resamples x members: how often each is in it
    double m_deviation = 0.0;
};

}  // namespace engine
