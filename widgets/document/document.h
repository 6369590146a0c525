// The pond of the window and what it comes to.
//
// Document holds the pond, its file and the undo stack. edit(name, change) applies a change to a copy,
// refuses it with sentences if the checks of pond files refuse it, and pushes one step. Entries of the log
// are the one thing that does not go through the undo stack: append() writes them to the file at once and
// durably, and never changes an old one.
//
// Recomputation listens and works in a Job: curves first, then attribution and end states, then members of
// the chosen ramp and do-nothing, then of all; after an edit of ramps alone the last two in one, since
// members of an unchanged ramp are taken over, as are runs that an edit cannot have touched
// (CompareOptions::earlier). A fifth stage, kMembersToMeasure members of the chosen ramp, says what to
// measure; it runs only while that view is asked for (Recomputation::setMeasuring). Each stage hands out an
// Outcome that views share and never change. Selection is what all views look at. Recovery (app/recovery.h)
// keeps what is not saved.
#pragma once

#include "engine/base/durable.h"
#include "engine/base/error.h"
#include "engine/pond/pond_io.h"

#include <QFlags>
#include <QObject>
#include <QString>
#include <QUndoStack>

#include <filesystem>
#include <functional>
#include <optional>
#include <string_view>

namespace widgets {

/// The pond that the window is open on, with its file and its undo stack. The only way to change a pond.
///
/// Always holds a pond that passes its checks, or none at all (a window without a pond). Lives on the UI
/// thread.
class Document final : public QObject {
    Q_OBJECT
public:
    /// Parts of a pond that an edit has touched.
    enum Part { Ramps = 1, LimitsPart = 2, AeratorPart = 4, Others = 8, Everything = 15 };
    Q_DECLARE_FLAGS(Parts, Part)

    explicit Document(QObject* parent = nullptr);

    [[nodiscard]] bool isEmpty() const { return !m_hasPond; }
    [[nodiscard]] const engine::Pond& pond() const { return m_pond; }
    /// The numbers that the file has with a unit; saving keeps them as they were typed.
    [[nodiscard]] const engine::TypedNumbers& typed() const { return m_typed; }
    /// Where it was read from or last saved; empty if neither.
    [[nodiscard]] const std::filesystem::path& path() const { return m_path; }
    /// The pond's title, or its file name, or a word for neither.
    [[nodiscard]] QString title() const;

    /// Replaces the document by what stands in a file, or leaves it as it is.
    /// @return every fault and warning of the file; the document is unchanged if one is an error.
    engine::Diagnostics open(const std::filesystem::path& path);

    /// Replaces the document by a pond that no file holds as it is: a new one, a copy of a template, or what
    /// was left behind by a program that was ended. It counts as modified.
    /// @param path  Where it belongs; empty if nowhere yet.
    void start(engine::Pond pond, const std::filesystem::path& path = {}, engine::TypedNumbers typed = {});

    /// What the file on the disk holds, if that is not what was last read from it or written to it.
    [[nodiscard]] std::optional<std::string> changedOnDisk() const;

    /// Applies a change as one step of undo.
    ///
    /// A change that leaves the pond equal makes no step; one that breaks the pond's checks is refused.
    /// @param name      What undo says: a verb and its object.
    /// @param mergeKey  Steps in a row with the same key that is not empty become one.
    /// @return the errors for which it was refused; empty if it was applied.
    engine::Diagnostics edit(const QString& name, const std::function<void(engine::Pond&)>& change,
                             const QString& mergeKey = {});

    /// What came of an entry into the log.
    struct Appended {
        engine::Diagnostics faults;         ///< For which it was refused; empty if it is in the log
        std::optional<QString> notWritten;  ///< Why it is not in the pond file yet
    };
    /// A file beside the pond file that an entry needs.
    struct Companion {
        std::string name;
        std::string text;
        /// Of one that is there already: why it may not be replaced, by what it holds now (nothing if it
        /// cannot be read). Asked under the lock. Without it there must be no such file.
        std::function<std::optional<QString>(const std::optional<std::string>& now)> refusal;
    };
    /// Adds to the log: readings, events or rows of the readings file behind those that are there. No step of
    /// undo, and undo does not take it away. Written to the pond file at once and durably, without other
    /// edits that are not saved; where that cannot be, the document counts as modified until it is saved. No
    /// other window can write in between: what is in the file is compared and written under one lock of the
    /// folder.
    /// @param addition  The same as text of a pond file: it is put at the end of a file that is not in our
    ///                  own form, whose comments stay.
    /// @param companion Written before the pond file, under the same lock; the entry is refused where it
    /// cannot be.
    /// @throws InternalError if the change touches more than the log, or changes what is in it.
    Appended append(const std::function<void(engine::Pond&)>& change, std::string_view addition,
                    const std::optional<Companion>& companion = std::nullopt);

    /// Writes the pond in our own form, durably: the old file stands until the new one is on the disk,
    /// and beside it as `.bak` afterwards. A file that another program has changed meanwhile is not written
    /// over.
    /// @param over  What the file may hold beside what this document knows of: the user was asked about it.
    /// @return a sentence if it could not be written; the document is then still modified.
    [[nodiscard]] std::optional<QString> save(const std::optional<std::string>& over = std::nullopt);
    [[nodiscard]] std::optional<QString> saveAs(const std::filesystem::path& path,
                                                const std::optional<std::string>& over = std::nullopt);

    /// True if saving changes more of the file than was edited: its comments and its layout.
    [[nodiscard]] bool losesComments() const { return m_losesComments; }

    [[nodiscard]] bool isModified() const { return m_hasUnwrittenEntry || !m_undo.isClean(); }
    [[nodiscard]] QUndoStack& undoStack() { return m_undo; }

signals:
    /// There is another pond, opened or started: what was typed for the one before is not for this one. Comes
    /// before changed().
    void replaced();
    /// The pond has changed: by an edit, undo or redo (the parts it touched) or by opening (everything).
    void changed(widgets::Document::Parts parts);
    /// Another file: opened, or saved under another name.
    void pathChanged();

private:
    class Edit;
    void put(const engine::Pond& pond);
    [[nodiscard]] std::optional<QString> writeEntry(const engine::FolderLock& lock,
                                                    const std::function<void(engine::Pond&)>& change,
                                                    std::string_view addition);
    [[nodiscard]] std::optional<QString> writeCompanion(const engine::FolderLock& lock,
                                                        const Companion& companion) const;

    engine::Pond m_pond;
    engine::TypedNumbers m_typed;
    std::filesystem::path m_path;
    std::string m_onDisk;  ///< What the file held when it was read or written
    QUndoStack m_undo;
    bool m_hasPond = false;
    bool m_losesComments = false;
    bool m_hasUnwrittenEntry = false;
    int m_appends = 0;
};

}  // namespace widgets

Q_DECLARE_OPERATORS_FOR_FLAGS(widgets::Document::Parts)
