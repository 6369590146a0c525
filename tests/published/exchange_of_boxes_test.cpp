#include "engine/column/transport.h"
#include "tests/support/columns.h"

#include <gtest/gtest.h>

#include <array>
#include <cmath>
#include <numeric>
#include <vector>

// Well-mixed boxes whose exchange has a closed form.

namespace {

using engine::Fields;
using engine::Flows;
using engine::Grid;
using engine::Transport;

double total(const Grid& grid, const Fields<double, 1>& fields) {
    double sum = 0.0;
    for (int i = 0; i < grid.layers(); ++i) {
        sum += grid.volume[i] * fields[i][0];
    }
    return sum;
}

/// Layers of 4800 m^3 above and 3200 m^3 below, each split in `parts`.
Grid twoBoxes(int parts) {
    Grid grid = engine::test::evenTank(2 * parts, 3.2, 2500.0);
    for (int i = 0; i < 2 * parts; ++i) {
        grid.volume[i] = (i < parts ? 4800.0 : 3200.0) / parts;
    }
    return grid;
}

// A plume of 0.15 m^3/s from a box of 3200 m^3 at 0 into one of 4800 m^3 at 8 mg/L, which flows back: the
// difference falls by Q (1/V1 + 1/V2) = 6.75 /d. Closed form (first-order exchange of two mixed boxes),
// numbers by a separate script. With two layers, with each box of two that are mixed within, and with the
// plume told as two rises. Tolerance 1e-3 mg/L: half of the last digit plus what steps of 1 s of first order
// may add (rate dt / 2 of the difference, 8 x 4e-5); 3e-3 with split boxes, whose halves differ by flow over
// conductance, 1e-3 of the difference. The sum stays to 1e-12.
TEST(ExchangeOfBoxes, PlumeBetweenTwoBoxes) {
    constexpr std::array<int, 5> kMinutes = {15, 30, 60, 120, 240};
    constexpr std::array<double, 5> kTop = {7.783, 7.580, 7.215, 6.623, 5.839};
    constexpr std::array<double, 5> kBottom = {.326, .630, 1.177, 2.065, 3.242};
    for (const int parts : {1, 2}) {
        for (const int rises : {1, 2}) {
            const Grid grid = twoBoxes(parts);
            const int n = grid.layers();
            Flows<double> flows(n);
            flows.segments = rises;
            flows.moving = true;
            for (int k = 0; k < rises; ++k) {
                for (int i = 0; i < parts; ++i) {
                    flows.taken[k][parts + i] = 0.15 / parts / rises;
                    flows.returned[k][i] = 0.15 / parts / rises;
                }
            }
            // Inside a box a conductance of 150 m^3/s, between the boxes none.
            std::vector<double> diffusivity(n + 1, 150.0 * grid.distance[1] / 2500.0);
            diffusivity[parts] = 0.0;
            Transport<double> transport(grid);
            transport.prepare(1.0, diffusivity, 0.0, flows);
            Fields<double, 1> oxygen(n, {0.0});
            for (int i = 0; i < parts; ++i) {
                oxygen[i][0] = 8.0;
            }
            const double before = total(grid, oxygen);
            const double tolerance = parts == 1 ? 1e-3 : 3e-3;
            int second = 0;
            for (std::size_t m = 0; m < kMinutes.size(); ++m) {
                for (; second < 60 * kMinutes[m]; ++second) {
                    transport.advance<1, 1>(flows, {}, {}, oxygen);
                }
                for (int i = 0; i < parts; ++i) {
                    EXPECT_NEAR(oxygen[i][0], kTop[m], tolerance) << kMinutes[m] << " min, layer " << i;
                    EXPECT_NEAR(oxygen[parts + i][0], kBottom[m], tolerance)
                        << kMinutes[m] << " min, layer " << parts + i;
                }
                EXPECT_NEAR(total(grid, oxygen), before, 1e-12 * before);
            }
        }
    }
}

/// What two volumes become once mixed through and through: a step in which the conductance moves 1e8 volumes,
/// so that they are equal to 1e-8 and elimination loses eight of sixteen digits.
double mixed(double upperVolume, double upper, double lowerVolume, double lower) {
    Grid grid = engine::test::evenTank(2, 2.0, 1.0);
    grid.volume = {upperVolume, lowerVolume};
    const Flows<double> still(2);
    Transport<double> transport(grid);
    transport.prepare(1e4, {0.0, 1e4, 0.0}, 0.0, still);
    Fields<double, 1> fields = {{upper}, {lower}};
    transport.advance<1, 1>(still, {}, {}, fields);
    EXPECT_NEAR(fields[0][0], fields[1][0], 1e-6);
    return fields[0][0];
}

// 60 % at 8 and 40 % at 0 mg/L make 4.8 (arithmetic); a published river example mixes 10 m^3/s at BOD 3 and
// oxygen 8 with 0.1 m^3/s at 50 and 2 to 3.47 and 7.94 (tolerance: its last digit).
TEST(ExchangeOfBoxes, FullMixing) {
    EXPECT_NEAR(mixed(0.6, 8.0, 0.4, 0.0), 4.8, 1e-6);
    EXPECT_NEAR(mixed(10.0, 3.0, 0.1, 50.0), 3.47, 0.005);
    EXPECT_NEAR(mixed(10.0, 8.0, 0.1, 2.0), 7.94, 0.005);
}

}  // namespace
