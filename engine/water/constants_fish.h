#pragma once

#include "engine/pond/pond.h"
#include "engine/water/constant.h"

#include <array>
#include <string_view>

namespace engine {
// clang-format off

// Fish: what they breathe, where they are, and the lines that they set.

/// log10 of mg O2/g/h = constant + mass W + massSquare W^2 + warmth T + warmthSquare T^2 + warmthCube T^3, W
/// in g and T in degC, both held to the fit's ends.
struct FishRespirationFit {
    double constant = 0.0, mass = 0.0, massSquare = 0.0, warmth = 0.0, warmthSquare = 0.0, warmthCube = 0.0;
    double leastMass_g = 0.0, mostMass_g = 0.0, coldest = 0.0, warmest = 0.0;
    std::string_view source;
};
inline constexpr FishRespirationFit kCatfishRespiration{
    -0.999, -0.000957, 6e-7, 0.0327, -8.7e-6, 3e-7, 5.0, 800.0, 0.0, 35.0,
    "channel catfish, Boyd, Romaire and Johnston (1978), Trans. Am. Fish. Soc. 107:484-492, from memory. Within "
    "30 % of a second, independent equation, Schroeder (1975), for 50 to 700 g at 22 and 25 degC. Its square "
    "turns at 797 g, beyond which large fish would respire more"};

inline constexpr Constant kReferenceFish_g{100.0, 100.0, 100.0, "g",
    "the fish that stands for all: size and temperature separate in the fit, so that any mass would do"};
inline constexpr Constant kFishEdge{0.5, 0.2, 1.0, "g/m^3",
    "span around the stress line over which fish thin out, so that the demand is smooth; judgement"};

/// Lines of a group of species [g/m^3]; common practice, no source.
struct SpeciesLines {
    SpeciesGroup group{};
    double stress = 0.0;
    double lethal = 0.0;
    double warmSurface = 0.0;  ///< Surface water above this raises the stress line [degC]
    double fishMax = 1e9;      ///< Warmer water is no fish water [degC]
};
inline constexpr std::array<SpeciesLines, 6> kSpeciesLines{{
    {SpeciesGroup::Sport, 4.0, 2.0, 28.0},
    {SpeciesGroup::Catfish, 3.0, 1.0, 28.0},
    {SpeciesGroup::Koi, 6.0, 1.0, 28.0},
    {SpeciesGroup::Carp, 3.0, 1.0, 28.0},
    {SpeciesGroup::Trout, 6.0, 3.0, 18.0, 20.0},
    {SpeciesGroup::Percid, 4.0, 1.5, 28.0},
}};
[[nodiscard]] constexpr const SpeciesLines& speciesLines(SpeciesGroup group) {
    for (const SpeciesLines& lines : kSpeciesLines) {
        if (lines.group == group) {
            return lines;
        }
    }
    return kSpeciesLines.front();
}

inline constexpr Constant kWarmRaise{1.0, 0.5, 1.5, "g/m^3",
    "on the stress line in warm water, where fish breathe more; common practice, no source"};
inline constexpr Constant kLineOfSaturation{0.8, 0.7, 0.9, "-",
    "of saturation, above which no line stands; judgement"};
inline constexpr Constant kFishWater_percent{20.0, 10.0, 30.0, "%",
    "of the volume, in which fish find refuge; judgement"};
// clang-format on

}  // namespace engine
