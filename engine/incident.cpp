#include "engine/incident.h"

#include "engine/local_time.h"
#include "engine/morning.h"
#include "engine/speaker.h"
#include "engine/units.h"

#include <algorithm>
#include <cmath>

namespace engine {
namespace {

constexpr int kRunDays = 3;
constexpr double kLookAhead = 24.0;  // [h]
constexpr double kLongest = 48.0;    // [h]
constexpr double kStaysHours = 3.0;
constexpr double kEmergency_kWPerHa = 2.5, kTransfer_kgPerKWh = 1.5;
constexpr double kStratified = 2.0, kMixed = 1.0;  // [K], trade 3.8
constexpr double kMixedOxygen = 1.5;               // [g/m^3], trade 3.3

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

OptionOutcome outcomeOf(IncidentOption option, PondModel model, const SurfaceAerator& surface,
                        double transfer, const RunControl& control) {
    const bool withAir = option == IncidentOption::AirOn || option == IncidentOption::AirAndSurfaceAir;
    const bool withSurface =
        option == IncidentOption::SurfaceAir || option == IncidentOption::AirAndSurfaceAir;
    if (withSurface) {
        model.pond.surfaceAerator = surface;
        model.parameters.aeratorTransfer = transfer;
    } else {
        model.pond.surfaceAerator.reset();
    }
    RunRequest request;
    request.days = kRunDays;
    request.keepLayers = false;
    request.schedule.emplace();
    if (withAir) {
        const Aerator& aerator = *model.pond.aerator;
        request.schedule->push_back({model.startTime, (kRunDays + 1) * kDay,
                                     static_cast<int>(aerator.diffusers->value), aerator.depth->value, 1});
    }
    const Ramp any;
    const RampRun run = runRamp(model, &any, request, {control.stop, nullptr});
    OptionOutcome out;
    out.option = option;
    out.lowest = 1e300;
    double lastBelow = -1.0;
    for (const HourRow& row : run.hours) {
        const double hours = (row.time - model.startTime) / kHour;
        out.hours.push_back(hours);
        out.fishWater.push_back(row.fishWater);
        out.lowest = hours <= kLookAhead ? std::min(out.lowest, row.fishWater) : out.lowest;
        lastBelow = hours <= kLongest && row.fishWater < model.parameters.lines.stress ? hours : lastBelow;
    }
    if (lastBelow <= kLongest - kStaysHours) {
        const auto after = std::upper_bound(out.hours.begin(), out.hours.end(), lastBelow);
        out.recovery_h = after != out.hours.end() ? std::optional(*after) : std::nullopt;
    }
    return out;
}

}  // namespace

Incident judgeIncident(const Pond& pond, const TodayOptions& options, const RunControl& control) {
    Incident out;
    const std::optional<LocalTime> at = options.at ? options.at : lastEntry(pond);
    const std::optional<Profile> profile = at ? presentProfile(knownAt(pond, *at), *at) : std::nullopt;
    if (!profile) {
        out.message =
            "An incident needs readings of temperature and oxygen at two or more depths within the last 3 h.";
        return out;
    }
    out.at = *at;
    out.pond = knownAt(pond, *at);
    if (!hasWeather(out.pond)) {
        out.message = "Less than half a day of weather was known by then.";
        return out;
    }
    const PondModel before = prepare(out.pond, options.resolution);
    const Pond now = presentPond(out.pond, *profile);
    out.model = prepareUnbalanced(now, options.resolution);
    out.model.parameters.photosynthesisFactor = before.parameters.photosynthesisFactor;
    out.model.parameters.respirationFactor = before.parameters.respirationFactor;
    out.line = before.parameters.lines.stress;
    out.model.parameters.lines = before.parameters.lines;
    out.surface = profile->oxygen.front();
    out.bottom = profile->oxygen.back();
    out.difference = profile->temperature.front() - profile->temperature.back();
    const double apart = std::fabs(out.difference);
    const bool isSameOxygen = std::fabs(out.surface - out.bottom) <= kMixedOxygen;
    out.state = apart < kMixed && isSameOxygen ? PresentState::Mixed
                : apart > kStratified          ? PresentState::Stratified
                                               : PresentState::Between;

    SurfaceAerator surface = pond.surfaceAerator.value_or(SurfaceAerator{});
    surface.existing = true;
    surface.startTime.reset();
    surface.endTime.reset();
    out.surfaceIsGuess = !pond.surfaceAerator;
    if (out.surfaceIsGuess) {
        surface.transfer_kgPerH =
            Quantity(kEmergency_kWPerHa * kTransfer_kgPerKWh * 1e-4 * out.model.basin.area(0.0));
    }
    out.surfaceTransfer_kgPerH = *surface.transfer_kgPerH;
    Pond withSurface = now;
    withSurface.surfaceAerator = surface;
    const double transfer = centralParameters(withSurface, *profile).aeratorTransfer;
    for (int i = 0; i < kIncidentOptions; ++i) {
        const auto option = static_cast<IncidentOption>(i);
        const bool withAir = option == IncidentOption::AirOn || option == IncidentOption::AirAndSurfaceAir;
        if (!withAir || pond.aerator) {
            out.options.push_back(outcomeOf(option, out.model, surface, transfer, control));
        }
    }
    if (control.stop.stop_requested()) {
        out.message = "The incident was stopped before it was judged.";
        return out;
    }
    out.isJudged = true;
    return out;
}

std::vector<Sentence> sentencesOf(const Incident& incident) {
    std::vector<Sentence> out;
    const Speaker speaker(out, SentencePart::Incident);
    const double seconds = secondsOf(incident.pond, incident.at);
    speaker.say(SentenceKey::IncidentTitle,
                {title(incident.pond), day("date", Date(std::chrono::floor<std::chrono::days>(incident.at))),
                 number("clock", Measure::Clock, seconds)});
    const char* const state = incident.state == PresentState::Mixed        ? "mixed"
                              : incident.state == PresentState::Stratified ? "stratified"
                                                                           : "between";
    speaker.say(SentenceKey::IncidentPresent,
                {oxygen("surface", incident.surface), oxygen("bottom", incident.bottom),
                 number("difference", Measure::Rate, incident.difference), term("state", state)});
    speaker.say(SentenceKey::IncidentAdvice,
                {term("advice", incident.state == PresentState::Mixed        ? "advice-mixed"
                                : incident.state == PresentState::Stratified ? "advice-stratified"
                                                                             : "advice-between")});
    for (const OptionOutcome& option : incident.options) {
        std::vector<SentenceValue> values{term("option", termOf(option.option)), oxygen("low", option.lowest),
                                          oxygen("line", incident.line)};
        if (option.recovery_h) {
            values.push_back(number("hours", Measure::Hours, *option.recovery_h));
        }
        speaker.say(option.recovery_h ? SentenceKey::IncidentOption : SentenceKey::IncidentOptionNever,
                    std::move(values));
    }
    if (incident.surfaceIsGuess) {
        speaker.say(SentenceKey::IncidentSurfaceAssumed,
                    {number("transfer", Measure::Plain, incident.surfaceTransfer_kgPerH),
                     number("power", Measure::Plain, kEmergency_kWPerHa)});
    }
    const Speaker steps(out, SentencePart::IncidentSteps);
    for (const char* step :
         {"step-feed", "step-inflow", "step-chase", "step-samples", "step-dead", "step-again"}) {
        steps.say(SentenceKey::IncidentStep, {term("step", step)});
    }
    steps.say(SentenceKey::IncidentWrite);
    steps.say(SentenceKey::IncidentCall);
    const Speaker signs(out, SentencePart::IncidentSigns);
    for (const char* sign : {"sign-oxygen", "sign-toxic"}) {
        signs.say(SentenceKey::IncidentSign, {term("sign", sign)});
    }
    sayCautions(incident.model, Speaker(out, SentencePart::Caution));
    return inUnitsOf(incident.pond, std::move(out));
}

}  // namespace engine
