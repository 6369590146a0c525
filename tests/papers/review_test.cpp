// The 60-day review on paper: what the log and the model say, as the engine's own review has it.
#include "engine/follow_up/review.h"

#include "engine/output/review_io.h"
#include "engine/pond/local_time.h"
#include "engine/wording/sentence_review.h"
#include "tests/papers/made_papers.h"
#include "widgets/document/wording.h"

#include <QRegularExpression>

namespace widgets {
namespace {

/// A young pond whose log has a start, a week of dawns and a treatment.
engine::Pond loggedPond() {
    engine::Pond pond = engine::test::scenario("new-clay");
    const auto at = [](int day, int minutes) {
        return engine::LocalTime(std::chrono::local_days(std::chrono::year(2026) / 5 / 25) +
                                 std::chrono::days(day) + std::chrono::minutes(minutes));
    };
    engine::Event started;
    started.at = at(1, 540);
    started.kind = "started";
    started.ramp = "doubling from 30 min";
    pond.events.push_back(started);
    engine::Event dye;
    dye.at = at(6, 600);
    dye.kind = "treatment";
    dye.what = "dye";
    dye.cost = engine::Quantity(120.0);
    pond.events.push_back(dye);
    for (int day = 1; day <= 8; ++day) {
        for (const double depth : {0.5, 2.9}) {
            engine::Reading reading;
            reading.at = at(day, 340);
            reading.depth = engine::Quantity(depth);
            reading.oxygen = engine::Quantity(7.9 - 0.1 * day - 0.3 * depth);
            reading.temperature = engine::Quantity(22.0 - depth);
            pond.readings.push_back(reading);
        }
    }
    return pond;
}

TEST(PaperReview, IsTheReviewOfTheLogToThePrintedDigit) {
    const test::MadePapers papers(loggedPond(), test::madeUpConsultant(), 8);
    ASSERT_TRUE(papers.run.frozen->review);
    const engine::Review& review = *papers.run.frozen->review;
    const QString text = QString::fromStdString(papers.text("sixty-day-review.pdf", false))
                             .remove(QChar(0x2022))  // the bullets, which may stand behind their lines
                             .simplified();
    for (const engine::Sentence& sentence : engine::sentencesOf(review)) {
        if (sentence.part == engine::SentencePart::Treatments ||
            sentence.key == engine::SentenceKey::ReviewVerdict) {
            EXPECT_TRUE(text.contains(onPaper(papers.run, sentence).simplified()))
                << localized(sentence).toStdString() << text.toStdString();
        }
    }
    EXPECT_TRUE(text.contains(QStringLiteral("30 days of another change"))) << "the dye came with the start";
    // The last day's row against review.csv.
    const std::string csv = engine::reviewCsv(review);
    const QStringList lines = QString::fromStdString(csv).split(QStringLiteral("\n"), Qt::SkipEmptyParts);
    const QStringList heads = lines.front().trimmed().split(QLatin1Char(','));
    const QStringList last = lines.back().trimmed().split(QLatin1Char(','));
    const auto shownOf = [&](const char* column) {
        const auto at = heads.indexOf(QString::fromLatin1(column));
        EXPECT_GE(at, 0) << column << " in " << lines.front().toStdString();
        return at < 0 ? QString() : QString::number(last[at].toDouble(), 'f', 1);
    };
    const QString row = QStringLiteral("\\b2 Jun %1 %2.%3 %4.%5")
                            .arg(shownOf("dawn_mg_per_l"), shownOf("dawn_with_p05"), shownOf("dawn_with_p95"),
                                 shownOf("dawn_without_p05"), shownOf("dawn_without_p95"));
    EXPECT_TRUE(text.contains(QRegularExpression(row))) << row.toStdString() << "\n" << text.toStdString();
}

TEST(PaperReview, IsAFormWithoutALog) {
    EXPECT_FALSE(test::headline().run.frozen->review);
    EXPECT_EQ(test::headline().text("sixty-day-review.pdf").find("the log and the model say"),
              std::string::npos);
}

}  // namespace
}  // namespace widgets
