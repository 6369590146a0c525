#pragma once

#include <cmath>
#include <cstdint>
#include <type_traits>
#include <utility>

/// Before a loop over layers whose arrays do not overlap, so that GCC may compute layers side by side.
#if defined(__GNUC__) && !defined(__clang__)
#define DAWNLINE_SIDE_BY_SIDE _Pragma("GCC ivdep")
#else
#define DAWNLINE_SIDE_BY_SIDE
#endif

namespace engine {

/// Bytes of a register of the processor that this is compiled for.
#if defined(__AVX512F__)
inline constexpr int kRegisterBytes = 64;
#elif defined(__AVX__)
inline constexpr int kRegisterBytes = 32;
#else
inline constexpr int kRegisterBytes = 16;
#endif

/// W members of an ensemble that march in step: the kernels are templates on their number type, which is
/// `double` or a Pack of doubles or floats. Every operation works lane by lane, so no lane's bits depend on
/// its neighbours. The vectors are the compilers' own, which GCC and Clang bring to whatever registers the
/// processor has; a pack that is longer than one is parted by hand, since compilers keep long vectors in
/// memory.
/// Aligned by hand, since GCC's vectors are less aligned where there is no AVX, and kernels for different
/// processors hand packs to each other: the lanes lie one after the other, however a pack is parted.
template <class T, int W>
struct alignas(W * sizeof(T)) Pack {
    static constexpr int kFit = kRegisterBytes / static_cast<int>(sizeof(T));
    static constexpr int kPart = W < kFit ? W : kFit;  ///< Lanes of a part
    static constexpr int kParts = W / kPart;
    static_assert(W % kPart == 0);
    using Number = T;
    typedef T Values __attribute__((vector_size(kPart * sizeof(T))));
    Values a[kParts]{};

    Pack() = default;
    // NOLINTNEXTLINE: a number is the same in every lane
    Pack(double all) : Pack(made([all](int) { return Values(static_cast<T>(all) - Values{}); })) {}

    /// Of what f(p) gives for each part.
    template <class F>
    [[nodiscard, gnu::always_inline]] static Pack made(const F& f) {
        return made(f, std::make_integer_sequence<int, kParts>());
    }

    friend Pack operator+(const Pack& x, const Pack& y) {
        return made([&](int p) { return Values(x.a[p] + y.a[p]); });
    }
    friend Pack operator-(const Pack& x, const Pack& y) {
        return made([&](int p) { return Values(x.a[p] - y.a[p]); });
    }
    friend Pack operator*(const Pack& x, const Pack& y) {
        return made([&](int p) { return Values(x.a[p] * y.a[p]); });
    }
    friend Pack operator/(const Pack& x, const Pack& y) {
        return made([&](int p) { return Values(x.a[p] / y.a[p]); });
    }
    Pack operator-() const {
        return made([&](int p) { return Values(-a[p]); });
    }
    Pack& operator+=(const Pack& y) { return *this = *this + y; }
    Pack& operator-=(const Pack& y) { return *this = *this - y; }
    Pack& operator*=(const Pack& y) { return *this = *this * y; }

    friend Pack max(const Pack& x, const Pack& y) {
        return made([&](int p) { return Values(x.a[p] > y.a[p] ? x.a[p] : y.a[p]); });
    }
    friend Pack min(const Pack& x, const Pack& y) {
        return made([&](int p) { return Values(x.a[p] < y.a[p] ? x.a[p] : y.a[p]); });
    }
    friend Pack abs(const Pack& x) { return max(x, -x); }

private:
    template <class F, int... P>
    [[gnu::always_inline]] static Pack made(const F& f, std::integer_sequence<int, P...>) {
        Pack out;
        ((out.a[P] = f(P)), ...);
        return out;
    }
};

/// What members march in: single precision, one register of AVX-512. Percentiles and chances stay within the
/// sampling error of what doubles give at small steps (tests/property/members_test.cpp).
using Lanes = Pack<float, 16>;
/// What holds them to account.
using DoubleLanes = Pack<double, 4>;

// The same names for plain numbers, so that a kernel reads alike on both.
inline double max(double x, double y) {
    return x > y ? x : y;
}
inline double min(double x, double y) {
    return x < y ? x : y;
}
using std::abs;
using std::cbrt;
using std::exp;
using std::log;
using std::pow;
using std::sqrt;
using std::tanh;

template <class Real>
inline constexpr int kLanes = 1;
template <class T, int W>
inline constexpr int kLanes<Pack<T, W>> = W;

/// The number type of a lane.
template <class Real>
struct NumberOfLane {
    using Type = Real;
};
template <class T, int W>
struct NumberOfLane<Pack<T, W>> {
    using Type = T;
};
template <class Real>
inline constexpr bool kIsSingle = std::is_same_v<typename NumberOfLane<Real>::Type, float>;

/// Far below what anything here is, and still a number: what a divisor that may be zero is held to.
template <class Real>
inline constexpr double kTiny = kIsSingle<Real> ? 1e-30 : 1e-300;
/// A little less than one: what keeps rounding from crossing a bound.
template <class Real>
inline constexpr double kJustUnderOne = kIsSingle<Real> ? 1.0 - 1e-6 : 1.0 - 1e-9;

[[nodiscard]] inline double lane(double x, int) {
    return x;
}
template <class T, int W>
[[nodiscard]] double lane(const Pack<T, W>& x, int i) {
    return static_cast<double>(x.a[i / Pack<T, W>::kPart][i % Pack<T, W>::kPart]);
}
inline void setLane(double& x, int, double value) {
    x = value;
}
template <class T, int W>
void setLane(Pack<T, W>& x, int i, double value) {
    x.a[i / Pack<T, W>::kPart][i % Pack<T, W>::kPart] = static_cast<T>(value);
}

/// e^y for the temperature factors of rates, |y| up to 2.5: the eighth power of a Taylor sum, right to 1e-8.
/// Plain arithmetic, so that it is the same on every machine and runs along layers and lanes.
template <class Real>
[[nodiscard]] Real rateExp(const Real& y) {
    const Real x = 0.125 * y;
    const Real sum =
        1.0 +
        x * (1.0 + x * (0.5 + x * (1.0 / 6.0 +
                                   x * (1.0 / 24.0 +
                                        x * (1.0 / 120.0 + x * (1.0 / 720.0 + x * (1.0 / 5040.0 +
                                                                                   x * (1.0 / 40320.0))))))));
    const Real two = sum * sum, four = two * two;
    return four * four;
}

/// x where a > b, else y.
inline double whereMore(double a, double b, double x, double y) {
    return a > b ? x : y;
}
template <class T, int W>
Pack<T, W> whereMore(const Pack<T, W>& a, const Pack<T, W>& b, const Pack<T, W>& x, const Pack<T, W>& y) {
    using Values = typename Pack<T, W>::Values;
    return Pack<T, W>::made([&](int p) { return Values(a.a[p] > b.a[p] ? x.a[p] : y.a[p]); });
}

/// x where the condition value is positive, else y.
template <class Real>
Real wherePositive(const Real& condition, const std::type_identity_t<Real>& x,
                   const std::type_identity_t<Real>& y) {
    return whereMore(condition, Real(0.0), x, y);
}

template <class T, int W>
[[nodiscard]] Pack<T, W> sqrt(const Pack<T, W>& x) {
    Pack<T, W> root;
    for (int p = 0; p < Pack<T, W>::kParts; ++p) {
        for (int i = 0; i < Pack<T, W>::kPart; ++i) {
            root.a[p][i] = std::sqrt(x.a[p][i]);
        }
    }
    return root;
}

/// The largest value over all lanes.
[[nodiscard]] inline double largestLane(double x) {
    return x;
}
template <class T, int W>
[[nodiscard]] double largestLane(const Pack<T, W>& x) {
    T left[W];
    __builtin_memcpy(left, &x, sizeof(left));
    for (int half = W / 2; half > 0; half /= 2) {
        for (int i = 0; i < half; ++i) {
            left[i] = left[i] > left[i + half] ? left[i] : left[i + half];
        }
    }
    return static_cast<double>(left[0]);
}

}  // namespace engine
