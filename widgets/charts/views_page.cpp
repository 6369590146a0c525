#include "widgets/charts/views_page.h"

#include "engine/advice/advice.h"
#include "engine/wording/sentence_advice.h"
#include "widgets/charts/dawn_lows_plot.h"
#include "widgets/charts/night_plot.h"
#include "widgets/charts/picture_view.h"
#include "widgets/charts/whole_run_plot.h"
#include "widgets/controls/sentence_sheet.h"
#include "widgets/document/wording.h"

#include <QBoxLayout>
#include <QButtonGroup>
#include <QEvent>
#include <QLabel>
#include <QSlider>
#include <QSplitter>
#include <QStackedWidget>
#include <QTabBar>
#include <QToolButton>

namespace widgets {
namespace {

constexpr int kPlayed_ms = 1000;     // a night
constexpr int kStaleAfter_ms = 150;  // a mark that only flickers says nothing

QToolButton* button(const QString& text, const QString& help, QWidget* parent) {
    auto* made = new QToolButton(parent);
    made->setText(text);
    made->setToolTip(help);
    made->setAccessibleName(help);
    made->setFocusPolicy(Qt::StrongFocus);
    made->setAutoRaise(true);
    return made;
}

}  // namespace

ViewsPage::ViewsPage(Selection& selection, QWidget* parent)
    : QWidget(parent),
      m_selection(selection),
      m_answer(sentenceLabel(tr("The answer"), this)),
      m_headline(sentenceLabel(tr("What this night comes to"), this)),
      m_detail(sentenceLabel(tr("What makes the low"), this)),
      m_stale(sentenceLabel(tr("State of the picture"), this)),
      m_which(new QLabel(this)),
      m_readOut(sentenceLabel(tr("What stands under the cursor"), this)),
      m_tabs(new QTabBar(this)),
      m_stack(new QStackedWidget(this)),
      m_night(new NightPlot(selection, this)),
      m_lows(new DawnLowsPlot(selection, this)),
      m_wholeRun(new WholeRunPlot(selection, this)) {
    auto* layout = new QVBoxLayout(this);
    layout->setContentsMargins(14, 8, 6, 6);
    layout->setSpacing(4);
    m_tabs->setAccessibleName(tr("Views"));
    m_tabs->setDrawBase(false);
    m_tabs->setExpanding(false);
    m_tabs->addTab(tr("Night"));
    layout->addWidget(m_tabs);
    layout->addWidget(m_answer);
    m_answer->hide();
    layout->addWidget(m_headline);

    layout->addWidget(m_detail);
    m_chooser = chooser();
    layout->addWidget(m_chooser);
    auto* split = new QSplitter(Qt::Vertical, this);
    split->setChildrenCollapsible(false);
    split->addWidget(m_night);
    split->addWidget(m_lows);
    split->addWidget(m_wholeRun);
    split->setStretchFactor(0, 10);
    split->setStretchFactor(1, 3);
    split->setStretchFactor(2, 5);
    m_night->setMinimumHeight(200);
    m_lows->setMinimumHeight(80);
    split->setSizes({340, 110, 170});
    m_stack->addWidget(split);
    for (const ViewKind& kind : viewKinds()) {
        m_tabs->addTab(kind.name());
        m_pictures.push_back(new PictureView(kind, selection, m_stack));
        m_stack->addWidget(m_pictures.back());
        connect(m_pictures.back(), &ChartView::saidAnew, this, &ViewsPage::showSentences);
    }
    layout->addWidget(m_stack, 1);
    layout->addWidget(m_readOut);
    m_readOut->hide();
    connect(m_tabs, &QTabBar::currentChanged, this, [this](int index) {
        m_stack->setCurrentIndex(index);
        const bool isPicture = index <= static_cast<int>(m_pictures.size());
        for (QWidget* part :
             {static_cast<QWidget*>(m_headline), static_cast<QWidget*>(m_detail), m_chooser}) {
            part->setVisible(isPicture);
        }
        showSentences();
        showReadOut();
        emit viewChanged(index);
    });

    m_player.setInterval(kPlayed_ms);
    m_staleDelay.setInterval(kStaleAfter_ms);
    m_staleDelay.setSingleShot(true);
    connect(&m_staleDelay, &QTimer::timeout, this,
            [this] { m_stale->setText(tr("Of the pond before your last edit; computing anew.")); });
    connect(&m_player, &QTimer::timeout, this, [this] {
        if (m_selection.night() >= m_selection.nights()) {
            setPlaying(false);
        } else {
            m_selection.setNight(m_selection.night() + 1);
        }
    });
    connect(&m_selection, &Selection::changed, this, &ViewsPage::showSelection);
    connect(m_night, &ChartView::saidAnew, this, &ViewsPage::showSentences);
    styleTexts();
    showSelection();
}

QWidget* ViewsPage::chooser() {
    auto* bar = new QWidget(this);
    auto* row = new QHBoxLayout(bar);
    row->setContentsMargins(0, 0, 0, 0);
    m_allRamps = button(tr("All ramps, one night"), tr("All ramps in one night"), bar);
    m_allNights = button(tr("All nights, one ramp"), tr("All nights of the selected ramp"), bar);
    auto* modes = new QButtonGroup(this);
    for (QToolButton* mode : {m_allRamps, m_allNights}) {
        mode->setCheckable(true);
        modes->addButton(mode);
        row->addWidget(mode);
    }
    connect(m_allRamps, &QToolButton::clicked, this,
            [this] { m_selection.setMode(Selection::Mode::AllRamps); });
    connect(m_allNights, &QToolButton::clicked, this,
            [this] { m_selection.setMode(Selection::Mode::AllNights); });
    row->addSpacing(12);
    m_previous = button({}, tr("The night before"), bar);
    m_previous->setArrowType(Qt::LeftArrow);
    m_next = button({}, tr("The next night"), bar);
    m_next->setArrowType(Qt::RightArrow);
    m_slider = new QSlider(Qt::Horizontal, bar);
    m_slider->setAccessibleName(tr("Night"));
    m_slider->setFocusPolicy(Qt::StrongFocus);
    m_slider->setMinimumWidth(90);
    m_slider->setMinimum(1);
    m_slider->setPageStep(7);
    m_play = button(tr("Play"), tr("Play the nights, one a second"), bar);
    m_play->setCheckable(true);
    row->addWidget(m_previous);
    row->addWidget(m_slider, 1);
    row->addWidget(m_next);
    row->addWidget(m_play);
    m_which->setTextFormat(Qt::PlainText);
    row->addWidget(m_which);
    row->addStretch(1);
    row->addWidget(m_stale);
    connect(m_previous, &QToolButton::clicked, this,
            [this] { m_selection.setNight(m_selection.night() - 1); });
    connect(m_next, &QToolButton::clicked, this, [this] { m_selection.setNight(m_selection.night() + 1); });
    connect(m_slider, &QSlider::valueChanged, this, [this](int night) { m_selection.setNight(night); });
    connect(m_play, &QToolButton::clicked, this, [this](bool isOn) { setPlaying(isOn); });
    return bar;
}

void ViewsPage::setOutcome(const OutcomePtr& outcome) {
    m_outcome = outcome;
    m_selection.setExtent(outcome->comparison.days, outcome->comparison.runs.size());
    m_slider->setMaximum(outcome->comparison.days);
    m_night->setOutcome(outcome);
    m_lows->setOutcome(outcome);
    m_wholeRun->setOutcome(outcome);
    for (PictureView* picture : m_pictures) {
        picture->setOutcome(outcome);
    }
    showSelection();
}

void ViewsPage::setStale(bool isStale) {
    if (!isStale) {
        m_staleDelay.stop();
        m_stale->clear();
    } else if (m_outcome != nullptr) {
        m_staleDelay.start();
    }
}

void ViewsPage::setCriteria(bool isShown) {
    m_night->setCriteria(isShown);
    m_lows->setCriteria(isShown);
}

void ViewsPage::setPlaying(bool isPlaying) {
    if (isPlaying && m_selection.night() >= m_selection.nights()) {
        m_selection.setNight(1);
    }
    m_play->setChecked(isPlaying);
    m_night->setGhost(isPlaying);
    if (isPlaying == m_player.isActive()) {
        return;
    }
    if (isPlaying) {
        m_player.start();
    } else {
        m_player.stop();
    }
    emit playingChanged(isPlaying);
}

QString ViewsPage::answer() const {
    return m_outcome != nullptr && m_outcome->answer != nullptr ? m_answer->text() : QString();
}

/// What the papers would say, on the pages that draw. It keeps its place while it is computed anew, so that
/// the charts stay where they are.
void ViewsPage::showAnswer() {
    const bool isPicture = m_stack->currentIndex() <= static_cast<int>(m_pictures.size());
    const auto* answer = m_outcome == nullptr ? nullptr : m_outcome->answer.get();
    if (answer != nullptr) {
        m_answer->setText(tr("Answer: %1")
                              .arg(localized({engine::verdictOf(*answer, m_outcome->comparison.model)},
                                             engine::SentencePart::Advice)));
    } else if (!m_answer->text().isEmpty()) {
        m_answer->setText(tr("Answer: it is being computed."));
    }
    m_answer->setVisible(isPicture && !m_answer->text().isEmpty() && m_outcome->comparison.runs.size() > 1);
}

QString ViewsPage::headline() const {
    return m_headline->text();
}

void ViewsPage::showSelection() {
    const bool isOfRamps = m_selection.mode() == Selection::Mode::AllRamps;
    m_allRamps->setChecked(isOfRamps);
    m_allNights->setChecked(!isOfRamps);
    m_slider->setValue(m_selection.night());
    m_previous->setEnabled(m_selection.night() > 1);
    m_next->setEnabled(m_selection.night() < m_selection.nights());
    if (m_outcome != nullptr) {
        m_which->setText(nightName(*m_outcome, m_selection.night()));
        showReadOut();
    }
}

void ViewsPage::showSentences() {
    if (m_outcome == nullptr) {
        return;
    }
    showAnswer();
    m_headline->setText(main().headline());
    const QString detail = main().detail();
    m_detail->setText(detail.isEmpty() && !m_outcome->isWhole ? tr("What makes the low is being computed.")
                                                              : detail);
}

/// In one line, since it stands under the chart and must not move it.
void ViewsPage::showReadOut() {
    const auto cursor = m_selection.cursor();
    const QString text = m_outcome != nullptr && cursor ? main().readAt(*cursor) : QString();
    m_readOut->setText(QString(text).replace(QLatin1Char('\n'), QStringLiteral("   \u00b7   ")));
    m_readOut->setVisible(!text.isEmpty());
}

ChartView& ViewsPage::main() const {
    const int index = m_stack->currentIndex();
    return index <= 0 || index > static_cast<int>(m_pictures.size())
               ? static_cast<ChartView&>(*m_night)
               : *m_pictures[static_cast<std::size_t>(index - 1)];
}

const ChartView& ViewsPage::meant() const {
    for (const ChartView* part : {static_cast<ChartView*>(m_lows), static_cast<ChartView*>(m_wholeRun)}) {
        if (part->hasFocus() && view() == 0) {
            return *part;
        }
    }
    const std::size_t page = static_cast<std::size_t>(view()) - m_pictures.size() - 1;  // huge for pictures
    if (page < m_chartsOfPages.size() && m_chartsOfPages[page]) {
        if (const ChartView* chart = m_chartsOfPages[page](); chart != nullptr) {
            return *chart;
        }
    }
    return main();
}

void ViewsPage::addPage(const QString& name, QWidget* page, std::function<const ChartView*()> chart) {
    m_chartsOfPages.push_back(std::move(chart));
    m_stack->addWidget(page);
    m_tabs->addTab(name);
}

const QWidget* ViewsPage::page(int index) const {
    return m_stack->widget(index);
}

int ViewsPage::viewCount() const {
    return m_tabs->count();
}

int ViewsPage::view() const {
    return m_tabs->currentIndex();
}

void ViewsPage::setView(int index) {
    m_tabs->setCurrentIndex(index);
}

bool ViewsPage::isMeasuring() const {
    const auto shown = static_cast<std::size_t>(view() - 1);
    return view() > 0 && shown < m_pictures.size() &&
           std::string_view(m_pictures[shown]->id()) == kMeasureView;
}

QString ViewsPage::viewName(int index) const {
    return m_tabs->tabText(index);
}

void ViewsPage::styleTexts() {
    const PlotStyle style = PlotStyle::of(palette(), font());
    QFont large = font();
    large.setPointSizeF(large.pointSizeF() * 1.3);
    large.setBold(true);
    m_headline->setFont(large);
    QFont strong = font();
    strong.setBold(true);
    m_answer->setFont(strong);
    QPalette quiet = palette();
    quiet.setColor(QPalette::WindowText, style.quietInk);
    m_detail->setPalette(quiet);
    m_stale->setPalette(quiet);
    m_readOut->setPalette(quiet);
}

void ViewsPage::changeEvent(QEvent* event) {
    QWidget::changeEvent(event);
    if (event->type() == QEvent::PaletteChange || event->type() == QEvent::FontChange) {
        styleTexts();
    }
}

}  // namespace widgets
