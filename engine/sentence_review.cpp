#include "engine/csv_table.h"
#include "engine/local_time.h"
#include "engine/results_io.h"
#include "engine/review.h"
#include "engine/speaker.h"
#include "engine/text.h"

#include <algorithm>

namespace engine {
namespace {

std::string_view termOf(ReviewMeasure measure) {
    return measure == ReviewMeasure::DawnLow        ? "dawn-low"
           : measure == ReviewMeasure::BottomOxygen ? "bottom-oxygen"
                                                    : "secchi";
}

void sayFinding(const ReviewFinding& one, const Speaker& speaker) {
    const SentenceValue what = term("what", termOf(one.measure));
    if (one.count < kFewestReadings) {
        speaker.say(SentenceKey::ReviewTooFew,
                    {what, whole("count", one.count), whole("needed", kFewestReadings)});
        return;
    }
    speaker.say(one.standsOut ? SentenceKey::ReviewStandsOut : SentenceKey::ReviewNothing,
                {what, oxygen("reading", one.reading), oxygen("low", one.without.p05),
                 oxygen("high", one.without.p95)});
}

void sayTreatments(const Review& review, const Speaker& speaker) {
    for (const ReviewTreatment& one : review.treatments) {
        const SentenceValue date = day("date", dateOfDay(review.fit.known, one.day));
        const SentenceValue what = text("what", one.event.what.empty() ? one.event.kind : one.event.what);
        speaker.say(SentenceKey::ReviewTreatment,
                    {date, what,
                     number("area", Measure::Percent,
                            one.event.area_percent ? one.event.area_percent->value : 100.0)});
        if (!one.isAttributable) {
            speaker.say(SentenceKey::ReviewNotAttributable, {date, what, whole("days", kWatch_d)});
        }
    }
    speaker.say(SentenceKey::ReviewCost, {number("cost", Measure::Input, review.cost)});
    speaker.say(SentenceKey::ReviewCopper, {term("gate", review.copper == CopperGate::Unknown ? "gate-unknown"
                                                         : review.copper == CopperGate::Low   ? "gate-low"
                                                                                            : "gate-open")});
    speaker.say(SentenceKey::ReviewAlgaeBill,
                {oxygen("low", review.algaeBillLow), oxygen("high", review.algaeBillHigh),
                 oxygen("mean", review.rows.empty() ? 0.0 : review.rows.back().dawnWith.p50)});
}

}  // namespace

std::string reviewCsv(const Review& review) {
    CsvWriter table(
        "date,dawn_with_p05,dawn_with_p50,dawn_with_p95,dawn_without_p05,dawn_without_p50,dawn_without_p95,"
        "bottom_with_p05,bottom_with_p50,bottom_with_p95,bottom_without_p05,bottom_without_p50,bottom_"
        "without_p95,"
        "dawn_mg_per_l,bottom_mg_per_l,secchi_m");
    for (const ReviewRow& row : review.rows) {
        table.text(formatDate(dateOfDay(review.fit.known, row.day)));
        for (const Band* band : {&row.dawnWith, &row.dawnWithout, &row.bottomWith, &row.bottomWithout}) {
            table.number(band->p05).number(band->p50).number(band->p95);
        }
        table.number(row.dawn).number(row.bottom).number(row.secchi).end();
    }
    return table.take();
}

std::vector<Sentence> sentencesOf(const Review& review) {
    std::vector<Sentence> out;
    const Speaker speaker(out, SentencePart::Review);
    speaker.say(SentenceKey::ReviewTitle,
                {title(review.fit.known), whole("days", review.lastDay - review.startDay + 1),
                 day("date", dateOfDay(review.fit.known, review.startDay))});
    speaker.say(SentenceKey::ReviewVerdict,
                {term("verdict", review.verdict == ReviewVerdict::Wait         ? "verdict-wait"
                                 : review.verdict == ReviewVerdict::LeaveAlone ? "verdict-leave"
                                                                               : "verdict-one")});
    for (const ReviewFinding& one : review.findings) {
        sayFinding(one, speaker);
    }
    if (review.fit.oxygen.ratio > kBeyondNoise) {
        speaker.say(SentenceKey::FitDisagrees, {number("mean", Measure::Rate, review.fit.oxygen.mean),
                                                number("ratio", Measure::Plain, review.fit.oxygen.ratio)});
    }
    sayTreatments(review, Speaker(out, SentencePart::Treatments));
    Speaker(out, SentencePart::Assumption).say(SentenceKey::ReviewMeaning);
    sayCautions(review.fit.model, Speaker(out, SentencePart::Caution));
    return out;
}

}  // namespace engine
