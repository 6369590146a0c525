#include "engine/pond/pond_io.h"

#include "engine/base/text_file.h"
#include "engine/pond/pond_check.h"
#include "engine/pond/pond_keys.h"
#include "engine/pond/readings_csv.h"
#include "engine/pond/toml_fields.h"
#include "engine/pond/weather_csv.h"

#include <algorithm>

namespace engine {
namespace {

/// Said of one pond file; more is of no use to anybody.
constexpr std::size_t kMostDiagnostics = 1000;

PondReading refused(const std::string& file, int line, std::string sentence) {
    return {std::nullopt, {{Severity::Error, file, line, "", std::move(sentence)}}};
}

void sortByLine(Diagnostics& diagnostics, const std::string& file) {
    std::stable_sort(diagnostics.begin(), diagnostics.end(),
                     [](const Diagnostic& a, const Diagnostic& b) { return a.line < b.line; });
    if (diagnostics.size() > kMostDiagnostics) {
        const std::string more = std::to_string(diagnostics.size() - kMostDiagnostics);
        diagnostics.resize(kMostDiagnostics);
        diagnostics.push_back(
            {Severity::Error, file, 0, "", "Faults beyond these are not listed: " + more + "."});
    }
}

void append(Diagnostics& to, Diagnostics more) {
    std::move(more.begin(), more.end(), std::back_inserter(to));
}

/// A CSV file that belongs to a pond file.
struct Companion {
    std::string path;  ///< As it stands in front of diagnostics.
    std::optional<std::string> text;
};

/// Reads a file named by `key`, relative to the pond file; what keeps it from being read is said at the key.
Companion readCompanion(const std::string& named, const std::filesystem::path& pondFile,
                        const std::string& key, const PondSource& source, Diagnostics& faults) {
    const std::filesystem::path path = pondFile.parent_path() / named;
    Companion companion{path.string(), std::nullopt};
    FileText file = readWholeFile(path, kCsvFileLimit_bytes);
    if (!file.text) {
        faults.push_back({Severity::Error, source.file, source.lineOf(key), key,
                          shownText(named) + " cannot be used: " + file.fault});
    } else if (const auto fault = findTextFault(*file.text)) {
        faults.push_back({Severity::Error, companion.path, fault->line, "", fault->sentence});
    } else {
        companion.text = std::move(file.text);
    }
    return companion;
}

/// True if nothing is wrong with the key itself, so that the file it names may be looked at.
bool isSound(const std::string& key, const Diagnostics& faults) {
    return std::none_of(faults.begin(), faults.end(),
                        [&](const Diagnostic& fault) { return fault.key == key; });
}

/// Fills what stands in the CSV files of a pond; returns what their content has for faults.
Diagnostics readCompanions(Pond& pond, const std::filesystem::path& pondFile, const PondSource& source,
                           Diagnostics& faults) {
    Diagnostics said;
    if (!pond.weather.file.empty() && pond.weather.stamp && isSound("weather.file", faults)) {
        const auto file = readCompanion(pond.weather.file, pondFile, "weather.file", source, faults);
        if (file.text) {
            pond.weather.hours = readWeatherCsv(*file.text, file.path, *pond.weather.stamp, said);
        }
    }
    if (!pond.readingsFile.name.empty() && isSound("readings.file", faults)) {
        const auto file = readCompanion(pond.readingsFile.name, pondFile, "readings.file", source, faults);
        if (file.text) {
            const bool isBasinSound =
                isSound("basin.max_depth_m", faults) && !source.isUnread("basin.contour");
            const auto deepest = isBasinSound ? deepestPoint(pond.basin) : std::nullopt;
            pond.fileReadings = readReadingsCsv(*file.text, file.path, pond.readingsFile, deepest, said);
        }
    }
    return said;
}

}  // namespace

PondReading readPondText(std::string_view text, const std::filesystem::path& name) {
    PondSource source;
    source.file = name.string();
    if (text.size() > kPondFileLimit_bytes) {
        return refused(source.file, 0,
                       "The text is larger than 4 MiB, the most that is read of a pond file.");
    }
    if (const auto fault = findTextFault(text)) {
        return refused(source.file, fault->line, fault->sentence);
    }
    const TomlParse parse = parseToml(text);
    if (!parse.root) {
        return refused(source.file, parse.line, parse.fault);
    }

    Pond pond;
    Diagnostics faults;
    TomlFields fields(*parse.root, source, faults);
    visitPond(fields, pond);
    if (fields.isOfNewerVersion()) {
        faults.resize(1);  // what a newer version wrote is not for us to judge
        return {std::nullopt, std::move(faults)};
    }
    fields.finish();
    append(faults, checkPond(pond, source));
    Diagnostics ofCompanions = readCompanions(pond, name, source, faults);
    sortByLine(faults, source.file);
    append(faults, std::move(ofCompanions));
    if (hasErrors(faults)) {
        return {std::nullopt, std::move(faults)};
    }
    return {std::move(pond), std::move(faults)};
}

PondReading readPond(const std::filesystem::path& path) {
    const FileText file = readWholeFile(path, kPondFileLimit_bytes);
    if (!file.text) {
        return refused(path.string(), 0, file.fault);
    }
    return readPondText(*file.text, path);
}

}  // namespace engine
