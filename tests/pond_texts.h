#pragma once

#include <string>
#include <string_view>

namespace engine::test {

/// A pond file that is good in every way, in our own form; the tests of bad input change one place of
/// it and count on its lines. Line 1 is `format`.
inline constexpr std::string_view kPlainPond = R"(format = 1
title = "Test pond"
chosen_ramp = "gentle"

[place]
latitude_deg = 36
longitude_deg = -90
elevation_m = 120
first_day = 2026-06-14
utc_offset_h = -6

[basin]
area_m2 = 8000
max_depth_m = 3.4
mean_depth_m = 1.7

[bottom]
age_years = 48
oxygen_debt_mg_per_l = { value = 14, low = 6, high = 30, sure = "estimated", source = "age and smell" }
smell = "strong"

[water]
secchi_m = 0.45
chlorophyll_ug_per_l = 70

[[fish]]
kind = "bass"
stock_kg_per_ha = 120

[profile]
at = 2026-06-13T17:30:00
depth_m = [0, 1, 2, 3]
temperature_c = [28.5, 27.5, 22, 20]
oxygen_mg_per_l = [8.5, 6.8, 0.3, 0]

[[weather.day]]
date = 2026-06-14
air_min_c = 20
air_max_c = 33
humidity_percent = 65
wind_m_per_s = 2
cloud_percent = 10

[[weather.day]]
date = 2026-06-15
air_min_c = 21
air_max_c = 34
dew_point_c = 19
wind_m_per_s = 1.5
cloud_percent = 90

[aerator]
free_air_l_per_min = 45
diffusers = 2
depth_m = 3

[limits]
species_group = "sport"

[[ramp]]
name = "at once"
kind = "continuous"

[[ramp]]
name = "doubling"
kind = "doubling"
first_min = 30

[[ramp]]
name = "gentle"
kind = "capped"
dose_percent = 10

[[reading]]
at = 2026-06-14T05:40:00
depth_m = 0.5
oxygen_mg_per_l = 5.1
)";

/// Our own form with every key that a file with days of weather can hold.
inline constexpr std::string_view kFullPond = R"(format = 1
title = "Pond \"with\" every key \\ und Umlauten äöü, 池"
chosen_ramp = "steps"

[place]
latitude_deg = 36.25
longitude_deg = { value = -90, sure = "measured" }
elevation_m = 120
sea_km = 650
first_day = 2026-06-14
utc_offset_h = -6
wind_shelter = { value = 0.7, low = 0.5, high = 0.9, sure = "guessed", source = "trees\non three sides" }
time_zone = "America/Chicago"

[[basin.contour]]
depth_m = 0
area_m2 = 8000

[[basin.contour]]
depth_m = 2
area_m2 = { value = 4000, low = 3500, high = 4500 }

[[basin.contour]]
depth_m = 3.4
area_m2 = 0

[bottom]
age_years = 48
muck_m = 0.7
sediment_demand_g_per_m2_d = 2.5
oxygen_debt_mg_per_l = { value = 14, low = 6, high = 30 }
slow_debt_mg_per_l = 3
stratified_days = 40
smell = "faint"

[water]
secchi_m = 0.45
chlorophyll_ug_per_l = 70
weeds_cover_percent = 5
ph = 8.1
total_ammonia_mg_per_l = 2
total_sulfide_mg_per_l = 1.5
ferrous_iron_mg_per_l = 5
methane_mg_per_l = 2.5
alkalinity_mg_per_l = 90

[[water.change]]
date = 2026-06-14
chlorophyll_ug_per_l = 70
weeds_cover_percent = 5

[[water.change]]
date = 2026-06-20
chlorophyll_ug_per_l = 40

[bottle_test]
surface_parts = 9
surface_oxygen_mg_per_l = 7.2
bottom_oxygen_mg_per_l = 0.1
temperature_c = 21
meter_error_mg_per_l = 0.3

[[bottle_test.reading]]
minutes = 30
oxygen_mg_per_l = 5.5

[[bottle_test.reading]]
minutes = 1440
oxygen_mg_per_l = 4.5
control_loss_mg_per_l = 0.25

[spring]
flow_l_per_s = 3
temperature_c = 10
oxygen_mg_per_l = 8
salinity = 0.2

[[inflow]]
from = 2026-06-15T14:00:00
until = 2026-06-15T20:00:00
flow_l_per_s = 40
temperature_c = 16
oxygen_mg_per_l = 9
salinity = 0.1
organic_mg_per_l = 5

[[fish]]
kind = "bass"
stock_kg_per_ha = 120
mean_mass_g = 300

[[fish]]
kind = "catfish"
stock_kg_per_ha = 90

[feed]
kg_per_d = 2.5

[profile]
at = 2026-06-13T17:30:15
depth_m = [0, 1, 2.5]
temperature_c = [28.5, 27.5, 20]
oxygen_mg_per_l = [8.5, 6.8, 0]
salinity = [0, 0.1, 3]

[weather]
wind_height_m = 4
observed = true
hold_days = [2026-06-15, 2026-06-18]

[[weather.day]]
date = 2026-06-14
air_min_c = 20
air_max_c = 33
humidity_percent = { value = 65, sure = "guessed" }
wind_m_per_s = 2
cloud_percent = 10

[[weather.day]]
date = 2026-06-15
air_min_c = -0.5
air_max_c = 22
dew_point_c = 19
wind_m_per_s = 1.5
cloud_percent = 90
rain_mm = 30
snow_mm = 2

[climate]
file = "year.epw"

[[climate.month]]
month = 6
air_min_c = 17
air_max_c = 29
humidity_percent = 65
wind_m_per_s = 2.5
cloud_percent = 45

[[climate.month]]
month = 10
air_min_c = 8
air_max_c = 21
dew_point_c = 9
wind_m_per_s = 3
cloud_percent = 40

[aerator]
free_air_l_per_min = 45
diffusers = 3
depth_m = 3
bubble_mm = 3
power_kw = 0.75
net_share = 0.5

[surface_aerator]
standard_transfer_kg_per_h = 1.2
power_kw = 0.75
start_time = "20:00"
end_time = "08:00"
existing = false

[limits]
species_group = "trout"
stress_mg_per_l = 5
lethal_mg_per_l = 2.5
fish_water_percent = 25
fish_max_c = 20

[history]
years_without_kill = 12
kills = [2019-07-20]

[start_rules]
lethal_percent = 4
lethal_alone_percent = 8
lethal_added_percent = 1
days_after_algaecide = 28

[[ramp]]
name = "at once"
kind = "continuous"
weather_hold = true

[[ramp]]
name = "doubling"
kind = "doubling"
first_min = 30
factor = 1.5
start_time = "09:30"
window = ["10:00", "16:00"]
pulses = 3

[[ramp]]
name = "linear"
kind = "linear"
first_min = 15
add_min_per_d = 20
pulses = [1, 2, 3]

[[ramp]]
name = "capped"
kind = "capped"
dose_percent = { value = 10, source = "house rule" }
hold = true
diffusers = 1

[[ramp]]
name = "steps"
kind = "table"
minutes = [5, 10, 0, 720, 1440]
diffusers = [1, 1, 2]
depth_m = [1.5, 3]
surface_air_kw = 1.5
surface_air_window = ["22:00", "08:00"]

[readings]
file = "logger.csv"

[[reading]]
at = 2026-06-14T05:40:00
depth_m = 0.5
temperature_c = 27.1
oxygen_mg_per_l = 5.1
secchi_m = 0.5
smell = "none"
note = "mist\ton the water"

[[event]]
at = 2026-06-14T10:00:00
kind = "started"
note = "both diffusers"
)";

/// The same without the files that it names.
inline std::string fullPondAlone() {
    std::string text(kFullPond);
    for (const std::string_view part :
         {"[climate]\nfile = \"year.epw\"\n\n", "[readings]\nfile = \"logger.csv\"\n"}) {
        text.erase(text.find(part), part.size());
    }
    return text;
}

/// What the headline pond's file may go on with: a start, and the readings of the next morning.
inline constexpr std::string_view kStartedLog = R"(
[[reading]]
at = 2026-06-15T05:40:00
depth_m = 0.5
temperature_c = 26.8
oxygen_mg_per_l = 5.6
[[reading]]
at = 2026-06-15T05:42:00
depth_m = 1.5
temperature_c = 25
oxygen_mg_per_l = 5.1
smell = "none"
[[reading]]
at = 2026-06-15T05:45:00
depth_m = 2.9
temperature_c = 20.4
oxygen_mg_per_l = 0.1
[[event]]
at = 2026-06-14T09:00:00
kind = "started"
ramp = "gentle, twelve days"
)";

/// `text` with its first `from` replaced by `to`; the test breaks if there is none.
inline std::string with(std::string_view text, std::string_view from, std::string_view to) {
    std::string changed(text);
    const auto at = changed.find(from);
    return at == std::string::npos ? "" : changed.replace(at, from.size(), to);
}

}  // namespace engine::test
