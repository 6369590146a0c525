#pragma once

#include "engine/pond/pond_io.h"

#include <optional>
#include <string>
#include <vector>

namespace engine {

/// What an owner can tell over the telephone, in the units of the pond file.
struct FirstAnswers {
    enum class Muck { Firm, Ankle, Knee, Deeper };
    enum class Colour { Clear, Tinted, Soup };
    enum class Weeds { None, Some, Half, Most };
    enum class Stock { Few, Usual, Many };
    enum class Sky { Sunny, Mixed, Dull };
    enum class Wind { Calm, Light, Windy };

    std::string name;
    double latitude_deg = 40.0, longitude_deg = -90.0, elevation = 150.0;  ///< [m]
    Date firstDay{};
    double area = 5000.0;   ///< [m^2]
    double maxDepth = 3.0;  ///< [m]
    double age_years = 20.0;
    Muck muck = Muck::Ankle;
    Smell smell = Smell::Faint;
    Colour colour = Colour::Tinted;
    Weeds weeds = Weeds::None;
    SpeciesGroup fish = SpeciesGroup::Sport;
    Stock stock = Stock::Usual;
    double feed_kgPerDay = 0.0;
    double airMin = 18.0, airMax = 28.0;  ///< Of an ordinary day in the week to come [degC]
    Sky sky = Sky::Mixed;
    Wind wind = Wind::Light;
    std::vector<WeatherDay> forecast;       ///< Instead of the ordinary day; empty: none was given
    std::optional<double> diffusers;        ///< Absent: as usual for the area
    std::optional<double> freeAir_lPerMin;  ///< Of each; absent: as usual
    TypedNumbers typed;                     ///< As PondReading::typed
};

inline constexpr double kUsualHumidity_percent = 65.0;  ///< Judgement: a warm day inland
/// What words for the sky and the wind are taken as; common practice, no source.
[[nodiscard]] double cloudOf(FirstAnswers::Sky sky);   ///< [%]
[[nodiscard]] double windOf(FirstAnswers::Wind wind);  ///< [m/s]

/// A pond from the answers: what was told is estimated, what follows from it is guessed, each with the
/// band of the trade's table of unknown ponds (common practice, no source); what no one can tell is left out,
/// so that the model takes its own usual value. With a usual aerator and three ramps to compare.
[[nodiscard]] Pond pondFrom(const FirstAnswers& answers);

}  // namespace engine
