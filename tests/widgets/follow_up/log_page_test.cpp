// The log's panel as a user drives it.

#include "widgets/follow_up/log_page.h"

#include "engine/follow_up/log_chain.h"
#include "engine/pond/pond_io.h"
#include "engine/ramps/log.h"
#include "tests/widgets/typing.h"
#include "widgets/follow_up/correction_dialog.h"
#include "widgets/follow_up/dawn_form.h"
#include "widgets/follow_up/event_form.h"
#include "widgets/follow_up/import_dialog.h"
#include "widgets/follow_up/log_entry.h"
#include "widgets/follow_up/log_model.h"

#include <QAbstractItemModelTester>
#include <QComboBox>
#include <QLineEdit>
#include <QPushButton>
#include <QTableView>
#include <QTimer>

namespace widgets {
namespace {

/// The plain pond with an empty log.
std::string withoutReadings() {
    const std::string_view text = engine::test::kPlainPond;
    return std::string(text.substr(0, text.find("[[reading]]")));
}

using test::fieldOf;
using test::lineEditOf;
using test::plain;
using test::saidBy;
using test::type;

/// A row of a readings file on this day of June.
engine::Reading row(unsigned day, double oxygen) {
    engine::Reading out;
    out.at = engine::LocalTime(std::chrono::local_days(std::chrono::year(2026) / 6 / day) +
                               std::chrono::minutes(340));
    out.depth = engine::Quantity(0.5);
    out.oxygen = engine::Quantity(oxygen);
    return out;
}

class LogPageTest : public testing::Test {
protected:
    void SetUp() override { show(withoutReadings()); }
    void show(const std::string& text) {
        test::open(document, folder, text);
        page = std::make_unique<LogPage>(document);
        tester = std::make_unique<QAbstractItemModelTester>(
            &page->model(), QAbstractItemModelTester::FailureReportingMode::Fatal);
        page->resize(1000, 600);
        test::showActive(*page);
    }
    [[nodiscard]] std::string cell(int row, LogModel::Column column) const {
        return plain(page->model().index(row, column).data().toString());
    }
    [[nodiscard]] engine::Pond onDisk() const { return *engine::readPond(folder.path() / "pond.toml").pond; }
    void press(const char* text) const {
        QPushButton* button = test::button(*page, text);
        ASSERT_TRUE(button->isEnabled()) << text;
        button->click();
    }

    [[nodiscard]] DawnForm& readingForm() const { return *page->findChild<DawnForm*>(); }

    engine::test::TemporaryFolder folder;
    Document document;
    std::unique_ptr<LogPage> page;
    std::unique_ptr<QAbstractItemModelTester> tester;
};

TEST_F(LogPageTest, AReadingOfThreeDepthsGoesIntoTheFileInTheUsersUnits) {
    document.edit(QStringLiteral("units"), [](engine::Pond& pond) { pond.units = engine::UnitSystem::Us; });
    type(fieldOf(readingForm(), "At"), "2026-06-15 05:40");
    const char* const values[3][3] = {{"2", "80", "5.6"}, {"4", "77", "5.1"}, {"6", "68", "0.1"}};
    const char* const names[3] = {"Surface", "Middle", "Bottom"};
    for (int i = 0; i < 3; ++i) {
        type(fieldOf(*page, (std::string(names[i]) + ": depth").c_str()), values[i][0]);
        type(fieldOf(*page, (std::string(names[i]) + ": temperature").c_str()), values[i][1]);
        type(fieldOf(*page, (std::string(names[i]) + ": oxygen").c_str()), values[i][2]);
    }
    fieldOf<QComboBox>(*page, "Fish")->setCurrentIndex(2);
    press("Enter the Reading");
    const auto& readings = document.pond().readings;
    ASSERT_EQ(readings.size(), 3U) << plain(page->said());
    EXPECT_NEAR(readings[0].temperature->value, 26.667, 0.01);
    EXPECT_NEAR(readings[2].depth->value, 1.829, 0.01);
    EXPECT_EQ(readings[0].fish, engine::FishBehaviour::OffFeed);
    EXPECT_FALSE(readings[1].fish);
    EXPECT_EQ(onDisk().readings.size(), 3U);
    EXPECT_EQ(page->model().rowCount(), 3);
    EXPECT_EQ(cell(0, LogModel::Temperature), "80.0");
    EXPECT_EQ(cell(0, LogModel::Oxygen), "5.6");
    EXPECT_EQ(test::textOf(fieldOf(*page, "Surface: oxygen")), "") << "ready for the next one";
    EXPECT_NE(saidBy(*page).find("Head of the log: 3-0-0-"), std::string::npos);
}

TEST_F(LogPageTest, AnEventIsWhatItsKindCanBe) {
    auto* kind = fieldOf<QComboBox>(*page, "What");
    kind->setCurrentIndex(kind->findData(QStringLiteral("treatment")));
    auto* form = page->findChild<EventForm*>();
    EXPECT_FALSE(fieldOf(*form, "Ramp")->isVisibleTo(form));
    form->propose(engine::LocalTime(std::chrono::local_days(std::chrono::year(2026) / 6 / 20)));
    fieldOf(*form, "Substance")->setFocus();
    lineEditOf(fieldOf(*form, "Substance"))->setText(QStringLiteral("copper"));
    lineEditOf(fieldOf(*form, "Area, %"))->setText(QStringLiteral("25"));
    page->addEvent();
    ASSERT_EQ(document.pond().events.size(), 1U) << plain(page->said());
    EXPECT_EQ(document.pond().events[0].what, "copper");
    EXPECT_EQ(document.pond().events[0].area_percent->value, 25.0);
    EXPECT_EQ(cell(0, LogModel::What), "Treatment");
    EXPECT_EQ(cell(0, LogModel::Note), "copper, 25 % of the area");
}

TEST_F(LogPageTest, APowerCutHasItsEndAndACorrectionCanMoveIt) {
    auto* kind = fieldOf<QComboBox>(*page, "What");
    kind->setCurrentIndex(kind->findData(QStringLiteral("power_cut")));
    auto* form = page->findChild<EventForm*>();
    EXPECT_FALSE(fieldOf(*form, "Minutes")->isVisibleTo(form));
    form->propose(engine::LocalTime(std::chrono::local_days(std::chrono::year(2026) / 6 / 20)));
    lineEditOf(fieldOf(*form, "Until"))->setText(QStringLiteral("2026-06-20 07:30"));
    page->addEvent();
    ASSERT_EQ(document.pond().events.size(), 1U) << plain(page->said());
    const engine::Event cut = document.pond().events[0];
    EXPECT_EQ(cut.until, *cut.at + std::chrono::minutes(450));
    EXPECT_EQ(cell(0, LogModel::Note), "until 2026-06-20 07:30");
    CorrectionDialog dialog(document.pond(), nullptr, &cut, nullptr);
    EXPECT_EQ(test::textOf(fieldOf(dialog, "Until")), "2026-06-20 07:30");
    dialog.show();
    lineEditOf(fieldOf(dialog, "Until"))->setText(QStringLiteral("2026-06-20 09:00"));
    test::button(dialog, "Enter the Correction")->click();
    ASSERT_EQ(dialog.events().size(), 1U);
    EXPECT_EQ(dialog.events()[0].until, *cut.at + std::chrono::minutes(540));
}

TEST_F(LogPageTest, AFaultIsSaidAndTheFormKeepsWhatWasTyped) {
    type(fieldOf(*page, "Surface: depth"), "40");
    type(fieldOf(*page, "Surface: oxygen"), "5");
    page->addReading();
    EXPECT_NE(plain(page->said()).find("below the bottom"), std::string::npos);
    EXPECT_TRUE(document.pond().readings.empty());
    EXPECT_EQ(test::textOf(fieldOf(*page, "Surface: oxygen")), "5");
}

TEST_F(LogPageTest, ACorrectionIsANewEntryAndTheOldOneStays) {
    type(fieldOf(*page, "Surface: oxygen"), "8.1");
    page->addReading();
    const std::string head = plain(page->head());
    for (const char* right : {"5.1", "5.3"}) {
        int row = -1;
        for (int i = 0; i < page->model().rowCount(); ++i) {
            row = page->model().line(i).isInForce ? i : row;
        }
        page->table().selectRow(row);
        QTimer::singleShot(0, [right] {
            auto* dialog = qobject_cast<CorrectionDialog*>(QApplication::activeModalWidget());
            ASSERT_NE(dialog, nullptr);
            type(fieldOf(*dialog, "Oxygen, mg/L"), right);
            test::button(*dialog, "Enter the Correction")->click();
        });
        press("Correct\u2026");
    }
    ASSERT_EQ(document.pond().readings.size(), 3U);
    EXPECT_EQ(document.pond().readings[0].oxygen->value, 8.1);
    const auto inForce = engine::readingsInForce(document.pond());
    ASSERT_EQ(inForce.size(), 1U) << "a correction may be corrected too";
    EXPECT_EQ(inForce[0].oxygen->value, 5.3);
    EXPECT_EQ(cell(0, LogModel::State), "corrected later");
    EXPECT_EQ(cell(2, LogModel::State), "correction");
    fieldOf<QLineEdit>(*page, "A head as it was printed")->setText(QString::fromStdString(head));
    EXPECT_NE(saidBy(*page).find("with entries added since"), std::string::npos);
}

TEST_F(LogPageTest, TakenRowsLieBesideThePondAndOnlyAdd) {
    const auto take = [&](const char* text) {
        QTimer::singleShot(0, [] {
            auto* dialog = qobject_cast<ImportDialog*>(QApplication::activeModalWidget());
            ASSERT_NE(dialog, nullptr);
            ASSERT_TRUE(dialog->isGood()) << plain(dialog->said());
            dialog->accept();
        });
        page->offer(text, QStringLiteral("a test"));
    };
    take("at,depth_m,oxygen_mg_per_l\n2026-06-15 05:40,0.5,5.6\n2026-06-15 05:50,0.5,<0.2\n");
    ASSERT_EQ(document.pond().fileReadings.size(), 2U) << plain(page->said());
    const engine::LogHead head = engine::logHead(document.pond());
    take("at,depth_m,oxygen_mg_per_l\n2026-06-15 05:40,0.5,5.6\n2026-06-16 05:40,0.5,5.2\n");
    EXPECT_EQ(plain(page->said()),
              "1 of 2 rows are in the log; rows that were there already are not entered twice.");
    EXPECT_EQ(document.pond().fileReadings.size(), 3U);
    EXPECT_EQ(engine::matchHead(document.pond(), head), engine::HeadMatch::OnlyAdded);
    EXPECT_TRUE(onDisk() == document.pond());
    EXPECT_TRUE(std::filesystem::exists(folder.path() / "pond.dawnline-readings.csv"));
    EXPECT_EQ(page->model().rowCount(), 3);
}

TEST_F(LogPageTest, RowsGoIntoAFileOfOurOwnAndNeverIntoAStrangers) {
    const std::filesystem::path ours = folder.path() / "pond.dawnline-readings.csv";
    const auto contentOf = [](const std::filesystem::path& path) {
        std::ostringstream text;
        text << std::ifstream(path).rdbuf();
        return text.str();
    };
    const auto stranger = folder.write("diary.txt", "mine");
    folder.write("pond-readings.csv", "also mine");
    std::filesystem::create_symlink(stranger, ours);
    ASSERT_FALSE(takeRows(document, {row(15, 5.6)}));
    EXPECT_EQ(document.pond().readingsFile.name, "pond.dawnline-readings-2.csv");
    ASSERT_FALSE(takeRows(document, {row(16, 5.2)}));
    EXPECT_EQ(document.pond().readingsFile.name, "pond.dawnline-readings-2.csv")
        << "its own file is written on";
    EXPECT_EQ(onDisk().fileReadings.size(), 2U);
    EXPECT_EQ(contentOf(stranger), "mine");
    EXPECT_EQ(contentOf(folder.path() / "pond-readings.csv"), "also mine");
}

TEST_F(LogPageTest, RowsThatAnotherWindowAddedMeanwhileAreNotWrittenOver) {
    ASSERT_FALSE(takeRows(document, {row(15, 5.6)}));
    Document other;
    ASSERT_FALSE(engine::hasErrors(other.open(document.path())));
    ASSERT_FALSE(takeRows(other, {row(16, 5.2)}));
    const auto fault = takeRows(document, {row(17, 5.0)});
    ASSERT_TRUE(fault);
    EXPECT_NE(plain(*fault).find("Another program"), std::string::npos);
    ASSERT_EQ(onDisk().fileReadings.size(), 2U);
    EXPECT_EQ(onDisk().fileReadings[1].oxygen->value, 5.2);
}

TEST_F(LogPageTest, ThePlaceInTheTableStaysThroughAnEditAndALateEntryComesToSight) {
    std::string rows = "at,depth_m,temperature_c,oxygen_mg_per_l\n";
    for (int i = 0; i < 200; ++i) {
        rows += "2026-06-" + std::to_string(15 + i / 24) + (i % 24 < 10 ? " 0" : " ") +
                std::to_string(i % 24) + ":00,0.5,24," + std::to_string(5 + i % 3) + "\n";
    }
    folder.write("logger.csv", rows);
    show(withoutReadings() + "\n[readings]\nfile = \"logger.csv\"\n");
    const auto isInSight = [this](int row) {
        return page->table().viewport()->rect().intersects(
            page->table().visualRect(page->model().index(row, 0)));
    };
    EXPECT_TRUE(isInSight(199)) << "the newest first";
    page->table().selectRow(20);
    ASSERT_TRUE(isInSight(20));
    document.edit(QStringLiteral("e"), [](engine::Pond& pond) { pond.title = "other"; });
    document.edit(QStringLiteral("e"), [](engine::Pond& pond) { pond.units = engine::UnitSystem::Us; });
    EXPECT_TRUE(isInSight(20));
    EXPECT_EQ(page->table().currentIndex().row(), 20);
    EXPECT_EQ(plain(page->model().headerData(LogModel::Depth, Qt::Horizontal, Qt::DisplayRole).toString()),
              "Depth, ft");
    type(fieldOf(readingForm(), "At"), "2026-06-15 05:40");
    type(fieldOf(*page, "Surface: oxygen"), "5.6");
    press("Enter the Reading");
    ASSERT_EQ(page->model().rowCount(), 201) << plain(page->said());
    EXPECT_EQ(page->table().currentIndex().row(), 6) << "06:00 is behind it";
    EXPECT_TRUE(isInSight(6));
}

TEST_F(LogPageTest, ATypedTimeStaysUntilItsEntryIsMadeAndGoesWithThePond) {
    type(fieldOf(readingForm(), "At"), "2026-06-20 05:10");
    test::typeOnly(fieldOf(*page, "Surface: oxygen"), "4.4");
    document.edit(QStringLiteral("e"), [](engine::Pond& pond) { pond.title = "other"; });
    EXPECT_EQ(test::textOf(fieldOf(readingForm(), "At")), "2026-06-20 05:10");
    EXPECT_EQ(test::textOf(fieldOf(*page, "Surface: oxygen")), "4.4");
    press("Enter the Reading");
    ASSERT_EQ(document.pond().readings.size(), 1U) << plain(page->said());
    EXPECT_EQ(test::textOf(fieldOf(readingForm(), "At")), "2026-06-21 05:30") << "the dawn after it";
    type(fieldOf(readingForm(), "At"), "2026-06-22 05:10");
    type(fieldOf(*page, "Bottom: oxygen"), "0.4");
    engine::Pond another = document.pond();
    another.readings.clear();
    document.start(another);
    EXPECT_NE(test::textOf(fieldOf(readingForm(), "At")), "2026-06-22 05:10");
    EXPECT_EQ(test::textOf(fieldOf(*page, "Bottom: oxygen")), "") << "it was read in another pond";
    EXPECT_EQ(page->model().rowCount(), 0);
}

TEST_F(LogPageTest, FlaggedReadingsAreShownAndKept) {
    std::string rows = "at,depth_m,temperature_c,oxygen_mg_per_l\n";
    for (int i = 0; i < 8; ++i) {
        rows += "2026-06-15 0" + std::to_string(i) + ":00,0.5,24,5.5\n";
    }
    folder.write("logger.csv", rows);
    show(withoutReadings() + "\n[readings]\nfile = \"logger.csv\"\n");
    ASSERT_EQ(page->model().rowCount(), 8);
    EXPECT_EQ(cell(3, LogModel::State), "flagged: sensor stuck");
    EXPECT_EQ(cell(3, LogModel::Oxygen), "5.5");
    EXPECT_NE(saidBy(*page).find("Flagged: 8 readings"), std::string::npos) << saidBy(*page);
}

TEST_F(LogPageTest, EveryFieldHasItsName) {
    for (const QWidget* widget : page->findChildren<QWidget*>()) {
        const bool isField = qobject_cast<const QLineEdit*>(widget) != nullptr ||
                             qobject_cast<const QComboBox*>(widget) != nullptr ||
                             qobject_cast<const QTableView*>(widget) != nullptr;
        if (isField && widget->focusPolicy() != Qt::NoFocus && widget->window() == page.get() &&
            qobject_cast<const QAbstractSpinBox*>(widget->parentWidget()) == nullptr) {
            EXPECT_FALSE(widget->accessibleName().isEmpty()) << widget->metaObject()->className();
        }
    }
}

}  // namespace
}  // namespace widgets
