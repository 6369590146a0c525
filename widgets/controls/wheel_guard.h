#pragma once

#include <QObject>

namespace widgets {

/// Keeps the wheel from changing a field over which the pointer happens to be: a spin box, combo box or
/// slider takes the wheel only while it has the focus; otherwise the area around it scrolls. Nor does the
/// wheel give the focus to a field.
///
/// Install one on the application: `app.installEventFilter(new WheelGuard(&app))`, before the first window.
class WheelGuard final : public QObject {
    Q_OBJECT
public:
    using QObject::QObject;
    bool eventFilter(QObject* watched, QEvent* event) override;
};

}  // namespace widgets
