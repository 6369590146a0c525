#include "widgets/controls/entry.h"

#include <QFocusEvent>
#include <QKeyEvent>
#include <QPainter>

namespace widgets {
namespace {

bool isUndo(const QKeyEvent& key) {
    return key.matches(QKeySequence::Undo);
}

/// Ctrl+Y too, which some platforms leave out.
bool isRedo(const QKeyEvent& key) {
    return key.matches(QKeySequence::Redo) ||
           (key.key() == Qt::Key_Y && key.modifiers() == Qt::ControlModifier);
}

}  // namespace

Entry::Entry(QWidget* field, QLineEdit* edit, EntryOwner& owner)
    : m_field(field), m_edit(edit), m_owner(owner) {
    m_field->installEventFilter(this);
    connect(m_edit, &QLineEdit::textEdited, this, [this](const QString& text) {
        if (!m_fault.isEmpty() && (text == m_shown || !m_owner.readText(text))) {
            setFault({});  // corrected; taken when it is committed
        }
    });
}

void Entry::show(const QString& text) {
    m_shown = text;
    m_edit->setText(text);
    if (!m_field->hasFocus()) {
        m_edit->setCursorPosition(0);  // the start of a long text is what tells
    }
    setFault({});
}

bool Entry::isPending() const {
    return !m_fault.isEmpty() || m_edit->text() != m_shown;
}

bool Entry::commit() {
    if (m_edit->text() != m_shown) {
        take();
    }
    return m_fault.isEmpty();
}

void Entry::take() {
    if (const auto fault = m_owner.readText(m_edit->text())) {
        setFault(*fault);
        return;
    }
    show(m_owner.accept());
    ++m_burst;  // what is typed is a step of undo by itself
    emit committed();
    ++m_burst;
}

void Entry::step() {
    emit committed();
}

void Entry::reset() {
    show(m_owner.restore());
    ++m_burst;
}

void Entry::refuse(const QString& sentence) {
    setFault(sentence);
}

void Entry::setFault(const QString& sentence) {
    if (sentence != m_fault) {
        m_fault = sentence;
        m_field->update();
        emit faultChanged();
    }
}

bool Entry::press(int key) {
    switch (key) {
        case Qt::Key_Return:
        case Qt::Key_Enter:
            if (isPending()) {  // what was refused is tried again: the cause may lie elsewhere
                take();
            }
            m_edit->selectAll();
            return true;
        case Qt::Key_Escape:
            if (!isPending()) {
                return false;
            }
            reset();
            m_edit->selectAll();
            return true;
        default:
            return false;
    }
}

bool Entry::eventFilter(QObject* watched, QEvent* event) {
    if (event->type() == QEvent::FocusIn) {
        ++m_burst;
    } else if (event->type() == QEvent::FocusOut) {
        // A context menu over the field takes nothing.
        if (static_cast<QFocusEvent*>(event)->reason() != Qt::PopupFocusReason) {
            commit();
        }
    } else if (event->type() == QEvent::ShortcutOverride) {
        const auto* key = static_cast<QKeyEvent*>(event);
        if (isUndo(*key) || isRedo(*key)) {
            event->setAccepted(isPending());  // ignored, it goes on to the window's actions
            return true;
        }
        if (isPending() && key->key() == Qt::Key_Escape) {
            event->accept();
            return true;
        }
    } else if (event->type() == QEvent::KeyPress) {
        const auto* key = static_cast<QKeyEvent*>(event);
        if (isUndo(*key) || isRedo(*key)) {
            isUndo(*key) ? m_edit->undo() : m_edit->redo();
            return true;
        }
        if ((key->modifiers() & ~Qt::KeypadModifier) == Qt::NoModifier && press(key->key())) {
            return true;
        }
    }
    return QObject::eventFilter(watched, event);
}

void paintFaultMark(QWidget& field) {
    QPainter painter(&field);
    QPen pen(field.palette().color(QPalette::WindowText));
    pen.setWidth(2);
    pen.setJoinStyle(Qt::MiterJoin);
    painter.setPen(pen);
    painter.drawRect(field.rect().adjusted(1, 1, -1, -1));
}

}  // namespace widgets
