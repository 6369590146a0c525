#pragma once

#include "engine/column/column.h"
#include "engine/run/member.h"
#include "engine/run/member_weather.h"

#include <algorithm>
#include <span>
#include <utility>
#include <vector>

namespace engine {

/// Members side by side: one a lane of `Real`.
template <class Real>
struct MemberPack {
    Parameters<Real> parameters;
    StartState<Real> start;
    std::vector<PackOffset<Real>> offsets;  ///< By day of the weather, and one more for the usual days after
};

/// Members whose numbers are handed on lane by lane, with their weather.
struct WeatheredMember {
    Member member;
    std::vector<WeatherOffset> offsets;  ///< As in MemberPack
};

/// A member with its weather, after the scatter's days the usual one.
/// @param scores  Standard normal, kWeatherScores a day.
[[nodiscard]] inline WeatheredMember weathered(Member member, std::span<const WeatherScatter> scatter,
                                               std::span<const double> scores) {
    std::vector<WeatherOffset> offsets = weatherOffsets(scatter, scores, member.windFactor);
    offsets.push_back({0.0, member.windFactor, 0.0});
    return {std::move(member), std::move(offsets)};
}

/// Calls f(to, from) for each number of Parameters that members may differ in.
template <class To, class From, class F>
void forEachParameter(To& to, From& from, const F& f) {
    // 58 below, by process as Parameters has them, and seven that members share. A parameter that is not
    // handed on would quietly be its default in every member.
    static_assert(sizeof(Parameters<double>) == sizeof(OxygenThresholds) + 65 * sizeof(double),
                  "hand the new parameter on below");
    f(to.light.attenuationRest, from.light.attenuationRest);
    f(to.light.albedo, from.light.albedo);
    f(to.growth.rate, from.growth.rate);
    f(to.growth.saturationLight, from.growth.saturationLight);
    f(to.growth.theta, from.growth.theta);
    f(to.growth.factor, from.growth.factor);
    f(to.weeds.mass, from.weeds.mass);
    f(to.weeds.cover, from.weeds.cover);
    f(to.weeds.photosynthesis, from.weeds.photosynthesis);
    f(to.weeds.respiration, from.weeds.respiration);
    f(to.weeds.shading, from.weeds.shading);
    f(to.respiration.base, from.respiration.base);
    f(to.respiration.perChlorophyll, from.respiration.perChlorophyll);
    f(to.respiration.theta, from.respiration.theta);
    f(to.respiration.factor, from.respiration.factor);
    f(to.organic.breathedAtOnce, from.organic.breathedAtOnce);
    f(to.organic.maintenance, from.organic.maintenance);
    f(to.organic.decay, from.organic.decay);
    f(to.organic.settling, from.organic.settling);
    f(to.organic.mudDecay, from.organic.mudDecay);
    f(to.organic.below, from.organic.below);
    f(to.organic.ofChlorophyll, from.organic.ofChlorophyll);
    f(to.organic.ofWeeds, from.organic.ofWeeds);
    f(to.organic.benthic, from.organic.benthic);
    f(to.organic.feedWaste, from.organic.feedWaste);
    f(to.organic.feedNitrogen, from.organic.feedNitrogen);
    f(to.organic.load, from.organic.load);
    f(to.organic.loss, from.organic.loss);
    f(to.organic.weedsGive, from.organic.weedsGive);
    f(to.fish.stock, from.fish.stock);
    f(to.sediment.demand, from.sediment.demand);
    f(to.sediment.theta, from.sediment.theta);
    f(to.sediment.regenerationShare, from.sediment.regenerationShare);
    f(to.muck.stirredArea, from.muck.stirredArea);
    f(to.muck.stirredDemand, from.muck.stirredDemand);
    f(to.muck.fastShare, from.muck.fastShare);
    f(to.muck.store, from.muck.store);
    f(to.muck.reach, from.muck.reach);
    f(to.debt.fastRate, from.debt.fastRate);
    f(to.debt.mediumRate, from.debt.mediumRate);
    f(to.debt.slowRate, from.debt.slowRate);
    f(to.debt.fastShare, from.debt.fastShare);
    f(to.debt.theta, from.debt.theta);
    f(to.debt.slowTheta, from.debt.slowTheta);
    f(to.surface.exchangeFactor, from.surface.exchangeFactor);
    f(to.surface.windFactor, from.surface.windFactor);
    f(to.surface.aeratorTransfer, from.surface.aeratorTransfer);
    f(to.spring.flow, from.spring.flow);
    f(to.spring.temperature, from.spring.temperature);
    f(to.spring.oxygen, from.spring.oxygen);
    f(to.spring.salinity, from.spring.salinity);
    f(to.toxicants.sulfideOfFast, from.toxicants.sulfideOfFast);
    f(to.toxicants.ammoniaOfSlow, from.toxicants.ammoniaOfSlow);
    f(to.bubbles.nonRecirculatedShare, from.bubbles.nonRecirculatedShare);
    f(to.bubbles.freeAirFactor, from.bubbles.freeAirFactor);
    f(to.bubbles.diameterFactor, from.bubbles.diameterFactor);
    f(to.mixing.friction, from.mixing.friction);
    f(to.mixing.background, from.mixing.background);
}

/// Up to as many members as `Real` has lanes; the lanes that are left over repeat the last member.
template <class Real>
[[nodiscard]] MemberPack<Real> packOf(std::span<const WeatheredMember> members) {
    MemberPack<Real> pack;
    const Parameters<double>& first = members.front().member.parameters;
    pack.parameters.site.airPressure = first.site.airPressure;
    pack.parameters.site.latitude_deg = first.site.latitude_deg;
    pack.parameters.fish.mass_g = first.fish.mass_g;
    pack.parameters.toxicants.known = first.toxicants.known;
    pack.parameters.thresholds = first.thresholds;
    const std::size_t layers = members.front().member.start.oxygen.size();
    StartState<Real>& start = pack.start;
    for (auto* field : {&start.temperature, &start.salinity, &start.oxygen, &start.chlorophyll, &start.fast,
                        &start.medium, &start.slow, &start.sulfide}) {
        field->resize(layers, Real(0.0));
    }
    pack.offsets.resize(members.front().offsets.size());
    for (int k = 0; k < kLanes<Real>; ++k) {
        const WeatheredMember& one = members[std::min(static_cast<std::size_t>(k), members.size() - 1)];
        forEachParameter(pack.parameters, one.member.parameters,
                         [k](Real& to, const double& from) { setLane(to, k, from); });
        const auto hand = [&](std::vector<Real>& to, const std::vector<double>& from) {
            for (std::size_t i = 0; i < from.size(); ++i) {
                setLane(to[i], k, from[i]);
            }
        };
        const StartState<double>& own = one.member.start;
        hand(start.temperature, own.temperature);
        hand(start.salinity, own.salinity);
        hand(start.oxygen, own.oxygen);
        hand(start.chlorophyll, own.chlorophyll);
        hand(start.fast, own.fast);
        hand(start.medium, own.medium);
        hand(start.slow, own.slow);
        hand(start.sulfide, own.sulfide);
        for (std::size_t day = 0; day < pack.offsets.size(); ++day) {
            setLane(pack.offsets[day].air, k, one.offsets[day].air);
            setLane(pack.offsets[day].windFactor, k, one.offsets[day].windFactor);
            setLane(pack.offsets[day].cloud, k, one.offsets[day].cloud);
        }
    }
    return pack;
}

}  // namespace engine
