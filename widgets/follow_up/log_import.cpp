#include "widgets/follow_up/log_import.h"

#include "engine/base/csv_table.h"
#include "engine/base/text.h"
#include "engine/pond/csv.h"
#include "engine/pond/local_time.h"
#include "engine/pond/pond_io.h"
#include "engine/pond/readings_csv.h"
#include "widgets/document/to_qstring.h"

#include <QCoreApplication>

#include <algorithm>

namespace widgets {
namespace {

constexpr std::size_t kMostRowsBefore = 30;             // of a logger's own, before the headings
constexpr const char* kOwnFile = ".dawnline-readings";  // in the name of a file that we may write anew
constexpr const char* kHeadings = "at,depth_m,temperature_c,oxygen_mg_per_l,secchi_m,meter,note";

QString tr(const char* text) {
    return QCoreApplication::translate("LogImport", text);
}

std::size_t matchOf(const std::string& heading) {
    const engine::ColumnMeaning meaning = engine::columnMeaning(heading);
    const std::vector<ColumnMatch>& all = columnMatches();
    for (std::size_t i = 0; i < all.size(); ++i) {
        const engine::ColumnMeaning one = engine::columnMeaning(all[i].heading);
        if (one.column == meaning.column && one.unit == meaning.unit) {
            return i;
        }
    }
    return 0;
}

/// The heading under which the engine is to read a column: its own where that says what it is taken for, so
/// that the engine names it as the file does and knows its clock; else one that says so.
std::string headingFor(const ImportColumn& column) {
    const std::string own = column.heading.toStdString();
    if (matchOf(own) == column.match) {
        return own;
    }
    const ColumnMatch& match = columnMatches()[column.match];
    return *match.heading != '\0' ? match.heading : "x";
}

/// A cell as RFC 4180 has it.
std::string quoted(const std::string& cell, char separator) {
    if (cell.find_first_of("\"\r\n") == std::string::npos && cell.find(separator) == std::string::npos) {
        return cell;
    }
    std::string out = "\"";
    for (const char c : cell) {
        out += c == '"' ? "\"\"" : std::string(1, c);
    }
    return out + '"';
}

std::string numberOf(const engine::MaybeQuantity& value) {
    if (!value) {
        return {};
    }
    const bool isUnder = value->low == 0.0 && value->high == 2.0 * value->value && value->value > 0.0;
    return isUnder ? "<" + engine::shortest(*value->high) : engine::shortest(value->value);
}

std::string rowsText(const std::vector<engine::Reading>& rows) {
    std::string text = std::string(kHeadings) + "\n";
    for (const engine::Reading& row : rows) {
        text += engine::formatLocalTime(*row.at);
        for (const engine::MaybeQuantity* value : {&row.depth, &row.temperature, &row.oxygen, &row.secchi}) {
            text += ',' + numberOf(*value);
        }
        text += ',' + quoted(row.meter, ',') + ',' + quoted(row.note, ',') + '\n';
    }
    return text;
}

QString sentencesOf(const engine::Diagnostics& faults) {
    QStringList all;
    for (const engine::Diagnostic& fault : faults) {
        if (fault.severity == engine::Severity::Error) {
            all << toQString(engine::format(fault));
        }
    }
    return all.join(QLatin1Char(' '));
}

std::optional<double> deepestOf(const engine::Pond& pond) {
    return !pond.basin.contours.empty() ? std::optional(pond.basin.contours.back().depth.value)
           : pond.basin.maxDepth        ? std::optional(pond.basin.maxDepth->value)
                                        : std::nullopt;
}

/// The engine's reading of the rows, without what it says of two rows of one time: that is a remark.
std::vector<engine::Reading> readBack(const std::string& text, const std::string& name,
                                      const engine::Pond& pond, engine::Diagnostics& faults) {
    return engine::readReadingsCsv(text, name, {}, deepestOf(pond), faults);
}

/// True if both hold the same readings, whatever their lines.
bool isSameRows(const std::vector<engine::Reading>& a, const std::vector<engine::Reading>& b) {
    return std::equal(a.begin(), a.end(), b.begin(), b.end(),
                      [](engine::Reading one, const engine::Reading& other) {
                          one.line = other.line;
                          return one == other;
                      });
}

std::filesystem::file_type typeOf(const std::filesystem::path& path) {
    std::error_code none;
    return std::filesystem::symlink_status(path, none).type();
}

/// The file that the pond keeps its rows in, if this program wrote it for this pond (by its name, and no
/// link), else a name that is not taken.
std::string rowsFile(const Document& document) {
    const std::filesystem::path folder = engine::folderOf(document.path());
    const std::string stem = document.path().stem().string() + kOwnFile;
    const std::string& used = document.pond().readingsFile.name;
    if (used.starts_with(stem) && typeOf(folder / used) == std::filesystem::file_type::regular) {
        return used;
    }
    std::string name = stem + ".csv";
    for (int i = 2; typeOf(folder / name) != std::filesystem::file_type::not_found; ++i) {
        name = stem + '-' + std::to_string(i) + ".csv";
    }
    return name;
}

}  // namespace

const std::vector<ColumnMatch>& columnMatches() {
    using enum engine::LoggerColumn;
    static const std::vector<ColumnMatch> all{
        {Unused, "", tr("not used")},
        {At, "date time", tr("date and time")},
        {DateOnly, "date", tr("date")},
        {ClockOnly, "time", tr("time of day")},
        {Depth, "depth m", tr("depth, m")},
        {Depth, "depth cm", tr("depth, cm")},
        {Depth, "depth ft", tr("depth, ft")},
        {Temperature, "temperature degC", tr("water temperature, \u00b0C")},
        {Temperature, "temperature degF", tr("water temperature, \u00b0F")},
        {Oxygen, "oxygen mg/L", tr("oxygen, mg/L")},
        {Oxygen, "oxygen umol/L", tr("oxygen, \u00b5mol/L")},
        {OxygenPercent, "oxygen percent", tr("oxygen, % of saturation (not used)")},
        {Secchi, "secchi m", tr("Secchi depth, m")},
        {Secchi, "secchi cm", tr("Secchi depth, cm")},
        {Meter, "meter", tr("meter or logger")},
        {Note, "note", tr("note")}};
    return all;
}

ImportText importText(const std::string& text) {
    using enum engine::LoggerColumn;
    ImportText out;
    out.text = text;
    out.separator = engine::separatorOf(text);
    engine::CsvRows rows(out.text, out.separator);
    std::vector<std::vector<std::string>> first;
    while (first.size() <= kMostRowsBefore + 1 && rows.next()) {
        first.push_back(rows.cells());
    }
    const auto isHeadings = [](const std::vector<std::string>& cells) {
        bool hasTime = false, hasValue = false;
        for (const std::string& cell : cells) {
            const engine::LoggerColumn column = engine::columnMeaning(cell).column;
            hasTime = hasTime || column == At || column == DateOnly;
            hasValue = hasValue || column == Oxygen || column == Temperature || column == OxygenPercent ||
                       column == Depth;
        }
        return hasTime && hasValue;
    };
    const auto headings = std::find_if(first.begin(), first.end(), isHeadings);
    out.hasHeadings = headings != first.end();
    out.headingsAt = out.hasHeadings ? static_cast<std::size_t>(headings - first.begin()) : 0;
    if (first.empty()) {
        return out;
    }
    const std::vector<std::string>& named = first[out.headingsAt];
    const std::size_t value = out.hasHeadings ? out.headingsAt + 1 : 0;
    for (std::size_t i = 0; i < named.size(); ++i) {
        ImportColumn column;
        column.heading = out.hasHeadings ? toQString(named[i]) : tr("column %1").arg(i + 1);
        if (value < first.size() && i < first[value].size()) {
            column.first = toQString(first[value][i]);
        }
        column.match = out.hasHeadings ? matchOf(named[i]) : 0;
        out.columns.push_back(column);
    }
    return out;
}

ImportReading readImport(const ImportText& import, const engine::ReadingsFile& shape,
                         const engine::Pond& pond) {
    std::string text(import.headingsAt, '\n');  // so that what is said names the lines of the file
    for (std::size_t i = 0; i < import.columns.size(); ++i) {
        text += (i == 0 ? "" : std::string(1, import.separator)) +
                quoted(headingFor(import.columns[i]), import.separator);
    }
    text += '\n';
    engine::CsvRows rows(import.text, import.separator);
    for (std::size_t row = 0; rows.next(); ++row) {
        if (row < import.headingsAt + (import.hasHeadings ? 1 : 0)) {
            continue;
        }
        for (std::size_t i = 0; i < rows.cells().size(); ++i) {
            text +=
                (i == 0 ? "" : std::string(1, import.separator)) + quoted(rows.cells()[i], import.separator);
        }
        text += '\n';
    }
    ImportReading out;
    if (!rows.fault().empty()) {
        out.said.push_back({engine::Severity::Error, {}, rows.line(), {}, rows.fault()});
    }
    auto read = engine::readReadingsCsv(
        text, {}, shape, deepestOf(pond), out.said,
        pond.place.utcOffset_h ? std::optional(pond.place.utcOffset_h->value) : std::nullopt);
    out.readings = std::move(read);
    return out;
}

std::optional<QString> takeRows(Document& document, const std::vector<engine::Reading>& rows) {
    if (document.path().empty()) {
        return tr("Save the pond first: the rows are kept in a file beside it.");
    }
    const engine::Pond& pond = document.pond();
    std::vector<engine::Reading> all = pond.fileReadings;
    all.insert(all.end(), rows.begin(), rows.end());
    const std::string name = rowsFile(document);
    Document::Companion companion{name, rowsText(all), {}};
    engine::Diagnostics faults;
    const std::vector<engine::Reading> back = readBack(companion.text, name, pond, faults);
    if (engine::hasErrors(faults)) {
        return sentencesOf(faults);
    }
    const std::size_t count = pond.fileReadings.size();
    const bool isKept =
        back.size() >= count && isSameRows({back.begin(), back.begin() + count}, pond.fileReadings);
    if (!isKept) {
        return tr("The rows that are there already cannot be written again as they are; nothing was taken.");
    }
    if (name == pond.readingsFile.name) {
        companion.refusal = [&](const std::optional<std::string>& now) -> std::optional<QString> {
            engine::Diagnostics ignored;  // that the rows differ says it all
            if (now && isSameRows(readBack(*now, name, pond, ignored), pond.fileReadings)) {
                return std::nullopt;
            }
            return tr(
                "Another program has changed the file of the readings; read the pond again and then add the "
                "rows.");
        };
    }
    const auto change = [&](engine::Pond& to) {
        to.readingsFile = {name, std::nullopt, std::nullopt};
        to.fileReadings = back;
    };
    std::string addition = "\n[readings]\nfile = \"" + name + "\"\n";
    if (pond.readingsFile.name == name) {
        addition.clear();
    }
    const Document::Appended added = document.append(change, addition, companion);
    return !added.faults.empty() ? std::optional(sentencesOf(added.faults)) : added.notWritten;
}

}  // namespace widgets
