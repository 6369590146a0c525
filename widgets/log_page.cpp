#include "widgets/log_page.h"

#include "engine/log_chain.h"
#include "engine/log_io.h"
#include "engine/text_file.h"
#include "widgets/correction_dialog.h"
#include "widgets/dawn_form.h"
#include "widgets/document.h"
#include "widgets/event_form.h"
#include "widgets/import_dialog.h"
#include "widgets/log_entry.h"
#include "widgets/log_model.h"
#include "widgets/sentence_sheet.h"
#include "widgets/shown.h"
#include "widgets/wording.h"

#include <QApplication>
#include <QBoxLayout>
#include <QClipboard>
#include <QFileDialog>
#include <QHeaderView>
#include <QKeyEvent>
#include <QLabel>
#include <QLineEdit>
#include <QPushButton>
#include <QScrollArea>
#include <QTabWidget>
#include <QTableView>

namespace widgets {
namespace {

constexpr int kFormWidth = 330;

QPushButton* button(const QString& text, const QString& help, QWidget* parent) {
    auto* made = new QPushButton(text, parent);
    made->setToolTip(help);
    made->setAccessibleDescription(help);
    made->setAutoDefault(false);
    return made;
}

}  // namespace

LogPage::LogPage(Document& document, QWidget* parent)
    : QWidget(parent),
      m_document(document),
      m_model(new LogModel(document, this)),
      m_table(new QTableView(this)),
      m_reading(new DawnForm(DawnForm::Extent::Full, this)),
      m_event(new EventForm(this)),
      m_forms(new QTabWidget(this)),
      m_said(sentenceLabel(tr("What came of the entry"), this)),
      m_flags(sentenceLabel(tr("Flagged readings"), this)),
      m_head(sentenceLabel(tr("Head of the log"), this)),
      m_match(sentenceLabel(tr("Whether a printed head fits"), this)),
      m_printed(new QLineEdit(this)) {
    auto* row = new QHBoxLayout(this);
    row->setContentsMargins(0, 4, 0, 0);
    row->addWidget(entryForms());
    auto* column = new QVBoxLayout;
    m_table->setModel(m_model);
    m_table->setAccessibleName(tr("Entries of the log"));
    m_table->setSelectionBehavior(QAbstractItemView::SelectRows);
    m_table->setSelectionMode(QAbstractItemView::SingleSelection);
    m_table->setTabKeyNavigation(false);
    m_table->setWordWrap(false);
    m_table->verticalHeader()->hide();
    m_table->verticalHeader()->setDefaultSectionSize(m_table->fontMetrics().height() + 6);
    m_table->horizontalHeader()->setStretchLastSection(true);
    m_table->installEventFilter(this);
    column->addWidget(m_table, 1);
    column->addWidget(buttonsOfTable());
    column->addWidget(m_flags);
    column->addWidget(headPart());
    row->addLayout(column, 1);
    connect(&m_document, &Document::changed, this, &LogPage::documentChanged);
    documentChanged();
}

QWidget* LogPage::entryForms() {
    auto* part = new QWidget(this);
    part->setFixedWidth(kFormWidth);
    auto* column = new QVBoxLayout(part);
    column->setContentsMargins(0, 0, 8, 0);
    const auto add = [&](QWidget* form, const QString& name, const QString& text, void (LogPage::*slot)()) {
        auto* inner = new QWidget(this);
        auto* list = new QVBoxLayout(inner);
        list->addWidget(form);
        QPushButton* enter = button(
            text, tr("Puts the entry into the log, where it stays. Undo does not take it out."), inner);
        enter->setShortcut(QKeySequence(Qt::CTRL | Qt::Key_Return));
        connect(enter, &QPushButton::clicked, this, slot);
        list->addWidget(enter);
        list->addStretch(1);
        auto* area = new QScrollArea(m_forms);
        area->setWidgetResizable(true);
        area->setFrameShape(QFrame::NoFrame);
        area->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
        area->setWidget(inner);
        m_forms->addTab(area, name);
    };
    add(m_reading, tr("A reading"), tr("Enter the Reading"), &LogPage::addReading);
    add(m_event, tr("An event"), tr("Enter the Event"), &LogPage::addEvent);
    m_forms->setAccessibleName(tr("New entries"));
    column->addWidget(m_forms, 1);
    auto* rule = sentenceLabel(tr("About the log"), part);
    rule->setText(
        tr("The log is only added to: a wrong entry is corrected by a new one and stays readable. "
           "Undo leaves it alone."));
    column->addWidget(rule);
    column->addWidget(m_said);
    return part;
}

QWidget* LogPage::buttonsOfTable() {
    auto* part = new QWidget(this);
    auto* row = new QHBoxLayout(part);
    row->setContentsMargins(0, 0, 0, 0);
    m_correct =
        button(tr("Co&rrect\u2026"), tr("Enters what should stand in the marked entry's place."), part);
    QPushButton* import = button(
        tr("&Import\u2026"), tr("Rows of a logger's file, whose columns and units are shown first."), part);
    QPushButton* take =
        button(tr("&Paste"), tr("Rows copied from a spreadsheet, shown in the same way."), part);
    for (QPushButton* one : {m_correct, import, take}) {
        row->addWidget(one);
    }
    row->addStretch(1);
    m_correct->setEnabled(false);
    connect(m_correct, &QPushButton::clicked, this, &LogPage::correct);
    connect(import, &QPushButton::clicked, this, &LogPage::import);
    connect(take, &QPushButton::clicked, this, &LogPage::paste);
    connect(m_table->selectionModel(), &QItemSelectionModel::selectionChanged, this, [this] {
        const QModelIndex at = m_table->currentIndex();
        m_correct->setEnabled(at.isValid() && m_table->selectionModel()->hasSelection() &&
                              m_model->line(at.row()).isInForce);
    });
    return part;
}

QWidget* LogPage::headPart() {
    auto* part = new QWidget(this);
    auto* column = new QVBoxLayout(part);
    column->setContentsMargins(0, 4, 0, 0);
    QFont fixed = m_head->font();
    fixed.setPointSizeF(fixed.pointSizeF() * 0.9);
    m_head->setFont(fixed);
    column->addWidget(m_head);
    auto* row = new QHBoxLayout;
    m_printed->setPlaceholderText(tr("A head as it was printed"));
    m_printed->setAccessibleName(tr("A head as it was printed"));
    m_printed->setAccessibleDescription(tr("Tells whether the log is still the one of that paper."));
    row->addWidget(m_printed, 1);
    column->addLayout(row);
    m_match->hide();
    column->addWidget(m_match);
    connect(m_printed, &QLineEdit::textChanged, this, &LogPage::compareHead);
    return part;
}

QString LogPage::said() const {
    return m_said->text();
}

QString LogPage::head() const {
    return m_document.isEmpty() ? QString() : shown(engine::shown(engine::logHead(m_document.pond())));
}

void LogPage::say(const QString& sentence) {
    m_said->setText(sentence);
}

void LogPage::documentChanged() {
    if (m_document.isEmpty()) {
        return;
    }
    const engine::Pond& pond = m_document.pond();
    m_reading->setPond(pond);
    m_event->setPond(pond);
    m_reading->setTime(nextDawn(pond));
    m_event->setTime(nextDawn(pond));
    QStringList flags, head;
    for (const engine::Sentence& one : engine::sentencesOfLog(pond, std::nullopt)) {
        if (one.key == engine::SentenceKey::LogFlag || one.key == engine::SentenceKey::LogNoFlags ||
            one.key == engine::SentenceKey::LogFlagsMeaning) {
            flags << worded(one);
        }
        if (one.key == engine::SentenceKey::LogHeadMeaning) {
            head << worded(one);
        }
    }
    m_flags->setText(flags.join(QLatin1Char(' ')));
    // Broken so that it fits the narrowest column; the spaces are no part of it.
    QString number = this->head();
    number.insert(number.size() - 32, QLatin1Char(' '));
    m_head->setText(tr("Head of the log: %1").arg(number) + QLatin1Char('\n') + head.join(QLatin1Char(' ')));
    m_table->resizeColumnsToContents();
    m_table->scrollToBottom();
    compareHead();
}

void LogPage::compareHead() {
    const QString typed = m_printed->text().remove(QLatin1Char(' '));
    m_match->setVisible(!typed.isEmpty());
    if (typed.isEmpty() || m_document.isEmpty()) {
        return;
    }
    if (!engine::parseLogHead(typed.toStdString())) {
        m_match->setText(tr("This is no head: three counts and 64 digits, as 3-1-0-9f\u2026"));
        return;
    }
    for (const engine::Sentence& one : engine::sentencesOfLog(m_document.pond(), typed.toStdString())) {
        if (one.key == engine::SentenceKey::LogHeadSame || one.key == engine::SentenceKey::LogHeadAdded ||
            one.key == engine::SentenceKey::LogHeadChanged) {
            m_match->setText(worded(one));
        }
    }
}

bool LogPage::append(const std::vector<engine::Reading>& readings, const std::vector<engine::Event>& events) {
    const Entered entered = enter(m_document, readings, events);
    say(!entered.said.isEmpty() ? entered.said : tr("Entered, and written to the pond file."));
    return entered.isInLog;
}

void LogPage::addReading() {
    if (m_document.isEmpty() || !m_reading->commit()) {
        return;
    }
    const std::vector<engine::Reading> readings = m_reading->readings();
    if (readings.empty()) {
        say(tr("There is nothing to enter: a time and one value at least."));
    } else if (append(readings, {})) {
        m_reading->clear();
    }
}

void LogPage::addEvent() {
    if (m_document.isEmpty() || !m_event->commit()) {
        return;
    }
    const std::optional<engine::Event> event = m_event->typed();
    if (!event) {
        say(tr("There is nothing to enter: an event needs its time."));
    } else if (append({}, {*event})) {
        m_event->clear();
    }
}

void LogPage::correct() {
    const int row = m_table->currentIndex().row();
    if (row < 0 || !m_model->line(row).isInForce) {
        return;
    }
    CorrectionDialog dialog(m_document.pond(), m_model->reading(row), m_model->logEvent(row), this);
    if (dialog.exec() == QDialog::Accepted) {
        append(dialog.readings(), dialog.events());
    }
}

void LogPage::import() {
    const QString name = QFileDialog::getOpenFileName(this, tr("Rows of a logger"), {},
                                                      tr("Tables (*.csv *.tsv *.txt);;All files (*)"));
    if (name.isEmpty()) {
        return;
    }
    const engine::FileText file = engine::readWholeFile(name.toStdString(), engine::kCsvFileLimit_bytes);
    const auto fault = file.text ? engine::findTextFault(*file.text) : std::nullopt;
    if (!file.text || fault) {
        say(shown(file.text ? fault->sentence : file.fault));
        return;
    }
    offer(*file.text, QFileInfo(name).fileName());
}

void LogPage::paste() {
    offer(QApplication::clipboard()->text().toStdString(), tr("the clipboard"));
}

void LogPage::offer(const std::string& text, const QString& source) {
    if (m_document.isEmpty()) {
        return;
    }
    ImportDialog dialog(m_document, text, source, this);
    if (dialog.exec() != QDialog::Accepted) {
        return;
    }
    const std::size_t before = m_document.pond().fileReadings.size();
    const std::optional<QString> fault = takeRows(m_document, dialog.readings());
    const std::size_t taken = m_document.pond().fileReadings.size() - before;
    QString sentence = tr("%1 of %2 rows are in the log; rows that were there already are not entered twice.")
                           .arg(taken)
                           .arg(dialog.readings().size());
    say(fault ? (taken > 0 ? sentence + QLatin1Char(' ') + *fault : *fault) : sentence);
}

bool LogPage::eventFilter(QObject* watched, QEvent* event) {
    if (watched == m_table && event->type() == QEvent::KeyPress &&
        static_cast<QKeyEvent*>(event)->matches(QKeySequence::Paste)) {
        paste();
        return true;
    }
    return QWidget::eventFilter(watched, event);
}

}  // namespace widgets
