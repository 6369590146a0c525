#include "engine/wording/sentence_measure.h"

#include "engine/ensemble/measure_choice.h"
#include "engine/wording/sentence_builder.h"

#include <algorithm>

namespace engine {
namespace {

constexpr std::size_t kMostSaid = 8;

SentenceValue inputName(const MeasuredInput& input) {
    return text("input", inputWords(input.name) + (input.unit == "1" ? "" : " [" + input.unit + "]"));
}

/// A value of an input; milligrams per litre have one decimal wherever they are read.
SentenceValue inputValue(const char* name, const MeasuredInput& input, double value) {
    return number(name, input.unit == "mg/L" ? Measure::Oxygen : Measure::Plain, value);
}

void addShares(const MeasureResult& result, const SentenceBuilder& builder) {
    const std::vector<MeasuredInput> said = tellingInputs(result, kMostSaid);
    for (const MeasuredInput& input : said) {
        builder.add(SentenceKey::MeasureInput,
                    {inputName(input), number("share", Measure::Percent, 100.0 * input.share),
                     number("from", Measure::Percent, 100.0 * input.shareLow),
                     number("to", Measure::Percent, 100.0 * input.shareHigh),
                     inputValue("lowEnd", input, input.low), inputValue("highEnd", input, input.high),
                     oxygen("atLow", input.worstAtLow), oxygen("atHigh", input.worstAtHigh)});
    }
    if (said.empty()) {
        builder.add(SentenceKey::MeasureNoInput);
    }
    builder.add(SentenceKey::MeasureSharesDoNotAdd);
}

void addVisit(const MeasureResult& result, const SentenceBuilder& builder) {
    std::vector<MeasuredInput> visit;
    std::copy_if(result.inputs.begin(), result.inputs.end(), std::back_inserter(visit),
                 [](const MeasuredInput& input) { return gainOf(input) >= kLeastGain; });
    std::stable_sort(visit.begin(), visit.end(), [](const MeasuredInput& a, const MeasuredInput& b) {
        return a.way->cost != b.way->cost ? a.way->cost < b.way->cost : a.left < b.left;
    });
    const double width = result.high - result.low;
    for (const MeasuredInput& input : visit) {
        builder.add(SentenceKey::MeasureVisit, {term("way", input.way->term), inputName(input),
                                                oxygen("now", width), oxygen("then", width * input.left),
                                                number("narrower", Measure::Percent, 100.0 * gainOf(input))});
    }
    builder.add(visit.empty() ? SentenceKey::MeasureNoVisit : SentenceKey::MeasureQuality);
}

}  // namespace

std::vector<Sentence> sentencesOf(const MeasureResult& result) {
    std::vector<Sentence> out;
    const PondModel& model = result.model;
    const SentenceBuilder shares(out, SentencePart::Shares);
    shares.add(SentenceKey::MeasureTitle,
               {title(model.pond), text("ramp", result.ramp), whole("days", result.days),
                day("date", *model.pond.place.firstDay)});
    shares.add(
        SentenceKey::MeasureWorst,
        {whole("members", result.members), number("seed", Measure::Whole, static_cast<double>(result.seed)),
         oxygen("median", result.median), oxygen("low", result.low), oxygen("high", result.high)});
    addShares(result, shares);
    addVisit(result, {out, SentencePart::Visit});
    addCautions(model, {out, SentencePart::Caution});
    return inUnitsOf(model.pond, std::move(out));
}

}  // namespace engine
