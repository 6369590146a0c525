#include "widgets/forms/pond_page.h"

#include "engine/ensemble/uncertain_inputs.h"
#include "widgets/charts/profile_sketch.h"
#include "widgets/controls/sheet_editor.h"
#include "widgets/forms/aerator_form.h"
#include "widgets/forms/limits_form.h"
#include "widgets/forms/pond_section.h"
#include "widgets/forms/weather_file.h"

#include <QBoxLayout>
#include <QLabel>
#include <QListWidget>
#include <QScrollArea>
#include <QSplitter>
#include <QStackedWidget>
#include <QTableView>

#include <functional>

namespace widgets {
namespace {

QLabel* note(const QString& text, QWidget* parent) {
    auto* label = new QLabel(text, parent);
    label->setWordWrap(true);
    label->setContentsMargins(10, 6, 10, 2);
    return label;
}

}  // namespace

/// What a section is made of, from above: forms, then tables with a sentence before each.
struct PondPage::Parts {
    std::vector<QWidget*> forms;
    std::vector<std::pair<QString, SheetSpec>> sheets;
    QWidget* beside = nullptr;
};

PondPage::PondPage(Document& document, QWidget* parent)
    : QWidget(parent),
      m_document(document),
      m_list(new QListWidget(this)),
      m_stack(new QStackedWidget(this)),
      m_help(new QLabel(this)) {
    auto* row = new QHBoxLayout(this);
    row->setContentsMargins(0, 0, 0, 0);
    m_list->setAccessibleName(tr("Parts of the pond"));
    m_list->setFixedWidth(m_list->fontMetrics().averageCharWidth() * 20);
    m_list->setFrameShape(QFrame::NoFrame);
    m_list->setSpacing(3);
    row->addWidget(m_list);
    auto* column = new QVBoxLayout;
    column->addWidget(m_stack, 1);
    m_help->setWordWrap(true);
    m_help->setTextFormat(Qt::PlainText);
    m_help->setAlignment(Qt::AlignTop | Qt::AlignLeft);
    m_help->setMinimumHeight(5 * m_help->fontMetrics().lineSpacing());
    m_help->setContentsMargins(12, 6, 12, 6);
    m_help->setFrameShape(QFrame::StyledPanel);
    m_help->setAccessibleName(tr("Help"));
    column->addWidget(m_help);
    row->addLayout(column, 1);

    const auto form = [this](void (*build)(PondSection&)) {
        return new PondSection(m_document, this, build);
    };
    addSection(tr("Place"), {{form(&buildPlace)}, {}, nullptr});
    addSection(tr("Shape"),
               {{form(&buildShape)},
                {{tr("Or contours, which then stand instead of the three numbers:"), contourSheet()}},
                nullptr});
    addSection(tr("Bottom"), {{form(&buildBottom)}, {}, nullptr});
    addSection(tr("Water"), {{form(&buildWater)},
                             {{tr("Algae or weeds that grow or die during the run:"), waterChangeSheet()}},
                             nullptr});
    addSection(tr("Spring"), {{form(&buildSpring)}, {}, nullptr});
    addSection(tr("Fish"), {{form(&buildFeed), new LimitsForm(m_document, this)},
                            {{tr("What lives in the pond:"), fishSheet()}},
                            nullptr});
    addSection(
        tr("Profile"),
        {{form(&buildProfileTime)},
         {{tr("Temperature and oxygen by depth, as read or pasted from a spreadsheet:"), profileSheet()}},
         new ProfileSketch(m_document, this)});
    addSection(tr("Weather"), {{form(&buildWeather), new WeatherFileRow(m_document, this)},
                               {{tr("Day by day:"), weatherSheet()}},
                               nullptr});
    addSection(tr("Air"), {{new AeratorForm(m_document, this), form(&buildSurfaceAir)}, {}, nullptr});
    addSection(tr("Papers"), {{form(&buildClient)}, {}, nullptr});
    connect(m_list, &QListWidget::currentRowChanged, m_stack, &QStackedWidget::setCurrentIndex);
    connect(m_list, &QListWidget::currentRowChanged, this, [this] {  // of no field of another section
        showHelp({},
                 tr("Each field says here what it means, how it is measured, what is usual, and where that "
                    "comes from."));
    });
    m_list->setCurrentRow(0);
}

void PondPage::addSection(const QString& name, const Parts& parts) {
    auto* inner = new QWidget(this);
    auto* column = new QVBoxLayout(inner);
    column->setContentsMargins(4, 0, 8, 4);
    for (QWidget* one : parts.forms) {
        add(one);
        column->addWidget(one);
    }
    for (const auto& [sentence, spec] : parts.sheets) {
        column->addWidget(note(sentence, inner));
        auto* editor = new SheetEditor(m_document, spec, inner);
        m_sheets.push_back(editor);
        column->addWidget(editor, 1);
        connect(editor->table().selectionModel(), &QItemSelectionModel::currentColumnChanged, this,
                [this, editor](const QModelIndex& current) {
                    const SheetModel& model = editor->model();
                    showHelp(model.headerData(current.column(), Qt::Horizontal, Qt::DisplayRole).toString(),
                             model.spec().columns[static_cast<std::size_t>(current.column())].help);
                });
    }
    if (parts.sheets.empty()) {
        column->addStretch(1);
    }
    QWidget* shown = inner;
    if (parts.beside != nullptr) {
        auto* split = new QSplitter(Qt::Horizontal, this);
        split->setChildrenCollapsible(false);
        split->addWidget(inner);
        split->addWidget(parts.beside);
        split->setStretchFactor(0, 3);
        split->setStretchFactor(1, 2);
        shown = split;
    }
    auto* area = new QScrollArea(m_stack);
    area->setWidgetResizable(true);
    area->setFrameShape(QFrame::NoFrame);
    area->setFocusPolicy(Qt::NoFocus);
    area->setWidget(shown);
    m_stack->addWidget(area);
    m_list->addItem(name);
}

void PondPage::add(QWidget* form) {
    if (auto* fields = qobject_cast<FieldForm*>(form)) {
        m_forms.push_back(fields);
        connect(fields, &FieldForm::helpAsked, this, &PondPage::showHelp);
    }
}

void PondPage::showHelp(const QString& label, const QString& help) {
    m_help->setText(label.isEmpty() ? help : label + QStringLiteral(": ") + help);
}

bool PondPage::commit() {
    for (FieldForm* form : m_forms) {
        if (!form->commit()) {
            return false;
        }
    }
    return true;
}

void PondPage::setOutcome(const OutcomePtr& outcome) {
    std::map<std::string, Band> bands;
    constexpr double kEnds = 1.6448536269514722;  // normal score of the 95 % point
    for (const engine::UncertainInput& input : engine::uncertainInputs(outcome->comparison.model)) {
        bands[input.name] = {input.spread.atScore(-kEnds), input.spread.atScore(kEnds)};
    }
    for (FieldForm* form : m_forms) {
        form->setBands(bands);
    }
}

int PondPage::sectionCount() const {
    return m_list->count();
}

void PondPage::setSection(int index) {
    m_list->setCurrentRow(index);
}

QString PondPage::sectionName(int index) const {
    return m_list->item(index)->text();
}

}  // namespace widgets
