#pragma once

#include <QPalette>

namespace widgets {

enum class Theme { System, Light, Dark };

/// The window's colours: those of the charts, so that paper and knobs are of one piece.
[[nodiscard]] QPalette themePalette(bool isDark);

/// Gives the whole program one style and one palette. `System` follows what the desktop said when the program
/// started. @pre there is a QApplication; the first call is made before any window is shown.
void applyTheme(Theme theme);

}  // namespace widgets
