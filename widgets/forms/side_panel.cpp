#include "widgets/forms/side_panel.h"

#include "widgets/controls/number_box.h"
#include "widgets/controls/plot_style.h"
#include "widgets/document/document.h"
#include "widgets/document/recomputation.h"
#include "widgets/document/selection.h"
#include "widgets/forms/ramp_actions.h"
#include "widgets/forms/ramp_facts.h"
#include "widgets/forms/ramp_form.h"
#include "widgets/forms/ramp_model.h"

#include <QAction>
#include <QBoxLayout>
#include <QEvent>
#include <QHeaderView>
#include <QLabel>
#include <QPushButton>
#include <QScrollArea>
#include <QTableView>
#include <QToolButton>

#include <algorithm>

namespace widgets {
namespace {

constexpr int kWidth = 410;
constexpr double kMostNights = 90;
constexpr int kMostRows = 8;  // more scroll, so that the rest keeps its room

QToolButton* wordButton(const QString& text, const QString& help, QWidget* parent) {
    auto* made = new QToolButton(parent);
    made->setText(text);
    made->setToolTip(help);
    made->setAccessibleName(help);
    made->setCheckable(true);
    made->setAutoRaise(true);
    made->setFocusPolicy(Qt::StrongFocus);
    return made;
}

}  // namespace

SidePanel::SidePanel(Document& document, Selection& selection, Recomputation& recomputation, QWidget* parent)
    : QWidget(parent),
      m_selection(selection),
      m_model(new RampModel(selection, this)),
      m_actions(new RampActions(document, selection, this)),
      m_table(new QTableView(this)),
      m_facts(new RampFacts(this)),
      m_area(new QScrollArea(this)),
      m_ramp(new RampForm(document, this)),
      m_papers(new QPushButton(tr("Make the Papers\u2026"), this)) {
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(6, 8, 10, 6);
    column->setSpacing(4);
    makeTable();
    makeForm(recomputation);
    column->addWidget(m_table);
    column->addWidget(buttonsRow());
    column->addWidget(m_facts);
    column->addWidget(m_area, 1);
    column->addStretch(0);
    m_papers->setAutoDefault(false);
    m_papers->setAccessibleDescription(
        tr("Proposal, schedule, owner's sheet and the rest, for one ramp, into a folder."));
    connect(m_papers, &QPushButton::clicked, this, &SidePanel::papersWanted);
    column->addWidget(m_papers);
    setMinimumWidth(kWidth);
    setMore(false);
    setChanging(false);
    connect(&m_selection, &Selection::changed, this, &SidePanel::selectRow);
    applyStyle();
}

/// A selected row stays paper with a tint, so that the samples of the lines stay legible on it.
void SidePanel::applyStyle() {
    m_model->setPalette(palette());
    QPalette quiet = palette();
    quiet.setColor(QPalette::Highlight,
                   mixed(quiet.color(QPalette::Base), quiet.color(QPalette::Link), 0.22));
    quiet.setColor(QPalette::HighlightedText, quiet.color(QPalette::Text));
    m_table->setPalette(quiet);
    QPalette dark = palette();  // the one button that stands out
    dark.setColor(QPalette::Button, palette().color(QPalette::WindowText));
    dark.setColor(QPalette::ButtonText, palette().color(QPalette::Window));
    m_papers->setPalette(dark);
    QFont strong = font();
    strong.setBold(true);
    m_papers->setFont(strong);
}

void SidePanel::makeTable() {
    m_table->setModel(m_model);
    m_table->setAccessibleName(tr("The ramps and what they come to"));
    m_table->setSelectionBehavior(QAbstractItemView::SelectRows);
    m_table->setSelectionMode(QAbstractItemView::SingleSelection);
    m_table->setShowGrid(false);
    m_table->setFrameShape(QFrame::NoFrame);
    m_table->setWordWrap(false);
    m_table->setTextElideMode(Qt::ElideRight);
    m_table->setIconSize(QSize(26, 14));
    m_table->setTabKeyNavigation(false);
    m_table->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    m_table->verticalHeader()->hide();
    m_table->verticalHeader()->setSectionResizeMode(QHeaderView::Fixed);
    m_table->verticalHeader()->setDefaultSectionSize(m_table->fontMetrics().height() + 8);
    QHeaderView* header = m_table->horizontalHeader();
    header->setHighlightSections(false);
    header->setSectionsClickable(false);
    header->setSectionResizeMode(QHeaderView::ResizeToContents);
    header->setSectionResizeMode(RampModel::Name, QHeaderView::Stretch);
    connect(m_table->selectionModel(), &QItemSelectionModel::currentRowChanged, this,
            [this](const QModelIndex& current) {
                if (current.isValid()) {
                    m_selection.setRamp(static_cast<std::size_t>(current.row()));
                }
            });
}

void SidePanel::makeForm(Recomputation& recomputation) {
    auto* inner = new QWidget(m_area);
    auto* column = new QVBoxLayout(inner);
    column->setContentsMargins(0, 0, 0, 0);
    column->addWidget(m_ramp);
    column->addWidget(nightsRow(recomputation, inner));
    column->addStretch(1);
    m_area->setWidgetResizable(true);
    m_area->setFrameShape(QFrame::NoFrame);
    m_area->setFocusPolicy(Qt::NoFocus);
    m_area->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    m_area->setWidget(inner);
}

void SidePanel::setMore(bool isShown) {
    m_more->setChecked(isShown);
    for (int column = RampModel::kFirstOfMore; column < RampModel::kColumns; ++column) {
        m_table->setColumnHidden(column, !isShown);
    }
}

void SidePanel::setChanging(bool isChanging) {
    m_change->setChecked(isChanging);
    m_area->setVisible(isChanging);
    m_facts->setVisible(!isChanging);
}

/// What can be done with the ramps, in words; the rest of it stands in their menu.
QWidget* SidePanel::buttonsRow() {
    auto* bar = new QWidget(this);
    auto* row = new QHBoxLayout(bar);
    row->setContentsMargins(0, 0, 0, 0);
    row->setSpacing(2);
    for (QAction* action : m_actions->buttons()) {
        auto* button = new QToolButton(bar);
        button->setDefaultAction(action);
        button->setText(action->iconText());
        button->setToolButtonStyle(Qt::ToolButtonTextOnly);
        button->setPopupMode(QToolButton::InstantPopup);
        button->setAutoRaise(true);
        button->setFocusPolicy(Qt::StrongFocus);
        button->setAccessibleName(action->toolTip());
        row->addWidget(button);
    }
    m_change = wordButton(tr("Change"), tr("Change the selected ramp"), bar);
    m_more = wordButton(tr("More"), tr("More numbers of each ramp"), bar);
    row->addWidget(m_change);
    row->addStretch(1);
    row->addWidget(m_more);
    connect(m_change, &QToolButton::toggled, this, &SidePanel::setChanging);
    connect(m_more, &QToolButton::toggled, this, &SidePanel::setMore);
    return bar;
}

/// How many nights are computed; empty: as many as the ramps ask for.
QWidget* SidePanel::nightsRow(Recomputation& recomputation, QWidget* parent) {
    auto* bar = new QWidget(parent);
    auto* row = new QHBoxLayout(bar);
    row->setContentsMargins(4, 0, 0, 0);
    m_nights = new NumberBox({1, kMostNights, "nights", false, true}, 1, NumberBox::Empty::Allowed, bar);
    auto* label = new QLabel(tr("Ni&ghts to compute"), bar);
    label->setBuddy(m_nights);
    m_nights->setAccessibleName(tr("Nights to compute"));
    m_nights->setMinimumWidth(m_nights->fontMetrics().horizontalAdvance(QStringLiteral("00 (automatic)")) +
                              40);
    m_nights->setToolTip(
        tr("Empty: 14, or the longest ramp plus seven. Days beyond the weather table take the usual "
           "day, the mean of the table's days."));
    m_nights->setAccessibleDescription(m_nights->toolTip());
    row->addWidget(label);
    row->addStretch(1);
    row->addWidget(m_nights);
    connect(&m_nights->entry(), &Entry::committed, this, [this, &recomputation] {
        const auto nights = m_nights->value();
        recomputation.setNights(nights ? std::optional(static_cast<int>(*nights)) : std::nullopt);
    });
    return bar;
}

bool SidePanel::commit() {
    return m_ramp->commit();
}

void SidePanel::setOutcome(const OutcomePtr& outcome) {
    m_outcome = outcome;
    m_model->setOutcome(outcome);
    m_actions->setOutcome(outcome);
    m_nights->setTakenIfEmpty(engine::defaultDays(outcome->comparison.model.pond));
    fitTable();
    selectRow();
}

void SidePanel::fitTable() {
    const int rows = std::min(m_model->rowCount(), kMostRows);
    m_table->setFixedHeight(m_table->horizontalHeader()->sizeHint().height() +
                            rows * m_table->verticalHeader()->defaultSectionSize() + 4);
}

void SidePanel::selectRow() {
    const auto row = static_cast<int>(m_selection.ramp());
    if (row < m_model->rowCount() && m_table->currentIndex().row() != row) {
        m_table->setCurrentIndex(m_model->index(row, RampModel::Name));
    }
    m_ramp->setRamp(row - 1);
    m_change->setEnabled(row > 0);
    if (m_outcome != nullptr) {
        m_facts->show(m_outcome, m_selection.ramp());
    }
}

void SidePanel::changeEvent(QEvent* event) {
    QWidget::changeEvent(event);
    if (event->type() == QEvent::PaletteChange) {
        applyStyle();
    }
}

}  // namespace widgets
