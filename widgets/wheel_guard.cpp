#include "widgets/wheel_guard.h"

#include <QAbstractScrollArea>
#include <QAbstractSlider>
#include <QAbstractSpinBox>
#include <QApplication>
#include <QComboBox>
#include <QEvent>
#include <QScrollBar>
#include <QWheelEvent>
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

/// Hands the event to the area that the field stands in. Qt does not pass on what a filter has ignored.
void sendToArea(const QWidget& field, QWheelEvent& event) {
    for (QWidget* around = field.parentWidget(); around != nullptr; around = around->parentWidget()) {
        if (auto* area = qobject_cast<QAbstractScrollArea*>(around)) {
            QWidget* viewport = area->viewport();
            QWheelEvent passed(viewport->mapFromGlobal(event.globalPosition()), event.globalPosition(),
                               event.pixelDelta(), event.angleDelta(), event.buttons(), event.modifiers(),
                               event.phase(), event.inverted(), event.source());
            QApplication::sendEvent(viewport, &passed);
            event.setAccepted(passed.isAccepted());
            return;
        }
    }
    event.ignore();
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
            sendToArea(*field, *static_cast<QWheelEvent*>(event));
            return true;
        }
    }
    return false;
}

}  // namespace widgets
