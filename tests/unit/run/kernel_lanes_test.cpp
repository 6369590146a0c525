#include "engine/base/lane_math.h"
#include "engine/water/air_transfer.h"
#include "engine/water/exchange.h"
#include "engine/water/fish_respiration.h"
#include "engine/water/light.h"
#include "engine/water/sky.h"
#include "engine/water/water.h"

#include <gtest/gtest.h>

#include <array>
#include <cmath>

// Every kernel must take a pack as well as a double, must agree with the lone double to rounding, and no lane
// may feel its neighbours.

namespace {

template <class Lanes>
Lanes lanes(double first, double second, double third, double fourth) {
    Lanes out;
    const std::array values{first, second, third, fourth};
    for (int i = 0; i < engine::kLanes<Lanes>; ++i) {
        engine::setLane(out, i, values[static_cast<std::size_t>(i % 4)]);
    }
    return out;
}

/// @param rounding  Relative.
template <class Lanes, class Kernel>
void expectLanesOf(Kernel kernel, double first, double second, double rounding) {
    const Lanes both = kernel(lanes<Lanes>(first, second, first, second));
    for (int i = 0; i < engine::kLanes<Lanes>; ++i) {
        const double alone = kernel(i % 2 == 0 ? first : second);
        EXPECT_NEAR(engine::lane(both, i), alone, rounding * std::abs(alone)) << "lane " << i;
    }
    const Lanes otherNeighbours = kernel(lanes<Lanes>(first, first, second, first));
    EXPECT_EQ(engine::lane(otherNeighbours, 0), engine::lane(both, 0));
    EXPECT_EQ(engine::lane(otherNeighbours, 3), engine::lane(both, 2));
    EXPECT_EQ(engine::lane(otherNeighbours, 2), engine::lane(both, 1));
}

template <class Kernel>
void expectLanes(Kernel kernel, double first, double second) {
    // The pack's exp and log are our own, good to a few units in the last place.
    expectLanesOf<engine::DoubleLanes>(kernel, first, second, 1e-12);
    // Exponents of up to 60 (Henry's constants), three of them rounded to 6e-8 of that.
    expectLanesOf<engine::Lanes>(kernel, first, second, 1.1e-5);
}

TEST(KernelLanes, WaterAndHeat) {
    expectLanes([](auto t) { return engine::oxygenSaturationKernel(t, 0.1 * t, 95e3); }, 3.7, 28.1);
    expectLanes([](auto t) { return engine::waterDensity(t, 0.1 * t); }, 3.7, 28.1);
    expectLanes([](auto t) { return engine::vapourPressureKernel(t); }, 3.7, 28.1);
    expectLanes([](auto t) { return engine::henryConstants(t).oxygen; }, 3.7, 28.1);
    expectLanes([](auto t) { return engine::henryConstants(t).nitrogen; }, 3.7, 28.1);
    expectLanes([](auto t) { return engine::temperatureFactor(1.047, t); }, 3.7, 28.1);
    expectLanes([](auto t) { return engine::longwaveOut(t); }, 3.7, 28.1);
    expectLanes([](auto t) { return engine::longwaveIn(t, decltype(t)(0.4)); }, 3.7, 28.1);
    expectLanes(
        [](auto t) {
            return engine::turbulentLoss(t, decltype(t)(15.0), decltype(t)(1200.0), decltype(t)(2.0));
        },
        3.7, 28.1);
}

TEST(KernelLanes, ExchangeAndLife) {
    expectLanes([](auto t) { return engine::pistonVelocityOxygen(t, decltype(t)(2.0), 1e-9 * (t - 10.0)); },
                3.7, 28.1);
    expectLanes([](auto chl) { return engine::attenuationOfChlorophyll(chl); }, 0.0, 80.0);
    expectLanes([](auto chl) { return engine::attenuationOfLayer(decltype(chl)(0.3), chl); }, 0.0, 80.0);
    expectLanes([](auto x) { return engine::meanLightShare(engine::layerExp(decltype(x)(-x)), x); }, 0.05,
                2.0);
    expectLanes([](auto light) { return engine::saturatingLight(light); }, 0.1, 3.0);
    expectLanes([](auto photons) { return engine::shortwaveFromPar(photons); }, 10.0, 900.0);
    expectLanes([](auto t) { return engine::fishRespiration(300.0, t); }, 3.7, 40.0);
    expectLanes(
        [](auto t) {
            using Real = decltype(t);
            const Real rate = engine::transferRate(Real(0.2 * t), t, 0.9, engine::kStandardSaturation.value);
            return Real(rate * (engine::transferTarget(Real(0.3 * t), 0.95) - 0.1 * t));
        },
        3.7, 28.1);
}

}  // namespace
