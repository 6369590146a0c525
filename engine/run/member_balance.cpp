#include "engine/base/subnormals.h"
#include "engine/base/units.h"
#include "engine/run/balance.h"
#include "engine/run/constants_balance.h"
#include "engine/run/member_run.h"
#include "engine/run/organic_books.h"

#include <Eigen/LU>

#include <algorithm>
#include <array>
#include <cmath>

namespace engine {
namespace {

constexpr int kMostTrials = 8;
constexpr double kEnough = 1e-3;      // of a factor's logarithm
constexpr double kLongestStep = 0.7;  // of the same
constexpr double kNudge = 0.1;        // of the same, for the slopes
constexpr double kFar = 1e9;          // where nothing is tried

using Point = Eigen::Matrix<double, kBalanceUnknowns, 1>;
using Rows = Eigen::Matrix<double, kBalanceRows, 1>;

/// What two usual days without air make of the members with the factors that they have.
template <class Real>
struct TrialRun {
    std::array<Real, kBalanceRows> rows{};
    OrganicDay<Real> organic;  ///< Of the first day
    double openVolume = 0.0;   ///< [m^3]
};

/// The days that the balance of a pack tries out.
template <class Real>
class Trial {
public:
    Trial(const PondModel& model, const MemberPack<Real>& pack, const BalanceTarget& target)
        : m_model(model),
          m_pack(pack),
          m_target(target),
          m_marks(marksOf(model, target)),
          m_steps(trialSteps(model, m_marks)),
          m_metre(std::min(1.0, model.bottom.exists() ? model.bottom.depth : model.basin.maxDepth())) {
        // What a pond respires does not depend on how warm its fish like it.
        m_pack.parameters.thresholds.fishMax = OxygenThresholds{}.fishMax;
        m_pack.parameters.organic.load = m_pack.parameters.organic.loss = 0.0;
        m_pack.offsets.erase(m_pack.offsets.begin(), m_pack.offsets.end() - 1);
    }

    /// The rows of the profile.
    [[nodiscard]] std::array<Real, kBalanceRows> wanted() const {
        const Column<Real> column(m_model.grid, m_pack.parameters, m_model.aerator, m_model.bottom,
                                  m_pack.start);
        std::array<Real, kBalanceRows> rows{};
        for (int day = 0; day < kBalanceDays; ++day) {
            look(column, day, rows);
        }
        return rows;
    }

    /// Half a run if a stop is asked for.
    TrialRun<Real> run(const std::array<Real, kBalanceUnknowns>& factors, const std::stop_token& stop) {
        m_pack.parameters.respiration.factor = factors[kRespirationFactor];
        m_pack.parameters.growth.factor = factors[kGrowthFactor];
        m_pack.parameters.surface.windFactor = factors[kWindFactor];
        Column<Real> column(m_model.grid, m_pack.parameters, m_model.aerator, m_model.bottom, m_pack.start);
        TrialRun<Real> out;
        out.openVolume = column.openVolume();
        out.organic.before = column.labileAbove();
        std::array<Real, kBalanceReadings> atStart{};
        for (int i = 0; i < kBalanceReadings; ++i) {
            atStart[i] = m_target[i].isChange ? oxygenAt(column, m_target[i].depth) : Real(0.0);
        }
        std::size_t mark = 0;
        for (const MemberStep& step : m_steps) {
            if (stop.stop_requested()) {
                break;
            }
            takeStep(column, step, m_pack.offsets);
            if (!step.endsHour) {
                continue;
            }
            const double time = m_marks[mark];
            for (int i = 0; i < kBalanceReadings; ++i) {
                if (time == m_target[i].time) {
                    out.rows[kReadingRow + i] = oxygenAt(column, m_target[i].depth) - atStart[i];
                }
            }
            for (int day = 0; day < kBalanceDays; ++day) {
                if (time == m_model.startTime + (day + 1) * kDay) {
                    look(column, day, out.rows);
                }
            }
            if (time == m_model.startTime + kDay) {
                out.organic.after = column.labileAbove();
                out.organic.weedsMade = column.ledger().weedsMade;
                out.organic.weedsRespired = column.ledger().weedsRespired;
            }
            ++mark;
        }
        return out;
    }

private:
    /// When readings and profile are looked at, in order.
    static std::vector<double> marksOf(const PondModel& model, const BalanceTarget& target) {
        std::vector<double> marks;
        for (int day = 1; day <= kBalanceDays; ++day) {
            marks.push_back(model.startTime + day * kDay);
        }
        for (const BalanceReading& reading : target) {
            marks.push_back(reading.time);
        }
        std::sort(marks.begin(), marks.end());
        marks.erase(std::unique(marks.begin(), marks.end()), marks.end());
        return marks;
    }
    [[nodiscard]] Real oxygenAt(const Column<Real>& column, double depth) const {
        Real out{};
        for (int k = 0; k < kLanes<Real>; ++k) {
            setLane(out, k, interpolate(m_model.grid.middle, column.solutes(kOxygen, k), depth));
        }
        return out;
    }
    void look(const Column<Real>& column, int day, std::array<Real, kBalanceRows>& rows) const {
        const std::vector<double>& depth = m_model.grid.middle;
        Real* const of = rows.data() + day * kRowsOfDay;
        of[kOxygenAbove] = column.oxygenAbove() / column.openVolume();
        for (int k = 0; k < kLanes<Real>; ++k) {
            const std::vector<double> oxygen = column.solutes(kOxygen, k), warm = column.temperatures(k);
            setLane(of[kOxygenSurface], k, interpolate(depth, oxygen, m_model.surfaceDepth));
            setLane(of[kOxygenMetre], k, interpolate(depth, oxygen, m_metre));
            setLane(of[kWarmSurface], k, interpolate(depth, warm, m_model.surfaceDepth));
            setLane(of[kWarmMetre], k, interpolate(depth, warm, m_metre));
            setLane(of[kWarmBottom], k, interpolate(depth, warm, m_model.bottomDepth));
        }
    }

    const PondModel& m_model;
    MemberPack<Real> m_pack;
    BalanceTarget m_target;
    std::vector<double> m_marks;
    std::vector<MemberStep> m_steps;
    double m_metre = 1.0;  // A metre down, or where bottom water begins [m]
};

/// 1 sigma [g/m^3].
double errorOf(const BalanceReading& reading) {
    constexpr double kNinetyPercent = 1.6449;  // sigmas from the middle to the 95 % point
    const MaybeQuantity& read = reading.oxygen;
    return read && reading.isChange ? (*read->high - *read->low) / (2.0 * kNinetyPercent) : kDawnError.value;
}

/// The least squares of one pond. Its sums go row by row, since Eigen's go in the order that a processor's
/// registers suggest, and all kernels are to give the same bits.
class LeastSquares {
public:
    LeastSquares(const BalanceSlopes& slopes, const BalanceTarget& target) {
        for (int row = 0; row < kReadingRow; ++row) {
            const double error = row % kRowsOfDay == kOxygenAbove  ? kMeanOxygenError.value
                                 : row % kRowsOfDay < kWarmSurface ? kOxygenAtDepthError.value
                                                                   : kTemperatureAtDepthError.value;
            m_weights[row] = 1.0 / (error * error);
        }
        for (int i = 0; i < kBalanceReadings; ++i) {
            const double error = errorOf(target[i]);
            m_weights[kReadingRow + i] = target[i].oxygen ? 1.0 / (error * error) : 0.0;
        }
        const double respiration =
            target[kOfDawn].oxygen ? kReadRespirationSpread.value : kRespirationSpread.value;
        m_prior = Point(1.0 / (respiration * respiration), 1.0 / (kGrowthSpread.value * kGrowthSpread.value),
                        1.0 / (kWindSpread.value * kWindSpread.value));
        Eigen::Matrix<double, kBalanceUnknowns, kBalanceUnknowns> curvature = m_prior.asDiagonal();
        for (int row = 0; row < kBalanceRows; ++row) {
            for (int i = 0; i < kBalanceUnknowns; ++i) {
                m_gradient(i, row) = slopes(row, i) * m_weights[row];
                for (int j = 0; j < kBalanceUnknowns; ++j) {
                    curvature(i, j) += m_gradient(i, row) * slopes(row, j);
                }
            }
        }
        m_inverse = curvature.inverse();
    }

    /// Huber's: a row far off counts by its distance and no more by its square, so that what no factor can
    /// mend does not carry the factors away.
    [[nodiscard]] double excess(const Point& at, const Rows& miss) const {
        double sum = 0.0;
        for (int row = 0; row < kBalanceRows; ++row) {
            const double off = std::fabs(miss[row]) * std::sqrt(m_weights[row]);
            sum += off < kFarOff.value ? off * off : kFarOff.value * (2.0 * off - kFarOff.value);
        }
        for (int i = 0; i < kBalanceUnknowns; ++i) {
            sum += m_prior[i] * at[i] * at[i];
        }
        return sum;
    }
    /// From a point on, given what it misses by.
    [[nodiscard]] Point stepFrom(const Point& at, const Rows& miss) const {
        Point rises = m_prior.cwiseProduct(at), step = Point::Zero();
        for (int row = 0; row < kBalanceRows; ++row) {
            const double most = m_weights[row] > 0.0 ? kFarOff.value / std::sqrt(m_weights[row]) : 0.0;
            const double counted = std::clamp(miss[row], -most, most);
            for (int i = 0; i < kBalanceUnknowns; ++i) {
                rises[i] += m_gradient(i, row) * counted;
            }
        }
        for (int j = 0; j < kBalanceUnknowns; ++j) {
            for (int i = 0; i < kBalanceUnknowns; ++i) {
                step[i] -= m_inverse(i, j) * rises[j];
            }
        }
        return step.cwiseMax(-kLongestStep).cwiseMin(kLongestStep);
    }

private:
    Rows m_weights;
    Point m_prior;
    Eigen::Matrix<double, kBalanceUnknowns, kBalanceRows> m_gradient;
    Eigen::Matrix<double, kBalanceUnknowns, kBalanceUnknowns> m_inverse;
};

/// The search for one member's factors, kept within their range: what raises the sum of squares is taken back
/// by half.
class Search {
public:
    Search(const Point& start, const LeastSquares& squares)
        : m_squares(squares), m_at(start), m_best(start) {}

    [[nodiscard]] const Point& at() const { return m_at; }
    [[nodiscard]] const Point& best() const { return m_best; }
    [[nodiscard]] bool isDone() const { return m_isDone; }

    void take(const Rows& miss) {
        if (!miss.allFinite()) {
            stop();
            return;
        }
        const double excess = m_squares.excess(m_at, miss);
        if (excess < m_least) {
            m_least = excess;
            m_best = m_at;
            m_step = m_squares.stepFrom(m_at, miss);
        } else {
            m_step *= 0.5;
        }
        const Point low = Point::Constant(std::log(kLeastBalance)),
                    high = Point::Constant(std::log(kGreatestBalance));
        const Point next = (m_best + m_step).cwiseMax(low).cwiseMin(high);
        if ((next - m_best).cwiseAbs().maxCoeff() < kEnough) {
            stop();
            return;
        }
        m_at = next;
    }

private:
    void stop() {
        m_at = m_best;
        m_isDone = true;
    }

    const LeastSquares& m_squares;
    Point m_at, m_best, m_step = Point::Zero();
    double m_least = 1e300;
    bool m_isDone = false;
};

/// Factors as the search sees them.
template <class Real>
Point logFactors(const Parameters<Real>& p, int k) {
    return {std::log(lane(p.respiration.factor, k)), std::log(lane(p.growth.factor, k)),
            std::log(lane(p.surface.windFactor, k))};
}

template <class Real>
Rows missOf(const std::array<Real, kBalanceRows>& rows, const std::array<Real, kBalanceRows>& wanted, int k,
            const BalanceTarget& target, std::span<const ReadOxygen> read) {
    Rows miss;
    for (int row = 0; row < kReadingRow; ++row) {
        miss[row] = lane(rows[row], k) - lane(wanted[row], k);
    }
    for (int i = 0; i < kBalanceReadings; ++i) {
        miss[kReadingRow + i] = target[i].oxygen ? lane(rows[kReadingRow + i], k) - read[k][i] : 0.0;
    }
    return miss;
}

BalanceMiss worstOfDay(const Rows& miss) {
    BalanceMiss out;
    for (int row = 0; row < kRowsOfDay; ++row) {
        double& worst = row < kWarmSurface ? out.oxygen : out.temperature;
        worst = std::fabs(miss[row]) > std::fabs(worst) ? miss[row] : worst;
    }
    return out;
}

}  // namespace

BalanceSlopes balanceSlopes(const PondModel& model, const std::stop_token& stop) {
    const MemberPack<double> central{model.parameters, model.start, {PackOffset<double>{}}};
    Trial<double> trial(model, central, balanceTarget(model));
    const Point at = logFactors(model.parameters, 0);
    const auto run = [&](const Point& where) {
        const TrialRun<double> out =
            trial.run({std::exp(where[0]), std::exp(where[1]), std::exp(where[2])}, stop);
        return Eigen::Map<const Rows>(out.rows.data()).eval();
    };
    const Rows here = run(at);
    BalanceSlopes slopes;
    for (int i = 0; i < kBalanceUnknowns; ++i) {
        slopes.col(i) = (run(at + kNudge * Point::Unit(i)) - here) / kNudge;
    }
    return slopes;
}

template <class Real>
void balancePack(const PondModel& model, const BalanceSlopes& slopes, std::span<const ReadOxygen> read,
                 MemberPack<Real>& pack, std::span<BalanceMiss> miss, const std::stop_token& stop) {
    const WithoutSubnormals<Real> quick;
    const BalanceTarget target = balanceTarget(model);
    const LeastSquares squares(slopes, target);
    Trial<Real> trial(model, pack, target);
    const std::array<Real, kBalanceRows> wanted = trial.wanted();
    std::vector<Search> searches;
    for (int k = 0; k < kLanes<Real>; ++k) {
        searches.emplace_back(logFactors(pack.parameters, k), squares);
    }
    const auto factors = [&](auto point) {
        std::array<Real, kBalanceUnknowns> out{};
        for (int i = 0; i < kBalanceUnknowns; ++i) {
            for (int k = 0; k < kLanes<Real>; ++k) {
                setLane(out[i], k, std::exp((searches[k].*point)()[i]));
            }
        }
        return out;
    };
    const auto isSearching = [&] {
        return std::any_of(searches.begin(), searches.end(), [](const Search& one) { return !one.isDone(); });
    };
    // A member that is done is taken along as it is, so that its factors do not depend on its neighbours.
    TrialRun<Real> last;
    std::vector<Point> tried(searches.size(), Point::Constant(kFar));
    for (int turn = 0; turn < kMostTrials && isSearching() && !stop.stop_requested(); ++turn) {
        last = trial.run(factors(&Search::at), stop);
        for (int k = 0; k < kLanes<Real>; ++k) {
            tried[k] = searches[k].at();
            if (!searches[k].isDone()) {
                searches[k].take(missOf(last.rows, wanted, k, target, read));
            }
        }
    }
    const std::array<Real, kBalanceUnknowns> found = factors(&Search::best);
    // Mostly what was tried last is what was found.
    const auto isTried = [&](const Search& one) {
        return one.best() == tried[static_cast<std::size_t>(&one - searches.data())];
    };
    if (!std::all_of(searches.begin(), searches.end(), isTried)) {
        last = trial.run(found, stop);
    }
    if (stop.stop_requested()) {
        return;
    }
    pack.parameters.respiration.factor = found[kRespirationFactor];
    pack.parameters.growth.factor = found[kGrowthFactor];
    pack.parameters.surface.windFactor = found[kWindFactor];
    closeBooks(pack.parameters.organic, last.organic, last.openVolume, model.grid.faceArea[0]);
    for (std::size_t k = 0; k < miss.size(); ++k) {
        miss[k] = worstOfDay(missOf(last.rows, wanted, static_cast<int>(k), target, read));
    }
}

template void balancePack(const PondModel&, const BalanceSlopes&, std::span<const ReadOxygen>,
                          MemberPack<double>&, std::span<BalanceMiss>, const std::stop_token&);
template void balancePack(const PondModel&, const BalanceSlopes&, std::span<const ReadOxygen>,
                          MemberPack<DoubleLanes>&, std::span<BalanceMiss>, const std::stop_token&);
template void balancePack(const PondModel&, const BalanceSlopes&, std::span<const ReadOxygen>,
                          MemberPack<Lanes>&, std::span<BalanceMiss>, const std::stop_token&);

}  // namespace engine
