#pragma once

#include "app/recovery.h"
#include "engine/base/error.h"
#include "engine/ensemble/compare.h"

#include <QString>

#include <filesystem>
#include <functional>
#include <utility>
#include <vector>

class QWidget;

namespace app {

// What the window says in longer sentences.

[[nodiscard]] QString pondFilter(bool withBackups = false);
[[nodiscard]] QString changedOnDisk();
/// Keys that are no menu entries.
[[nodiscard]] QString chartKeys();
/// What a program that was ended has left, and how many more there are.
[[nodiscard]] QString leftBehindText(const LeftBehind& left, std::size_t count);  ///< For file dialogs
/// Why a file was not opened. @param keepsOld  Another pond stays open.
[[nodiscard]] QString notOpened(const std::filesystem::path& path, const engine::Diagnostics& faults,
                                bool keepsOld);
[[nodiscard]] QString warnings(const engine::Diagnostics& warnings);
[[nodiscard]] QString commentsAreLost();
/// Which runs ended early and why; empty if none did.
[[nodiscard]] QString endedEarly(const engine::Comparison& comparison);
[[nodiscard]] QString cautions();
[[nodiscard]] QString about();
/// Shown before the first pond. The caller's parent owns it.
[[nodiscard]] QWidget* emptyPage(QWidget* parent,
                                 const std::vector<std::pair<QString, std::function<void()>>>& ways);

}  // namespace app
