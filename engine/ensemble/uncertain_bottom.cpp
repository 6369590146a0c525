#include "engine/ensemble/uncertain_list.h"
#include "engine/water/debt_estimate.h"
#include "engine/water/toxic.h"

#include <algorithm>

namespace engine {
namespace {

// Trade's bottle test with an oxygen meter of +-0.2 mg/L, a derivation; what a plain number of it is taken to
// be.
constexpr MeterError kBottleTest{1.1, 1.0};
constexpr MeterError kDemandChamber{0.0, 1.2};  // judgement
constexpr MeterError kMuckPole{0.0, 1.25};      // trade: mean of 12 points +-20 to 30 %
constexpr MeterError kSlowDebtLab{0.0, 1.25};   // judgement
constexpr MeterError kSulfideKit{0.0, 1.5};     // judgement
constexpr MeterError kAmmoniaKit{0.35, 1.0};    // trade: +-0.25 to 0.5 mg/L
constexpr Prior kKitWithoutValue{1.0, 0.33, 3.0, "sulfide or ammonia that was not measured; judgement"};

Prior around(double value, const Prior& relative) {
    return {value, value * relative.low / relative.value, value * relative.high / relative.value,
            relative.source};
}

void addDebt(UncertainList& list) {
    const PondModel& model = list.model();
    const Bottom& bottom = model.pond.bottom;
    if (!model.bottom.exists()) {
        return;
    }
    // A given debt that is no more than a guess keeps the spread of the trade's table.
    Prior prior = classPriors(pondClass(bottom)).oxygenDebt;
    if (!bottom.oxygenDebt) {
        const std::optional<DebtEstimate> estimate =
            estimateDebt(model.pond, model.profile, model.bottom, model.basin);
        if (!estimate) {
            return;
        }
        prior = {estimate->value, estimate->low, estimate->high, "what the pond file tells of the debt"};
    }
    UncertainInput& debt =
        list.key("oxygen_debt_mg_per_l", "mg/L", bottom.oxygenDebt, prior, kBottleTest,
                 [](MemberSource& s) -> MaybeQuantity& { return s.pond.bottom.oxygenDebt; });
    debt.group = InputGroup::Bottom;
    debt.isDebt = true;
}

void addSlowDebt(UncertainList& list) {
    const PondModel& model = list.model();
    if (!model.bottom.exists()) {
        return;
    }
    const MaybeQuantity& given = model.pond.bottom.slowDebt;
    if (given) {
        const Prior prior = around(given->value, kSlowOfDebt);
        list.key("slow_debt_mg_per_l", "mg/L", given, prior, kSlowDebtLab,
                 [](MemberSource& s) -> MaybeQuantity& { return s.pond.bottom.slowDebt; })
            .isDebt = true;
        return;
    }
    if (model.bottom.isOxic && !model.pond.bottom.oxygenDebt) {
        return;
    }
    UncertainInput& ratio = list.add("slow debt over oxygen debt", "1", spreadOf(kSlowOfDebt));
    ratio.meter = kSlowDebtLab;
    ratio.isDebt = true;
    ratio.intoSource = [](MemberSource& s, double value) {
        s.pond.bottom.slowDebt = Quantity(value * s.pond.bottom.oxygenDebt->value);
    };
}

/// What leaves one demand fraction is in the other; the fast one holds at least what its sulfide needs.
void splitDebt(Member& m, double ratio) {
    Parameters<double>& p = m.parameters;
    for (std::size_t i = 0; i < m.start.fast.size(); ++i) {
        const double before = m.start.fast[i];
        const double moved = m.start.medium[i] / (1.0 - p.debt.fastShare) * p.debt.fastShare * (ratio - 1.0);
        m.start.medium[i] -= moved;
        m.start.fast[i] = std::max(before + moved, kOxygenPerSulfur * m.start.sulfide[i]);
        if (i + 1 == m.start.fast.size() && m.start.fast[i] > 0.0) {
            p.toxicants.sulfideOfFast *=
                before / m.start.fast[i];  // the same in all layers of the bottom water
        }
    }
    p.debt.fastShare *= ratio;
}

/// The store is in proportion to the muck up to this depth.
void fullDepth(Member& m, const MemberSource& source, double value) {
    const double muck = source.pond.bottom.muck->value;
    const double before = std::min(muck / kMuckFullDepth.value, 1.0);
    m.parameters.muck.store *= before > 0.0 ? std::min(muck / value, 1.0) / before : 1.0;
}

}  // namespace

void addBottomInputs(UncertainList& list) {
    const Pond& pond = list.model().pond;
    const ClassPriors& priors = classPriors(pondClass(pond.bottom));
    addDebt(list);
    list.key("sediment_demand_g_per_m2_d", "g/m2/d", pond.bottom.sedimentDemand_gPerM2Day,
             priors.sedimentDemand_gPerM2Day, kDemandChamber,
             [](MemberSource& s) -> MaybeQuantity& { return s.pond.bottom.sedimentDemand_gPerM2Day; })
        .group = InputGroup::Bottom;
    list.key("muck_m", "m", pond.bottom.muck, priors.muck, kMuckPole,
             [](MemberSource& s) -> MaybeQuantity& { return s.pond.bottom.muck; })
        .group = InputGroup::Bottom;
    addSlowDebt(list);
    if (list.model().bottom.exists()) {
        list.givenKey("total_sulfide_mg_per_l", "mg/L", pond.water.totalSulfide, kKitWithoutValue,
                      kSulfideKit,
                      [](MemberSource& s) -> MaybeQuantity& { return s.pond.water.totalSulfide; });
        list.givenKey("total_ammonia_mg_per_l", "mg/L", pond.water.totalAmmonia, kKitWithoutValue,
                      kAmmoniaKit,
                      [](MemberSource& s) -> MaybeQuantity& { return s.pond.water.totalAmmonia; });
    }
    list.prior("share of regenerated debt", "1", kRegenerationShare,
               [](Member& m, double ratio) { m.parameters.sediment.regenerationShare *= ratio; });
    list.prior("fast share of debt", "1", kFastShare, splitDebt).spread.most = 0.95;
    list.prior("rate of fast debt at 20 degC", "1/d", kFastRate_perDay,
               [](Member& m, double ratio) { m.parameters.debt.fastRate *= ratio; });
    list.prior("rate of medium debt at 20 degC", "1/d", kMediumRate_perDay,
               [](Member& m, double ratio) { m.parameters.debt.mediumRate *= ratio; });
    list.prior("rate of slow debt at 20 degC", "1/d", kSlowRate_perDay,
               [](Member& m, double ratio) { m.parameters.debt.slowRate *= ratio; });
    list.prior("mobile muck", "g O2/m2", kMuckStore_gPerM2,
               [](Member& m, double ratio) { m.parameters.muck.store *= ratio; });
    list.prior("stirred bottom of a diffuser", "m2", kStirredArea, [](Member& m, double ratio) {
        m.parameters.muck.stirredArea *= ratio;
        m.parameters.muck.store *= ratio;
    });
    list.prior("stirred demand over that at rest", "1", kStirredDemandFactor,
               [](Member& m, double ratio) { m.parameters.muck.stirredDemand *= ratio; });
    list.prior("fast share of stirred muck", "1", kMuckFastShare,
               [](Member& m, double ratio) { m.parameters.muck.fastShare *= ratio; })
        .spread.most = 1.0;
    list.add("depth of muck that holds all that is mobile", "m", spreadOf(kMuckFullDepth)).intoMember =
        fullDepth;
    list.prior("theta of debt", "1", kDebtTheta,
               [](Member& m, double ratio) { m.parameters.debt.theta *= ratio; });
    list.prior("theta of slow debt", "1", kSlowTheta,
               [](Member& m, double ratio) { m.parameters.debt.slowTheta *= ratio; });
    list.prior("theta of sediment demand", "1", kSedimentTheta,
               [](Member& m, double ratio) { m.parameters.sediment.theta *= ratio; });
}

}  // namespace engine
