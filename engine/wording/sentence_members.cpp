#include "engine/base/error.h"
#include "engine/ensemble/chances.h"
#include "engine/wording/sentence_builder.h"

#include <cmath>

namespace engine {

void addNothingChances(const Comparison& comparison, const SentenceBuilder& builder) {
    const OxygenThresholds& thresholds = comparison.model.parameters.thresholds;
    if (const RampEnsemble* members = membersOf(comparison, 0)) {
        builder.add(SentenceKey::NothingChances,
                    {ofTen("stress", members->chanceBelowStress), oxygen("line", thresholds.stress),
                     whole("days", comparison.days), ofTen("lethal", members->chanceBelowLethal),
                     oxygen("lethalLine", thresholds.lethal)});
    }
}

void addRampChances(const Comparison& comparison, const RampRun& run, const SentenceBuilder& builder) {
    const RampEnsemble* members =
        membersOf(comparison, static_cast<std::size_t>(&run - comparison.runs.data()));
    const RampEnsemble* nothing = membersOf(comparison, 0);
    if (members == nullptr || nothing == nullptr) {
        return;
    }
    const OxygenThresholds& thresholds = comparison.model.parameters.thresholds;
    builder.add(SentenceKey::RampChances,
                {ofTen("stress", members->chanceBelowStress), oxygen("line", thresholds.stress),
                 whole("days", comparison.days), ofTen("nothing", nothing->chanceBelowStress),
                 ofTen("added", members->chanceAdded)});
    builder.add(SentenceKey::RampChancesLethal,
                {ofTen("lethal", members->chanceBelowLethal), oxygen("line", thresholds.lethal),
                 ofTen("nothing", nothing->chanceBelowLethal)});
}

std::vector<Sentence> sentencesOfChances(const Comparison& comparison, std::size_t selected) {
    ensure(selected < comparison.runs.size(), "the ramp is of this comparison");
    std::vector<Sentence> out;
    const SentenceBuilder builder(out, SentencePart::NightDetail);
    if (selected == 0) {
        addNothingChances(comparison, builder);
    } else {
        addRampChances(comparison, comparison.runs[selected], builder);
    }
    return out;
}

void addMembers(const Comparison& comparison, const SentenceBuilder& builder) {
    if (!comparison.ensemble || comparison.ensemble->end != EnsembleEnd::Completed) {
        builder.add(SentenceKey::CentralRunOnly);
        return;
    }
    const EnsembleResult& ensemble = *comparison.ensemble;
    builder.add(SentenceKey::MembersDrawn,
                {whole("members", ensemble.members),
                 number("seed", Measure::Whole, static_cast<double>(ensemble.seed))});
    if (!ensemble.weights.empty()) {
        builder.add(SentenceKey::MembersWeighed,
                    {whole("effective", static_cast<int>(std::lround(ensemble.effective))),
                     ofTen("weighed", ensemble.ramps.front().chanceBelowLethal),
                     ofTen("plain", ensemble.ramps.front().plainBelowLethal)});
    }
    builder.add(comparison.model.pond.weather.observed ? SentenceKey::MembersObservedWeather
                                                       : SentenceKey::MembersWeather);
    if (ensemble.atFactorEnd > 0) {
        builder.add(SentenceKey::MembersAtFactorEnd,
                    {whole("count", ensemble.atFactorEnd), whole("members", ensemble.members)});
    }
}

}  // namespace engine
