#pragma once

#include "engine/pond/pond.h"

#include <QDialog>

#include <vector>

class QComboBox;
class QLabel;

namespace widgets {

class EventForm;
class LineEntry;
class NumberBox;

/// What should stand in the place of an entry of the log. Time, depth and meter of a reading, and kind and
/// time of an event, say which entry it is and stay.
class CorrectionDialog final : public QDialog {
    Q_OBJECT
public:
    /// @param reading, event  The entry; one of them is null.
    CorrectionDialog(const engine::Pond& pond, const engine::Reading* reading, const engine::Event* event,
                     QWidget* parent = nullptr);

    /// The entries to be added. @pre accepted
    [[nodiscard]] std::vector<engine::Reading> readings() const;
    [[nodiscard]] std::vector<engine::Event> events() const;

private:
    QWidget* readingForm(const engine::Pond& pond);
    [[nodiscard]] bool commit();

    engine::Reading m_wrong;
    engine::Event m_wrongEvent;
    EventForm* m_event = nullptr;
    NumberBox *m_temperature = nullptr, *m_oxygen = nullptr, *m_secchi = nullptr;
    QComboBox *m_smell = nullptr, *m_fish = nullptr;
    LineEntry* m_note = nullptr;
};

}  // namespace widgets
