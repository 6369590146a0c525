#include "engine/column/plume.h"

#include <algorithm>
#include <cmath>

namespace engine {
namespace {

constexpr double kDepthEpsilon = 1e-9;   // [m]
constexpr double kRestartOffset = 1e-6;  // [m]; the next rise starts this much above where the last detrained

template <class Real>
Real bubbleRadius(const PlumeRiseOf<Real>& rise, const Real& gas) {
    return cbrt(max(3.0 * gas / (4.0 * kPi * rise.bubblesPerSecond), Real(1e-15)));
}

template <class Real>
Real slipVelocity(const PlumeRiseOf<Real>& rise, const Real& radius) {
    return rise.coefficients.slip >= 0.0 ? Real(rise.coefficients.slip) : bubbleSlip(radius);
}

/// Water speed at the start from the densimetric Froude number: w^2 (w + slip) is known.
template <class Real>
Real startSpeed(const PlumeRiseOf<Real>& rise, const Real& gas, const Real& slip, const Real& radius) {
    const PlumeCoefficients& c = rise.coefficients;
    const Real cube = c.froude * c.froude * 2.0 * kGravity * gas / (kPi * c.bubbleCore * radius);
    Real w = cbrt(cube);
    // From above; as many turns for all, so that no member depends on its mates. Twelve leave rounding.
    for (int i = 0; i < 12; ++i) {
        w -= (w * w * (w + slip) - cube) / (3.0 * w * w + 2.0 * w * slip);
    }
    return w;
}

template <class Real>
PlumePointOf<Real> chosen(const Real& condition, const PlumePointOf<Real>& x, const PlumePointOf<Real>& y) {
    return {wherePositive(condition, x.flow, y.flow),
            wherePositive(condition, x.momentum, y.momentum),
            wherePositive(condition, x.heat, y.heat),
            wherePositive(condition, x.salt, y.salt),
            wherePositive(condition, x.oxygen, y.oxygen),
            wherePositive(condition, x.gasOxygen, y.gasOxygen),
            wherePositive(condition, x.gasNitrogen, y.gasNitrogen),
            wherePositive(condition, x.gained, y.gained),
            wherePositive(condition, x.lost, y.lost)};
}

/// henryConstants() of all layers, side by side.
template <class Real>
void henryOfLayers(const std::vector<Real>& temperature, std::vector<Real>& oxygen,
                   std::vector<Real>& nitrogen) {
    const std::size_t layers = temperature.size();
    const Real* const degrees = temperature.data();
    Real* const ofOxygen = oxygen.data();
    Real* const ofNitrogen = nitrogen.data();
    DAWNLINE_SIDE_BY_SIDE
    for (std::size_t i = 0; i < layers; ++i) {
        const HenryConstants<Real> henry = henryConstants(degrees[i]);
        ofOxygen[i] = henry.oxygen;
        ofNitrogen[i] = henry.nitrogen;
    }
}

}  // namespace

template <class Real>
PlumeIntegrator<Real>::PlumeIntegrator(int layers)
    : m_henryOxygen(layers, Real(0.0)), m_henryNitrogen(layers, Real(0.0)) {
    for (PlumeSegmentOf<Real>& segment : m_segments) {
        segment.entrained.assign(layers, Real(0.0));
        segment.detrained.assign(layers, Real(0.0));
    }
}

template <class Real>
void PlumeIntegrator<Real>::clear() {
    for (int k = 0; k < m_used; ++k) {
        PlumeSegmentOf<Real>& one = m_segments[k];
        std::fill(one.entrained.begin(), one.entrained.end(), Real(0.0));
        std::fill(one.detrained.begin(), one.detrained.end(), Real(0.0));
        one.flow = one.oxygenGain = one.oxygenLoss = 0.0;
        one.topDepth = one.topSpeed = one.topRadius = one.topDensity = 0.0;
    }
    m_used = 0;
    m_hypolimneticLift = 0.0;
}

template <class Real>
PlumeLayerOf<Real> PlumeIntegrator<Real>::layerOf(const Surroundings& water, int i) const {
    PlumeLayerOf<Real> layer;
    layer.temperature = water.temperature[i];
    layer.salinity = water.salinity[i];
    layer.density = water.density[i];
    layer.oxygen = water.oxygen[i];
    layer.henryOxygen = m_henryOxygen[i];
    layer.henryNitrogen = m_henryNitrogen[i];
    return layer;
}

template <class Real>
void PlumeIntegrator<Real>::begin(const PlumeSourceOf<Real>& source, const Surroundings& water) {
    henryOfLayers(water.temperature, m_henryOxygen, m_henryNitrogen);
    m_sourceDepth = source.depth;
    m_diffusers = source.diffusers;
    m_rise.airPressure = source.airPressure;
    const Real moles =
        kStandardPressure * source.freeAir / (kGasConstant * toKelvin(kFreeAirTemperature.value));
    m_point = {};
    m_point.gasOxygen = kOxygenOfAir.value * moles;
    m_point.gasNitrogen = kNitrogenOfAir.value * moles;
    m_depth = source.depth;
    m_lowest = water.grid.layerAt(source.depth);
    // Bubbles leave the diffuser at their stated size under the pressure there.
    const Real atSource = gasFlow(m_point, plumePressure(m_rise, m_depth), water.temperature[m_lowest]);
    const Real& d = source.bubbleDiameter;
    m_rise.bubblesPerSecond = atSource / (kPi / 6.0 * d * d * d);
    m_rise.nitrogenDissolved = m_henryNitrogen[0] * kNitrogenOfAir.value * source.airPressure;
    m_rises = 0.0;
    m_waits = 1.0;
    m_number.fill(0);
}

/// The water that a rise starts with at m_depth, with the gas that there is.
template <class Real>
PlumePointOf<Real> PlumeIntegrator<Real>::startIn(const PlumeLayerOf<Real>& layer) const {
    const PlumeCoefficients& c = m_rise.coefficients;
    const Real radius = c.diffuserRadius + kPlumeSpread.value * c.entrainment * (m_sourceDepth - m_depth);
    const Real gas = gasFlow(m_point, plumePressure(m_rise, m_depth), layer.temperature);
    const Real speed = startSpeed(m_rise, gas, slipVelocity(m_rise, bubbleRadius(m_rise, gas)), radius);
    PlumePointOf<Real> start = m_point;
    start.flow = kPi * radius * radius * speed;
    start.momentum = start.flow * speed;
    start.heat = start.flow * layer.temperature;
    start.salt = start.flow * layer.salinity;
    start.oxygen = start.flow * layer.oxygen;
    start.gained = start.lost = 0.0;
    return start;
}

template <class Real>
void PlumeIntegrator<Real>::recordEntrainment(int i, int member, double taken) {
    Real& entrained = m_segments[m_number[member]].entrained[i];
    setLane(entrained, member, lane(entrained, member) + taken);
}

/// Ends one member's rise where it is.
template <class Real>
void PlumeIntegrator<Real>::detrain(const Surroundings& water, int member, double topDepth,
                                    double bottomDepth) {
    const Grid& grid = water.grid;
    PlumeSegmentOf<Real>& segment = m_segments[m_number[member]];
    const auto of = [member](const Real& x) { return lane(x, member); };
    const double flow = of(m_point.flow), momentum = of(m_point.momentum);
    const double density = waterDensity(of(m_point.heat) / flow, of(m_point.salt) / flow);
    setLane(segment.flow, member, flow * m_diffusers);
    setLane(segment.oxygenGain, member, of(m_point.gained) * m_diffusers);
    setLane(segment.oxygenLoss, member, of(m_point.lost) * m_diffusers);
    setLane(segment.topDepth, member, topDepth);
    // Without gas left nothing rises.
    const bool rose = flow > 0.0 && momentum > 0.0;
    setLane(segment.topSpeed, member, rose ? momentum / flow : 0.0);
    setLane(segment.topRadius, member, rose ? std::sqrt(flow * flow / (kPi * momentum)) : 0.0);
    setLane(segment.topDensity, member, density);
    double through = of(m_hypolimneticLift);
    const bool crosses = topDepth < bottomDepth && bottomDepth < m_sourceDepth;
    for (int j = grid.layers() - 1; crosses && j >= 0 && grid.face[j + 1] > bottomDepth; --j) {
        const double below = std::min((grid.face[j + 1] - bottomDepth) / grid.thickness[j], 1.0);
        through += below * of(segment.entrained[j]) * m_diffusers;
    }
    setLane(m_hypolimneticLift, member, through);
    sink(water, member, topDepth);
    ++m_number[member];
    m_used = std::max(m_used, m_number[member]);
    setLane(m_rises, member, 0.0);
}

/// What one member has let go sinks, outside the plume, to where the standing water is as dense as it has
/// become, and parts between the two nearest layers. On its way it takes in standing water as any plume does,
/// so that light water comes down with it.
template <class Real>
void PlumeIntegrator<Real>::sink(const Surroundings& water, int member, double topDepth) {
    const Grid& grid = water.grid;
    PlumeSegmentOf<Real>& segment = m_segments[m_number[member]];
    const auto standing = [&](int i) { return lane(water.density[i], member); };
    const double entrainment = 2.0 * m_rise.coefficients.entrainment * std::sqrt(kPi);
    const int top = std::min(grid.layerAt(topDepth), m_lowest);
    double flow = lane(m_point.flow, member), density = lane(segment.topDensity, member);
    double momentum = 0.0, depth = topDepth;
    int i = top;
    if (!(lane(segment.topRadius, member) > 0.0)) {
        setLane(segment.detrained[i], member, 1.0);
        return;
    }
    for (; i < m_lowest && standing(i) < density - kSinkingExcess.value; ++i) {
        if (momentum == 0.0) {
            // Begins to fall as wide as the ring around what rose.
            const double reduced = kGravity * (density - standing(i)) / kWaterDensity.value;
            const double radius = std::sqrt(2.0) * lane(segment.topRadius, member);
            momentum = flow * m_rise.coefficients.froude * std::sqrt(reduced * radius);
        }
        const double height = grid.face[i + 1] - depth;
        const int steps = std::max(static_cast<int>(std::ceil(height / m_rise.coefficients.largestStep)), 1);
        const double each = height / steps, before = flow;
        for (int step = 0; step < steps; ++step) {
            const double taken = each * entrainment * std::sqrt(momentum);
            momentum +=
                each * kGravity / kWaterDensity.value * (density - standing(i)) * flow * flow / momentum;
            density = (flow * density + taken * standing(i)) / (flow + taken);
            flow += taken;
        }
        recordEntrainment(i, member, flow - before);
        depth = grid.face[i + 1];
    }
    setLane(segment.flow, member, flow * m_diffusers);
    const double sinksTo = density - kSinkingExcess.value;
    if (i == top || standing(i) < sinksTo) {
        setLane(segment.detrained[i], member, 1.0);
        return;
    }
    // Where layers lie upside down, in the lower one.
    const double above = standing(i - 1), step = standing(i) - above;
    const double part = step > 0.0 ? std::clamp((sinksTo - above) / step, 0.0, 1.0) : 1.0;
    setLane(segment.detrained[i], member, part);
    setLane(segment.detrained[i - 1], member, 1.0 - part);
}

/// Takes the members that `rising` says through what is left of a layer above them; those that detrain are
/// marked as waiting for their next rise.
template <class Real>
void PlumeIntegrator<Real>::rest(const Surroundings& water, int i, PlumeLayerOf<Real>& layer, Real& rising,
                                 double bottomDepth) {
    layer.radius = bubbleRadius(m_rise, gasFlow(m_point, plumePressure(m_rise, m_depth), layer.temperature));
    layer.slip = slipVelocity(m_rise, layer.radius);
    const Real height = m_depth - water.grid.face[i];
    Real steps = 1.0;
    for (int k = 0; k < kLanes<Real>; ++k) {
        const double asked = lane(rising, k) * lane(height, k) / m_rise.coefficients.largestStep;
        setLane(steps, k, std::max(std::ceil(asked), 1.0));
    }
    const Real each = height / steps;
    const int most = static_cast<int>(largestLane(steps));
    Real taken = 0.0;
    for (int step = 0; step < most; ++step) {
        const Real goes = wherePositive(steps - step, rising, Real(0.0));
        const PlumePointOf<Real> next = plumeStep(m_rise, layer, m_point, m_depth, each);
        const Real isAlive = wherePositive(next.momentum - kLiveSpeed.value * next.flow, goes, Real(0.0));
        taken += wherePositive(isAlive, next.flow - m_point.flow, Real(0.0));
        m_point = chosen(isAlive, next, m_point);
        m_depth -= wherePositive(isAlive, each, Real(0.0));
        if (!(largestLane(goes - isAlive) > 0.0)) {
            continue;
        }
        for (int k = 0; k < kLanes<Real>; ++k) {
            if (lane(goes, k) > lane(isAlive, k)) {
                recordEntrainment(i, k, lane(taken, k));
                setLane(taken, k, 0.0);
                setLane(rising, k, 0.0);
                detrain(water, k, lane(m_depth, k), bottomDepth);
                setLane(m_depth, k, lane(m_depth, k) - kRestartOffset);
                setLane(m_waits, k, m_number[k] < kPlumeSegments ? 1.0 : 0.0);
            }
        }
    }
    for (int k = 0; k < kLanes<Real>; ++k) {
        if (lane(rising, k) > 0.0) {
            recordEntrainment(i, k, lane(taken, k));
        }
    }
}

template <class Real>
void PlumeIntegrator<Real>::riseThrough(const Surroundings& water, int i, double bottomDepth) {
    PlumeLayerOf<Real> layer = layerOf(water, i);
    const double top = i == 0 ? 0.0 : water.grid.face[i];
    Real rising = m_rises;
    // A member that detrains in the middle of a layer goes on from there; none more often than it may rise.
    for (int turn = 0; turn <= kPlumeSegments; ++turn) {
        const Real starts = wherePositive(m_depth - kDepthEpsilon - top, m_waits, Real(0.0));
        if (largestLane(starts) > 0.0) {
            m_point = chosen(starts, startIn(layer), m_point);
            for (int k = 0; k < kLanes<Real>; ++k) {
                if (lane(starts, k) > 0.0) {
                    recordEntrainment(i, k, lane(m_point.flow, k));
                }
            }
            m_waits = wherePositive(starts, Real(0.0), m_waits);
            m_rises = max(m_rises, starts);
            rising = max(rising, starts);
        }
        if (!(largestLane(rising) > 0.0)) {
            return;
        }
        rest(water, i, layer, rising, bottomDepth);
        rising = 0.0;
    }
}

template <class Real>
void PlumeIntegrator<Real>::integrate(const PlumeSourceOf<Real>& source, const Surroundings& water,
                                      double bottomDepth, const PlumeCoefficients& coefficients) {
    clear();
    if (source.diffusers <= 0 || !(largestLane(source.freeAir) > 0.0)) {
        return;
    }
    m_rise.coefficients = coefficients;
    begin(source, water);
    for (int i = m_lowest; i >= 0; --i) {
        riseThrough(water, i, bottomDepth);
    }
    for (int k = 0; k < kLanes<Real>; ++k) {
        if (lane(m_rises, k) > 0.0) {
            detrain(water, k, 0.0, bottomDepth);
        }
    }
    for (int k = 0; k < m_used; ++k) {
        for (Real& flow : m_segments[k].entrained) {
            flow *= m_diffusers;
        }
    }
}

template class PlumeIntegrator<double>;
template class PlumeIntegrator<Pack<4>>;

Plume integratePlume(const PlumeSource& source, const PlumeSurroundings& water, double bottomDepth,
                     const PlumeCoefficients& coefficients) {
    PlumeIntegrator<double> integrator(water.grid.layers());
    integrator.integrate(source, water, bottomDepth, coefficients);
    Plume plume;
    for (int k = 0; k < integrator.segments(); ++k) {
        plume.segments.push_back(integrator.segment(k));
    }
    plume.hypolimneticLift = integrator.hypolimneticLift();
    return plume;
}

}  // namespace engine
