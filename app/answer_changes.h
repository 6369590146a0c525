#pragma once

#include "widgets/document/job.h"

#include <QObject>

#include <filesystem>

class QWidget;

namespace widgets {
class Document;
class Notice;
}  // namespace widgets

namespace app {

/// What has changed in the answer since a bundle was made: the pond as it stands is run anew off the UI
/// thread, asked as the bundle was, and the changes are shown in sentences. Asking again gives the earlier
/// up.
class AnswerChanges final : public QObject {
    Q_OBJECT
public:
    /// All of them must outlive it.
    AnswerChanges(const widgets::Document& document, widgets::Notice& notice, QWidget& window);

    void since(const std::filesystem::path& bundle);

private:
    const widgets::Document& m_document;
    widgets::Notice& m_notice;
    QWidget& m_window;
    widgets::Job m_job;
};

}  // namespace app
