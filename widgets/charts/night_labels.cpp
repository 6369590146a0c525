#include "widgets/charts/night_labels.h"

#include "engine/base/units.h"
#include "widgets/charts/label_layout.h"
#include "widgets/charts/night_scene.h"
#include "widgets/controls/plot_style.h"
#include "widgets/document/wording.h"

#include <QCoreApplication>
#include <QFontMetricsF>
#include <qcustomplot.h>

#include <algorithm>
#include <cmath>
#include <map>

namespace widgets {
namespace {

constexpr double kWidestName = 14.5;      // [heights of a line]; longer names are cut with dots
constexpr double kToNames = 20.0;         // [px] from the end of a line to its name
constexpr std::size_t kFewReadings = 16;  // more are a logger's, whose error bars would hide the curves

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
        nameBands();
        nameLevels();
        readings();
        lows();
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

    /// The bands' names stand at the left, whatever the night, so that they keep still while nights are
    /// played.
    void nameBands() {
        const auto yOf = [&](double oxygen) { return std::max(at(0, oxygen).y(), m_area.top()); };
        nameBand(tr("fish under stress, below %1").arg(oxygenText(m_scene.stress)), yOf(m_scene.stress),
                 yOf(m_scene.lethal), m_style.stressInk);
        nameBand(tr("lethal if it lasts, below %1").arg(oxygenText(m_scene.lethal)), yOf(m_scene.lethal),
                 m_area.bottom(), m_style.lethalInk);
    }

    /// In a band that is lower than a line of text the name stands on its floor.
    void nameBand(const QString& text, double top, double bottom, const QColor& ink) {
        const QSizeF size(m_text.horizontalAdvance(text) + 4, m_text.height());
        const double place = bottom - top >= size.height() + 2 ? top + 1 : bottom - size.height();
        const QRectF box(QPointF(m_area.left() + 8, place), size);
        m_taken.push_back(box);
        m_painter.setPen(ink);
        m_painter.drawText(box, Qt::AlignLeft | Qt::AlignVCenter, text);
    }

    /// Criteria are named where that hides the least.
    void nameLevels() {
        m_painter.setFont(m_style.small);
        const QFontMetricsF metrics(m_style.small);
        for (const NamedLevel& level : m_scene.criteria) {
            if (level.oxygen > m_scene.top) {
                continue;
            }
            const double y = std::max(at(0, level.oxygen).y(), m_area.top());
            const QString text = tr("%1 %2").arg(level.name, oxygenText(level.oxygen));
            const QSizeF size(metrics.horizontalAdvance(text), metrics.height());
            const QRectF box = leastHiding(size, {y - size.height(), y + 1});
            m_taken.push_back(box);
            m_painter.setPen(m_style.quietInk);
            m_painter.drawText(box, Qt::AlignCenter, text);
        }
        m_painter.setFont(m_style.font);
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

    /// Small circles; where they are few, with what the meter may be off by; and one name a depth.
    void readings() {
        std::vector<const NightReading*> shown;
        std::map<double, const NightReading*> lastOf;
        for (const NightReading& reading : m_scene.readings) {
            if (isInside(at(reading.hour, reading.oxygen))) {
                shown.push_back(&reading);
                const NightReading*& last = lastOf[reading.depth];
                last = last == nullptr || reading.hour > last->hour ? &reading : last;
            }
        }
        const bool areFew = shown.size() <= kFewReadings;
        for (const NightReading* reading : shown) {
            mark(*reading, areFew);
        }
        std::vector<double> wanted;
        for (const auto& [depth, last] : lastOf) {
            wanted.push_back(at(last->hour, last->oxygen).y());
        }
        const double half = m_text.height() / 2;
        const auto places = spreadApart(wanted, m_text.height(), m_area.top() + half, m_area.bottom() - half);
        std::size_t i = 0;
        for (const auto& [depth, last] : lastOf) {
            const double width = m_text.horizontalAdvance(last->depthName);
            const double x = at(last->hour, 0).x();
            const double left = x + 8 + width < m_area.right() ? x + 8 : x - 8 - width;
            const QRectF box(left, places[i++] - half, width, m_text.height());
            m_painter.setPen(last->isDeep ? m_style.quietInk : m_style.ink);
            m_painter.drawText(box, Qt::AlignLeft | Qt::AlignVCenter, last->depthName);
            m_taken.push_back(box);
        }
    }

    void mark(const NightReading& reading, bool hasError) {
        const QPointF place = at(reading.hour, reading.oxygen);
        const QColor ink = reading.isDeep ? m_style.quietInk : m_style.ink;
        m_painter.setPen(QPen(ink, 1.2));
        if (hasError) {
            const double up = std::max(at(0, reading.oxygen + reading.error).y(), m_area.top());
            const double down = std::min(at(0, reading.oxygen - reading.error).y(), m_area.bottom());
            m_painter.drawLine(QPointF(place.x(), up), QPointF(place.x(), down));
        }
        const double radius = hasError ? 3.0 : 1.8;
        m_painter.setBrush(m_style.paper);
        if (reading.isDeep) {
            m_painter.drawRect(QRectF(place.x() - radius, place.y() - radius, 2 * radius, 2 * radius));
        } else {
            m_painter.drawEllipse(place, radius, radius);
        }
        m_painter.setBrush(Qt::NoBrush);
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

    /// The band that an oxygen value lies in, in pixels downwards.
    [[nodiscard]] std::pair<double, double> bandAt(double oxygen) const {
        const double stress = at(0, m_scene.stress).y(), lethal = at(0, m_scene.lethal).y();
        return oxygen < m_scene.lethal   ? std::pair(lethal, m_area.bottom())
               : oxygen < m_scene.stress ? std::pair(stress, lethal)
                                         : std::pair(m_area.top(), stress);
    }

    /// Marks at all lows; clock and value beside those that matter.
    void lows() {
        QFont font = m_style.font;
        font.setBold(true);
        font.setPointSizeF(font.pointSizeF() * 1.12);
        const QFontMetricsF metrics(font);
        std::vector<const NightLine*> said;
        std::vector<MarkLabel> labels;
        std::vector<QPointF> others;
        for (const NightLine& line : m_scene.lines) {
            const QPointF place = at(line.lowHour, line.low);
            if ((line.isGhost && !line.isLowSaid) || !isInside(place)) {
                continue;
            }
            lowMark(line);
            if (!line.isLowSaid) {
                others.push_back(place);
                continue;
            }
            const auto [top, bottom] = bandAt(line.low);
            const QSizeF size(metrics.horizontalAdvance(lowText(line)) + 8, metrics.height());
            said.push_back(&line);
            labels.push_back({place, size, top, bottom});
        }
        const auto boxes = placeBeside(labels, others, m_taken, m_area.adjusted(2, 2, -2, -2));
        for (std::size_t i = 0; i < said.size(); ++i) {
            const QColor ink = m_style.textColour(said[i]->look);
            lead(boxes[i], labels[i].mark, ink);
            m_painter.setPen(Qt::NoPen);
            m_painter.setBrush(m_style.paper);
            m_painter.drawRoundedRect(boxes[i], 3, 3);
            m_painter.setBrush(Qt::NoBrush);
            m_painter.setFont(font);
            m_painter.setPen(ink);
            m_painter.drawText(boxes[i], Qt::AlignCenter, lowText(*said[i]));
            m_painter.setFont(m_style.font);
        }
    }

    [[nodiscard]] static QString lowText(const NightLine& line) {
        return tr("%1   %2").arg(clockText(line.lowTime), oxygenText(line.low));
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
