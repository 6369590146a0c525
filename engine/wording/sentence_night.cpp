#include "engine/base/error.h"
#include "engine/wording/sentence_builder.h"

#include <algorithm>

namespace engine {
namespace {

const DayRow& nightOf(const RampRun& run, int night) {
    return run.days[static_cast<std::size_t>(night - run.days.front().day)];
}

std::vector<SentenceValue> lowOf(const RampRun& run, const DayRow& night) {
    return {text("ramp", run.name), whole("night", night.day), oxygen("low", night.lowest),
            number("clock", Measure::Clock, night.lowestTime)};
}

bool isThere(const RampRun& run) {
    return run.end == RunEnd::Completed;
}

/// The ramp with the lowest low of a night, or nothing.
const RampRun* lowestOf(const Comparison& comparison, int night) {
    const RampRun* lowest = nullptr;
    for (std::size_t i = 1; i < comparison.runs.size(); ++i) {
        const RampRun& run = comparison.runs[i];
        if (isThere(run) &&
            (lowest == nullptr || nightOf(run, night).lowest < nightOf(*lowest, night).lowest)) {
            lowest = &run;
        }
    }
    return lowest;
}

void addNothing(const Comparison& comparison, int night, const SentenceBuilder& builder) {
    const RampRun& nothing = comparison.runs.front();
    if (!isThere(nothing)) {
        return;
    }
    const double low = nightOf(nothing, night).lowest;
    builder.add(low < comparison.model.parameters.thresholds.stress ? SentenceKey::NightNothingBelow
                                                                    : SentenceKey::NightNothing,
                {oxygen("low", low)});
}

}  // namespace

std::vector<Sentence> sentencesOfNight(const Comparison& comparison, int night, std::size_t selected) {
    ensure(night >= 1 && night <= comparison.days && selected < comparison.runs.size(),
           "the night and the ramp are of this comparison");
    std::vector<Sentence> out;
    const SentenceBuilder builder(out, SentencePart::Night), detail(out, SentencePart::NightDetail);
    const OxygenThresholds& thresholds = comparison.model.parameters.thresholds;
    const RampRun* lowest = lowestOf(comparison, night);
    if (lowest == nullptr) {
        if (isThere(comparison.runs.front())) {
            builder.add(SentenceKey::NightOfNothing,
                        lowOf(comparison.runs.front(), nightOf(comparison.runs.front(), night)));
            addAttribution(comparison.runs.front(), detail);
        }
        return inUnitsOf(comparison.model.pond, std::move(out));
    }
    const DayRow& low = nightOf(*lowest, night);
    builder.add(low.lowest < thresholds.lethal   ? SentenceKey::NightBelowLethal
                : low.lowest < thresholds.stress ? SentenceKey::NightBelowStress
                                                 : SentenceKey::NightAbove,
                lowOf(*lowest, low));
    const RampRun& chosen = comparison.runs[selected];
    if (selected > 0 && &chosen != lowest && isThere(chosen)) {
        builder.add(SentenceKey::NightWithSelected, lowOf(chosen, nightOf(chosen, night)));
    }
    addNothing(comparison, night, builder);
    if (!lowest->attribution.empty()) {
        const DayRow& worst = lowest->worst();
        if (worst.day != night) {
            detail.add(SentenceKey::NightElsewhere, lowOf(*lowest, worst));
        }
        addAttribution(*lowest, detail);
    }
    return inUnitsOf(comparison.model.pond, std::move(out));
}

std::vector<Sentence> sentencesOfNights(const Comparison& comparison, std::size_t selected) {
    ensure(selected < comparison.runs.size(), "the ramp is of this comparison");
    std::vector<Sentence> out;
    const SentenceBuilder builder(out, SentencePart::Night);
    const RampRun& run = comparison.runs[selected];
    const RampRun& nothing = comparison.runs.front();
    if (!isThere(run)) {
        return inUnitsOf(comparison.model.pond, std::move(out));
    }
    std::vector<SentenceValue> values = lowOf(run, run.worst());
    if (selected == 0) {
        builder.add(SentenceKey::NightsOfNothing, values);
    } else if (isThere(nothing)) {
        values.push_back(oxygen("nothing", nightOf(nothing, run.worst().day).lowest));
        builder.add(SentenceKey::NightsOfRamp, values);
    }
    addAttribution(run, {out, SentencePart::NightDetail});
    return inUnitsOf(comparison.model.pond, std::move(out));
}

}  // namespace engine
