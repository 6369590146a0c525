// The water of a pond and one step of it, for one member or a pack of members side by side.
//
// The water is one horizontal average in N uneven layers from the surface down (engine/water/basin.h).
// Equations, numbers and sources stand in the docstrings of this room and, for what a pond file need not
// give, beside the numbers in engine/water, each with its range.
//
// A step finds light, heat, plume and reactions of the water as it is and then moves the water with the
// reactions' amounts as a source, in two implicit stages (SDIRK of second order, kStageShare). Each stage
// first finds the density at its own end, by Newton's method on the density alone, since mixing hangs on
// nothing else that a step changes: diffusivities taken from the start of a step are a relay, that sun and
// wind switch to and fro, whose answers hang on the step. The plume is integrated again at each mark, halfway
// between marks, and where air or depth change: on the clock and never by what has moved, since a threshold
// makes single hours jump with the step. In capped runs, whose end depends on it, it is integrated at each
// step.
//
// What is left stays positive for any step and conserves to rounding:
// - A stage is backward Euler with flow that is central as far as diffusion carries it, tridiagonal plus one
//   dense row per rise of the plume (Sherman, Morrison, Woodbury), solved with sums and products of positive
//   numbers only; the surface's exchange with the air is one more entry of that matrix, so that nothing has
//   to be slowed. Central face values come back as antidiffusive fluxes under the limiter of Boris and Book.
//   First-order flow on the same layers loses the thermocline.
// - Two stages may pass zero, one stage does not: where they do, a solute is brought back towards the answer
//   of one stage over the whole step, by no more than it takes.
// - Reactions: oxygen after the step solves a rising concave equation. Newton from the left of the root never
//   passes it, so that the amounts taken at any iterate leave oxygen and every demand fraction positive, and
//   the ledger is the sum of exactly those amounts. Nothing is clamped.
//
// How far off steps and layers are, and what they cost, stands at the head of tests/bench/scorecard.cpp.
//
// A loop over layers that is to be computed side by side takes plain arrays, DAWNLINE_SIDE_BY_SIDE and no
// call that cannot be a part of it. One division is worth many products, so that inverses come from one
// (inverses()).
#pragma once

#include "engine/base/lane.h"
#include "engine/column/column_parts.h"
#include "engine/column/state.h"
#include "engine/water/basin.h"
#include "engine/water/inflowing_water.h"
#include "engine/water/parameters.h"

#include <array>
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

    /// Advances by `dt` under air and aeration that hold for the step (taken at its middle).
    void step(double dt, const Air<Real>& air, const Aeration& aeration, const InflowingWater& inflow = {});

    /// Brings the plume up to date with the water for a step that is about to come, so that
    /// hypolimneticLift() holds for it.
    void preparePlume(const Aeration& aeration);

    /// d/dt of a state at an instant under the same physics. Never throws on trial states; continues its
    /// formulas outside their range.
    void rates(const Air<Real>& air, const Aeration& aeration, const State<Real>& state, State<Real>& out,
               const InflowingWater& inflow = {});

    /// The plume is integrated again at the next step, whatever has moved (on the clock, each hour).
    void refreshPlume() { m_bubbles.isStale = true; }

    /// The water now, and going on from water that was kept: the same bits as one run, if the plume is found
    /// again there, as at each whole hour.
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
    /// Oxygen above z_b, of the whole pond without bottom water [g].
    [[nodiscard]] Real oxygenAbove() const { return heldAbove(kOxygen); }
    /// Labile organic matter of water and sediment, and that of the water above z_b alone [g O2].
    [[nodiscard]] Real organicStored() const;
    [[nodiscard]] Real labileAbove() const { return heldAbove(kLabile); }
    /// Volume above z_b, of the whole pond without bottom water [m^3].
    [[nodiscard]] double openVolume() const { return m_organic.openVolume; }
    /// Oxygen where the fish are [g/m^3] and their temperature [degC].
    [[nodiscard]] Real oxygenAtFish() const;
    [[nodiscard]] Real temperatureAtFish() const;
    /// Un-ionised ammonia as nitrogen and hydrogen sulfide as sulfur where the fish are [g/m^3].
    /// @param ph  Of the water there.
    [[nodiscard]] Real unionisedAmmonia(double ph) const;
    [[nodiscard]] Real hydrogenSulfide(double ph) const;
    /// [m^3/s], net: what the plume carries up through z_b now.
    [[nodiscard]] Real hypolimneticLift() const { return m_bubbles.hypolimneticLift; }
    /// Integrations of the plume so far, all lanes.
    [[nodiscard]] long plumeCount() const { return m_bubbles.count; }

    /// One column value by layer of one lane, as plain numbers.
    [[nodiscard]] std::vector<double> temperatures(int lane) const;
    [[nodiscard]] std::vector<double> solutes(Solute which, int lane) const;

private:
    [[nodiscard]] Real heldAbove(Solute which) const;
    [[nodiscard]] Real whereFishAre(Solute which, double ph,
                                    double (*toxicShare)(double temperature, double ph)) const;
    /// The air with the wind that the balance found.
    [[nodiscard]] Air<Real> onPond(Air<Real> air) const {
        air.wind10 = m_parameters.surface.windFactor * air.wind10;
        return air;
    }
    void placeWeeds(const Real& scale);
    void startOrganic();
    void settle(double dt);
    void densities(const State<Real>& state);
    void sunlight(const Air<Real>& air, const State<Real>& state);
    [[nodiscard]] Real surfaceLoss(const Air<Real>& air, const Real& surface) const;
    void meetAir(const Air<Real>& air, const InflowingWater& inflow, const State<Real>& state);
    void plume(const Aeration& aeration, const State<Real>& state);
    void integrate(const Aeration& aeration, const State<Real>& state);
    [[nodiscard]] bool mixingChanges() const {
        return m_switches.mixing && m_switches.fixedDiffusivity < 0.0;
    }
    void stirring(const Air<Real>& air);
    void returnedDensity();
    void diffusivityAtEnd(double dt, int turns);
    void enter(const InflowingWater& inflow);
    void bring(const Real& flow, const Real& temperature, const std::array<Real, kSolutes>& holds);
    void bringInto(int i, const Real& share, const Real& flow, const Real& temperature, const Real& density,
                   const std::array<Real, kSolutes>& holds);
    void dilute(double dt, const InflowingWater& inflow);
    void applyPlantTable(const Air<Real>& air);
    void placeFish(const State<Real>& state);
    void reactionsOf(const Aeration& aeration, const State<Real>& state, double dt);
    void ratesByTemperature(const State<Real>& state);
    void stirSediment(const Aeration& aeration, const Real& stirs, const State<Real>& state);
    void limitByLight();
    void organicSources();
    void limitBubbles(const State<Real>& state);
    void takeBubbles(const Aeration& aeration, const State<Real>& state, double dt);
    void splash(const Aeration& aeration, const State<Real>& state);
    void releaseMuck(const Aeration& aeration, const Real& stirs, const State<Real>& state, double dt);
    [[nodiscard]] Real reaches(const Aeration& aeration) const;
    void prepareMuck(double dt);
    void react(double dt, const Aeration& aeration, const InflowingWater& inflow);
    void move(double dt);
    void startStage(bool isFirst, double dt);
    void keepPositive(double dt, std::array<Real, kSolutes>& surface);
    [[nodiscard]] std::array<Real, kSolutes> carrySolutes(Fields<Real, kSolutes>& fields);
    void stirMuck(const Aeration& aeration, double dt);
    void record(double dt);
    void gather(const State<Real>& state);

    Grid m_grid;
    Parameters<Real> m_parameters;
    AeratorSetup m_aerator;
    BottomWater m_bottom;
    ColumnSwitches m_switches;
    int m_layers;
    double m_windAtTwo;               // Wind at 2 m over that at 10 m
    std::vector<double> m_perVolume;  // One over the volume of each layer [1/m^3]
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
    OrganicMatter<Real> m_organic;
    MuckShares m_muck;
    ReactionStage<Real> m_reacting;
};

}  // namespace engine
