#pragma once

#include <string>
#include <string_view>

namespace engine {

/// How an input is measured at a pond.
struct MeasuringWay {
    std::string_view input;  ///< Its name, or how that begins
    int cost = 0;            ///< 1: minutes, with what is in the bag; 5: days, with others and much gear
    std::string_view term;   ///< For the wording
};

/// The way to measure an input; null where none is usual. What its reading is off by stands with the input
/// (UncertainInput::meter).
[[nodiscard]] const MeasuringWay* measuringWay(std::string_view input);

/// An input in words: a key of the pond file by what it stands for, anything else by its own name.
[[nodiscard]] std::string inputWords(std::string_view input);

}  // namespace engine
