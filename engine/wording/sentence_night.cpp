#include "engine/base/error.h"
#include "engine/wording/speaker.h"

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

void sayNothing(const Comparison& comparison, int night, const Speaker& speaker) {
    const RampRun& nothing = comparison.runs.front();
    if (!isThere(nothing)) {
        return;
    }
    const double low = nightOf(nothing, night).lowest;
    speaker.say(low < comparison.model.parameters.lines.stress ? SentenceKey::NightNothingBelow
                                                               : SentenceKey::NightNothing,
                {oxygen("low", low)});
}

}  // namespace

std::vector<Sentence> sentencesOfNight(const Comparison& comparison, int night, std::size_t selected) {
    ensure(night >= 1 && night <= comparison.days && selected < comparison.runs.size(),
           "the night and the ramp are of this comparison");
    std::vector<Sentence> out;
    const Speaker speaker(out, SentencePart::Night), detail(out, SentencePart::NightDetail);
    const Lines& lines = comparison.model.parameters.lines;
    const RampRun* lowest = lowestOf(comparison, night);
    if (lowest == nullptr) {
        if (isThere(comparison.runs.front())) {
            speaker.say(SentenceKey::NightOfNothing,
                        lowOf(comparison.runs.front(), nightOf(comparison.runs.front(), night)));
            sayCauses(comparison.runs.front(), detail);
        }
        return inUnitsOf(comparison.model.pond, std::move(out));
    }
    const DayRow& low = nightOf(*lowest, night);
    speaker.say(low.lowest < lines.lethal   ? SentenceKey::NightBelowLethal
                : low.lowest < lines.stress ? SentenceKey::NightBelowStress
                                            : SentenceKey::NightAbove,
                lowOf(*lowest, low));
    const RampRun& chosen = comparison.runs[selected];
    if (selected > 0 && &chosen != lowest && isThere(chosen)) {
        speaker.say(SentenceKey::NightWithSelected, lowOf(chosen, nightOf(chosen, night)));
    }
    sayNothing(comparison, night, speaker);
    if (!lowest->causes.empty()) {
        const DayRow& worst = lowest->worst();
        if (worst.day != night) {
            detail.say(SentenceKey::NightElsewhere, lowOf(*lowest, worst));
        }
        sayCauses(*lowest, detail);
    }
    return inUnitsOf(comparison.model.pond, std::move(out));
}

std::vector<Sentence> sentencesOfNights(const Comparison& comparison, std::size_t selected) {
    ensure(selected < comparison.runs.size(), "the ramp is of this comparison");
    std::vector<Sentence> out;
    const Speaker speaker(out, SentencePart::Night);
    const RampRun& run = comparison.runs[selected];
    const RampRun& nothing = comparison.runs.front();
    if (!isThere(run)) {
        return inUnitsOf(comparison.model.pond, std::move(out));
    }
    std::vector<SentenceValue> values = lowOf(run, run.worst());
    if (selected == 0) {
        speaker.say(SentenceKey::NightsOfNothing, values);
    } else if (isThere(nothing)) {
        values.push_back(oxygen("nothing", nightOf(nothing, run.worst().day).lowest));
        speaker.say(SentenceKey::NightsOfRamp, values);
    }
    sayCauses(run, {out, SentencePart::NightDetail});
    return inUnitsOf(comparison.model.pond, std::move(out));
}

}  // namespace engine
