#include "engine/pond/pond_words.h"
#include "engine/run/constants_balance.h"
#include "engine/water/toxic.h"
#include "engine/wording/sentence_builder.h"

#include <algorithm>
#include <cmath>

namespace engine {
namespace {

constexpr double kUnusualHigh = 3.0;  // a factor of the balance outside 0.3 to 3 is a warning (judgement)
constexpr double kUnusualLow = 0.3;

void addBalance(const BalanceResult& balance, const SentenceBuilder& builder) {
    std::vector<SentenceValue> values{number("photosynthesis", Measure::Plain, balance.photosynthesis),
                                      number("respiration", Measure::Plain, balance.respiration),
                                      number("wind", Measure::Plain, balance.wind)};
    if (balance.loggerDepth) {
        values.push_back(number("depth", Measure::Depth, *balance.loggerDepth));
    }
    builder.add(balance.loggerDepth ? SentenceKey::BalanceWithLogger
                : balance.usedDawn  ? SentenceKey::BalanceWithDawn
                                    : SentenceKey::Balance,
                std::move(values));
    const auto isUnusual = [](double factor) { return factor < kUnusualLow || factor > kUnusualHigh; };
    if (isUnusual(balance.photosynthesis) || isUnusual(balance.respiration)) {
        builder.add(SentenceKey::BalanceUnusual);
    }
    const bool isContrary = std::fabs(balance.missOxygen) > kContraryOxygen.value ||
                            std::fabs(balance.missTemperature) > kContraryTemperature.value;
    builder.add(isContrary ? SentenceKey::BalanceContrary : SentenceKey::BalanceMiss,
                {oxygen("oxygen", balance.missOxygen),
                 // A difference, and no temperature that US units would turn into another.
                 number("degrees", Measure::Input, std::round(10.0 * balance.missTemperature) / 10.0 + 0.0)});
}

void addFish(const PondModel& model, const SentenceBuilder& builder) {
    const SentenceValue mass = number("mass", Measure::Input, kFishMass_g.value);
    if (model.pond.fish.empty()) {
        const double stock = classPriors(pondClass(model.pond.bottom)).stock_kgPerHa.value;
        builder.add(SentenceKey::GuessedFish, {number("stock", Measure::Input, stock), mass,
                                               term("group", wordOf(model.parameters.thresholds.group))});
    }
    for (const FishStock& fish : model.pond.fish) {
        if (!fish.meanMass_g) {
            builder.add(SentenceKey::GuessedFishMass, {text("kind", fish.kind), mass});
        }
    }
}

void addSedimentAndWater(const PondModel& model, const SentenceBuilder& builder) {
    const Pond& pond = model.pond;
    if (!pond.bottom.sedimentDemand_gPerM2Day) {
        const double demand = classPriors(pondClass(pond.bottom)).sedimentDemand_gPerM2Day.value;
        builder.add(SentenceKey::GuessedSedimentDemand, {number("demand", Measure::Input, demand)});
    }
    if (!pond.bottom.muck) {
        const double muck = classPriors(pondClass(pond.bottom)).muck.value;
        builder.add(SentenceKey::GuessedMuck, {number("muck", Measure::Input, muck)});
    }
    if (!pond.water.chlorophyll_ugPerL) {
        const double most = *std::max_element(model.start.chlorophyll.begin(), model.start.chlorophyll.end());
        builder.add(SentenceKey::GuessedChlorophyll, {number("chlorophyll", Measure::Plain, most)});
    }
    if (!pond.water.weedsCover_percent) {
        builder.add(SentenceKey::GuessedWeeds);
    }
    if (!pond.place.windShelter) {
        builder.add(SentenceKey::GuessedWindShelter,
                    {number("shelter", Measure::Percent, 100.0 * kWindShelter.value)});
    }
}

void addPlantsAndToxicants(const PondModel& model, const SentenceBuilder& builder) {
    const Pond& pond = model.pond;
    if (!pond.water.changes.empty()) {
        builder.add(SentenceKey::PlantsByTable);
    }
    if ((pond.water.totalAmmonia || pond.water.totalSulfide) && !pond.water.ph) {
        builder.add(SentenceKey::GuessedPh, {number("value", Measure::Input, kPh.value)});
    }
    if (!pond.water.totalSulfide && model.parameters.toxicants.sulfideOfFast > 0.0) {
        const Prior& share = sulfideOfFastDebt(pond.bottom);
        const double most = *std::max_element(model.start.sulfide.begin(), model.start.sulfide.end());
        builder.add(SentenceKey::GuessedSulfide,
                    {number("sulfide", Measure::Input, std::round(10.0 * most) / 10.0),
                     number("times", Measure::Plain, share.high / share.value)});
    }
    const double debt = startDebt(pond, model.profile, model.bottom, model.basin);
    if (pond.water.totalSulfide && model.bottom.exists() &&
        kOxygenPerSulfur * *pond.water.totalSulfide > kFastShare.value * debt) {
        builder.add(SentenceKey::SulfideRaisesDemand);
    }
    if (pond.surfaceAerator) {
        builder.add(SentenceKey::SurfaceAeratorRuns,
                    {term("existing", pond.surfaceAerator->existing ? "and-nothing" : "not-nothing")});
    }
}

void addAerator(const PondModel& model, const SentenceBuilder& builder) {
    if (!model.pond.aerator || model.pond.ramps.empty()) {
        return;
    }
    const Aerator& aerator = *model.pond.aerator;
    if (!aerator.nonRecirculatedShare) {
        builder.add(SentenceKey::GuessedNonRecirculatedShare,
                    {number("share", Measure::Percent, 100.0 * kNonRecirculatedShare.value)});
    }
    if (!aerator.bubble_mm) {
        builder.add(SentenceKey::GuessedBubbles, {number("bubble", Measure::Input, kBubble_mm.value)});
    }
    if (!aerator.power_kW) {
        builder.add(SentenceKey::NoPower);
    }
}

}  // namespace

void addAssumptions(const Comparison& comparison, const SentenceBuilder& builder) {
    const PondModel& model = comparison.model;
    const RampRun& nothing = comparison.runs.front();
    if (model.profileIsGuess) {
        builder.add(SentenceKey::GuessedProfile);
    }
    addBalance(model.balance, builder);
    if (nothing.usualDays > 0) {
        // The run ends on the noon after its last day, which is a day of weather too.
        builder.add(SentenceKey::UsualDays,
                    {whole("count", nothing.usualDays), whole("total", comparison.days + 1)});
    }
    if (nothing.endState) {
        builder.add(SentenceKey::EndStateMeaning);
    }
    addDebt(model, builder);
    addFish(model, builder);
    addSedimentAndWater(model, builder);
    addPlantsAndToxicants(model, builder);
    addAerator(model, builder);
    addMembers(comparison, builder);
}

void addCautions(const PondModel& model, const SentenceBuilder& builder) {
    builder.add(SentenceKey::CautionComparison);
    builder.add(SentenceKey::CautionReadings);
    if (!model.profileIsGuess) {
        builder.add(SentenceKey::CautionProfileAge,
                    {day("date", Date(std::chrono::floor<std::chrono::days>(*model.profile.at)))});
    }
    builder.add(SentenceKey::CautionLifeSupport);
    builder.add(SentenceKey::CautionPermits);
    builder.add(SentenceKey::CautionIce);
}

}  // namespace engine
