#include "widgets/charts/night_labels.h"

#include "engine/base/units.h"
#include "widgets/charts/label_layout.h"
#include "widgets/charts/night_scene.h"
#include "widgets/controls/plot_style.h"
#include "widgets/document/wording.h"

#include <QCoreApplication>
#include <QFontMetricsF>
#include <QLocale>
#include <qcustomplot.h>

#include <algorithm>
#include <cmath>

namespace widgets {
namespace {

constexpr double kWidestName = 12.5;  // [heights of a line]; longer names are cut with dots
constexpr double kToNames = 20.0;     // [px] from the end of a line to its name

QString tr(const char* text) {
    return QCoreApplication::translate("NightPlot", text);
}

/// Paints what stands over the curves: names at their ends, lows, readings, sunset and sunrise.
class Labels {
public:
    Labels(QCPPainter& painter, const QCPAxisRect& rect, const NightScene& scene, const PlotStyle& style)
        : m_painter(painter),
          m_rect(rect),
          m_area(rect.rect()),
          m_scene(scene),
          m_style(style),
          m_text(style.font) {}

    void paint() {
        if (m_scene.cursor) {
            m_painter.setPen(QPen(m_style.ink, 1.0));
            const double x = at(*m_scene.cursor, 0).x();
            m_painter.drawLine(QPointF(x, m_area.top()), QPointF(x, m_area.bottom()));
        }
        caption();
        names();
        nameLevels();
        for (const NightLine& line : m_scene.lines) {
            if ((!line.isGhost || line.isLowSaid) && isInside(at(line.lowHour, line.low))) {
                lowMark(line);
            }
        }
        for (const NightReading& reading : m_scene.readings) {
            if (isInside(at(reading.hour, reading.oxygen))) {
                mark(reading);
            }
        }
        for (auto line = m_scene.lines.rbegin(); line != m_scene.lines.rend(); ++line) {
            if (line->isLowSaid && isInside(at(line->lowHour, line->low))) {
                sayLow(*line);
            }
        }
    }

private:
    [[nodiscard]] QPointF at(double hour, double oxygen) const {
        return {m_rect.axis(QCPAxis::atBottom)->coordToPixel(hour),
                m_rect.axis(QCPAxis::atLeft)->coordToPixel(oxygen)};
    }

    /// Marks of what lies outside the axes are left out: nothing else would cut them off in a drawing.
    [[nodiscard]] bool isInside(const QPointF& place) const {
        return m_area.adjusted(-1, -1, 1, 1).contains(place);
    }

    void caption() {
        const double height = m_text.height();
        m_painter.setPen(m_style.quietInk);
        m_painter.drawText(QPointF(2, m_text.ascent() + 2), tr("oxygen in the fish water, mg/L"));
        const auto clock = [](double hour) { return clockText((hour + 12.0) * engine::kHour); };
        const auto over = [&](const std::optional<double>& hour, const QString& text) {
            if (hour && *hour > m_scene.from && *hour < m_scene.to) {
                const double width = m_text.horizontalAdvance(text);
                const double x =
                    std::clamp(at(*hour, 0).x() - width / 2, m_area.left(), m_area.right() - width);
                m_painter.drawText(QPointF(x, m_area.top() - height * 0.35), text);
            }
        };
        if (m_scene.sunset) {
            over(m_scene.sunset, tr("sunset %1").arg(clock(*m_scene.sunset)));
        }
        if (m_scene.sunrise) {
            over(m_scene.sunrise, tr("sunrise %1").arg(clock(*m_scene.sunrise)));
        }
    }

    void names() {
        std::vector<const NightLine*> named;
        std::vector<double> wanted;
        for (const NightLine& line : m_scene.lines) {
            if (!line.isLabelled || line.oxygen.empty()) {
                continue;
            }
            const QPointF end = at(m_scene.to, engine::interpolate(line.hour, line.oxygen, m_scene.to));
            if (isInside(end)) {
                named.push_back(&line);
                wanted.push_back(end.y());
            }
        }
        const double half = m_text.height() / 2;
        const auto places = spreadApart(wanted, m_text.height(), m_area.top() + half, m_area.bottom() - half);
        for (std::size_t i = 0; i < named.size(); ++i) {
            const double x = m_area.right() + kToNames;
            m_painter.setPen(QPen(m_style.textColour(named[i]->look), 1));
            m_painter.drawLine(QPointF(m_area.right() + 2, wanted[i]), QPointF(x - 10, places[i]));
            m_painter.drawLine(QPointF(x - 10, places[i]), QPointF(x - 4, places[i]));
            QFont font = m_style.font;
            font.setBold(named[i]->isHeavy);
            const QFontMetricsF metrics(font);
            m_painter.setFont(font);
            m_painter.drawText(
                QPointF(x, places[i] + metrics.ascent() - metrics.height() / 2),
                metrics.elidedText(named[i]->name, Qt::ElideRight, kWidestName * m_text.height()));
        }
        m_painter.setFont(m_style.font);
    }

    /// Names of bands and levels, where they hide the least.
    void nameLevels() {
        const auto number = [](double oxygen) { return QLocale().toString(oxygen, 'g', 3); };
        const double zero = m_area.bottom();
        const auto yOf = [&](double oxygen) { return std::max(at(0, oxygen).y(), m_area.top()); };
        nameBand(tr("fish under stress, below %1").arg(number(m_scene.stress)), yOf(m_scene.stress),
                 yOf(m_scene.lethal), m_style.stressInk);
        nameBand(tr("lethal if it lasts, below %1").arg(number(m_scene.lethal)), yOf(m_scene.lethal), zero,
                 m_style.lethalInk);
        QFont small = m_style.font;
        small.setPointSizeF(small.pointSizeF() * 0.82);
        m_painter.setFont(small);
        const QFontMetricsF metrics(small);
        for (const NamedLevel& level : m_scene.criteria) {
            if (level.oxygen > m_scene.top) {
                continue;
            }
            const QString text = tr("%1 %2").arg(level.name, number(level.oxygen));
            const QSizeF size(metrics.horizontalAdvance(text), metrics.height());
            const QRectF box = leastHiding(size, {yOf(level.oxygen) - size.height(), yOf(level.oxygen) + 1});
            m_taken.push_back(box);
            m_painter.setPen(m_style.quietInk);
            m_painter.drawText(box, Qt::AlignCenter, text);
        }
        m_painter.setFont(m_style.font);
    }

    void nameBand(const QString& text, double top, double bottom, const QColor& ink) {
        if (bottom - top < m_text.height()) {
            return;
        }
        const QSizeF size(m_text.horizontalAdvance(text) + 4, m_text.height());
        const QRectF box = leastHiding(size, {top + 1, bottom - size.height() - 1});
        m_taken.push_back(box);
        m_painter.setPen(ink);
        m_painter.drawText(box, Qt::AlignCenter, text);
    }

    /// The place of a text across the plot, at one of some heights, that hides the least; the left is
    /// preferred.
    [[nodiscard]] QRectF leastHiding(const QSizeF& size, const std::vector<double>& tops) const {
        constexpr int kPlaces = 8;
        const double room = m_area.width() - size.width() - 16;
        QRectF best;
        double least = 1e9;
        for (int place = 0; place <= kPlaces; ++place) {
            for (const double top : tops) {
                const QRectF box(QPointF(m_area.left() + 8 + room * place / kPlaces, top), size);
                const double price = cost(box, 12.0 * place);
                if (price < least) {
                    least = price;
                    best = box;
                }
            }
        }
        return best;
    }

    void lowMark(const NightLine& line) {
        const double radius = line.isLowSaid ? 4.5 : 2.5;
        m_painter.setPen(QPen(m_style.lineColour(line.look), line.isLowSaid ? 2.2 : 1.4));
        m_painter.setBrush(m_style.paper);
        m_painter.drawEllipse(at(line.lowHour, line.low), radius, radius);
        m_painter.setBrush(Qt::NoBrush);
    }

    void mark(const NightReading& reading) {
        const QPointF place = at(reading.hour, reading.oxygen);
        const double up = std::max(at(0, reading.oxygen + reading.error).y(), m_area.top());
        const double down = std::min(at(0, reading.oxygen - reading.error).y(), m_area.bottom());
        const QColor ink = reading.isDeep ? m_style.quietInk : m_style.ink;
        m_painter.setPen(QPen(ink, 1.3));
        m_painter.drawLine(QPointF(place.x(), up), QPointF(place.x(), down));
        m_painter.drawLine(QPointF(place.x() - 3, up), QPointF(place.x() + 3, up));
        m_painter.drawLine(QPointF(place.x() - 3, down), QPointF(place.x() + 3, down));
        m_painter.setBrush(m_style.paper);
        if (reading.isDeep) {
            m_painter.drawRect(QRectF(place.x() - 3.5, place.y() - 3.5, 7, 7));
        } else {
            m_painter.drawEllipse(place, 4, 4);
        }
        m_painter.setBrush(Qt::NoBrush);
        const QString depth = tr("%1 m").arg(QLocale().toString(reading.depth, 'g', 3));
        const QRectF box(place.x() + 8, place.y() - m_text.height() / 2, m_text.horizontalAdvance(depth),
                         m_text.height());
        m_painter.setPen(ink);
        m_painter.drawText(box, Qt::AlignLeft | Qt::AlignVCenter, depth);
        m_taken.push_back(box.adjusted(-14, 0, 0, 0));
    }

    /// How much a box would hide: other boxes weigh most, then curves under it.
    [[nodiscard]] double cost(const QRectF& box, double distance) const {
        double sum = distance / 40.0;
        const QRectF inside = m_area.adjusted(2, 2, -2, -2);
        sum += inside.contains(box) ? 0.0 : 50.0;
        for (const QRectF& taken : m_taken) {
            const QRectF both = taken.intersected(box);
            sum += both.isEmpty() ? 0.0 : 20.0 + both.width() * both.height() / 20.0;
        }
        for (const NightLine& line : m_scene.lines) {
            const double weight = line.isGhost ? 0.1 : 1.0;
            for (std::size_t i = 0; i + 1 < line.hour.size(); ++i) {
                const QPointF a = at(line.hour[i], line.oxygen[i]),
                              b = at(line.hour[i + 1], line.oxygen[i + 1]);
                for (int part = 0; part < 6; ++part) {
                    sum += box.contains(a + (b - a) * (part / 6.0)) ? weight : 0.0;
                }
            }
            if (!line.isGhost || line.isLowSaid) {
                constexpr double kRadius = 6.0;
                const bool hides =
                    box.adjusted(-kRadius, -kRadius, kRadius, kRadius).contains(at(line.lowHour, line.low));
                sum += hides ? (line.isLowSaid ? 30.0 : 4.0) : 0.0;
            }
        }
        return sum;
    }

    /// A thin line from a label to a mark that is not right beside it.
    void lead(const QRectF& box, const QPointF& mark, const QColor& ink) {
        const QPointF nearest(std::clamp(mark.x(), box.left(), box.right()),
                              std::clamp(mark.y(), box.top(), box.bottom()));
        const QPointF way = nearest - mark;
        const double length = std::hypot(way.x(), way.y());
        if (length > 14.0) {
            m_painter.setPen(QPen(ink, 1));
            m_painter.drawLine(mark + way * (5.0 / length), nearest);
        }
    }

    void sayLow(const NightLine& line) {
        QFont font = m_style.font;
        font.setBold(true);
        font.setPointSizeF(font.pointSizeF() * 1.12);
        const QFontMetricsF metrics(font);
        const QString text = tr("%1, %2 mg/L").arg(clockText(line.lowTime), oxygenText(line.low));
        const QSizeF size(metrics.horizontalAdvance(text) + 10, metrics.height() + 2);
        const QPointF mark = at(line.lowHour, line.low);
        QRectF best;
        double least = 1e9;
        for (const double dy : {12.0, -12.0, 26.0, -26.0, 44.0, -44.0, 66.0, -66.0}) {
            for (const double share : {0.5, 0.0, 1.0, 0.25, 0.75}) {
                const double y = dy > 0 ? mark.y() + dy : mark.y() + dy - size.height();
                const QRectF box(QPointF(mark.x() - share * size.width(), y), size);
                const double price = cost(box, std::hypot(dy, (share - 0.5) * size.width()));
                if (price < least) {
                    least = price;
                    best = box;
                }
            }
        }
        m_taken.push_back(best);
        lead(best, mark, m_style.textColour(line.look));
        m_painter.setPen(Qt::NoPen);
        m_painter.setBrush(m_style.paper);
        m_painter.drawRoundedRect(best, 3, 3);
        m_painter.setBrush(Qt::NoBrush);
        m_painter.setFont(font);
        m_painter.setPen(m_style.textColour(line.look));
        m_painter.drawText(best, Qt::AlignCenter, text);
        m_painter.setFont(m_style.font);
    }

    QCPPainter& m_painter;
    const QCPAxisRect& m_rect;
    QRectF m_area;
    const NightScene& m_scene;
    const PlotStyle& m_style;
    QFontMetricsF m_text;
    std::vector<QRectF> m_taken;
};

}  // namespace

void paintNightLabels(QCPPainter& painter, const QCPAxisRect& rect, const NightScene& scene,
                      const PlotStyle& style) {
    Labels(painter, rect, scene, style).paint();
}

double nightNameWidth(const NightScene& scene, const PlotStyle& style) {
    QFont bold = style.font;
    bold.setBold(true);
    const QFontMetricsF metrics(bold);
    double width = 0.0;
    for (const NightLine& line : scene.lines) {
        if (line.isLabelled) {
            width = std::max(width, metrics.horizontalAdvance(line.name));
        }
    }
    return std::min(width, kWidestName * metrics.height()) + kToNames + 6;
}

}  // namespace widgets
