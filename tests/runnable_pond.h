#pragma once

#include "engine/pond/pond.h"
#include "engine/pond/pond_check.h"
#include "engine/water/basin.h"
#include "tests/random_pond.h"

#include <algorithm>
#include <cmath>
#include <string>

namespace engine::test {

/// Draws ponds that can be run: random_pond.h reaches every key of the file, this one every kind of water.
/// Puddles to quarries, ice-cold to hot, mixed, stratified and upside down, clean to black, one of every kind
/// of ramp. A sixth of the ponds takes any number that the file allows.
class RunnablePond {
public:
    /// @param atEnds  Half of all numbers are the least or the greatest that the file allows. What keys have
    /// to
    ///                do with each other may then not hold (checkPond() says).
    explicit RunnablePond(Dice& dice, bool atEnds = false)
        : m_dice(dice), m_wild(dice.coin(1.0 / 6.0)), m_atEnds(atEnds) {}

    [[nodiscard]] Pond draw() {
        Pond pond;
        pond.title = "random";
        place(pond.place);
        basin(pond.basin);
        bottom(pond.bottom);
        water(pond);
        if (m_dice.coin(0.9)) {
            profile(pond);
        }
        weather(pond);
        aerator(pond);
        extras(pond);
        for (const RampKind kind : {RampKind::Continuous, RampKind::Doubling, RampKind::Linear,
                                    RampKind::Capped, RampKind::Table}) {
            pond.ramps.push_back(ramp(kind));
        }
        return pond;
    }

private:
    /// Evenly over [low, high], or any number of the file's rule in a wild pond.
    double even(double low, double high, const NumberRule& rule) {
        if (m_atEnds && m_dice.coin()) {
            return m_dice.coin() ? rule.low : rule.high;
        }
        return m_wild && m_dice.coin() ? m_dice.number(rule) : low + (high - low) * m_dice.share();
    }
    /// Evenly in the logarithm.
    double spread(double low, double high, const NumberRule& rule) {
        if (m_atEnds && m_dice.coin()) {
            return m_dice.coin() ? std::max(rule.low, 1e-3 * low) : rule.high;
        }
        const double value =
            std::exp(even(std::log(low), std::log(high), {std::log(low), std::log(rule.high), ""}));
        return std::clamp(value, low, rule.high);
    }

    void place(Place& place) {
        place.latitude_deg = Quantity(even(-60.0, 60.0, {-66.0, 66.0, ""}));
        place.longitude_deg = Quantity(std::round(-180.0 + 360.0 * m_dice.share()));
        place.elevation = Quantity(even(-50.0, 3000.0, {-400.0, 5000.0, ""}));
        place.firstDay = Date(std::chrono::local_days(std::chrono::days(20454 + m_dice.between(0, 364))));
        place.utcOffset_h = Quantity(std::clamp(std::round(*place.longitude_deg / 15.0), -12.0, 14.0));
        if (m_dice.coin()) {
            place.windShelter = Quantity(even(0.2, 1.0, {0.05, 1.0, ""}));
        }
    }

    void basin(BasinShape& basin) {
        m_depth = spread(0.3, 15.0, {0.3, 60.0, ""});
        m_area = spread(20.0, 1e5, {kLeastArea, 1e7, ""});
        if (m_dice.coin(0.7)) {
            basin.area = Quantity(m_area);
            basin.maxDepth = Quantity(m_depth);
            basin.meanDepth = Quantity(std::max(m_depth / (1.06 + 2.9 * m_dice.share()), 0.1));
            return;
        }
        const int rows = m_dice.between(2, 6);
        double area = m_area;
        for (int i = 0; i < rows; ++i) {
            basin.contours.push_back({m_depth * i / (rows - 1), area});
            area *= m_dice.coin(0.2) ? 1.0 : m_dice.share();  // a wall, or a shelf
        }
        if (m_dice.coin()) {
            basin.contours.back().area = 0.0;
        }
    }

    void bottom(Bottom& bottom) {
        bottom.age_years = Quantity(even(0.0, 100.0, {0.0, 1000.0, ""}));
        if (m_dice.coin(0.8)) {
            bottom.muck = Quantity(m_dice.coin(0.2) ? 0.0 : even(0.0, 1.0, {0.0, 10.0, ""}));
            bottom.sedimentDemand_gPerM2Day = Quantity(even(0.0, 5.0, {0.0, 30.0, ""}));
        }
        if (m_dice.coin(0.7)) {
            bottom.oxygenDebt = Quantity(m_dice.coin(0.2) ? 0.0 : even(0.0, 40.0, kDebtRule));
        }
        if (m_dice.coin(0.3)) {
            bottom.slowDebt = Quantity(even(0.0, 15.0, kDebtRule));
        }
        if (m_dice.coin(0.3)) {
            bottom.stratified_days = Quantity(even(0.0, 120.0, {0.0, 366.0, ""}));
        }
        bottom.smell = wordsOf(Smell{})[m_dice.below(3)].value;
    }

    void water(Pond& pond) {
        pond.water.secchi = Quantity(spread(0.1, 8.0, kSecchiRule));
        if (m_dice.coin(0.8)) {
            pond.water.chlorophyll_ugPerL =
                Quantity(m_dice.coin(0.1) ? 0.0 : spread(1.0, 400.0, kChlorophyllRule));
        }
        if (m_dice.coin(0.4)) {
            pond.water.weedsCover_percent = Quantity(even(0.0, 100.0, kPercentRule));
        }
        for (int i = m_dice.between(0, 3); i > 0; --i) {
            pond.fish.push_back({"carp", Quantity(even(0.0, 1500.0, {0.0, 50000.0, ""})),
                                 Quantity(spread(1.0, 3000.0, {0.1, 1e5, ""}))});
        }
        if (m_dice.coin(0.2)) {
            pond.feed_kgPerDay = Quantity(even(0.0, 50.0, {0.0, 10000.0, ""}));
        }
    }

    void profile(Pond& pond) {
        Profile& profile = pond.profile.emplace();
        profile.at = std::chrono::local_days(*pond.place.firstDay) +
                     std::chrono::minutes(m_dice.coin(0.7) ? -390 : m_dice.between(-3 * 1440, 1440));
        const int rows = m_dice.between(2, 12);
        const double reach = m_depth * (0.5 + 0.5 * m_dice.share());
        const double surface = even(1.0, 34.0, kWaterTemperatureRule);
        // Mixed; warm over cold; or the other way round, as under ice or by a slip of the pen.
        const double contrast = m_dice.coin(0.3) ? 0.0 : m_dice.coin(0.85) ? 14.0 * m_dice.share() : -3.0;
        const double middle = reach * (0.1 + 0.8 * m_dice.share()),
                     width = reach * (0.02 + 0.3 * m_dice.share());
        const double top = even(0.0, 16.0, kOxygenRule);
        const double bottomShare = m_dice.coin() ? 0.0 : m_dice.share();
        for (int i = 0; i < rows; ++i) {
            const double depth = reach * i / (rows - 1);
            const double below = 1.0 / (1.0 + std::exp(std::clamp((middle - depth) / width, -50.0, 50.0)));
            profile.depth.push_back(depth);
            profile.temperature.push_back(std::clamp(surface - contrast * below, -2.0, 45.0));
            profile.oxygen.push_back(top * (1.0 - below * (1.0 - bottomShare)));
        }
        profile.depth.back() = std::min(profile.depth.back(), m_depth);
        if (m_dice.coin(0.15)) {
            const double salt = even(0.0, 12.0, {0.0, 20.0, ""});
            for (int i = 0; i < rows; ++i) {
                profile.salinity.push_back(salt * (1.0 + i) / rows);
            }
        }
    }

    void weather(Pond& pond) {
        const double air = even(-5.0, 35.0, {-50.0, 55.0, ""});
        std::chrono::local_days date(*pond.place.firstDay);
        date -= std::chrono::days(m_dice.between(0, 1));
        for (int i = m_dice.between(1, 4); i > 0; --i) {
            WeatherDay& day = pond.weather.days.emplace_back();
            day.date = Date(date);
            date += std::chrono::days(1);
            day.airMax = Quantity(std::clamp(air + 8.0 * m_dice.share(), -60.0, 60.0));
            day.airMin = Quantity(std::max(*day.airMax - 18.0 * m_dice.share(), -60.0));
            if (m_dice.coin(0.8)) {
                day.humidity_percent = Quantity(even(20.0, 100.0, kPercentRule));
            } else {
                day.dewPoint = Quantity(std::min(day.airMin->value, 39.0));
            }
            day.wind = Quantity(m_dice.coin(0.15) ? 0.0 : even(0.0, 12.0, kWindRule));
            day.cloud_percent = Quantity(even(0.0, 100.0, kPercentRule));
        }
        if (m_dice.coin(0.3)) {
            pond.weather.windHeight = Quantity(even(2.0, 10.0, {0.5, 100.0, ""}));
        }
    }

    void aerator(Pond& pond) {
        Aerator& aerator = pond.aerator.emplace();
        aerator.freeAir_lPerMin = Quantity(spread(1.0, 300.0, {0.1, 5000.0, ""}));
        aerator.diffusers =
            Quantity(m_wild && m_dice.coin() ? m_dice.number(kDiffusersRule) : m_dice.between(1, 6));
        aerator.depth = Quantity(std::max(m_depth * (0.3 + 0.69 * m_dice.share()), 0.1));
        if (m_dice.coin()) {
            aerator.bubble_mm = Quantity(spread(0.5, 8.0, {0.2, 20.0, ""}));
            aerator.nonRecirculatedShare = Quantity(even(0.2, 1.0, {0.05, 1.0, ""}));
            aerator.power_kW = Quantity(0.4);
        }
    }

    void extras(Pond& pond) {
        const std::chrono::local_days first(*pond.place.firstDay);
        if (m_dice.coin(0.2)) {
            // At most the pond's own volume a day.
            const double most = Basin(pond.basin).volume() / 86.4;
            const double flow = spread(0.01, 5.0, {0.0, 1000.0, ""});
            pond.spring =
                Spring{Quantity(std::min(flow, 0.9 * most)), Quantity(even(4.0, 18.0, {0.0, 30.0, ""})),
                       Quantity(even(0.0, 12.0, kOxygenRule)), std::nullopt};
        }
        if (m_dice.coin(0.2)) {
            SurfaceAerator& aerator = pond.surfaceAerator.emplace();
            aerator.transfer_kgPerH = Quantity(even(0.0, 4.0, {0.0, 200.0, ""}));
            aerator.existing = m_dice.coin();
            if (m_dice.coin(0.7)) {
                aerator.startTime = ClockTime{m_dice.between(0, 1439)};
                aerator.endTime = ClockTime{m_dice.between(0, 1439)};
            }
        }
        for (int i = m_dice.coin(0.2) ? 2 : 0; i > 0; --i) {
            WaterChange change;
            change.date = Date(first + std::chrono::days(3 - i));
            // Nothing cannot be scaled to something.
            const auto& algae = pond.water.chlorophyll_ugPerL;
            const double wanted = spread(1.0, 400.0, kChlorophyllRule);
            change.chlorophyll_ugPerL = Quantity(algae && algae->value == 0.0 ? 0.0 : wanted);
            if (pond.water.weedsCover_percent) {
                change.weedsCover_percent = Quantity(even(0.0, 100.0, kPercentRule));
            }
            pond.water.changes.push_back(change);
        }
        if (m_dice.coin(0.3)) {
            pond.water.ph = Quantity(even(6.0, 9.5, {4.0, 11.0, ""}));
            pond.water.totalAmmonia = Quantity(even(0.0, 10.0, {0.0, 200.0, ""}));
            pond.water.totalSulfide = Quantity(even(0.0, 10.0, {0.0, 200.0, ""}));
        }
        if (m_dice.coin(0.3)) {
            pond.weather.holdDays = {Date(first + std::chrono::days(m_dice.between(0, 2)))};
        }
    }

    /// With at least eight hours of air on the first day, where no cap, window or hold is in the way.
    Ramp ramp(RampKind kind) {
        Ramp ramp;
        ramp.name = "ramp " + std::to_string(static_cast<int>(kind));
        ramp.kind = kind;
        const double first = m_dice.between(480, 960);
        if (kind == RampKind::Doubling || kind == RampKind::Linear) {
            ramp.first_min = Quantity(first);
        }
        if (kind == RampKind::Doubling && m_dice.coin()) {
            ramp.factor = Quantity(1.1 + 3.0 * m_dice.share());
        }
        if (kind == RampKind::Linear) {
            ramp.add_minPerDay = Quantity(1.0 + 500.0 * m_dice.share());
        }
        if (kind == RampKind::Table) {
            ramp.minutes = {first, 0.0, first, 1440.0};
        }
        if (kind == RampKind::Capped) {
            ramp.dose_percent = Quantity(spread(1.0, 300.0, {0.1, 1000.0, ""}));
            ramp.hold = m_dice.coin();
        }
        if (m_dice.coin()) {
            ramp.startTime = ClockTime{m_dice.between(0, 1439)};
        }
        if (m_dice.coin(0.15)) {
            ramp.window = ClockWindow{{m_dice.between(0, 700)}, {m_dice.between(701, 1439)}};
            ramp.startTime.reset();
        }
        if (m_dice.coin(0.15) && ramp.kind != RampKind::Capped) {
            ramp.pulses = ByDay{{static_cast<double>(m_dice.between(1, 8)), 3.0}, true};
        }
        if (m_dice.coin(0.15)) {
            ramp.diffusers = ByDay{{1.0}, false};
        }
        if (m_dice.coin(0.15)) {
            ramp.depth = ByDay{{std::max(0.4 * m_depth, 0.1), std::max(0.9 * m_depth, 0.1)}, true};
        }
        ramp.weatherHold = m_dice.coin(0.15);
        return ramp;
    }

    Dice& m_dice;
    bool m_wild, m_atEnds;
    double m_depth = 0.0, m_area = 0.0;
};

inline Pond runnablePond(Dice& dice) {
    return RunnablePond(dice).draw();
}

}  // namespace engine::test
