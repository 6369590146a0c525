#pragma once

#include <Eigen/Core>

#include <cmath>

/// Before a loop over layers whose arrays do not overlap, so that GCC may compute layers side by side.
#if defined(__GNUC__) && !defined(__clang__)
#define DAWNLINE_SIDE_BY_SIDE _Pragma("GCC ivdep")
#else
#define DAWNLINE_SIDE_BY_SIDE
#endif

/// For a function over layers of plain numbers that the loader picks by processor, AVX2 or not. No multiply-add, so
/// both give the same bits; and no inline function that other code shares is compiled for AVX2 on its own, since
/// what such a function calls is either a part of it (DAWNLINE_INLINED) or compiled for every machine.
/// Not under Clang 14, which gives the symbol that picks another name than callers in other files look for.
#if defined(__x86_64__) && defined(__ELF__) && !defined(__clang__) && !defined(__SANITIZE_THREAD__) && \
    !defined(__SANITIZE_ADDRESS__)
#define DAWNLINE_CLONES __attribute__((target_clones("avx2", "default")))
#else
#define DAWNLINE_CLONES
#endif
#define DAWNLINE_INLINED __attribute__((always_inline)) inline

namespace engine {

/// W members of an ensemble that march in step: the kernels are templates on their number type,
/// which is `double` or a Pack. Every operation works lane by lane and is evaluated at once, so no
/// lane's bits depend on its neighbours.
template <int W>
struct Pack {
    using Values = Eigen::Array<double, W, 1>;
    Values a = Values::Zero();

    Pack() = default;
    Pack(double all) : a(Values::Constant(all)) {}  // NOLINT: a number is the same in every lane
    explicit Pack(const Values& values) : a(values) {}

    friend Pack operator+(const Pack& x, const Pack& y) { return Pack(Values(x.a + y.a)); }
    friend Pack operator-(const Pack& x, const Pack& y) { return Pack(Values(x.a - y.a)); }
    friend Pack operator*(const Pack& x, const Pack& y) { return Pack(Values(x.a * y.a)); }
    friend Pack operator/(const Pack& x, const Pack& y) { return Pack(Values(x.a / y.a)); }
    Pack operator-() const { return Pack(Values(-a)); }
    Pack& operator+=(const Pack& y) { return a += y.a, *this; }
    Pack& operator-=(const Pack& y) { return a -= y.a, *this; }
    Pack& operator*=(const Pack& y) { return a *= y.a, *this; }

    friend Pack max(const Pack& x, const Pack& y) { return Pack(Values(x.a.max(y.a))); }
    friend Pack min(const Pack& x, const Pack& y) { return Pack(Values(x.a.min(y.a))); }
    friend Pack sqrt(const Pack& x) { return Pack(Values(x.a.sqrt())); }
    friend Pack exp(const Pack& x) { return Pack(Values(x.a.exp())); }
    friend Pack log(const Pack& x) { return Pack(Values(x.a.log())); }
    friend Pack tanh(const Pack& x) { return Pack(Values(x.a.tanh())); }
    friend Pack abs(const Pack& x) { return Pack(Values(x.a.abs())); }
    friend Pack pow(const Pack& x, double power) { return Pack(Values(x.a.pow(power))); }
};

// The same names for plain numbers, so that a kernel reads alike on both.
inline double max(double x, double y) {
    return x > y ? x : y;
}
inline double min(double x, double y) {
    return x < y ? x : y;
}
using std::abs;
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
        1.0 + x * (1.0 + x * (0.5 + x * (1.0 / 6.0 + x * (1.0 / 24.0 + x * (1.0 / 120.0 + x * (1.0 / 720.0 +
        x * (1.0 / 5040.0 + x * (1.0 / 40320.0))))))));
    const Real two = sum * sum, four = two * two;
    return four * four;
}

/// x where the condition value is positive, else y.
inline double wherePositive(double condition, double x, double y) {
    return condition > 0.0 ? x : y;
}
template <int W>
Pack<W> wherePositive(const Pack<W>& condition, const Pack<W>& x, const Pack<W>& y) {
    return Pack<W>(typename Pack<W>::Values((condition.a > 0.0).select(x.a, y.a)));
}

/// The largest value over all lanes.
[[nodiscard]] inline double largestLane(double x) {
    return x;
}
template <int W>
[[nodiscard]] double largestLane(const Pack<W>& x) {
    return x.a.maxCoeff();
}

}  // namespace engine
