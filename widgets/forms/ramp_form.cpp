#include "widgets/forms/ramp_form.h"

#include "engine/intake/usual_ramp.h"
#include "engine/pond/pond_words.h"
#include "widgets/controls/clock_box.h"
#include "widgets/controls/name_edit.h"
#include "widgets/controls/number_list_edit.h"
#include "widgets/document/key_rules.h"
#include "widgets/document/number_text.h"
#include "widgets/document/to_qstring.h"
#include "widgets/forms/ramp_kind.h"

#include <QCheckBox>
#include <QComboBox>

#include <algorithm>

namespace widgets {
namespace {

using engine::Pond;
using engine::RampKind;

constexpr int kUsualWindow_min = 360;          ///< Late morning to mid-afternoon; common practice, no source.
constexpr engine::ClockTime kUsualStart{600};  ///< 10:00, where a ramp says nothing

using MaybeClock = std::optional<engine::ClockTime>;

/// A window that only begins or only ends gets its usual length; one end taken away takes the other.
void putWindowEnd(std::optional<engine::ClockWindow>& window, engine::ClockTime engine::ClockWindow::*end,
                  const MaybeClock& time) {
    if (!time) {
        window.reset();
    } else if (window) {
        (*window).*end = *time;
    } else {
        const int other = end == &engine::ClockWindow::from ? kUsualWindow_min : -kUsualWindow_min;
        window.emplace(engine::ClockWindow{*time, *time});
        auto& otherEnd = end == &engine::ClockWindow::from ? window->to : window->from;
        otherEnd.minutes = (time->minutes + other + 1440) % 1440;
    }
}

}  // namespace

RampForm::RampForm(Document& document, QWidget* parent) : FieldForm(document, parent) {
    addEmptyPage(tr("No ramp is selected."));
    addNameAndKind();
    addHeading(tr("Run time"));
    addRunTime();
    addHeading(tr("Time of day"));
    addTimeOfDay();
    addHeading(tr("Diffusers"));
    addDiffusers();
    refresh();
}

void RampForm::setRamp(int index) {
    if (index == m_index) {
        return;
    }
    if (hasSubject()) {
        commit();
    }
    forget();
    m_index = index;
    refresh();
}

bool RampForm::hasSubject() const {
    return m_index >= 0 && m_index < static_cast<int>(pond().ramps.size());
}

QString RampForm::subjectName() const {
    return toQString(rampOf(pond()).name);
}

void RampForm::addNameAndKind() {
    addEntry(
        new NameEdit(this),
        {tr("Name"), tr("Rename “%1”"),
         tr("The ramp's name, as it stands on charts and papers; at most 60 characters. “do-nothing” is kept "
            "for the pond left alone.")},
        [this](const Pond& pond) { return toQString(rampOf(pond).name); },
        [this](Pond& pond, const QString& name) {
            engine::Ramp& ramp = rampOf(pond);
            const bool isChosen = pond.chosenRamp == ramp.name;
            ramp.name = name.toStdString();
            if (isChosen) {
                pond.chosenRamp = ramp.name;
            }
        });
    m_kind = addChoice(
        {tr("Kind"), tr("Change the kind of “%1”"),
         tr("How the minutes of air grow from day to day. Numbers that the new kind needs are given usual "
            "values; those it does not have are dropped.")},
        [this](const Pond& pond) { return m_kind->findData(static_cast<int>(rampOf(pond).kind)); },
        [this](Pond& pond, int index) {
            engine::changeKind(rampOf(pond), static_cast<RampKind>(m_kind->itemData(index).toInt()));
        });
    for (const auto& word : engine::kRampKindWords) {
        m_kind->addItem(kindText(word.value), static_cast<int>(word.value));
    }
    addCheck(
        {tr("The chosen ramp"), tr("Change the chosen ramp"),
         tr("The ramp that is meant where only one can be: drawn heavier, compared with readings, and "
            "printed on the papers.")},
        [this](const Pond& pond) { return pond.chosenRamp == rampOf(pond).name; },
        [this](Pond& pond, bool isChosen) {
            pond.chosenRamp = isChosen ? rampOf(pond).name : std::string();
        });
}

void RampForm::addRunTime() {
    const auto refused = NumberBox::Empty::Refused;
    m_first = addNumber(
        {tr("First day, min"), tr("Change the first day of “%1”"),
         tr("Minutes of air on day 1. Usual: 20 to 30 min (common practice, no source). Minutes "
            "are not a dose: in a small pond they may lift all of the bottom water.")},
        rampRule("first_min"), 10.0, refused, [this](auto& pond) -> auto& { return rampOf(pond).first_min; });
    m_factor = addNumber(
        {tr("Times each day"), tr("Change the daily factor of “%1”"),
         tr("What each day's minutes are of those of the day before. Usual: 2 (common practice, "
            "no source).")},
        rampRule("factor"), 0.1,
        NumberBox::Empty::Allowed, [this](auto& pond) -> auto& { return rampOf(pond).factor; });
    m_factor->setTakenIfEmpty(2.0);
    m_added = addNumber(
        {tr("Added daily, min"), tr("Change what “%1” adds each day"),
         tr("Minutes that each day runs longer than the day before. Usual: 30 to 60 min (common "
            "practice, no source).")},
        rampRule("add_min_per_d"), 10.0,
        refused, [this](auto& pond) -> auto& { return rampOf(pond).add_minPerDay; });
    m_dose = addNumber(
        {tr("Dose, % a day"), tr("Change the dose of “%1”"),
         tr("Share of the bottom water that a day lifts, after the net share. Usual: 10 to 15 % "
            "where the debt is large, up to 25 % where it is small (judgement).")},
        rampRule("dose_percent"), 1.0,
        refused, [this](auto& pond) -> auto& { return rampOf(pond).dose_percent; });
    m_hold = addCheck(
        {tr("Never lift the cap"), tr("Change the hold of “%1”"),
         tr("Otherwise the cap is lifted once the pond is mixed and the bottom has more than 2 mg/L, "
            "and the ramp goes on to continuous in two steps.")},
        [this](const Pond& pond) { return rampOf(pond).hold; },
        [this](Pond& pond, bool isHeld) { rampOf(pond).hold = isHeld; });
    m_minutes = addEntry(
        new NumberListEdit(rampRule("minutes"), NumberListEdit::Empty::Refused, this),
        {tr("Minutes by day"), tr("Change the minutes of “%1”"),
         tr("Minutes of air on day 1, day 2 and so on, 0 to 1440; the last number is kept. A week to twelve "
            "days "
            "are usual (common practice, no source).")},
        [this](const Pond& pond) { return rampOf(pond).minutes; },
        [this](Pond& pond, const std::vector<double>& minutes) { rampOf(pond).minutes = minutes; });
    addCheck(
        {tr("Skip hold days"), tr("Change the weather hold of “%1”"),
         tr("No air on days on which the weather rule says hold; the ramp goes on the day after.")},
        [this](const Pond& pond) { return rampOf(pond).weatherHold; },
        [this](Pond& pond, bool isHeld) { rampOf(pond).weatherHold = isHeld; });
}

void RampForm::addTimeOfDay() {
    m_start = addEntry(
        new ClockBox(this),
        {tr("Start"), tr("Change the start time of “%1”"),
         tr("When the air goes on each day. Usual: late morning, so that the pond is watched and has made "
            "oxygen "
            "(common practice, no source).")},
        [this](const Pond& pond) { return rampOf(pond).startTime; },
        [this](Pond& pond, const MaybeClock& time) { rampOf(pond).startTime = time; });
    const auto addWindowEnd = [this](const Words& words, engine::ClockTime engine::ClockWindow::*end,
                                     const QString& placeholder) {
        ClockBox* box = addEntry(
            new ClockBox(this), words,
            [this, end](const Pond& pond) {
                const auto& window = rampOf(pond).window;
                return window ? MaybeClock((*window).*end) : std::nullopt;
            },
            [this, end](Pond& pond, const MaybeClock& time) {
                putWindowEnd(rampOf(pond).window, end, time);
            });
        box->setTakenIfEmpty(std::nullopt, placeholder);
    };
    addWindowEnd({tr("Not before"), tr("Change the window of “%1”"),
                  tr("Air is kept to a window of the clock, which cuts a longer run. Empty: any time. A new "
                     "window is six hours long; an emptied end takes the other with it.")},
                 &engine::ClockWindow::from, tr("any time"));
    addWindowEnd(
        {tr("Not after"), tr("Change the window of “%1”"),
         tr("End of the window. Usual: three to four hours before dusk (common practice, no source). An "
            "end earlier than the beginning lies after midnight.")},
        &engine::ClockWindow::to, tr("any time"));
    m_pulses = addByDay({tr("Runs a day"), tr("Change the runs a day of “%1”"),
                         tr("Equal runs into which a day's minutes are parted, over the window or around the "
                            "clock. One number, or one for each day; the last is kept.")},
                        "pulses", &engine::Ramp::pulses);
    m_pulses->setPlaceholderText(tr("1 (automatic)"));
}

void RampForm::addDiffusers() {
    m_diffusers =
        addByDay({tr("Open"), tr("Change the diffusers open in “%1”"),
                  tr("How many diffusers run. One number, or one for each day; the last is kept. Usual: "
                     "one on the first days (common practice, no source).")},
                 "diffusers", &engine::Ramp::diffusers);
    m_depth =
        addByDay({tr("Depth, %1"), tr("Change the diffuser depth of “%1”"),
                  tr("Where the diffusers hang. One number, or one for each day; the last is kept. Usual in "
                     "old ponds: near the thermocline first, then 0.3 to 0.5 m deeper a step (common "
                     "practice, no source).")},
                 "depth_m", &engine::Ramp::depth);
    setUnit(m_depth, "m");
}

NumberListEdit* RampForm::addByDay(const Words& words, const char* key,
                                   std::optional<engine::ByDay> engine::Ramp::*list) {
    return addEntry(
        new NumberListEdit(rampRule(key), NumberListEdit::Empty::Allowed, this), words,
        [this, list](const Pond& pond) {
            const auto& days = rampOf(pond).*list;
            return days ? days->values : std::vector<double>();
        },
        [this, list](Pond& pond, const std::vector<double>& values) {
            auto& days = rampOf(pond).*list;
            if (values.empty()) {
                days.reset();
            } else if (!days || days->values != values) {
                days = engine::ByDay{values, values.size() > 1};
            }
        });
}

void RampForm::refreshRows() {
    const engine::Ramp& ramp = rampOf(pond());
    const bool isDoubling = ramp.kind == RampKind::Doubling;
    const bool isLinear = ramp.kind == RampKind::Linear;
    const bool isCapped = ramp.kind == RampKind::Capped;
    setRowVisible(m_first, isDoubling || isLinear);
    setRowVisible(m_factor, isDoubling);
    setRowVisible(m_added, isLinear);
    setRowVisible(m_dose, isCapped);
    setRowVisible(m_hold, isCapped);
    setRowVisible(m_minutes, ramp.kind == RampKind::Table);
    setRowVisible(m_pulses, !isCapped);  // its one run ends when the day's dose is reached

    const engine::ClockTime start = ramp.window ? ramp.window->from : kUsualStart;
    m_start->setTakenIfEmpty(start, tr("%1 (automatic)").arg(clockText(start)));
    if (const auto& aerator = pond().aerator; aerator && aerator->diffusers && aerator->depth) {
        m_diffusers->setPlaceholderText(tr("all %1 (automatic)").arg(numberText(*aerator->diffusers, locale())));
        const double depth = shownNumber(*aerator->depth, shownUnitOf("m", unitsOf(pond())));
        m_depth->setPlaceholderText(tr("%1 (automatic)").arg(numberText(depth, locale())));
    }
}

}  // namespace widgets
