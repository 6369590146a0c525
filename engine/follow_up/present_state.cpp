#include "engine/follow_up/present_state.h"

#include "engine/follow_up/constants_follow_up.h"
#include "engine/water/layering.h"

#include <cmath>

namespace engine {

PresentState presentState(double topMinusBottom, double oxygenApart, double top) {
    if (top <= kIceWater.value) {
        return PresentState::Ice;
    }
    // Unlike isMixedThrough() this takes a difference of just the limit for mixed.
    const bool isSameOxygen = std::fabs(oxygenApart) <= kMixedOxygen.value;
    return hasOneTemperature(topMinusBottom) && isSameOxygen ? PresentState::Mixed
           : std::fabs(topMinusBottom) > kStratified.value   ? PresentState::Stratified
                                                             : PresentState::Between;
}

BottomAir bottomAirIn(PresentState state) {
    switch (state) {
        case PresentState::Stratified:
            return BottomAir::Off;
        case PresentState::Mixed:
            return BottomAir::KeepOn;
        case PresentState::Between:
        case PresentState::Ice:
        case PresentState::Unknown:
            break;
    }
    return BottomAir::ReadFirst;
}

std::string_view termOf(PresentState state) {
    switch (state) {
        case PresentState::Stratified:
            return "stratified";
        case PresentState::Between:
            return "between";
        case PresentState::Mixed:
            return "mixed";
        case PresentState::Ice:
            return "ice";
        case PresentState::Unknown:
            break;
    }
    return "not-read";
}

std::string_view termOf(BottomAir air) {
    switch (air) {
        case BottomAir::Off:
            return "advice-stratified";
        case BottomAir::KeepOn:
            return "advice-mixed";
        case BottomAir::ReadFirst:
            break;
    }
    return "advice-between";
}

}  // namespace engine
