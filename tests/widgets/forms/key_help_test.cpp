#include "widgets/forms/key_help.h"

#include "engine/pond/key_list.h"

#include <QListWidget>
#include <QPlainTextEdit>

#include <gtest/gtest.h>

namespace widgets {
namespace {

TEST(KeyHelp, FindsByNameAndByMeaning) {
    KeyHelp help;
    auto* keys = help.findChild<QListWidget*>();
    auto* text = help.findChild<QPlainTextEdit*>();
    EXPECT_EQ(keys->count(), static_cast<int>(engine::pondKeys().size()));
    help.search(QStringLiteral("white disc"));
    ASSERT_EQ(keys->count(), 1);
    EXPECT_EQ(keys->item(0)->text(), QStringLiteral("water.secchi_m"));
    EXPECT_TRUE(text->toPlainText().contains(QStringLiteral("secchi_m = 0.45")));
    help.search(QStringLiteral("MUCK depth"));
    EXPECT_GT(keys->count(), 0);
    help.search(QStringLiteral("no such words here"));
    EXPECT_EQ(keys->count(), 0);
    EXPECT_TRUE(text->toPlainText().startsWith(QStringLiteral("No key")));
}

}  // namespace
}  // namespace widgets
