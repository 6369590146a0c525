#include "engine/water/light.h"

#include "engine/base/error.h"

namespace engine {

double attenuationFromSecchi(double secchi) {
    requireRange("Secchi depth", secchi, 0.01, 100.0, "m");
    return 1.7 / secchi;
}

}  // namespace engine
