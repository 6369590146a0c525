#include "engine/ensemble/uncertain_list.h"

#include <algorithm>

namespace engine {
namespace {

constexpr MeterError kShelterMeasured{0.0, 1.2};                // judgement
constexpr MeterError kNonRecirculatedShareMeasured{0.0, 1.15};  // judgement
constexpr MeterError kFlowMeter{0.0, 1.1};                      // trade: flow meter +-10 %
constexpr MeterError kThermometer{0.15, 1.0};                   // trade: +-0.1 to 0.2 degC
constexpr MeterError kOxygenMeter{0.2, 1.0};     // trade: optical handheld, +-0.2 mg/L in the field
constexpr MeterError kBubbleByEye{0.0, 1.2};     // judgement
constexpr MeterError kSalinityMeter{0.0, 1.02};  // judgement
constexpr MeterError kTransferTest{0.0, 1.1};    // judgement
constexpr Prior kNameplate{1.0, 0.69, 1.45,
                           "air flow from a nameplate: +-25 % (1 sigma), common practice, no source"};
constexpr Prior kPlumeLift{1.0, 1.0 / 1.4, 1.4,
                           "lift of a plume over the model's; common practice, no source"};
constexpr Prior kSpringGuess{1.0, 0.5, 2.0, "a spring's number that was guessed; judgement"};
constexpr Prior kTransferGuess{1.0, 0.67, 1.5, "standard transfer that was guessed; judgement"};
// An area from an aerial photograph, trade: +-5 %; alone of all plain numbers it is a reading of a map.
constexpr MeterError kAreaFromMap{0.0, 1.05};
constexpr Prior kAreaGuess{1.0, 0.8, 1.25, "area that was guessed; judgement"};

void addSpring(UncertainList& list) {
    if (!list.model().pond.spring) {
        return;
    }
    const Spring& spring = *list.model().pond.spring;
    list.key("spring.flow_l_per_s", "L/s", spring.flow_lPerS, kSpringGuess, kFlowMeter,
             [](MemberSource& s) -> MaybeQuantity& { return s.pond.spring->flow_lPerS; });
    list.key("spring.temperature_c", "degC", spring.temperature, kSpringGuess, kThermometer,
             [](MemberSource& s) -> MaybeQuantity& { return s.pond.spring->temperature; });
    list.key("spring.oxygen_mg_per_l", "mg/L", spring.oxygen, kSpringGuess, kOxygenMeter,
             [](MemberSource& s) -> MaybeQuantity& { return s.pond.spring->oxygen; })
        .spread.least = 0.0;
    list.givenKey("spring.salinity", "1", spring.salinity, kSpringGuess, kSalinityMeter,
                  [](MemberSource& s) -> MaybeQuantity& { return s.pond.spring->salinity; });
}

/// The pond's size, where it meets what does not grow with it: plumes, a spring, a surface aerator.
void addArea(UncertainList& list) {
    const BasinShape& shape = list.model().pond.basin;
    const Quantity area = shape.contours.empty() ? *shape.area : shape.contours.front().area;
    UncertainInput& input = list.add("area_m2", "m2", spreadOf(area, kAreaGuess, kAreaFromMap));
    input.measured = isMeasured(area);
    input.meter = kAreaFromMap;
    input.intoMember = [central = area.value](Member& m, const MemberSource&, double value) {
        const double ratio = value / central;
        Parameters<double>& p = m.parameters;
        for (double* perPond :
             {&p.bubbles.nonRecirculatedShare, &p.spring.flow, &p.surface.aeratorTransfer, &p.muck.store}) {
            *perPond /= ratio;
        }
    };
}

/// A number of the aerator, which a member holds over the central run's.
void addSource(UncertainList& list, const char* name, const char* unit, const MaybeQuantity& given,
               const Prior& prior, const MeterError& meter, double BubbleParameters<double>::*factor) {
    UncertainInput& input = list.add(name, unit, given ? spreadOf(*given, prior, meter) : spreadOf(prior));
    input.measured = given && isMeasured(*given);
    input.meter = meter;
    input.intoMember = [factor, central = input.spread.value](Member& m, const MemberSource&, double value) {
        m.parameters.bubbles.*factor = value / central;
    };
}

}  // namespace

void addAirInputs(UncertainList& list) {
    const PondModel& model = list.model();
    const MaybeQuantity& given = model.pond.place.windShelter;
    UncertainInput& shelter =
        list.add("wind_shelter", "1",
                 given ? spreadOf(*given, kWindShelter, kShelterMeasured) : spreadOf(kWindShelter));
    shelter.spread.most = std::max(1.0, shelter.spread.value);
    shelter.measured = given && isMeasured(*given);
    shelter.meter = kShelterMeasured;
    shelter.intoMember = [central = shelter.spread.value](Member& m, const MemberSource&, double value) {
        m.windFactor = central > 0.0 ? value / central : 1.0;
    };
    list.prior("gas exchange over the model's", "1", kExchangeFactor,
               [](Member& m, double ratio) { m.parameters.surface.exchangeFactor *= ratio; });
    if (model.pond.aerator) {
        const Aerator& aerator = *model.pond.aerator;
        UncertainInput& net = list.key("net_share", "1", aerator.nonRecirculatedShare, kNonRecirculatedShare,
                                       kNonRecirculatedShareMeasured, [](MemberSource& s) -> MaybeQuantity& {
                                           return s.pond.aerator->nonRecirculatedShare;
                                       });
        net.spread.most = 1.0;
        list.prior("lift of a plume over the model's", "1", kPlumeLift,
                   [](Member& m, double ratio) { m.parameters.bubbles.nonRecirculatedShare *= ratio; });
        addSource(list, "free_air_l_per_min", "L/min", aerator.freeAir_lPerMin, kNameplate, kFlowMeter,
                  &BubbleParameters<double>::freeAirFactor);
        addSource(list, "bubble_mm", "mm", aerator.bubble_mm, kBubble_mm, kBubbleByEye,
                  &BubbleParameters<double>::diameterFactor);
        list.prior("reach of a diffuser over the muck", "m", kMuckReach,
                   [](Member& m, double ratio) { m.parameters.muck.reach *= ratio; });
    }
    addSpring(list);
    if (model.pond.surfaceAerator) {
        list.key("standard_transfer_kg_per_h", "kg/h", model.pond.surfaceAerator->transfer_kgPerH,
                 kTransferGuess, kTransferTest,
                 [](MemberSource& s) -> MaybeQuantity& { return s.pond.surfaceAerator->transfer_kgPerH; });
        list.prior("transfer in pond over clean water", "1", kAeratorAlpha,
                   [](Member& m, double ratio) { m.parameters.surface.aeratorTransfer *= ratio; });
    }
    if (model.pond.aerator || model.pond.spring || model.pond.surfaceAerator) {
        addArea(list);
    }
}

void addMixingInputs(UncertainList& list) {
    list.prior("friction of the wind", "1", kWindFriction,
               [](Member& m, double ratio) { m.parameters.mixing.friction *= ratio; });
    list.prior("background diffusion", "m2/s", kBackgroundDiffusion_m2PerS,
               [](Member& m, double ratio) { m.parameters.mixing.background *= ratio; });
}

}  // namespace engine
