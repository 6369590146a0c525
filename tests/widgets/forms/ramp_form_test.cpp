#include "widgets/forms/ramp_form.h"

#include "tests/widgets/on_a_form.h"
#include "widgets/forms/ramp_kind.h"

#include <QCheckBox>
#include <QComboBox>

#include <map>
#include <set>
#include <string>
#include <vector>

namespace widgets {
namespace {

using engine::RampKind;
using test::expectAccessible;
using test::fieldOf;
using test::saidBy;
using test::textOf;
using test::type;
using test::typeOnly;

class RampFormTest : public test::OnAForm<RampForm> {
protected:
    void SetUp() override {
        OnAForm::SetUp();
        form->setRamp(1);
    }
    [[nodiscard]] const engine::Ramp& ramp() const {
        return pond().ramps[static_cast<std::size_t>(form->ramp())];
    }
    /// Chooses a kind with the keyboard.
    void choose(RampKind kind) {
        auto* combo = fieldOf<QComboBox>(*form, "Kind");
        combo->setFocus();
        QTest::keyClick(combo, Qt::Key_Home);
        for (int i = 0; i < combo->findData(static_cast<int>(kind)); ++i) {
            QTest::keyClick(combo, Qt::Key_Down);
        }
    }
};

TEST_F(RampFormTest, EveryFieldIsOneStepAndUndoRestoresIt) {
    expectEdit("Name", "faster", "Rename “doubling”",
               [](const engine::Pond& pond) { return pond.ramps[1].name == "faster"; });
    expectEdit("First day, min", "20", "Change the first day of “faster”",
               [](const engine::Pond& pond) { return numberOf(pond.ramps[1].first_min) == 20.0; });
    expectEdit("Times each day", "1,5", "Change the daily factor of “faster”",
               [](const engine::Pond& pond) { return numberOf(pond.ramps[1].factor) == 1.5; });
    expectEdit("Start", "9:15", "Change the start time of “faster”",
               [](const engine::Pond& pond) { return pond.ramps[1].startTime == engine::ClockTime{555}; });
    expectEdit("Not before", "8", "Change the window of “faster”", [](const engine::Pond& pond) {
        return pond.ramps[1].window == engine::ClockWindow{{480}, {840}};
    });
    expectEdit("Not after", "18", "Change the window of “faster”", [](const engine::Pond& pond) {
        return pond.ramps[1].window == engine::ClockWindow{{480}, {1080}};
    });
    expectEdit("Runs a day", "3", "Change the runs a day of “faster”", [](const engine::Pond& pond) {
        return pond.ramps[1].pulses == engine::ByDay{{3.0}, false};
    });
    expectEdit("Open", "1; 1; 2", "Change the diffusers open in “faster”", [](const engine::Pond& pond) {
        return pond.ramps[1].diffusers == engine::ByDay{{1.0, 1.0, 2.0}, true};
    });
    expectEdit("Depth, m", "2.5", "Change the diffuser depth of “faster”", [](const engine::Pond& pond) {
        return pond.ramps[1].depth == engine::ByDay{{2.5}, false};
    });
    expectEdit("Depth, m", "", "Change the diffuser depth of “faster”",
               [](const engine::Pond& pond) { return !pond.ramps[1].depth; });
    expectEdit("Not before", "", "Change the window of “faster”",
               [](const engine::Pond& pond) { return !pond.ramps[1].window; });
    EXPECT_EQ(textOf(fieldOf(*form, "Not after")), "");
}

TEST_F(RampFormTest, FieldsOfTheOtherKinds) {
    form->setRamp(2);
    expectEdit("Dose, % a day", "12.5", "Change the dose of “gentle”",
               [](const engine::Pond& pond) { return numberOf(pond.ramps[2].dose_percent) == 12.5; });
    choose(RampKind::Linear);
    expectEdit("Added daily, min", "60", "Change what “gentle” adds each day",
               [](const engine::Pond& pond) { return numberOf(pond.ramps[2].add_minPerDay) == 60.0; });
    choose(RampKind::Table);
    expectEdit("Minutes by day", "30 60 1440", "Change the minutes of “gentle”",
               [](const engine::Pond& pond) {
                   return pond.ramps[2].minutes == std::vector<double>{30, 60, 1440};
               });
}

TEST_F(RampFormTest, ChecksAreSteps) {
    auto* hold = fieldOf<QCheckBox>(*form, "Skip hold days");
    hold->setFocus();
    QTest::keyClick(hold, Qt::Key_Space);
    EXPECT_TRUE(ramp().weatherHold);
    EXPECT_EQ(lastStep(), "Change the weather hold of “doubling”");
    document.undoStack().undo();
    EXPECT_FALSE(hold->isChecked());

    auto* chosen = fieldOf<QCheckBox>(*form, "The chosen ramp");
    EXPECT_FALSE(chosen->isChecked());
    chosen->setFocus();
    QTest::keyClick(chosen, Qt::Key_Space);
    EXPECT_EQ(pond().chosenRamp, "doubling");
    QTest::keyClick(chosen, Qt::Key_Space);
    EXPECT_EQ(pond().chosenRamp, "");
    document.undoStack().undo();
    document.undoStack().undo();
    EXPECT_EQ(pond().chosenRamp, "gentle");

    form->setRamp(2);
    auto* cap = fieldOf<QCheckBox>(*form, "Never lift the cap");
    ASSERT_TRUE(cap->isVisible());
    cap->setFocus();
    QTest::keyClick(cap, Qt::Key_Space);
    EXPECT_TRUE(ramp().hold);
}

TEST_F(RampFormTest, TheChosenRampStaysChosenUnderItsNewName) {
    form->setRamp(2);
    type(fieldOf(*form, "Name"), "very gentle");
    EXPECT_EQ(pond().chosenRamp, "very gentle");
    EXPECT_EQ(steps(), 1);
}

TEST_F(RampFormTest, NamesThatCannotBeAreRefusedInWords) {
    QWidget* name = fieldOf(*form, "Name");
    type(name, "gentle");
    EXPECT_NE(saidBy(*form).find("There is already a ramp of the name \"gentle\"."), std::string::npos);
    EXPECT_EQ(textOf(name), "gentle") << "what was typed stays";
    EXPECT_EQ(ramp().name, "doubling");
    EXPECT_TRUE(name->accessibleDescription().startsWith(QStringLiteral("There is already")));
    type(name, "Do Nothing");
    EXPECT_NE(saidBy(*form).find("is kept for the pond without the new aerator"), std::string::npos);
    type(name, "");
    EXPECT_NE(saidBy(*form).find("A name is needed here."), std::string::npos);
    QTest::keyClick(name, Qt::Key_Escape);
    EXPECT_EQ(textOf(name), "doubling");
    EXPECT_EQ(saidBy(*form).find("needed"), std::string::npos);
    EXPECT_EQ(steps(), 0);
}

TEST_F(RampFormTest, ARefusedTextStaysUntilItIsCorrectedElsewhere) {
    QWidget* depth = fieldOf(*form, "Depth, m");
    type(depth, "3.5");
    EXPECT_NE(saidBy(*form).find("must be above the bottom, which is at 3.4 m."), std::string::npos);
    type(fieldOf(*form, "First day, min"), "20");
    EXPECT_EQ(textOf(depth), "3.5") << "another edit takes nothing away";
    EXPECT_TRUE(document
                    .edit(QStringLiteral("x"),
                          [](engine::Pond& pond) { pond.basin.maxDepth = engine::Quantity(5.0); })
                    .empty());
    depth->setFocus();
    QTest::keyClick(depth, Qt::Key_Return);
    EXPECT_EQ(ramp().depth, (engine::ByDay{{3.5}, false}));
    EXPECT_EQ(saidBy(*form).find("must be above"), std::string::npos);
}

TEST_F(RampFormTest, ArrowsInARowAreOneStepAndTypingIsAnother) {
    QWidget* first = fieldOf(*form, "First day, min");
    type(first, "20");
    for (int i = 0; i < 3; ++i) {
        QTest::keyClick(first, Qt::Key_Up);
    }
    EXPECT_EQ(ramp().first_min->value, 50.0);
    EXPECT_EQ(steps(), 2);
    document.undoStack().undo();
    EXPECT_EQ(ramp().first_min->value, 20.0);
    type(first, "70");
    EXPECT_EQ(steps(), 2) << "undone arrows are gone";
    QTest::keyClick(first, Qt::Key_Up);
    type(first, "90");
    EXPECT_EQ(steps(), 4);
    document.undoStack().setIndex(0);
    EXPECT_EQ(ramp().first_min->value, 30.0);
}

TEST_F(RampFormTest, UndoInsideAFieldTakesBackTypingFirst) {
    QWidget* first = fieldOf(*form, "First day, min");
    type(first, "20");
    typeOnly(first, "77");
    QTest::keyClick(first, Qt::Key_Z, Qt::ControlModifier);
    EXPECT_EQ(ramp().first_min->value, 20.0) << "the document's step stays while typing is undone";
    EXPECT_NE(textOf(first), "77");
    QTest::keyClick(first, Qt::Key_Y, Qt::ControlModifier);
    EXPECT_EQ(textOf(first), "77");
    QTest::keyClick(first, Qt::Key_Escape);
    QTest::keyClick(first, Qt::Key_Z, Qt::ControlModifier);
    EXPECT_EQ(ramp().first_min->value, 30.0);
}

TEST_F(RampFormTest, TypingAnEqualNumberIsNoStep) {
    type(fieldOf(*form, "First day, min"), "30,0");
    EXPECT_EQ(steps(), 0);
    EXPECT_EQ(textOf(fieldOf(*form, "First day, min")), "30");
}

TEST_F(RampFormTest, EachKindShowsItsOwnFields) {
    const std::map<RampKind, std::set<std::string>> own{
        {RampKind::Continuous, {"Runs a day"}},
        {RampKind::Doubling, {"First day, min", "Times each day", "Runs a day"}},
        {RampKind::Linear, {"First day, min", "Added daily, min", "Runs a day"}},
        {RampKind::Capped, {"Dose, % a day", "Never lift the cap"}},
        {RampKind::Table, {"Minutes by day", "Runs a day"}},
    };
    for (const auto& [kind, fields] : own) {
        choose(kind);
        EXPECT_EQ(ramp().kind, kind) << saidBy(*form);
        for (const char* name : {"First day, min", "Times each day", "Added daily, min", "Dose, % a day",
                                 "Never lift the cap", "Minutes by day", "Runs a day"}) {
            EXPECT_EQ(!fieldOf(*form, name)->isHidden(), fields.contains(name))
                << name << " of " << test::plain(kindText(kind));
        }
    }
}

TEST_F(RampFormTest, AKindIsChangedInOneStepThatUndoTakesBack) {
    const engine::Pond before = pond();
    auto* combo = fieldOf<QComboBox>(*form, "Kind");
    combo->setFocus();
    QTest::keyClick(combo, Qt::Key_Down);
    EXPECT_EQ(ramp().kind, RampKind::Linear);
    EXPECT_EQ(steps(), 1);
    EXPECT_EQ(lastStep(), "Change the kind of “doubling”");
    document.undoStack().undo();
    EXPECT_TRUE(pond() == before);
    EXPECT_EQ(combo->currentData().toInt(), static_cast<int>(RampKind::Doubling));
}

TEST_F(RampFormTest, AnotherRampTakesWhatWasTypedForTheOneBefore) {
    typeOnly(fieldOf(*form, "First day, min"), "25");
    form->setRamp(2);
    EXPECT_EQ(pond().ramps[1].first_min->value, 25.0);
    form->setRamp(1);
    EXPECT_EQ(textOf(fieldOf(*form, "First day, min")), "25");
    type(fieldOf(*form, "First day, min"), "9999");
    form->setRamp(0);
    form->setRamp(1);
    EXPECT_EQ(textOf(fieldOf(*form, "First day, min")), "25") << "a faulty text is not carried over";
    EXPECT_EQ(saidBy(*form).find("9999"), std::string::npos);
}

TEST_F(RampFormTest, CommitTakesWhatIsTypedOrSaysThatItCannot) {
    QWidget* first = fieldOf(*form, "First day, min");
    typeOnly(first, "25");
    EXPECT_TRUE(form->commit());
    EXPECT_EQ(ramp().first_min->value, 25.0);
    typeOnly(first, "9999");
    fieldOf(*form, "Name")->setFocus();
    EXPECT_FALSE(form->commit());
    EXPECT_TRUE(first->hasFocus());
    EXPECT_EQ(ramp().first_min->value, 25.0);
}

TEST_F(RampFormTest, AFieldThatGoesWithItsKindForgetsWhatIsTyped) {
    type(fieldOf(*form, "Runs a day"), "99");
    EXPECT_FALSE(form->commit());
    choose(RampKind::Capped);
    EXPECT_TRUE(form->commit());
    choose(RampKind::Linear);
    EXPECT_EQ(saidBy(*form).find("99"), std::string::npos);
    EXPECT_EQ(textOf(fieldOf(*form, "Runs a day")), "");
}

TEST_F(RampFormTest, MayGoWhileATextIsTyped) {
    typeOnly(fieldOf(*form, "First day, min"), "25");
    delete form;
    EXPECT_EQ(pond().ramps[1].first_min->value, 30.0) << "who wants it taken asks for commit()";
    document.edit(QStringLiteral("x"), [](engine::Pond& changed) { changed.title = "alone"; });
    EXPECT_EQ(pond().title, "alone");
}

TEST_F(RampFormTest, MayGoWithItsWindowWhileATextIsTyped) {
    typeOnly(fieldOf(*form, "First day, min"), "25");
    window.reset();
    EXPECT_EQ(pond().ramps[1].first_min->value, 25.0) << "the focus was lost while all was there";
}

TEST_F(RampFormTest, WithoutARampItSaysSo) {
    form->setRamp(7);
    EXPECT_NE(saidBy(*form).find("No ramp is selected."), std::string::npos);
    EXPECT_FALSE(fieldOf(*form, "Name")->isVisible());
    form->setRamp(2);
    EXPECT_TRUE(document
                    .edit(QStringLiteral("x"),
                          [](engine::Pond& pond) {
                              pond.ramps.pop_back();
                              pond.chosenRamp.clear();
                          })
                    .empty());
    EXPECT_FALSE(fieldOf(*form, "Name")->isVisible());
    document.undoStack().undo();
    EXPECT_TRUE(fieldOf(*form, "Name")->isVisible());
    EXPECT_EQ(textOf(fieldOf(*form, "Name")), "gentle");
}

TEST_F(RampFormTest, EveryFieldHasANameForAScreenReader) {
    for (int i = 0; i < 3; ++i) {
        form->setRamp(i);
        expectAccessible(*form);
    }
    choose(RampKind::Table);
    expectAccessible(*form);
    choose(RampKind::Linear);
    expectAccessible(*form);
}

}  // namespace
}  // namespace widgets
