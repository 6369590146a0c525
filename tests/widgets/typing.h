#pragma once

#include "tests/pond_texts.h"
#include "tests/temporary_folder.h"
#include "widgets/document/document.h"

#include <QAbstractSpinBox>
#include <QApplication>
#include <QLabel>
#include <QLineEdit>
#include <QPushButton>
#include <QString>
#include <QTest>
#include <QWidget>

#include <gtest/gtest.h>

#include <stdexcept>
#include <string_view>

namespace widgets::test {

/// Puts a text for GoogleTest's messages.
inline std::string plain(const QString& text) {
    return text.toStdString();
}

/// Opens a pond file of this text.
inline void open(Document& document, const engine::test::TemporaryFolder& folder, std::string_view text) {
    const engine::Diagnostics faults = document.open(folder.write("pond.toml", text));
    ASSERT_FALSE(engine::hasErrors(faults)) << engine::format(faults.front());
}

/// Shows a window and waits until it is the active one, so that fields get the focus as for a user.
inline void showActive(QWidget& window) {
    window.show();
    window.activateWindow();
    ASSERT_TRUE(QTest::qWaitForWindowActive(&window));
}

/// The field of a form by its accessible name.
template <class T = QWidget>
T* fieldOf(const QWidget& form, const char* name) {
    for (T* widget : form.findChildren<T*>()) {
        if (widget->accessibleName() == QString::fromUtf8(name) && widget->focusProxy() == nullptr) {
            return widget;
        }
    }
    throw std::runtime_error(std::string("the form has no field of the name ") + name);
}

/// The button with this text (without its mnemonic).
inline QPushButton* button(const QWidget& form, const char* text) {
    for (QPushButton* one : form.findChildren<QPushButton*>()) {
        QString shown = one->text();
        if (shown.remove(u'&') == QString::fromUtf8(text)) {
            return one;
        }
    }
    throw std::runtime_error(std::string("the form has no button ") + text);
}

inline QLineEdit* lineEditOf(QWidget* field) {
    auto* edit = qobject_cast<QLineEdit*>(field);
    return edit != nullptr ? edit : field->findChild<QLineEdit*>();
}

inline std::string textOf(QWidget* field) {
    return plain(lineEditOf(field)->text());
}

/// Replaces the text of a field by real keys, without Enter.
inline void typeOnly(QWidget* field, const char* text) {
    field->setFocus();
    lineEditOf(field)->selectAll();
    QTest::keyClick(field, Qt::Key_Delete);
    QTest::keyClicks(field, QString::fromUtf8(text));
}

inline void type(QWidget* field, const char* text) {
    typeOnly(field, text);
    QTest::keyClick(field, Qt::Key_Return);
}

/// Everything that the labels of a form say at the moment.
inline std::string saidBy(const QWidget& form) {
    QString all;
    for (const QLabel* label : form.findChildren<QLabel*>()) {
        if (!label->isHidden() && !label->text().isEmpty()) {
            all += label->text() + u'\n';
        }
    }
    return plain(all);
}

}  // namespace widgets::test
