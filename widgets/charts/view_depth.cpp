// The water seen from the side, over time: oxygen by depth, the stress and lethal lines as isolines, the fish
// water outlined, the diffusers where they hang while they run, the bottom's shape at the right.

#include "engine/base/units.h"
#include "engine/output/results_io.h"
#include "engine/run/depths.h"
#include "widgets/charts/day_axis.h"
#include "widgets/charts/picture.h"
#include "widgets/document/pond_units.h"
#include "widgets/document/to_qstring.h"
#include "widgets/document/wording.h"

#include <QCoreApplication>
#include <QLocale>
#include <qcustomplot.h>

#include <algorithm>
#include <cmath>
#include <map>

namespace widgets {
namespace {

constexpr int kRight = 150;  // [px] for the bottom's shape and the scale
constexpr int kRows = 120;   // of the picture of the water; layers are finer nowhere

QString tr(const char* text) {
    return QCoreApplication::translate("DepthView", text);
}

/// Where a field on a grid passes through zero, as pieces of lines in columns and rows (marching squares; a
/// saddle is parted by its middle).
template <class Value>
std::vector<QLineF> isoline(int columns, int rows, Value value) {
    std::vector<QLineF> pieces;
    for (int i = 0; i + 1 < columns; ++i) {
        for (int j = 0; j + 1 < rows; ++j) {
            const double a = value(i, j), b = value(i + 1, j), c = value(i + 1, j + 1), d = value(i, j + 1);
            std::vector<QPointF> cuts;
            const auto edge = [&](double from, double to, QPointF start, QPointF step) {
                if ((from < 0.0) != (to < 0.0)) {
                    cuts.push_back(start + step * (from / (from - to)));
                }
            };
            edge(a, b, QPointF(i, j), {1, 0});
            edge(b, c, QPointF(i + 1, j), {0, 1});
            edge(d, c, QPointF(i, j + 1), {1, 0});
            edge(a, d, QPointF(i, j), {0, 1});
            if (cuts.size() == 2) {
                pieces.emplace_back(cuts[0], cuts[1]);
            } else if (cuts.size() == 4) {
                const bool isLikeA = (a + b + c + d < 0.0) == (a < 0.0);
                pieces.emplace_back(cuts[0], isLikeA ? cuts[1] : cuts[3]);
                pieces.emplace_back(cuts[2], isLikeA ? cuts[3] : cuts[1]);
            }
        }
    }
    return pieces;
}

/// Pieces put end to end, so that dashes go on from one to the next.
std::vector<QPolygonF> joined(const std::vector<QLineF>& pieces) {
    using End = std::pair<double, double>;
    const auto endOf = [](const QPointF& at) { return End(at.x(), at.y()); };
    std::multimap<End, std::size_t> at;
    for (std::size_t i = 0; i < pieces.size(); ++i) {
        at.emplace(endOf(pieces[i].p1()), i);
        at.emplace(endOf(pieces[i].p2()), i);
    }
    std::vector<bool> isTaken(pieces.size(), false);
    const auto goOn = [&](QPolygonF& line) {
        for (bool isOpen = true; isOpen;) {
            isOpen = false;
            const auto [from, to] = at.equal_range(endOf(line.back()));
            for (auto next = from; next != to && !isOpen; ++next) {
                if (!isTaken[next->second]) {
                    const QLineF& piece = pieces[next->second];
                    isTaken[next->second] = isOpen = true;
                    line << (piece.p1() == line.back() ? piece.p2() : piece.p1());
                }
            }
        }
    };
    std::vector<QPolygonF> lines;
    for (std::size_t i = 0; i < pieces.size(); ++i) {
        if (!isTaken[i]) {
            isTaken[i] = true;
            QPolygonF line({pieces[i].p1(), pieces[i].p2()});
            goOn(line);
            std::reverse(line.begin(), line.end());
            goOn(line);
            lines.push_back(line);
        }
    }
    return lines;
}

class Painter {
public:
    Painter(QCPPainter& painter, const QCPAxisRect& rect, const Outcome& outcome, std::size_t run,
            const engine::OxygenField& field, double top, const PlotStyle& style)
        : m_painter(painter),
          m_rect(rect),
          m_area(rect.rect()),
          m_outcome(outcome),
          m_run(outcome.comparison.runs[run]),
          m_field(field),
          m_top(top),
          m_style(style) {}

    void paint() {
        water();
        const engine::OxygenThresholds& thresholds = m_outcome.comparison.model.parameters.thresholds;
        level(thresholds.stress, QPen(m_style.stressInk, 1.4), tr("stress %1"));
        level(thresholds.lethal, QPen(m_style.lethalInk, 2.4), tr("lethal %1"));
        fishWater();
        diffusers();
        labels();
        bottom();
        m_painter.setPen(m_style.quietInk);
        m_painter.drawText(QPointF(2, QFontMetricsF(m_style.font).ascent() + 1),
                           tr("depth, %1").arg(unitText("m", unitsOf(m_outcome.comparison.model.pond))));
        paintScale(m_painter, m_style,
                   QRectF(m_area.right() + 92, m_area.top() + 20, 12, m_area.height() * 0.7), m_top);
    }

private:
    [[nodiscard]] double x(double time) const {
        return std::clamp(m_rect.axis(QCPAxis::atBottom)->coordToPixel(time / engine::kDay), m_area.left(),
                          m_area.right());
    }
    [[nodiscard]] double y(double depth) const {
        return m_area.top() + m_area.height() * depth / m_field.depth;
    }
    [[nodiscard]] QPointF place(const QPointF& cell) const {
        const auto i = static_cast<std::size_t>(cell.x());
        const double share = cell.x() - std::floor(cell.x());
        const double from = m_field.time[i];
        const double to = i + 1 < m_field.time.size() ? m_field.time[i + 1] : from;
        return {x(from + share * (to - from)), y((cell.y() + 0.5) * m_field.depth / kRows)};
    }

    void water() {
        const int columns = static_cast<int>(m_field.time.size());
        if (columns < 2) {
            return;
        }
        QImage image(columns - 1, kRows, QImage::Format_RGB32);
        for (int i = 0; i + 1 < columns; ++i) {
            for (int j = 0; j < kRows; ++j) {
                const auto c = static_cast<std::size_t>(i), r = static_cast<std::size_t>(j);
                const double mean = 0.5 * (m_field.oxygen[c][r] + m_field.oxygen[c + 1][r]);
                image.setPixelColor(i, j, depthOfColour(m_style, mean / m_top));
            }
        }
        const double left = x(m_field.time.front()), right = x(m_field.time.back());
        m_painter.drawImage(QRectF(left, m_area.top(), right - left, m_area.height()), image);
    }

    /// On paper of its own, so that it stands out of deep colours too.
    void draw(const std::vector<QLineF>& pieces, const QPen& pen) {
        constexpr double kCasing = 2.0;  // [px]
        std::vector<QPolygonF> lines = joined(pieces);
        for (QPolygonF& line : lines) {
            std::transform(line.begin(), line.end(), line.begin(),
                           [this](const QPointF& cell) { return place(cell); });
        }
        for (const QPen& one : {QPen(m_style.paper, pen.widthF() + kCasing), pen}) {
            m_painter.setPen(one);
            for (const QPolygonF& line : lines) {
                m_painter.drawPolyline(line);
            }
        }
    }

    [[nodiscard]] double oxygen(int i, int j) const {
        return m_field.oxygen[static_cast<std::size_t>(i)][static_cast<std::size_t>(j)];
    }

    void level(double oxygenLevel, const QPen& pen, const QString& name) {
        const auto pieces = isoline(static_cast<int>(m_field.time.size()), kRows,
                                    [&](int i, int j) { return oxygen(i, j) - oxygenLevel; });
        draw(pieces, pen);
        if (pieces.empty()) {
            return;
        }
        // Its name stands on the line, a tenth of the way in, on a piece of paper.
        const double wanted = m_area.left() + 0.1 * m_area.width();
        const auto nearest =
            std::min_element(pieces.begin(), pieces.end(), [&](const QLineF& a, const QLineF& b) {
                return std::abs(place(a.p1()).x() - wanted) < std::abs(place(b.p1()).x() - wanted);
            });
        const QString text = name.arg(oxygenText(oxygenLevel));
        const QFontMetricsF metrics(m_style.font);
        QRectF box(0, 0, metrics.horizontalAdvance(text) + 8, metrics.height());
        box.moveCenter(place(nearest->p1()));
        box.moveTop(std::clamp(box.top(), m_area.top() + 1, m_area.bottom() - box.height() - 1));
        for (const QRectF& taken : m_taken) {
            if (taken.intersects(box)) {
                box.moveLeft(taken.right() + 4);
            }
        }
        m_taken.push_back(box);
        m_names.push_back({text, pen.color()});
    }

    void labels() {
        for (std::size_t i = 0; i < m_taken.size(); ++i) {
            m_painter.setPen(Qt::NoPen);
            m_painter.setBrush(m_style.paper);
            m_painter.drawRoundedRect(m_taken[i], 3, 3);
            m_painter.setBrush(Qt::NoBrush);
            m_painter.setPen(m_names[i].second);
            m_painter.drawText(m_taken[i], Qt::AlignCenter, m_names[i].first);
        }
    }

    /// The edge of the best share of the water, in long dashes.
    void fishWater() {
        QPen pen(m_style.ink, 1.6);
        pen.setDashPattern({6, 3});
        draw(isoline(static_cast<int>(m_field.time.size()), kRows,
                     [&](int i, int j) {
                         // A hair below, since in mixed water all of it is the best.
                         return oxygen(i, j) - m_field.fishWater[static_cast<std::size_t>(i)] + 0.02;
                     }),
             pen);
    }

    void diffusers() {
        m_painter.setPen(Qt::NoPen);
        for (const engine::RunBlock& block : m_run.schedule) {
            const double from = x(block.start), to = x(block.end), at = y(block.depth);
            if (to - from > 0.1) {
                m_painter.setBrush(m_style.paper);
                m_painter.drawRect(QRectF(from, at - 4, std::max(to - from, 2.0), 7));
                m_painter.setBrush(m_style.ink);
                m_painter.drawRect(QRectF(from, at - 2.5, std::max(to - from, 2.0), 4));
            }
        }
        m_painter.setBrush(Qt::NoBrush);
    }

    /// The bottom's true shape: how far the water reaches at each depth, as a share of the surface.
    void bottom() {
        const double left = m_area.right() + 14, width = 62;
        const engine::Basin& basin = m_outcome.comparison.model.basin;
        const double surface = std::max(basin.area(0.0), 1e-9);
        QPolygonF sediment;
        sediment << QPointF(left + width, m_area.top());
        for (int i = 0; i <= 40; ++i) {
            const double depth = m_field.depth * i / 40.0;
            sediment << QPointF(left + width * std::sqrt(std::clamp(basin.area(depth) / surface, 0.0, 1.0)),
                                y(depth));
        }
        sediment << QPointF(left, m_area.bottom()) << QPointF(left + width, m_area.bottom());
        m_painter.fillRect(QRectF(left, m_area.top(), width, m_area.height()), depthOfColour(m_style, 0.35));
        m_painter.setPen(QPen(m_style.ink, 1.2));
        m_painter.setBrush(mixed(m_style.paper, m_style.ink, 0.35));
        m_painter.drawPolygon(sediment);
        m_painter.setBrush(Qt::NoBrush);
    }

    QCPPainter& m_painter;
    const QCPAxisRect& m_rect;
    QRectF m_area;
    const Outcome& m_outcome;
    const engine::RampRun& m_run;
    const engine::OxygenField& m_field;
    double m_top;
    const PlotStyle& m_style;
    std::vector<QRectF> m_taken;  // by names
    std::vector<std::pair<QString, QColor>> m_names;
};

void drawWater(QCustomPlot& plot, const OutcomePtr& outcome, std::size_t run, const Selection::Span& span,
               double top, const PlotStyle& style) {
    prepare(plot, style);
    const QFontMetricsF metrics(style.font);
    QCPAxisRect* rect =
        addRect(plot, 0, QMargins(kDaysLeft, static_cast<int>(metrics.height()) + 6, kRight, 6));
    const auto field = std::make_shared<const engine::OxygenField>(engine::oxygenField(
        outcome->comparison.model.grid, outcome->comparison.runs[run], span.from, span.to, kRows));
    const double deep = shownUnitOf("m", unitsOf(outcome->comparison.model.pond)).toShown(field->depth);
    applyStyle(*rect, style, span.from, span.to, deep, {});
    rect->axis(QCPAxis::atBottom)->setTickLabels(false);
    addWeatherStrip(plot, 1, outcome, span, style, kRight);
    rect->axis(QCPAxis::atLeft)->setRangeReversed(true);
    const QSharedPointer<QCPAxisTickerFixed> steps(new QCPAxisTickerFixed);
    steps->setTickStep(roundStep(deep, 6));
    rect->axis(QCPAxis::atLeft)->setTicker(steps);
    addPainted(*rect, style, [=](QCPPainter& painter, const QCPAxisRect& of) {
        if (field->time.size() >= 2) {
            Painter(painter, of, *outcome, run, *field, top, style).paint();
        }
    });
}

/// Down to where fish find enough at an hour [m].
double enoughDownTo(const Outcome& outcome, std::size_t run, std::size_t hour) {
    return engine::enoughDownTo(outcome.comparison.model.grid, outcome.comparison.runs[run].layers[hour],
                                outcome.comparison.model.parameters.thresholds.stress);
}

QString headlineOf(const Outcome& outcome, std::size_t run) {
    const engine::RampRun& rows = outcome.comparison.runs[run];
    const QString name = rampText(rows.name, run);
    if (rows.layers.empty()) {
        return tr("%1: the layers of this run were not kept.").arg(name);
    }
    const auto where = [&](std::size_t hour) {
        const double depth = enoughDownTo(outcome, run, hour);
        return depth > 0.0 ? tr("down to %1").arg(depthText(depth, unitsOf(outcome.comparison.model.pond)))
                           : tr("at no depth");
    };
    return tr("%1: at the start the fish find enough oxygen %2, at noon after the last night %3.")
        .arg(name, where(0), where(rows.layers.size() - 1));
}

QString readAt(const Outcome& outcome, std::size_t run, double time) {
    const engine::RampRun& rows = outcome.comparison.runs[run];
    const engine::HourRow* hour = engine::hourNear(rows, time);
    const auto i = hour == nullptr ? rows.layers.size() : static_cast<std::size_t>(hour - rows.hours.data());
    if (i >= rows.layers.size()) {
        return {};
    }
    const auto& layers = rows.layers[i];
    const auto degrees = [&](double value) {
        return amountText(value, "degC", unitsOf(outcome.comparison.model.pond));
    };
    return tr("%1: surface %2 mg/L, half way down %3 mg/L, bottom %4 mg/L; surface %5, bottom %6")
        .arg(momentText(time), oxygenText(layers.front().oxygen),
             oxygenText(layers[layers.size() / 2].oxygen), oxygenText(layers.back().oxygen),
             degrees(layers.front().temperature), degrees(layers.back().temperature));
}

}  // namespace

Picture depthPicture(const OutcomePtr& outcome, const Selection& selection) {
    const std::size_t run = shownRun(*outcome, selection);
    const engine::RampRun& rows = outcome->comparison.runs[run];
    const Selection::Span span = shownDays(*outcome, selection);
    Picture picture;
    picture.size = QSize(600, 380);
    picture.days = Picture::Days{span.from, span.to, kDaysLeft, kRight};
    double top = 6.0;
    for (const auto& hour : rows.layers) {
        for (const engine::LayerRow& layer : hour) {
            top = std::max(top, std::ceil(layer.oxygen));
        }
    }
    picture.headline = headlineOf(*outcome, run);
    picture.detail = tr(
        "The water from the side. Dashes: the edge of the fish water. Bars: diffusers while they run, where "
        "they hang. At the right the shape of the bottom.");
    QStringList words{picture.headline, picture.detail};
    constexpr std::size_t kADay = 24;  // rows
    for (std::size_t i = 0; i < rows.layers.size(); i += kADay) {
        words << tr("%1: enough down to %2.")
                     .arg(momentText(rows.hours[i].time),
                          depthText(enoughDownTo(*outcome, run, i), unitsOf(outcome->comparison.model.pond)));
    }
    picture.words = words.join(QLatin1Char(' '));
    picture.draw = [outcome, run, span, top](QCustomPlot& plot, const PlotStyle& style) {
        drawWater(plot, outcome, run, span, top, style);
    };
    picture.csv = [outcome, run] { return engine::layersCsv(aloneOf(outcome->comparison, run)); };
    picture.at = [outcome, run](double time) { return readAt(*outcome, run, time); };
    return picture;
}

}  // namespace widgets
