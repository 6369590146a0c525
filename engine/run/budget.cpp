#include "engine/run/budget.h"

#include "engine/base/units.h"

#include <algorithm>
#include <cmath>

namespace engine {

BudgetTerms kilogramsOf(const BudgetRow& row) {
    BudgetTerms terms{};
    std::transform(row.terms.begin(), row.terms.end(), terms.begin(),
                   [](double grams) { return grams / kGramPerKilogram; });
    return terms;
}

const BudgetRow* budgetOn(const RampRun& run, int day) {
    const auto found = std::find_if(run.budget.begin(), run.budget.end(),
                                    [day](const BudgetRow& row) { return row.day == day; });
    return found == run.budget.end() ? nullptr : &*found;
}

std::vector<BudgetRow> wholeDays(const RampRun& run, int days) {
    std::vector<BudgetRow> rows;
    std::copy_if(run.budget.begin(), run.budget.end(), std::back_inserter(rows),
                 [days](const BudgetRow& row) { return row.day >= 1 && row.day <= days; });
    return rows;
}

BudgetTerms meanBudget(const RampRun& run, int days) {
    BudgetTerms means{};
    for (const BudgetRow& row : wholeDays(run, days)) {
        const BudgetTerms terms = kilogramsOf(row);
        for (std::size_t term = 0; term < means.size(); ++term) {
            means[term] += terms[term] / days;
        }
    }
    return means;
}

GainsAndLosses gainsAndLosses(const BudgetTerms& terms) {
    GainsAndLosses sums;
    for (const double term : terms) {
        (term > 0.0 ? sums.gains : sums.losses) += term;
    }
    return sums;
}

std::size_t greatestGain(const BudgetTerms& terms) {
    return static_cast<std::size_t>(std::max_element(terms.begin(), terms.end()) - terms.begin());
}

std::size_t greatestLoss(const BudgetTerms& terms) {
    return static_cast<std::size_t>(std::min_element(terms.begin(), terms.end()) - terms.begin());
}

std::vector<std::size_t> termsByGain(const BudgetTerms& terms) {
    constexpr double kNothing = 1e-6;
    std::vector<std::size_t> order;
    for (std::size_t term = 0; term < terms.size(); ++term) {
        if (std::abs(terms[term]) > kNothing) {
            order.push_back(term);
        }
    }
    std::stable_sort(order.begin(), order.end(), [&](auto a, auto b) { return terms[a] > terms[b]; });
    return order;
}

}  // namespace engine
