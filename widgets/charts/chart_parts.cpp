#include "widgets/charts/chart_parts.h"

#include "engine/water/basin.h"

#include <QCoreApplication>
#include <QLocale>
#include <qcustomplot.h>

#include <algorithm>
#include <cmath>
#include <limits>

namespace widgets {
namespace {

/// A layer thing that paints through a function.
class Painted final : public QCPLayerable {
public:
    Painted(QCPAxisRect& rect, const QString& layer, QFont font,
            std::function<void(QCPPainter&, const QCPAxisRect&)> paint)
        : QCPLayerable(rect.parentPlot(), layer),
          m_rect(rect),
          m_font(std::move(font)),
          m_paint(std::move(paint)) {}

protected:
    void applyDefaultAntialiasingHint(QCPPainter* painter) const override { painter->setAntialiasing(true); }
    void draw(QCPPainter* painter) override {
        painter->setFont(m_font);
        m_paint(*painter, m_rect);
    }

private:
    QCPAxisRect& m_rect;
    QFont m_font;
    std::function<void(QCPPainter&, const QCPAxisRect&)> m_paint;
};

constexpr double kFine = 0.8;  // [px] edges; thinner ones are lost where a picture is printed small
constexpr double kEdge = 0.9;  // of ink in the edge of a tint, so that a grey copy tells it from its line

/// Hatching at 45 degrees within a rectangle, by its own arithmetic.
void hatch(QCPPainter& painter, const QRectF& area, const QColor& colour) {
    constexpr double kStep = 9.0;  // [px]
    painter.setPen(QPen(colour, kFine));
    for (double c = area.left() - area.height(); c < area.right(); c += kStep) {
        // From (c, bottom) up to (c + height, top).
        const double from = std::max(c, area.left()), to = std::min(c + area.height(), area.right());
        if (from < to) {
            painter.drawLine(QPointF(from, area.bottom() - (from - c)),
                             QPointF(to, area.bottom() - (to - c)));
        }
    }
}

class GroundPainter {
public:
    GroundPainter(QCPPainter& painter, const QCPAxisRect& rect, const PlotStyle& style, const Ground& ground)
        : m_painter(painter), m_rect(rect), m_area(rect.rect()), m_style(style), m_ground(ground) {}

    void paint() {
        band(m_area.left(), m_area.right(), m_style.paper);
        for (const Shade& shade : m_ground.shades) {
            const double from = std::max(x(shade.from), m_area.left()),
                         to = std::min(x(shade.to), m_area.right());
            if (from < to) {
                band(from, to, m_style.night[shade.step]);
            }
        }
        rules();
        hatchLethal();
        bandEdges();
        edges();
        levels();
    }

private:
    [[nodiscard]] double x(double value) const { return m_rect.axis(QCPAxis::atBottom)->coordToPixel(value); }
    [[nodiscard]] double y(double value) const {
        return std::clamp(m_rect.axis(QCPAxis::atLeft)->coordToPixel(value), m_area.top(), m_area.bottom());
    }

    /// An upright stretch in one colour, with the bands of stress and death laid over it.
    void band(double from, double to, const QColor& colour) {
        const auto fill = [&](double top, double bottom, const QColor& with) {
            const QRectF zone(from, top, to - from, bottom - top);
            m_painter.fillRect(zone, with);
            for (const Tint& tint : m_ground.tints) {
                fillTint(tint, zone, mixed(with, tint.colour, kTintShare));
            }
        };
        fill(m_area.top(), m_area.bottom(), colour);
        if (m_ground.stress > 0.0) {
            fill(y(m_ground.stress), m_area.bottom(), mixed(colour, m_style.stress, kBandShare));
        }
        if (m_ground.lethal > 0.0) {
            fill(y(m_ground.lethal), m_area.bottom(), mixed(colour, m_style.lethal, kBandShare));
        }
    }

    /// The part of a tint within a zone, in pixels and without clipping.
    void fillTint(const Tint& tint, const QRectF& zone, const QColor& colour) {
        constexpr double kStep = 2.0;  // [px]
        if (tint.x.size() < 2) {
            return;
        }
        const double from = std::max(zone.left(), x(tint.x.front())),
                     to = std::min(zone.right(), x(tint.x.back()));
        if (from >= to) {
            return;
        }
        QPolygonF upper, lower;
        for (double at = from;; at = std::min(at + kStep, to)) {
            const double value = m_rect.axis(QCPAxis::atBottom)->pixelToCoord(at);
            const auto place = [&](const std::vector<double>& edge) {
                return std::clamp(y(engine::interpolate(tint.x, edge, value)), zone.top(), zone.bottom());
            };
            upper << QPointF(at, place(tint.high));
            lower << QPointF(at, place(tint.low));
            if (at >= to) {
                break;
            }
        }
        std::reverse(lower.begin(), lower.end());
        m_painter.setPen(Qt::NoPen);
        m_painter.setBrush(colour);
        m_painter.drawPolygon(upper + lower);
        m_painter.setBrush(Qt::NoBrush);
    }

    void edges() {
        for (const Tint& tint : m_ground.tints) {
            m_painter.setPen(QPen(mixed(tint.colour, m_style.ink, kEdge), kFine,
                                  tint.isDotted ? Qt::DotLine : Qt::SolidLine));
            for (const std::vector<double>* edge : {&tint.low, &tint.high}) {
                std::vector<QPointF> line;
                for (std::size_t i = 0; i < tint.x.size(); ++i) {
                    line.emplace_back(x(tint.x[i]), m_rect.axis(QCPAxis::atLeft)->coordToPixel((*edge)[i]));
                }
                for (const auto& piece : cut(line, m_area)) {
                    m_painter.drawPolyline(piece.data(), static_cast<int>(piece.size()));
                }
            }
        }
    }

    /// The bands end in a line, since a grey copy shows them hardly darker than the paper.
    void bandEdges() {
        for (const auto& [level, ink] :
             {std::pair(m_ground.stress, m_style.stressInk), std::pair(m_ground.lethal, m_style.lethalInk)}) {
            if (level > 0.0) {
                m_painter.setPen(QPen(ink, kFine));
                m_painter.drawLine(QPointF(m_area.left(), y(level)), QPointF(m_area.right(), y(level)));
            }
        }
    }

    void hatchLethal() {
        if (m_ground.lethal > 0.0) {
            const double top = y(m_ground.lethal);
            hatch(m_painter, QRectF(m_area.left(), top, m_area.width(), m_area.bottom() - top),
                  m_style.hatch);
        }
    }

    void rules() {
        m_painter.setPen(QPen(m_style.hairline, 0));
        for (const double rule : m_ground.rules) {
            m_painter.drawLine(QPointF(m_area.left(), y(rule)), QPointF(m_area.right(), y(rule)));
        }
        for (const double upright : m_ground.uprights) {
            const double at = x(upright);
            if (at >= m_area.left() && at <= m_area.right()) {
                m_painter.drawLine(QPointF(at, m_area.top()), QPointF(at, m_area.bottom()));
            }
        }
    }

    void levels() {
        QPen pen(m_style.quietInk, 1.0);
        pen.setDashPattern({1, 4});
        m_painter.setPen(pen);
        for (const NamedLevel& level : m_ground.levels) {
            if (level.oxygen <= m_rect.axis(QCPAxis::atLeft)->range().upper) {
                m_painter.drawLine(QPointF(m_area.left(), y(level.oxygen)),
                                   QPointF(m_area.right(), y(level.oxygen)));
            }
        }
    }

    QCPPainter& m_painter;
    const QCPAxisRect& m_rect;
    QRectF m_area;
    const PlotStyle& m_style;
    const Ground& m_ground;
};

/// The part of a segment within a rectangle, after Liang and Barsky (1984); false if there is none.
bool cutSegment(QPointF& a, QPointF& b, const QRectF& inside) {
    const QPointF d = b - a;
    double from = 0.0, to = 1.0;
    const auto edge = [&](double p, double q) {
        if (p == 0.0) {
            return q >= 0.0;
        }
        const double at = q / p;
        (p < 0.0 ? from : to) = p < 0.0 ? std::max(from, at) : std::min(to, at);
        return from <= to;
    };
    if (!edge(-d.x(), a.x() - inside.left()) || !edge(d.x(), inside.right() - a.x()) ||
        !edge(-d.y(), a.y() - inside.top()) || !edge(d.y(), inside.bottom() - a.y())) {
        return false;
    }
    b = to < 1.0 ? a + d * to : b;
    a = from > 0.0 ? a + d * from : a;
    return true;
}

}  // namespace

std::vector<std::vector<QPointF>> cut(const std::vector<QPointF>& line, const QRectF& inside) {
    std::vector<std::vector<QPointF>> pieces;
    bool isOpen = false;
    for (std::size_t i = 0; i + 1 < line.size(); ++i) {
        QPointF a = line[i], b = line[i + 1];
        if (!cutSegment(a, b, inside)) {
            isOpen = false;
            continue;
        }
        if (!isOpen || a != line[i]) {
            pieces.push_back({a});
        }
        pieces.back().push_back(b);
        isOpen = b == line[i + 1];
    }
    return pieces;
}

double roundStep(double range, int most) {
    const double least = std::max(range, 1e-9) / most;
    const double power = std::pow(10.0, std::floor(std::log10(least)));
    for (const double times : {1.0, 2.0, 5.0}) {
        if (times * power >= least * (1.0 - 1e-9)) {
            return times * power;
        }
    }
    return 10.0 * power;
}

std::vector<double> oxygenSteps(double top, double step) {
    std::vector<double> steps;
    for (double at = 0.0; at <= top + 1e-9; at += step) {
        steps.push_back(at);
    }
    return steps;
}

std::vector<std::pair<double, QString>> clockMarks(double shownHours) {
    constexpr double kFew = 12.0;
    std::vector<std::pair<double, QString>> marks;
    for (int hour = 0; hour <= 24; hour += shownHours <= kFew ? 1 : 3) {
        marks.emplace_back(hour, hour % 24 == 0 ? QCoreApplication::translate("NightPlot", "noon")
                                 : hour == 12
                                     ? QCoreApplication::translate("NightPlot", "midnight")
                                     : QStringLiteral("%1").arg((hour + 12) % 24, 2, 10, QLatin1Char('0')));
    }
    return marks;
}

std::vector<Shade> shadesOf(const NightScene& sky, const std::function<double(double hour)>& x) {
    std::vector<Shade> shades;
    const auto add = [&](const std::optional<double>& dusk, const std::optional<double>& dawn, int step) {
        if (dusk && dawn) {
            shades.push_back({x(*dusk), x(*dawn), step});
        }
    };
    add(sky.sunset, sky.sunrise, 0);
    add(sky.civilDusk, sky.civilDawn, 1);
    add(sky.nauticalDusk, sky.nauticalDawn, 2);
    return shades;
}

void prepare(QCustomPlot& plot, const PlotStyle& style) {
    const QObjectList children = plot.children();  // a copy, since it shrinks
    for (QObject* child : children) {
        if (dynamic_cast<Painted*>(child) != nullptr) {
            delete child;  // before the axis rect that it refers to
        }
    }
    plot.clearItems();
    plot.clearPlottables();
    plot.plotLayout()->clear();
    plot.plotLayout()->setMargins(QMargins(0, 0, 0, 0));
    plot.plotLayout()->setRowSpacing(0);
    plot.setBackground(QBrush(style.paper));
    // Thick antialiased lines are drawn ten times as fast with it.
    plot.setPlottingHint(QCP::phFastPolylines);
    plot.setNoAntialiasingOnDrag(true);
}

void applyStyle(QCPAxisRect& rect, const PlotStyle& style, double left, double right, double top,
                const std::vector<std::pair<double, QString>>& labels) {
    rect.setupFullAxesBox(false);
    QCPAxis* bottom = rect.axis(QCPAxis::atBottom);
    QCPAxis* side = rect.axis(QCPAxis::atLeft);
    rect.axis(QCPAxis::atTop)->setVisible(false);
    rect.axis(QCPAxis::atRight)->setVisible(false);
    bottom->setRange(left, right);
    side->setRange(0.0, top);
    const QSharedPointer<QCPAxisTickerText> ticker(new QCPAxisTickerText);
    for (const auto& [place, text] : labels) {
        ticker->addTick(place, text);
    }
    bottom->setTicker(ticker);
    for (QCPAxis* axis : {bottom, side}) {
        axis->grid()->setVisible(false);
        axis->setBasePen(Qt::NoPen);
        axis->setTickPen(Qt::NoPen);
        axis->setSubTickPen(Qt::NoPen);
        axis->setTickLabelFont(style.font);
        axis->setTickLabelColor(style.ink);
        axis->setTickLabelPadding(6);
        axis->setTickLength(0);
    }
}

void addGround(QCPAxisRect& rect, const PlotStyle& style, Ground ground) {
    new Painted(rect, QStringLiteral("background"), style.font,
                [style, ground = std::move(ground)](QCPPainter& painter, const QCPAxisRect& of) {
                    GroundPainter(painter, of, style, ground).paint();
                });  // owned by the plot
}

SmoothLine smoothLine(const std::vector<double>& x, const std::vector<double>& y) {
    constexpr int kParts = 6;  // of each stretch; more cannot be seen
    const std::size_t count = x.size();
    if (count < 3) {
        return {x, y};
    }
    std::vector<double> width, rise, slope(count, 0.0);
    for (std::size_t i = 0; i + 1 < count; ++i) {
        width.push_back(x[i + 1] - x[i]);
        rise.push_back((y[i + 1] - y[i]) / width[i]);
    }
    slope.front() = rise.front();
    slope.back() = rise.back();
    for (std::size_t i = 1; i + 1 < count; ++i) {
        if (rise[i - 1] * rise[i] > 0.0) {
            const double share = (width[i - 1] + 2.0 * width[i]) / (3.0 * (width[i - 1] + width[i]));
            slope[i] = rise[i - 1] * rise[i] / (share * rise[i] + (1.0 - share) * rise[i - 1]);
        }
    }
    SmoothLine line;
    for (std::size_t i = 0; i + 1 < count; ++i) {
        for (int part = 0; part < kParts; ++part) {
            const double t = part / static_cast<double>(kParts), u = 1.0 - t;
            line.x.push_back(x[i] + t * width[i]);
            line.y.push_back(u * u * (1.0 + 2.0 * t) * y[i] + t * t * (1.0 + 2.0 * u) * y[i + 1] +
                             t * u * width[i] * (u * slope[i] - t * slope[i + 1]));
        }
    }
    line.x.push_back(x.back());
    line.y.push_back(y.back());
    return line;
}

void addCurve(QCPAxisRect& rect, const std::vector<double>& x, const std::vector<double>& y,
              const QPen& pen) {
    QCPAxis* bottom = rect.axis(QCPAxis::atBottom);
    QCPAxis* side = rect.axis(QCPAxis::atLeft);
    const QCPRange across = bottom->range(), up = side->range();
    std::vector<QPointF> line;
    for (std::size_t i = 0; i < x.size(); ++i) {
        line.emplace_back(x[i], y[i]);
    }
    QVector<double> keys, values;
    for (const auto& piece : cut(line, QRectF(across.lower, up.lower, across.size(), up.size()))) {
        if (!keys.isEmpty()) {
            keys << piece.front().x();
            values << std::numeric_limits<double>::quiet_NaN();  // a gap
        }
        for (const QPointF& point : piece) {
            keys << point.x();
            values << point.y();
        }
    }
    QCPGraph* graph = rect.parentPlot()->addGraph(bottom, side);
    graph->setPen(pen);
    graph->setAdaptiveSampling(true);
    graph->setSelectable(QCP::stNone);
    graph->setData(keys, values, true);
}

void addPainted(QCPAxisRect& rect, const PlotStyle& style,
                std::function<void(QCPPainter& painter, const QCPAxisRect& rect)> paint) {
    new Painted(rect, QStringLiteral("legend"), style.font, std::move(paint));  // owned by the plot
}

}  // namespace widgets
