#include "engine/site_visit.h"

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

}  // namespace

const MeasuringWay* measuringWay(std::string_view input) {
    const auto* const found = std::find_if(
        kWays.begin(), kWays.end(), [&](const MeasuringWay& way) { return input.starts_with(way.input); });
    return found != kWays.end() ? found : nullptr;
}

}  // namespace engine
