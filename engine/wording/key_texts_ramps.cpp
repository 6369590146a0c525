#include "engine/plan/constants_plan.h"
#include "engine/plan/constants_start.h"
#include "engine/water/constants_fish.h"
#include "engine/wording/key_texts.h"

#include <array>

namespace engine {
namespace {

// clang-format off
constexpr std::array kTexts{
    KeyText{"limits", "The lines of oxygen that the fish need.", "Those of the kind of fish.", "", {}},
    KeyText{"limits.species_group", "Whose lines are taken.", "Those of the fish with the greatest mass.", "\"sport\"", {}},
    KeyText{"limits.stress_mg_per_l", "Below it fish are under stress.", "By the kind of fish (common practice, no source); higher in warm water, never above what the water can hold.", "5", {}},
    KeyText{"limits.lethal_mg_per_l", "Below it fish die within hours.", "By the kind of fish (common practice, no source).", "2.5", {}},
    KeyText{"limits.fish_water_percent", "Share of the pond in which fish find refuge: oxygen is judged in the best water of this share.", "A usual share is taken.", "25", kFishWater_percent},
    KeyText{"limits.fish_max_c", "Warmer water is no refuge.", "By the kind of fish.", "20", {}},
    KeyText{"dawn_rules", "Limits of the morning's go, hold, back and stop.", "Common practice by the kind of fish.", "", {}},
    KeyText{"dawn_rules.go_mg_per_l", "Oxygen at dawn from which the ramp goes on.", "By the kind of fish (common practice, no source).", "5", {}},
    KeyText{"dawn_rules.hold_mg_per_l", "Oxygen at dawn from which the same minutes are run again.", "By the kind of fish (common practice, no source).", "4", {}},
    KeyText{"dawn_rules.back_mg_per_l", "Oxygen at dawn from which one goes back a step; below it the air stops.", "By the kind of fish (common practice, no source).", "3", {}},
    KeyText{"dawn_rules.fall_hold_mg_per_l", "Fall since before the start above which to hold.", "A usual fall is taken.", "1", kFallHold},
    KeyText{"dawn_rules.fall_back_mg_per_l", "Fall in one night above which to go back.", "A usual fall is taken.", "2", kFallBack},
    KeyText{"dawn_rules.dose_high_percent", "Most of the bottom water that a day may lift where the debt is high.", "A usual share is taken.", "15", kDoseHigh_percent},
    KeyText{"dawn_rules.dose_middle_percent", "The same where the debt is middling.", "A usual share is taken.", "25", kDoseMiddle_percent},
    KeyText{"dawn_rules.morning_rise_mg_per_l", "Least rise of the surface from dawn to 10:00; with less, no air today.", "A usual rise is taken.", "1", kMorningRise},
    KeyText{"history", "What the owner knows of past years.", "Nothing is known.", "", {}},
    KeyText{"history.years_without_kill", "Years in which no fish died.", "Not known.", "12", {}},
    KeyText{"history.kills", "Days on which dead fish were seen.", "None are known.", "[2019-07-20]", {}},
    KeyText{"start_rules", "When a start may be advised, if your office has limits of its own.", "Common practice.", "", {}},
    KeyText{"start_rules.lethal_percent", "Most of 100 ponds like this one that may fall below the lethal line with the ramp.", "A usual limit is taken.", "4", kLethalWith_percent},
    KeyText{"start_rules.lethal_alone_percent", "Most that may do so left alone before surface air is asked for.", "A usual limit is taken.", "8", kLethalAlone_percent},
    KeyText{"start_rules.lethal_added_percent", "Most that the ramp may add.", "A usual limit is taken.", "1", kLethalAdded_percent},
    KeyText{"start_rules.days_after_algaecide", "Days after an algaecide without a start.", "A usual wait is taken.", "28", kDaysAfterAlgaecide},
    KeyText{"ramp", "One way to start the aerator; a table for each. All are compared, and the pond left alone with them.", "Only the pond left alone is run.", "", {}},
    KeyText{"ramp.name", "What the ramp is called.", "", "\"gentle\"", {}},
    KeyText{"ramp.kind", "continuous: on at once. doubling: first_min, then factor times as long each day. linear: first_min, then add_min_per_d longer each day. capped: each day lifts at most dose_percent of the bottom water. table: the list minutes.", "", "\"doubling\"", {}},
    KeyText{"ramp.first_min", "Air on the first day, of doubling and linear.", "Needed for these kinds.", "30", {}},
    KeyText{"ramp.factor", "By how much each day is longer, of doubling.", "Twice as long.", "2", {}},
    KeyText{"ramp.add_min_per_d", "By how much each day is longer, of linear.", "Needed for this kind.", "20", {}},
    KeyText{"ramp.dose_percent", "Share of the bottom water that a day may lift, of capped.", "Needed for this kind.", "10", {}},
    KeyText{"ramp.hold", "True if the cap of a capped ramp is never lifted.", "The cap is lifted once the bottom water is gone.", "true", {}},
    KeyText{"ramp.weather_hold", "True if the ramp skips the days that the weather rule holds.", "It runs in any weather.", "true", {}},
    KeyText{"ramp.minutes", "Air of each day, of table; the last value is kept.", "Needed for this kind.", "[30, 60, 120, 240]", {}},
    KeyText{"ramp.start_time", "When the air goes on.", "10:00.", "\"09:30\"", {}},
    KeyText{"ramp.window", "Hours within which the air may run.", "Any hour from the start time on.", "[\"10:00\", \"16:00\"]", {}},
    KeyText{"ramp.pulses", "Into how many runs a day's air is cut; one number or one for each day.", "One run.", "3", {}},
    KeyText{"ramp.diffusers", "How many diffusers are open; one number or one for each day.", "All.", "[1, 1, 2]", {}},
    KeyText{"ramp.depth_m", "Where the diffusers hang; one number or one for each day.", "At the aerator's depth.", "[1.5, 3]", {}},
    KeyText{"ramp.surface_air_kw", "Surface air that runs at night with this ramp.", "None.", "1.5", {}},
    KeyText{"ramp.surface_air_window", "When that surface air runs.", "From 22:00 to 08:00.", "[\"22:00\", \"08:00\"]", {}},
    KeyText{"ramp.colour", "Colour of its line, in the order of the charts.", "By its place in the file.", "3", {}},
    KeyText{"readings", "A file with readings of a meter or logger.", "None.", "", {}},
    KeyText{"readings.file", "Table beside the pond file, as the logger or a spreadsheet writes it.", "Needed in this table.", "\"logger.csv\"", {}},
    KeyText{"readings.depth_m", "Where the logger hangs, if the file has no column of depth.", "The file must have one.", "0.5", {}},
    KeyText{"readings.date_order", "Whether the day or the month is first in its dates.", "Told from the dates, if one of them can be read in one way only.", "\"month first\"", {}},
    KeyText{"reading", "One reading of the pond; a table for each.", "None.", "", {}},
    KeyText{"reading.at", "When, on the pond's own clock.", "", "2026-06-14T05:40:00", {}},
    KeyText{"reading.depth_m", "How deep the probe was.", "Needed beside a temperature or an oxygen value.", "0.5", {}},
    KeyText{"reading.temperature_c", "Water temperature.", "Not read.", "27.1", {}},
    KeyText{"reading.oxygen_mg_per_l", "Oxygen in the water there.", "Not read.", "5.1", {}},
    KeyText{"reading.secchi_m", "Secchi depth.", "Not read.", "0.5", {}},
    KeyText{"reading.smell", "Smell of rotten eggs in the boil or over the water.", "Not noted.", "\"none\"", {}},
    KeyText{"reading.fish", "How the fish behave; piping is gasping at the surface.", "Not noted.", "\"normal\"", {}},
    KeyText{"reading.meter", "Which meter, where there are several.", "One meter.", "\"handheld\"", {}},
    KeyText{"reading.photo", "A picture's file or number.", "None.", "\"0123.jpg\"", {}},
    KeyText{"reading.corrects", "Time of the reading for which this one stands.", "It corrects none.", "2026-06-14T05:30:00", {}},
    KeyText{"reading.note", "Anything else.", "None.", "\"mist on the water\"", {}},
    KeyText{"event", "What was done to the pond, or happened; a table for each.", "None.", "", {}},
    KeyText{"event.at", "When, on the pond's own clock.", "", "2026-06-14T10:00:00", {}},
    KeyText{"event.kind", "What: started, stopped, run, power_cut, power_back, treatment, algaecide, feed, rain, bloom_change, not_bought, fish_distress or kill. Other words are kept in the log, but nothing is computed from them.", "", "\"started\"", {}},
    KeyText{"event.until", "End of a run or a power cut.", "minutes says it, or the next event.", "2026-06-14T11:00:00", {}},
    KeyText{"event.minutes", "Length of a run, instead of its end.", "until says it.", "60", {}},
    KeyText{"event.diffusers", "How many were open in a run.", "All.", "1", {}},
    KeyText{"event.depth_m", "Where they hung in a run.", "At the aerator's depth.", "2", {}},
    KeyText{"event.ramp", "Of started: the ramp that is run from here on.", "The chosen ramp.", "\"gentle\"", {}},
    KeyText{"event.what", "Of a treatment: what was put in.", "Not known.", "\"copper\"", {}},
    KeyText{"event.area_percent", "Of a treatment: share of the pond's area.", "Not known.", "30", {}},
    KeyText{"event.amount_kg", "How much feed or treatment.", "Not known.", "5", {}},
    KeyText{"event.rain_mm", "How much rain.", "Not known.", "25", {}},
    KeyText{"event.cost", "What it cost, in the owner's money.", "Not known.", "120", {}},
    KeyText{"event.corrects", "Time of the event of this kind for which this one stands.", "It corrects none.", "2026-06-14T10:00:00", {}},
    KeyText{"event.photo", "A picture's file or number.", "None.", "\"0124.jpg\"", {}},
    KeyText{"event.note", "Anything else.", "None.", "\"both diffusers\"", {}},
};
// clang-format on

}  // namespace

std::span<const KeyText> keyTextsOfRamps() {
    return kTexts;
}

}  // namespace engine
