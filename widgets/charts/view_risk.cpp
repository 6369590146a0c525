// What a ramp adds to the risk, against the days it takes: too fast and too slow both have an edge.

#include "engine/base/text.h"
#include "engine/ensemble/chances.h"
#include "engine/output/results_io.h"
#include "widgets/charts/chart_parts.h"
#include "widgets/charts/label_layout.h"
#include "widgets/charts/picture.h"
#include "widgets/document/wording.h"

#include <QCoreApplication>
#include <qcustomplot.h>

#include <algorithm>
#include <cmath>

namespace widgets {
namespace {

constexpr double kLeft = 60.0, kRight = 200.0, kTop = 30.0, kBottom = 46.0;

QString tr(const char* text) {
    return QCoreApplication::translate("RiskView", text);
}

QString percent(double share) {
    return QString::number(std::lround(100.0 * share));
}

struct Point {
    std::size_t run = 0;
    double days = 0.0;
    bool isNever = false;  ///< The air never becomes continuous within the run
    engine::Chances chances;
};

/// Which line the chances are about. Where nearly all ponds go below the stress line by themselves, a ramp
/// can add nothing there, and only the lethal line tells ramps apart.
enum class Line { Stress, Lethal };
constexpr double kNearlyAll = 0.9;

Line lineOf(const Outcome& outcome) {
    const engine::RampEnsemble* nothing = engine::membersOf(outcome.comparison, 0);
    return nothing != nullptr && nothing->chanceBelowStress > kNearlyAll ? Line::Lethal : Line::Stress;
}

double nothingBelow(const Outcome& outcome, Line line) {
    const engine::RampEnsemble& nothing = *engine::membersOf(outcome.comparison, 0);
    return line == Line::Stress ? nothing.chanceBelowStress : nothing.chanceBelowLethal;
}

double below(const Point& point, Line line) {
    return line == Line::Stress ? point.chances.belowStress : point.chances.belowLethal;
}

double added(const Point& point, Line line) {
    return (line == Line::Stress ? point.chances.added : point.chances.addedLethal).value_or(0.0);
}

QString nameOf(Line line) {
    return line == Line::Stress ? tr("stress line") : tr("lethal line");
}

std::vector<Point> pointsOf(const Outcome& outcome) {
    std::vector<Point> points;
    const auto& runs = outcome.comparison.runs;
    for (std::size_t i = 1; i < runs.size(); ++i) {
        if (isDrawn(runs[i]) && engine::membersOf(outcome.comparison, i) != nullptr) {
            const double days = runs[i].daysToContinuous.value_or(outcome.comparison.days + 1);
            points.push_back(
                {i, days, !runs[i].daysToContinuous, engine::chancesOf(outcome.comparison, runs[i])});
        }
    }
    return points;
}

void paint(QCPPainter& painter, const QRectF& whole, const Outcome& outcome, const std::vector<Point>& points,
           std::size_t selected, const PlotStyle& style) {
    const Line line = lineOf(outcome);
    const QRectF area = whole.adjusted(kLeft, kTop, -kRight, -kBottom);
    const QFontMetricsF metrics(style.font);
    const double last = outcome.comparison.days + 1.5;
    const auto x = [&](double days) { return area.left() + area.width() * (days - 0.5) / last; };
    const auto y = [&](double share) { return area.bottom() - area.height() * share; };
    for (const double share : {0.0, 0.25, 0.5, 0.75, 1.0}) {
        painter.setPen(QPen(style.hairline, 0));
        painter.drawLine(QPointF(area.left(), y(share)), QPointF(area.right(), y(share)));
        painter.setPen(style.ink);
        painter.drawText(QRectF(0, y(share) - metrics.height() / 2, kLeft - 8, metrics.height()),
                         Qt::AlignRight | Qt::AlignVCenter, percent(share));
    }
    const int step = std::max(1, static_cast<int>(std::ceil(last * 26.0 / area.width())));
    for (int day = 1; day <= outcome.comparison.days; day += step) {
        if (x(day) > x(outcome.comparison.days + 1) - 50.0) {
            break;  // room for "later"
        }
        painter.drawText(QRectF(x(day) - 20, area.bottom() + 6, 40, metrics.height()), Qt::AlignCenter,
                         QString::number(day));
    }
    painter.setPen(style.quietInk);
    painter.drawText(QPointF(2, metrics.ascent() + 2), tr("chance to go below the %1, %").arg(nameOf(line)));
    painter.drawText(
        QRectF(area.left(), area.bottom() + 8 + metrics.height(), area.width(), metrics.height()),
        Qt::AlignCenter, tr("first day of air around the clock"));
    if (engine::membersOf(outcome.comparison, 0) != nullptr) {
        const double at = y(nothingBelow(outcome, line));
        painter.setPen(style.linePen(0, false));
        painter.drawLine(QPointF(area.left(), at), QPointF(area.right(), at));
    }
    std::vector<double> wanted;
    for (const Point& point : points) {
        wanted.push_back(y(below(point, line)));
    }
    const auto places = spreadApart(wanted, metrics.height(), area.top(), area.bottom());
    for (std::size_t i = 0; i < points.size(); ++i) {
        const Point& point = points[i];
        const std::size_t look = lookOf(outcome.comparison, point.run);
        const double at = x(point.days);
        // The bar is what the ramp adds, the open circle the whole chance.
        const double top = y(added(point, line));
        painter.fillRect(QRectF(at - 5, top, 10, area.bottom() - top),
                         mixed(style.paper, style.lineColour(look), 0.6));
        painter.setPen(QPen(style.lineColour(look), point.run == selected ? 3.0 : 1.8));
        painter.setBrush(style.paper);
        painter.drawEllipse(QPointF(at, wanted[i]), 5.5, 5.5);
        painter.setBrush(Qt::NoBrush);
        painter.setPen(QPen(style.textColour(look), 0.8));
        painter.drawLine(QPointF(at + 7, wanted[i]), QPointF(area.right() + 6, places[i]));
        QFont font = style.font;
        font.setBold(point.run == selected);
        painter.setFont(font);
        painter.drawText(
            QRectF(area.right() + 9, places[i] - metrics.height() / 2, kRight - 12, metrics.height()),
            Qt::AlignLeft | Qt::AlignVCenter,
            QFontMetricsF(font).elidedText(rampText(outcome.comparison.runs[point.run].name, point.run),
                                           Qt::ElideRight, kRight - 14));
        painter.setFont(style.font);
    }
    painter.setPen(style.ink);
    painter.drawText(QRectF(x(outcome.comparison.days + 1) - 40, area.bottom() + 6, 80, metrics.height()),
                     Qt::AlignCenter, tr("later"));
}

}  // namespace

Picture riskPicture(const OutcomePtr& outcome, const Selection& selection) {
    const auto points = pointsOf(*outcome);
    Picture picture;
    if (points.empty()) {
        picture.headline = outcome->comparison.runs.size() < 2 ? tr("There is no ramp in this pond yet.")
                                                               : tr("Ponds like this one are being drawn.");
        picture.words = picture.headline;
        picture.draw = [](QCustomPlot& plot, const PlotStyle& style) { prepare(plot, style); };
        picture.csv = [] {
            return std::string(
                "ramp,days_to_continuous,chance_below_stress,chance_below_lethal,chance_added,chance_added_"
                "lethal\r\n");
        };
        return picture;
    }
    const Line line = lineOf(*outcome);
    const auto [best, most] = std::minmax_element(
        points.begin(), points.end(),
        [line](const Point& a, const Point& b) { return added(a, line) < added(b, line); });
    const QString name = rampText(outcome->comparison.runs[best->run].name, best->run);
    const bool hasNothing = engine::membersOf(outcome->comparison, 0) != nullptr;
    const QString alone = hasNothing ? percent(nothingBelow(*outcome, line)) : tr("?");
    const QString least = percent(added(*best, line));
    const bool isSame = percent(added(*most, line)) == least;
    picture.headline =
        (line == Line::Stress
             ? tr("Of a hundred ponds like this one, %1 go below the stress line by themselves;").arg(alone)
             : tr("Nearly all ponds like this one go below the stress line by themselves. Of a hundred, %1 "
                  "go "
                  "below the lethal line by themselves;")
                   .arg(alone)) +
        QLatin1Char(' ') +
        (isSame ? tr("every ramp adds %1.").arg(least)
                : tr("%1 adds the fewest, %2; %3 the most, %4.")
                      .arg(name, least, rampText(outcome->comparison.runs[most->run].name, most->run),
                           percent(added(*most, line))));
    picture.detail =
        tr("Bars: ponds below the line with the ramp that are not without, which is what a ramp can control. "
           "Circles: all below the line. Long dashes: do nothing.");
    QStringList words{picture.headline};
    for (const Point& point : points) {
        const auto& run = outcome->comparison.runs[point.run];
        const QString when =
            point.isNever ? tr("never around the clock") : tr("around the clock from day %1").arg(point.days);
        words << tr("%1: %2; below the %3 %4 %, added %5 %.")
                     .arg(rampText(run.name, point.run), when, nameOf(line), percent(below(point, line)),
                          percent(added(point, line)));
    }
    picture.words = words.join(QLatin1Char(' '));
    picture.draw = [outcome, points, selected = selection.ramp()](QCustomPlot& plot, const PlotStyle& style) {
        addCanvas(plot, style, [=](QCPPainter& painter, const QRectF& whole) {
            paint(painter, whole, *outcome, points, selected, style);
        });
    };
    picture.csv = [outcome, points] {
        std::string csv =
            "ramp,days_to_continuous,chance_below_stress,chance_below_lethal,chance_added,chance_added_"
            "lethal\r\n";
        for (const Point& point : points) {
            const auto& run = outcome->comparison.runs[point.run];
            csv += engine::csvField(run.name) + ',' + (point.isNever ? "" : engine::shortest(point.days)) +
                   ',' + engine::shortest(point.chances.belowStress) + ',' +
                   engine::shortest(point.chances.belowLethal) + ',' +
                   (point.chances.added ? engine::shortest(*point.chances.added) : "") + ',' +
                   (point.chances.addedLethal ? engine::shortest(*point.chances.addedLethal) : "") + "\r\n";
        }
        return csv;
    };
    return picture;
}

}  // namespace widgets
