#include "widgets/charts/chart_view.h"

#include "engine/base/units.h"
#include "widgets/charts/chart_accessible.h"

#include <QElapsedTimer>
#include <QEvent>
#include <QKeyEvent>
#include <QMouseEvent>
#include <QTimer>
#include <QToolTip>
#include <QVBoxLayout>
#include <QWheelEvent>
#include <qcustomplot.h>

#include <cmath>
#include <utility>

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

QString ChartView::readAt(double /*time*/) const {
    return {};
}

std::optional<double> ChartView::timeAt(const QPointF& /*place*/) const {
    return std::nullopt;
}

std::optional<Selection::Span> ChartView::shownSpan() const {
    return std::nullopt;
}

void ChartView::setShownSpan(std::optional<Selection::Span> span) {
    m_selection.setSpan(span);
}

void ChartView::showAnew() {
    if (!isVisible()) {
        m_isLate = true;
    } else if (hasContent()) {
        const QString words = refresh();
        setAccessibleDescription(words);
        m_plot->setAccessibleDescription(words);
        emit saidAnew();
        redraw();
    }
}

void ChartView::redraw() {
    if (!isVisible()) {  // hidden views hear of palettes and sizes too
        m_isLate = true;
    } else if (hasContent() && !m_isDue) {
        m_isDue = true;
        QTimer::singleShot(0, this, &ChartView::drawNow);
    }
}

void ChartView::drawNow() {
    m_isDue = false;
    if (!isVisible()) {
        m_isLate = true;
        return;
    }
    QElapsedTimer clock;
    clock.start();
    draw(*m_plot, PlotStyle::of(palette(), font()));
    m_plot->replot(QCustomPlot::rpImmediateRefresh);
    m_lastReplot_ms = static_cast<double>(clock.nsecsElapsed()) / 1e6;
}

void ChartView::showEvent(QShowEvent* event) {
    QWidget::showEvent(event);
    if (std::exchange(m_isLate, false)) {
        showAnew();
    }
}

void ChartView::zoom(double factor, std::optional<double> about) {
    const auto span = shownSpan();
    if (!span) {
        return;
    }
    const double middle = about ? *about / engine::kDay : (span->from + span->to) / 2;
    setShownSpan(
        Selection::Span{middle - (middle - span->from) * factor, middle + (span->to - middle) * factor});
}

bool ChartView::pressKey(QKeyEvent& event) {
    constexpr double kCloser = 0.7;
    const int step = event.key() == Qt::Key_Right ? 1 : -1;
    switch (event.key()) {
        case Qt::Key_Left:
        case Qt::Key_Right:
            if ((event.modifiers() & Qt::ShiftModifier) != 0) {
                const double noon = (m_selection.night() - 0.5) * engine::kDay;
                const double from = m_selection.cursor().value_or(noon + 12 * engine::kHour);
                const double to = from + step * engine::kHour;
                m_selection.setCursor(to);
                m_selection.setNight(static_cast<int>(std::floor(to / engine::kDay + 0.5)));
            } else {
                m_selection.setNight(m_selection.night() + step);
            }
            return true;
        case Qt::Key_Plus:
        case Qt::Key_Equal:
            zoom(kCloser, m_selection.cursor());
            return true;
        case Qt::Key_Minus:
            zoom(1.0 / kCloser, m_selection.cursor());
            return true;
        case Qt::Key_0:
            setShownSpan(std::nullopt);
            return true;
        case Qt::Key_Escape:
            if (m_selection.cursor() || m_selection.span() || m_selection.hours()) {
                m_selection.setCursor(std::nullopt);
                m_selection.setSpan(std::nullopt);
                m_selection.setHours(std::nullopt);
                return true;
            }
            return false;
        default:
            return false;
    }
}

void ChartView::keyPressEvent(QKeyEvent* event) {
    if (!pressKey(*event)) {
        QWidget::keyPressEvent(event);
    }
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

void ChartView::mouseMoved(const QMouseEvent& mouse) {
    const auto time = timeAt(mouse.position());
    const auto span = shownSpan();
    if (m_dragged && (mouse.buttons() & Qt::LeftButton) != 0 && time && span) {
        const double by = (*m_dragged - *time) / engine::kDay;
        setShownSpan(Selection::Span{span->from + by, span->to + by});
        return;
    }
    QToolTip::showText(mouse.globalPosition().toPoint(), readOut(mouse.position()), m_plot);
}

bool ChartView::eventFilter(QObject* watched, QEvent* event) {
    if (watched != m_plot || !hasContent()) {
        return QWidget::eventFilter(watched, event);
    }
    if (event->type() == QEvent::MouseMove) {
        mouseMoved(*static_cast<QMouseEvent*>(event));
    } else if (event->type() == QEvent::MouseButtonPress) {
        const auto* mouse = static_cast<QMouseEvent*>(event);
        setFocus(Qt::MouseFocusReason);
        if (mouse->button() == Qt::LeftButton) {
            m_dragged = timeAt(mouse->position());
            clicked(mouse->position());
        }
    } else if (event->type() == QEvent::MouseButtonRelease) {
        m_dragged.reset();
    } else if (event->type() == QEvent::Wheel) {
        const auto* wheel = static_cast<QWheelEvent*>(event);
        if ((wheel->modifiers() & Qt::ControlModifier) != 0 && shownSpan()) {
            zoom(wheel->angleDelta().y() > 0 ? 0.8 : 1.25, timeAt(wheel->position()));
            return true;
        }
    }
    return QWidget::eventFilter(watched, event);
}

}  // namespace widgets
