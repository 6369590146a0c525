#include "widgets/follow_up/correction_dialog.h"

#include "engine/pond/local_time.h"
#include "widgets/controls/line_entry.h"
#include "widgets/controls/number_box.h"
#include "widgets/document/key_rules.h"
#include "widgets/document/number_text.h"
#include "widgets/document/pond_units.h"
#include "widgets/document/to_qstring.h"
#include "widgets/follow_up/dawn_form.h"
#include "widgets/follow_up/event_form.h"

#include <QComboBox>
#include <QDialogButtonBox>
#include <QFormLayout>
#include <QLabel>
#include <QPushButton>
#include <QVBoxLayout>

namespace widgets {
namespace {

std::optional<double> numberIn(const engine::MaybeQuantity& from) {
    return from ? std::optional(from->value) : std::nullopt;
}

void put(engine::MaybeQuantity& to, const NumberBox* from) {
    to = from->value() ? engine::MaybeQuantity(engine::Quantity(*from->value())) : std::nullopt;
}

}  // namespace

CorrectionDialog::CorrectionDialog(const engine::Pond& pond, const engine::Reading* reading,
                                   const engine::Event* event, QWidget* parent)
    : QDialog(parent) {
    setWindowTitle(tr("Correct an entry"));
    auto* column = new QVBoxLayout(this);
    auto* what = new QLabel(this);
    what->setWordWrap(true);
    what->setTextFormat(Qt::PlainText);
    what->setMinimumWidth(380);
    column->addWidget(what);
    if (reading != nullptr) {
        m_wrong = *reading;
        const ShownUnit metres = shownUnitOf("m", unitsOf(pond));
        const QString depth =
            reading->depth ? tr(" at %1 %2")
                                 .arg(QLocale().toString(metres.toShown(reading->depth->value), 'f', 1),
                                      QString::fromUtf8(metres.text))
                           : QString();
        what->setText(tr("The reading of %1%2 stays in the log; what you enter here counts instead of it.")
                          .arg(toQString(engine::formatLocalTime(*reading->at)), depth));
        column->addWidget(readingForm(pond));
    } else {
        m_wrongEvent = *event;
        what->setText(tr("The event stays in the log; what you enter here counts instead of it."));
        m_event = new EventForm(this);
        m_event->setPond(pond);
        m_event->setEvent(*event);
        column->addWidget(m_event);
    }
    auto* buttons = new QDialogButtonBox(QDialogButtonBox::Cancel, this);
    buttons->addButton(tr("&Enter the Correction"), QDialogButtonBox::AcceptRole);
    column->addWidget(buttons);
    connect(buttons, &QDialogButtonBox::accepted, this, [this] {
        if (commit()) {
            accept();
        }
    });
    connect(buttons, &QDialogButtonBox::rejected, this, &QDialog::reject);
}

QWidget* CorrectionDialog::readingForm(const engine::Pond& pond) {
    auto* part = new QWidget(this);
    auto* form = new QFormLayout(part);
    form->setContentsMargins(0, 0, 0, 0);
    const engine::UnitSystem system = unitsOf(pond);
    const auto box = [&](const QString& label, const char* key, const char* unit,
                         const engine::MaybeQuantity& value) {
        auto* made = new NumberBox(keyRule(key), 0.1, NumberBox::Empty::Allowed, part);
        made->setUnits(system);
        made->setValue(numberIn(value));
        made->setAccessibleName(label.arg(shownUnit(shownUnitOf(unit, system).text)));
        form->addRow(made->accessibleName(), made);
        return made;
    };
    m_temperature = box(tr("Temperature, %1"), "reading.temperature_c", "degC", m_wrong.temperature);
    m_oxygen = box(tr("Oxygen, %1"), "reading.oxygen_mg_per_l", "mg/L", m_wrong.oxygen);
    m_secchi = box(tr("Secchi, %1"), "reading.secchi_m", "m", m_wrong.secchi);
    m_smell = smellBox(part);
    m_smell->setCurrentIndex(m_wrong.smell ? static_cast<int>(*m_wrong.smell) + 1 : 0);
    m_fish = fishBox(part);
    m_fish->setCurrentIndex(m_wrong.fish ? static_cast<int>(*m_wrong.fish) + 1 : 0);
    m_note = new LineEntry(LineEntry::Kind::Text, part);
    m_note->setValue(m_wrong.note);
    m_note->setAccessibleName(tr("Note"));
    form->addRow(tr("Smell"), m_smell);
    form->addRow(tr("Fish"), m_fish);
    form->addRow(tr("Note"), m_note);
    return part;
}

bool CorrectionDialog::commit() {
    if (m_event != nullptr) {
        return m_event->commit();
    }
    for (NumberBox* box : {m_temperature, m_oxygen, m_secchi}) {
        if (!box->entry().commit()) {
            return false;
        }
    }
    return m_note->entry().commit();
}

std::vector<engine::Reading> CorrectionDialog::readings() const {
    if (m_event != nullptr) {
        return {};
    }
    engine::Reading right = m_wrong;
    right.line = 0;
    right.corrects = m_wrong.corrects ? m_wrong.corrects : m_wrong.at;
    put(right.temperature, m_temperature);
    put(right.oxygen, m_oxygen);
    put(right.secchi, m_secchi);
    right.smell = m_smell->currentIndex() > 0
                      ? std::optional(static_cast<engine::Smell>(m_smell->currentIndex() - 1))
                      : std::nullopt;
    right.fish = m_fish->currentIndex() > 0
                     ? std::optional(static_cast<engine::FishBehaviour>(m_fish->currentIndex() - 1))
                     : std::nullopt;
    right.note = m_note->value();
    return {right};
}

std::vector<engine::Event> CorrectionDialog::events() const {
    if (m_event == nullptr) {
        return {};
    }
    engine::Event right = m_event->typed().value_or(engine::Event{});
    right.corrects = m_wrongEvent.corrects ? m_wrongEvent.corrects : m_wrongEvent.at;
    right.diffusers = m_wrongEvent.diffusers;  // what the form does not show
    right.depth = m_wrongEvent.depth;
    return {right};
}

}  // namespace widgets
