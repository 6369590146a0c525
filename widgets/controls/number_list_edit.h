#pragma once

#include "engine/pond/pond_keys.h"
#include "widgets/controls/elided_edit.h"
#include "widgets/controls/entry.h"

#include <vector>

namespace widgets {

/// Numbers in a row, such as minutes by day. Reads and shows them as number_text says, takes them as Entry
/// says.
class NumberListEdit final : public ElidedEdit, public EntryOf<std::vector<double>> {
    Q_OBJECT
public:
    enum class Empty { Allowed, Refused };

    /// @param rule  What each of the numbers must keep.
    NumberListEdit(const engine::NumberRule& rule, Empty empty, QWidget* parent = nullptr);

    /// Shows and takes numbers in the units of a system; the values stay in the file's unit.
    void setUnits(engine::UnitSystem system);

protected:
    void paintEvent(QPaintEvent* event) override;
    void changeEvent(QEvent* event) override;

private:
    [[nodiscard]] TextReading<std::vector<double>> parse(const QString& text) const override;
    [[nodiscard]] QString format(const std::vector<double>& value) const override;

    engine::NumberRule m_rule;
    Empty m_empty;
    engine::UnitSystem m_units = engine::UnitSystem::Metric;
};

}  // namespace widgets
