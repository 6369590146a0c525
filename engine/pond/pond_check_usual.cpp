// What is possible but so unusual that it is more likely a slip; said as warnings, with the reason.
#include "engine/base/text.h"
#include "engine/base/text_file.h"
#include "engine/base/units.h"
#include "engine/pond/key_list.h"
#include "engine/pond/local_time.h"
#include "engine/pond/numbers_only.h"
#include "engine/pond/pond_check.h"
#include "engine/pond/usual_spans.h"

#include <algorithm>
#include <cmath>

namespace engine {
namespace {

std::string withUnit(double value, const NumberRule& rule) {
    return shownNumber(value) + (*rule.unit == '\0' ? "" : std::string(" ") + rule.unit);
}

/// Visitor of pond_keys.h that holds each number against what is usual.
class UsualCheck : public NumbersOnly {
public:
    explicit UsualCheck(const PondFaults& faults) : m_faults(faults) {}

    void number(const char* key, const MaybeQuantity& quantity, const NumberRule& rule, Need) {
        if (quantity) {
            look(childPath(m_path, key), quantity->value, rule);
        }
    }
    void number(const char* key, const Quantity& quantity, const NumberRule& rule) {
        look(childPath(m_path, key), quantity.value, rule);
    }
    void numbers(const char* key, const std::vector<double>& values, const NumberRule& rule, Need) {
        const std::string path = childPath(m_path, key);
        for (std::size_t i = 0; i < values.size(); ++i) {
            if (look(itemPath(path, i), values[i], rule)) {
                return;  // one of a list is enough
            }
        }
    }
    void byDay(const char*, const std::optional<ByDay>&, const NumberRule&) {}
    template <class T, class Visit>
    void table(const char* key, const T& value, Need, Visit visit) {
        inside(childPath(m_path, key), value, visit);
    }
    template <class T, class Visit>
    void maybeTable(const char* key, const std::optional<T>& value, Visit visit) {
        if (value) {
            inside(childPath(m_path, key), *value, visit);
        }
    }
    template <class T, class Visit>
    void tables(const char* key, const std::vector<T>& values, Visit visit) {
        for (std::size_t i = 0; i < values.size(); ++i) {
            inside(itemPath(childPath(m_path, key), i), values[i], visit);
        }
    }

private:
    template <class T, class Visit>
    void inside(std::string path, const T& value, Visit visit) {
        std::swap(m_path, path);
        visit(*this, value);
        std::swap(m_path, path);
    }

    bool look(const std::string& path, double value, const NumberRule& rule) {
        const std::string plain = plainPath(path);
        const auto spans = usualSpans();
        const auto span =
            std::find_if(spans.begin(), spans.end(), [&](const UsualSpan& one) { return one.path == plain; });
        // None at all is told on purpose.
        if (span == spans.end() || (value >= span->low && value <= span->high) ||
            (value == 0.0 && rule.low == 0.0)) {
            return false;
        }
        m_faults.warn(path, "The value is " + withUnit(value, rule) + ", but ponds usually have " +
                                shortest(span->low) + " to " + withUnit(span->high, rule) + ". " +
                                std::string(span->question));
        return true;
    }

    const PondFaults& m_faults;
    std::string m_path;
};

std::optional<double> areaOf(const BasinShape& basin) {
    return !basin.contours.empty() ? std::optional(basin.contours.front().area.value)
           : basin.area            ? std::optional(basin.area->value)
                                   : std::nullopt;
}

/// Depth and size, clearness and algae, muck and depth.
void checkShape(const Pond& pond, const PondFaults& faults) {
    constexpr double kSteepest = 0.1;  // of the mean diameter; ponds have 0.01 to 0.05, quarries to 0.2
    constexpr double kQuarryFrom = 10.0;
    const auto area = areaOf(pond.basin);
    const auto deepest = deepestPoint(pond.basin);
    if (area && deepest && *area > 0.0) {
        const double diameter = 2.0 * std::sqrt(*area / kPi);
        const double steepest = *deepest >= kQuarryFrom ? 2.0 * kSteepest : kSteepest;
        if (*deepest > steepest * diameter && *deepest > 2.0) {
            faults.warn(
                pond.basin.contours.empty() ? "basin.max_depth_m" : "basin.contour",
                "A pond of " + shownNumber(std::round(*area)) + " m2 is " +
                    shownNumber(std::round(diameter)) + " m across; " + shownNumber(*deepest) +
                    " m of depth is steep for that. Is the depth in feet, or the area in another unit?");
        }
        if (pond.bottom.muck && *pond.bottom.muck > 0.7 * *deepest) {
            faults.warn("bottom.muck_m",
                        "The muck is " + shownNumber(*pond.bottom.muck) + " m deep in a pond of " +
                            shownNumber(*deepest) +
                            " m. The depth is that of the water alone; is the muck in another unit?");
        }
    }
    if (!pond.water.secchi || !pond.water.chlorophyll_ugPerL || *pond.water.chlorophyll_ugPerL < 1.0) {
        return;
    }
    // Carlson (1977), Limnol. Oceanogr. 22:361-369, from memory: water clouded by algae alone.
    const double byAlgae = std::exp(2.04 - 0.68 * std::log(*pond.water.chlorophyll_ugPerL));
    constexpr double kMostClear = 3.0;
    if (*pond.water.secchi > kMostClear * byAlgae) {
        faults.warn("water.secchi_m", "Water with " + shownNumber(*pond.water.chlorophyll_ugPerL) +
                                          " ug/L of chlorophyll is clear to " + figures(byAlgae) +
                                          " m at most, but the Secchi depth is " +
                                          shownNumber(*pond.water.secchi) +
                                          " m. Is it in feet, or the chlorophyll in another unit?");
    }
}

/// A profile upside down, and water that would turn over by itself.
void checkLayers(const Pond& pond, const PondFaults& faults) {
    if (!pond.profile) {
        return;
    }
    const Profile& profile = *pond.profile;
    constexpr double kWarmBelow = 1.5, kOxygenBelow = 4.0, kColdest = 5.0;
    const bool isSalt = !profile.salinity.empty() && profile.salinity.back() > profile.salinity.front() + 0.5;
    for (std::size_t i = 1; i < profile.temperature.size() && !isSalt; ++i) {
        if (profile.temperature[i] > profile.temperature[i - 1] + kWarmBelow &&
            profile.temperature[i - 1] > kColdest) {
            faults.warn(itemPath("profile.temperature_c", i),
                        "At " + shownNumber(profile.depth[i]) + " m it is " +
                            shownNumber(profile.temperature[i]) + " degC under water of " +
                            shownNumber(profile.temperature[i - 1]) +
                            " degC, and warm water rises. Is a number wrong, or the list upside down?");
            break;
        }
    }
    if (profile.oxygen.size() >= 2 && profile.oxygen.back() > profile.oxygen.front() + kOxygenBelow) {
        faults.warn("profile.oxygen_mg_per_l",
                    "There is more oxygen at the bottom, " + shownNumber(profile.oxygen.back()) +
                        " mg/L, than at the surface, " + shownNumber(profile.oxygen.front()) +
                        " mg/L. Is the list upside down?");
    }
    if (profile.at) {
        const auto day = std::chrono::floor<std::chrono::days>(*profile.at);
        const auto hour = std::chrono::duration<double, std::ratio<3600>>(*profile.at - day).count();
        if (hour == 0.0) {
            faults.warn("profile.at", "The profile is stamped midnight. Was its time left out?");
        }
    }
}

/// Weather that jumps, and air that does not fit the water.
void checkAir(const Pond& pond, const PondFaults& faults) {
    constexpr double kWidest = 26.0, kNarrowest = 0.5, kJump = 16.0, kApart = 13.0;
    const std::vector<WeatherDay>& days = pond.weather.days;
    for (std::size_t i = 0; i < days.size(); ++i) {
        const WeatherDay& day = days[i];
        const std::string path = itemPath("weather.day", i);
        const double span = *day.airMax - *day.airMin;
        if (span > kWidest || span < kNarrowest) {
            faults.warn(path + ".air_min_c",
                        "From " + shownNumber(*day.airMin) + " to " + shownNumber(*day.airMax) +
                            " degC is an unusual " + (span > kWidest ? "wide" : "narrow") +
                            " span for one day. Is a digit missing, or one number in degF?");
        }
        if (i > 0 && std::fabs(*day.airMax - *days[i - 1].airMax) > kJump) {
            faults.warn(path + ".air_max_c",
                        "The highest air temperature jumps from " + shownNumber(*days[i - 1].airMax) +
                            " to " + shownNumber(*day.airMax) + " degC within a day. Is a digit wrong?");
        }
        const auto isShare = [](const MaybeQuantity& value) { return value && *value > 0.0 && *value < 1.0; };
        if (isShare(day.cloud_percent)) {
            faults.warn(path + ".cloud_percent", "The cloud cover is " + shownNumber(*day.cloud_percent) +
                                                     " percent. Is it a share? Write percent then.");
        }
    }
    if (pond.profile && !days.empty() && !pond.profile->temperature.empty()) {
        const double air = 0.5 * (*days.front().airMin + *days.front().airMax);
        const double water = pond.profile->temperature.front();
        if (std::fabs(water - air) > kApart) {
            faults.warn("profile.temperature_c",
                        "The surface has " + shownNumber(water) + " degC, but the air of " +
                            formatDate(days.front().date) + " has " + figures(air) +
                            " degC on the mean. Do year, season and units of both fit?");
        }
    }
}

/// Air of the wrong half of the year.
void checkSeason(const Pond& pond, const PondFaults& faults) {
    if (!pond.place.latitude_deg || !pond.place.firstDay || pond.weather.days.empty()) {
        return;
    }
    constexpr double kFarFromEquator = 28.0, kSummerAir = 27.0, kWinterAir = 4.0;
    const double latitude = *pond.place.latitude_deg;
    const auto month = static_cast<unsigned>(pond.place.firstDay->month());
    const bool isNorthSummer = month >= 5 && month <= 9;
    const bool isNorthWinter = month == 12 || month <= 2;
    const bool isSummer = latitude > 0.0 ? isNorthSummer : (month >= 11 || month <= 3);
    const bool isWinter = latitude > 0.0 ? isNorthWinter : (month >= 6 && month <= 8);
    const double air = *pond.weather.days.front().airMax;
    if (std::fabs(latitude) > kFarFromEquator &&
        ((isWinter && air > kSummerAir) || (isSummer && air < kWinterAir))) {
        faults.warn(
            "place.latitude_deg",
            "At latitude " + shownNumber(latitude) + " " + formatDate(*pond.place.firstDay) + " is in " +
                (isWinter ? "winter" : "summer") + ", but the air reaches " + shownNumber(air) +
                " degC. Is the sign of the latitude or the month of first_day wrong? South is negative.");
    }
}

/// Years and days that do not fit, feed and air for the pond.
void checkRest(const Pond& pond, const PondFaults& faults) {
    constexpr std::chrono::days kLongAfter{400};
    if (pond.place.firstDay) {
        const std::chrono::local_days first(*pond.place.firstDay);
        for (std::size_t i = 0; i < pond.history.kills.size(); ++i) {
            if (std::chrono::local_days(pond.history.kills[i]) > first) {
                faults.warn(itemPath("history.kills", i),
                            "The day " + formatDate(pond.history.kills[i]) + " lies after the first day, " +
                                formatDate(*pond.place.firstDay) + ". Is the year right?");
            }
        }
        const auto late = [&](const std::string& path, const std::optional<LocalTime>& at) {
            if (at && *at - first > kLongAfter) {
                faults.warn(path, "This was more than a year after the first day, " +
                                      formatDate(*pond.place.firstDay) + ". Is the year right?");
            }
        };
        for (std::size_t i = 0; i < pond.readings.size(); ++i) {
            late(itemPath("reading", i) + ".at", pond.readings[i].at);
        }
        for (std::size_t i = 0; i < pond.events.size(); ++i) {
            late(itemPath("event", i) + ".at", pond.events[i].at);
        }
        for (std::size_t i = 0; i < pond.inflows.size(); ++i) {
            late(itemPath("inflow", i) + ".from", pond.inflows[i].from);
        }
        for (std::size_t i = 0; i < pond.water.changes.size(); ++i) {
            late(itemPath("water.change", i) + ".date",
                 LocalTime(std::chrono::local_days(pond.water.changes[i].date)));
        }
    }
    const auto area = areaOf(pond.basin);
    double stock = 0.0;
    for (const FishStock& fish : pond.fish) {
        stock += *fish.stock_kgPerHa;
    }
    const double hectares = area.value_or(0.0) / kSquareMetrePerHectare;
    constexpr double kMostFeed = 0.1;  // of the stock in a day; grown fish take 1 to 3 %
    if (pond.feed_kgPerDay && stock > 0.0 && hectares > 0.0 &&
        *pond.feed_kgPerDay > kMostFeed * stock * hectares) {
        faults.warn("feed.kg_per_d", "The feed of " + shownNumber(*pond.feed_kgPerDay) +
                                         " kg a day is more than a tenth of " + "the fish, " +
                                         figures(stock * hectares) +
                                         " kg in all. Is it in grams, or of a week?");
    }
}

/// Diffusers that are too many, too few or too high up for the pond.
void checkAerator(const Pond& pond, const PondFaults& faults) {
    if (!pond.aerator) {
        return;
    }
    // On a hectare; common practice is 2 to 5. Of the depth; diffusers hang near the bottom.
    constexpr double kMostDiffusers = 25.0, kFewestDiffusers = 0.4, kHighest = 0.4;
    const bool hasContours = !pond.basin.contours.empty();
    const double diffusers = *pond.aerator->diffusers;
    const double hectares = areaOf(pond.basin).value_or(0.0) / kSquareMetrePerHectare;
    if (hectares > 0.1 && diffusers > kMostDiffusers * hectares) {
        faults.warn("aerator.diffusers",
                    "There are " + shownNumber(diffusers) + " diffusers on " + figures(hectares) +
                        " ha; usual are 2 to 5 a hectare. Is the area or the number wrong?");
    } else if (diffusers < kFewestDiffusers * hectares) {
        faults.warn(hasContours ? "basin.contour" : "basin.area_m2",
                    "The pond has " + figures(hectares) + " ha and " + shownNumber(diffusers) +
                        " diffusers; usual are 2 to 5 a hectare. Is the area in square feet?");
    }
    const auto deepest = deepestPoint(pond.basin);
    if (deepest && *pond.aerator->depth < kHighest * *deepest) {
        faults.warn(hasContours ? "basin.contour" : "basin.max_depth_m",
                    "The pond is " + shownNumber(*deepest) + " m deep, but the diffusers hang at " +
                        shownNumber(*pond.aerator->depth) + " m. Is one of them in feet?");
    }
}

}  // namespace

void checkUsual(const Pond& pond, const PondFaults& faults) {
    UsualCheck check(faults);
    visitPond(check, pond);
    checkShape(pond, faults);
    checkLayers(pond, faults);
    checkAir(pond, faults);
    checkSeason(pond, faults);
    checkRest(pond, faults);
    checkAerator(pond, faults);
}

}  // namespace engine
