#pragma once

#include "engine/base/lane.h"

#include <bit>
#include <cstdint>

namespace engine {

// Exponential, logarithm and what is made of them in plain arithmetic, so that they run along layers and
// lanes and give the same bits on every machine; the C library's do neither.

/// How a number lies in memory.
template <class T>
struct NumberLayout;
template <>
struct NumberLayout<double> {
    using Whole = std::uint64_t;
    static constexpr int kMantissa = 52;
    static constexpr int kBias = 1023;
    static constexpr Whole kHalfRoot = 0x3fe6a09e667f3bcdULL;  ///< Bits of sqrt(1/2) ...
    static constexpr Whole kOne = 0x3ff0000000000000ULL;       ///< ... of 1 ...
    static constexpr Whole kWhole = 0x4330000000000000ULL;     ///< ... of 2^kMantissa
};
template <>
struct NumberLayout<float> {
    using Whole = std::uint32_t;
    static constexpr int kMantissa = 23;
    static constexpr int kBias = 127;
    static constexpr Whole kHalfRoot = 0x3f3504f3U, kOne = 0x3f800000U, kWhole = 0x4b000000U;
};

// What these do with the bits of a number, or of each number of a vector; T is its kind.

/// Bits of 2^n, of those of n + kRound, whose low ones hold the whole number n: moved to the exponent.
template <class T, class Bits>
[[nodiscard, gnu::always_inline]] inline Bits bitsOfPower(const Bits& shifted) {
    using Layout = NumberLayout<T>;
    return (shifted << Layout::kMantissa) + Layout::kOne;
}
/// How many powers of two to take off a positive number for one from sqrt(1/2) to sqrt(2), with the bias
/// added so that it is positive.
template <class T, class Bits>
[[nodiscard, gnu::always_inline]] inline Bits powerIn(const Bits& x) {
    using Layout = NumberLayout<T>;
    return (x + (Layout::kOne - Layout::kHalfRoot)) >> Layout::kMantissa;
}
/// Bits of the number that is left.
template <class T, class Bits>
[[nodiscard, gnu::always_inline]] inline Bits bitsOfReduced(const Bits& x) {
    using Layout = NumberLayout<T>;
    return x - (powerIn<T>(x) << Layout::kMantissa) + Layout::kOne;
}
/// Bits of the power as a number, with 2^kMantissa and the bias added.
template <class T, class Bits>
[[nodiscard, gnu::always_inline]] inline Bits bitsOfPowerIn(const Bits& x) {
    using Layout = NumberLayout<T>;
    return powerIn<T>(x) + Layout::kWhole;
}

/// The number, or the numbers, whose bits f gives of the bits of others.
template <class F>
[[nodiscard]] double byBits(double x, const F& f) {
    return std::bit_cast<double>(f(std::bit_cast<std::uint64_t>(x)));
}
template <class T, int W, class F>
[[nodiscard]] Pack<T, W> byBits(const Pack<T, W>& x, const F& f) {
    using Values = typename Pack<T, W>::Values;
    typedef typename NumberLayout<T>::Whole Bits __attribute__((vector_size(Pack<T, W>::kPart * sizeof(T))));
    return Pack<T, W>::made(
        [&](int p) { return __builtin_bit_cast(Values, f(__builtin_bit_cast(Bits, x.a[p]))); });
}

/// 2^n of n + kRound.
template <class Real>
[[nodiscard]] Real powerOfTwo(const Real& shifted) {
    return byBits(shifted,
                  [](const auto& bits) { return bitsOfPower<typename NumberOfLane<Real>::Type>(bits); });
}

/// e^x. Of doubles x is clamped to -700..700 and the answer relatively right to 5e-16; of floats to -87..88,
/// 2e-7.
/// Powers of two are split off by adding 1.5 x 2^52 (2^23), which rounds to a whole number; the rest,
/// |r| <= ln 2 / 2, goes into the Taylor sum to r^13 / 13! (r^7 / 7!), whose end is below 1e-17 (6e-9).
template <class Real>
[[nodiscard]] Real layerExp(const Real& x) {
    if constexpr (kIsSingle<Real>) {
        constexpr double kRound = 12582912.0;
        constexpr double kLog2High = 0.693359375, kLog2Low = -2.12194440054690583e-4;
        const Real clamped = min(max(x, Real(-87.0)), Real(88.0));
        const Real shifted = clamped * 1.4426950408889634 + kRound;
        const Real whole = shifted - kRound;
        const Real r = (clamped - whole * kLog2High) - whole * kLog2Low, r2 = r * r;
        const Real a = (1.0 + r) + r2 * (0.5 + r * (1.0 / 6.0));
        const Real b = (1.0 / 24.0 + r * (1.0 / 120.0)) + r2 * (1.0 / 720.0 + r * (1.0 / 5040.0));
        return powerOfTwo(shifted) * (a + r2 * r2 * b);
    } else {
        constexpr double kRound = 6755399441055744.0;
        constexpr double kLog2High = 6.93147180369123816490e-01, kLog2Low = 1.90821492927058770002e-10;
        const Real clamped = min(max(x, Real(-700.0)), Real(700.0));
        const Real shifted = clamped * 1.4426950408889634 + kRound;
        const Real whole = shifted - kRound;
        const Real r = (clamped - whole * kLog2High) - whole * kLog2Low;
        const Real r2 = r * r, r4 = r2 * r2, r8 = r4 * r4;
        const Real a = (1.0 + r) + r2 * (0.5 + r * (1.0 / 6.0));
        const Real b = (1.0 / 24.0 + r * (1.0 / 120.0)) + r2 * (1.0 / 720.0 + r * (1.0 / 5040.0));
        const Real c =
            (1.0 / 40320.0 + r * (1.0 / 362880.0)) + r2 * (1.0 / 3628800.0 + r * (1.0 / 39916800.0));
        const Real d = 1.0 / 479001600.0 + r * (1.0 / 6227020800.0);
        return powerOfTwo(shifted) * (a + r4 * b + r8 * (c + r4 * d));
    }
}

/// Natural logarithm of a normal positive number; right to 3e-16 (of floats 1e-7) or, beyond e, relatively
/// so. About -709 (-88) at 0. The number is m 2^k with m from sqrt(1/2) to sqrt(2), and
/// ln m = 2 artanh((m - 1) / (m + 1)), the series to s^19 (s^9).
template <class Real>
[[nodiscard]] Real layerLog(const Real& x) {
    using Number = typename NumberOfLane<Real>::Type;
    using Layout = NumberLayout<Number>;
    constexpr double kOffset = static_cast<double>(1ULL << Layout::kMantissa) + Layout::kBias;
    const Real m = byBits(x, [](const auto& bits) { return bitsOfReduced<Number>(bits); });
    const Real k = byBits(x, [](const auto& bits) { return bitsOfPowerIn<Number>(bits); }) - kOffset;
    const Real s = (m - 1.0) / (m + 1.0), s2 = s * s, s4 = s2 * s2;
    Real odd = (1.0 / 3.0 + s2 * (1.0 / 5.0)) + s4 * (1.0 / 7.0 + s2 * (1.0 / 9.0));
    if constexpr (!kIsSingle<Real>) {
        odd +=
            s4 * s4 *
            ((1.0 / 11.0 + s2 * (1.0 / 13.0)) + s4 * ((1.0 / 15.0 + s2 * (1.0 / 17.0)) + s4 * (1.0 / 19.0)));
    }
    return k * 6.93147180559945286e-01 + 2.0 * (s + s * s2 * odd);
}

/// x^power of a number that is not negative; relatively right to a few roundings times the exponent of the
/// result.
template <class Real>
[[nodiscard]] Real layerPow(const Real& x, double power) {
    return wherePositive(x, layerExp(Real(power * layerLog(x))), Real(0.0));
}

/// tanh, absolutely right to 1e-15 (1e-7).
template <class Real>
[[nodiscard]] Real layerTanh(const Real& x) {
    return 1.0 - 2.0 / (layerExp(Real(2.0 * x)) + 1.0);
}

/// The least whole number that is not below a number of up to four million.
template <class Real>
[[nodiscard]] Real layerCeil(const Real& x) {
    constexpr double kRound = kIsSingle<Real> ? 12582912.0 : 6755399441055744.0;
    const Real nearest = (x + kRound) - kRound;
    return whereMore(x, nearest, Real(nearest + 1.0), nearest);
}

// By the usual names for packs, so that a kernel written for plain numbers takes them.
template <class T, int W>
[[nodiscard]] Pack<T, W> exp(const Pack<T, W>& x) {
    return layerExp(x);
}
template <class T, int W>
[[nodiscard]] Pack<T, W> log(const Pack<T, W>& x) {
    return layerLog(x);
}
template <class T, int W>
[[nodiscard]] Pack<T, W> pow(const Pack<T, W>& x, double power) {
    return layerPow(x, power);
}
template <class T, int W>
[[nodiscard]] Pack<T, W> cbrt(const Pack<T, W>& x) {
    return layerPow(x, 1.0 / 3.0);
}
template <class T, int W>
[[nodiscard]] Pack<T, W> tanh(const Pack<T, W>& x) {
    return layerTanh(x);
}

}  // namespace engine
