// How the oxygen debt burns down under each ramp, over the dose of each day of the selected one.

#include "engine/base/units.h"
#include "engine/output/picture_tables.h"
#include "engine/run/shares.h"
#include "widgets/charts/day_axis.h"
#include "widgets/charts/label_layout.h"
#include "widgets/charts/picture.h"
#include "widgets/document/to_qstring.h"
#include "widgets/document/wording.h"

#include <QCoreApplication>
#include <qcustomplot.h>

#include <algorithm>
#include <cmath>

namespace widgets {
namespace {

constexpr int kRight = 200;  // [px] for the names

QString tr(const char* text) {
    return QCoreApplication::translate("DebtView", text);
}

QCPAxisRect* debtRect(QCustomPlot& plot, const Outcome& outcome, const Selection& selection,
                      const Selection::Span& span, const PlotStyle& style) {
    const QFontMetricsF metrics(style.font);
    double most = 1.05;
    for (const std::size_t i : drawingOrder(outcome.comparison, selection)) {
        for (const engine::DayRow& row : outcome.comparison.runs[i].days) {
            most = std::max(most, 1.05 * row.debtLeft);
        }
    }
    QCPAxisRect* rect =
        addRect(plot, 0, QMargins(kDaysLeft, static_cast<int>(metrics.height()) + 6, kRight, 6));
    applyStyle(*rect, style, span.from, span.to, 100.0 * most, {});
    const QSharedPointer<QCPAxisTickerFixed> steps(new QCPAxisTickerFixed);
    steps->setTickStep(most > 2.5 ? 100.0 : most > 1.2 ? 50.0 : 25.0);
    rect->axis(QCPAxis::atLeft)->setTicker(steps);
    rect->axis(QCPAxis::atBottom)->setTickLabels(false);
    Ground ground;
    ground.shades = nightShades(outcome);
    ground.rules = {0.0, 25.0, 50.0, 75.0, 100.0};
    addGround(*rect, style, std::move(ground));
    return rect;
}

void nameLines(QCPPainter& painter, const QCPAxisRect& of, const Outcome& outcome,
               const std::vector<std::size_t>& order, std::size_t selected, const PlotStyle& style) {
    const QCPAxis* up = of.axis(QCPAxis::atLeft);
    const QRectF area = of.rect();
    const QFontMetricsF metrics(style.font);
    std::vector<double> wanted;
    for (const std::size_t i : order) {
        wanted.push_back(std::clamp(up->coordToPixel(engine::debtLeftPercent(outcome.comparison.runs[i])),
                                    area.top(), area.bottom()));
    }
    const auto places = spreadApart(wanted, metrics.height(), area.top() + metrics.height() / 2,
                                    area.bottom() - metrics.height() / 2);
    for (std::size_t n = 0; n < order.size(); ++n) {
        const std::size_t i = order[n];
        QFont font = style.font;
        font.setBold(i == selected);
        painter.setFont(font);
        painter.setPen(style.textColour(lookOf(outcome.comparison, i)));
        painter.drawLine(QPointF(area.right() + 2, wanted[n]), QPointF(area.right() + 12, places[n]));
        painter.drawText(
            QRectF(area.right() + 15, places[n] - metrics.height() / 2, kRight - 18, metrics.height()),
            Qt::AlignLeft | Qt::AlignVCenter,
            QFontMetricsF(font).elidedText(rampText(outcome.comparison.runs[i].name, i), Qt::ElideRight,
                                           kRight - 20));
    }
    painter.setFont(style.font);
    painter.setPen(style.quietInk);
    painter.drawText(QPointF(2, metrics.ascent() + 1),
                     tr("oxygen debt left in the whole pond, % of the start"));
}

void paintDoses(QCPPainter& painter, const QCPAxisRect& of, const Outcome& outcome, std::size_t run,
                double most, const PlotStyle& style) {
    const QCPAxis* across = of.axis(QCPAxis::atBottom);
    const QRectF area = of.rect();
    const QFontMetricsF metrics(style.small);
    painter.setFont(style.small);
    const double room = area.height() - metrics.height();
    for (const engine::DayRow& row : outcome.comparison.runs[run].days) {
        const double dose = engine::doseOf(outcome.comparison.model, row);
        const double from = std::max(across->coordToPixel(row.day - 0.85), area.left());
        const double to = std::min(across->coordToPixel(row.day - 0.15), area.right());
        if (to <= from || dose <= 0.0) {
            continue;
        }
        const double height = std::max(1.0, room * dose / most);
        painter.fillRect(QRectF(from, area.bottom() - height, to - from, height),
                         mixed(style.paper, style.lineColour(lookOf(outcome.comparison, run)), 0.85));
        const QString text = QString::number(std::lround(dose));
        if (metrics.horizontalAdvance(text) < to - from + 12) {
            painter.setPen(style.ink);
            painter.drawText(
                QRectF(from - 6, area.bottom() - height - metrics.height(), to - from + 12, metrics.height()),
                Qt::AlignCenter, text);
        }
    }
    painter.setFont(style.font);
    painter.setPen(style.quietInk);
    painter.drawText(QRectF(2, area.top(), area.left() - 6, area.height()),
                     Qt::AlignLeft | Qt::AlignVCenter | Qt::TextWordWrap, tr("dose, % a day"));
    painter.setPen(QPen(style.hairline, 0));
    painter.drawLine(area.bottomLeft(), area.bottomRight());
}

void drawDebt(QCustomPlot& plot, const OutcomePtr& outcome, const std::shared_ptr<Selection>& selection,
              std::size_t run, const Selection::Span& span, const PlotStyle& style) {
    prepare(plot, style);
    QCPAxisRect* rect = debtRect(plot, *outcome, *selection, span, style);
    const auto order = drawingOrder(outcome->comparison, *selection);
    for (const std::size_t i : order) {
        std::vector<double> day{0.0}, left{100.0};
        for (const engine::DayRow& row : outcome->comparison.runs[i].days) {
            day.push_back(row.day);
            left.push_back(100.0 * row.debtLeft);
        }
        addCurve(*rect, day, left, style.linePen(lookOf(outcome->comparison, i), i == run));
    }
    addPainted(*rect, style, [=](QCPPainter& painter, const QCPAxisRect& of) {
        nameLines(painter, of, *outcome, order, run, style);
    });
    QCPAxisRect* doses = addRect(plot, 1, QMargins(kDaysLeft, 4, kRight, 6));
    applyStyle(*doses, style, span.from, span.to, 1.0, {});
    doses->axis(QCPAxis::atBottom)->setTickLabels(false);
    addWeatherStrip(plot, 2, outcome, span, style, kRight);
    doses->axis(QCPAxis::atLeft)->setTickLabels(false);
    plot.plotLayout()->setRowStretchFactor(0, 3.0);
    plot.plotLayout()->setRowStretchFactor(1, 1.2);
    double most = 1.0;
    for (const engine::DayRow& row : outcome->comparison.runs[run].days) {
        most = std::max(most, engine::doseOf(outcome->comparison.model, row));
    }
    addPainted(*doses, style, [=](QCPPainter& painter, const QCPAxisRect& of) {
        paintDoses(painter, of, *outcome, run, most, style);
    });
}

QString percent(double share) {
    return QString::number(std::lround(share));
}

QString headlineOf(const Outcome& outcome, std::size_t run) {
    const engine::RampRun& rows = outcome.comparison.runs[run];
    const engine::RampRun& nothing = outcome.comparison.runs[0];
    if (!isDrawn(rows)) {
        return toQString(rows.message);
    }
    if (run == 0) {
        return tr("With no new air %1 % of the pond's oxygen debt is there after %2 days.")
            .arg(percent(engine::debtLeftPercent(rows)))
            .arg(outcome.comparison.days);
    }
    return tr("%1: after %2 days %3 % of the pond's oxygen debt is left; left alone %4 %.")
        .arg(rampText(rows.name, run))
        .arg(outcome.comparison.days)
        .arg(percent(engine::debtLeftPercent(rows)),
             isDrawn(nothing) ? percent(engine::debtLeftPercent(nothing)) : tr("?"));
}

/// Debt and dose of each visible ramp on the day of a time; nothing outside the days of the run.
QString readAt(const Outcome& outcome, const Selection& selection, double time) {
    const int day = static_cast<int>(std::floor(time / engine::kDay)) + 1;
    QStringList lines{tr("at the end of day %1").arg(day)};
    for (const std::size_t i : drawingOrder(outcome.comparison, selection)) {
        for (const engine::DayRow& row : outcome.comparison.runs[i].days) {
            if (row.day == day) {
                lines << tr("%1 % left, dose %2 %  %3")
                             .arg(std::lround(100.0 * row.debtLeft))
                             .arg(std::lround(engine::doseOf(outcome.comparison.model, row)))
                             .arg(rampText(outcome.comparison.runs[i].name, i));
            }
        }
    }
    return lines.size() > 1 ? lines.join(QLatin1Char('\n')) : QString();
}

}  // namespace

Picture debtPicture(const OutcomePtr& outcome, const Selection& selection) {
    const std::size_t run = shownRun(*outcome, selection);
    const engine::PondModel& model = outcome->comparison.model;
    const Selection::Span span = shownDays(*outcome, selection);
    Picture picture;
    picture.days = Picture::Days{span.from, span.to, kDaysLeft, kRight};
    picture.headline = headlineOf(*outcome, run);
    picture.detail = model.bottom.exists()
                         ? tr("A ramp slower than the bottom makes new debt never comes down. Bars: the "
                              "share of the bottom "
                              "water that the selected ramp lifts each day.")
                         : tr("This pond has no bottom water, so that there is no dose.");
    QStringList words{picture.headline};
    for (const engine::DayRow& row : outcome->comparison.runs[run].days) {
        words << tr("Day %1: %2 % left, dose %3 %.")
                     .arg(row.day)
                     .arg(percent(100.0 * row.debtLeft), percent(engine::doseOf(model, row)));
    }
    picture.words = words.join(QLatin1Char(' '));
    const auto kept = std::make_shared<Selection>();
    kept->copy(selection);
    picture.draw = [outcome, kept, run, span](QCustomPlot& plot, const PlotStyle& style) {
        drawDebt(plot, outcome, kept, run, span, style);
    };
    picture.csv = [outcome] { return engine::debtCsv(outcome->comparison); };
    picture.at = [outcome, kept](double time) { return readAt(*outcome, *kept, time); };
    return picture;
}

}  // namespace widgets
