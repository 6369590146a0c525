#include "engine/wording/wording_list.h"

#include <array>

namespace engine {
namespace {

using enum SentenceKey;

constexpr std::array kTemplates{
    Template{MeasureTitle, "{title}: what to measure for \"{ramp}\", {days} days from {date}."},
    Template{MeasureWorst,
             "Over {members} ponds like this one (seed {seed}) the lowest fish water of the whole run is "
             "{median} mg/L in the middle, and {low} to {high} mg/L in nine of ten."},
    Template{
        MeasureInput,
        "{input}: {share} % of the variance ({from} to {to}); at its low end, {lowEnd}, the worst low is "
        "{atLow} mg/L on average, at its high end, {highEnd}, {atHigh} mg/L."},
    Template{MeasureNoInput, "No single input makes 3 % or more of the variance."},
    Template{MeasureSharesDoNotAdd,
             "Shares need not add to 100: some inputs go together, some act only together, and the weather "
             "has its own. The numbers in brackets hold nine times of ten for so many members."},
    Template{MeasureVisit,
             "{way} ({input}): what is in nine of ten {now} mg/L wide becomes {then} mg/L, {narrower} % "
             "narrower."},
    Template{MeasureNoVisit,
             "No measurement of one input that is usual at a pond narrows the worst low by 1 % or more."},
    Template{
        MeasureQuality,
        "That is what each measurement brings by itself, on average over what it may read, with the error "
        "that its method is known for. The order of cost is judgement."},
};

// The ways of engine/ensemble/site_visit.cpp.
constexpr std::array kTermsOfMeasuring{
    TermWord{"way-disc", "Secchi disc at midday on the shady side"},
    TermWord{"way-cover", "weed cover, walked and drawn on a photograph"},
    TermWord{"way-map", "area from an aerial photograph"},
    TermWord{"way-profile", "oxygen and temperature every half metre at the deepest point"},
    TermWord{"way-spring", "spring with bucket, watch and meter"},
    TermWord{"way-dusk-dawn", "oxygen at dusk and at dawn"},
    TermWord{"way-bottle", "shake-and-hold bottle test of the bottom water"},
    TermWord{"way-pole", "muck pole at twelve points or more"},
    TermWord{"way-flow", "air flow meter at the valve"},
    TermWord{"way-feed", "feed weighed for a week"},
    TermWord{"way-kit", "test kit on a sample of bottom water"},
    TermWord{"way-lab", "sample to a laboratory"},
    TermWord{"way-wind", "wind meter on the pond beside the station's"},
    TermWord{"way-boil", "dye or floats in the boil"},
    TermWord{"way-bubbles", "bubbles photographed against a rule"},
    TermWord{"way-catch", "fish caught and weighed"},
    TermWord{"way-seine", "fish counted by seine or when drained"},
    TermWord{"way-chamber", "chamber or core of the mud"},
};

}  // namespace

std::span<const Template> templatesOfMeasuring() {
    return kTemplates;
}

std::span<const TermWord> termsOfMeasuring() {
    return kTermsOfMeasuring;
}

}  // namespace engine
