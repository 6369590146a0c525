#include "engine/column/transport.h"

#include "engine/column/constants_mixing.h"
#include "tests/support/columns.h"
#include "tests/support/order.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <cstddef>
#include <random>
#include <string>
#include <vector>

namespace {

using engine::Fields;
using engine::Flows;
using engine::Grid;
using engine::kStageShare;
using engine::Transport;
using engine::test::evenTank;
using engine::test::measuredOrder;

struct Extent {
    double low, high;
};
template <std::size_t C>
Extent extent(const std::vector<std::array<double, C>>& fields, int c) {
    Extent out{fields[0][c], fields[0][c]};
    for (const auto& layer : fields) {
        out.low = std::min(out.low, layer[c]);
        out.high = std::max(out.high, layer[c]);
    }
    return out;
}

/// A plume that takes its water at the bottom and returns it at the top of a tank.
Flows<double> throughFlow(int layers, double flow) {
    Flows<double> flows(layers);
    flows.segments = 1;
    flows.moving = true;
    flows.taken[0][layers - 1] = flow;
    flows.returned[0][0] = flow;
    return flows;
}

struct Travel {
    double meanError, largestError;
    Extent extent;
};

/// A bell of oxygen carried down a metre by the return flow, at rest apart from that, in two stages a step as
/// the column takes them; Courant number 0.4.
Travel travel(int layers) {
    constexpr double kDepth = 4.0, kArea = 1000.0, kSpeed = 1e-4, kWidth = 0.3;
    const Grid grid = evenTank(layers, kDepth, kArea);
    const Flows<double> flows = throughFlow(layers, kSpeed * kArea);
    const auto bell = [](double z, double middle) {
        return 1.0 + 6.0 * std::exp(-std::pow((z - middle) / kWidth, 2));
    };
    Fields<double, 1> fields(layers);
    for (int i = 0; i < layers; ++i) {
        fields[i][0] = bell(grid.middle[i], 1.5);
    }
    const int steps = static_cast<int>(std::lround(layers / kDepth / 0.4));
    Transport<double> transport(grid);
    transport.prepare(kStageShare / kSpeed / steps, std::vector<double>(layers + 1, 0.0), 0.0, flows);
    for (int i = 0; i < steps; ++i) {
        const Fields<double, 1> before = fields;
        transport.advance<1, 1>(flows, {}, {}, fields);
        for (int k = 0; k < layers; ++k) {
            fields[k][0] = before[k][0] + (1.0 - kStageShare) / kStageShare * (fields[k][0] - before[k][0]);
        }
        transport.advance<1, 1>(flows, {}, {}, fields);
    }
    Travel out{0.0, 0.0, extent(fields, 0)};
    for (int i = 0; i < layers; ++i) {
        const double error = std::fabs(fields[i][0] - bell(grid.middle[i], 2.5));
        out.meanError += error / layers;
        out.largestError = std::max(out.largestError, error);
    }
    return out;
}

// Limited central fluxes: of second order but for the top of the bell, which the limiter cuts. Asked:
// order 1.5 of the mean error (first-order upwind flow would give 1), and nothing beyond the values at the
// start by more than a thousandth of the bell, since two stages may overshoot where one does not.
TEST(Transport, CarriesASmoothProfile) {
    std::vector<double> errors;
    for (const int layers : {80, 160, 320}) {
        const Travel there = travel(layers);
        errors.push_back(there.meanError);
        EXPECT_GE(there.extent.low, 1.0 - 0.006) << layers;
        EXPECT_LE(there.extent.high, 7.0 + 0.006) << layers;
    }
    const double order = measuredOrder(errors);
    RecordProperty("order", std::to_string(order));
    EXPECT_GE(order, 1.5) << errors[0] << " " << errors[1] << " " << errors[2];
}

/// Random water and a random plume: uneven layers, one to four rises that take and return anywhere, now and
/// then a spring; flows so large that a step of an hour changes the water of a layer a hundred times.
struct RandomWater {
    Grid grid;
    Flows<double> flows;
    std::vector<double> diffusivity;

    RandomWater(std::mt19937& random, double courant)
        : grid(evenTank(3 + static_cast<int>(random() % 38), 3.0, 2000.0)), flows(grid.layers()) {
        std::uniform_real_distribution<double> unit(0.0, 1.0);
        const int n = grid.layers();
        for (double& volume : grid.volume) {
            volume *= 0.2 + 2.0 * unit(random);
        }
        flows.moving = true;
        flows.segments = 1 + static_cast<int>(random() % engine::kPlumeSegments);
        for (int k = 0; k < flows.segments; ++k) {
            double taken = 0.0, returned = 0.0;
            std::vector<double> shares(n, 0.0);
            for (int i = 0; i < n; ++i) {
                flows.taken[k][i] =
                    unit(random) < 0.5 ? courant * grid.volume[i] * unit(random) / 3600.0 : 0.0;
                taken += flows.taken[k][i];
                shares[i] = unit(random) < 0.3 ? unit(random) : 0.0;
                returned += shares[i];
            }
            if (returned == 0.0) {
                shares[0] = returned = 1.0;
            }
            for (int i = 0; i < n; ++i) {
                flows.returned[k][i] = taken * shares[i] / returned;
            }
        }
        diffusivity.assign(n + 1, 0.0);
        for (double& k : diffusivity) {
            k = std::pow(10.0, -9.0 + 7.0 * unit(random));  // to 1e-2, what convection reaches in 3 m
        }
    }
};

// Whatever the flows and however long the step: nothing negative, nothing beyond what was there, and the sums
// kept to 1e-12: rounding, 1e-16, grows with the volumes that pass through a layer in a step, up to a few
// thousand here.
TEST(Transport, RandomPlumesKeepBoundsAndSums) {
    std::mt19937 random(20260614);
    for (int trial = 0; trial < 400; ++trial) {
        const RandomWater water(random, trial % 2 == 0 ? 100.0 : 1.0);
        const int n = water.grid.layers();
        Fields<double, engine::kSolutes> fields(n);
        std::uniform_real_distribution<double> unit(0.0, 1.0);
        for (auto& layer : fields) {
            for (double& value : layer) {
                value =
                    unit(random) < 0.3 ? 0.0 : 14.0 * unit(random);  // water without oxygen beside rich water
            }
        }
        Transport<double> transport(water.grid);
        transport.prepare(3600.0, water.diffusivity, 2e-9, water.flows);
        for (int step = 0; step < 3; ++step) {
            const auto before = fields;
            transport.advance<engine::kSolutes, engine::kSolutes>(water.flows, {}, {}, fields);
            for (int c = 0; c < engine::kSolutes; ++c) {
                const Extent was = extent(before, c), is = extent(fields, c);
                ASSERT_GE(is.low, 0.0) << trial;
                ASSERT_GE(is.low, was.low - 1e-12) << trial;
                ASSERT_LE(is.high, was.high + 1e-12) << trial;
                double sum = 0.0, sumBefore = 0.0;
                for (int i = 0; i < n; ++i) {
                    sum += water.grid.volume[i] * fields[i][c];
                    sumBefore += water.grid.volume[i] * before[i][c];
                }
                ASSERT_NEAR(sum, sumBefore, 1e-12 * sumBefore) << trial;
            }
        }
    }
}

// With a spring: water of one kind stays as it is while the spring is of that kind, and nothing passes beyond
// the values of water and spring.
TEST(Transport, SpringKeepsBounds) {
    std::mt19937 random(7);
    std::uniform_real_distribution<double> unit(0.0, 1.0);
    for (int trial = 0; trial < 200; ++trial) {
        RandomWater water(random, 30.0);
        const int n = water.grid.layers();
        for (int i = 0; i < n; ++i) {
            water.flows.entering[i] = unit(random) < 0.3 ? unit(random) : 0.0;
            water.flows.overflow += water.flows.entering[i];
        }
        Transport<double> transport(water.grid);
        transport.prepare(600.0, water.diffusivity, 2e-9, water.flows);
        water.flows.enters = true;
        // What each kind of water brings.
        const auto brought = [&](double value) {
            Fields<double, 1> out(n);
            for (int i = 0; i < n; ++i) {
                out[i][0] = value * water.flows.entering[i];
            }
            return out;
        };
        Fields<double, 1> same(n, {7.25}), mixed(n);
        for (auto& layer : mixed) {
            layer[0] = 5.0 + 4.0 * unit(random);
        }
        for (int step = 0; step < 20; ++step) {
            transport.advance<1, 1>(water.flows, brought(7.25), {}, same);
            transport.advance<1, 1>(water.flows, brought(2.0), {}, mixed);
        }
        for (int i = 0; i < n; ++i) {
            ASSERT_NEAR(same[i][0], 7.25, 1e-11) << trial;
            ASSERT_GE(mixed[i][0], 2.0 - 1e-11) << trial;
            ASSERT_LE(mixed[i][0], 9.0 + 1e-11) << trial;
        }
    }
}

// rates() is what advance() does in the limit of small steps, on smooth profiles: the difference quotient
// comes nearer in proportion to the step (asked: order 0.8) and is within 1e-4 of the largest rate at 0.1 s.
TEST(Transport, RatesAreTheLimitOfSmallSteps) {
    const int n = 30;
    const Grid grid = evenTank(n, 3.0, 2000.0);
    Flows<double> flows(n);
    flows.moving = true;
    flows.segments = 2;
    for (int i = 15; i < n; ++i) {
        flows.taken[0][i] = 0.004;
    }
    flows.returned[0][13] = 0.02;
    flows.returned[0][14] = 0.04;
    for (int i = 0; i < 15; ++i) {
        flows.taken[1][i] = 0.003;
    }
    flows.returned[1][2] = 0.045;
    flows.entering[20] = 0.002;
    flows.overflow = 0.002;
    flows.enters = true;
    Fields<double, 1> brought(n);
    brought[20][0] = 6.0 * 0.002;
    std::vector<double> diffusivity(n + 1);
    for (int i = 0; i <= n; ++i) {
        diffusivity[i] = 1e-6 * (1.0 + i % 5);
    }
    Fields<double, 1> start(n), rate(n);
    for (int i = 0; i < n; ++i) {
        start[i][0] = 4.0 - 4.0 * std::tanh((grid.middle[i] - 1.4) / 0.6);
    }
    Transport<double> transport(grid);
    transport.rates<1>(diffusivity, 2e-9, flows, brought, start, rate);
    double largest = 0.0;
    for (const auto& layer : rate) {
        largest = std::max(largest, std::fabs(layer[0]));
    }
    std::vector<double> errors;
    for (const double dt : {10.0, 1.0, 0.1}) {
        Fields<double, 1> fields = start;
        transport.prepare(dt, diffusivity, 2e-9, flows);
        transport.advance<1, 1>(flows, brought, {}, fields);
        double worst = 0.0;
        for (int i = 0; i < n; ++i) {
            worst = std::max(worst, std::fabs((fields[i][0] - start[i][0]) / dt - rate[i][0]));
        }
        errors.push_back(worst / largest);
    }
    EXPECT_LE(errors.back(), 1e-4);
    EXPECT_GE(measuredOrder(errors) / std::log2(10.0), 0.8)
        << errors[0] << " " << errors[1] << " " << errors[2];
}

}  // namespace
