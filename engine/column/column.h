// The water of a pond and one step of it, for one member or a pack of members side by side.
//
// The water is one horizontal average in N uneven layers from the surface down (engine/water/basin.h).
// Equations, numbers and sources stand in the docstrings of this room and, for what a pond file need not
// give, beside the numbers in engine/water, each with its range.
//
// A step finds light, heat, density, diffusivity and plume of the water as it is, then mixes (surface
// exchange, heat of the step, everything the water carries) and reacts, or reacts and mixes: steps go in
// pairs whose second one has the other order, a symmetric splitting that ends on what mixing left. The runner
// makes every stretch between marks a whole number of pairs. The plume is integrated again at each mark,
// halfway between marks, and where air or depth change: on the clock and never by what has moved, since a
// threshold makes single hours jump with the step. In capped runs, whose end depends on it, it is integrated
// at each step.
//
// Both halves are positive for any step and conserve to rounding:
// - Transport is backward Euler with upwind flow, tridiagonal plus one dense row per rise of the plume
//   (Sherman, Morrison, Woodbury), solved with sums and products of positive numbers only. Central face
//   values come back as antidiffusive fluxes under the limiter of Boris and Book. First-order flow on the
//   same layers loses the thermocline.
// - Reactions: oxygen after the step solves a rising concave equation. Newton from the left of the root never
//   passes it, so that the amounts taken at any iterate leave oxygen and every demand fraction positive, and
//   the ledger is the sum of exactly those amounts. Nothing is clamped.
// - Surface exchange takes the oxygen that mixing brought to the surface, once before each mixing, and is
//   slowed only where it would empty a thin layer within the step.
// - Convection: layers form mixed blocks as long as the water above is denser than the water below. A rule of
//   neighbouring layers flickers between odd and even faces, and one that compares a cooled surface layer
//   with the water below digs too deep, the more so the thinner the layer. A face inside a mixed block
//   overturns the less, the less the water above it is denser than the block's below it: without that the
//   diffusivity jumps whenever a block parts, and the base of the mixed layer by day flickers however short
//   the steps.
//
// The splitting is of second order, but both halves are backward Euler and diffusivities are those of a
// step's start, so the whole is of first order in time (measured: 1.0). None of these betters the hours and
// lows that are off at steps of 360 s for what it costs: the mean of the diffusivities of a step's start and
// of its predicted end, those of the predicted end alone, the mean of this step's and the last one's,
// reactions in pairs of forward and backward Euler. At the default settings every night's low of the headline
// pond is within 0.05 mg/L of the converged one in time (measured: 0.03) and within 0.2 in depth, which
// tests/property/targets_test.cpp holds; what steps and layers cost and how far they are off elsewhere stands
// at the head of tests/bench/scorecard.cpp.
//
// A loop over layers that is to be computed side by side takes plain arrays, DAWNLINE_SIDE_BY_SIDE and no
// call that cannot be a part of it. One division is worth many products, so that inverses come from one
// (inverses()).
#pragma once

#include "engine/base/lane.h"
#include "engine/column/column_parts.h"
#include "engine/column/state.h"
#include "engine/water/basin.h"
#include "engine/water/parameters.h"

#include <vector>

namespace engine {

/// The air over the water for the kernels; one member or a pack.
template <class Real>
struct Air {
    Real shortwave = 0.0;         ///< Reaching the surface [W/m^2]
    Real temperature = 20.0;      ///< [degC]
    Real vapourPressure = 0.0;    ///< [Pa]
    Real wind10 = 0.0;            ///< On the pond [m/s]
    Real cloud = 0.0;             ///< Share of sky
    Real chlorophyllScale = 1.0;  ///< Of the pond's total over that at the start (a dated table)
    Real weedScale = 1.0;         ///< The same for the weed cover
};

/// The aerator's own numbers that do not change during a run.
struct AeratorSetup {
    int diffusers = 0;
    double freeAir = 0.0;          ///< Per diffuser [m^3/s]
    double bubbleDiameter = 3e-3;  ///< [m]
};

/// Parts of the physics that a check or a cause re-run may hold or leave out.
struct ColumnSwitches {
    bool heat = true;                ///< Surface heat and sunlight warm and cool the water
    bool mixing = true;              ///< Wind, convection and background diffusion; off: molecular only
    bool freezePlume = false;        ///< Keep the plume of the first running step (smooth problems)
    bool dissolution = true;         ///< Bubbles exchange oxygen
    double fixedDiffusivity = -1.0;  ///< [m^2/s] at all faces if not negative (smooth problems)
};

/// What a run leaves behind at a whole hour, so that another can go on from it.
template <class Real>
struct KeptWater {
    State<Real> state;
    Real chlorophyllScale = 1.0, weedScale = 1.0;  ///< Of the dated table, as last applied
};

/// The water of one member, or of a pack of members, and one step of it.
template <class Real>
class Column {
public:
    Column(const Grid& grid, const Parameters<Real>& parameters, const AeratorSetup& aerator,
           const BottomWater& bottom, const StartState<Real>& start, const ColumnSwitches& switches = {});
    Column(const Column&) = delete;  // its parts refer to its own grid
    Column& operator=(const Column&) = delete;

    /// Advances by `dt` under air and aeration that hold for the step (taken at its middle). Steps go in
    /// pairs, the first of which mixes before it reacts and the second after; two of one length are a
    /// symmetric splitting, which is of second order, and the state after them is one that mixing left.
    void step(double dt, const Air<Real>& air, const Aeration& aeration);

    /// Brings the plume up to date with the water for a step that is about to come, so that
    /// hypolimneticLift() holds for it.
    void preparePlume(const Aeration& aeration);

    /// d/dt of a state at an instant under the same physics. Never throws on trial states; continues its
    /// formulas outside their range.
    void rates(const Air<Real>& air, const Aeration& aeration, const State<Real>& state, State<Real>& out);

    /// The next step is the first of a pair.
    void startPair() { m_reactsFirst = false; }

    /// The plume is integrated again at the next step, whatever has moved (on the clock, each hour).
    void refreshPlume() { m_bubbles.isStale = true; }

    /// The water now, and going on from water that was kept: the same bits as one run, if it is kept after
    /// a pair of steps and the plume is found again there, as at each whole hour.
    [[nodiscard]] KeptWater<Real> keep() const {
        return {m_state, m_plants.chlorophyllScale, m_plants.weedScale};
    }
    void resume(const KeptWater<Real>& water);

    [[nodiscard]] const State<Real>& state() const { return m_state; }
    [[nodiscard]] State<Real>& state() { return m_state; }
    [[nodiscard]] const Grid& grid() const { return m_grid; }
    [[nodiscard]] const Parameters<Real>& parameters() const { return m_parameters; }
    [[nodiscard]] Ledger<Real>& ledger() { return m_ledger; }
    /// Oxygen exceeded by the best share of the volume now [g/m^3].
    [[nodiscard]] Real fishWater() const { return m_fish.best; }
    /// Oxygen of the whole pond [g]; fast plus medium debt of the whole pond [g].
    [[nodiscard]] Real oxygenStored() const;
    [[nodiscard]] Real debtStored() const;
    /// Un-ionised ammonia as nitrogen and hydrogen sulfide as sulfur where the fish are [g/m^3].
    [[nodiscard]] Real unionisedAmmonia() const;
    [[nodiscard]] Real hydrogenSulfide() const;
    /// [m^3/s], net: what the plume carries up through z_b now.
    [[nodiscard]] Real hypolimneticLift() const { return m_bubbles.hypolimneticLift; }
    /// Integrations of the plume so far, all lanes.
    [[nodiscard]] long plumeCount() const { return m_bubbles.count; }

    /// One column value by layer of one lane, as plain numbers.
    [[nodiscard]] std::vector<double> temperatures(int lane) const;
    [[nodiscard]] std::vector<double> solutes(Solute which, int lane) const;

private:
    [[nodiscard]] Real whereFishAre(Solute which, double (*toxicShare)(double temperature, double ph)) const;
    void densities(const State<Real>& state);
    void sunlight(const Air<Real>& air, const State<Real>& state);
    [[nodiscard]] Real surfaceLoss(const Air<Real>& air, const Real& surface) const;
    void heatRates(const Air<Real>& air, const State<Real>& state, double dt);
    void plume(const Aeration& aeration, const State<Real>& state);
    void integrate(const Aeration& aeration, const State<Real>& state);
    void diffusivities(const Air<Real>& air);
    void springWater();
    void applyPlantTable(const Air<Real>& air);
    void placeFish(const State<Real>& state);
    void reactionsOf(const Aeration& aeration, const State<Real>& state, double dt);
    void ratesByTemperature();
    void stirSediment(const Aeration& aeration, const Real& stirs);
    void limitByLight();
    void takeBubbles(const Aeration& aeration);
    void splash(const Aeration& aeration, const State<Real>& state);
    void releaseMuck(const Aeration& aeration, const Real& stirs, const State<Real>& state, double dt);
    [[nodiscard]] Real reaches(const Aeration& aeration) const;
    void prepareMuck(double dt);
    void exchangeOf(const Air<Real>& air, const State<Real>& state);
    void exchangeSurface(double dt, const Air<Real>& air);
    void mix(double dt, const Air<Real>& air);
    void react(double dt, const Aeration& aeration);
    void stirMuck(const Aeration& aeration, double dt);
    void record(double dt);
    void gather(const State<Real>& state);

    Grid m_grid;
    Parameters<Real> m_parameters;
    AeratorSetup m_aerator;
    BottomWater m_bottom;
    ColumnSwitches m_switches;
    int m_layers;
    double m_windAtSeven;             // Wind at 7 m over that at 10 m
    std::vector<double> m_perVolume;  // One over the volume of each layer [1/m^3]
    bool m_reactsFirst = false;
    State<Real> m_state;
    Ledger<Real> m_ledger;

    WaterByLayer<Real> m_water;
    LightAndHeat<Real> m_sun;
    PlantStand<Real> m_plants;
    VerticalMixing<Real> m_mixing;
    WaterTransport<Real> m_transport;
    BubblePlume<Real> m_bubbles;
    SplashedWater m_surfaceAerator;
    FishHabitat<Real> m_fish;
    MuckShares m_muck;
    ReactionStage<Real> m_reacting;
};

}  // namespace engine
