#include "engine/run/usual_year.h"

#include "engine/base/units.h"
#include "engine/run/constants_run.h"
#include "engine/water/water.h"

#include <algorithm>
#include <cmath>
#include <optional>

namespace engine {
namespace {

using namespace std::chrono;

constexpr int kDaysBefore = 7;  // of weather that a profile is balanced with

/// A place between the middles of two months.
struct BetweenMonths {
    std::size_t before = 0, after = 0, nearest = 0;  // of January first
    double share = 0.0;                              // of the way
};

Date middleOf(year y, unsigned month) {
    return y / std::chrono::month(month) / 15;
}

BetweenMonths betweenMonths(Date date) {
    const auto own = static_cast<unsigned>(date.month());
    const bool isLate = date >= middleOf(date.year(), own);
    const unsigned from = isLate ? own : (own + 10) % 12 + 1, to = from % 12 + 1;
    const year yearOfFrom = isLate || own > 1 ? date.year() : date.year() - years(1);
    const auto start = local_days(middleOf(yearOfFrom, from));
    const auto end = local_days(middleOf(from == 12 ? yearOfFrom + years(1) : yearOfFrom, to));
    return {
        from - 1, to - 1, own - 1,
        static_cast<double>((local_days(date) - start).count()) / static_cast<double>((end - start).count())};
}

double between(const MaybeQuantity& a, const MaybeQuantity& b, double share) {
    return a->value + share * (b->value - a->value);
}

WeatherDay usualDay(const ClimateYear& climate, Date date) {
    const BetweenMonths at = betweenMonths(date);
    const ClimateMonth &a = climate.months[at.before], &b = climate.months[at.after];
    WeatherDay day;
    day.date = date;
    day.airMin = Quantity(between(a.airMin, b.airMin, at.share));
    day.airMax = Quantity(between(a.airMax, b.airMax, at.share));
    day.wind = Quantity(between(a.wind, b.wind, at.share));
    day.cloud_percent = Quantity(between(a.cloud_percent, b.cloud_percent, at.share));
    day.humidity_percent = climate.months[at.nearest].humidity_percent;
    day.dewPoint = climate.months[at.nearest].dewPoint;
    return day;
}

double meanAir(const WeatherDay& day) {
    return 0.5 * (day.airMin->value + day.airMax->value);
}

/// The days of a year without ice.
struct OpenWater {
    Date first{};
    int days = 0;
};

OpenWater openWater(const ClimateYear& climate, year y) {
    std::size_t coldest = 0;
    const auto meanOf = [&](std::size_t i) {
        return climate.months[i].airMin->value + climate.months[i].airMax->value;
    };
    for (std::size_t i = 1; i < climate.months.size(); ++i) {
        coldest = meanOf(i) < meanOf(coldest) ? i : coldest;
    }
    const Date from = middleOf(y, static_cast<unsigned>(coldest) + 1);
    const std::vector<WeatherDay> all = usualDays(climate, from, kMostOpenDays);
    const auto isFrost = [](const WeatherDay& day) { return meanAir(day) < 0.0; };
    const auto first = std::find_if_not(all.begin(), all.end(), isFrost);
    const auto last = std::find_if(first, all.end(), isFrost);
    return {first == all.end() ? from : first->date, static_cast<int>(last - first)};
}

/// A pond on another first day, with that day's usual weather and nothing that was read or happened before.
Pond onDay(const Pond& pond, const ClimateYear& climate, Date first, int days) {
    Pond out = pond;
    out.place.firstDay = first;
    out.readings.clear();
    out.fileReadings.clear();
    out.readingsFile = {};
    out.events.clear();
    out.water.changes.clear();
    out.weather = {};
    out.weather.days =
        usualDays(climate, Date(local_days(first) - std::chrono::days(kDaysBefore)), days + kDaysBefore);
    return out;
}

/// Water mixed to the bottom at the start of a year, as saltness lies now.
Profile mixedProfile(const PondModel& model, const WeatherDay& day) {
    Profile out = model.profile;
    out.at = LocalTime(local_days(day.date)) - minutes(kEveningBefore_min);
    const double temperature = std::max(meanAir(day), kDensestWater.value);
    std::fill(out.temperature.begin(), out.temperature.end(), temperature);
    for (std::size_t i = 0; i < out.oxygen.size(); ++i) {
        const double salinity = out.salinity.empty() ? 0.0 : out.salinity[i];
        out.oxygen[i] = oxygenSaturation(temperature, salinity, model.parameters.site.airPressure);
    }
    return out;
}

/// The layers of one hour as a profile.
Profile profileOf(const PondModel& model, const std::vector<LayerRow>& layers, LocalTime at) {
    Profile out;
    out.at = at;
    for (std::size_t i = 0; i < layers.size(); ++i) {
        out.depth.push_back(model.grid.middle[i]);
        out.temperature.push_back(layers[i].temperature);
        out.oxygen.push_back(layers[i].oxygen);
        if (!model.profile.salinity.empty()) {
            out.salinity.push_back(
                interpolate(model.profile.depth, model.profile.salinity, model.grid.middle[i]));
        }
    }
    return out;
}

/// Mean over the bottom water of what a run holds of debt [g/m^3].
double debtBelow(const Grid& grid, const std::vector<LayerRow>& layers, const BottomWater& bottom) {
    double held = 0.0;
    for (std::size_t i = 0; i < layers.size(); ++i) {
        held += grid.volume[i] * layers[i].debt;
    }
    return bottom.exists() ? held / bottom.volume : 0.0;
}

}  // namespace

std::vector<WeatherDay> usualDays(const ClimateYear& climate, Date first, int days) {
    std::vector<WeatherDay> out;
    for (int i = 0; i < days; ++i) {
        out.push_back(usualDay(climate, Date(local_days(first) + std::chrono::days(i))));
    }
    return out;
}

std::vector<MonthState> usualYear(const PondModel& model, const ClimateYear& climate,
                                  const std::stop_token& stop) {
    const OpenWater open = openWater(climate, model.pond.place.firstDay->year());
    std::vector<MonthState> out;
    for (int month = 1; month <= 12; ++month) {
        out.push_back({month, true, false, {}, 0.0});
    }
    if (open.days <= 1) {
        return out;
    }
    Pond pond = onDay(model.pond, climate, open.first, open.days);
    pond.profile = mixedProfile(model, usualDay(climate, open.first));
    PondModel year = prepareUnbalanced(pond, model.resolution);
    year.parameters.respiration.factor = model.parameters.respiration.factor;
    year.parameters.growth.factor = model.parameters.growth.factor;
    year.parameters.surface.windFactor = model.parameters.surface.windFactor;
    year.parameters.organic = model.parameters.organic;
    RunRequest request;
    request.days = open.days - 1;
    const RampRun run = runRamp(year, nullptr, request, {stop, {}});
    if (run.end != RunEnd::Completed) {
        return {};
    }
    /// What the run has on the evening before a date, if it comes to that.
    const auto eveningBefore = [&](Date date) -> std::optional<std::size_t> {
        const double time = secondsOf(pond, LocalTime(local_days(date)) - minutes(kEveningBefore_min));
        const auto at = std::find_if(run.hours.begin(), run.hours.end(),
                                     [&](const HourRow& hour) { return hour.time >= time; });
        return at == run.hours.end() || at->time - time > kHour
                   ? std::nullopt
                   : std::optional(static_cast<std::size_t>(at - run.hours.begin()));
    };
    /// A date of any year in the year of the run.
    const auto inRun = [&](Date date) {
        Date there = open.first.year() / date.month() / date.day();
        if (!there.ok()) {
            there = open.first.year() / date.month() / 28;
        }
        return there < open.first ? Date(there.year() + years(1), there.month(), there.day()) : there;
    };
    double scale = 1.0;
    const double given = startDebt(model.pond, model.profile, model.bottom, model.basin);
    if (const auto at = eveningBefore(inRun(*model.pond.place.firstDay)); at && model.bottom.exists()) {
        const double made = debtBelow(year.grid, run.layers[*at], model.bottom);
        scale = made > 0.0 ? std::clamp(given / made, 1.0 / kYearScale.value, kYearScale.value) : 1.0;
    }
    for (MonthState& state : out) {
        const Date date = inRun(middleOf(open.first.year(), static_cast<unsigned>(state.month)));
        const auto at = eveningBefore(date);
        if (!at) {
            continue;
        }
        state.isIcy = false;
        state.profile =
            profileOf(year, run.layers[*at], LocalTime(local_days(date)) - minutes(kEveningBefore_min));
        const BottomWater bottom = bottomWater(state.profile, year.basin);
        state.isAired = !bottom.exists() || bottom.isOxic;
        const double made = debtBelow(year.grid, run.layers[*at], bottom);
        state.debt = std::min(scale * made, std::max(given, made));
    }
    return out;
}

Pond inMonth(const Pond& pond, const ClimateYear& climate, const MonthState& state, int days) {
    const auto middle = floor<std::chrono::days>(*state.profile.at) + std::chrono::days(1);
    Pond out = onDay(pond, climate, Date(middle), days);
    out.profile = state.profile;
    out.bottleTest.reset();
    out.bottom.stratified_days.reset();
    out.water.totalSulfide.reset();
    out.water.ferrousIron.reset();
    out.water.methane.reset();
    Quantity debt(state.debt);
    debt.low = state.debt / kYearDebtBand.value;
    debt.high = state.debt * kYearDebtBand.value;
    debt.confidence = Confidence::Guessed;
    out.bottom.oxygenDebt = debt;
    return out;
}

}  // namespace engine
