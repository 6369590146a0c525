#include "engine/pond/pond_words.h"
#include "engine/run/gas_limits.h"
#include "engine/wording/speaker.h"

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

void sayCauses(const RampRun& run, const Speaker& speaker) {
    std::vector<SentenceValue> values;
    constexpr std::array<const char*, 3> kNames{"first", "second", "third"};
    constexpr std::array<const char*, 3> kGains{"firstGain", "secondGain", "thirdGain"};
    std::size_t said = 0;
    for (const Cause& cause : run.causes) {
        if (said < kNames.size() && cause.gain >= kSaidGain) {
            values.push_back(term(kNames[said], wordOfCause(cause.kind)));
            values.push_back(oxygen(kGains[said], cause.gain));
            ++said;
        }
    }
    constexpr std::array kKeys{SentenceKey::CausesNone, SentenceKey::CausesOne, SentenceKey::CausesTwo,
                               SentenceKey::CausesThree};
    if (!run.causes.empty()) {
        speaker.say(kKeys[said], values);
    }
}

void sayHabitat(const Comparison& comparison, const RampRun& run, const Speaker& speaker) {
    const Lines& lines = comparison.model.parameters.lines;
    if (lines.fishMax >= 100.0) {
        return;
    }
    const DayRow& worst = run.worst();
    const auto hour = std::find_if(run.hours.begin(), run.hours.end(),
                                   [&](const HourRow& row) { return row.time >= worst.lowestTime; });
    if (hour != run.hours.end() && worst.lowest < lines.lethal && hour->mean > lines.lethal) {
        speaker.say(SentenceKey::WantOfCoolWater,
                    {number("limit", Measure::Degrees, lines.fishMax), oxygen("mean", hour->mean)});
    }
    const double lost = hoursWithoutHabitat(run), nothing = hoursWithoutHabitat(comparison.runs.front());
    if (lost > 0.0) {
        speaker.say(SentenceKey::HabitatLost,
                    {number("limit", Measure::Degrees, lines.fishMax), oxygen("line", lines.stress),
                     number("hours", Measure::Hours, lost), number("nothing", Measure::Hours, nothing)});
    } else {
        const auto least =
            std::min_element(run.hours.begin(), run.hours.end(),
                             [](const HourRow& a, const HourRow& b) { return a.habitat < b.habitat; });
        speaker.say(SentenceKey::HabitatKept,
                    {number("limit", Measure::Degrees, lines.fishMax), oxygen("line", lines.stress),
                     number("share", Measure::Percent, 100.0 * least->habitat)});
    }
}

void sayPoisons(const Comparison& comparison, const RampRun& run, const Speaker& speaker) {
    const GasPeaks peaks = gasPeaks(comparison.model, run),
                   without = gasPeaks(comparison.model, comparison.runs.front());
    const auto say = [&](const GasPeak& gas, const GasPeak& nothing, SentenceKey peak, SentenceKey passed) {
        if (!(gas.peak > 0.0)) {
            return;
        }
        if (!gas.isPassed()) {
            speaker.say(peak, {number("peak", Measure::Micrograms, gas.peak)});
            return;
        }
        const int date = static_cast<int>(std::floor(gas.time / kDay)) + 1;
        speaker.say(
            passed,
            {number("peak", Measure::Micrograms, gas.peak), number("limit", Measure::Micrograms, gas.limit),
             number("clock", Measure::Clock, gas.time), day("date", dateOfDay(comparison.model.pond, date)),
             number("hours", Measure::Whole, gas.hoursAbove),
             number("nothing", Measure::Whole, nothing.hoursAbove),
             term("group", wordOf(comparison.model.parameters.lines.group))});
    };
    say(peaks.ammonia, without.ammonia, SentenceKey::AmmoniaPeak, SentenceKey::AmmoniaPassed);
    say(peaks.sulfide, without.sulfide, SentenceKey::SulfidePeak, SentenceKey::SulfidePassed);
}

void saySaltLayer(const PondModel& model, const Speaker& speaker) {
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
        speaker.say(SentenceKey::SaltLayer,
                    {number("top", Measure::Input, top), number("bottom", Measure::Input, bottom)});
    }
}

}  // namespace engine
