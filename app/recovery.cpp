#include "app/recovery.h"

#include "app/window_state.h"
#include "engine/base/durable.h"
#include "engine/base/text_file.h"
#include "engine/pond/pond_io.h"
#include "widgets/document/document.h"

#include <QDir>
#include <QLockFile>
#include <QUuid>

#include <algorithm>

namespace app {
namespace {

const char* const kHead = "# dawnline recovery of ";
constexpr std::uintmax_t kLongestHead_bytes = 64 << 10;  // four times the longest path that Linux knows

QString folder() {
    return stateFolder() + QStringLiteral("/recovery");
}

/// Any path as plain text on one line: paths may have line breaks and bytes that are no UTF-8.
std::string written(const std::string& path) {
    return QByteArray::fromStdString(path).toPercentEncoding("/").toStdString();
}

std::string readBack(std::string_view text) {
    return QByteArray::fromPercentEncoding(QByteArray(text.data(), static_cast<qsizetype>(text.size())))
        .toStdString();
}

std::unique_ptr<QLockFile> lockOf(const std::filesystem::path& file) {
    auto lock = std::make_unique<QLockFile>(QString::fromStdString(file.string() + ".lock"));
    lock->setStaleLockTime(0);  // held until its program has gone, however long that takes
    return lock;
}

/// Takes away what windows have left that were killed in writing: no more of them than a part of a file.
void tidy() {
    const engine::FolderLock lock(folder().toStdString());
    if (!lock.fault()) {
        engine::removeLeftovers(folder().toStdString());
    }
    for (const QFileInfo& info : QDir(folder()).entryInfoList({QStringLiteral("*.toml.lock")}, QDir::Files)) {
        const std::filesystem::path file = (info.path() + u'/' + info.completeBaseName()).toStdString();
        if (!std::filesystem::exists(file)) {
            lockOf(file)->tryLock(0);  // goes with its lock, unless a window that is open holds it
        }
    }
}

}  // namespace

Recovery::Recovery(widgets::Document& document, QObject* parent, int behind_ms)
    : QObject(parent), m_document(document) {
    m_due.setSingleShot(true);
    m_due.setInterval(behind_ms);
    connect(&m_due, &QTimer::timeout, this, &Recovery::write);
    connect(&m_document, &widgets::Document::changed, this, &Recovery::follow);
    connect(&m_document.undoStack(), &QUndoStack::cleanChanged, this, &Recovery::follow);
}

Recovery::~Recovery() {
    if (m_isWritten) {
        QFile::remove(QString::fromStdString(m_file.string()));
    }
}

void Recovery::follow() {
    if (m_document.isModified()) {
        if (!m_due.isActive()) {  // not started again by each edit, so that typing does not put it off
            m_due.start();
        }
        return;
    }
    m_due.stop();
    if (m_isWritten) {
        QFile::remove(QString::fromStdString(m_file.string()));
        m_isWritten = false;
    }
}

void Recovery::write() {
    if (!m_document.isModified()) {
        return;
    }
    if (m_file.empty()) {
        QDir().mkpath(folder());
        tidy();
        m_file =
            (folder() + u'/' + QUuid::createUuid().toString(QUuid::WithoutBraces) + QStringLiteral(".toml"))
                .toStdString();
        m_lock = lockOf(m_file);
        m_lock->tryLock(0);
    }
    const std::string original =
        m_document.path().empty() ? std::string() : std::filesystem::absolute(m_document.path()).string();
    const auto fault = engine::saveDurably(
        m_file, kHead + written(original) + '\n' + engine::writePond(m_document.pond(), m_document.typed()),
        engine::OldFile::Replaced);
    m_isWritten = !fault || m_isWritten;
}

std::vector<LeftBehind> Recovery::leftBehind() {
    std::vector<LeftBehind> found;
    for (const QFileInfo& info :
         QDir(folder()).entryInfoList({QStringLiteral("*.toml")}, QDir::Files, QDir::Time)) {
        LeftBehind left;
        left.file = info.absoluteFilePath().toStdString();
        const auto lock = lockOf(left.file);
        if (!lock->tryLock(0)) {
            continue;  // of a window that is open
        }
        const engine::FileText text =
            engine::readWholeFile(left.file, engine::kPondFileLimit_bytes + kLongestHead_bytes);
        if (!text.text || !text.text->starts_with(kHead)) {
            continue;
        }
        const std::string_view all = *text.text;
        const std::size_t head = std::string_view(kHead).size(), end = std::min(all.find('\n'), all.size());
        left.original = readBack(all.substr(head, end - head));
        // Read as if it stood in the original's place, so that the files it names are found.
        const engine::PondReading reading =
            engine::readPondText(all.substr(end), left.original.empty() ? left.file : left.original);
        if (reading.pond) {
            left.pond = *reading.pond;
            left.typed = reading.typed;
            found.push_back(std::move(left));
        }
    }
    return found;
}

void Recovery::adopt(const LeftBehind& left) {
    m_file = left.file;
    m_lock = lockOf(m_file);
    m_lock->tryLock(0);
    m_isWritten = true;
}

}  // namespace app
