#pragma once

#include "engine/base/units.h"
#include "engine/pond/pond.h"
#include "engine/water/basin.h"
#include "engine/water/carbonate.h"
#include "engine/water/fish_respiration.h"
#include "engine/water/priors.h"

#include <vector>

namespace engine {

/// Stress and lethal thresholds and what counts as fish water.
struct OxygenThresholds {
    SpeciesGroup group = SpeciesGroup::Sport;
    double stress = 4.0;          ///< [g/m^3]
    double lethal = 2.0;          ///< [g/m^3]
    double fishShare = 0.2;       ///< Best-oxygenated share of the volume
    double fishMax = 1e9;         ///< Water above this temperature is no fish water [degC]
    bool warmWaterRaise = false;  ///< The stress line was raised for warm water
    bool altitudeCut = false;     ///< A line was cut to 80 % of saturation
};

// Numbers of one member by process, in house units; rates per second at 20 degC.

/// Where the pond lies; the same for all members.
struct SiteParameters {
    double airPressure = kStandardPressure;  ///< [Pa]
    double latitude_deg = 0.0;
};

/// How light enters the water and fades in it.
template <class Real>
struct LightParameters {
    Real attenuationRest = 0.2;  ///< Of all but chlorophyll and weeds [1/m]
    Real albedo = kAlbedo.value;
};

/// Photosynthesis of algae; theta and the factor hold for weeds too.
template <class Real>
struct GrowthParameters {
    Real rate = 0.0;               ///< Greatest at 20 degC [g O2/m^3/s per ug/L of chlorophyll]
    Real saturationLight = 200.0;  ///< [umol/m^2/s]
    Real theta = kPhotosynthesisTheta.value;
    Real factor = 1.0;  ///< From the balance
};

/// Weeds, over the pond's area.
template <class Real>
struct WeedParameters {
    Real mass = 0.0;                           ///< Dry [g/m^2]
    Real cover = 0.0;                          ///< Share of the area on which all of it stands, 0 to 1
    Real photosynthesis = 0.0;                 ///< [g O2/g/s]
    Real respiration = 0.0;                    ///< [g O2/g/s]
    Real shading = kWeedShading_m2PerG.value;  ///< [m^2/g]
};

/// Respiration of the water and its algae; theta and the factor hold for weeds too.
template <class Real>
struct RespirationParameters {
    Real base = 0.0;            ///< In the dark at the start [g/m^3/s]; what labile matter there is, follows
    Real perChlorophyll = 0.0;  ///< [g/m^3/s per ug/L]
    Real theta = kRespirationTheta.value;
    Real factor = 1.0;  ///< From the balance
};

/// Labile organic matter as the oxygen that it takes, in the water, with the living algae in it, and on the
/// sediment.
template <class Real>
struct OrganicParameters {
    Real breathedAtOnce = kBreathedAtOnce.value;  ///< Of what algae make
    Real maintenance = fromPerDay(kMaintenance_perDay.value);
    Real decay = fromPerDay(kLabileRate_perDay.value);
    Real settling = fromPerDay(kSettling_mPerDay.value);  ///< [m/s]
    Real mudDecay = fromPerDay(kMudRate_perDay.value);
    Real below = kLabileBelow.value;                  ///< At the start, below over above z_b
    Real ofChlorophyll = kOxygenOfChlorophyll.value;  ///< Living [g O2/m^3 per ug/L]
    Real ofWeeds = kDebtOfWeeds.value;                ///< That die [g O2/g]
    Real benthic = 0.0;                               ///< Made on the bed in ample light [g O2/m^2/s]
    Real feedWaste = 0.0, feedNitrogen = 0.0;         ///< Oxygen that feed takes beside the fish [g/s]
    // By which the books of the usual day close (engine/run/organic_books.h)
    Real load = 0.0;                    ///< Above z_b [g/m^3/s], with what feed leaves
    Real loss = 0.0;                    ///< Out of the pond [1/s]
    Real weedsGive = kWeedsGive.value;  ///< Of what weeds make, the part that they do not keep
};

/// The fish as so many reference fish that respire as much.
template <class Real>
struct FishParameters {
    double mass_g =
        kReferenceFish_g
            .value;    ///< Of a reference fish, whose temperature curve is used; one for all members
    Real stock = 0.0;  ///< [kg]
};

/// The sediment at rest.
template <class Real>
struct SedimentParameters {
    Real demand = 0.0;  ///< [g/m^2/s]
    Real theta = kSedimentTheta.value;
    Real regenerationShare = kRegenerationShare.value;  ///< Of unmet demand, comes out as debt
};

/// What a running diffuser stirs up.
template <class Real>
struct MuckParameters {
    Real stirredArea = kStirredArea.value;            ///< Per diffuser [m^2]
    Real stirredDemand = kStirredDemandFactor.value;  ///< Demand under a running diffuser over that at rest
    Real fastShare = kMuckFastShare.value;
    Real store = 0.0;               ///< Mobile, per diffuser [g O2]
    Real reach = kMuckReach.value;  ///< Height over the deepest muck up to which a diffuser stirs in full [m]
};

/// Oxygen debt of the water.
template <class Real>
struct DebtParameters {
    Real fastRate = fromPerDay(kFastRate_perDay.value);
    Real mediumRate = fromPerDay(kMediumRate_perDay.value);
    Real slowRate = fromPerDay(kSlowRate_perDay.value);
    Real fastShare = kFastShare.value;
    Real theta = kDebtTheta.value;
    Real slowTheta = kSlowTheta.value;
};

/// Oxygen through the surface, and by the surface aerator.
template <class Real>
struct SurfaceParameters {
    Real exchangeFactor = 1.0;   ///< Piston velocity over the model's
    Real windFactor = 1.0;       ///< On the pond, from the balance
    Real aeratorTransfer = 0.0;  ///< Clean water, 20 degC, no oxygen [g/s]
};

/// A spring, with an equal overflow at the surface.
template <class Real>
struct SpringParameters {
    Real flow = 0.0;  ///< [m^3/s]
    Real temperature = 0.0, oxygen = 0.0, salinity = 0.0;
};

/// Ammonia and hydrogen sulfide.
template <class Real>
struct ToxicantParameters {
    KnownPh known;             ///< The water whose pH was read; the same for all members
    Real sulfideOfFast = 0.0;  ///< In new fast debt [g S per g O2], as in the bottom water at the start
    Real ammoniaOfSlow = 0.0;  ///< In slow debt [g N per g O2], likewise
};

/// The diffusers' air and what it lifts.
template <class Real>
struct BubbleParameters {
    Real nonRecirculatedShare = kNonRecirculatedShare.value;
    Real freeAirFactor = 1.0;   ///< Over the aerator's free air
    Real diameterFactor = 1.0;  ///< Over its bubble diameter
};

/// How wind and slow motion mix the water.
template <class Real>
struct MixingParameters {
    Real friction = kWindFriction.value;                  ///< Friction velocity over the wind [-]
    Real background = kBackgroundDiffusion_m2PerS.value;  ///< Diffusivity at N^2 of 1 /s^2 [m^2/s]
};

/// Everything a run needs of one member.
template <class Real>
struct Parameters {
    SiteParameters site;
    LightParameters<Real> light;
    GrowthParameters<Real> growth;
    WeedParameters<Real> weeds;
    RespirationParameters<Real> respiration;
    OrganicParameters<Real> organic;
    FishParameters<Real> fish;
    SedimentParameters<Real> sediment;
    MuckParameters<Real> muck;
    DebtParameters<Real> debt;
    SurfaceParameters<Real> surface;
    SpringParameters<Real> spring;
    ToxicantParameters<Real> toxicants;
    BubbleParameters<Real> bubbles;
    MixingParameters<Real> mixing;
    OxygenThresholds thresholds;
};

/// The state that a run starts from, per layer, size N.
template <class Real>
struct StartState {
    std::vector<Real> temperature, salinity, oxygen, chlorophyll, fast, medium, slow;
    std::vector<Real> sulfide;  ///< May be empty: none
};

/// Where bottom water begins, z_b, and why: where density is midway between surface and bottom, or where
/// oxygen falls to kThinOxygen, whichever is higher up.
struct BottomWater {
    enum class Cause { None, Density, Oxygen };
    Cause cause = Cause::None;
    double depth = 0.0;   ///< z_b [m]; meaningless with Cause::None
    double volume = 0.0;  ///< V_b [m^3]; 0 with Cause::None
    bool isOxic = false;  ///< All of it read kThinOxygen or more: no debt follows from its days or age
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
[[nodiscard]] double startDebt(const Pond& pond, const Profile& profile, const BottomWater& bottom,
                               const Basin& basin);

}  // namespace engine
