#include "widgets/controls/elided_edit.h"

#include <QHelpEvent>
#include <QStyle>
#include <QStyleOptionFrame>
#include <QStylePainter>
#include <QToolTip>

namespace widgets {
namespace {

constexpr int kTextMargin = 2;  // what QLineEdit keeps beside its text

}  // namespace

ElidedEdit::ElidedEdit(QWidget* parent) : QLineEdit(parent) {}

QSize ElidedEdit::sizeHint() const {
    return {fontMetrics().horizontalAdvance(QStringLiteral("00000.00000")), QLineEdit::sizeHint().height()};
}

QSize ElidedEdit::minimumSizeHint() const {
    return sizeHint();
}

QRect ElidedEdit::textArea() const {
    QStyleOptionFrame option;
    initStyleOption(&option);
    return style()
        ->subElementRect(QStyle::SE_LineEditContents, &option, this)
        .adjusted(kTextMargin, 0, -kTextMargin, 0);
}

bool ElidedEdit::isCut() const {
    return fontMetrics().horizontalAdvance(text()) > textArea().width();
}

bool ElidedEdit::event(QEvent* event) {
    if (event->type() == QEvent::ToolTip && isCut()) {
        QToolTip::showText(static_cast<QHelpEvent*>(event)->globalPos(), text(), this);
        return true;
    }
    return QLineEdit::event(event);
}

void ElidedEdit::paintEvent(QPaintEvent* event) {
    if (hasFocus() || !isCut()) {
        QLineEdit::paintEvent(event);
    } else {
        QStylePainter painter(this);
        QStyleOptionFrame option;
        initStyleOption(&option);
        painter.drawPrimitive(QStyle::PE_PanelLineEdit, option);
        painter.setPen(palette().color(QPalette::Text));
        painter.drawText(textArea(), Qt::AlignVCenter | Qt::AlignLeading,
                         fontMetrics().elidedText(text(), Qt::ElideRight, textArea().width()));
    }
}

}  // namespace widgets
