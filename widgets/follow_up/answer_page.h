#pragma once

#include "engine/follow_up/today.h"
#include "engine/pond/pond.h"
#include "engine/wording/sentence.h"
#include "widgets/document/job.h"
#include "widgets/document/selection.h"

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
    /// There may be an answer, and more of it is being worked out.
    [[nodiscard]] bool isGoingOn() const { return m_isGoingOn && m_job.isRunning(); }
    void cancel();

signals:
    /// All work has ended, with an answer or without.
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
    /// A button at the left.
    QPushButton* addButton(const QString& text, const QString& help);
    /// The same of one that asks for the answer, which is off while it is worked out.
    QPushButton* addAsking(const QString& text, const QString& help);
    void say(const QString& state);
    void showAnswer(const QString& verdict, const QString& html);
    /// Works on a copy of all it needs and shows what it gives, unless it was stopped.
    template <class Work, class Show>
    void work(const QString& what, Work work, Show show);
    /// Works on more of the answer that was just shown, which stays. May be asked anew meanwhile, which drops
    /// this. Stopped, it leaves `stopped` as the state.
    template <class Work, class Show>
    void goOn(const QString& what, const QString& stopped, Work work, Show show);
    /// The pond has changed: by default the answer is marked as old.
    virtual void documentChanged();
    /// There is another pond: the answer about the one before goes, and what was typed for it.
    virtual void startAnew();
    /// Proposes when what is typed was seen; also whenever the page comes to sight.
    virtual void proposeTime() {}
    void showEvent(QShowEvent* event) override;
    /// What is said before anything is asked.
    void introduce(const QString& sentence);

private:
    template <class Work, class Show>
    void start(const QString& what, const QString& stopped, Work work, Show show);
    void begin(const QString& what, const QString& stopped);
    void allowAsking(bool isAllowed);
    void end();

    Document& m_document;
    QVBoxLayout *m_left, *m_right;
    QLabel *m_verdict, *m_state;
    QTextBrowser* m_text;
    ProgressLine* m_progress;
    std::vector<QPushButton*> m_asking;
    QString m_introduction, m_whenStopped;
    bool m_isGivenUp = false, m_isGoingOn = false;
    Job m_job;
};

template <class Work, class Show>
void AnswerPage::work(const QString& what, Work work, Show show) {
    showAnswer({}, {});
    say(what + QLatin1Char('.'));
    allowAsking(false);
    m_isGoingOn = false;
    start(what, tr("Stopped; nothing was decided."), std::move(work), std::move(show));
}

template <class Work, class Show>
void AnswerPage::goOn(const QString& what, const QString& stopped, Work work, Show show) {
    allowAsking(true);
    m_isGoingOn = true;
    start(what, stopped, std::move(work), std::move(show));
}

template <class Work, class Show>
void AnswerPage::start(const QString& what, const QString& stopped, Work work, Show show) {
    begin(what, stopped);
    m_job.start(std::move(work), [this, show = std::move(show)](auto answer) {
        if (m_isGivenUp) {
            say(m_whenStopped);
        } else {
            show(std::move(answer));
        }
    });
}

}  // namespace widgets
