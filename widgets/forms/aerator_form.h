#pragma once

#include "widgets/controls/field_form.h"

class QPushButton;

namespace widgets {

/// Edits the aerator of the document, or says that there is none and adds one.
class AeratorForm final : public FieldForm {
    Q_OBJECT
public:
    /// @param document  Must outlive the form.
    explicit AeratorForm(Document& document, QWidget* parent = nullptr);

protected:
    [[nodiscard]] bool hasSubject() const override { return pond().aerator.has_value(); }

private:
    QPushButton* m_add = nullptr;
};

}  // namespace widgets
