#include "widgets/controls/word_bar.h"

#include "widgets/controls/plot_style.h"

#include <QEvent>
#include <QPainter>

#include <algorithm>

namespace widgets {
namespace {

// Around a word [px].
constexpr int kBesidePlace = 15, kBesideWord = 12, kAboveWord = 5;
constexpr int kBetweenPlaces = 20;  // for the mark that says in which order the places stand

}  // namespace

WordBar::WordBar(Kind kind, const QString& name, QWidget* parent) : QTabBar(parent), m_kind(kind) {
    setAccessibleName(name);
    setDrawBase(false);
    setExpanding(false);
    setUsesScrollButtons(false);
    setElideMode(Qt::ElideNone);
    setAttribute(Qt::WA_Hover);
}

QFont WordBar::wordFont(bool isShown) const {
    QFont made = font();
    made.setBold(isShown);
    if (m_kind == Kind::Places) {
        made.setPointSizeF(made.pointSizeF() * 1.1);
    }
    return made;
}

/// As wide as the bold word, so that nothing moves when it is chosen.
QSize WordBar::tabSizeHint(int index) const {
    const QFontMetrics metrics(wordFont(true));
    const bool isPlace = m_kind == Kind::Places;
    const int between = isPlace && index + 1 < count() ? kBetweenPlaces : 0;
    return {metrics.horizontalAdvance(tabText(index)) + 2 * (isPlace ? kBesidePlace : kBesideWord) + between,
            metrics.height() + 2 * kAboveWord};
}

QSize WordBar::sizeHint() const {
    QSize size(1, 0);
    for (int i = 0; i < count(); ++i) {
        const QSize one = tabSizeHint(i);
        size = QSize(size.width() + one.width(), std::max(size.height(), one.height()));
    }
    return size;
}

void WordBar::paintWord(QPainter& painter, int index) const {
    const PlotStyle style = PlotStyle::of(palette(), font());
    const bool isShown = index == currentIndex(), isPlace = m_kind == Kind::Places;
    QRectF area = QRectF(tabRect(index)).adjusted(0.5, 0.5, -0.5, -0.5);
    if (isPlace && index + 1 < count()) {
        painter.setPen(style.quietInk);
        painter.setFont(wordFont(false));
        painter.drawText(QRectF(area.right() - kBetweenPlaces, area.top(), kBetweenPlaces, area.height()),
                         Qt::AlignCenter, QStringLiteral("\u203a"));
        area.adjust(0, 0, -kBetweenPlaces, 0);
    }
    const bool isUnderMouse = underMouse() && area.contains(mapFromGlobal(QCursor::pos()));
    painter.setPen(isPlace && !isShown ? QPen(Qt::NoPen) : QPen(isPlace ? style.ink : style.hairline, 1.2));
    painter.setBrush(isShown        ? mixed(style.paper, style.lineColour(1), isPlace ? 0.06 : 0.14)
                     : isUnderMouse ? mixed(style.paper, style.hairline, 0.35)
                                    : QBrush(Qt::NoBrush));
    painter.drawRect(area);
    painter.setBrush(Qt::NoBrush);
    if (hasFocus() && isShown) {
        painter.setPen(QPen(style.quietInk, 0, Qt::DotLine));
        painter.drawRect(area.adjusted(3, 3, -3, -3));
    }
    painter.setFont(wordFont(isShown));
    painter.setPen(isShown ? style.ink : style.quietInk);
    painter.drawText(area, Qt::AlignCenter, tabText(index));
}

void WordBar::paintEvent(QPaintEvent* /*event*/) {
    QPainter painter(this);
    painter.setRenderHint(QPainter::Antialiasing);
    for (int i = 0; i < count(); ++i) {
        paintWord(painter, i);
    }
}

void WordBar::changeEvent(QEvent* event) {
    QTabBar::changeEvent(event);
    if (event->type() == QEvent::FontChange) {
        updateGeometry();
    }
}

}  // namespace widgets
