#include "widgets/follow_up/import_dialog.h"

#include "engine/pond/local_time.h"
#include "tests/widgets/typing.h"

#include <QComboBox>

namespace widgets {
namespace {

using test::fieldOf;
using test::plain;
using test::type;

class ImportDialogTest : public testing::Test {
protected:
    void SetUp() override { test::open(document, folder, engine::test::kPlainPond); }

    engine::test::TemporaryFolder folder;
    Document document;
};

TEST_F(ImportDialogTest, ALoggersColumnsAreMatchedBeforeTheyAreTaken) {
    const std::string text =
        "Logger 12\nDate;Time;DO (ppm);Temp [degF];Battery\n"
        "15.06.2026;05:40;5,6;80;3,9\n15.06.2026;05:50;5,5;80;3,9\n15.06.2026;06:00;---;80;3,9\n";
    ImportDialog dialog(document, text, QStringLiteral("file.csv"));
    EXPECT_FALSE(dialog.isGood()) << "no column has the depth";
    EXPECT_NE(plain(dialog.said()).find("depth"), std::string::npos) << plain(dialog.said());
    type(fieldOf(dialog, "Depth of the logger"), "1.5");
    ASSERT_TRUE(dialog.isGood()) << plain(dialog.said());
    ASSERT_EQ(dialog.readings().size(), 3U);
    EXPECT_NEAR(dialog.readings()[0].temperature->value, 26.667, 0.01);
    EXPECT_EQ(dialog.readings()[0].oxygen->value, 5.6);
    EXPECT_FALSE(dialog.readings()[2].oxygen) << "blank";
    EXPECT_EQ(plain(dialog.matchBox(4)->currentText()), "not used");
    auto* oxygen = dialog.matchBox(2);
    oxygen->setCurrentIndex(oxygen->findText(QStringLiteral("oxygen, \u00b5mol/L")));
    ASSERT_TRUE(dialog.isGood());
    EXPECT_NEAR(dialog.readings()[0].oxygen->value, 5.6 * 0.032, 0.001);
}

/// Before the rows go into the log for good it is seen which do not, and why.
TEST_F(ImportDialogTest, TheImportSaysWhatIsTakenAndWhatIsNot) {
    const ImportDialog dialog(document,
                              "Oxygen logger 0123\nDate Time,Depth (m),Temp (C),DO (mg/L),Battery\n"
                              "2026-06-15 05:00,0.5,26.7,3.9,99\n2026-06-15 06:00,0.5,26.6,3.6,99\n"
                              "2026-06-15 07:00,0.5,-888.88,-888.88,99\n"
                              "2026-06-15 08:00,0.5,26.4,390,99\n2026-06-15 09:00,0.5,26.4,4.4,99\n"
                              "2026-06-15 10:00,0.5,26.4,4.9,99\n2026-06-15 11:00,0.5,26.4,5.5,99\n"
                              "End of data\n",
                              QStringLiteral("a test"));
    ASSERT_TRUE(dialog.isGood()) << plain(dialog.said());
    const std::string said = plain(dialog.said());
    for (const char* sentence :
         {"6 readings are taken, from 2026-06-15 05:00 to 2026-06-15 11:00, at ",
          "The headings are in line 2; what stands above is not used.",
          "This column is not used: \"Battery\"",
          "Line 5, Temp (C): 1 value is an error code of the meter and not taken, such as \"-888.88\"",
          "Line 6, DO (mg/L): 1 row has here what cannot be used and is left out",
          "The value is 390 mg/L, but must be from", "The row has 1 cell for 5 columns"}) {
        EXPECT_NE(said.find(sentence), std::string::npos) << sentence << "\nis not said:\n" << said;
    }
}

TEST_F(ImportDialogTest, TheImportKnowsTheLoggersClock) {
    const char* const rows = ";Depth (m);DO (mg/L)\n2026-06-15 11:40;0.5;5.6\n";
    const ImportDialog utc(document, std::string("Date Time, GMT+00:00") + rows, QStringLiteral("a test"));
    ASSERT_TRUE(utc.isGood()) << plain(utc.said());
    EXPECT_EQ(engine::formatLocalTime(*utc.readings()[0].at), "2026-06-15 05:40") << "the pond's clock";
    EXPECT_NE(plain(utc.said()).find("moved by -6 h"), std::string::npos) << plain(utc.said());
    const ImportDialog both(document,
                            std::string("Date Time (UTC);Date Time") +
                                ";Depth (m);DO (mg/L)\n2026-06-15 11:40;2026-06-15 05:40;0.5;5.6\n",
                            QStringLiteral("a test"));
    ASSERT_TRUE(both.isGood()) << plain(both.said());
    EXPECT_EQ(both.readings()[0].at, utc.readings()[0].at);
}

TEST_F(ImportDialogTest, TheImportAsksForWhatItCannotTellInItsOwnWords) {
    ImportDialog dialog(document, "Date Time;DO (mg/L)\n04/05/2026 05:40;5.6\n", QStringLiteral("a test"));
    EXPECT_FALSE(dialog.isGood());
    EXPECT_NE(plain(dialog.said()).find("enter the depth of the logger above"), std::string::npos);
    type(fieldOf(dialog, "Depth of the logger"), "1.5");
    EXPECT_NE(plain(dialog.said()).find("choose under Dates"), std::string::npos) << plain(dialog.said());
    fieldOf<QComboBox>(dialog, "Dates")->setCurrentIndex(1);
    ASSERT_TRUE(dialog.isGood()) << plain(dialog.said());
    EXPECT_EQ(engine::formatLocalTime(*dialog.readings()[0].at).substr(0, 10), "2026-05-04");
}

TEST_F(ImportDialogTest, RowsWithoutHeadingsAreMatchedByHand) {
    ImportDialog dialog(document, "2026-06-15 05:40\t0.5\t5.6\n2026-06-15 05:40\t1.5\t5.1\n",
                        QStringLiteral("the clipboard"));
    EXPECT_FALSE(dialog.isGood());
    const char* const wanted[] = {"date and time", "depth, m", "oxygen, mg/L"};
    for (int i = 0; i < 3; ++i) {
        dialog.matchBox(i)->setCurrentIndex(dialog.matchBox(i)->findText(QString::fromUtf8(wanted[i])));
    }
    ASSERT_TRUE(dialog.isGood()) << plain(dialog.said());
    EXPECT_EQ(dialog.readings().size(), 2U);
}

}  // namespace
}  // namespace widgets
