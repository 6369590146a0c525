#pragma once

#include "engine/base/lane.h"

#include <bit>
#include <cstdint>

namespace engine {

// Exponential, logarithm and what is made of them in plain arithmetic, so that they run along layers and
// lanes and give the same bits on every machine; the C library's do neither.

/// Whole numbers as wide as a number, or as each lane.
template <class Real>
struct BitsOf {
    using Type = std::uint64_t;
};
template <int W>
struct BitsOf<Pack<W>> {
    using Type = typename Pack<W>::Bits;
};
template <class Real>
[[nodiscard]] typename BitsOf<Real>::Type bitsOf(const Real& x) {
    return std::bit_cast<typename BitsOf<Real>::Type>(x);
}

/// e^x, x clamped to -700..700; relatively right to 5e-16.
/// Powers of two are split off by adding 1.5 x 2^52, which rounds to a whole number; the rest, |r| <= ln 2 /
/// 2, goes into the Taylor sum to r^13 / 13!, whose end is below 1e-17.
template <class Real>
[[nodiscard]] Real layerExp(const Real& x) {
    constexpr double kRound = 6755399441055744.0;  // 1.5 x 2^52
    constexpr double kLog2High = 6.93147180369123816490e-01, kLog2Low = 1.90821492927058770002e-10;
    const Real clamped = min(max(x, Real(-700.0)), Real(700.0));
    const Real shifted = clamped * 1.4426950408889634 + kRound;
    const Real whole = shifted - kRound;
    const Real r = (clamped - whole * kLog2High) - whole * kLog2Low;
    // The low bits of `shifted` hold the whole number; moved to the exponent of a double.
    const Real scale = std::bit_cast<Real>((bitsOf(shifted) << 52U) + 0x3ff0000000000000ULL);
    const Real r2 = r * r, r4 = r2 * r2, r8 = r4 * r4;
    const Real a = (1.0 + r) + r2 * (0.5 + r * (1.0 / 6.0));
    const Real b = (1.0 / 24.0 + r * (1.0 / 120.0)) + r2 * (1.0 / 720.0 + r * (1.0 / 5040.0));
    const Real c = (1.0 / 40320.0 + r * (1.0 / 362880.0)) + r2 * (1.0 / 3628800.0 + r * (1.0 / 39916800.0));
    const Real d = 1.0 / 479001600.0 + r * (1.0 / 6227020800.0);
    return scale * (a + r4 * b + r8 * (c + r4 * d));
}

/// Natural logarithm of a normal positive number; right to 3e-16 or, beyond e, relatively so. About -709 at
/// 0. The number is m 2^k with m from sqrt(1/2) to sqrt(2), and ln m = 2 artanh((m - 1) / (m + 1)), the
/// series to s^19.
template <class Real>
[[nodiscard]] Real layerLog(const Real& x) {
    constexpr std::uint64_t kHalfRoot = 0x3fe6a09e667f3bcdULL;  // bits of sqrt(1/2)
    const typename BitsOf<Real>::Type bits = bitsOf(x);
    // How many powers of two to take off, with 1023 added so that it is positive.
    const typename BitsOf<Real>::Type power = (bits + (0x3ff0000000000000ULL - kHalfRoot)) >> 52U;
    const Real m = std::bit_cast<Real>(bits - (power << 52U) + 0x3ff0000000000000ULL);
    const Real k = std::bit_cast<Real>(power + 0x4330000000000000ULL) - (4503599627370496.0 + 1023.0);
    const Real s = (m - 1.0) / (m + 1.0), s2 = s * s, s4 = s2 * s2;
    const Real odd = (1.0 / 3.0 + s2 * (1.0 / 5.0)) +
                     s4 * ((1.0 / 7.0 + s2 * (1.0 / 9.0)) +
                           s4 * ((1.0 / 11.0 + s2 * (1.0 / 13.0)) +
                                 s4 * ((1.0 / 15.0 + s2 * (1.0 / 17.0)) + s4 * (1.0 / 19.0))));
    return k * 6.93147180559945286e-01 + 2.0 * (s + s * s2 * odd);
}

/// x^power of a number that is not negative; relatively right to 1e-15 times the exponent of the result.
template <class Real>
[[nodiscard]] Real layerPow(const Real& x, double power) {
    return wherePositive(x, layerExp(power * layerLog(x)), Real(0.0));
}

/// tanh, absolutely right to 1e-15.
template <class Real>
[[nodiscard]] Real layerTanh(const Real& x) {
    return 1.0 - 2.0 / (layerExp(2.0 * x) + 1.0);
}

// By the usual names for packs, so that a kernel written for plain numbers takes them.
template <int W>
[[nodiscard]] Pack<W> exp(const Pack<W>& x) {
    return layerExp(x);
}
template <int W>
[[nodiscard]] Pack<W> log(const Pack<W>& x) {
    return layerLog(x);
}
template <int W>
[[nodiscard]] Pack<W> pow(const Pack<W>& x, double power) {
    return layerPow(x, power);
}
template <int W>
[[nodiscard]] Pack<W> cbrt(const Pack<W>& x) {
    return layerPow(x, 1.0 / 3.0);
}
template <int W>
[[nodiscard]] Pack<W> tanh(const Pack<W>& x) {
    return layerTanh(x);
}

}  // namespace engine
