#include "widgets/follow_up/dawn_form.h"

#include "engine/water/basin.h"
#include "widgets/controls/line_entry.h"
#include "widgets/controls/number_box.h"
#include "widgets/controls/visit_time.h"
#include "widgets/document/key_rules.h"
#include "widgets/document/number_text.h"
#include "widgets/document/pond_units.h"

#include <QComboBox>
#include <QGridLayout>
#include <QLabel>

#include <cmath>

namespace widgets {
namespace {

constexpr double kOffEnds = 0.5;  // from surface and bottom [m], as the trade reads

double deepestOf(const engine::Pond& pond) {
    return !pond.basin.contours.empty() ? pond.basin.contours.back().depth.value
           : pond.basin.maxDepth        ? pond.basin.maxDepth->value
                                        : 0.0;
}

QComboBox* listOf(const QStringList& words, const QString& name, QWidget* parent) {
    auto* box = new QComboBox(parent);
    box->addItem(DawnForm::tr("not noted"));
    box->addItems(words);
    box->setAccessibleName(name);
    return box;
}

template <class Box>
void forget(Box* box) {
    box->entry().reset();
    box->setValue({});
}

}  // namespace

QComboBox* smellBox(QWidget* parent) {
    return listOf({DawnForm::tr("none"), DawnForm::tr("faint"), DawnForm::tr("strong")},
                  DawnForm::tr("Smell over the water"), parent);
}

QComboBox* fishBox(QWidget* parent) {
    return listOf(
        {DawnForm::tr("as usual"), DawnForm::tr("off their feed"), DawnForm::tr("piping at the surface")},
        DawnForm::tr("What the fish do"), parent);
}

DawnForm::DawnForm(Extent extent, QWidget* parent)
    : QWidget(parent), m_time(new VisitTime(this)), m_smell(smellBox(this)), m_fish(fishBox(this)) {
    auto* grid = new QGridLayout(this);
    grid->setContentsMargins(0, 0, 0, 0);
    grid->setHorizontalSpacing(6);
    grid->setVerticalSpacing(4);
    int line = 0;
    const auto add = [&](const QString& text, QWidget* field, const QString& help) {
        auto* label = new QLabel(text, this);
        label->setBuddy(field);
        field->setAccessibleName(text);
        field->setAccessibleDescription(help);
        field->setToolTip(help);
        grid->addWidget(label, line, 0);
        grid->addWidget(field, line++, 1, 1, 3);
        return label;
    };
    add(tr("At"), m_time, tr("Date and time on the pond's clock, as 2026-06-14 05:40."));
    for (std::size_t i = 0; i < m_heads.size(); ++i) {
        m_heads[i] = new QLabel(this);
        grid->addWidget(m_heads[i], line, static_cast<int>(i) + 1);
    }
    ++line;
    const std::array names{tr("Surface"), tr("Middle"), tr("Bottom")};
    for (std::size_t i = 0; i < m_rows.size(); ++i) {
        const auto box = [&](const char* key, double step, const QString& what, const QString& help) {
            auto* made = new NumberBox(keyRule(key), step, NumberBox::Empty::Allowed, this);
            made->setAccessibleName(what.arg(names[i]));
            made->setAccessibleDescription(help);
            made->setToolTip(help);
            made->setMinimumWidth(made->fontMetrics().averageCharWidth() * 9);
            return made;
        };
        m_rows[i] = {box("reading.depth_m", 0.5, tr("%1: depth"), tr("Of the probe, from the surface.")),
                     box("reading.temperature_c", 0.5, tr("%1: temperature"), tr("Of the water there.")),
                     box("reading.oxygen_mg_per_l", 0.5, tr("%1: oxygen"),
                         tr("As the meter shows it, in mg/L. At dawn it counts most."))};
        auto* label = new QLabel(names[i], this);
        label->setBuddy(m_rows[i].oxygen);
        grid->addWidget(label, line, 0);
        int column = 1;
        for (NumberBox* one : {m_rows[i].depth, m_rows[i].temperature, m_rows[i].oxygen}) {
            grid->addWidget(one, line, column++);
        }
        ++line;
    }
    if (extent == Extent::Full) {
        m_secchi = new NumberBox(keyRule("reading.secchi_m"), 0.1, NumberBox::Empty::Allowed, this);
        m_secchiLabel = add(tr("Secchi"), m_secchi, tr("Depth at which the disk is lost from sight."));
    }
    add(tr("Smell"), m_smell, tr("Of rotten eggs, in the boil or over the water."));
    add(tr("Fish"), m_fish, tr("What the fish do."));
    if (extent == Extent::Full) {
        m_meter = new LineEntry(LineEntry::Kind::Text, this);
        m_photo = new LineEntry(LineEntry::Kind::Text, this);
        m_note = new LineEntry(LineEntry::Kind::Text, this);
        add(tr("Meter"), m_meter, tr("Which one, where there are several."));
        add(tr("Photo"), m_photo, tr("A file or a number by which it is found again."));
        add(tr("Note"), m_note, tr("What else was seen: a storm, a colour, who was there."));
    }
    for (int i = 1; i <= 3; ++i) {
        grid->setColumnStretch(i, 1);
    }
    m_fault = new QLabel(this);
    m_fault->setWordWrap(true);
    m_fault->setTextFormat(Qt::PlainText);
    m_fault->setAccessibleName(tr("What cannot be taken"));
    m_fault->hide();
    grid->addWidget(m_fault, line, 0, 1, 4);
    for (const Entry* entry : entries()) {
        connect(entry, &Entry::faultChanged, this, &DawnForm::showFault);
    }
    // As one goes through a visit; the order in which they were made is another.
    QWidget* before = m_time;
    for (QWidget* next : std::initializer_list<QWidget*>{
             m_rows[0].depth, m_rows[0].temperature, m_rows[0].oxygen, m_rows[1].depth, m_rows[1].temperature,
             m_rows[1].oxygen, m_rows[2].depth, m_rows[2].temperature, m_rows[2].oxygen, m_secchi, m_smell,
             m_fish, m_meter, m_photo, m_note}) {
        if (next != nullptr) {
            setTabOrder(before, next);
            before = next;
        }
    }
    showUnits(engine::UnitSystem::Metric);
    setFocusProxy(m_rows[0].temperature);  // the time is proposed and the depths are the usual ones
}

std::vector<NumberBox*> DawnForm::boxes() const {
    std::vector<NumberBox*> all;
    for (const Row& row : m_rows) {
        all.insert(all.end(), {row.depth, row.temperature, row.oxygen});
    }
    if (m_secchi != nullptr) {
        all.push_back(m_secchi);
    }
    return all;
}

void DawnForm::showUnits(engine::UnitSystem system) {
    const auto unit = [system](const char* of) { return shownUnit(shownUnitOf(of, system).text); };
    m_heads[0]->setText(tr("Depth, %1").arg(unit("m")));
    m_heads[1]->setText(tr("Temp., %1").arg(unit("degC")));
    m_heads[2]->setText(tr("Oxygen, mg/L"));
    if (m_secchiLabel != nullptr) {
        m_secchiLabel->setText(tr("Secchi, %1").arg(unit("m")));
    }
    for (NumberBox* box : boxes()) {
        box->setUnits(system);
    }
}

void DawnForm::setPond(const engine::Pond& pond) {
    showUnits(unitsOf(pond));
    const double deepest = deepestOf(pond);
    if (m_hasDepths || deepest <= 0.0) {
        return;
    }
    m_hasDepths = true;
    const auto tenths = [](double value) { return std::round(10.0 * value) / 10.0; };
    const double off = std::min(kOffEnds, 0.2 * deepest);
    m_rows[0].depth->setValue(tenths(off));
    m_rows[1].depth->setValue(tenths(0.5 * deepest));
    m_rows[2].depth->setValue(tenths(deepest - off));
}

void DawnForm::propose(std::optional<engine::LocalTime> at) {
    m_time->propose(at);
}

std::vector<Entry*> DawnForm::entries() const {
    std::vector<Entry*> all{&m_time->entry()};
    for (NumberBox* box : boxes()) {
        all.push_back(&box->entry());
    }
    for (LineEntry* entry : {m_meter, m_photo, m_note}) {
        if (entry != nullptr) {
            all.push_back(&entry->entry());
        }
    }
    return all;
}

bool DawnForm::commit() {
    for (Entry* entry : entries()) {
        if (!entry->commit()) {
            entry->field().setFocus();
            return false;
        }
    }
    return true;
}

/// The first fault, with the name of its field.
void DawnForm::showFault() {
    m_fault->clear();
    for (const Entry* entry : entries()) {
        if (m_fault->text().isEmpty() && !entry->fault().isEmpty()) {
            m_fault->setText(tr("%1: %2").arg(entry->field().accessibleName(), entry->fault()));
        }
    }
    m_fault->setVisible(!m_fault->text().isEmpty());
}

std::optional<engine::LocalTime> DawnForm::time() const {
    return m_time->time();
}

std::vector<engine::Reading> DawnForm::readings() const {
    std::vector<engine::Reading> out;
    const auto at = time();
    if (!at) {
        return out;
    }
    for (const Row& row : m_rows) {
        if (!row.temperature->value() && !row.oxygen->value()) {
            continue;
        }
        engine::Reading reading;
        const auto put = [](engine::MaybeQuantity& to, const NumberBox* from) {
            if (from->value()) {
                to = engine::Quantity(*from->value());
            }
        };
        put(reading.depth, row.depth);
        put(reading.temperature, row.temperature);
        put(reading.oxygen, row.oxygen);
        out.push_back(reading);
    }
    const bool isNoted = m_note != nullptr && !m_note->value().empty();
    const bool hasSecchi = m_secchi != nullptr && m_secchi->value();
    const bool isSeen = m_smell->currentIndex() > 0 || m_fish->currentIndex() > 0;
    if (out.empty() && !isNoted && !hasSecchi && !isSeen) {
        return out;
    }
    if (out.empty()) {
        out.emplace_back();
    }
    engine::Reading& first = out.front();
    if (m_smell->currentIndex() > 0) {
        first.smell = static_cast<engine::Smell>(m_smell->currentIndex() - 1);
    }
    if (m_fish->currentIndex() > 0) {
        first.fish = static_cast<engine::FishBehaviour>(m_fish->currentIndex() - 1);
    }
    if (hasSecchi) {
        first.secchi = engine::Quantity(*m_secchi->value());
    }
    for (engine::Reading& reading : out) {
        reading.at = at;
        reading.meter = m_meter != nullptr ? m_meter->value() : std::string();
    }
    first.photo = m_photo != nullptr ? m_photo->value() : std::string();
    first.note = m_note != nullptr ? m_note->value() : std::string();
    return out;
}

void DawnForm::clear() {
    m_time->forget();
    for (const Row& row : m_rows) {
        forget(row.temperature);
        forget(row.oxygen);
    }
    if (m_secchi != nullptr) {
        forget(m_secchi);
    }
    for (LineEntry* entry : {m_photo, m_note}) {  // the meter stays in the hand
        if (entry != nullptr) {
            forget(entry);
        }
    }
    m_smell->setCurrentIndex(0);
    m_fish->setCurrentIndex(0);
}

void DawnForm::startAnew() {
    clear();
    m_hasDepths = false;
    for (const Row& row : m_rows) {
        forget(row.depth);
    }
    if (m_meter != nullptr) {
        forget(m_meter);
    }
}

}  // namespace widgets
