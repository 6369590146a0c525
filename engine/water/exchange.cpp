#include "engine/water/exchange.h"

#include "engine/base/error.h"

namespace engine {

double windAt(double wind, double from, double to) {
    requireRange("wind", wind, 0.0, 150.0, "m/s");
    requireRange("height of the wind", from, 0.5, 100.0, "m");
    requireRange("height to convert the wind to", to, 0.5, 100.0, "m");
    const double slope = std::sqrt(kWindDrag.value) / kKarman.value;
    return wind * (1.0 + slope * std::log(kWindHeight.value / from)) /
           (1.0 + slope * std::log(kWindHeight.value / to));
}

double windAtTen(double wind, double height) {
    return windAt(wind, height, kWindHeight.value);
}

}  // namespace engine
