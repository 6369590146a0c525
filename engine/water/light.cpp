#include "engine/water/light.h"

#include "engine/base/error.h"

namespace engine {

double attenuationFromSecchi(double secchi) {
    requireRange("Secchi depth", secchi, 0.01, 100.0, "m");
    return kSecchiAttenuation.value / secchi;
}

}  // namespace engine
