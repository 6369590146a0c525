#pragma once

#include "engine/base/units.h"
#include "engine/pond/pond.h"
#include "engine/water/basin.h"
#include "engine/water/fish_respiration.h"
#include "engine/water/priors.h"

#include <vector>

namespace engine {

/// Stress and lethal thresholds and what counts as fish water (design: lines by species group).
struct OxygenThresholds {
    SpeciesGroup group = SpeciesGroup::Sport;
    double stress = 4.0;          ///< [g/m^3]
    double lethal = 2.0;          ///< [g/m^3]
    double fishShare = 0.2;       ///< Best-oxygenated share of the volume
    double fishMax = 1e9;         ///< Water above this temperature is no fish water [degC]
    bool warmWaterRaise = false;  ///< The stress line was raised for warm water
    bool altitudeCut = false;     ///< A line was cut to 80 % of saturation
};

/// Everything a run needs of one member in house units; rates per second at 20 degC.
template <class Real>
struct Parameters {
    double airPressure = kStandardPressure;  ///< [Pa]
    double latitude_deg = 0.0;

    // Light and growth
    Real attenuationRest = 0.2;     ///< Of all but chlorophyll and weeds [1/m]
    Real photosynthesis = 0.0;      ///< Greatest rate at 20 degC [g O2/m^3/s per ug/L of chlorophyll]
    Real saturationLight = 200.0;   ///< [umol/m^2/s]
    Real weedMass = 0.0;            ///< Dry mass over the pond's area [g/m^2]
    Real weedPhotosynthesis = 0.0;  ///< [g O2/g/s]
    Real weedRespiration = 0.0;     ///< [g O2/g/s]
    Real photosynthesisTheta = kPhotosynthesisTheta.value;
    Real albedo = kAlbedo.value;
    Real weedShading = kWeedShading_m2PerG.value;  ///< [m^2/g]
    Real photosynthesisFactor = 1.0;               ///< From the balance
    Real respirationFactor = 1.0;                  ///< From the balance

    // Respiration
    Real respirationBase = 0.0;            ///< [g/m^3/s]
    Real respirationPerChlorophyll = 0.0;  ///< [g/m^3/s per ug/L]
    Real respirationTheta = kRespirationTheta.value;
    double fishMass_g = 100.0;  ///< Of the reference fish whose temperature curve is used
    Real fishStock = 0.0;       ///< Reference fish that respire as much as the stock [kg]

    // Sediment
    Real sedimentDemand = 0.0;  ///< [g/m^2/s]
    Real sedimentTheta = kSedimentTheta.value;
    Real regenerationShare = kRegenerationShare.value;
    Real stirredArea = kStirredArea.value;            ///< Per diffuser [m^2]
    Real stirredDemand = kStirredDemandFactor.value;  ///< Demand under a running diffuser over that at rest
    Real muckFastShare = kMuckFastShare.value;
    Real muckStore = 0.0;  ///< Mobile store per diffuser [g O2]
    Real muckReach = 0.0;  ///< A diffuser that hangs lower than this stirs [m]

    // Debt
    Real fastRate = fromPerDay(kFastRate_perDay.value);
    Real mediumRate = fromPerDay(kMediumRate_perDay.value);
    Real slowRate = fromPerDay(kSlowRate_perDay.value);
    Real fastShare = kFastShare.value;
    Real debtTheta = kDebtTheta.value;
    Real slowTheta = kSlowTheta.value;
    Real debtOfChlorophyll = kDebtOfChlorophyll.value;  ///< [g O2/m^3 per ug/L]
    Real debtOfWeeds = kDebtOfWeeds.value;              ///< [g O2/g]

    Real exchangeFactor = 1.0;  ///< Piston velocity of the surface over the model's

    // Spring, with an equal overflow at the surface
    Real springFlow = 0.0;  ///< [m^3/s]
    Real springTemperature = 0.0, springOxygen = 0.0, springSalinity = 0.0;

    // Surface aerator
    Real aeratorTransfer = 0.0;  ///< Clean water, 20 degC, no oxygen [g/s]

    // Toxicants
    double ph = 7.5;
    Real sulfideOfFast =
        0.0;  ///< Sulfide in new fast debt [g S per g O2], as in the bottom water at the start

    // Aerator
    Real nonRecirculatedShare = kNonRecirculatedShare.value;
    Real freeAirFactor = 1.0;  ///< Over the aerator's free air
    Real bubbleFactor = 1.0;   ///< Over its bubble diameter

    OxygenThresholds thresholds;
};

/// The state that a run starts from, per layer, size N.
template <class Real>
struct StartState {
    std::vector<Real> temperature, salinity, oxygen, chlorophyll, fast, medium, slow;
    std::vector<Real> sulfide, ammonia;  ///< May be empty: none
};

/// Depth z_b of the design's definition and why.
struct BottomWater {
    enum class Cause { None, Density, Oxygen };
    Cause cause = Cause::None;
    double depth = 0.0;   ///< z_b [m]; meaningless with Cause::None
    double volume = 0.0;  ///< V_b [m^3]; 0 with Cause::None
    [[nodiscard]] bool exists() const { return cause != Cause::None; }
};

/// Bottom water of a profile in a basin.
[[nodiscard]] BottomWater bottomWater(const Profile& profile, const Basin& basin);

/// The profile a run starts from: the measured one, or one from season, depth, Secchi and age where there
/// is none, 17:30 on the evening before day 1.
[[nodiscard]] Profile startProfile(const Pond& pond);

/// Thresholds of the pond by its fish, its surface water and its altitude.
[[nodiscard]] OxygenThresholds thresholdsOf(const Pond& pond, const Profile& profile);

/// Every input at its value.
[[nodiscard]] Parameters<double> centralParameters(const Pond& pond, const Profile& profile);

/// The start profile on the layers, with chlorophyll above z_b and a third of it below, and the debt below
/// z_b where there is no oxygen to oxidise it, its mean over the bottom water as stated.
[[nodiscard]] StartState<double> startState(const Pond& pond, const Profile& profile,
                                            const BottomWater& bottom, const Grid& grid);

/// Chlorophyll at the start as given, or from Secchi [ug/L].
[[nodiscard]] double startChlorophyll(const Pond& pond);

/// Fast plus medium debt of the bottom water at the start, as given or as estimateDebt() has it [g/m^3].
[[nodiscard]] double startDebt(const Pond& pond, const BottomWater& bottom, const Basin& basin);

}  // namespace engine
