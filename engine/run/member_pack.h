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
    // 41 below and four that members share. A parameter that is not handed on would quietly be its default in
    // every member.
    static_assert(sizeof(Parameters<double>) == sizeof(OxygenThresholds) + 45 * sizeof(double),
                  "hand the new parameter on below");
    f(to.attenuationRest, from.attenuationRest);
    f(to.photosynthesis, from.photosynthesis);
    f(to.saturationLight, from.saturationLight);
    f(to.weedMass, from.weedMass);
    f(to.weedPhotosynthesis, from.weedPhotosynthesis);
    f(to.weedRespiration, from.weedRespiration);
    f(to.photosynthesisFactor, from.photosynthesisFactor);
    f(to.respirationFactor, from.respirationFactor);
    f(to.respirationBase, from.respirationBase);
    f(to.respirationPerChlorophyll, from.respirationPerChlorophyll);
    f(to.fishStock, from.fishStock);
    f(to.sedimentDemand, from.sedimentDemand);
    f(to.sedimentTheta, from.sedimentTheta);
    f(to.regenerationShare, from.regenerationShare);
    f(to.muckStore, from.muckStore);
    f(to.muckReach, from.muckReach);
    f(to.fastRate, from.fastRate);
    f(to.mediumRate, from.mediumRate);
    f(to.slowRate, from.slowRate);
    f(to.fastShare, from.fastShare);
    f(to.springFlow, from.springFlow);
    f(to.springTemperature, from.springTemperature);
    f(to.springOxygen, from.springOxygen);
    f(to.springSalinity, from.springSalinity);
    f(to.aeratorTransfer, from.aeratorTransfer);
    f(to.sulfideOfFast, from.sulfideOfFast);
    f(to.photosynthesisTheta, from.photosynthesisTheta);
    f(to.albedo, from.albedo);
    f(to.weedShading, from.weedShading);
    f(to.respirationTheta, from.respirationTheta);
    f(to.stirredArea, from.stirredArea);
    f(to.stirredDemand, from.stirredDemand);
    f(to.muckFastShare, from.muckFastShare);
    f(to.debtTheta, from.debtTheta);
    f(to.slowTheta, from.slowTheta);
    f(to.debtOfChlorophyll, from.debtOfChlorophyll);
    f(to.debtOfWeeds, from.debtOfWeeds);
    f(to.exchangeFactor, from.exchangeFactor);
    f(to.nonRecirculatedShare, from.nonRecirculatedShare);
    f(to.freeAirFactor, from.freeAirFactor);
    f(to.bubbleFactor, from.bubbleFactor);
}

/// Up to as many members as `Real` has lanes; the lanes that are left over repeat the last member.
template <class Real>
[[nodiscard]] MemberPack<Real> packOf(std::span<const WeatheredMember> members) {
    MemberPack<Real> pack;
    const Parameters<double>& first = members.front().member.parameters;
    pack.parameters.airPressure = first.airPressure;
    pack.parameters.latitude_deg = first.latitude_deg;
    pack.parameters.fishMass_g = first.fishMass_g;
    pack.parameters.ph = first.ph;
    pack.parameters.thresholds = first.thresholds;
    const std::size_t layers = members.front().member.start.oxygen.size();
    StartState<Real>& start = pack.start;
    for (auto* field : {&start.temperature, &start.salinity, &start.oxygen, &start.chlorophyll, &start.fast,
                        &start.medium, &start.slow, &start.sulfide, &start.ammonia}) {
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
        hand(start.ammonia, own.ammonia);
        for (std::size_t day = 0; day < pack.offsets.size(); ++day) {
            setLane(pack.offsets[day].air, k, one.offsets[day].air);
            setLane(pack.offsets[day].windFactor, k, one.offsets[day].windFactor);
            setLane(pack.offsets[day].cloud, k, one.offsets[day].cloud);
        }
    }
    return pack;
}

}  // namespace engine
