#include "engine/pond/pond_io.h"

#include "engine/base/text.h"
#include "engine/base/text_file.h"
#include "engine/pond/epw.h"
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
    return {std::nullopt, {}, {{Severity::Error, file, line, "", std::move(sentence)}}};
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

/// A CSV file, or one of a typical year, that belongs to a pond file.
struct Companion {
    std::string path;  ///< As it stands in front of diagnostics.
    std::optional<std::string> text;
};

/// Reads a file named by `key`; what keeps it from being read is said at the key.
Companion readCompanion(const std::string& named, const std::filesystem::path& pondFile,
                        const std::string& key, const CompanionSource& companions, const PondSource& source,
                        Diagnostics& faults) {
    Companion companion{(pondFile.parent_path() / named).string(), std::nullopt};
    FileText file = companions(named);
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

/// Fills what stands in the files that a pond names; returns what their content has for faults.
Diagnostics readCompanions(Pond& pond, const std::filesystem::path& pondFile,
                           const CompanionSource& companions, const PondSource& source, Diagnostics& faults) {
    Diagnostics said;
    if (!pond.weather.file.empty() && pond.weather.stamp && isSound("weather.file", faults)) {
        const auto file =
            readCompanion(pond.weather.file, pondFile, "weather.file", companions, source, faults);
        if (file.text) {
            pond.weather.hours = readWeatherCsv(*file.text, file.path, *pond.weather.stamp, said);
        }
    }
    if (!pond.climate.file.empty() && isSound("climate.file", faults)) {
        const auto file =
            readCompanion(pond.climate.file, pondFile, "climate.file", companions, source, faults);
        if (file.text) {
            pond.climate.fileMonths = readEpw(*file.text, file.path, pond.place, said);
        }
    }
    if (!pond.readingsFile.name.empty() && isSound("readings.file", faults)) {
        const auto file =
            readCompanion(pond.readingsFile.name, pondFile, "readings.file", companions, source, faults);
        if (file.text) {
            const bool isBasinSound =
                isSound("basin.max_depth_m", faults) && !source.isUnread("basin.contour");
            const auto deepest = isBasinSound ? deepestPoint(pond.basin) : std::nullopt;
            pond.fileReadings = readReadingsCsv(
                *file.text, file.path, pond.readingsFile, deepest, said,
                pond.place.utcOffset_h ? std::optional(pond.place.utcOffset_h->value) : std::nullopt);
        }
    }
    return said;
}

/// Of ponds in longer files it is tried at once whether they can be saved: our own form may be longer.
constexpr std::size_t kSurelySaved_bytes = kPondFileLimit_bytes / 64;

/// A pond file without its CSV files.
struct OwnText {
    std::optional<Pond> pond;  ///< Nothing where there is no use in going on; the faults say why.
    TypedNumbers typed;
    PondSource source;
    Diagnostics faults;
};

OwnText readOwnText(std::string_view text, const std::filesystem::path& name) {
    OwnText own;
    own.source.file = name.string();
    const auto refuse = [&](int line, std::string sentence) {
        own.faults = refused(own.source.file, line, std::move(sentence)).diagnostics;
        return std::move(own);
    };
    if (text.size() > kPondFileLimit_bytes) {
        return refuse(0, "The text is larger than 4 MiB, the most that is read of a pond file.");
    }
    if (const auto fault = findTextFault(text)) {
        return refuse(fault->line, fault->sentence);
    }
    const TomlParse parse = parseToml(text);
    if (!parse.root) {
        return refuse(parse.line, parse.fault);
    }
    Pond pond;
    TomlFields fields(*parse.root, own.source, own.faults);
    visitPond(fields, pond);
    if (fields.isOfNewerVersion()) {
        own.faults.resize(1);  // what a newer version wrote is not for us to judge
        return own;
    }
    fields.finish();
    append(own.faults, checkPond(pond, own.source));
    own.pond = std::move(pond);
    own.typed = fields.takeTyped();
    return own;
}

}  // namespace

std::optional<std::string> savingFault(const Pond& pond, const TypedNumbers& typed) {
    const std::string text = writePond(pond, typed);
    if (text.size() > kPondFileLimit_bytes) {
        return "The pond takes " + fixed(static_cast<double>(text.size()) / 1048576.0, 1) +
               " MiB in the form in which it is saved, but at most 4 MiB of a pond file are read. Shorten "
               "its notes or move its readings into a CSV file.";
    }
    const OwnText back = readOwnText(text, {});
    Pond own = pond;
    own.weather.hours.clear();
    own.climate.fileMonths.clear();
    own.fileReadings.clear();
    if (!back.pond || hasErrors(back.faults)) {
        const auto error = std::find_if(back.faults.begin(), back.faults.end(), [](const Diagnostic& one) {
            return one.severity == Severity::Error;
        });
        ensure(error != back.faults.end(), "what is refused is said");
        return "What would be saved could not be opened again: " + error->sentence;
    }
    if (!(*back.pond == own)) {
        return "What would be saved would not be the same pond when it is opened again. This is a fault of "
               "the program; please report it.";
    }
    return std::nullopt;
}

PondReading readPondText(std::string_view text, const std::filesystem::path& name) {
    return readPondText(text, name, [&](const std::string& named) {
        return readWholeFile(name.parent_path() / named, kCsvFileLimit_bytes);
    });
}

PondReading readPondText(std::string_view text, const std::filesystem::path& name,
                         const CompanionSource& companions) {
    OwnText own = readOwnText(text, name);
    if (!own.pond) {
        return {std::nullopt, {}, std::move(own.faults)};
    }
    Diagnostics ofCompanions = readCompanions(*own.pond, name, companions, own.source, own.faults);
    if (text.size() > kSurelySaved_bytes && !hasErrors(own.faults)) {
        if (std::optional<std::string> fault = savingFault(*own.pond, own.typed)) {
            own.faults.push_back({Severity::Error, own.source.file, 0, "", std::move(*fault)});
        }
    }
    sortByLine(own.faults, own.source.file);
    append(own.faults, std::move(ofCompanions));
    if (hasErrors(own.faults)) {
        return {std::nullopt, {}, std::move(own.faults)};
    }
    return {std::move(*own.pond), std::move(own.typed), std::move(own.faults)};
}

PondReading readPond(const std::filesystem::path& path) {
    const FileText file = readWholeFile(path, kPondFileLimit_bytes);
    if (!file.text) {
        return refused(path.string(), 0, file.fault);
    }
    return readPondText(*file.text, path);
}

}  // namespace engine
