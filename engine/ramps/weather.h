#pragma once

#include "engine/pond/pond.h"
#include "engine/water/sky.h"

#include <optional>
#include <vector>

namespace engine {

/// The air over the pond at one moment.
struct Forcing {
    double shortwave = 0.0;        ///< Reaching the surface [W/m^2]
    double air = 20.0;             ///< [degC]
    double vapourPressure = 0.0;   ///< Of the air [Pa]
    double wind10 = 0.0;           ///< On the pond, sheltering taken off, at 10 m [m/s]
    double cloud = 0.0;            ///< Share of sky, 0 to 1
    double rain = 0.0;             ///< Rain and melted snow [m/s]
    double rainTemperature = 0.0;  ///< As in InflowingWater [degC]
};

/// Which weather a run sees. Day 1 is the pond file's first day.
struct WeatherPlan {
    bool usualThroughout = false;        ///< Every day is the usual day (balance; a cause).
    std::optional<int> usualAfterDay{};  ///< Later days take the usual day under that day's sun (end state).
    /// Usual is the mean of the days before this, if kPastDays of them are known.
    std::optional<int> usualBeforeDay{};
};

/// Weather of the pond at any time of a run: the table of days turned into hours, or the hourly file;
/// the usual day before and after, which is the mean of the table's days, column by column.
///
/// A table's day runs, as FAO Irrigation and Drainage Paper 56 assumes: air from its minimum at sunrise
/// to its maximum at 15:00 and on to the next minimum, by half cosines; vapour pressure and cloud
/// constant; wind twice as strong by day as by night (kWindSwing), strongest at 15:00; rain evenly all day.
/// An hourly file is taken as hourly means. Rain has the wet bulb's temperature; usual days have none.
class WeatherSeries {
public:
    /// @pre the pond passed its checks.
    WeatherSeries(const Pond& pond, const WeatherPlan& plan, int firstDay, int lastDay);

    /// @param time  Seconds after local midnight of day 1; within the days of the constructor.
    [[nodiscard]] Forcing at(double time) const;

    /// Sunrise of a day [s after local midnight of day 1]; 06:00 where the sun does not rise.
    [[nodiscard]] double sunrise(int day) const;

    /// Days of 1 to `lastDay` that the table or file does not cover.
    [[nodiscard]] int usualDays() const { return m_usualDays; }

private:
    struct Day {
        int dayOfYear = 1;
        double airMin = 0.0, airMax = 0.0, vapourPressure = 0.0, wind = 0.0, cloud = 0.0;
        double rain = 0.0, snow = 0.0;  ///< [m/s], snow as water
        SunPath sun;
        double rise_h = 6.0;
    };
    [[nodiscard]] const Day& day(int number) const;
    [[nodiscard]] double tableAir(int number, double clock_h) const;
    [[nodiscard]] Forcing forcingOf(const Pond& pond, const WeatherHour& row) const;
    void buildHours(const Pond& pond, const WeatherPlan& plan, int firstDay, int lastDay);

    int m_firstDay = 0;
    int m_usualDays = 0;
    double m_windScale = 1.0;  ///< Sheltering times height correction
    std::vector<Day> m_days;
    std::vector<Forcing> m_hours;  ///< By hour from m_firstDay's midnight; empty with a table of days
};

/// Number of a date counted from the first day, which is 1.
[[nodiscard]] int dayNumber(const Pond& pond, const Date& date);
/// Date of a day number.
[[nodiscard]] Date dateOfDay(const Pond& pond, int day);
/// A local time as seconds after local midnight of day 1.
[[nodiscard]] double secondsOf(const Pond& pond, LocalTime time);

}  // namespace engine
