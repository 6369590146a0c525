#pragma once

#include "widgets/controls/field_form.h"

namespace widgets {

/// Edits the lines and the fish water of the document. An empty field shows what is then taken by the
/// pond's fish, its surface water and its altitude.
class LimitsForm final : public FieldForm {
    Q_OBJECT
public:
    /// @param document  Must outlive the form.
    explicit LimitsForm(Document& document, QWidget* parent = nullptr);

protected:
    [[nodiscard]] bool hasSubject() const override { return !document().isEmpty(); }
    void refreshRows() override;

private:
    QComboBox* m_group = nullptr;
    NumberBox *m_stress = nullptr, *m_lethal = nullptr, *m_fishWater = nullptr, *m_warmest = nullptr;
};

}  // namespace widgets
