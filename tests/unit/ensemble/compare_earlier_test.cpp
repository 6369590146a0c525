// What a comparison takes over from an earlier one: only what would come out the same.
#include "engine/ensemble/compare.h"
#include "tests/made_up_comparison.h"

#include <gtest/gtest.h>

#include <functional>

namespace engine {
namespace {

constexpr double kMark = 12345.0;  // an energy that no run of its own would have

CompareOptions twoDays() {
    CompareOptions options;
    options.days = 2;
    options.threads = 1;
    options.resolution = {12, 1800.0};
    return options;
}

Pond plainPond() {
    return readPondText(test::kPlainPond, "plain.toml").pond.value();
}

const Comparison& earlier() {
    static const Comparison comparison = compare(plainPond(), twoDays());
    return comparison;
}

/// Which runs are taken over when an earlier comparison is offered after an edit; all others must be as new.
std::vector<bool> takenOver(const std::function<void(Pond&)>& edit, CompareOptions options = twoDays()) {
    Comparison marked = earlier();
    for (RampRun& run : marked.runs) {
        run.energy_kWh = kMark;
    }
    Pond pond = plainPond();
    edit(pond);
    const Comparison fresh = compare(pond, options);
    options.earlier = &marked;
    const Comparison reused = compare(pond, options);
    EXPECT_EQ(reused.runs.size(), fresh.runs.size());
    std::vector<bool> taken;
    for (std::size_t i = 0; i < fresh.runs.size(); ++i) {
        const RampRun &a = fresh.runs[i], &b = reused.runs[i];
        taken.push_back(b.energy_kWh == kMark);
        EXPECT_EQ(a.name, b.name);
        EXPECT_EQ(a.worst().lowest, b.worst().lowest) << a.name;
        EXPECT_EQ(a.endState.has_value(), b.endState.has_value());
        EXPECT_EQ(a.endState.value_or(0.0), b.endState.value_or(0.0)) << a.name;
        EXPECT_EQ(a.hours.back().fishWater, b.hours.back().fishWater) << a.name;
        EXPECT_EQ(a.attribution.size(), b.attribution.size());
        for (std::size_t k = 0; k < std::min(a.attribution.size(), b.attribution.size()); ++k) {
            EXPECT_EQ(a.attribution[k].gain, b.attribution[k].gain) << a.name;
        }
    }
    return taken;
}

using Taken = std::vector<bool>;

TEST(CompareEarlier, AnEditedRampAloneIsRunAnew) {
    EXPECT_EQ(takenOver([](Pond& pond) { pond.ramps[1].first_min = 60.0; }),
              (Taken{true, true, false, true}));
}

TEST(CompareEarlier, NamesAndTheOrderOfRampsDoNotMatter) {
    EXPECT_EQ(takenOver([](Pond& pond) {
                  std::swap(pond.ramps[0], pond.ramps[1]);
                  pond.ramps[2].name = "renamed";
                  pond.title = "renamed";
                  pond.chosenRamp.clear();
              }),
              (Taken{true, true, true, true}));
}

TEST(CompareEarlier, ANewRampIsRunAndTheOthersAreTakenOver) {
    EXPECT_EQ(takenOver([](Pond& pond) {
                  pond.ramps.push_back(pond.ramps[1]);
                  pond.ramps.back().name = "other";
                  pond.ramps.back().first_min = 45.0;
              }),
              (Taken{true, true, true, true, false}));
}

TEST(CompareEarlier, AnotherPondTakesNothingOver) {
    const Taken none{false, false, false, false};
    EXPECT_EQ(takenOver([](Pond& pond) { pond.aerator->diffusers = 1.0; }), none);
    EXPECT_EQ(takenOver([](Pond& pond) { pond.limits.stress = 3.0; }), none);
    EXPECT_EQ(takenOver([](Pond& pond) { pond.water.secchi = 0.6; }), none);
    EXPECT_EQ(takenOver([](Pond& pond) {
                  pond.ramps[1].depth = ByDay{{3.2}, false};
              }),
              none)
        << "a deeper diffuser moves the layers and where the bottom is read";
}

TEST(CompareEarlier, OtherDaysOrStepsTakeNothingOver) {
    CompareOptions days = twoDays();
    days.days = 3;
    EXPECT_EQ(takenOver([](Pond&) {}, days), (Taken{false, false, false, false}));
    CompareOptions finer = twoDays();
    finer.resolution.largestStep = 900.0;
    EXPECT_EQ(takenOver([](Pond&) {}, finer), (Taken{false, false, false, false}));
}

TEST(CompareEarlier, RunsWithoutCausesAreNoUseWhereTheyAreAskedFor) {
    CompareOptions curves = twoDays();
    curves.attribution = curves.endStates = false;
    const Comparison quick = compare(plainPond(), curves);
    CompareOptions all = twoDays();
    all.earlier = &quick;
    const Comparison whole = compare(plainPond(), all);
    for (const RampRun& run : whole.runs) {
        EXPECT_TRUE(run.endState) << run.name;
        EXPECT_FALSE(run.attribution.empty()) << run.name;
    }
}

}  // namespace
}  // namespace engine
