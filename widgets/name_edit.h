#pragma once

#include "widgets/entry.h"

#include <QLineEdit>
#include <QString>

namespace widgets {

/// A name of one line. Cut short with dots while it is longer than the field and not being edited. Takes
/// what is typed as Entry says.
class NameEdit final : public QLineEdit, public EntryOf<QString> {
    Q_OBJECT
public:
    explicit NameEdit(QWidget* parent = nullptr);

    [[nodiscard]] QSize sizeHint() const override;
    [[nodiscard]] QSize minimumSizeHint() const override;

protected:
    bool event(QEvent* event) override;
    void paintEvent(QPaintEvent* event) override;

private:
    [[nodiscard]] TextReading<QString> parse(const QString& text) const override;
    [[nodiscard]] QString format(const QString& value) const override { return value; }
    [[nodiscard]] QRect textArea() const;
    [[nodiscard]] bool isCut() const;
};

}  // namespace widgets
