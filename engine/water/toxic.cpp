#include "engine/water/toxic.h"

#include <algorithm>
#include <cmath>

namespace engine {

double unionisedAmmoniaShare(double temperature, double ph) {
    const double pKa = 0.09018 + 2729.92 / toKelvin(temperature);
    return 1.0 / (1.0 + std::pow(10.0, pKa - ph));
}

double sulfideDissociation(double temperature) {
    const double kelvin = toKelvin(temperature);
    return -98.080 + 5765.4 / kelvin + 15.0455 * std::log(kelvin);
}

double undissociatedSulfideShare(double temperature, double ph) {
    return 1.0 / (1.0 + std::pow(10.0, ph - sulfideDissociation(temperature)));
}

double sulfideOxidation(double temperature, double ph, double ionicStrength) {
    const double log10PerHour = 10.50 + 0.16 * std::clamp(ph, 4.0, 8.0) - 3000.0 / toKelvin(temperature) +
                                0.44 * std::sqrt(ionicStrength < 0.0 ? 0.0 : ionicStrength);
    return fromPerHour(std::pow(10.0, log10PerHour));
}

double ironOxidation(double hydroxide_molPerL, double oxygenPressure_atm) {
    return 2.91e-9 + 1.33e12 * hydroxide_molPerL * hydroxide_molPerL * oxygenPressure_atm;
}

}  // namespace engine
