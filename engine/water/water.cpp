#include "engine/water/water.h"

#include "engine/base/error.h"

namespace engine {

double airPressure(double elevation) {
    requireRange("elevation", elevation, -500.0, 7000.0, "m");
    return kStandardPressure * std::pow(1.0 - 2.25577e-5 * elevation, 5.25588);
}

double oxygenSaturation(double temperature, double salinity, double pressure) {
    requireRange("water temperature", temperature, -2.0, 45.0, "degC");
    requireRange("salinity", salinity, 0.0, 42.0, "(practical salinity)");
    requireRange("air pressure", pressure, 40e3, 115e3, "Pa");
    return oxygenSaturationKernel(temperature, salinity, pressure);
}

double vapourPressure(double temperature) {
    requireRange("temperature", temperature, -60.0, 60.0, "degC");
    return vapourPressureKernel(temperature);
}

}  // namespace engine
