#include "widgets/controls/number_box.h"

#include "tests/widgets/typing.h"
#include "widgets/controls/clock_box.h"
#include "widgets/controls/name_edit.h"
#include "widgets/controls/number_list_edit.h"

#include <QLocale>
#include <QProcess>
#include <QSignalSpy>
#include <QVBoxLayout>

namespace widgets {
namespace {

using test::textOf;
using test::type;
using test::typeOnly;

constexpr engine::NumberRule kDepth{0.1, 60.0, "m"};
constexpr engine::NumberRule kCount{1.0, 100.0, "diffusers", false, true};
constexpr auto kAllowed = NumberBox::Empty::Allowed;
constexpr auto kRefused = NumberBox::Empty::Refused;

/// Makes a locale the default for as long as it lives, as a user's session does.
class InLocale {
public:
    explicit InLocale(const QLocale& locale) { QLocale::setDefault(locale); }
    ~InLocale() { QLocale::setDefault(m_before); }
    InLocale(const InLocale&) = delete;
    InLocale& operator=(const InLocale&) = delete;

private:
    QLocale m_before;
};

const QLocale kGerman(QLocale::German, QLocale::Germany);
const QLocale kAmerican(QLocale::English, QLocale::UnitedStates);

/// A window with a field under test and another one to go to.
template <class Field>
class Window : public QWidget {
public:
    template <class... Arguments>
    explicit Window(Arguments... arguments)
        : field(new Field(arguments...)),
          other(new QLineEdit),
          committed(&field->entry(), &Entry::committed) {
        auto* layout = new QVBoxLayout(this);
        layout->addWidget(field);
        layout->addWidget(other);
        test::showActive(*this);
        field->setFocus();
    }

    Field* field;
    QLineEdit* other;
    QSignalSpy committed;
};
using Numbers = Window<NumberBox>;

void expectBothSigns() {
    Numbers window(kDepth, 0.1, kRefused);
    for (const char* text : {"1.5", "1,5", "1.500", "1,500"}) {
        window.field->setValue(7.0);
        type(window.field, text);
        EXPECT_EQ(window.field->value(), 1.5) << text;
        EXPECT_EQ(textOf(window.field),
                  test::plain(QStringLiteral("1%1").arg(QLocale().decimalPoint()) + u'5'))
            << text;
    }
    // Key by key, nothing is swallowed.
    typeOnly(window.field, "1.234,5");
    EXPECT_EQ(textOf(window.field), "1.234,5");
    QTest::keyClick(window.field, Qt::Key_Return);
    EXPECT_EQ(textOf(window.field), "1.234,5") << "the faulty text stays to be corrected";
    EXPECT_NE(test::plain(window.field->entry().fault()).find("decimal sign"), std::string::npos);
}

TEST(NumberBox, TakesCommaAndPointInAGermanLocale) {
    const InLocale german(kGerman);
    expectBothSigns();
}

TEST(NumberBox, TakesCommaAndPointInAnAmericanLocale) {
    const InLocale american(kAmerican);
    expectBothSigns();
}

// The locale as a German session sets it: the test runs itself in that environment.
TEST(NumberBox, TakesCommaAndPointInAGermanEnvironment) {
    if (qEnvironmentVariableIsSet("DAWNLINE_GERMAN_CHILD")) {
        ASSERT_EQ(QLocale().decimalPoint(), QStringLiteral(","));
        expectBothSigns();
        return;
    }
    QProcess child;
    QProcessEnvironment environment = QProcessEnvironment::systemEnvironment();
    environment.insert(QStringLiteral("LC_ALL"), QStringLiteral("de_DE.UTF-8"));
    environment.insert(QStringLiteral("LANG"), QStringLiteral("de_DE.UTF-8"));
    environment.remove(QStringLiteral("LANGUAGE"));
    environment.insert(QStringLiteral("DAWNLINE_GERMAN_CHILD"), QStringLiteral("1"));
    child.setProcessEnvironment(environment);
    child.start(QCoreApplication::applicationFilePath(),
                {QStringLiteral("--gtest_filter=NumberBox.TakesCommaAndPointInAGermanEnvironment")});
    ASSERT_TRUE(child.waitForFinished(60000));
    const QByteArray output = child.readAllStandardOutput();
    EXPECT_EQ(child.exitCode(), 0) << output.toStdString();
    EXPECT_TRUE(output.contains("[  PASSED  ] 1 test.")) << output.toStdString();
}

TEST(NumberBox, TheKeypadsDotIsADecimalSign) {
    const InLocale german(kGerman);
    Numbers window(kDepth, 0.1, kRefused);
    window.field->selectAll();
    QTest::keyClick(window.field, Qt::Key_1, Qt::KeypadModifier);
    QTest::sendKeyEvent(QTest::Click, window.field, Qt::Key_Period, u'.', Qt::KeypadModifier);
    QTest::keyClick(window.field, Qt::Key_5, Qt::KeypadModifier);
    QTest::keyClick(window.field, Qt::Key_Enter, Qt::KeypadModifier);
    EXPECT_EQ(window.field->value(), 1.5);
    EXPECT_EQ(textOf(window.field), "1,5");
}

TEST(NumberBox, TakesNothingWhileItIsTyped) {
    Numbers window(kDepth, 0.1, kRefused);
    window.field->setValue(3.0);
    typeOnly(window.field, "12");
    EXPECT_EQ(window.committed.size(), 0);
    EXPECT_EQ(window.field->value(), 3.0);
    QTest::keyClick(window.field, Qt::Key_Return);
    EXPECT_EQ(window.committed.size(), 1);
    EXPECT_EQ(window.field->value(), 12.0);
    QTest::keyClick(window.field, Qt::Key_Return);
    EXPECT_EQ(window.committed.size(), 1) << "nothing new was typed";
}

TEST(NumberBox, TakesWhatIsTypedWhenItLosesTheFocus) {
    Numbers window(kDepth, 0.1, kRefused);
    window.field->setValue(3.0);
    typeOnly(window.field, "12");
    QTest::keyClick(window.field, Qt::Key_Tab);
    EXPECT_TRUE(window.other->hasFocus());
    EXPECT_EQ(window.committed.size(), 1);
    EXPECT_EQ(window.field->value(), 12.0);
}

TEST(NumberBox, EscapeBringsTheDocumentsValueBack) {
    Numbers window(kDepth, 0.1, kRefused);
    window.field->setValue(3.0);
    typeOnly(window.field, "99");
    QTest::keyClick(window.field, Qt::Key_Escape);
    EXPECT_EQ(textOf(window.field), "3");
    type(window.field, "99");
    EXPECT_EQ(test::plain(window.field->entry().fault()), "The value is 99 m, but must be from 0.1 to 60 m.");
    EXPECT_EQ(window.field->value(), 3.0);
    QTest::keyClick(window.field, Qt::Key_Escape);
    EXPECT_EQ(textOf(window.field), "3");
    EXPECT_TRUE(window.field->entry().fault().isEmpty());
    EXPECT_EQ(window.committed.size(), 0);
}

TEST(NumberBox, TheMarkGoesAsSoonAsTheTextIsGood) {
    Numbers window(kDepth, 0.1, kRefused);
    type(window.field, "600");
    EXPECT_FALSE(window.field->entry().fault().isEmpty());
    QTest::keyClick(window.field, Qt::Key_End);
    QTest::keyClick(window.field, Qt::Key_Backspace);
    EXPECT_TRUE(window.field->entry().fault().isEmpty());
    EXPECT_EQ(window.committed.size(), 0) << "corrected, but not committed yet";
    QTest::keyClick(window.field, Qt::Key_Return);
    EXPECT_EQ(window.field->value(), 60.0);
}

TEST(NumberBox, ArrowsStepWithinTheRange) {
    Numbers window(kDepth, 0.1, kRefused);
    window.field->setValue(0.2);
    QTest::keyClick(window.field, Qt::Key_Up);
    EXPECT_EQ(window.field->value(), 0.3) << "the shortest decimals, not 0.30000000000000004";
    QTest::keyClick(window.field, Qt::Key_Down);
    QTest::keyClick(window.field, Qt::Key_Down);
    QTest::keyClick(window.field, Qt::Key_Down);
    EXPECT_EQ(window.field->value(), 0.1);
    EXPECT_EQ(window.committed.size(), 3);
    typeOnly(window.field, "59,95");
    QTest::keyClick(window.field, Qt::Key_Up);
    EXPECT_EQ(window.field->value(), 60.0) << "from what was typed, not past the end";
}

TEST(NumberBox, EmptyIsAbsentWhereThatIsAllowed) {
    Numbers window(kDepth, 0.5, kAllowed);
    window.field->setTakenIfEmpty(2.5);
    EXPECT_EQ(test::plain(window.field->placeholder()), "2.5 (automatic)");
    window.field->setValue(3.0);
    type(window.field, "");
    EXPECT_EQ(window.field->value(), std::nullopt);
    EXPECT_EQ(window.committed.size(), 1);
    QTest::keyClick(window.field, Qt::Key_Up);
    EXPECT_EQ(window.field->value(), 3.0) << "steps start from what was taken";
}

TEST(NumberBox, EmptyIsRefusedWhereANumberIsNeeded) {
    Numbers window(kDepth, 0.5, kRefused);
    window.field->setValue(3.0);
    type(window.field, "");
    EXPECT_FALSE(window.field->entry().fault().isEmpty());
    EXPECT_EQ(window.field->value(), 3.0);
}

TEST(NumberBox, WholeNumbersOnly) {
    Numbers window(kCount, 1.0, kRefused);
    type(window.field, "2.0");
    EXPECT_EQ(window.field->value(), 2.0);
    EXPECT_EQ(textOf(window.field), "2");
    type(window.field, "2.5");
    EXPECT_EQ(test::plain(window.field->entry().fault()),
              "The value is 2.5 diffusers, but must be a whole number.");
}

TEST(NumberBox, ADocumentsChangeReplacesTheTextButNotWhatIsTypedOverTheSameValue) {
    Numbers window(kDepth, 0.1, kRefused);
    window.field->setValue(3.0);
    typeOnly(window.field, "99");
    window.field->setValue(3.0);
    EXPECT_EQ(textOf(window.field), "99");
    window.field->setValue(4.0);
    EXPECT_EQ(textOf(window.field), "4");
}

TEST(NumberBox, FollowsAChangeOfTheLocale) {
    Numbers window(kDepth, 0.1, kAllowed);
    window.setLocale(kGerman);
    window.field->setTakenIfEmpty(2.5);
    window.field->setValue(1.5);
    EXPECT_EQ(textOf(window.field), "1,5");
    window.setLocale(kAmerican);
    EXPECT_EQ(textOf(window.field), "1.5");
    EXPECT_EQ(test::plain(window.field->placeholder()), "2.5 (automatic)");
}

TEST(ClockBox, ReadsTimesAndRefusesOthers) {
    Window<ClockBox> window;
    for (const auto& [text, minutes] :
         {std::pair("7", 420), std::pair("07:30", 450), std::pair("730", 450), std::pair("7.30", 450),
          std::pair("23:59", 1439), std::pair("0", 0), std::pair("19h", 1140)}) {
        type(window.field, text);
        ASSERT_TRUE(window.field->value().has_value()) << text;
        EXPECT_EQ(window.field->value()->minutes, minutes) << text;
    }
    EXPECT_EQ(textOf(window.field), "19:00");
    window.field->setValue(window.field->value());  // as the document would
    for (const char* text : {"24:00", "7:60", "noon", "7:5", "-1", "12:345"}) {
        type(window.field, text);
        EXPECT_FALSE(window.field->entry().fault().isEmpty()) << text;
        EXPECT_EQ(window.field->value()->minutes, 1140) << text;
        QTest::keyClick(window.field, Qt::Key_Escape);
    }
    type(window.field, "");
    EXPECT_FALSE(window.field->value().has_value());
}

TEST(ClockBox, ArrowsGoByQuartersAndOnPastMidnight) {
    Window<ClockBox> window;
    window.field->setTakenIfEmpty(engine::ClockTime{600}, QStringLiteral("10:00 (automatic)"));
    QTest::keyClick(window.field, Qt::Key_Up);
    EXPECT_EQ(textOf(window.field), "10:15");
    type(window.field, "00:07");
    QTest::keyClick(window.field, Qt::Key_Down);
    EXPECT_EQ(textOf(window.field), "00:00");
    QTest::keyClick(window.field, Qt::Key_Down);
    EXPECT_EQ(textOf(window.field), "23:45");
}

TEST(NumberListEdit, TakesAList) {
    const InLocale german(kGerman);
    Window<NumberListEdit> window(kDepth, NumberListEdit::Empty::Refused);
    type(window.field, "1,5; 2.5");
    EXPECT_EQ(window.field->value(), (std::vector<double>{1.5, 2.5}));
    EXPECT_EQ(textOf(window.field), "1,5; 2,5");
    type(window.field, "");
    EXPECT_FALSE(window.field->entry().fault().isEmpty());
    EXPECT_EQ(window.committed.size(), 1);
}

TEST(NameEdit, TrimsAndNeedsAName) {
    Window<NameEdit> window;
    type(window.field, "  gentle ");
    EXPECT_EQ(test::plain(window.field->value()), "gentle");
    type(window.field, "   ");
    EXPECT_FALSE(window.field->entry().fault().isEmpty());
}

TEST(NameEdit, ALongNameIsCutOnlyWhileItIsNotEdited) {
    Window<NameEdit> window;
    window.resize(160, 100);
    const QString start = QStringLiteral("a ramp of a rather long name that ends in ");
    window.field->setValue(start + u'A');
    QTest::qWait(1);
    const auto pictureOf = [&](const char* end) {
        window.field->setValue(start + QString::fromUtf8(end));
        return window.field->grab().toImage();
    };
    window.other->setFocus();
    EXPECT_EQ(pictureOf("A"), pictureOf("B")) << "the end should be dots";
    window.field->setFocus();
    window.field->end(false);
    EXPECT_FALSE(window.field->grab().toImage().isNull());
}

}  // namespace
}  // namespace widgets
