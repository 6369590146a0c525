#include "engine/ensemble/chances.h"
#include "engine/run/profile_check.h"
#include "engine/run/triage.h"
#include "engine/wording/speaker.h"

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
            number("elevation", Measure::Input, *pond.place.elevation),
            number("percent", Measure::Percent, 100.0 * finding.first / finding.saturation),
            number("excess", Measure::Percent, 100.0 * (finding.seaLevel / finding.saturation - 1.0))};
}

void sayRatio(const PondModel& model, const Triage& triage, const Speaker& speaker) {
    if (!triage.band) {
        return;
    }
    const SentenceValue debt = number("debt", Measure::Mass, model.debt_kg);
    if (!triage.ratio) {
        speaker.say(SentenceKey::DebtWithoutPool, {debt});
        return;
    }
    speaker.say(SentenceKey::DebtRatio, {debt, number("pool", Measure::Mass, model.pool_kg),
                                         number("ratio", Measure::Plain, *triage.ratio)});
    switch (*triage.band) {
        case RatioBand::Low:
            return speaker.say(SentenceKey::RatioLow);
        case RatioBand::RampRequired:
            return speaker.say(SentenceKey::RatioRampRequired);
        case RatioBand::High:
            return speaker.say(SentenceKey::RatioHigh);
        case RatioBand::DoNotStart:
            return speaker.say(SentenceKey::RatioDoNotStart);
    }
}

void sayFirstDose(const Triage& triage, const Speaker& speaker) {
    if (!triage.firstDose) {
        return;
    }
    const FirstDose& dose = *triage.firstDose;
    const SentenceValue depth = number("depth", Measure::Depth, dose.depth);
    if (!(dose.ofBottom_percent > 0.0)) {
        speaker.say(SentenceKey::TriageLiftsNothing, {depth});
        return;
    }
    speaker.say(SentenceKey::TriageFirstDose, {number("minutes", Measure::Minutes, dose.minutes), depth,
                                               number("bottom", Measure::Percent, dose.ofBottom_percent),
                                               number("pond", Measure::Percent, dose.ofPond_percent)});
    const std::optional<double> cap = triage.band ? doseCap_percent(*triage.band) : std::nullopt;
    if (cap && dose.ofBottom_percent > *cap) {
        const double minutes = dose.minutes * *cap / dose.ofBottom_percent;
        speaker.say(SentenceKey::TriageFirstDoseTooLarge,
                    {number("cap", Measure::Percent, *cap), number("minutes", Measure::Minutes, minutes)});
    }
}

void sayLayering(const Layering& layering, const Speaker& speaker) {
    constexpr std::array kKeys{SentenceKey::TriageMixed, SentenceKey::TriageOnlyByTemperature,
                               SentenceKey::TriageLayered};
    // "By so much", whichever of the two is warmer or better aired.
    speaker.say(kKeys[static_cast<std::size_t>(layering.kind)],
                {number("degrees", Measure::Oxygen, std::fabs(layering.temperature)),
                 oxygen("oxygen", std::fabs(layering.oxygen)),
                 number("salinity", Measure::Plain, std::fabs(layering.salinity))});
}

void saySeason(const PondModel& model, StartSeason season, const Speaker& speaker) {
    constexpr std::array kKeys{SentenceKey::SeasonBest, SentenceKey::SeasonCoolButPoor,
                               SentenceKey::SeasonLastResort, SentenceKey::SeasonWarm,
                               SentenceKey::SeasonFreezing};
    speaker.say(kKeys[static_cast<std::size_t>(season)],
                {number("depth", Measure::Depth, model.bottom.depth)});
}

}  // namespace

void sayProfile(const Pond& pond, const Speaker& speaker) {
    for (const ProfileFinding& finding : profileFindings(pond)) {
        speaker.say(keyOf(finding.doubt), valuesOf(pond, finding));
    }
}

void sayTriage(const PondModel& model, const RampRun* nothing, const Speaker& speaker) {
    const Triage triage = triageOf(model);
    if (nothing == nullptr) {
        speaker.say(SentenceKey::TriageOfTheStart);
    } else if (isBelow(*nothing, nothing->hoursBelowStress, model.parameters.lines.stress)) {
        speaker.say(SentenceKey::TriageNothingFirst);
    }
    sayRatio(model, triage, speaker);
    sayFirstDose(triage, speaker);
    sayLayering(triage.layering, speaker);
    if (triage.season) {
        saySeason(model, *triage.season, speaker);
    }
}

void sayBottomWater(const PondModel& model, const Speaker& speaker) {
    if (!model.bottom.exists()) {
        speaker.say(SentenceKey::Mixed);
        return;
    }
    const double share = 100.0 * model.bottom.volume / model.basin.volume();
    speaker.say(
        model.bottom.cause == BottomWater::Cause::Density ? SentenceKey::BottomByDensity
                                                          : SentenceKey::BottomByOxygen,
        {number("depth", Measure::Depth, model.bottom.depth), number("share", Measure::Percent, share)});
    saySaltLayer(model, speaker);
}

}  // namespace engine
