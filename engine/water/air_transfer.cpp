#include "engine/water/air_transfer.h"

namespace engine {
namespace {

// Weight of water [Pa/m] at 20 degC.
double waterWeight() {
    return kGravity * waterDensity(20.0, 0.0);
}

}  // namespace

double diffusedTransferShare(const DiffusedAirSite& site) {
    const double reach = site.beta * site.saturationRatio * site.pressureRatio * site.deepSaturation20;
    return site.alpha * site.fouling * temperatureFactor(kTransferTheta, site.temperature) *
           (reach - site.oxygen) / site.deepSaturation20;
}

double deepSaturation(double effectiveDepth) {
    return kStandardSaturation *
           (1.0 + waterWeight() * effectiveDepth / (kStandardPressure - vapourPressureKernel(20.0)));
}

double deepSaturationColumn(double saturation20, double effectiveDepth) {
    return saturation20 * (1.0 + effectiveDepth / 10.33);
}

double pressureRatio(double pressure, double effectiveDepth, double temperature) {
    const double added = waterWeight() * effectiveDepth - vapourPressureKernel(temperature);
    return (pressure + added) / (kStandardPressure + added);
}

}  // namespace engine
