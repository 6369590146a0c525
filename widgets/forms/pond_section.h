#pragma once

#include "widgets/controls/field_form.h"
#include "widgets/controls/sheet_model.h"

#include <functional>
#include <vector>

namespace widgets {

/// One section of the pond's pages, put together by a function. Every number shows how sure it is.
class PondSection final : public FieldForm {
    Q_OBJECT
public:
    using Words = FieldForm::Words;
    using Find = FieldForm::Find;
    using Build = std::function<void(PondSection&)>;

    PondSection(Document& document, QWidget* parent, const Build& build);

    using FieldForm::addCheck;
    using FieldForm::addChoice;
    using FieldForm::addEntry;
    using FieldForm::addHeading;
    using FieldForm::document;
    using FieldForm::pond;

    /// A number of the pond that may be empty, or must not.
    NumberBox* number(const char* key, const QString& label, const QString& step, const QString& help,
                      double arrow, Find find, bool isNeeded = false);
    /// Shows a field only while this holds of the pond.
    void showIf(QWidget* field, std::function<bool(const engine::Pond&)> holds);

protected:
    [[nodiscard]] bool hasSubject() const override { return !document().isEmpty(); }
    void refreshRows() override;

private:
    std::vector<std::pair<QWidget*, std::function<bool(const engine::Pond&)>>> m_conditions;
};

// The sections; each builds its form.
void buildPlace(PondSection& form);
void buildShape(PondSection& form);
void buildBottom(PondSection& form);
void buildWater(PondSection& form);
void buildSpring(PondSection& form);
void buildFeed(PondSection& form);
void buildProfileTime(PondSection& form);
void buildWeather(PondSection& form);
void buildSurfaceAir(PondSection& form);
void buildClient(PondSection& form);

// And their tables.
[[nodiscard]] SheetSpec contourSheet();
[[nodiscard]] SheetSpec waterChangeSheet();
[[nodiscard]] SheetSpec fishSheet();
[[nodiscard]] SheetSpec profileSheet();
[[nodiscard]] SheetSpec weatherSheet();

}  // namespace widgets
