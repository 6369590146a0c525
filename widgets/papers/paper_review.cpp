// The 60-day review: what the log and the model say of it, and what is filled in by hand.
#include "engine/follow_up/review.h"
#include "engine/ramps/weather.h"
#include "engine/wording/sentence_review.h"
#include "widgets/controls/sentence_sheet.h"
#include "widgets/document/wording.h"
#include "widgets/papers/paper_parts.h"
#include "widgets/papers/papers.h"

#include <QCoreApplication>

#include <algorithm>
#include <array>

namespace widgets {
namespace {

using enum Say;

constexpr int kMostRows = 10;  // of the days since the start: one a week, of sixty

constexpr std::array kReview{
    TemplateLine{Text, QT_TRANSLATE_NOOP(
                           "Review",
                           "Thirty to sixty days after the start, before anything is added to the water. The "
                           "question: what changed, beyond what the pond would have done left alone?")},
    TemplateLine{
        Fields,
        QT_TRANSLATE_NOOP("Review", "Review on|By={consultant}|Started on={startDate}|Days since the start")},
    TemplateLine{Heading, QT_TRANSLATE_NOOP("Review", "Before and now")},
    TemplateLine{Insert, "changes"},
    TemplateLine{Text,
                 QT_TRANSLATE_NOOP("Review",
                                   "The model\u2019s dawn low where the ramp ends: {endState} mg/L; left "
                                   "alone: {endNothing} mg/L; stress line: {line} mg/L."),
                 "endState endNothing"},
    TemplateLine{Text,
                 QT_TRANSLATE_NOOP("Review",
                                   "Head of the log when the plan was made: {logHead}. A log that was only "
                                   "added to since still holds it; one that was changed does not."),
                 "logHead"},
    TemplateLine{Heading, QT_TRANSLATE_NOOP("Review", "What the log and the model say"), "reviewed"},
    TemplateLine{Insert, "review", "reviewed"},
    TemplateLine{Heading, QT_TRANSLATE_NOOP("Review", "What else happened")},
    TemplateLine{
        Text,
        QT_TRANSLATE_NOOP(
            "Review", "Weather out of the ordinary, power cuts, holds, feed, stocking, treatments, runoff:")},
    TemplateLine{Lines, "3"},
    TemplateLine{Heading, QT_TRANSLATE_NOOP("Review", "Could it be something else?")},
    TemplateLine{Tick, QT_TRANSLATE_NOOP("Review", "Season and weather alone would explain it.")},
    TemplateLine{Tick,
                 QT_TRANSLATE_NOOP("Review", "Something besides the air was changed in the same time.")},
    TemplateLine{Tick, QT_TRANSLATE_NOOP("Review", "Too few readings to tell.")},
    TemplateLine{Tick, QT_TRANSLATE_NOOP(
                           "Review",
                           "The change is larger than the difference between neighbouring days of the log.")},
    TemplateLine{Heading, QT_TRANSLATE_NOOP("Review", "Decision")},
    TemplateLine{Tick, QT_TRANSLATE_NOOP("Review", "Leave it alone and read on.")},
    TemplateLine{Tick,
                 QT_TRANSLATE_NOOP("Review", "Change the running hours to: ______________________________")},
    TemplateLine{Tick,
                 QT_TRANSLATE_NOOP("Review",
                                   "One treatment, on a part of the pond, with a wait of ______ days before "
                                   "the next. No copper below an alkalinity of 50 mg/L or where it is not "
                                   "known. Dying plants take oxygen: have it computed first.")},
    TemplateLine{Text, QT_TRANSLATE_NOOP("Review", "Alkalinity as given: {alkalinity} mg/L."), "alkalinity"},
    TemplateLine{Fields,
                 QT_TRANSLATE_NOOP("Review", "Next review on|Owner={client}|Consultant={consultant}")},
    TemplateLine{Insert, "cautions"},
};

/// Sentences of a part of the review, on paper.
QStringList said(const PaperRun& run, engine::SentencePart part) {
    QStringList texts;
    for (const engine::Sentence& sentence : engine::sentencesOf(*run.frozen->review)) {
        if (sentence.part == part && sentence.key != engine::SentenceKey::ReviewTitle &&
            sentence.key != engine::SentenceKey::ReviewVerdict) {
            texts << onPaper(run, sentence);
        }
    }
    return texts;
}

QString bandText(const engine::Band& band) {
    return QStringLiteral("%1\u2013%2").arg(oxygenText(band.p05), oxygenText(band.p95));
}

/// Some of the days, evenly spaced, the last among them.
template <class Tr>
PaperTable daysTable(const engine::Review& review, Tr tr) {
    PaperTable table;
    table.columns = {{tr("Dawn of"), 1, false},         {tr("Upper water, read"), 1, true},
                     {tr("with the aerator"), 1, true}, {tr("without it"), 1, true},
                     {tr("Bottom, read"), 1, true},     {tr("with the aerator"), 1, true},
                     {tr("without it"), 1, true}};
    const auto read = [](const std::optional<double>& oxygen) {
        return oxygen ? oxygenText(*oxygen) : QStringLiteral("\u2013");
    };
    const int count = static_cast<int>(review.rows.size());
    const int step = std::max((count + kMostRows - 1) / kMostRows, 1);
    for (int i = (count - 1) % step; i < count; i += step) {
        const engine::ReviewRow& row = review.rows[static_cast<std::size_t>(i)];
        table.rows.push_back({paperDay(engine::dateOfDay(review.fit.known, row.day)), read(row.dawn),
                              bandText(row.dawnWith), bandText(row.dawnWithout), read(row.bottom),
                              bandText(row.bottomWith), bandText(row.bottomWithout)});
    }
    return table;
}

}  // namespace

Paper sixtyDayReview(const PaperRun& run) {
    const auto tr = [](const char* text) { return QCoreApplication::translate("Review", text); };
    const PaperValues values = valuesOf(run);
    PaperInserts inserts = cautionInsert(run);
    inserts[QStringLiteral("changes")] = [&](PaperFlow& flow) {
        PaperTable table = blankTable(
            {tr("What"), tr("At the start"), tr("Day 30"), tr("Day 60"), tr("Change, and is it real?")},
            {1.7, 1.2, 1, 1, 1.8}, 0);
        table.rowHeight = 18.0 * kPoint;
        table.rows = {
            {tr("Dawn low, mean of the week, mg/L"), QString(), QString(), QString(), QString()},
            {tr("Oxygen off the bottom, mg/L"), QString(), QString(), QString(), QString()},
            {tr("Top minus bottom, degrees"), QString(), QString(), QString(), QString()},
            {tr("Secchi depth"), values.value(QStringLiteral("secchi")), QString(), QString(), QString()},
            {tr("Muck, mean of 12 probes"), values.value(QStringLiteral("muck")), QString(), QString(),
             QString()},
            {tr("Weed cover, %"), QString(), QString(), QString(), QString()},
            {tr("Smell of the bottom water"), QString(), QString(), QString(), QString()},
            {tr("Fish: feeding, losses"), QString(), QString(), QString(), QString()}};
        flow.table(table);
    };
    if (const auto& review = run.frozen->review) {
        inserts[QStringLiteral("review")] = [&run, &review, &tr](PaperFlow& flow) {
            flow.paragraph(localizedFirst(engine::sentencesOf(*review), engine::SentenceKey::ReviewVerdict),
                           TextStyle::Lead);
            for (const QString& text : said(run, engine::SentencePart::Review)) {
                flow.paragraph(text);
            }
            flow.table(daysTable(*review, tr));
            flow.paragraph(tr("Oxygen at dawn, mg/L: as read, and what nine of ten ponds like this one that "
                              "fit the readings have, with the aerator as the log has it and without it, "
                              "under the weather that came."),
                           TextStyle::Small);
            flow.bullets(said(run, engine::SentencePart::Treatments));
            flow.paragraph(said(run, engine::SentencePart::Assumption).join(QLatin1Char(' ')),
                           TextStyle::Small);
        };
    }
    return paperOf(run, QStringLiteral("sixty-day-review"), tr("60-day review"), "Review", kReview, inserts);
}

}  // namespace widgets
