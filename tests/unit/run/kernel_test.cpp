#include "engine/run/kernel.h"

#include "engine/ensemble/ensemble.h"
#include "engine/run/balance.h"
#include "tests/scenario.h"

#include <gtest/gtest.h>

// Every kernel that this processor can run gives the same bits. Where only one can, there is nothing to
// compare, and the test says so.

namespace engine::test {
namespace {

constexpr int kDays = 2;

PondModel coarse(const std::string& name) {
    Resolution resolution;
    resolution.layers = 16;
    resolution.largestStep = 900.0;
    return prepareUnbalanced(scenario(name), resolution);
}

void expectSame(const RampRun& one, const RampRun& other) {
    ASSERT_EQ(one.end, other.end);
    ASSERT_EQ(one.hours.size(), other.hours.size());
    for (std::size_t i = 0; i < one.hours.size(); ++i) {
        EXPECT_EQ(one.hours[i].fishWater, other.hours[i].fishWater) << "hour " << i;
        EXPECT_EQ(one.hours[i].mean, other.hours[i].mean) << "hour " << i;
        EXPECT_EQ(one.hours[i].bottomTemperature, other.hours[i].bottomTemperature) << "hour " << i;
    }
    for (std::size_t i = 0; i < one.budget.size(); ++i) {
        EXPECT_EQ(one.budget[i].terms, other.budget[i].terms) << "budget row " << i;
    }
}

TEST(Kernel, TheFirstIsForAnyProcessorAndTheLastIsPicked) {
    ASSERT_FALSE(usableKernels().empty());
    EXPECT_STREQ(usableKernels().front()->name, "any processor");
    EXPECT_EQ(&kernel(), usableKernels().back());
}

TEST(Kernel, AllGiveTheSameRun) {
    if (usableKernels().size() < 2) {
        GTEST_SKIP() << "this processor, or this build, has one kernel only";
    }
    RunRequest request;
    request.days = kDays;
    for (const char* name : {"grandfathers-pond", "salt-lens", "spring-trout"}) {
        SCOPED_TRACE(name);
        const PondModel model = coarse(name);
        for (const Ramp& ramp : model.pond.ramps) {
            const RampRun any = usableKernels().front()->runRamp(model, &ramp, request, {});
            for (std::size_t i = 1; i < usableKernels().size(); ++i) {
                SCOPED_TRACE(usableKernels()[i]->name);
                expectSame(any, usableKernels()[i]->runRamp(model, &ramp, request, {}));
            }
        }
    }
}

TEST(Kernel, AllGiveTheSameMembers) {
    if (usableKernels().size() < 2) {
        GTEST_SKIP() << "this processor, or this build, has one kernel only";
    }
    constexpr int kMembers = kLanes<Lanes>;
    const PondModel model = coarse("grandfathers-pond");
    const std::vector<WeatheredMember> members =
        weatheredMembers(model, drawMembers(model, kMembers, kDays, 1), kDays);
    const EnsembleRamp ramp{"at noon", {{kDay / 2, kDay / 2 + 4 * kHour, 1, 3.0}}, false};
    const MemberPlan plan = memberPlan(model, ramp, kDays, true);
    const BalanceSlopes slopes = balanceSlopes(model);
    const std::vector<ReadOxygen> read(kMembers);
    std::vector<MemberTrace> traces;
    std::vector<MemberPack<Lanes>> packs;
    for (const Kernel* one : usableKernels()) {
        packs.push_back(packOf<Lanes>(members));
        one->balancePack(model, slopes, read, packs.back(), {}, {});
        traces.emplace_back(kMembers, plan);
        one->runPack(model, plan, packs.back(), 0, kMembers, traces.back(), {});
    }
    for (std::size_t i = 1; i < traces.size(); ++i) {
        SCOPED_TRACE(usableKernels()[i]->name);
        for (int k = 0; k < kMembers; ++k) {
            EXPECT_EQ(lane(packs.front().parameters.growth.factor, k),
                      lane(packs[i].parameters.growth.factor, k));
        }
        EXPECT_EQ(traces.front().hours, traces[i].hours);
        EXPECT_EQ(traces.front().lows, traces[i].lows);
        EXPECT_EQ(traces.front().endStates, traces[i].endStates);
    }
}

}  // namespace
}  // namespace engine::test
