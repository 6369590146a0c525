#include "engine/base/units.h"
#include "engine/run/member_run.h"
#include "engine/run/prepare.h"

#include <Eigen/LU>

#include <algorithm>
#include <cmath>

namespace engine {
namespace {

constexpr double kEnough = 1e-3;  // [g/m^3], a hundredth of what is shown
constexpr int kMostTrials = 14;
constexpr double kLongestStep = 1.0;  // of a factor's logarithm
constexpr double kNudge = 0.1;        // of a factor's logarithm, for the slopes of the start
constexpr double kLeastSlope = 0.05;  // [g/m^3]; less says that the factor hardly matters

using Two = Eigen::Vector2d;  // Respiration (to the dawn reading), photosynthesis (to the day's end)
using Slopes = BalanceSlopes;

/// What a do-nothing day makes of the members with the factors that they have.
template <class Real>
struct TrialDay {
    Real atReading = 0.0, afterDay = 0.0;  ///< [g/m^3]
};

/// The day that the balance of a pack tries out.
template <class Real>
class Trial {
public:
    Trial(const PondModel& model, const MemberPack<Real>& pack, const BalanceTarget& target)
        : m_model(model),
          m_pack(pack),
          m_target(target),
          m_steps(trialSteps(model, target.readingTime, model.startTime + kDay)) {
        // What a pond respires does not depend on how warm its fish like it.
        m_pack.parameters.thresholds.fishMax = OxygenThresholds{}.fishMax;
        m_pack.offsets.erase(m_pack.offsets.begin(), m_pack.offsets.end() - 1);
    }

    /// Oxygen of the fish water at the start, which the day is to end with.
    [[nodiscard]] Real wanted() const {
        const Column<Real> column(m_model.grid, m_pack.parameters, m_model.aerator, m_model.bottom,
                                  m_pack.start);
        return column.fishWater();
    }

    TrialDay<Real> run(const Real& respiration, const Real& photosynthesis) {
        m_pack.parameters.respiration.factor = respiration;
        m_pack.parameters.growth.factor = photosynthesis;
        Column<Real> column(m_model.grid, m_pack.parameters, m_model.aerator, m_model.bottom, m_pack.start);
        TrialDay<Real> out;
        bool isRead = false;
        for (const MemberStep& step : m_steps) {
            takeStep(column, step, m_pack.offsets);
            if (step.endsHour && !isRead) {
                isRead = true;
                for (int k = 0; k < kLanes<Real>; ++k) {
                    setLane(
                        out.atReading, k,
                        interpolate(m_model.grid.middle, column.solutes(kOxygen, k), m_target.readingDepth));
                }
            }
        }
        out.afterDay = column.fishWater();
        return out;
    }

private:
    const PondModel& m_model;
    MemberPack<Real> m_pack;
    BalanceTarget m_target;
    std::vector<MemberStep> m_steps;
};

/// Broyden's search for the logarithms of one member's factors, kept within their range.
class Search {
public:
    Search(const Two& start, const Slopes& slopes, bool hasDawn)
        : m_at(start), m_best(start), m_start(slopes), m_slopes(slopes), m_hasDawn(hasDawn) {}

    [[nodiscard]] const Two& at() const { return m_at; }
    [[nodiscard]] const Two& best() const { return m_best; }
    [[nodiscard]] bool isDone() const { return m_isDone; }

    /// Takes in the misses at at() (model minus wanted) and moves on.
    void take(Two miss) {
        if (!m_hasDawn) {
            miss[0] = 0.0;
        }
        if (!miss.allFinite()) {
            m_isDone = true;
            return;
        }
        if (miss.norm() < m_leastMiss) {
            m_leastMiss = miss.norm();
            m_best = m_at;
        }
        if (m_hasLast) {
            learn(miss);
        }
        m_hasLast = true;
        m_last = m_at;
        m_lastMiss = miss;
        const Two next = nextFrom(miss);
        if (miss.cwiseAbs().maxCoeff() < kEnough || next == m_at) {
            m_best = m_at;
            m_isDone = true;
        }
        m_at = m_isDone ? m_at : next;
    }

private:
    [[nodiscard]] Two nextFrom(const Two& miss) const {
        const Two low = Two::Constant(std::log(kLeastBalance)),
                  high = Two::Constant(std::log(kGreatestBalance));
        Two step = -m_slopes.inverse() * miss;
        // A factor at the end of its range that is pushed further stays there, and the other is led alone;
        // at() does not move any more once neither has anything left to do.
        for (int i = 0; i < 2; ++i) {
            if ((m_at[i] <= low[i] && step[i] <= 0.0) || (m_at[i] >= high[i] && step[i] >= 0.0)) {
                step[i] = 0.0;
                const double other = -miss[1 - i] / m_slopes(1 - i, 1 - i);
                step[1 - i] = std::fabs(miss[1 - i]) < kEnough ? 0.0 : other;
            }
        }
        return (m_at + step.cwiseMax(-kLongestStep).cwiseMin(kLongestStep)).cwiseMax(low).cwiseMin(high);
    }

    void learn(const Two& miss) {
        const Two moved = m_at - m_last;
        m_slopes += (miss - m_lastMiss - m_slopes * moved) * moved.transpose() / moved.squaredNorm();
        // More respiration never leaves more, more photosynthesis never less: slopes that say so are noise.
        if (m_slopes(0, 0) > 0.2 * m_start(0, 0) || m_slopes(1, 1) < 0.2 * m_start(1, 1) ||
            m_slopes.determinant() >= 0.0) {
            m_slopes = m_start;
        }
    }

    Two m_at, m_best, m_last = Two::Zero(), m_lastMiss = Two::Zero();
    Slopes m_start, m_slopes;
    double m_leastMiss = 1e300;
    bool m_hasDawn = false, m_hasLast = false, m_isDone = false;
};

/// Factors as the search sees them.
template <class Real>
Two logFactors(const Parameters<Real>& p, int k) {
    return {std::log(lane(p.respiration.factor, k)), std::log(lane(p.growth.factor, k))};
}

}  // namespace

BalanceSlopes balanceSlopes(const PondModel& model) {
    const BalanceTarget target = balanceTarget(model);
    const bool hasDawn = target.dawnOxygen.has_value();
    MemberPack<double> central{model.parameters, model.start, {PackOffset<double>{}}};
    Trial<double> trial(model, central, target);
    const Two at = logFactors(model.parameters, 0);
    const auto run = [&](const Two& where) {
        const TrialDay<double> day = trial.run(std::exp(where[0]), std::exp(where[1]));
        return Two(day.atReading, day.afterDay);
    };
    const Two here = run(at);
    BalanceSlopes slopes = BalanceSlopes::Zero();
    for (int i = hasDawn ? 0 : 1; i < 2; ++i) {
        slopes.col(i) = (run(at + kNudge * Two::Unit(i)) - here) / kNudge;
    }
    if (!hasDawn) {
        slopes.row(0) = Two(-1.0, 0.0).transpose();  // nothing is to be met
    }
    slopes(0, 0) = std::min(slopes(0, 0), -kLeastSlope);
    slopes(1, 1) = std::max(slopes(1, 1), kLeastSlope);
    return slopes.determinant() < 0.0 ? slopes : BalanceSlopes(slopes.diagonal().asDiagonal());
}

template <class Real>
void balancePack(const PondModel& model, const BalanceSlopes& slopes, std::span<const double> dawn,
                 MemberPack<Real>& pack, const std::stop_token& stop) {
    const BalanceTarget target = balanceTarget(model);
    Trial<Real> trial(model, pack, target);
    const Real wanted = trial.wanted();
    std::vector<Search> searches;
    for (int k = 0; k < kLanes<Real>; ++k) {
        searches.emplace_back(logFactors(pack.parameters, k), slopes, target.dawnOxygen.has_value());
    }
    const auto isSearching = [&] {
        return std::any_of(searches.begin(), searches.end(), [](const Search& one) { return !one.isDone(); });
    };
    // A member that is done is taken along as it is, so that its factors do not depend on its neighbours.
    for (int turn = 0; turn < kMostTrials && isSearching() && !stop.stop_requested(); ++turn) {
        Real respiration = 1.0, photosynthesis = 1.0;
        for (int k = 0; k < kLanes<Real>; ++k) {
            setLane(respiration, k, std::exp(searches[k].at()[0]));
            setLane(photosynthesis, k, std::exp(searches[k].at()[1]));
        }
        const TrialDay<Real> day = trial.run(respiration, photosynthesis);
        for (int k = 0; k < kLanes<Real>; ++k) {
            if (!searches[k].isDone()) {
                const double atDawn = target.dawnOxygen ? lane(day.atReading, k) - dawn[k] : 0.0;
                searches[k].take({atDawn, lane(day.afterDay, k) - lane(wanted, k)});
            }
        }
    }
    for (int k = 0; k < kLanes<Real>; ++k) {
        setLane(pack.parameters.respiration.factor, k, std::exp(searches[k].best()[0]));
        setLane(pack.parameters.growth.factor, k, std::exp(searches[k].best()[1]));
    }
}

template void balancePack(const PondModel&, const BalanceSlopes&, std::span<const double>,
                          MemberPack<double>&, const std::stop_token&);
template void balancePack(const PondModel&, const BalanceSlopes&, std::span<const double>,
                          MemberPack<Pack<4>>&, const std::stop_token&);

}  // namespace engine
