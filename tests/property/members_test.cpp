// Laws of members that march in packs: a pack is its members, whatever marches beside them; each closes its
// ledger and meets its own balance.
#include "engine/base/error.h"
#include "engine/base/units.h"
#include "engine/ensemble/ensemble.h"
#include "engine/run/balance.h"
#include "engine/run/constants_balance.h"
#include "engine/run/kernel.h"
#include "engine/run/member_run.h"
#include "tests/runnable_pond.h"
#include "tests/scenario.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <cstdlib>

namespace engine::test {
namespace {

constexpr int kDays = 2;

std::vector<WeatheredMember> membersOf(const PondModel& model, int count, std::uint64_t seed) {
    return weatheredMembers(model, drawMembers(model, count, kDays, seed), kDays);
}

EnsembleRamp centralRamp(const PondModel& model, const Ramp* ramp) {
    RunRequest request;
    request.days = kDays;
    request.keepLayers = false;
    return ensembleRamp(runRamp(model, ramp, request));
}

PondModel coarse(const Pond& pond) {
    Resolution resolution;
    resolution.layers = 16;
    resolution.largestStep = 900.0;
    return prepareUnbalanced(pond, resolution);
}

MemberTrace traceOf(const PondModel& model, const MemberPlan& plan,
                    std::span<const WeatheredMember> members) {
    MemberTrace trace(members.size(), plan);
    runPack(model, plan, packOf<Lanes>(members), 0, members.size(), trace, {});
    return trace;
}

/// Fish water of one member at each hour.
std::vector<float> ofMember(const MemberTrace& trace, std::size_t member) {
    std::vector<float> out;
    for (std::size_t i = member; i < trace.hours.size(); i += trace.members) {
        out.push_back(trace.hours[i]);
    }
    return out;
}

TEST(Members, APackIsItsMembersToTheLastBit) {
    for (unsigned seed = 1; seed <= 12; ++seed) {
        SCOPED_TRACE("seed " + std::to_string(seed));
        Dice dice(seed);
        const Pond pond = runnablePond(dice);
        const PondModel model = coarse(pond);
        const std::vector<WeatheredMember> members = membersOf(model, kPack, seed);
        const Ramp& ramp = model.pond.ramps[seed % model.pond.ramps.size()];
        const MemberPlan plan = memberPlan(model, centralRamp(model, &ramp), kDays, false);
        const MemberTrace together = traceOf(model, plan, members);
        for (std::size_t i = 0; i < kPack; ++i) {
            // Alone in its pack, in each lane; and in another place among the others.
            const MemberTrace alone = traceOf(model, plan, std::span(members).subspan(i, 1));
            EXPECT_EQ(ofMember(alone, 0), ofMember(together, i)) << "member " << i;
            std::vector<WeatheredMember> turned = members;
            std::rotate(turned.begin(), turned.begin() + static_cast<std::ptrdiff_t>(i), turned.end());
            EXPECT_EQ(ofMember(traceOf(model, plan, turned), 0), ofMember(together, i)) << "member " << i;
        }
    }
}

TEST(Members, APackOfDoublesAgreesWithTheLoneNumberToRounding) {
    // A lane's exponentials differ from the lone number's in the last places, and the plume is found again at
    // times that follow from the water; on an hour such a time may slip by a step. 1e-3 g/m^3 is a hundredth
    // of what is shown.
    constexpr std::size_t kMembers = kLanes<DoubleLanes>;
    const PondModel model = coarse(scenario("grandfathers-pond"));
    const std::vector<WeatheredMember> members = membersOf(model, kMembers, 3);
    const MemberPlan plan =
        memberPlan(model, centralRamp(model, &rampOfKind(model.pond, RampKind::Doubling)), kDays, false);
    MemberTrace together(kMembers, plan);
    runPack(model, plan, packOf<DoubleLanes>(members), 0, kMembers, together, {});
    for (std::size_t i = 0; i < kMembers; ++i) {
        MemberTrace alone(1, plan);
        runPack(model, plan, packOf<double>(std::span(members).subspan(i, 1)), 0, 1, alone, {});
        const std::vector<float> pack = ofMember(together, i), lone = ofMember(alone, 0);
        ASSERT_EQ(pack.size(), lone.size());
        for (std::size_t hour = 0; hour < pack.size(); ++hour) {
            EXPECT_NEAR(static_cast<double>(pack[hour]), static_cast<double>(lone[hour]), 1e-3)
                << "hour " << hour;
        }
    }
}

/// The lows of one night, sorted.
std::vector<double> lowsOf(const MemberTrace& trace, int night) {
    const auto first = trace.lows.begin() + static_cast<std::ptrdiff_t>(trace.members) * night;
    std::vector<double> lows(first, first + static_cast<std::ptrdiff_t>(trace.members));
    std::sort(lows.begin(), lows.end());
    return lows;
}

/// Between the sorted numbers, at a share of their count.
double atShare(const std::vector<double>& sorted, double share) {
    const double at = std::clamp(share, 0.0, 1.0) * static_cast<double>(sorted.size() - 1);
    const auto below = std::min(static_cast<std::size_t>(at), sorted.size() - 2);
    return sorted[below] + (at - static_cast<double>(below)) * (sorted[below + 1] - sorted[below]);
}

/// Of a share that so many members show: the standard error of a draw.
double samplingError(double share, std::size_t members) {
    return std::sqrt(share * (1.0 - share) / static_cast<double>(members));
}

/// Lows as members have them and as they would be exactly: percentiles of each night and chances within one
/// standard error of a draw of so many; where members lie closer than that, percentiles within what the steps
/// of any run may cost (LowsAndHoursAreConvergedInTime).
void expectWithinSamplingError(const MemberTrace& quick, const MemberTrace& exact, int nights) {
    const std::size_t members = exact.members;
    for (int night = 0; night < nights; ++night) {
        const std::vector<double> lows = lowsOf(quick, night), wanted = lowsOf(exact, night);
        for (const double p : {0.05, 0.25, 0.5, 0.75, 0.95}) {
            constexpr double kStepsMayCost = 0.05;  // [g/m^3]
            const double found = atShare(lows, p), error = samplingError(p, members);
            const double exactly = atShare(wanted, p);
            EXPECT_GE(found, std::min(atShare(wanted, p - error), exactly - kStepsMayCost))
                << "night " << night + 1 << ", " << p;
            EXPECT_LE(found, std::max(atShare(wanted, p + error), exactly + kStepsMayCost))
                << "night " << night + 1 << ", " << p;
        }
    }
    const auto chance = [members](const std::vector<std::uint8_t>& isBelow) {
        return static_cast<double>(std::count(isBelow.begin(), isBelow.end(), 1)) /
               static_cast<double>(members);
    };
    for (const auto flags : {&MemberTrace::isBelowStress, &MemberTrace::isBelowLethal}) {
        const double wanted = chance(exact.*flags);
        const double atLeast = 1.0 / static_cast<double>(members);  // One member
        EXPECT_NEAR(chance(quick.*flags), wanted, std::max(samplingError(wanted, members), atLeast) + 1e-12);
    }
}

/// Holds members as they run, in single precision and at the usual step, to the same members in double and at
/// small steps, left alone and under the pond's first ramp.
void expectSinglePrecisionWillDo(const std::string& name, int days, std::size_t count, double smallStep) {
    SCOPED_TRACE(name);
    const PondModel usual = prepareUnbalanced(scenario(name));
    const PondModel fine = prepareUnbalanced(scenario(name), {Resolution{}.layers, smallStep});
    const std::vector<WeatheredMember> members =
        weatheredMembers(usual, drawMembers(usual, static_cast<int>(count), days, 7), days);
    for (const bool isAlone : {true, false}) {
        SCOPED_TRACE(isAlone ? "do-nothing" : usual.pond.ramps.front().name);
        RunRequest request;
        request.days = days;
        request.keepLayers = false;
        const EnsembleRamp ramp =
            ensembleRamp(runRamp(usual, isAlone ? nullptr : &usual.pond.ramps.front(), request));
        const MemberPlan plan = memberPlan(usual, ramp, days, false),
                         finePlan = memberPlan(fine, ramp, days, false);
        MemberTrace quick(count, plan), exact(count, finePlan);
        for (std::size_t pack = 0; pack < packsOf(count); ++pack) {
            const auto own = membersOfPack(std::span(members), pack);
            kernel().runPack(usual, plan, packOf<Lanes>(own), pack * kPack, own.size(), quick, {});
        }
        constexpr std::size_t kWidth = kLanes<DoubleLanes>;
        for (std::size_t first = 0; first < count; first += kWidth) {
            runPack(fine, finePlan, packOf<DoubleLanes>(std::span(members).subspan(first, kWidth)), first,
                    kWidth, exact, {});
        }
        expectWithinSamplingError(quick, exact, days);
    }
}

TEST(Members, SinglePrecisionAndUsualStepsStayWithinSamplingError) {
    expectSinglePrecisionWillDo("grandfathers-pond", 4, 64, 75.0);
}

TEST(Members, SoTheyDoInEveryPondOverTwoWeeks) {
    if (std::getenv("DAWNLINE_SLOW") == nullptr) {
        GTEST_SKIP() << "takes minutes; DAWNLINE_SLOW is not set";
    }
    for (const char* name : {"grandfathers-pond", "old-quarry", "pea-soup", "salt-lens", "windy-dugout"}) {
        expectSinglePrecisionWillDo(name, 14, 256, 22.5);
    }
}

TEST(Members, OneWithoutAnythingDrawnIsTheCentralRun) {
    // Same physics, same marks: the plain ramp's central run takes the very steps that members take. Rows are
    // kept in single precision, 1e-6 of 10 g/m^3.
    const PondModel model = prepare(scenario("grandfathers-pond"));
    const Ramp& ramp = rampOfKind(model.pond, RampKind::Doubling);
    RunRequest request;
    request.days = kDays;
    request.keepLayers = false;
    const RampRun central = runRamp(model, &ramp, request);
    WeatheredMember member{{model.parameters, model.start, 1.0, {}}, {}};
    member.offsets.assign(8, WeatherOffset{});
    const MemberPlan plan = memberPlan(model, ensembleRamp(central), kDays, false);
    MemberTrace trace(1, plan);
    runPack(model, plan, packOf<double>(std::span(&member, 1)), 0, 1, trace, {});
    ASSERT_EQ(trace.hours.size(), central.hours.size());
    for (std::size_t i = 0; i < central.hours.size(); ++i) {
        EXPECT_NEAR(static_cast<double>(trace.hours[i]), central.hours[i].fishWater, 1e-5) << "hour " << i;
    }
    for (int night = 0; night < kDays; ++night) {
        EXPECT_NEAR(static_cast<double>(trace.lows[night]), central.days[night].lowest, 1e-5)
            << "night " << night + 1;
    }
}

/// Under the pond's ramp around the clock: nothing is negative, and the ledger closes where one is kept.
template <class Real>
void expectBooksAndSigns(const PondModel& model, std::uint64_t seed) {
    constexpr double kClosing = 1e-9;  // of the throughput, as in the central run
    const std::vector<WeatheredMember> members = membersOf(model, kLanes<Real>, seed);
    const MemberPack<Real> pack = packOf<Real>(members);
    const MemberPlan plan =
        memberPlan(model, centralRamp(model, &rampOfKind(model.pond, RampKind::Continuous)), kDays, false);
    Column<Real> column(model.grid, pack.parameters, model.aerator, model.bottom, pack.start);
    const Real before = column.oxygenStored();
    for (const MemberStep& step : plan.steps) {
        takeStep(column, step, pack.offsets);
        for (int i = 0; i < column.state().layers(); ++i) {
            for (const Solute which : {kOxygen, kFast, kMedium, kSlow, kChlorophyll}) {
                const Real& values = column.state().solutes[i][which];
                ASSERT_LE(largestLane(-values), 0.0) << "solute " << which << " in layer " << i;
            }
        }
    }
    for (int k = 0; kKeepsBooks<Real> && k < kLanes<Real>; ++k) {
        double sum = 0.0, throughput = 0.0;
        for (const Real& term : column.ledger().oxygen) {
            sum += lane(term, k);
            throughput += std::fabs(lane(term, k));
        }
        ASSERT_GT(throughput, 0.0) << "member " << k;
        const double stored = lane(column.oxygenStored(), k) - lane(before, k);
        EXPECT_LE(std::fabs(stored - sum), kClosing * throughput) << "member " << k;
    }
}

TEST(Members, EveryLedgerClosesAndNothingIsNegative) {
    for (unsigned seed = 21; seed <= 40; ++seed) {
        SCOPED_TRACE("seed " + std::to_string(seed));
        Dice dice(seed);
        const PondModel model = coarse(runnablePond(dice));
        expectBooksAndSigns<DoubleLanes>(model, seed);
        expectBooksAndSigns<Lanes>(model, seed);
    }
}

/// Rows of a trial of two usual days with a member's factors, by the lone number.
struct Tried {
    double oxygenAbove = 0.0, wanted = 0.0, atDawn = 0.0;
};
/// Means over members of how far off they are [g/m^3].
struct Misses {
    double above = 0.0, atDawn = 0.0;
    void add(const Tried& tried, double dawn, std::size_t members) {
        above += std::fabs(tried.oxygenAbove - tried.wanted) / static_cast<double>(members);
        atDawn += std::fabs(tried.atDawn - dawn) / static_cast<double>(members);
    }
};
Tried triedAlone(const PondModel& model, const Member& member) {
    const BalanceReading target = balanceTarget(model)[kOfDawn];
    Parameters<double> parameters = member.parameters;
    parameters.thresholds.fishMax = OxygenThresholds{}.fishMax;
    Column<double> column(model.grid, parameters, model.aerator, model.bottom, member.start);
    Tried out;
    out.wanted = column.oxygenAbove() / column.openVolume();
    const std::vector<PackOffset<double>> usual{{0.0, member.windFactor, 0.0}};
    int marks = 0;
    for (const MemberStep& step : trialSteps(model, {target.time, model.startTime + kDay})) {
        takeStep(column, step, usual);
        if (step.endsHour && marks++ == 0) {
            out.atDawn = interpolate(model.grid.middle, column.solutes(kOxygen, 0), target.depth);
        }
    }
    out.oxygenAbove = column.oxygenAbove() / column.openVolume();
    return out;
}

/// Balances members in packs; returns how far off the mean above z_b is a usual day later, and the dawn,
/// before and after.
std::pair<Misses, Misses> balanced(const PondModel& model, std::uint64_t seed) {
    std::vector<WeatheredMember> members = membersOf(model, 16, seed);
    const BalanceSlopes slopes = balanceSlopes(model);
    Misses before, after;
    for (std::size_t first = 0; first < members.size(); first += kPack) {
        const auto own = std::span(members).subspan(first, kPack);
        MemberPack<Lanes> pack = packOf<Lanes>(own);
        std::vector<ReadOxygen> read;
        for (const WeatheredMember& one : own) {
            read.push_back(one.member.read);
        }
        balancePack(model, slopes, read, pack, {}, {});
        for (std::size_t k = 0; k < kPack; ++k) {
            Member& member = own[k].member;
            before.add(triedAlone(model, member), read[k][kOfDawn], members.size());
            setFactors(member.parameters, factorsOf(pack.parameters, static_cast<int>(k)));
            after.add(triedAlone(model, member), read[k][kOfDawn], members.size());
            EXPECT_LT(std::fabs(std::log(member.parameters.growth.factor)), 4.0 * kGrowthSpread.value);
            EXPECT_LT(std::fabs(std::log(member.parameters.surface.windFactor)), 6.0 * kWindSpread.value);
            EXPECT_GE(member.parameters.organic.load, 0.0);
            EXPECT_GE(member.parameters.organic.loss, -1e-15);
        }
    }
    return {before, after};
}

Pond withDawnReading(Pond pond, double oxygen) {
    Reading dawn;
    dawn.at = LocalTime(std::chrono::local_days(*pond.place.firstDay)) - std::chrono::minutes(18 * 60 + 30);
    dawn.depth = Quantity(0.5);
    dawn.oxygen = Quantity(oxygen);
    pond.readings.push_back(dawn);
    return pond;
}

TEST(Members, EachMeetsItsOwnBalance) {
    // The mean above z_b counts with 0.3 g/m^3 (kMeanOxygenError), against priors and the other rows.
    for (const char* name : {"grandfathers-pond", "old-quarry", "high-meadow", "salt-lens"}) {
        SCOPED_TRACE(name);
        const auto [before, after] = balanced(prepare(scenario(name)), 5);
        EXPECT_LT(after.above, 0.6);
        EXPECT_LT(after.above, before.above);
    }
    const PondModel model = prepare(withDawnReading(scenario("grandfathers-pond"), 5.0));
    ASSERT_TRUE(model.balance.usedDawn);
    const auto [before, after] = balanced(model, 5);
    EXPECT_LT(after.atDawn, before.atDawn);
    EXPECT_LT(after.atDawn, 0.6);
}

TEST(Members, TheCentralMembersBalanceIsTheCentralRuns) {
    PondModel model = prepare(withDawnReading(scenario("grandfathers-pond"), 5.0));
    WeatheredMember member{{model.parameters, model.start, 1.0, {}}, {WeatherOffset{}}};
    member.member.parameters.organic = prepareUnbalanced(model.pond).parameters.organic;
    MemberPack<Lanes> pack = packOf<Lanes>(std::span(&member, 1));
    const std::vector<ReadOxygen> read(kPack, {5.0, 0.0});
    balancePack(model, balanceSlopes(model), read, pack, {}, {});
    // Slopes taken where the central search ended lead it on, by a small part of what the priors leave open.
    constexpr double kPart = 0.1;
    const BalanceFactors found = factorsOf(pack.parameters, 0);
    EXPECT_NEAR(found.respiration, model.balance.respiration, kPart * kReadRespirationSpread.value);
    EXPECT_NEAR(found.photosynthesis, model.balance.photosynthesis, kPart * kGrowthSpread.value);
    EXPECT_NEAR(found.wind, model.balance.wind, kPart * kWindSpread.value);
}

TEST(Members, WhatNoFactorCanMendDoesNotCarryTheFactorsAway) {
    // No photosynthesis brings a pond that is dark to the bottom of its first layer back to where it was.
    Pond pond = scenario("grandfathers-pond");
    for (WeatherDay& day : pond.weather.days) {
        day.cloud_percent = Quantity(100.0);
    }
    pond.water.chlorophyll_ugPerL = Quantity(0.01);
    const PondModel model = prepare(pond);
    EXPECT_GT(model.balance.photosynthesis, 1.0);
    EXPECT_LT(model.balance.photosynthesis, kGreatestBalance);
    EXPECT_LT(model.balance.missOxygen, -kContraryOxygen.value);
}

}  // namespace
}  // namespace engine::test
