#include "widgets/controls/sheet_model.h"

#include "tests/widgets/typing.h"
#include "widgets/forms/pond_section.h"

#include <QAbstractItemModelTester>

#include <gtest/gtest.h>

namespace widgets {
namespace {

using engine::test::TemporaryFolder;
using test::plain;

struct Sheet {
    explicit Sheet(SheetSpec spec) : model(opened(), std::move(spec)) {
        QObject::connect(&model, &SheetModel::said,
                         [this](const QString& sentence) { said = plain(sentence); });
    }
    Document& opened() {
        test::open(document, folder, engine::test::kPlainPond);
        return document;
    }
    std::string cell(int row, int column) { return plain(model.index(row, column).data().toString()); }
    bool type(int row, int column, const char* text) {
        return model.setData(model.index(row, column), QString::fromUtf8(text), Qt::EditRole);
    }
    TemporaryFolder folder;
    Document document;
    std::string said;
    SheetModel model;
    QAbstractItemModelTester tester{&model, QAbstractItemModelTester::FailureReportingMode::Fatal};
};

TEST(SheetModel, PastesABlockFromASpreadsheetInOneStep) {
    Sheet sheet(profileSheet());
    const int before = sheet.document.undoStack().count();
    ASSERT_TRUE(
        sheet.model.paste(QStringLiteral("depth\ttemp\tDO\n0\t27,5\t8.1\n1\t25\t6\n2\t20\t0.5\n"), 0, 0))
        << sheet.said;
    const engine::Profile& profile = *sheet.document.pond().profile;
    EXPECT_EQ(profile.depth[0], 0.0);
    EXPECT_EQ(profile.temperature[0], 27.5) << "comma and point are both decimal signs";
    EXPECT_EQ(profile.oxygen[2], 0.5);
    EXPECT_EQ(sheet.document.undoStack().count(), before + 1);
    sheet.document.undoStack().undo();
    EXPECT_NE(sheet.document.pond().profile->temperature[0], 27.5);
}

TEST(SheetModel, ABadCellIsSaidByRowAndColumnAndNothingChanges) {
    Sheet sheet(profileSheet());
    const engine::Pond before = sheet.document.pond();
    EXPECT_FALSE(sheet.model.paste(QStringLiteral("0\t27\t8\n1\twarm\t6\n"), 0, 0));
    EXPECT_EQ(sheet.said, "Nothing was pasted. Row 2, column 2: “warm” is not a number.");
    EXPECT_TRUE(sheet.document.pond() == before);
}

TEST(SheetModel, ARowCountsOnceItIsWhole) {
    Sheet sheet(profileSheet());
    const auto rows = static_cast<int>(sheet.document.pond().profile->depth.size());
    const double deeper = sheet.document.pond().profile->depth.back() + 0.1;
    ASSERT_EQ(sheet.model.rowCount(), rows + 1);
    sheet.type(rows, 0, std::to_string(deeper).c_str());
    EXPECT_NE(sheet.said.find("is missing"), std::string::npos) << sheet.said;
    EXPECT_EQ(static_cast<int>(sheet.document.pond().profile->depth.size()), rows);
    sheet.type(rows, 1, "20");
    sheet.type(rows, 2, "0,1");
    EXPECT_EQ(sheet.said, "");
    ASSERT_EQ(static_cast<int>(sheet.document.pond().profile->depth.size()), rows + 1);
    EXPECT_EQ(sheet.document.pond().profile->oxygen.back(), 0.1);
    sheet.model.takeAway({rows});
    EXPECT_EQ(static_cast<int>(sheet.document.pond().profile->depth.size()), rows);
}

TEST(SheetModel, FollowsTheUnitsOfThePond) {
    Sheet sheet(contourSheet());
    ASSERT_TRUE(sheet.model.paste(QStringLiteral("0;8000\n1.5;4000\n3.4;0\n"), 0, 0)) << sheet.said;
    EXPECT_FALSE(sheet.document.pond().basin.area) << "contours stand instead";
    EXPECT_EQ(plain(sheet.model.headerData(0, Qt::Horizontal, Qt::DisplayRole).toString()), "Depth, m");
    sheet.document.edit(QStringLiteral("units"),
                        [](engine::Pond& pond) { pond.units = engine::UnitSystem::Us; });
    EXPECT_EQ(plain(sheet.model.headerData(0, Qt::Horizontal, Qt::DisplayRole).toString()), "Depth, ft");
    EXPECT_EQ(sheet.cell(1, 0), "4.92126");
    EXPECT_TRUE(sheet.type(1, 0, "2 m"));
    EXPECT_EQ(sheet.document.pond().basin.contours[1].depth.value, 2.0);
}

TEST(SheetModel, ReadsDatesAsPeopleWriteThem) {
    Sheet sheet(weatherSheet());
    const auto rows = static_cast<int>(sheet.document.pond().weather.days.size());
    ASSERT_GT(rows, 0);
    const std::string first = sheet.cell(0, 0);
    EXPECT_TRUE(
        sheet.type(0, 0, (first.substr(8, 2) + "." + first.substr(5, 2) + "." + first.substr(0, 4)).c_str()))
        << sheet.said;
    EXPECT_EQ(sheet.cell(0, 0), first);
    EXPECT_FALSE(sheet.type(0, 0, "yesterday"));
    EXPECT_EQ(sheet.said, "Write the date like 2026-06-14, not “yesterday”.");
}

TEST(PastedCells, SeparatorsAreTabsElseSemicolonsElseCommas) {
    EXPECT_EQ(pastedCells(QStringLiteral("1,5\t2\r\n3\t4\r\n\r\n")).size(), 2U);
    EXPECT_EQ(plain(pastedCells(QStringLiteral("1,5;2"))[0][0]), "1,5");
    EXPECT_EQ(plain(pastedCells(QStringLiteral("\ufeff\"a\",2"))[0][0]), "a");
}

}  // namespace
}  // namespace widgets
