#pragma once

#include "widgets/outcome.h"
#include "widgets/selection.h"

#include <QTimer>
#include <QWidget>

class QLabel;
class QSlider;
class QSplitter;
class QToolButton;

namespace widgets {

class ChartView;
class DawnLowsPlot;
class NightPlot;
class WholeRunPlot;

/// The sentence, the night under it, the chooser of nights, and under that the lows and the whole run.
class NightPage final : public QWidget {
    Q_OBJECT
public:
    explicit NightPage(Selection& selection, QWidget* parent = nullptr);

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
    [[nodiscard]] QString headline() const;

signals:
    void playingChanged(bool isPlaying);

protected:
    void changeEvent(QEvent* event) override;

private:
    QWidget* chooser();
    void showSelection();
    void showSentences();
    void dressTexts();

    Selection& m_selection;
    OutcomePtr m_outcome;
    QTimer m_player, m_staleDelay;
    QLabel *m_headline, *m_detail, *m_stale, *m_which;
    NightPlot* m_night;
    DawnLowsPlot* m_lows;
    WholeRunPlot* m_wholeRun;
    QToolButton *m_allRamps, *m_allNights, *m_previous, *m_next, *m_play;
    QSlider* m_slider;
};

}  // namespace widgets
