#pragma once

#include "engine/pond/pond.h"
#include "engine/pond/pond_keys.h"
#include "engine/pond/pond_words.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <cstdint>
#include <random>
#include <string>
#include <vector>

namespace engine::test {

/// Draws that are the same on any machine for a seed.
class Dice {
public:
    explicit Dice(unsigned seed) : m_engine(seed) {}

    double share() { return static_cast<double>(m_engine() >> 11U) * 0x1p-53; }  ///< [0, 1)
    bool coin(double chance = 0.5) { return share() < chance; }
    std::size_t below(std::size_t count) { return static_cast<std::size_t>(m_engine() % count); }
    int between(int low, int high) {
        const auto count = static_cast<std::size_t>(std::int64_t{high} - low) + 1;
        return static_cast<int>(low + static_cast<std::int64_t>(below(count)));
    }

    /// A number that keeps the rule: round ones, full doubles, the ends, and very small ones.
    double number(const NumberRule& rule) {
        double value = rule.low + (rule.high - rule.low) * share();
        switch (below(6)) {
            case 0:
                value = std::floor(value);
                break;
            case 1:
                value = std::round(value * 100.0) / 100.0;
                break;
            case 2:
                value = coin() ? rule.low : rule.high;
                break;
            case 3:
                value = rule.low <= 0.0 && rule.high >= 1.0 ? std::pow(10.0, -12.0 * share()) : value;
                break;
            default:
                break;
        }
        value = rule.whole ? std::round(value) : value;
        const bool keeps = value >= rule.low && value <= rule.high && !(rule.above && value <= rule.low);
        return keeps ? value : rule.high;
    }

    /// A text; with `any`, of characters that must be escaped and of several bytes too.
    std::string text(bool any) {
        static const std::array<const char*, 16> kPieces{"a",        "Pond ",        "-",    "_",   " ", "7",
                                                         "\xC3\xA4", "\xE6\xB1\xA0", "\"",   "\\",  "#", "'",
                                                         "\n",       "\t",           "\x01", "\x7F"};
        std::string text = "x";
        for (std::size_t i = below(12); i > 0; --i) {
            text += kPieces[below(any ? kPieces.size() : 12)];
        }
        return text;
    }

private:
    std::mt19937_64 m_engine;
};

/// Visitor of pond_keys.h that fills a pond: what is optional is there half of the time.
class Filler {
public:
    explicit Filler(Dice& dice) : m_dice(dice) {}

    void format(const char*) {}
    void number(const char* key, MaybeQuantity& out, const NumberRule& rule, Need need) {
        if (need == Need::Required || m_dice.coin()) {
            number(key, out.emplace(), rule);
        }
    }
    void number(const char*, Quantity& out, const NumberRule& rule) {
        out.value = m_dice.number(rule);
        if (m_dice.coin(0.3)) {
            out.low = m_dice.coin(0.2) ? out.value : rule.low + (out.value - rule.low) * m_dice.share();
            out.high = m_dice.coin(0.2) ? out.value : out.value + (rule.high - out.value) * m_dice.share();
            if (rule.whole) {
                out.low = out.high = out.value;
            }
        }
        if (m_dice.coin(0.3)) {
            choice("", out.confidence.emplace());
        }
        if (m_dice.coin(0.2)) {
            out.source = m_dice.text(true);
        }
    }
    void numbers(const char*, std::vector<double>& out, const NumberRule& rule, Need) {
        out.resize(1 + m_dice.below(6));
        for (double& value : out) {
            value = m_dice.number(rule);
        }
    }
    void byDay(const char* key, std::optional<ByDay>& out, const NumberRule& rule) {
        if (m_dice.coin(0.4)) {
            out.emplace().isList = m_dice.coin();
            numbers(key, out->values, rule, Need::Required);
            out->values.resize(out->isList ? out->values.size() : 1);
        }
    }
    void text(const char* key, std::string& out, Need need) {
        if (need == Need::Required || m_dice.coin()) {
            out = m_dice.text(std::string_view(key) == "note");
        }
    }
    void truth(const char*, bool& out, bool) { out = m_dice.coin(); }
    void date(const char*, Date& out) {
        out = Date(std::chrono::local_days(std::chrono::days(m_dice.between(-25000, 80000))));
    }
    void dates(const char* key, std::vector<Date>& out) {
        for (int i = m_dice.between(0, 3); i > 0; --i) {
            date(key, out.emplace_back());
        }
    }
    void date(const char* key, std::optional<Date>& out, Need) { date(key, out.emplace()); }
    void time(const char*, std::optional<LocalTime>& out, Need) {
        out = LocalTime(std::chrono::seconds(m_dice.between(-2000000000, 2000000000)));
    }
    void clock(const char*, std::optional<ClockTime>& out) {
        if (m_dice.coin()) {
            out = ClockTime{m_dice.between(0, 1439)};
        }
    }
    void window(const char*, std::optional<ClockWindow>& out) {
        if (m_dice.coin(0.3)) {
            out = ClockWindow{{m_dice.between(0, 700)}, {m_dice.between(701, 1439)}};
        }
    }
    template <class E>
    void choice(const char*, E& out) {
        out = wordsOf(E{})[m_dice.below(wordsOf(E{}).size())].value;
    }
    template <class E>
    void choice(const char* key, std::optional<E>& out) {
        if (m_dice.coin()) {
            choice(key, out.emplace());
        }
    }
    template <class T, class Visit>
    void table(const char*, T& out, Need, Visit visit) {
        visit(*this, out);
    }
    template <class T, class Visit>
    void maybeTable(const char*, std::optional<T>& out, Visit visit) {
        if (m_dice.coin(0.7)) {
            visit(*this, out.emplace());
        }
    }
    template <class T, class Visit>
    void tables(const char*, std::vector<T>& out, Visit visit) {
        for (std::size_t count = m_dice.below(6); count > 0; --count) {
            visit(*this, out.emplace_back());
        }
    }

private:
    Dice& m_dice;
};

/// A pond that keeps every rule of a pond file, its CSV content aside. All keys come up over the seeds.
inline Pond randomPond(Dice& dice) {
    Pond pond;
    Filler filler(dice);
    visitPond(filler, pond);

    // What the keys have to do with each other.
    const double deepest = 1.0 + 20.0 * dice.share();
    BasinShape& basin = pond.basin;
    if (dice.coin()) {
        basin =
            BasinShape{Quantity(10.0 + 1e4 * dice.share()), Quantity(deepest), Quantity(deepest * 0.5), {}};
    } else {
        basin = BasinShape{};
        basin.contours = {{0.0, 900.0}, {deepest / 3.0, 900.0}, {deepest, dice.coin() ? 0.0 : 12.5}};
    }
    Date day = *pond.place.firstDay;
    for (WaterChange& change : pond.water.changes) {
        // The profile is at most a day after the first midnight.
        change.date = Date(std::chrono::local_days(day) + std::chrono::days(dice.between(2, 9)));
        day = change.date;
        change.chlorophyll_ugPerL = 4.5;
    }
    if (!pond.water.changes.empty()) {
        pond.water.weedsCover_percent = 1.0 + 99.0 * dice.share();
        if (!pond.water.chlorophyll_ugPerL || pond.water.chlorophyll_ugPerL->value <= 0.0) {
            pond.water.chlorophyll_ugPerL = Quantity(20.0);
        }
    }
    if (pond.bottleTest && pond.bottleTest->readings.empty()) {
        Filler(dice).number("", pond.bottleTest->readings.emplace_back().minutes.emplace(),
                            {1.0, 2880.0, ""});
        pond.bottleTest->readings.back().oxygen = Quantity(2.5);
    }
    if (pond.spring) {
        const double volume = basin.contours.empty() ? *basin.area * *basin.meanDepth : 150.0 * deepest;
        pond.spring->flow_lPerS = Quantity(volume / 86.4 * dice.share());
    }
    for (Date& held : pond.weather.holdDays) {
        held = Date(std::chrono::local_days(*pond.place.firstDay) + std::chrono::days(dice.between(0, 66)));
    }
    if (pond.surfaceAerator && !(pond.surfaceAerator->startTime && pond.surfaceAerator->endTime)) {
        pond.surfaceAerator->startTime.reset();
        pond.surfaceAerator->endTime.reset();
    }
    if (pond.profile) {
        const std::size_t size = 2 + dice.below(20);
        pond.profile->at = std::chrono::local_days(*pond.place.firstDay) +
                           std::chrono::seconds(dice.between(-3 * 86400, 86400));
        pond.profile->depth.clear();
        for (std::size_t i = 0; i < size; ++i) {
            pond.profile->depth.push_back(deepest * (static_cast<double>(i) / static_cast<double>(size - 1)));
        }
        pond.profile->temperature.resize(size, 21.25);
        pond.profile->oxygen.resize(size, 0.0);
        pond.profile->salinity.resize(dice.coin() ? size : 0, 1.0 / 3.0);
    }
    // What would be warned of: a clock far from the sun's, and air that freezes.
    if (!pond.place.timeZone.empty()) {
        pond.place.timeZone = "America/Chicago";
    }
    if (pond.place.utcOffset_h && pond.place.longitude_deg) {
        pond.place.utcOffset_h = Quantity(*pond.place.longitude_deg / 15.0);
    }
    pond.weather.file = "";
    pond.weather.stamp.reset();
    pond.weather.days.resize(pond.weather.days.size() + 1);
    day = *pond.place.firstDay;
    for (WeatherDay& table : pond.weather.days) {
        Filler(dice).number("", table.wind.emplace(), kWindRule);
        Filler(dice).number("", table.cloud_percent.emplace(), kPercentRule);
        table.date = day;
        day = Date(std::chrono::local_days(day) + std::chrono::days(1));
        table.airMax = Quantity(10.0 + 20.0 * dice.share());
        table.airMin = Quantity(*table.airMax - 9.0 * dice.share());
        table.humidity_percent.reset();
        table.dewPoint.reset();
        if (dice.coin()) {
            table.humidity_percent.emplace(dice.number(kPercentRule));
        } else {
            table.dewPoint.emplace(*table.airMax - 20.0 * dice.share());
        }
    }
    pond.climate.file = "";
    int month = 0;
    pond.climate.months.resize(std::min<std::size_t>(pond.climate.months.size(), 12));
    for (ClimateMonth& one : pond.climate.months) {
        one.month = Quantity(++month);
        one.airMax = Quantity(30.0 * dice.share());
        one.airMin = Quantity(*one.airMax - 9.0 * dice.share());
        one.humidity_percent.reset();
        one.dewPoint.reset();
        if (dice.coin()) {
            one.humidity_percent.emplace(dice.number(kPercentRule));
        } else {
            one.dewPoint.emplace(*one.airMax - 20.0 * dice.share());
        }
    }
    pond.readingsFile = {};
    for (Reading& reading : pond.readings) {
        reading.at = std::chrono::local_days(*pond.place.firstDay) +
                     std::chrono::seconds(dice.between(-60 * 86400, 60 * 86400));
        reading.depth = Quantity(deepest * dice.share());
        reading.oxygen = Quantity(dice.number(kOxygenRule));
    }
    for (Inflow& inflow : pond.inflows) {
        inflow.until = *inflow.from + std::chrono::seconds(dice.between(60, 60 * 86400));
    }
    for (Event& event : pond.events) {
        event.kind = "rain";
        event.ramp.clear();
        event.until.reset();
    }
    if (pond.limits.stress) {
        pond.limits.lethal = Quantity(pond.limits.stress->value * dice.share());
    }
    if (!pond.aerator) {
        pond.ramps.clear();
    } else {
        pond.aerator->depth = Quantity(deepest * (0.2 + 0.7 * dice.share()));
    }
    for (std::size_t i = 0; i < pond.ramps.size(); ++i) {
        Ramp& ramp = pond.ramps[i];
        ramp.name += std::to_string(i);
        const bool startsWithMinutes = ramp.kind == RampKind::Doubling || ramp.kind == RampKind::Linear;
        ramp.first_min = startsWithMinutes ? ramp.first_min.value_or(Quantity(30.0)) : MaybeQuantity();
        ramp.factor = ramp.kind == RampKind::Doubling ? ramp.factor : std::nullopt;
        ramp.add_minPerDay =
            ramp.kind == RampKind::Linear ? ramp.add_minPerDay.value_or(Quantity(15.0)) : MaybeQuantity();
        ramp.dose_percent =
            ramp.kind == RampKind::Capped ? ramp.dose_percent.value_or(Quantity(10.0)) : MaybeQuantity();
        ramp.hold = ramp.kind == RampKind::Capped && ramp.hold;
        ramp.surfaceAirWindow = ramp.surfaceAir_kW ? ramp.surfaceAirWindow : std::nullopt;
        if (ramp.kind == RampKind::Capped) {
            ramp.pulses.reset();  // one run a day
        }
        ramp.minutes.resize(ramp.kind == RampKind::Table ? ramp.minutes.size() : 0);
        for (ByDay* days :
             {ramp.depth ? &*ramp.depth : nullptr, ramp.diffusers ? &*ramp.diffusers : nullptr}) {
            for (std::size_t k = 0; days != nullptr && k < days->values.size(); ++k) {
                const bool isDepth = ramp.depth && days == &*ramp.depth;
                days->values[k] = isDepth ? deepest * (0.2 + 0.7 * dice.share()) : 1.0;
            }
        }
    }
    pond.chosenRamp = pond.ramps.empty() ? "" : pond.ramps[dice.below(pond.ramps.size())].name;
    return pond;
}

}  // namespace engine::test
