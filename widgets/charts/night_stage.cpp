#include "widgets/charts/night_stage.h"

#include "widgets/charts/dawn_lows_plot.h"
#include "widgets/charts/night_plot.h"
#include "widgets/charts/whole_run_plot.h"

#include <QBoxLayout>
#include <QEvent>
#include <QToolButton>

#include <array>

namespace widgets {
namespace {

// Heights in lines of text, which follow the system's size.
constexpr int kLinesOfLows = 9, kLinesOfWholeRun = 11, kLeastLinesOfNight = 12;

}  // namespace

NightStage::NightStage(Selection& selection, QWidget* parent)
    : QWidget(parent),
      m_night(new NightPlot(selection, this)),
      m_lows(new DawnLowsPlot(selection, this)),
      m_fold(new QToolButton(this)),
      m_wholeRun(new WholeRunPlot(selection, this)) {
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(2);
    column->addWidget(m_night, 1);
    column->addWidget(m_lows);
    m_fold->setText(tr("Whole run, weather and air"));
    m_fold->setAccessibleName(tr("Show the whole run with weather and air"));
    m_fold->setToolButtonStyle(Qt::ToolButtonTextBesideIcon);
    m_fold->setAutoRaise(true);
    m_fold->setCheckable(true);
    m_fold->setFocusPolicy(Qt::StrongFocus);
    column->addWidget(m_fold, 0, Qt::AlignLeft);
    column->addWidget(m_wholeRun);
    connect(m_fold, &QToolButton::toggled, this, [this](bool isOpen) {
        m_fold->setArrowType(isOpen ? Qt::DownArrow : Qt::RightArrow);
        m_wholeRun->setVisible(isOpen);
    });
    m_fold->setArrowType(Qt::RightArrow);
    m_wholeRun->hide();
    applyFont();
}

void NightStage::applyFont() {
    const int line = fontMetrics().lineSpacing();
    m_night->setMinimumHeight(kLeastLinesOfNight * line);
    m_lows->setFixedHeight(kLinesOfLows * line);
    m_wholeRun->setFixedHeight(kLinesOfWholeRun * line);
}

void NightStage::changeEvent(QEvent* event) {
    QWidget::changeEvent(event);
    if (event->type() == QEvent::FontChange) {
        applyFont();
    }
}

void NightStage::setOutcome(const OutcomePtr& outcome) {
    m_night->setOutcome(outcome);
    m_lows->setOutcome(outcome);
    m_wholeRun->setOutcome(outcome);
}

void NightStage::setCriteria(bool isShown) {
    m_night->setCriteria(isShown);
    m_lows->setCriteria(isShown);
}

void NightStage::setUnfolded(bool isUnfolded) {
    m_fold->setChecked(isUnfolded);
}

bool NightStage::isUnfolded() const {
    return m_fold->isChecked();
}

const ChartView& NightStage::meant() const {
    for (const ChartView* part :
         std::array{static_cast<ChartView*>(m_lows), static_cast<ChartView*>(m_wholeRun)}) {
        if (part->hasFocus()) {
            return *part;
        }
    }
    return *m_night;
}

}  // namespace widgets
