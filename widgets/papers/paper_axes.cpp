#include "widgets/papers/paper_axes.h"

#include "widgets/papers/paper_units.h"

#include <algorithm>

namespace widgets {

double PaperAxes::y(double value) const {
    const double at = m_area.bottom() - (value - m_bottom) / (m_top - m_bottom) * m_area.height();
    return std::clamp(at, m_area.top(), m_area.bottom());
}

void PaperAxes::rules(QPainter& painter, const PaperLook& look, const std::vector<double>& values,
                      int decimals) const {
    for (const double value : values) {
        painter.setPen(paperPen(look.hairline, 0.4));
        painter.drawLine(QPointF(m_area.left(), y(value)), QPointF(m_area.right(), y(value)));
        painter.setPen(look.quiet);
        const double half = 6.0 * kPoint;
        paperText(painter, look,
                  QRectF(m_area.left() - 40.0 * kPoint, y(value) - half, 37.0 * kPoint, 2 * half),
                  Qt::AlignRight | Qt::AlignVCenter, fixedText(value, decimals));
    }
}

void PaperAxes::below(QPainter& painter, const PaperLook& look,
                      const std::vector<std::pair<double, QString>>& texts) const {
    painter.setPen(look.quiet);
    const double wide = 60.0 * kPoint;
    for (const auto& [place, text] : texts) {
        paperText(painter, look,
                  QRectF(x(place) - wide / 2, m_area.bottom() + 2.0 * kPoint, wide, 11.0 * kPoint),
                  Qt::AlignHCenter | Qt::AlignTop, text);
    }
}

void PaperAxes::band(QPainter& painter, const std::vector<double>& across, const std::vector<double>& low,
                     const std::vector<double>& high, const QColor& fill, const QColor& edge) const {
    QPolygonF shape;
    for (std::size_t i = 0; i < across.size(); ++i) {
        shape << at(across[i], high[i]);
    }
    for (std::size_t i = across.size(); i-- > 0;) {
        shape << at(across[i], low[i]);
    }
    painter.setPen(Qt::NoPen);
    painter.setBrush(fill);
    painter.drawPolygon(shape);
    painter.setBrush(Qt::NoBrush);
    curve(painter, across, low, paperPen(edge, 0.5));
    curve(painter, across, high, paperPen(edge, 0.5));
}

void PaperAxes::curve(QPainter& painter, const std::vector<double>& across, const std::vector<double>& up,
                      const QPen& pen) const {
    QPolygonF line;
    for (std::size_t i = 0; i < across.size(); ++i) {
        line << at(across[i], up[i]);
    }
    painter.setPen(pen);
    painter.drawPolyline(line);
}

void paperText(QPainter& painter, const PaperLook& look, const QRectF& box, Qt::Alignment alignment,
               const QString& text, double points, bool isBold) {
    painter.setFont(look.font(points, isBold));
    painter.drawText(box, static_cast<int>(alignment) | Qt::TextSingleLine | Qt::TextDontClip, text);
}

QPen paperPen(const QColor& colour, double points, const QVector<qreal>& dashes) {
    QPen pen(colour, points * kPoint);
    pen.setCapStyle(Qt::FlatCap);
    pen.setJoinStyle(Qt::RoundJoin);
    if (!dashes.isEmpty()) {
        pen.setDashPattern(dashes);
    }
    return pen;
}

}  // namespace widgets
