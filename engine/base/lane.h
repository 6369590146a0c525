#pragma once

#include <cmath>
#include <cstdint>

/// Before a loop over layers whose arrays do not overlap, so that GCC may compute layers side by side.
#if defined(__GNUC__) && !defined(__clang__)
#define DAWNLINE_SIDE_BY_SIDE _Pragma("GCC ivdep")
#else
#define DAWNLINE_SIDE_BY_SIDE
#endif

namespace engine {

/// W members of an ensemble that march in step: the kernels are templates on their number type,
/// which is `double` or a Pack. Every operation works lane by lane, so no lane's bits depend on its
/// neighbours. The vectors are the compilers' own, which GCC and Clang bring to whatever registers the
/// processor has.
/// Aligned by hand, since GCC's vectors are less aligned where there is no AVX, and kernels for different
/// processors hand packs to each other.
template <int W>
struct alignas(W * sizeof(double)) Pack {
    typedef double Values __attribute__((vector_size(W * sizeof(double))));
    typedef std::uint64_t Bits __attribute__((vector_size(W * sizeof(double))));
    Values a{};

    Pack() = default;
    Pack(double all) : a(all - Values{}) {}  // NOLINT: a number is the same in every lane
    explicit Pack(const Values& values) : a(values) {}

    friend Pack operator+(const Pack& x, const Pack& y) { return Pack(Values(x.a + y.a)); }
    friend Pack operator-(const Pack& x, const Pack& y) { return Pack(Values(x.a - y.a)); }
    friend Pack operator*(const Pack& x, const Pack& y) { return Pack(Values(x.a * y.a)); }
    friend Pack operator/(const Pack& x, const Pack& y) { return Pack(Values(x.a / y.a)); }
    Pack operator-() const { return Pack(Values(-a)); }
    Pack& operator+=(const Pack& y) { return a += y.a, *this; }
    Pack& operator-=(const Pack& y) { return a -= y.a, *this; }
    Pack& operator*=(const Pack& y) { return a *= y.a, *this; }

    friend Pack max(const Pack& x, const Pack& y) { return Pack(Values(x.a > y.a ? x.a : y.a)); }
    friend Pack min(const Pack& x, const Pack& y) { return Pack(Values(x.a < y.a ? x.a : y.a)); }
    friend Pack abs(const Pack& x) { return max(x, -x); }
};

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
template <int W>
inline constexpr int kLanes<Pack<W>> = W;

[[nodiscard]] inline double lane(double x, int) {
    return x;
}
template <int W>
[[nodiscard]] double lane(const Pack<W>& x, int i) {
    return x.a[i];
}
inline void setLane(double& x, int, double value) {
    x = value;
}
template <int W>
void setLane(Pack<W>& x, int i, double value) {
    x.a[i] = value;
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

/// x where the condition value is positive, else y.
inline double wherePositive(double condition, double x, double y) {
    return condition > 0.0 ? x : y;
}
template <int W>
Pack<W> wherePositive(const Pack<W>& condition, const Pack<W>& x, const Pack<W>& y) {
    return Pack<W>(typename Pack<W>::Values(condition.a > typename Pack<W>::Values{} ? x.a : y.a));
}

template <int W>
[[nodiscard]] Pack<W> sqrt(const Pack<W>& x) {
    Pack<W> root;
    for (int i = 0; i < W; ++i) {
        root.a[i] = std::sqrt(x.a[i]);
    }
    return root;
}

/// The largest value over all lanes.
[[nodiscard]] inline double largestLane(double x) {
    return x;
}
template <int W>
[[nodiscard]] double largestLane(const Pack<W>& x) {
    double largest = x.a[0];
    for (int i = 1; i < W; ++i) {
        largest = max(largest, x.a[i]);
    }
    return largest;
}

}  // namespace engine
