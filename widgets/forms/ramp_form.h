#pragma once

#include "widgets/controls/field_form.h"

namespace widgets {

class ClockBox;
class NumberListEdit;

/// Edits one ramp of the document: its name, its kind with the numbers of that kind, when it runs, and what
/// it opens at which depth. Only what belongs to the ramp's kind is shown.
class RampForm final : public FieldForm {
    Q_OBJECT
public:
    /// @param document  Must outlive the form.
    explicit RampForm(Document& document, QWidget* parent = nullptr);

    /// Shows another ramp, after taking what is typed for the one before. An index outside the list shows
    /// none.
    void setRamp(int index);
    [[nodiscard]] int ramp() const { return m_index; }

protected:
    [[nodiscard]] bool hasSubject() const override;
    [[nodiscard]] QString subjectName() const override;
    [[nodiscard]] int ownRamp() const override { return m_index; }
    void refreshRows() override;

private:
    void addNameAndKind();
    void addRunTime();
    void addTimeOfDay();
    void addDiffusers();

    /// The ramp in a pond, `const` or not.
    template <class P>
    [[nodiscard]] auto& rampOf(P& pond) const {
        return pond.ramps[static_cast<std::size_t>(m_index)];
    }
    NumberListEdit* addByDay(const Words& words, const char* key,
                             std::optional<engine::ByDay> engine::Ramp::*list);

    int m_index = -1;
    QComboBox* m_kind = nullptr;
    NumberBox *m_first = nullptr, *m_factor = nullptr, *m_added = nullptr, *m_dose = nullptr;
    NumberListEdit *m_minutes = nullptr, *m_pulses = nullptr, *m_diffusers = nullptr, *m_depth = nullptr;
    QCheckBox* m_hold = nullptr;
    ClockBox* m_start = nullptr;
};

}  // namespace widgets
