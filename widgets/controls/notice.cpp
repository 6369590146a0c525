#include "widgets/controls/notice.h"

#include <QAccessible>
#include <QHBoxLayout>
#include <QLabel>
#include <QPushButton>
#include <QToolButton>

namespace widgets {

Notice::Notice(QWidget* parent) : QWidget(parent), m_text(new QLabel(this)), m_action(new QPushButton(this)) {
    auto* row = new QHBoxLayout(this);
    row->setContentsMargins(14, 6, 8, 6);
    m_text->setWordWrap(true);
    m_text->setTextFormat(Qt::PlainText);
    m_text->setTextInteractionFlags(Qt::TextSelectableByMouse);
    m_text->setAccessibleName(tr("Notice"));
    auto* close = new QToolButton(this);
    close->setText(tr("Close"));
    close->setAccessibleName(tr("Close the notice"));
    close->setAutoRaise(true);
    connect(close, &QToolButton::clicked, this, &Notice::clear);
    row->addWidget(m_text, 1);
    row->addWidget(m_action, 0, Qt::AlignTop);
    row->addWidget(close, 0, Qt::AlignTop);
    m_action->hide();
    connect(m_action, &QPushButton::clicked, this, [this] {
        const auto act = std::move(m_act);
        clear();
        if (act) {
            act();
        }
    });
    setAutoFillBackground(true);
    setBackgroundRole(QPalette::AlternateBase);
    hide();
}

void Notice::say(const QString& sentences) {
    m_text->setText(sentences);
    m_action->hide();
    m_act = nullptr;
    show();
    QAccessibleEvent event(m_text, QAccessible::NameChanged);
    QAccessible::updateAccessibility(&event);
}

void Notice::ask(const QString& sentences, const QString& action, std::function<void()> act) {
    say(sentences);
    m_act = std::move(act);
    m_action->setText(action);
    m_action->setAccessibleDescription(sentences);
    m_action->show();
}

void Notice::clear() {
    m_act = nullptr;
    m_action->hide();
    m_text->clear();
    hide();
}

QString Notice::text() const {
    return m_text->text();
}

}  // namespace widgets
