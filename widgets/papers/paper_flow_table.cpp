#include "widgets/papers/paper_flow.h"
#include "widgets/papers/paper_text.h"

#include <qcustomplot.h>

#include <algorithm>
#include <numeric>

namespace widgets {
namespace {

/// Cells of one row, and how high it is.
struct LaidRow {
    std::vector<LaidText> cells;
    double height = 0.0;
};

constexpr double kCellX = 3.0 * kPoint, kCellY = 2.6 * kPoint;

std::vector<double> columnWidths(const PaperTable& table, double width) {
    const double all =
        std::accumulate(table.columns.begin(), table.columns.end(), 0.0,
                        [](double sum, const PaperTable::Column& column) { return sum + column.share; });
    std::vector<double> widths;
    for (const PaperTable::Column& column : table.columns) {
        widths.push_back(width * column.share / all);
    }
    return widths;
}

LaidRow laidRow(const PaperTable& table, const QStringList& texts, const std::vector<double>& widths,
                const QFont& font, double least) {
    LaidRow row;
    row.height = least;
    for (std::size_t i = 0; i < table.columns.size(); ++i) {
        const QString text =
            i < static_cast<std::size_t>(texts.size()) ? texts[static_cast<qsizetype>(i)] : QString();
        row.cells.emplace_back(text, font, widths[i] - 2 * kCellX,
                               table.columns[i].isNumber ? Qt::AlignRight : Qt::AlignLeft);
        row.height = std::max(row.height, row.cells.back().height() + 2 * kCellY);
    }
    return row;
}

void paintCells(QCPPainter& painter, const LaidRow& row, const std::vector<double>& widths,
                const QPointF& at) {
    double x = at.x();
    for (std::size_t i = 0; i < row.cells.size(); ++i) {
        row.cells[i].paint(painter, QPointF(x + kCellX, at.y() + kCellY));
        x += widths[i];
    }
}

/// The titles of a table's columns, on a tint.
PaperStrip headStrip(const PaperTable& table, const PaperLook& look, const std::vector<double>& widths,
                     double width) {
    QStringList titles;
    for (const PaperTable::Column& column : table.columns) {
        titles << column.title;
    }
    const LaidRow top = laidRow(table, titles, widths, look.font(table.points - 0.5, true), 0.0);
    PaperStrip head;
    head.height = top.height;
    head.paint = [=](QCPPainter& painter, const QPointF& at) {
        painter.fillRect(QRectF(at, QSizeF(width, top.height)), look.tint);
        painter.setPen(look.ink);
        paintCells(painter, top, widths, at);
        paintHairline(painter, look.quiet, at + QPointF(0, top.height), at + QPointF(width, top.height));
    };
    return head;
}

/// A row of a table. An empty cell is a box to write in, which has sides.
PaperStrip rowStrip(const PaperTable& table, std::size_t r, const PaperLook& look,
                    const std::vector<double>& widths, double width) {
    const bool isStrong = std::find(table.strong.begin(), table.strong.end(), r) != table.strong.end();
    const LaidRow row = laidRow(table, table.rows[r], widths, look.font(table.points, isStrong),
                                std::max(table.rowHeight, 12.0 * kPoint));
    std::vector<bool> isBlank;
    for (std::size_t i = 0; i < table.columns.size(); ++i) {
        isBlank.push_back(static_cast<qsizetype>(i) < table.rows[r].size() &&
                          table.rows[r][static_cast<qsizetype>(i)].isEmpty());
    }
    PaperStrip strip;
    strip.height = row.height;
    strip.paint = [=](QCPPainter& painter, const QPointF& at) {
        painter.setPen(look.ink);
        paintCells(painter, row, widths, at);
        const QPointF down(0, row.height);
        paintHairline(painter, look.hairline, at + down, at + down + QPointF(width, 0));
        double x = at.x();
        for (std::size_t i = 0; i < widths.size(); ++i) {
            if (isBlank[i] && i > 0) {
                paintHairline(painter, look.hairline, QPointF(x, at.y()), QPointF(x, at.y() + row.height));
            }
            x += widths[i];
        }
    };
    return strip;
}

}  // namespace

void PaperFlow::table(const PaperTable& table) {
    m_pieces.push_back({PaperPiece::Kind::Table, {}, {}, 0, TextStyle::Body, table});
    const std::vector<double> widths = columnWidths(table, m_width);
    const auto head = std::make_shared<PaperStrip>(headStrip(table, m_look, widths, m_width));
    PaperStrip first = *head;
    first.before = 6.0 * kPoint;
    first.keepsNext = true;
    add(std::move(first));
    for (std::size_t r = 0; r < table.rows.size(); ++r) {
        PaperStrip strip = rowStrip(table, r, m_look, widths, m_width);
        strip.head = head;
        // A short table is not parted, and no row of a long one stands alone before or after a break.
        constexpr std::size_t kShort = 8;
        strip.keepsNext = r + 1 < table.rows.size() &&
                          (table.rows.size() <= kShort || r == 0 || r + 2 == table.rows.size());
        add(std::move(strip));
    }
    gap(4.0);
}

}  // namespace widgets
