#include "engine/plume.h"

#include "engine/units.h"
#include "engine/water.h"

#include <algorithm>
#include <cmath>

namespace engine {
namespace {

constexpr double kOxygenOfAir = 0.2095;   // mole shares of dry air; argon goes with nitrogen
constexpr double kNitrogenOfAir = 0.7905;
constexpr double kLiveSpeed = 0.01;       // [m/s]; slower than this the water no longer rises
constexpr double kSinkingExcess = 0.01;   // [kg/m^3]; water must be this much heavier to leave the surface

double pressureAt(const PlumeRise& rise, double depth) {
    return rise.airPressure + 998.0 * kGravity * depth;
}

/// Volume flow of gas at the local pressure and temperature [m^3/s].
double gasFlow(const PlumePoint& point, double pressure, double temperature) {
    return (point.gasOxygen + point.gasNitrogen) * kGasConstant * toKelvin(temperature) / pressure;
}

double bubbleRadius(const PlumeRise& rise, double gas) {
    return std::cbrt(std::max(3.0 * gas / (4.0 * kPi * rise.bubblesPerSecond), 1e-15));
}

double slipVelocity(const PlumeRise& rise, double radius) {
    return rise.coefficients.slip >= 0.0 ? rise.coefficients.slip : bubbleSlip(radius);
}

/// Water speed at the start from the densimetric Froude number: w^2 (w + slip) is known.
double startSpeed(const PlumeRise& rise, double gas, double slip, double radius) {
    const PlumeCoefficients& c = rise.coefficients;
    const double cube = c.froude * c.froude * 2.0 * kGravity * gas / (kPi * c.bubbleCore * radius);
    double w = std::cbrt(cube);
    for (int i = 0; i < 20; ++i) {
        w -= (w * w * (w + slip) - cube) / (3.0 * w * w + 2.0 * w * slip);
    }
    return w;
}

PlumePoint added(const PlumePoint& a, const PlumePoint& rate, double height) {
    PlumePoint b = a;
    b.flow += height * rate.flow;
    b.momentum += height * rate.momentum;
    b.heat += height * rate.heat;
    b.salt += height * rate.salt;
    b.oxygen += height * rate.oxygen;
    b.gasOxygen = std::max(b.gasOxygen + height * rate.gasOxygen, 0.0);
    b.gasNitrogen = std::max(b.gasNitrogen + height * rate.gasNitrogen, 0.0);
    b.gained += height * rate.gained;
    b.lost += height * rate.lost;
    return b;
}

/// Shares of the water that lets go at `topDepth` by layer: it sinks, outside the plume, to where the
/// standing water is as dense as itself, and parts between the two nearest layers.
std::vector<double> releaseShares(const PlumeSurroundings& water, double topDepth, double density,
                                  int lowestLayer) {
    std::vector<double> shares(water.grid.middle.size(), 0.0);
    const int top = std::min(water.grid.layerAt(topDepth), lowestLayer);
    const double sinksTo = density - kSinkingExcess;
    int i = top;
    while (i < lowestLayer && water.density[i] < sinksTo) {
        ++i;
    }
    if (i == top || water.density[i] < sinksTo) {
        shares[i] = 1.0;
        return shares;
    }
    const double above = water.density[i - 1];
    const double part = (sinksTo - above) / (water.density[i] - above);
    shares[i] = part;
    shares[i - 1] = 1.0 - part;
    return shares;
}

PlumeLayer layerOf(const PlumeSurroundings& water, int i) {
    PlumeLayer layer;
    layer.temperature = water.temperature[i];
    layer.salinity = water.salinity[i];
    layer.density = water.density[i];
    layer.oxygen = water.oxygen[i];
    layer.henryOxygen = henryOxygen(layer.temperature);
    layer.henryNitrogen = henryNitrogen(layer.temperature);
    return layer;
}

}  // namespace

double bubbleSlip(double radius) {
    // Fits with breaks at 0.7 and 5.1 mm.
    if (radius < 7e-4) {
        return 4474.0 * std::pow(radius, 1.357);
    }
    return radius < 5.1e-3 ? 0.23 : 4.202 * std::pow(radius, 0.547);
}

double bubbleTransferVelocity(double radius) {
    return std::min(0.6 * radius, 4e-4);
}

PlumePoint plumeRates(const PlumeRise& rise, const PlumeLayer& layer, const PlumePoint& point,
                      double depth) {
    PlumePoint rate;
    const double momentum = std::max(point.momentum, 1e-12);
    const double flow = std::max(point.flow, 1e-12);
    const double speed = momentum / flow;
    const double pressure = pressureAt(rise, depth);
    const double gas = gasFlow(point, pressure, layer.temperature);
    const double climb = speed + layer.slip;
    const double entrained = 2.0 * rise.coefficients.entrainment * std::sqrt(kPi * momentum);
    const double plumeDensity = waterDensity(point.heat / flow, point.salt / flow);

    rate.flow = entrained;
    rate.momentum = kGravity * ((layer.density - plumeDensity) / plumeDensity * flow / speed + gas / climb);
    rate.heat = entrained * layer.temperature;
    rate.salt = entrained * layer.salinity;
    rate.oxygen = entrained * layer.oxygen;
    const double moles = point.gasOxygen + point.gasNitrogen;
    if (rise.coefficients.dissolves && moles > 0.0) {
        // Surface of all bubbles a metre of rise: three volumes over the radius.
        const double velocity = bubbleTransferVelocity(layer.radius) * 3.0 * gas / (layer.radius * climb);
        const double share = point.gasOxygen / moles;
        const double given = velocity * layer.henryOxygen * share * pressure;
        const double taken = velocity * std::max(point.oxygen / flow, 0.0) / kOxygenMolarMass;
        rate.gasOxygen = taken - given;
        // Nitrogen: K_L smaller by the square root of the ratio of diffusivities, 3.73e-4 over 4e-4.
        rate.gasNitrogen =
            0.9325 * velocity * (rise.nitrogenDissolved - layer.henryNitrogen * (1.0 - share) * pressure);
        rate.gained = given * kOxygenMolarMass;
        rate.lost = taken * kOxygenMolarMass;
        rate.oxygen += rate.gained - rate.lost;
    }
    return rate;
}

PlumePoint plumeStep(const PlumeRise& rise, const PlumeLayer& layer, const PlumePoint& point, double depth,
                     double height) {
    const PlumePoint middle = added(point, plumeRates(rise, layer, point, depth), 0.5 * height);
    return added(point, plumeRates(rise, layer, middle, depth - 0.5 * height), height);
}

Plume integratePlume(const PlumeSource& source, const PlumeSurroundings& water, double bottomDepth,
                     const PlumeCoefficients& coefficients) {
    Plume plume;
    if (source.diffusers <= 0 || source.freeAir <= 0.0) {
        return plume;
    }
    const Grid& grid = water.grid;
    const std::size_t layers = grid.middle.size();
    const int lowest = grid.layerAt(source.depth);

    PlumeRise rise;
    rise.coefficients = coefficients;
    rise.airPressure = source.airPressure;
    const double moles = kStandardPressure * source.freeAir / (kGasConstant * toKelvin(20.0));
    PlumePoint point;
    point.gasOxygen = kOxygenOfAir * moles;
    point.gasNitrogen = kNitrogenOfAir * moles;
    // Bubbles leave the diffuser at their stated size under the pressure there.
    const double atSource = gasFlow(point, pressureAt(rise, source.depth), water.temperature[lowest]);
    rise.bubblesPerSecond = atSource / (kPi / 6.0 * std::pow(source.bubbleDiameter, 3));
    rise.nitrogenDissolved =
        henryNitrogen(water.temperature[0]) * kNitrogenOfAir * source.airPressure;

    double depth = source.depth;
    while (depth > 1e-9 && static_cast<int>(plume.segments.size()) < kPlumeSegments) {
        PlumeSegment segment;
        segment.entrained.assign(layers, 0.0);
        int i = std::min(grid.layerAt(depth - 1e-9), lowest);
        const double radius = coefficients.diffuserRadius +
                              1.2 * coefficients.entrainment * (source.depth - depth);
        const double gas = gasFlow(point, pressureAt(rise, depth), water.temperature[i]);
        const double speed = startSpeed(rise, gas, slipVelocity(rise, bubbleRadius(rise, gas)), radius);
        const PlumeLayer first = layerOf(water, i);
        point.flow = kPi * radius * radius * speed;
        point.momentum = point.flow * speed;
        point.heat = point.flow * first.temperature;
        point.salt = point.flow * first.salinity;
        point.oxygen = point.flow * first.oxygen;
        point.gained = point.lost = 0.0;
        segment.entrained[i] += point.flow;

        bool alive = true;
        for (; i >= 0 && alive; --i) {
            PlumeLayer layer = layerOf(water, i);
            layer.radius = bubbleRadius(rise, gasFlow(point, pressureAt(rise, depth), layer.temperature));
            layer.slip = slipVelocity(rise, layer.radius);
            const double height = depth - grid.face[i];
            const int steps = std::max(1, static_cast<int>(std::ceil(height / coefficients.largestStep)));
            for (int k = 0; k < steps && alive; ++k) {
                const PlumePoint next = plumeStep(rise, layer, point, depth, height / steps);
                alive = next.momentum > kLiveSpeed * next.flow;
                if (alive) {
                    segment.entrained[i] += next.flow - point.flow;
                    point = next;
                    depth -= height / steps;
                }
            }
        }
        depth = alive ? 0.0 : depth;
        segment.flow = point.flow * source.diffusers;
        segment.oxygenGain = point.gained * source.diffusers;
        segment.oxygenLoss = point.lost * source.diffusers;
        segment.topDepth = depth;
        segment.topSpeed = point.momentum / point.flow;
        segment.topRadius = std::sqrt(point.flow * point.flow / (kPi * point.momentum));
        segment.topDensity = waterDensity(point.heat / point.flow, point.salt / point.flow);
        segment.released = releaseShares(water, depth, segment.topDensity, lowest);
        for (double& flow : segment.entrained) {
            flow *= source.diffusers;
        }

        if (segment.topDepth < bottomDepth) {
            for (std::size_t j = 0; j < layers; ++j) {
                const double below = std::clamp((grid.face[j + 1] - bottomDepth) / grid.thickness[j], 0.0, 1.0);
                plume.throughBottom += below * segment.entrained[j];
            }
        }
        plume.segments.push_back(std::move(segment));
        if (!alive) {
            depth -= 1e-6;  // the next rise starts just above
        }
    }
    return plume;
}

}  // namespace engine
