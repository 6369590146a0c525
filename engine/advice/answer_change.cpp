#include "engine/advice/answer_change.h"

#include "engine/base/text.h"
#include "engine/pond/local_time.h"

#include <array>

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

/// What follows a word at the start of a line.
std::optional<std::string> after(std::string_view text, std::string_view word) {
    const std::size_t at = text.find("\n" + std::string(word) + " ");
    if (at == std::string_view::npos) {
        return std::nullopt;
    }
    const std::size_t begin = at + word.size() + 2;
    return std::string(text.substr(begin, text.find('\n', begin) - begin));
}

}  // namespace

std::optional<std::map<std::string, std::string>> readSums(std::string_view text, std::string_view before) {
    std::map<std::string, std::string> sums;
    constexpr std::size_t kDigits = 64;
    while (!text.empty()) {
        const std::size_t end = text.find('\n');
        std::string_view line = text.substr(0, end);
        text.remove_prefix(end == std::string_view::npos ? text.size() : end + 1);
        if (!line.starts_with(before)) {
            continue;
        }
        line.remove_prefix(before.size());
        if (line.size() < kDigits + 3 || line.substr(kDigits, 2) != "  ") {
            return std::nullopt;
        }
        sums.emplace(line.substr(kDigits + 2), line.substr(0, kDigits));
    }
    return sums;
}

std::optional<RunStatement> readStatement(std::string_view text) {
    if (!text.starts_with("Dawnline run\n")) {
        return std::nullopt;
    }
    RunStatement out;
    const auto version = after(text, "version"), ramp = after(text, "ramp");
    std::string time = after(text, "time").value_or("");
    if (time.size() > 10 && time.ends_with('Z')) {
        time.pop_back();
        time[10] = ' ';
    }
    const auto at = parseLocalTime(time);
    const auto seed = toNumber(after(text, "seed").value_or("")),
               members = toNumber(after(text, "members").value_or("")),
               nights = toNumber(after(text, "nights").value_or(""));
    if (!version || !ramp || !at || !seed || !members || !nights) {
        return std::nullopt;
    }
    out.stamp = {*version,
                 std::chrono::sys_seconds(at->time_since_epoch()),
                 static_cast<std::uint64_t>(*seed),
                 static_cast<int>(*members),
                 static_cast<int>(*nights),
                 *ramp};
    auto sums = readSums(text, "sha256 ");
    if (!sums) {
        return std::nullopt;
    }
    out.sums = std::move(*sums);
    return out;
}

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
          std::pair(AnswerInput::Readings, kFrozenReadings)}) {
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
