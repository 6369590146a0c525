#include "widgets/papers/paper_flow.h"
#include "widgets/papers/paper_template.h"
#include "widgets/papers/paper_units.h"

#include <gtest/gtest.h>

#include <array>
#include <random>
#include <set>

namespace widgets {
namespace {

PaperStrip strip(double height, bool keepsNext = false, double before = 0.0) {
    PaperStrip one;
    one.height = height;
    one.keepsNext = keepsNext;
    one.before = before;
    return one;
}

TEST(Paginated, AHeadingMovesOnWithWhatItHeads) {
    const std::vector<PaperStrip> strips{strip(80), strip(15, true), strip(10)};
    const auto pages = paginated(strips, 100);
    ASSERT_EQ(pages.size(), 2U);
    EXPECT_EQ(pages[0].size(), 1U);
    EXPECT_EQ(pages[1].front().strip, &strips[1]);
    EXPECT_EQ(pages[1].front().top, 0.0);
}

TEST(Paginated, ATableHasItsHeadOnEachPage) {
    const auto head = std::make_shared<PaperStrip>(strip(10));
    std::vector<PaperStrip> strips{*head};
    strips.front().keepsNext = true;
    for (int i = 0; i < 25; ++i) {
        strips.push_back(strip(10));
        strips.back().head = head;
    }
    const auto pages = paginated(strips, 100);
    ASSERT_EQ(pages.size(), 3U);
    EXPECT_EQ(pages[0].size(), 10U);
    for (std::size_t page = 1; page < pages.size(); ++page) {
        EXPECT_EQ(pages[page].front().strip, head.get());
        EXPECT_EQ(pages[page][1].top, 10.0);
    }
}

TEST(Paginated, WhatNoPageHoldsIsPartedAndNotLost) {
    const std::vector<PaperStrip> strips{strip(60, true), strip(60, true), strip(60)};
    EXPECT_EQ(paginated(strips, 100).size(), 3U);
}

TEST(ClosedUp, SavesALastPageThatWouldHoldLittle) {
    // 11 strips of 9 with 1 between are 109 high, and 106 with 0.7 of it between.
    std::vector<PaperStrip> strips;
    for (int i = 0; i < 11; ++i) {
        strips.push_back(strip(9, false, 1));
    }
    EXPECT_EQ(paginated(strips, 107).size(), 2U);
    EXPECT_EQ(paginated(closedUp(strips, 107), 107).size(), 1U);
    // A last page that holds enough is left as it is, and so is one that nothing can save.
    strips.push_back(strip(60));
    for (const auto& left : {strips, std::vector<PaperStrip>{strip(100), strip(5), strip(5)}}) {
        const auto closed = closedUp(left, 107);
        for (std::size_t i = 0; i < left.size(); ++i) {
            EXPECT_EQ(closed[i].before, left[i].before);
        }
    }
}

TEST(Paginated, WhatClosesASectionTakesItAlong) {
    std::vector<PaperStrip> strips{strip(50), strip(10, true), strip(10), strip(10), strip(30)};
    strips[1].outline = QStringLiteral("What remains");
    strips.back().closes = true;
    const auto pages = paginated(strips, 100);
    ASSERT_EQ(pages.size(), 2U);
    EXPECT_EQ(pages[0].size(), 1U);
    EXPECT_EQ(pages[1].front().strip, &strips[1]);
}

TEST(Paginated, WhatClosesALongSectionTakesOnlyTheStripBeforeIt) {
    std::vector<PaperStrip> strips{strip(10, true), strip(30), strip(30), strip(20), strip(30)};
    strips.front().outline = QStringLiteral("Long");
    strips.back().closes = true;
    const auto pages = paginated(strips, 100);
    ASSERT_EQ(pages.size(), 2U);
    EXPECT_EQ(pages[1].front().strip, &strips[3]);
}

// Any strips: each stands once, in order, and inside its page unless it is higher than one.
TEST(Paginated, LosesNothingAndPassesNoEdge) {
    std::mt19937 dice(7);
    std::uniform_real_distribution<double> height(1.0, 60.0);
    for (int round = 0; round < 300; ++round) {
        std::vector<PaperStrip> strips;
        for (int i = 0; i < 40; ++i) {
            strips.push_back(strip(height(dice), dice() % 3 == 0, height(dice) / 10.0));
            strips.back().startsPage = dice() % 10 == 0;
            strips.back().closes = dice() % 5 == 0;
        }
        std::size_t next = 0;
        for (const PaperPage& page : paginated(strips, 100)) {
            EXPECT_FALSE(page.empty()) << "round " << round;
            for (const PlacedStrip& placed : page) {
                ASSERT_EQ(placed.strip, &strips[next++]) << "round " << round;
                EXPECT_LE(placed.top + placed.strip->height, 100.0 + 1e-9);
            }
        }
        EXPECT_EQ(next, strips.size());
    }
}

TEST(PaperTemplate, FillsPlacesAndLeavesBlanks) {
    PaperValues values;
    values.set(QStringLiteral("low"), QStringLiteral("2.1"));
    values.set(QStringLiteral("nothing"), QString());
    EXPECT_EQ(values.filled(QStringLiteral("{low} of {nothing}")), QStringLiteral("2.1 of __________"));
    EXPECT_TRUE(values.meets(QStringLiteral("low !nothing"), {}));
    EXPECT_FALSE(values.meets(QStringLiteral("nothing"), {}));
    EXPECT_FALSE(values.meets(QStringLiteral("all"), QStringLiteral("{low} {nothing}")));
    EXPECT_TRUE(values.meets(QStringLiteral("all"), QStringLiteral("{low}")));
}

TEST(PaperTemplate, ALineThatNeedsWhatIsNotThereIsLeftOut) {
    constexpr std::array kLines{TemplateLine{Say::Text, "one", "low"}, TemplateLine{Say::Text, "two"}};
    PaperFlow flow(PaperLook::standard(), 5000);
    setTemplate(flow, "Test", kLines, PaperValues());
    EXPECT_EQ(flow.take().size(), 1U);
}

// One foot is 0.3048 m, one acre 4046.856 m2, one pound 0.45359237 kg (NIST SP 811, appendix B).
TEST(PaperUnits, GiveTheUsersFirstAndTheOtherBeside) {
    const PaperUnits si(false), us(true);
    EXPECT_EQ(si.depth(3.048), QStringLiteral("3.0 m (10.0 ft)"));
    EXPECT_EQ(us.depth(3.048), QStringLiteral("10.0 ft (3.0 m)"));
    EXPECT_EQ(us.area(8093.7), QStringLiteral("2.00 acres (0.81 ha)"));
    EXPECT_EQ(si.temperature(-40.0), QStringLiteral("-40.0 \u00b0C (-40 \u00b0F)"));
    EXPECT_EQ(us.air(28.3168), QStringLiteral("1.00 cfm (28.3 L/min)"));
    EXPECT_EQ(si.mass(0.0), QStringLiteral("0 kg (0 lb)"));
    EXPECT_EQ(figuresText(12345.0), QStringLiteral("12300"));
    EXPECT_EQ(figuresText(0.999), QStringLiteral("1.00"));
}

}  // namespace
}  // namespace widgets
