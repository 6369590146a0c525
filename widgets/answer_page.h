#pragma once

#include "engine/pond.h"
#include "engine/sentence.h"
#include "engine/today.h"
#include "widgets/job.h"
#include "widgets/selection.h"

#include <QWidget>

#include <memory>
#include <optional>

class QLabel;
class QPushButton;
class QTextBrowser;
class QVBoxLayout;

namespace widgets {

class DawnForm;
class Document;
class ProgressLine;

/// A page that asks the engine something about the pond as it stands: what it needs at the left, the answer
/// in large type with its reasons at the right, worked out off the UI thread. An answer that is older than
/// the pond stays and says so.
class AnswerPage : public QWidget {
    Q_OBJECT
public:
    /// What the answer is, in a word or a sentence; empty if there is none.
    [[nodiscard]] QString verdict() const;
    /// Reasons and all else that is said, as plain text.
    [[nodiscard]] QString text() const;
    /// What is to do, or why there is no answer.
    [[nodiscard]] QString state() const;
    [[nodiscard]] bool isRunning() const { return m_job.isRunning(); }
    void cancel();

signals:
    /// A job has ended, with an answer or without.
    void finished();

protected:
    /// @param large  Size of the answer, in that of the window's type.
    AnswerPage(Document& document, double large, QWidget* parent);

    [[nodiscard]] Document& document() const { return m_document; }
    [[nodiscard]] QVBoxLayout& left() const { return *m_left; }
    [[nodiscard]] QVBoxLayout& right() const { return *m_right; }
    [[nodiscard]] QTextBrowser& browser() const { return *m_text; }
    /// What is asked of the engine from readings that were typed.
    struct Question {
        engine::Pond pond;
        engine::TodayOptions
            options;   ///< At the time of the readings, or of the log's last entry without any
        QString said;  ///< Of the way into the log; empty if all is well
    };
    /// Takes a form's readings, into the log if so wanted; nothing where that cannot be, which it then says.
    [[nodiscard]] std::optional<Question> ask(DawnForm& form, engine::TodayOptions options, bool isEntered);
    /// A button at the left that is off while something is worked out.
    QPushButton* addButton(const QString& text, const QString& help);
    void say(const QString& state);
    void showAnswer(const QString& verdict, const QString& html);
    /// Works on a copy of all it needs and shows what it gives, unless it was stopped.
    template <class Work, class Show>
    void work(const QString& what, Work work, Show show);
    /// The pond has changed: by default the answer is marked as old.
    virtual void documentChanged();

private:
    void begin(const QString& what);
    void end();

    Document& m_document;
    QVBoxLayout *m_left, *m_right;
    QLabel *m_verdict, *m_state;
    QTextBrowser* m_text;
    ProgressLine* m_progress;
    std::vector<QPushButton*> m_buttons;
    bool m_isGivenUp = false;
    Job m_job;
};

template <class Work, class Show>
void AnswerPage::work(const QString& what, Work work, Show show) {
    begin(what);
    m_job.start(std::move(work), [this, show = std::move(show)](auto answer) {
        if (m_isGivenUp) {
            say(tr("Stopped; nothing was decided."));
        } else {
            show(std::move(answer));
        }
    });
}

}  // namespace widgets
