#include "tests/made_up_comparison.h"
#include "tests/widgets/typing.h"
#include "widgets/charts/night_scene.h"
#include "widgets/papers/paper_run.h"

#include <QLocale>

#include <gtest/gtest.h>

namespace widgets {
namespace {

using test::plain;

TEST(Months, AreEnglishInEveryLocaleAsTheWordsAboutThem) {
    Outcome outcome;
    outcome.comparison = engine::test::madeUpComparison();
    const engine::Date date(std::chrono::year(2026), std::chrono::October, std::chrono::day(4));
    QLocale::setDefault(QLocale(QLocale::German, QLocale::Germany));
    const std::string night = plain(nightName(outcome, 1));
    const std::string full = plain(paperDate(date)), brief = plain(paperDay(date));
    QLocale::setDefault(QLocale::c());
    EXPECT_EQ(night, "night 1, 14 June to 15 June");
    EXPECT_EQ(full, "4 Oct 2026");
    EXPECT_EQ(brief, "4 Oct");
}

}  // namespace
}  // namespace widgets
