#include "engine/water/debt_estimate.h"
#include "engine/wording/sentence_builder.h"

namespace engine {
namespace {

void addBottle(const BottleTest& test, const SentenceBuilder& builder) {
    const std::optional<BottleDebt> bottle = bestBottleDebt(test);
    if (!bottle) {
        return;
    }
    const std::vector<SentenceValue> values{number("minutes", Measure::Minutes, bottle->minutes),
                                            oxygen("taken", bottle->taken),
                                            oxygen("error", bottle->error),
                                            oxygen("debt", bottle->route.value),
                                            oxygen("low", bottle->route.low),
                                            oxygen("high", bottle->route.high)};
    builder.add(bottle->isVoid ? SentenceKey::DebtBottleVoid : SentenceKey::DebtOfBottle, values);
}

void addRoute(const PondModel& model, const DebtRoute& route, const SentenceBuilder& builder) {
    const std::vector<SentenceValue> band{oxygen("debt", route.value), oxygen("low", route.low),
                                          oxygen("high", route.high)};
    const auto with = [&](std::vector<SentenceValue> more) {
        more.insert(more.end(), band.begin(), band.end());
        return more;
    };
    switch (route.kind) {
        case DebtRouteKind::DaysStratified:
            return builder.add(SentenceKey::DebtOfDays,
                               with({number("days", Measure::Input, *model.pond.bottom.stratified_days)}));
        case DebtRouteKind::AgeAndSmell:
            return builder.add(SentenceKey::DebtOfAge, band);
        case DebtRouteKind::BottleTest:
            return addBottle(*model.pond.bottleTest, builder);
        case DebtRouteKind::Substances:
            return builder.add(SentenceKey::DebtOfSubstances,
                               with({oxygen("sum", substanceDebt(model.pond.water).fastAndMedium())}));
    }
}

void addWays(const PondModel& model, const DebtEstimate& estimate, const SentenceBuilder& builder) {
    if (estimate.routes.size() == 1) {
        builder.add(SentenceKey::GuessedDebt, {oxygen("debt", estimate.value)});
        return;
    }
    builder.add(SentenceKey::DebtPutTogether,
                {oxygen("debt", estimate.value), oxygen("low", estimate.low), oxygen("high", estimate.high)});
    for (const DebtRoute& route : estimate.routes) {
        addRoute(model, route, builder);
    }
    if (estimate.disagreement > 1.0) {
        builder.add(SentenceKey::DebtWaysDisagree, {number("factor", Measure::Plain, estimate.disagreement)});
    }
}

}  // namespace

void addDebt(const PondModel& model, const SentenceBuilder& builder) {
    const std::optional<DebtEstimate> estimate =
        estimateDebt(model.pond, model.profile, model.bottom, model.basin);
    if (!estimate) {
        return;
    }
    const Pond& pond = model.pond;
    if (!pond.bottom.oxygenDebt) {
        addWays(model, *estimate, builder);
    } else if (estimate->routes.size() > 1) {
        builder.add(SentenceKey::DebtGivenStands,
                    {oxygen("debt", *pond.bottom.oxygenDebt), oxygen("other", estimate->value),
                     oxygen("low", estimate->low), oxygen("high", estimate->high)});
    }
    const std::optional<BottleDebt> bottle =
        pond.bottleTest ? bestBottleDebt(*pond.bottleTest) : std::nullopt;
    if (bottle && bottle->isVoid) {
        addBottle(*pond.bottleTest, builder);
    }
    const double debt = startDebt(pond, model.profile, model.bottom, model.basin);
    const double ammonium = substanceDebt(pond.water).ammonium;
    if (!pond.bottom.slowDebt && ammonium > kSlowOfDebt.value * debt) {
        builder.add(SentenceKey::AmmoniumIsSlow, {oxygen("debt", ammonium)});
    } else if (!pond.bottom.slowDebt && debt > 0.0) {
        builder.add(SentenceKey::GuessedSlowDebt, {oxygen("debt", kSlowOfDebt.value * debt)});
    }
}

}  // namespace engine
