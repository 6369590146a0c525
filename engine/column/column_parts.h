#pragma once

#include "engine/column/mixing.h"
#include "engine/column/plume.h"
#include "engine/column/reactions.h"
#include "engine/column/state.h"
#include "engine/column/transport.h"
#include "engine/water/basin.h"
#include "engine/water/fish_water.h"

#include <array>
#include <vector>

namespace engine {

/// What the aerator does during a step; the same for all members of a pack.
struct Aeration {
    int open = 0;                  ///< Diffusers running
    double depth = 0.0;            ///< [m]
    bool surface = false;          ///< The surface aerator runs
    double surfaceTransfer = 0.0;  ///< Of surface air beside it: clean water, 20 degC, no oxygen [g/s]
    bool operator==(const Aeration&) const = default;
};

// What a column keeps from step to step, by process. Arrays have size N, or N + 1 where they are of faces.

/// Numbers of the state by layer, one beside the other, as last taken from it.
template <class Real>
struct WaterByLayer {
    std::vector<Real> temperature;  ///< [degC]
    std::vector<Real> salinity;     ///< [-]
    std::vector<Real> chlorophyll;  ///< [ug/L]
    std::vector<Real> density;      ///< Over kDensityOrigin [kg/m^3]

    explicit WaterByLayer(int n)
        : temperature(n, Real(0.0)), salinity(temperature), chlorophyll(temperature), density(temperature) {}
};

/// Sunlight by layer, how fast it warms the water, and what the surface loses to the air.
template <class Real>
struct LightAndHeat {
    std::vector<double> nearInfrared;  ///< Share left at each face
    std::vector<Real> left;            ///< Share of visible light that passes a layer
    std::vector<Real> optical;         ///< Optical thickness of a layer [-]
    std::vector<Real> light;           ///< Mean of a layer [umol/m^2/s]
    std::vector<Real> heating;         ///< Of a layer by light [K/s]
    AirExchange<Real> air;             ///< Of the surface layer's heat, towards the warmth without loss

    explicit LightAndHeat(int n) : left(n, Real(0.0)), optical(left), light(left), heating(left) {}
};

/// Algae and weeds under the pond file's dated table.
template <class Real>
struct PlantStand {
    std::vector<Real> weedPerArea;  ///< Share of the weed mass by layer over its volume [1/m]
    std::vector<Real> shade;        ///< Of weeds, what a layer is thicker by optically [-]
    std::vector<Real> amongWeeds;   ///< Light where they stand over the layer's mean [-]
    bool hasWeeds = false;          ///< Some member has
    Real weedMassAtStart = 0.0, weedCoverAtStart = 0.0;  ///< [g/m^2], 0 to 1
    Real chlorophyllScale = 1.0, weedScale = 1.0;        ///< Of the table, as last applied

    explicit PlantStand(int n) : weedPerArea(n, Real(0.0)), shade(n, Real(0.0)), amongWeeds(n, Real(1.0)) {}
};

/// Vertical mixing by wind, convection and background diffusion.
template <class Real>
struct VerticalMixing {
    FaceStirring<Real> stirring;
    std::vector<Real> diffusivity;  ///< At the faces [m^2/s]
    std::vector<Real> slope;        ///< Of the flux with the gradient [m^2/s]
    std::vector<Real> density;      ///< Of the layers at the end of a stage, as found so far [kg/m^3]
    std::vector<Real> start;        ///< The same with all that the stage brings but mixing [kg/m^3]
    std::vector<Real> returned;     ///< What plume and inflow bring of it [kg/m^3/s]
    Fields<Real, 1> carried;        ///< Density as it is transported [kg/m^3]
    Real buoyancyFlux = 0.0;        ///< Lost at the surface [m^2/s^3]

    explicit VerticalMixing(const Grid& grid)
        : stirring(grid),
          diffusivity(grid.face.size(), Real(0.0)),
          slope(diffusivity),
          density(grid.middle.size(), Real(0.0)),
          start(density),
          returned(density),
          carried(grid.middle.size()) {}
};

/// What moves the water and what it carries.
template <class Real>
struct WaterTransport {
    Flows<Real> flows;
    Transport<Real> heat, solutes, density;
    Fields<Real, 1> heatBefore;       ///< At the start of the step
    Fields<Real, kSolutes> before;    ///< The same of the solutes
    Fields<Real, kSolutes> reacted;   ///< That, and what the reactions of the step make of it
    Fields<Real, kSolutes> cautious;  ///< The step's end by one implicit stage
    AirExchange<Real> oxygenExchange;
    Fields<Real, 1> heatBrought;          ///< By entering water into each layer [degC m^3/s]
    Fields<Real, kSolutes> brought;       ///< The same of the solutes, times m^3/s
    std::vector<Real> densityBrought;     ///< [kg/s]
    std::array<Real, kSolutes> inflow{};  ///< The sum over the layers
    bool hasToxicants = false;            ///< Sulfide or ammonia is there to be carried

    explicit WaterTransport(const Grid& grid)
        : flows(grid.layers()),
          heat(grid),
          solutes(grid),
          density(grid),
          heatBefore(grid.middle.size()),
          before(grid.middle.size()),
          reacted(before),
          cautious(before),
          heatBrought(grid.middle.size()),
          brought(grid.middle.size()),
          densityBrought(grid.middle.size(), Real(0.0)) {}
};

/// The diffusers' plume and the oxygen of its bubbles.
template <class Real>
struct BubblePlume {
    PlumeIntegrator<Real> integrator;
    Aeration last;                ///< For which the plume was last looked at
    bool isStale = true;          ///< To be integrated at the next step, whatever has moved
    long count = 0;               ///< Integrations so far, all lanes
    std::vector<Real> net;        ///< Oxygen from bubbles by layer, may be negative [g/m^3/s]
    std::vector<Real> reference;  ///< Oxygen there at that time [g/m^3]
    Real saturation = 0.0;        ///< Of water in touch with the bubbles at the diffuser [g/m^3]
    Real hypolimneticLift = 0.0;  ///< Carried up through z_b, net [m^3/s]
    SurfaceJet<Real> jet;         ///< What it stirs where it surfaces

    explicit BubblePlume(int n) : integrator(n), net(n, Real(0.0)), reference(n, Real(1.0)) {}
};

/// The surface aerator.
struct SplashedWater {
    double reach = 0.0;      ///< Water that it turns over [m^3]
    bool isInRates = false;  ///< It ran when rates were last found
};

/// Where the fish are and the oxygen they find.
template <class Real>
struct FishHabitat {
    FishWater<Real> water;
    std::vector<Real> places;  ///< Share of the fish by layer
    Real best = 0.0;           ///< Oxygen exceeded by the best share of the volume [g/m^3]
    std::vector<Real> oxygen, temperature;

    explicit FishHabitat(const Grid& grid)
        : water(grid), places(grid.middle.size(), Real(0.0)), oxygen(places), temperature(places) {}
};

/// Labile organic matter: what a step brings and where it goes.
template <class Real>
struct OrganicMatter {
    std::vector<double> open;        ///< Share of each layer above z_b
    double openVolume = 0.0;         ///< [m^3]
    Real oldDemand = 0.0;            ///< Of the sediment without its labile matter, at 20 degC [g/m^2/s]
    std::vector<Real> made;          ///< In the water [g/m^3/s]
    std::vector<Real> loaded;        ///< [g/m^3/s]
    std::vector<Real> benthic;       ///< On the bed [g/m^2/s]
    std::vector<Real> ofWeeds;       ///< Oxygen of weeds in this light [g/m^3/s]
    std::vector<Real> weedsBreathe;  ///< [g/m^3/s]
    std::vector<Real> burns;         ///< On the sediment [1/s]

    explicit OrganicMatter(int n)
        : open(n, 0.0),
          made(n, Real(0.0)),
          loaded(made),
          benthic(made),
          ofWeeds(made),
          weedsBreathe(made),
          burns(made) {}
};

/// Shares of the muck's store that move in one step, as last found.
struct MuckShares {
    double step = -1.0;  ///< [s]
    double released = 0.0, rebuilt = 0.0;
};

/// Sources and demands of oxygen, and what they did last.
template <class Real>
struct ReactionStage {
    Reactions<Real> rates;
    OxygenAndDebt<Real> water;
    ReactionAmounts<Real> amounts;

    explicit ReactionStage(int n) : rates(n), water(n), amounts(n) {}
};

}  // namespace engine
