#include "widgets/durable_save.h"

#include "widgets/shown.h"

#include <QCoreApplication>
#include <QFile>
#include <QFileInfo>
#include <QSaveFile>

#include <fcntl.h>
#include <unistd.h>

namespace widgets {
namespace {

QString cannot(const QString& path, const QString& why) {
    return QCoreApplication::translate("DurableSave", "The file \"%1\" was not saved: %2.").arg(path, why);
}

/// QSaveFile flushes the file and renames it, but not the folder that holds the new name.
void flushFolder(const QString& folder) {
    const int handle = ::open(QFile::encodeName(folder).constData(), O_RDONLY | O_DIRECTORY | O_CLOEXEC);
    if (handle >= 0) {
        ::fsync(handle);  // some file systems refuse this for folders; the file itself is flushed
        ::close(handle);
    }
}

std::optional<QString> write(const QString& path, const QByteArray& text) {
    QSaveFile file(path);
    if (!file.open(QIODevice::WriteOnly) || file.write(text) != text.size() || !file.commit()) {
        return cannot(path, file.errorString());
    }
    flushFolder(QFileInfo(path).absolutePath());
    return std::nullopt;
}

}  // namespace

std::optional<QString> saveDurably(const std::filesystem::path& path, std::string_view text, OldFile old) {
    const QString named = shown(path.string());
    const QFileInfo link(named);
    const QString name = link.isSymLink() ? link.symLinkTarget() : named;
    const QByteArray bytes(text.data(), static_cast<qsizetype>(text.size()));
    if (QFile there(name); old == OldFile::KeptAsBak && there.open(QIODevice::ReadOnly)) {
        const QByteArray before = there.readAll();
        if (there.error() != QFileDevice::NoError) {
            return cannot(name, there.errorString());
        }
        if (before == bytes) {
            return std::nullopt;
        }
        if (auto fault = write(name + QStringLiteral(".bak"), before)) {
            return fault;
        }
    }
    if (auto fault = write(name, bytes)) {
        return fault;
    }
    QFile written(name);
    if (!written.open(QIODevice::ReadOnly) || written.readAll() != bytes) {
        return cannot(name, QCoreApplication::translate("DurableSave", "it does not read back as written"));
    }
    return std::nullopt;
}

}  // namespace widgets
