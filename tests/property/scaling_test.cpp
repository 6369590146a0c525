// Invariance: what cannot matter does not. A pond of twice the area with twice the load is the same water; a
// run's first days do not know how long it goes on.
#include "engine/run/run.h"
#include "tests/runnable_pond.h"
#include "tests/scenario.h"

#include <gtest/gtest.h>

#include <cmath>

namespace engine::test {
namespace {

constexpr unsigned kSeed = 20260701;
constexpr int kPonds = 200;
const Resolution kCoarse{20, 900.0};

RunRequest daysOf(int days) {
    RunRequest request;
    request.days = days;
    return request;
}

void twice(MaybeQuantity& quantity) {
    if (quantity) {
        quantity->value *= 2.0;
    }
}

/// Twice the area by depth with twice of all that is counted by the pond and not by the area.
Pond doubled(Pond pond) {
    twice(pond.basin.area);
    for (Contour& contour : pond.basin.contours) {
        contour.area.value *= 2.0;
    }
    twice(pond.feed_kgPerDay);
    if (pond.spring) {
        twice(pond.spring->flow_lPerS);
    }
    if (pond.surfaceAerator) {
        twice(pond.surfaceAerator->transfer_kgPerH);
    }
    if (pond.aerator) {
        twice(pond.aerator->diffusers);
    }
    for (Ramp& ramp : pond.ramps) {
        if (ramp.diffusers) {
            for (double& open : ramp.diffusers->values) {
                open *= 2.0;
            }
        }
    }
    return pond;
}

TEST(Scaling, TwiceTheAreaAndTheLoadAreTheSameWater) {
    // Factors of two are exact, and sums over diffusers alone may round otherwise; what that leaves grows
    // over two days of water about to overturn, where what plumes let go comes to rest in one layer or the
    // next. A hundredth of what is shown.
    constexpr double kRounding = 1e-3;
    double worst = 0.0;
    int lifting = 0;
    for (int draw = 0; draw < kPonds; ++draw) {
        SCOPED_TRACE("seed " + std::to_string(kSeed + draw));
        Dice dice(kSeed + draw);
        const Pond pond = runnablePond(dice);
        const PondModel one = prepareUnbalanced(pond, kCoarse),
                        two = prepareUnbalanced(doubled(pond), kCoarse);
        const std::size_t ramp = static_cast<std::size_t>(draw) % pond.ramps.size();
        const RampRun a = runRamp(one, &one.pond.ramps[ramp], daysOf(2)),
                      b = runRamp(two, &two.pond.ramps[ramp], daysOf(2));
        ASSERT_EQ(a.end, RunEnd::Completed);
        ASSERT_EQ(a.schedule.size(), b.schedule.size());
        ASSERT_EQ(a.layers.size(), b.layers.size());
        for (std::size_t h = 0; h < a.layers.size(); ++h) {
            for (std::size_t i = 0; i < a.layers[h].size(); ++i) {
                const LayerRow &x = a.layers[h][i], &y = b.layers[h][i];
                worst = std::max({worst, std::fabs(x.oxygen - y.oxygen), std::fabs(x.debt - y.debt),
                                  std::fabs(x.temperature - y.temperature)});
                ASSERT_NEAR(x.oxygen, y.oxygen, kRounding) << "row " << h << ", layer " << i;
                ASSERT_NEAR(x.debt, y.debt, kRounding) << "row " << h << ", layer " << i;
                ASSERT_NEAR(x.temperature, y.temperature, kRounding) << "row " << h << ", layer " << i;
            }
        }
        for (std::size_t d = 0; d < a.days.size(); ++d) {
            ASSERT_NEAR(2.0 * a.days[d].liftedVolume, b.days[d].liftedVolume, 1e-9 * b.days[d].liftedVolume);
        }
        lifting += a.largestDose() != nullptr ? 1 : 0;
    }
    std::cout << "greatest difference of " << kPonds << " ponds " << worst << ", " << lifting
              << " lift water\n";
    EXPECT_GE(lifting, kPonds / 4);
}

TEST(Scaling, ADoubledAreaAloneIsOtherWater) {
    // The law above bites: the same load on twice the area is not the same.
    Pond pond = scenario("grandfathers-pond"), wide = pond;
    wide.basin.area->value *= 2.0;
    const Ramp& ramp = rampOfKind(pond, RampKind::Continuous);
    const RampRun a = runRamp(prepareUnbalanced(pond, kCoarse), &ramp, daysOf(2)),
                  b = runRamp(prepareUnbalanced(wide, kCoarse), &ramp, daysOf(2));
    EXPECT_GT(std::fabs(a.worst().lowest - b.worst().lowest), 0.1);
}

/// No run goes on from the end of another, so that this stands for a run that is split in two: its first days
/// are the same bits however long it is, and the noon that ends the shorter one is a mark of both.
TEST(Scaling, AShortRunIsTheBeginningOfALongOne) {
    for (int draw = 0; draw < kPonds / 4; ++draw) {
        SCOPED_TRACE("seed " + std::to_string(kSeed + draw));
        Dice dice(kSeed + draw);
        const PondModel model = prepareUnbalanced(runnablePond(dice), kCoarse);
        for (const Ramp& ramp : model.pond.ramps) {
            const RampRun brief = runRamp(model, &ramp, daysOf(2)),
                          lengthy = runRamp(model, &ramp, daysOf(4));
            ASSERT_LT(brief.hours.size(), lengthy.hours.size());
            ASSERT_LT(brief.steps, lengthy.steps);
            for (std::size_t h = 0; h < brief.hours.size(); ++h) {
                ASSERT_EQ(brief.hours[h].time, lengthy.hours[h].time);
                ASSERT_EQ(brief.hours[h].fishWater, lengthy.hours[h].fishWater) << ramp.name << ", row " << h;
                for (std::size_t i = 0; i < brief.layers[h].size(); ++i) {
                    ASSERT_EQ(brief.layers[h][i].oxygen, lengthy.layers[h][i].oxygen)
                        << ramp.name << ", row " << h;
                    ASSERT_EQ(brief.layers[h][i].debt, lengthy.layers[h][i].debt)
                        << ramp.name << ", row " << h;
                    ASSERT_EQ(brief.layers[h][i].temperature, lengthy.layers[h][i].temperature);
                }
            }
            for (std::size_t n = 0; n < brief.days.size(); ++n) {
                ASSERT_EQ(brief.days[n].lowest, lengthy.days[n].lowest) << ramp.name << ", night " << n + 1;
                ASSERT_EQ(brief.days[n].lowestTime, lengthy.days[n].lowestTime);
            }
            for (std::size_t d = 0; d + 1 < brief.budget.size(); ++d) {  // the last row ends at noon
                ASSERT_EQ(brief.budget[d].terms, lengthy.budget[d].terms) << ramp.name << ", row " << d;
            }
        }
    }
}

}  // namespace
}  // namespace engine::test
