#pragma once

#include "engine/lane.h"

#include <bit>
#include <cstdint>

namespace engine {

// Exponential and logarithm in plain arithmetic, so that loops over layers that use them run side by side and give
// the same bits on every machine; the C library's do neither. Packs take Eigen's, which run along lanes.

/// e^x, x clamped to -700..700; relatively right to 5e-16.
/// Powers of two are split off by adding 1.5 x 2^52, which rounds to a whole number; the rest, |r| <= ln 2 / 2, goes
/// into the Taylor sum to r^13 / 13!, whose end is below 1e-17.
[[nodiscard]] inline double layerExp(double x) {
    constexpr double kRound = 6755399441055744.0;  // 1.5 x 2^52
    constexpr double kLog2High = 6.93147180369123816490e-01, kLog2Low = 1.90821492927058770002e-10;
    const double clamped = min(max(x, -700.0), 700.0);
    const double shifted = clamped * 1.4426950408889634 + kRound;
    const double whole = shifted - kRound;
    const double r = (clamped - whole * kLog2High) - whole * kLog2Low;
    // The low bits of `shifted` hold the whole number; moved to the exponent of a double.
    const double scale =
        std::bit_cast<double>((std::bit_cast<std::uint64_t>(shifted) << 52) + 0x3ff0000000000000ULL);
    const double r2 = r * r, r4 = r2 * r2, r8 = r4 * r4;
    const double a = (1.0 + r) + r2 * (0.5 + r * (1.0 / 6.0));
    const double b = (1.0 / 24.0 + r * (1.0 / 120.0)) + r2 * (1.0 / 720.0 + r * (1.0 / 5040.0));
    const double c = (1.0 / 40320.0 + r * (1.0 / 362880.0)) + r2 * (1.0 / 3628800.0 + r * (1.0 / 39916800.0));
    const double d = 1.0 / 479001600.0 + r * (1.0 / 6227020800.0);
    return scale * (a + r4 * b + r8 * (c + r4 * d));
}

/// Natural logarithm of a normal positive number; right to 3e-16 or, beyond e, relatively so.
/// The number is m 2^k with m from sqrt(1/2) to sqrt(2), and ln m = 2 artanh((m - 1) / (m + 1)), the series to s^19.
[[nodiscard]] inline double layerLog(double x) {
    constexpr std::uint64_t kHalfRoot = 0x3fe6a09e667f3bcdULL;  // bits of sqrt(1/2)
    const std::uint64_t bits = std::bit_cast<std::uint64_t>(x);
    // How many powers of two to take off, with 1023 added so that it is positive.
    const std::uint64_t power = (bits + (0x3ff0000000000000ULL - kHalfRoot)) >> 52;
    const double m = std::bit_cast<double>(bits - (power << 52) + 0x3ff0000000000000ULL);
    const double k = std::bit_cast<double>(power + 0x4330000000000000ULL) - (4503599627370496.0 + 1023.0);
    const double s = (m - 1.0) / (m + 1.0), s2 = s * s, s4 = s2 * s2;
    const double odd = (1.0 / 3.0 + s2 * (1.0 / 5.0)) +
                       s4 * ((1.0 / 7.0 + s2 * (1.0 / 9.0)) +
                             s4 * ((1.0 / 11.0 + s2 * (1.0 / 13.0)) +
                                   s4 * ((1.0 / 15.0 + s2 * (1.0 / 17.0)) + s4 * (1.0 / 19.0))));
    return k * 6.93147180559945286e-01 + 2.0 * (s + s * s2 * odd);
}

template <int W>
[[nodiscard]] Pack<W> layerExp(const Pack<W>& x) {
    return exp(min(max(x, Pack<W>(-700.0)), Pack<W>(700.0)));
}
template <int W>
[[nodiscard]] Pack<W> layerLog(const Pack<W>& x) {
    return log(x);
}

/// tanh of a number that is not negative, absolutely right to 1e-15.
template <class Real>
[[nodiscard]] Real layerTanh(const Real& x) {
    return 1.0 - 2.0 / (layerExp(2.0 * x) + 1.0);
}

}  // namespace engine
