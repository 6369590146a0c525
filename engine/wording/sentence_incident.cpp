#include "engine/wording/sentence_incident.h"

#include "engine/follow_up/constants_follow_up.h"
#include "engine/pond/local_time.h"
#include "engine/wording/sentence_builder.h"

namespace engine {
namespace {

std::string_view termOf(IncidentOption option) {
    switch (option) {
        case IncidentOption::AirOff:
            return "option-stop";
        case IncidentOption::AirOn:
            return "option-run";
        case IncidentOption::SurfaceAir:
            return "option-surface";
        case IncidentOption::AirAndSurfaceAir:
            return "option-both";
    }
    return "";
}

}  // namespace

std::vector<Sentence> sentencesOf(const Incident& incident) {
    std::vector<Sentence> out;
    const SentenceBuilder builder(out, SentencePart::Incident);
    const double seconds = secondsOf(incident.pond, incident.at);
    builder.add(SentenceKey::IncidentTitle,
                {title(incident.pond), day("date", Date(std::chrono::floor<std::chrono::days>(incident.at))),
                 number("clock", Measure::Clock, seconds)});
    builder.add(
        SentenceKey::IncidentPresent,
        {oxygen("surface", incident.surface), oxygen("bottom", incident.bottom),
         number("difference", Measure::Rate, incident.difference), term("state", termOf(incident.state))});
    builder.add(SentenceKey::IncidentAdvice, {term("advice", termOf(bottomAirIn(incident.state)))});
    for (const OptionOutcome& option : incident.options) {
        std::vector<SentenceValue> values{term("option", termOf(option.option)), oxygen("low", option.lowest),
                                          oxygen("line", incident.line)};
        if (option.recovery_h) {
            values.push_back(number("hours", Measure::Hours, *option.recovery_h));
        }
        builder.add(option.recovery_h ? SentenceKey::IncidentOption : SentenceKey::IncidentOptionNever,
                    std::move(values));
    }
    if (incident.surfaceIsGuess) {
        builder.add(SentenceKey::IncidentSurfaceAssumed,
                    {number("transfer", Measure::Plain, incident.surfaceTransfer_kgPerH),
                     number("power", Measure::Plain, kEmergency_kWPerHa.value)});
    }
    const SentenceBuilder steps(out, SentencePart::IncidentSteps);
    for (const char* step :
         {"step-feed", "step-inflow", "step-chase", "step-samples", "step-dead", "step-again"}) {
        steps.add(SentenceKey::IncidentStep, {term("step", step)});
    }
    steps.add(SentenceKey::IncidentWrite);
    steps.add(SentenceKey::IncidentCall);
    const SentenceBuilder signs(out, SentencePart::IncidentSigns);
    for (const char* sign : {"sign-oxygen", "sign-toxic"}) {
        signs.add(SentenceKey::IncidentSign, {term("sign", sign)});
    }
    addCautions(incident.model, SentenceBuilder(out, SentencePart::Caution));
    return inUnitsOf(incident.pond, std::move(out));
}

}  // namespace engine
