// A chart's sheet as a grey printer gives it 80 mm wide (trade practice for charts in a report): what is
// found of texts, strokes and areas in its SVG. A colour's grey is its lightness, CIE 1976 L*.
#pragma once

#include "tests/widgets/charts/svg_drawing.h"
#include "tests/widgets/typing.h"
#include "widgets/charts/picture.h"

#include <gtest/gtest.h>

#include <array>
#include <cmath>
#include <map>
#include <string>

namespace widgets::test {

inline constexpr double kWidth_mm = 80.0;
inline constexpr double kSmallest_pt = 5.0;    // a common floor of print (judgement)
inline constexpr double kTextContrast = 4.5;   // WCAG 2.1, 1.4.3
inline constexpr double kGraphContrast = 3.0;  // WCAG 2.1, 1.4.11
// Of L*. A tenth of the way from black to white tells two lines apart on office paper (judgement); areas side
// by side need less: nearly twice what is just seen, 2.3 (Mahy, Van Eycken and Oosterlinck 1994, Color Res.
// Appl. 19:105-121, from memory).
inline constexpr double kLinesApart = 10.0, kAreasApart = 4.0;
inline constexpr double kWidthsApart = 1.5;  // the thicker over the thinner (judgement)

inline double lightness(const QColor& colour) {
    const double luminance = 1.05 / contrast(colour, Qt::white) - 0.05;  // WCAG's, the same as Y
    return luminance > 0.008856 ? 116.0 * std::cbrt(luminance) - 16.0 : 903.3 * luminance;
}

inline double apart(const QColor& a, const QColor& b) {
    return std::abs(lightness(a) - lightness(b));
}

inline std::string nameOf(const QColor& colour) {
    return plain(colour.name());
}

/// Colours as numbers, for sets; neighbouring steps of rounding are one.
inline bool isNear(const QColor& a, const QColor& b) {
    return std::abs(a.red() - b.red()) + std::abs(a.green() - b.green()) + std::abs(a.blue() - b.blue()) <= 4;
}

inline std::vector<QPointF> pointsOf(const QPainterPath& path) {
    std::vector<QPointF> points;
    for (int i = 0; i < path.elementCount(); ++i) {
        points.emplace_back(path.elementAt(i));
    }
    return points;
}

inline bool isStraight(const DrawnShape& shape) {
    return shape.path.elementCount() == 2;
}

inline bool isUpright(const DrawnShape& shape) {
    const QRectF box = shape.path.boundingRect();
    return box.width() < 0.01 || box.height() < 0.01;
}

/// From a place to the line that a shape's stroke goes along [px]; circles are not asked.
inline double distance(const QPointF& at, const DrawnShape& shape) {
    double least = 1e9;
    const auto points = pointsOf(shape.path);
    for (std::size_t p = 0; p + 1 < points.size() && !shape.isCurved; ++p) {
        const QPointF way = points[p + 1] - points[p];
        const double square = QPointF::dotProduct(way, way);
        const double share =
            square > 0.0 ? std::clamp(QPointF::dotProduct(at - points[p], way) / square, 0.0, 1.0) : 0.0;
        const QPointF miss = at - points[p] - way * share;
        least = std::min(least, std::hypot(miss.x(), miss.y()));
    }
    return least;
}

/// A stroke of a hatching: at 45 degrees.
inline bool isHatch(const DrawnShape& shape) {
    const QRectF box = shape.path.boundingRect();
    return isStraight(shape) && box.width() > 0.5 && std::abs(box.width() - box.height()) < 0.02;
}

/// A sheet as it was drawn, and what can be asked of it.
class Sheet {
public:
    explicit Sheet(const ChartSheet& sheet)
        : m_style(PlotStyle::light({})),
          m_drawn(test::drawingOf(svgOf(sheet))),
          m_width(sheet.size.width()) {}

    [[nodiscard]] const PlotStyle& style() const { return m_style; }
    [[nodiscard]] const std::vector<DrawnShape>& shapes() const { return m_drawn.shapes; }
    [[nodiscard]] const std::vector<DrawnText>& texts() const { return m_drawn.texts; }
    [[nodiscard]] double points(double size_px) const { return size_px * kWidth_mm / m_width / 25.4 * 72.0; }

    /// The area that lies on top at a place, of the first so many shapes; the count itself if there is none.
    [[nodiscard]] std::size_t topmost(const QPointF& at, std::size_t before) const {
        for (std::size_t i = before; i-- > 0;) {
            const DrawnShape& shape = shapes()[i];
            if ((shape.fill || shape.isImage) && shape.path.boundingRect().contains(at) &&
                shape.path.contains(at)) {
                return i;
            }
        }
        return shapes().size();
    }

    /// The colour under a place; strokes in the paper's colour, which lie under others, count as areas.
    /// Nothing: an image.
    [[nodiscard]] std::optional<QColor> ground(const QPointF& at, std::size_t before) const {
        const std::size_t top = topmost(at, before);
        for (std::size_t i = before; i-- > (top < before ? top + 1 : 0);) {
            const DrawnShape& shape = shapes()[i];
            if (shape.stroke && isNear(*shape.stroke, m_style.paper) &&
                distance(at, shape) <= shape.width / 2) {
                return shape.stroke;
            }
        }
        return top >= before ? std::optional(QColor(Qt::white)) : shapes()[top].fill;
    }

private:
    PlotStyle m_style;
    SvgDrawing m_drawn;
    double m_width;
};

/// Colours whose neighbours need not differ: the scale of oxygen, whose order a grey copy keeps (see below),
/// and the grey of clouds, whose number stands in it.
class Scales {
public:
    explicit Scales(const PlotStyle& style) {
        for (int i = 0; i <= 400; ++i) {
            m_colours.push_back(depthOfColour(style, i / 400.0));
        }
        for (int i = 0; i <= 100; ++i) {
            m_colours.push_back(mixed(style.paper, style.quietInk, 0.55 * i / 100.0));
        }
    }
    [[nodiscard]] bool has(const QColor& colour) const {
        return std::any_of(m_colours.begin(), m_colours.end(),
                           [&](const QColor& one) { return isNear(one, colour); });
    }

private:
    std::vector<QColor> m_colours;
};

/// Twilight goes from day to night in soft steps; the first and the last are told apart, and sunset and
/// sunrise are named.
class Twilight {
public:
    explicit Twilight(const PlotStyle& style) {
        const std::array<QColor, 4> steps{style.paper, style.night[0], style.night[1], style.night[2]};
        for (std::size_t i = 0; i + 1 < steps.size(); ++i) {
            for (const auto& band :
                 {std::optional<QColor>(), std::optional(style.stress), std::optional(style.lethal)}) {
                for (std::size_t tint = 0; tint <= 13; ++tint) {
                    const auto of = [&](const QColor& step) {
                        const QColor under = band ? mixed(step, *band, kBandShare) : step;
                        return tint == 13 ? under : mixed(under, style.lineColour(tint), kTintShare);
                    };
                    m_pairs.emplace_back(of(steps[i]), of(steps[i + 1]));
                }
            }
        }
    }
    [[nodiscard]] bool has(const QColor& a, const QColor& b) const {
        return std::any_of(m_pairs.begin(), m_pairs.end(), [&](const auto& pair) {
            return (isNear(pair.first, a) && isNear(pair.second, b)) ||
                   (isNear(pair.first, b) && isNear(pair.second, a));
        });
    }

private:
    std::vector<std::pair<QColor, QColor>> m_pairs;
};

/// Edges between areas: how much of each is seen. An edge goes straight on across bands, and is told by the
/// greater part of it.
class Edges {
public:
    explicit Edges(const Sheet& sheet) : m_sheet(sheet), m_scales(sheet.style()), m_twilight(sheet.style()) {
        for (const DrawnShape& shape : sheet.shapes()) {
            if (shape.stroke && !isHatch(shape)) {
                m_strokes.push_back(&shape);
            }
        }
        for (std::size_t i = 0; i < sheet.shapes().size(); ++i) {
            if (sheet.shapes()[i].stroke && isHatch(sheet.shapes()[i])) {
                const QRectF box = sheet.shapes()[i].path.boundingRect();
                m_hatched[sheet.topmost(box.center(), i)] += box.width();
            }
        }
    }

    void expectSeen() {
        for (std::size_t i = 0; i < m_sheet.shapes().size(); ++i) {
            const DrawnShape& shape = m_sheet.shapes()[i];
            const QRectF box = shape.path.boundingRect();
            if (shape.fill && !shape.isCurved && box.width() >= 3.0 && box.height() >= 3.0) {
                walk(i);
            }
        }
        for (const auto& [where, part] : m_parts) {
            EXPECT_GE(part.seen, 0.5 * part.all) << "the edge at " << where << ", " << part.between;
        }
    }

    /// Strokes of hatching for each pixel of an area; 0 if it has none.
    [[nodiscard]] double hatching(std::size_t area) const {
        const auto found = m_hatched.find(area);
        const QRectF box = m_sheet.shapes()[area].path.boundingRect();
        return found == m_hatched.end() ? 0.0 : found->second / std::max(box.width() * box.height(), 1.0);
    }

private:
    struct Part {
        double all = 0.0, seen = 0.0;
        std::string between;
    };

    void walk(std::size_t area) {
        constexpr double kStep = 4.0, kAside = 1.4;  // [px]
        const auto points = pointsOf(m_sheet.shapes()[area].path);
        for (std::size_t p = 0; p + 1 < points.size(); ++p) {
            const QPointF way = points[p + 1] - points[p];
            const double length = std::hypot(way.x(), way.y());
            const QPointF aside = length > 0.0 ? QPointF(-way.y(), way.x()) * (kAside / length) : QPointF();
            for (double at = std::min(kStep, length) / 2; at < length; at += kStep) {
                look(area, points[p] + way * (at / length), aside, way);
            }
        }
    }

    void look(std::size_t area, const QPointF& at, const QPointF& aside, const QPointF& way) {
        const std::size_t count = m_sheet.shapes().size();
        const std::size_t a = m_sheet.topmost(at + aside, count), b = m_sheet.topmost(at - aside, count);
        if ((a != area && b != area) || a == b || a == count || b == count) {
            return;
        }
        const auto &one = m_sheet.shapes()[a].fill, &other = m_sheet.shapes()[b].fill;
        if (!one || !other || m_sheet.shapes()[a].isCurved || m_sheet.shapes()[b].isCurved ||
            isNear(*one, *other) || m_twilight.has(*one, *other) ||
            (m_scales.has(*one) && m_scales.has(*other))) {
            return;
        }
        const bool isUp = std::abs(way.x()) < 0.01, isLevel = std::abs(way.y()) < 0.01;
        const std::string where = isUp      ? "x " + std::to_string(std::lround(at.x()))
                                  : isLevel ? "y " + std::to_string(std::lround(at.y()))
                                            : "area " + std::to_string(area);
        Part& part = m_parts[where];
        part.all += 1.0;
        const double h = hatching(a), i = hatching(b);
        const bool isSeen = apart(*one, *other) >= kAreasApart ||
                            std::max(h, i) > 0.01 + 1.5 * std::min(h, i) || hasStroke(at, *one, *other);
        part.seen += isSeen ? 1.0 : 0.0;
        if (!isSeen) {
            part.between = nameOf(*one) + " and " + nameOf(*other);
        }
    }

    /// True if a stroke along the edge stands out of one of its sides.
    [[nodiscard]] bool hasStroke(const QPointF& at, const QColor& one, const QColor& other) const {
        return std::any_of(m_strokes.begin(), m_strokes.end(), [&](const DrawnShape* shape) {
            constexpr double kNear = 1.5;  // [px]
            if (std::max(contrast(*shape->stroke, one), contrast(*shape->stroke, other)) < kGraphContrast ||
                !shape->path.boundingRect().adjusted(-kNear, -kNear, kNear, kNear).contains(at)) {
                return false;
            }
            return distance(at, *shape) <= kNear;
        });
    }

    const Sheet& m_sheet;
    Scales m_scales;
    Twilight m_twilight;
    std::vector<const DrawnShape*> m_strokes;
    std::map<std::size_t, double> m_hatched;  // of areas: across all strokes [px]
    std::map<std::string, Part> m_parts;
};

}  // namespace widgets::test
