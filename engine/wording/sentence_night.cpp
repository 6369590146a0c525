#include "engine/base/error.h"
#include "engine/water/oxygen_state.h"
#include "engine/wording/sentence_builder.h"

#include <algorithm>
#include <cmath>

namespace engine {
namespace {

const DayRow& nightOf(const RampRun& run, int night) {
    return run.days[static_cast<std::size_t>(night - run.days.front().day)];
}

std::vector<SentenceValue> lowOf(const Comparison& comparison, const RampRun& run, const DayRow& night) {
    return {text("ramp", run.name), whole("night", night.day), oxygen("low", night.lowest),
            number("clock", Measure::Clock, night.lowestTime),
            crossing(night.lowest, comparison.model.parameters.thresholds)};
}

/// Says a night by the key, or what it lacks of cool water where that makes it low.
void addLow(const Comparison& comparison, const RampRun& run, const DayRow& night, SentenceKey key,
            const SentenceBuilder& builder, std::vector<SentenceValue> more = {}) {
    const std::vector<SentenceValue> values = join(lowOf(comparison, run, night), std::move(more));
    if (const auto warm = warmNight(comparison.model, run, night)) {
        builder.add(
            &run == &comparison.runs.front() ? SentenceKey::NightNothingTooWarm : SentenceKey::NightTooWarm,
            join(values, waterOf(*warm)));
    } else {
        builder.add(key, values);
    }
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

/// True if the lows of a night print as the same number, so that naming the lower one would only puzzle.
bool isSaidTheSame(const RampRun& a, const RampRun& b, int night) {
    const auto tenths = [night](const RampRun& run) { return std::round(10.0 * nightOf(run, night).lowest); };
    return isThere(a) && tenths(a) == tenths(b);
}

}  // namespace

SentenceValue crossing(double oxygen, const OxygenThresholds& thresholds) {
    const auto isJust = [&](double line) { return std::round(10.0 * oxygen) >= std::round(10.0 * line); };
    switch (stateOf(oxygen, thresholds)) {
        case OxygenState::Lethal:
            return term("crosses", isJust(thresholds.lethal) ? "crosses-lethal-just" : "crosses-lethal");
        case OxygenState::Stress:
            return term("crosses", isJust(thresholds.stress) ? "crosses-stress-just" : "crosses-stress");
        case OxygenState::Enough:
            break;
    }
    return term("crosses", "crosses-none");
}

std::vector<Sentence> sentencesOfNight(const Comparison& comparison, int night, std::size_t selected) {
    ensure(night >= 1 && night <= comparison.days && selected < comparison.runs.size(),
           "the night and the ramp are of this comparison");
    std::vector<Sentence> out;
    const SentenceBuilder builder(out, SentencePart::Night), detail(out, SentencePart::NightDetail);
    const auto add = [&](SentenceKey key, const RampRun& run) {
        addLow(comparison, run, nightOf(run, night), key, builder);
    };
    const RampRun &nothing = comparison.runs.front(), &chosen = comparison.runs[selected];
    const RampRun* lowest = lowestOf(comparison, night);
    if (isThere(chosen)) {
        add(selected > 0 ? SentenceKey::NightOfRamp : SentenceKey::NightOfNothing, chosen);
    }
    if (lowest != nullptr && lowest != &chosen && !isSaidTheSame(chosen, *lowest, night)) {
        add(isThere(chosen) ? SentenceKey::NightLowest : SentenceKey::NightOfRamp, *lowest);
    }
    if (selected > 0 && isThere(nothing)) {
        add(SentenceKey::NightNothing, nothing);
    }
    // Of the selected ramp, unless it says nothing itself.
    const RampRun* why = isThere(chosen) && !chosen.attribution.empty() ? &chosen : lowest;
    if (why != nullptr && !why->attribution.empty()) {
        if (why != &nothing && why->worst().day != night) {
            addLow(comparison, *why, why->worst(), SentenceKey::NightElsewhere, detail);
        }
        addAttribution(*why, detail);
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
    if (selected == 0) {
        addLow(comparison, run, run.worst(), SentenceKey::NightsOfNothing, builder);
    } else if (isThere(nothing)) {
        addLow(comparison, run, run.worst(), SentenceKey::NightsOfRamp, builder,
               {oxygen("nothing", nightOf(nothing, run.worst().day).lowest)});
    }
    addAttribution(run, {out, SentencePart::NightDetail});
    return inUnitsOf(comparison.model.pond, std::move(out));
}

}  // namespace engine
