#include "engine/water/debt_estimate.h"
#include "engine/wording/speaker.h"

namespace engine {
namespace {

void sayBottle(const BottleTest& test, const Speaker& speaker) {
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
    speaker.say(bottle->isVoid ? SentenceKey::DebtBottleVoid : SentenceKey::DebtOfBottle, values);
}

void sayRoute(const PondModel& model, const DebtRoute& route, const Speaker& speaker) {
    const std::vector<SentenceValue> band{oxygen("debt", route.value), oxygen("low", route.low),
                                          oxygen("high", route.high)};
    const auto with = [&](std::vector<SentenceValue> more) {
        more.insert(more.end(), band.begin(), band.end());
        return more;
    };
    switch (route.kind) {
        case DebtRouteKind::DaysStratified:
            return speaker.say(SentenceKey::DebtOfDays,
                               with({number("days", Measure::Input, *model.pond.bottom.stratified_days)}));
        case DebtRouteKind::AgeAndSmell:
            return speaker.say(SentenceKey::DebtOfAge, band);
        case DebtRouteKind::BottleTest:
            return sayBottle(*model.pond.bottleTest, speaker);
        case DebtRouteKind::Substances:
            return speaker.say(SentenceKey::DebtOfSubstances,
                               with({oxygen("sum", substanceDebt(model.pond.water).fastAndMedium())}));
    }
}

void sayWays(const PondModel& model, const DebtEstimate& estimate, const Speaker& speaker) {
    if (estimate.routes.size() == 1) {
        speaker.say(SentenceKey::GuessedDebt, {oxygen("debt", estimate.value)});
        return;
    }
    speaker.say(SentenceKey::DebtPutTogether,
                {oxygen("debt", estimate.value), oxygen("low", estimate.low), oxygen("high", estimate.high)});
    for (const DebtRoute& route : estimate.routes) {
        sayRoute(model, route, speaker);
    }
    if (estimate.disagreement > 1.0) {
        speaker.say(SentenceKey::DebtWaysDisagree, {number("factor", Measure::Plain, estimate.disagreement)});
    }
}

}  // namespace

void sayDebt(const PondModel& model, const Speaker& speaker) {
    const std::optional<DebtEstimate> estimate = estimateDebt(model.pond, model.bottom, model.basin);
    if (!estimate) {
        return;
    }
    const Pond& pond = model.pond;
    if (!pond.bottom.oxygenDebt) {
        sayWays(model, *estimate, speaker);
    } else if (estimate->routes.size() > 1) {
        speaker.say(SentenceKey::DebtGivenStands,
                    {oxygen("debt", *pond.bottom.oxygenDebt), oxygen("other", estimate->value),
                     oxygen("low", estimate->low), oxygen("high", estimate->high)});
    }
    const std::optional<BottleDebt> bottle =
        pond.bottleTest ? bestBottleDebt(*pond.bottleTest) : std::nullopt;
    if (bottle && bottle->isVoid) {
        sayBottle(*pond.bottleTest, speaker);
    }
    const double debt = startDebt(pond, model.bottom, model.basin);
    const double ammonium = substanceDebt(pond.water).ammonium;
    if (!pond.bottom.slowDebt && ammonium > kSlowOfDebt.value * debt) {
        speaker.say(SentenceKey::AmmoniumIsSlow, {oxygen("debt", ammonium)});
    } else if (!pond.bottom.slowDebt && debt > 0.0) {
        speaker.say(SentenceKey::GuessedSlowDebt, {oxygen("debt", kSlowOfDebt.value * debt)});
    }
}

}  // namespace engine
