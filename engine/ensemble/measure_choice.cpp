#include "engine/ensemble/measure_choice.h"

#include <algorithm>

namespace engine {

std::vector<MeasuredInput> tellingInputs(const MeasureResult& result, std::size_t most) {
    std::vector<MeasuredInput> inputs;
    std::copy_if(result.inputs.begin(), result.inputs.end(), std::back_inserter(inputs),
                 [](const MeasuredInput& input) { return input.share >= kLeastShare; });
    inputs.resize(std::min(inputs.size(), most));
    return inputs;
}

double gainOf(const MeasuredInput& input) {
    return input.way != nullptr ? 1.0 - input.left : 0.0;
}

const MeasuredInput* bestReading(const MeasureResult& result) {
    const auto best = std::max_element(
        result.inputs.begin(), result.inputs.end(),
        [](const MeasuredInput& a, const MeasuredInput& b) { return gainOf(a) < gainOf(b); });
    return best != result.inputs.end() && gainOf(*best) >= kLeastGain ? &*best : nullptr;
}

}  // namespace engine
