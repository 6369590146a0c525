#include "widgets/papers/paper.h"

#include "widgets/papers/paper_text.h"

#include <QCoreApplication>
#include <qcustomplot.h>

namespace widgets {
namespace {

constexpr double kSide = 20.0 * kMillimetre, kTop = 20.0 * kMillimetre, kBottom = 26.0 * kMillimetre;
constexpr double kUnitsPerDot = 72.0 / 96.0 * kPoint;

QString tr(const char* text) {
    return QCoreApplication::translate("Paper", text);
}

}  // namespace

QSizeF PaperFormat::page() const {
    return QPageSize(size).size(QPageSize::Point) * kPoint;
}

QMarginsF PaperFormat::margins() const {
    return {kSide, kTop, kSide, kBottom};
}

QSizeF PaperFormat::inner() const {
    return page().shrunkBy(margins());
}

PaperPainter::PaperPainter(const Paper& paper, const PaperImprint& imprint, const PaperFormat& format,
                           PaperLook look)
    : m_paper(paper),
      m_imprint(imprint),
      m_format(format),
      m_look(std::move(look)),
      m_pages(paginated(paper.strips, format.inner().height())) {}

std::vector<PaperPainter::Mark> PaperPainter::marks() const {
    std::vector<Mark> marks;
    for (std::size_t page = 0; page < m_pages.size(); ++page) {
        for (const PlacedStrip& placed : m_pages[page]) {
            if (!placed.strip->outline.isEmpty()) {
                marks.push_back(
                    {placed.strip->outline, placed.strip->level, static_cast<int>(page), kTop + placed.top});
            }
        }
    }
    return marks;
}

void PaperPainter::paint(QCPPainter& painter, int page) const {
    painter.save();
    painter.setMode(QCPPainter::pmVectorized);
    painter.setMode(QCPPainter::pmNoCaching);
    painter.setMode(QCPPainter::pmNonCosmetic);
    painter.scale(1.0 / kUnitsPerDot, 1.0 / kUnitsPerDot);
    const QSizeF sheet = m_format.page(), inner = m_format.inner();
    for (const PlacedStrip& placed : m_pages[static_cast<std::size_t>(page)]) {
        painter.save();
        placed.strip->paint(painter, QPointF(kSide, kTop + placed.top));
        painter.restore();
    }
    const QFont small = m_look.font(7.0), tiny = m_look.font(6.2);
    painter.setPen(m_look.quiet);
    if (page > 0) {
        const QString head =
            m_imprint.pond.isEmpty() ? m_paper.title : tr("%1 \u2013 %2").arg(m_paper.title, m_imprint.pond);
        const LaidText left(head, small, inner.width());
        left.paint(painter, QPointF(kSide, kTop - 22.0 * kPoint));
    }
    const double foot = sheet.height() - kBottom + 12.0 * kPoint;
    painter.setPen(QPen(m_look.hairline, 0.5 * kPoint));
    painter.drawLine(QPointF(kSide, foot), QPointF(kSide + inner.width(), foot));
    painter.setPen(m_look.ink);
    const LaidText caution(m_imprint.caution, small, inner.width());
    caution.paint(painter, QPointF(kSide, foot + 4.0 * kPoint));
    painter.setPen(m_look.quiet);
    const double under = foot + 4.0 * kPoint + caution.height() + 1.5 * kPoint;
    LaidText(m_imprint.stamp, tiny, inner.width()).paint(painter, QPointF(kSide, under));
    LaidText(tr("Page %1 of %2").arg(page + 1).arg(pageCount()), tiny, inner.width(), Qt::AlignRight)
        .paint(painter, QPointF(kSide, under));
    LaidText(tr("Run %1").arg(m_imprint.run), tiny, inner.width())
        .paint(painter, QPointF(kSide, under + 8.5 * kPoint));
    painter.restore();
}

}  // namespace widgets
