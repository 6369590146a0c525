#pragma once

#include "widgets/document/outcome.h"

#include <QWidget>

class QToolButton;

namespace widgets {

class ChartView;
class DawnLowsPlot;
class NightPlot;
class Selection;
class WholeRunPlot;

/// The night, below it the low of every night, and folded away the whole run with weather and air.
class NightStage final : public QWidget {
    Q_OBJECT
public:
    explicit NightStage(Selection& selection, QWidget* parent = nullptr);

    void setOutcome(const OutcomePtr& outcome);
    void setCriteria(bool isShown);
    /// Opens or folds the whole run.
    void setUnfolded(bool isUnfolded);
    [[nodiscard]] bool isUnfolded() const;
    /// The chart that has the focus, else the night.
    [[nodiscard]] const ChartView& meant() const;

    [[nodiscard]] NightPlot& night() const { return *m_night; }
    [[nodiscard]] DawnLowsPlot& lows() const { return *m_lows; }
    [[nodiscard]] WholeRunPlot& wholeRun() const { return *m_wholeRun; }

protected:
    void changeEvent(QEvent* event) override;

private:
    void applyFont();

    NightPlot* m_night;
    DawnLowsPlot* m_lows;
    QToolButton* m_fold;
    WholeRunPlot* m_wholeRun;
};

}  // namespace widgets
