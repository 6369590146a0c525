#include "engine/run/budget.h"

#include <gtest/gtest.h>

namespace engine {
namespace {

/// Days 0 to 3, of which 0 and 3 are parts; the terms grow with the day.
RampRun fourDays() {
    RampRun run;
    for (int day = 0; day <= 3; ++day) {
        BudgetRow row;
        row.day = day;
        row.terms[kPhotosynthesis] = 4000.0 * day;
        row.terms[kRespiration] = -2000.0 * day;
        row.terms[kSediment] = -500.0 * day;
        row.terms[kBubbles] = 250.0 * day;
        row.storedChange = 1750.0 * day;
        run.budget.push_back(row);
    }
    return run;
}

TEST(Budget, ADaysRowIsInKilograms) {
    const RampRun run = fourDays();
    ASSERT_NE(budgetOn(run, 2), nullptr);
    EXPECT_EQ(budgetOn(run, 4), nullptr);
    const BudgetTerms terms = kilogramsOf(*budgetOn(run, 2));
    EXPECT_EQ(terms[kPhotosynthesis], 8.0);
    EXPECT_EQ(terms[kSediment], -1.0);
    EXPECT_EQ(terms[kSurface], 0.0);
    const GainsAndLosses sums = gainsAndLosses(terms);
    EXPECT_EQ(sums.gains, 8.5);
    EXPECT_EQ(sums.losses, -5.0);
}

TEST(Budget, MeansLeavePartsOfDaysOut) {
    const RampRun run = fourDays();
    ASSERT_EQ(wholeDays(run, 2).size(), 2U);
    EXPECT_EQ(wholeDays(run, 2).front().day, 1);
    const BudgetTerms means = meanBudget(run, 2);
    EXPECT_EQ(means[kPhotosynthesis], 6.0);
    EXPECT_EQ(means[kRespiration], -3.0);
}

TEST(Budget, TermsAreRankedFromTheGreatestGainToTheGreatestLoss) {
    const BudgetTerms means = meanBudget(fourDays(), 2);
    EXPECT_EQ(greatestGain(means), kPhotosynthesis);
    EXPECT_EQ(greatestLoss(means), kRespiration);
    EXPECT_EQ(termsByGain(means),
              (std::vector<std::size_t>{kPhotosynthesis, kBubbles, kSediment, kRespiration}));
}

}  // namespace
}  // namespace engine
