#include "widgets/follow_up/log_head_line.h"

#include "engine/follow_up/log_chain.h"
#include "engine/wording/sentence_log.h"
#include "widgets/controls/sentence_sheet.h"
#include "widgets/document/document.h"
#include "widgets/document/to_qstring.h"
#include "widgets/document/wording.h"

#include <QBoxLayout>
#include <QLabel>
#include <QLineEdit>

namespace widgets {

LogHeadLine::LogHeadLine(const Document& document, QWidget* parent)
    : QWidget(parent),
      m_document(document),
      m_head(sentenceLabel(tr("Head of the log"), this)),
      m_match(sentenceLabel(tr("Whether a printed head fits"), this)),
      m_printed(new QLineEdit(this)) {
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(0, 4, 0, 0);
    QFont small = m_head->font();
    small.setPointSizeF(small.pointSizeF() * 0.9);
    m_head->setFont(small);
    column->addWidget(m_head);
    m_printed->setPlaceholderText(tr("A head as it was printed"));
    m_printed->setAccessibleName(tr("A head as it was printed"));
    m_printed->setAccessibleDescription(tr("Tells whether the log is still the one of that paper."));
    column->addWidget(m_printed);
    m_match->hide();
    column->addWidget(m_match);
    connect(m_printed, &QLineEdit::textChanged, this, &LogHeadLine::compare);
}

void LogHeadLine::showAnew() {
    const engine::Pond& pond = m_document.pond();
    m_number = toQString(engine::shown(engine::logHead(pond)));
    // Broken so that it fits the narrowest column; the spaces are no part of it.
    QString number = m_number;
    number.insert(number.size() - 32, QLatin1Char(' '));
    m_head->setText(
        tr("Head of the log: %1").arg(number) + QLatin1Char('\n') +
        localized(engine::sentencesOfLog(pond, std::nullopt), {engine::SentenceKey::LogHeadMeaning}));
    compare();
}

void LogHeadLine::clear() {
    m_printed->clear();
}

void LogHeadLine::compare() {
    const QString typed = m_printed->text().remove(QLatin1Char(' '));
    m_match->setVisible(!typed.isEmpty());
    if (typed.isEmpty() || m_number.isEmpty()) {
        return;
    }
    if (!engine::parseLogHead(typed.toStdString())) {
        m_match->setText(tr("This is no head: three counts and 64 digits, as 3-1-0-9f\u2026"));
        return;
    }
    using enum engine::SentenceKey;
    m_match->setText(localized(engine::sentencesOfLog(m_document.pond(), typed.toStdString()),
                               {LogHeadSame, LogHeadAdded, LogHeadChanged}));
}

}  // namespace widgets
