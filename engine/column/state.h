#pragma once

#include "engine/base/lane.h"

#include <array>
#include <string_view>
#include <vector>

namespace engine {

/// What the water carries, in the order in which it is stored.
enum Solute { kOxygen, kChlorophyll, kFast, kMedium, kSlow, kSalt, kLabile, kSulfide, kSolutes };
inline constexpr int kAlwaysCarried = 7;  ///< The solutes before this are there in every pond

/// C numbers a layer, layer 0 at the surface.
template <class Real, int C>
using Fields = std::vector<std::array<Real, C>>;

/// The water of one member: oxygen and debts [g/m^3], chlorophyll [ug/L], salinity [-], labile organic matter
/// with the living algae in it as the oxygen that it takes [g/m^3], total sulfide as sulfur [g/m^3], the
/// labile matter on the sediment, and the muck that a diffuser can still stir up.
template <class Real>
struct State {
    Fields<Real, 1> heat;            ///< Temperature [degC], size N
    Fields<Real, kSolutes> solutes;  ///< Size N
    std::vector<Real> mud;           ///< Labile matter on the sediment of each layer [g O2/m^2], size N
    std::vector<Real> muck;          ///< Mobile store of each diffuser [g O2]

    [[nodiscard]] const Real& temperature(int i) const { return heat[i][0]; }
    [[nodiscard]] int layers() const { return static_cast<int>(heat.size()); }
};

/// The named entries of the oxygen ledger, in the order of budget.csv.
enum Term {
    kPhotosynthesis,
    kRespiration,
    kFishTerm,
    kSediment,
    kDebtTerm,
    kSurface,
    kBubbles,
    kSurfaceAerator,
    kInflow,
    kBubblingOut,
    kTerms
};

inline constexpr std::array<std::string_view, kTerms> kTermNames{
    "photosynthesis", "respiration",     "fish",   "sediment",    "debt", "surface",
    "bubbles",        "surface_aerator", "inflow", "bubbling_out"};

/// The named entries of the ledger of labile organic matter, in the order of organic.csv.
enum OrganicTerm {
    kMade,      ///< Grown, less what growth itself breathes and what weeds keep
    kLoaded,    ///< Leaves, feed and inflow, and weeds that die by the dated table
    kRespired,  ///< Of the water
    kSettled,   ///< From the water onto the sediment: within the store
    kLost,      ///< Out of the pond
    kBurnt,     ///< By the sediment
    kOrganicTerms
};

/// Signs with which they change what water and sediment hold.
inline constexpr std::array<double, kOrganicTerms> kOrganicSigns{1.0, 1.0, -1.0, 0.0, -1.0, -1.0};

/// Whether a ledger is kept in full. Members have none: of theirs only the weeds' sums are there, which the
/// balance reads.
template <class Real>
inline constexpr bool kKeepsBooks = !kIsSingle<Real>;

/// What came and went since it was last cleared, whole pond, summed as the steps took it.
template <class Real>
struct Ledger {
    std::array<Real, kTerms> oxygen{};          ///< Positive adds oxygen [g]
    Real debtRegenerated = 0.0;                 ///< Fast plus medium debt from the sediment [g O2]
    Real debtStirred = 0.0;                     ///< Fast plus medium debt from stirred muck [g O2]
    Real debtOxidised = 0.0;                    ///< Fast plus medium debt paid [g O2]
    Real debtInflow = 0.0;                      ///< Fast plus medium debt lost over the brim, negative [g O2]
    std::array<Real, kOrganicTerms> organic{};  ///< All positive [g O2]
    Real weedsMade = 0.0, weedsRespired = 0.0;  ///< Oxygen that weeds gave and took [g]
    Real liftedVolume = 0.0;                    ///< Water carried up through z_b, net [m^3]
};

}  // namespace engine
