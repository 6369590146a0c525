// The tables of the pond file as rows and columns.

#include "engine/pond/local_time.h"
#include "widgets/document/key_rules.h"
#include "widgets/forms/pond_section.h"

#include <chrono>

namespace widgets {
namespace {

using engine::Pond;
using Kind = SheetColumn::Kind;

QString tr(const char* text) {
    return PondSection::tr(text);
}

SheetColumn numbers(const QString& name, const char* key, const QString& help, bool isNeeded = true) {
    return {name, Kind::Number, keyRule(key), isNeeded, false, help};
}

SheetCell cell(const engine::MaybeQuantity& quantity) {
    return {numberOf(quantity), {}};
}

SheetCell cell(double value) {
    return {value, {}};
}

SheetCell cell(std::string text) {
    return {std::nullopt, std::move(text)};
}

/// Row `i` of a list as it was, so that what the table does not show is kept.
template <class T>
T before(const std::vector<T>& list, std::size_t i) {
    return i < list.size() ? list[i] : T();
}

}  // namespace

SheetSpec contourSheet() {
    return {tr("Contours"),
            tr("Change the contours"),
            {numbers(tr("Depth, %1"), "basin.contour.depth_m",
                     tr("From the surface, 0, down to the deepest point.")),
             numbers(tr("Area, %1"), "basin.contour.area_m2",
                     tr("Of the water at that depth, from a survey or a map of soundings."))},
            [](const Pond& pond) {
                SheetRows rows;
                for (const engine::Contour& contour : pond.basin.contours) {
                    rows.push_back({cell(contour.depth.value), cell(contour.area.value)});
                }
                return rows;
            },
            [](Pond& pond, const SheetRows& rows) {
                const auto old = pond.basin.contours;
                pond.basin.contours.clear();
                for (std::size_t i = 0; i < rows.size(); ++i) {
                    engine::Contour contour = before(old, i);
                    contour.depth.value = *rows[i][0].number;
                    contour.area.value = *rows[i][1].number;
                    pond.basin.contours.push_back(contour);
                }
                // Contours stand instead of area and depths, which come back if the contours go.
                if (!rows.empty()) {
                    pond.basin.area.reset();
                    pond.basin.maxDepth.reset();
                    pond.basin.meanDepth.reset();
                } else if (!old.empty()) {
                    pond.basin.area = old.front().area;
                    pond.basin.maxDepth = old.back().depth;
                    pond.basin.meanDepth = engine::Quantity(old.back().depth.value / 2.0);
                }
            }};
}

SheetSpec waterChangeSheet() {
    return {
        tr("Changes of algae and weeds"),
        tr("Change the course of algae and weeds"),
        {{tr("Date"), Kind::Date, {}, true, false, tr("Between two dates the values go in a straight line.")},
         numbers(tr("Chlorophyll, %1"), "water.change.chlorophyll_ug_per_l",
                 tr("Scales the whole pond; a fall becomes oxygen debt."), false),
         numbers(tr("Weeds, %1"), "water.change.weeds_cover_percent",
                 tr("Cover; a fall becomes oxygen debt where they stood."), false)},
        [](const Pond& pond) {
            SheetRows rows;
            for (const engine::WaterChange& change : pond.water.changes) {
                rows.push_back({cell(engine::formatDate(change.date)), cell(change.chlorophyll_ugPerL),
                                cell(change.weedsCover_percent)});
            }
            return rows;
        },
        [](Pond& pond, const SheetRows& rows) {
            const auto old = pond.water.changes;
            pond.water.changes.clear();
            for (std::size_t i = 0; i < rows.size(); ++i) {
                engine::WaterChange change = before(old, i);
                change.date = engine::parseDate(rows[i][0].text).value_or(engine::Date{});
                putNumber(change.chlorophyll_ugPerL, rows[i][1].number);
                putNumber(change.weedsCover_percent, rows[i][2].number);
                pond.water.changes.push_back(change);
            }
        }};
}

SheetSpec fishSheet() {
    return {tr("Fish"),
            tr("Change the fish"),
            {{tr("Kind"),
              Kind::Text,
              {},
              true,
              false,
              tr("As people call it, such as channel catfish. The heaviest kind decides the lines.")},
             numbers(tr("Stock, %1"), "fish.stock_kg_per_ha",
                     tr("The owner's guess is off by a factor of two; carp and bullheads are forgotten. "
                        "Unfertilised 50 to 150 kg/ha, fed 1500 and more.")),
             numbers(tr("One fish, %1"), "fish.mean_mass_g",
                     tr("Mean mass; small fish breathe more for their mass. 250 g if empty."), false)},
            [](const Pond& pond) {
                SheetRows rows;
                for (const engine::FishStock& fish : pond.fish) {
                    rows.push_back({cell(fish.kind), cell(fish.stock_kgPerHa), cell(fish.meanMass_g)});
                }
                return rows;
            },
            [](Pond& pond, const SheetRows& rows) {
                const auto old = pond.fish;
                pond.fish.clear();
                for (std::size_t i = 0; i < rows.size(); ++i) {
                    engine::FishStock fish = before(old, i);
                    fish.kind = rows[i][0].text;
                    putNumber(fish.stock_kgPerHa, rows[i][1].number);
                    putNumber(fish.meanMass_g, rows[i][2].number);
                    pond.fish.push_back(fish);
                }
            }};
}

SheetSpec profileSheet() {
    return {
        tr("Profile"),
        tr("Change the profile"),
        {numbers(tr("Depth, %1"), "profile.depth_m", tr("From the surface down, rising.")),
         numbers(tr("Temperature, %1"), "profile.temperature_c", tr("Good to 0.2 \u00b0C.")),
         numbers(tr("Oxygen, %1"), "profile.oxygen_mg_per_l",
                 tr("Good to 0.2 mg/L in the field. Calibrate to the barometer as it is, not reduced to the "
                    "sea.")),
         numbers(tr("Salinity"), "profile.salinity", tr("In parts per thousand for every row, or none."),
                 false)},
        [](const Pond& pond) {
            SheetRows rows;
            for (std::size_t i = 0; pond.profile && i < pond.profile->depth.size(); ++i) {
                const engine::Profile& profile = *pond.profile;
                rows.push_back({cell(profile.depth[i]), cell(profile.temperature[i]), cell(profile.oxygen[i]),
                                i < profile.salinity.size() ? cell(profile.salinity[i]) : SheetCell()});
            }
            return rows;
        },
        [](Pond& pond, const SheetRows& rows) {
            if (rows.empty()) {
                pond.profile.reset();
                return;
            }
            if (!pond.profile) {
                pond.profile.emplace();
                if (pond.place.firstDay) {  // half past five of the evening before
                    pond.profile->at =
                        std::chrono::local_days(*pond.place.firstDay) - std::chrono::minutes(390);
                }
            }
            engine::Profile& profile = *pond.profile;
            profile.depth.clear();
            profile.temperature.clear();
            profile.oxygen.clear();
            profile.salinity.clear();
            for (const SheetRow& row : rows) {
                profile.depth.push_back(*row[0].number);
                profile.temperature.push_back(*row[1].number);
                profile.oxygen.push_back(*row[2].number);
                if (row[3].number) {
                    profile.salinity.push_back(*row[3].number);
                }
            }
        }};
}

SheetSpec weatherSheet() {
    return {tr("Weather"),
            tr("Change the weather"),
            {{tr("Date"),
              Kind::Date,
              {},
              true,
              false,
              tr("One row a day without a gap; days outside the table take the mean of its days.")},
             numbers(tr("Coldest, %1"), "weather.day.air_min_c",
                     tr("Of the air, from the forecast; good to 2 \u00b0C for three days.")),
             numbers(tr("Warmest, %1"), "weather.day.air_max_c", tr("Of the air, from the forecast.")),
             numbers(tr("Humidity, %1"), "weather.day.humidity_percent",
                     tr("Mean of the day; or give the dew point."), false),
             numbers(tr("Dew point, %1"), "weather.day.dew_point_c", tr("Instead of the humidity."), false),
             numbers(tr("Wind, %1"), "weather.day.wind_m_per_s",
                     tr("Mean of the day at the station; forecasts are off by a third.")),
             numbers(tr("Cloud, %1"), "weather.day.cloud_percent",
                     tr("Share of the sky; 10 is sun, 95 is overcast."))},
            [](const Pond& pond) {
                SheetRows rows;
                for (const engine::WeatherDay& day : pond.weather.days) {
                    rows.push_back({cell(engine::formatDate(day.date)), cell(day.airMin), cell(day.airMax),
                                    cell(day.humidity_percent), cell(day.dewPoint), cell(day.wind),
                                    cell(day.cloud_percent)});
                }
                return rows;
            },
            [](Pond& pond, const SheetRows& rows) {
                const auto old = pond.weather.days;
                pond.weather.days.clear();
                for (std::size_t i = 0; i < rows.size(); ++i) {
                    engine::WeatherDay day = before(old, i);
                    day.date = engine::parseDate(rows[i][0].text).value_or(engine::Date{});
                    putNumber(day.airMin, rows[i][1].number);
                    putNumber(day.airMax, rows[i][2].number);
                    putNumber(day.humidity_percent, rows[i][3].number);
                    putNumber(day.dewPoint, rows[i][4].number);
                    putNumber(day.wind, rows[i][5].number);
                    putNumber(day.cloud_percent, rows[i][6].number);
                    pond.weather.days.push_back(day);
                }
                if (!rows.empty()) {  // days or a file of hours, not both
                    pond.weather.file.clear();
                    pond.weather.stamp.reset();
                    pond.weather.hours.clear();
                }
            }};
}

}  // namespace widgets
