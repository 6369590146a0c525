#include "engine/plan/plan_search.h"

#include "engine/base/units.h"
#include "engine/ensemble/past.h"
#include "tests/scenario.h"

#include <gtest/gtest.h>

namespace engine {
namespace {

using test::scenario;

/// A coarse pond and few members, quick under the thread sanitizer too.
class PlanSearchParallel : public testing::Test {
protected:
    PlanSearchParallel() : m_model(prepare(scenario("grandfathers-pond"), {12, 1800.0})) {}
    [[nodiscard]] PlanMembers members(int count, int threads = 1) const {
        return PlanMembers(m_model, count, kDays, 1, threads, {});
    }
    static std::vector<DayAction> minutes(const std::vector<int>& byDay) {
        std::vector<DayAction> days;
        for (const int one : byDay) {
            days.push_back({one, 2, 3.0, 1, false});
        }
        return days;
    }
    static void expectSameLows(const MembersRunState& a, const MembersRunState& b) {
        ASSERT_EQ(a.packs.size(), b.packs.size());
        for (std::size_t p = 0; p < a.packs.size(); ++p) {
            for (int night = 0; night < kDays; ++night) {
                for (int k = 0; k < kLanes<Lanes>; ++k) {
                    EXPECT_EQ(lane(a.packs[p].lows[static_cast<std::size_t>(night)], k),
                              lane(b.packs[p].lows[static_cast<std::size_t>(night)], k));
                }
            }
        }
    }

    static constexpr int kDays = 4;
    PondModel m_model;
};

TEST_F(PlanSearchParallel, ARunThatIsCutAtMidnightsIsTheSameBits) {
    const PlanMembers all = members(6);
    ASSERT_TRUE(all.isReady());
    const Schedule schedule =
        scheduleOf(minutes({30, 90, 1440}), ClockTime{600}, *m_model.pond.aerator, kDays);
    const MembersRunState whole = all.run(all.start(), schedule, PlanMembers::endOfNight(kDays));
    MembersRunState cut = all.start();
    for (int day = 0; day <= kDays; ++day) {
        cut = all.run(cut, schedule, day * kDay);
    }
    cut = all.run(cut, schedule, PlanMembers::endOfNight(kDays));
    expectSameLows(whole, cut);
}

TEST_F(PlanSearchParallel, MembersAreThoseOfTheEnsemble) {
    constexpr int kMembers = 20;  // More than a pack
    const PlanMembers all = members(kMembers);
    const std::vector<DayAction> days = minutes({60, 1440});
    const Schedule schedule = scheduleOf(days, ClockTime{600}, *m_model.pond.aerator, kDays);
    const MembersRunState at = all.run(all.start(), schedule, PlanMembers::endOfNight(kDays));
    EnsembleOptions options;
    options.days = kDays;
    options.members = 2 * kMembers;
    options.threads = 1;
    // A plan's members all weigh the same: they are drawn again from twice as many, by their weights.
    const EnsembleResult ensemble =
        runMembers(m_model, {{"do-nothing", {}, true}, {"planned", schedule, false}}, options);
    const std::vector<std::size_t> own =
        resampled(ensemble.weights, static_cast<std::size_t>(ensemble.members), kMembers);
    const OxygenThresholds& thresholds = m_model.parameters.thresholds;
    HarmCount expected;
    for (int i = 0; i < kMembers; ++i) {
        double lowest = 1e9;
        for (int night = 0; night < kDays; ++night) {
            constexpr int kWidth = kLanes<Lanes>;
            lowest = std::min(lowest,
                              lane(at.packs[static_cast<std::size_t>(i / kWidth)].lows[night], i % kWidth));
        }
        EXPECT_EQ(static_cast<float>(lowest), ensemble.ramps[1].lowest[own[static_cast<std::size_t>(i)]]);
        const auto with = static_cast<double>(ensemble.ramps[1].lowest[own[static_cast<std::size_t>(i)]]);
        const auto without = static_cast<double>(ensemble.ramps[0].lowest[own[static_cast<std::size_t>(i)]]);
        expected.addedStress += with < thresholds.stress && without >= thresholds.stress ? 1 : 0;
        expected.addedLethal += with < thresholds.lethal && without >= thresholds.lethal ? 1 : 0;
    }
    const HarmCount harm = all.harm(at, 1, kDays);
    EXPECT_EQ(harm.addedStress, expected.addedStress);
    EXPECT_EQ(harm.addedLethal, expected.addedLethal);
    EXPECT_GE(harm.any, std::max({harm.addedStress, harm.addedLethal, harm.deepened}));
    EXPECT_GT(harm.any, 0) << "an hour and then around the clock does harm to this pond";
    EXPECT_EQ(all.harm(at, 1, 0).any, 0) << "no night, no harm";
}

TEST_F(PlanSearchParallel, DoNothingHarmsNobody) {
    const PlanMembers all = members(6);
    const MembersRunState at = all.run(all.start(), {}, PlanMembers::endOfNight(kDays));
    EXPECT_EQ(all.harm(at, 1, kDays).any, 0);
}

TEST_F(PlanSearchParallel, ThreadsDoNotMatter) {
    const Ladder ladder{minutes({15, 60, 240}), minutes({1440}).front(), ClockTime{600}};
    const auto one = climb(members(6, 1), ladder, {}, 6, 3, {});
    const auto three = climb(members(6, 3), ladder, {}, 6, 3, {});
    ASSERT_EQ(one.has_value(), three.has_value());
    ASSERT_TRUE(one);
    EXPECT_EQ(one->days, three->days);
    EXPECT_EQ(one->harm.any, three->harm.any);
}

TEST_F(PlanSearchParallel, HeldDaysHaveNoAirUntilTheSustainedScheduleBegins) {
    const Ladder ladder{minutes({15, 60, 240}), minutes({1440}).front(), ClockTime{600}};
    const PlanMembers all = members(4);
    const std::vector<int> held{1, 2};
    const auto candidate = climb(all, ladder, held, 4, 4, {});  // everything is within the budget
    ASSERT_TRUE(candidate);
    ASSERT_EQ(candidate->length(), 3);
    EXPECT_TRUE(candidate->days[0].isHold && candidate->days[1].isHold);
    EXPECT_EQ(candidate->days[0].minutes + candidate->days[1].minutes, 0);
    EXPECT_EQ(candidate->days[2].minutes, 1440);
    EXPECT_EQ(polished(all, *candidate, ladder, held, 4, {}).days, candidate->days)
        << "hold days are not polished away";
}

TEST(PlanSearch, ARampOfACandidateSaysEachDayOnceAndKeepsTheLast) {
    std::vector<DayAction> days{{0, 2, 3.0, 1, true}, {20, 1, 2.5, 4, false}, {1440, 2, 3.0, 1, false}};
    const Ramp ramp = rampOf(days, ClockTime{600});
    EXPECT_EQ(ramp.kind, RampKind::Table);
    EXPECT_EQ(ramp.minutes, (std::vector<double>{0, 20, 1440}));
    ASSERT_TRUE(ramp.pulses && ramp.diffusers && ramp.depth && ramp.startTime);
    EXPECT_EQ(ramp.pulses->values, (std::vector<double>{1, 4, 1}));
    EXPECT_EQ(ramp.diffusers->values, (std::vector<double>{2, 1, 2}));
    EXPECT_EQ(ramp.depth->values, (std::vector<double>{3.0, 2.5, 3.0}));
    days = {{1440, 2, 3.0, 1, false}};
    const Ramp plain = rampOf(days, ClockTime{600});
    EXPECT_FALSE(plain.pulses) << "one run a day goes without saying";
    EXPECT_EQ(plain.depth->values.size(), 1U);
}

}  // namespace
}  // namespace engine
