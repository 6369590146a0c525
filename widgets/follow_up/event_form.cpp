#include "widgets/follow_up/event_form.h"

#include "engine/pond/local_time.h"
#include "widgets/controls/line_entry.h"
#include "widgets/controls/number_box.h"
#include "widgets/controls/visit_time.h"
#include "widgets/document/key_rules.h"
#include "widgets/document/pond_units.h"
#include "widgets/document/to_qstring.h"

#include <QComboBox>
#include <QGridLayout>
#include <QLabel>

#include <algorithm>
#include <string_view>

namespace widgets {
namespace {

constexpr const char* kKinds[] = {"started",      "stopped",    "run",           "power_cut",
                                  "power_back",   "treatment",  "feed",          "rain",
                                  "bloom_change", "not_bought", "fish_distress", "kill"};

NumberBox* numberBox(const char* key, double step, QWidget* parent) {
    return new NumberBox(keyRule(key), step, NumberBox::Empty::Allowed, parent);
}

void put(engine::MaybeQuantity& to, const NumberBox* from) {
    if (from->isVisibleTo(from->parentWidget()) && from->value()) {
        to = engine::Quantity(*from->value());
    }
}

void fill(NumberBox* box, const engine::MaybeQuantity& from) {
    box->setValue(from ? std::optional(from->value) : std::nullopt);
}

}  // namespace

QString kindText(const std::string& word) {
    const std::pair<const char*, QString> words[] = {{"started", EventForm::tr("Ramp started")},
                                                     {"stopped", EventForm::tr("Air stopped")},
                                                     {"run", EventForm::tr("Air ran")},
                                                     {"power_cut", EventForm::tr("Power cut")},
                                                     {"power_back", EventForm::tr("Power back")},
                                                     {"treatment", EventForm::tr("Treatment")},
                                                     {"algaecide", EventForm::tr("Algaecide")},
                                                     {"feed", EventForm::tr("Feed")},
                                                     {"rain", EventForm::tr("Rain")},
                                                     {"bloom_change", EventForm::tr("Bloom changed colour")},
                                                     {"not_bought", EventForm::tr("Not bought")},
                                                     {"fish_distress", EventForm::tr("Fish in distress")},
                                                     {"kill", EventForm::tr("Dead fish")}};
    for (const auto& [known, text] : words) {
        if (word == known) {
            return text;
        }
    }
    return toQString(word);
}

EventForm::EventForm(QWidget* parent)
    : QWidget(parent),
      m_grid(new QGridLayout(this)),
      m_time(new VisitTime(this)),
      m_kind(new QComboBox(this)),
      m_ramp(new QComboBox(this)),
      m_minutes(numberBox("event.minutes", 10.0, this)),
      m_area(numberBox("event.area_percent", 5.0, this)),
      m_amount(numberBox("event.amount_kg", 1.0, this)),
      m_rain(numberBox("event.rain_mm", 1.0, this)),
      m_cost(numberBox("event.cost", 10.0, this)),
      m_until(new LineEntry(LineEntry::Kind::Time, this)),
      m_what(new LineEntry(LineEntry::Kind::Text, this)),
      m_photo(new LineEntry(LineEntry::Kind::Text, this)),
      m_note(new LineEntry(LineEntry::Kind::Text, this)) {
    m_grid->setContentsMargins(0, 0, 0, 0);
    m_grid->setVerticalSpacing(4);
    m_grid->setColumnStretch(1, 1);
    for (const char* kind : kKinds) {
        m_kind->addItem(kindText(kind), QString::fromUtf8(kind));
    }
    m_ramp->setSizeAdjustPolicy(QComboBox::AdjustToMinimumContentsLengthWithIcon);
    m_ramp->setMinimumContentsLength(12);
    add(tr("What"), m_kind, tr("Starts, runs and cuts decide what the air did; the others stand in the log."),
        {});
    add(tr("At"), m_time, tr("Date and time on the pond's clock, as 2026-06-14 09:00."), {});
    add(tr("Ramp"), m_ramp, tr("Which ramp is run from this day on, its day 1 being this day."), {"started"});
    add(tr("Minutes"), m_minutes, tr("How long the air ran, if its end is not given."), {"run"});
    add(tr("Until"), m_until, tr("Date and time of the end, where it is known."), {"run", "power_cut"});
    add(tr("Substance"), m_what,
        tr("Copper, herbicide, dye, lime, bacteria: what was put in, or offered and left out."),
        {"treatment", "algaecide", "not_bought"});
    add(tr("Area, %"), m_area, tr("Share of the pond's area that was treated."), {"treatment", "algaecide"});
    add(tr("Amount, %1"), m_amount, tr("Of the feed or of what was put in."),
        {"treatment", "algaecide", "feed"}, "kg");
    add(tr("Cost"), m_cost, tr("In the owner's money."), {"treatment", "algaecide", "not_bought"});
    add(tr("Rain, %1"), m_rain, tr("As the gauge shows it."), {"rain"}, "mm");
    add(tr("Photo"), m_photo, tr("A file or a number by which it is found again."), {});
    add(tr("Note"), m_note, tr("What else is to be known: which fish, how many, who was there."), {});
    connect(m_kind, &QComboBox::currentIndexChanged, this, &EventForm::showRows);
    showRows();
    showUnits(engine::UnitSystem::Metric);
}

void EventForm::add(const QString& text, QWidget* field, const QString& help, std::vector<const char*> kinds,
                    const char* unit) {
    auto* label = new QLabel(text, this);
    label->setBuddy(field);
    field->setAccessibleName(text);
    field->setAccessibleDescription(help);
    field->setToolTip(help);
    const int line = static_cast<int>(m_rows.size());
    m_grid->addWidget(label, line, 0);
    m_grid->addWidget(field, line, 1);
    m_rows.push_back({label, field, std::move(kinds), text, unit});
}

void EventForm::showUnits(engine::UnitSystem system) {
    for (const Row& row : m_rows) {
        if (*row.unit != '\0') {
            row.label->setText(row.text.arg(QString::fromUtf8(shownUnitOf(row.unit, system).text)));
            row.field->setAccessibleName(row.label->text());
        }
    }
    for (NumberBox* box : boxes()) {
        box->setUnits(system);
    }
}

std::vector<NumberBox*> EventForm::boxes() const {
    return {m_minutes, m_area, m_amount, m_rain, m_cost};
}

void EventForm::showRows() {
    const std::string kind = m_kind->currentData().toString().toStdString();
    for (const Row& row : m_rows) {
        const bool isShown =
            row.kinds.empty() || std::any_of(row.kinds.begin(), row.kinds.end(),
                                             [&kind](std::string_view one) { return one == kind; });
        row.label->setVisible(isShown);
        row.field->setVisible(isShown);
    }
}

void EventForm::setPond(const engine::Pond& pond) {
    showUnits(unitsOf(pond));
    const QString before = m_ramp->currentText();
    m_ramp->clear();
    for (const engine::Ramp& ramp : pond.ramps) {
        m_ramp->addItem(toQString(ramp.name));
    }
    const int at = m_ramp->findText(before.isEmpty() ? toQString(pond.chosenRamp) : before);
    m_ramp->setCurrentIndex(std::max(at, 0));
}

void EventForm::propose(std::optional<engine::LocalTime> at) {
    m_time->propose(at);
}

void EventForm::setEvent(const engine::Event& event) {
    const QString word = toQString(event.kind);
    if (m_kind->findData(word) < 0) {
        m_kind->addItem(kindText(event.kind), word);
    }
    m_kind->setCurrentIndex(m_kind->findData(word));
    m_kind->setEnabled(false);
    m_time->set(event.at);
    m_time->setEnabled(false);
    m_ramp->setCurrentIndex(m_ramp->findText(toQString(event.ramp)));
    fill(m_minutes, event.minutes);
    fill(m_area, event.area_percent);
    fill(m_amount, event.amount_kg);
    fill(m_rain, event.rain_mm);
    fill(m_cost, event.cost);
    m_until->setValue(event.until ? engine::formatLocalTime(*event.until) : std::string());
    m_what->setValue(event.what);
    m_photo->setValue(event.photo);
    m_note->setValue(event.note);
}

bool EventForm::commit() {
    for (NumberBox* box : boxes()) {
        if (box->isVisibleTo(this) && !box->entry().commit()) {
            box->setFocus();
            return false;
        }
    }
    for (LineEntry* entry : {static_cast<LineEntry*>(m_time), m_until, m_what, m_photo, m_note}) {
        if (entry->isVisibleTo(this) && !entry->entry().commit()) {
            entry->setFocus();
            return false;
        }
    }
    return true;
}

std::optional<engine::Event> EventForm::typed() const {
    engine::Event out;
    out.at = m_time->time();
    if (!out.at) {
        return std::nullopt;
    }
    out.kind = m_kind->currentData().toString().toStdString();
    if (out.kind == "started") {
        out.ramp = m_ramp->currentText().toStdString();
    }
    put(out.minutes, m_minutes);
    put(out.area_percent, m_area);
    put(out.amount_kg, m_amount);
    put(out.rain_mm, m_rain);
    put(out.cost, m_cost);
    if (m_until->isVisibleTo(this)) {
        out.until = engine::parseLocalTime(m_until->value());
    }
    if (m_what->isVisibleTo(this)) {
        out.what = m_what->value();
    }
    out.photo = m_photo->value();
    out.note = m_note->value();
    return out;
}

void EventForm::clear() {
    m_time->forget();
    for (NumberBox* box : boxes()) {
        box->entry().reset();
        box->setValue(std::nullopt);
    }
    for (LineEntry* entry : {m_until, m_what, m_photo, m_note}) {
        entry->entry().reset();
        entry->setValue({});
    }
}

}  // namespace widgets
