#include "tests/bench/full_problem.h"

#include "engine/base/units.h"
#include "tests/bench/measure.h"
#include "tests/bench/words.h"
#include "tests/scenario.h"
#include "tests/support/columns.h"
#include "tests/support/cvode.h"

#include <cmath>

namespace bench {
namespace {

using namespace engine;
using engine::test::Cvode;
using engine::test::CvodeOptions;
using engine::test::LinearSolver;

constexpr int kNights = 14;
constexpr double kRest = 0.5 * kHour;  // The plume is found again each half hour, as in our runs

/// Lows by whole hours, so that no solver gains by looking more often.
class Nights {
public:
    void look(double time, double fishWater) {
        const int night = static_cast<int>(std::floor((time - 1.0 - kDay / 2) / kDay));
        if (night >= 0 && night < kNights) {
            if (static_cast<std::size_t>(night) >= m_lows.size()) {
                m_lows.resize(static_cast<std::size_t>(night) + 1, 1e9);
            }
            m_lows[static_cast<std::size_t>(night)] =
                std::min(m_lows[static_cast<std::size_t>(night)], fishWater);
        }
    }
    [[nodiscard]] const std::vector<double>& lows() const { return m_lows; }

private:
    std::vector<double> m_lows;
};

RunRequest fourteenDays() {
    RunRequest request;
    request.days = kNights;
    request.keepLayers = false;
    return request;
}

FullRun ourRun(const PondModel& central, const Ramp& ramp, double step) {
    PondModel model = central;  // with the same balance for all
    model.resolution.largestStep = step;
    FullRun out;
    out.setting = words("%g s", step);
    RampRun run;
    out.time_ms = median_ms(7, [&] { run = runRamp(model, &ramp, fourteenDays()); });
    Nights nights;
    for (const HourRow& row : run.hours) {
        nights.look(row.time, row.fishWater);
    }
    out.lows = nights.lows();
    out.reached_d = kNights;
    return out;
}

Aeration aerationAt(const Schedule& schedule, double time) {
    for (const RunBlock& block : schedule) {
        if (block.start <= time + 1e-3 && time + 1e-3 < block.end) {
            return {block.open, block.depth};
        }
    }
    return {};
}

FullRun cvodeRun(const PondModel& model, const Ramp& ramp, const CvodeOptions& options, double budget_s) {
    const Schedule schedule = runRamp(model, &ramp, fourteenDays()).schedule;
    const WeatherSeries weather(model.pond, {}, static_cast<int>(std::floor(model.startTime / kDay)),
                                kNights + 2);
    Column<double> column(model.grid, model.parameters, model.aerator, model.bottom, model.start);
    State<double> trial = column.state(), rate = trial;
    Aeration aeration;
    const test::Derivative derivative = [&](double time, const double* y, double* dy) {
        test::takeFromRow(y, trial);
        const Forcing f = weather.at(time);
        column.rates({f.shortwave, f.air, f.vapourPressure, f.wind10, f.cloud}, aeration, trial, rate);
        test::layInARow(rate, dy);
    };
    FishWater<double> water(model.grid);
    Nights nights;
    FullRun out;
    const double before = threadSeconds(), end = kNights * kDay + kDay / 2;
    Cvode cvode(derivative, test::inARow(column.state()), options);
    std::vector<double> oxygen(model.grid.layers()), temperature(model.grid.layers());
    double time = model.startTime;
    while (time < end - 1.0) {
        const double mark = (std::floor(time / kRest + 1e-9) + 1.0) * kRest;
        aeration = aerationAt(schedule, time);
        column.refreshPlume();
        cvode.restart(time);
        if (!cvode.advance(mark)) {
            out.why = "flag " + std::to_string(cvode.flag());
            break;
        }
        time = mark;
        const double hours = time / kHour;
        if (std::fabs(hours - std::round(hours)) < 1e-6) {
            test::takeFromRow(cvode.state().data(), trial);
            for (int i = 0; i < model.grid.layers(); ++i) {
                oxygen[i] = trial.solutes[i][kOxygen];
                temperature[i] = trial.heat[i][0];
            }
            const OxygenThresholds& thresholds = model.parameters.thresholds;
            nights.look(time, water.oxygen(oxygen, temperature, thresholds.fishShare, thresholds.fishMax));
        }
        if (threadSeconds() - before > budget_s) {
            out.why = "out of time";
            break;
        }
    }
    out.time_ms = 1e3 * (threadSeconds() - before);
    out.reached_d = time / kDay;
    out.lows = nights.lows();
    return out;
}

}  // namespace

FullComparison compareOnFullProblem(int layers, double budget_s) {
    FullComparison out;
    out.layers = layers;
    out.days = kNights;
    const PondModel model = prepare(test::scenario("grandfathers-pond"), {layers, 90.0});
    const Ramp& ramp = test::rampOfKind(model.pond, RampKind::Continuous);
    for (const double step : {720.0, 360.0, 180.0, 90.0, 45.0}) {
        out.ours.push_back(ourRun(model, ramp, step));
    }
    const std::vector<std::pair<const char*, LinearSolver>> solvers{{"dense", LinearSolver::Dense},
                                                                    {"GMRES", LinearSolver::Krylov}};
    for (const auto& [name, solver] : solvers) {
        for (const double tolerance : {1e-3, 1e-4, 1e-5, 1e-6}) {
            CvodeOptions options{solver, 0, tolerance, 0.1 * tolerance, 20000};
            FullRun run = cvodeRun(model, ramp, options, budget_s);
            run.setting = std::string(name) + words(", rtol %.0e", tolerance);
            out.cvode.push_back(run);
        }
    }
    return out;
}

Scatter scatterOf(const std::vector<FullRun>& runs, int days) {
    Scatter out;
    for (int night = 0; night < days; ++night) {
        double least = 1e9, most = -1e9;
        out.runs = 0;
        for (const FullRun& run : runs) {
            if (run.lows.size() == static_cast<std::size_t>(days)) {
                least = std::min(least, run.lows[static_cast<std::size_t>(night)]);
                most = std::max(most, run.lows[static_cast<std::size_t>(night)]);
                ++out.runs;
            }
        }
        if (out.runs > 0) {
            out.most = std::max(out.most, most - least);
            out.mean += (most - least) / days;
        }
    }
    return out;
}

}  // namespace bench
