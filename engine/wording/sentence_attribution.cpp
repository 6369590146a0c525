#include "engine/pond/pond_words.h"
#include "engine/run/gas_limits.h"
#include "engine/wording/sentence_builder.h"

#include <algorithm>
#include <cmath>

namespace engine {
namespace {

constexpr double kSaidGain = 0.1;  // [g/m^3]; a smaller gain would be shown as nothing

std::string_view wordOfCause(CauseKind kind) {
    switch (kind) {
        case CauseKind::BottomDebt:
            return "cause-debt";
        case CauseKind::BottomDeficit:
            return "cause-deficit";
        case CauseKind::StirredMuck:
            return "cause-muck";
        case CauseKind::SedimentDemand:
            return "cause-mud";
        case CauseKind::AlgalRespiration:
            return "cause-algae";
        case CauseKind::Fish:
            return "cause-fish";
        case CauseKind::Weather:
            return "cause-weather";
        case CauseKind::Dying:
            return "cause-dying";
    }
    return "";
}

constexpr double kLeastHabitat = 0.01;  // share of the volume; less is no refuge

/// Hours of a run on which hardly any water is both cool enough and well enough aired for the fish.
double hoursWithoutHabitat(const RampRun& run) {
    return static_cast<double>(std::count_if(run.hours.begin(), run.hours.end(), [](const HourRow& row) {
        return !(row.habitat >= kLeastHabitat);
    }));
}

}  // namespace

void addAttribution(const RampRun& run, const SentenceBuilder& builder) {
    std::vector<SentenceValue> values;
    constexpr std::array<const char*, 3> kNames{"first", "second", "third"};
    constexpr std::array<const char*, 3> kGains{"firstGain", "secondGain", "thirdGain"};
    std::size_t said = 0;
    for (const Cause& cause : run.attribution) {
        if (said < kNames.size() && cause.gain >= kSaidGain) {
            values.push_back(term(kNames[said], wordOfCause(cause.kind)));
            values.push_back(oxygen(kGains[said], cause.gain));
            ++said;
        }
    }
    constexpr std::array kKeys{SentenceKey::AttributionNone, SentenceKey::AttributionOne,
                               SentenceKey::AttributionTwo, SentenceKey::AttributionThree};
    if (!run.attribution.empty()) {
        builder.add(kKeys[said], values);
    }
}

void addHabitat(const Comparison& comparison, const RampRun& run, const SentenceBuilder& builder) {
    const OxygenThresholds& thresholds = comparison.model.parameters.thresholds;
    if (thresholds.fishMax >= 100.0) {
        return;
    }
    const double lost = hoursWithoutHabitat(run), nothing = hoursWithoutHabitat(comparison.runs.front());
    if (lost > 0.0) {
        builder.add(SentenceKey::HabitatLost,
                    {number("limit", Measure::Degrees, thresholds.fishMax), oxygen("line", thresholds.stress),
                     number("hours", Measure::Hours, lost), number("nothing", Measure::Hours, nothing)});
    } else {
        const auto least =
            std::min_element(run.hours.begin(), run.hours.end(),
                             [](const HourRow& a, const HourRow& b) { return a.habitat < b.habitat; });
        builder.add(SentenceKey::HabitatKept,
                    {number("limit", Measure::Degrees, thresholds.fishMax), oxygen("line", thresholds.stress),
                     number("share", Measure::Percent, 100.0 * least->habitat)});
    }
}

void addToxicants(const Comparison& comparison, const RampRun& run, const SentenceBuilder& builder) {
    const GasPeaks peaks = gasPeaks(comparison.model, run),
                   without = gasPeaks(comparison.model, comparison.runs.front());
    const auto add = [&](const GasPeak& gas, const GasPeak& nothing, SentenceKey peak, SentenceKey passed) {
        if (!(gas.peak > 0.0)) {
            return;
        }
        if (!gas.isPassed()) {
            builder.add(peak, {number("peak", Measure::Micrograms, gas.peak)});
            return;
        }
        const int date = static_cast<int>(std::floor(gas.time / kDay)) + 1;
        builder.add(
            passed,
            {number("peak", Measure::Micrograms, gas.peak), number("limit", Measure::Micrograms, gas.limit),
             number("clock", Measure::Clock, gas.time), day("date", dateOfDay(comparison.model.pond, date)),
             number("hours", Measure::Whole, gas.hoursAbove),
             number("nothing", Measure::Whole, nothing.hoursAbove),
             term("group", wordOf(comparison.model.parameters.thresholds.group))});
    };
    add(peaks.ammonia, without.ammonia, SentenceKey::AmmoniaPeak, SentenceKey::AmmoniaPassed);
    add(peaks.sulfide, without.sulfide, SentenceKey::SulfidePeak, SentenceKey::SulfidePassed);
}

void addSaltLayer(const PondModel& model, const SentenceBuilder& builder) {
    const Profile& profile = model.profile;
    if (profile.salinity.empty() || !model.bottom.exists()) {
        return;
    }
    const double top = profile.salinity.front(), bottom = profile.salinity.back();
    // Surface and bottom are where every rule reads them; the rule for a mixed pond asks for less than 1
    // degC.
    const double contrast = interpolate(profile.depth, profile.temperature, model.surfaceDepth) -
                            interpolate(profile.depth, profile.temperature, model.bottomDepth);
    if (std::fabs(contrast) < 1.0 && bottom - top > 0.5) {
        builder.add(SentenceKey::SaltLayer,
                    {number("top", Measure::Input, top), number("bottom", Measure::Input, bottom)});
    }
}

}  // namespace engine
