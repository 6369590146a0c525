#include "engine/wording/wording.h"

#include "engine/base/error.h"
#include "engine/base/text.h"
#include "engine/base/text_file.h"
#include "engine/base/units.h"
#include "engine/pond/local_time.h"
#include "engine/wording/wording_list.h"

#include <algorithm>
#include <array>
#include <cctype>
#include <cmath>

namespace engine {
namespace {

using enum SentenceKey;

/// Fixed decimals, or "under LIMIT" for a positive number that they would show as nothing.
std::string orUnder(double value, int decimals, std::string_view limit) {
    std::string text = fixed(value, decimals);
    const bool isNothing = text.find_first_not_of("0.") == std::string::npos;
    return value > 0.0 && isNothing ? "under " + std::string(limit) : text;
}

/// A share as so many of 100, without showing what is rare as never or what is frequent as always.
std::string of100(double share) {
    const double hundred = 100.0 * share;
    return share <= 0.0      ? "none"
           : share >= 1.0    ? "all"
           : hundred < 0.5   ? "fewer than 1"
           : hundred >= 99.5 ? "more than 99"
                             : fixed(std::round(hundred), 0);
}

std::string clockOf(double seconds) {
    const auto minutes = static_cast<long>(std::lround(seconds / kMinute));
    const long day = std::lround(kDay / kMinute);
    return formatClock(ClockTime{static_cast<int>((minutes % day + day) % day)});
}

/// A unit as templates have it behind a value, and what stands before it for readers of US units.
struct UsUnit {
    Measure measure{};
    std::string_view metric, us;
    double factor = 1.0, offset = 0.0;  ///< us = factor * metric + offset
};
constexpr std::array kUsUnits{UsUnit{Measure::Depth, " m", " ft", 1.0 / kMetrePerFoot, 0.0},
                              UsUnit{Measure::Degrees, " degC", " degF", 1.8, 32.0}};

/// @param behind  Of the template, from behind the value on.
const UsUnit* usUnitOf(Measure measure, std::string_view behind) {
    for (const UsUnit& unit : kUsUnits) {
        const bool isWhole = behind.size() <= unit.metric.size() ||
                             !std::isalnum(static_cast<unsigned char>(behind[unit.metric.size()]));
        if (unit.measure == measure && behind.starts_with(unit.metric) && isWhole) {
            return &unit;
        }
    }
    return nullptr;
}

}  // namespace

std::string_view englishTemplate(SentenceKey key) {
    for (const std::span<const Template> list :
         {templatesOfRuns(), templatesOfAssumptions(), templatesBeforeRuns(), templatesOfMeasuring(),
          templatesOfLog(), templatesOfPlans(), templatesOfAdvice(), templatesOfChanges()}) {
        const auto found =
            std::find_if(list.begin(), list.end(), [key](const Template& one) { return one.key == key; });
        if (found != list.end()) {
            return found->text;
        }
    }
    ensure(false, "every sentence has its words");
    return {};
}

std::string_view englishTerm(std::string_view term) {
    for (const std::span<const TermWord> list : {termsOfRuns(), termsOfMeasuring(), termsOfLog(),
                                                 termsOfPlans(), termsOfAdvice(), termsOfChanges()}) {
        const auto found =
            std::find_if(list.begin(), list.end(), [term](const TermWord& one) { return one.term == term; });
        if (found != list.end()) {
            return found->text;
        }
    }
    return term;
}

std::string_view englishHeading(SentencePart part) {
    switch (part) {
        case SentencePart::File:
        case SentencePart::Files:
        case SentencePart::Night:
        case SentencePart::NightDetail:
            return "";
        case SentencePart::Advice:
            return "The answer";
        case SentencePart::Plan:
            return "The plan";
        case SentencePart::EndStates:
            return "End states, held from day 1";
        case SentencePart::Calendar:
            return "The next twelve months";
        case SentencePart::Holds:
            return "Weather";
        case SentencePart::Sensitivity:
            return "Too fast, too slow";
        case SentencePart::Profile:
            return "The profile";
        case SentencePart::Shares:
            return "What moves the worst low";
        case SentencePart::Visit:
            return "What to measure, cheapest first";
        case SentencePart::Triage:
            return "Triage";
        case SentencePart::DoNothing:
            return "Left alone";
        case SentencePart::Pond:
            return "The pond";
        case SentencePart::Ramp:
            return "The ramps";
        case SentencePart::Assumption:
            return "What is assumed";
        case SentencePart::Grounds:
            return "What this stands on, worst first";
        case SentencePart::Caution:
            return "Cautions";
        case SentencePart::Log:
        case SentencePart::Fit:
        case SentencePart::Today:
        case SentencePart::Incident:
        case SentencePart::Review:
            return "";
        case SentencePart::DaysAhead:
            return "From today";
        case SentencePart::IncidentSigns:
            return "What it looks like";
        case SentencePart::IncidentSteps:
            return "What to do and write down";
        case SentencePart::Treatments:
            return "What was put in";
    }
    return "";
}

std::string shownValue(const SentenceValue& value) {
    switch (value.measure) {
        case Measure::Text:
            return onOneLine(value.text);
        case Measure::Term:
            return onOneLine(englishTerm(value.text));
        case Measure::Whole:
        case Measure::Minutes:
        case Measure::Volume:
            return fixed(value.number, 0);
        case Measure::Micrograms:
            return figures(1000.0 * value.number);
        case Measure::Oxygen:
        case Measure::Depth:
            return fixed(value.number, 1);
        case Measure::Rate:
            return std::string(value.number > 0.0 ? "+" : "").append(fixed(value.number, 1));
        case Measure::Hours:
            return orUnder(value.number, 1, "0.1");
        case Measure::Of100:
            return of100(value.number);
        case Measure::Percent:
            return orUnder(value.number, 0, "1");
        case Measure::Mass:
        case Measure::Plain:
            return figures(value.number);
        case Measure::Degrees:
        case Measure::Input:
            return shortest(value.number);
        case Measure::Clock:
            return clockOf(value.number);
        case Measure::Day:
            return formatDate(std::chrono::sys_days(std::chrono::days(std::lround(value.number))));
    }
    return "";
}

std::string filled(std::string_view pattern, const std::vector<SentenceValue>& values,
                   const std::function<std::string(const SentenceValue&)>& shown, UnitSystem units) {
    std::string text;
    while (!pattern.empty()) {
        const std::size_t open = pattern.find('{');
        text += pattern.substr(0, open);
        if (open == std::string_view::npos) {
            break;
        }
        const std::size_t close = pattern.find('}', open);
        ensure(close != std::string_view::npos, "a place in a template is closed");
        const std::string_view name = pattern.substr(open + 1, close - open - 1);
        const auto value = std::find_if(values.begin(), values.end(),
                                        [name](const SentenceValue& one) { return one.name == name; });
        ensure(value != values.end(), "every place in a template has its value");
        pattern.remove_prefix(close + 1);
        const UsUnit* us = units == UnitSystem::Us ? usUnitOf(value->measure, pattern) : nullptr;
        if (us == nullptr) {
            text += shown(*value);
            continue;
        }
        SentenceValue other = *value;
        other.number = std::round(10.0 * (us->factor * value->number + us->offset)) / 10.0;
        text.append(shown(other)).append(us->us).append(" (");
        text.append(shown(*value)).append(us->metric).append(")");
        pattern.remove_prefix(us->metric.size());
    }
    return text;
}

std::string english(const Sentence& sentence) {
    return filled(englishTemplate(sentence.key), sentence.values, shownValue,
                  sentence.units.value_or(UnitSystem::Metric));
}

std::string englishText(const std::vector<Sentence>& sentences) {
    std::string text;
    std::optional<SentencePart> part;
    for (const Sentence& sentence : sentences) {
        const std::string_view heading = englishHeading(sentence.part);
        const bool isLead = sentence.key == Title || sentence.key == FileTitle ||
                            sentence.key == MeasureTitle || sentence.key == PlanTitle ||
                            sentence.key == FilesWritten;
        if (!isLead && sentence.part != part && !heading.empty()) {
            text.append("\n").append(heading).append("\n");
            part = sentence.part;
        }
        const bool startsBlock = sentence.part != SentencePart::Ramp || sentence.key == RampWorst ||
                                 sentence.key == RampTooWarm || sentence.key == RampEndedEarly ||
                                 sentence.key == RampsApart;
        text += sentence.key == FilesWritten ? "\n" : isLead ? "" : startsBlock ? "  " : "    ";
        text += english(sentence) + '\n';
    }
    return text;
}

}  // namespace engine
