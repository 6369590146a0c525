#include "engine/transport.h"

namespace engine {

template <>
template <>
DAWNLINE_CLONES std::array<double, 1> Transport<double>::advance<1, 1>(const Flows<double>& flows,
                                                                       const std::array<double, 1>& entering,
                                                                       Fields<double, 1>& fields) {
    return advanceOf<1, 1>(flows, entering, fields);
}
template <>
template <>
DAWNLINE_CLONES std::array<double, kSolutes> Transport<double>::advance<kAlwaysCarried, kSolutes>(
    const Flows<double>& flows, const std::array<double, kSolutes>& entering,
    Fields<double, kSolutes>& fields) {
    return advanceOf<kAlwaysCarried, kSolutes>(flows, entering, fields);
}
template <>
template <>
DAWNLINE_CLONES std::array<double, kSolutes> Transport<double>::advance<kSolutes, kSolutes>(
    const Flows<double>& flows, const std::array<double, kSolutes>& entering,
    Fields<double, kSolutes>& fields) {
    return advanceOf<kSolutes, kSolutes>(flows, entering, fields);
}

}  // namespace engine
