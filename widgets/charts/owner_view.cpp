#include "widgets/charts/owner_view.h"

#include "engine/advice/advice.h"
#include "engine/ensemble/chances.h"
#include "engine/follow_up/readings_beside.h"
#include "engine/run/nights.h"
#include "engine/water/oxygen_state.h"
#include "engine/wording/wording.h"
#include "widgets/charts/chart_view.h"
#include "widgets/charts/night_plot.h"
#include "widgets/charts/sheets.h"
#include "widgets/document/to_qstring.h"
#include "widgets/document/wording.h"

#include <QBoxLayout>
#include <QEvent>
#include <QKeyEvent>
#include <QLabel>
#include <QPushButton>

#include <algorithm>
#include <cmath>

namespace widgets {
namespace {

constexpr int kPlayed_ms = 1000;
constexpr double kLargest = 2.0;  // times the system's type

/// The ramp that has the air on day and night from the first day, if one of the others does; 0 if none.
std::size_t atOnce(const Outcome& outcome, std::size_t plan) {
    const auto& runs = outcome.comparison.runs;
    for (std::size_t i = 1; i < runs.size(); ++i) {
        if (i != plan && isDrawn(runs[i]) && runs[i].daysToContinuous == 1) {
            return i;
        }
    }
    return 0;
}

/// The night reduced to what an owner has to see: the plan, left alone, what switching on at once would do,
/// and what he read.
/// @param isPlayed  The axis is then the same for all nights.
NightScene ownerScene(const Outcome& outcome, const Selection& selection, bool isPlayed) {
    const auto& runs = outcome.comparison.runs;
    NightScene scene = nightScene(outcome, selection);
    const auto lineOf = [&](std::size_t run) {
        const QString name = rampText(runs[run].name, run);
        return std::find_if(scene.lines.begin(), scene.lines.end(), [&](const NightLine& one) {
            return one.name == name && one.look == lookOf(outcome.comparison, run);
        });
    };
    std::vector<NightLine> kept;
    double highest = scene.stress + 1.0;
    const auto keep = [&](std::size_t run, const QString& name, bool isGhost, bool isLowSaid) {
        if (const auto line = lineOf(run); line != scene.lines.end()) {
            kept.push_back(*line);
            kept.back().name = name;
            kept.back().isGhost = isGhost;
            kept.back().isLowSaid = isLowSaid;
            for (const engine::HourRow& hour : runs[run].hours) {
                highest = isPlayed ? std::max(highest, hour.fishWater) : highest;
            }
            highest = std::max(highest, *std::max_element(line->oxygen.begin(), line->oxygen.end()));
        }
    };
    const std::size_t plan = selection.ramp();
    if (const std::size_t other = atOnce(outcome, plan); plan > 0 && other > 0) {
        keep(other, OwnerView::tr("switched on at once"), true, false);
    }
    keep(0, OwnerView::tr("left alone"), false, plan == 0);
    if (plan > 0) {
        keep(plan, OwnerView::tr("with this start"), false, true);
    }
    scene.lines = kept;
    std::erase_if(scene.readings, [](const NightReading& one) { return one.isDeep; });
    for (const NightReading& reading : scene.readings) {
        highest = std::max(highest, reading.oxygen);
    }
    scene.top = axisTop(highest);
    scene.cursor.reset();
    scene.bands.clear();
    return scene;
}

QString stateText(engine::OxygenState state) {
    switch (state) {
        case engine::OxygenState::Lethal:
            return OwnerView::tr("so little oxygen that fish can die");
        case engine::OxygenState::Stress:
            return OwnerView::tr("little oxygen, and the fish suffer");
        case engine::OxygenState::Enough:
            break;
    }
    return OwnerView::tr("enough oxygen for the fish");
}

}  // namespace

namespace {

/// What was read in a night counts for more than what was computed for it; empty if nothing read is worse.
QString worseReading(const Outcome& outcome, std::size_t ramp, int night, engine::OxygenState computed) {
    const engine::PondModel& model = outcome.comparison.model;
    const engine::ReadingBeside* worst = nullptr;
    const auto readings = engine::readingsBeside(model, outcome.comparison.runs[ramp]);
    for (const engine::ReadingBeside& one : readings) {
        const bool isDeep = model.bottom.exists() && one.depth > model.bottom.depth;
        if (!isDeep && engine::nightAt(one.time) == night &&
            (worst == nullptr || one.oxygen < worst->oxygen)) {
            worst = &one;
        }
    }
    if (worst == nullptr || engine::stateOf(worst->oxygen, model.parameters.thresholds) <= computed) {
        return {};
    }
    return OwnerView::tr("You read %1 mg/L at %2, which is lower than this picture: go by what you read.")
        .arg(oxygenText(worst->oxygen), clockText(worst->time));
}

}  // namespace

QString ownerSentence(const Outcome& outcome, std::size_t ramp, int night) {
    const auto& runs = outcome.comparison.runs;
    if (!isDrawn(runs[ramp]) || !isDrawn(runs[0])) {
        return OwnerView::tr("This start could not be computed.");
    }
    const auto state = [&](const engine::DayRow& row) {
        return engine::stateOf(row.lowest, outcome.comparison.model.parameters.thresholds);
    };
    const engine::DayRow &with = engine::nightRow(runs[ramp], night),
                         &without = engine::nightRow(runs[0], night);
    QString said;
    if (ramp == 0) {
        said = OwnerView::tr("Left alone there is %1 in the night, at its lowest at %2.")
                   .arg(stateText(state(without)), clockText(without.lowestTime));
    } else if (state(with) == state(without)) {
        said = OwnerView::tr(
                   "With this start there is %1, at its lowest at %2. Left alone it would be the same.")
                   .arg(stateText(state(with)), clockText(with.lowestTime));
    } else {
        said =
            OwnerView::tr("With this start there is %1, at its lowest at %2. Left alone there would be %3.")
                .arg(stateText(state(with)), clockText(with.lowestTime), stateText(state(without)));
    }
    const QString read = worseReading(outcome, ramp, night, state(with));
    return unbroken(read.isEmpty() ? said : said + QLatin1Char(' ') + read);
}

QString ownerChances(const Outcome& outcome, std::size_t ramp) {
    const engine::RampEnsemble* with = engine::membersOf(outcome.comparison, ramp);
    const engine::RampEnsemble* without = engine::membersOf(outcome.comparison, 0);
    if (with == nullptr || without == nullptr) {
        return {};
    }
    const engine::Advice advice = engine::adviceOn(outcome.comparison, ramp);
    const auto hundred = [](double share) {
        return toQString(engine::shownValue({"", engine::Measure::Of100, share, {}}));
    };
    return OwnerView::
        tr("Of 100 ponds like yours, fish suffer at some time in %1 with this start, and in %2 left alone; "
           "fish can "
           "die in %3 with this start, and in %4 left alone.")
            .arg(hundred(advice.stress->with), hundred(advice.stress->alone), hundred(advice.lethal->with),
                 hundred(advice.lethal->alone));
}

/// The one chart of the owner's screen.
class OwnerChart final : public ChartView {
public:
    OwnerChart(Selection& selection, QWidget* parent)
        : ChartView(OwnerView::tr("Oxygen through the night"), selection, parent) {}

    [[nodiscard]] ChartSheet sheet() const override {
        ChartSheet page;
        page.name = QStringLiteral("owner");
        page.headline = ownerSentence(*outcome(), selection().ramp(), selection().night());
        page.detail = ownerChances(*outcome(), selection().ramp());
        page.foot = sheetFoot(*outcome());
        const NightScene scene = ownerScene(*outcome(), selection(), false);
        page.words = inWords(scene);
        page.draw = [scene](QCustomPlot& plot, const PlotStyle& style) { drawNight(plot, scene, style); };
        page.csv = nightCsv(*outcome(), selection());
        return page;
    }
    void setPlayed(bool isPlayed) {
        m_isPlayed = isPlayed;
        showAnew();
    }

protected:
    [[nodiscard]] QString refresh() override {
        m_scene = ownerScene(*outcome(), selection(), m_isPlayed);
        return inWords(m_scene);
    }
    void draw(QCustomPlot& plot, const PlotStyle& style) override { drawNight(plot, m_scene, style); }

private:
    NightScene m_scene;
    bool m_isPlayed = false;
};

OwnerView::OwnerView(const OutcomePtr& outcome, std::size_t ramp, int night, QWidget* parent)
    : QWidget(parent, Qt::Window),
      m_outcome(outcome),
      m_headline(new QLabel(this)),
      m_chances(new QLabel(this)),
      m_which(new QLabel(this)),
      m_foot(new QLabel(this)),
      m_chart(nullptr),
      m_play(new QPushButton(this)) {
    setAttribute(Qt::WA_DeleteOnClose);
    setWindowTitle(tr("For the owner"));
    setAutoFillBackground(true);
    m_selection.setExtent(outcome->comparison.days, outcome->comparison.runs.size());
    m_selection.setRamp(ramp);
    m_selection.setNight(night);
    m_chart = new OwnerChart(m_selection, this);
    m_chart->setOutcome(outcome);
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(36, 28, 36, 20);
    column->setSpacing(12);
    for (QLabel* label : {m_headline, m_chances, m_foot}) {
        label->setWordWrap(true);
        label->setTextFormat(Qt::PlainText);
    }
    m_headline->setAccessibleName(tr("What this night comes to"));
    m_chances->setAccessibleName(tr("Of 100 ponds like yours"));
    m_chances->setText(ownerChances(*outcome, ramp));
    m_foot->setText(sheetFoot(*outcome));
    column->addWidget(m_headline);
    column->addWidget(m_chart, 1);
    column->addWidget(m_chances);
    auto* row = new QHBoxLayout;
    const auto button = [&](const QString& text, const QString& help, auto act) {
        auto* made = new QPushButton(this);
        made->setText(text);
        made->setToolTip(help);
        made->setAccessibleName(help);
        made->setAutoDefault(false);
        connect(made, &QPushButton::clicked, this, act);
        row->addWidget(made);
        return made;
    };
    button(tr("Earlier"), tr("The night before"), [this] { m_selection.setNight(m_selection.night() - 1); });
    m_which->setTextFormat(Qt::PlainText);
    row->addWidget(m_which);
    button(tr("Later"), tr("The next night"), [this] { m_selection.setNight(m_selection.night() + 1); });
    m_play->setText(tr("Play"));
    m_play->setAccessibleName(tr("Play the nights, one a second"));
    m_play->setAutoDefault(false);
    m_play->setCheckable(true);
    connect(m_play, &QPushButton::clicked, this, &OwnerView::play);
    row->addWidget(m_play);
    row->addStretch(1);
    button(tr("Print"), tr("Print this night"), [this] { emit printAsked(); });
    button(tr("Close"), tr("Close the owner's view"), [this] { close(); });
    column->addLayout(row);
    column->addWidget(m_foot);
    m_player.setInterval(kPlayed_ms);
    connect(&m_player, &QTimer::timeout, this, [this] {
        if (m_selection.night() >= m_selection.nights()) {
            play(false);
        } else {
            m_selection.setNight(m_selection.night() + 1);
        }
    });
    connect(&m_selection, &Selection::changed, this, &OwnerView::showNight);
    applyStyle();
    showNight();
    m_chart->setFocus();
}

QString OwnerView::headline() const {
    return m_headline->text();
}

QString OwnerView::chances() const {
    return m_chances->text();
}

ChartSheet OwnerView::sheet() const {
    return m_chart->sheet();
}

void OwnerView::showNight() {
    m_headline->setText(ownerSentence(*m_outcome, m_selection.ramp(), m_selection.night()));
    QString which = nightName(*m_outcome, m_selection.night());
    which[0] = which[0].toUpper();
    m_which->setText(which);
}

void OwnerView::play(bool isOn) {
    if (isOn && m_selection.night() >= m_selection.nights()) {
        m_selection.setNight(1);
    }
    m_play->setChecked(isOn);
    m_chart->setPlayed(isOn);
    if (isOn) {
        m_player.start();
    } else {
        m_player.stop();
    }
}

/// Type that grows with the screen.
void OwnerView::applyStyle() {
    const double scale = std::clamp(std::min(width() / 900.0, height() / 560.0), 1.0, kLargest);
    const auto sized = [&](QWidget* widget, double times, bool isBold) {
        QFont font = this->font();
        font.setPointSizeF(font.pointSizeF() * times * scale);
        font.setBold(isBold);
        widget->setFont(font);
    };
    sized(m_headline, 1.5, true);
    sized(m_chances, 1.25, false);
    sized(m_chart, 1.15, false);
    sized(m_foot, 0.8, false);
    sized(m_which, 1.1, false);
    for (QPushButton* button : findChildren<QPushButton*>()) {
        sized(button, 1.1, false);
    }
}

void OwnerView::resizeEvent(QResizeEvent* event) {
    QWidget::resizeEvent(event);
    applyStyle();
}

void OwnerView::changeEvent(QEvent* event) {
    QWidget::changeEvent(event);
    if (event->type() == QEvent::PaletteChange) {
        update();
    }
}

void OwnerView::keyPressEvent(QKeyEvent* event) {
    if (event->key() == Qt::Key_Escape) {
        close();
    } else if (event->key() == Qt::Key_Space) {
        play(!isPlaying());
    } else if (event->key() == Qt::Key_Left || event->key() == Qt::Key_Right) {
        m_selection.setNight(m_selection.night() + (event->key() == Qt::Key_Right ? 1 : -1));
    } else if (event->matches(QKeySequence::Print)) {
        emit printAsked();
    } else {
        QWidget::keyPressEvent(event);
    }
}

}  // namespace widgets
