#include "engine/output/picture_tables.h"
#include "engine/run/nights.h"
#include "engine/wording/wording.h"
#include "tests/made_up_comparison.h"
#include "tests/temporary_folder.h"
#include "tests/widgets/typing.h"
#include "widgets/charts/chart_export.h"
#include "widgets/charts/chart_parts.h"
#include "widgets/charts/dawn_lows_plot.h"
#include "widgets/charts/label_layout.h"
#include "widgets/charts/night_plot.h"
#include "widgets/charts/sheets.h"
#include "widgets/charts/whole_run_plot.h"
#include "widgets/document/wording.h"

#include <QImage>
#include <QMimeData>
#include <QPainter>
#include <QSvgRenderer>

#include <gtest/gtest.h>

#include <cmath>

namespace widgets {
namespace {

using test::plain;

/// Two nights of made-up numbers; the hours go through both in a sine.
OutcomePtr madeUp() {
    Outcome outcome;
    outcome.comparison = engine::test::madeUpComparison();
    for (engine::RampRun& run : outcome.comparison.runs) {
        run.hours.clear();
        run.layers.clear();
        for (int hour = -6; hour <= 60; ++hour) {
            engine::HourRow row;
            row.time = hour * 3600.0;
            row.fishWater = 6.0 + 2.0 * std::sin(hour / 24.0 * 6.28);
            run.hours.push_back(row);
        }
    }
    outcome.backdrop = engine::backdropOf(outcome.comparison.model, 2);
    return std::make_shared<const Outcome>(std::move(outcome));
}

Selection* selectionOf(const OutcomePtr& outcome, QObject& owner) {
    auto* selection = new Selection(&owner);
    selection->setExtent(outcome->comparison.days, outcome->comparison.runs.size());
    return selection;
}

TEST(LabelLayout, LabelsWithRoomStayWhereTheyAre) {
    EXPECT_EQ(spreadApart({30, 10, 50}, 12, 0, 100), (std::vector<double>{30, 10, 50}));
    EXPECT_TRUE(spreadApart({}, 12, 0, 100).empty());
}

TEST(LabelLayout, LabelsThatTouchShareTheWay) {
    EXPECT_EQ(spreadApart({50, 50}, 12, 0, 100), (std::vector<double>{44, 56}));
    EXPECT_EQ(spreadApart({0, 2}, 12, 0, 100), (std::vector<double>{0, 12})) << "the end of the line holds";
    EXPECT_EQ(spreadApart({99, 100}, 12, 0, 100), (std::vector<double>{88, 100}));
}

TEST(LabelLayout, WhereTheLineIsTooShortTheGapGivesWay) {
    const auto places = spreadApart({5, 5, 5, 5}, 12, 0, 18);
    EXPECT_EQ(places, (std::vector<double>{0, 6, 12, 18}));
}

TEST(Cut, ALineIsCutWhereItLeavesTheRectangle) {
    const QRectF inside(0, 0, 10, 10);
    const auto pieces = cut({{-5, 5}, {5, 5}, {5, 15}, {8, 15}, {8, 5}}, inside);
    ASSERT_EQ(pieces.size(), 2U);
    EXPECT_EQ(pieces[0], (std::vector<QPointF>{{0, 5}, {5, 5}, {5, 10}}));
    EXPECT_EQ(pieces[1], (std::vector<QPointF>{{8, 10}, {8, 5}}));
    EXPECT_TRUE(cut({{20, 0}, {20, 10}}, inside).empty());
    EXPECT_EQ(cut({{1, 1}, {2, 2}, {3, 1}}, inside).size(), 1U);
}

TEST(PlotStyle, TextOfEveryLineCanBeReadOnItsPaper) {
    for (const PlotStyle& style : {PlotStyle::light({}), PlotStyle::dark({})}) {
        for (std::size_t i = 0; i < 14; ++i) {
            EXPECT_GE(contrast(style.textColour(i), style.paper), 4.5) << "line " << i;
        }
        EXPECT_GE(contrast(style.ink, style.paper), 7.0);
        EXPECT_GE(contrast(style.quietInk, style.paper), 4.5);
        EXPECT_GE(contrast(style.stressInk, style.stress), 4.5);
        EXPECT_GE(contrast(style.lethalInk, style.lethal), 4.5);
    }
}

TEST(PlotStyle, InkIsDoNothingsAloneAndNoTwoOfTwelveRampsLookAlike) {
    const PlotStyle style = PlotStyle::light({});
    for (std::size_t i = 1; i <= 12; ++i) {
        EXPECT_NE(style.lineColour(i), style.lineColour(0));
        for (std::size_t j = 1; j < i; ++j) {
            const QPen a = style.linePen(i, false), b = style.linePen(j, false);
            EXPECT_TRUE(a.color() != b.color() || a.dashPattern() != b.dashPattern()) << i << " and " << j;
        }
    }
    EXPECT_EQ(style.lineColour(7), style.lineColour(1)) << "colours repeat after the sixth";
    EXPECT_NE(style.linePen(2, false).dashPattern(), style.linePen(3, false).dashPattern())
        << "neighbours differ on a photocopy";
}

TEST(Wording, TheWindowsEnglishIsTheCommandLines) {
    const auto sentences = engine::sentencesOf(madeUp()->comparison);
    ASSERT_GT(sentences.size(), 20U);
    for (const engine::Sentence& sentence : sentences) {
        EXPECT_EQ(plain(localized(sentence)), engine::english(sentence));
    }
}

TEST(Wording, NumbersHaveTheLocalesSignAndNamesAreLeftAlone) {
    QLocale::setDefault(QLocale(QLocale::German, QLocale::Germany));
    const engine::Sentence sentence{engine::SentencePart::Night,
                                    engine::SentenceKey::NightLowest,
                                    {{"ramp", engine::Measure::Text, 0.0, "1.5 h"},
                                     {"low", engine::Measure::Oxygen, 2.06, {}},
                                     {"crosses", engine::Measure::Term, 0.0, "crosses-stress"}}};
    EXPECT_EQ(plain(localized(sentence)),
              "The lowest ramp is \"1.5 h\" with 2,1 mg/L, below the stress line.");
    QLocale::setDefault(QLocale::c());
}

TEST(NightScene, HoldsEveryLineFromNoonToNoonThroughItsLow) {
    QObject owner;
    const OutcomePtr outcome = madeUp();
    Selection& selection = *selectionOf(outcome, owner);
    selection.setNight(2);
    selection.setRamp(2);
    const NightScene scene = nightScene(*outcome, selection);
    ASSERT_EQ(scene.lines.size(), 4U);
    for (const NightLine& line : scene.lines) {
        EXPECT_EQ(line.hour.size(), 26U) << "25 hours and the low";
        EXPECT_DOUBLE_EQ(line.hour.front(), 0.0);
        EXPECT_DOUBLE_EQ(line.hour.back(), 24.0);
        EXPECT_TRUE(std::is_sorted(line.hour.begin(), line.hour.end()));
        EXPECT_NE(std::find(line.oxygen.begin(), line.oxygen.end(), line.low), line.oxygen.end());
    }
    EXPECT_EQ(scene.lines.back().look, 2U) << "the selected ramp is drawn over the others";
    EXPECT_TRUE(scene.lines.back().isHeavy);
    EXPECT_DOUBLE_EQ(scene.stress, 5.0);
    EXPECT_TRUE(scene.criteria.empty()) << "only where they are asked for";
    EXPECT_EQ(nightScene(*outcome, selection, {true, false}).criteria.size(), 2U);
}

TEST(NightScene, TheReadingOfTheNightIsThereAndNoOther) {
    QObject owner;
    const OutcomePtr outcome = madeUp();  // a reading at 05:40 of 14 June belongs to the night before night 1
    Selection& selection = *selectionOf(outcome, owner);
    EXPECT_TRUE(nightScene(*outcome, selection).readings.empty());
    auto later = std::make_shared<Outcome>(*outcome);
    later->comparison.model.pond.readings.front().at =
        *later->comparison.model.pond.readings.front().at + std::chrono::days(1);
    const NightScene scene = nightScene(*later, selection);
    ASSERT_EQ(scene.readings.size(), 1U);
    EXPECT_NEAR(scene.readings[0].hour, 17.0 + 40.0 / 60.0, 1e-9);
    EXPECT_DOUBLE_EQ(scene.readings[0].error, 0.2);
    EXPECT_FALSE(scene.readings[0].isDeep);
    EXPECT_NE(plain(inWords(scene)).find("Read at 05:40, 0.5 m down: 5.1 mg/L"), std::string::npos);
}

TEST(NightScene, AllNightsOfARampHaveTheShownOneOnTop) {
    QObject owner;
    const OutcomePtr outcome = madeUp();
    Selection& selection = *selectionOf(outcome, owner);
    selection.setMode(Selection::Mode::AllNights);
    selection.setRamp(1);
    const NightScene scene = nightScene(*outcome, selection);
    ASSERT_EQ(scene.lines.size(), 3U);  // the other night, do-nothing, the shown night
    EXPECT_EQ(plain(scene.lines.back().name), "night 1");
    EXPECT_TRUE(scene.lines.back().isHeavy);
    EXPECT_EQ(scene.lines[1].look, 0U);
}

TEST(NightScene, TheAxisFitsItsNightAndKeepsStillWhileNightsArePlayed) {
    QObject owner;
    auto outcome = std::make_shared<Outcome>(*madeUp());
    for (engine::HourRow& hour : outcome->comparison.runs[1].hours) {
        hour.fishWater = std::abs(hour.time - engine::noonOf(2) - 6 * 3600.0) < 1.0 ? 11.3 : hour.fishWater;
    }
    Selection& selection = *selectionOf(outcome, owner);
    EXPECT_LT(nightScene(*outcome, selection).top, 11.0);
    EXPECT_DOUBLE_EQ(nightScene(*outcome, selection, {false, true}).top, 12.0);
    selection.setNight(2);
    EXPECT_DOUBLE_EQ(nightScene(*outcome, selection).top, 12.0);
}

/// Smallest rectangle around all pixels of about a colour.
QRect extentOf(const QImage& image, const QColor& colour, int tolerance) {
    QRect extent;
    for (int y = 0; y < image.height(); ++y) {
        for (int x = 0; x < image.width(); ++x) {
            const QColor pixel = image.pixelColor(x, y);
            if (std::abs(pixel.red() - colour.red()) <= tolerance &&
                std::abs(pixel.green() - colour.green()) <= tolerance &&
                std::abs(pixel.blue() - colour.blue()) <= tolerance) {
                extent |= QRect(x, y, 1, 1);
            }
        }
    }
    return extent;
}

// Qt's SVG writer leaves clipping out, so a curve that runs past its axes would be drawn over the texts.
TEST(Export, ACurvePastTheAxesIsCutInTheDrawing) {
    NightScene scene;
    scene.sunset = scene.civilDusk = scene.nauticalDusk = 0.0;
    scene.sunrise = scene.civilDawn = scene.nauticalDawn = 24.0;
    scene.top = 3.0;
    NightLine line;
    line.look = 1;
    line.isHeavy = true;
    line.isLowSaid = true;
    line.hour = {0, 6, 12, 18, 24};
    line.oxygen = {1, 9, 1, 9, 9};
    line.low = 9;
    line.lowHour = 18;
    line.name = QStringLiteral("past the axes");
    scene.lines.push_back(line);
    ChartSheet sheet;
    sheet.draw = [scene](QCustomPlot& plot, const PlotStyle& style) { drawNight(plot, scene, style); };
    QSvgRenderer renderer(svgOf(sheet));
    ASSERT_TRUE(renderer.isValid());
    QImage image(renderer.defaultSize() * 2, QImage::Format_RGB32);
    QPainter painter(&image);
    renderer.render(&painter);
    painter.end();
    const PlotStyle style = PlotStyle::light({});
    const QRect axes = extentOf(image, style.night[2], 0), curve = extentOf(image, style.lineColour(1), 24);
    ASSERT_GT(axes.width(), 400);
    ASSERT_GT(curve.height(), 100) << "the curve is drawn";
    EXPECT_TRUE(axes.adjusted(-3, -3, 3, 3).contains(curve))
        << curve.top() << " to " << curve.bottom() << " of " << axes.top() << " to " << axes.bottom();
}

TEST(Export, APictureHas300DotsAnInchAndItsTextAlternative) {
    QObject owner;
    const OutcomePtr outcome = madeUp();
    const ChartSheet sheet = nightSheet(outcome, *selectionOf(outcome, owner), true);
    const QImage image = QImage::fromData(pngOf(sheet));
    ASSERT_FALSE(image.isNull());
    EXPECT_NEAR(image.dotsPerMeterX() * 0.0254, 300.0, 0.1);
    EXPECT_EQ(image.width(), 1875);  // 600 px of 96 an inch
    EXPECT_NE(plain(image.text(QStringLiteral("Description"))).find("Stress line 5.0 mg/L"),
              std::string::npos);
    EXPECT_NE(plain(sheet.foot).find("not a prediction of survival"), std::string::npos);
}

TEST(Export, APictureIsLightWhateverTheThemeOfTheWindow) {
    QObject owner;
    const OutcomePtr outcome = madeUp();
    const QPalette before = QApplication::palette();
    const QByteArray light = pngOf(nightSheet(outcome, *selectionOf(outcome, owner), true));
    QPalette dark;
    dark.setColor(QPalette::Window, Qt::black);
    dark.setColor(QPalette::WindowText, Qt::white);
    QApplication::setPalette(dark);
    EXPECT_EQ(pngOf(nightSheet(outcome, *selectionOf(outcome, owner), true)), light);
    QApplication::setPalette(before);
}

TEST(Export, NumbersAreThoseOfThePicture) {
    QObject owner;
    const OutcomePtr outcome = madeUp();
    Selection& selection = *selectionOf(outcome, owner);
    selection.setNight(2);
    const std::string csv = nightCsv(*outcome, selection);
    EXPECT_EQ(csv.substr(0, csv.find('\n')),
              "line,night,time_h,fish_water_mg_per_l,fish_water_p05,fish_water_p95\r");
    EXPECT_NE(csv.find("at once,2,53.66111111111111,3.25,,\r\n"), std::string::npos) << csv;
    const std::string lows = engine::nightLowsCsv(outcome->comparison);
    EXPECT_NE(lows.find("gentle,2,2026-06-15,3.25,53.66111111111111,5.25\r\n"), std::string::npos) << lows;
    EXPECT_NE(engine::wholeRunCsv(outcome->comparison, outcome->backdrop).find("do-nothing,0,6,0,"),
              std::string::npos);
}

TEST(Export, TheEndingOfTheNameDecides) {
    const engine::test::TemporaryFolder folder;
    QObject owner;
    const OutcomePtr outcome = madeUp();
    const ChartSheet sheet = dawnLowsSheet(outcome, *selectionOf(outcome, owner), true);
    for (const char* name : {"a.png", "a.SVG", "a.csv"}) {
        EXPECT_FALSE(saveSheet(sheet, folder.path() / name)) << name;
        EXPECT_TRUE(std::filesystem::exists(folder.path() / name)) << name;
    }
    const auto fault = saveSheet(sheet, folder.path() / "a.bmp");
    ASSERT_TRUE(fault);
    EXPECT_NE(plain(*fault).find("must end in .png, .svg or .csv"), std::string::npos);
    EXPECT_TRUE(saveSheet(sheet, folder.path() / "missing" / "a.png"));
}

TEST(Export, TheClipboardGetsPictureDrawingAndWords) {
    QObject owner;
    const OutcomePtr outcome = madeUp();
    const std::unique_ptr<QMimeData> clipping(
        clippingOf(wholeRunSheet(outcome, *selectionOf(outcome, owner))));
    EXPECT_TRUE(clipping->hasImage());
    EXPECT_TRUE(clipping->data(QStringLiteral("image/svg+xml")).contains("<svg"));
    EXPECT_TRUE(clipping->text().contains(QStringLiteral("The whole run")));
}

/// Median of some drawings of a chart [ms].
double drawing_ms(ChartView& view) {
    std::vector<double> times;
    for (int i = 0; i < 9; ++i) {
        view.resize(view.width() + (i % 2 == 0 ? 1 : -1), view.height());
        QTest::qWait(5);
        times.push_back(view.lastReplot_ms());
    }
    std::nth_element(times.begin(), times.begin() + 4, times.end());
    return times[4];
}

/// Sixty days of hours that go up and down steeply.
OutcomePtr longRun() {
    auto outcome = std::make_shared<Outcome>(*madeUp());
    for (engine::RampRun& run : outcome->comparison.runs) {
        run.hours.clear();
        for (int hour = 0; hour <= 60 * 24; ++hour) {
            engine::HourRow row;
            row.time = hour * 3600.0;
            row.fishWater = 5.0 + 4.0 * std::sin(hour * 1.7);
            run.hours.push_back(row);
        }
    }
    outcome->comparison.days = 60;
    outcome->backdrop = engine::backdropOf(outcome->comparison.model, 60);
    return outcome;
}

TEST(WholeRun, IsDrawnQuicklyWithPensWiderThanAPixel) {
    QObject owner;
    const OutcomePtr outcome = longRun();
    WholeRunPlot view(*selectionOf(outcome, owner));
    view.resize(1600, 1000);
    view.setOutcome(outcome);
    view.show();
    const double time = drawing_ms(view);
    RecordProperty("drawing_ms", std::to_string(time));
    EXPECT_GT(time, 0.0);
    EXPECT_LT(time, 300.0);  // without QCP::phFastPolylines: 10 s on the same machine
}

TEST(Night, SaysItselfInWordsAndGoesByArrowKeys) {
    QObject owner;
    const OutcomePtr outcome = madeUp();
    Selection& selection = *selectionOf(outcome, owner);
    NightPlot view(selection);
    view.resize(900, 400);
    view.setOutcome(outcome);
    view.show();
    EXPECT_EQ(plain(view.accessibleName()), "The night");
    EXPECT_NE(plain(view.accessibleDescription()).find("night 1, 14 June to 15 June"), std::string::npos)
        << plain(view.accessibleDescription());
    QTest::keyClick(&view, Qt::Key_Right);
    EXPECT_EQ(selection.night(), 2);
    EXPECT_NE(plain(view.accessibleDescription()).find("with 3.2 mg/L"), std::string::npos);
    QTest::keyClick(&view, Qt::Key_Right);
    EXPECT_EQ(selection.night(), 2) << "there is no third night";
    QTest::keyClick(&view, Qt::Key_Left);
    EXPECT_EQ(selection.night(), 1);
}

TEST(Lows, AClickChoosesTheNight) {
    QObject owner;
    const OutcomePtr outcome = madeUp();
    Selection& selection = *selectionOf(outcome, owner);
    DawnLowsPlot view(selection);
    view.resize(800, 140);
    view.setOutcome(outcome);
    view.show();
    QTest::qWait(50);
    auto* inner = view.findChild<QWidget*>();
    QTest::mouseClick(inner, Qt::LeftButton, {}, QPoint(600, 70));
    EXPECT_EQ(selection.night(), 2);
    QTest::mouseClick(inner, Qt::LeftButton, {}, QPoint(200, 70));
    EXPECT_EQ(selection.night(), 1);
}

TEST(WholeRun, AClickChoosesTheNight) {
    QObject owner;
    const OutcomePtr outcome = madeUp();
    Selection& selection = *selectionOf(outcome, owner);
    WholeRunPlot view(selection);
    view.resize(800, 240);
    view.setOutcome(outcome);
    view.show();
    QTest::qWait(50);
    auto* inner = view.findChild<QWidget*>();
    QTest::mouseClick(inner, Qt::LeftButton, {}, QPoint(780, 60));
    EXPECT_EQ(selection.night(), 2);
    QTest::mouseClick(inner, Qt::LeftButton, {}, QPoint(360, 60));
    EXPECT_EQ(selection.night(), 1);
}

}  // namespace
}  // namespace widgets
