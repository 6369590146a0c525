#pragma once

#include "engine/base/lane.h"

#include <array>

namespace engine {

/// The first `Used` of the C numbers of a layer, computed with as one.
template <class Real, int Used, int C>
class Row {
public:
    Row() = default;  // zeros
    explicit Row(const std::array<Real, C>& from) {
        for (int c = 0; c < Used; ++c) {
            m_values[c] = from[c];
        }
    }
    void put(std::array<Real, C>& to) const {
        for (int c = 0; c < Used; ++c) {
            to[c] = m_values[c];
        }
    }
    friend Row operator+(const Row& x, const Row& y) {
        return each(x, y, [](const Real& a, const Real& b) { return a + b; });
    }
    friend Row operator-(const Row& x, const Row& y) {
        return each(x, y, [](const Real& a, const Real& b) { return a - b; });
    }
    friend Row operator*(const Real& factor, const Row& y) {
        return each(y, y, [&factor](const Real& a, const Real&) { return factor * a; });
    }
    friend Row min(const Row& x, const Row& y) {
        return each(x, y, [](const Real& a, const Real& b) { return min(a, b); });
    }
    friend Row max(const Row& x, const Row& y) {
        return each(x, y, [](const Real& a, const Real& b) { return max(a, b); });
    }

private:
    template <class F>
    static Row each(const Row& x, const Row& y, const F& f) {
        Row out;
        for (int c = 0; c < Used; ++c) {
            out.m_values[c] = f(x.m_values[c], y.m_values[c]);
        }
        return out;
    }
    std::array<Real, Used> m_values{};
};

/// Of plain numbers all eight are taken, as two vectors: the last ones cost nothing.
template <int Used>
class Row<double, Used, 8> {
public:
    Row() = default;
    explicit Row(const std::array<double, 8>& from)
        : m_low(loaded(from.data())), m_high(loaded(from.data() + 4)) {}
    void put(std::array<double, 8>& to) const {
        *at(to.data()) = m_low.a;
        *at(to.data() + 4) = m_high.a;
    }
    friend Row operator+(const Row& x, const Row& y) { return {x.m_low + y.m_low, x.m_high + y.m_high}; }
    friend Row operator-(const Row& x, const Row& y) { return {x.m_low - y.m_low, x.m_high - y.m_high}; }
    friend Row operator*(double factor, const Row& y) { return {factor * y.m_low, factor * y.m_high}; }
    friend Row min(const Row& x, const Row& y) { return {min(x.m_low, y.m_low), min(x.m_high, y.m_high)}; }
    friend Row max(const Row& x, const Row& y) { return {max(x.m_low, y.m_low), max(x.m_high, y.m_high)}; }

private:
    // Four numbers anywhere. A copy of the array would go by smaller pieces, for which the vector then waits.
    typedef double Anywhere
        __attribute__((vector_size(4 * sizeof(double)), aligned(alignof(double)), may_alias));
    static Pack<4> loaded(const double* from) {
        const Pack<4>::Values values = *reinterpret_cast<const Anywhere*>(from);
        return Pack<4>(values);
    }
    static Anywhere* at(double* to) { return reinterpret_cast<Anywhere*>(to); }

    Row(const Pack<4>& low, const Pack<4>& high) : m_low(low), m_high(high) {}
    Pack<4> m_low, m_high;
};

}  // namespace engine
