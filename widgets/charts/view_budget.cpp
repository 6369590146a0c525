// Where the oxygen of each day comes from and goes to, as bars about a line of nothing.

#include "engine/base/units.h"
#include "engine/output/results_io.h"
#include "engine/run/budget.h"
#include "widgets/charts/day_axis.h"
#include "widgets/charts/picture.h"
#include "widgets/document/to_qstring.h"
#include "widgets/document/wording.h"

#include <QCoreApplication>
#include <QLocale>
#include <qcustomplot.h>

#include <algorithm>
#include <array>
#include <cmath>

namespace widgets {
namespace {

constexpr int kRight = 200;  // [px] for the names

QString tr(const char* text) {
    return QCoreApplication::translate("BudgetView", text);
}

QString termName(std::size_t term) {
    switch (term) {
        case engine::kPhotosynthesis:
            return tr("photosynthesis");
        case engine::kRespiration:
            return tr("breathing of the water");
        case engine::kFishTerm:
            return tr("breathing of the fish");
        case engine::kSediment:
            return tr("mud");
        case engine::kDebtTerm:
            return tr("oxygen debt");
        case engine::kSurface:
            return tr("exchange at the surface");
        case engine::kBubbles:
            return tr("bubbles");
        case engine::kSurfaceAerator:
            return tr("surface aerator");
        case engine::kInflow:
            return tr("inflow");
        case engine::kBubblingOut:
            return tr("bubbles that the water gives off");
        default:
            return {};
    }
}

/// Colour and hatching of a term: no two have the same lightness and hatching, so that a photocopy tells them
/// apart.
struct Look {
    QColor fill;
    int hatch = 0;  // 0 none, 1 wide, 2 close
};
Look lookOfTerm(std::size_t term, const PlotStyle& style) {
    constexpr auto kLines = std::to_array<std::size_t>({3, 6, 4, 2, 0, 1, 5, 5, 1, 5});
    constexpr double kPale = 0.3, kMiddle = 0.55, kDeep = 0.85;
    constexpr auto kShares =
        std::to_array<double>({kPale, kPale, kDeep, kMiddle, kDeep, kMiddle, kPale, kDeep, kMiddle, kDeep});
    constexpr auto kHatches = std::to_array<int>({0, 1, 0, 2, 0, 0, 2, 1, 1, 2});
    static_assert(kLines.size() == engine::kTerms && kHatches.size() == engine::kTerms &&
                  kShares.size() == engine::kTerms);
    return {mixed(style.paper, style.lineColour(kLines[term]), kShares[term]), kHatches[term]};
}

/// In ink, or in the paper's colour about what is as dark.
QPen edgeOf(const Look& look, const PlotStyle& style) {
    return {contrast(style.ink, look.fill) < contrast(style.paper, look.fill) ? style.paper : style.ink, 0.8};
}

std::vector<engine::BudgetRow> wholeDays(const Outcome& outcome, std::size_t run) {
    return engine::wholeDays(outcome.comparison.runs[run], outcome.comparison.days);
}

engine::BudgetTerms meansOf(const Outcome& outcome, std::size_t run) {
    return engine::meanBudget(outcome.comparison.runs[run], outcome.comparison.days);
}

void paintBars(QCPPainter& painter, const QCPAxisRect& of, const Outcome& outcome, std::size_t run,
               const PlotStyle& style) {
    const QCPAxis* across = of.axis(QCPAxis::atBottom);
    const QCPAxis* up = of.axis(QCPAxis::atLeft);
    const QRectF area = of.rect();
    for (const engine::BudgetRow& row : wholeDays(outcome, run)) {
        const double from = std::max(across->coordToPixel(row.day - 0.88), area.left());
        const double to = std::min(across->coordToPixel(row.day - 0.12), area.right());
        if (to <= from) {
            continue;
        }
        double above = 0.0, below = 0.0;
        const engine::BudgetTerms terms = engine::kilogramsOf(row);
        for (std::size_t term = 0; term < terms.size(); ++term) {
            const double amount = terms[term];
            double& end = amount > 0.0 ? above : below;
            const double start = end;
            end += amount;
            const QRectF bar(QPointF(from, std::min(up->coordToPixel(start), up->coordToPixel(end))),
                             QPointF(to, std::max(up->coordToPixel(start), up->coordToPixel(end))));
            if (bar.height() < 0.3) {
                continue;
            }
            const Look look = lookOfTerm(term, style);
            painter.fillRect(bar, look.fill);
            if (look.hatch > 0) {
                hatch(painter, bar.adjusted(0, 0, -1, -1), QPen(style.ink, 0.8), look.hatch == 1 ? 9.0 : 5.0);
            }
            painter.setPen(edgeOf(look, style));
            painter.setBrush(Qt::NoBrush);
            painter.drawRect(bar);
        }
        const double stored = up->coordToPixel(row.storedChange / engine::kGramPerKilogram);
        painter.setPen(QPen(style.ink, 2.4));
        painter.drawLine(QPointF(from - 1, stored), QPointF(to + 1, stored));
    }
    painter.setPen(QPen(style.ink, 1.0));
    painter.drawLine(QPointF(area.left(), up->coordToPixel(0.0)),
                     QPointF(area.right(), up->coordToPixel(0.0)));
}

/// Names at the right, gains above and losses below, greatest first.
void paintNames(QCPPainter& painter, const QRectF& area, const Outcome& outcome, std::size_t run,
                const PlotStyle& style) {
    const auto means = meansOf(outcome, run);
    const QFontMetricsF metrics(style.font);
    double y = area.top();
    bool isLosing = false;
    for (const std::size_t term : engine::termsByGain(means)) {
        if (means[term] < 0.0 && !isLosing) {
            isLosing = true;
            y += metrics.height() * 0.6;
        }
        const QRectF sample(area.right() + 10, y + 2, 14, metrics.height() - 4);
        const Look look = lookOfTerm(term, style);
        painter.fillRect(sample, look.fill);
        if (look.hatch > 0) {
            hatch(painter, sample, QPen(style.ink, 0.8), look.hatch == 1 ? 7.0 : 4.0);
        }
        painter.setPen(edgeOf(look, style));
        painter.drawRect(sample);
        painter.setPen(style.ink);
        painter.drawText(QRectF(sample.right() + 5, y, kRight - 32, metrics.height()),
                         Qt::AlignLeft | Qt::AlignVCenter,
                         metrics.elidedText(termName(term), Qt::ElideRight, kRight - 34));
        y += metrics.height() + 1;
    }
    y += metrics.height() * 0.6;
    painter.setPen(QPen(style.ink, 2.4));
    painter.drawLine(QPointF(area.right() + 10, y + metrics.height() / 2),
                     QPointF(area.right() + 24, y + metrics.height() / 2));
    painter.drawText(QRectF(area.right() + 29, y, kRight - 32, metrics.height()),
                     Qt::AlignLeft | Qt::AlignVCenter, tr("change of the day"));
    painter.setPen(style.quietInk);
    painter.drawText(QPointF(2, metrics.ascent() + 1), tr("oxygen, kg a day"));
}

void drawBudget(QCustomPlot& plot, const OutcomePtr& outcome, std::size_t run, const Selection::Span& span,
                const PlotStyle& style) {
    prepare(plot, style);
    const QFontMetricsF metrics(style.font);
    double most = 1e-3;
    for (const engine::BudgetRow& row : wholeDays(*outcome, run)) {
        const engine::GainsAndLosses sums = engine::gainsAndLosses(engine::kilogramsOf(row));
        most = std::max({most, sums.gains, -sums.losses});
    }
    QCPAxisRect* rect =
        addRect(plot, 0, QMargins(kDaysLeft, static_cast<int>(metrics.height()) + 6, kRight, 6));
    applyStyle(*rect, style, span.from, span.to, most, {});
    rect->axis(QCPAxis::atBottom)->setTickLabels(false);
    addWeatherStrip(plot, 1, outcome, span, style, kRight);
    rect->axis(QCPAxis::atLeft)->setRange(-1.05 * most, 1.05 * most);
    addGround(*rect, style, {});
    addPainted(*rect, style, [=](QCPPainter& painter, const QCPAxisRect& of) {
        painter.setAntialiasing(false);
        paintBars(painter, of, *outcome, run, style);
        paintNames(painter, of.rect(), *outcome, run, style);
    });
}

}  // namespace

Picture budgetPicture(const OutcomePtr& outcome, const Selection& selection) {
    const std::size_t run = shownRun(*outcome, selection);
    const engine::RampRun& rows = outcome->comparison.runs[run];
    const Selection::Span span = shownDays(*outcome, selection);
    const auto means = meansOf(*outcome, run);
    const std::size_t gain = engine::greatestGain(means), loss = engine::greatestLoss(means);
    const auto number = [](double kg) {
        return QLocale().toString(std::abs(kg), 'f', std::abs(kg) < 10.0 ? 1 : 0);
    };
    Picture picture;
    picture.days = Picture::Days{span.from, span.to, kDaysLeft, kRight};
    picture.headline =
        tr("%1: most oxygen comes by %2, %3 kg a day, and most goes to %4, %5 kg a day; bubbles bring %6.")
            .arg(rampText(rows.name, run), termName(gain), number(means[gain]), termName(loss),
                 number(means[loss]), number(means[engine::kBubbles]));
    picture.detail = tr(
        "Bars above the line bring oxygen, bars below take it; the stroke is what the day changes in store.");
    QStringList words{picture.headline};
    for (std::size_t term = 0; term < means.size(); ++term) {
        words << tr("%1: %2 kg a day.").arg(termName(term), QLocale().toString(means[term], 'f', 2));
    }
    picture.words = words.join(QLatin1Char(' '));
    picture.draw = [outcome, run, span](QCustomPlot& plot, const PlotStyle& style) {
        drawBudget(plot, outcome, run, span, style);
    };
    picture.csv = [outcome, run] { return engine::budgetCsv(aloneOf(outcome->comparison, run)); };
    picture.at = [outcome, run](double time) {
        const int day = static_cast<int>(std::floor(time / engine::kDay)) + 1;
        const engine::BudgetRow* row = engine::budgetOn(outcome->comparison.runs[run], day);
        if (row == nullptr) {
            return QString();
        }
        QStringList lines{tr("day %1, kg of oxygen").arg(day)};
        const engine::BudgetTerms terms = engine::kilogramsOf(*row);
        for (std::size_t term = 0; term < terms.size(); ++term) {
            if (std::abs(row->terms[term]) > 1e-9) {
                lines << tr("%1: %2").arg(termName(term), QLocale().toString(terms[term], 'f', 1));
            }
        }
        lines
            << tr("change: %1").arg(QLocale().toString(row->storedChange / engine::kGramPerKilogram, 'f', 1));
        return lines.join(QLatin1Char('\n'));
    };
    return picture;
}

}  // namespace widgets
