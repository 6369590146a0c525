#include "engine/wording/key_texts.h"

#include <array>

namespace engine {
namespace {

// clang-format off
constexpr std::array kTexts{
    KeyText{"weather", "The weather of the coming days, as [[weather.day]] tables or as an hourly file.", "", "", {}},
    KeyText{"weather.file", "Hourly table beside the pond file, separated by commas, with the columns at, air_c, humidity_percent or dew_point_c, wind_m_per_s, and one of shortwave_w_per_m2, par_umol_per_m2_s and cloud_percent; rain_mm and snow_mm may be there.", "The [[weather.day]] tables are used.", "\"weather.csv\"", {}},
    KeyText{"weather.stamp", "Whether a row of the file is stamped with the start or the end of its hour.", "Needed beside a file.", "\"start\"", {}},
    KeyText{"weather.wind_height_m", "Height at which the wind was measured.", "10 m is taken.", "10", {}},
    KeyText{"weather.observed", "True if the weather has been measured: it is then the same for all ponds of the uncertainty.", "It is a forecast.", "true", {}},
    KeyText{"weather.hold_days", "Days on which the ramp is not to go on.", "The rules of the program find them.", "[2026-06-15, 2026-06-18]", {}},
    KeyText{"weather.day", "One day of weather, in order and without gaps.", "An hourly file is needed.", "", {}},
    KeyText{"weather.day.date", "The day.", "", "2026-06-14", {}},
    KeyText{"weather.day.air_min_c", "Lowest air temperature.", "", "20", {}},
    KeyText{"weather.day.air_max_c", "Highest air temperature.", "", "33", {}},
    KeyText{"weather.day.humidity_percent", "Mean relative humidity; this or the dew point.", "dew_point_c must be given.", "65", {}},
    KeyText{"weather.day.dew_point_c", "Mean dew point; this or the humidity.", "humidity_percent must be given.", "19", {}},
    KeyText{"weather.day.wind_m_per_s", "Mean wind of the day, not its gusts.", "", "2", {}},
    KeyText{"weather.day.cloud_percent", "Mean cloud cover: 0 is a blue sky.", "", "10", {}},
    KeyText{"weather.day.rain_mm", "Rain of the whole day.", "None.", "30", {}},
    KeyText{"weather.day.snow_mm", "Snow of the whole day, as water.", "None.", "2", {}},
    KeyText{"weather.day.known_at", "When this row was known; a later row of the same date replaces it.", "Known from the start.", "2026-06-13T18:00:00", {}},
    KeyText{"weather.day.forecast", "True for a day that is not measured, in a table that is observed otherwise.", "As the whole table.", "true", {}},
    KeyText{"climate", "Usual weather of the months, by which plan says when a start would be harmless: as [[climate.month]] tables, as an hourly file of a typical year, or both.", "It is estimated from latitude, elevation_m and sea_km, which may be several degrees off.", "", {}},
    KeyText{"climate.file", "Hours of a typical year beside the pond file, in the open EPW form, of a station near by.", "The [[climate.month]] tables and the place are used.", "\"year.epw\"", {}},
    KeyText{"climate.month", "One month. It goes before that of the file.", "It comes from the file; without one it is estimated from the place and the months that are given.", "", {}},
    KeyText{"climate.month.month", "Its number, 1 for January.", "", "6", {}},
    KeyText{"climate.month.air_min_c", "Usual lowest air temperature of a day.", "", "17", {}},
    KeyText{"climate.month.air_max_c", "Usual highest air temperature of a day.", "", "29", {}},
    KeyText{"climate.month.humidity_percent", "Usual relative humidity; this or the dew point.", "dew_point_c must be given.", "65", {}},
    KeyText{"climate.month.dew_point_c", "Usual dew point; this or the humidity.", "humidity_percent must be given.", "17", {}},
    KeyText{"climate.month.wind_m_per_s", "Usual mean wind.", "", "2.5", {}},
    KeyText{"climate.month.cloud_percent", "Usual cloud cover.", "", "45", {}},
    KeyText{"aerator", "The bottom aerator that is to be started.", "No ramp can be run.", "", {}},
    KeyText{"aerator.free_air_l_per_min", "Air of one open diffuser as it is drawn in, at 20 degC and 1 atm. Usual: 30 to 60 L/min (common practice, no source).", "", "45", {}},
    KeyText{"aerator.diffusers", "How many there are. Usual: 2 to 5 a hectare (common practice, no source).", "", "2", {}},
    KeyText{"aerator.depth_m", "Where they hang. Usual: 0.3 to 0.5 m above a soft bottom (common practice, no source).", "", "3", {}},
    KeyText{"aerator.bubble_mm", "Diameter of the bubbles.", "A usual size is taken.", "3", kBubble_mm},
    KeyText{"aerator.power_kw", "Electric power while all diffusers run.", "Energy is left empty.", "0.75", {}},
    KeyText{"aerator.net_share", "Share of what the plume lifts that is not drawn in again at once.", "A usual share is taken.", "0.5", kNonRecirculatedShare},
    KeyText{"surface_aerator", "A fountain or paddle wheel at the surface.", "None.", "", {}},
    KeyText{"surface_aerator.standard_transfer_kg_per_h", "Oxygen that it brings into clean water of 20 degC without oxygen; its data sheet says so. Usual: 1 to 2 kg/h for each kW (common practice, no source).", "", "1.2", {}},
    KeyText{"surface_aerator.power_kw", "Its electric power.", "Energy is left empty.", "0.75", {}},
    KeyText{"surface_aerator.start_time", "When it goes on each day; with end_time.", "It always runs.", "\"20:00\"", {}},
    KeyText{"surface_aerator.end_time", "When it goes off each day; with start_time.", "It always runs.", "\"08:00\"", {}},
    KeyText{"surface_aerator.existing", "True if it runs already, so that it belongs to the pond left alone too.", "It runs already.", "false", {}},
};
// clang-format on

}  // namespace

std::span<const KeyText> keyTextsOfAir() {
    return kTexts;
}

}  // namespace engine
