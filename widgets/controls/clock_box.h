#pragma once

#include "engine/pond/pond.h"
#include "widgets/controls/entry.h"

#include <QAbstractSpinBox>

#include <optional>

namespace widgets {

/// A time of the day as HH:MM, or none. "7", "7:30", "730" and "7.30" are read too. Arrows move it by a
/// quarter of an hour. Takes what is typed as Entry says.
class ClockBox final : public QAbstractSpinBox, public EntryOf<std::optional<engine::ClockTime>> {
    Q_OBJECT
public:
    explicit ClockBox(QWidget* parent = nullptr);

    /// The time that is taken where none is given, if there is one, and what is then said.
    void setTakenIfEmpty(std::optional<engine::ClockTime> time, const QString& placeholder);

    void stepBy(int steps) override;
    [[nodiscard]] QSize sizeHint() const override;
    [[nodiscard]] QSize minimumSizeHint() const override { return sizeHint(); }

protected:
    [[nodiscard]] StepEnabled stepEnabled() const override { return StepUpEnabled | StepDownEnabled; }
    void wheelEvent(QWheelEvent* event) override;
    void paintEvent(QPaintEvent* event) override;

private:
    [[nodiscard]] TextReading<std::optional<engine::ClockTime>> parse(const QString& text) const override;
    [[nodiscard]] QString format(const std::optional<engine::ClockTime>& value) const override;

    std::optional<engine::ClockTime> m_taken;
};

/// "07:30".
[[nodiscard]] QString clockText(engine::ClockTime time);

}  // namespace widgets
