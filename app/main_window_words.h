#pragma once

#include "engine/error.h"
#include "engine/run.h"

#include <QString>

#include <filesystem>

class QWidget;

namespace app {

// What the window says in longer sentences.

[[nodiscard]] QString pondFilter();  ///< For file dialogs
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
[[nodiscard]] QWidget* emptyPage(QWidget* parent);

}  // namespace app
