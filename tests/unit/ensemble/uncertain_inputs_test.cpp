#include "engine/ensemble/uncertain_inputs.h"

#include "engine/run/balance.h"
#include "engine/run/member_pack.h"
#include "engine/water/light.h"
#include "tests/pond_texts.h"
#include "tests/scenario.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <set>

namespace engine {
namespace {

using test::scenario;

const UncertainInput* find(const std::vector<UncertainInput>& inputs, const std::string& name) {
    const auto found = std::find_if(inputs.begin(), inputs.end(),
                                    [&](const UncertainInput& input) { return input.name == name; });
    return found == inputs.end() ? nullptr : &*found;
}

const UncertainInput& at(const std::vector<UncertainInput>& inputs, const std::string& name) {
    const UncertainInput* input = find(inputs, name);
    if (input == nullptr) {
        throw std::runtime_error("there is no input " + name);
    }
    return *input;
}

std::vector<double> medians(const std::vector<UncertainInput>& inputs) {
    std::vector<double> values;
    for (const UncertainInput& input : inputs) {
        values.push_back(input.spread.value);
    }
    return values;
}

/// A member in which one input has another value than its median.
Member with(const PondModel& model, const std::string& name, double value) {
    const std::vector<UncertainInput> inputs = uncertainInputs(model);
    std::vector<double> values = medians(inputs);
    static_cast<void>(at(inputs, name));  // it is there
    for (std::size_t i = 0; i < inputs.size(); ++i) {
        values[i] = inputs[i].name == name ? value : values[i];
    }
    return memberOf(model, memberSource(model), inputs, values);
}

double total(const std::vector<double>& layers, const Grid& grid) {
    double sum = 0.0;
    for (int i = 0; i < grid.layers(); ++i) {
        sum += layers[i] * grid.volume[i];
    }
    return sum;
}

TEST(Member, TheMedianOfEveryInputIsTheCentralRun) {
    for (const char* name :
         {"grandfathers-pond", "spring-trout", "salt-lens", "weedy-woodland", "fee-cats"}) {
        const PondModel model = prepareUnbalanced(scenario(name));
        const std::vector<UncertainInput> inputs = uncertainInputs(model);
        const Member member = memberOf(model, memberSource(model), inputs, medians(inputs));
        // Ratios of one and sums undone leave rounding.
        const auto same = [&](double a, double b) { EXPECT_NEAR(a, b, 1e-12 * (1.0 + std::abs(b))) << name; };
        const Parameters<double>& p = member.parameters;
        const Parameters<double>& q = model.parameters;
        same(p.light.attenuationRest, q.light.attenuationRest);
        same(p.growth.rate, q.growth.rate);
        same(p.respiration.base * 1e6, q.respiration.base * 1e6);
        same(p.respiration.perChlorophyll * 1e6, q.respiration.perChlorophyll * 1e6);
        same(p.fish.stock, q.fish.stock);
        same(p.sediment.demand * 1e6, q.sediment.demand * 1e6);
        same(p.muck.store, q.muck.store);
        same(p.bubbles.nonRecirculatedShare, q.bubbles.nonRecirculatedShare);
        same(p.debt.fastShare, q.debt.fastShare);
        same(p.spring.flow, q.spring.flow);
        same(p.weeds.mass, q.weeds.mass);
        EXPECT_EQ(p.bubbles.freeAirFactor, 1.0);
        EXPECT_EQ(member.windFactor, 1.0);
        for (int i = 0; i < model.grid.layers(); ++i) {
            same(member.start.oxygen[i], model.start.oxygen[i]);
            same(member.start.temperature[i], model.start.temperature[i]);
            same(member.start.fast[i], model.start.fast[i]);
            same(member.start.medium[i], model.start.medium[i]);
            same(member.start.slow[i], model.start.slow[i]);
            same(member.start.chlorophyll[i], model.start.chlorophyll[i]);
        }
    }
}

TEST(Member, NamesAreAllDifferentAndMediansInsideTheirEnds) {
    for (const char* name : {"grandfathers-pond", "old-quarry", "fee-cats", "high-meadow"}) {
        std::set<std::string> names;
        for (const UncertainInput& input : uncertainInputs(prepareUnbalanced(scenario(name)))) {
            EXPECT_TRUE(names.insert(input.name).second) << input.name;
            EXPECT_TRUE(input.intoSource || input.intoMember) << input.name;
            EXPECT_LE(input.spread.quantile(0.05), input.spread.value) << input.name;
            EXPECT_LE(input.spread.value, input.spread.quantile(0.95)) << input.name;
            EXPECT_LT(input.spread.quantile(0.05), input.spread.quantile(0.95))
                << input.name << " has no spread";
        }
    }
}

TEST(Member, WhatIsWrittenDownDecidesTheSpread) {
    const PondModel model = prepareUnbalanced(scenario("grandfathers-pond"));
    const std::vector<UncertainInput> inputs = uncertainInputs(model);
    const UncertainInput& debt = at(inputs, "oxygen_debt_mg_per_l");
    EXPECT_FALSE(debt.measured);
    EXPECT_NEAR(debt.spread.quantile(0.05), 4.5, 1e-11);
    EXPECT_NEAR(debt.spread.quantile(0.95), 22.5, 1e-11);
    // Plain numbers: the trade's meters.
    EXPECT_TRUE(at(inputs, "secchi_m").measured);
    EXPECT_NEAR(at(inputs, "secchi_m").spread.atScore(1.0), 0.45 * 1.075, 1e-12);
    EXPECT_NEAR(at(inputs, "chlorophyll_ug_per_l").spread.atScore(-1.0), 70.0 / 1.12, 1e-12);
    EXPECT_NEAR(at(inputs, "muck_m").spread.atScore(1.0), 0.7 * 1.25, 1e-12);
    EXPECT_NEAR(at(inputs, "stock_kg_per_ha of fish 2, bluegill").spread.atScore(1.0), 270.0, 1e-10);
    EXPECT_NEAR(at(inputs, "error of the profile's oxygen").spread.atScore(1.0), 0.2, 1e-15);
    // Absent ones: their priors.
    EXPECT_FALSE(at(inputs, "net_share").measured);
    EXPECT_NEAR(at(inputs, "net_share").spread.quantile(0.95), kNonRecirculatedShare.high, 1e-12);
    EXPECT_NEAR(at(inputs, "wind_shelter").spread.quantile(0.05), kWindShelter.low, 1e-12);
    EXPECT_EQ(find(inputs, "dawn reading"), nullptr);
    EXPECT_EQ(find(inputs, "spring.flow_l_per_s"), nullptr);
}

TEST(Member, AbsentInputsTakeThePriorsOfThePondsClass) {
    Pond pond = scenario("grandfathers-pond");
    pond.bottom.sedimentDemand_gPerM2Day.reset();
    pond.bottom.muck.reset();
    pond.bottom.oxygenDebt.reset();
    pond.water.chlorophyll_ugPerL.reset();
    pond.fish.clear();
    const PondModel model = prepareUnbalanced(pond);
    const std::vector<UncertainInput> inputs = uncertainInputs(model);
    const ClassPriors& priors = classPriors(PondClass::Mucky);
    EXPECT_NEAR(at(inputs, "oxygen_debt_mg_per_l").spread.quantile(0.95), priors.oxygenDebt.high, 1e-11);
    EXPECT_NEAR(at(inputs, "sediment_demand_g_per_m2_d").spread.quantile(0.05),
                priors.sedimentDemand_gPerM2Day.low, 1e-12);
    EXPECT_NEAR(at(inputs, "stock_kg_per_ha").spread.quantile(0.5), priors.stock_kgPerHa.value, 1e-12);
    // Chlorophyll from Secchi depth is good to a factor of 2 (1 sigma).
    const UncertainInput& algae = at(inputs, "chlorophyll_ug_per_l");
    EXPECT_NEAR(algae.spread.value, startChlorophyll(pond), 1e-12);
    EXPECT_NEAR(algae.spread.atScore(1.0) / algae.spread.value, 2.0, 0.01);
    for (const char* name : {"oxygen_debt_mg_per_l", "sediment_demand_g_per_m2_d", "muck_m"}) {
        EXPECT_EQ(at(inputs, name).group, InputGroup::Bottom) << name;
        EXPECT_FALSE(at(inputs, name).measured) << name;
    }
    pond.bottom.stratified_days = Quantity(30.0);
    const PondModel byDays = prepareUnbalanced(pond);
    EXPECT_NEAR(at(uncertainInputs(byDays), "oxygen_debt_mg_per_l").spread.value,
                startDebt(pond, byDays.profile, byDays.bottom, byDays.basin), 1e-12);
}

TEST(Member, AMixedPondHasNoDebtToDraw) {
    const PondModel model = prepareUnbalanced(scenario("windy-dugout"));
    ASSERT_FALSE(model.bottom.exists());
    const std::vector<UncertainInput> inputs = uncertainInputs(model);
    EXPECT_EQ(find(inputs, "oxygen_debt_mg_per_l"), nullptr);
    EXPECT_EQ(find(inputs, "slow debt over oxygen debt"), nullptr);
}

TEST(Member, AnInputGoesWhereItBelongs) {
    const PondModel model = prepareUnbalanced(scenario("grandfathers-pond"));
    const Parameters<double>& p = model.parameters;
    EXPECT_NEAR(with(model, "sediment_demand_g_per_m2_d", 5.0).parameters.sediment.demand,
                2.0 * p.sediment.demand, 1e-18);
    const Member debt = with(model, "oxygen_debt_mg_per_l", 21.0);
    EXPECT_NEAR(total(debt.start.fast, model.grid), 2.0 * total(model.start.fast, model.grid), 1e-6);
    EXPECT_NEAR(total(debt.start.slow, model.grid), 2.0 * total(model.start.slow, model.grid), 1e-6);
    const Member clearer = with(model, "secchi_m", 0.9);
    EXPECT_NEAR(clearer.parameters.light.attenuationRest,
                std::max(attenuationFromSecchi(0.9) - attenuationOfChlorophyll(70.0), 0.04), 1e-12);
    // The community's respiration is what was drawn, whatever the chlorophyll.
    const Member breathing = with(model, "community respiration at 20 degC", 0.3);
    EXPECT_NEAR(
        breathing.parameters.respiration.base + breathing.parameters.respiration.perChlorophyll * 70.0,
        fromPerHour(0.3), 1e-12);
    const Member split = with(model, "fast share of debt", 0.7);
    EXPECT_NEAR(total(split.start.fast, model.grid) /
                    (total(split.start.fast, model.grid) + total(split.start.medium, model.grid)),
                0.7, 1e-12);
    EXPECT_NEAR(total(split.start.fast, model.grid) + total(split.start.medium, model.grid),
                total(model.start.fast, model.grid) + total(model.start.medium, model.grid), 1e-6);
    EXPECT_EQ(with(model, "free_air_l_per_min", 90.0).parameters.bubbles.freeAirFactor, 2.0);
    EXPECT_EQ(with(model, "wind_shelter", 0.3).windFactor, 0.5);
    // A pond twice as large has half the plume for its water.
    EXPECT_NEAR(with(model, "area_m2", 16000.0).parameters.bubbles.nonRecirculatedShare,
                0.5 * p.bubbles.nonRecirculatedShare, 1e-12);
    const Member warm = with(model, "error of the profile's temperature", 0.25);
    EXPECT_NEAR(warm.start.temperature[0], model.start.temperature[0] + 0.25, 1e-12);
    const Member rich = with(model, "error of the profile's oxygen", 0.3);
    EXPECT_NEAR(rich.start.oxygen[0], model.start.oxygen[0] + 0.3, 1e-12);
    EXPECT_EQ(rich.start.oxygen.back(), 0.0) << "no oxygen stays none";
}

/// All that a member is, as a row of numbers.
std::vector<double> numbersOf(const Member& member) {
    std::vector<double> row{member.windFactor, member.read[kOfDawn], member.read[kOfEvening]};
    Parameters<double> copy;
    forEachParameter(copy, member.parameters, [&](double&, const double& from) { row.push_back(from); });
    for (const auto* field : {&member.start.temperature, &member.start.oxygen, &member.start.chlorophyll,
                              &member.start.fast, &member.start.medium, &member.start.slow}) {
        row.insert(row.end(), field->begin(), field->end());
    }
    return row;
}

TEST(Member, EveryInputMovesSomething) {
    // Sulfide and ammonia only raise a demand fraction that is too small for them, which it is in none of
    // these; the carp's mass is beyond what the respiration equation tells apart, and the catfish are fed
    // more than they can respire for.
    const std::set<std::string> idle{"total_sulfide_mg_per_l",
                                     "total_ammonia_mg_per_l",
                                     "mean_mass_g of fish 4, common carp",
                                     "feed.kg_per_d",
                                     "muck_m",
                                     "depth of muck that holds all that is mobile"};
    for (const char* name : {"grandfathers-pond", "spring-trout", "pea-soup", "weedy-woodland", "fee-cats"}) {
        const PondModel model = prepareUnbalanced(scenario(name));
        const std::vector<UncertainInput> inputs = uncertainInputs(model);
        const MemberSource source = memberSource(model);
        std::vector<double> base = medians(inputs);
        const UncertainInput& cover = at(inputs, "weeds_cover_percent");
        base[static_cast<std::size_t>(&cover - inputs.data())] =
            10.0;  // without weeds nothing of them counts
        const std::vector<double> still = numbersOf(memberOf(model, source, inputs, base));
        for (std::size_t i = 0; i < inputs.size(); ++i) {
            bool moves = false;
            for (const double u : {0.01, 0.99}) {
                std::vector<double> values = base;
                values[i] = inputs[i].spread.quantile(u);
                moves = moves || numbersOf(memberOf(model, source, inputs, values)) != still;
            }
            EXPECT_TRUE(moves || idle.contains(inputs[i].name)) << inputs[i].name << " of " << name;
        }
    }
}

TEST(Member, PhotosynthesisIsKnownAt25Degrees) {
    const PondModel model = prepareUnbalanced(scenario("grandfathers-pond"));
    const auto at25 = [](const Parameters<double>& p) {
        return p.growth.rate * std::pow(p.growth.theta, 5.0);
    };
    EXPECT_NEAR(at25(with(model, "theta of photosynthesis", 1.08).parameters), at25(model.parameters),
                1e-12 * at25(model.parameters));
}

TEST(Member, ChlorophyllBelowKeepsWhatIsAbove) {
    const PondModel model = prepareUnbalanced(scenario("grandfathers-pond"));
    const Member member = with(model, "chlorophyll below over above z_b", 0.6);
    EXPECT_NEAR(member.start.chlorophyll.front(), 70.0, 1e-12);
    EXPECT_NEAR(member.start.chlorophyll.back(), 42.0, 1e-12);
}

TEST(Member, ADawnReadingIsDrawnOnce) {
    Pond pond = scenario("grandfathers-pond");
    Reading dawn;
    dawn.at = LocalTime(std::chrono::local_days(*pond.place.firstDay)) - std::chrono::minutes(18 * 60 + 30);
    dawn.depth = Quantity(0.5);
    dawn.oxygen = Quantity(4.0);
    pond.readings.push_back(dawn);
    const PondModel model = prepareUnbalanced(pond);
    ASSERT_TRUE(balanceTarget(model)[kOfDawn].oxygen);
    EXPECT_EQ(with(model, "dawn reading", 4.4).read[kOfDawn], 4.4);
    EXPECT_NEAR(at(uncertainInputs(model), "dawn reading").spread.atScore(1.0), 4.2, 1e-12);
}

}  // namespace
}  // namespace engine
