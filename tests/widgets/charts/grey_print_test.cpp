// Whether every view can be read when its sheet is printed 80 mm wide on a grey printer: measured on the
// drawings that are exported, whose colours, pens and texts stand in the SVG.

#include "engine/ensemble/measure.h"
#include "tests/scenario.h"
#include "tests/widgets/charts/grey_sheet.h"
#include "widgets/charts/sheets.h"
#include "widgets/document/recomputation.h"

#include <gtest/gtest.h>

#include <cmath>
#include <map>
#include <set>

namespace widgets {
namespace {

using engine::test::scenario;

using namespace test;

void expectTextsRead(const Sheet& sheet) {
    ASSERT_GE(sheet.texts().size(), 3U);
    for (const DrawnText& text : sheet.texts()) {
        EXPECT_GE(sheet.points(text.size), kSmallest_pt) << plain(text.text);
        double least = 21.0;
        for (int i = 0; i <= 8; ++i) {
            const QPointF at(text.box.left() + text.box.width() * i / 8.0, text.box.center().y());
            if (const auto under = sheet.ground(at, text.over)) {
                least = std::min(least, contrast(text.colour, *under));
            }
        }
        EXPECT_GE(least, kTextContrast) << plain(text.text) << " in " << nameOf(text.colour);
    }
}

/// Rules that lead the eye and casings in the paper's colour say nothing; the hatching of death is measured
/// with its area, whose edge and name say it.
bool saysSomething(const DrawnShape& shape, const PlotStyle& style) {
    return shape.stroke && !isNear(*shape.stroke, style.hairline) &&
           (isHatch(shape) || !isNear(*shape.stroke, style.paper)) && !isNear(*shape.stroke, style.hatch);
}

void expectStrokesStandOut(const Sheet& sheet) {
    std::map<std::string, std::pair<double, std::string>> worst;  // of each colour: contrast, and with what
    for (std::size_t i = 0; i < sheet.shapes().size(); ++i) {
        const DrawnShape& shape = sheet.shapes()[i];
        if (!saysSomething(shape, sheet.style())) {
            continue;
        }
        const std::vector<QPointF> points = pointsOf(shape.path);
        for (std::size_t p = 0; p + 1 < points.size(); ++p) {
            const auto under = sheet.ground((points[p] + points[p + 1]) / 2, i);
            const double found = under ? contrast(*shape.stroke, *under) : 21.0;
            auto& least = worst.try_emplace(nameOf(*shape.stroke), 21.0, "").first->second;
            if (found < least.first) {
                least = {found, nameOf(*under) + ", width " + std::to_string(shape.width)};
            }
        }
    }
    EXPECT_FALSE(worst.empty());
    for (const auto& [colour, least] : worst) {
        EXPECT_GE(least.first, kGraphContrast) << colour << " on " << least.second;
    }
}

/// How a curve is drawn.
struct Look {
    QColor colour;
    double width = 0.0;
    std::vector<double> dashes;
};

bool areSame(const Look& a, const Look& b) {
    const auto isSame = [](double x, double y) { return std::abs(x - y) < 0.05; };
    return isNear(a.colour, b.colour) && isSame(a.width, b.width) &&
           std::equal(a.dashes.begin(), a.dashes.end(), b.dashes.begin(), b.dashes.end(), isSame);
}

bool areToldApart(const Look& a, const Look& b) {
    const bool isDash = !std::equal(a.dashes.begin(), a.dashes.end(), b.dashes.begin(), b.dashes.end(),
                                    [](double x, double y) { return std::abs(x - y) < 0.25; });
    return isDash || std::max(a.width, b.width) >= kWidthsApart * std::min(a.width, b.width) ||
           apart(a.colour, b.colour) >= kLinesApart;
}

std::vector<Look> curvesOf(const Sheet& sheet) {
    constexpr double kThinnest = 0.9;  // [px]; the edges of bands are thinner
    std::vector<Look> looks;
    for (const DrawnShape& shape : sheet.shapes()) {
        const bool isCurve = saysSomething(shape, sheet.style()) && !shape.fill && !shape.isCurved &&
                             shape.width >= kThinnest && !isUpright(shape) && !isHatch(shape) &&
                             shape.path.elementCount() >= 3 &&
                             pointsOf(shape.path).front() != pointsOf(shape.path).back();
        if (isCurve) {
            const Look look{*shape.stroke, shape.width, shape.dashes};
            if (std::none_of(looks.begin(), looks.end(),
                             [&](const Look& one) { return areSame(one, look); })) {
                looks.push_back(look);
            }
        }
    }
    return looks;
}

/// @param least  So many curves that differ are there.
void expectCurvesApart(const Sheet& sheet, std::size_t least) {
    const std::vector<Look> looks = curvesOf(sheet);
    EXPECT_GE(looks.size(), least) << "curves are found";
    for (std::size_t i = 0; i < looks.size(); ++i) {
        for (std::size_t j = 0; j < i; ++j) {
            EXPECT_TRUE(areToldApart(looks[i], looks[j]))
                << nameOf(looks[i].colour) << " and " << nameOf(looks[j].colour) << ", widths "
                << looks[i].width << " and " << looks[j].width;
        }
    }
}

OutcomePtr computed(const engine::Pond& pond, int nights) {
    const Outcome outcome = withMembers(outcomeOf(pond, nights, true), 8, true);
    return std::make_shared<const Outcome>(withMeasured(withAnswer(outcome), engine::kLeastMembersToMeasure));
}

void expectReadInGrey(const OutcomePtr& outcome) {
    const std::set<std::string> ofAllRamps{"night", "lows", "run", "debt", "profiles"};
    for (const ChartSheet& sheet : allSheets(outcome)) {
        SCOPED_TRACE(plain(sheet.name));
        const Sheet drawn(sheet);
        expectTextsRead(drawn);
        expectStrokesStandOut(drawn);
        expectCurvesApart(drawn,
                          ofAllRamps.contains(plain(sheet.name)) ? outcome->comparison.runs.size() : 0);
        Edges(drawn).expectSeen();
    }
}

TEST(GreyPrint, OfTheHeadlinePond) {
    expectReadInGrey(computed(scenario("grandfathers-pond"), 7));
}

TEST(GreyPrint, OfTheKoiPond) {
    expectReadInGrey(computed(scenario("courtyard-koi"), 6));
}

TEST(GreyPrint, OfTenRamps) {
    expectReadInGrey(computed(engine::test::withLongNamedRamps(scenario("new-clay"), 10), 4));
}

TEST(GreyPrint, TheScaleOfOxygenKeepsItsOrder) {
    const PlotStyle style = PlotStyle::light({});
    for (int i = 0; i < 20; ++i) {
        EXPECT_GT(lightness(depthOfColour(style, i / 20.0)),
                  lightness(depthOfColour(style, (i + 1) / 20.0)) + 1.5);
    }
}

// Each part of the budget is found in the list of names by its grey and its hatching.
TEST(GreyPrint, NoTwoPartsOfTheBudgetLookTheSame) {
    const OutcomePtr outcome = computed(scenario("spring-trout"), 3);
    for (const ChartSheet& sheet : allSheets(outcome)) {
        if (sheet.name != QLatin1String("budget")) {
            continue;
        }
        const Sheet drawn(sheet);
        const Edges edges(drawn);
        std::vector<std::size_t> samples;
        for (std::size_t i = 0; i < drawn.shapes().size(); ++i) {
            const QRectF box = drawn.shapes()[i].path.boundingRect();
            if (drawn.shapes()[i].fill && std::abs(box.width() - 14.0) < 0.01) {
                samples.push_back(i);
            }
        }
        ASSERT_GE(samples.size(), 6U) << "the names have samples";
        for (std::size_t i = 0; i < samples.size(); ++i) {
            for (std::size_t j = 0; j < i; ++j) {
                const double a = edges.hatching(samples[i]), b = edges.hatching(samples[j]);
                EXPECT_TRUE(std::max(a, b) > 0.01 + 1.5 * std::min(a, b) ||
                            apart(*drawn.shapes()[samples[i]].fill, *drawn.shapes()[samples[j]].fill) >=
                                kLinesApart)
                    << i << " and " << j;
            }
        }
    }
}

TEST(GreyPrint, PaleLinesSmallTextAndLikeCurvesAreSeen) {
    const Look blue{QColor(0, 0, 200), 2.0, {}}, green{QColor(0, 70, 30), 2.1, {}};
    EXPECT_EQ(areToldApart(blue, green), apart(blue.colour, green.colour) >= kLinesApart);
    EXPECT_FALSE(areToldApart(blue, {QColor(0, 0, 190), 2.0, {}}));
    EXPECT_TRUE(areToldApart(blue, {QColor(0, 0, 190), 2.0, {5.0, 3.0}}));
    EXPECT_NEAR(lightness(QColor(119, 119, 119)), 50.0, 0.1) << "the middle grey of sRGB";
}

}  // namespace
}  // namespace widgets
