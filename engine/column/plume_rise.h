#pragma once

#include "engine/base/lane_math.h"
#include "engine/base/units.h"
#include "engine/column/constants_plume.h"
#include "engine/water/water.h"

namespace engine {

// How one diffuser's plume rises through one layer, for one member or a pack (engine/column/plume.h).

/// What the integral plume is built on, Wueest, Brooks and Imboden (1992), Water Resour. Res. 28:3235-3250.
struct PlumeCoefficients {
    double entrainment = kPlumeEntrainment.value;   ///< Top-hat entrainment coefficient [-]
    double bubbleCore = kBubbleCore.value;          ///< Radius of the bubble core over that of the plume [-]
    double froude = kPlumeFroude.value;             ///< Densimetric Froude number at the diffuser [-]
    double diffuserRadius = kDiffuserRadius.value;  ///< Plume radius at the diffuser [m]
    double slip = -1.0;        ///< Fixed slip velocity [m/s] for checks; negative: from the bubble radius
    bool dissolves = true;     ///< Bubbles exchange oxygen and nitrogen with the plume water
    double largestStep = 0.1;  ///< Of the upward integration [m]
};

/// The rising core of one diffuser at one height.
template <class Real>
struct PlumePointOf {
    Real flow = 0.0;         ///< Q [m^3/s]
    Real momentum = 0.0;     ///< M [m^4/s^2]
    Real heat = 0.0;         ///< Q times temperature
    Real salt = 0.0;         ///< Q times salinity
    Real oxygen = 0.0;       ///< Dissolved oxygen carried [g/s]
    Real gasOxygen = 0.0;    ///< In bubbles [mol/s]
    Real gasNitrogen = 0.0;  ///< In bubbles [mol/s]
    Real gained = 0.0;       ///< Running sums of what bubbles gave and took [g/s]
    Real lost = 0.0;
};
using PlumePoint = PlumePointOf<double>;

/// What is constant over one layer of surroundings for the rise.
template <class Real>
struct PlumeLayerOf {
    Real temperature = 0.0, salinity = 0.0, oxygen = 0.0;
    Real density = 0.0;                           ///< Over kDensityOrigin [kg/m^3]
    Real henryOxygen = 0.0, henryNitrogen = 0.0;  ///< [mol/m^3/Pa]
    Real radius = 1.5e-3;                         ///< Of the bubbles when they enter the layer [m]
    Real slip = kMiddleSlip.value;                ///< Of the bubbles there [m/s]
};
using PlumeLayer = PlumeLayerOf<double>;

/// What stays the same over the whole rise of one diffuser.
template <class Real>
struct PlumeRiseOf {
    PlumeCoefficients coefficients;
    Real bubblesPerSecond = 0.0;
    double airPressure = 101325.0;
    Real nitrogenDissolved = 0.0;  ///< Of the water [mol/m^3]
};
using PlumeRise = PlumeRiseOf<double>;

/// Bubble slip velocity [m/s] by radius [m] (bubble correlations of the same school, confirmed in use).
template <class Real>
[[nodiscard]] Real bubbleSlip(const Real& radius) {
    constexpr double kSmall = kSmallBubble.value, kLarge = kLargeBubble.value;
    const Real middle = kMiddleSlip.value;
    if (largestLane(max(kSmall - radius, radius - kLarge)) < 0.0) {
        return middle;
    }
    const Real small = 4474.0 * layerPow(radius, 1.357), large = 4.202 * layerPow(radius, 0.547);
    return wherePositive(kSmall - radius, small, wherePositive(kLarge - radius, middle, large));
}

/// Gas transfer velocity of a bubble for oxygen [m/s].
template <class Real>
[[nodiscard]] Real bubbleTransferVelocity(const Real& radius) {
    return min(kSmallBubbleTransfer.value * radius, Real(kBubbleTransfer.value));
}

template <class Real>
[[nodiscard]] Real plumePressure(const PlumeRiseOf<Real>& rise, const Real& depth) {
    return rise.airPressure + kWaterDensity.value * kGravity * depth;
}

/// Volume flow of gas at the local pressure and temperature [m^3/s].
template <class Real>
[[nodiscard]] Real gasFlow(const PlumePointOf<Real>& point, const Real& pressure, const Real& temperature) {
    return (point.gasOxygen + point.gasNitrogen) * kGasConstant * (temperature + kKelvinOffset) / pressure;
}

/// d/dheight of every member of PlumePoint at a depth.
template <class Real>
[[nodiscard]] PlumePointOf<Real> plumeRates(const PlumeRiseOf<Real>& rise, const PlumeLayerOf<Real>& layer,
                                            const PlumePointOf<Real>& point, const Real& depth) {
    PlumePointOf<Real> rate;
    const Real momentum = max(point.momentum, Real(1e-12));
    const Real flow = max(point.flow, Real(1e-12));
    const Real perFlow = 1.0 / flow;
    const Real speed = momentum * perFlow;
    const Real pressure = plumePressure(rise, depth);
    const Real gas = gasFlow(point, pressure, layer.temperature);
    const Real perClimb = 1.0 / (speed + layer.slip);
    const Real entrained = 2.0 * rise.coefficients.entrainment * sqrt(kPi * momentum);
    const Real plumeDensity = densityOverOrigin(Real(point.heat * perFlow), Real(point.salt * perFlow));

    rate.flow = entrained;
    rate.momentum =
        kGravity *
        ((layer.density - plumeDensity) * flow / ((kDensityOrigin + plumeDensity) * speed) + gas * perClimb);
    rate.heat = entrained * layer.temperature;
    rate.salt = entrained * layer.salinity;
    rate.oxygen = entrained * layer.oxygen;
    if (rise.coefficients.dissolves) {
        // Surface of all bubbles a metre of rise: three volumes over the radius. Bubbles that are gone have
        // none.
        const Real moles = point.gasOxygen + point.gasNitrogen;
        const Real velocity = bubbleTransferVelocity(layer.radius) * 3.0 * gas * perClimb / layer.radius;
        const Real share = point.gasOxygen / max(moles, Real(kTiny<Real>));
        const Real given = velocity * layer.henryOxygen * share * pressure;
        const Real taken = velocity * max(point.oxygen * perFlow, Real(0.0)) * (1.0 / kOxygenMolarMass);
        rate.gasOxygen = taken - given;
        rate.gasNitrogen = kNitrogenTransfer.value * velocity *
                           (rise.nitrogenDissolved - layer.henryNitrogen * (1.0 - share) * pressure);
        rate.gained = given * kOxygenMolarMass;
        rate.lost = taken * kOxygenMolarMass;
        rate.oxygen += rate.gained - rate.lost;
    }
    return rate;
}

template <class Real>
[[nodiscard]] PlumePointOf<Real> added(const PlumePointOf<Real>& a, const PlumePointOf<Real>& rate,
                                       const Real& height) {
    PlumePointOf<Real> b = a;
    b.flow += height * rate.flow;
    b.momentum += height * rate.momentum;
    b.heat += height * rate.heat;
    b.salt += height * rate.salt;
    b.oxygen += height * rate.oxygen;
    b.gasOxygen = max(b.gasOxygen + height * rate.gasOxygen, Real(0.0));
    b.gasNitrogen = max(b.gasNitrogen + height * rate.gasNitrogen, Real(0.0));
    b.gained += height * rate.gained;
    b.lost += height * rate.lost;
    return b;
}

/// One midpoint step upwards of `height` from `depth`.
template <class Real>
[[nodiscard]] PlumePointOf<Real> plumeStep(const PlumeRiseOf<Real>& rise, const PlumeLayerOf<Real>& layer,
                                           const PlumePointOf<Real>& point, const Real& depth,
                                           const Real& height) {
    const Real half = 0.5 * height;
    const PlumePointOf<Real> middle = added(point, plumeRates(rise, layer, point, depth), half);
    return added(point, plumeRates(rise, layer, middle, Real(depth - half)), height);
}

}  // namespace engine
