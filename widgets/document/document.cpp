#include "widgets/document/document.h"

#include "engine/base/text_file.h"
#include "engine/follow_up/log_chain.h"
#include "engine/pond/pond_check.h"
#include "engine/pond/pond_io.h"
#include "widgets/document/to_qstring.h"

#include <algorithm>

namespace widgets {
namespace {

Document::Parts difference(const engine::Pond& a, const engine::Pond& b) {
    Document::Parts parts;
    parts.setFlag(Document::Ramps, a.ramps != b.ramps || a.chosenRamp != b.chosenRamp);
    parts.setFlag(Document::LimitsPart, !(a.limits == b.limits));
    parts.setFlag(Document::AeratorPart, a.aerator != b.aerator);
    engine::Pond rest = a;
    rest.ramps = b.ramps;
    rest.chosenRamp = b.chosenRamp;
    rest.limits = b.limits;
    rest.aerator = b.aerator;
    parts.setFlag(Document::Others, !(rest == b));
    return parts;
}

void putLog(engine::Pond& to, const engine::Pond& from) {
    to.readings = from.readings;
    to.events = from.events;
    to.readingsFile = from.readingsFile;
    to.fileReadings = from.fileReadings;
}

bool isSameLog(const engine::Pond& a, const engine::Pond& b) {
    return a.readings == b.readings && a.events == b.events && a.readingsFile == b.readingsFile &&
           a.fileReadings == b.fileReadings;
}

/// A companion file's name as seen from another pond file.
std::string moved(const std::string& name, const std::filesystem::path& from,
                  const std::filesystem::path& to) {
    if (name.empty() || std::filesystem::path(name).is_absolute()) {
        return name;
    }
    // Of the files, since a file named without a folder has an empty one, which is no path.
    std::error_code fault;
    const auto relative = std::filesystem::proximate(std::filesystem::absolute(from).parent_path() / name,
                                                     std::filesystem::absolute(to).parent_path(), fault);
    return fault ? name : relative.string();
}

}  // namespace

/// The pond before and after.
class Document::Edit final : public QUndoCommand {
public:
    Edit(Document& document, const QString& name, engine::Pond after, QString mergeKey)
        : QUndoCommand(name),
          m_document(document),
          m_before(document.m_pond),
          m_after(std::move(after)),
          m_mergeKey(std::move(mergeKey)),
          m_appends(document.m_appends) {}

    void undo() override { put(m_before); }
    void redo() override { put(m_after); }
    [[nodiscard]] int id() const override { return m_mergeKey.isEmpty() ? -1 : 1; }
    bool mergeWith(const QUndoCommand* other) override {
        const auto* later = static_cast<const Edit*>(other);  // the only class with this id
        if (later->m_mergeKey != m_mergeKey) {
            return false;
        }
        m_after = later->m_after;
        m_appends = later->m_appends;
        setObsolete(m_after == m_before);
        return true;
    }

private:
    /// The log stands as it is unless this very edit changed it and nothing was entered since.
    void put(engine::Pond pond) {
        if (isSameLog(m_before, m_after) || m_appends != m_document.m_appends) {
            putLog(pond, m_document.m_pond);
        }
        m_document.put(pond);
    }

    Document& m_document;
    engine::Pond m_before, m_after;
    QString m_mergeKey;
    int m_appends;
};

Document::Document(QObject* parent) : QObject(parent) {}

QString Document::title() const {
    if (!m_pond.title.empty()) {
        return toQString(m_pond.title);
    }
    return m_path.empty() ? tr("Untitled pond") : toQString(m_path.filename().string());
}

void Document::put(const engine::Pond& pond) {
    const Parts parts = difference(m_pond, pond);
    m_pond = pond;
    emit changed(parts);
}

engine::Diagnostics Document::open(const std::filesystem::path& path) {
    engine::PondReading reading = engine::readPond(path);
    if (!reading.pond) {
        return reading.diagnostics;
    }
    const engine::FileText text = engine::readWholeFile(path, engine::kPondFileLimit_bytes);
    m_pond = std::move(*reading.pond);
    m_typed = std::move(reading.typed);
    m_path = path;
    m_hasPond = true;
    m_losesComments = !text.text || *text.text != engine::writePond(m_pond, m_typed);
    m_onDisk = text.text.value_or(std::string());
    m_hasUnwrittenEntry = false;
    m_undo.clear();
    emit replaced();
    emit changed(Everything);
    emit pathChanged();
    return reading.diagnostics;
}

void Document::start(engine::Pond pond, const std::filesystem::path& path, engine::TypedNumbers typed) {
    m_pond = std::move(pond);
    m_typed = std::move(typed);
    m_path = path;
    m_hasPond = true;
    const engine::FileText text =
        path.empty() ? engine::FileText() : engine::readWholeFile(path, engine::kPondFileLimit_bytes);
    m_onDisk = text.text.value_or(std::string());
    m_losesComments = text.text.has_value();
    m_undo.clear();
    m_undo.resetClean();
    emit replaced();
    emit changed(Everything);
    emit pathChanged();
}

std::optional<std::string> Document::changedOnDisk() const {
    if (m_path.empty()) {
        return std::nullopt;
    }
    engine::FileText text = engine::readWholeFile(m_path, engine::kPondFileLimit_bytes);
    return text.text && *text.text != m_onDisk ? std::move(text.text) : std::nullopt;
}

engine::Diagnostics Document::edit(const QString& name, const std::function<void(engine::Pond&)>& change,
                                   const QString& mergeKey) {
    engine::ensure(m_hasPond, "only an open pond is edited");
    engine::Pond after = m_pond;
    change(after);
    if (after == m_pond) {
        return {};
    }
    engine::Diagnostics faults = engine::checkPond(after);
    if (engine::hasErrors(faults)) {
        std::erase_if(faults,
                      [](const engine::Diagnostic& one) { return one.severity != engine::Severity::Error; });
        return faults;
    }
    m_undo.push(new Edit(*this, name, std::move(after), mergeKey));
    return {};
}

Document::Appended Document::append(const std::function<void(engine::Pond&)>& change,
                                    std::string_view addition, const std::optional<Companion>& companion) {
    engine::ensure(m_hasPond, "only the log of an open pond is added to");
    engine::Pond after = m_pond;
    change(after);
    engine::Pond rest = after;
    putLog(rest, m_pond);
    engine::ensure(
        rest == m_pond && engine::matchHead(after, engine::logHead(m_pond)) != engine::HeadMatch::Changed,
        "an entry is added to the log and changes nothing");
    Appended out;
    out.faults = engine::checkPond(after);
    if (engine::hasErrors(out.faults)) {
        std::erase_if(out.faults,
                      [](const engine::Diagnostic& one) { return one.severity != engine::Severity::Error; });
        return out;
    }
    out.faults.clear();
    const engine::FolderLock lock(engine::folderOf(engine::linkTarget(m_path)));
    if (companion) {
        if (const auto fault = writeCompanion(lock, *companion)) {
            out.faults.push_back({engine::Severity::Error, {}, 0, {}, fault->toStdString()});
            return out;
        }
    }
    out.notWritten = writeEntry(lock, change, addition);
    m_hasUnwrittenEntry = m_hasUnwrittenEntry || out.notWritten.has_value();
    ++m_appends;
    put(after);
    return out;
}

/// Into the file as it is on the disk, so that other edits stay unsaved. What is to be written is read back
/// before, and must be the file's pond with the entry and no other.
std::optional<QString> Document::writeEntry(const engine::FolderLock& lock,
                                            const std::function<void(engine::Pond&)>& change,
                                            std::string_view addition) {
    if (m_path.empty()) {
        return tr("The pond is in no file yet; save it to keep the entry.");
    }
    if (m_hasUnwrittenEntry) {
        return tr("An earlier entry is not in the file yet; save the pond to keep both.");
    }
    if (changedOnDisk()) {
        return tr("Another program has changed the file; save the pond to keep the entry.");
    }
    engine::PondReading before = engine::readPondText(m_onDisk, m_path);
    if (!before.pond) {
        return tr("The file on the disk cannot be read; save the pond to keep the entry.");
    }
    const bool isOurForm = engine::writePond(*before.pond, before.typed) == m_onDisk;
    change(*before.pond);
    std::string text = engine::writePond(*before.pond, before.typed);
    if (!isOurForm) {
        text = m_onDisk;
        text += (text.empty() || text.back() == '\n' ? "" : "\n") + std::string(addition);
    }
    const engine::PondReading written = engine::readPondText(text, m_path);
    if (!written.pond || !(*written.pond == *before.pond)) {
        return tr("The file is written in a form that cannot be added to; save the pond to keep the entry.");
    }
    if (const auto fault = engine::saveDurably(lock, m_path, text)) {
        return toQString(*fault);
    }
    m_onDisk = std::move(text);
    return std::nullopt;
}

std::optional<QString> Document::writeCompanion(const engine::FolderLock& lock,
                                                const Companion& companion) const {
    const std::filesystem::path path = engine::folderOf(m_path) / companion.name;
    std::error_code none;
    if (companion.refusal) {
        const engine::FileText now = engine::readWholeFile(path, engine::kCsvFileLimit_bytes);
        if (std::optional<QString> refused = companion.refusal(now.text)) {
            return refused;
        }
    } else if (std::filesystem::symlink_status(path, none).type() != std::filesystem::file_type::not_found) {
        return tr("Another program has changed the file \"%1\"; read the pond again and then add the rows.")
            .arg(toQString(companion.name));
    }
    const auto fault = engine::saveDurably(lock, path, companion.text);
    return fault ? std::optional(toQString(*fault)) : std::nullopt;
}

std::optional<QString> Document::save(const std::optional<std::string>& over) {
    return saveAs(m_path, over);
}

std::optional<QString> Document::saveAs(const std::filesystem::path& path,
                                        const std::optional<std::string>& over) {
    engine::ensure(m_hasPond, "only an open pond is saved");
    engine::Pond pond = m_pond;
    if (path != m_path && !path.empty()) {
        pond.weather.file = moved(pond.weather.file, m_path, path);
        pond.climate.file = moved(pond.climate.file, m_path, path);
        pond.readingsFile.name = moved(pond.readingsFile.name, m_path, path);
    }
    if (const auto fault = engine::savingFault(pond, m_typed)) {
        return tr("The file was not saved. %1").arg(toQString(*fault));
    }
    const engine::FolderLock lock(engine::folderOf(engine::linkTarget(path)));
    if (path == m_path) {
        if (const auto there = changedOnDisk(); there && there != over) {
            return tr("Another program has changed the file; it was not written over.");
        }
    }
    if (const auto fault = engine::saveDurably(lock, path, engine::writePond(pond, m_typed))) {
        return toQString(*fault);
    }
    m_losesComments = m_hasUnwrittenEntry = false;
    m_onDisk = engine::writePond(pond, m_typed);
    if (path != m_path) {
        m_path = path;
        if (!(pond == m_pond)) {  // undo would bring names back that are wrong from here
            m_undo.clear();
            put(pond);
        }
        emit pathChanged();
    }
    m_undo.setClean();
    return std::nullopt;
}

}  // namespace widgets
