#pragma once

namespace engine {

// House units, without suffix anywhere in the engine: m, m^2, m^3, s, kg, degC, Pa, W, J, and
// g/m^3 (the same number as mg/L) for concentrations. Everything else is converted with these.

inline constexpr double kMinute = 60.0;                ///< [s]
inline constexpr double kHour = 3600.0;                ///< [s]
inline constexpr double kDay = 86400.0;                ///< [s]
inline constexpr double kKelvinOffset = 273.15;        ///< degC -> K
inline constexpr double kGravity = 9.80665;            ///< [m/s^2], standard gravity
inline constexpr double kStandardPressure = 101325.0;  ///< [Pa]
inline constexpr double kGasConstant = 8.314462618;    ///< [J/mol/K], CODATA 2018
inline constexpr double kPi = 3.14159265358979323846;
inline constexpr double kMetrePerFoot = 0.3048;  ///< International, exact
inline constexpr double kMetrePerMile = 5280.0 * kMetrePerFoot;
inline constexpr double kKilogramPerPound = 0.45359237;  ///< Avoirdupois, exact
inline constexpr double kSquareMetrePerAcre = 43560.0 * kMetrePerFoot * kMetrePerFoot;
inline constexpr double kSquareMetrePerHectare = 1e4;
inline constexpr double kGramPerKilogram = 1000.0;
inline constexpr double kMilligramPerGram = 1000.0;  ///< also litre per cubic metre
inline constexpr double kOxygenMolarMass = 31.998;   ///< [g/mol]

[[nodiscard]] constexpr double fromPerDay(double rate) {
    return rate / kDay;
}
[[nodiscard]] constexpr double fromPerHour(double rate) {
    return rate / kHour;
}
[[nodiscard]] constexpr double fromLitrePerMinute(double flow) {
    return flow / (1000.0 * kMinute);
}
[[nodiscard]] constexpr double toKelvin(double celsius) {
    return celsius + kKelvinOffset;
}

}  // namespace engine
