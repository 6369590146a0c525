// Positivity, closure and completion over seeded random ponds with the plume running.
//
// 1,000 ponds, 10,000 with DAWNLINE_SLOW=1. 20 layers and steps of 900 s, where the default is 40 and 600 s:
// positivity and closure must hold for any of them, and coarser is harder.
#include "engine/base/units.h"
#include "engine/pond/pond_io.h"
#include "engine/ramps/plants.h"
#include "engine/run/run.h"
#include "tests/runnable_pond.h"
#include "tests/sound_run.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <cstdlib>
#include <iostream>

namespace engine::test {
namespace {

constexpr unsigned kSeed = 20260614;
constexpr int kDays = 3;
const Resolution kCoarse{20, 900.0};

int ponds() {
    const char* slow = std::getenv("DAWNLINE_SLOW");
    return slow != nullptr && std::string_view(slow) == "1" ? 10000 : 1000;
}

std::string faults(const Diagnostics& diagnostics) {
    std::string text;
    for (const Diagnostic& diagnostic : diagnostics) {
        text += diagnostic.severity == Severity::Error ? format(diagnostic) + '\n' : "";
    }
    return text;
}

/// How many ponds of each sort there were: a property that no pond puts to the test proves nothing.
struct Sorts {
    int all = 0, mixed = 0, byDensity = 0, byOxygen = 0, shallow = 0, deep = 0, anoxic = 0, withDebt = 0,
        withWeeds = 0, freezing = 0, lifting = 0, capLifted = 0, guessed = 0;

    void count(const PondModel& model, const RampRun& run) {
        ++all;
        mixed += model.bottom.cause == BottomWater::Cause::None ? 1 : 0;
        byDensity += model.bottom.cause == BottomWater::Cause::Density ? 1 : 0;
        byOxygen += model.bottom.cause == BottomWater::Cause::Oxygen ? 1 : 0;
        shallow += model.basin.maxDepth() < 1.0 ? 1 : 0;
        deep += model.basin.maxDepth() > 6.0 ? 1 : 0;
        withDebt += model.debt_kg > 0.0 ? 1 : 0;
        withWeeds += model.parameters.weeds.mass > 0.0 ? 1 : 0;
        guessed += model.profileIsGuess ? 1 : 0;
        lifting += run.largestDose() != nullptr ? 1 : 0;
        capLifted += run.capLiftedDay ? 1 : 0;
        bool anyAnoxic = false, anyFrozen = false;
        for (const auto& layers : run.layers) {
            for (const LayerRow& row : layers) {
                anyAnoxic = anyAnoxic || row.oxygen < 0.01;
                anyFrozen = anyFrozen || row.temperature < 0.0;
            }
        }
        anoxic += anyAnoxic ? 1 : 0;
        freezing += anyFrozen ? 1 : 0;
    }

    void print() const {
        std::cout << "seed " << kSeed << ", " << all << " ponds: mixed " << mixed
                  << ", bottom water by density " << byDensity << ", by oxygen " << byOxygen
                  << ", lifted water " << lifting << ", under 1 m " << shallow << ", over 6 m " << deep
                  << ", with debt " << withDebt << ", with weeds " << withWeeds << ", anoxic somewhere "
                  << anoxic << ", below 0 degC somewhere " << freezing << ", cap lifted " << capLifted
                  << ", profile guessed " << guessed << "\n";
    }
};

TEST(RandomPonds, ArePondsOfTheFile) {
    // The generator keeps the file's own rules, so that what holds for its ponds holds for files.
    for (unsigned draw = 0; draw < 1000; ++draw) {
        SCOPED_TRACE("seed " + std::to_string(kSeed + draw));
        Dice dice(kSeed + draw);
        const Pond pond = runnablePond(dice);
        const PondReading reading = readPondText(writePond(pond), "random.toml");
        ASSERT_EQ(faults(reading.diagnostics), "") << writePond(pond);
        ASSERT_TRUE(reading.pond && *reading.pond == pond);
    }
}

TEST(RandomPonds, RunToTheEndStayPositiveAndClose) {
    Sorts sorts;
    double worstClosing = 0.0, worstDebt = 0.0;
    for (int draw = 0; draw < ponds(); ++draw) {
        SCOPED_TRACE("seed " + std::to_string(kSeed + draw));
        Dice dice(kSeed + draw);
        const Pond pond = runnablePond(dice);
        RampRun run;
        PondModel model;
        RunRequest request;
        request.days = kDays;
        // Each twentieth with the balance, which is the same run twenty times over.
        ASSERT_NO_THROW({
            model = draw % 20 == 0 ? prepare(pond, kCoarse) : prepareUnbalanced(pond, kCoarse);
            run = runRamp(model, &model.pond.ramps[draw % model.pond.ramps.size()], request);
        });
        expectSound(model, run);
        if (HasFatalFailure()) {
            std::cout << writePond(pond);
            return;
        }
        sorts.count(model, run);
        for (const BudgetRow& row : run.budget) {
            worstClosing =
                std::max(worstClosing, std::fabs(row.closingError()) / (row.throughput() + 1e-300));
        }
        worstDebt = std::max(worstDebt, std::fabs(run.debtClosing));
    }
    sorts.print();
    std::cout << "largest closing error of a day over its throughput " << worstClosing
              << ", of the debt of a run over the debt moved " << worstDebt << "\n";
    for (const int count :
         {sorts.mixed, sorts.byDensity, sorts.byOxygen, sorts.shallow, sorts.deep, sorts.anoxic,
          sorts.withDebt, sorts.withWeeds, sorts.lifting, sorts.capLifted, sorts.guessed}) {
        EXPECT_GE(count, sorts.all / 50);
    }
}

/// One column driven step by step: everything it carries, not only what the results show.
TEST(RandomPonds, CarryNothingNegativeAndLoseNoChlorophyll) {
    long steps = 0, closed = 0;
    for (int draw = 0; draw < ponds(); ++draw) {
        SCOPED_TRACE("seed " + std::to_string(kSeed + draw));
        Dice dice(kSeed + draw);
        const PondModel model = prepareUnbalanced(runnablePond(dice), kCoarse);
        Column<double> column(model.grid, model.parameters, model.aerator, model.bottom, model.start);
        const int first = static_cast<int>(std::floor(model.startTime / kDay)) + 1;
        const WeatherSeries weather(model.pond, {}, first - 1, first + 2);
        const PlantTable plants(model.pond, model.startTime);
        const auto chlorophyll = [&] {
            double sum = 0.0;
            for (int i = 0; i < model.grid.layers(); ++i) {
                sum += model.grid.volume[i] * column.state().solutes[i][kChlorophyll];
            }
            return sum;
        };
        const double before = chlorophyll();
        const int open = model.aerator.diffusers;
        const double depth = *model.pond.aerator->depth;
        double time = model.startTime;
        for (int step = 0; step < 100; ++step, ++steps) {
            // Uneven steps, from a minute to an hour, with pauses of the air.
            const double dt = kMinute * dice.between(1, 60);
            const Forcing f = weather.at(time + 0.5 * dt);
            const PlantTable::Scale scale = plants.at(time + dt);
            const bool runs = dice.coin(0.8);
            column.step(
                dt, {f.shortwave, f.air, f.vapourPressure, f.wind10, f.cloud, scale.chlorophyll, scale.weeds},
                {runs ? open : 0, runs ? depth : 0.0, dice.coin()});
            time = std::min(time + dt, model.startTime + kDay);
            for (int i = 0; i < model.grid.layers(); ++i) {
                ASSERT_TRUE(std::isfinite(column.state().heat[i][0])) << "step " << step << ", layer " << i;
                for (int solute = 0; solute < kSolutes; ++solute) {
                    const double value = column.state().solutes[i][solute];
                    ASSERT_TRUE(std::isfinite(value) && value >= 0.0)
                        << value << ", step " << step << ", layer " << i << ", solute " << solute;
                }
            }
            for (const double muck : column.state().muck) {
                // First order towards a store and from it: it stays between, to the last bits.
                ASSERT_TRUE(muck >= 0.0 && muck <= model.parameters.muck.store * (1.0 + 1e-12)) << muck;
            }
        }
        if (!model.pond.spring && model.pond.water.changes.empty()) {
            // Chlorophyll only moves: 100 steps of rounding, 1e-16 each in 20 layers, stay far below 1e-9.
            ASSERT_NEAR(chlorophyll(), before, kClosing * before);
            ++closed;
        }
    }
    EXPECT_GE(closed, ponds() / 2);
    std::cout << "seed " << kSeed << ", " << ponds() << " ponds, " << steps << " steps; chlorophyll kept in "
              << closed << " ponds without spring or dated changes\n";
}

}  // namespace
}  // namespace engine::test
