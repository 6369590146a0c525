#include "engine/intake/sky_words.h"

#include <array>
#include <utility>

namespace engine {
namespace {

using Meaning = std::pair<std::string_view, double>;

// The longer words first, since the shorter stand in them.
constexpr std::array kSky{
    Meaning{"mostly sunny", 25.0},  Meaning{"partly sunny", 55.0},
    Meaning{"mostly clear", 20.0},  Meaning{"mostly cloudy", 80.0},
    Meaning{"partly cloudy", 45.0}, Meaning{"party cloudy", 45.0},
    Meaning{"few clouds", 20.0},    Meaning{"scattered clouds", 40.0},
    Meaning{"broken clouds", 70.0}, Meaning{"isolated", 50.0},
    Meaning{"scattered", 60.0},     Meaning{"chance", 60.0},
    Meaning{"overcast", 95.0},      Meaning{"thunder", 75.0},
    Meaning{"storm", 75.0},         Meaning{"shower", 75.0},
    Meaning{"rain", 90.0},          Meaning{"drizzle", 90.0},
    Meaning{"snow", 95.0},          Meaning{"fog", 70.0},
    Meaning{"cloudy", 85.0},        Meaning{"dull", 90.0},
    Meaning{"grey", 90.0},          Meaning{"gray", 90.0},
    Meaning{"mixed", 45.0},         Meaning{"haz", 30.0},
    Meaning{"sun", 10.0},           Meaning{"clear", 10.0},
    Meaning{"fair", 15.0},          Meaning{"fine", 15.0},
    Meaning{"cloud", 70.0},
};
constexpr std::array kWind{
    Meaning{"very windy", 7.0},   Meaning{"windy", 4.5},      Meaning{"breezy", 4.5},   Meaning{"gale", 10.0},
    Meaning{"light breeze", 2.0}, Meaning{"light wind", 2.0}, Meaning{"gentle", 2.5},   Meaning{"calm", 0.8},
    Meaning{"still", 0.8},        Meaning{"light", 2.0},      Meaning{"moderate", 4.0},
};

template <std::size_t N>
std::optional<double> meaningOf(const std::array<Meaning, N>& meanings, std::string_view words) {
    for (const auto& [word, value] : meanings) {
        if (words.find(word) != std::string_view::npos) {
            return value;
        }
    }
    return std::nullopt;
}

}  // namespace

std::optional<double> cloudOfWords(std::string_view words) {
    return meaningOf(kSky, words);
}

std::optional<double> windOfWords(std::string_view words) {
    return meaningOf(kWind, words);
}

}  // namespace engine
