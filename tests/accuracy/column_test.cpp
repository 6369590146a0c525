#include "engine/column/column.h"

#include "engine/base/units.h"
#include "engine/water/water.h"
#include "tests/support/columns.h"
#include "tests/support/cvode_checked.h"
#include "tests/support/order.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <string>
#include <vector>

namespace {

using namespace engine;
using engine::test::fairAfternoon;
using engine::test::inARow;
using engine::test::layInARow;
using engine::test::MuckyPond;
using engine::test::smoothSwitches;
using engine::test::takeFromRow;

double oxygenError(const std::vector<double>& oxygen, const std::vector<double>& exact) {
    double worst = 0.0;
    for (std::size_t i = 0; i < oxygen.size(); ++i) {
        worst = std::max(worst, std::fabs(oxygen[i] - exact[i]));
    }
    return worst;
}

// The stepper against CVODE (SUNDIALS) on the same rates(): two hours of one running window in light, plume
// frozen, mixing prescribed, smooth water. Measured order at least 0.8 (first is claimed), and oxygen of
// every layer within 0.05 mg/L at steps of 75 s, what steps may cost in time. CVODE at 1e-7: the
// limiter of the return flow switches, which finer tolerances answer with ever smaller steps.
TEST(Column, StepsConvergeToCvode) {
    const int layers = 20;
    const double window = 2.0 * kHour;
    const MuckyPond pond(layers);
    const Aeration running{2, 3.0};
    Column<double> shared(pond.grid, pond.parameters, pond.aerator, pond.bottom, pond.start,
                          smoothSwitches());
    State<double> trial = shared.state(), rate = shared.state();
    shared.rates(fairAfternoon(), running, trial, rate);  // this start's plume is the frozen one
    const std::vector<double> end = engine::test::integrateByCvode(
        [&](double, const double* y, double* dy) {
            takeFromRow(y, trial);
            shared.rates(fairAfternoon(), running, trial, rate);
            layInARow(rate, dy);
        },
        inARow(shared.state()), window, 1e-7, 1e-8);
    ASSERT_FALSE(end.empty());
    takeFromRow(end.data(), trial);
    std::vector<double> exact;
    for (int i = 0; i < layers; ++i) {
        exact.push_back(trial.solutes[i][kOxygen]);
    }
    EXPECT_GT(oxygenError(shared.solutes(kOxygen, 0), exact), 0.5);  // something happens at all

    std::vector<double> errors;
    for (const double dt : {600.0, 300.0, 150.0, 75.0}) {
        Column<double> column(pond.grid, pond.parameters, pond.aerator, pond.bottom, pond.start,
                              smoothSwitches());
        for (int i = 0; i < static_cast<int>(window / dt + 0.5); ++i) {
            column.step(dt, fairAfternoon(), running);
        }
        errors.push_back(oxygenError(column.solutes(kOxygen, 0), exact));
    }
    const double order = engine::test::measuredOrder(errors);
    RecordProperty("order", std::to_string(order));
    RecordProperty("error_at_75_s", std::to_string(errors.back()));
    EXPECT_GE(order, 0.8) << errors[0] << " " << errors[1] << " " << errors[2] << " " << errors[3];
    EXPECT_LE(errors.back(), 0.05);
}

double stored(const Column<double>& column, Solute which) {
    const std::vector<double> values = column.solutes(which, 0);
    double sum = 0.0;
    for (std::size_t i = 0; i < values.size(); ++i) {
        sum += column.grid().volume[i] * values[i];
    }
    return sum;
}

// In the dark, with nothing that lives and no muck, only the surface changes oxygen minus debt: what pays a
// debt takes as much of both. Held to 1e-12 of what is stored over a day of plume, wind and convection; the
// surface's part is the ledger's.
TEST(Column, DebtTakesAsMuchOxygenAsItPays) {
    MuckyPond pond(40);
    Parameters<double>& p = pond.parameters;
    p.respiration.base = p.respiration.perChlorophyll = p.weeds.respiration = 0.0;
    p.fish.stock = p.sediment.demand = p.muck.store = 0.0;
    ColumnSwitches switches;
    switches.dissolution = false;
    Column<double> column(pond.grid, p, pond.aerator, pond.bottom, pond.start, switches);
    const auto invariant = [&] {
        return stored(column, kOxygen) - stored(column, kFast) - stored(column, kMedium) -
               stored(column, kSlow);
    };
    const double before = invariant(), debtBefore = column.debtStored();
    Air<double> night = fairAfternoon();
    night.shortwave = 0.0;
    for (int i = 0; i < 144; ++i) {
        column.step(600.0, night, i % 12 < 4 ? Aeration{2, 3.0} : Aeration{});
    }
    const double scale = 8.0 * 13600.0 + debtBefore;
    EXPECT_NEAR(invariant() - column.ledger().oxygen[kSurface], before, 1e-12 * 144 * scale);
    EXPECT_NEAR(column.debtStored() + column.ledger().debtOxidised, debtBefore, 1e-12 * 144 * scale);
    EXPECT_LT(column.debtStored(), 0.9 * debtBefore);
}

// Water of one temperature, saturated, without debt or life, in the dark stays as it is, whatever moves: to
// 1e-11 of its value, a hundred steps of rounding.
TEST(Column, EquilibriumStays) {
    MuckyPond pond(40);
    Parameters<double>& p = pond.parameters;
    p.respiration.base = p.respiration.perChlorophyll = p.weeds.respiration = 0.0;
    p.fish.stock = p.sediment.demand = p.muck.store = 0.0;
    const double saturation = oxygenSaturation(22.0, 0.1, p.site.airPressure);
    pond.start.temperature.assign(40, 22.0);
    pond.start.oxygen.assign(40, saturation);
    for (auto* demandFraction : {&pond.start.fast, &pond.start.medium, &pond.start.slow}) {
        demandFraction->assign(40, 0.0);
    }
    ColumnSwitches switches;
    switches.heat = false;
    switches.dissolution = false;
    Column<double> column(pond.grid, p, pond.aerator, pond.bottom, pond.start, switches);
    Air<double> night = fairAfternoon();
    night.shortwave = 0.0;
    for (int i = 0; i < 100; ++i) {
        column.step(600.0, night, Aeration{2, 3.0});
    }
    for (int i = 0; i < 40; ++i) {
        EXPECT_NEAR(column.state().solutes[i][kOxygen], saturation, 1e-11 * saturation) << i;
        EXPECT_NEAR(column.state().temperature(i), 22.0, 1e-11 * 22.0) << i;
        EXPECT_EQ(column.state().solutes[i][kFast], 0.0);
    }
}

// A diffuser in the middle of a tank with upright walls, where no sediment lies beside it.
TEST(Column, DiffuserOverNoSediment) {
    MuckyPond pond(20);
    const Grid tank = engine::test::evenTank(20, 3.4, 8000.0);
    pond.parameters.muck.reach = 2.0;
    Column<double> column(tank, pond.parameters, pond.aerator, pond.bottom, pond.start);
    for (int i = 0; i < 20; ++i) {
        column.step(600.0, fairAfternoon(), Aeration{2, 1.7});
    }
    for (int i = 0; i < 20; ++i) {
        EXPECT_TRUE(std::isfinite(column.state().solutes[i][kOxygen])) << i;
    }
}

// ---- Packs ----

using Lanes = DoubleLanes;

/// What differs between the members of a test.
struct Member {
    double debt = 1.0, demand = 1.0, attenuation = 1.0, nonRecirculatedShare = 0.5, temperature = 0.0,
           air = 0.0, light = 1.0;
};
constexpr std::array<Member, 5> kMembers = {{
    {1.0, 1.0, 1.0, 0.5, 0.0, 0.0, 1.0},
    {2.0, 0.6, 0.4, 0.7, -3.0, 2.0, 0.8},
    {0.4, 1.7, 1.6, 0.4, 1.0, -4.0, 0.5},
    {1.3, 1.2, 3.0, 0.6, -1.0, 1.0, 1.1},
    {0.0, 0.3, 0.2, 0.45, 0.7, -1.0, 0.9},
}};

Parameters<double> parametersOf(const MuckyPond& pond, const Member& m) {
    Parameters<double> p = pond.parameters;
    p.sediment.demand *= m.demand;
    p.light.attenuationRest *= m.attenuation;
    p.bubbles.nonRecirculatedShare = m.nonRecirculatedShare;
    return p;
}
StartState<double> startOf(const MuckyPond& pond, const Member& m) {
    StartState<double> s = pond.start;
    for (std::size_t i = 0; i < s.oxygen.size(); ++i) {
        s.fast[i] *= m.debt;
        s.medium[i] *= m.debt;
        s.temperature[i] += m.temperature;
    }
    return s;
}
Air<double> airOf(const Member& m, int step) {
    Air<double> air = fairAfternoon();
    const double sun = std::sin(2.0 * kPi * step * 600.0 / kDay);
    air.shortwave = m.light * std::max(700.0 * sun, 0.0);
    air.temperature += m.air + 6.0 * sun - 5.0;
    return air;
}
Aeration aerationOf(int step) {
    return step % 36 < 12 ? Aeration{2, 3.0} : Aeration{};
}
constexpr int kSteps = 216;  // A day and a half, with two nights of convection

std::vector<double> alone(const MuckyPond& pond, const Member& m) {
    Column<double> column(pond.grid, parametersOf(pond, m), pond.aerator, pond.bottom, startOf(pond, m));
    for (int i = 0; i < kSteps; ++i) {
        column.step(600.0, airOf(m, i), aerationOf(i));
    }
    return inARow(column.state());
}

/// The values of each of four members that march together.
std::array<std::vector<double>, 4> together(const MuckyPond& pond, const std::array<Member, 4>& members) {
    const Parameters<double> first = parametersOf(pond, members[0]);
    Parameters<Lanes> p;
    p.site.airPressure = first.site.airPressure;
    p.site.latitude_deg = first.site.latitude_deg;
    p.fish.mass_g = first.fish.mass_g;
    p.thresholds = first.thresholds;
    const int n = pond.grid.layers();
    StartState<Lanes> start;
    for (auto* field : {&start.temperature, &start.salinity, &start.oxygen, &start.chlorophyll, &start.fast,
                        &start.medium, &start.slow, &start.sulfide}) {
        field->resize(n);
    }
    for (int k = 0; k < 4; ++k) {
        const Parameters<double> one = parametersOf(pond, members[k]);
        const auto set = [k](Lanes& to, double from) { setLane(to, k, from); };
        set(p.light.attenuationRest, one.light.attenuationRest);
        set(p.growth.rate, one.growth.rate);
        set(p.growth.saturationLight, one.growth.saturationLight);
        set(p.weeds.mass, one.weeds.mass);
        set(p.weeds.cover, one.weeds.cover);
        set(p.weeds.photosynthesis, one.weeds.photosynthesis);
        set(p.weeds.respiration, one.weeds.respiration);
        set(p.respiration.base, one.respiration.base);
        set(p.respiration.perChlorophyll, one.respiration.perChlorophyll);
        set(p.fish.stock, one.fish.stock);
        set(p.sediment.demand, one.sediment.demand);
        set(p.muck.store, one.muck.store);
        set(p.muck.reach, one.muck.reach);
        set(p.bubbles.nonRecirculatedShare, one.bubbles.nonRecirculatedShare);
        const StartState<double> s = startOf(pond, members[k]);
        for (int i = 0; i < n; ++i) {
            setLane(start.temperature[i], k, s.temperature[i]);
            setLane(start.salinity[i], k, s.salinity[i]);
            setLane(start.oxygen[i], k, s.oxygen[i]);
            setLane(start.chlorophyll[i], k, s.chlorophyll[i]);
            setLane(start.fast[i], k, s.fast[i]);
            setLane(start.medium[i], k, s.medium[i]);
            setLane(start.slow[i], k, s.slow[i]);
            setLane(start.sulfide[i], k, s.sulfide[i]);
        }
    }
    Column<Lanes> column(pond.grid, p, pond.aerator, pond.bottom, start);
    for (int step = 0; step < kSteps; ++step) {
        Air<Lanes> air;
        for (int k = 0; k < 4; ++k) {
            const Air<double> one = airOf(members[k], step);
            setLane(air.shortwave, k, one.shortwave);
            setLane(air.temperature, k, one.temperature);
            setLane(air.vapourPressure, k, one.vapourPressure);
            setLane(air.wind10, k, one.wind10);
            setLane(air.cloud, k, one.cloud);
        }
        column.step(600.0, air, aerationOf(step));
    }
    std::array<std::vector<double>, 4> out;
    for (int k = 0; k < 4; ++k) {
        const State<Lanes>& state = column.state();
        for (int i = 0; i < n; ++i) {
            out[k].push_back(lane(state.heat[i][0], k));
            for (const Lanes& value : state.solutes[i]) {
                out[k].push_back(lane(value, k));
            }
            out[k].push_back(lane(state.mud[i], k));
        }
        for (const Lanes& value : state.muck) {
            out[k].push_back(lane(value, k));
        }
    }
    return out;
}

int differing(const std::vector<double>& a, const std::vector<double>& b) {
    int count = 0;
    for (std::size_t i = 0; i < a.size(); ++i) {
        count += a[i] == b[i] ? 0 : 1;
    }
    return count;
}

// A member's bits do not depend on the members that march with it, nor on its place among them.
TEST(Packs, MemberDoesNotFeelItsMates) {
    const MuckyPond pond(24);
    const auto mixed = together(pond, {kMembers[0], kMembers[1], kMembers[2], kMembers[3]});
    const auto same = together(pond, {kMembers[1], kMembers[1], kMembers[1], kMembers[1]});
    const auto other = together(pond, {kMembers[4], kMembers[3], kMembers[0], kMembers[2]});
    EXPECT_EQ(differing(mixed[1], same[0]), 0);
    EXPECT_EQ(differing(mixed[0], other[2]), 0);
    EXPECT_EQ(differing(mixed[2], other[3]), 0);
    EXPECT_EQ(differing(mixed[3], other[1]), 0);
}

// A pack's member is the plain number's run to 1e-6 of its value or 1e-6, a thousandth of what is shown: not
// bit for bit, since exp, log, tanh and pow of a pack are our own and those of plain numbers the C library's,
// which differ in the last bit, and water about to overturn amplifies that over a day and a half.
TEST(Packs, MemberEqualsItsRunAlone) {
    const MuckyPond pond(24);
    const auto packs = together(pond, {kMembers[0], kMembers[1], kMembers[2], kMembers[3]});
    for (int k = 0; k < 4; ++k) {
        const std::vector<double> one = alone(pond, kMembers[k]);
        ASSERT_EQ(one.size(), packs[k].size());
        double worst = 0.0;
        for (std::size_t i = 0; i < one.size(); ++i) {
            worst = std::max(worst, std::fabs(one[i] - packs[k][i]) / std::max(std::fabs(one[i]), 1.0));
        }
        EXPECT_LE(worst, 1e-6) << "member " << k;
    }
}

}  // namespace
