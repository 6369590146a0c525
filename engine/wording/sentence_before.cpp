#include "engine/ensemble/chances.h"
#include "engine/run/profile_check.h"
#include "engine/run/triage.h"
#include "engine/wording/sentence_builder.h"

#include <algorithm>
#include <array>
#include <cmath>

namespace engine {
namespace {

SentenceKey keyOf(ProfileDoubt doubt) {
    switch (doubt) {
        case ProfileDoubt::ThinAir:
            return SentenceKey::ProfileThinAir;
        case ProfileDoubt::Supersaturated:
            return SentenceKey::ProfileSupersaturated;
        case ProfileDoubt::Unexplained:
            return SentenceKey::ProfileUnexplained;
        case ProfileDoubt::Impossible:
            return SentenceKey::ProfileImpossible;
        case ProfileDoubt::SeaLevelMeter:
            return SentenceKey::ProfileSeaLevelMeter;
        case ProfileDoubt::Inverted:
            return SentenceKey::ProfileInverted;
        case ProfileDoubt::HiddenSalt:
            return SentenceKey::ProfileHiddenSalt;
        case ProfileDoubt::UniformLayer:
            return SentenceKey::ProfileUniformLayer;
        case ProfileDoubt::AeratedSample:
            return SentenceKey::ProfileAeratedSample;
        case ProfileDoubt::RisingOxygen:
            return SentenceKey::ProfileRisingOxygen;
    }
    return SentenceKey::Count;
}

/// The numbers of any finding; a sentence takes those it has a place for.
std::vector<SentenceValue> valuesOf(const Pond& pond, const ProfileFinding& finding) {
    const bool isOfTemperature =
        finding.doubt == ProfileDoubt::Inverted || finding.doubt == ProfileDoubt::HiddenSalt;
    const Measure reading = isOfTemperature ? Measure::Degrees : Measure::Oxygen;
    return {number("depth", Measure::Depth, finding.depth),
            number("below", Measure::Depth, finding.below),
            number("first", reading, finding.first),
            number("second", reading, finding.second),
            oxygen("oxygen", finding.first),
            oxygen("saturation", finding.saturation),
            oxygen("seaLevel", finding.seaLevel),
            number("elevation", Measure::Input, std::round(*pond.place.elevation)),
            number("percent", Measure::Percent, 100.0 * finding.first / finding.saturation),
            number("excess", Measure::Percent, 100.0 * (finding.seaLevel / finding.saturation - 1.0))};
}

void addRatio(const PondModel& model, const Triage& triage, const SentenceBuilder& builder) {
    if (!triage.band) {
        return;
    }
    const SentenceValue debt = number("debt", Measure::Mass, model.debt_kg);
    if (!triage.ratio) {
        builder.add(SentenceKey::DebtWithoutReserve, {debt});
        return;
    }
    builder.add(SentenceKey::DebtRatio, {debt, number("pool", Measure::Mass, model.oxygenReserve_kg),
                                         number("ratio", Measure::Plain, *triage.ratio)});
    switch (*triage.band) {
        case RatioBand::Low:
            return builder.add(SentenceKey::RatioLow);
        case RatioBand::RampRequired:
            return builder.add(SentenceKey::RatioRampRequired);
        case RatioBand::High:
            return builder.add(SentenceKey::RatioHigh);
        case RatioBand::DoNotStart:
            return builder.add(SentenceKey::RatioDoNotStart);
    }
}

void addFirstDose(const Triage& triage, const SentenceBuilder& builder) {
    if (!triage.firstDose) {
        return;
    }
    const FirstDose& dose = *triage.firstDose;
    const SentenceValue depth = number("depth", Measure::Depth, dose.depth);
    if (!(dose.ofBottom_percent > 0.0)) {
        builder.add(SentenceKey::TriageLiftsNothing, {depth});
        return;
    }
    builder.add(SentenceKey::TriageFirstDose, {number("minutes", Measure::Minutes, dose.minutes), depth,
                                               number("bottom", Measure::Percent, dose.ofBottom_percent),
                                               number("pond", Measure::Percent, dose.ofPond_percent)});
    const std::optional<double> cap = triage.band ? doseCap_percent(*triage.band) : std::nullopt;
    if (cap && dose.ofBottom_percent > *cap) {
        const double minutes = dose.minutes * *cap / dose.ofBottom_percent;
        builder.add(SentenceKey::TriageFirstDoseTooLarge,
                    {number("cap", Measure::Percent, *cap), number("minutes", Measure::Minutes, minutes)});
    }
}

void addLayering(const Layering& layering, const SentenceBuilder& builder) {
    constexpr std::array kKeys{SentenceKey::TriageMixed, SentenceKey::TriageOnlyByTemperature,
                               SentenceKey::TriageLayered};
    // "By so much", whichever of the two is warmer or better aired.
    builder.add(kKeys[static_cast<std::size_t>(layering.kind)],
                {number("degrees", Measure::Oxygen, std::fabs(layering.temperature)),
                 oxygen("oxygen", std::fabs(layering.oxygen)),
                 number("salinity", Measure::Plain, std::fabs(layering.salinity))});
}

void addSeason(const PondModel& model, StartSeason season, const SentenceBuilder& builder) {
    constexpr std::array kKeys{SentenceKey::SeasonBest, SentenceKey::SeasonCoolButPoor,
                               SentenceKey::SeasonLastResort, SentenceKey::SeasonWarm,
                               SentenceKey::SeasonFreezing};
    builder.add(kKeys[static_cast<std::size_t>(season)],
                {number("depth", Measure::Depth, model.bottom.depth)});
}

}  // namespace

bool isRuleOfThumb(SentenceKey key) {
    using enum SentenceKey;
    constexpr std::array kRules{TriageNothingFirst,      TriageOfTheStart, TriageMixed,
                                TriageFirstDoseTooLarge, SeasonBest,       SeasonCoolButPoor,
                                SeasonLastResort,        SeasonWarm,       RatioLow,
                                RatioRampRequired,       RatioHigh,        RatioDoNotStart};
    return std::find(kRules.begin(), kRules.end(), key) != kRules.end();
}

void addProfile(const Pond& pond, const SentenceBuilder& builder) {
    for (const ProfileFinding& finding : profileFindings(pond)) {
        builder.add(keyOf(finding.doubt), valuesOf(pond, finding));
    }
}

void addTriage(const PondModel& model, const RampRun* nothing, const SentenceBuilder& builder) {
    const Triage triage = triageOf(model);
    if (nothing == nullptr) {
        builder.add(SentenceKey::TriageOfTheStart);
    } else if (isBelow(*nothing, nothing->hoursBelowStress, model.parameters.thresholds.stress)) {
        builder.add(SentenceKey::TriageNothingFirst);
    }
    addRatio(model, triage, builder);
    addFirstDose(triage, builder);
    addLayering(triage.layering, builder);
    if (triage.season) {
        addSeason(model, *triage.season, builder);
    }
}

void addBottomWater(const PondModel& model, const SentenceBuilder& builder) {
    if (!model.bottom.exists()) {
        builder.add(SentenceKey::Mixed);
        return;
    }
    const double share = 100.0 * model.bottom.volume / model.basin.volume();
    builder.add(
        model.bottom.cause == BottomWater::Cause::Density ? SentenceKey::BottomByDensity
                                                          : SentenceKey::BottomByOxygen,
        {number("depth", Measure::Depth, model.bottom.depth), number("share", Measure::Percent, share)});
    addSaltLayer(model, builder);
}

}  // namespace engine
