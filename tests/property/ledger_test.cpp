// The ledger bites: no term is a remainder and no clamp adds mass, so that a term left out, or mass put in
// behind the ledger's back, shows.
#include "engine/base/units.h"
#include "engine/run/run.h"
#include "tests/scenario.h"

#include <gtest/gtest.h>

#include <cmath>
#include <iostream>
#include <numeric>

namespace engine::test {
namespace {

static_assert(!kTermNames.back().empty());  // an entry without a name shifts those behind it

constexpr double kClosing = 1e-9;          // The issue: of the throughput
constexpr double kBites = 1e3 * kClosing;  // A term left out must miss by far more than rounding could

double missOf(const BudgetRow& row) {
    return std::fabs(row.closingError()) / row.throughput();
}

/// What closing says once one term is dropped; the throughput stays, so that the miss is the term's own
/// share.
double missWithout(BudgetRow row, int term) {
    const double throughput = row.throughput();
    row.terms[static_cast<std::size_t>(term)] = 0.0;
    return std::fabs(row.closingError()) / throughput;
}

/// A column in which every term of the ledger is at work, on a sunny morning with the plume running.
PondModel everyTerm() {
    Pond pond = scenario("grandfathers-pond");
    pond.water.weedsCover_percent = Quantity(20.0);
    pond.spring = Spring{Quantity(2.0), Quantity(14.0), Quantity(6.0), std::nullopt};
    pond.surfaceAerator = SurfaceAerator{Quantity(1.5), std::nullopt, std::nullopt, std::nullopt, true};
    PondModel model = prepareUnbalanced(pond);
    model.start.oxygen.front() = 30.0;  // more than its pressure holds
    return model;
}

BudgetRow stepOnce(const PondModel& model, const ColumnSwitches& switches = {}, double hour = 11.0) {
    Column<double> column(model.grid, model.parameters, model.aerator, model.bottom, model.start, switches);
    const WeatherSeries weather(model.pond, {}, 0, 2);
    BudgetRow row;
    const double before = column.oxygenStored(), organicBefore = column.organicStored();
    for (int step = 0; step < 6; ++step) {
        const Forcing f = weather.at(hour * kHour + step * 600.0);
        column.step(
            600.0, {f.shortwave, f.air, f.vapourPressure, f.wind10, f.cloud},
            {model.aerator.diffusers, *model.pond.aerator->depth, model.pond.surfaceAerator.has_value()});
    }
    row.terms = column.ledger().oxygen;
    row.storedChange = column.oxygenStored() - before;
    row.organic = column.ledger().organic;
    row.organicChange = column.organicStored() - organicBefore;
    return row;
}

TEST(Ledger, OfTheHeadlinePondFailsWithoutAnyOfItsTerms) {
    const PondModel model = prepare(scenario("grandfathers-pond"));
    RunRequest request;
    request.days = 3;
    request.keepLayers = false;
    const RampRun run = runRamp(model, &rampOfKind(model.pond, RampKind::Continuous), request);
    ASSERT_EQ(run.end, RunEnd::Completed);
    for (int term = 0; term < kTerms; ++term) {
        const bool absent =
            term == kSurfaceAerator || term == kInflow || term == kBubblingOut;  // see the made column
        for (const BudgetRow& row : run.budget) {
            SCOPED_TRACE(std::string(kTermNames[static_cast<std::size_t>(term)]) + " on day " +
                         std::to_string(row.day));
            EXPECT_LE(missOf(row), kClosing);
            if (absent) {
                EXPECT_EQ(row.terms[static_cast<std::size_t>(term)], 0.0);
            } else if (row.day >= 1) {  // the air starts on day 1
                EXPECT_GE(missWithout(row, term), kBites);
            }
        }
    }
}

TEST(Ledger, OfAColumnWithEveryTermFailsWithoutAnyOfThem) {
    const BudgetRow row = stepOnce(everyTerm());
    EXPECT_LE(missOf(row), kClosing);
    std::cout << "share of the throughput:";
    for (int term = 0; term < kTerms; ++term) {
        SCOPED_TRACE(kTermNames[static_cast<std::size_t>(term)]);
        std::cout << ' ' << kTermNames[static_cast<std::size_t>(term)] << ' ' << missWithout(row, term);
        EXPECT_GE(missWithout(row, term), kBites);
    }
    std::cout << "\n";
}

// What organic matter does, closes like oxygen; what only moves within the store changes nothing.
TEST(Ledger, OfOrganicMatterFailsWithoutAnyOfItsTerms) {
    PondModel model = everyTerm();
    model.parameters.organic.load = fromPerDay(1.0);
    model.parameters.organic.loss = fromPerDay(0.1);
    const BudgetRow row = stepOnce(model);
    const double moved = std::accumulate(row.organic.begin(), row.organic.end(), 0.0);
    EXPECT_LE(std::fabs(row.organicClosingError()), kClosing * moved);
    for (std::size_t term = 0; term < row.organic.size(); ++term) {
        BudgetRow without = row;
        without.organic[term] = 0.0;
        EXPECT_GT(row.organic[term], 0.0) << term;
        const double miss = std::fabs(without.organicClosingError());
        EXPECT_TRUE(kOrganicSigns[term] == 0.0 ? miss <= kClosing * moved : miss >= kBites * moved) << term;
    }
}

TEST(Ledger, OfOrganicMatterClosesOverTheHeadlinesRun) {
    const PondModel model = prepare(scenario("grandfathers-pond"));
    RunRequest request;
    request.keepLayers = false;
    for (const Ramp* ramp :
         {static_cast<const Ramp*>(nullptr), &rampOfKind(model.pond, RampKind::Continuous)}) {
        for (const BudgetRow& row : runRamp(model, ramp, request).budget) {
            const double moved = std::accumulate(row.organic.begin(), row.organic.end(), 0.0);
            EXPECT_LE(std::fabs(row.organicClosingError()), kClosing * moved) << "day " << row.day;
        }
    }
}

TEST(Ledger, HoldsNothingOfAProcessThatIsOff) {
    // A term taken as what is left over would keep the rounding of the others; a term of its own is exactly
    // 0.
    const auto with = [](auto change) {
        PondModel model = everyTerm();
        change(model);
        return model;
    };
    const auto zero = [](std::vector<double>& layers) { std::fill(layers.begin(), layers.end(), 0.0); };
    const std::array<std::pair<Term, PondModel>, 7> off{{
        {kPhotosynthesis, with([](PondModel& m) { m.parameters.growth.factor = 0.0; })},
        {kRespiration, with([](PondModel& m) { m.parameters.respiration.factor = 0.0; })},
        {kFishTerm, with([](PondModel& m) { m.parameters.fish.stock = 0.0; })},
        {kSediment, with([](PondModel& m) {
             m.parameters.sediment.demand = 0.0;
             m.parameters.organic.mudDecay = 0.0;
         })},
        {kBubblingOut, with([](PondModel& m) { m.start.oxygen.front() = 9.0; })},
        {kSurfaceAerator, with([](PondModel& m) { m.parameters.surface.aeratorTransfer = 0.0; })},
        {kInflow, with([](PondModel& m) { m.parameters.spring.flow = 0.0; })},
    }};
    const auto check = [](Term term, const BudgetRow& row) {
        SCOPED_TRACE(kTermNames[term]);
        EXPECT_EQ(row.terms[term], 0.0);
        EXPECT_LE(missOf(row), kClosing);
        int others = 0;
        for (const double value : row.terms) {
            others += value != 0.0 ? 1 : 0;
        }
        EXPECT_EQ(others, kTerms - 1);
    };
    for (const auto& [term, model] : off) {
        check(term, stepOnce(model));
    }
    check(kPhotosynthesis, stepOnce(everyTerm(), {}, 1.0));  // at night
    check(kDebtTerm, stepOnce(with([&](PondModel& m) {
              for (auto* demandFraction : {&m.start.fast, &m.start.medium, &m.start.slow}) {
                  zero(*demandFraction);
              }
              m.parameters.muck.store = 0.0;
              m.parameters.sediment.regenerationShare = 0.0;
          })));
    ColumnSwitches sealed;
    sealed.dissolution = false;
    check(kBubbles, stepOnce(everyTerm(), sealed));
}

TEST(Ledger, SeesOxygenPutInBehindItsBack) {
    // Were stored change made up from the terms, or a term from stored change, this gram would not show.
    const PondModel model = everyTerm();
    Column<double> column(model.grid, model.parameters, model.aerator, model.bottom, model.start);
    const double before = column.oxygenStored();
    const Air<double> air{500.0, 28.0, 2000.0, 2.0, 0.1};
    column.step(600.0, air, {model.aerator.diffusers, *model.pond.aerator->depth, true});
    const int layer = model.grid.layers() / 2;
    column.state().solutes[layer][kOxygen] += 1.0 / model.grid.volume[layer];
    column.step(600.0, air, {model.aerator.diffusers, *model.pond.aerator->depth, true});
    BudgetRow row;
    row.terms = column.ledger().oxygen;
    row.storedChange = column.oxygenStored() - before;
    EXPECT_NEAR(row.closingError(), 1.0, kClosing * row.throughput());
}

TEST(Ledger, ClosesWhereOxygenRunsOutWithoutAFloor) {
    // Demands of a hundred times the oxygen there is, over long steps: what is eaten is what there was.
    PondModel model = everyTerm();
    model.parameters.respiration.base = 100.0 * model.start.oxygen[0] / kDay;
    model.parameters.sediment.demand *= 100.0;
    for (double& fast : model.start.fast) {
        fast = 500.0;
    }
    Column<double> column(model.grid, model.parameters, model.aerator, model.bottom, model.start);
    const double atStart = column.oxygenStored();
    double before = atStart;
    for (const double dt : {1.0, 60.0, 900.0, 3600.0, 21600.0}) {
        column.ledger() = {};
        column.step(dt, {0.0, 28.0, 2000.0, 2.0, 0.1}, {});
        BudgetRow row;
        row.terms = column.ledger().oxygen;
        row.storedChange = column.oxygenStored() - before;
        before = column.oxygenStored();
        EXPECT_LE(missOf(row), kClosing) << "step of " << dt << " s";
        EXPECT_TRUE(dt != 3600.0 || column.oxygenStored() < 0.1 * atStart) << column.oxygenStored() / atStart;
        for (int i = 0; i < model.grid.layers(); ++i) {
            EXPECT_GE(column.state().solutes[i][kOxygen], 0.0) << "step of " << dt << " s, layer " << i;
        }
    }
}

}  // namespace
}  // namespace engine::test
