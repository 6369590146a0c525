#include "engine/run/member_run.h"

#include "engine/base/subnormals.h"
#include "engine/base/units.h"
#include "engine/run/air_clock.h"

#include <algorithm>
#include <array>
#include <cmath>

namespace engine {

MemberWatch::MemberWatch(const std::vector<Point>& points, const std::vector<double>& hours,
                         std::size_t members)
    : oxygen(points.size() * members),
      temperature(points.size() * members),
      m_members(members),
      m_atHour(hours.size()) {
    for (std::size_t i = 0; i < points.size(); ++i) {
        const auto after = std::lower_bound(hours.begin(), hours.end(), points[i].time);
        if (after == hours.end()) {
            continue;
        }
        const auto hour = static_cast<std::size_t>(after - hours.begin());
        const double share =
            hour == 0 ? 1.0 : (points[i].time - hours[hour - 1]) / (hours[hour] - hours[hour - 1]);
        m_atHour[hour].push_back({i, points[i].depth, share});
        if (hour > 0 && share < 1.0) {
            m_atHour[hour - 1].push_back({i, points[i].depth, 1.0 - share});
        }
    }
}

template <class Real>
void MemberWatch::note(const Grid& grid, const Column<Real>& column, int k, std::size_t hour,
                       std::size_t member) {
    if (hour >= m_atHour.size() || m_atHour[hour].empty()) {
        return;
    }
    const std::vector<double> oxygens = column.solutes(kOxygen, k), temperatures = column.temperatures(k);
    for (const Share& share : m_atHour[hour]) {
        const std::size_t at = share.point * m_members + member;
        oxygen[at] += share.weight * interpolate(grid.middle, oxygens, share.depth);
        temperature[at] += share.weight * interpolate(grid.middle, temperatures, share.depth);
    }
}

template <class Real>
void takeStep(Column<Real>& column, const MemberStep& step, const std::vector<PackOffset<Real>>& offsets) {
    const std::size_t last = offsets.size() - 1;
    const PackOffset<Real>& from = offsets[std::min(static_cast<std::size_t>(step.noon), last)];
    const PackOffset<Real>& to = offsets[std::min(static_cast<std::size_t>(step.noon) + 1, last)];
    const Real warmer = from.air + step.pastNoon * (to.air - from.air);
    if (step.findsPlume) {
        column.refreshPlume();
    }
    const PackOffset<Real>& today = offsets[std::min(static_cast<std::size_t>(step.day), last)];
    const MemberForcing<Real> air = memberForcing(step.air, today, warmer);
    column.step(step.dt,
                {air.shortwave, air.air, air.vapourPressure, air.wind10, air.cloud,
                 Real(step.plants.chlorophyll), Real(step.plants.weeds)},
                step.aeration, step.inflow);
    if (step.endsHour) {
        column.refreshPlume();
    }
}

namespace {

template <class Real>
Real endStateOf(Column<Real>& column, const MemberPlan& plan, const MemberPack<Real>& pack,
                const std::stop_token& stop) {
    std::array<Real, kEndStateDays> lows;
    lows.fill(Real(kNever));
    const int first = plan.nights;
    for (const MemberStep& step : plan.endSteps) {
        if (step.endsHour && stop.stop_requested()) {
            break;
        }
        takeStep(column, step, pack.offsets);
        Real& low = lows[static_cast<std::size_t>(std::clamp(step.night - first, 0, kEndStateDays - 1))];
        low = min(low, column.fishWater());
    }
    Real mean = 0.0;
    for (int i = kEndStateDays - kEndStateNights; i < kEndStateDays; ++i) {
        mean += lows[static_cast<std::size_t>(i)] * (1.0 / kEndStateNights);
    }
    return mean;
}

}  // namespace

template <class Real>
void runPack(const PondModel& model, const MemberPlan& plan, const MemberPack<Real>& pack, std::size_t first,
             std::size_t used, MemberTrace& trace, const std::stop_token& stop) {
    const WithoutSubnormals<Real> quick;
    Column<Real> column(model.grid, pack.parameters, model.aerator, model.bottom, pack.start);
    std::vector<Real> lows(static_cast<std::size_t>(plan.nights), Real(kNever));
    std::size_t hour = 0;
    const auto writeHour = [&] {
        for (std::size_t k = 0; k < used; ++k) {
            const double value = lane(column.fishWater(), static_cast<int>(k));
            trace.hours[hour * trace.members + first + k] = static_cast<float>(value);
            trace.isFinite[first + k] =
                static_cast<std::uint8_t>(trace.isFinite[first + k] && std::isfinite(value));
            trace.watch.note(model.grid, column, static_cast<int>(k), hour, first + k);
        }
        ++hour;
    };
    writeHour();
    for (const MemberStep& step : plan.steps) {
        takeStep(column, step, pack.offsets);
        if (step.night >= 0 && step.night < plan.nights) {
            lows[step.night] = min(lows[step.night], column.fishWater());
        }
        if (step.endsHour) {
            writeHour();
            if (stop.stop_requested()) {
                return;
            }
        }
    }
    const OxygenThresholds& thresholds = model.parameters.thresholds;
    for (std::size_t k = 0; k < used; ++k) {
        double lowest = kNever;
        for (std::size_t night = 0; night < lows.size(); ++night) {
            const double low = lane(lows[night], static_cast<int>(k));
            trace.lows[night * trace.members + first + k] = static_cast<float>(low);
            lowest = std::min(lowest, low);
        }
        trace.isBelowStress[first + k] = lowest < thresholds.stress ? 1 : 0;
        trace.isBelowLethal[first + k] = lowest < thresholds.lethal ? 1 : 0;
    }
    if (!plan.endSteps.empty()) {
        const Real end = endStateOf(column, plan, pack, stop);
        for (std::size_t k = 0; k < used; ++k) {
            trace.endStates[first + k] = static_cast<float>(lane(end, static_cast<int>(k)));
        }
    }
}

template <class Real>
void goOn(const PondModel& model, std::span<const MemberStep> steps, const MemberPack<Real>& pack,
          PackRunState<Real>& runState, const std::stop_token& stop) {
    const WithoutSubnormals<Real> quick;
    Column<Real> column(model.grid, pack.parameters, model.aerator, model.bottom, pack.start);
    if (runState.water) {
        column.resume(*runState.water);
    }
    for (const MemberStep& step : steps) {
        takeStep(column, step, pack.offsets);
        if (step.night >= 0 && step.night < static_cast<int>(runState.lows.size())) {
            runState.lows[step.night] = min(runState.lows[step.night], column.fishWater());
        }
        if (step.endsHour && stop.stop_requested()) {
            return;
        }
    }
    runState.water = column.keep();
}

template void goOn(const PondModel&, std::span<const MemberStep>, const MemberPack<double>&,
                   PackRunState<double>&, const std::stop_token&);
template void takeStep(Column<double>&, const MemberStep&, const std::vector<PackOffset<double>>&);
template void runPack(const PondModel&, const MemberPlan&, const MemberPack<double>&, std::size_t,
                      std::size_t, MemberTrace&, const std::stop_token&);
template void goOn(const PondModel&, std::span<const MemberStep>, const MemberPack<DoubleLanes>&,
                   PackRunState<DoubleLanes>&, const std::stop_token&);
template void takeStep(Column<DoubleLanes>&, const MemberStep&, const std::vector<PackOffset<DoubleLanes>>&);
template void runPack(const PondModel&, const MemberPlan&, const MemberPack<DoubleLanes>&, std::size_t,
                      std::size_t, MemberTrace&, const std::stop_token&);
template void goOn(const PondModel&, std::span<const MemberStep>, const MemberPack<Lanes>&,
                   PackRunState<Lanes>&, const std::stop_token&);
template void takeStep(Column<Lanes>&, const MemberStep&, const std::vector<PackOffset<Lanes>>&);
template void runPack(const PondModel&, const MemberPlan&, const MemberPack<Lanes>&, std::size_t, std::size_t,
                      MemberTrace&, const std::stop_token&);

}  // namespace engine
