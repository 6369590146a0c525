#include "widgets/charts/picture_view.h"

#include "engine/base/error.h"
#include "engine/base/units.h"
#include "widgets/charts/chart_parts.h"

#include <qcustomplot.h>

#include <cmath>

namespace widgets {

PictureView::PictureView(const ViewKind& kind, Selection& selection, QWidget* parent)
    : ChartView(kind.name(), selection, parent), m_kind(kind) {}

QString PictureView::refresh() {
    m_picture = m_kind.make(outcome(), selection());
    return m_picture.words;
}

void PictureView::draw(QCustomPlot& plot, const PlotStyle& style) {
    engine::ensure(m_picture.draw != nullptr, "a view that is seen has been made");
    m_picture.draw(plot, style);
    if (m_picture.days && selection().cursor() && plot.axisRectCount() > 0) {
        const Picture::Days days = *m_picture.days;
        addPainted(*plot.axisRect(0), style,
                   [days, day = *selection().cursor() / engine::kDay, style](QCPPainter& painter,
                                                                             const QCPAxisRect& of) {
                       const QRectF area = of.rect();
                       const double width = of.parentPlot()->viewport().width() - days.left - days.right;
                       const double x = days.left + width * (day - days.from) / (days.to - days.from);
                       if (day >= days.from && day <= days.to) {
                           painter.setPen(QPen(style.ink, 1.0));
                           painter.drawLine(QPointF(x, area.top()), QPointF(x, area.bottom()));
                       }
                   });
    }
}

std::optional<double> PictureView::timeAt(const QPointF& place) const {
    if (!m_picture.days) {
        return std::nullopt;
    }
    const Picture::Days& days = *m_picture.days;
    const double width = plot().viewport().width() - days.left - days.right;
    const double share = (place.x() - days.left) / std::max(width, 1.0);
    if (share < 0.0 || share > 1.0) {
        return std::nullopt;
    }
    return (days.from + share * (days.to - days.from)) * engine::kDay;
}

std::optional<Selection::Span> PictureView::shownSpan() const {
    return m_picture.days ? std::optional(Selection::Span{m_picture.days->from, m_picture.days->to})
                          : std::nullopt;
}

QString PictureView::readAt(double time) const {
    return m_picture.at ? m_picture.at(time) : QString();
}

QString PictureView::readOut(const QPointF& place) const {
    if (const auto time = timeAt(place)) {
        return readAt(*time);
    }
    return m_picture.readOut ? m_picture.readOut(plot().viewport(), place) : QString();
}

void PictureView::clicked(const QPointF& place) {
    if (const auto time = timeAt(place)) {
        selection().setCursor(*time);
        selection().setNight(static_cast<int>(std::floor(*time / engine::kDay + 0.5)));
    } else if (m_picture.click) {
        m_picture.click(plot().viewport(), place, selection());
    }
}

ChartSheet PictureView::sheet() const {
    return sheetOf(m_kind, outcome(), selection());
}

}  // namespace widgets
