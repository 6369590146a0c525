#include "tests/property/measured_reservoir.h"

#include "engine/base/text.h"
#include "engine/pond/local_time.h"

#include <algorithm>
#include <cmath>
#include <stdexcept>

namespace engine::test {
namespace {

using std::chrono::local_days;

/// Days with air, among them 29 to 31 May 2016, an unlisted run by what the profiles show.
bool isAirDay(local_days day) {
    using namespace std::chrono;
    static const std::array<local_days, 11> days{
        local_days(2016y / May / 29),  local_days(2016y / May / 30),  local_days(2016y / May / 31),
        local_days(2016y / June / 27), local_days(2016y / July / 25), local_days(2016y / July / 26),
        local_days(2016y / July / 27), local_days(2017y / May / 29),  local_days(2017y / July / 10),
        local_days(2017y / July / 11), local_days(2017y / July / 12)};
    return std::find(days.begin(), days.end(), day) != days.end();
}

bool isSummer(local_days day) {
    const auto month = Date(day).month();
    return month >= std::chrono::June && month <= std::chrono::August;
}

/// What the profile lacks below, of the profile nearest in time of the same year that has it; no warmer than
/// what is above.
LakeProfile withDeepWater(const Reservoir& reservoir, LakeProfile profile) {
    constexpr double kDeep = 6.5;  // [m]; the shorter profiles end at 6 m
    if (profile.depth.back() > kDeep) {
        return profile;
    }
    const LakeProfile* nearest = nullptr;
    for (const LakeProfile& other : reservoir.profiles) {
        const bool isOfYear = Date(other.day).year() == Date(profile.day).year();
        if (isOfYear && other.isHandHeld == profile.isHandHeld && other.depth.back() > kDeep &&
            (nearest == nullptr ||
             std::chrono::abs(other.day - profile.day) < std::chrono::abs(nearest->day - profile.day))) {
            nearest = &other;
        }
    }
    for (std::size_t i = 0; nearest != nullptr && i < nearest->depth.size(); ++i) {
        if (nearest->depth[i] > kDeep) {
            profile.depth.push_back(nearest->depth[i]);
            profile.temperature.push_back(std::min(nearest->temperature[i], profile.temperature.back()));
            profile.oxygen.push_back(nearest->oxygen[i]);
        }
    }
    return profile;
}

std::vector<WeatherHour> hoursOf(const std::filesystem::path& file) {
    std::vector<WeatherHour> hours;
    const std::vector<TrialRow> rows = trialRows(file);
    // A stamp is an instant (by the sun, which stands highest at 12:23 by the file and by its path), and the
    // mean of an hour that of its two ends.
    const auto mean = [&](std::size_t i, const char* column) {
        const std::size_t next = std::min(i + 1, rows.size() - 1);
        return 0.5 * (numberOf(rows[i], column) + numberOf(rows[next], column));
    };
    for (std::size_t i = 0; i < rows.size(); ++i) {
        WeatherHour hour;
        hour.start = timeOf(rows[i], "at");
        hour.air = mean(i, "air_c");
        hour.humidity_percent = mean(i, "humidity_percent");
        hour.wind = mean(i, "wind_m_per_s");
        hour.shortwave = mean(i, "shortwave_w_per_m2");
        hours.push_back(hour);
    }
    return hours;
}

/// Depths [m] and areas [m2], a survey of 2025; 9.3 m at the mast.
constexpr std::array<std::array<double, 2>, 11> kContours{{{0, 81845},
                                                           {1, 77359},
                                                           {2, 64246},
                                                           {3, 50026},
                                                           {4, 37039},
                                                           {5, 24543},
                                                           {6, 16252},
                                                           {7, 9603},
                                                           {8, 5996},
                                                           {9, 3291},
                                                           {9.3, 0}}};

std::vector<LakeProfile> profilesOf(const std::filesystem::path& file) {
    std::map<local_days, LakeProfile> byDay;
    for (const TrialRow& row : trialRows(file)) {
        const std::string& temperature = row.at("temperature_c");
        const auto oxygen = toNumber(row.at("oxygen_mg_per_l"));
        if (temperature.empty() || !oxygen) {
            continue;
        }
        const local_days day(*parseDate(row.at("day")));
        // All numbers are written with two decimals; those of the hand-held instrument end in 0.
        LakeProfile& profile = byDay.try_emplace(day, LakeProfile{day, true, {}, {}, {}}).first->second;
        profile.isHandHeld = profile.isHandHeld && temperature.back() == '0';
        profile.depth.push_back(numberOf(row, "depth_m"));
        profile.temperature.push_back(numberOf(row, "temperature_c"));
        profile.oxygen.push_back(*oxygen);
    }
    std::vector<LakeProfile> profiles;
    for (auto& [day, profile] : byDay) {
        profiles.push_back(std::move(profile));
    }
    return profiles;
}

std::map<local_days, double> secchiOf(const std::filesystem::path& file) {
    std::map<local_days, std::vector<double>> read;
    for (const TrialRow& row : trialRows(file)) {
        read[local_days(*parseDate(row.at("day")))].push_back(numberOf(row, "secchi_m"));
    }
    std::map<local_days, double> means;
    for (const auto& [day, values] : read) {
        for (const double value : values) {
            means[day] += value / static_cast<double>(values.size());
        }
    }
    return means;
}

bool touchesAir(local_days from, local_days to) {
    for (local_days day = from; day <= to; day += std::chrono::days(1)) {
        if (isAirDay(day)) {
            return true;
        }
    }
    return false;
}

}  // namespace

bool LakeProfile::isFull() const {
    return std::all_of(kReservoirDepths.begin(), kReservoirDepths.end(), [this](double wanted) {
        return std::find(depth.begin(), depth.end(), wanted) != depth.end();
    });
}

const LakeProfile& Reservoir::profileOf(local_days day) const {
    const auto found = std::find_if(profiles.begin(), profiles.end(),
                                    [day](const LakeProfile& profile) { return profile.day == day; });
    if (found == profiles.end()) {
        throw std::runtime_error("There is no profile of " + formatDate(Date(day)) + ".");
    }
    return *found;
}

double Reservoir::secchiNear(local_days day) const {
    constexpr double kUnknown = 2.0;  // [m], assumed for 2016
    std::optional<std::chrono::days> nearest;
    double out = kUnknown;
    for (const auto& [other, value] : secchi) {
        const auto apart = std::chrono::abs(other - day);
        if (Date(other).year() == Date(day).year() && (!nearest || apart < *nearest)) {
            nearest = apart;
            out = value;
        }
    }
    return out;
}

Reservoir readReservoir(const std::filesystem::path& data) {
    const std::filesystem::path folder = data / "reservoir";
    return {profilesOf(folder / "profiles.csv"), hoursOf(folder / "weather.csv"),
            secchiOf(folder / "secchi.csv")};
}

Pond reservoirPond(const Reservoir& reservoir, const LakeProfile& start, int days,
                   const WaterOptions& options, int pastDays) {
    Pond pond;
    pond.title = "a measured reservoir";
    pond.place = {37.30, -79.84, 507.0, {}, Date(start.day), -5.0, options.windShelter, {}};
    for (const auto& [depth, area] : kContours) {
        pond.basin.contours.push_back({depth, area});
    }
    pond.water.secchi = reservoir.secchiNear(start.day) / options.attenuationFactor;
    const LakeProfile whole = withDeepWater(reservoir, start);
    Profile& profile = pond.profile.emplace();
    profile.at = LocalTime(start.day) + std::chrono::hours(12);
    profile.depth = whole.depth;
    profile.temperature = whole.temperature;
    profile.oxygen = whole.oxygen;
    pond.weather.file = "weather.csv";
    pond.weather.stamp = HourStamp::Start;
    pond.weather.observed = true;
    const LocalTime from(start.day - std::chrono::days(pastDays));
    const LocalTime to = LocalTime(start.day) + std::chrono::hours(24 * (days + 1));
    for (const WeatherHour& hour : reservoir.hours) {
        if (hour.start >= from && hour.start < to) {
            pond.weather.hours.push_back(hour);
        }
    }
    return pond;
}

std::vector<Stretch> stretchesWithoutAir(const Reservoir& reservoir) {
    constexpr std::chrono::days kShortest{7}, kLongest{11};
    std::vector<Stretch> stretches;
    const std::vector<LakeProfile>& all = reservoir.profiles;
    const auto isUsable = [](const LakeProfile& profile) {
        return profile.isFull() && isSummer(profile.day);
    };
    local_days free{};  // the first day that is in no stretch yet
    for (auto start = all.begin(); start != all.end(); ++start) {
        if (start->day < free || !isUsable(*start)) {
            continue;
        }
        const auto end = std::find_if(start, all.end(), [&](const LakeProfile& other) {
            return other.day - start->day >= kShortest && isUsable(other) &&
                   other.isHandHeld == start->isHandHeld;
        });
        if (end != all.end() && end->day - start->day <= kLongest && !touchesAir(start->day, end->day)) {
            stretches.push_back({*start, *end});
            free = end->day;
        }
    }
    return stretches;
}

StretchErrors errorsOfStretches(const Reservoir& reservoir, const std::vector<Stretch>& stretches,
                                const WaterOptions& options) {
    StretchErrors errors{noErrorsAt(kReservoirDepths), noErrorsAt(kReservoirDepths)};
    for (const Stretch& stretch : stretches) {
        const Pond pond = reservoirPond(reservoir, stretch.start, stretch.days(), options);
        const WaterRun water = runWater(pond, stretch.days(), {}, options.resolution);
        for (std::size_t i = 0; i < kReservoirDepths.size(); ++i) {
            const double depth = kReservoirDepths[i];
            const double measured = interpolate(stretch.end.depth, stretch.end.temperature, depth);
            errors.model[i].add(water.lastTemperature(depth) - measured);
            errors.unchanged[i].add(interpolate(stretch.start.depth, stretch.start.temperature, depth) -
                                    measured);
        }
    }
    return errors;
}

}  // namespace engine::test
