#include "widgets/controls/field_form.h"

#include "tests/widgets/typing.h"
#include "widgets/forms/aerator_form.h"
#include "widgets/forms/limits_form.h"
#include "widgets/forms/ramp_form.h"

#include <QPushButton>

namespace widgets {
namespace {

using test::saidBy;

TEST(PutNumber, KeepsSourceAndDropsASpreadThatIsLeft) {
    engine::MaybeQuantity debt = engine::Quantity(14.0);
    debt->low = 6.0;
    debt->high = 30.0;
    debt->confidence = engine::Confidence::Estimated;
    debt->source = "age";
    putNumber(debt, 20.0);
    EXPECT_EQ(debt->value, 20.0);
    EXPECT_EQ(debt->low, 6.0);
    EXPECT_EQ(debt->high, 30.0);
    putNumber(debt, 31.0);
    EXPECT_FALSE(debt->low.has_value() || debt->high.has_value());
    EXPECT_EQ(debt->confidence, engine::Confidence::Estimated);
    EXPECT_EQ(debt->source, "age");
    putNumber(debt, std::nullopt);
    EXPECT_FALSE(debt.has_value());
    putNumber(debt, 3.0);
    EXPECT_EQ(debt, engine::MaybeQuantity(engine::Quantity(3.0)));
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
