#include "engine/base/units.h"
#include "engine/column/transport.h"
#include "tests/support/columns.h"
#include "tests/support/order.h"

#include <gtest/gtest.h>

#include <array>
#include <cmath>
#include <vector>

// Diffusion against the closed forms of textbooks (Crank, The Mathematics of Diffusion, ch. 2).

namespace {

using engine::Fields;
using engine::Flows;
using engine::Grid;
using engine::kPi;
using engine::Transport;

/// Diffuses a field for a time in equal steps in water at rest.
void diffuse(const Grid& grid, double diffusivity, double time, int steps, Fields<double, 1>& fields) {
    const Flows<double> still(grid.layers());
    Transport<double> transport(grid);
    transport.prepare(time / steps, std::vector<double>(grid.face.size(), diffusivity), 0.0, still);
    for (int i = 0; i < steps; ++i) {
        transport.advance<1, 1>(still, {}, {}, fields);
    }
}

// C = C0 erfc(z / 2 sqrt(K t)) with K = 1e-6 m^2/s after a day. A closed column of 8 m starts at 2 above its
// middle and at 0 below, so that the middle stays at 1 and the walls (7 diffusion lengths away) are not felt.
// Numbers by a separate script. Tolerance 1 % of C0, layers of 4 cm, a tenth of the diffusion length, steps
// of 5 min.
TEST(Diffusion, FromAHeldConcentration) {
    const Grid grid = engine::test::evenTank(200, 8.0, 3000.0);
    Fields<double, 1> fields(200);
    for (int i = 0; i < 200; ++i) {
        fields[i][0] = i < 100 ? 2.0 : 0.0;
    }
    diffuse(grid, 1e-6, engine::kDay, 288, fields);
    std::vector<double> values;
    for (const auto& layer : fields) {
        values.push_back(layer[0]);
    }
    constexpr std::array<double, 4> kAt = {0.1, 0.2, 0.5, 1.0};
    constexpr std::array<double, 4> kWanted = {.80989, .63043, .22905, .01614};
    for (std::size_t i = 0; i < kAt.size(); ++i) {
        EXPECT_NEAR(engine::interpolate(grid.middle, values, 4.0 + kAt[i]), kWanted[i], 0.01)
            << kAt[i] << " m";
    }
}

// The slowest mode of a closed column, cos(pi z / H), falls as exp(-K pi^2 t / H^2). The layers are of second
// order and the steps of first: measured orders at least those less 0.2.
double modeError(int layers, int steps) {
    const double depth = 3.0, diffusivity = 1e-5;
    const Grid grid = engine::test::evenTank(layers, depth, 3000.0);
    const double time = depth * depth / (kPi * kPi * diffusivity);  // one e-fold
    Fields<double, 1> fields(layers);
    for (int i = 0; i < layers; ++i) {
        fields[i][0] = 2.0 + std::cos(kPi * grid.middle[i] / depth);
    }
    diffuse(grid, diffusivity, time, steps, fields);
    double worst = 0.0;
    for (int i = 0; i < layers; ++i) {
        const double exact = 2.0 + std::exp(-1.0) * std::cos(kPi * grid.middle[i] / depth);
        worst = std::max(worst, std::fabs(fields[i][0] - exact));
    }
    return worst;
}

TEST(Diffusion, SecondOrderInLayers) {
    EXPECT_GE(
        engine::test::measuredOrder({modeError(6, 100000), modeError(12, 100000), modeError(24, 100000)}),
        1.8);
}

TEST(Diffusion, FirstOrderInSteps) {
    EXPECT_GE(engine::test::measuredOrder({modeError(400, 10), modeError(400, 20), modeError(400, 40)}), 0.8);
}

}  // namespace
