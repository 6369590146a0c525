#pragma once

#include "engine/pond/pond.h"
#include "engine/water/basin.h"
#include "engine/water/parameters.h"

#include <optional>
#include <span>
#include <vector>

namespace engine {

/// Ways to the oxygen debt of bottom water where the pond file does not give it.
enum class DebtRouteKind {
    DaysStratified,  ///< What accumulates from the sediment over the days since the bottom lost its oxygen
    AgeAndSmell,     ///< The trade's table of unknown ponds
    BottleTest,      ///< Shake and hold
    Substances       ///< Sulfide, iron and methane that were measured
};

/// What one way comes to, as fast plus medium debt of the bottom water [g/m^3].
struct DebtRoute {
    DebtRouteKind kind{};
    double value = 0.0;
    double low = 0.0, high = 0.0;  ///< 5 and 95 % points
    double sigma = 0.0;            ///< 1 sigma of the logarithm
};

/// All ways put together.
struct DebtEstimate {
    double value = 0.0;            ///< [g/m^3]
    double low = 0.0, high = 0.0;  ///< 5 and 95 % points [g/m^3]
    double disagreement = 1.0;     ///< By how much the ways' scatter widened the band; 1 if not at all
    std::vector<DebtRoute> routes;
};

/// Debt that gathers over some days [g/m^3]: what the sediment gives back where there is no oxygen
/// (returnedDebt_gPerM2Day, as in a run) times the days over the mean thickness of the bottom water.
/// @param returned_gPerM2Day  [g O2/m^2/d]
/// @param thickness           Volume over upper area of the bottom water [m].
[[nodiscard]] double debtFromDays(double returned_gPerM2Day, double days, double thickness);

/// One reading of a bottle test as debt of the bottom water.
struct BottleDebt {
    double minutes = 0.0;
    bool isVoid = false;  ///< Under 1 g/m^3 nothing is left to take: the debt is at least `taken`
    double taken = 0.0;   ///< Oxygen that the bottom water has taken up to the reading [g/m^3 of it]
    double error = 0.0;   ///< 1 sigma of `taken` [g/m^3]
    double share = 1.0;   ///< Of fast plus medium debt that is spent by then
    DebtRoute route;      ///< The whole debt
};

/// One part of bottom water in n parts of surface water, filled to the brim and kept dark:
/// taken = n (surface oxygen - control's loss) + bottom oxygen - (n + 1) reading. The whole debt follows by
/// what the model's fast and medium demand fractions spend within the minutes. Errors: the meter's in three
/// readings, 3 % in pouring, 20 % from place to place in the bottom water (the last two are judgement). With
/// 1 part in 3 and a meter of +-0.2 g/m^3 that is +-1.1 g/m^3 before the place. The procedure is common
/// practice and a derivation, no source.
[[nodiscard]] BottleDebt bottleDebt(const BottleTest& test, const BottleReading& reading);

/// The reading of a test that tells most; a void one if all are, the one that took most. Nothing without
/// readings.
[[nodiscard]] std::optional<BottleDebt> bestBottleDebt(const BottleTest& test);

/// Oxygen that measured substances need, by whole reactions (engine/water/toxic.h) [g/m^3].
struct SubstanceDebt {
    double sulfide = 0.0;   ///< H2S to SO4, 2.00 g/g S
    double iron = 0.0;      ///< Fe2+ to Fe(OH)3, 0.143 g/g
    double methane = 0.0;   ///< CH4 to CO2, 3.99 g/g
    double ammonium = 0.0;  ///< NH4 to NO3, 4.57 g/g N: slow debt, in none of the others
    [[nodiscard]] double fastAndMedium() const { return sulfide + iron + methane; }
};
[[nodiscard]] SubstanceDebt substanceDebt(const Water& water);

/// Puts ways together in the logarithm, weighted by precision: the generalised least squares mean, whose
/// covariances say what ways share. Days and the table of ponds rest on the same few lakes (correlation 0.5),
/// bottle and substances on the same sample (its 20 %); all judgement. A way that the others already hold,
/// whose weight would be negative, is left out. Where the ways lie further apart than their bands allow, the
/// band is widened by the root of chi-squared over its degrees of freedom (Birge 1932, Phys. Rev. 40:207).
/// @pre not empty
[[nodiscard]] DebtEstimate combinedDebt(std::vector<DebtRoute> routes);

/// What the pond file tells of the debt besides the debt itself; nothing without bottom water, and nothing
/// where all of it has oxygen. The table of
/// ponds alone is taken as it stands. A debt that the pond file gives is not looked at.
[[nodiscard]] std::optional<DebtEstimate> estimateDebt(const Pond& pond, const Profile& profile,
                                                       const BottomWater& bottom, const Basin& basin);

}  // namespace engine
