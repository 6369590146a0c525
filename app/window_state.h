#pragma once

#include "widgets/controls/theme.h"

#include <QByteArray>
#include <QSettings>
#include <QStringList>

namespace app {

/// `dawnline` under the XDG state folder (base directories 0.8: a relative path in the variable is ignored),
/// or `dawnline-state` beside the program where a file `dawnline-portable` stands there.
[[nodiscard]] QString stateFolder();

/// What the window remembers between starts: in `dawnline/window.ini` under the XDG state folder, since
/// recent files and layout are state and not settings (XDG base directories 0.8).
class WindowState {
public:
    WindowState();

    [[nodiscard]] QStringList recentFiles() const;  ///< That are still there, the latest first; at most 10.
    void addRecentFile(const QString& path);
    void clearRecentFiles();

    [[nodiscard]] widgets::Theme theme() const;
    void setTheme(widgets::Theme theme);

    [[nodiscard]] QByteArray geometry() const;
    void setGeometry(const QByteArray& geometry);

private:
    QSettings m_file;
};

}  // namespace app
