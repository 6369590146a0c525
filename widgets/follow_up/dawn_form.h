#pragma once

#include "engine/pond/pond.h"

#include <QWidget>

#include <array>
#include <optional>
#include <vector>

class QComboBox;
class QLabel;

namespace widgets {

class Entry;
class LineEntry;
class NumberBox;
class VisitTime;

/// Readings of one visit as they are taken at the pond: the time, three depths, and what was seen. Holds them
/// until they are asked for; in the units of the pond.
class DawnForm final : public QWidget {
    Q_OBJECT
public:
    /// Short: what the next hour needs. Full: what the log can hold.
    enum class Extent { Short, Full };

    explicit DawnForm(Extent extent, QWidget* parent = nullptr);

    /// Takes the pond's units and usual depths over. What is typed stays.
    void setPond(const engine::Pond& pond);
    /// A time that was typed stays.
    void propose(std::optional<engine::LocalTime> at);
    /// Takes what is typed. @return false if a text cannot be taken; its field then has the focus.
    bool commit();
    /// When; nothing if none is given.
    [[nodiscard]] std::optional<engine::LocalTime> time() const;
    /// One reading for each depth with a value, what was seen standing with the first. @pre commit()
    [[nodiscard]] std::vector<engine::Reading> readings() const;
    /// Forgets what was read, so that the next visit can be typed: all but the depths and the meter.
    void clear();
    /// Forgets everything, as for another pond.
    void startAnew();

private:
    struct Row {
        NumberBox *depth, *temperature, *oxygen;
    };
    [[nodiscard]] std::vector<NumberBox*> boxes() const;
    /// Of all fields that take text, in their order.
    [[nodiscard]] std::vector<Entry*> entries() const;
    void showUnits(engine::UnitSystem system);
    void showFault();

    VisitTime* m_time;
    std::array<Row, 3> m_rows{};
    std::array<QLabel*, 3> m_heads{};
    NumberBox* m_secchi = nullptr;
    QLabel* m_secchiLabel = nullptr;
    QComboBox *m_smell, *m_fish;
    LineEntry *m_meter = nullptr, *m_photo = nullptr, *m_note = nullptr;
    QLabel* m_fault = nullptr;
    bool m_hasDepths = false;
};

/// A list of a word of the pond file with an empty first entry.
[[nodiscard]] QComboBox* smellBox(QWidget* parent);
[[nodiscard]] QComboBox* fishBox(QWidget* parent);

}  // namespace widgets
