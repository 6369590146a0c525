#include "engine/pond_check.h"
#include "engine/pond_words.h"
#include "tests/random_pond.h"
#include "tests/runnable_pond.h"
#include "tests/widgets/typing.h"
#include "widgets/aerator_form.h"
#include "widgets/limits_form.h"
#include "widgets/ramp_form.h"
#include "widgets/ramp_kind.h"

#include <QAccessible>
#include <QAction>
#include <QCheckBox>
#include <QComboBox>
#include <QMainWindow>
#include <QPushButton>
#include <QScrollArea>

#include <algorithm>
#include <functional>
#include <map>
#include <memory>
#include <set>

namespace widgets {
namespace {

using engine::RampKind;
using engine::test::kPlainPond;
using test::fieldOf;
using test::saidBy;
using test::textOf;
using test::type;
using test::typeOnly;

/// A form in a main window with the menu's undo and redo, as wide as the side column.
template <class Form>
class OnAForm : public testing::Test {
protected:
    void SetUp() override { show(kPlainPond); }

    void show(std::string_view text) {
        test::open(document, folder, text);
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
        test::showActive(*window);
    }

    [[nodiscard]] const engine::Pond& pond() const { return document.pond(); }
    [[nodiscard]] int steps() { return document.undoStack().count(); }
    [[nodiscard]] std::string lastStep() { return test::plain(document.undoStack().undoText()); }

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

class RampFormTest : public OnAForm<RampForm> {
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
using LimitsFormTest = OnAForm<LimitsForm>;
using AeratorFormTest = OnAForm<AeratorForm>;

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

TEST(RampKindTest, AnyKindBecomesAnyOtherAndStaysValid) {
    for (unsigned seed = 1; seed <= 100; ++seed) {
        SCOPED_TRACE(seed);
        engine::test::Dice dice(seed);
        const engine::Pond drawn = engine::test::runnablePond(dice);
        ASSERT_FALSE(engine::hasErrors(engine::checkPond(drawn)));
        for (const engine::Ramp& ramp : drawn.ramps) {
            for (const auto& word : engine::kRampKindWords) {
                engine::Pond pond = drawn;
                auto& changed = pond.ramps[static_cast<std::size_t>(&ramp - drawn.ramps.data())];
                changeKind(changed, word.value);
                EXPECT_EQ(changed.kind, word.value);
                for (const engine::Diagnostic& fault : engine::checkPond(pond)) {
                    EXPECT_EQ(fault.severity, engine::Severity::Warning)
                        << word.text << ": " << engine::format(fault);
                }
                if (word.value == ramp.kind) {
                    EXPECT_TRUE(changed == ramp);
                }
            }
        }
    }
}

TEST(RampKindTest, ATableStartsFromTheRuleOfTheRampBefore) {
    engine::Ramp ramp;
    ramp.kind = RampKind::Doubling;
    ramp.first_min = engine::Quantity(20.0);
    changeKind(ramp, RampKind::Table);
    EXPECT_EQ(ramp.minutes, (std::vector<double>{20, 40, 80, 160, 320, 640, 1280, 1440}));
    engine::Ramp capped;
    capped.kind = RampKind::Capped;
    capped.dose_percent = engine::Quantity(5.0);
    changeKind(capped, RampKind::Table);
    EXPECT_EQ(capped.minutes, (std::vector<double>{30, 60, 120, 240, 480, 960, 1440}));
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

TEST_F(LimitsFormTest, EveryFieldIsOneStepAndUndoRestoresIt) {
    expectEdit("Stress line, mg/L", "4,5", "Change the stress line",
               [](const engine::Pond& pond) { return numberOf(pond.limits.stress) == 4.5; });
    expectEdit("Lethal line, mg/L", "2.5", "Change the lethal line",
               [](const engine::Pond& pond) { return numberOf(pond.limits.lethal) == 2.5; });
    expectEdit("Fish water, %", "25", "Change the share of the fish water",
               [](const engine::Pond& pond) { return numberOf(pond.limits.fishWater_percent) == 25.0; });
    expectEdit("Warmest, °C", "30", "Change the warmest water for fish",
               [](const engine::Pond& pond) { return numberOf(pond.limits.fishMax) == 30.0; });
    expectEdit("Stress line, mg/L", "", "Change the stress line",
               [](const engine::Pond& pond) { return !pond.limits.stress; });
}

TEST_F(LimitsFormTest, EmptyFieldsSayWhatIsTakenByTheFish) {
    const auto placeholder = [this](const char* name) {
        return test::plain(fieldOf<NumberBox>(*form, name)->placeholder());
    };
    // Sport fish 4 and 2, one more on stress since the surface is at 28.5 degC (design, lines).
    EXPECT_EQ(placeholder("Stress line, mg/L"), "5 if empty");
    EXPECT_EQ(placeholder("Lethal line, mg/L"), "2 if empty");
    EXPECT_EQ(placeholder("Fish water, %"), "20 if empty");
    EXPECT_EQ(placeholder("Warmest, °C"), "no end if empty");
    auto* group = fieldOf<QComboBox>(*form, "Fish");
    group->setFocus();
    QTest::keyClick(group, Qt::Key_Home);
    for (int i = 0; i < group->findData(static_cast<int>(engine::SpeciesGroup::Trout)); ++i) {
        QTest::keyClick(group, Qt::Key_Down);
    }
    EXPECT_EQ(pond().limits.speciesGroup, engine::SpeciesGroup::Trout);
    EXPECT_EQ(placeholder("Lethal line, mg/L"), "3 if empty");
    EXPECT_EQ(placeholder("Warmest, °C"), "20 if empty");
    QTest::keyClick(group, Qt::Key_Home);
    EXPECT_FALSE(pond().limits.speciesGroup.has_value());
    EXPECT_EQ(test::plain(group->currentText()), "By weight: sport fish");
}

TEST_F(LimitsFormTest, ALethalLineAboveTheStressLineIsRefusedInWords) {
    type(fieldOf(*form, "Stress line, mg/L"), "3");
    type(fieldOf(*form, "Lethal line, mg/L"), "3.5");
    EXPECT_NE(saidBy(*form).find("The lethal line 3.5"), std::string::npos) << saidBy(*form);
    EXPECT_FALSE(pond().limits.lethal.has_value());
    EXPECT_EQ(steps(), 1);
}

TEST_F(AeratorFormTest, EveryFieldIsOneStepAndUndoRestoresIt) {
    expectEdit("Air each, L/min", "50", "Change the air of the diffusers",
               [](const engine::Pond& pond) { return numberOf(pond.aerator->freeAir_lPerMin) == 50.0; });
    expectEdit("Diffusers", "3", "Change the number of diffusers",
               [](const engine::Pond& pond) { return numberOf(pond.aerator->diffusers) == 3.0; });
    expectEdit("Depth, m", "2,5", "Change the depth of the diffusers",
               [](const engine::Pond& pond) { return numberOf(pond.aerator->depth) == 2.5; });
    expectEdit("Bubbles, mm", "2", "Change the bubble size",
               [](const engine::Pond& pond) { return numberOf(pond.aerator->bubble_mm) == 2.0; });
    expectEdit("Power, kW", "0.37", "Change the power",
               [](const engine::Pond& pond) { return numberOf(pond.aerator->power_kW) == 0.37; });
    expectEdit("Net share", "0.6", "Change the net share",
               [](const engine::Pond& pond) { return numberOf(pond.aerator->netShare) == 0.6; });
}

TEST_F(AeratorFormTest, AFaultInARampNamesTheRamp) {
    ASSERT_TRUE(document
                    .edit(QStringLiteral("x"),
                          [](engine::Pond& pond) {
                              pond.ramps[1].diffusers = engine::ByDay{{2.0}, false};
                          })
                    .empty());
    type(fieldOf(*form, "Diffusers"), "1");
    EXPECT_NE(saidBy(*form).find("Ramp “doubling”: The ramp opens 2 diffusers, but the aerator has 1."),
              std::string::npos)
        << saidBy(*form);
    EXPECT_EQ(numberOf(pond().aerator->diffusers), 2.0);
}

TEST_F(AeratorFormTest, ANeededNumberCannotBeTakenAway) {
    type(fieldOf(*form, "Depth, m"), "");
    EXPECT_NE(saidBy(*form).find("A number is needed here."), std::string::npos);
    EXPECT_EQ(numberOf(pond().aerator->depth), 3.0);
}

TEST_F(AeratorFormTest, APondWithoutAnAeratorGetsOne) {
    ASSERT_TRUE(document
                    .edit(QStringLiteral("x"),
                          [](engine::Pond& pond) {
                              pond.ramps.clear();
                              pond.chosenRamp.clear();
                              pond.aerator.reset();
                          })
                    .empty());
    EXPECT_NE(saidBy(*form).find("There is no aerator in this pond yet"), std::string::npos);
    EXPECT_FALSE(fieldOf(*form, "Depth, m")->isVisible());
    auto* add = form->findChild<QPushButton*>();
    ASSERT_TRUE(add->isVisible());
    add->setFocus();
    QTest::keyClick(add, Qt::Key_Space);
    ASSERT_TRUE(pond().aerator.has_value());
    EXPECT_EQ(numberOf(pond().aerator->depth), 3.0) << "0.4 m above 3.4 m";
    EXPECT_EQ(lastStep(), "Add an aerator");
    EXPECT_TRUE(fieldOf(*form, "Depth, m")->isVisible());
    document.undoStack().undo();
    EXPECT_FALSE(fieldOf(*form, "Depth, m")->isVisible());
}

TEST(PutNumber, KeepsSourceAndDropsASpreadThatIsLeft) {
    engine::MaybeQuantity debt = engine::Quantity(14.0);
    debt->low = 6.0;
    debt->high = 30.0;
    debt->sure = engine::Sureness::Estimated;
    debt->source = "age";
    putNumber(debt, 20.0);
    EXPECT_EQ(debt->value, 20.0);
    EXPECT_EQ(debt->low, 6.0);
    EXPECT_EQ(debt->high, 30.0);
    putNumber(debt, 31.0);
    EXPECT_FALSE(debt->low.has_value() || debt->high.has_value());
    EXPECT_EQ(debt->sure, engine::Sureness::Estimated);
    EXPECT_EQ(debt->source, "age");
    putNumber(debt, std::nullopt);
    EXPECT_FALSE(debt.has_value());
    putNumber(debt, 3.0);
    EXPECT_EQ(debt, engine::MaybeQuantity(engine::Quantity(3.0)));
}

/// A check box or button carries its label; any other field has a visible one whose buddy it is.
bool isLabelled(const QWidget& form, const QWidget* field) {
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
            EXPECT_FALSE(description.isEmpty()) << test::plain(interface->text(QAccessible::Name));
            EXPECT_FALSE(description.contains(u'<')) << "markup is read out: " << test::plain(description);
            EXPECT_TRUE(widget->isHidden() || isLabelled(form, widget))
                << test::plain(interface->text(QAccessible::Name));
            EXPECT_EQ(widget->focusPolicy() & Qt::WheelFocus & ~Qt::StrongFocus, 0)
                << "the wheel would give the focus to " << test::plain(widget->accessibleName());
            ++count;
        }
    }
    EXPECT_GE(count, 5);
    EXPECT_LE(form.minimumSizeHint().width(), 310) << "a scroll bar must fit beside it in 330";
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
TEST_F(LimitsFormTest, EveryFieldHasANameForAScreenReader) {
    expectAccessible(*form);
}
TEST_F(AeratorFormTest, EveryFieldHasANameForAScreenReader) {
    expectAccessible(*form);
}

TEST(FormsWithoutAPond, SayThatThereIsNone) {
    Document document;
    const RampForm ramp(document);
    const LimitsForm limits(document);
    const AeratorForm aerator(document);
    EXPECT_NE(saidBy(ramp).find("No ramp is selected."), std::string::npos);
    EXPECT_NE(saidBy(limits).find("No pond is open."), std::string::npos);
    EXPECT_FALSE(aerator.findChild<QPushButton*>()->isEnabled());
}

}  // namespace
}  // namespace widgets
