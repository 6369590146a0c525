#include "engine/wording/grounds.h"

#include "engine/wording/sentence_builder.h"

#include <algorithm>

namespace engine {
namespace {

enum class Known { Missing, Guessed, Told, Measured };

Known knownOf(const MaybeQuantity& quantity) {
    if (!quantity) {
        return Known::Missing;
    }
    return quantity->confidence == Confidence::Guessed     ? Known::Guessed
           : quantity->confidence == Confidence::Estimated ? Known::Told
                                                           : Known::Measured;
}

/// A number that may be missing, guessed or told.
struct Row {
    const char* what;
    MaybeQuantity quantity;
    const char* missing;  ///< What is taken instead; null where it must be there
    const char* better;
    int weight;  ///< Where it is missing or guessed
};

void add(std::vector<Ground>& grounds, const Row& row) {
    const Known known = knownOf(row.quantity);
    const std::string what(row.what);
    if (known == Known::Missing && row.missing != nullptr) {
        grounds.push_back({what + " is not given; " + row.missing, row.better, row.weight});
    } else if (known == Known::Guessed) {
        grounds.push_back({what + " is a guess.", row.better, row.weight});
    } else if (known == Known::Told) {
        grounds.push_back({what + " is estimated.", row.better, row.weight / 2});
    }
}

void addProfile(std::vector<Ground>& grounds, const Pond& pond) {
    if (!pond.profile) {
        grounds.push_back(
            {"There is no profile: temperature and oxygen at the start are a guess from season, depth, "
             "Secchi depth and age.",
             "Read temperature and oxygen every half metre at the deepest point, in the evening before.",
             100});
    }
    const bool hasDawn = std::any_of(pond.readings.begin(), pond.readings.end(),
                                     [](const Reading& reading) { return reading.oxygen.has_value(); }) ||
                         !pond.fileReadings.empty();
    if (!hasDawn) {
        grounds.push_back({"There is no dawn reading; what the pond breathes at night is taken as usual.",
                           "Read the oxygen at dawn once, or hang a logger for two nights.", 70});
    }
}

void addDebt(std::vector<Ground>& grounds, const Pond& pond) {
    const Water& water = pond.water;
    const bool hasChemistry = water.totalSulfide || water.ferrousIron || water.methane;
    if (!pond.bottom.oxygenDebt && !pond.bottleTest) {
        grounds.push_back({hasChemistry
                               ? "The oxygen debt of the bottom water is put together from its chemistry."
                               : "The oxygen debt of the bottom water is guessed from age, muck and smell.",
                           "Make a shake-and-hold bottle test.", hasChemistry ? 50 : 90});
    } else if (!pond.bottleTest) {
        add(grounds, {"The oxygen debt of the bottom water", pond.bottom.oxygenDebt, nullptr,
                      "Make a shake-and-hold bottle test.", 80});
    }
}

}  // namespace

std::vector<Ground> groundsOf(const Pond& pond) {
    std::vector<Ground> grounds;
    addProfile(grounds, pond);
    addDebt(grounds, pond);
    add(grounds, {"The chlorophyll", pond.water.chlorophyll_ugPerL, "it is taken from the Secchi depth.",
                  "Have a litre of surface water analysed.", 55});
    add(grounds, {"The Secchi depth", pond.water.secchi, nullptr, "Lower a white disc from a boat.", 60});
    add(grounds, {"The depth of the muck", pond.bottom.muck, "it is taken as usual for the pond's age.",
                  "Push a pole into it at five places.", 40});
    add(grounds, {"The sediment's oxygen demand", pond.bottom.sedimentDemand_gPerM2Day,
                  "it is taken as usual for such ponds.",
                  "Watch the bottom water lose oxygen after a mixing; most leave it so.", 30});
    add(grounds, {"The shelter from the wind", pond.place.windShelter, "a usual share of the wind is taken.",
                  "Hold a wind meter over the water and read the station at the same time.", 45});
    add(grounds, {"The mean depth", pond.basin.meanDepth, nullptr, "Sound the pond along two lines.", 35});
    add(grounds, {"The greatest depth", pond.basin.maxDepth, nullptr, "A weighted line from a boat.", 35});
    add(grounds, {"The area", pond.basin.area, nullptr, "Measure it on an aerial picture.", 20});
    add(grounds, {"The cover of water plants", pond.water.weedsCover_percent, "none is taken.",
                  "Row around it and note the cover in quarters.", 25});
    if (pond.fish.empty()) {
        grounds.push_back({"No fish are given; a usual stock is taken.",
                           "Ask what was stocked, fed and caught, or have it netted.", 30});
    } else {
        add(grounds, {"The stock of fish", pond.fish.front().stock_kgPerHa, nullptr,
                      "Ask what was stocked, fed and caught, or have it netted.", 30});
    }
    if (!pond.weather.observed) {
        grounds.push_back(
            {"The weather is a forecast.", "Run it again with the new forecast every few days.", 15});
    }
    std::stable_sort(grounds.begin(), grounds.end(),
                     [](const Ground& a, const Ground& b) { return a.weight > b.weight; });
    return grounds;
}

std::vector<Sentence> sentencesOfGrounds(const Pond& pond) {
    std::vector<Sentence> out;
    const SentenceBuilder builder(out, SentencePart::Grounds);
    for (const Ground& ground : groundsOf(pond)) {
        builder.add(SentenceKey::Ground, {text("what", ground.what), text("better", ground.better)});
    }
    return out;
}

}  // namespace engine
