#include "widgets/follow_up/answer_page.h"

#include "engine/ramps/log.h"
#include "widgets/controls/progress_line.h"
#include "widgets/controls/sentence_sheet.h"
#include "widgets/document/document.h"
#include "widgets/follow_up/dawn_form.h"
#include "widgets/follow_up/log_entry.h"

#include <QBoxLayout>
#include <QLabel>
#include <QPushButton>
#include <QScrollArea>
#include <QTextBrowser>

namespace widgets {
namespace {

constexpr int kLeftWidth = 330;

}  // namespace

AnswerPage::AnswerPage(Document& document, double large, QWidget* parent)
    : QWidget(parent),
      m_document(document),
      m_verdict(sentenceLabel(tr("The answer"), this)),
      m_state(new QLabel(this)),
      m_text(sentenceBrowser(tr("The answer and its reasons"), this)),
      m_progress(new ProgressLine(this)) {
    auto* row = new QHBoxLayout(this);
    row->setContentsMargins(0, 4, 0, 0);
    row->setSpacing(14);
    auto* side = new QWidget(this);
    m_left = new QVBoxLayout(side);
    m_left->setContentsMargins(0, 0, 8, 0);
    auto* area = new QScrollArea(this);
    area->setWidgetResizable(true);
    area->setFrameShape(QFrame::NoFrame);
    area->setFocusPolicy(Qt::NoFocus);
    area->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    area->setFixedWidth(kLeftWidth);
    area->setWidget(side);
    row->addWidget(area);
    m_right = new QVBoxLayout;
    row->addLayout(m_right, 1);
    QFont type = font();
    type.setPointSizeF(type.pointSizeF() * large);
    type.setBold(true);
    m_verdict->setFont(type);
    m_verdict->hide();
    m_state->setWordWrap(true);
    m_state->setTextFormat(Qt::PlainText);
    m_state->setAccessibleName(tr("State of the answer"));
    m_right->addWidget(m_state);
    m_right->addWidget(m_verdict);
    m_right->addWidget(m_text, 1);
    m_right->addWidget(m_progress);
    connect(&m_job, &Job::progressed, m_progress, &ProgressLine::set);
    connect(&m_job, &Job::failed, this, &AnswerPage::say);
    connect(&m_job, &Job::finished, this, &AnswerPage::end);
    connect(m_progress, &ProgressLine::stopped, this, &AnswerPage::cancel);
    connect(&m_document, &Document::replaced, this, [this] { startAnew(); });
    connect(&m_document, &Document::changed, this, [this] { documentChanged(); });
}

QString AnswerPage::verdict() const {
    return m_verdict->text();
}

QString AnswerPage::text() const {
    return m_text->toPlainText();
}

QString AnswerPage::state() const {
    return m_state->text();
}

void AnswerPage::cancel() {
    m_isGivenUp = true;
    m_job.cancel();
    say(tr("Stopping."));
}

QPushButton* AnswerPage::addButton(const QString& text, const QString& help) {
    auto* made = new QPushButton(text, this);
    made->setToolTip(help);
    made->setAccessibleDescription(help);
    made->setAutoDefault(false);
    m_left->addWidget(made);
    return made;
}

QPushButton* AnswerPage::addAsking(const QString& text, const QString& help) {
    m_asking.push_back(addButton(text, help));
    return m_asking.back();
}

void AnswerPage::say(const QString& state) {
    m_state->setText(state);
    m_state->setVisible(!state.isEmpty());
}

std::optional<AnswerPage::Question> AnswerPage::ask(DawnForm& form, engine::TodayOptions options,
                                                    bool isEntered) {
    if (m_document.isEmpty() || (isRunning() && !isGoingOn()) || !form.commit()) {
        return std::nullopt;
    }
    const std::vector<engine::Reading> readings = form.readings();
    const std::optional<engine::LocalTime> typed = form.time();
    QString said;
    if (isEntered && !readings.empty()) {
        const Entered entered = enter(m_document, readings, {});
        if (!entered.isInLog) {
            say(entered.said);
            return std::nullopt;
        }
        said = entered.said;
        form.clear();
    }
    Question question{m_document.pond(), options, said};
    if (!isEntered) {
        question.pond.readings.insert(question.pond.readings.end(), readings.begin(), readings.end());
    }
    question.options.at = readings.empty() ? engine::lastEntry(question.pond) : typed;
    return question;
}

void AnswerPage::showAnswer(const QString& verdict, const QString& html) {
    m_verdict->setText(verdict);
    m_verdict->setVisible(!verdict.isEmpty());
    m_text->setHtml(html);
}

void AnswerPage::introduce(const QString& sentence) {
    m_introduction = sentence;
    say(sentence);
}

void AnswerPage::begin(const QString& what, const QString& stopped) {
    m_isGivenUp = false;
    m_whenStopped = stopped;
    m_progress->start(what);
}

void AnswerPage::allowAsking(bool isAllowed) {
    for (QPushButton* button : m_asking) {
        button->setEnabled(isAllowed);
    }
}

void AnswerPage::end() {
    m_progress->finish();
    allowAsking(true);
    emit finished();
}

void AnswerPage::startAnew() {
    if (isRunning()) {
        cancel();
        m_whenStopped = m_introduction;
    }
    showAnswer({}, {});
    say(m_introduction);
}

void AnswerPage::showEvent(QShowEvent* event) {
    proposeTime();
    QWidget::showEvent(event);
}

void AnswerPage::documentChanged() {
    if (!m_verdict->text().isEmpty()) {
        say(tr("Of the pond before your last edit."));
    }
}

}  // namespace widgets
