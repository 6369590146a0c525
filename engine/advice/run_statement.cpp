#include "engine/advice/run_statement.h"

#include "engine/base/digest.h"
#include "engine/pond/local_time.h"

#include <charconv>

namespace engine {
namespace {

std::string isoTime(std::chrono::sys_seconds time) {
    return formatIsoTime(LocalTime(time.time_since_epoch())) + 'Z';
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

template <class Whole>
std::optional<Whole> wholeNumber(const std::string& text) {
    Whole number{};
    const auto done = std::from_chars(text.data(), text.data() + text.size(), number);
    const bool isWhole = done.ec == std::errc() && done.ptr == text.data() + text.size();
    return isWhole ? std::optional(number) : std::nullopt;
}

}  // namespace

std::string statementOf(const std::vector<TextFile>& files, const RunStamp& stamp) {
    std::string text = "Dawnline run\nversion " + stamp.version + "\ntime " + isoTime(stamp.time) +
                       "\nseed " + std::to_string(stamp.seed) + "\nmembers " + std::to_string(stamp.members) +
                       "\nnights " + std::to_string(stamp.nights) + "\nramp " + stamp.ramp + '\n';
    for (const TextFile& file : files) {
        text += "sha256 " + sha256(file.text) + "  " + file.name + '\n';
    }
    return text;
}

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
    const auto seed = wholeNumber<std::uint64_t>(after(text, "seed").value_or(""));
    const auto members = wholeNumber<int>(after(text, "members").value_or("")),
               nights = wholeNumber<int>(after(text, "nights").value_or(""));
    if (!version || !ramp || !at || !seed || !members || !nights) {
        return std::nullopt;
    }
    out.stamp = {*version, std::chrono::sys_seconds(at->time_since_epoch()), *seed, *members, *nights, *ramp};
    auto sums = readSums(text, "sha256 ");
    if (!sums) {
        return std::nullopt;
    }
    out.sums = std::move(*sums);
    return out;
}

}  // namespace engine
