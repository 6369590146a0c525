#pragma once

#include <chrono>
#include <map>
#include <optional>
#include <string>
#include <vector>

namespace engine {

/// Minutes after local midnight.
struct ClockTime {
    int minutes = 0;
    bool operator==(const ClockTime&) const = default;
};

/// How an input is known; a plain number is measured.
enum class Confidence { Measured, Estimated, Guessed };

/// A number of the pond file with its spread. Converts to its value.
struct Quantity {
    double value = 0.0;
    std::optional<double> low;   ///< 5 % point; `low` and `high` come together.
    std::optional<double> high;  ///< 95 % point.
    std::optional<Confidence> confidence;
    std::string source;  ///< Where the number comes from, in the author's words.

    Quantity() = default;
    Quantity(double plain) : value(plain) {}  // NOLINT: a plain number is a quantity
    operator double() const { return value; }
    bool operator==(const Quantity&) const = default;
};

using MaybeQuantity = std::optional<Quantity>;
using Date = std::chrono::year_month_day;
using LocalTime = std::chrono::local_seconds;  ///< The pond's own fixed clock (utc_offset_h).

enum class Smell { None, Faint, Strong };
enum class SpeciesGroup { Sport, Catfish, Carp, Koi, Trout, Percid };
/// In which units a pond's numbers are shown and typed; files keep their own.
enum class UnitSystem { Metric, Us };
enum class RampKind { Continuous, Doubling, Linear, Capped, Table };

// Numbers stand here in the units of the pond file; a name without a unit suffix is in house
// units (m, m^2, degC, g/m^3). Absent is nullopt, never 0.

struct Place {
    MaybeQuantity latitude_deg;   ///< North positive, -66 to 66.
    MaybeQuantity longitude_deg;  ///< East positive.
    MaybeQuantity elevation;      ///< [m]
    MaybeQuantity sea_km;         ///< To the nearest sea.
    std::optional<Date> firstDay;
    MaybeQuantity utcOffset_h;
    MaybeQuantity windShelter;  ///< Key wind_shelter: wind on the pond over wind of the table, 0 to 1.
    std::string timeZone;       ///< Name of a zone for times that people read; empty: the file's own clock.
    bool operator==(const Place&) const = default;
};

struct Contour {
    Quantity depth;  ///< [m]
    Quantity area;   ///< [m^2] at that depth.
    bool operator==(const Contour&) const = default;
};

struct BasinShape {
    MaybeQuantity area;             ///< Surface area [m^2]
    MaybeQuantity maxDepth;         ///< [m]
    MaybeQuantity meanDepth;        ///< [m]
    std::vector<Contour> contours;  ///< From the surface down; instead of the three above.
    bool operator==(const BasinShape&) const = default;
};

struct Bottom {
    MaybeQuantity age_years;
    MaybeQuantity muck;                      ///< [m]
    MaybeQuantity sedimentDemand_gPerM2Day;  ///< At 20 degC and ample oxygen.
    MaybeQuantity oxygenDebt;                ///< Fast plus medium, mean of the bottom water [g/m^3]
    MaybeQuantity slowDebt;                  ///< [g/m^3]
    MaybeQuantity stratified_days;
    std::optional<Smell> smell;
    bool operator==(const Bottom&) const = default;
};

struct WaterChange {
    Date date{};
    MaybeQuantity chlorophyll_ugPerL;
    MaybeQuantity weedsCover_percent;
    bool operator==(const WaterChange&) const = default;
};

struct Water {
    MaybeQuantity secchi;  ///< [m]
    MaybeQuantity chlorophyll_ugPerL;
    MaybeQuantity weedsCover_percent;
    MaybeQuantity ph;
    MaybeQuantity totalAmmonia;  ///< As nitrogen [g/m^3], of the bottom water.
    MaybeQuantity totalSulfide;  ///< As sulfur [g/m^3], of the bottom water.
    MaybeQuantity ferrousIron;   ///< As iron [g/m^3], of the bottom water.
    MaybeQuantity methane;       ///< As CH4 [g/m^3], of the bottom water.
    MaybeQuantity alkalinity;    ///< As CaCO3 [g/m^3]
    std::vector<WaterChange> changes;
    bool operator==(const Water&) const = default;
};

/// One reading of a bottle test.
struct BottleReading {
    MaybeQuantity minutes;      ///< Since the bottle was filled.
    MaybeQuantity oxygen;       ///< [g/m^3]
    MaybeQuantity controlLoss;  ///< What the bottle of surface water alone has lost by then [g/m^3]
    bool operator==(const BottleReading&) const = default;
};

/// Shake and hold: one part of bottom water in some parts of surface water, kept dark.
struct BottleTest {
    MaybeQuantity surfaceParts;   ///< To one of bottom water; absent means 3.
    MaybeQuantity surfaceOxygen;  ///< [g/m^3]
    MaybeQuantity bottomOxygen;   ///< [g/m^3]
    MaybeQuantity temperature;    ///< Of the bottles [degC]; absent means 20.
    MaybeQuantity meterError;     ///< 1 sigma of one reading [g/m^3]; absent means 0.2.
    std::vector<BottleReading> readings;
    bool operator==(const BottleTest&) const = default;
};

struct Spring {
    MaybeQuantity flow_lPerS;
    MaybeQuantity temperature;  ///< [degC]
    MaybeQuantity oxygen;       ///< [g/m^3]
    MaybeQuantity salinity;
    bool operator==(const Spring&) const = default;
};

/// Water that runs in for a while, such as after a storm.
struct Inflow {
    std::optional<LocalTime> from, until;
    MaybeQuantity flow_lPerS;
    MaybeQuantity temperature;  ///< [degC]; absent: of the air
    MaybeQuantity oxygen;       ///< [g/m^3]; absent: saturated
    MaybeQuantity salinity;
    MaybeQuantity organic;  ///< Labile organic matter as the oxygen that it takes [g/m^3]
    bool operator==(const Inflow&) const = default;
};

struct FishStock {
    std::string kind;
    MaybeQuantity stock_kgPerHa;
    MaybeQuantity meanMass_g;
    bool operator==(const FishStock&) const = default;
};

struct Profile {
    std::optional<LocalTime> at;
    std::vector<double> depth;        ///< [m], rising
    std::vector<double> temperature;  ///< [degC], same size
    std::vector<double> oxygen;       ///< [g/m^3], same size
    std::vector<double> salinity;     ///< Same size, or empty for fresh water.
    bool operator==(const Profile&) const = default;
};

struct WeatherDay {
    Date date{};
    MaybeQuantity airMin;            ///< [degC]
    MaybeQuantity airMax;            ///< [degC]
    MaybeQuantity humidity_percent;  ///< This or the dew point.
    MaybeQuantity dewPoint;          ///< [degC]
    MaybeQuantity wind;              ///< [m/s]
    MaybeQuantity cloud_percent;
    MaybeQuantity rain_mm;             ///< Of the whole day; absent means none.
    MaybeQuantity snow_mm;             ///< As water.
    std::optional<LocalTime> knownAt;  ///< When this row was known; a later one of the same date replaces it.
    bool forecast = false;             ///< Not measured: members scatter about it under observed weather too.
    bool operator==(const WeatherDay&) const = default;
};

enum class HourStamp { Start, End };
enum class LightColumn { Shortwave, Par, Cloud };

/// One hour of an hourly weather file; exactly one of the three light numbers is there.
struct WeatherHour {
    LocalTime start{};  ///< Start of the hour, whatever the file's stamp means.
    double air = 0.0;   ///< [degC]
    std::optional<double> humidity_percent;
    std::optional<double> dewPoint;   ///< [degC]
    double wind = 0.0;                ///< [m/s] at the file's height
    std::optional<double> shortwave;  ///< [W/m^2]
    std::optional<double> par_umolPerM2S;
    std::optional<double> cloud_percent;
    std::optional<double> rain_mm, snow_mm;  ///< Snow as water; absent means none.
    bool operator==(const WeatherHour&) const = default;
};

struct Weather {
    std::vector<WeatherDay> days;
    std::string file;  ///< Hourly CSV relative to the pond file; empty if days are given.
    std::optional<HourStamp> stamp;
    MaybeQuantity windHeight;  ///< [m]; absent means 10 m.
    bool observed = false;
    std::vector<Date> holdDays;      ///< Key hold_days: instead of the rules' (engine/ramps/hold_rules.h).
    std::vector<WeatherHour> hours;  ///< Read from `file`; not part of the pond file's text.
    bool operator==(const Weather&) const = default;
};

/// A usual day of one month.
struct ClimateMonth {
    MaybeQuantity month;             ///< 1 to 12
    MaybeQuantity airMin, airMax;    ///< [degC]
    MaybeQuantity humidity_percent;  ///< This or the dew point.
    MaybeQuantity dewPoint;          ///< [degC]
    MaybeQuantity wind;              ///< [m/s]
    MaybeQuantity cloud_percent;
    bool operator==(const ClimateMonth&) const = default;
};

struct Climate {
    std::string file;                  ///< Hours of a typical year, relative to the pond file; may be empty.
    std::vector<ClimateMonth> months;  ///< A month that is here goes before that of the file.
    std::vector<ClimateMonth> fileMonths;  ///< Twelve, read from `file`; not part of the pond file's text.
    bool operator==(const Climate&) const = default;
};

struct Aerator {
    MaybeQuantity freeAir_lPerMin;  ///< Per open diffuser, free air at 20 degC and 1 atm.
    MaybeQuantity diffusers;        ///< Whole number, 1 to 100.
    MaybeQuantity depth;            ///< [m]
    MaybeQuantity bubble_mm;        ///< Bubble diameter.
    MaybeQuantity power_kW;
    MaybeQuantity nonRecirculatedShare;  ///< 0 to 1
    bool operator==(const Aerator&) const = default;
};

struct SurfaceAerator {
    MaybeQuantity transfer_kgPerH;  ///< Key standard_transfer_kg_per_h: clean water, 20 degC, no oxygen.
    MaybeQuantity power_kW;
    std::optional<ClockTime> startTime;  ///< "20:00"
    std::optional<ClockTime> endTime;    ///< "08:00"; equal to the start, or both absent: always on.
    bool existing = true;                ///< Belongs to do-nothing too.
    bool operator==(const SurfaceAerator&) const = default;
};

struct Limits {
    std::optional<SpeciesGroup> speciesGroup;
    MaybeQuantity stress;  ///< [g/m^3]
    MaybeQuantity lethal;  ///< [g/m^3]
    MaybeQuantity fishWater_percent;
    MaybeQuantity fishMax;  ///< [degC]
    bool operator==(const Limits&) const = default;
};

struct ClockWindow {
    ClockTime from;
    ClockTime to;  ///< Earlier than `from`: past midnight.
    bool operator==(const ClockWindow&) const = default;
};

/// One value for all days, or one value a day whose last is kept. Remembers which it was.
struct ByDay {
    std::vector<double> values;
    bool isList = false;
    bool operator==(const ByDay&) const = default;
};

struct Ramp {
    std::string name;
    RampKind kind = RampKind::Continuous;
    MaybeQuantity first_min;             ///< doubling, linear
    MaybeQuantity factor;                ///< doubling; absent means 2
    MaybeQuantity add_minPerDay;         ///< linear
    MaybeQuantity dose_percent;          ///< capped; net share of the bottom water a day
    bool hold = false;                   ///< capped: the cap is never lifted
    bool weatherHold = false;            ///< skip the days on which the weather rule says hold
    std::vector<double> minutes;         ///< table; the last value is kept
    std::optional<ClockTime> startTime;  ///< absent means 10:00
    std::optional<ClockWindow> window;
    std::optional<ByDay> pulses;
    std::optional<ByDay> diffusers;
    std::optional<ByDay> depth;   ///< [m]
    MaybeQuantity surfaceAir_kW;  ///< Key surface_air_kw: surface air at night while the ramp runs.
    std::optional<ClockWindow> surfaceAirWindow;  ///< absent means 22:00 to 08:00
    MaybeQuantity colour;  ///< Of its line, 1 to 12 in the charts' order; absent: by its place.
    bool operator==(const Ramp&) const = default;
};

/// How the fish behave at a reading.
enum class FishBehaviour { Normal, OffFeed, Piping };

struct Reading {
    std::optional<LocalTime> at;
    MaybeQuantity depth;         ///< [m]
    MaybeQuantity temperature;   ///< [degC]
    MaybeQuantity oxygen;        ///< [g/m^3]
    MaybeQuantity secchi;        ///< [m]
    std::optional<Smell> smell;  ///< In the boil or over the water.
    std::optional<FishBehaviour> fish;
    std::string meter;                  ///< Which meter or logger, where there are several.
    std::string photo;                  ///< A file or a number, as the log keeper has it.
    std::optional<LocalTime> corrects;  ///< Stands for the reading of this time at this depth and meter.
    std::string note;
    int line = 0;  ///< In the readings file; not part of the text.
    bool operator==(const Reading&) const = default;
};

struct Event {
    std::optional<LocalTime> at;
    std::string kind;                ///< A word of engine/pond/pond_words.h's list, or the author's own.
    std::optional<LocalTime> until;  ///< End of a run or a power cut.
    MaybeQuantity minutes;           ///< Of a run, instead of its end.
    MaybeQuantity diffusers;         ///< Open in a run; absent means all.
    MaybeQuantity depth;             ///< Of the diffusers in a run [m]
    std::string ramp;                ///< Of kind started: the ramp that is run from here on.
    std::string what;                ///< Of a treatment: copper, herbicide, dye ...
    MaybeQuantity area_percent;      ///< Of a treatment: share of the pond's area.
    MaybeQuantity amount_kg;         ///< Of feed or of a treatment.
    MaybeQuantity rain_mm;
    MaybeQuantity cost;                 ///< In the owner's money.
    std::optional<LocalTime> corrects;  ///< Stands for the event of this kind and time.
    std::string photo;
    std::string note;
    bool operator==(const Event&) const = default;
};

/// Order of day and month in a logger's file.
enum class DateOrder { DayFirst, MonthFirst };

/// Beside the name of the readings file, what it may leave out.
struct ReadingsFile {
    std::string name;     ///< CSV relative to the pond file; empty if none.
    MaybeQuantity depth;  ///< Of the logger where the file has no column for it [m]
    std::optional<DateOrder> dateOrder;
    bool operator==(const ReadingsFile&) const = default;
};

/// Limits of the dawn rules that the file sets itself (engine/plan/dawn_rules.h).
struct DawnRules {
    MaybeQuantity go, hold, back;                        ///< [g/m^3]
    MaybeQuantity fallHold, fallBack;                    ///< [g/m^3]
    MaybeQuantity doseHigh_percent, doseMiddle_percent;  ///< Of the bottom water a day
    MaybeQuantity morningRise;                           ///< [g/m^3]
    bool operator==(const DawnRules&) const = default;
};

/// What the owner knows of the years before.
struct History {
    MaybeQuantity yearsWithoutKill;
    std::vector<Date> kills;  ///< Days on which dead fish were seen.
    bool operator==(const History&) const = default;
};

/// When a start may be advised; what the file sets stands before common practice
/// (engine/advice/constants_advice.h).
struct StartRules {
    MaybeQuantity lethal_percent;       ///< Of ponds like this one below the lethal line with the ramp.
    MaybeQuantity lethalAlone_percent;  ///< The same left alone.
    MaybeQuantity lethalAdded_percent;  ///< With the ramp minus left alone.
    MaybeQuantity daysAfterAlgaecide;
    bool operator==(const StartRules&) const = default;
};

/// For whom the papers are; nothing of it enters a run.
struct Client {
    std::string name;
    std::string phone;  ///< Of whoever reads at dawn
    bool operator==(const Client&) const = default;
};

/// The document: one pond, its readings and its ramps, in the units of the pond file.
struct Pond {
    std::string title;
    std::string chosenRamp;           ///< Empty if none.
    std::optional<UnitSystem> units;  ///< Absent: by the user's locale.
    std::optional<Client> client;
    Place place;
    BasinShape basin;
    Bottom bottom;
    Water water;
    std::optional<BottleTest> bottleTest;
    std::optional<Spring> spring;
    std::vector<Inflow> inflows;
    std::vector<FishStock> fish;
    MaybeQuantity feed_kgPerDay;
    std::optional<Profile> profile;
    Weather weather;
    Climate climate;
    std::optional<Aerator> aerator;
    std::optional<SurfaceAerator> surfaceAerator;
    Limits limits;
    std::optional<DawnRules> dawnRules;
    History history;
    std::optional<StartRules> startRules;
    std::vector<Ramp> ramps;
    std::vector<Reading> readings;  ///< Of the pond file itself.
    ReadingsFile readingsFile;
    std::vector<Reading> fileReadings;  ///< Read from `readingsFile`; not part of the text.
    std::vector<Event> events;
    bool operator==(const Pond&) const = default;
};

}  // namespace engine
