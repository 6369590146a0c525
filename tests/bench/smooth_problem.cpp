#include "tests/bench/smooth_problem.h"

#include "engine/base/units.h"
#include "engine/column/column.h"
#include "tests/bench/measure.h"
#include "tests/bench/words.h"
#include "tests/support/columns.h"
#include "tests/support/cvode.h"

#include <cmath>

namespace bench {
namespace {

using namespace engine;
using engine::test::Cvode;
using engine::test::CvodeOptions;
using engine::test::LinearSolver;

constexpr double kWindow = 2.0 * kHour;
constexpr Aeration kRunning{2, 3.0};

/// The problem for both solvers.
class Smooth {
public:
    explicit Smooth(int layers)
        : m_pond(layers), m_column(made()), m_trial(m_column.state()), m_rate(m_trial) {
        m_column.rates(test::fairAfternoon(), kRunning, m_trial, m_rate);  // freezes the plume
        m_derivative = [this](double, const double* y, double* dy) {
            ++m_evaluations;
            test::takeFromRow(y, m_trial);
            m_column.rates(test::fairAfternoon(), kRunning, m_trial, m_rate);
            test::layInARow(m_rate, dy);
        };
    }

    [[nodiscard]] std::vector<double> ours(double dt, double& time_ms) const {
        Column<double> column = made();
        const int steps = static_cast<int>(kWindow / dt + 0.5);
        const double before = threadSeconds();
        for (int i = 0; i < steps; ++i) {
            column.step(dt, test::fairAfternoon(), kRunning);
        }
        time_ms = 1e3 * (threadSeconds() - before);
        return column.solutes(kOxygen, 0);
    }

    /// Empty if CVODE gave up.
    [[nodiscard]] std::vector<double> cvodes(const CvodeOptions& options, double& time_ms) {
        m_evaluations = 0;
        const double before = threadSeconds();
        Cvode cvode(m_derivative, test::inARow(m_column.state()), options);
        const bool arrived = cvode.advance(kWindow);
        time_ms = 1e3 * (threadSeconds() - before);
        if (!arrived) {
            return {};
        }
        test::takeFromRow(cvode.state().data(), m_trial);
        std::vector<double> oxygen;
        for (const auto& solutes : m_trial.solutes) {
            oxygen.push_back(solutes[kOxygen]);
        }
        return oxygen;
    }

    [[nodiscard]] long evaluations() const { return m_evaluations; }

private:
    [[nodiscard]] Column<double> made() const {
        return Column<double>(m_pond.grid, m_pond.parameters, m_pond.aerator, m_pond.bottom, m_pond.start,
                              test::smoothSwitches());
    }

    test::MuckyPond m_pond;
    Column<double> m_column;
    State<double> m_trial, m_rate;
    test::Derivative m_derivative;
    long m_evaluations = 0;
};

double distance(const std::vector<double>& a, const std::vector<double>& b) {
    double most = 0.0;
    for (std::size_t i = 0; i < a.size(); ++i) {
        most = std::max(most, std::fabs(a[i] - b[i]));
    }
    return most;
}

}  // namespace

SmoothComparison compareOnSmoothProblem(int layers, int repeats) {
    SmoothComparison out;
    out.layers = layers;
    Smooth problem(layers);
    double time = 0.0;
    CvodeOptions tight;
    tight.relative = 1e-8;
    tight.absolute = 1e-9;
    const std::vector<double> exact = problem.cvodes(tight, time);
    if (exact.empty()) {
        out.gaveUp.emplace_back("the reference");
        return out;
    }
    out.referenceMiss = distance(problem.ours(1.0, time), exact);
    out.ours.solver = "Dawnline";
    for (const double dt : {1800.0, 1200.0, 600.0, 360.0, 180.0, 90.0, 45.0, 22.5, 11.25}) {
        std::vector<double> oxygen, times;
        for (int i = 0; i < repeats; ++i) {
            oxygen = problem.ours(dt, times.emplace_back());
        }
        out.ours.points.push_back({words("%g s", dt), median(times), distance(oxygen, exact),
                                   static_cast<long>(kWindow / dt + 0.5)});
    }
    // A layer and its neighbours; the plume's long rows are left out of the band.
    const int half = 2 * test::kNumbersOfLayer - 1;
    const std::vector<std::pair<const char*, CvodeOptions>> solvers{
        {"CVODE, dense", {LinearSolver::Dense, 0, 0.0, 0.0, 50000}},
        {"CVODE, band", {LinearSolver::Band, half, 0.0, 0.0, 50000}},
        {"CVODE, GMRES", {LinearSolver::Krylov, 0, 0.0, 0.0, 50000}},
        {"CVODE, GMRES and band", {LinearSolver::BandedKrylov, half, 0.0, 0.0, 50000}}};
    for (const auto& [name, plain] : solvers) {
        WorkCurve& curve = out.cvode.emplace_back();
        curve.solver = name;
        for (const double tolerance : {1e-1, 3e-2, 1e-2, 3e-3, 1e-3, 1e-4, 1e-5, 1e-6}) {
            CvodeOptions options = plain;
            options.relative = tolerance;
            options.absolute = 0.1 * tolerance;
            std::vector<double> oxygen, times;
            for (int i = 0; i < repeats && (i == 0 || !oxygen.empty()); ++i) {
                oxygen = problem.cvodes(options, times.emplace_back());
            }
            if (oxygen.empty()) {
                out.gaveUp.push_back(curve.solver + words(" at %.0e", tolerance));
                continue;
            }
            curve.points.push_back(
                {words("%.0e", tolerance), median(times), distance(oxygen, exact), problem.evaluations()});
        }
    }
    return out;
}

const WorkPoint* fastestWithin(const std::vector<WorkCurve>& curves, double wanted) {
    const WorkPoint* best = nullptr;
    for (const WorkCurve& curve : curves) {
        for (const WorkPoint& point : curve.points) {
            if (point.error <= wanted && (best == nullptr || point.time_ms < best->time_ms)) {
                best = &point;
            }
        }
    }
    return best;
}

}  // namespace bench
