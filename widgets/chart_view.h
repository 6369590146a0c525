#pragma once

#include "widgets/plot_style.h"

#include <QWidget>

class QCustomPlot;

namespace widgets {

/// A chart on the screen: a plot that redraws itself when its content or the colours change, with an
/// accessible name, a text alternative, and what is under the mouse in words.
class ChartView : public QWidget {
    Q_OBJECT
public:
    explicit ChartView(const QString& name, QWidget* parent = nullptr);

    /// Duration of the last drawing, content and pixels [ms].
    [[nodiscard]] double lastReplot_ms() const { return m_lastReplot_ms; }
    [[nodiscard]] QCustomPlot& plot() const { return *m_plot; }

protected:
    /// Puts the content into the plot.
    virtual void draw(QCustomPlot& plot, const PlotStyle& style) = 0;
    /// What is at a place of the plot [px]; empty if nothing is.
    [[nodiscard]] virtual QString readOut(const QPointF& place) const;
    /// A click at a place of the plot [px].
    virtual void clicked(const QPointF& place);

    /// Draws anew, once the event loop comes to it. @param words  The text alternative.
    void redraw(const QString& words);

    void changeEvent(QEvent* event) override;
    bool eventFilter(QObject* watched, QEvent* event) override;
    void resizeEvent(QResizeEvent* event) override;

private:
    void drawNow();

    QCustomPlot* m_plot;
    bool m_isDue = false;
    bool m_hasContent = false;
    double m_lastReplot_ms = 0.0;
};

}  // namespace widgets
