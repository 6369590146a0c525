// Pictures of the window in the states that people see it in. They go to the folder that DAWNLINE_PICTURES
// names, to be looked at, or nowhere; either way nothing in them may be cut off.

#include "tests/window/driven.h"
#include "widgets/charts/owner_view.h"
#include "widgets/controls/theme.h"
#include "widgets/follow_up/after_start_page.h"
#include "widgets/follow_up/dawn_form.h"
#include "widgets/follow_up/import_dialog.h"
#include "widgets/follow_up/incident_page.h"
#include "widgets/follow_up/log_page.h"
#include "widgets/follow_up/review_page.h"
#include "widgets/follow_up/today_page.h"
#include "widgets/forms/first_pond_dialog.h"
#include "widgets/forms/forecast_dialog.h"
#include "widgets/forms/plan_page.h"
#include "widgets/forms/pond_page.h"
#include "widgets/papers/consultant_dialog.h"

#include <QAbstractButton>
#include <QClipboard>
#include <QLabel>
#include <QTabBar>

#include <gtest/gtest.h>

#include <array>

namespace app {
namespace {

using test::Driven;
using test::plain;
using test::scenario;

/// Every visible text that does not wrap or scroll has at least the room it asks for.
void expectNothingCutOff(const QWidget& window) {
    QCoreApplication::sendPostedEvents(nullptr, QEvent::LayoutRequest);  // of a text that came just now
    for (const QWidget* widget : window.findChildren<QWidget*>()) {
        const auto* label = qobject_cast<const QLabel*>(widget);
        const bool isText =
            (label != nullptr && !label->wordWrap()) || qobject_cast<const QAbstractButton*>(widget);
        if (isText && widget->isVisible()) {
            EXPECT_GE(widget->width() + 1, widget->minimumSizeHint().width())
                << widget->metaObject()->className() << " " << plain(widget->accessibleName());
            EXPECT_GE(widget->height() + 1, widget->minimumSizeHint().height())
                << widget->metaObject()->className() << " " << plain(widget->accessibleName());
        }
        if (label != nullptr && label->wordWrap() && widget->isVisible() && !label->text().isEmpty()) {
            EXPECT_GE(widget->height() + 1, label->heightForWidth(label->width())) << plain(label->text());
        }
    }
}

void take(Driven& driven, const char* name) {
    driven.window.resize(1366, 748);  // a laptop's screen without its panel
    ASSERT_TRUE(driven.waitUntilWhole());
    QTest::qWait(150);
    expectNothingCutOff(driven.window);
    EXPECT_LE(driven.window.minimumSizeHint().width(), 1366);
    EXPECT_LE(driven.window.minimumSizeHint().height(), 748);
    if (const QString folder = qEnvironmentVariable("DAWNLINE_PICTURES"); !folder.isEmpty()) {
        EXPECT_TRUE(
            driven.window.grab().save(folder + u'/' + QString::fromUtf8(name) + QStringLiteral(".png")));
    }
}

void edit(Driven& driven, const std::function<void(engine::Pond&)>& change) {
    const auto faults = driven.window.document().edit(QStringLiteral("edit"), change);
    ASSERT_TRUE(faults.empty()) << engine::format(faults.front());
}

void keep(const QWidget& widget, const std::string& name) {
    if (const QString folder = qEnvironmentVariable("DAWNLINE_PICTURES"); !folder.isEmpty()) {
        EXPECT_TRUE(const_cast<QWidget&>(widget).grab().save(folder + u'/' + QString::fromStdString(name) +
                                                             QStringLiteral(".png")));
    }
}

/// All views, one after the other, at two sizes.
void takeEveryView(Driven& driven, const std::string& prefix) {
    auto& page = driven.window.page();
    for (const QSize size : {QSize(1366, 748), QSize(2000, 1200)}) {
        driven.window.resize(size);
        for (int view = 0; view < page.viewCount(); ++view) {
            page.setView(view);
            QTest::qWait(60);
            expectNothingCutOff(driven.window);
            if (size.width() == 1366 || view % 3 == 0) {
                keep(driven.window,
                     prefix + plain(page.viewName(view)).c_str() + "-" + std::to_string(size.width()));
            }
        }
    }
}

/// Asks for members, and waits until those of all ramps are there.
bool waitForMembers(Driven& driven) {
    widgets::Recomputation& recomputation = driven.window.recomputation();
    recomputation.setMembers(64);
    return QTest::qWaitFor([&] { return recomputation.outcome() && recomputation.outcome()->hasAllMembers; },
                           test::kPatience_ms);
}

TEST(Pictures, EveryViewLightAndDarkAtTwoSizes) {
    Driven driven(scenario("grandfathers-pond.toml"), 14);
    ASSERT_TRUE(waitForMembers(driven));
    takeEveryView(driven, "view-light-");
    driven.trigger("Dark");
    takeEveryView(driven, "view-dark-");
    driven.trigger("Light");
}

TEST(Pictures, EverySectionOfThePond) {
    Driven driven(scenario("grandfathers-pond.toml"), 3);
    ASSERT_TRUE(driven.waitUntilWhole());
    driven.window.resize(1366, 748);
    driven.window.page().setPlace(widgets::Place::Pond);
    for (int section = 0; section < driven.window.pondPage().sectionCount(); ++section) {
        driven.window.pondPage().setSection(section);
        QTest::qWait(40);
        keep(driven.window, "pond-" + plain(driven.window.pondPage().sectionName(section)));
    }
    QApplication::clipboard()->setText(
        QStringLiteral("Sun 91/70 F, wind 8 mph, sunny\nMon 92/70 F, mostly sunny\nTue 84 F, showers\n"));
    widgets::ForecastDialog dialog(driven.window.document(), &driven.window);
    dialog.show();
    QTest::qWait(60);
    expectNothingCutOff(dialog);
    keep(dialog, "forecast");
}

TEST(Pictures, TheOwnersViewAndTheFirstPond) {
    Driven driven(scenario("grandfathers-pond.toml"), 14);
    ASSERT_TRUE(waitForMembers(driven));
    auto* owner = driven.window.showOwner();
    ASSERT_NE(owner, nullptr);
    owner->showNormal();
    for (const QSize size : {QSize(1366, 768), QSize(1920, 1080)}) {
        owner->resize(size);
        QTest::qWait(80);
        expectNothingCutOff(*owner);
        keep(*owner, "owner-" + std::to_string(size.width()));
    }
    owner->close();
    widgets::FirstPondDialog dialog(&driven.window);
    dialog.show();
    QTest::qWait(60);
    keep(dialog, "first-pond");
}

TEST(Pictures, TheHeadlinePondLightAndDark) {
    Driven driven(scenario("grandfathers-pond.toml"), 14);
    take(driven, "headline-light");
    driven.trigger("Dark");
    take(driven, "headline-dark");
    driven.trigger("Like the Desktop");
}

TEST(Pictures, FindingARampAndWhatToMeasure) {
    Driven driven(scenario("new-clay.toml"), 14);
    ASSERT_TRUE(driven.waitUntilWhole());
    driven.trigger("Find a Ramp\u2026");
    widgets::PlanPage* const dialog = &driven.window.plan();
    take(driven, "plan-before");
    if (!qEnvironmentVariableIsSet("DAWNLINE_PICTURES")) {
        return;  // the search at full resolution takes its time
    }
    dialog->find();
    ASSERT_TRUE(QTest::qWaitFor([&] { return !dialog->isRunning(); }, 2 * test::kPatience_ms));
    QTest::qWait(50);
    take(driven, "plan-after");
    driven.trigger("What to measure");
    ASSERT_TRUE(QTest::qWaitFor([&] { return driven.window.recomputation().outcome()->measured != nullptr; },
                                test::kPatience_ms));
    take(driven, "measure");
    driven.trigger("One night");
    driven.window.selection().setHours(widgets::Selection::Span{10.0, 20.0});
    take(driven, "night-zoomed");
}

TEST(Pictures, AllNightsOfARamp) {
    Driven driven(scenario("grandfathers-pond.toml"), 14);
    ASSERT_TRUE(driven.waitForCurves());
    driven.window.selection().setRamp(2);
    driven.window.selection().setMode(widgets::Selection::Mode::AllNights);
    take(driven, "all-nights");
}

TEST(Pictures, TheKoiPond) {
    Driven driven(scenario("courtyard-koi.toml"), 14);
    take(driven, "koi");
}

TEST(Pictures, OneRamp) {
    Driven driven(Driven::Writable{"new-clay.toml"}, 14);
    edit(driven, [](engine::Pond& pond) {
        pond.ramps.resize(1);
        pond.chosenRamp = pond.ramps.front().name;
    });
    take(driven, "one-ramp");
}

TEST(Pictures, TenRampsWithLongNames) {
    Driven driven(Driven::Writable{"grandfathers-pond.toml"}, 14);
    edit(driven, [](engine::Pond& pond) {
        pond.ramps.resize(4);
        for (int i = 5; i <= 10; ++i) {
            engine::Ramp ramp = pond.ramps[1];
            ramp.first_min = 8.0 * i;
            ramp.name = "doubling, a ramp whose name is long, number " + std::to_string(i);
            pond.ramps.push_back(ramp);
        }
    });
    take(driven, "ten-ramps");
}

TEST(Pictures, ReadingsOverTheCurves) {
    Driven driven(Driven::Writable{"grandfathers-pond.toml"}, 5);
    edit(driven, [](engine::Pond& pond) {
        const auto read = [&](int day, int hour, double depth, double oxygen) {
            engine::Reading reading;
            reading.at = engine::LocalTime(std::chrono::local_days(*pond.place.firstDay) +
                                           std::chrono::days(day - 1) + std::chrono::hours(hour));
            reading.depth = depth;
            reading.oxygen = oxygen;
            pond.readings.push_back(reading);
        };
        for (int day = 1; day <= 4; ++day) {
            read(day, 18, 0.5, 7.1);
            read(day + 1, 5, 0.5, 4.0);
            read(day + 1, 5, 2.5, 0.4);
        }
    });
    ASSERT_TRUE(driven.waitForCurves());
    driven.window.selection().setNight(2);
    take(driven, "readings");
}

/// A log of some weeks: dawns, a start, two treatments, a cut of the power, a stuck logger, a correction.
engine::Pond withLog(engine::Pond pond) {
    const auto at = [&](int day, int minutes) {
        return engine::LocalTime(std::chrono::local_days(*pond.place.firstDay) + std::chrono::days(day - 1) +
                                 std::chrono::minutes(minutes));
    };
    const auto read = [&](int day, double depth, double temperature, double oxygen) {
        engine::Reading reading;
        reading.at = at(day, 340 + static_cast<int>(depth));
        reading.depth = engine::Quantity(depth);
        reading.temperature = engine::Quantity(temperature);
        reading.oxygen = engine::Quantity(oxygen);
        pond.readings.push_back(reading);
    };
    const auto event = [&](int day, const char* kind) -> engine::Event& {
        engine::Event& made = pond.events.emplace_back();
        made.at = at(day, 540);
        made.kind = kind;
        return made;
    };
    // About what the central run of this ramp has, with what a meter adds.
    constexpr std::array kTop{4.9, 4.8, 4.1, 4.3, 3.6, 3.8, 2.9, 3.1, 4.0, 3.6, 3.7, 3.6};
    constexpr std::array kTopTemperature{26.0, 26.7, 27.2, 27.6, 25.8, 26.9,
                                         25.1, 25.5, 26.2, 26.4, 26.3, 26.5};
    constexpr std::array kBottomTemperature{20.1, 20.6, 20.3, 20.7, 21.3, 21.8,
                                            22.1, 22.1, 22.3, 23.1, 23.2, 23.4};
    for (int day = 1; day <= 12; ++day) {
        const auto i = static_cast<std::size_t>(day - 1);
        read(day, 0.5, kTopTemperature[i], kTop[i]);
        read(day, 0.6, kTopTemperature[i] - 0.1, kTop[i] - 0.1);
        read(day, 2.8, kBottomTemperature[i], 0.1);
    }
    pond.readings[3].smell = engine::Smell::Faint;
    pond.readings[3].fish = engine::FishBehaviour::OffFeed;
    pond.readings[3].note = "owner was there; thunder in the evening";
    engine::Reading right = pond.readings[4];
    right.corrects = right.at;
    right.oxygen = engine::Quantity(4.4);
    pond.readings.push_back(right);
    event(1, "started").ramp = pond.ramps[2].name;
    event(5, "power_cut");
    event(6, "power_back");
    engine::Event& dye = event(8, "treatment");
    dye.what = "dye";
    dye.cost = engine::Quantity(120.0);
    engine::Event& copper = event(11, "treatment");
    copper.what = "copper";
    copper.area_percent = engine::Quantity(25.0);
    engine::Event& bacteria = event(12, "not_bought");
    bacteria.what = "bacteria";
    bacteria.cost = engine::Quantity(400.0);
    return pond;
}

void typeVisit(widgets::DawnForm& form, std::array<const char*, 3> temperature,
               std::array<const char*, 3> oxygen) {
    const char* const names[3] = {"Surface", "Middle", "Bottom"};
    for (std::size_t i = 0; i < 3; ++i) {
        using widgets::test::fieldOf;
        widgets::test::type(fieldOf(form, (std::string(names[i]) + ": temperature").c_str()), temperature[i]);
        widgets::test::type(fieldOf(form, (std::string(names[i]) + ": oxygen").c_str()), oxygen[i]);
    }
}

TEST(Pictures, AfterTheStartLightAndDark) {
    Driven driven(Driven::Writable{"grandfathers-pond.toml"}, 3);
    edit(driven, [](engine::Pond& pond) { pond = withLog(pond); });
    auto& after = driven.window.afterStart();
    for (const char* theme : {"Light", "Dark"}) {
        driven.trigger(theme);
        const std::string suffix = std::string("-") + theme;
        driven.trigger("The Log");
        take(driven, ("after-log" + suffix).c_str());
        driven.trigger("Today: Go or Hold");
        typeVisit(*after.today().findChild<widgets::DawnForm*>(), {"26.6", "26.3", "23.6"},
                  {"4.6", "4.3", "0.1"});
        take(driven, ("after-today-before" + suffix).c_str());
        after.today().decide(false);
        ASSERT_TRUE(QTest::qWaitFor([&] { return !after.today().isRunning(); }, test::kPatience_ms));
        take(driven, ("after-today" + suffix).c_str());
        driven.trigger("Fish in Distress");
        typeVisit(*after.incident().findChild<widgets::DawnForm*>(), {"26.6", "26.3", "23.6"},
                  {"1.6", "1.3", "0.1"});
        after.incident().judge(false);
        ASSERT_TRUE(QTest::qWaitFor([&] { return !after.incident().isRunning(); }, test::kPatience_ms));
        take(driven, ("after-incident" + suffix).c_str());
    }
    widgets::ImportDialog dialog(driven.window.document(),
                                 "Logger 12\nDate;Time;Depth (ft);DO (ppm);Temp [degF];Battery\n"
                                 "15.06.2026;05:40;5;5,6;80;3,9\n15.06.2026;05:50;5;5,5;80;3,9\n",
                                 QStringLiteral("logger.csv"), &driven.window);
    dialog.show();
    QTest::qWait(60);
    keep(dialog, "after-import");
    dialog.hide();
    driven.trigger("Sixty Days Later");
    take(driven, "after-review-before");
    if (qEnvironmentVariableIsSet("DAWNLINE_PICTURES")) {
        for (const char* theme : {"Light", "Dark"}) {
            driven.trigger(theme);
            after.review().look();
            ASSERT_TRUE(QTest::qWaitFor([&] { return !after.review().isRunning(); }, 4 * test::kPatience_ms));
            take(driven, (std::string("after-review-") + theme).c_str());
        }
    }
    driven.trigger("Like the Desktop");
    driven.window.document().undoStack().setClean();
}

TEST(Pictures, WhosePapersTheyAreLightAndDark) {
    Driven driven;
    engine::Consultant who;
    who.business = "Still Water Pond Care";
    who.name = "A. B\u00f6hm";
    who.address = {"1 Bank Road", "Weir"};
    who.currency = "USD";
    who.prices = {{"Site visit with profile", "each", 240.0}, {"Plan and papers", "", std::nullopt}};
    who.exclusions = {"permits", "electrical work"};
    for (const char* theme : {"Light", "Dark"}) {
        driven.trigger(theme);
        widgets::ConsultantDialog dialog(who, driven.folder.path() / "consultant.toml", &driven.window);
        dialog.show();
        QTest::qWait(60);
        expectNothingCutOff(dialog);
        EXPECT_LE(dialog.height(), 748);
        keep(dialog, std::string("consultant-") + theme);
        widgets::test::typeOnly(widgets::test::fieldOf(dialog, "Logo"), "logo.png");
        widgets::test::button(dialog, "Save")->click();
        QTest::qWait(60);
        expectNothingCutOff(dialog);
        keep(dialog, std::string("consultant-refused-") + theme);
    }
    driven.trigger("Like the Desktop");
}

TEST(Pictures, ABadFileAndAnEmptyWindow) {
    Driven driven;
    if (const QString folder = qEnvironmentVariable("DAWNLINE_PICTURES"); !folder.isEmpty()) {
        EXPECT_TRUE(driven.window.grab().save(folder + QStringLiteral("/empty.png")));
    }
    driven.window.open(scenario("new-clay.toml"));
    ASSERT_TRUE(driven.waitForCurves());
    driven.window.open(
        driven.folder.write("bad.toml", "format = 1\ntitle = 3\n[basin]\narea_m2 = -5\ndepth = 3\n"));
    take(driven, "bad-file");
}

}  // namespace
}  // namespace app
