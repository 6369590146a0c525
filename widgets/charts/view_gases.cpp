// What is toxic beside the lack of oxygen, where the fish are: un-ionised ammonia and hydrogen sulfide.

#include "engine/base/text.h"
#include "engine/base/units.h"
#include "engine/output/results_io.h"
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

constexpr double kMicrograms = 1000.0;  // [ug/L] in [g/m^3]

QString tr(const char* text) {
    return QCoreApplication::translate("GasesView", text);
}

using Member = double engine::HourRow::*;

double peakOf(const engine::RampRun& run, Member member) {
    double peak = 0.0;
    for (const engine::HourRow& hour : run.hours) {
        peak = std::max(peak, hour.*member * kMicrograms);
    }
    return peak;
}

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
            const Selection::Span& span, Member member, const QString& title, const PlotStyle& style) {
    const QFontMetricsF metrics(style.font);
    double top = 1e-3;
    const auto order = drawingOrder(outcome.comparison, selection);
    for (const std::size_t i : order) {
        top = std::max(top, peakOf(outcome.comparison.runs[i], member));
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
            value.push_back(hour.*member * kMicrograms);
        }
        QPen pen = style.linePen(lookOf(outcome.comparison, i), false);
        pen.setWidthF(i == selection.ramp() ? 2.0 : 1.1);
        addCurve(*rect, day, value, pen);
    }
    addPainted(*rect, style, [style, title](QCPPainter& painter, const QCPAxisRect& of) {
        painter.setPen(style.quietInk);
        painter.drawText(QPointF(2, of.rect().top() - 0.75 * QFontMetricsF(style.font).height()), title);
    });
}

}  // namespace

Picture gasesPicture(const OutcomePtr& outcome, const Selection& selection) {
    const std::size_t run = shownRun(*outcome, selection);
    const engine::RampRun& rows = outcome->comparison.runs[run];
    const engine::RampRun& nothing = outcome->comparison.runs[0];
    const Selection::Span span = shownDays(*outcome, selection);
    const auto number = [](double value) { return QLocale().toString(value, 'g', 2); };
    const Member ammonia = &engine::HourRow::unionisedAmmonia, sulfide = &engine::HourRow::hydrogenSulfide;
    const bool isAny = std::any_of(
        outcome->comparison.runs.begin(), outcome->comparison.runs.end(),
        [&](const engine::RampRun& one) { return peakOf(one, ammonia) + peakOf(one, sulfide) > 0.0; });
    Picture picture;
    picture.days = Picture::Days{span.from, span.to, kDaysLeft, kDaysRight};
    picture.headline =
        !isAny
            ? tr("No ammonia and no sulfide are given for this pond, so that none is followed.")
            : tr("%1: where the fish are, un-ionised ammonia reaches %2 \u00b5g/L and hydrogen sulfide %3 "
                 "\u00b5g/L; with no "
                 "new air %4 and %5.")
                  .arg(rampText(rows.name, run), number(peakOf(rows, ammonia)), number(peakOf(rows, sulfide)),
                       number(peakOf(nothing, ammonia)), number(peakOf(nothing, sulfide)));
    picture.detail =
        tr("As nitrogen and as sulfur. Measured pH decides the poisonous share of both: afternoon for "
           "ammonia, low "
           "pH for sulfide.");
    QStringList words{picture.headline};
    for (std::size_t i = 0; i < outcome->comparison.runs.size(); ++i) {
        const engine::RampRun& one = outcome->comparison.runs[i];
        words << tr("%1: ammonia %2, sulfide %3.")
                     .arg(rampText(one.name, i), number(peakOf(one, ammonia)), number(peakOf(one, sulfide)));
    }
    picture.words = words.join(QLatin1Char(' '));
    const auto kept = std::make_shared<Selection>();
    kept->copy(selection);
    picture.draw = [=](QCustomPlot& plot, const PlotStyle& style) {
        prepare(plot, style);
        addGas(plot, 0, *outcome, *kept, span, ammonia, tr("un-ionised ammonia, \u00b5g/L as nitrogen"),
               style);
        addGas(plot, 1, *outcome, *kept, span, sulfide, tr("hydrogen sulfide, \u00b5g/L as sulfur"), style);
        addWeatherStrip(plot, 2, outcome, span, style);
    };
    picture.csv = [outcome] {
        std::string csv = "ramp,time_h,unionised_ammonia_ug_per_l,hydrogen_sulfide_ug_per_l\r\n";
        for (const engine::RampRun& one : outcome->comparison.runs) {
            for (const engine::HourRow& hour : one.hours) {
                csv += engine::csvField(one.name) + ',' + engine::shortest(hour.time / engine::kHour) + ',' +
                       engine::shortest(kMicrograms * hour.unionisedAmmonia) + ',' +
                       engine::shortest(kMicrograms * hour.hydrogenSulfide) + "\r\n";
            }
        }
        return csv;
    };
    picture.at = [outcome, kept, number, ammonia, sulfide](double time) {
        QStringList lines{momentText(time)};
        for (const std::size_t i : drawingOrder(outcome->comparison, *kept)) {
            for (const engine::HourRow& hour : outcome->comparison.runs[i].hours) {
                if (std::abs(hour.time - time) <= engine::kHour / 2) {
                    lines << tr("ammonia %1, sulfide %2 \u00b5g/L  %3")
                                 .arg(number(kMicrograms * (hour.*ammonia)),
                                      number(kMicrograms * (hour.*sulfide)),
                                      rampText(outcome->comparison.runs[i].name, i));
                    break;
                }
            }
        }
        return lines.join(QLatin1Char('\n'));
    };
    return picture;
}

}  // namespace widgets
