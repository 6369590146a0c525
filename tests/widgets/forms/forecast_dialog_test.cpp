#include "widgets/forms/forecast_dialog.h"

#include "engine/pond/local_time.h"
#include "tests/widgets/on_a_form.h"
#include "widgets/forms/weather_file.h"

#include <QAccessible>
#include <QClipboard>
#include <QPlainTextEdit>
#include <QTableWidget>
#include <QTimer>

namespace widgets {
namespace {

using test::button;
using test::fieldOf;
using test::plain;
using test::type;

constexpr const char* kWeek =
    "Sun\t91\t70\t8 mph\tsunny\nMon\t88\t69\t10 mph\tmostly cloudy\nTue\t84\t\t\tshowers\n";

class ForecastDialogTest : public testing::Test {
protected:
    void SetUp() override {
        QApplication::clipboard()->clear();
        test::open(document, folder, engine::test::kPlainPond);
    }
    void paste(ForecastDialog& dialog, const char* text) {
        fieldOf<QPlainTextEdit>(dialog, "Text of the forecast")->setPlainText(QString::fromUtf8(text));
    }
    static std::string cell(const ForecastDialog& dialog, int row, int column) {
        return plain(
            fieldOf<QTableWidget>(dialog, "The days as they are understood")->item(row, column)->text());
    }

    engine::test::TemporaryFolder folder;
    Document document;
};

TEST_F(ForecastDialogTest, ShowsTheDaysInThePondsUnitsAndTakesThemAsOneStep) {
    ASSERT_TRUE(document
                    .edit(QStringLiteral("Show US units"),
                          [](engine::Pond& pond) { pond.units = engine::UnitSystem::Us; })
                    .empty());
    const engine::Pond before = document.pond();
    ForecastDialog dialog(document);
    EXPECT_FALSE(button(dialog, "Take These Days")->isEnabled());
    EXPECT_EQ(plain(dialog.said()), "Nothing is pasted yet.");
    paste(dialog, kWeek);
    EXPECT_EQ(cell(dialog, 0, 0), "2026-06-14") << "the Sunday of the pond's first day";
    EXPECT_EQ(cell(dialog, 0, 1), "70");
    EXPECT_EQ(cell(dialog, 0, 2), "91");
    EXPECT_EQ(cell(dialog, 0, 3), "65 (filled)");
    EXPECT_EQ(cell(dialog, 0, 4), "8");
    EXPECT_EQ(cell(dialog, 0, 5), "10");
    EXPECT_EQ(cell(dialog, 2, 1), "64 (filled)");
    const std::string said = plain(dialog.said());
    for (const char* sentence :
         {"3 days of weather are taken, from 2026-06-14 to 2026-06-16; the first: 70 to 91 \u00b0F, wind 8 "
          "mph",
          "Humidity is missing on 3 days: 65 % is taken", "Wind is missing on 1 day",
          "The low is missing on 1 day", "Days of the table with the same dates are replaced."}) {
        EXPECT_NE(said.find(sentence), std::string::npos) << sentence << "\nis not said:\n" << said;
    }
    EXPECT_TRUE(document.pond() == before) << "looking at it changes nothing";
    button(dialog, "Take These Days")->click();
    EXPECT_EQ(dialog.result(), QDialog::Accepted);
    ASSERT_EQ(document.pond().weather.days.size(), 3U);
    EXPECT_NEAR(*document.pond().weather.days[1].airMax, 31.11, 0.01);
    EXPECT_EQ(document.undoStack().count(), 2);
    EXPECT_EQ(plain(document.undoStack().undoText()), "Take a pasted forecast");
    document.undoStack().undo();
    EXPECT_TRUE(document.pond() == before);
}

TEST_F(ForecastDialogTest, WhatIsNoForecastIsSaidAndNotTaken) {
    ForecastDialog dialog(document);
    paste(dialog, "Best regards,\nthe office\n");
    EXPECT_NE(plain(dialog.said()).find("No line with the high or the low"), std::string::npos);
    EXPECT_FALSE(button(dialog, "Take These Days")->isEnabled());
    paste(dialog, "Sun 910/700 F\n");  // a slip that only the pond's checks see
    ASSERT_TRUE(button(dialog, "Take These Days")->isEnabled());
    button(dialog, "Take These Days")->click();
    EXPECT_NE(plain(dialog.said()).find("must be from"), std::string::npos) << plain(dialog.said());
    EXPECT_EQ(document.undoStack().count(), 0);
}

TEST_F(ForecastDialogTest, TheFirstDayDatesATextWithoutDates) {
    ForecastDialog dialog(document);
    test::showActive(dialog);
    paste(dialog, "33/21 sunny\n31/20 cloudy\n");
    EXPECT_EQ(cell(dialog, 0, 0), "2026-06-15") << "the day after the newest reading";
    type(fieldOf(dialog, "First day of the text"), "2026-06-16");
    EXPECT_EQ(cell(dialog, 1, 0), "2026-06-17");
    EXPECT_NE(plain(dialog.said()).find("2026-06-15, stays"), std::string::npos) << plain(dialog.said());
    button(dialog, "Take These Days")->click();
    EXPECT_EQ(document.pond().weather.days.size(), 4U);
}

TEST_F(ForecastDialogTest, OnceThePondIsReadTheForecastGoesOnFromThere) {
    const std::string read = std::string(engine::test::kPlainPond) +
                             "\n[[reading]]\nat = 2026-06-17T05:40:00\ndepth_m = 0.5\noxygen_mg_per_l = 5\n";
    test::open(document, folder, read);
    ForecastDialog dialog(document);
    paste(dialog, "today 33/21 sunny\ntomorrow 31/20 cloudy\n");
    EXPECT_EQ(cell(dialog, 0, 0), "2026-06-17");
}

TEST_F(ForecastDialogTest, BeginsWithAForecastOfTheClipboardAndWithNothingElse) {
    QApplication::clipboard()->setText(QString::fromUtf8(kWeek));
    const ForecastDialog full(document);
    EXPECT_EQ(cell(full, 0, 0), "2026-06-14");
    QApplication::clipboard()->setText(QStringLiteral("a private letter"));
    const ForecastDialog empty(document);
    EXPECT_EQ(plain(fieldOf<QPlainTextEdit>(empty, "Text of the forecast")->toPlainText()), "");
}

TEST_F(ForecastDialogTest, IsOpenedFromTheWeatherAndCanBeUsedByKeys) {
    QApplication::clipboard()->setText(QString::fromUtf8(kWeek));
    WeatherFileRow row(document);
    test::showActive(row);
    QTimer::singleShot(0, [] {
        auto* dialog = qobject_cast<ForecastDialog*>(QApplication::activeModalWidget());
        ASSERT_NE(dialog, nullptr);
        EXPECT_TRUE(QTest::qWaitForWindowActive(dialog));
        for (const QWidget* widget : dialog->findChildren<QWidget*>()) {
            const QAccessibleInterface* one =
                QAccessible::queryAccessibleInterface(const_cast<QWidget*>(widget));
            if (widget->focusPolicy() != Qt::NoFocus && widget->isVisible() &&
                widget->objectName().isEmpty()) {
                EXPECT_FALSE(one->text(QAccessible::Name).isEmpty()) << widget->metaObject()->className();
            }
        }
        QWidget* text = fieldOf<QPlainTextEdit>(*dialog, "Text of the forecast");
        EXPECT_EQ(dialog->focusWidget(), text);
        QTest::keyClick(text, Qt::Key_Tab);
        EXPECT_EQ(dialog->focusWidget(), fieldOf(*dialog, "First day of the text"));
        button(*dialog, "Take These Days")->setFocus();
        QTest::keyClick(dialog->focusWidget(), Qt::Key_Space);
        EXPECT_EQ(dialog->result(), QDialog::Accepted);
        dialog->reject();  // or the test would wait for ever
    });
    button(row, "Paste a Forecast\u2026")->click();
    EXPECT_EQ(document.pond().weather.days.size(), 3U);
}

}  // namespace
}  // namespace widgets
