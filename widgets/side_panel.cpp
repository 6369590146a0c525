#include "widgets/side_panel.h"

#include "widgets/document.h"
#include "widgets/ramp_model.h"
#include "widgets/selection.h"
#include "widgets/simulation.h"

#include <QBoxLayout>
#include <QEvent>
#include <QHeaderView>
#include <QTableView>

namespace widgets {
namespace {

constexpr int kWidth = 370;
constexpr int kMostRows = 8;  // more scroll, so that the forms keep their room

}  // namespace

SidePanel::SidePanel(Document& /*document*/, Selection& selection, Simulation& /*simulation*/,
                     QWidget* parent)
    : QWidget(parent), m_selection(selection), m_model(new RampModel(this)), m_table(new QTableView(this)) {
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(6, 10, 10, 6);
    makeTable();
    column->addWidget(m_table);
    column->addStretch(1);
    setMinimumWidth(kWidth);
    connect(&m_selection, &Selection::changed, this, &SidePanel::selectRow);
    m_model->setPalette(palette());
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
    m_table->setIconSize(QSize(30, 14));
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

void SidePanel::setOutcome(const OutcomePtr& outcome) {
    m_model->setOutcome(outcome);
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
}

void SidePanel::changeEvent(QEvent* event) {
    QWidget::changeEvent(event);
    if (event->type() == QEvent::PaletteChange) {
        m_model->setPalette(palette());
    }
}

}  // namespace widgets
