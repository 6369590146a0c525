#include "widgets/forms/key_help.h"

#include "engine/wording/key_reference.h"
#include "widgets/document/to_qstring.h"

#include <QBoxLayout>
#include <QFontDatabase>
#include <QLabel>
#include <QLineEdit>
#include <QListWidget>
#include <QPlainTextEdit>
#include <QSplitter>

#include <algorithm>

namespace widgets {

KeyHelp::KeyHelp(QWidget* parent)
    : QDialog(parent),
      m_words(new QLineEdit(this)),
      m_keys(new QListWidget(this)),
      m_text(new QPlainTextEdit(this)) {
    setObjectName(QStringLiteral("keyHelp"));
    setWindowTitle(tr("The pond file"));
    resize(860, 520);
    auto* column = new QVBoxLayout(this);
    m_words->setPlaceholderText(tr("Search, such as: depth, muck, wind"));
    m_words->setAccessibleName(tr("Search"));
    m_words->setClearButtonEnabled(true);
    column->addWidget(m_words);
    auto* halves = new QSplitter(this);
    m_keys->setAccessibleName(tr("Keys of the pond file"));
    m_text->setAccessibleName(tr("What the key means"));
    m_text->setReadOnly(true);
    m_text->setFont(QFontDatabase::systemFont(QFontDatabase::FixedFont));
    halves->addWidget(m_keys);
    halves->addWidget(m_text);
    halves->setStretchFactor(1, 1);
    column->addWidget(halves, 1);
    connect(m_words, &QLineEdit::textChanged, this, &KeyHelp::search);
    connect(m_keys, &QListWidget::currentRowChanged, this, &KeyHelp::showCurrent);
    search({});
}

void KeyHelp::search(const QString& words) {
    m_keys->clear();
    const QStringList wanted = words.simplified().split(u' ', Qt::SkipEmptyParts);
    for (const engine::KeyFact& fact : engine::pondKeys()) {
        const QString text = toQString(engine::explained(fact));
        const bool holdsAll = std::all_of(wanted.begin(), wanted.end(), [&text](const QString& word) {
            return text.contains(word, Qt::CaseInsensitive);
        });
        if (holdsAll) {
            m_keys->addItem(toQString(fact.path));
        }
    }
    if (m_keys->count() > 0) {
        m_keys->setCurrentRow(0);
    } else {
        m_text->setPlainText(tr("No key of the pond file has these words."));
    }
}

void KeyHelp::showCurrent() {
    const QListWidgetItem* item = m_keys->currentItem();
    const engine::KeyFact* fact = item != nullptr ? engine::findKey(item->text().toStdString()) : nullptr;
    m_text->setPlainText(fact != nullptr ? toQString(engine::explained(*fact)) : QString());
}

}  // namespace widgets
