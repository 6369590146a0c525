#pragma once

#include "engine/base/error.h"
#include "engine/pond/logger_columns.h"
#include "engine/pond/pond.h"
#include "widgets/document/document.h"

#include <QString>

#include <optional>
#include <string>
#include <vector>

namespace widgets {

/// A column of a logger's file or of rows from a spreadsheet, and what it is taken for.
struct ImportColumn {
    QString heading;        ///< As it stands there
    QString first;          ///< Its first cell
    std::size_t match = 0;  ///< Place in `columnMatches()`
};

/// What a column may be taken for: each meaning with each unit.
struct ColumnMatch {
    engine::LoggerColumn column;
    const char* heading;  ///< By which the engine knows it
    QString text;
};
[[nodiscard]] const std::vector<ColumnMatch>& columnMatches();

/// A text on its way into the log: its columns and how they are matched.
struct ImportText {
    std::string text;
    char separator = ',';
    std::vector<ImportColumn> columns;
    std::size_t headingsAt = 0;  ///< Rows before the headings
    bool hasHeadings = false;    ///< Else the first row is one of numbers already
};

/// Looks for the headings and matches what they say. Without any, no column is matched.
[[nodiscard]] ImportText importText(const std::string& text);

/// What the rows come to under the matching.
struct ImportReading {
    std::vector<engine::Reading> readings;  ///< Of use only without an error
    engine::Diagnostics said;
};
[[nodiscard]] ImportReading readImport(const ImportText& import, const engine::ReadingsFile& shape,
                                       const engine::Pond& pond);

/// Puts rows behind those of the readings file. The file is written in one form, under the pond's name with
/// `.dawnline-readings.csv`, or with a number where a file of that name is there that the pond does not use;
/// a logger's own file stays as it is and is no longer looked at.
/// @return sentences if they are not in the log, or not in the pond file yet.
[[nodiscard]] std::optional<QString> takeRows(Document& document, const std::vector<engine::Reading>& rows);

}  // namespace widgets
