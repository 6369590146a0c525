#pragma once

#include "widgets/document/outcome.h"
#include "widgets/document/selection.h"

#include <QTimer>
#include <QWidget>

#include <functional>
#include <vector>

class QLabel;
class QSlider;
class QSplitter;
class QStackedWidget;
class QTabBar;
class QToolButton;

namespace widgets {

class ChartView;
class DawnLowsPlot;
class PictureView;
class NightPlot;
class WholeRunPlot;

/// The views of an outcome, one at a time: above each its sentence, the chooser of nights for all of them,
/// and below it what stands under the cursor. The first is the night with the lows of all nights and the
/// whole run.
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

    [[nodiscard]] NightPlot& night() const { return *m_night; }
    [[nodiscard]] DawnLowsPlot& lows() const { return *m_lows; }
    [[nodiscard]] WholeRunPlot& wholeRun() const { return *m_wholeRun; }
    /// The answer about the ramp of the papers; empty as long as there is none.
    [[nodiscard]] QString answer() const;
    [[nodiscard]] QString headline() const;

    /// Adds a page that is no picture as the last tab.
    /// @param chart  What is meant there by export and copy; may give null.
    void addPage(const QString& name, QWidget* page, std::function<const ChartView*()> chart = {});
    /// What a tab shows.
    [[nodiscard]] const QWidget* page(int index) const;
    /// The views' tabs: the night, then those of `viewKinds()`.
    [[nodiscard]] int viewCount() const;
    [[nodiscard]] int view() const;
    void setView(int index);
    [[nodiscard]] QString viewName(int index) const;
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
    QWidget* chooser();
    void showSelection();
    void showAnswer();
    void showSentences();
    void showReadOut();
    void styleTexts();
    [[nodiscard]] ChartView& main() const;

    Selection& m_selection;
    OutcomePtr m_outcome;
    QTimer m_player, m_staleDelay;
    QLabel *m_answer, *m_headline, *m_detail, *m_stale, *m_which, *m_readOut;
    QWidget* m_chooser = nullptr;
    QTabBar* m_tabs;
    QStackedWidget* m_stack;
    std::vector<PictureView*> m_pictures;
    std::vector<std::function<const ChartView*()>> m_chartsOfPages;
    NightPlot* m_night;
    DawnLowsPlot* m_lows;
    WholeRunPlot* m_wholeRun;
    QToolButton *m_allRamps, *m_allNights, *m_previous, *m_next, *m_play;
    QSlider* m_slider;
};

}  // namespace widgets
