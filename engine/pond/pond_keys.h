#pragma once

#include "engine/pond/pond.h"

namespace engine {

// The one list of the tables, keys, units and sane ranges of a pond file, in the order in which they
// are written. A visitor walks it to read, to write and to check, so that the three cannot part.
//
// The ranges are judgement: wide enough for any pond that one would aerate, narrow enough to catch a
// slip of the unit or the decimal point.

/// Low end included unless `above`; high end always included.
struct NumberRule {
    double low = 0.0;
    double high = 0.0;
    const char* unit = "";  ///< As it stands in a sentence; empty for a plain number.
    bool above = false;     ///< The low end itself is not allowed.
    bool whole = false;     ///< Whole numbers only.
};

// How much of a kind a pond file may hold: ten years of days and more readings than one types; what is longer
// goes into a CSV file.
inline constexpr std::size_t kMostTables = 5000;  ///< Of one name
inline constexpr std::size_t kMostRamps = 60;
inline constexpr std::size_t kLongestList = 1000;         ///< Values of one key
inline constexpr std::size_t kLongestText_bytes = 10000;  ///< Of one key

enum class Need { Optional, Required };

inline constexpr double kLeastArea = 10.0;  ///< Of the surface [m^2]: a garden pond that one would aerate
inline constexpr NumberRule kDepthRule{0.0, 60.0, "m"};
inline constexpr NumberRule kWaterTemperatureRule{-2.0, 45.0, "degC"};
inline constexpr NumberRule kAirTemperatureRule{-60.0, 60.0, "degC"};
inline constexpr NumberRule kDewPointRule{-60.0, 40.0, "degC"};
inline constexpr NumberRule kPercentRule{0.0, 100.0, "percent"};
inline constexpr NumberRule kWindRule{0.0, 50.0, "m/s"};
inline constexpr NumberRule kShortwaveRule{0.0, 1500.0, "W/m2"};
inline constexpr NumberRule kParRule{0.0, 3000.0, "umol/m2/s"};
inline constexpr NumberRule kOxygenRule{0.0, 40.0, "mg/L"};
inline constexpr NumberRule kSalinityRule{0.0, 42.0, ""};
inline constexpr NumberRule kDebtRule{0.0, 500.0, "mg/L"};
inline constexpr NumberRule kSecchiRule{0.02, 30.0, "m"};
inline constexpr NumberRule kChlorophyllRule{0.0, 2000.0, "ug/L"};
inline constexpr NumberRule kDiffusersRule{1.0, 100.0, "diffusers", false, true};
inline constexpr NumberRule kDiffuserDepthRule{0.1, 60.0, "m"};
inline constexpr NumberRule kPowerRule{0.0, 100.0, "kW"};
inline constexpr NumberRule kRainRule{0.0, 2000.0, "mm"};
inline constexpr NumberRule kLineRule{0.0, 20.0, "mg/L"};

template <class Visitor, class P>
void visitPlace(Visitor& v, P& place) {
    v.number("latitude_deg", place.latitude_deg, {-66.0, 66.0, "degrees north"}, Need::Required);
    v.number("longitude_deg", place.longitude_deg, {-180.0, 180.0, "degrees east"}, Need::Required);
    v.number("elevation_m", place.elevation, {-400.0, 5000.0, "m"}, Need::Required);
    v.number("sea_km", place.sea_km, {0.0, 3000.0, "km"}, Need::Optional);
    v.date("first_day", place.firstDay, Need::Required);
    v.number("utc_offset_h", place.utcOffset_h, {-12.0, 14.0, "h"}, Need::Required);
    v.number("wind_shelter", place.windShelter, {0.05, 1.0, ""}, Need::Optional);
    v.text("time_zone", place.timeZone, Need::Optional);
}

template <class Visitor, class P>
void visitClient(Visitor& v, P& client) {
    v.text("name", client.name, Need::Optional);
    v.text("phone", client.phone, Need::Optional);
}

template <class Visitor, class P>
void visitContour(Visitor& v, P& contour) {
    v.number("depth_m", contour.depth, kDepthRule);
    v.number("area_m2", contour.area, {0.0, 1e7, "m2"});
}

template <class Visitor, class P>
void visitBasin(Visitor& v, P& basin) {
    v.number("area_m2", basin.area, {kLeastArea, 1e7, "m2"}, Need::Optional);
    v.number("max_depth_m", basin.maxDepth, {0.3, 60.0, "m"}, Need::Optional);
    v.number("mean_depth_m", basin.meanDepth, {0.1, 60.0, "m"}, Need::Optional);
    v.tables("contour", basin.contours, [](auto& w, auto& contour) { visitContour(w, contour); });
}

template <class Visitor, class P>
void visitBottom(Visitor& v, P& bottom) {
    v.number("age_years", bottom.age_years, {0.0, 1000.0, "years"}, Need::Optional);
    v.number("muck_m", bottom.muck, {0.0, 10.0, "m"}, Need::Optional);
    v.number("sediment_demand_g_per_m2_d", bottom.sedimentDemand_gPerM2Day, {0.0, 30.0, "g/m2/d"},
             Need::Optional);
    v.number("oxygen_debt_mg_per_l", bottom.oxygenDebt, kDebtRule, Need::Optional);
    v.number("slow_debt_mg_per_l", bottom.slowDebt, kDebtRule, Need::Optional);
    v.number("stratified_days", bottom.stratified_days, {0.0, 366.0, "days"}, Need::Optional);
    v.choice("smell", bottom.smell);
}

template <class Visitor, class P>
void visitWaterChange(Visitor& v, P& change) {
    v.date("date", change.date);
    v.number("chlorophyll_ug_per_l", change.chlorophyll_ugPerL, kChlorophyllRule, Need::Optional);
    v.number("weeds_cover_percent", change.weedsCover_percent, kPercentRule, Need::Optional);
}

template <class Visitor, class P>
void visitWater(Visitor& v, P& water) {
    v.number("secchi_m", water.secchi, kSecchiRule, Need::Required);
    v.number("chlorophyll_ug_per_l", water.chlorophyll_ugPerL, kChlorophyllRule, Need::Optional);
    v.number("weeds_cover_percent", water.weedsCover_percent, kPercentRule, Need::Optional);
    v.number("ph", water.ph, {4.0, 11.0, ""}, Need::Optional);
    v.number("total_ammonia_mg_per_l", water.totalAmmonia, {0.0, 200.0, "mg/L"}, Need::Optional);
    v.number("total_sulfide_mg_per_l", water.totalSulfide, {0.0, 200.0, "mg/L"}, Need::Optional);
    v.number("ferrous_iron_mg_per_l", water.ferrousIron, {0.0, 200.0, "mg/L"}, Need::Optional);
    v.number("methane_mg_per_l", water.methane, {0.0, 200.0, "mg/L"}, Need::Optional);
    v.number("alkalinity_mg_per_l", water.alkalinity, {0.0, 2000.0, "mg/L"}, Need::Optional);
    v.tables("change", water.changes, [](auto& w, auto& change) { visitWaterChange(w, change); });
}

template <class Visitor, class P>
void visitBottleReading(Visitor& v, P& reading) {
    v.number("minutes", reading.minutes, {1.0, 2880.0, "min"}, Need::Required);
    v.number("oxygen_mg_per_l", reading.oxygen, kOxygenRule, Need::Required);
    v.number("control_loss_mg_per_l", reading.controlLoss, {0.0, 20.0, "mg/L"}, Need::Optional);
}

template <class Visitor, class P>
void visitBottleTest(Visitor& v, P& test) {
    v.number("surface_parts", test.surfaceParts, {1.0, 99.0, "", false, true}, Need::Optional);
    v.number("surface_oxygen_mg_per_l", test.surfaceOxygen, kOxygenRule, Need::Required);
    v.number("bottom_oxygen_mg_per_l", test.bottomOxygen, kOxygenRule, Need::Required);
    v.number("temperature_c", test.temperature, kWaterTemperatureRule, Need::Optional);
    v.number("meter_error_mg_per_l", test.meterError, {0.01, 2.0, "mg/L"}, Need::Optional);
    v.tables("reading", test.readings, [](auto& w, auto& reading) { visitBottleReading(w, reading); });
}

template <class Visitor, class P>
void visitSpring(Visitor& v, P& spring) {
    v.number("flow_l_per_s", spring.flow_lPerS, {0.0, 1000.0, "L/s"}, Need::Required);
    v.number("temperature_c", spring.temperature, kWaterTemperatureRule, Need::Required);
    v.number("oxygen_mg_per_l", spring.oxygen, kOxygenRule, Need::Required);
    v.number("salinity", spring.salinity, kSalinityRule, Need::Optional);
}

template <class Visitor, class P>
void visitInflow(Visitor& v, P& inflow) {
    v.time("from", inflow.from, Need::Required);
    v.time("until", inflow.until, Need::Required);
    v.number("flow_l_per_s", inflow.flow_lPerS, {0.0, 10000.0, "L/s"}, Need::Required);
    v.number("temperature_c", inflow.temperature, kWaterTemperatureRule, Need::Optional);
    v.number("oxygen_mg_per_l", inflow.oxygen, kOxygenRule, Need::Optional);
    v.number("salinity", inflow.salinity, kSalinityRule, Need::Optional);
    v.number("organic_mg_per_l", inflow.organic, kDebtRule, Need::Optional);
}

template <class Visitor, class P>
void visitFish(Visitor& v, P& fish) {
    v.text("kind", fish.kind, Need::Required);
    v.number("stock_kg_per_ha", fish.stock_kgPerHa, {0.0, 50000.0, "kg/ha"}, Need::Required);
    v.number("mean_mass_g", fish.meanMass_g, {0.1, 100000.0, "g"}, Need::Optional);
}

template <class Visitor, class P>
void visitProfile(Visitor& v, P& profile) {
    v.time("at", profile.at, Need::Required);
    v.numbers("depth_m", profile.depth, kDepthRule, Need::Required);
    v.numbers("temperature_c", profile.temperature, kWaterTemperatureRule, Need::Required);
    v.numbers("oxygen_mg_per_l", profile.oxygen, kOxygenRule, Need::Required);
    v.numbers("salinity", profile.salinity, kSalinityRule, Need::Optional);
}

template <class Visitor, class P>
void visitWeatherDay(Visitor& v, P& day) {
    v.date("date", day.date);
    v.number("air_min_c", day.airMin, kAirTemperatureRule, Need::Required);
    v.number("air_max_c", day.airMax, kAirTemperatureRule, Need::Required);
    v.number("humidity_percent", day.humidity_percent, kPercentRule, Need::Optional);
    v.number("dew_point_c", day.dewPoint, kDewPointRule, Need::Optional);
    v.number("wind_m_per_s", day.wind, kWindRule, Need::Required);
    v.number("cloud_percent", day.cloud_percent, kPercentRule, Need::Required);
    v.number("rain_mm", day.rain_mm, kRainRule, Need::Optional);
    v.number("snow_mm", day.snow_mm, kRainRule, Need::Optional);
    v.time("known_at", day.knownAt, Need::Optional);
    v.truth("forecast", day.forecast, false);
}

template <class Visitor, class P>
void visitWeather(Visitor& v, P& weather) {
    v.text("file", weather.file, Need::Optional);
    v.choice("stamp", weather.stamp);
    v.number("wind_height_m", weather.windHeight, {0.5, 100.0, "m"}, Need::Optional);
    v.truth("observed", weather.observed, false);
    v.dates("hold_days", weather.holdDays);
    v.tables("day", weather.days, [](auto& w, auto& day) { visitWeatherDay(w, day); });
}

template <class Visitor, class P>
void visitClimateMonth(Visitor& v, P& month) {
    v.number("month", month.month, {1.0, 12.0, "", false, true}, Need::Required);
    v.number("air_min_c", month.airMin, kAirTemperatureRule, Need::Required);
    v.number("air_max_c", month.airMax, kAirTemperatureRule, Need::Required);
    v.number("humidity_percent", month.humidity_percent, kPercentRule, Need::Optional);
    v.number("dew_point_c", month.dewPoint, kDewPointRule, Need::Optional);
    v.number("wind_m_per_s", month.wind, kWindRule, Need::Required);
    v.number("cloud_percent", month.cloud_percent, kPercentRule, Need::Required);
}

template <class Visitor, class P>
void visitAerator(Visitor& v, P& aerator) {
    v.number("free_air_l_per_min", aerator.freeAir_lPerMin, {0.1, 5000.0, "L/min"}, Need::Required);
    v.number("diffusers", aerator.diffusers, kDiffusersRule, Need::Required);
    v.number("depth_m", aerator.depth, kDiffuserDepthRule, Need::Required);
    v.number("bubble_mm", aerator.bubble_mm, {0.2, 20.0, "mm"}, Need::Optional);
    v.number("power_kw", aerator.power_kW, kPowerRule, Need::Optional);
    v.number("net_share", aerator.nonRecirculatedShare, {0.05, 1.0, ""}, Need::Optional);
}

template <class Visitor, class P>
void visitSurfaceAerator(Visitor& v, P& aerator) {
    v.number("standard_transfer_kg_per_h", aerator.transfer_kgPerH, {0.0, 200.0, "kg/h"}, Need::Required);
    v.number("power_kw", aerator.power_kW, kPowerRule, Need::Optional);
    v.clock("start_time", aerator.startTime);
    v.clock("end_time", aerator.endTime);
    v.truth("existing", aerator.existing, true);
}

template <class Visitor, class P>
void visitLimits(Visitor& v, P& limits) {
    v.choice("species_group", limits.speciesGroup);
    v.number("stress_mg_per_l", limits.stress, kLineRule, Need::Optional);
    v.number("lethal_mg_per_l", limits.lethal, kLineRule, Need::Optional);
    v.number("fish_water_percent", limits.fishWater_percent, {1.0, 100.0, "percent"}, Need::Optional);
    v.number("fish_max_c", limits.fishMax, {5.0, 45.0, "degC"}, Need::Optional);
}

template <class Visitor, class P>
void visitDawnRules(Visitor& v, P& rules) {
    v.number("go_mg_per_l", rules.go, kLineRule, Need::Optional);
    v.number("hold_mg_per_l", rules.hold, kLineRule, Need::Optional);
    v.number("back_mg_per_l", rules.back, kLineRule, Need::Optional);
    v.number("fall_hold_mg_per_l", rules.fallHold, kLineRule, Need::Optional);
    v.number("fall_back_mg_per_l", rules.fallBack, kLineRule, Need::Optional);
    v.number("dose_high_percent", rules.doseHigh_percent, {0.1, 1000.0, "percent"}, Need::Optional);
    v.number("dose_middle_percent", rules.doseMiddle_percent, {0.1, 1000.0, "percent"}, Need::Optional);
    v.number("morning_rise_mg_per_l", rules.morningRise, kLineRule, Need::Optional);
}

template <class Visitor, class P>
void visitHistory(Visitor& v, P& history) {
    v.number("years_without_kill", history.yearsWithoutKill, {0.0, 200.0, "years"}, Need::Optional);
    v.dates("kills", history.kills);
}

template <class Visitor, class P>
void visitStartRules(Visitor& v, P& rules) {
    v.number("lethal_percent", rules.lethal_percent, kPercentRule, Need::Optional);
    v.number("lethal_alone_percent", rules.lethalAlone_percent, kPercentRule, Need::Optional);
    v.number("lethal_added_percent", rules.lethalAdded_percent, kPercentRule, Need::Optional);
    v.number("days_after_algaecide", rules.daysAfterAlgaecide, {0.0, 365.0, "days"}, Need::Optional);
}

template <class Visitor, class P>
void visitRamp(Visitor& v, P& ramp) {
    v.text("name", ramp.name, Need::Required);
    v.choice("kind", ramp.kind);
    v.number("first_min", ramp.first_min, {1.0, 1440.0, "min"}, Need::Optional);
    v.number("factor", ramp.factor, {1.01, 10.0, ""}, Need::Optional);
    v.number("add_min_per_d", ramp.add_minPerDay, {0.1, 1440.0, "min/d"}, Need::Optional);
    v.number("dose_percent", ramp.dose_percent, {0.1, 1000.0, "percent"}, Need::Optional);
    v.truth("hold", ramp.hold, false);
    v.truth("weather_hold", ramp.weatherHold, false);
    v.numbers("minutes", ramp.minutes, {0.0, 1440.0, "min", false, true}, Need::Optional);
    v.clock("start_time", ramp.startTime);
    v.window("window", ramp.window);
    v.byDay("pulses", ramp.pulses, {1.0, 48.0, "pulses", false, true});
    v.byDay("diffusers", ramp.diffusers, kDiffusersRule);
    v.byDay("depth_m", ramp.depth, kDiffuserDepthRule);
    v.number("surface_air_kw", ramp.surfaceAir_kW, kPowerRule, Need::Optional);
    v.window("surface_air_window", ramp.surfaceAirWindow);
    v.number("colour", ramp.colour, {1.0, 12.0, "", false, true}, Need::Optional);
}

template <class Visitor, class P>
void visitReading(Visitor& v, P& reading) {
    v.time("at", reading.at, Need::Required);
    v.number("depth_m", reading.depth, kDepthRule, Need::Optional);
    v.number("temperature_c", reading.temperature, kWaterTemperatureRule, Need::Optional);
    v.number("oxygen_mg_per_l", reading.oxygen, kOxygenRule, Need::Optional);
    v.number("secchi_m", reading.secchi, kSecchiRule, Need::Optional);
    v.choice("smell", reading.smell);
    v.choice("fish", reading.fish);
    v.text("meter", reading.meter, Need::Optional);
    v.text("photo", reading.photo, Need::Optional);
    v.time("corrects", reading.corrects, Need::Optional);
    v.text("note", reading.note, Need::Optional);
}

template <class Visitor, class P>
void visitReadingsFile(Visitor& v, P& file) {
    v.text("file", file.name, Need::Optional);
    v.number("depth_m", file.depth, kDepthRule, Need::Optional);
    v.choice("date_order", file.dateOrder);
}

template <class Visitor, class P>
void visitEvent(Visitor& v, P& event) {
    v.time("at", event.at, Need::Required);
    v.text("kind", event.kind, Need::Required);
    v.time("until", event.until, Need::Optional);
    v.number("minutes", event.minutes, {1.0, 100000.0, "min"}, Need::Optional);
    v.number("diffusers", event.diffusers, kDiffusersRule, Need::Optional);
    v.number("depth_m", event.depth, kDiffuserDepthRule, Need::Optional);
    v.text("ramp", event.ramp, Need::Optional);
    v.text("what", event.what, Need::Optional);
    v.number("area_percent", event.area_percent, kPercentRule, Need::Optional);
    v.number("amount_kg", event.amount_kg, {0.0, 100000.0, "kg"}, Need::Optional);
    v.number("rain_mm", event.rain_mm, kRainRule, Need::Optional);
    v.number("cost", event.cost, {0.0, 1e9, ""}, Need::Optional);
    v.time("corrects", event.corrects, Need::Optional);
    v.text("photo", event.photo, Need::Optional);
    v.text("note", event.note, Need::Optional);
}

/// Walks the whole file. `P` is Pond or const Pond.
template <class Visitor, class P>
void visitPond(Visitor& v, P& pond) {
    v.format("format");
    v.text("title", pond.title, Need::Optional);
    v.text("chosen_ramp", pond.chosenRamp, Need::Optional);
    v.choice("units", pond.units);
    v.maybeTable("client", pond.client, [](auto& w, auto& client) { visitClient(w, client); });
    v.table("place", pond.place, Need::Required, [](auto& w, auto& place) { visitPlace(w, place); });
    v.table("basin", pond.basin, Need::Required, [](auto& w, auto& basin) { visitBasin(w, basin); });
    v.table("bottom", pond.bottom, Need::Optional, [](auto& w, auto& bottom) { visitBottom(w, bottom); });
    v.table("water", pond.water, Need::Required, [](auto& w, auto& water) { visitWater(w, water); });
    v.maybeTable("bottle_test", pond.bottleTest, [](auto& w, auto& test) { visitBottleTest(w, test); });
    v.maybeTable("spring", pond.spring, [](auto& w, auto& spring) { visitSpring(w, spring); });
    v.tables("inflow", pond.inflows, [](auto& w, auto& inflow) { visitInflow(w, inflow); });
    v.tables("fish", pond.fish, [](auto& w, auto& fish) { visitFish(w, fish); });
    v.table("feed", pond.feed_kgPerDay, Need::Optional, [](auto& w, auto& feed) {
        w.number("kg_per_d", feed, {0.0, 10000.0, "kg/d"}, Need::Optional);
    });
    v.maybeTable("profile", pond.profile, [](auto& w, auto& profile) { visitProfile(w, profile); });
    v.table("weather", pond.weather, Need::Required,
            [](auto& w, auto& weather) { visitWeather(w, weather); });
    v.table("climate", pond.climate, Need::Optional, [](auto& w, auto& climate) {
        w.text("file", climate.file, Need::Optional);
        w.tables("month", climate.months, [](auto& x, auto& month) { visitClimateMonth(x, month); });
    });
    v.maybeTable("aerator", pond.aerator, [](auto& w, auto& aerator) { visitAerator(w, aerator); });
    v.maybeTable("surface_aerator", pond.surfaceAerator,
                 [](auto& w, auto& aerator) { visitSurfaceAerator(w, aerator); });
    v.table("limits", pond.limits, Need::Optional, [](auto& w, auto& limits) { visitLimits(w, limits); });
    v.maybeTable("dawn_rules", pond.dawnRules, [](auto& w, auto& rules) { visitDawnRules(w, rules); });
    v.table("history", pond.history, Need::Optional,
            [](auto& w, auto& history) { visitHistory(w, history); });
    v.maybeTable("start_rules", pond.startRules, [](auto& w, auto& rules) { visitStartRules(w, rules); });
    v.tables("ramp", pond.ramps, [](auto& w, auto& ramp) { visitRamp(w, ramp); });
    v.table("readings", pond.readingsFile, Need::Optional,
            [](auto& w, auto& file) { visitReadingsFile(w, file); });
    v.tables("reading", pond.readings, [](auto& w, auto& reading) { visitReading(w, reading); });
    v.tables("event", pond.events, [](auto& w, auto& event) { visitEvent(w, event); });
}

}  // namespace engine
