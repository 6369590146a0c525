#include "widgets/notice.h"

#include <QAccessible>
#include <QHBoxLayout>
#include <QLabel>
#include <QToolButton>

namespace widgets {

Notice::Notice(QWidget* parent) : QWidget(parent), m_text(new QLabel(this)) {
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
    row->addWidget(close, 0, Qt::AlignTop);
    setAutoFillBackground(true);
    setBackgroundRole(QPalette::AlternateBase);
    hide();
}

void Notice::say(const QString& sentences) {
    m_text->setText(sentences);
    show();
    QAccessibleEvent event(m_text, QAccessible::NameChanged);
    QAccessible::updateAccessibility(&event);
}

void Notice::clear() {
    m_text->clear();
    hide();
}

QString Notice::text() const {
    return m_text->text();
}

}  // namespace widgets
