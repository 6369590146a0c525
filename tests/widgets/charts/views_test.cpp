// Every view beside the night: its sentence, its text alternative, its numbers and its drawing on paper.

#include "engine/advice/advice.h"
#include "engine/ensemble/chances.h"
#include "engine/ensemble/measure.h"
#include "engine/ensemble/site_visit.h"
#include "engine/pond/pond_io.h"
#include "tests/pond_texts.h"
#include "tests/widgets/typing.h"
#include "widgets/charts/night_plot.h"
#include "widgets/charts/picture.h"
#include "widgets/charts/picture_view.h"
#include "widgets/charts/sheets.h"
#include "widgets/document/recomputation.h"

#include <QImage>
#include <QSvgRenderer>
#include <QToolTip>

#include <gtest/gtest.h>

#include <cmath>

namespace widgets {
namespace {

using test::plain;

/// Three nights of the plain pond with a few members, computed once.
const OutcomePtr& computed() {
    static const OutcomePtr outcome = [] {
        const auto reading = engine::readPondText(engine::test::kPlainPond, "plain.toml");
        return std::make_shared<const Outcome>(
            withAnswer(withMembers(outcomeOf(*reading.pond, 3, true), 16, true)));
    }();
    return outcome;
}

/// The same with what to measure, which takes longer.
const OutcomePtr& measuredToo() {
    static const OutcomePtr outcome = std::make_shared<const Outcome>(withMeasured(*computed(), 100));
    return outcome;
}

struct Looking {
    Looking() {
        selection.setExtent(computed()->comparison.days, computed()->comparison.runs.size());
        selection.setRamp(2);
        selection.setNight(2);
    }
    Selection selection;
};

const ViewKind& kindOf(const char* id) {
    for (const ViewKind& kind : viewKinds()) {
        if (std::string_view(kind.id) == id) {
            return kind;
        }
    }
    throw std::runtime_error(id);
}

std::size_t linesOf(const std::string& csv) {
    return static_cast<std::size_t>(std::count(csv.begin(), csv.end(), '\n'));
}

TEST(Views, EachHasASentenceWordsNumbersAndADrawingForPaper) {
    const Looking looking;
    for (const ViewKind& kind : viewKinds()) {
        SCOPED_TRACE(kind.id);
        const ChartSheet sheet = sheetOf(kind, measuredToo(), looking.selection);
        EXPECT_FALSE(sheet.headline.isEmpty());
        EXPECT_FALSE(sheet.headline.contains(QStringLiteral("%1"))) << plain(sheet.headline);
        EXPECT_TRUE(sheet.words.startsWith(sheet.headline)) << "the words begin with what is seen first";
        EXPECT_FALSE(sheet.words.contains(QStringLiteral("%1"))) << plain(sheet.words);
        EXPECT_GT(linesOf(sheet.csv), 3U);
        EXPECT_EQ(sheet.csv.find(",nan"), std::string::npos);
        EXPECT_NE(sheet.csv.find("\r\n"), std::string::npos);
        const QImage image = imageOf(sheet);
        int inked = 0;
        for (int y = 0; y < image.height(); y += 7) {
            for (int x = 0; x < image.width(); x += 7) {
                inked += image.pixelColor(x, y) != image.pixelColor(0, 0) ? 1 : 0;
            }
        }
        EXPECT_GT(inked, 500) << "something is drawn";
        QSvgRenderer drawing(svgOf(sheet));
        EXPECT_TRUE(drawing.isValid());
    }
}

TEST(Views, AreDrawnForAPondWithoutRampsToo) {
    const auto reading = engine::readPondText(engine::test::kPlainPond, "plain.toml");
    engine::Pond pond = *reading.pond;
    pond.ramps.clear();
    pond.chosenRamp.clear();
    const auto outcome = std::make_shared<const Outcome>(outcomeOf(pond, 2, true));
    Selection selection;
    selection.setExtent(2, 1);
    for (const ViewKind& kind : viewKinds()) {
        SCOPED_TRACE(kind.id);
        const ChartSheet sheet = sheetOf(kind, outcome, selection);
        EXPECT_FALSE(sheet.headline.isEmpty());
        EXPECT_FALSE(imageOf(sheet).isNull());
    }
}

TEST(Views, TheHoursBelowAreThoseOfTheCurves) {
    const Looking looking;
    const engine::RampRun& run = computed()->comparison.runs[2];
    const double stress = computed()->comparison.model.parameters.thresholds.stress;
    int below = 0;
    for (const engine::HourRow& hour : run.hours) {
        below += hour.fishWater < stress && hour.time >= 12 * 3600.0 ? 1 : 0;
    }
    const Picture picture = hoursPicture(computed(), looking.selection);
    if (below == 0) {
        EXPECT_NE(plain(picture.headline).find("stays above"), std::string::npos);
    } else {
        EXPECT_NE(plain(picture.headline).find(std::to_string(below) + " hours"), std::string::npos)
            << plain(picture.headline);
    }
}

TEST(Views, WhatToMeasureSaysTheGreatestShareFirst) {
    const Looking looking;
    const engine::MeasureResult& result = *measuredToo()->measured;
    const Picture picture = measurePicture(measuredToo(), looking.selection);
    const std::string headline = plain(picture.headline);
    EXPECT_NE(headline.find(engine::inputWords(result.inputs.front().name)), std::string::npos) << headline;
    EXPECT_NE(headline.find(std::to_string(std::lround(100.0 * result.inputs.front().share)) + " %"),
              std::string::npos)
        << headline;
    EXPECT_EQ(picture.csv(), engine::measureFiles(result).front().text);
    const Picture pending = measurePicture(computed(), looking.selection);
    const QString asked = QLocale().toString(engine::kMembersToMeasure) + QStringLiteral(" ponds");
    EXPECT_TRUE(pending.headline.contains(asked)) << plain(pending.headline);
}

TEST(Views, TheNightZoomsInHoursAndInHeight) {
    Looking looking;
    NightPlot view(looking.selection);
    view.setOutcome(computed());
    view.resize(700, 400);
    view.show();
    QTest::qWait(20);
    const double top = view.scene().top;
    QTest::keyClick(&view, Qt::Key_Plus);
    QTest::keyClick(&view, Qt::Key_Plus);
    QTest::keyClick(&view, Qt::Key_Plus);
    ASSERT_TRUE(looking.selection.hours());
    EXPECT_NEAR(looking.selection.hours()->to - looking.selection.hours()->from, 24.0 * 0.7 * 0.7 * 0.7,
                1e-9);
    EXPECT_LE(view.scene().top, top);
    EXPECT_DOUBLE_EQ(view.scene().from, looking.selection.hours()->from);
    looking.selection.setNight(1);
    EXPECT_TRUE(looking.selection.hours()) << "stays from night to night";
    looking.selection.setHours(Selection::Span{20.0, 21.0});
    EXPECT_EQ(*looking.selection.hours(), (Selection::Span{20.0, 23.0})) << "three hours at least";
    looking.selection.setNight(2);
    QTest::keyClick(&view, Qt::Key_0);
    EXPECT_FALSE(looking.selection.hours());
    EXPECT_DOUBLE_EQ(view.scene().top, top);
}

TEST(Views, ColoursOfTheScaleAreEvenlyApart) {
    // Neighbouring steps differ by the same in lightness, measured back through sRGB's own luminance.
    for (const PlotStyle& style : {PlotStyle::light({}), PlotStyle::dark({})}) {
        const auto lightness = [&](double share) {
            const QColor colour = depthOfColour(style, share);
            const auto linear = [](float channel) {
                const double c = static_cast<double>(channel);
                return c <= 0.04045 ? c / 12.92 : std::pow((c + 0.055) / 1.055, 2.4);
            };
            const double y = 0.2126 * linear(colour.redF()) + 0.7152 * linear(colour.greenF()) +
                             0.0722 * linear(colour.blueF());
            return y > 0.008856 ? 116.0 * std::cbrt(y) - 16.0 : 903.3 * y;  // CIE 1976 L*
        };
        const double whole = lightness(1.0) - lightness(0.0);
        EXPECT_GT(std::abs(whole), 50.0);
        for (int i = 0; i < 10; ++i) {
            EXPECT_NEAR(lightness((i + 1) / 10.0) - lightness(i / 10.0), whole / 10.0, 0.6) << i;
        }
    }
}

TEST(Views, KeysMoveTheCursorZoomAndPutBothAway) {
    Looking looking;
    PictureView view(kindOf("debt"), looking.selection);
    view.setOutcome(computed());
    view.resize(700, 400);
    test::showActive(view);
    view.setFocus();
    QTest::keyClick(&view, Qt::Key_Right, Qt::ShiftModifier);
    ASSERT_TRUE(looking.selection.cursor());
    const double before = *looking.selection.cursor();
    QTest::keyClick(&view, Qt::Key_Right, Qt::ShiftModifier);
    EXPECT_DOUBLE_EQ(*looking.selection.cursor(), before + 3600.0);
    EXPECT_FALSE(view.readAt(*looking.selection.cursor()).isEmpty());
    QTest::keyClick(&view, Qt::Key_Plus);
    ASSERT_TRUE(looking.selection.span());
    const double width = looking.selection.span()->to - looking.selection.span()->from;
    QTest::keyClick(&view, Qt::Key_Plus);
    EXPECT_LT(looking.selection.span()->to - looking.selection.span()->from, width);
    QTest::keyClick(&view, Qt::Key_Escape);
    EXPECT_FALSE(looking.selection.span());
    EXPECT_FALSE(looking.selection.cursor());
    const int night = looking.selection.night();
    QTest::keyClick(&view, Qt::Key_Left);
    EXPECT_EQ(looking.selection.night(), night - 1);
}

TEST(Views, AHiddenRampIsInNoPicture) {
    Looking looking;
    looking.selection.setHidden(computed()->comparison.runs[1].name, true);
    EXPECT_EQ(drawingOrder(computed()->comparison, looking.selection), (std::vector<std::size_t>{0, 3, 2}));
    const NightScene scene = nightScene(*computed(), looking.selection);
    EXPECT_EQ(scene.lines.size(), 3U);
}

TEST(Views, TheBandOfTheNightHoldsItsMembers) {
    const Looking looking;
    const NightScene scene = nightScene(*computed(), looking.selection);
    ASSERT_EQ(scene.bands.size(), 1U) << "of the selected ramp alone";
    for (const NightBand& band : scene.bands) {
        ASSERT_EQ(band.hour.size(), 25U);
        for (std::size_t i = 0; i < band.hour.size(); ++i) {
            EXPECT_LE(band.low[i], band.high[i]);
        }
    }
    const engine::RampEnsemble* members = engine::membersOf(computed()->comparison, 2);
    const double noon = 1.5 * 86400.0;
    const auto at =
        std::find(members->hours.begin(), members->hours.end(), noon + 17 * 3600.0) - members->hours.begin();
    EXPECT_DOUBLE_EQ(scene.bands[0].low[17], members->fishWater[static_cast<std::size_t>(at)].front());
    EXPECT_NE(plain(scene.detail).find("Of 100 ponds like this one"), std::string::npos);
}

TEST(Views, MonthsSayWhenAStartMayBeAndWhatIsNotWorkedOut) {
    const Looking at;
    const ViewKind& months = kindOf("months");
    Outcome outcome = *computed();
    outcome.answer.reset();
    EXPECT_EQ(plain(months.make(std::make_shared<const Outcome>(outcome), at.selection).headline),
              "Working out the months.");
    engine::Advice advice;
    advice.run = 1;
    advice.ramp = "at once";
    for (int month = 6; month < 18; ++month) {
        engine::MonthOfStart one;
        one.from = std::chrono::year(month > 12 ? 2027 : 2026) /
                   std::chrono::month(static_cast<unsigned>((month - 1) % 12 + 1)) / 15;
        one.isIcy = month == 13;
        one.lethal = 0.4;
        one.lethalAlone = 0.25;
        if (month != 10 && month != 11) {
            one.unmet = {{engine::StartCondition::LethalWith, 40.0, 5.0, 0}};
        }
        advice.calendar.months.push_back(one);
    }
    outcome.answer = std::make_shared<const engine::Advice>(advice);
    const Picture picture = months.make(std::make_shared<const Outcome>(outcome), at.selection);
    const std::string headline = plain(picture.headline);
    EXPECT_NE(headline.find("\"at once\""), std::string::npos) << headline;
    EXPECT_NE(headline.find("October"), std::string::npos) << headline;
    EXPECT_NE(headline.find("November"), std::string::npos) << headline;
    EXPECT_EQ(headline.find("December"), std::string::npos) << headline;
    EXPECT_NE(plain(picture.words).find("January: ice"), std::string::npos) << plain(picture.words);
    EXPECT_NE(picture.csv().find("at once,2026-10-15,no"), std::string::npos);
    advice.calendar.months.resize(2);
    outcome.answer = std::make_shared<const engine::Advice>(advice);
    EXPECT_TRUE(plain(months.make(std::make_shared<const Outcome>(outcome), at.selection).headline)
                    .starts_with("In no month"));
}

}  // namespace
}  // namespace widgets
