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
    // Either part alone would be that fast at most, and the smaller is at most 1.33 times the answer.
    Real w = min(sqrt(cube / slip), cbrt(cube));
    // From above; as many turns for all, so that no member depends on its mates. The fourth leaves 1e-9 of a
    // third, the fifth rounding.
    for (int i = 0; i < 5; ++i) {
        w -= (w * w * (w + slip) - cube) / (w * (3.0 * w + 2.0 * slip));
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
    m_number = 0.0;
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

/// For the members that `of` says, in the rises that they are at.
template <class Real>
void PlumeIntegrator<Real>::recordEntrainment(int i, const Real& of, const Real& taken) {
    for (int k = 0; k < kPlumeSegments && k <= m_used; ++k) {
        m_segments[k].entrained[i] += wherePositive(min(of, isAt(k)), taken, Real(0.0));
    }
}

/// Ends the rises of the members that `of` says where they are. What it lets go sinks once all have risen.
template <class Real>
void PlumeIntegrator<Real>::detrain(const Real& of, const Real& topDepth) {
    const Real& momentum = m_point.momentum;
    const Real flow = max(m_point.flow, Real(kTiny<Real>));
    const Real density = densityOverOrigin(Real(m_point.heat / flow), Real(m_point.salt / flow));
    // Without gas left nothing rises.
    const Real rose = min(m_point.flow, momentum);
    const Real speed = wherePositive(rose, Real(momentum / flow), Real(0.0));
    const Real radius = wherePositive(rose, flow / sqrt(kPi * max(momentum, Real(kTiny<Real>))), Real(0.0));
    for (int k = 0; k < kPlumeSegments && k <= m_used; ++k) {
        PlumeSegmentOf<Real>& segment = m_segments[k];
        const Real ends = min(of, isAt(k));
        const auto set = [&ends](Real& to, const Real& value) { to = wherePositive(ends, value, to); };
        set(segment.flow, m_point.flow);
        set(segment.oxygenGain, Real(m_point.gained * m_diffusers));
        set(segment.oxygenLoss, Real(m_point.lost * m_diffusers));
        set(segment.topDepth, topDepth);
        set(segment.topSpeed, speed);
        set(segment.topRadius, radius);
        set(segment.topDensity, density);
    }
    m_number += wherePositive(of, Real(1.0), Real(0.0));
    m_used = static_cast<int>(largestLane(m_number));
    m_rises = wherePositive(of, Real(0.0), m_rises);
}

/// What a rise carries up through z_b.
template <class Real>
void PlumeIntegrator<Real>::lift(const Grid& grid, const PlumeSegmentOf<Real>& segment, double bottomDepth) {
    if (!(bottomDepth < m_sourceDepth)) {
        return;
    }
    Real through = 0.0;
    for (int j = grid.layers() - 1; j >= 0 && grid.face[j + 1] > bottomDepth; --j) {
        const double below = std::min((grid.face[j + 1] - bottomDepth) / grid.thickness[j], 1.0);
        through += below * segment.entrained[j];
    }
    m_hypolimneticLift += wherePositive(bottomDepth - segment.topDepth, through * m_diffusers, Real(0.0));
}

/// The water that a rise has let go, on its way down.
template <class Real>
struct PlumeIntegrator<Real>::Sinking {
    Real sinks = 0.0;  // 1 for members that have not come to rest
    Real flow = 0.0, momentum = 0.0, density = 0.0;
};

/// What a rise of the members has let go sinks, outside the plume, to where the standing water is as dense as
/// it has become, and parts between the two nearest layers. On its way it takes in standing water as any
/// plume does, so that light water comes down with it.
template <class Real>
void PlumeIntegrator<Real>::sink(const Surroundings& water, int k) {
    const Grid& grid = water.grid;
    PlumeSegmentOf<Real>& segment = m_segments[k];
    Sinking down;
    down.sinks = wherePositive(m_number - (k + 0.5), Real(1.0), Real(0.0));
    down.flow = segment.flow;
    down.density = segment.topDensity;
    const Real none = 0.0, one = 1.0;
    Real before = 0.0;  // 1 where it was in the layer above
    for (int i = 0; i <= m_lowest && largestLane(down.sinks) > 0.0; ++i) {
        const Real isIn =
            i == m_lowest ? down.sinks : wherePositive(grid.face[i + 1] - segment.topDepth, down.sinks, none);
        if (!(largestLane(isIn) > 0.0)) {
            continue;
        }
        const Real& standing = water.density[i];
        const Real heavier = down.density - kSinkingExcess.value - standing;
        const Real goes = i == m_lowest ? none : wherePositive(min(heavier, segment.topRadius), isIn, none);
        const Real rests = isIn - goes;
        if (largestLane(rests) > 0.0) {
            // Where layers lie upside down, in the lower one.
            Real part = one;
            if (i > 0) {
                const Real above = water.density[i - 1], step = standing - above;
                const Real share = min(max((heavier + step) / step, none), one);
                part = wherePositive(min(min(before, step), -heavier), share, one);
                segment.detrained[i - 1] = wherePositive(rests, Real(1.0 - part), segment.detrained[i - 1]);
            }
            segment.detrained[i] = wherePositive(rests, part, segment.detrained[i]);
        }
        if (largestLane(goes) > 0.0) {
            const Real flow = down.flow;
            sinkThrough(grid, i, standing, goes, segment, down);
            segment.entrained[i] += wherePositive(goes, Real(down.flow - flow), none);
        }
        before = goes;
        down.sinks = wherePositive(rests, none, down.sinks);
    }
    segment.flow = down.flow * m_diffusers;
}

/// Through one layer, or what is left of it.
template <class Real>
void PlumeIntegrator<Real>::sinkThrough(const Grid& grid, int i, const Real& standing, const Real& goes,
                                        const PlumeSegmentOf<Real>& segment, Sinking& down) const {
    const double entrainment = 2.0 * m_rise.coefficients.entrainment * std::sqrt(kPi);
    // Begins to fall as wide as the ring around what rose.
    const Real reduced = kGravity / kWaterDensity.value * max(down.density - standing, Real(0.0));
    const Real starts =
        down.flow * m_rise.coefficients.froude * sqrt(reduced * std::sqrt(2.0) * segment.topRadius);
    down.momentum = wherePositive(wherePositive(down.momentum, Real(0.0), goes), starts, down.momentum);
    const Real height = grid.face[i + 1] - max(segment.topDepth, Real(grid.face[i]));
    const Real steps = max(layerCeil(Real(height / m_rise.coefficients.largestStep)), Real(1.0));
    const Real each = height / steps;
    const int most = static_cast<int>(largestLane(steps));
    for (int step = 0; step < most; ++step) {
        const Real moves = wherePositive(steps - step, goes, Real(0.0));
        const Real momentum = max(down.momentum, Real(kTiny<Real>));
        const Real taken = wherePositive(moves, each * entrainment * sqrt(momentum), Real(0.0));
        const Real gained = each * kGravity / kWaterDensity.value * (down.density - standing) * down.flow *
                            (down.flow / momentum);
        down.momentum += wherePositive(moves, gained, Real(0.0));
        // What it holds comes nearer to the standing water's.
        down.density = wherePositive(
            moves, standing + (down.density - standing) * (down.flow / (down.flow + taken)), down.density);
        down.flow += taken;
    }
}

/// Takes the members that `rising` says through what is left of a layer above them; those that detrain are
/// marked as waiting for their next rise.
template <class Real>
void PlumeIntegrator<Real>::rest(const Surroundings& water, int i, PlumeLayerOf<Real>& layer, Real& rising) {
    layer.radius = bubbleRadius(m_rise, gasFlow(m_point, plumePressure(m_rise, m_depth), layer.temperature));
    layer.slip = slipVelocity(m_rise, layer.radius);
    const Real none = 0.0, height = m_depth - water.grid.face[i];
    const Real steps =
        max(layerCeil(Real(rising * height * (1.0 / m_rise.coefficients.largestStep))), Real(1.0));
    const Real each = height / steps;
    const int most = static_cast<int>(largestLane(steps));
    Real taken = 0.0;
    for (int step = 0; step < most; ++step) {
        const Real goes = wherePositive(steps - step, rising, none);
        const PlumePointOf<Real> next = plumeStep(m_rise, layer, m_point, m_depth, each);
        const Real isAlive = wherePositive(next.momentum - kLiveSpeed.value * next.flow, goes, none);
        taken += wherePositive(isAlive, next.flow - m_point.flow, none);
        m_point = chosen(isAlive, next, m_point);
        m_depth -= wherePositive(isAlive, each, none);
        const Real ends = goes - isAlive;
        if (!(largestLane(ends) > 0.0)) {
            continue;
        }
        recordEntrainment(i, ends, taken);
        taken = wherePositive(ends, none, taken);
        rising = wherePositive(ends, none, rising);
        detrain(ends, m_depth);
        m_depth -= wherePositive(ends, Real(kRestartOffset), none);
        m_waits = wherePositive(ends, wherePositive(kPlumeSegments - m_number, Real(1.0), none), m_waits);
    }
    recordEntrainment(i, rising, taken);
}

template <class Real>
void PlumeIntegrator<Real>::riseThrough(const Surroundings& water, int i) {
    PlumeLayerOf<Real> layer = layerOf(water, i);
    const double top = i == 0 ? 0.0 : water.grid.face[i];
    Real rising = m_rises;
    // A member that detrains in the middle of a layer goes on from there; none more often than it may rise.
    for (int turn = 0; turn <= kPlumeSegments; ++turn) {
        const Real starts = wherePositive(m_depth - kDepthEpsilon - top, m_waits, Real(0.0));
        if (largestLane(starts) > 0.0) {
            m_point = chosen(starts, startIn(layer), m_point);
            recordEntrainment(i, starts, m_point.flow);
            m_waits = wherePositive(starts, Real(0.0), m_waits);
            m_rises = max(m_rises, starts);
            rising = max(rising, starts);
        }
        if (!(largestLane(rising) > 0.0)) {
            return;
        }
        rest(water, i, layer, rising);
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
        riseThrough(water, i);
    }
    detrain(m_rises, Real(0.0));
    for (int k = 0; k < m_used; ++k) {
        lift(water.grid, m_segments[k], bottomDepth);
        sink(water, k);
        for (Real& flow : m_segments[k].entrained) {
            flow *= m_diffusers;
        }
    }
}

template class PlumeIntegrator<double>;
template class PlumeIntegrator<DoubleLanes>;
template class PlumeIntegrator<Lanes>;

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
