#include "app/window_state.h"

#include <QCoreApplication>
#include <QDir>
#include <QFileInfo>

namespace app {
namespace {

constexpr int kMostRecent = 10;

QString stateFile() {
    return stateFolder() + QStringLiteral("/window.ini");
}

const QString kRecent = QStringLiteral("recent_files");
const QString kTheme = QStringLiteral("theme");
const QString kGeometry = QStringLiteral("geometry");

}  // namespace

QString stateFolder() {
    const QDir beside(QCoreApplication::applicationDirPath());
    if (beside.exists(QStringLiteral("dawnline-portable"))) {
        return beside.filePath(QStringLiteral("dawnline-state"));
    }
    QString folder = qEnvironmentVariable("XDG_STATE_HOME");
    if (!QDir::isAbsolutePath(folder)) {
        folder = QDir::homePath() + QStringLiteral("/.local/state");
    }
    return folder + QStringLiteral("/dawnline");
}

WindowState::WindowState() : m_file(stateFile(), QSettings::IniFormat) {}

QStringList WindowState::recentFiles() const {
    QStringList files = m_file.value(kRecent).toStringList();
    files.removeIf([](const QString& file) { return !QFileInfo::exists(file); });
    return files;
}

void WindowState::addRecentFile(const QString& path) {
    const QString absolute = QFileInfo(path).absoluteFilePath();
    QStringList files = recentFiles();
    files.removeAll(absolute);
    files.prepend(absolute);
    m_file.setValue(kRecent, QStringList(files.mid(0, kMostRecent)));
}

void WindowState::clearRecentFiles() {
    m_file.remove(kRecent);
}

widgets::Theme WindowState::theme() const {
    const QString word = m_file.value(kTheme).toString();
    return word == QLatin1String("light")  ? widgets::Theme::Light
           : word == QLatin1String("dark") ? widgets::Theme::Dark
                                           : widgets::Theme::System;
}

void WindowState::setTheme(widgets::Theme theme) {
    m_file.setValue(kTheme, theme == widgets::Theme::Light  ? QStringLiteral("light")
                            : theme == widgets::Theme::Dark ? QStringLiteral("dark")
                                                            : QStringLiteral("system"));
}

QByteArray WindowState::geometry() const {
    return m_file.value(kGeometry).toByteArray();
}

void WindowState::setGeometry(const QByteArray& geometry) {
    m_file.setValue(kGeometry, geometry);
}

}  // namespace app
