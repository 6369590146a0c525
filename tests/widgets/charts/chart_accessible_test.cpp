// What a screen reader is told of each view: its sentence, its text alternative and its numbers as a table,
// asked through Qt's own interface.

#include "engine/pond/pond_io.h"
#include "tests/pond_texts.h"
#include "tests/widgets/typing.h"
#include "widgets/charts/dawn_lows_plot.h"
#include "widgets/charts/night_plot.h"
#include "widgets/charts/picture_view.h"
#include "widgets/charts/whole_run_plot.h"
#include "widgets/document/recomputation.h"

#include <QAccessible>

#include <gtest/gtest.h>

#include <memory>

namespace widgets {
namespace {

using test::plain;

struct Seen {
    Seen() {
        const auto reading = engine::readPondText(engine::test::kPlainPond, "plain.toml");
        const Outcome members = withAnswer(withMembers(outcomeOf(*reading.pond, 3, true), 16, true));
        outcome = std::make_shared<const Outcome>(withMeasured(members, 100));
        selection.setExtent(3, outcome->comparison.runs.size());
        selection.setRamp(2);
        selection.setNight(2);
        charts.push_back(std::make_unique<NightPlot>(selection));
        charts.push_back(std::make_unique<DawnLowsPlot>(selection));
        charts.push_back(std::make_unique<WholeRunPlot>(selection));
        for (const ViewKind& kind : viewKinds()) {
            charts.push_back(std::make_unique<PictureView>(kind, selection));
        }
        for (const auto& chart : charts) {
            chart->setOutcome(outcome);
            chart->resize(700, 400);
            chart->show();
        }
    }
    OutcomePtr outcome;
    Selection selection;
    std::vector<std::unique_ptr<ChartView>> charts;
};

QAccessibleInterface* tableOf(ChartView& chart) {
    QAccessibleInterface* whole = QAccessible::queryAccessibleInterface(&chart);
    for (int i = 0; whole != nullptr && i < whole->childCount(); ++i) {
        if (whole->child(i)->role() == QAccessible::Table) {
            EXPECT_EQ(whole->indexOfChild(whole->child(i)), i);
            EXPECT_EQ(whole->child(i)->parent(), whole);
            return whole->child(i);
        }
    }
    return nullptr;
}

/// The cells of a table as it was told, in the form of a file.
std::string told(QAccessibleInterface& table) {
    QAccessibleTableInterface& cells = *table.tableInterface();
    std::string text;
    for (int row = -1; row < cells.rowCount(); ++row) {
        for (int column = 0; column < cells.columnCount(); ++column) {
            const QString cell = row < 0 ? cells.columnDescription(column)
                                         : cells.cellAt(row, column)->text(QAccessible::Name);
            text += plain(cell) + (column + 1 < cells.columnCount() ? "," : "\r\n");
        }
    }
    return text;
}

TEST(ChartAccessible, EachViewHasItsSentenceItsWordsAndItsTable) {
    const Seen seen;
    for (const auto& chart : seen.charts) {
        SCOPED_TRACE(plain(chart->accessibleName()));
        QAccessibleInterface* whole = QAccessible::queryAccessibleInterface(chart.get());
        ASSERT_NE(whole, nullptr);
        EXPECT_EQ(whole->role(), QAccessible::Chart);
        EXPECT_FALSE(whole->text(QAccessible::Name).isEmpty());
        const auto plainBlanks = [](QString text) { return text.replace(QChar::Nbsp, QLatin1Char(' ')); };
        EXPECT_TRUE(
            plainBlanks(whole->text(QAccessible::Description)).contains(plainBlanks(chart->headline())));
        EXPECT_GT(whole->text(QAccessible::Description).size(), 40);
        QAccessibleInterface* table = tableOf(*chart);
        ASSERT_NE(table, nullptr);
        ASSERT_NE(table->tableInterface(), nullptr);
        EXPECT_FALSE(table->text(QAccessible::Name).isEmpty());
        EXPECT_GT(table->tableInterface()->rowCount(), 2);
        std::string numbers = chart->sheet().csv;
        std::erase(numbers, '"');  // around names with a comma
        EXPECT_EQ(told(*table), numbers);
    }
}

TEST(ChartAccessible, ACellKnowsItsPlaceAndTheNameOverIt) {
    const Seen seen;
    QAccessibleInterface* table = tableOf(*seen.charts.front());
    ASSERT_NE(table, nullptr);
    QAccessibleInterface* cell = table->tableInterface()->cellAt(1, 2);
    ASSERT_NE(cell, nullptr);
    EXPECT_EQ(cell->role(), QAccessible::Cell);
    QAccessibleTableCellInterface* place = cell->tableCellInterface();
    ASSERT_NE(place, nullptr);
    EXPECT_EQ(place->rowIndex(), 1);
    EXPECT_EQ(place->columnIndex(), 2);
    EXPECT_EQ(place->table(), table);
    ASSERT_EQ(place->columnHeaderCells().size(), 1);
    EXPECT_EQ(place->columnHeaderCells().front()->role(), QAccessible::ColumnHeader);
    EXPECT_EQ(place->columnHeaderCells().front()->text(QAccessible::Name),
              table->tableInterface()->columnDescription(2));
    EXPECT_EQ(table->child(table->indexOfChild(cell)), cell);
    EXPECT_EQ(table->tableInterface()->cellAt(100000, 0), nullptr);
    EXPECT_EQ(table->tableInterface()->cellAt(0, -1), nullptr);
}

TEST(ChartAccessible, TheTableGoesWithTheNightThatIsShown) {
    Seen seen;
    QAccessibleInterface* table = tableOf(*seen.charts.front());
    ASSERT_NE(table, nullptr);
    const std::string second = told(*table);
    seen.selection.setNight(1);
    EXPECT_NE(told(*table), second);
    EXPECT_EQ(tableOf(*seen.charts.front()), table) << "the table stays, its cells are new";
}

TEST(ChartAccessible, AChartWithoutAnOutcomeHasAnEmptyTable) {
    Selection selection;
    NightPlot chart(selection);
    QAccessibleInterface* table = tableOf(chart);
    ASSERT_NE(table, nullptr);
    EXPECT_EQ(table->tableInterface()->rowCount(), 0);
    EXPECT_EQ(table->childCount(), 0);
}

}  // namespace
}  // namespace widgets
