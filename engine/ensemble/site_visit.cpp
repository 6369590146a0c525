#include "engine/ensemble/site_visit.h"

#include <algorithm>
#include <array>

namespace engine {
namespace {

// Ranks of cost are judgement; edit them here. Where one name begins another, the longer one comes first.
constexpr std::array kWays{
    MeasuringWay{"secchi_m", 1, "way-disc"},
    MeasuringWay{"weeds_cover_percent", 1, "way-cover"},
    MeasuringWay{"area_m2", 1, "way-map"},
    MeasuringWay{"error of the profile's", 1, "way-profile"},
    MeasuringWay{"dawn reading", 1, "way-profile"},
    MeasuringWay{"spring.", 1, "way-spring"},
    MeasuringWay{"community respiration at 20 degC", 2, "way-dusk-dawn"},
    MeasuringWay{"oxygen_debt_mg_per_l", 2, "way-bottle"},
    MeasuringWay{"muck_m", 2, "way-pole"},
    MeasuringWay{"free_air_l_per_min", 2, "way-flow"},
    MeasuringWay{"standard_transfer_kg_per_h", 4, "way-lab"},
    MeasuringWay{"feed.kg_per_d", 2, "way-feed"},
    MeasuringWay{"total_sulfide_mg_per_l", 3, "way-kit"},
    MeasuringWay{"total_ammonia_mg_per_l", 3, "way-kit"},
    MeasuringWay{"wind_shelter", 3, "way-wind"},
    MeasuringWay{"net_share", 3, "way-boil"},
    MeasuringWay{"bubble_mm", 3, "way-bubbles"},
    MeasuringWay{"mean_mass_g", 4, "way-catch"},
    MeasuringWay{"chlorophyll_ug_per_l", 4, "way-lab"},
    MeasuringWay{"slow_debt_mg_per_l", 4, "way-lab"},
    MeasuringWay{"slow debt over oxygen debt", 4, "way-lab"},
    MeasuringWay{"stock_kg_per_ha", 5, "way-seine"},
    MeasuringWay{"sediment_demand_g_per_m2_d", 5, "way-chamber"},
};

struct InputWord {
    std::string_view input, words;  ///< How its name begins, and what stands for that
};

// Where one name begins another, the longer one comes first.
constexpr std::array kInputWords{
    InputWord{"secchi_m", "Secchi depth"},
    InputWord{"weeds_cover_percent", "weed cover"},
    InputWord{"area_m2", "pond area"},
    InputWord{"community respiration at 20 degC", "breathing of the water at 20 degC"},
    InputWord{"oxygen_debt_mg_per_l", "oxygen debt of the bottom water"},
    InputWord{"slow_debt_mg_per_l", "slow oxygen debt of the bottom water"},
    InputWord{"slow debt over oxygen debt", "slow part of the oxygen debt"},
    InputWord{"muck_m", "depth of muck"},
    InputWord{"free_air_l_per_min", "air flow"},
    InputWord{"standard_transfer_kg_per_h", "oxygen transfer of other aerators"},
    InputWord{"feed.kg_per_d", "feed a day"},
    InputWord{"total_sulfide_mg_per_l", "sulfide"},
    InputWord{"total_ammonia_mg_per_l", "ammonia"},
    InputWord{"wind_shelter", "share of the wind that reaches the pond"},
    InputWord{"net_share", "share of the lifted water that stays up"},
    InputWord{"bubble_mm", "bubble size"},
    InputWord{"mean_mass_g", "mean weight of a fish"},
    InputWord{"chlorophyll_ug_per_l", "chlorophyll"},
    InputWord{"stock_kg_per_ha", "weight of the fish stock"},
    InputWord{"sediment_demand_g_per_m2_d", "oxygen demand of the sediment"},
};

}  // namespace

std::string inputWords(std::string_view input) {
    const auto* const found =
        std::find_if(kInputWords.begin(), kInputWords.end(),
                     [&](const InputWord& word) { return input.starts_with(word.input); });
    if (found == kInputWords.end()) {
        return std::string(input);
    }
    return std::string(found->words) + std::string(input.substr(found->input.size()));
}

const MeasuringWay* measuringWay(std::string_view input) {
    const auto* const found = std::find_if(
        kWays.begin(), kWays.end(), [&](const MeasuringWay& way) { return input.starts_with(way.input); });
    return found != kWays.end() ? found : nullptr;
}

}  // namespace engine
