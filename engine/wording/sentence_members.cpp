#include "engine/base/error.h"
#include "engine/ensemble/chances.h"
#include "engine/wording/speaker.h"

namespace engine {

void sayNothingChances(const Comparison& comparison, const Speaker& speaker) {
    const Lines& lines = comparison.model.parameters.lines;
    if (const RampEnsemble* members = membersOf(comparison, 0)) {
        speaker.say(SentenceKey::NothingChances,
                    {ofTen("stress", members->chanceBelowStress), oxygen("line", lines.stress),
                     whole("days", comparison.days), ofTen("lethal", members->chanceBelowLethal),
                     oxygen("lethalLine", lines.lethal)});
    }
}

void sayRampChances(const Comparison& comparison, const RampRun& run, const Speaker& speaker) {
    const RampEnsemble* members =
        membersOf(comparison, static_cast<std::size_t>(&run - comparison.runs.data()));
    const RampEnsemble* nothing = membersOf(comparison, 0);
    if (members == nullptr || nothing == nullptr) {
        return;
    }
    const Lines& lines = comparison.model.parameters.lines;
    speaker.say(SentenceKey::RampChances,
                {ofTen("stress", members->chanceBelowStress), oxygen("line", lines.stress),
                 whole("days", comparison.days), ofTen("nothing", nothing->chanceBelowStress),
                 ofTen("added", members->chanceAdded)});
    speaker.say(SentenceKey::RampChancesLethal,
                {ofTen("lethal", members->chanceBelowLethal), oxygen("line", lines.lethal),
                 ofTen("nothing", nothing->chanceBelowLethal)});
}

std::vector<Sentence> sentencesOfChances(const Comparison& comparison, std::size_t selected) {
    ensure(selected < comparison.runs.size(), "the ramp is of this comparison");
    std::vector<Sentence> out;
    const Speaker speaker(out, SentencePart::NightDetail);
    if (selected == 0) {
        sayNothingChances(comparison, speaker);
    } else {
        sayRampChances(comparison, comparison.runs[selected], speaker);
    }
    return out;
}

void sayMembers(const Comparison& comparison, const Speaker& speaker) {
    if (!comparison.ensemble || comparison.ensemble->end != EnsembleEnd::Completed) {
        speaker.say(SentenceKey::CentralRunOnly);
        return;
    }
    const EnsembleResult& ensemble = *comparison.ensemble;
    speaker.say(SentenceKey::MembersDrawn,
                {whole("members", ensemble.members),
                 number("seed", Measure::Whole, static_cast<double>(ensemble.seed))});
    speaker.say(comparison.model.pond.weather.observed ? SentenceKey::MembersObservedWeather
                                                       : SentenceKey::MembersWeather);
    if (ensemble.atFactorEnd > 0) {
        speaker.say(SentenceKey::MembersAtFactorEnd,
                    {whole("count", ensemble.atFactorEnd), whole("members", ensemble.members)});
    }
}

}  // namespace engine
