#include "widgets/charts/views_page.h"

#include "engine/base/error.h"
#include "widgets/charts/night_plot.h"
#include "widgets/charts/night_stage.h"
#include "widgets/charts/picture_view.h"
#include "widgets/controls/sentence_sheet.h"
#include "widgets/controls/word_bar.h"
#include "widgets/document/wording.h"

#include <QEvent>
#include <QLabel>
#include <QStackedWidget>
#include <QToolButton>

#include <algorithm>
#include <string_view>
#include <utility>

namespace widgets {
namespace {

constexpr int kPlayed_ms = 1000;     // a night
constexpr int kStaleAfter_ms = 150;  // a mark that only flickers says nothing

}  // namespace

ViewsPage::ViewsPage(Selection& selection, QWidget* parent)
    : QWidget(parent),
      m_selection(selection),
      m_places(new WordBar(WordBar::Kind::Places, tr("Places"), this)),
      m_switch(new WordBar(WordBar::Kind::Switch, tr("Views"), this)),
      m_verdict(sentenceLabel(tr("The answer"), this)),
      m_headline(sentenceLabel(tr("What this picture says"), this)),
      m_detail(sentenceLabel(tr("How to read it"), this)),
      m_stale(sentenceLabel(tr("State of the picture"), this)),
      m_which(new QLabel(this)),
      m_readOut(sentenceLabel(tr("What stands under the cursor"), this)),
      m_why(new QToolButton(this)),
      m_previous(new QToolButton(this)),
      m_next(new QToolButton(this)),
      m_play(new QToolButton(this)),
      m_stack(new QStackedWidget(this)),
      m_stage(new NightStage(selection, this)) {
    layOut();
    addPictures();
    m_player.setInterval(kPlayed_ms);
    m_staleDelay.setInterval(kStaleAfter_ms);
    m_staleDelay.setSingleShot(true);
    connect(&m_staleDelay, &QTimer::timeout, this, &ViewsPage::showStale);
    connect(&m_player, &QTimer::timeout, this, [this] {
        if (m_selection.night() >= m_selection.nights()) {
            setPlaying(false);
        } else {
            m_selection.setNight(m_selection.night() + 1);
        }
    });
    connect(&m_selection, &Selection::changed, this, &ViewsPage::showSelection);
    connect(&m_stage->night(), &ChartView::saidAnew, this, &ViewsPage::showSentences);
    connect(m_places, &QTabBar::currentChanged, this, [this](int at) {
        if (!m_isSettingBars && at >= 0) {
            setPlace(kPlaces[static_cast<std::size_t>(at)]);
        }
    });
    connect(m_switch, &QTabBar::currentChanged, this, [this](int at) {
        if (!m_isSettingBars && at >= 0) {
            setView(firstOf(placeOf(m_view)) + at);
        }
    });
    styleTexts();
    setView(firstOf(Place::Nights));
    showSelection();
}

void ViewsPage::addPictures() {
    const auto mode = [this](const QString& name, Selection::Mode which) {
        const Page page{name, m_stage, [this, which] { m_selection.setMode(which); }};
        addView(countOf(Place::Nights), {Place::Nights, page, &m_stage->night()});
    };
    mode(tr("One night"), Selection::Mode::AllRamps);
    mode(tr("All nights"), Selection::Mode::AllNights);
    for (const ViewKind& kind : viewKinds()) {
        auto* picture = new PictureView(kind, m_selection, m_stack);
        addView(countOf(kind.place), {kind.place, {kind.name(), picture}, picture, kind.id});
        connect(picture, &ChartView::saidAnew, this, &ViewsPage::showSentences);
    }
}

void ViewsPage::addPage(Place place, int at, Page page) {
    addView(at, {place, std::move(page)});
}

void ViewsPage::addView(int at, View view) {
    int index = at;
    for (const Place before : kPlaces) {
        if (before == view.place) {
            break;
        }
        index += countOf(before);
    }
    m_stack->addWidget(view.page.widget);  // once: a widget that is there stays
    if (!m_views.empty() && index <= m_view) {
        ++m_view;
    }
    m_views.insert(m_views.begin() + index, std::move(view));
    showBars();
}

int ViewsPage::firstOf(Place place) const {
    const auto found =
        std::find_if(m_views.begin(), m_views.end(), [&](const View& one) { return one.place == place; });
    return static_cast<int>(found - m_views.begin());
}

int ViewsPage::countOf(Place place) const {
    return static_cast<int>(
        std::count_if(m_views.begin(), m_views.end(), [&](const View& one) { return one.place == place; }));
}

void ViewsPage::setPlace(Place place) {
    if (countOf(place) > 0) {
        setView(firstOf(place) + m_lastSeen[place]);
    }
}

void ViewsPage::setView(int index) {
    engine::ensure(index >= 0 && index < viewCount(), "the view is one of the page's");
    m_view = index;
    const View& view = m_views[static_cast<std::size_t>(index)];
    m_lastSeen[view.place] = index - firstOf(view.place);
    m_stack->setCurrentWidget(view.page.widget);
    if (view.page.shown) {
        view.page.shown();
    }
    showBars();
    m_chooser->setVisible(view.place == Place::Nights || view.place == Place::Why);
    styleTexts();
    showSentences();
    showReadOut();
    emit viewChanged(index);
}

void ViewsPage::showBars() {
    m_isSettingBars = true;
    const Place shown = placeOf(m_view);
    for (std::size_t i = 0; i < kPlaces.size(); ++i) {
        if (kPlaces[i] == shown) {
            m_places->setCurrentIndex(static_cast<int>(i));
        }
    }
    const int first = firstOf(shown), count = countOf(shown);
    while (m_switch->count() > count) {
        m_switch->removeTab(m_switch->count() - 1);
    }
    for (int i = 0; i < count; ++i) {
        if (i >= m_switch->count()) {
            m_switch->addTab(viewName(first + i));
        } else if (m_switch->tabText(i) != viewName(first + i)) {
            m_switch->setTabText(i, viewName(first + i));
        }
    }
    m_switch->setCurrentIndex(m_view - first);
    m_switch->setVisible(count > 1);
    m_isSettingBars = false;
}

Place ViewsPage::placeOf(int index) const {
    return m_views[static_cast<std::size_t>(index)].place;
}

int ViewsPage::viewNamed(const QString& name) const {
    const auto found =
        std::find_if(m_views.begin(), m_views.end(), [&](const View& one) { return one.page.name == name; });
    engine::ensure(found != m_views.end(), "a view has that name");
    return static_cast<int>(found - m_views.begin());
}

QString ViewsPage::viewName(int index) const {
    return m_views[static_cast<std::size_t>(index)].page.name;
}

const QWidget* ViewsPage::page(int index) const {
    return m_views[static_cast<std::size_t>(index)].page.widget;
}

bool ViewsPage::isMeasuring() const {
    return std::string_view(m_views[static_cast<std::size_t>(m_view)].id) == kMeasureView;
}

const ChartView& ViewsPage::main() const {
    const View& view = m_views[static_cast<std::size_t>(m_view)];
    return view.picture == nullptr ? static_cast<const ChartView&>(m_stage->night()) : *view.picture;
}

const ChartView& ViewsPage::meant() const {
    const View& view = m_views[static_cast<std::size_t>(m_view)];
    if (view.page.widget == m_stage) {
        return m_stage->meant();
    }
    const ChartView* chart = view.page.chart ? view.page.chart() : nullptr;
    return chart != nullptr ? *chart : main();
}

void ViewsPage::setOutcome(const OutcomePtr& outcome) {
    m_outcome = outcome;
    m_selection.setExtent(outcome->comparison.days, outcome->comparison.runs.size());
    m_stage->setOutcome(outcome);
    for (const View& view : m_views) {
        if (auto* picture = qobject_cast<PictureView*>(view.page.widget)) {
            picture->setOutcome(outcome);
        }
    }
    if (!m_stale->text().isEmpty()) {
        showStale();
    }
    showSentences();
    showSelection();
}

/// What is old stays so until the next edit if the work was stopped.
void ViewsPage::showStale() {
    m_stale->setText(m_outcome->isGivenUp ? tr("Of the pond before your last edit; stopped.")
                                          : tr("Of the pond before your last edit; computing anew."));
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
    m_stage->setCriteria(isShown);
}

void ViewsPage::setPlaying(bool isPlaying) {
    if (isPlaying && m_selection.night() >= m_selection.nights()) {
        m_selection.setNight(1);
    }
    m_play->setChecked(isPlaying);
    m_stage->night().setGhost(isPlaying);
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

void ViewsPage::showSelection() {
    showMode();
    m_previous->setEnabled(m_selection.night() > 1);
    m_next->setEnabled(m_selection.night() < m_selection.nights());
    if (m_outcome != nullptr) {
        m_which->setText(nightName(*m_outcome, m_selection.night()));
        showReadOut();
    }
}

/// One night and all nights are the same picture in two modes, which the menu can change too.
void ViewsPage::showMode() {
    const int first = firstOf(Place::Nights);
    const int wanted = first + (m_selection.mode() == Selection::Mode::AllRamps ? 0 : 1);
    if (m_views[static_cast<std::size_t>(m_view)].page.widget == m_stage && m_view != wanted) {
        setView(wanted);
    }
}

QString ViewsPage::verdict() const {
    return m_verdict->text();
}

QString ViewsPage::headline() const {
    return m_headline->text();
}

void ViewsPage::showReadOut() {
    const auto cursor = m_selection.cursor();
    const QString text = m_outcome != nullptr && cursor ? main().readAt(*cursor) : QString();
    // In one line, since it stands under the chart and must not move it.
    m_readOut->setText(QString(text).replace(QLatin1Char('\n'), QStringLiteral("   \u00b7   ")));
    m_readOut->setVisible(!text.isEmpty());
}

void ViewsPage::changeEvent(QEvent* event) {
    QWidget::changeEvent(event);
    if (event->type() == QEvent::PaletteChange || event->type() == QEvent::FontChange) {
        styleTexts();
    }
}

}  // namespace widgets
