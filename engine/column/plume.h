#pragma once

#include "engine/base/lane.h"
#include "engine/column/plume_rise.h"
#include "engine/water/basin.h"

#include <array>
#include <vector>

namespace engine {

/// Air let out at one depth by equal diffusers far enough apart not to meet.
template <class Real>
struct PlumeSourceOf {
    double depth = 0.0;  ///< [m]
    Real freeAir = 0.0;  ///< Per diffuser, at 20 degC and 1 atm [m^3/s]
    int diffusers = 0;
    Real bubbleDiameter = 3e-3;   ///< [m]
    double airPressure = 101325;  ///< Over the water [Pa]
};
using PlumeSource = PlumeSourceOf<double>;

/// The standing water that the plume rises through: arrays of size N, layer 0 at the surface.
template <class Real>
struct PlumeSurroundingsOf {
    const Grid& grid;
    const std::vector<Real>& temperature;  ///< [degC]
    const std::vector<Real>& salinity;     ///< [-]
    const std::vector<Real>& density;      ///< Over kDensityOrigin [kg/m^3]
    const std::vector<Real>& oxygen;       ///< [g/m^3]
};
using PlumeSurroundings = PlumeSurroundingsOf<double>;

inline constexpr int kPlumeSegments = 4;

/// One rise from the diffuser, or from where the plume detrained below, to where it detrains or surfaces. Of
/// a pack's members, those that have not so many rises hold zeros.
template <class Real>
struct PlumeSegmentOf {
    std::vector<Real> entrained;  ///< Water taken from each layer, rising or sinking, all diffusers [m^3/s]
    std::vector<Real> detrained;  ///< Share of that water detrained into each layer, sums to 1, size N
    Real flow = 0.0;              ///< Sum of `entrained` [m^3/s]
    Real oxygenGain = 0.0;        ///< Oxygen that bubbles give [g/s], all diffusers, never negative
    Real oxygenLoss = 0.0;        ///< Oxygen that bubbles take from water holding it [g/s], never negative
    Real topDepth = 0.0;          ///< Where it detrains [m]; 0 at the surface
    Real topSpeed = 0.0;          ///< Upward water speed there [m/s]
    Real topRadius = 0.0;         ///< [m]
    Real topDensity = 0.0;        ///< Of its water, over kDensityOrigin [kg/m^3]
};
using PlumeSegment = PlumeSegmentOf<double>;

/// The plume over one diffuser group: entrainment, slip, dissolution of oxygen and nitrogen, detrainment
/// where its momentum is spent and starting again above. What it lets go sinks back around it and takes in
/// standing water on the way, as the outer plume of Asaeda and Imberger (1993), J. Fluid Mech. 249:35-67,
/// from memory, here with the entrainment of a plume that rises.
///
/// Gross flow: the share that is drawn in again at once is the caller's business. The members of a pack rise
/// layer by layer together, each detraining where it does. Keeps its memory from one plume to the next.
/// Tested: tests/published/plume_test.cpp against the closed form of Morton, Taylor and Turner (1956).
template <class Real>
class PlumeIntegrator {
public:
    explicit PlumeIntegrator(int layers);

    /// @param bottomDepth  Depth z_b through which hypolimneticLift() counts [m]; no count if not above the
    ///                     diffuser.
    void integrate(const PlumeSourceOf<Real>& source, const PlumeSurroundingsOf<Real>& water,
                   double bottomDepth, const PlumeCoefficients& coefficients = {});

    /// Rises of the member with the most, from below, at most kPlumeSegments.
    [[nodiscard]] int segments() const { return m_used; }
    [[nodiscard]] const PlumeSegmentOf<Real>& segment(int k) const { return m_segments[k]; }
    /// [m^3/s], gross: water carried up through z_b and detrained above it.
    [[nodiscard]] const Real& hypolimneticLift() const { return m_hypolimneticLift; }

private:
    using Surroundings = PlumeSurroundingsOf<Real>;
    void clear();
    void begin(const PlumeSourceOf<Real>& source, const Surroundings& water);
    [[nodiscard]] PlumeLayerOf<Real> layerOf(const Surroundings& water, int i) const;
    [[nodiscard]] PlumePointOf<Real> startIn(const PlumeLayerOf<Real>& layer) const;
    void riseThrough(const Surroundings& water, int i);
    void rest(const Surroundings& water, int i, PlumeLayerOf<Real>& layer, Real& rising);
    /// Positive for members that are at their k-th rise.
    [[nodiscard]] Real isAt(int k) const { return 0.5 - abs(m_number - k); }
    void recordEntrainment(int i, const Real& of, const Real& taken);
    void detrain(const Real& of, const Real& topDepth);
    void lift(const Grid& grid, const PlumeSegmentOf<Real>& segment, double bottomDepth);
    struct Sinking;
    void sink(const Surroundings& water, int k);
    void sinkThrough(const Grid& grid, int i, const Real& standing, const Real& goes,
                     const PlumeSegmentOf<Real>& segment, Sinking& down) const;

    std::array<PlumeSegmentOf<Real>, kPlumeSegments> m_segments;
    int m_used = 0;
    Real m_hypolimneticLift = 0.0;
    std::vector<Real> m_henryOxygen, m_henryNitrogen;
    // The rise under way
    PlumeRiseOf<Real> m_rise;
    double m_sourceDepth = 0.0, m_diffusers = 0.0;
    int m_lowest = 0;
    PlumePointOf<Real> m_point;
    Real m_depth = 0.0;
    Real m_rises = 0.0;   // 1 for members that are under way
    Real m_waits = 0.0;   // 1 for members that start their next rise at m_depth
    Real m_number = 0.0;  // Of the rise that each is at
};

struct Plume {
    std::vector<PlumeSegment> segments;  ///< From below, at most kPlumeSegments
    double hypolimneticLift = 0.0;       ///< [m^3/s], gross: carried up through z_b and detrained above it
};

/// One plume alone; see PlumeIntegrator.
[[nodiscard]] Plume integratePlume(const PlumeSource& source, const PlumeSurroundings& water,
                                   double bottomDepth, const PlumeCoefficients& coefficients = {});

}  // namespace engine
