#include "engine/pond/pond_words.h"
#include "engine/water/toxic.h"
#include "engine/wording/speaker.h"

#include <algorithm>

namespace engine {
namespace {

constexpr double kUnusualHigh = 3.0;  // design: a factor of the balance outside 0.3 to 3 is a warning
constexpr double kUnusualLow = 0.3;
constexpr double kLeastFactor = 0.1;  // design: the range in which the balance looks for its factors
constexpr double kGreatestFactor = 10.0;

void sayBalance(const BalanceResult& balance, const Speaker& speaker) {
    speaker.say(balance.usedDawn ? SentenceKey::BalanceWithDawn : SentenceKey::Balance,
                {number("photosynthesis", Measure::Plain, balance.photosynthesis),
                 number("respiration", Measure::Plain, balance.respiration)});
    const auto isUnusual = [](double factor) { return factor < kUnusualLow || factor > kUnusualHigh; };
    if (isUnusual(balance.photosynthesis) || isUnusual(balance.respiration)) {
        speaker.say(SentenceKey::BalanceUnusual);
    }
    const auto sayEnd = [&](const char* which, double factor) {
        if (factor <= kLeastFactor || factor >= kGreatestFactor) {
            speaker.say(SentenceKey::BalanceMiss,
                        {term("which", which), number("factor", Measure::Input, factor),
                         oxygen("miss", balance.miss)});
        }
    };
    sayEnd("photosynthesis", balance.photosynthesis);
    sayEnd("respiration", balance.respiration);
}

void sayFish(const PondModel& model, const Speaker& speaker) {
    const SentenceValue mass = number("mass", Measure::Input, kFishMass_g.value);
    if (model.pond.fish.empty()) {
        const double stock = classPriors(pondClass(model.pond.bottom)).stock_kgPerHa.value;
        speaker.say(SentenceKey::GuessedFish, {number("stock", Measure::Input, stock), mass,
                                               term("group", wordOf(model.parameters.lines.group))});
    }
    for (const FishStock& fish : model.pond.fish) {
        if (!fish.meanMass_g) {
            speaker.say(SentenceKey::GuessedFishMass, {text("kind", fish.kind), mass});
        }
    }
}

void sayMudAndWater(const PondModel& model, const Speaker& speaker) {
    const Pond& pond = model.pond;
    if (!pond.bottom.sedimentDemand_gPerM2Day) {
        const double demand = classPriors(pondClass(pond.bottom)).sedimentDemand_gPerM2Day.value;
        speaker.say(SentenceKey::GuessedSedimentDemand, {number("demand", Measure::Input, demand)});
    }
    if (!pond.bottom.muck) {
        const double muck = classPriors(pondClass(pond.bottom)).muck.value;
        speaker.say(SentenceKey::GuessedMuck, {number("muck", Measure::Input, muck)});
    }
    if (!pond.water.chlorophyll_ugPerL) {
        const double most = *std::max_element(model.start.chlorophyll.begin(), model.start.chlorophyll.end());
        speaker.say(SentenceKey::GuessedChlorophyll, {number("chlorophyll", Measure::Plain, most)});
    }
    if (!pond.water.weedsCover_percent) {
        speaker.say(SentenceKey::GuessedWeeds);
    }
    if (!pond.place.windShelter) {
        speaker.say(SentenceKey::GuessedWindShelter,
                    {number("shelter", Measure::Percent, 100.0 * kWindShelter.value)});
    }
}

void sayPlantsAndPoisons(const PondModel& model, const Speaker& speaker) {
    const Pond& pond = model.pond;
    if (!pond.water.changes.empty()) {
        speaker.say(SentenceKey::PlantsByTable);
    }
    if ((pond.water.totalAmmonia || pond.water.totalSulfide) && !pond.water.ph) {
        speaker.say(SentenceKey::GuessedPh, {number("value", Measure::Input, kPh.value)});
    }
    const double debt = startDebt(pond, model.bottom, model.basin);
    if (pond.water.totalSulfide && model.bottom.exists() &&
        kOxygenPerSulfur * *pond.water.totalSulfide > kFastShare.value * debt) {
        speaker.say(SentenceKey::SulfideRaisesPool);
    }
    if (pond.surfaceAerator) {
        speaker.say(SentenceKey::SurfaceAeratorRuns,
                    {term("existing", pond.surfaceAerator->existing ? "and-nothing" : "not-nothing")});
    }
}

void sayAerator(const PondModel& model, const Speaker& speaker) {
    if (!model.pond.aerator || model.pond.ramps.empty()) {
        return;
    }
    const Aerator& aerator = *model.pond.aerator;
    if (!aerator.netShare) {
        speaker.say(SentenceKey::GuessedNetShare,
                    {number("share", Measure::Percent, 100.0 * kNetShare.value)});
    }
    if (!aerator.bubble_mm) {
        speaker.say(SentenceKey::GuessedBubbles, {number("bubble", Measure::Input, kBubble_mm.value)});
    }
    if (!aerator.power_kW) {
        speaker.say(SentenceKey::NoPower);
    }
}

}  // namespace

void sayAssumptions(const Comparison& comparison, const Speaker& speaker) {
    const PondModel& model = comparison.model;
    const RampRun& nothing = comparison.runs.front();
    if (model.profileIsGuess) {
        speaker.say(SentenceKey::GuessedProfile);
    }
    sayBalance(model.balance, speaker);
    if (nothing.usualDays > 0) {
        // The run ends on the noon after its last day, which is a day of weather too.
        speaker.say(SentenceKey::UsualDays,
                    {whole("count", nothing.usualDays), whole("total", comparison.days + 1)});
    }
    if (nothing.endState) {
        speaker.say(SentenceKey::EndStateMeaning);
    }
    sayDebt(model, speaker);
    sayFish(model, speaker);
    sayMudAndWater(model, speaker);
    sayPlantsAndPoisons(model, speaker);
    sayAerator(model, speaker);
    sayMembers(comparison, speaker);
    speaker.say(SentenceKey::NoBubblingOut);
}

void sayCautions(const PondModel& model, const Speaker& speaker) {
    speaker.say(SentenceKey::CautionComparison);
    speaker.say(SentenceKey::CautionReadings);
    if (!model.profileIsGuess) {
        speaker.say(SentenceKey::CautionProfileAge,
                    {day("date", Date(std::chrono::floor<std::chrono::days>(*model.profile.at)))});
    }
    speaker.say(SentenceKey::CautionLifeSupport);
    speaker.say(SentenceKey::CautionPermits);
    speaker.say(SentenceKey::CautionIce);
}

}  // namespace engine
