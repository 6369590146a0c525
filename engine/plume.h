#pragma once

#include "engine/basin.h"

#include <array>
#include <vector>

namespace engine {

/// What the integral plume is built on. Wueest, Brooks and Imboden (1992), Water Resources Research 28,
/// 3235-3250; the four numbers are from memory of that paper.
struct PlumeCoefficients {
    double entrainment = 0.11;    ///< Top-hat entrainment coefficient [-]
    double bubbleCore = 0.8;      ///< Radius of the bubble core over that of the plume [-]
    double froude = 1.6;          ///< Densimetric Froude number at the diffuser [-]
    double diffuserRadius = 0.125;///< Plume radius at the diffuser [m]
    double slip = -1.0;           ///< Fixed slip velocity [m/s] for checks; negative: from the bubble radius
    bool dissolves = true;        ///< Bubbles exchange oxygen and nitrogen with the plume water
    double largestStep = 0.1;     ///< Of the upward integration [m]
};

/// Air let out at one depth by equal diffusers far enough apart not to meet.
struct PlumeSource {
    double depth = 0.0;           ///< [m]
    double freeAir = 0.0;         ///< Per diffuser, at 20 degC and 1 atm [m^3/s]
    int diffusers = 0;
    double bubbleDiameter = 3e-3; ///< [m]
    double airPressure = 101325;  ///< Over the water [Pa]
};

/// The standing water that the plume rises through: arrays of size N, layer 0 at the surface.
struct PlumeSurroundings {
    const Grid& grid;
    const std::vector<double>& temperature;  ///< [degC]
    const std::vector<double>& salinity;     ///< [-]
    const std::vector<double>& density;      ///< [kg/m^3]
    const std::vector<double>& oxygen;       ///< [g/m^3]
};

inline constexpr int kPlumeSegments = 4;

/// One rise from the diffuser, or from where the plume let go below, to where it lets go or surfaces.
struct PlumeSegment {
    std::vector<double> entrained;  ///< Water taken from each layer, all diffusers [m^3/s], size N
    std::vector<double> released;   ///< Share of that water returned to each layer, sums to 1, size N
    double flow = 0.0;              ///< Sum of `entrained` [m^3/s]
    double oxygenGain = 0.0;        ///< Oxygen that bubbles give [g/s], all diffusers, never negative
    double oxygenLoss = 0.0;        ///< Oxygen that bubbles take from water holding it [g/s], never negative
    double topDepth = 0.0;          ///< Where it lets go [m]; 0 at the surface
    double topSpeed = 0.0;          ///< Upward water speed there [m/s]
    double topRadius = 0.0;         ///< [m]
    double topDensity = 0.0;        ///< Of its water [kg/m^3]
};

struct Plume {
    std::vector<PlumeSegment> segments;  ///< From below, at most kPlumeSegments
    double throughBottom = 0.0;  ///< Water carried up through a depth and let go above it [m^3/s], gross
};

/// Bubble slip velocity [m/s] by radius [m] (bubble correlations of the same school, confirmed in use).
[[nodiscard]] double bubbleSlip(double radius);

/// Gas transfer velocity of a bubble for oxygen [m/s]; nitrogen is 0.93 of it.
[[nodiscard]] double bubbleTransferVelocity(double radius);

/// The plume over one diffuser group: entrainment, slip, dissolution of oxygen and nitrogen, letting go
/// where its momentum is spent and starting again above, water returned at its own density.
///
/// Gross flow: the share that is drawn in again at once is the caller's business.
/// @param bottomDepth  Depth z_b through which `throughBottom` counts [m]; no count if not above the diffuser.
/// Tested: tests/published/plume_test.cpp against the closed form of Morton, Taylor and Turner (1956).
[[nodiscard]] Plume integratePlume(const PlumeSource& source, const PlumeSurroundings& water,
                                   double bottomDepth, const PlumeCoefficients& coefficients = {});

/// The rising core of one diffuser at one height.
struct PlumePoint {
    double flow = 0.0;         ///< Q [m^3/s]
    double momentum = 0.0;     ///< M [m^4/s^2]
    double heat = 0.0;         ///< Q times temperature
    double salt = 0.0;         ///< Q times salinity
    double oxygen = 0.0;       ///< Dissolved oxygen carried [g/s]
    double gasOxygen = 0.0;    ///< In bubbles [mol/s]
    double gasNitrogen = 0.0;  ///< In bubbles [mol/s]
    double gained = 0.0;       ///< Running sums of what bubbles gave and took [g/s]
    double lost = 0.0;
};

/// What is constant over one layer of surroundings for the rise.
struct PlumeLayer {
    double temperature = 0.0, salinity = 0.0, density = 0.0, oxygen = 0.0;
    double henryOxygen = 0.0, henryNitrogen = 0.0;  ///< [mol/m^3/Pa]
    double radius = 1.5e-3;  ///< Of the bubbles when they enter the layer [m]
    double slip = 0.23;      ///< Of the bubbles there [m/s]
};

/// What stays the same over the whole rise of one diffuser.
struct PlumeRise {
    PlumeCoefficients coefficients;
    double bubblesPerSecond = 0.0;
    double airPressure = 101325.0;
    double nitrogenDissolved = 0.0;  ///< Of the water [mol/m^3]
};

/// d/dheight of every member of PlumePoint at a depth.
[[nodiscard]] PlumePoint plumeRates(const PlumeRise& rise, const PlumeLayer& layer, const PlumePoint& point,
                                    double depth);

/// One midpoint step upwards of `height` from `depth`.
[[nodiscard]] PlumePoint plumeStep(const PlumeRise& rise, const PlumeLayer& layer, const PlumePoint& point,
                                   double depth, double height);

}  // namespace engine
