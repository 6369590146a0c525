#pragma once

#include "engine/base/files.h"

#include <array>
#include <chrono>
#include <cstdint>
#include <map>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace engine {

/// What besides its files decides the numbers of a run, and when it was made.
struct RunStamp {
    std::string version;            ///< Of the program
    std::chrono::sys_seconds time;  ///< When the run was frozen, UTC
    std::uint64_t seed = 1;
    int members = 1;
    int nights = 0;
    std::string ramp;  ///< That the papers are about
};

inline constexpr std::string_view kFrozenPond = "pond.toml";
inline constexpr std::string_view kFrozenWeather = "weather.csv";
inline constexpr std::string_view kFrozenReadings = "readings.csv";
inline constexpr std::string_view kFrozenClimate = "climate.epw";
/// The files that a run is made of, in the order of its statement; only the pond's is there always.
inline constexpr std::array kFrozenInputs{kFrozenPond, kFrozenWeather, kFrozenReadings, kFrozenClimate};
inline constexpr std::string_view kFrozenStatement = "run.txt";

/// The text whose SHA-256 names a run: program version, time, seed, members, nights, ramp, and the SHA-256 of
/// each file. LF line ends, so that `sha256sum` of it gives the same name.
[[nodiscard]] std::string statementOf(const std::vector<TextFile>& files, const RunStamp& stamp);

/// Lines "DIGEST  NAME" behind a word, the digest by the name; nothing if one of them is no such line.
/// @param before  At the start of the lines that count, may be empty.
[[nodiscard]] std::optional<std::map<std::string, std::string>> readSums(std::string_view text,
                                                                         std::string_view before);

/// A statement of a run (statementOf) read back.
struct RunStatement {
    RunStamp stamp;
    std::map<std::string, std::string> sums;  ///< SHA-256 of each file, by its name
};
/// @return nothing if the text is no statement of a run.
[[nodiscard]] std::optional<RunStatement> readStatement(std::string_view text);

}  // namespace engine
