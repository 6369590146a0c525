#include "widgets/follow_up/log_page.h"

#include "engine/base/text_file.h"
#include "engine/follow_up/log_chain.h"
#include "engine/wording/sentence_log.h"
#include "widgets/controls/sentence_sheet.h"
#include "widgets/document/document.h"
#include "widgets/document/to_qstring.h"
#include "widgets/document/wording.h"
#include "widgets/follow_up/correction_dialog.h"
#include "widgets/follow_up/dawn_form.h"
#include "widgets/follow_up/event_form.h"
#include "widgets/follow_up/import_dialog.h"
#include "widgets/follow_up/log_entry.h"
#include "widgets/follow_up/log_head_line.h"
#include "widgets/follow_up/log_model.h"

#include <QApplication>
#include <QBoxLayout>
#include <QClipboard>
#include <QFileDialog>
#include <QHeaderView>
#include <QKeyEvent>
#include <QLabel>
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
      m_head(new LogHeadLine(document, this)) {
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
    column->addWidget(m_head);
    row->addLayout(column, 1);
    connect(m_model, &QAbstractItemModel::modelReset, m_table, [this] {
        m_table->resizeColumnsToContents();
        m_table->scrollToBottom();  // the newest, unless an entry was just made elsewhere
    });
    m_table->resizeColumnsToContents();
    m_table->scrollToBottom();
    connect(&m_document, &Document::replaced, this, [this] {
        m_reading->startAnew();
        m_event->clear();
        m_head->clear();
        say({});
    });
    connect(&m_document, &Document::changed, this, &LogPage::documentChanged);
    setFocusProxy(m_reading);
    documentChanged(Document::Everything);
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
        area->setFocusPolicy(Qt::NoFocus);
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
        button(tr("&Correct\u2026"), tr("Enters what should stand in the marked entry's place."), part);
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

QString LogPage::said() const {
    return m_said->text();
}

QString LogPage::head() const {
    return m_head->head();
}

void LogPage::say(const QString& sentence) {
    m_said->setText(sentence);
}

void LogPage::documentChanged(Document::Parts parts) {
    if (m_document.isEmpty()) {
        return;
    }
    const engine::Pond& pond = m_document.pond();
    m_event->setPond(pond);  // the names of its ramps
    if (!parts.testFlag(Document::Others)) {
        return;
    }
    m_reading->setPond(pond);
    proposeTimes();
    using enum engine::SentenceKey;
    m_flags->setText(
        localized(engine::sentencesOfLog(pond, std::nullopt), {LogFlag, LogNoFlags, LogFlagsMeaning}));
    m_head->showAnew();
}

void LogPage::proposeTimes() {
    if (!m_document.isEmpty()) {
        const engine::LocalTime now = clockOf(m_document.pond());
        m_reading->propose(nextDawn(m_document.pond(), now));
        m_event->propose(nextVisit(m_document.pond(), now));
    }
}

void LogPage::showEvent(QShowEvent* event) {
    proposeTimes();
    QWidget::showEvent(event);
}

bool LogPage::append(const std::vector<engine::Reading>& readings, const std::vector<engine::Event>& events) {
    const Entered entered = enter(m_document, readings, events);
    say(!entered.said.isEmpty() ? entered.said : tr("Entered, and written to the pond file."));
    if (entered.isInLog) {  // which may stand far above the last row: the table follows the time
        const int row =
            m_model->rowOfLast(readings.empty() ? LogLine::Source::Event : LogLine::Source::Reading);
        m_table->selectRow(row);
    }
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
        say(toQString(file.text ? fault->sentence : file.fault));
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
