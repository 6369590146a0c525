// What charts are put together from: smooth lines, and labels beside their marks.

#include "widgets/charts/chart_parts.h"

#include "widgets/charts/label_layout.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>

namespace widgets {
namespace {

TEST(SmoothLine, GoesThroughItsPointsAndNeverBeyondThem) {
    const std::vector<double> x{0.0, 1.0, 2.0, 2.4, 3.0, 4.0}, y{5.0, 4.0, 4.0, 1.0, 3.0, 3.5};
    const SmoothLine line = smoothLine(x, y);
    ASSERT_EQ(line.x.size(), 31U);
    EXPECT_TRUE(std::is_sorted(line.x.begin(), line.x.end()));
    for (std::size_t i = 0; i < x.size(); ++i) {
        EXPECT_NEAR(line.x[6 * i], x[i], 1e-12);
        EXPECT_NEAR(line.y[6 * i], y[i], 1e-12);
    }
    for (std::size_t i = 0; i < line.x.size() - 1; ++i) {
        const std::size_t stretch = i / 6;
        EXPECT_GE(line.y[i], std::min(y[stretch], y[stretch + 1]) - 1e-12) << i;
        EXPECT_LE(line.y[i], std::max(y[stretch], y[stretch + 1]) + 1e-12) << i;
    }
}

TEST(SmoothLine, IsStraightThroughPointsOnALine) {
    const SmoothLine line = smoothLine({0.0, 1.0, 3.0}, {1.0, 2.0, 4.0});
    for (std::size_t i = 0; i < line.x.size(); ++i) {
        EXPECT_NEAR(line.y[i], 1.0 + line.x[i], 1e-12);
    }
}

TEST(LabelLayout, LabelsStandBesideTheirMarksInTheirOrderAndOverNothing) {
    const QRectF inside(0, 0, 400, 300);
    const QSizeF size(60, 16);
    const auto expectGood = [&](const std::vector<QPointF>& marks) {
        std::vector<MarkLabel> labels;
        for (const QPointF& mark : marks) {
            labels.push_back({mark, size, 0.0, 300.0});
        }
        const auto boxes = placeBeside(labels, {}, {}, inside);
        ASSERT_EQ(boxes.size(), marks.size());
        for (std::size_t i = 0; i < boxes.size(); ++i) {
            EXPECT_TRUE(inside.contains(boxes[i]));
            for (std::size_t j = 0; j < i; ++j) {
                EXPECT_FALSE(boxes[i].intersects(boxes[j]));
                if (boxes[i].left() < boxes[j].right() && boxes[j].left() < boxes[i].right() &&
                    std::abs(marks[i].y() - marks[j].y()) > 1.0) {
                    EXPECT_EQ(boxes[i].top() < boxes[j].top(), marks[i].y() < marks[j].y());
                }
            }
        }
    };
    expectGood({{200, 150}});
    for (const double apart : {0.0, 3.0, 10.0, 40.0}) {
        expectGood({{200, 150}, {205, 150 + apart}});
        expectGood({{200, 150 + apart}, {205, 150}});
        expectGood({{200, 290 - apart}, {390, 290}, {205, 295 - apart}});
    }
}

TEST(LabelLayout, ALabelStaysInTheBandOfItsMarkWhereThatCanBe) {
    // Just above the end of its stretch, so that the place below would lie in another.
    const auto boxes = placeBeside({{{200, 145}, {60, 16}, 0.0, 150.0}}, {}, {}, QRectF(0, 0, 400, 300));
    EXPECT_LT(boxes[0].bottom(), 150.0);
}

}  // namespace
}  // namespace widgets
