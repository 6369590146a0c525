#pragma once

#include <QLineEdit>

namespace widgets {

/// A line edit that cuts its text short with dots while it is not being edited; the tooltip is then the text.
/// Takes whatever width there is.
class ElidedEdit : public QLineEdit {
    Q_OBJECT
public:
    explicit ElidedEdit(QWidget* parent = nullptr);

    [[nodiscard]] QSize sizeHint() const override;
    [[nodiscard]] QSize minimumSizeHint() const override;

protected:
    bool event(QEvent* event) override;
    void paintEvent(QPaintEvent* event) override;

private:
    [[nodiscard]] QRect textArea() const;
    [[nodiscard]] bool isCut() const;
};

}  // namespace widgets
