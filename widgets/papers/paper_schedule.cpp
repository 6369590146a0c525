// The start-up schedule and the daily log.
#include "widgets/papers/paper_parts.h"
#include "widgets/papers/papers.h"

#include <QCoreApplication>

#include <array>

namespace widgets {
namespace {

using enum Say;

// What a reading decides: common practice of the trade, no published source.
constexpr std::array kSchedule{
    TemplateLine{Text, QT_TRANSLATE_NOOP("Schedule",
                                         "Ramp \"{ramp}\", starting on {startDate}. Clock times are the "
                                         "pond\u2019s own, without daylight-saving "
                                         "time: {clock}. Each run only after the dawn reading says go.")},
    TemplateLine{Text, QT_TRANSLATE_NOOP("Schedule", "{ownClock}"), "ownClock"},
    TemplateLine{Text,
                 QT_TRANSLATE_NOOP("Schedule",
                                   "From {surfaceFirst} on, every night from {surfaceFrom} to "
                                   "{surfaceUntil}: surface air of {surfacePower} kW."),
                 "surfacePower"},
    TemplateLine{Insert, "runs"},
    TemplateLine{
        Text,
        QT_TRANSLATE_NOOP("Schedule",
                          "From day {rampDays} on the air stays on, as long as the dawn reading allows it."),
        "rampDays"},
    TemplateLine{Text,
                 QT_TRANSLATE_NOOP("Schedule",
                                   "The air does not run around the clock within {rampPart} days. Ask "
                                   "before going on after the last day."),
                 "rampPart"},
    TemplateLine{Text,
                 QT_TRANSLATE_NOOP("Schedule",
                                   "The dose is the share of the bottom water lifted that day; the largest "
                                   "is {largestDose} %, on day {largestDoseDay}."),
                 "largestDose"},
    TemplateLine{Text,
                 QT_TRANSLATE_NOOP(
                     "Schedule",
                     "A timer holds today\u2019s minutes only: no reading, no run. This schedule is void "
                     "if the air has not begun within seven days, and after a treatment, a storm or a power "
                     "cut. Hold while the outlet "
                     "spills, people swim or fish spawn. If the air flow measured on the day is not "
                     "{air} for each diffuser, call before the first run."),
                 "air"},
    TemplateLine{
        Text,
        QT_TRANSLATE_NOOP("Schedule",
                          "**Hold days by the forecast: {holdDays}.** The schedule has no start and no "
                          "step on them. If the forecast moves them, call: the list moves on."),
        "holdDays"},
    TemplateLine{Text, QT_TRANSLATE_NOOP("Schedule", "{provisional}"), "provisional"},
    TemplateLine{Heading, QT_TRANSLATE_NOOP("Schedule", "Before each run")},
    TemplateLine{
        Text, QT_TRANSLATE_NOOP("Schedule",
                                "Read oxygen and temperature within half an hour of sunrise: 0.5 m "
                                "(1.6 ft) down, at mid-depth, and 0.5 m "
                                "(1.6 ft) off the bottom. The worse of the upper two counts, but not the "
                                "middle one if it is over 2 \u00b0C (3.6 \u00b0F) colder than the upper.")},
    TemplateLine{Insert, "dawn"},
    TemplateLine{Bullet, QT_TRANSLATE_NOOP("Schedule",
                                           "**Three holds in a row:** call. Going too slowly does harm as "
                                           "well, since the bottom makes new debt.")},
    TemplateLine{Bullet, QT_TRANSLATE_NOOP("Schedule",
                                           "**Hold for weather:** {holdWeather}. Hold as well when a bloom "
                                           "changes colour.")},
    TemplateLine{Bullet, QT_TRANSLATE_NOOP("Schedule",
                                           "**At ten in the morning** the oxygen near the surface should be "
                                           "{morningRise} mg/L above that of dawn. If not, skip the day.")},
    TemplateLine{Bullet, QT_TRANSLATE_NOOP("Schedule", "**No one there to read at dawn:** no run that day.")},
    TemplateLine{
        Bullet,
        QT_TRANSLATE_NOOP(
            "Schedule",
            "**Feed:** none from two days before the start until five days after it, and on every hold.")},
    TemplateLine{
        Bullet,
        QT_TRANSLATE_NOOP(
            "Schedule",
            "**Power cut:** after three warm days without air, do not go on here; call for a new schedule.")},
    TemplateLine{Small, QT_TRANSLATE_NOOP("Schedule", "Head of the log on that day: {logHead}"), "logHead"},
    TemplateLine{
        Fields,
        QT_TRANSLATE_NOOP(
            "Schedule",
            "Reads at dawn|Stand-in|Phone of the consultant={phone}|Phone of the owner={clientPhone}")},
    TemplateLine{Insert, "cautions"},
};

constexpr std::array kLog{
    TemplateLine{Text,
                 QT_TRANSLATE_NOOP("DailyLog",
                                   "One line a day, from before the start until the 60-day review. Read "
                                   "oxygen and temperature within half an hour "
                                   "of sunrise at three depths: 0.5 m (1.6 ft) down, mid-depth, and 0.5 m "
                                   "(1.6 ft) off the bottom. Units: mg/L "
                                   "and {degrees}. Never change a line; write a new one with the reason.")},
    TemplateLine{Fields, QT_TRANSLATE_NOOP("DailyLog", "Meter|Calibrated on|At elevation or pressure|By")},
    TemplateLine{Insert, "log"},
    TemplateLine{Small, QT_TRANSLATE_NOOP("DailyLog",
                                          "Go at {go} mg/L or more in the worse of the upper two, hold from "
                                          "{hold}, ease off from {back}, stop below {back}.")},
    TemplateLine{Small, QT_TRANSLATE_NOOP("DailyLog", "Head of the log so far: {logHead}"), "logHead"},
};

}  // namespace

PaperInserts cautionInsert(const PaperRun& run) {
    return {{QStringLiteral("cautions"), [&run](PaperFlow& flow) {
                 flow.box(QCoreApplication::translate("PaperParts", "Cautions"),
                          sentencesOn(run, engine::SentencePart::Caution), TextStyle::Small, true);
             }}};
}

Paper schedulePaper(const PaperRun& run) {
    PaperInserts inserts = cautionInsert(run);
    inserts[QStringLiteral("runs")] = [&](PaperFlow& flow) { flow.table(runTable(run, true)); };
    inserts[QStringLiteral("dawn")] = [&](PaperFlow& flow) { flow.table(dawnTable(run)); };
    return paperOf(run, QStringLiteral("start-up-schedule"),
                   QCoreApplication::translate("Schedule", "Start-up schedule"), "Schedule", kSchedule,
                   inserts);
}

Paper dailyLog(const PaperRun& run) {
    int rows = 26;  // as many as the page holds
    const PaperInserts inserts{
        {QStringLiteral("log"), [&rows](PaperFlow& flow) {
             const auto tr = [](const char* text) { return QCoreApplication::translate("DailyLog", text); };
             flow.table(blankTable({tr("Date"), tr("Time"), tr("O\u2082 top"), tr("O\u2082 mid"),
                                    tr("O\u2082 low"), tr("T top"), tr("T mid"), tr("T low"), tr("Secchi"),
                                    tr("Smell"), tr("Fish"), tr("Air on, min"), tr("Weather"), tr("By")},
                                   {1.5, 1.1, 1, 1, 1, 1, 1, 1, 1.1, 1.1, 1.1, 1.2, 1.4, 0.8}, rows, 7.5));
         }}};
    const PaperImprint imprint = imprintOf(run);
    const auto log = [&] {
        return paperOf(run, QStringLiteral("daily-log"), QCoreApplication::translate("DailyLog", "Daily log"),
                       "DailyLog", kLog, inserts);
    };
    Paper paper = log();
    while (rows > 16 && PaperPainter(paper, imprint, run.format, PaperLook::standard()).pageCount() > 1) {
        --rows;
        paper = log();
    }
    return paper;
}

}  // namespace widgets
