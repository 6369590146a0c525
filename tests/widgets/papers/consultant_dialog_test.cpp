#include "widgets/papers/consultant_dialog.h"

#include "tests/widgets/typing.h"

#include <QImage>
#include <QPlainTextEdit>
#include <QTableWidget>

#include <filesystem>

namespace widgets {
namespace {

using test::button;
using test::fieldOf;
using test::saidBy;
using test::typeOnly;

engine::Consultant everyField(const std::filesystem::path& folder) {
    const std::string logo = (folder / "logo.png").string();
    QImage picture(8, 4, QImage::Format_RGB32);
    picture.fill(Qt::darkBlue);
    EXPECT_TRUE(picture.save(QString::fromStdString(logo)));
    engine::Consultant who;
    who.business = "Still Water";
    who.name = "A. B\u00f6hm";
    who.phone = "+00 1";
    who.email = "a@b.example";
    who.licence = "L 7";
    who.address = {"1 Bank Road", "Weir"};
    who.logo = logo;
    who.usUnits = true;
    who.letter = true;
    who.currency = "USD";
    who.prices = {{"Visit", "each", 120.5}, {"Plan", "", std::nullopt}};
    who.exclusions = {"permits", "power"};
    return who;
}

TEST(ConsultantDialog, SavesWhatItShowsWithoutLoss) {
    const engine::test::TemporaryFolder folder;
    const engine::Consultant who = everyField(folder.path());
    const auto path = folder.path() / "consultant.toml";
    ConsultantDialog dialog(who, path);
    button(dialog, "Save")->click();
    ASSERT_EQ(dialog.result(), QDialog::Accepted) << saidBy(dialog);
    EXPECT_EQ(engine::readConsultant(path).consultant, who);
}

TEST(ConsultantDialog, ThePictureIsChosenBesideItsName) {
    const engine::test::TemporaryFolder folder;
    ConsultantDialog dialog({}, folder.path() / "consultant.toml");
    test::showActive(dialog);
    const QRect name = fieldOf(dialog, "Logo")->geometry();
    const QRect choose = button(dialog, "Choose\u2026")->geometry();
    EXPECT_GE(choose.left(), name.right());
    EXPECT_NEAR(choose.center().y(), name.center().y(), 2);
}

TEST(ConsultantDialog, WritesWhatIsTypedAndMakesTheFolder) {
    const engine::test::TemporaryFolder folder;
    const auto path = folder.path() / "config/dawnline/consultant.toml";
    ConsultantDialog dialog({}, path);
    test::showActive(dialog);
    typeOnly(fieldOf(dialog, "Business"), "  Still Water ");
    fieldOf<QPlainTextEdit>(dialog, "Address")->setPlainText(QStringLiteral("1 Bank Road\n\n Weir\n"));
    auto* prices = fieldOf<QTableWidget>(dialog, "Prices");
    ASSERT_EQ(prices->rowCount(), 1);
    prices->setItem(0, 0, new QTableWidgetItem(QStringLiteral("Visit")));
    prices->setItem(0, 2, new QTableWidgetItem(QStringLiteral("120,5")));
    EXPECT_EQ(prices->rowCount(), 2) << "the last row takes what is added";
    button(dialog, "Save")->click();
    ASSERT_EQ(dialog.result(), QDialog::Accepted) << saidBy(dialog);
    engine::Consultant wanted;
    wanted.business = "Still Water";
    wanted.address = {"1 Bank Road", "Weir"};
    wanted.prices = {{"Visit", "", 120.5}};
    EXPECT_EQ(engine::readConsultant(path).consultant, wanted);
}

TEST(ConsultantDialog, RefusesALogoThatIsNoPictureAndPricesThatAreNone) {
    const engine::test::TemporaryFolder folder;
    folder.write("logo.png", "no picture");
    const auto path = folder.path() / "consultant.toml";
    ConsultantDialog dialog({}, path);
    test::showActive(dialog);
    const auto expectRefused = [&](const std::string& sentence) {
        button(dialog, "Save")->click();
        EXPECT_TRUE(dialog.isVisible());
        EXPECT_NE(saidBy(dialog).find(sentence), std::string::npos) << saidBy(dialog);
        EXPECT_FALSE(std::filesystem::exists(path));
    };
    typeOnly(fieldOf(dialog, "Logo"), "logo.png");
    expectRefused("logo.png\" cannot be read: ");
    typeOnly(fieldOf(dialog, "Logo"), "");
    auto* prices = fieldOf<QTableWidget>(dialog, "Prices");
    prices->setItem(0, 2, new QTableWidgetItem(QStringLiteral("dear")));
    expectRefused("Prices, row 1: A price needs its item.");
    prices->setItem(0, 0, new QTableWidgetItem(QStringLiteral("Visit")));
    expectRefused("Prices, row 1: ");
    EXPECT_NE(saidBy(dialog).find("dear"), std::string::npos) << saidBy(dialog);
    prices->setItem(0, 2, new QTableWidgetItem(QString()));
    button(dialog, "Save")->click();
    EXPECT_EQ(dialog.result(), QDialog::Accepted) << saidBy(dialog);
}

TEST(ConsultantDialog, KeepsWhatStoodInTheFile) {
    const engine::test::TemporaryFolder folder;
    const auto path = folder.write("consultant.toml", "# by hand\nname = \"Ada\"\n");
    ConsultantDialog dialog(*engine::readConsultant(path).consultant, path);
    button(dialog, "Save")->click();
    EXPECT_EQ(engine::readConsultant(path).consultant->name, "Ada");
    EXPECT_TRUE(std::filesystem::exists(path.string() + ".bak"));
}

}  // namespace
}  // namespace widgets
