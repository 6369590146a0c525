#include "engine/pond/usual_spans.h"

#include <array>

namespace engine {
namespace {

// clang-format off
constexpr std::array kSpans{
    UsualSpan{"place.elevation_m", -30.0, 3500.0, "Is it in feet?"},
    UsualSpan{"place.wind_shelter", 0.15, 1.0, "Is it a share, 1 for an open plain?"},
    UsualSpan{"basin.area_m2", 60.0, 6e5, "Is it in acres or hectares? Write \"1.8 acres\" then."},
    UsualSpan{"basin.max_depth_m", 0.5, 20.0, "Is it in feet? Write \"11 ft\" then."},
    UsualSpan{"basin.mean_depth_m", 0.3, 12.0, "Is it in feet?"},
    UsualSpan{"bottom.age_years", 0.0, 300.0, "Is it the year of digging?"},
    UsualSpan{"bottom.muck_m", 0.0, 2.0, "Is it in centimetres, inches or feet?"},
    UsualSpan{"bottom.sediment_demand_g_per_m2_d", 0.05, 8.0, "Is it in g/m2/d?"},
    UsualSpan{"bottom.oxygen_debt_mg_per_l", 0.0, 60.0, "Bottom water of muddy ponds has 4 to 30."},
    UsualSpan{"bottom.slow_debt_mg_per_l", 0.0, 40.0, "Bottom water of muddy ponds has a quarter of the oxygen debt."},
    UsualSpan{"bottom.stratified_days", 0.0, 250.0, "Warm water hardly lies on cold for longer than a summer."},
    UsualSpan{"water.secchi_m", 0.08, 12.0, "Is it in centimetres or feet?"},
    UsualSpan{"water.chlorophyll_ug_per_l", 0.5, 600.0, "Is it in ug/L?"},
    UsualSpan{"water.weeds_cover_percent", 1.0, 100.0, "Is it a share? Write percent then."},
    UsualSpan{"water.ph", 5.5, 10.2, "Was the meter calibrated?"},
    UsualSpan{"water.total_ammonia_mg_per_l", 0.0, 30.0, "Is it in mg/L of nitrogen?"},
    UsualSpan{"water.total_sulfide_mg_per_l", 0.0, 30.0, "Is it in mg/L of sulfur?"},
    UsualSpan{"water.ferrous_iron_mg_per_l", 0.0, 60.0, "Is it in mg/L?"},
    UsualSpan{"water.methane_mg_per_l", 0.0, 40.0, "More than that leaves as bubbles."},
    UsualSpan{"water.alkalinity_mg_per_l", 5.0, 600.0, "Is it in mg/L as CaCO3?"},
    UsualSpan{"bottle_test.surface_oxygen_mg_per_l", 2.0, 20.0, "Surface water by day has 5 to 15."},
    UsualSpan{"bottle_test.bottom_oxygen_mg_per_l", 0.0, 8.0, "Bottom water with a debt has next to none."},
    UsualSpan{"spring.temperature_c", 2.0, 30.0, "Springs are about as warm as the year's mean."},
    UsualSpan{"spring.oxygen_mg_per_l", 0.0, 16.0, "Is it in percent?"},
    UsualSpan{"inflow.oxygen_mg_per_l", 0.0, 16.0, "Is it in percent?"},
    UsualSpan{"inflow.organic_mg_per_l", 0.0, 60.0, "Is it in mg/L?"},
    UsualSpan{"fish.stock_kg_per_ha", 5.0, 12000.0, "Is it the mass over the pond's area in kg/ha?"},
    UsualSpan{"fish.mean_mass_g", 1.5, 15000.0, "Is it in kg or lb?"},
    UsualSpan{"profile.oxygen_mg_per_l", 0.0, 20.0, "Is it in percent, or are the columns swapped?"},
    UsualSpan{"profile.temperature_c", 0.0, 38.0, "Is it in degF, or are the columns swapped?"},
    UsualSpan{"weather.wind_height_m", 1.5, 30.0, "Weather stations measure at 10 m or 2 m."},
    UsualSpan{"weather.day.air_min_c", -35.0, 35.0, "Is it in degF?"},
    UsualSpan{"weather.day.air_max_c", -25.0, 48.0, "Is it in degF?"},
    UsualSpan{"weather.day.humidity_percent", 8.0, 100.0, "Is it a share? Write percent then."},
    UsualSpan{"weather.day.dew_point_c", -30.0, 35.0, "Is it in degF?"},
    UsualSpan{"weather.day.wind_m_per_s", 0.1, 9.0, "Is it in km/h or mph, or the strongest gust? The mean of the day is wanted."},
    UsualSpan{"weather.day.rain_mm", 0.0, 250.0, "Is it in mm of a day?"},
    UsualSpan{"climate.month.wind_m_per_s", 0.1, 9.0, "Is it in km/h or mph?"},
    UsualSpan{"climate.month.humidity_percent", 8.0, 100.0, "Is it a share? Write percent then."},
    UsualSpan{"aerator.free_air_l_per_min", 8.0, 250.0, "Is it in cfm? Write \"1.6 cfm\" then. It is the air of one diffuser."},
    UsualSpan{"aerator.diffusers", 1.0, 40.0, "Is it the number of diffusers?"},
    UsualSpan{"aerator.depth_m", 0.4, 18.0, "Is it in feet?"},
    UsualSpan{"aerator.bubble_mm", 0.5, 10.0, "Is it in mm?"},
    UsualSpan{"aerator.power_kw", 0.01, 12.0, "Is it in watts or horsepower?"},
    UsualSpan{"surface_aerator.standard_transfer_kg_per_h", 0.05, 40.0, "Is it in kg of oxygen an hour?"},
    UsualSpan{"surface_aerator.power_kw", 0.05, 15.0, "Is it in watts or horsepower?"},
    UsualSpan{"limits.stress_mg_per_l", 1.5, 8.0, "Fish are under stress below 3 to 6."},
    UsualSpan{"limits.lethal_mg_per_l", 0.4, 4.0, "Fish die below 1 to 3."},
    UsualSpan{"limits.fish_water_percent", 5.0, 100.0, "Is it a share? Write percent then."},
    UsualSpan{"limits.fish_max_c", 12.0, 38.0, "Is it in degF?"},
    UsualSpan{"ramp.first_min", 2.0, 720.0, "Is it in minutes?"},
    UsualSpan{"ramp.factor", 1.05, 4.0, "Doubling is 2."},
    UsualSpan{"ramp.dose_percent", 1.0, 100.0, "Is it a share? Write percent then."},
    UsualSpan{"ramp.surface_air_kw", 0.05, 15.0, "Is it in watts or horsepower?"},
    UsualSpan{"reading.oxygen_mg_per_l", 0.0, 20.0, "Is it in percent?"},
    UsualSpan{"reading.temperature_c", 0.0, 38.0, "Is it in degF?"},
    UsualSpan{"reading.secchi_m", 0.08, 12.0, "Is it in centimetres or feet?"},
};
// clang-format on

}  // namespace

std::span<const UsualSpan> usualSpans() {
    return kSpans;
}

}  // namespace engine
