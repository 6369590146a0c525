#include "widgets/forms/side_panel.h"

#include "widgets/controls/number_box.h"
#include "widgets/controls/plot_style.h"
#include "widgets/document/document.h"
#include "widgets/document/recomputation.h"
#include "widgets/document/selection.h"
#include "widgets/forms/aerator_form.h"
#include "widgets/forms/limits_form.h"
#include "widgets/forms/ramp_actions.h"
#include "widgets/forms/ramp_form.h"
#include "widgets/forms/ramp_model.h"

#include <QAction>
#include <QBoxLayout>
#include <QEvent>
#include <QHeaderView>
#include <QLabel>
#include <QScrollArea>
#include <QTabWidget>
#include <QTableView>
#include <QToolButton>

#include <algorithm>

namespace widgets {
namespace {

constexpr int kWidth = 430;
constexpr double kMostNights = 90;
constexpr int kMostRows = 8;  // more scroll, so that the forms keep their room

}  // namespace

SidePanel::SidePanel(Document& document, Selection& selection, Recomputation& recomputation, QWidget* parent)
    : QWidget(parent),
      m_selection(selection),
      m_model(new RampModel(selection, this)),
      m_actions(new RampActions(document, selection, this)),
      m_table(new QTableView(this)),
      m_tabs(new QTabWidget(this)) {
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(6, 10, 10, 6);
    makeTable();
    makeForms(document);
    column->addWidget(m_table);
    column->addWidget(buttonsRow());
    column->addWidget(nightsRow(recomputation));
    column->addWidget(m_tabs, 1);
    setMinimumWidth(kWidth);
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

void SidePanel::makeForms(Document& document) {
    m_ramp = new RampForm(document, m_tabs);
    m_limits = new LimitsForm(document, m_tabs);
    m_aerator = new AeratorForm(document, m_tabs);
    m_tabs->setDocumentMode(true);
    m_tabs->setAccessibleName(tr("What can be changed"));
    const auto add = [this](QWidget* form, const QString& name) {
        auto* area = new QScrollArea(m_tabs);
        area->setWidgetResizable(true);
        area->setFrameShape(QFrame::NoFrame);
        area->setFocusPolicy(Qt::NoFocus);
        area->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
        area->setWidget(form);
        m_tabs->addTab(area, name);
    };
    add(m_ramp, tr("&Ramp"));
    add(m_limits, tr("&Limits"));
    add(m_aerator, tr("&Aerator"));
}

/// What can be done with the ramps, in words.
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
    row->addStretch(1);
    return bar;
}

/// How many nights are computed; empty: as many as the ramps ask for.
QWidget* SidePanel::nightsRow(Recomputation& recomputation) {
    auto* bar = new QWidget(this);
    auto* row = new QHBoxLayout(bar);
    row->setContentsMargins(4, 0, 0, 0);
    m_nights = new NumberBox({1, kMostNights, "nights", false, true}, 1, NumberBox::Empty::Allowed, bar);
    auto* label = new QLabel(tr("&Nights to compute"), bar);
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
    return m_ramp->commit() && m_limits->commit() && m_aerator->commit();
}

void SidePanel::setOutcome(const OutcomePtr& outcome) {
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
}

void SidePanel::changeEvent(QEvent* event) {
    QWidget::changeEvent(event);
    if (event->type() == QEvent::PaletteChange) {
        applyStyle();
    }
}

}  // namespace widgets
