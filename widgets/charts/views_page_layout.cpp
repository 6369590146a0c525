#include "engine/advice/advice.h"
#include "engine/wording/sentence_advice.h"
#include "widgets/charts/night_plot.h"
#include "widgets/charts/night_stage.h"
#include "widgets/charts/views_page.h"
#include "widgets/controls/plot_style.h"
#include "widgets/controls/word_bar.h"
#include "widgets/document/wording.h"

#include <QBoxLayout>
#include <QLabel>
#include <QStackedWidget>
#include <QToolButton>

// What stands around the pictures, and what it says.

namespace widgets {
namespace {

void setUp(QToolButton& button, const QString& text, const QString& help) {
    button.setText(text);
    button.setToolTip(help);
    button.setAccessibleName(help);
    button.setFocusPolicy(Qt::StrongFocus);
    button.setAutoRaise(true);
}

/// What is said of the ramp that papers would be about: the answer, or, until there is one, its central run.
QString verdictText(const Outcome& outcome) {
    const engine::Advice* advice = adviceOf(outcome);
    if (advice != nullptr) {
        return unbroken(
            localized({engine::verdictOf(*advice, outcome.comparison.model)}, engine::SentencePart::Advice));
    }
    return outcome.isGivenUp ? ViewsPage::tr("The answer was not worked out: it was stopped.")
                             : ViewsPage::tr("Working out the answer.");
}

}  // namespace

void ViewsPage::layOut() {
    for (const Place place : kPlaces) {
        m_places->addTab(placeText(place));
    }
    auto* layout = new QVBoxLayout(this);
    layout->setContentsMargins(14, 6, 6, 4);
    layout->setSpacing(4);
    layout->addWidget(m_places, 0, Qt::AlignLeft);
    layout->addWidget(m_verdict);
    layout->addWidget(verdictRow());
    layout->addWidget(m_detail);
    auto* row = new QHBoxLayout;
    row->setContentsMargins(0, 2, 0, 0);
    row->addWidget(m_switch, 0, Qt::AlignLeft | Qt::AlignVCenter);
    row->addSpacing(16);
    row->addWidget(chooser(), 1);
    layout->addLayout(row);
    layout->addWidget(m_stack, 1);
    layout->addWidget(m_readOut);
    m_readOut->hide();
}

/// What the picture says, and the way to its reasons.
QWidget* ViewsPage::verdictRow() {
    m_verdictRow = new QWidget(this);
    auto* row = new QHBoxLayout(m_verdictRow);
    row->setContentsMargins(0, 0, 0, 0);
    setUp(*m_why, tr("Why \u25b8"), tr("What makes this night as it is"));
    row->addWidget(m_headline, 1);
    row->addWidget(m_why, 0, Qt::AlignTop);
    connect(m_why, &QToolButton::clicked, this, [this] { setPlace(Place::Why); });
    return m_verdictRow;
}

QWidget* ViewsPage::chooser() {
    m_chooser = new QWidget(this);
    auto* row = new QHBoxLayout(m_chooser);
    row->setContentsMargins(0, 0, 0, 0);
    setUp(*m_previous, {}, tr("The night before"));
    m_previous->setArrowType(Qt::LeftArrow);
    setUp(*m_next, {}, tr("The next night"));
    m_next->setArrowType(Qt::RightArrow);
    setUp(*m_play, tr("Play"), tr("Play the nights, one a second"));
    m_play->setCheckable(true);
    m_which->setTextFormat(Qt::PlainText);
    m_which->setAccessibleName(tr("Night"));
    row->addWidget(m_previous);
    row->addWidget(m_which);
    row->addWidget(m_next);
    row->addWidget(m_play);
    row->addStretch(1);
    row->addWidget(m_stale);
    connect(m_previous, &QToolButton::clicked, this,
            [this] { m_selection.setNight(m_selection.night() - 1); });
    connect(m_next, &QToolButton::clicked, this, [this] { m_selection.setNight(m_selection.night() + 1); });
    connect(m_play, &QToolButton::clicked, this, [this](bool isOn) { setPlaying(isOn); });
    return m_chooser;
}

/// The answer stands over all but what comes after the start, where the mornings have answers of their own.
/// The night's reasons stand in their own place, those of other pictures below their sentence.
void ViewsPage::showSentences() {
    const View& view = m_views[static_cast<std::size_t>(m_view)];
    const bool isPicture = view.picture != nullptr, isNight = view.place == Place::Nights;
    m_verdict->setText(m_outcome == nullptr ? QString() : verdictText(*m_outcome));
    m_verdict->setVisible(view.place != Place::After);
    m_verdictRow->setVisible(isPicture);
    m_why->setVisible(isNight);
    if (m_outcome == nullptr || !isPicture) {
        m_detail->hide();
        return;
    }
    const QString headline = main().headline();
    m_headline->setText(unbroken(m_outcome->comparison.model.profileIsGuess
                                     ? tr("The profile is a guess. %1").arg(headline)
                                     : headline));
    QString detail = unbroken(main().detail());
    if (view.place == Place::Why && m_view == firstOf(Place::Why)) {
        QStringList parts{nightReasons(*m_outcome, m_selection), detail, standsOn(*m_outcome)};
        parts.removeAll(QString());
        detail = parts.join(QLatin1Char('\n'));  // causes and chances, the picture, what it stands on
    }
    m_detail->setText(detail);
    m_detail->setVisible(!isNight && !detail.isEmpty());
}

void ViewsPage::styleTexts() {
    const PlotStyle style = PlotStyle::of(palette(), font());
    QFont large = font();
    large.setPointSizeF(large.pointSizeF() * 1.25);
    large.setBold(true);
    m_verdict->setFont(large);
    QPalette quiet = palette();
    quiet.setColor(QPalette::WindowText, style.quietInk);
    const bool isNight = m_views.empty() || placeOf(m_view) == Place::Nights;
    m_headline->setPalette(isNight ? quiet : palette());
    for (QLabel* label : {m_detail, m_stale, m_readOut}) {
        label->setPalette(quiet);
    }
}

}  // namespace widgets
