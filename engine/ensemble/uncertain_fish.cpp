#include "engine/ensemble/uncertain_list.h"

#include <algorithm>

namespace engine {
namespace {

constexpr MeterError kStockCount{0.0, 1.5};    // trade: a factor of 1.5 if drained or seined recently
constexpr MeterError kFishBalance{0.0, 1.1};   // judgement
constexpr MeterError kFeedBalance{0.0, 1.05};  // judgement
constexpr Prior kFeedGuess{1.0, 0.67, 1.5, "feed that was guessed; judgement"};
constexpr double kStockWithChlorophyll = 0.3;  // trade's correlation (common practice, no source)

/// Daily feed over what well fed fish take, at most 1.
double ration(const Pond& pond, double hectares) {
    double stock = 0.0;
    for (const FishStock& fish : pond.fish) {
        stock += fish.stock_kgPerHa->value * hectares;
    }
    return stock > 0.0 ? std::min(pond.feed_kgPerDay->value / (kFullFeed_sharePerDay.value * stock), 1.0)
                       : 0.0;
}

}  // namespace

void addFishInputs(UncertainList& list) {
    const PondModel& model = list.model();
    const std::vector<FishStock> fish = memberSource(model).pond.fish;
    const Prior& stock = classPriors(pondClass(model.pond.bottom)).stock_kgPerHa;
    for (std::size_t i = 0; i < fish.size(); ++i) {
        // The fish of a pond need not be of different kinds.
        std::string of;
        if (!fish[i].kind.empty()) {
            of.append(" of fish ").append(std::to_string(i + 1)).append(", ").append(fish[i].kind);
        }
        const MaybeQuantity given = model.pond.fish.empty() ? std::nullopt : fish[i].stock_kgPerHa;
        UncertainInput& input =
            list.key("stock_kg_per_ha" + of, "kg/ha", given, stock, kStockCount,
                     [i](MemberSource& s) -> MaybeQuantity& { return s.pond.fish[i].stock_kgPerHa; });
        input.group = InputGroup::Algae;
        input.withChlorophyll = kStockWithChlorophyll;
        list.key("mean_mass_g" + of, "g", fish[i].meanMass_g, kFishMass_g, kFishBalance,
                 [i](MemberSource& s) -> MaybeQuantity& { return s.pond.fish[i].meanMass_g; });
    }
    if (!model.pond.feed_kgPerDay) {
        return;
    }
    list.key("feed.kg_per_d", "kg/d", model.pond.feed_kgPerDay, kFeedGuess, kFeedBalance,
             [](MemberSource& s) -> MaybeQuantity& { return s.pond.feed_kgPerDay; });
    list.prior("waste of feed", "g O2/g", kFeedWaste,
               [](Member& m, double ratio) { m.parameters.organic.feedWaste *= ratio; });
    list.prior("ammonium of feed", "g O2/g", kFeedNitrogen,
               [](Member& m, double ratio) { m.parameters.organic.feedNitrogen *= ratio; });
    UncertainInput& more = list.add("more breathing of fed fish", "1", spreadOf(kFeedingFactor));
    more.intoMember = [hectares = model.basin.area(0.0) / kSquareMetrePerHectare](
                          Member& m, const MemberSource& s, double value) {
        const double fed = ration(s.pond, hectares);
        m.parameters.fish.stock *= (1.0 + value * fed) / (1.0 + kFeedingFactor.value * fed);
    };
}

}  // namespace engine
