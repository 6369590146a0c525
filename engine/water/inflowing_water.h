#pragma once

namespace engine {

/// What runs and rains into a pond during a step; the same for all members. As much runs over at the surface.
struct InflowingWater {
    double flow = 0.0;             ///< [m^3/s]
    double temperature = 0.0;      ///< Of what runs in [degC]
    double oxygen = 0.0;           ///< [g/m^3]
    double salinity = 0.0;         ///< [-]
    double labile = 0.0;           ///< Labile organic matter as the oxygen that it takes [g/m^3]
    double rain = 0.0;             ///< Onto the surface [m/s]
    double rainTemperature = 0.0;  ///< [degC]; snow counts as so much colder as melting it takes
};

}  // namespace engine
