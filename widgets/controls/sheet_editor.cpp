#include "widgets/controls/sheet_editor.h"

#include "engine/base/text_file.h"
#include "widgets/document/to_qstring.h"

#include <QApplication>
#include <QBoxLayout>
#include <QClipboard>
#include <QEvent>
#include <QFileDialog>
#include <QHeaderView>
#include <QKeyEvent>
#include <QLabel>
#include <QPushButton>
#include <QTableView>

#include <set>

namespace widgets {

SheetEditor::SheetEditor(Document& document, SheetSpec spec, QWidget* parent)
    : QWidget(parent),
      m_model(new SheetModel(document, std::move(spec), this)),
      m_table(new QTableView(this)),
      m_said(new QLabel(this)) {
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(0, 0, 0, 0);
    m_table->setModel(m_model);
    m_table->setAccessibleName(m_model->spec().name);
    m_table->setAccessibleDescription(
        tr("Type in a cell, or paste a block from a spreadsheet; the last row takes what is added."));
    m_table->setTabKeyNavigation(false);
    m_table->horizontalHeader()->setSectionResizeMode(QHeaderView::Stretch);
    m_table->verticalHeader()->setDefaultSectionSize(m_table->fontMetrics().height() + 8);
    m_table->setMinimumHeight(7 * (m_table->fontMetrics().height() + 8));
    m_table->installEventFilter(this);
    column->addWidget(m_table, 1);
    auto* row = new QHBoxLayout;
    const auto button = [&](const QString& text, const QString& help, auto slot) {
        auto* made = new QPushButton(text, this);
        made->setToolTip(help);
        made->setAccessibleDescription(help);
        made->setAutoDefault(false);
        connect(made, &QPushButton::clicked, this, slot);
        row->addWidget(made);
        return made;
    };
    button(tr("Paste"), tr("Pastes rows from a spreadsheet at the marked cell."), &SheetEditor::paste);
    QPushButton* take =
        button(tr("Import…"), tr("Reads rows from a CSV file, with the columns in the order of this table."),
               &SheetEditor::import);
    QPushButton* remove =
        button(tr("Delete Rows"), tr("Takes the marked rows away."), &SheetEditor::removeSelected);
    take->setVisible(m_model->spec().canGrow);
    remove->setVisible(m_model->spec().canGrow);
    row->addStretch(1);
    column->addLayout(row);
    m_said->setWordWrap(true);
    m_said->setTextFormat(Qt::PlainText);
    m_said->setAccessibleName(tr("What is not taken"));
    m_said->hide();
    column->addWidget(m_said);
    connect(m_model, &SheetModel::said, this, [this](const QString& sentence) {
        m_said->setText(sentence);
        m_said->setVisible(!sentence.isEmpty());
    });
}

QString SheetEditor::said() const {
    return m_said->text();
}

void SheetEditor::paste() {
    const QModelIndex at = m_table->currentIndex();
    m_model->paste(QApplication::clipboard()->text(), at.isValid() ? at.row() : m_model->rowCount() - 1,
                   at.isValid() ? at.column() : 0);
}

void SheetEditor::copy() {
    QApplication::clipboard()->setText(m_model->copied(m_table->selectionModel()->selectedIndexes()));
}

void SheetEditor::removeSelected() {
    std::set<int> rows;
    for (const QModelIndex& index : m_table->selectionModel()->selectedIndexes()) {
        rows.insert(index.row());
    }
    m_model->takeAway({rows.begin(), rows.end()});
}

void SheetEditor::import() {
    const QString name = QFileDialog::getOpenFileName(this, tr("Import rows"), {},
                                                      tr("Tables (*.csv *.tsv *.txt);;All files (*)"));
    if (name.isEmpty()) {
        return;
    }
    const engine::FileText file = engine::readWholeFile(name.toStdString(), engine::kCsvFileLimit_bytes);
    if (!file.text) {
        emit m_model->said(toQString(file.fault));
        return;
    }
    m_model->paste(toQString(*file.text), m_model->rowCount() - 1, 0);
}

bool SheetEditor::eventFilter(QObject* watched, QEvent* event) {
    if (watched == m_table && event->type() == QEvent::KeyPress) {
        const auto* key = static_cast<QKeyEvent*>(event);
        if (key->matches(QKeySequence::Paste)) {
            paste();
            return true;
        }
        if (key->matches(QKeySequence::Copy)) {
            copy();
            return true;
        }
        if (key->key() == Qt::Key_Delete && m_model->spec().canGrow) {
            removeSelected();
            return true;
        }
    }
    return QWidget::eventFilter(watched, event);
}

}  // namespace widgets
