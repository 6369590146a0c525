#pragma once

#include "widgets/document/outcome.h"
#include "widgets/document/place.h"
#include "widgets/document/selection.h"

#include <QTimer>
#include <QWidget>

#include <functional>
#include <map>
#include <vector>

class QLabel;
class QStackedWidget;
class QToolButton;

namespace widgets {

class ChartView;
class NightStage;
class WordBar;

/// The middle of the window: five places in the order of the job, each with a small switch between its views.
/// Above a picture stand the answer, a sentence of its own and the chooser of nights, below it what is under
/// the cursor. The pictures are those of the night and of `viewKinds()`; all else is added by `addPage()`.
class ViewsPage final : public QWidget {
    Q_OBJECT
public:
    explicit ViewsPage(Selection& selection, QWidget* parent = nullptr);

    void setOutcome(const OutcomePtr& outcome);
    /// Marks the picture as of an earlier version of the pond.
    void setStale(bool isStale);
    void setCriteria(bool isShown);

    [[nodiscard]] bool isPlaying() const { return m_player.isActive(); }
    /// One night a second, from the shown one or, at the end, from the first.
    void setPlaying(bool isPlaying);

    [[nodiscard]] NightStage& stage() const { return *m_stage; }
    /// The one answer about the ramp of the papers; what the runs say of it until there is one.
    [[nodiscard]] QString verdict() const;
    [[nodiscard]] QString headline() const;

    /// A view that is no picture.
    struct Page {
        QString name;
        QWidget* widget = nullptr;                     ///< May be that of another page
        std::function<void()> shown = {};              ///< When it comes to be seen
        std::function<const ChartView*()> chart = {};  ///< What export and copy mean there; may give null
    };
    /// @param at  Among the views of its place, from 0.
    void addPage(Place place, int at, Page page);

    /// All views, place by place. A view is known by its number in this order.
    [[nodiscard]] int viewCount() const { return static_cast<int>(m_views.size()); }
    [[nodiscard]] int view() const { return m_view; }
    void setView(int index);
    [[nodiscard]] QString viewName(int index) const;
    [[nodiscard]] Place placeOf(int index) const;
    /// Goes to the view that was last seen there, or to its first.
    void setPlace(Place place);
    /// The view of that name. @pre there is one
    [[nodiscard]] int viewNamed(const QString& name) const;
    [[nodiscard]] const QWidget* page(int index) const;
    /// True if the shown view is the one of what to measure.
    [[nodiscard]] bool isMeasuring() const;
    /// The chart that is meant by export and copy: the one that has the focus, else the view's own.
    [[nodiscard]] const ChartView& meant() const;

signals:
    void playingChanged(bool isPlaying);
    void viewChanged(int index);

protected:
    void changeEvent(QEvent* event) override;

private:
    struct View {
        Place place;
        Page page;
        const ChartView* picture = nullptr;  ///< Null for those that were added
        const char* id = "";
    };

    void layOut();
    QWidget* verdictRow();
    QWidget* chooser();
    void addView(int at, View view);
    void addPictures();
    [[nodiscard]] int firstOf(Place place) const;
    [[nodiscard]] int countOf(Place place) const;
    void showBars();
    void showSelection();
    void showMode();
    void showStale();
    void showSentences();
    void showReadOut();
    void styleTexts();
    [[nodiscard]] const ChartView& main() const;

    Selection& m_selection;
    OutcomePtr m_outcome;
    QTimer m_player, m_staleDelay;
    WordBar *m_places, *m_switch;
    QLabel *m_verdict, *m_headline, *m_detail, *m_stale, *m_which, *m_readOut;
    QToolButton *m_why, *m_previous, *m_next, *m_play;
    QWidget *m_verdictRow = nullptr, *m_chooser = nullptr;
    QStackedWidget* m_stack;
    NightStage* m_stage;
    std::vector<View> m_views;
    std::map<Place, int> m_lastSeen;  ///< In its place, from 0
    int m_view = 0;
    bool m_isSettingBars = false;
};

}  // namespace widgets
