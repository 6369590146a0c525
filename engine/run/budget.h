#pragma once

#include "engine/run/run.h"

#include <array>
#include <cstddef>
#include <vector>

namespace engine {

// The oxygen ledger of a run as people read it: kilograms, positive adds, terms in the order of `Term`.

using BudgetTerms = std::array<double, kTerms>;

/// A calendar day of the ledger [kg].
[[nodiscard]] BudgetTerms kilogramsOf(const BudgetRow& row);

/// The ledger's row of a calendar day; null if the run has none.
[[nodiscard]] const BudgetRow* budgetOn(const RampRun& run, int day);

/// The rows of the whole days 1 to `days`; those before and after are parts of a day.
[[nodiscard]] std::vector<BudgetRow> wholeDays(const RampRun& run, int days);

/// Mean of each term over the whole days [kg/d].
[[nodiscard]] BudgetTerms meanBudget(const RampRun& run, int days);

/// What all terms above zero add up to, and all below.
struct GainsAndLosses {
    double gains = 0.0, losses = 0.0;  ///< The losses are negative
};
[[nodiscard]] GainsAndLosses gainsAndLosses(const BudgetTerms& terms);

/// The term that brings most, and the one that takes most; the first of equals.
[[nodiscard]] std::size_t greatestGain(const BudgetTerms& terms);
[[nodiscard]] std::size_t greatestLoss(const BudgetTerms& terms);

/// Terms that are not next to nothing, the greatest gain first and the greatest loss last.
[[nodiscard]] std::vector<std::size_t> termsByGain(const BudgetTerms& terms);

}  // namespace engine
