#include "widgets/controls/wheel_guard.h"

#include "tests/widgets/typing.h"
#include "widgets/controls/number_box.h"

#include <QComboBox>
#include <QScrollArea>
#include <QScrollBar>
#include <QSlider>
#include <QSpinBox>
#include <QVBoxLayout>
#include <QWheelEvent>
#include <QtTest/qtestspontaneevent.h>

namespace widgets {
namespace {

/// One notch down over the middle of a widget, as it comes from the window system.
void turnWheelOver(QWidget* widget) {
    const QPointF at = widget->rect().center();
    QWheelEvent event(at, widget->mapToGlobal(at), {}, QPoint(0, -120), Qt::NoButton, Qt::NoModifier,
                      Qt::NoScrollPhase, false);
    QSpontaneKeyEvent::setSpontaneous(&event);
    qApp->notify(widget, &event);  // sendEvent() would make it one of our own
}

/// Fields of each kind in an area that can scroll.
class WheelOverFields : public testing::Test {
protected:
    void SetUp() override {
        qApp->installEventFilter(&guard);
        auto* column = new QWidget;
        auto* layout = new QVBoxLayout(column);
        spin = new QSpinBox;
        spin->setValue(5);
        combo = new QComboBox;
        combo->addItems({QStringLiteral("a"), QStringLiteral("b"), QStringLiteral("c")});
        slider = new QSlider(Qt::Horizontal);
        slider->setValue(50);
        number = new NumberBox({0.0, 10.0, "m"}, 1.0, NumberBox::Empty::Allowed);
        number->setValue(5.0);
        edit = new QLineEdit;
        for (QWidget* widget : std::initializer_list<QWidget*>{edit, spin, combo, slider, number}) {
            layout->addWidget(widget);
        }
        column->setMinimumHeight(2000);
        area.setWidget(column);
        area.resize(200, 200);
        test::showActive(area);
        edit->setFocus();
    }
    void TearDown() override { qApp->removeEventFilter(&guard); }

    WheelGuard guard;
    QScrollArea area;
    QSpinBox* spin = nullptr;
    QComboBox* combo = nullptr;
    QSlider* slider = nullptr;
    NumberBox* number = nullptr;
    QLineEdit* edit = nullptr;
};

TEST_F(WheelOverFields, UnfocusedTheAreaScrollsAndTheFieldStays) {
    int before = area.verticalScrollBar()->value();
    for (QWidget* field :
         std::initializer_list<QWidget*>{spin, combo, slider, number, spin->findChild<QLineEdit*>()}) {
        turnWheelOver(field);
        EXPECT_GT(area.verticalScrollBar()->value(), before) << field->metaObject()->className();
        before = area.verticalScrollBar()->value();
        EXPECT_TRUE(edit->hasFocus()) << "the wheel gave the focus away";
    }
    EXPECT_EQ(spin->value(), 5);
    EXPECT_EQ(combo->currentIndex(), 0);
    EXPECT_EQ(slider->value(), 50);
    EXPECT_EQ(number->value(), 5.0);
}

TEST_F(WheelOverFields, FocusedTheFieldTakesIt) {
    spin->setFocus();
    turnWheelOver(spin);
    EXPECT_EQ(spin->value(), 4);
    number->setFocus();
    turnWheelOver(number);
    EXPECT_EQ(number->value(), 4.0);
    combo->setFocus();
    turnWheelOver(combo);
    EXPECT_EQ(combo->currentIndex(), 1);
    EXPECT_EQ(area.verticalScrollBar()->value(), 0);
}

TEST_F(WheelOverFields, TheAreaItselfScrolls) {
    turnWheelOver(area.viewport());
    EXPECT_GT(area.verticalScrollBar()->value(), 0);
}

TEST(WheelOverANumberBox, StaysEvenWithoutTheGuard) {
    QWidget window;
    auto* layout = new QVBoxLayout(&window);
    auto* edit = new QLineEdit;
    auto* number = new NumberBox({0.0, 10.0, "m"}, 1.0, NumberBox::Empty::Allowed);
    layout->addWidget(edit);
    layout->addWidget(number);
    number->setValue(5.0);
    test::showActive(window);
    edit->setFocus();
    turnWheelOver(number);
    EXPECT_EQ(number->value(), 5.0);
    EXPECT_TRUE(edit->hasFocus());
}

}  // namespace
}  // namespace widgets
