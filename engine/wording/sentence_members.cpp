#include "engine/advice/advice.h"
#include "engine/base/error.h"
#include "engine/ensemble/chances.h"
#include "engine/wording/sentence_advice.h"
#include "engine/wording/sentence_builder.h"

#include <cmath>

namespace engine {

void addChances(const Comparison& comparison, std::size_t run, const SentenceBuilder& builder) {
    if (membersOf(comparison, run) == nullptr || membersOf(comparison, 0) == nullptr) {
        return;
    }
    for (const Sentence& sentence : chanceSentences(adviceOn(comparison, run), comparison.model)) {
        builder.add(sentence.key, sentence.values);
    }
}

std::vector<Sentence> sentencesOfChances(const Comparison& comparison, std::size_t selected) {
    ensure(selected < comparison.runs.size(), "the ramp is of this comparison");
    std::vector<Sentence> out;
    addChances(comparison, selected, {out, SentencePart::NightDetail});
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
                     of100("weighed", ensemble.ramps.front().chanceBelowLethal),
                     of100("plain", ensemble.ramps.front().plainBelowLethal)});
    }
    builder.add(comparison.model.pond.weather.observed ? SentenceKey::MembersObservedWeather
                                                       : SentenceKey::MembersWeather);
    if (ensemble.atFactorEnd > 0) {
        builder.add(SentenceKey::MembersAtFactorEnd,
                    {whole("count", ensemble.atFactorEnd), whole("members", ensemble.members)});
    }
}

}  // namespace engine
