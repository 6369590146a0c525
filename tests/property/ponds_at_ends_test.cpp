// Ponds at the ends of what a file may say: they are refused in words, or run to the end, soundly and in
// time.
//
// 100 ponds, 5,000 with DAWNLINE_SLOW=1, of two nights each with 20 layers and steps of 900 s.
#include "engine/base/units.h"
#include "engine/pond/pond_io.h"
#include "engine/water/water.h"
#include "tests/runnable_pond.h"
#include "tests/scenario.h"
#include "tests/sound_run.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <chrono>
#include <cstdlib>
#include <iostream>

namespace engine::test {
namespace {

constexpr unsigned kSeed = 20261130;
constexpr int kDays = 2;
constexpr double kLongest_s = 60.0;  // of one pond; the slowest seen takes a second or two on an idle machine

int ponds() {
    const char* slow = std::getenv("DAWNLINE_SLOW");
    return slow != nullptr && std::string_view(slow) == "1" ? 5000 : 100;
}

double highestOxygen(const RampRun& run) {
    double most = 0.0;
    for (const auto& layers : run.layers) {
        for (const LayerRow& row : layers) {
            most = std::max(most, row.oxygen);
        }
    }
    return most;
}

TEST(PondsAtEnds, AreRefusedInWordsOrRunSoundlyInTime) {
    int run = 0, refused = 0;
    double slowest = 0.0, highest = 0.0;
    for (int draw = 0; run < ponds(); ++draw) {
        SCOPED_TRACE("seed " + std::to_string(kSeed + draw));
        Dice dice(kSeed + static_cast<unsigned>(draw));
        const Pond pond = RunnablePond(dice, true).draw();
        const PondReading reading = readPondText(writePond(pond), "ends.toml");
        if (!reading.pond) {
            ASSERT_FALSE(reading.diagnostics.empty());
            ++refused;
            continue;
        }
        ASSERT_EQ(savingFault(*reading.pond), std::nullopt);
        const auto start = std::chrono::steady_clock::now();
        PondModel model;
        RampRun result;
        RunRequest request;
        request.days = kDays;
        ASSERT_NO_THROW({
            model = run % 20 == 0 ? prepare(*reading.pond, {20, 900.0})
                                  : prepareUnbalanced(*reading.pond, {20, 900.0});
            result = runRamp(
                model, &model.pond.ramps[static_cast<std::size_t>(run) % model.pond.ramps.size()], request);
        }) << writePond(pond);
        expectSound(model, result);
        if (HasFatalFailure()) {
            std::cout << writePond(pond);
            return;
        }
        slowest = std::max(slowest,
                           std::chrono::duration<double>(std::chrono::steady_clock::now() - start).count());
        highest = std::max(highest, highestOxygen(result));
        ++run;
    }
    std::cout << run << " ponds at the ends of their ranges, " << refused
              << " more refused in words; the slowest took " << slowest << " s, the highest oxygen is "
              << highest << " mg/L\n";
    EXPECT_GT(4 * run, refused) << "most of them must come to run";
    EXPECT_LT(slowest, kLongest_s);
}

/// The smallest pond with the most air: its water is turned over many times in a step.
TEST(PondsAtEnds, BubblesNeverFillWaterBeyondTheirOwnSaturation) {
    Pond pond = scenario("high-meadow");
    pond.basin = {};
    pond.basin.area = Quantity(kLeastArea);
    pond.basin.maxDepth = Quantity(5.0);
    pond.basin.meanDepth = Quantity(2.4);
    pond.water.chlorophyll_ugPerL = Quantity(0.0);
    pond.water.weedsCover_percent.reset();
    for (const double air : {1.0, 45.0, 5000.0}) {
        for (const double diffusers : {1.0, 100.0}) {
            SCOPED_TRACE(testing::Message() << air << " L/min by " << diffusers);
            pond.aerator->freeAir_lPerMin = Quantity(air);
            pond.aerator->diffusers = Quantity(diffusers);
            const PondModel model = prepareUnbalanced(pond, {40, 600.0});
            RunRequest request;
            request.days = 3;
            const RampRun run = runRamp(model, &model.pond.ramps.front(), request);
            expectSound(model, run);
            const double pressure = model.parameters.site.airPressure;
            const double coldest = 4.0;  // holds the most
            const double atDiffuser = oxygenSaturation(coldest, 0.0, pressure) *
                                      (pressure + 9806.65 * *pond.aerator->depth) / pressure;
            EXPECT_LE(highestOxygen(run), atDiffuser);
            EXPECT_GT(highestOxygen(run), 5.0);
        }
    }
}

}  // namespace
}  // namespace engine::test
