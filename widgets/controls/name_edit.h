#pragma once

#include "widgets/controls/elided_edit.h"
#include "widgets/controls/entry.h"

#include <QString>

namespace widgets {

/// A name of one line. Takes what is typed as Entry says.
class NameEdit final : public ElidedEdit, public EntryOf<QString> {
    Q_OBJECT
public:
    explicit NameEdit(QWidget* parent = nullptr);

protected:
    void paintEvent(QPaintEvent* event) override;

private:
    [[nodiscard]] TextReading<QString> parse(const QString& text) const override;
    [[nodiscard]] QString format(const QString& value) const override { return value; }
};

}  // namespace widgets
