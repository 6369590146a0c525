#include "engine/wording/sentence_review.h"

#include "engine/base/csv_table.h"
#include "engine/base/text.h"
#include "engine/follow_up/constants_follow_up.h"
#include "engine/pond/local_time.h"
#include "engine/wording/sentence_builder.h"

#include <algorithm>

namespace engine {
namespace {

std::string_view termOf(ReviewMeasure measure) {
    return measure == ReviewMeasure::DawnLow        ? "dawn-low"
           : measure == ReviewMeasure::BottomOxygen ? "bottom-oxygen"
                                                    : "secchi";
}

SentenceValue readOf(const ReviewFinding& one, const char* name, double value) {
    return number(name, one.measure == ReviewMeasure::Secchi ? Measure::Depth : Measure::Oxygen, value);
}

/// What all sentences of a finding hold. @param without  How a pond is called that the change is missing
/// from.
std::vector<SentenceValue> valuesOf(const ReviewFinding& one, std::string_view without) {
    std::vector<SentenceValue> out{term("what", termOf(one.measure))};
    if (one.count < kFewestReadings) {
        out.push_back(whole("count", one.count));
        out.push_back(whole("needed", kFewestReadings));
    } else {
        out.push_back(term("without", one.measure == ReviewMeasure::Secchi ? "before-change" : without));
        out.push_back(readOf(one, "reading", one.reading));
        out.push_back(readOf(one, "low", one.without.p05));
        out.push_back(readOf(one, "high", one.without.p95));
    }
    return out;
}

std::string_view nameOf(const Event& event) {
    return event.what.empty() ? event.kind : event.what;
}

void addTreatments(const Review& review, const SentenceBuilder& builder) {
    for (const ReviewTreatment& one : review.treatments) {
        const SentenceValue date = day("date", dateOfDay(review.fit.known, one.day));
        const SentenceValue what = text("what", nameOf(one.event));
        builder.add(SentenceKey::ReviewTreatment,
                    {date, what,
                     number("area", Measure::Percent,
                            one.event.area_percent ? one.event.area_percent->value : 100.0)});
        if (!one.isAttributable) {
            builder.add(SentenceKey::ReviewNotAttributable, {date, what, whole("days", kWatch_d)});
        }
        for (const ReviewFinding& finding : one.findings) {
            std::vector<SentenceValue> values = valuesOf(finding, "without-treatment");
            values.push_back(date);
            values.push_back(text("treatment", nameOf(one.event)));
            builder.add(finding.count < kFewestReadings ? SentenceKey::ReviewAfterTooFew
                        : finding.standsOut             ? SentenceKey::ReviewAfterStandsOut
                                                        : SentenceKey::ReviewAfterNothing,
                        std::move(values));
        }
    }
    builder.add(SentenceKey::ReviewCost, {number("cost", Measure::Input, review.cost)});
    for (const Event& event : review.notBought) {
        const Date date(std::chrono::floor<std::chrono::days>(*event.at));
        builder.add(SentenceKey::ReviewNotBought, {day("date", date), text("what", nameOf(event))});
    }
    if (!review.notBought.empty()) {
        builder.add(SentenceKey::ReviewNotSpent, {number("cost", Measure::Input, review.notBoughtCost)});
    }
    builder.add(SentenceKey::ReviewCopper, {term("gate", review.copper == CopperGate::Unknown ? "gate-unknown"
                                                         : review.copper == CopperGate::Low   ? "gate-low"
                                                                                            : "gate-open")});
    builder.add(SentenceKey::ReviewAlgaeBill,
                {oxygen("low", review.algaeBillLow), oxygen("high", review.algaeBillHigh),
                 oxygen("mean", review.rows.empty() ? 0.0 : review.rows.back().dawnWith.p50)});
    if (review.kill) {
        const ReviewKill& kill = *review.kill;
        std::vector<SentenceValue> values{day("date", dateOfDay(review.fit.known, kill.day))};
        const auto add = [&values](const char* name, const char* low, const char* high, const Band& band) {
            values.insert(values.end(),
                          {oxygen(name, band.p50), oxygen(low, band.p05), oxygen(high, band.p95)});
        };
        add("all", "allLow", "allHigh", kill.all);
        add("quarter", "quarterLow", "quarterHigh", kill.quarter);
        add("alone", "low", "high", kill.leftAlone);
        builder.add(SentenceKey::ReviewKill, std::move(values));
    }
    builder.add(SentenceKey::ReviewInParts,
                {oxygen("line", kLeastDawnForCopper.value), whole("days", kBetweenParts_d)});
}

}  // namespace

std::vector<Sentence> sentencesOf(const Review& review) {
    std::vector<Sentence> out;
    const SentenceBuilder builder(out, SentencePart::Review);
    builder.add(SentenceKey::ReviewTitle,
                {title(review.fit.known), whole("days", review.lastDay - review.startDay + 1),
                 day("date", dateOfDay(review.fit.known, review.startDay))});
    builder.add(SentenceKey::ReviewVerdict,
                {term("verdict", review.verdict == ReviewVerdict::Wait         ? "verdict-wait"
                                 : review.verdict == ReviewVerdict::LeaveAlone ? "verdict-leave"
                                                                               : "verdict-one")});
    for (const ReviewFinding& one : review.findings) {
        builder.add(one.count < kFewestReadings ? SentenceKey::ReviewTooFew
                    : one.standsOut             ? SentenceKey::ReviewStandsOut
                                                : SentenceKey::ReviewNothing,
                    valuesOf(one, "without-aerator"));
    }
    if (review.fit.oxygen.ratio > kBeyondNoise.value) {
        builder.add(SentenceKey::FitDisagrees, {number("mean", Measure::Rate, review.fit.oxygen.mean),
                                                number("ratio", Measure::Plain, review.fit.oxygen.ratio)});
    }
    addTreatments(review, SentenceBuilder(out, SentencePart::Treatments));
    SentenceBuilder(out, SentencePart::Assumption).add(SentenceKey::ReviewMeaning);
    addCautions(review.fit.model, SentenceBuilder(out, SentencePart::Caution));
    return inUnitsOf(review.fit.known, std::move(out));
}

std::vector<Sentence> sentencesOf(const StartCheck& check, int starts, double distance) {
    std::vector<Sentence> out;
    const SentenceBuilder builder(out, SentencePart::Review);
    builder.add(SentenceKey::StartChecked, {text("ramp", check.ramp), whole("dawns", check.dawns),
                                            oxygen("miss", check.miss), oxygen("distance", check.distance)});
    builder.add(SentenceKey::StartsChecked, {whole("starts", starts), oxygen("distance", distance)});
    return out;
}

}  // namespace engine
