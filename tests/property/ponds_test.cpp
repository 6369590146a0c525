// What each invented pond is there to show, held against the whole model: the outcomes named in the trade's
// list of ponds (common practice, no source), each with the number that would refute it.
#include "engine/base/units.h"
#include "engine/column/plume.h"
#include "engine/ensemble/compare.h"
#include "engine/run/run.h"
#include "engine/water/water.h"
#include "engine/wording/wording.h"
#include "tests/scenario.h"
#include "tests/sentences.h"

#include <gtest/gtest.h>

#include <array>
#include <cmath>
#include <iostream>

namespace engine::test {
namespace {

constexpr int kDays = 14;

RampRun runOf(const PondModel& model, const Ramp* ramp, int days = kDays) {
    RunRequest request;
    request.days = days;
    RampRun run = runRamp(model, ramp, request);
    EXPECT_EQ(run.end, RunEnd::Completed) << run.message;
    return run;
}

Comparison comparisonOf(const std::string& name) {
    CompareOptions options;
    options.days = kDays;
    options.endStates = false;
    return compare(scenario(name), options);
}

std::string causeName(CauseKind kind) {
    constexpr std::array<const char*, kCauses> kNames{
        "bottom debt",       "bottom deficit", "stirred muck", "sediment demand",
        "algal respiration", "fish",           "weather",      "dying"};
    return kNames[static_cast<std::size_t>(kind)];
}

double gainOf(const RampRun& run, CauseKind kind) {
    const auto found = std::find_if(run.attribution.begin(), run.attribution.end(),
                                    [&](const Cause& cause) { return cause.kind == kind; });
    EXPECT_NE(found, run.attribution.end());
    return found->gain;
}

/// Worst lows of the file's ramps: the best of them minus the worst [g/m^3].
double spreadOfRamps(const PondModel& model) {
    double best = 0.0, worst = 1e9;
    for (const Ramp& ramp : model.pond.ramps) {
        const double low = runOf(model, &ramp).worst().lowest;
        std::cout << ramp.name << " " << low << ", ";
        best = std::max(best, low);
        worst = std::min(worst, low);
    }
    std::cout << "do-nothing " << runOf(model, nullptr).worst().lowest << "\n";
    return best - worst;
}

// In the file's own weather the two calm nights part ramps by whether their air is on: that is printed and
// not held, since the trade's number is for a wind that never rests.
TEST(WindyDugout, IsMixedAndItsRampsCannotBeToldApartWhileTheWindBlows) {
    const Pond pond = scenario("windy-dugout");
    const PondModel model = prepare(inClearWeather(pond));
    EXPECT_FALSE(model.bottom.exists());
    EXPECT_LT(spreadOfRamps(model), 0.3);  // the trade's number for "indistinguishable"
    const double withCalmNights = spreadOfRamps(prepare(pond));
    std::cout << "spread with two calm nights " << withCalmNights << "\n";
}

/// Share of the water down to a depth that is no warmer than a limit, at the run's last hour.
double coolShare(const PondModel& model, const RampRun& run, double limit, double depth) {
    double cool = 0.0, all = 0.0;
    for (int i = 0; i < model.grid.layers(); ++i) {
        if (model.grid.middle[i] <= depth) {
            all += model.grid.volume[i];
            cool += run.layers.back()[i].temperature <= limit ? model.grid.volume[i] : 0.0;
        }
    }
    return cool / all;
}

// Below the diffusers the spring lies in a thin cold layer of its own, which no plume draws on; what the fish
// can crowd into is above them. 18 degC is the trade's limit of comfort for trout.
TEST(SpringTrout, MixingTakesTheColdWaterThatDoNothingKeeps) {
    const PondModel model = prepare(scenario("spring-trout"));
    const double diffusers = *model.pond.aerator->depth;
    const auto share = [&](const Ramp* ramp) {
        const double cool = coolShare(model, runOf(model, ramp), 18.0, diffusers);
        std::cout << (ramp != nullptr ? ramp->name : "do-nothing") << ": share no warmer than 18 degC "
                  << cool << "\n";
        return cool;
    };
    const double nothing = share(nullptr);
    EXPECT_GT(nothing, 0.0);
    for (const char* name : {"on at once", "doubling from 30 min", "gentle, twelve days"}) {
        EXPECT_EQ(share(&rampOf(model.pond, name)), 0.0) << name;
    }
    // Diffusers in the warm layer leave the cold water where it is.
    EXPECT_GT(share(&rampOf(model.pond, "shallow, at night")), 0.9 * nothing);
}

TEST(PeaSoup, CrashesWithOrWithoutTheRampAndTheCausesSayTheBloom) {
    const Comparison comparison = comparisonOf("pea-soup");
    const OxygenThresholds& thresholds = comparison.model.parameters.thresholds;
    const RampRun& nothing = comparison.runs.front();
    const double deficit = thresholds.stress - nothing.worst().lowest;
    std::cout << "stress line " << thresholds.stress << ", do-nothing short of it by " << deficit << "\n";
    EXPECT_GT(deficit, 0.0);
    for (const RampRun& run : comparison.runs) {
        std::cout << run.name << ": lowest " << run.worst().lowest << " in night " << run.worst().day << ";";
        for (const Cause& cause : run.attribution) {
            std::cout << " " << causeName(cause.kind) << " " << cause.gain << ";";
        }
        std::cout << "\n";
        EXPECT_LT(run.worst().lowest, thresholds.stress) << run.name;
        EXPECT_LT(nothing.worst().lowest - run.worst().lowest, deficit) << run.name;
        const double bloom =
            std::max(gainOf(run, CauseKind::AlgalRespiration), gainOf(run, CauseKind::Dying));
        EXPECT_GT(bloom, gainOf(run, CauseKind::BottomDebt)) << run.name;
        // Bloom, its death, the sky that it dies under and the mud that it feeds come before anything the
        // ramp lifts.
        const auto isOfTheBloom = [](CauseKind kind) {
            return kind == CauseKind::AlgalRespiration || kind == CauseKind::Dying;
        };
        const CauseKind first = run.attribution[0].kind, second = run.attribution[1].kind;
        EXPECT_TRUE(isOfTheBloom(first) || first == CauseKind::Weather || first == CauseKind::SedimentDemand)
            << run.name << ": " << causeName(first);
        EXPECT_TRUE(isOfTheBloom(first) || isOfTheBloom(second)) << run.name << ": " << causeName(second);
    }
}

TEST(OldQuarry, PlumeDetrainsBelowTheSurfaceLayerAtTheStart) {
    const PondModel model = prepare(scenario("old-quarry"));
    std::vector<double> density;
    for (int i = 0; i < model.grid.layers(); ++i) {
        density.push_back(densityOverOrigin(model.start.temperature[i], model.start.salinity[i]));
    }
    PlumeSource source;
    source.depth = *model.pond.aerator->depth;
    source.freeAir = model.aerator.freeAir;
    source.diffusers = model.aerator.diffusers;
    source.bubbleDiameter = model.aerator.bubbleDiameter;
    source.airPressure = model.parameters.site.airPressure;
    const Plume plume = integratePlume(
        source, {model.grid, model.start.temperature, model.start.salinity, density, model.start.oxygen},
        model.bottom.depth);
    for (const PlumeSegment& segment : plume.segments) {
        std::cout << "lets go at " << segment.topDepth << " m, flow " << segment.flow << " m3/s\n";
    }
    // The surface layer of the profile, of one temperature, reaches down to 4 m. What the bubbles start anew
    // above may rise on to the surface; the water from the diffuser does not.
    ASSERT_FALSE(plume.segments.empty());
    EXPECT_GT(plume.segments.front().topDepth, 4.0);
}

TEST(SaltLens, IsNeverCalledMixed) {
    Pond pond = scenario("salt-lens");
    pond.profile->temperature = {28,   27.5, 27,
                                 27.5, 28,   27};  // warm water under warm water, as on its first day
    const Comparison comparison = compare(pond, {});
    const PondModel& model = comparison.model;
    EXPECT_TRUE(model.bottom.exists());
    // By temperature at 0.5 m and at the diffusers alone it would be.
    const double top = interpolate(model.profile.depth, model.profile.temperature, model.surfaceDepth);
    const double bottom = interpolate(model.profile.depth, model.profile.temperature, model.bottomDepth);
    EXPECT_LT(std::fabs(top - bottom), 1.0);
    const auto sentences = sentencesOf(comparison);
    EXPECT_FALSE(isSaid(sentences, SentenceKey::Mixed));
    EXPECT_FALSE(isSaid(sentences, SentenceKey::TriageMixed));
    EXPECT_TRUE(isSaid(sentences, SentenceKey::SaltLayer));
}

TEST(SaltLens, NoCapIsLiftedForTemperatureAlone) {
    const PondModel model = prepare(scenario("salt-lens"));
    constexpr int kLong = 60;
    for (const char* name : {"tenth of the bottom a day", "quarter of the bottom a day"}) {
        const RampRun run = runOf(model, &rampOf(model.pond, name), kLong);
        int onlyByTemperature = 0;
        for (const DayRow& row : run.days) {
            const bool isBefore = !run.capLiftedDay || row.day + 1 < *run.capLiftedDay;
            const bool isEven = std::fabs(row.dawnTopMinusBottom) < 1.0;
            onlyByTemperature += isBefore && isEven && row.dawnBottom <= 2.0 ? 1 : 0;
            // The dawn of night d is that of day d + 1, and lets go of the cap on that day.
            if (run.capLiftedDay && row.day + 1 == *run.capLiftedDay) {
                EXPECT_GT(row.dawnBottom, 2.0) << name;
            }
        }
        std::cout << name << ": lifted on day " << run.capLiftedDay.value_or(0)
                  << ", dawns even in temperature "
                  << "with a bottom without oxygen before it " << onlyByTemperature << "\n";
        EXPECT_GT(onlyByTemperature, 0) << name;  // or the test would prove nothing
    }
}

TEST(HighMeadow, LinesFollowSaturationAtAltitude) {
    Pond pond = scenario("high-meadow");
    for (const double elevation : {0.0, 1200.0, 2400.0, 3000.0}) {
        pond.place.elevation = elevation;
        const OxygenThresholds thresholds = thresholdsOf(pond, *pond.profile);
        const double ceiling =
            0.8 * oxygenSaturation(pond.profile->temperature.front(), 0.0, airPressure(elevation));
        std::cout << elevation << " m: stress line " << thresholds.stress << ", 80 % of saturation "
                  << ceiling << "\n";
        // Trout, and 19 degC at the surface: 6 + 1 mg/L, but never above 80 % of saturation.
        EXPECT_DOUBLE_EQ(thresholds.stress, std::min(7.0, ceiling));
        EXPECT_DOUBLE_EQ(thresholds.lethal, std::min(3.0, ceiling));
    }
}

TEST(WeedyWoodland, KillingAllWeedsOnDayEightLowersItsWorstNight) {
    Pond pond = scenario("weedy-woodland");
    const RampRun kept = runOf(prepare(pond), nullptr);
    const std::chrono::local_days first(*pond.place.firstDay);
    for (const auto& [day, cover] : {std::pair{8, 65.0}, std::pair{15, 5.0}}) {
        WaterChange change;
        change.date = Date(first + std::chrono::days(day - 1));
        change.weedsCover_percent = cover;
        pond.water.changes.push_back(change);
    }
    const RampRun killed = runOf(prepare(pond), nullptr);
    std::cout << "weeds kept: lowest " << kept.worst().lowest << " in night " << kept.worst().day
              << "; killed: " << killed.worst().lowest << " in night " << killed.worst().day << "\n";
    EXPECT_LT(killed.worst().lowest, kept.worst().lowest);
    EXPECT_GE(killed.worst().day, 8);
}

}  // namespace
}  // namespace engine::test
