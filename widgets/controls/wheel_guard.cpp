#include "widgets/controls/wheel_guard.h"

#include <QAbstractSlider>
#include <QAbstractSpinBox>
#include <QApplication>
#include <QComboBox>
#include <QEvent>
#include <QScrollBar>
#include <QWidget>

namespace widgets {
namespace {

bool takesWheel(const QWidget* widget) {
    return qobject_cast<const QAbstractSpinBox*>(widget) != nullptr ||
           qobject_cast<const QComboBox*>(widget) != nullptr ||
           (qobject_cast<const QAbstractSlider*>(widget) != nullptr &&
            qobject_cast<const QScrollBar*>(widget) == nullptr);
}

/// The field that a widget is or belongs to; a combo box's list is a window of its own and no part of it.
const QWidget* fieldAround(const QWidget* widget) {
    while (widget != nullptr && !takesWheel(widget)) {
        widget = widget->isWindow() ? nullptr : widget->parentWidget();
    }
    return widget;
}

bool hasFocusInside(const QWidget* field) {
    return field->hasFocus() || field->isAncestorOf(QApplication::focusWidget());
}

}  // namespace

bool WheelGuard::eventFilter(QObject* watched, QEvent* event) {
    auto* widget = qobject_cast<QWidget*>(watched);
    if (widget == nullptr) {
        return false;
    }
    if (event->type() == QEvent::Polish && takesWheel(widget) && widget->focusPolicy() == Qt::WheelFocus) {
        widget->setFocusPolicy(Qt::StrongFocus);
    }
    if (event->type() == QEvent::Wheel) {
        const QWidget* field = fieldAround(widget);
        if (field != nullptr && !hasFocusInside(field)) {
            event->ignore();  // so that it goes on to the parent, up to the area that scrolls
            return true;
        }
    }
    return false;
}

}  // namespace widgets
