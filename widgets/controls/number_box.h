#pragma once

#include "engine/pond/pond_keys.h"
#include "widgets/controls/entry.h"

#include <QAbstractSpinBox>

#include <optional>

namespace widgets {

/// A number, or none, with arrows. Reads and shows it as number_text says, takes it as Entry says.
///
/// The wheel changes it only while it has the focus.
class NumberBox final : public QAbstractSpinBox, public EntryOf<std::optional<double>> {
    Q_OBJECT
public:
    enum class Empty { Allowed, Refused };

    /// @param rule  Its range and unit; whole numbers only if it says so.
    /// @param step  What one press of an arrow adds.
    NumberBox(const engine::NumberRule& rule, double step, Empty empty, QWidget* parent = nullptr);

    /// Shows and takes numbers in the units of a system; the value stays in the file's unit.
    void setUnits(engine::UnitSystem system);

    /// The number that is taken where none is given: shown where the field is empty, and the place from
    /// which arrows start.
    void setTakenIfEmpty(double value);
    /// What is said where the field is empty and no number is taken.
    void setPlaceholder(const QString& text);
    [[nodiscard]] QString placeholder() const;

    void stepBy(int steps) override;
    [[nodiscard]] QSize sizeHint() const override;
    [[nodiscard]] QSize minimumSizeHint() const override { return sizeHint(); }

protected:
    [[nodiscard]] StepEnabled stepEnabled() const override;
    void wheelEvent(QWheelEvent* event) override;
    void paintEvent(QPaintEvent* event) override;
    void changeEvent(QEvent* event) override;

private:
    [[nodiscard]] TextReading<std::optional<double>> parse(const QString& text) const override;
    [[nodiscard]] QString format(const std::optional<double>& value) const override;

    engine::NumberRule m_rule;
    engine::UnitSystem m_units = engine::UnitSystem::Metric;
    double m_step;
    Empty m_empty;
    std::optional<double> m_taken;
};

}  // namespace widgets
