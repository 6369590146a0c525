#pragma once

#include "engine/base/lane.h"
#include "engine/column/plume.h"
#include "engine/column/state.h"
#include "engine/water/basin.h"

#include <array>
#include <vector>

namespace engine {

/// Water moved between layers, size N, net of what is drawn in again at once.
template <class Real>
struct Flows {
    int segments = 0;                                        ///< Rises of the plume in use
    std::array<std::vector<Real>, kPlumeSegments> taken;     ///< From each layer [m^3/s]
    std::array<std::vector<Real>, kPlumeSegments> returned;  ///< To each layer [m^3/s]; sums equal
    std::vector<Real> entering;                              ///< From outside into each layer [m^3/s]
    Real overflow = 0.0;                                     ///< From layer 0 to outside [m^3/s]
    bool enters = false;                                     ///< Something enters
    bool moving = false;                                     ///< Anything above is not zero

    explicit Flows(int layers) : entering(layers, Real(0.0)) {
        for (int k = 0; k < kPlumeSegments; ++k) {
            taken[k].assign(layers, Real(0.0));
            returned[k].assign(layers, Real(0.0));
        }
    }
};

/// What the first of the numbers that the water carries exchanges with the air, within a step.
template <class Real>
struct AirExchange {
    Real rate = 0.0;    ///< Of the surface layer's water, never negative [m^3/s]
    Real target = 0.0;  ///< The value towards which it goes
};

/// One implicit vertical step of diffusion and flow for everything the water carries.
///
/// Low order: backward Euler with return flow that is central as far as diffusion carries it, else upwind
/// (the hybrid scheme of Spalding, 1972); the matrix is tridiagonal plus one dense row per rise of the plume
/// (Sherman, Morrison, Woodbury), an M-matrix, conservative: never negative for any step. High order: what is
/// left to central face values of the step's end, added as antidiffusive fluxes that the limiter of Boris and
/// Book (1973) keeps from making or raising extremes, so that positivity and the sums stay. The limiter's
/// room is that of a step, so that what it cuts hangs on the step; of mixed water it has nothing to cut.
template <class Real>
class Transport {
public:
    explicit Transport(const Grid& grid);

    /// Sets the matrix for steps of `dt`.
    /// @param diffusivity  At the faces [m^2/s], size N + 1.
    void prepare(double dt, const std::vector<Real>& diffusivity, double molecular, const Flows<Real>& flows);

    /// Sets two matrices that differ in the molecular diffusivity, in little more than the time for one, and
    /// in an exchange with the air that all numbers of the first have.
    static void prepareBoth(double dt, const std::vector<Real>& diffusivity, const Flows<Real>& flows,
                            Transport& a, double molecularA, const AirExchange<Real>& airOfA, Transport& b,
                            double molecularB);

    /// Advances the fields by the prepared step.
    /// @param brought   What entering water brings into each layer, the numbers times m^3/s; read only where
    /// water enters.
    /// @param air       Exchange of the first number alone with the air; the solution is that of the matrix
    /// with it.
    /// @return the surface's values, at which water overflowed and met the air.
    /// @tparam Used  The first `Used` of the C numbers of a layer are there; the rest are zeros. There
    ///   are <1, 1>, <kAlwaysCarried, kSolutes> and <kSolutes, kSolutes>.
    template <int Used, int C>
    std::array<Real, C> advance(const Flows<Real>& flows, const Fields<Real, C>& brought,
                                const AirExchange<Real>& air, Fields<Real, C>& fields);

    /// Advances one field by the low order alone, with a matrix of its own and what plumes return given: one
    /// turn of a search for what the full step finds.
    /// @param returned  Brought into each layer by plumes and from outside [1/s times the field], size N.
    void advanceAlone(double dt, const std::vector<Real>& diffusivity, double molecular,
                      const Flows<Real>& flows, const std::vector<Real>& returned, Fields<Real, 1>& field);

    /// d/dt of the fields at the limit of small steps: the same fluxes with the same limiter.
    template <int C>
    void rates(const std::vector<Real>& diffusivity, double molecular, const Flows<Real>& flows,
               const Fields<Real, C>& brought, const Fields<Real, C>& fields, Fields<Real, C>& out);

private:
    /// Of a flow through a face, what the matrix has of its central value: as much as diffusion carries, so
    /// that the matrix stays positive [m^3/s].
    [[nodiscard, gnu::always_inline]] Real centralPart(int face, const Real& down,
                                                       const Real& conductance) const {
        return min(max(down * m_lowerShare[face], -down * m_upperShare[face]), conductance);
    }
    void faceFlows(const Flows<Real>& flows);
    void faces(double dt, const std::vector<Real>& diffusivity, double molecular, const Flows<Real>& flows);
    template <std::size_t M>
    static void eliminate(const std::array<Transport*, M>& all);
    template <std::size_t M>
    static void answerPlume(const std::array<Transport*, M>& all, const Flows<Real>& flows);
    template <int Used, int C>
    void solve(bool enters, const Fields<Real, C>& brought, Fields<Real, C>& fields) const;
    template <int Used, int C>
    void addPlume(const Flows<Real>& flows, Fields<Real, C>& fields) const;
    template <int C>
    void meetAir(const Flows<Real>& flows, const AirExchange<Real>& air, Fields<Real, C>& fields);
    template <int Used, int C>
    void sharpen(Fields<Real, C>& fields);

    // What was added through the faces.
    template <int C>
    Fields<Real, C>& amounts() {
        if constexpr (C == 1) {
            return m_one;
        } else {
            return m_many;
        }
    }

    const Grid& m_grid;
    int m_layers;
    double m_dt = 0.0;
    std::vector<double> m_perVolume;   // One over the volume of each layer [1/m^3], N
    std::vector<double> m_upperShare;  // Weight of the layer above in the value at a face, N + 1
    std::vector<double> m_lowerShare;  // The same of the layer below
    std::vector<Real> m_central;       // What the matrix has of central flow, as a conductance [m^3/s], N + 1
    std::vector<double> m_shape;       // Area of each face over the distance across it [m], N + 1
    std::vector<Real> m_down;          // Flow through each face, positive downwards [m^3/s], N + 1
    std::vector<Real> m_fromAbove;     // Coupling of layer i to i - 1, positive [m^3/s]
    std::vector<Real> m_fromBelow;     // Coupling of layer i to i + 1, positive [m^3/s]
    std::vector<Real> m_inverse;       // One over the eliminated diagonal
    std::vector<Real> m_back;          // Back substitution factor
    std::array<std::vector<Real>, kPlumeSegments> m_answer;  // Tridiagonal solve of each returned flow
    std::array<std::vector<Real>, kPlumeSegments> m_share;   // Of each rise's water, by layer taken from
    std::array<std::array<Real, kPlumeSegments>, kPlumeSegments> m_small{};
    Fields<Real, 1> m_surface;  // What one unit a second into the surface layer makes of the water
    AirExchange<Real> m_air;    // Of all numbers, in the matrix
    Fields<Real, 1> m_one;
    Fields<Real, kSolutes> m_many;
};

}  // namespace engine
