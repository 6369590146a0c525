// What comes after the start: TodayPage, LogPage, IncidentPage and ReviewPage, each a form, a Job and the
// engine's sentences. What they add to the log goes through Document::append, past the undo stack.
#pragma once

#include <QStackedWidget>

namespace widgets {

class ChartView;
class Document;
class IncidentPage;
class LogPage;
class ReviewPage;
class TodayPage;

/// What there is to do once the air runs: this morning, the log, an incident, sixty days later.
class AfterStartPage final : public QStackedWidget {
    Q_OBJECT
public:
    enum Page { Today, Log, Incident, Review };
    static constexpr int kPages = 4;

    explicit AfterStartPage(Document& document, QWidget* parent = nullptr);

    [[nodiscard]] static QString name(Page page);
    void setPage(Page page);
    /// The shown page's chart; null if it has none.
    [[nodiscard]] const ChartView* chart() const;
    [[nodiscard]] TodayPage& today() const { return *m_today; }
    [[nodiscard]] LogPage& log() const { return *m_log; }
    [[nodiscard]] IncidentPage& incident() const { return *m_incident; }
    [[nodiscard]] ReviewPage& review() const { return *m_review; }

private:
    TodayPage* m_today;
    LogPage* m_log;
    IncidentPage* m_incident;
    ReviewPage* m_review;
};

}  // namespace widgets
