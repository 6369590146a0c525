#pragma once

#include "widgets/charts/chart_export.h"
#include "widgets/controls/plot_style.h"
#include "widgets/document/outcome.h"
#include "widgets/document/selection.h"

#include <QWidget>

class QCustomPlot;

namespace widgets {

/// A chart of an outcome on the screen: a plot that redraws itself when the outcome, the selection or the
/// colours change, with an accessible name, a text alternative, and what is under the mouse in words.
///
/// Left and right arrows go from night to night; with Shift they move the cursor by an hour, whose read-out
/// the page shows. Plus, minus and 0, or the wheel with Ctrl, zoom views over time; dragging moves what
/// they show; Escape puts cursor and zoom away. A chart that is not seen is not drawn.
class ChartView : public QWidget {
    Q_OBJECT
public:
    /// @param selection  Must outlive the view.
    ChartView(const QString& name, Selection& selection, QWidget* parent);

    void setOutcome(const OutcomePtr& outcome);

    /// What the view says above itself; empty where the page says it.
    [[nodiscard]] virtual QString headline() const { return {}; }
    [[nodiscard]] virtual QString detail() const { return {}; }
    /// What it has at a moment [s after midnight of day 1]; empty if it is not over time.
    [[nodiscard]] virtual QString readAt(double time) const;
    /// For paper, file and clipboard. @pre there is an outcome.
    [[nodiscard]] virtual ChartSheet sheet() const = 0;
    /// Its numbers as CSV; empty as long as there are none.
    [[nodiscard]] std::string numbers() const { return hasContent() ? sheet().csv : std::string(); }

    /// Duration of the last drawing, content and pixels [ms].
    [[nodiscard]] double lastReplot_ms() const { return m_lastReplot_ms; }
    [[nodiscard]] QCustomPlot& plot() const { return *m_plot; }

signals:
    /// Headline, detail or text alternative are new.
    void saidAnew();

protected:
    /// False while there is nothing to draw.
    [[nodiscard]] virtual bool hasContent() const { return m_outcome != nullptr; }
    /// Takes outcome and selection over into what is drawn. Called only while there is an outcome.
    /// @return the text alternative.
    [[nodiscard]] virtual QString refresh() = 0;
    /// Puts the content into the plot.
    virtual void draw(QCustomPlot& plot, const PlotStyle& style) = 0;
    /// The moment at a place of the plot; nothing if the view is not over time.
    [[nodiscard]] virtual std::optional<double> timeAt(const QPointF& place) const;
    /// The days that a view over time shows; nothing for others.
    [[nodiscard]] virtual std::optional<Selection::Span> shownSpan() const;
    /// Zooms a view over time; nothing: all of it.
    virtual void setShownSpan(std::optional<Selection::Span> span);
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
    void showEvent(QShowEvent* event) override;

private:
    void redraw();
    void drawNow();
    void zoom(double factor, std::optional<double> about);
    bool pressKey(QKeyEvent& event);
    void mouseMoved(const QMouseEvent& mouse);

    QCustomPlot* m_plot;
    Selection& m_selection;
    OutcomePtr m_outcome;
    bool m_isDue = false;
    bool m_isLate = false;            ///< To be drawn once it is seen
    std::optional<double> m_dragged;  ///< The moment that was taken hold of [s]
    double m_lastReplot_ms = 0.0;
};

}  // namespace widgets
