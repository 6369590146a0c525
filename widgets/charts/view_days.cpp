// The nights of one ramp as small pictures side by side, do-nothing behind it in each.

#include "engine/base/units.h"
#include "engine/output/picture_tables.h"
#include "engine/run/nights.h"
#include "engine/water/oxygen_state.h"
#include "widgets/charts/chart_parts.h"
#include "widgets/charts/picture.h"
#include "widgets/document/to_qstring.h"
#include "widgets/document/wording.h"

#include <QCoreApplication>
#include <qcustomplot.h>

#include <algorithm>
#include <cmath>

namespace widgets {
namespace {

constexpr double kGap = 8.0, kFine = 0.8;  // [px]

QString tr(const char* text) {
    return QCoreApplication::translate("DaysView", text);
}

/// Where the small pictures stand: as many columns as make them about 1.5 times as wide as high.
struct Sheet {
    int columns = 1, rows = 1;
    QRectF whole;
    double head = 0.0;  ///< Of the words over each

    Sheet(const QRectF& area, int nights, double textHeight)
        : whole(area.adjusted(8, 4, -8, -4)), head(textHeight) {
        constexpr double kShape = 1.5;
        double least = 1e9;
        for (int across = 1; across <= nights; ++across) {
            const int down = (nights + across - 1) / across;
            const double shape = (whole.width() / across) / (whole.height() / down);
            const double miss = std::abs(std::log(shape / kShape));
            if (miss < least) {
                least = miss;
                columns = across;
                rows = down;
            }
        }
    }
    [[nodiscard]] QRectF cell(int night) const {
        const double width = whole.width() / columns, height = whole.height() / rows;
        return {whole.left() + (night - 1) % columns * width, whole.top() + (night - 1) / columns * height,
                width - kGap, height - kGap};
    }
    [[nodiscard]] QRectF picture(int night) const { return cell(night).adjusted(0, head + 2, 0, 0); }
    [[nodiscard]] int nightAt(const QPointF& place, int nights) const {
        for (int night = 1; night <= nights; ++night) {
            if (cell(night).contains(place)) {
                return night;
            }
        }
        return 0;
    }
};

struct Mapping {
    QRectF area;
    double noon = 0.0, top = 10.0;
    [[nodiscard]] QPointF at(double time, double oxygen) const {
        return {area.left() + area.width() * (time - noon) / engine::kDay,
                area.bottom() - area.height() * oxygen / top};
    }
};

void paintLine(QCPPainter& painter, const engine::RampRun& run, const Mapping& map, const QPen& pen) {
    std::vector<QPointF> line;
    for (const engine::HourRow& hour : run.hours) {
        if (hour.time >= map.noon - 1.0 && hour.time <= map.noon + engine::kDay + 1.0) {
            line.push_back(map.at(hour.time, hour.fishWater));
        }
    }
    painter.setPen(pen);
    for (const auto& piece : cut(line, map.area)) {
        painter.drawPolyline(piece.data(), static_cast<int>(piece.size()));
    }
}

void paintNight(QCPPainter& painter, const Outcome& outcome, std::size_t run, int night, const Sheet& sheet,
                double top, bool isShown, const PlotStyle& style) {
    const engine::OxygenThresholds& thresholds = outcome.comparison.model.parameters.thresholds;
    const Mapping map{sheet.picture(night), engine::noonOf(night), top};
    const engine::NightSky& sky = outcome.backdrop.nights[static_cast<std::size_t>(night - 1)];
    painter.fillRect(map.area, mixed(style.paper, style.hairline, 0.12));
    const auto zone = [&](double from, double to, const QColor& under) {
        painter.fillRect(QRectF(QPointF(from, map.area.top()), QPointF(to, map.area.bottom())), under);
        const double stress = std::max(map.at(0, thresholds.stress).y(), map.area.top());
        const double lethal = std::max(map.at(0, thresholds.lethal).y(), map.area.top());
        painter.fillRect(QRectF(QPointF(from, stress), QPointF(to, map.area.bottom())),
                         mixed(under, style.stress, kBandShare));
        painter.fillRect(QRectF(QPointF(from, lethal), QPointF(to, map.area.bottom())),
                         mixed(under, style.lethal, kBandShare));
    };
    zone(map.area.left(), map.area.right(), style.paper);
    if (sky.sunset && sky.sunrise) {
        zone(std::max(map.at(*sky.sunset, 0).x(), map.area.left()),
             std::min(map.at(*sky.sunrise, 0).x(), map.area.right()), style.night[2]);
    }
    const double lethal = std::max(map.at(0, thresholds.lethal).y(), map.area.top());
    hatch(painter, QRectF(QPointF(map.area.left(), lethal), map.area.bottomRight()), QPen(style.hatch, kFine),
          7.0);
    for (const auto& [level, ink] :
         {std::pair(thresholds.stress, style.stressInk), std::pair(thresholds.lethal, style.lethalInk)}) {
        const double y = std::max(map.at(0, level).y(), map.area.top());
        painter.setPen(QPen(ink, kFine));
        painter.drawLine(QPointF(map.area.left(), y), QPointF(map.area.right(), y));
    }
    if (run != 0 && isDrawn(outcome.comparison.runs[0])) {
        QPen pen = style.linePen(0, false);
        pen.setWidthF(1.2);
        paintLine(painter, outcome.comparison.runs[0], map, pen);
    }
    QPen pen(style.lineColour(lookOf(outcome.comparison, run)), 2.2);
    paintLine(painter, outcome.comparison.runs[run], map, pen);
    const engine::DayRow& row = engine::nightRow(outcome.comparison.runs[run], night);
    const QPointF low = map.at(row.lowestTime, row.lowest);
    painter.setPen(QPen(pen.color(), 1.6));
    painter.setBrush(style.paper);
    if (map.area.contains(low)) {
        painter.drawEllipse(low, 2.8, 2.8);
    }
    painter.setBrush(Qt::NoBrush);
    painter.setPen(isShown ? QPen(style.ink, 1.6) : QPen(style.hairline, 0));
    painter.drawRect(map.area);

    // The words over it: night, minutes of air, and the low at the right.
    const QRectF head(sheet.cell(night).topLeft(), QSizeF(map.area.width(), sheet.head));
    QFont font = style.font;
    font.setBold(isShown);
    painter.setFont(font);
    const QFontMetricsF metrics(font);
    const bool isBelow = engine::stateOf(row.lowest, thresholds) != engine::OxygenState::Enough;
    const QString value = oxygenText(row.lowest);
    painter.setPen(isBelow ? style.lethalInk : style.ink);
    painter.drawText(head, Qt::AlignRight | Qt::AlignVCenter, value);
    QString text =
        run == 0 ? QString::number(night) : tr("%1: %2 min").arg(night).arg(std::lround(row.runMinutes));
    if (metrics.horizontalAdvance(text + value) + 8 > head.width()) {
        text = QString::number(night);
    }
    painter.setPen(style.quietInk);
    painter.drawText(head, Qt::AlignLeft | Qt::AlignVCenter, text);
}

QString nightText(const engine::DayRow& row) {
    return tr("Night %1: %2 min of air, low %3 mg/L at %4.")
        .arg(row.day)
        .arg(std::lround(row.runMinutes))
        .arg(oxygenText(row.lowest), clockText(row.lowestTime));
}

}  // namespace

Picture daysPicture(const OutcomePtr& outcome, const Selection& selection) {
    const std::size_t run = shownRun(*outcome, selection);
    const engine::RampRun& shown = outcome->comparison.runs[run];
    const int nights = outcome->comparison.days;
    const double stress = outcome->comparison.model.parameters.thresholds.stress;
    Picture picture;
    picture.size = QSize(600, 430);
    picture.csv = [outcome, run] { return engine::nightsBesideNothingCsv(outcome->comparison, run); };
    if (!isDrawn(shown)) {
        picture.headline = widgets::toQString(shown.message);
        picture.words = picture.headline;
        picture.draw = [](QCustomPlot& plot, const PlotStyle& style) { prepare(plot, style); };
        return picture;
    }
    const engine::DayRow& worst = shown.worst();
    picture.headline =
        tr("%1: %2 of %3 nights go below the stress line; the lowest is night %4 with %5 mg/L at %6.")
            .arg(rampText(shown.name, run))
            .arg(engine::nightsBelow(shown, stress))
            .arg(nights)
            .arg(worst.day)
            .arg(oxygenText(worst.lowest), clockText(worst.lowestTime));
    picture.detail =
        tr("Each picture is one night from noon to noon: the ramp in colour, do nothing in dashes; at its "
           "head the minutes of air and the low in mg/L.");
    QStringList words{picture.headline};
    for (const engine::DayRow& row : shown.days) {
        words << nightText(row);
    }
    picture.words = words.join(QLatin1Char(' '));
    const double top = std::max(6.0, std::ceil(highestFishWater(outcome->comparison, stress + 1.0)));
    picture.draw = [outcome, run, nights, top, night = selection.night()](QCustomPlot& plot,
                                                                          const PlotStyle& style) {
        addCanvas(plot, style, [=](QCPPainter& painter, const QRectF& whole) {
            const Sheet sheet(whole, nights, QFontMetricsF(style.font).height());
            for (int each = 1; each <= nights; ++each) {
                paintNight(painter, *outcome, run, each, sheet, top, each == night, style);
            }
            painter.setFont(style.font);
        });
    };
    constexpr double kHead = 18.0;  // nearly the height of a line; only clicks go by it
    picture.readOut = [outcome, run, nights](const QRectF& whole, const QPointF& place) {
        const int night = Sheet(whole, nights, kHead).nightAt(place, nights);
        return night == 0 ? QString() : nightText(engine::nightRow(outcome->comparison.runs[run], night));
    };
    picture.click = [nights](const QRectF& whole, const QPointF& place, Selection& to) {
        if (const int night = Sheet(whole, nights, kHead).nightAt(place, nights); night > 0) {
            to.setNight(night);
        }
    };
    return picture;
}

}  // namespace widgets
