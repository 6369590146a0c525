#pragma once

#include "engine/base/error.h"
#include "engine/base/text_file.h"
#include "engine/pond/pond.h"

#include <filesystem>
#include <functional>
#include <map>
#include <optional>
#include <string>
#include <string_view>

namespace engine {

/// Numbers that a pond file has with a unit, such as "1.8 acres", by the path of their key. What no longer
/// reads as the number of its key is written as a plain number, so that these outlive any edit of the pond.
using TypedNumbers = std::map<std::string, std::string>;

/// What reading a pond file gave: a pond if and only if no diagnostic is an error.
struct PondReading {
    std::optional<Pond> pond;
    TypedNumbers typed;
    Diagnostics diagnostics;  ///< All faults found, in the order of their lines; warnings too.
};

/// Reads a pond file with its weather, climate and readings files. Never throws for what a file holds.
/// @param path  As the user gave it; it stands in front of every diagnostic.
[[nodiscard]] PondReading readPond(const std::filesystem::path& path);

/// The same from text; the files that it names are looked for relative to `name`'s folder.
[[nodiscard]] PondReading readPondText(std::string_view text, const std::filesystem::path& name);

/// Where the files that a pond names come from.
using CompanionSource = std::function<FileText(const std::string& named)>;

/// The same from text alone, such as that of a bundle: nothing is read from the disk.
[[nodiscard]] PondReading readPondText(std::string_view text, const std::filesystem::path& name,
                                       const CompanionSource& companions);

/// Our own form: fixed order of tables and keys, shortest numbers, LF line ends. Reading this text
/// gives an equal pond, and writing that gives the same bytes.
/// @param typed  As the file had them, to be kept as they were typed.
[[nodiscard]] std::string writePond(const Pond& pond, const TypedNumbers& typed = {});

/// Why what would be saved of a pond could not be opened again as the same pond, as a sentence; nothing if it
/// can. The files that it names are not looked at. Every pond that readPond() gives can be saved.
[[nodiscard]] std::optional<std::string> savingFault(const Pond& pond, const TypedNumbers& typed = {});

}  // namespace engine
