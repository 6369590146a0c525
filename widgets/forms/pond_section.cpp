#include "widgets/forms/pond_section.h"

#include "engine/pond/local_time.h"
#include "engine/pond/pond_words.h"
#include "widgets/controls/clock_box.h"
#include "widgets/controls/line_entry.h"
#include "widgets/document/to_qstring.h"

#include <QCheckBox>
#include <QComboBox>

namespace widgets {
namespace {

using engine::Pond;

QString tr(const char* text) {
    return PondSection::tr(text);
}

/// The place of a number that is always in the pond.
template <class Part>
PondSection::Find in(Part Pond::*part, engine::MaybeQuantity Part::*number) {
    return [part, number](Pond& pond) { return &((pond.*part).*number); };
}

/// The place of a number in a part that may not be there.
template <class Part>
PondSection::Find in(std::optional<Part> Pond::*part, engine::MaybeQuantity Part::*number) {
    return [part, number](Pond& pond) -> engine::MaybeQuantity* {
        auto& maybe = pond.*part;
        return maybe ? &((*maybe).*number) : nullptr;
    };
}

}  // namespace

PondSection::PondSection(Document& document, QWidget* parent, const Build& build)
    : FieldForm(document, parent) {
    addEmptyPage(tr("No pond is open."));
    build(*this);
    refresh();
}

NumberBox* PondSection::number(const char* key, const QString& label, const QString& step,
                               const QString& help, double arrow, Find find, bool isNeeded) {
    return addQuantity({label, step, help}, key, arrow,
                       isNeeded ? NumberBox::Empty::Refused : NumberBox::Empty::Allowed, std::move(find));
}

void PondSection::showIf(QWidget* field, std::function<bool(const Pond&)> holds) {
    m_conditions.emplace_back(field, std::move(holds));
}

void PondSection::refreshRows() {
    for (const auto& [field, holds] : m_conditions) {
        setRowVisible(field, holds(pond()));
    }
}

void buildPlace(PondSection& form) {
    form.addEntry<LineEntry>(
        new LineEntry(LineEntry::Kind::Text, &form),
        {tr("Name of the pond"), tr("Change the pond's name"),
         tr("As it stands on every paper. Leave out what the owner does not want in print.")},
        [](const Pond& pond) { return pond.title; },
        [](Pond& pond, const std::string& text) { pond.title = text; });
    QComboBox* units = form.addChoice(
        {tr("Units"), tr("Change the units"),
         tr("In which units the pond is shown and typed; the pond remembers it. A unit may always be typed "
            "behind a number: "
            "\u201c2.5 ac\u201d, \u201c12 ft\u201d, \u201c80 F\u201d.")},
        [](const Pond& pond) { return pond.units ? 1 + static_cast<int>(*pond.units) : 0; },
        [](Pond& pond, int index) {
            pond.units =
                index == 0 ? std::nullopt : std::optional(static_cast<engine::UnitSystem>(index - 1));
        });
    units->addItems(
        {tr("System default"), tr("metres, litres, \u00b0C"), tr("feet, acres, pounds, \u00b0F")});
    form.number("place.latitude_deg", tr("Latitude, %1"), tr("Change the latitude"),
                tr("North positive. From a map; two decimals are enough. Decides the height of the sun and "
                   "the length of the night."),
                0.5, in(&Pond::place, &engine::Place::latitude_deg), true);
    form.number(
        "place.longitude_deg", tr("Longitude, %1"), tr("Change the longitude"),
        tr("East positive. From a map; two decimals. With the clock's offset it decides when the sun rises."),
        0.5, in(&Pond::place, &engine::Place::longitude_deg), true);
    form.number("place.elevation_m", tr("Elevation, %1"), tr("Change the elevation"),
                tr("Above the sea, from a map. Thin air holds less oxygen: water of 20 \u00b0C saturates at "
                   "9.1 mg/L at the sea and at 7.5 "
                   "mg/L at 1500 m (standard solubility equation)."),
                10.0, in(&Pond::place, &engine::Place::elevation), true);
    form.addEntry<LineEntry>(
        new LineEntry(LineEntry::Kind::Date, &form),
        {tr("First day"), tr("Change the first day"),
         tr("Day 1 of the ramp, as 2026-06-14. The profile should be of the evening before.")},
        [](const Pond& pond) {
            return pond.place.firstDay ? engine::formatDate(*pond.place.firstDay) : std::string();
        },
        [](Pond& pond, const std::string& text) { pond.place.firstDay = engine::parseDate(text); });
    form.number("place.utc_offset_h", tr("Clock ahead of UTC, %1"), tr("Change the clock's offset"),
                tr("Hours, the same all year: standard time, as field logs keep it. Behind UTC is negative."),
                1.0, in(&Pond::place, &engine::Place::utcOffset_h), true);
    form.number("place.wind_shelter", tr("Wind on the pond over that of the table"),
                tr("Change the wind shelter"),
                tr("Trees and banks take wind away. Usual: 0.6, from 0.35 in a wood to 0.9 on a plain "
                   "(common practice, no source). "
                   "Wind brings oxygen in and mixes."),
                0.05, in(&Pond::place, &engine::Place::windShelter));
}

void buildShape(PondSection& form) {
    const auto hasNoContours = [](const Pond& pond) { return pond.basin.contours.empty(); };
    form.showIf(form.number("basin.area_m2", tr("Area, %1"), tr("Change the area"),
                            tr("Surface of the water. From an aerial picture good to 5 to 10 %. \u201c2.5 "
                               "ac\u201d and \u201c1 ha\u201d are understood."),
                            500.0, in(&Pond::basin, &engine::BasinShape::area), true),
                hasNoContours);
    form.showIf(form.number("basin.max_depth_m", tr("Deepest point, %1"), tr("Change the greatest depth"),
                            tr("With a weighted line or a sonar, a dozen soundings where it looks deepest. "
                               "Good to 0.1 m; in wind the line "
                               "slants."),
                            0.1, in(&Pond::basin, &engine::BasinShape::maxDepth), true),
                hasNoContours);
    form.showIf(form.number("basin.mean_depth_m", tr("Mean depth, %1"), tr("Change the mean depth"),
                            tr("Volume over area. Where only the deepest point is known it is usually 0.4 to "
                               "0.55 of it (common practice, no "
                               "source), and then off by a quarter."),
                            0.1, in(&Pond::basin, &engine::BasinShape::meanDepth), true),
                hasNoContours);
}

void buildBottom(PondSection& form) {
    using engine::Bottom;
    form.number("bottom.age_years", tr("Age, %1"), tr("Change the age"),
                tr("Since it was dug or last dredged; ask the owner. Decides what is taken where demand and "
                   "debt are not known: clean "
                   "under 5 years, mucky from 30."),
                1.0, in(&Pond::bottom, &Bottom::age_years));
    form.number("bottom.muck_m", tr("Muck, %1"), tr("Change the muck"),
                tr("With a graduated pole from soft to firm, at a dozen points or more; the mean is then "
                   "good to a quarter. New ponds 0 to 0.15 "
                   "m, old ones 0.3 to 1.2 m (common practice)."),
                0.05, in(&Pond::bottom, &Bottom::muck));
    form.number("bottom.sediment_demand_g_per_m2_d", tr("Oxygen demand of the mud, %1"),
                tr("Change the mud's demand"),
                tr("At 20 \u00b0C with oxygen above it. Hardly ever measured. Clean 0.4, average 1.2, old "
                   "and mucky 2.5 (consolidated from the "
                   "literature); eleven eutrophic lakes had 0.5 to 1.3 (M\u00fcller and others, 2012)."),
                0.1, in(&Pond::bottom, &Bottom::sedimentDemand_gPerM2Day));
    form.number("bottom.oxygen_debt_mg_per_l", tr("Oxygen debt of the bottom water, %1"),
                tr("Change the oxygen debt"),
                tr("Oxygen that sulfide, iron, methane and fresh organic matter in the bottom water will "
                   "take. The number that decides most and is known "
                   "least, and a bottle measures it: one part bottom water with three of surface water, "
                   "dark, read after 5 and 30 min, 2 and 24 h. "
                   "Clean 0.3, average 4, mucky 10 with 4 to 30 (judgement)."),
                1.0, in(&Pond::bottom, &Bottom::oxygenDebt));
    form.number("bottom.slow_debt_mg_per_l", tr("Slow debt, %1"), tr("Change the slow debt"),
                tr("Ammonium and what decays over weeks; it does not bite in a start-up. Usually a quarter "
                   "of the debt (judgement)."),
                1.0, in(&Pond::bottom, &Bottom::slowDebt));
    form.number("bottom.stratified_days", tr("Layered for, %1"), tr("Change the days it is layered"),
                tr("Days since the bottom lost its oxygen. Where the debt was not measured, it is reckoned "
                   "from this."),
                5.0, in(&Pond::bottom, &Bottom::stratified_days));
    QComboBox* smell = form.addChoice(
        {tr("Smell of the bottom water"), tr("Change the smell"),
         tr("Of a sample just drawn: none, faint or strong of rotten eggs. A strong smell makes a pond a "
            "mucky one. No smell is no proof of "
            "safety. Never smell into closed boxes.")},
        [](const Pond& pond) { return pond.bottom.smell ? 1 + static_cast<int>(*pond.bottom.smell) : 0; },
        [](Pond& pond, int index) {
            pond.bottom.smell =
                index == 0 ? std::nullopt : std::optional(static_cast<engine::Smell>(index - 1));
        });
    smell->addItems({tr("not known"), tr("none"), tr("faint"), tr("strong")});
}

void buildWater(PondSection& form) {
    using engine::Water;
    form.number("water.secchi_m", tr("Secchi depth, %1"), tr("Change the Secchi depth"),
                tr("Where a white disc of 20 cm vanishes, at midday on the shady side. Two people differ by "
                   "10 %, two days by 20 %. Clear 1.8 m, average "
                   "0.8, green soup 0.35 (common practice)."),
                0.05, in(&Pond::water, &Water::secchi), true);
    form.number("water.chlorophyll_ug_per_l", tr("Chlorophyll, %1"), tr("Change the chlorophyll"),
                tr("From a laboratory, good to 15 %. Left out it is taken from the Secchi depth, a factor of "
                   "two either way. Clean 6, average 30, "
                   "rich 90 (consolidated)."),
                5.0, in(&Pond::water, &Water::chlorophyll_ugPerL));
    form.number("water.weeds_cover_percent", tr("Weeds cover, %1"), tr("Change the weed cover"),
                tr("Share of the bottom under water plants, by eye from a boat. Full cover is 200 g of dry "
                   "mass a square metre (judgement)."),
                5.0, in(&Pond::water, &Water::weedsCover_percent));
    form.number("water.ph", tr("pH"), tr("Change the pH"),
                tr("In the afternoon, when it is highest. Only the poisonous share of ammonia and sulfide "
                   "hangs on it. Usual 7.5, 6.8 to 8.5."),
                0.1, in(&Pond::water, &Water::ph));
    form.number("water.total_ammonia_mg_per_l", tr("Total ammonia of the bottom water, %1"),
                tr("Change the ammonia"),
                tr("As nitrogen, by drops or strips, good to 0.3 mg/L. Left out it is not followed."), 0.5,
                in(&Pond::water, &Water::totalAmmonia));
    form.number("water.total_sulfide_mg_per_l", tr("Total sulfide of the bottom water, %1"),
                tr("Change the sulfide"),
                tr("As sulfur, of a sample fixed at once. Left out it is not followed."), 0.5,
                in(&Pond::water, &Water::totalSulfide));
    form.number(
        "water.alkalinity_mg_per_l", tr("Alkalinity, %1"), tr("Change the alkalinity"),
        tr("As calcium carbonate, by drops, good to 15 mg/L. For the records; it moves no oxygen here."),
        10.0, in(&Pond::water, &Water::alkalinity));
}

void buildSpring(PondSection& form) {
    using engine::Spring;
    form.addCheck(
        {tr("There is a spring or an inflow"), tr("Change the spring"),
         tr("Water that comes in all the time and leaves at the surface.")},
        [](const Pond& pond) { return pond.spring.has_value(); },
        [](Pond& pond, bool isThere) {
            pond.spring.reset();
            if (isThere) {  // a small cool spring, to be put right
                pond.spring =
                    Spring{engine::Quantity(1.0), engine::Quantity(12.0), engine::Quantity(8.0), {}};
                for (auto* number :
                     {&pond.spring->flow_lPerS, &pond.spring->temperature, &pond.spring->oxygen}) {
                    (*number)->confidence = engine::Confidence::Guessed;
                }
            }
        });
    const auto isThere = [](const Pond& pond) { return pond.spring.has_value(); };
    form.showIf(
        form.number("spring.flow_l_per_s", tr("Flow, %1"), tr("Change the spring's flow"),
                    tr("With a bucket and a watch."), 0.1, in(&Pond::spring, &Spring::flow_lPerS), true),
        isThere);
    form.showIf(
        form.number("spring.temperature_c", tr("Its temperature, %1"), tr("Change the spring's temperature"),
                    tr("Springs have the year's mean of the air."), 0.5,
                    in(&Pond::spring, &Spring::temperature), true),
        isThere);
    form.showIf(form.number("spring.oxygen_mg_per_l", tr("Its oxygen, %1"), tr("Change the spring's oxygen"),
                            tr("Where it enters the pond. Ground water may hold none."), 0.5,
                            in(&Pond::spring, &Spring::oxygen), true),
                isThere);
    form.showIf(
        form.number("spring.salinity", tr("Its salinity"), tr("Change the spring's salinity"),
                    tr("Parts per thousand; empty is fresh."), 0.1, in(&Pond::spring, &Spring::salinity)),
        isThere);
}

void buildFeed(PondSection& form) {
    form.number("feed.kg_per_d", tr("Feed, %1"), tr("Change the feed"),
                tr("Per day, ask the owner. Fed fish breathe up to twice as much. None in sport ponds."), 1.0,
                [](Pond& pond) { return &pond.feed_kgPerDay; });
}

void buildSurfaceAir(PondSection& form) {
    using engine::SurfaceAerator;
    form.addCheck(
        {tr("There is a fountain or surface aerator"), tr("Change the surface aerator"),
         tr("One that is there already belongs to doing nothing, too.")},
        [](const Pond& pond) { return pond.surfaceAerator.has_value(); },
        [](Pond& pond, bool isThere) {
            pond.surfaceAerator.reset();
            if (isThere) {
                pond.surfaceAerator.emplace();
                pond.surfaceAerator->transfer_kgPerH = engine::Quantity(1.0);
                pond.surfaceAerator->transfer_kgPerH->confidence = engine::Confidence::Guessed;
            }
        });
    const auto isThere = [](const Pond& pond) { return pond.surfaceAerator.has_value(); };
    form.showIf(form.number("surface_aerator.standard_transfer_kg_per_h", tr("Standard transfer, %1"),
                            tr("Change the transfer"),
                            tr("Oxygen in clean water of 20 \u00b0C without any, from its papers; 1 to 2 kg "
                               "for each kW and hour (common practice)."),
                            0.1, in(&Pond::surfaceAerator, &SurfaceAerator::transfer_kgPerH), true),
                isThere);
    form.showIf(form.number("surface_aerator.power_kw", tr("Its power, %1"), tr("Change its power"),
                            tr("From the plate; only the energy is worked out from it."), 0.1,
                            in(&Pond::surfaceAerator, &SurfaceAerator::power_kW)),
                isThere);
    const auto clock = [&](const QString& label, const QString& help,
                           std::optional<engine::ClockTime> SurfaceAerator::*end) {
        auto* box = form.addEntry(
            new ClockBox(&form), {label, tr("Change when it runs"), help},
            [end](const Pond& pond) {
                return pond.surfaceAerator ? (*pond.surfaceAerator).*end : std::nullopt;
            },
            [end](Pond& pond, const std::optional<engine::ClockTime>& time) {
                if (pond.surfaceAerator) {
                    (*pond.surfaceAerator).*end = time;
                }
            });
        box->setTakenIfEmpty(std::nullopt, tr("always on"));
        form.showIf(box, isThere);
    };
    clock(tr("On at"), tr("Both empty: always on."), &SurfaceAerator::startTime);
    clock(tr("Off at"), tr("Earlier than the beginning: the next morning."), &SurfaceAerator::endTime);
    form.showIf(form.addCheck(
                    {tr("It is there already"), tr("Change whether it is there already"),
                     tr("Then it runs when nothing else is done, too.")},
                    [](const Pond& pond) { return pond.surfaceAerator && pond.surfaceAerator->existing; },
                    [](Pond& pond, bool isOld) {
                        if (pond.surfaceAerator) {
                            pond.surfaceAerator->existing = isOld;
                        }
                    }),
                isThere);
}

void buildProfileTime(PondSection& form) {
    form.addEntry<LineEntry>(
        new LineEntry(LineEntry::Kind::Time, &form),
        {tr("Read at"), tr("Change when the profile was read"),
         tr("As 2026-06-13 17:30, the evening before day 1. At the deepest point, away from springs, every "
            "half metre; wait until the meter stands still.")},
        [](const Pond& pond) {
            return pond.profile && pond.profile->at ? engine::formatLocalTime(*pond.profile->at)
                                                    : std::string();
        },
        [](Pond& pond, const std::string& text) {
            if (pond.profile) {
                pond.profile->at = engine::parseLocalTime(text);
            }
        });
}

void buildWeather(PondSection& form) {
    form.addCheck(
        {tr("Observed, not forecast"), tr("Change whether the weather is observed"),
         tr("Observed weather is taken as it is; a forecast is varied from member to member.")},
        [](const Pond& pond) { return pond.weather.observed; },
        [](Pond& pond, bool isObserved) { pond.weather.observed = isObserved; });
    form.number("weather.wind_height_m", tr("Height of the wind meter, %1"),
                tr("Change the height of the wind meter"),
                tr("Above the ground. Stations measure at 10 m, the value if empty; field stakes at 2 m."),
                1.0, in(&Pond::weather, &engine::Weather::windHeight));
}

}  // namespace widgets
