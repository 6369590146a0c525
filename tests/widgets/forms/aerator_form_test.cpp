#include "widgets/forms/aerator_form.h"

#include "tests/widgets/on_a_form.h"

#include <QPushButton>

namespace widgets {
namespace {

using test::expectAccessible;
using test::fieldOf;
using test::saidBy;
using test::type;
using AeratorFormTest = test::OnAForm<AeratorForm>;

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
               [](const engine::Pond& pond) { return numberOf(pond.aerator->nonRecirculatedShare) == 0.6; });
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

TEST_F(AeratorFormTest, EveryFieldHasANameForAScreenReader) {
    expectAccessible(*form);
}

}  // namespace
}  // namespace widgets
