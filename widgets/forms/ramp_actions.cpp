#include "widgets/forms/ramp_actions.h"

#include "engine/intake/usual_ramp.h"
#include "engine/ramps/ramp_names.h"
#include "engine/ramps/schedule.h"
#include "widgets/controls/plot_style.h"
#include "widgets/document/selection.h"
#include "widgets/document/to_qstring.h"
#include "widgets/forms/ramp_kind.h"

#include <QAction>
#include <QApplication>
#include <QMenu>
#include <QPainter>
#include <QPixmap>

#include <algorithm>
#include <cmath>

namespace widgets {

engine::Ramp asTable(const engine::Ramp& ramp, const engine::RampRun* run) {
    engine::Ramp table = ramp;
    std::vector<double> minutes;
    if (run != nullptr) {  // as it ran: a run belongs to the day on which it starts
        for (const engine::DayRow& row : run->days) {
            double sum = 0.0;
            for (const engine::RunBlock& block : run->schedule) {
                sum += block.day == row.day ? (block.end - block.start) / 60.0 : 0.0;
            }
            minutes.push_back(std::min(std::round(sum), 1.0 * engine::kMinutesPerDay));
        }
    } else if (ramp.kind != engine::RampKind::Capped) {
        for (int day = 1; day <= engine::ruleLength(ramp); ++day) {
            minutes.push_back(engine::ruleMinutes(ramp, day));
        }
    }
    while (minutes.size() > 1 && minutes.back() == minutes[minutes.size() - 2]) {
        minutes.pop_back();  // the last value is kept
    }
    engine::changeKind(table, engine::RampKind::Table);
    if (!minutes.empty()) {
        table.minutes = minutes;
    }
    return table;
}

RampActions::RampActions(Document& document, Selection& selection, QObject* parent)
    : QObject(parent),
      m_document(document),
      m_selection(selection),
      m_adding(new QMenu),
      m_colours(new QMenu) {
    makeAdding();
    makeChanging();
    makeColours();
    connect(&m_selection, &Selection::changed, this, &RampActions::enable);
    connect(&m_document, &Document::changed, this, &RampActions::enable);
    enable();
}

RampActions::~RampActions() = default;

void RampActions::makeAdding() {
    m_adding->setTitle(tr("&Add a Ramp"));
    using engine::RampKind;
    for (const RampKind kind :
         {RampKind::Continuous, RampKind::Doubling, RampKind::Linear, RampKind::Capped, RampKind::Table}) {
        m_adding->addAction(kindText(kind), this, [this, kind] {
            add(engine::usualRamp(kind, kindText(kind).toLower().toStdString()));
        });
    }
    QAction* button = m_adding->menuAction();
    button->setIconText(tr("Add"));
    button->setToolTip(tr("Add a ramp"));
    m_find = new QAction(tr("&Find a Ramp\u2026"), this);
    m_find->setIconText(tr("Find"));
    m_find->setToolTip(tr("Find the ramp that harms few ponds in few days"));
    m_find->setShortcut(QKeySequence(Qt::CTRL | Qt::Key_F));
    connect(m_find, &QAction::triggered, this, &RampActions::findAsked);
    m_buttons = {m_find, button};
}

void RampActions::makeChanging() {
    const auto action = [this](const QString& text, const QString& brief, const QKeySequence& keys,
                               auto act) {
        auto* made = new QAction(text, this);
        made->setIconText(brief);
        made->setToolTip(QString(text).remove(QLatin1Char('&')));
        made->setShortcut(keys);
        connect(made, &QAction::triggered, this, act);
        m_changing.push_back(made);
        return made;
    };
    m_needRamp.push_back(action(tr("&Copy the Ramp"), tr("Copy"), QKeySequence(Qt::CTRL | Qt::Key_D), [this] {
        engine::Ramp ramp = m_document.pond().ramps[static_cast<std::size_t>(index())];
        add(ramp);
    }));
    m_needRamp.push_back(
        action(tr("As a &Table of Minutes"), tr("As table"), {}, [this] { turnIntoTable(); }));
    m_up = action(tr("Move &Up"), tr("Up"), QKeySequence(Qt::CTRL | Qt::SHIFT | Qt::Key_Up),
                  [this] { move(-1); });
    m_down = action(tr("Move &Down"), tr("Down"), QKeySequence(Qt::CTRL | Qt::SHIFT | Qt::Key_Down),
                    [this] { move(1); });
    m_needRamp.push_back(action(tr("De&lete the Ramp"), tr("Delete"), {}, [this] { remove(); }));
}

void RampActions::turnIntoTable() {
    const auto at = static_cast<std::size_t>(index());
    const engine::RampRun* run = m_outcome != nullptr && at + 1 < m_outcome->comparison.runs.size() &&
                                         isDrawn(m_outcome->comparison.runs[at + 1])
                                     ? &m_outcome->comparison.runs[at + 1]
                                     : nullptr;
    const QString name = toQString(m_document.pond().ramps[at].name);
    edit(tr("Turn \u201c%1\u201d into a table").arg(name),
         [at, run](engine::Pond& pond) { pond.ramps[at] = asTable(pond.ramps[at], run); });
}

void RampActions::move(int by) {
    const int from = index(), to = from + by;
    const std::string name = m_document.pond().ramps[static_cast<std::size_t>(from)].name;
    m_wanted = name;
    edit(tr("Move \u201c%1\u201d").arg(toQString(name)), [from, to](engine::Pond& pond) {
        std::swap(pond.ramps[static_cast<std::size_t>(from)], pond.ramps[static_cast<std::size_t>(to)]);
    });
}

void RampActions::remove() {
    const auto at = static_cast<std::size_t>(index());
    const std::string name = m_document.pond().ramps[at].name;
    edit(tr("Delete \u201c%1\u201d").arg(toQString(name)), [at, name](engine::Pond& pond) {
        pond.ramps.erase(pond.ramps.begin() + static_cast<std::ptrdiff_t>(at));
        if (pond.chosenRamp == name) {
            pond.chosenRamp.clear();
        }
    });
}

void RampActions::makeColours() {
    m_colours->setTitle(tr("Line C&olour"));
    QAction* own = m_colours->addAction(tr("By its place in the list"), this, [this] {
        const auto at = static_cast<std::size_t>(index());
        edit(tr("Change the colour of \u201c%1\u201d").arg(toQString(m_document.pond().ramps[at].name)),
             [at](engine::Pond& pond) { pond.ramps[at].colour.reset(); });
    });
    static_cast<void>(own);
    const QStringList names{tr("blue"),   tr("vermilion"), tr("green"),
                            tr("orange"), tr("sky blue"),  tr("purple")};
    const PlotStyle style = PlotStyle::of(QApplication::palette(), {});
    for (int i = 0; i < 2 * names.size(); ++i) {
        QPixmap sample(52, 28);
        sample.setDevicePixelRatio(2.0);
        sample.fill(Qt::transparent);
        QPainter painter(&sample);
        painter.setPen(style.linePen(static_cast<std::size_t>(i + 1), true));
        painter.drawLine(QPointF(0, 7), QPointF(26, 7));
        painter.end();
        const QString name =
            i < names.size() ? names[i] : tr("%1, other dashes").arg(names[i - names.size()]);
        m_colours->addAction(QIcon(sample), name, this, [this, i] {
            const auto at = static_cast<std::size_t>(index());
            edit(tr("Change the colour of \u201c%1\u201d").arg(toQString(m_document.pond().ramps[at].name)),
                 [at, i](engine::Pond& pond) { pond.ramps[at].colour = engine::Quantity(i + 1.0); });
        });
    }
    QAction* button = m_colours->menuAction();
    button->setIconText(tr("Colour"));
    button->setToolTip(tr("Colour and dashes of the ramp's line"));
    m_needRamp.push_back(button);
}

void RampActions::fill(QMenu& menu) const {
    menu.addAction(m_find);
    menu.addMenu(m_adding.get());
    menu.addSeparator();
    for (QAction* action : m_changing) {
        menu.addAction(action);
    }
    menu.addMenu(m_colours.get());
}

int RampActions::index() const {
    const int at = static_cast<int>(m_selection.ramp()) - 1;
    return at < static_cast<int>(m_document.pond().ramps.size()) ? at : -1;
}

void RampActions::add(engine::Ramp ramp) {
    ramp.name = engine::freeRampName(m_document.pond(), ramp.name);
    if (ramp.colour) {
        ramp.colour.reset();  // two lines of one look would not be told apart
    }
    m_wanted = ramp.name;
    edit(tr("Add the ramp \u201c%1\u201d").arg(toQString(ramp.name)),
         [&ramp](engine::Pond& pond) { pond.ramps.push_back(ramp); });
}

bool RampActions::edit(const QString& name, const std::function<void(engine::Pond&)>& change) {
    QStringList sentences;
    for (const engine::Diagnostic& fault : m_document.edit(name, change)) {
        sentences << toQString(fault.sentence);
    }
    if (!sentences.isEmpty()) {
        m_wanted.clear();
        emit refused(sentences.join(QLatin1Char(' ')));
    }
    return sentences.isEmpty();
}

void RampActions::setOutcome(const OutcomePtr& outcome) {
    m_outcome = outcome;
    const auto& runs = outcome->comparison.runs;
    for (std::size_t i = 1; !m_wanted.empty() && i < runs.size(); ++i) {
        if (runs[i].name == m_wanted) {
            m_wanted.clear();
            m_selection.setRamp(i);
        }
    }
    enable();
}

void RampActions::enable() {
    const int at = index(), last = static_cast<int>(m_document.pond().ramps.size()) - 1;
    m_adding->menuAction()->setEnabled(!m_document.isEmpty());
    m_find->setEnabled(!m_document.isEmpty());
    for (QAction* action : m_needRamp) {
        action->setEnabled(at >= 0);
    }
    m_up->setEnabled(at > 0);
    m_down->setEnabled(at >= 0 && at < last);
}

}  // namespace widgets
