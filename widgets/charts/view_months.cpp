// When a start may be: the next twelve months by the ramp that the papers are about.

#include "engine/output/advice_io.h"
#include "engine/wording/sentence_advice.h"
#include "widgets/charts/chart_parts.h"
#include "widgets/charts/label_layout.h"
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

using engine::MonthOfStart;
using engine::StartCalendar;

constexpr double kLeft = 60.0, kRight = 12.0, kTop = 30.0;

QString tr(const char* text) {
    return QCoreApplication::translate("MonthsView", text);
}

/// The area of the bars, and of the rows of words under it.
struct Sheet {
    QRectF area;
    double row = 0.0;    ///< Height of a row of words
    double top = 100.0;  ///< Of the axis, of 100 ponds
    std::size_t months = 12;

    Sheet(const QRectF& whole, const StartCalendar& calendar, double textHeight) : row(textHeight + 4.0) {
        area = whole.adjusted(kLeft, kTop, -kRight, -3.0 * row - 6.0);
        months = calendar.months.size();
        double most = 0.0;
        for (const MonthOfStart& month : calendar.months) {
            most = std::max({most, 100.0 * month.lethal, 100.0 * month.lethalAlone});
        }
        constexpr std::array kTops{10.0, 20.0, 50.0, 100.0};
        top = *std::find_if(kTops.begin(), kTops.end() - 1, [&](double one) { return one >= most; });
    }
    [[nodiscard]] double width() const { return area.width() / static_cast<double>(months); }
    [[nodiscard]] double x(std::size_t month) const {
        return area.left() + width() * (static_cast<double>(month) + 0.5);
    }
    [[nodiscard]] double y(double of100) const {
        return area.bottom() - area.height() * std::min(of100, top) / top;
    }
    /// A row of words under a month.
    [[nodiscard]] QRectF cell(std::size_t month, int at) const {
        return {x(month) - 0.5 * width(), area.bottom() + 4.0 + at * row, width(), row};
    }
};

void paintAxis(QCPPainter& painter, const Sheet& sheet, const PlotStyle& style) {
    const QFontMetricsF metrics(style.font);
    for (int i = 0; i <= 4; ++i) {
        const double at = sheet.top * i / 4.0;
        painter.setPen(QPen(style.hairline, 0));
        painter.drawLine(QPointF(sheet.area.left(), sheet.y(at)), QPointF(sheet.area.right(), sheet.y(at)));
        if (i % 2 == 0) {
            painter.setPen(style.ink);
            painter.drawText(QRectF(0, sheet.y(at) - metrics.height() / 2, kLeft - 8, metrics.height()),
                             Qt::AlignRight | Qt::AlignVCenter, QString::number(std::lround(at)));
        }
    }
    painter.setPen(style.quietInk);
    painter.drawText(QPointF(2, metrics.ascent() + 2), tr("of 100 ponds below the lethal line"));
}

/// Bars with the ramp, hatched ones left alone, and under them what may be.
void paintMonth(QCPPainter& painter, const Sheet& sheet, const MonthOfStart& month, std::size_t at,
                std::size_t look, const PlotStyle& style) {
    const double half = 0.32 * sheet.width(), x = sheet.x(at), foot = sheet.area.bottom();
    const QFontMetricsF metrics(style.font);
    const auto words = [&](int row, const QString& text, bool isBold) {
        QFont font = style.font;
        font.setBold(isBold);
        painter.setFont(font);
        painter.drawText(sheet.cell(at, row), Qt::AlignCenter,
                         QFontMetricsF(font).elidedText(text, Qt::ElideRight, sheet.width() - 2.0));
        painter.setFont(style.font);
    };
    painter.setPen(style.ink);
    words(0, monthName(month, QLocale::ShortFormat), month.mayStart());
    if (month.isIcy) {
        painter.setPen(style.quietInk);
        words(1, tr("ice"), false);
        return;
    }
    words(1, month.mayStart() ? tr("start") : tr("no"), month.mayStart());
    painter.setPen(style.quietInk);
    words(2, month.isAired ? tr("oxygen") : tr("none"), false);
    const QRectF alone(QPointF(x - half, sheet.y(100.0 * month.lethalAlone)), QPointF(x, foot));
    const QRectF with(QPointF(x, sheet.y(100.0 * month.lethal)), QPointF(x + half, foot));
    painter.fillRect(with, style.lineColour(look));
    hatch(painter, alone, QPen(style.lineColour(0), 1.2), 6.0);
    painter.setPen(QPen(style.lineColour(0), 1.2));
    painter.drawRect(alone);
    painter.setPen(QPen(style.textColour(look), 1.2));
    painter.drawRect(with);
}

void paint(QCPPainter& painter, const QRectF& whole, const StartCalendar& calendar, std::size_t look,
           const PlotStyle& style) {
    const Sheet sheet(whole, calendar, QFontMetricsF(style.font).height());
    for (std::size_t i = 0; i < calendar.months.size(); ++i) {
        if (calendar.months[i].mayStart()) {
            painter.fillRect(QRectF(sheet.x(i) - 0.5 * sheet.width(), sheet.area.top(), sheet.width(),
                                    sheet.area.height()),
                             mixed(style.paper, style.ink, 0.08));
        }
    }
    paintAxis(painter, sheet, style);
    for (std::size_t i = 0; i < calendar.months.size(); ++i) {
        paintMonth(painter, sheet, calendar.months[i], i, look, style);
    }
}

/// Names of months one by one, or the first and the last where three or more lie in a row.
QString monthsText(const StartCalendar& calendar) {
    const std::vector<MonthOfStart>& months = calendar.months;
    const auto mayStart = [](const MonthOfStart& one) { return one.mayStart(); };
    const auto first = std::find_if(months.begin(), months.end(), mayStart);
    const auto end = std::find_if_not(first, months.end(), mayStart);
    constexpr int kRow = 3;
    if (end - first >= kRow && std::none_of(end, months.end(), mayStart)) {
        return tr("every month from %1 to %2")
            .arg(monthName(*first, QLocale::LongFormat), monthName(*std::prev(end), QLocale::LongFormat));
    }
    QStringList names;
    for (const MonthOfStart& month : months) {
        if (month.mayStart()) {
            names << monthName(month, QLocale::LongFormat);
        }
    }
    return QLocale().createSeparatedList(names);
}

QString headlineOf(const engine::Advice& advice) {
    const std::vector<MonthOfStart>& months = advice.calendar.months;
    const auto may = static_cast<std::size_t>(
        std::count_if(months.begin(), months.end(), [](const MonthOfStart& one) { return one.mayStart(); }));
    const QString ramp = toQString(advice.ramp);
    return may == 0
               ? tr("In no month of the usual year does \"%1\" meet every condition of a start.").arg(ramp)
           : may == months.size()
               ? tr("\"%1\" meets every condition of a start in every month of the usual year.").arg(ramp)
               : tr("\"%1\" meets every condition of a start in %2 of the usual year.")
                     .arg(ramp, monthsText(advice.calendar));
}

}  // namespace

QString monthName(const MonthOfStart& month, QLocale::FormatType length) {
    return QLocale().standaloneMonthName(static_cast<int>(static_cast<unsigned>(month.from.month())), length);
}

Picture monthsPicture(const OutcomePtr& outcome, const Selection& /*selection*/) {
    Picture picture;
    const auto answer = outcome->answer;
    picture.csv = [answer] { return engine::calendarCsv(answer ? *answer : engine::Advice()); };
    if (answer == nullptr || answer->calendar.months.empty()) {
        picture.headline = outcome->comparison.runs.size() < 2 ? tr("There is no ramp in this pond yet.")
                           : outcome->isGivenUp || answer != nullptr ? tr("The months were not worked out.")
                                                                     : tr("Working out the months.");
        picture.words = picture.headline;
        picture.draw = [](QCustomPlot& plot, const PlotStyle& style) { prepare(plot, style); };
        return picture;
    }
    picture.headline = headlineOf(*answer);
    picture.detail =
        tr("Full bars: ponds that go below the lethal line with the ramp. Hatched bars: left alone. "
           "Last row: oxygen at the bottom or none, as each month starts in the usual year.");
    QStringList words{picture.headline};
    for (const engine::Sentence& sentence :
         engine::sentencesOf(answer->calendar, outcome->comparison.model)) {
        words << localized(sentence);
    }
    picture.words = words.join(QLatin1Char(' '));
    picture.draw = [answer, look = lookOf(outcome->comparison,
                                          answer->run < outcome->comparison.runs.size() ? answer->run : 1)](
                       QCustomPlot& plot, const PlotStyle& style) {
        addCanvas(plot, style, [=](QCPPainter& painter, const QRectF& whole) {
            paint(painter, whole, answer->calendar, look, style);
        });
    };
    return picture;
}

}  // namespace widgets
