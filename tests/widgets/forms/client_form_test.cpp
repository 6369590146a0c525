#include "tests/widgets/on_a_form.h"
#include "widgets/forms/pond_section.h"

namespace widgets {
namespace {

using test::fieldOf;
using test::textOf;
using test::type;

TEST(ClientForm, WritesForWhomThePapersAre) {
    const engine::test::TemporaryFolder folder;
    Document document;
    test::open(document, folder, engine::test::kPlainPond);
    ASSERT_FALSE(document.pond().client.has_value());
    PondSection form(document, nullptr, &buildClient);
    test::showActive(form);
    QWidget* name = fieldOf(form, "Prepared for");
    type(name, "Zofie O'Neill");
    type(fieldOf(form, "Phone at dawn"), "+00 1");
    ASSERT_TRUE(document.pond().client.has_value());
    EXPECT_EQ(document.pond().client->name, "Zofie O'Neill");
    EXPECT_EQ(document.pond().client->phone, "+00 1");
    EXPECT_EQ(document.undoStack().count(), 2);
    document.undoStack().undo();
    EXPECT_EQ(document.pond().client->phone, "");
    type(name, "");
    EXPECT_FALSE(document.pond().client.has_value()) << "nothing of a client is no client";
}

}  // namespace
}  // namespace widgets
