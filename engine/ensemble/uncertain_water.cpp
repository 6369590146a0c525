#include "engine/ensemble/uncertain_list.h"

#include <cmath>

namespace engine {
namespace {

constexpr MeterError kSecchiDisc{0.0, 1.075};     // trade: observer +-5 to 10 %
constexpr MeterError kChlorophyllLab{0.0, 1.12};  // trade: +-10 to 15 %
constexpr MeterError kCoverByEye{0.0, 1.3};       // judgement; none stays none
// Trade's derivation: +-0.2 mg/L at dusk and at dawn, ten hours apart.
constexpr MeterError kDuskAndDawn{0.03, 1.0};
// Carlson's relation on ponds, trade: a factor of 2 either way (1 sigma).
constexpr Prior kFromSecchi{1.0, 0.32, 3.13, "chlorophyll over its value from Secchi depth"};
// Trade's table of unknown ponds, the same factor in all its classes.
constexpr Prior kSecchiGuess{1.0, 0.5, 2.0, "Secchi depth that was guessed; common practice, no source"};
constexpr Prior kCoverGuess{1.0, 0.4, 2.0, "weed cover that was guessed; judgement"};
constexpr Prior kNoCover{0.0, 0.0, 20.0, "percent; weeds that no one wrote down; judgement"};
// Community respiration at 20 degC, trade's table of unknown ponds: 0.10 (0.05 to 0.2) in the average pond.
constexpr Prior kRespirationGuess{1.0, 0.5, 2.0, "community respiration; common practice, no source"};

// Trade's correlations (common practice, no source).
constexpr double kSecchiWithChlorophyll = -0.7;
constexpr double kRespirationWithChlorophyll = 0.8;

Prior times(double value, const Prior& relative) {
    return {value, value * relative.low, value * relative.high, relative.source};
}

double communityRespiration(double chlorophyll) {
    return kRespirationBase_mgPerLHour.value + kRespirationPerChlorophyll.value * chlorophyll;
}

/// The water's respiration as a whole, which is what the trade's table and its correlation with chlorophyll
/// are about; it stands for both of its parts.
void addRespiration(UncertainList& list) {
    const double central = communityRespiration(startChlorophyll(list.model().pond));
    UncertainInput& input =
        list.add("community respiration at 20 degC", "mg/L/h", spreadOf(times(central, kRespirationGuess)));
    input.group = InputGroup::Algae;
    input.withChlorophyll = kRespirationWithChlorophyll;
    input.meter = kDuskAndDawn;
    input.intoMember = [](Member& m, const MemberSource& s, double value) {
        const double ratio = value / communityRespiration(startChlorophyll(s.pond));
        m.parameters.respiration.base *= ratio;
        m.parameters.respiration.perChlorophyll *= ratio;
    };
}

void addWeeds(UncertainList& list) {
    const MaybeQuantity& cover = list.model().pond.water.weedsCover_percent;
    UncertainInput& input =
        list.key("weeds_cover_percent", "%", cover, cover ? kCoverGuess : kNoCover, kCoverByEye,
                 [](MemberSource& s) -> MaybeQuantity& { return s.pond.water.weedsCover_percent; });
    input.spread.least = 0.0;
    input.spread.most = 100.0;
    list.prior("shade of weeds", "m2/g", kWeedShading_m2PerG,
               [](Member& m, double ratio) { m.parameters.weeds.shading *= ratio; });
    list.prior("weed mass at full cover", "g/m2", kWeedMass_gPerM2,
               [](Member& m, double ratio) { m.parameters.weeds.mass *= ratio; });
    list.prior("weed photosynthesis at 20 degC", "mg/g/h", kWeedPhotosynthesis_mgPerGHour,
               [](Member& m, double ratio) { m.parameters.weeds.photosynthesis *= ratio; });
    list.prior("weed respiration at 20 degC", "mg/g/h", kWeedRespiration_mgPerGHour,
               [](Member& m, double ratio) { m.parameters.weeds.respiration *= ratio; });
}

}  // namespace

void addWaterInputs(UncertainList& list) {
    const PondModel& model = list.model();
    const Water& water = model.pond.water;
    const Prior chlorophyll = times(startChlorophyll(model.pond), kFromSecchi);
    UncertainInput& algae =
        list.key("chlorophyll_ug_per_l", "ug/L", water.chlorophyll_ugPerL, chlorophyll, kChlorophyllLab,
                 [](MemberSource& s) -> MaybeQuantity& { return s.pond.water.chlorophyll_ugPerL; });
    algae.group = InputGroup::Algae;
    algae.withChlorophyll = 1.0;
    addRespiration(list);
    list.prior("photosynthesis of chlorophyll at 25 degC", "mg/mg/h", kPhotosynthesis_mgPerMgHour,
               [](Member& m, double ratio) { m.parameters.growth.rate *= ratio; });
    UncertainInput& secchi =
        list.key("secchi_m", "m", water.secchi, times(water.secchi->value, kSecchiGuess), kSecchiDisc,
                 [](MemberSource& s) -> MaybeQuantity& { return s.pond.water.secchi; });
    secchi.group = InputGroup::Algae;
    secchi.withChlorophyll = kSecchiWithChlorophyll;
    list.prior("light that saturates photosynthesis", "umol/m2/s", kSaturationLight_umol,
               [](Member& m, double ratio) { m.parameters.growth.saturationLight *= ratio; });
    list.prior("theta of photosynthesis", "1", kPhotosynthesisTheta, [](Member& m, double ratio) {
        m.parameters.growth.theta *= ratio;
        m.parameters.growth.rate *= std::pow(ratio, -5.0);  // its rate is known at 25 degC and kept at 20
    });
    list.prior("theta of respiration", "1", kRespirationTheta,
               [](Member& m, double ratio) { m.parameters.respiration.theta *= ratio; });
    list.prior("albedo", "1", kAlbedo, [](Member& m, double ratio) { m.parameters.light.albedo *= ratio; });
    list.prior("oxygen of living chlorophyll", "mg/ug", kOxygenOfChlorophyll,
               [](Member& m, double ratio) { m.parameters.organic.ofChlorophyll *= ratio; });
    list.prior("breathed at once of what algae make", "1", kBreathedAtOnce,
               [](Member& m, double ratio) { m.parameters.organic.breathedAtOnce *= ratio; });
    list.prior("maintenance of living algae at 20 degC", "1/d", kMaintenance_perDay,
               [](Member& m, double ratio) { m.parameters.organic.maintenance *= ratio; });
    list.prior("decay of labile matter at 20 degC", "1/d", kLabileRate_perDay,
               [](Member& m, double ratio) { m.parameters.organic.decay *= ratio; });
    list.prior("settling of labile matter", "m/d", kSettling_mPerDay,
               [](Member& m, double ratio) { m.parameters.organic.settling *= ratio; });
    list.prior("decay of labile mud at 20 degC", "1/d", kMudRate_perDay,
               [](Member& m, double ratio) { m.parameters.organic.mudDecay *= ratio; });
    list.prior("labile matter below over above z_b", "1", kLabileBelow,
               [](Member& m, double ratio) { m.parameters.organic.below *= ratio; });
    list.prior("growth on the bed at 20 degC", "mg/m2/h", kBenthic_mgPerM2Hour,
               [](Member& m, double ratio) { m.parameters.organic.benthic *= ratio; });
    if (!water.changes.empty()) {
        list.prior("debt of dead weeds", "g/g", kDebtOfWeeds,
                   [](Member& m, double ratio) { m.parameters.organic.ofWeeds *= ratio; });
    }
    if (model.bottom.exists()) {
        UncertainInput& below =
            list.add("chlorophyll below over above z_b", "1", spreadOf(kChlorophyllBelow));
        below.intoMember = [](Member& m, const MemberSource& s, double value) {
            // At the start a layer holds chl * (1 - share below z_b * (1 - ratio)).
            const double above = startChlorophyll(s.pond);
            if (!(above > 0.0)) {
                return;
            }
            for (double& layer : m.start.chlorophyll) {
                const double share = (1.0 - layer / above) / (1.0 - kChlorophyllBelow.value);
                layer = above * (1.0 - share * (1.0 - value));
            }
        };
    }
    addWeeds(list);
}

}  // namespace engine
