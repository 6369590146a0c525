#include "engine/ramps/constants_climate.h"
#include "engine/wording/key_texts.h"

#include <array>

namespace engine {
namespace {

// clang-format off
constexpr std::array kTexts{
    KeyText{"format", "The form of the file. Every pond file begins with it.", "", "1", {}},
    KeyText{"title", "What the pond is called, on screen and on every paper.", "The file's name stands in its place.", "\"Mill Pond\"", {}},
    KeyText{"chosen_ramp", "Name of the ramp that the papers are about.", "The first ramp is taken.", "\"gentle\"", {}},
    KeyText{"units", "In which units numbers are shown. Keys keep the units of their names.", "The computer's own setting decides.", "\"us\"", {}},
    KeyText{"client", "For whom the papers are. Nothing of it enters a run.", "The papers leave blanks.", "", {}},
    KeyText{"client.name", "Name of the client.", "A blank on the papers.", "\"J. Smith\"", {}},
    KeyText{"client.phone", "Telephone of whoever reads the meter at dawn.", "A blank on the papers.", "\"555 0100\"", {}},
    KeyText{"place", "Where the pond lies, and when the first day is.", "", "", {}},
    KeyText{"place.latitude_deg", "How far north of the equator; south is negative. It sets the sun's height and the length of the night. A map says it; a tenth of a degree is enough.", "", "36.2", {}},
    KeyText{"place.longitude_deg", "How far east of Greenwich; all of the Americas is negative. With the offset of the clock it says when the sun rises. \"90.1 W\" is understood too.", "", "-90.1", {}},
    KeyText{"place.elevation_m", "Height above the sea. Thin air holds less oxygen in the water. From a map, to 50 m.", "", "120", {}},
    KeyText{"place.sea_km", "Distance to the nearest sea, as the crow flies. Far from it summers are warmer and winters colder. Used where neither months nor a file of the climate are given.", "A usual distance is taken.", "250", kUsualSea_km},
    KeyText{"place.first_day", "The day on which the ramps start.", "", "2026-06-14", {}},
    KeyText{"place.utc_offset_h", "How far the file's clock is ahead of UTC, the same all year: use standard time, without summer time. West is negative.", "", "-6", {}},
    KeyText{"place.wind_shelter", "Share of the table's wind that reaches the water: 1 on an open plain, 0.3 behind trees on all sides.", "A usual share is taken.", "0.6", kWindShelter},
    KeyText{"place.time_zone", "Zone for the clock times that people read on papers, summer time included.", "The file's own clock is shown.", "\"America/Chicago\"", {}},
    KeyText{"basin", "Size and depth, either by area_m2, max_depth_m and mean_depth_m, or by contours.", "", "", {}},
    KeyText{"basin.area_m2", "Area of the water's surface. An aerial picture gives it to a tenth.", "Contours must be given.", "8000", {}},
    KeyText{"basin.max_depth_m", "Depth at the deepest point. A weighted line from a boat.", "Contours must be given.", "3.4", {}},
    KeyText{"basin.mean_depth_m", "Volume over area. Half of the greatest depth where nobody has sounded (common practice, no source).", "Contours must be given.", "1.7", {}},
    KeyText{"basin.contour", "One depth of a sounded pond with the area there, from the surface down; at least two. They stand instead of the three numbers.", "The three numbers are used.", "", {}},
    KeyText{"basin.contour.depth_m", "Depth of the contour; the first is the surface, 0.", "", "2", {}},
    KeyText{"basin.contour.area_m2", "Area of the water at that depth; never larger than the one above.", "", "4000", {}},
    KeyText{"bottom", "What lies at the bottom and owes oxygen.", "All of it is taken as usual for such ponds.", "", {}},
    KeyText{"bottom.age_years", "Years since the pond was dug or last dredged.", "A pond of unknown age is taken as neither young nor old.", "48", {}},
    KeyText{"bottom.muck_m", "Depth of soft muck. Push a pole into it at a few places.", "Usual for a pond of this age and smell.", "0.7", {}},
    KeyText{"bottom.sediment_demand_g_per_m2_d", "Oxygen that the bottom takes at 20 degC with ample oxygen above it.", "Usual for a pond of this age, muck and smell (common practice, no source).", "2.5", {}},
    KeyText{"bottom.oxygen_debt_mg_per_l", "Oxygen that a litre of bottom water takes up once air reaches it, within days. The least known and most decisive number; a bottle test gives it.", "Put together from smell, age, muck, stratified_days, what was measured in the water and the bottle test.", "{ value = 14, low = 6, high = 30, sure = \"estimated\", source = \"bottle test\" }", {}},
    KeyText{"bottom.slow_debt_mg_per_l", "Oxygen that it takes up over weeks, ammonia above all.", "A share of the oxygen debt is taken.", "3", kSlowOfDebt},
    KeyText{"bottom.stratified_days", "Days for which warm water has been lying on cold.", "Not used for the debt.", "40", {}},
    KeyText{"bottom.smell", "Smell of rotten eggs of the bottom water or the muck.", "Taken as not known.", "\"faint\"", {}},
    KeyText{"water", "How clear the water is and what is in it.", "", "", {}},
    KeyText{"water.secchi_m", "Depth at which a white disc is lost from sight. It stands for the algae, which make and take most of the oxygen.", "", "0.45", {}},
    KeyText{"water.chlorophyll_ug_per_l", "Chlorophyll a of the upper water.", "Taken from the Secchi depth, as for water clouded by algae alone.", "70", {}},
    KeyText{"water.weeds_cover_percent", "Share of the pond under water plants.", "No plants are taken.", "5", {}},
    KeyText{"water.ph", "pH of the bottom water. It says how much of ammonia and sulfide is poisonous.", "A usual pH is taken.", "8.1", kPh},
    KeyText{"water.total_ammonia_mg_per_l", "Ammonia and ammonium as nitrogen, of the bottom water.", "Ammonia is not judged.", "2", {}},
    KeyText{"water.total_sulfide_mg_per_l", "Sulfide as sulfur, of the bottom water.", "Guessed from the smell.", "1.5", {}},
    KeyText{"water.ferrous_iron_mg_per_l", "Dissolved iron as iron, of the bottom water.", "Not used for the debt.", "5", {}},
    KeyText{"water.methane_mg_per_l", "Methane as CH4, of the bottom water.", "Not used for the debt.", "2.5", {}},
    KeyText{"water.alkalinity_mg_per_l", "Alkalinity as CaCO3, which buffers the pH.", "A usual alkalinity is taken.", "90", kAlkalinity_mgPerL},
    KeyText{"water.change", "A day from which algae or plants are others, such as after a treatment.", "They stay as they are.", "", {}},
    KeyText{"water.change.date", "The day.", "", "2026-06-20", {}},
    KeyText{"water.change.chlorophyll_ug_per_l", "Chlorophyll a from then on.", "Stays as it is.", "40", {}},
    KeyText{"water.change.weeds_cover_percent", "Plants from then on.", "Stay as they are.", "5", {}},
    KeyText{"bottle_test", "Shake and hold: one part of bottom water, drawn without bubbles, in some parts of surface water, kept full and dark at the pond's temperature. It measures the oxygen debt.", "The debt is estimated without it.", "", {}},
    KeyText{"bottle_test.surface_parts", "Parts of surface water to one of bottom water.", "Three parts are taken.", "3", {}},
    KeyText{"bottle_test.surface_oxygen_mg_per_l", "Oxygen of the surface water before it was mixed.", "", "7.2", {}},
    KeyText{"bottle_test.bottom_oxygen_mg_per_l", "Oxygen of the bottom water before it was mixed.", "", "0.1", {}},
    KeyText{"bottle_test.temperature_c", "Temperature at which the bottles stood.", "20 degC is taken.", "21", {}},
    KeyText{"bottle_test.meter_error_mg_per_l", "How far one reading of the meter may be off (1 sigma).", "0.2 mg/L is taken.", "0.3", {}},
    KeyText{"bottle_test.reading", "One reading of the bottle; after 5 min, 30 min, 2 h and 24 h is best.", "One at least is needed.", "", {}},
    KeyText{"bottle_test.reading.minutes", "Time since the bottle was filled.", "", "30", {}},
    KeyText{"bottle_test.reading.oxygen_mg_per_l", "Oxygen in the bottle.", "", "5.5", {}},
    KeyText{"bottle_test.reading.control_loss_mg_per_l", "What a bottle of surface water alone has lost by then.", "Nothing is taken off.", "0.25", {}},
    KeyText{"spring", "Water that always runs in.", "None.", "", {}},
    KeyText{"spring.flow_l_per_s", "How much. It may not renew the pond within a day.", "", "3", {}},
    KeyText{"spring.temperature_c", "Its temperature.", "", "10", {}},
    KeyText{"spring.oxygen_mg_per_l", "Its oxygen.", "", "8", {}},
    KeyText{"spring.salinity", "Its salinity in g/kg.", "Fresh water.", "0.2", {}},
    KeyText{"inflow", "Water that runs in for a while, such as after a storm.", "None.", "", {}},
    KeyText{"inflow.from", "When it begins.", "", "2026-06-15T14:00:00", {}},
    KeyText{"inflow.until", "When it ends.", "", "2026-06-15T20:00:00", {}},
    KeyText{"inflow.flow_l_per_s", "How much.", "", "40", {}},
    KeyText{"inflow.temperature_c", "Its temperature.", "That of the air.", "16", {}},
    KeyText{"inflow.oxygen_mg_per_l", "Its oxygen.", "Saturated.", "9", {}},
    KeyText{"inflow.salinity", "Its salinity in g/kg.", "Fresh water.", "0.1", {}},
    KeyText{"inflow.organic_mg_per_l", "What rots in it, as the oxygen that it takes.", "None.", "5", {}},
    KeyText{"fish", "One kind of fish; a table for each.", "A usual stock for such a pond is taken.", "", {}},
    KeyText{"fish.kind", "Which fish, in your own words. Bass, bluegill, catfish, carp, koi, trout, perch and their like are known by name and set the lines of oxygen.", "", "\"largemouth bass\"", {}},
    KeyText{"fish.stock_kg_per_ha", "Live mass over the pond's area.", "", "120", {}},
    KeyText{"fish.mean_mass_g", "Mass of one fish; small fish breathe more for their mass.", "A usual mass is taken.", "300", kFishMass_g},
    KeyText{"feed", "What the fish are fed.", "No feed.", "", {}},
    KeyText{"feed.kg_per_d", "Feed of one day.", "No feed.", "2.5", {}},
    KeyText{"profile", "Temperature and oxygen from the surface to the bottom at the deepest point, read in one go, best in the evening before the first day. From 3 days before to the end of the first day.", "The profile is guessed from season, depth, Secchi depth and age, and every page says so.", "", {}},
    KeyText{"profile.at", "When it was read, on the pond's own clock.", "", "2026-06-13T17:30:00", {}},
    KeyText{"profile.depth_m", "Depths from the surface down, every half metre.", "", "[0, 0.5, 1, 1.5, 2]", {}},
    KeyText{"profile.temperature_c", "Water temperature at each depth.", "", "[28.5, 28, 27.5, 25, 22]", {}},
    KeyText{"profile.oxygen_mg_per_l", "Oxygen at each depth.", "", "[8.5, 8.1, 6.8, 1.2, 0]", {}},
    KeyText{"profile.salinity", "Salinity in g/kg at each depth.", "Fresh water.", "[0, 0, 0, 0.1, 3]", {}},
};
// clang-format on

}  // namespace

std::span<const KeyText> keyTextsOfPond() {
    return kTexts;
}

}  // namespace engine
