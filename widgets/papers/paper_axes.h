#pragma once

#include "widgets/papers/paper_flow.h"

#include <QPainter>
#include <QRectF>

#include <vector>

namespace widgets {

/// A frame with two straight axes, drawn in units on paper.
class PaperAxes {
public:
    PaperAxes(const QRectF& area, double left, double right, double bottom, double top)
        : m_area(area), m_left(left), m_right(right), m_bottom(bottom), m_top(top) {}

    [[nodiscard]] const QRectF& area() const { return m_area; }
    [[nodiscard]] double x(double value) const {
        return m_area.left() + (value - m_left) / (m_right - m_left) * m_area.width();
    }
    /// Kept within the frame.
    [[nodiscard]] double y(double value) const;
    [[nodiscard]] QPointF at(double across, double up) const { return {x(across), y(up)}; }

    /// Hairlines across with their numbers at the left.
    void rules(QPainter& painter, const PaperLook& look, const std::vector<double>& values,
               int decimals) const;
    /// Texts under the frame.
    void below(QPainter& painter, const PaperLook& look,
               const std::vector<std::pair<double, QString>>& texts) const;
    void band(QPainter& painter, const std::vector<double>& across, const std::vector<double>& low,
              const std::vector<double>& high, const QColor& fill, const QColor& edge) const;
    void curve(QPainter& painter, const std::vector<double>& across, const std::vector<double>& up,
               const QPen& pen) const;

private:
    QRectF m_area;
    double m_left, m_right, m_bottom, m_top;
};

/// Text with its baseline box given by alignment in a rectangle, in the look's type.
void paperText(QPainter& painter, const PaperLook& look, const QRectF& box, Qt::Alignment alignment,
               const QString& text, double points = 7.0, bool isBold = false);

/// A pen of a width in points with dashes in pen widths.
[[nodiscard]] QPen paperPen(const QColor& colour, double points, const QVector<qreal>& dashes = {});

}  // namespace widgets
