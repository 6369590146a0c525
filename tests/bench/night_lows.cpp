#include "tests/bench/night_lows.h"

#include "engine/base/units.h"
#include "engine/ensemble/ensemble.h"
#include "tests/scenario.h"

#include <cmath>
#include <filesystem>
#include <stdexcept>

namespace bench {
namespace {

using namespace engine;

void look(LowsOff& out, double miss, double wanted, const std::string& ramp, int night) {
    ++out.count;
    out.within += miss <= wanted ? 1 : 0;
    out.sum += miss;
    if (miss > out.worst) {
        out.worst = miss;
        out.where = ramp + ", night " + std::to_string(night);
    }
}

std::vector<double> lowsOfPlan(const PondModel& model, const MemberPlan& plan, bool atEachStep) {
    Column<double> column(model.grid, model.parameters, model.aerator, model.bottom, model.start);
    const std::vector<PackOffset<double>> asTheCentralRun(1);
    std::vector<double> lows(static_cast<std::size_t>(plan.nights), 1e9);
    for (MemberStep step : plan.steps) {
        step.findsPlume = step.findsPlume || atEachStep;
        takeStep(column, step, asTheCentralRun);
        if (step.night >= 0 && step.night < plan.nights) {
            double& low = lows[static_cast<std::size_t>(step.night)];
            low = std::min(low, column.fishWater());
        }
    }
    return lows;
}

}  // namespace

void LowsOff::add(const LowsOff& other) {
    count += other.count;
    within += other.within;
    sum += other.sum;
    if (other.worst > worst) {
        worst = other.worst;
        where = other.where;
    }
}

Comparison compared(const Pond& pond, const Resolution& resolution, int days) {
    CompareOptions options;
    if (days > 0) {
        options.days = days;
    }
    options.resolution = resolution;
    options.endStates = false;
    options.attribution = false;
    Comparison out = compare(pond, options);
    for (const RampRun& run : out.runs) {
        if (run.end != RunEnd::Completed) {
            throw std::runtime_error(pond.title + ", " + run.name + ": " + run.message);
        }
    }
    return out;
}

LowsOff lowsOff(const Comparison& runs, const Comparison& exact, double wanted, int nights) {
    LowsOff out;
    for (std::size_t r = 0; r < exact.runs.size(); ++r) {
        for (std::size_t n = 0; n < exact.runs[r].days.size() && n < static_cast<std::size_t>(nights); ++n) {
            const double miss = std::fabs(runs.runs[r].days[n].lowest - exact.runs[r].days[n].lowest);
            look(out, miss, wanted, exact.runs[r].name, static_cast<int>(n) + 1);
        }
    }
    return out;
}

HoursOff hoursOff(const Comparison& runs, const Comparison& exact, double wanted) {
    HoursOff out;
    for (std::size_t r = 0; r < exact.runs.size(); ++r) {
        for (std::size_t h = 0; h < exact.runs[r].hours.size(); ++h) {
            const double miss = std::fabs(runs.runs[r].hours[h].fishWater - exact.runs[r].hours[h].fishWater);
            ++out.count;
            out.within += miss <= wanted ? 1 : 0;
        }
    }
    return out;
}

LowsOff plumeRuleOff(const Comparison& central, double wanted) {
    LowsOff out;
    for (const RampRun& run : central.runs) {
        if (run.schedule.empty()) {
            continue;
        }
        const MemberPlan plan = memberPlan(central.model, ensembleRamp(run), central.days, false);
        const std::vector<double> byRule = lowsOfPlan(central.model, plan, false),
                                  always = lowsOfPlan(central.model, plan, true);
        for (std::size_t n = 0; n < byRule.size(); ++n) {
            look(out, std::fabs(byRule[n] - always[n]), wanted, run.name, static_cast<int>(n) + 1);
        }
    }
    return out;
}

std::vector<std::string> scenarioNames() {
    std::vector<std::string> names;
    for (const auto& entry : std::filesystem::directory_iterator(DAWNLINE_SCENARIOS)) {
        if (entry.path().extension() == ".toml") {
            names.push_back(entry.path().stem().string());
        }
    }
    std::sort(names.begin(), names.end());
    return names;
}

}  // namespace bench
