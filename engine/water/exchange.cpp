#include "engine/water/exchange.h"

#include "engine/base/error.h"

namespace engine {
namespace {

double windPart600(double wind10) {
    return 0.215 * std::pow(wind10, 1.7) * kMetrePerSecondOfCmPerHour;
}

}  // namespace

double windAt(double wind, double from, double to) {
    requireRange("wind", wind, 0.0, 150.0, "m/s");
    requireRange("height of the wind", from, 0.5, 100.0, "m");
    requireRange("height to convert the wind to", to, 0.5, 100.0, "m");
    const double slope = std::sqrt(1.3e-3) / 0.4;
    return wind * (1.0 + slope * std::log(10.0 / from)) / (1.0 + slope * std::log(10.0 / to));
}

double windAtTen(double wind, double height) {
    return windAt(wind, height, 10.0);
}

double pistonVelocityColeCaraco(double wind10) {
    return 2.07 * kMetrePerSecondOfCmPerHour + windPart600(wind10);
}

}  // namespace engine
