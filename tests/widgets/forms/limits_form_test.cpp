#include "widgets/forms/limits_form.h"

#include "tests/widgets/on_a_form.h"

#include <QComboBox>

namespace widgets {
namespace {

using test::expectAccessible;
using test::fieldOf;
using test::saidBy;
using test::type;
using LimitsFormTest = test::OnAForm<LimitsForm>;

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
    // Sport fish 4 and 2, one more on stress since the surface is at 28.5 degC.
    EXPECT_EQ(placeholder("Stress line, mg/L"), "5 (automatic)");
    EXPECT_EQ(placeholder("Lethal line, mg/L"), "2 (automatic)");
    EXPECT_EQ(placeholder("Fish water, %"), "20 (automatic)");
    EXPECT_EQ(placeholder("Warmest, °C"), "no limit (automatic)");
    auto* group = fieldOf<QComboBox>(*form, "Fish");
    group->setFocus();
    QTest::keyClick(group, Qt::Key_Home);
    for (int i = 0; i < group->findData(static_cast<int>(engine::SpeciesGroup::Trout)); ++i) {
        QTest::keyClick(group, Qt::Key_Down);
    }
    EXPECT_EQ(pond().limits.speciesGroup, engine::SpeciesGroup::Trout);
    EXPECT_EQ(placeholder("Lethal line, mg/L"), "3 (automatic)");
    EXPECT_EQ(placeholder("Warmest, °C"), "20 (automatic)");
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

TEST_F(LimitsFormTest, EveryFieldHasANameForAScreenReader) {
    expectAccessible(*form);
}

}  // namespace
}  // namespace widgets
