#include "widgets/charts/picture.h"

#include "engine/pond/local_time.h"
#include "widgets/charts/chart_parts.h"
#include "widgets/charts/sheets.h"
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

QString tr(const char* text) {
    return QCoreApplication::translate("Views", text);
}

using Lab = std::array<double, 3>;

/// CIE 1976 L*a*b* under D65 to sRGB; what lies outside is cut off.
QColor colourOf(const Lab& lab) {
    const auto undo = [](double t) {
        constexpr double kEdge = 6.0 / 29.0;
        return t > kEdge ? t * t * t : 3.0 * kEdge * kEdge * (t - 4.0 / 29.0);
    };
    const double l = (lab[0] + 16.0) / 116.0;
    const double x = 0.95047 * undo(l + lab[1] / 500.0), y = undo(l), z = 1.08883 * undo(l - lab[2] / 200.0);
    const auto gamma = [](double linear) {
        const double c = std::clamp(linear, 0.0, 1.0);
        return static_cast<float>(c <= 0.0031308 ? 12.92 * c : 1.055 * std::pow(c, 1.0 / 2.4) - 0.055);
    };
    return QColor::fromRgbF(gamma(3.2406 * x - 1.5372 * y - 0.4986 * z),
                            gamma(-0.9689 * x + 1.8758 * y + 0.0415 * z),
                            gamma(0.0557 * x - 0.2040 * y + 1.0570 * z));
}

}  // namespace

const std::vector<ViewKind>& viewKinds() {
    static const std::vector<ViewKind> kKinds{
        {"days", Place::Nights, [] { return tr("Days"); }, &daysPicture},
        {"hours", Place::Nights, [] { return tr("Hours"); }, &hoursPicture},
        {"depth", Place::Nights, [] { return tr("Depth"); }, &depthPicture},
        {"budget", Place::Why, [] { return tr("Budget"); }, &budgetPicture},
        {"debt", Place::Why, [] { return tr("Debt"); }, &debtPicture},
        {"profiles", Place::Why, [] { return tr("Profiles"); }, &profilesPicture},
        {"gases", Place::Why, [] { return tr("Gases"); }, &gasesPicture},
        {"risk", Place::Plan, [] { return tr("Risk"); }, &riskPicture},
        {"months", Place::Plan, [] { return tr("Months"); }, &monthsPicture},
        {kMeasureView, Place::Plan, [] { return tr("What to measure"); }, &measurePicture},
    };
    return kKinds;
}

ChartSheet sheetOf(const ViewKind& kind, const OutcomePtr& outcome, const Selection& selection) {
    Picture picture = kind.make(outcome, selection);
    ChartSheet sheet;
    sheet.name = QString::fromLatin1(kind.id);
    sheet.headline = picture.headline;
    sheet.detail = picture.detail;
    sheet.foot = sheetFoot(*outcome);
    sheet.words = picture.words;
    sheet.key = picture.key;
    sheet.size = picture.size;
    sheet.csv = picture.csv();
    sheet.draw = std::move(picture.draw);
    return sheet;
}

void addCanvas(QCustomPlot& plot, const PlotStyle& style,
               std::function<void(QCPPainter& painter, const QRectF& whole)> paint) {
    prepare(plot, style);
    auto* rect = new QCPAxisRect(&plot, false);  // owned by the layout
    plot.plotLayout()->addElement(0, 0, rect);
    rect->setAutoMargins(QCP::msNone);
    rect->setMargins(QMargins(0, 0, 0, 0));
    addPainted(*rect, style, [paint = std::move(paint)](QCPPainter& painter, const QCPAxisRect& of) {
        paint(painter, QRectF(of.rect()));
    });
}

std::vector<KeyLine> keyOf(const Outcome& outcome, const Selection& selection) {
    std::vector<KeyLine> key;
    for (const std::size_t i : visibleRuns(outcome.comparison, selection)) {
        key.push_back({rampText(outcome.comparison.runs[i].name, i), lookOf(outcome.comparison, i),
                       i == selection.ramp()});
    }
    return key;
}

std::size_t shownRun(const Outcome& outcome, const Selection& selection) {
    const auto& runs = outcome.comparison.runs;
    return selection.ramp() < runs.size() && isDrawn(runs[selection.ramp()]) ? selection.ramp() : 0;
}

QColor depthOfColour(const PlotStyle& style, double share) {
    // From the paper's side to a deep blue; the paper is the end without oxygen in either theme.
    const Lab pale = style.isDark ? Lab{16.0, -1.0, -4.0} : Lab{95.0, 0.0, 9.0};
    const Lab deep = style.isDark ? Lab{78.0, -12.0, -22.0} : Lab{32.0, 2.0, -38.0};
    const double s = std::clamp(share, 0.0, 1.0);
    Lab lab{};
    for (std::size_t i = 0; i < lab.size(); ++i) {
        lab[i] = pale[i] + (deep[i] - pale[i]) * s;
    }
    return colourOf(lab);
}

void paintScale(QCPPainter& painter, const PlotStyle& style, const QRectF& area, double top) {
    const int steps = static_cast<int>(area.height());
    for (int i = 0; i < steps; ++i) {
        const double share = 1.0 - (i + 0.5) / steps;
        painter.fillRect(QRectF(area.left(), area.top() + i, 12.0, 1.5), depthOfColour(style, share));
    }
    painter.setPen(QPen(style.hairline, 0));
    painter.setBrush(Qt::NoBrush);
    painter.drawRect(QRectF(area.left(), area.top(), 12.0, area.height()));
    painter.setPen(style.ink);
    const QFontMetricsF metrics(style.font);
    const double step = top > 10.0 ? 4.0 : 2.0;
    for (double at = 0.0; at <= top + 1e-9; at += step) {
        const double y = area.bottom() - area.height() * at / top;
        painter.drawText(QPointF(area.left() + 17.0, y + metrics.ascent() / 2 - 1),
                         QString::number(std::lround(at)));
    }
    painter.setPen(style.quietInk);
    painter.drawText(QPointF(area.left() - 2, area.top() - metrics.descent() - 4), tr("mg/L"));
}

void hatch(QCPPainter& painter, const QRectF& area, const QPen& pen, double step) {
    painter.setPen(pen);
    for (double c = area.left() - area.height(); c < area.right(); c += step) {
        // From (c, bottom) up to (c + height, top).
        const double from = std::max(c, area.left()), to = std::min(c + area.height(), area.right());
        if (from < to) {
            painter.drawLine(QPointF(from, area.bottom() - (from - c)),
                             QPointF(to, area.bottom() - (to - c)));
        }
    }
}

}  // namespace widgets
