#include "engine/run/run.h"

#include "engine/base/error.h"
#include "engine/run/kernel.h"

#include <algorithm>
#include <cmath>
#include <numeric>

namespace engine {

double BudgetRow::closingError() const {
    return storedChange - std::accumulate(terms.begin(), terms.end(), 0.0);
}

double BudgetRow::throughput() const {
    return std::accumulate(terms.begin(), terms.end(), 0.0,
                           [](double sum, double term) { return sum + std::fabs(term); });
}

double BudgetRow::organicClosingError() const {
    return organicChange - std::inner_product(organic.begin(), organic.end(), kOrganicSigns.begin(), 0.0);
}

const DayRow& RampRun::worst() const {
    ensure(!days.empty(), "a run has at least one night");
    return *std::min_element(days.begin(), days.end(),
                             [](const DayRow& a, const DayRow& b) { return a.lowest < b.lowest; });
}

const DayRow* RampRun::largestDose() const {
    const auto most = std::max_element(days.begin(), days.end(), [](const DayRow& a, const DayRow& b) {
        return a.liftedVolume < b.liftedVolume;
    });
    return most == days.end() || most->liftedVolume <= 0.0 ? nullptr : &*most;
}

RampRun runRamp(const PondModel& model, const Ramp* ramp, const RunRequest& request,
                const RunControl& control) {
    ensure(request.days >= 1, "a run has at least a day");
    return kernel().runRamp(model, ramp, request, control);
}

}  // namespace engine
