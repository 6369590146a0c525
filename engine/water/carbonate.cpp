#include "engine/water/carbonate.h"

#include "engine/base/units.h"

#include <algorithm>
#include <cmath>

namespace engine {
namespace {

constexpr double kLeastPh = 4.0, kMostPh = 11.0;

/// Ion product of water as pK.
double ionProduct(double temperature) {
    const double kelvin = toKelvin(temperature);
    return 4470.99 / kelvin + 0.017060 * kelvin - 6.0875;
}

/// Charge that a unit of inorganic carbon brings, and what the ions of water bring [mol/m^3].
struct Charges {
    double ofCarbon = 0.0, ofWater = 0.0;
};

Charges chargesAt(double ph, double temperature) {
    constexpr double kLitresPerCubicMetre = 1000.0;
    const double h = std::pow(10.0, -ph), first = std::pow(10.0, -carbonicFirst(temperature)),
                 second = std::pow(10.0, -carbonicSecond(temperature));
    const double all = h * h + first * h + first * second;
    return {(first * h + 2.0 * first * second) / all,
            kLitresPerCubicMetre * (std::pow(10.0, -ionProduct(temperature)) / h - h)};
}

}  // namespace

double carbonicFirst(double temperature) {
    const double kelvin = toKelvin(temperature);
    return 356.3094 + 0.06091964 * kelvin - 21834.37 / kelvin - 126.8339 * std::log10(kelvin) +
           1684915.0 / (kelvin * kelvin);
}

double carbonicSecond(double temperature) {
    const double kelvin = toKelvin(temperature);
    return 107.8871 + 0.03252849 * kelvin - 5151.79 / kelvin - 38.92561 * std::log10(kelvin) +
           563713.9 / (kelvin * kelvin);
}

double inorganicCarbon(double alkalinity, double ph, double temperature) {
    const Charges charges = chargesAt(ph, temperature);
    return std::max((alkalinity - charges.ofWater) / charges.ofCarbon, 0.0);
}

double phOf(double alkalinity, double carbon, double temperature) {
    double low = kLeastPh, high = kMostPh;
    for (int turn = 0; turn < 24; ++turn) {
        const double middle = 0.5 * (low + high);
        const Charges charges = chargesAt(middle, temperature);
        // More alkaline than that pH has it: the pH is higher.
        (carbon * charges.ofCarbon + charges.ofWater < alkalinity ? low : high) = middle;
    }
    return 0.5 * (low + high);
}

double phWith(const KnownPh& known, double oxygen, double temperature) {
    constexpr double kLeastCarbon = 0.3;  // of the alkalinity, below which plants find none that they can use
    const double carbon = inorganicCarbon(known.alkalinity, known.ph, known.temperature) +
                          (known.oxygen - oxygen) / kOxygenMolarMass;
    return phOf(known.alkalinity, std::max(carbon, kLeastCarbon * known.alkalinity), temperature);
}

}  // namespace engine
