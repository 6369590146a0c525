#include "engine/advice/answer_change.h"

#include "engine/base/text.h"
#include "engine/pond/local_time.h"

#include <array>
#include <charconv>

namespace engine {
namespace {

enum class Shown { AsWritten, Of100, Tenth };

struct Field {
    const char* name;
    Shown shown;
};
// The name of the run differs always, and what one has to read first is no part of the answer.
constexpr std::array kFields{
    Field{"kind", Shown::AsWritten},
    Field{"ramp", Shown::AsWritten},
    Field{"first_day", Shown::AsWritten},
    Field{"days_to_sustained", Shown::AsWritten},
    Field{"worst_mg_per_l", Shown::Tenth},
    Field{"worst_night", Shown::AsWritten},
    Field{"lethal_chance_percent", Shown::Of100},
    Field{"lethal_chance_alone_percent", Shown::Of100},
    Field{"stress_chance_percent", Shown::Of100},
    Field{"stress_chance_alone_percent", Shown::Of100},
    Field{"end_state_mg_per_l", Shown::Tenth},
    Field{"end_state_alone_mg_per_l", Shown::Tenth},
    Field{"surface_air_kw", Shown::AsWritten},
    Field{"surface_air_from", Shown::AsWritten},
    Field{"surface_air_until", Shown::AsWritten},
    Field{"wait_from", Shown::AsWritten},
    Field{"wait_until", Shown::AsWritten},
    Field{"hold_days", Shown::AsWritten},
    Field{"provisional", Shown::AsWritten},
};

std::string shownOf(const GivenAnswer& answer, const Field& field) {
    const auto found = answer.fields.find(field.name);
    if (found == answer.fields.end()) {
        return {};
    }
    const auto number = field.shown == Shown::AsWritten ? std::nullopt : toNumber(found->second);
    return !number ? found->second : fixed(*number, field.shown == Shown::Tenth ? 1 : 0);
}

std::string sumOf(const GivenAnswer& answer, std::string_view file) {
    const auto found = answer.made.sums.find(std::string(file));
    return found == answer.made.sums.end() ? std::string() : found->second;
}

}  // namespace

AnswerChange changeOf(const GivenAnswer& before, const GivenAnswer& now) {
    AnswerChange out{before.made.stamp.time, now.made.stamp.time, {}, {}};
    const RunStamp &then = before.made.stamp, &today = now.made.stamp;
    const auto note = [&](AnswerInput input, bool isOther) {
        if (isOther) {
            out.inputs.push_back(input);
        }
    };
    note(AnswerInput::Program, then.version != today.version);
    note(AnswerInput::Draws,
         then.seed != today.seed || then.members != today.members || then.nights != today.nights);
    note(AnswerInput::Ramp, then.ramp != today.ramp);
    for (const auto& [input, file] :
         {std::pair(AnswerInput::Pond, kFrozenPond), std::pair(AnswerInput::Weather, kFrozenWeather),
          std::pair(AnswerInput::Readings, kFrozenReadings),
          std::pair(AnswerInput::Climate, kFrozenClimate)}) {
        note(input, sumOf(before, file) != sumOf(now, file));
    }
    for (const Field& field : kFields) {
        const std::string was = shownOf(before, field), is = shownOf(now, field);
        if (was != is) {
            out.fields.push_back({field.name, was, is});
        }
    }
    return out;
}

}  // namespace engine
