#pragma once

#include "tests/widgets/typing.h"

#include <QAbstractButton>
#include <QAccessible>
#include <QAction>
#include <QMainWindow>
#include <QScrollArea>

#include <algorithm>
#include <functional>
#include <memory>

namespace widgets::test {

/// A form in a main window with the menu's undo and redo, as wide as the side column.
template <class Form>
class OnAForm : public testing::Test {
protected:
    void SetUp() override { show(engine::test::kPlainPond); }

    void show(std::string_view text) {
        open(document, folder, text);
        window = std::make_unique<QMainWindow>();
        form = new Form(document);
        auto* area = new QScrollArea;
        area->setWidgetResizable(true);
        area->setWidget(form);
        window->setCentralWidget(area);
        QAction* undo = document.undoStack().createUndoAction(window.get());
        undo->setShortcut(QKeySequence::Undo);
        QAction* redo = document.undoStack().createRedoAction(window.get());
        redo->setShortcut(QKeySequence(QStringLiteral("Ctrl+Y")));
        window->addActions({undo, redo});
        window->resize(330, 600);
        showActive(*window);
    }

    [[nodiscard]] const engine::Pond& pond() const { return document.pond(); }
    [[nodiscard]] int steps() { return document.undoStack().count(); }
    [[nodiscard]] std::string lastStep() { return plain(document.undoStack().undoText()); }

    /// Types into a field, expects one named step, and undoes and redoes it.
    void expectEdit(const char* name, const char* text, const char* step,
                    const std::function<bool(const engine::Pond&)>& isThere) {
        SCOPED_TRACE(name);
        const engine::Pond before = pond();
        const int index = document.undoStack().index();
        QWidget* field = fieldOf(*form, name);
        const std::string textBefore = textOf(field);
        type(field, text);
        EXPECT_TRUE(isThere(pond())) << saidBy(*form);
        EXPECT_EQ(document.undoStack().index(), index + 1);
        EXPECT_EQ(lastStep(), step);
        const engine::Pond after = pond();
        const std::string textAfter = textOf(field);
        QTest::keyClick(field, Qt::Key_Z, Qt::ControlModifier);
        EXPECT_TRUE(pond() == before) << "undo from inside the field";
        EXPECT_EQ(textOf(field), textBefore);
        QTest::keyClick(field, Qt::Key_Y, Qt::ControlModifier);
        EXPECT_TRUE(pond() == after) << "redo from inside the field";
        EXPECT_EQ(textOf(field), textAfter);
    }

    engine::test::TemporaryFolder folder;
    Document document;
    std::unique_ptr<QMainWindow> window;
    Form* form = nullptr;
};

/// A check box or button carries its label; any other field has a visible one whose buddy it is.
inline bool isLabelled(const QWidget& form, const QWidget* field) {
    if (qobject_cast<const QAbstractButton*>(field) != nullptr) {
        return true;
    }
    const auto labels = form.findChildren<QLabel*>();
    return std::any_of(labels.begin(), labels.end(), [field](const QLabel* label) {
        return label->buddy() == field && !label->isHidden() && label->text() == field->accessibleName();
    });
}

/// Every widget that takes the focus has a name and a description for a screen reader, and fits the column.
template <class Form>
void expectAccessible(const Form& form) {
    int count = 0;
    for (const QWidget* widget : form.template findChildren<QWidget*>()) {
        // The list of a combo box is a window of its own that Qt names.
        if (widget->focusPolicy() == Qt::NoFocus || widget->window() != form.window()) {
            continue;
        }
        QAccessibleInterface* interface = QAccessible::queryAccessibleInterface(const_cast<QWidget*>(widget));
        ASSERT_NE(interface, nullptr);
        EXPECT_FALSE(interface->text(QAccessible::Name).isEmpty()) << widget->metaObject()->className();
        if (widget->focusProxy() == nullptr) {
            const QString description = interface->text(QAccessible::Description);
            EXPECT_FALSE(description.isEmpty()) << plain(interface->text(QAccessible::Name));
            EXPECT_FALSE(description.contains(u'<')) << "markup is read out: " << plain(description);
            EXPECT_TRUE(widget->isHidden() || isLabelled(form, widget))
                << plain(interface->text(QAccessible::Name));
            EXPECT_EQ(widget->focusPolicy() & Qt::WheelFocus & ~Qt::StrongFocus, 0)
                << "the wheel would give the focus to " << plain(widget->accessibleName());
            ++count;
        }
    }
    EXPECT_GE(count, 5);
    EXPECT_LE(form.minimumSizeHint().width(), 310) << "a scroll bar must fit beside it in 330";
}

}  // namespace widgets::test
