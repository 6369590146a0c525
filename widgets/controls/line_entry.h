#pragma once

#include "widgets/controls/elided_edit.h"
#include "widgets/controls/entry.h"

#include <string>

namespace widgets {

/// A line of text, a date or a date with its time, as the pond file writes it. Takes what is typed as Entry
/// says.
class LineEntry : public ElidedEdit, public EntryOf<std::string> {
    Q_OBJECT
public:
    enum class Kind { Text, Date, Time };

    explicit LineEntry(Kind kind, QWidget* parent = nullptr);

protected:
    void paintEvent(QPaintEvent* event) override;

private:
    [[nodiscard]] TextReading<std::string> parse(const QString& text) const override;
    [[nodiscard]] QString format(const std::string& value) const override;

    Kind m_kind;
};

}  // namespace widgets
