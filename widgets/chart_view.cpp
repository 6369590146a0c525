#include "widgets/chart_view.h"

#include "widgets/chart_accessible.h"

#include <QElapsedTimer>
#include <QEvent>
#include <QMouseEvent>
#include <QTimer>
#include <QToolTip>
#include <QVBoxLayout>
#include <qcustomplot.h>

namespace widgets {

ChartView::ChartView(const QString& name, QWidget* parent) : QWidget(parent), m_plot(new QCustomPlot(this)) {
    auto* layout = new QVBoxLayout(this);
    layout->setContentsMargins(0, 0, 0, 0);
    layout->addWidget(m_plot);
    installChartAccessibility();
    setAccessibleName(name);
    m_plot->setAccessibleName(name);
    m_plot->setFocusPolicy(Qt::NoFocus);
    m_plot->setMouseTracking(true);
    m_plot->installEventFilter(this);
    setFocusPolicy(Qt::StrongFocus);
}

QString ChartView::readOut(const QPointF& /*place*/) const {
    return {};
}

void ChartView::clicked(const QPointF& /*place*/) {}

void ChartView::redraw(const QString& words) {
    setAccessibleDescription(words);
    m_plot->setAccessibleDescription(words);
    m_hasContent = true;
    if (!m_isDue) {
        m_isDue = true;
        QTimer::singleShot(0, this, &ChartView::drawNow);
    }
}

void ChartView::drawNow() {
    m_isDue = false;
    if (!m_hasContent) {
        return;
    }
    QElapsedTimer clock;
    clock.start();
    draw(*m_plot, PlotStyle::of(palette(), font()));
    m_plot->replot(QCustomPlot::rpImmediateRefresh);
    m_lastReplot_ms = static_cast<double>(clock.nsecsElapsed()) / 1e6;
}

void ChartView::changeEvent(QEvent* event) {
    QWidget::changeEvent(event);
    if (m_hasContent && (event->type() == QEvent::PaletteChange || event->type() == QEvent::FontChange)) {
        redraw(accessibleDescription());
    }
}

void ChartView::resizeEvent(QResizeEvent* event) {
    QWidget::resizeEvent(event);
    if (m_hasContent) {
        redraw(accessibleDescription());  // texts are laid out for the size
    }
}

bool ChartView::eventFilter(QObject* watched, QEvent* event) {
    if (watched == m_plot && m_hasContent) {
        if (event->type() == QEvent::MouseMove) {
            const auto* mouse = static_cast<QMouseEvent*>(event);
            QToolTip::showText(mouse->globalPosition().toPoint(), readOut(mouse->position()), m_plot);
        } else if (event->type() == QEvent::MouseButtonPress) {
            const auto* mouse = static_cast<QMouseEvent*>(event);
            setFocus(Qt::MouseFocusReason);
            if (mouse->button() == Qt::LeftButton) {
                clicked(mouse->position());
            }
        }
    }
    return QWidget::eventFilter(watched, event);
}

}  // namespace widgets
