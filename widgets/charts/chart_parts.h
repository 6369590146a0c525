#pragma once

#include "widgets/charts/night_scene.h"
#include "widgets/controls/plot_style.h"

#include <QPointF>
#include <QRectF>
#include <QString>

#include <functional>
#include <vector>

class QCPAxisRect;
class QCPPainter;
class QCustomPlot;

namespace widgets {

// What the charts are put together from. All of it stays inside the axis rect by its own arithmetic, since
// Qt's SVG writer knows no clipping.

/// A stretch of the horizontal axis in which it is dark: 0 and 1 for the steps of twilight, 2 for night.
struct Shade {
    double from = 0.0, to = 0.0;
    int step = 2;
};

/// Places and texts of a clock from noon to noon, in hours after noon: every third, or each where few are
/// shown.
[[nodiscard]] std::vector<std::pair<double, QString>> clockMarks(double shownHours = 24.0);

/// Shades of one night. @param x  Turns hours after noon into places on the axis.
[[nodiscard]] std::vector<Shade> shadesOf(const NightScene& sky, const std::function<double(double hour)>& x);

/// What lies between two curves: a flat tint of a colour with a fine edge.
struct Tint {
    std::vector<double> x, low, high;  ///< x rises; same sizes
    QColor colour;
    bool isDotted = false;  ///< Its edge, so that a grey copy tells two tints apart
};

/// What lies under the curves.
struct Ground {
    std::vector<Shade> shades;
    double stress = -1.0, lethal = -1.0;  ///< Bands from the bottom; none if negative
    std::vector<Tint> tints;              ///< Over the bands, each over those before it
    std::vector<NamedLevel> levels;       ///< Dotted lines
    std::vector<double> rules;            ///< Horizontal hairlines
    std::vector<double> uprights;         ///< Vertical hairlines
};

/// Takes the plot's ready-made axes away and gives it the style.
void prepare(QCustomPlot& plot, const PlotStyle& style);

/// Gives an axis rect its ranges, fixed margins and quiet axes without tick marks.
/// @param labels  Places and texts along the bottom.
void applyStyle(QCPAxisRect& rect, const PlotStyle& style, double left, double right, double top,
                const std::vector<std::pair<double, QString>>& labels);

void addGround(QCPAxisRect& rect, const PlotStyle& style, Ground ground);

/// Points of a smooth curve through given ones that never goes beyond its neighbours: piecewise cubic after
/// Fritsch and Carlson (1980), Monotone piecewise cubic interpolation, SIAM J. Numer. Anal. 17, with the
/// slopes of Fritsch and Butland (1984). @param x  Rising, the size of y; returned rising too, the given ones
/// among them.
struct SmoothLine {
    std::vector<double> x, y;
};
[[nodiscard]] SmoothLine smoothLine(const std::vector<double>& x, const std::vector<double>& y);

/// A curve, cut to the axes' ranges as they are now. @param x  Rising, the size of y.
void addCurve(QCPAxisRect& rect, const std::vector<double>& x, const std::vector<double>& y, const QPen& pen);

/// Painted over the curves, in pixels. @param paint  Gets a painter with the style's font.
void addPainted(QCPAxisRect& rect, const PlotStyle& style,
                std::function<void(QCPPainter& painter, const QCPAxisRect& rect)> paint);

/// Pieces of a line that lie within a rectangle; ends lie on its edge where it was cut.
[[nodiscard]] std::vector<std::vector<QPointF>> cut(const std::vector<QPointF>& line, const QRectF& inside);

/// A step of 1, 2 or 5 times a power of ten that divides a range into at most so many parts.
[[nodiscard]] double roundStep(double range, int most);

/// Round steps of an oxygen axis: 0, 2, 4, ... or 0, 4, 8, ... where there is less room.
[[nodiscard]] std::vector<double> oxygenSteps(double top, double step);

}  // namespace widgets
