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

/// Of plain numbers all eight are taken as a pack: the last ones cost nothing.
template <int Used>
class Row<double, Used, 8> {
public:
    Row() = default;
    explicit Row(const std::array<double, 8>& from)
        : m_all(Eight::made([&](int p) {
              return
                  typename Eight::Values(*reinterpret_cast<const Anywhere*>(from.data() + p * Eight::kPart));
          })) {}
    void put(std::array<double, 8>& to) const {
        for (int p = 0; p < Eight::kParts; ++p) {
            *reinterpret_cast<Anywhere*>(to.data() + p * Eight::kPart) = m_all.a[p];
        }
    }
    friend Row operator+(const Row& x, const Row& y) { return Row(x.m_all + y.m_all); }
    friend Row operator-(const Row& x, const Row& y) { return Row(x.m_all - y.m_all); }
    friend Row operator*(double factor, const Row& y) { return Row(factor * y.m_all); }
    friend Row min(const Row& x, const Row& y) { return Row(min(x.m_all, y.m_all)); }
    friend Row max(const Row& x, const Row& y) { return Row(max(x.m_all, y.m_all)); }

private:
    using Eight = Pack<double, 8>;
    // Numbers anywhere. A copy of the array would go by smaller pieces, for which the vector then waits.
    typedef double Anywhere
        __attribute__((vector_size(Eight::kPart * sizeof(double)), aligned(alignof(double)), may_alias));

    explicit Row(const Eight& all) : m_all(all) {}
    Eight m_all;
};

}  // namespace engine
