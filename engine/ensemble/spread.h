#pragma once

#include "engine/pond/pond.h"
#include "engine/water/priors.h"

#include <limits>

namespace engine {

/// How far an input may be off: a two-piece normal, or log-normal, distribution about its value, which is its
/// median. Each half has a standard deviation of its own; a value beyond `least` or `most` is taken to be
/// there.
struct Spread {
    double value = 0.0;  ///< The median
    double below = 0.0;  ///< 1 sigma of the lower half, of the logarithm if `isLog`
    double above = 0.0;  ///< 1 sigma of the upper half, of the logarithm if `isLog`
    bool isLog = false;
    double least = -std::numeric_limits<double>::infinity();
    double most = std::numeric_limits<double>::infinity();

    /// The value at a standard normal score: 0 gives the median, 1.645 the 95 % point.
    [[nodiscard]] double atScore(double score) const;
    /// The value that a share `u` of the draws do not exceed; 0 < u < 1.
    [[nodiscard]] double quantile(double u) const;
};

/// The standard normal score that a share `u` of the draws do not exceed; 0 < u < 1, ArgumentError otherwise.
[[nodiscard]] double normalScore(double u);

/// What a meter or a method is off by (1 sigma): a plain amount, or a factor of the value.
struct MeterError {
    double amount = 0.0;  ///< In the unit of the value; used if the factor is 1
    double factor = 1.0;  ///< At least 1: the value times or over it
};

/// From 5 and 95 % points: two-piece log-normal, or two-piece normal cut at 0 where `low` is not positive.
/// @pre low <= value <= high
[[nodiscard]] Spread spreadBetween(double value, double low, double high);

/// A prior about its own value.
[[nodiscard]] Spread spreadOf(const Prior& prior);

/// A number of the pond file: its own 5 and 95 % points if it has them; `share`
/// 0.5 or 1 of the prior's log-spread if it is estimated or guessed; the error of its meter otherwise, never
/// below 0.
[[nodiscard]] Spread spreadOf(const Quantity& quantity, const Prior& prior, const MeterError& meter);

/// A number of the pond file counts as measured if it is plain or says so.
[[nodiscard]] bool isMeasured(const Quantity& quantity);

}  // namespace engine
