// What is toxic beside the lack of oxygen, where the fish are: un-ionised ammonia and hydrogen sulfide.

#include "engine/base/units.h"
#include "engine/output/picture_tables.h"
#include "engine/run/depths.h"
#include "engine/run/shares.h"
#include "widgets/charts/day_axis.h"
#include "widgets/charts/picture.h"
#include "widgets/document/to_qstring.h"
#include "widgets/document/wording.h"

#include <QCoreApplication>
#include <QLocale>
#include <qcustomplot.h>

#include <algorithm>
#include <cmath>

namespace widgets {
namespace {

constexpr double kMicrograms = engine::kMicrogramsPerMilligram;

QString tr(const char* text) {
    return QCoreApplication::translate("GasesView", text);
}

/// One of the two gases: its hours and its peak.
struct Gas {
    double engine::HourRow::*hours;
    double engine::ToxicPeaks::*peak;
};
constexpr Gas kAmmonia{&engine::HourRow::unionisedAmmonia, &engine::ToxicPeaks::ammonia_ugPerL};
constexpr Gas kSulfide{&engine::HourRow::hydrogenSulfide, &engine::ToxicPeaks::sulfide_ugPerL};

double niceTop(double value) {
    const double power = std::pow(10.0, std::floor(std::log10(std::max(value, 1e-3))));
    for (const double factor : {1.0, 2.0, 5.0, 10.0}) {
        if (factor * power >= value) {
            return factor * power;
        }
    }
    return 10.0 * power;
}

void addGas(QCustomPlot& plot, int row, const Outcome& outcome, const Selection& selection,
            const Selection::Span& span, const Gas& gas, const QString& title, const PlotStyle& style) {
    const QFontMetricsF metrics(style.font);
    double top = 1e-3;
    const auto order = drawingOrder(outcome.comparison, selection);
    for (const std::size_t i : order) {
        top = std::max(top, engine::toxicPeaks(outcome.comparison.runs[i]).*gas.peak);
    }
    top = niceTop(1.05 * top);
    QCPAxisRect* rect =
        addRect(plot, row, QMargins(kDaysLeft, static_cast<int>(1.6 * metrics.height()) + 8, kDaysRight, 4));
    applyStyle(*rect, style, span.from, span.to, top, {});
    rect->axis(QCPAxis::atBottom)->setTickLabels(false);
    const QSharedPointer<QCPAxisTickerFixed> steps(new QCPAxisTickerFixed);
    steps->setTickStep(top / 2);
    rect->axis(QCPAxis::atLeft)->setTicker(steps);
    rect->axis(QCPAxis::atLeft)->setNumberFormat(QStringLiteral("g"));
    rect->axis(QCPAxis::atLeft)->setNumberPrecision(3);
    Ground ground;
    ground.shades = nightShades(outcome);
    ground.rules = {0.0, top / 2, top};
    addGround(*rect, style, std::move(ground));
    for (const std::size_t i : order) {
        std::vector<double> day, value;
        for (const engine::HourRow& hour : outcome.comparison.runs[i].hours) {
            day.push_back(hour.time / engine::kDay);
            value.push_back(hour.*gas.hours * kMicrograms);
        }
        QPen pen = style.linePen(lookOf(outcome.comparison, i), false);
        pen.setWidthF(i == selection.ramp() ? 2.2 : 1.3);
        addCurve(*rect, day, value, pen);
    }
    addPainted(*rect, style, [style, title](QCPPainter& painter, const QCPAxisRect& of) {
        painter.setPen(style.quietInk);
        painter.drawText(QPointF(2, of.rect().top() - 0.75 * QFontMetricsF(style.font).height()), title);
    });
}

QString number(double value) {
    return QLocale().toString(value, 'g', 2);
}

QString readAt(const Outcome& outcome, const Selection& selection, double time) {
    QStringList lines{momentText(time)};
    for (const std::size_t i : drawingOrder(outcome.comparison, selection)) {
        if (const engine::HourRow* hour = engine::hourNear(outcome.comparison.runs[i], time)) {
            lines << tr("ammonia %1, sulfide %2 \u00b5g/L  %3")
                         .arg(number(kMicrograms * hour->unionisedAmmonia),
                              number(kMicrograms * hour->hydrogenSulfide),
                              rampText(outcome.comparison.runs[i].name, i));
        }
    }
    return lines.join(QLatin1Char('\n'));
}

}  // namespace

Picture gasesPicture(const OutcomePtr& outcome, const Selection& selection) {
    const std::size_t run = shownRun(*outcome, selection);
    const auto& runs = outcome->comparison.runs;
    const Selection::Span span = shownDays(*outcome, selection);
    std::vector<engine::ToxicPeaks> peaks;
    std::transform(runs.begin(), runs.end(), std::back_inserter(peaks), engine::toxicPeaks);
    const bool isAny =
        std::any_of(peaks.begin(), peaks.end(), [](const engine::ToxicPeaks& one) { return one.isAny(); });
    Picture picture;
    picture.days = Picture::Days{span.from, span.to, kDaysLeft, kDaysRight};
    picture.headline =
        !isAny ? tr("No ammonia and no sulfide are given for this pond, so that none is followed.")
               : tr("%1: where the fish are, un-ionised ammonia reaches %2 \u00b5g/L and hydrogen sulfide %3 "
                    "\u00b5g/L; with no "
                    "new air %4 and %5.")
                     .arg(rampText(runs[run].name, run), number(peaks[run].ammonia_ugPerL),
                          number(peaks[run].sulfide_ugPerL), number(peaks[0].ammonia_ugPerL),
                          number(peaks[0].sulfide_ugPerL));
    picture.detail =
        tr("As nitrogen and as sulfur. Measured pH decides the poisonous share of both: afternoon for "
           "ammonia, low "
           "pH for sulfide.");
    QStringList words{picture.headline};
    for (std::size_t i = 0; i < runs.size(); ++i) {
        words << tr("%1: ammonia %2, sulfide %3.")
                     .arg(rampText(runs[i].name, i), number(peaks[i].ammonia_ugPerL),
                          number(peaks[i].sulfide_ugPerL));
    }
    picture.words = words.join(QLatin1Char(' '));
    picture.key = keyOf(*outcome, selection);
    const auto kept = std::make_shared<Selection>();
    kept->copy(selection);
    picture.draw = [=](QCustomPlot& plot, const PlotStyle& style) {
        prepare(plot, style);
        addGas(plot, 0, *outcome, *kept, span, kAmmonia, tr("un-ionised ammonia, \u00b5g/L as nitrogen"),
               style);
        addGas(plot, 1, *outcome, *kept, span, kSulfide, tr("hydrogen sulfide, \u00b5g/L as sulfur"), style);
        addWeatherStrip(plot, 2, outcome, span, style);
    };
    picture.csv = [outcome] { return engine::gasMicrogramsCsv(outcome->comparison); };
    picture.at = [outcome, kept](double time) { return readAt(*outcome, *kept, time); };
    return picture;
}

}  // namespace widgets
