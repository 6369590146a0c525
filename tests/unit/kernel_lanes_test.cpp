#include "engine/air_transfer.h"
#include "engine/exchange.h"
#include "engine/fish_breath.h"
#include "engine/light.h"
#include "engine/sky.h"
#include "engine/water.h"

#include <gtest/gtest.h>

#include <cmath>

// Every kernel must take a lane type that is not `double`, with nothing but + - * / and the functions found
// beside that type, and must give each lane the bits it gives a lone double.

namespace lanes {

struct Pair {
    double a = 0.0;
    double b = 0.0;

    explicit Pair(double both) : a(both), b(both) {}
    Pair(double first, double second) : a(first), b(second) {}
    Pair operator-() const { return {-a, -b}; }
};

#define PAIR_OPERATOR(op)                \
    Pair operator op(Pair x, Pair y) {   \
        return {x.a op y.a, x.b op y.b}; \
    }                                    \
    Pair operator op(Pair x, double y) { \
        return {x.a op y, x.b op y};     \
    }                                    \
    Pair operator op(double x, Pair y) { \
        return {x op y.a, x op y.b};     \
    }
PAIR_OPERATOR(+)
PAIR_OPERATOR(-)
PAIR_OPERATOR(*)
PAIR_OPERATOR(/)
#undef PAIR_OPERATOR

Pair exp(Pair x) {
    return {std::exp(x.a), std::exp(x.b)};
}
Pair log(Pair x) {
    return {std::log(x.a), std::log(x.b)};
}
Pair sqrt(Pair x) {
    return {std::sqrt(x.a), std::sqrt(x.b)};
}
Pair tanh(Pair x) {
    return {std::tanh(x.a), std::tanh(x.b)};
}
Pair pow(Pair x, double y) {
    return {std::pow(x.a, y), std::pow(x.b, y)};
}
Pair max(Pair x, Pair y) {
    return {std::max(x.a, y.a), std::max(x.b, y.b)};
}
Pair min(Pair x, Pair y) {
    return {std::min(x.a, y.a), std::min(x.b, y.b)};
}

}  // namespace lanes

namespace {

using lanes::Pair;

template <class Kernel>
void expectSameBits(Kernel kernel, double first, double second) {
    const Pair both = kernel(Pair(first, second));
    EXPECT_EQ(both.a, kernel(first));
    EXPECT_EQ(both.b, kernel(second));
}

TEST(KernelLanes, WaterAndHeat) {
    expectSameBits([](auto t) { return engine::oxygenSaturationKernel(t, 0.1 * t, 95e3); }, 3.7, 28.1);
    expectSameBits([](auto t) { return engine::waterDensity(t, 0.1 * t); }, 3.7, 28.1);
    expectSameBits([](auto t) { return engine::vapourPressureKernel(t); }, 3.7, 28.1);
    expectSameBits([](auto t) { return engine::henryOxygen(t); }, 3.7, 28.1);
    expectSameBits([](auto t) { return engine::henryNitrogen(t); }, 3.7, 28.1);
    expectSameBits([](auto t) { return engine::temperatureFactor(1.047, t); }, 3.7, 28.1);
    expectSameBits([](auto t) { return engine::longwaveOut(t); }, 3.7, 28.1);
    expectSameBits([](auto t) { return engine::evaporativeLoss(t, 1200.0, 2.0); }, 3.7, 28.1);
    expectSameBits([](auto t) { return engine::conductiveLoss(t, 15.0, 2.0); }, 3.7, 28.1);
}

TEST(KernelLanes, ExchangeAndLife) {
    expectSameBits([](auto t) { return engine::pistonVelocityOxygen(t, 2.0, 1e-9 * (t - 10.0)); }, 3.7, 28.1);
    expectSameBits([](auto chl) { return engine::attenuationOfChlorophyll(chl); }, 0.0, 80.0);
    expectSameBits([](auto x) { return engine::meanLight(100.0 * x, x); }, 0.0, 2.0);
    expectSameBits([](auto light) { return engine::saturatingLight(light, 2.0 * light + 100.0); }, 10.0,
                   900.0);
    expectSameBits([](auto light) { return engine::parFromShortwave_umol(light); }, 10.0, 900.0);
    expectSameBits([](auto photons) { return engine::shortwaveFromPar(photons); }, 10.0, 900.0);
    expectSameBits([](auto t) { return engine::fishRespiration(300.0, t); }, 3.7, 40.0);
    expectSameBits([](auto t) { return engine::surfaceTransferShare(t, 0.1 * t, 0.3 * t, 0.9, 0.95); }, 3.7,
                   28.1);
}

}  // namespace
