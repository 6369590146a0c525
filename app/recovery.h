#pragma once

#include "engine/pond/pond_io.h"

#include <QObject>
#include <QTimer>

#include <filesystem>
#include <memory>
#include <optional>
#include <vector>

class QLockFile;

namespace widgets {
class Document;
}

namespace app {

/// What a program that was ended left behind.
struct LeftBehind {
    engine::Pond pond;
    engine::TypedNumbers typed;
    std::filesystem::path original;  ///< The pond file that was open; empty if none
    std::filesystem::path file;      ///< Where it is kept
};

/// Keeps what is not saved in a file of its own, at most five seconds behind, so that it outlives a crash or
/// a power cut. In `dawnline/recovery` under the XDG state folder, since it is state and belongs beside no
/// pond. A lock beside it says whether its program still runs.
class Recovery final : public QObject {
    Q_OBJECT
public:
    /// @param behind_ms  That it waits after an edit; the promise is five seconds, writing included.
    explicit Recovery(widgets::Document& document, QObject* parent = nullptr, int behind_ms = 3000);
    ~Recovery() override;  ///< What was given up or saved is taken away

    /// What programs that no longer run have left. Their files stay until they are adopted.
    [[nodiscard]] static std::vector<LeftBehind> leftBehind();
    /// Goes on keeping it as this window's own: call it once its pond is in the document.
    void adopt(const LeftBehind& left);

private:
    void write();
    void follow();

    widgets::Document& m_document;
    QTimer m_due;
    std::filesystem::path m_file;
    std::unique_ptr<QLockFile> m_lock;
    bool m_isWritten = false;
};

}  // namespace app
