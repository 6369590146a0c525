#pragma once

#include "engine/pond/pond.h"

#include <QWidget>

#include <optional>
#include <vector>

class QComboBox;
class QGridLayout;
class QLabel;

namespace widgets {

class LineEntry;
class NumberBox;
class VisitTime;

/// An event as it goes into the log: its kind, when, and what that kind can have.
class EventForm final : public QWidget {
    Q_OBJECT
public:
    explicit EventForm(QWidget* parent = nullptr);

    /// Takes the names of the pond's ramps over. What is typed stays.
    void setPond(const engine::Pond& pond);
    /// A time that was typed stays.
    void propose(std::optional<engine::LocalTime> at);
    /// Shows an event, as one that is to be corrected: its kind and time then stay.
    void setEvent(const engine::Event& event);
    /// Takes what is typed. @return false if a text cannot be taken; its field then has the focus.
    bool commit();
    /// Nothing without a time. @pre commit()
    [[nodiscard]] std::optional<engine::Event> typed() const;
    void clear();  ///< Forgets all but the kind.

private:
    struct Row {
        QLabel* label;
        QWidget* field;
        std::vector<const char*> kinds;  ///< Empty: every kind
        QString text;                    ///< %1 is the unit
        const char* unit = "";           ///< As the pond file has it
    };
    void add(const QString& text, QWidget* field, const QString& help, std::vector<const char*> kinds,
             const char* unit = "");
    void showRows();
    void showUnits(engine::UnitSystem system);
    [[nodiscard]] std::vector<NumberBox*> boxes() const;

    QGridLayout* m_grid;
    VisitTime* m_time;
    QComboBox *m_kind, *m_ramp;
    NumberBox *m_minutes, *m_area, *m_amount, *m_rain, *m_cost;
    LineEntry *m_until, *m_what, *m_photo, *m_note;
    std::vector<Row> m_rows;
};

/// A kind of event, a word of the pond file, as the window names it.
[[nodiscard]] QString kindText(const std::string& word);

}  // namespace widgets
