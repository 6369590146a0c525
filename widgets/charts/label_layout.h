#pragma once

#include <QPointF>
#include <QRectF>
#include <QSizeF>

#include <vector>

namespace widgets {

/// Moves labels on a line apart, as little as possible in squares, so that neighbours keep a gap.
/// @param wanted  Places in any order; labels keep the order of their places.
/// @param gap     Least distance between two places.
/// @param low,high  Ends of the line. If it is too short for all, the gap is what fits.
/// @return one place a label, in the order of `wanted`.
[[nodiscard]] std::vector<double> spreadApart(const std::vector<double>& wanted, double gap, double low,
                                              double high);

/// A label of a mark, and the stretch of heights that it belongs to, such as a band that the mark lies in.
struct MarkLabel {
    QPointF mark;
    QSizeF size;
    double top = 0.0, bottom = 0.0;  ///< Of that stretch [px], downwards
};

/// Places labels beside their marks: below, above, right or left, whatever comes first in that order without
/// lying over another text or mark, or outside its stretch; these weigh in that order where not all can be
/// had. Labels above one another keep the order of their marks. It depends on marks alone, so that labels
/// keep still while lines change.
/// @param others  Marks without a label.
/// @param taken   Places of other texts.
[[nodiscard]] std::vector<QRectF> placeBeside(const std::vector<MarkLabel>& labels,
                                              const std::vector<QPointF>& others,
                                              const std::vector<QRectF>& taken, const QRectF& inside);

}  // namespace widgets
