#include "widgets/charts/day_axis.h"

#include "engine/base/units.h"
#include "engine/run/day_air.h"
#include "widgets/document/pond_units.h"
#include "widgets/document/wording.h"

#include <QCoreApplication>
#include <QLocale>
#include <qcustomplot.h>

#include <algorithm>
#include <cmath>

namespace widgets {
namespace {

QString tr(const char* text) {
    return QCoreApplication::translate("DayAxis", text);
}

/// Three rows of the weather: air, cloud, wind; a number a day where it fits.
void paintWeather(QCPPainter& painter, const QCPAxisRect& of, const Outcome& outcome,
                  const PlotStyle& style) {
    const QCPAxis* across = of.axis(QCPAxis::atBottom);
    const QRectF area = of.rect();
    const double row = area.height() / 3.0;
    painter.setFont(style.small);
    const QFontMetricsF metrics(style.small);
    // Where a day is narrower than its numbers, every so many days have theirs.
    const double one = std::max(across->coordToPixel(1.0) - across->coordToPixel(0.0), 0.1);
    const int step = std::max(
        1, static_cast<int>(std::ceil((metrics.horizontalAdvance(QStringLiteral("88.8")) + 4) / one)));
    const auto cell = [&](int day, const QRectF& box, const QString& text, const QColor& ink) {
        if ((day - 1) % step == 0 && box.width() > 0.6 * one) {
            const double more = std::max(0.0, metrics.horizontalAdvance(text) + 2 - box.width()) / 2;
            painter.setPen(ink);
            painter.drawText(box.adjusted(-more, 0, more, 0), Qt::AlignCenter, text);
        }
    };
    const engine::UnitSystem system = unitsOf(outcome.comparison.model.pond);
    const ShownUnit degrees = shownUnitOf("degC", system), speed = shownUnitOf("m/s", system);
    for (const auto& [number, day] : engine::daysOfAir(outcome.backdrop)) {
        const double from = std::max(area.left(), across->coordToPixel(number - 1.0));
        const double to = std::min(area.right(), across->coordToPixel(number));
        if (to - from < 1.0) {
            continue;
        }
        const QRectF air(from, area.top(), to - from, row), cloud(from, area.top() + row, to - from, row),
            wind(from, area.top() + 2 * row, to - from, row);
        const QColor ink = number > outcome.backdrop.lastWeatherDay ? style.quietInk : style.ink;
        const QString high = QString::number(std::lround(degrees.toShown(day.highest))),
                      low = QString::number(std::lround(degrees.toShown(day.lowest)));
        const QString both = low + QStringLiteral("\u2013") + high;
        cell(number, air, metrics.horizontalAdvance(both) + 2 <= air.width() ? both : high, ink);
        const QColor grey = mixed(style.paper, style.quietInk, 0.55 * day.cloud);
        painter.fillRect(cloud.adjusted(0.5, 1, -0.5, -1), grey);
        cell(number, cloud, QString::number(std::lround(100.0 * day.cloud)), style.ink);
        cell(number, wind, roundedText(speed.toShown(day.wind)), ink);
    }
    painter.setPen(style.quietInk);
    const QStringList names{tr("air, %1").arg(unitText("degC", system)), tr("cloud, %"),
                            tr("wind, %1").arg(unitText("m/s", system))};
    for (int i = 0; i < 3; ++i) {
        painter.drawText(QRectF(2, area.top() + i * row, area.left() - 4, row),
                         Qt::AlignLeft | Qt::AlignVCenter, names[i]);
    }
    painter.setFont(style.font);
}

}  // namespace

Selection::Span shownDays(const Outcome& outcome, const Selection& selection) {
    const Selection::Span whole{outcome.comparison.model.startTime / engine::kDay,
                                outcome.comparison.days + 0.5};
    if (!selection.span()) {
        return whole;
    }
    return {std::max(whole.from, selection.span()->from), std::min(whole.to, selection.span()->to)};
}

std::vector<Shade> nightShades(const Outcome& outcome) {
    std::vector<Shade> shades;
    for (const engine::NightSky& sky : outcome.backdrop.nights) {
        if (sky.sunset && sky.sunrise) {
            shades.push_back({*sky.sunset / engine::kDay, *sky.sunrise / engine::kDay, 2});
        }
    }
    return shades;
}

std::vector<std::pair<double, QString>> dayLabels(const Selection::Span& span, double width,
                                                  const QFontMetricsF& metrics) {
    std::vector<std::pair<double, QString>> labels;
    if (span.to - span.from < 2.0) {
        constexpr double kQuarter = 0.25;  // of a day
        for (double at = std::ceil(span.from / kQuarter) * kQuarter; at <= span.to; at += kQuarter) {
            labels.emplace_back(at, clockText(at * engine::kDay));
        }
        return labels;
    }
    const double one = metrics.horizontalAdvance(tr("day %1").arg(88)) + 10;
    const int step =
        std::max(1, static_cast<int>(std::ceil(one * (span.to - span.from) / std::max(width, 1.0))));
    for (int day = 1; day - 0.5 <= span.to; day += step) {
        if (day - 0.5 >= span.from) {
            labels.emplace_back(day - 0.5, tr("day %1").arg(day));
        }
    }
    return labels;
}

QCPAxisRect* addRect(QCustomPlot& plot, int row, const QMargins& margins) {
    auto* rect = new QCPAxisRect(&plot, false);  // owned by the layout
    plot.plotLayout()->addElement(row, 0, rect);
    rect->setAutoMargins(QCP::msNone);
    rect->setMargins(margins);
    return rect;
}

int weatherStripHeight(const QFontMetricsF& metrics) {
    const int text = static_cast<int>(std::ceil(metrics.height()));
    return 3 * (text - 1) + 2 + text + 8;
}

void addWeatherStrip(QCustomPlot& plot, int row, const OutcomePtr& outcome, const Selection::Span& span,
                     const PlotStyle& style, int right) {
    const QFontMetricsF metrics(style.font);
    const int text = static_cast<int>(std::ceil(metrics.height()));
    QCPAxisRect* weather = addRect(plot, row, QMargins(kDaysLeft, 2, right, text + 8));
    applyStyle(*weather, style, span.from, span.to, 1.0,
               dayLabels(span, plot.viewport().width() - kDaysLeft - right, metrics));
    weather->axis(QCPAxis::atLeft)->setTickLabels(false);
    weather->setMinimumSize(10, 3 * (text - 1));
    weather->setMaximumSize(QWIDGETSIZE_MAX, weatherStripHeight(metrics));
    addPainted(*weather, style, [outcome, style](QCPPainter& painter, const QCPAxisRect& of) {
        paintWeather(painter, of, *outcome, style);
    });
}

QString momentText(double time) {
    return tr("day %1, %2").arg(std::floor(time / engine::kDay) + 1).arg(clockText(time));
}

}  // namespace widgets
