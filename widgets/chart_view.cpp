#include "widgets/chart_view.h"

#include "widgets/chart_accessible.h"

#include <QElapsedTimer>
#include <QEvent>
#include <QKeyEvent>
#include <QMouseEvent>
#include <QTimer>
#include <QToolTip>
#include <QVBoxLayout>
#include <qcustomplot.h>

namespace widgets {

ChartView::ChartView(const QString& name, Selection& selection, QWidget* parent)
    : QWidget(parent), m_plot(new QCustomPlot(this)), m_selection(selection) {
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
    connect(&m_selection, &Selection::changed, this, &ChartView::showAnew);
}

void ChartView::setOutcome(const OutcomePtr& outcome) {
    m_outcome = outcome;
    showAnew();
}

QString ChartView::readOut(const QPointF& /*place*/) const {
    return {};
}

void ChartView::clicked(const QPointF& /*place*/) {}

void ChartView::showAnew() {
    if (m_outcome != nullptr) {
        const QString words = refresh();
        setAccessibleDescription(words);
        m_plot->setAccessibleDescription(words);
        redraw();
    }
}

void ChartView::redraw() {
    if (m_outcome != nullptr && !m_isDue) {
        m_isDue = true;
        QTimer::singleShot(0, this, &ChartView::drawNow);
    }
}

void ChartView::drawNow() {
    m_isDue = false;
    QElapsedTimer clock;
    clock.start();
    draw(*m_plot, PlotStyle::of(palette(), font()));
    m_plot->replot(QCustomPlot::rpImmediateRefresh);
    m_lastReplot_ms = static_cast<double>(clock.nsecsElapsed()) / 1e6;
}

void ChartView::keyPressEvent(QKeyEvent* event) {
    if (event->key() == Qt::Key_Left || event->key() == Qt::Key_Right) {
        m_selection.setNight(m_selection.night() + (event->key() == Qt::Key_Right ? 1 : -1));
        return;
    }
    QWidget::keyPressEvent(event);
}

void ChartView::changeEvent(QEvent* event) {
    QWidget::changeEvent(event);
    if (event->type() == QEvent::PaletteChange || event->type() == QEvent::FontChange) {
        redraw();
    }
}

void ChartView::resizeEvent(QResizeEvent* event) {
    QWidget::resizeEvent(event);
    redraw();  // texts are laid out for the size
}

bool ChartView::eventFilter(QObject* watched, QEvent* event) {
    if (watched == m_plot && m_outcome != nullptr) {
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
