#include "engine/wording/sentence_log.h"

#include "engine/base/text.h"
#include "engine/follow_up/constants_follow_up.h"
#include "engine/follow_up/log_chain.h"
#include "engine/pond/local_time.h"
#include "engine/pond/pond_words.h"
#include "engine/water/water.h"
#include "engine/wording/sentence_builder.h"

#include <algorithm>
#include <map>

namespace engine {
namespace {

using enum SentenceKey;

SentenceValue dateValue(LocalTime at) {
    return day("date", Date(std::chrono::floor<std::chrono::days>(at)));
}

SentenceValue clockValue(const char* name, double seconds) {
    return number(name, Measure::Clock, seconds);
}

std::string describe(const Reading& reading) {
    std::string out;
    const auto add = [&](const std::string& part) { out.append(out.empty() ? "" : ", ").append(part); };
    if (reading.depth) {
        add(fixed(*reading.depth, 1) + " m");
    }
    if (reading.temperature) {
        add(fixed(*reading.temperature, 1) + " degC");
    }
    if (reading.oxygen) {
        add(fixed(*reading.oxygen, 1) + " mg/L");
    }
    if (reading.secchi) {
        add("Secchi " + fixed(*reading.secchi, 1) + " m");
    }
    if (reading.smell) {
        add("smell " + std::string(wordOf(*reading.smell)));
    }
    if (reading.fish) {
        add("fish " + std::string(wordOf(*reading.fish)));
    }
    for (const auto& [name, text] : {std::pair("meter ", &reading.meter), std::pair("photo ", &reading.photo),
                                     std::pair("", &reading.note)}) {
        if (!text->empty()) {
            add(name + *text);
        }
    }
    if (reading.corrects) {
        add("corrects the reading of " + formatLocalTime(*reading.corrects));
    }
    return out;
}

std::string describe(const Event& event) {
    std::string out = event.kind;
    const auto add = [&](const std::string& part) { out.append(", ").append(part); };
    if (event.until) {
        add("until " + formatLocalTime(*event.until));
    }
    if (event.minutes) {
        add(fixed(*event.minutes, 0) + " min");
    }
    for (const auto& [name, text] : {std::pair("ramp ", &event.ramp), std::pair("", &event.what),
                                     std::pair("photo ", &event.photo), std::pair("", &event.note)}) {
        if (!text->empty()) {
            add(name + *text);
        }
    }
    if (event.area_percent) {
        add(fixed(*event.area_percent, 0) + " % of the area");
    }
    if (event.amount_kg) {
        add(shortest(*event.amount_kg) + " kg");
    }
    if (event.rain_mm) {
        add(fixed(*event.rain_mm, 0) + " mm");
    }
    if (event.corrects) {
        add("corrects the event of " + formatLocalTime(*event.corrects));
    }
    return out;
}

void addFlags(const Pond& pond, const SentenceBuilder& builder) {
    struct Flag {
        int count = 0;
        LocalTime first{};
    };
    const std::vector<Reading> readings = readingsInForce(pond);
    const std::vector<SensorFault> faults = sensorFaults(readings, airPressure(*pond.place.elevation));
    std::map<std::pair<SensorFault, long>, Flag> flags;
    for (std::size_t i = 0; i < readings.size(); ++i) {
        if (faults[i] != SensorFault::None) {
            Flag& flag = flags[{faults[i], std::lround(10.0 * *readings[i].depth)}];
            flag.first = flag.count++ == 0 ? *readings[i].at : flag.first;
        }
    }
    for (const auto& [what, flag] : flags) {
        builder.add(LogFlag, {whole("count", flag.count),
                              number("depth", Measure::Depth, 0.1 * static_cast<double>(what.second)),
                              term("fault", faultWord(what.first)), dateValue(flag.first),
                              clockValue("clock", secondsOf(pond, flag.first))});
    }
    if (flags.empty()) {
        builder.add(LogNoFlags);
    }
    builder.add(LogFlagsMeaning);
}

}  // namespace

std::vector<Sentence> sentencesOf(const FitResult& fit) {
    std::vector<Sentence> out;
    const SentenceBuilder builder(out, SentencePart::Fit);
    builder.add(FitDone,
                {title(fit.known), whole("oxygens", static_cast<int>(fit.oxygen.readings)),
                 whole("temperatures", static_cast<int>(fit.temperature.readings)), dateValue(fit.until),
                 clockValue("clock", fit.untilTime), whole("members", static_cast<int>(fit.members.size()))});
    if (fit.air.isDoNothing) {
        builder.add(FitAirOff);
    } else {
        builder.add(FitAirRuns, {text("ramp", fit.air.name)});
    }
    if (fit.flagged > 0) {
        builder.add(FitFlagged, {whole("count", static_cast<int>(fit.flagged))});
    }
    if (fit.outside > 0) {
        builder.add(FitOutside, {whole("count", static_cast<int>(fit.outside))});
    }
    if (fit.oxygen.readings > 0) {
        builder.add(fit.oxygen.ratio > kBeyondNoise.value ? FitDisagrees : FitAgrees,
                    {number("mean", Measure::Rate, fit.oxygen.mean),
                     number("ratio", Measure::Plain, fit.oxygen.ratio)});
    }
    // The three inputs whose spread the readings narrowed most.
    std::vector<const FittedInput*> inputs;
    for (const FittedInput& input : fit.inputs) {
        inputs.push_back(&input);
    }
    const auto left = [](const FittedInput* input) {
        const double before = input->prior.p95 - input->prior.p05;
        return before > 0.0 ? (input->fitted.p95 - input->fitted.p05) / before : 1.0;
    };
    std::stable_sort(inputs.begin(), inputs.end(),
                     [&](const FittedInput* a, const FittedInput* b) { return left(a) < left(b); });
    for (std::size_t i = 0; i < std::min<std::size_t>(inputs.size(), 3); ++i) {
        const FittedInput& input = *inputs[i];
        builder.add(FitNarrowed,
                    {text("input", input.name), number("priorLow", Measure::Plain, input.prior.p05),
                     number("priorHigh", Measure::Plain, input.prior.p95),
                     number("low", Measure::Plain, input.fitted.p05),
                     number("high", Measure::Plain, input.fitted.p95)});
    }
    for (const NightAhead& night : fit.nights) {
        builder.add(FitNight, {day("date", dateOfDay(fit.known, night.night)), oxygen("low", night.low.p50),
                               clockValue("clock", night.lowTime), oxygen("from", night.low.p05),
                               oxygen("to", night.low.p95)});
        builder.add(FitNightChances, {of100("stress", night.chanceBelowStress),
                                      oxygen("line", fit.model.parameters.thresholds.stress)});
    }
    const SentenceBuilder assumption(out, SentencePart::Assumption);
    assumption.add(FitWeather);
    assumption.add(FitMeaning);
    addCautions(fit.model, SentenceBuilder(out, SentencePart::Caution));
    return inUnitsOf(fit.known, std::move(out));
}

std::vector<Sentence> sentencesOfLog(const Pond& pond, const std::optional<std::string>& printed) {
    std::vector<Sentence> out;
    const SentenceBuilder builder(out, SentencePart::Log);
    builder.add(LogTitle, {title(pond), whole("readings", static_cast<int>(pond.readings.size())),
                           whole("events", static_cast<int>(pond.events.size())),
                           whole("rows", static_cast<int>(pond.fileReadings.size()))});
    struct Line {
        LocalTime at;
        SentenceKey key;
        std::string text;
    };
    std::vector<Line> lines;
    for (const Reading& reading : pond.readings) {
        lines.push_back({*reading.at, LogReading, describe(reading)});
    }
    for (const Event& event : pond.events) {
        lines.push_back({*event.at, LogEvent, describe(event)});
    }
    std::stable_sort(lines.begin(), lines.end(), [](const Line& a, const Line& b) { return a.at < b.at; });
    for (const Line& line : lines) {
        builder.add(line.key, {text("at", formatLocalTime(line.at)), text("text", line.text)});
    }
    if (!pond.fileReadings.empty()) {
        const auto [first, last] =
            std::minmax_element(pond.fileReadings.begin(), pond.fileReadings.end(),
                                [](const Reading& a, const Reading& b) { return *a.at < *b.at; });
        builder.add(LogRows,
                    {text("first", formatLocalTime(*first->at)), text("last", formatLocalTime(*last->at)),
                     whole("count", static_cast<int>(pond.fileReadings.size()))});
    }
    addFlags(pond, builder);
    builder.add(LogHeadIs, {text("head", shown(logHead(pond)))});
    if (printed) {
        const std::optional<LogHead> head = parseLogHead(*printed);
        const HeadMatch match = head ? matchHead(pond, *head) : HeadMatch::Changed;
        builder.add(match == HeadMatch::Same        ? LogHeadSame
                    : match == HeadMatch::OnlyAdded ? LogHeadAdded
                                                    : LogHeadChanged);
    }
    builder.add(LogHeadMeaning);
    return inUnitsOf(pond, std::move(out));
}

}  // namespace engine
