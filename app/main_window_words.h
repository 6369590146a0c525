#pragma once

#include "app/recovery.h"
#include "engine/base/error.h"
#include "engine/ensemble/compare.h"

#include <QString>
#include <QStringList>

#include <filesystem>
#include <functional>
#include <utility>
#include <vector>

class QWidget;

namespace app {

// What the window says in longer sentences, and how it names files.

[[nodiscard]] QString pondFilter(bool forComparing = false);
/// A name for a pond file as it was typed, with .toml behind it if it has no ending.
[[nodiscard]] QString pondName(const QString& typed);
/// Filters of the dialog that exports a chart: picture, drawing, numbers.
[[nodiscard]] QStringList chartFilters();
/// A name for a chart's file: with the ending of the chosen filter if that is not the first, or if the name
/// has no ending; else as it was typed.
[[nodiscard]] QString chartName(const QString& typed, const QString& filter);
[[nodiscard]] QString changedOnDisk();
/// Keys that are no menu entries.
[[nodiscard]] QString chartKeys();
/// What a program that was ended has left, and how many more there are.
[[nodiscard]] QString leftBehindText(const LeftBehind& left, std::size_t count);
/// Why a file was not opened. @param keepsOld  Another pond stays open.
[[nodiscard]] QString notOpened(const std::filesystem::path& path, const engine::Diagnostics& faults,
                                bool keepsOld);
[[nodiscard]] QString warnings(const engine::Diagnostics& warnings);
[[nodiscard]] QString commentsAreLost();
/// Which runs ended early and why; empty if none did.
[[nodiscard]] QString endedEarly(const engine::Comparison& comparison);
[[nodiscard]] QString cautions();
[[nodiscard]] QString about();
/// A way on from the empty window: what its button says, and does.
using Way = std::pair<QString, std::function<void()>>;
/// Ways under a heading.
struct WaysUnder {
    QString heading;
    std::vector<Way> ways;
};
/// Shown before the first pond: what the program is for, and the ways to a pond. The caller's parent owns it.
/// @param known  Ponds of before, at least one in each list.
[[nodiscard]] QWidget* emptyPage(QWidget* parent, const std::vector<Way>& ways,
                                 const std::vector<WaysUnder>& known);
/// The other pond files in a pond file's folder, by name; at most 20. Empty for no file.
[[nodiscard]] QStringList pondsBeside(const QString& file);

}  // namespace app
