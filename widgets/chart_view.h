#pragma once

#include "widgets/outcome.h"
#include "widgets/plot_style.h"
#include "widgets/selection.h"

#include <QWidget>

class QCustomPlot;

namespace widgets {

/// A chart of an outcome on the screen: a plot that redraws itself when the outcome, the selection or the
/// colours change, with an accessible name, a text alternative, and what is under the mouse in words. Left
/// and right arrows go from night to night.
class ChartView : public QWidget {
    Q_OBJECT
public:
    /// @param selection  Must outlive the view.
    ChartView(const QString& name, Selection& selection, QWidget* parent);

    void setOutcome(const OutcomePtr& outcome);

    /// Duration of the last drawing, content and pixels [ms].
    [[nodiscard]] double lastReplot_ms() const { return m_lastReplot_ms; }
    [[nodiscard]] QCustomPlot& plot() const { return *m_plot; }

protected:
    /// Takes outcome and selection over into what is drawn. Called only while there is an outcome.
    /// @return the text alternative.
    [[nodiscard]] virtual QString refresh() = 0;
    /// Puts the content into the plot.
    virtual void draw(QCustomPlot& plot, const PlotStyle& style) = 0;
    /// What is at a place of the plot [px]; empty if nothing is.
    [[nodiscard]] virtual QString readOut(const QPointF& place) const;
    /// A click at a place of the plot [px].
    virtual void clicked(const QPointF& place);

    /// Outcome, selection or options have changed: refreshes, and draws once the event loop comes to it.
    void showAnew();

    [[nodiscard]] Selection& selection() const { return m_selection; }
    [[nodiscard]] const OutcomePtr& outcome() const { return m_outcome; }

    void keyPressEvent(QKeyEvent* event) override;
    void changeEvent(QEvent* event) override;
    bool eventFilter(QObject* watched, QEvent* event) override;
    void resizeEvent(QResizeEvent* event) override;

private:
    void redraw();
    void drawNow();

    QCustomPlot* m_plot;
    Selection& m_selection;
    OutcomePtr m_outcome;
    bool m_isDue = false;
    double m_lastReplot_ms = 0.0;
};

}  // namespace widgets
