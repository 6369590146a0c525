#include "engine/water/toxic.h"

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

}  // namespace engine
