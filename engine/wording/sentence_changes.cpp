#include "engine/wording/sentence_changes.h"

#include "engine/base/units.h"
#include "engine/pond/local_time.h"
#include "engine/wording/sentence_builder.h"

#include <cmath>

namespace engine {
namespace {

std::string_view termOf(AnswerInput input) {
    switch (input) {
        case AnswerInput::Program:
            return "input-program";
        case AnswerInput::Draws:
            return "input-draws";
        case AnswerInput::Ramp:
            return "input-ramp";
        case AnswerInput::Pond:
            return "input-pond";
        case AnswerInput::Weather:
            return "input-weather";
        case AnswerInput::Readings:
            return "input-readings";
        case AnswerInput::Climate:
            return "input-climate";
    }
    return "";
}

/// A time as the pond's own clock shows it.
std::string clockText(std::chrono::sys_seconds time, const Pond& pond) {
    const double offset = pond.place.utcOffset_h ? pond.place.utcOffset_h->value : 0.0;
    return formatLocalTime(std::chrono::floor<std::chrono::minutes>(
        LocalTime(time.time_since_epoch()) + std::chrono::seconds(std::lround(offset * kHour))));
}

/// Words for the kinds of answer, and for a value that there is not.
SentenceValue shown(const char* name, const ChangedField& field, const std::string& value) {
    return value.empty()           ? term(name, "nothing")
           : field.field == "kind" ? term(name, "kind-" + value)
                                   : text(name, value);
}

}  // namespace

std::vector<Sentence> sentencesOf(const AnswerChange& change, const Pond& pond) {
    std::vector<Sentence> out;
    const SentenceBuilder builder(out, SentencePart::Advice);
    builder.add(SentenceKey::ChangeTitle,
                {text("before", clockText(change.before, pond)), text("now", clockText(change.now, pond))});
    for (const ChangedField& field : change.fields) {
        builder.add(SentenceKey::ChangeField,
                    {term("what", "field-" + field.field), shown("before", field, field.before),
                     shown("now", field, field.now)});
    }
    builder.add(change.fields.empty() ? SentenceKey::ChangeNone : SentenceKey::ChangePapers);
    for (const AnswerInput input : change.inputs) {
        builder.add(SentenceKey::ChangeInput, {term("what", termOf(input))});
    }
    if (change.inputs.empty()) {
        builder.add(SentenceKey::ChangeNoInput);
    }
    return out;
}

}  // namespace engine
