#include "engine/plan.h"

#include "engine/plan_edges.h"
#include "engine/plan_search.h"
#include "tests/scenario.h"

#include <gtest/gtest.h>

#include <cstdlib>

namespace engine {
namespace {

using test::inClearWeather;
using test::scenario;

/// Every way of up to `longest` days up a ladder, tried whole: the fewest days that keep the budget.
std::optional<int> fewestDays(const PlanMembers& members, const Ladder& ladder, int budget, int longest) {
    for (int days = 1; days <= longest; ++days) {
        std::vector<std::size_t> at(static_cast<std::size_t>(days - 1), 0);
        for (bool isDone = false; !isDone;) {
            std::vector<DayAction> way;
            for (const std::size_t level : at) {
                way.push_back(ladder.levels[level]);
            }
            way.push_back(ladder.standing);
            if (harmOf(members, way, ladder.start, budget).any <= budget) {
                return days;
            }
            isDone = true;
            for (std::size_t& level : at) {
                if (++level < ladder.levels.size()) {
                    isDone = false;
                    break;
                }
                level = 0;
            }
        }
    }
    return std::nullopt;
}

TEST(PlanProperty, TheSearchIsWithinADayOfTheBestByExhaustion) {
    int ways = 0;
    for (const double line : {2.0, 2.5, 3.0}) {
        Pond pond = inClearWeather(scenario("grandfathers-pond"));
        pond.limits.stress = Quantity(line);
        pond.limits.lethal = Quantity(1.0);
        const PondModel model = prepare(pond, {12, 1800.0});
        const PlanMembers members(model, 16, 12, 1, 1, {});
        for (const int standing : {120, 240, 480, 1440}) {
            Ladder ladder{{}, {standing, 2, 3.0, 1, false}, ClockTime{600}};
            for (const int minutes : {30, 90, 240, 720}) {
                if (minutes < standing) {
                    ladder.levels.push_back({minutes, 2, 3.0, 1, false});
                }
            }
            for (const int budget : {2, 6}) {
                SCOPED_TRACE("line " + std::to_string(line) + ", standing " + std::to_string(standing) +
                             ", budget " + std::to_string(budget));
                const auto best = fewestDays(members, ladder, budget, 4);
                auto way = climb(members, ladder, {}, budget, 6, {});
                if (way) {
                    way = polished(members, *way, ladder, {}, budget, {});
                    EXPECT_LE(harmOf(members, way->days, ladder.start, budget).any, budget);
                }
                if (best) {
                    ASSERT_TRUE(way) << "there is a way of " << *best << " days";
                    EXPECT_LE(way->length(), *best + 1);
                    ways += *best > 1 ? 1 : 0;
                } else if (way) {
                    EXPECT_GT(way->length(), 4);
                }
            }
        }
    }
    EXPECT_GT(ways, 0) << "in no case was there anything to search for";
}

/// The whole plan of a scenario, as fine as the command line makes it. Takes a minute each.
Plan wholePlan(const std::string& name, double line) {
    PlanOptions options;
    options.line = line;
    options.members = 2000;
    return makePlan(scenario(name), options);
}

TEST(PlanProperty, TheHeadlinePondIsNotMadeWorse) {
    if (std::getenv("DAWNLINE_SLOW") == nullptr) {
        GTEST_SKIP() << "takes minutes: set DAWNLINE_SLOW";
    }
    const Plan plan = wholePlan("grandfathers-pond", 4.0);
    ASSERT_EQ(plan.end, PlanEnd::Completed) << plan.message;
    ASSERT_TRUE(plan.chosen);
    EXPECT_LE(plan.added.upper(), 0.05);
    std::optional<double> doubling;
    for (std::size_t i = 1; i + 1 < plan.comparison.runs.size(); ++i) {
        const TradeOffPoint& point = plan.tradeOff[i - 1];
        if (point.name == "doubling from 30 min") {
            doubling = point.added.share();
        }
        if (point.days && point.added.count <= plan.added.count) {
            EXPECT_GE(*point.days, static_cast<int>(plan.days.size())) << point.name;
        }
    }
    ASSERT_TRUE(doubling);
    EXPECT_LE(plan.added.share(), 0.1 * *doubling);
}

}  // namespace
}  // namespace engine
