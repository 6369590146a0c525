#include "engine/run/run_bounds.h"

#include "engine/base/text.h"

#include <algorithm>

namespace engine {
namespace {

std::string counted(double count, const char* one, const char* many) {
    return fixed(count, 0) + ' ' + (count == 1.0 ? one : many);
}

}  // namespace

std::optional<std::string> sizeFault(const RunSize& size) {
    const Resolution usual;
    const auto runs = static_cast<double>(size.runs);
    const double kept = runs * size.days * size.resolution.layers;
    const double work = kept * size.members * std::max(usual.largestStep / size.resolution.largestStep, 1.0);
    const std::string asked = counted(runs, "run", "runs") + " of " + counted(size.days, "day", "days") +
                              " in " + counted(size.resolution.layers, "layer", "layers");
    if (kept > kMostLayerDays) {
        return asked + " come to " + fixed(kept, 0) + " layer-days, but at most " + fixed(kMostLayerDays, 0) +
               " fit into memory. Ask for fewer days, layers or ramps.";
    }
    if (work > kMostMemberLayerDays) {
        return asked + " for " + counted(size.members, "member", "members") + " in steps of " +
               shortest(size.resolution.largestStep) + " s would take " +
               figures(work / kMostMemberLayerDays) +
               " times as long as the longest computation that is begun, which takes a night. Ask for fewer "
               "members, days, layers or ramps, or for longer steps.";
    }
    return std::nullopt;
}

}  // namespace engine
