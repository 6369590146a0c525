// The owner's sheet and the consent: plain words.
#include "widgets/papers/paper_parts.h"
#include "widgets/papers/papers.h"

#include <QCoreApplication>

#include <array>

namespace widgets {
namespace {

using enum Say;

// Common practice of the trade without a published source: the wait of weeks, the days without feed, the days
// on which to stay near, and the three warm days after which a stop is a new start.
constexpr std::array kOwner{
    TemplateLine{
        Text,
        QT_TRANSLATE_NOOP("OwnerSheet",
                          "**Why slowly?** The bottom of your pond has no air. It owes oxygen. If it all "
                          "comes up at once, it takes the oxygen that your fish breathe. So we lift a "
                          "little each day."),
        "bottomDepth"},
    TemplateLine{
        Text,
        QT_TRANSLATE_NOOP("OwnerSheet",
                          "**Why with care?** Your pond is mixed and has no old bottom water. The air "
                          "still changes how it breathes. So we read the oxygen at dawn."),
        "!bottomDepth"},
    TemplateLine{
        Text,
        QT_TRANSLATE_NOOP("OwnerSheet",
                          "**Start:** {startDate}. Not if the dawn reading is low or one of these is "
                          "near: {holdWeather}. This sheet is void if the air has not "
                          "begun within seven days, and after a treatment, a storm or a power cut: ask for a "
                          "new one.")},
    TemplateLine{Text,
                 QT_TRANSLATE_NOOP(
                     "OwnerSheet",
                     "**At night, from {surfaceFirst} on:** surface air of {surfacePower} kW runs from "
                     "{surfaceFrom} to {surfaceUntil}. It has been tested for an hour, and one named person "
                     "switches it."),
                 "surfacePower"},
    TemplateLine{
        Text,
        QT_TRANSLATE_NOOP("OwnerSheet",
                          "**Hold days** by the forecast: {holdDays}. No bottom air on them, unless it "
                          "already runs all day."),
        "holdDays"},
    TemplateLine{Text, QT_TRANSLATE_NOOP("OwnerSheet", "**Clock:** the times here are {clock}. {ownClock}"),
                 "ownClock"},
    TemplateLine{Insert, "night"},
    TemplateLine{Insert, "chances"},
    TemplateLine{
        Text,
        QT_TRANSLATE_NOOP("OwnerSheet",
                          "**Will my fish die?** No one can say. Of 100 ponds like yours, {lethalWith} get "
                          "so low that fish can die with this start, and {lethalAlone} if left alone. "
                          "These are computed ponds, not your fish. Fish may die with or without air."),
        "lethalWith"},
    TemplateLine{
        Text,
        QT_TRANSLATE_NOOP("OwnerSheet",
                          "**When is it on all day?** From day {rampDays} ({rampDate}) on, if each dawn "
                          "reading says go."),
        "rampDays"},
    TemplateLine{
        Text,
        QT_TRANSLATE_NOOP("OwnerSheet",
                          "**When is it on all day?** Not within {rampPart} days. We tell you when."),
        "rampPart"},
    TemplateLine{Subheading, QT_TRANSLATE_NOOP("OwnerSheet", "Each dawn: read the oxygen, then choose")},
    TemplateLine{Insert, "dawn"},
    TemplateLine{Bullet, QT_TRANSLATE_NOOP(
                             "OwnerSheet",
                             "**Fish gasp and we do not answer?** Start surface air, stop feeding, keep "
                             "calling. Do not start the bottom air. If it runs, switch it off only if the "
                             "top is over 2 \u00b0C (3.6 \u00b0F) warmer than the bottom.")},
    TemplateLine{
        Bullet,
        QT_TRANSLATE_NOOP(
            "OwnerSheet",
            "**You are away, or the power fails?** No reading, no run. A timer holds today\u2019s "
            "minutes only. After a power cut the bottom air stays off; surface air goes on again. Call.")},
    TemplateLine{Bullet, QT_TRANSLATE_NOOP(
                             "OwnerSheet",
                             "**Will it clear, and what does it cost?** It may be green or brown for weeks, "
                             "and smell near the bubbles. Add nothing to the water. We look again after 60 "
                             "days. The price stands in our proposal.")},
    TemplateLine{Bullet, QT_TRANSLATE_NOOP(
                             "OwnerSheet",
                             "**Do not** feed from two days before the start to five days after it, nor on a "
                             "hold. An egg smell over the whole pond is not right: call us.")},
    TemplateLine{Bullet,
                 QT_TRANSLATE_NOOP(
                     "OwnerSheet",
                     "**Wires and ice:** a tripped breaker means stay out of the water until a "
                     "licensed electrician has cleared it. Stay off all ice: air makes it thin, and after a "
                     "power cut thin ice hides open water. Fence and sign before the air starts. Local "
                     "rules and permits hold.")},
    TemplateLine{Small, QT_TRANSLATE_NOOP("OwnerSheet", "**Not final yet.** {provisional}"), "provisional"},
    TemplateLine{
        Fields, QT_TRANSLATE_NOOP("OwnerSheet", "Who reads at dawn|Stand-in|Call us at={phone}|Other phone")},
    TemplateLine{Small,
                 QT_TRANSLATE_NOOP(
                     "OwnerSheet",
                     "I was told how the start works. I have the schedule and the maintenance card. I know "
                     "that fish can "
                     "die of bad water with air or without. I will not run more than the schedule says.")},
    TemplateLine{Fields, QT_TRANSLATE_NOOP("OwnerSheet", "Owner={client}|Consultant={consultant}|Date")},
};

constexpr std::array kConsent{
    TemplateLine{BoxTitle, QT_TRANSLATE_NOOP("Consent", "A template")},
    TemplateLine{BoxText, QT_TRANSLATE_NOOP(
                              "Consent",
                              "Have it checked locally, by someone who knows the law of the place, before "
                              "anyone signs it. It is no legal advice.")},
    TemplateLine{Heading, QT_TRANSLATE_NOOP("Consent", "What is to be done")},
    TemplateLine{
        Text, QT_TRANSLATE_NOOP(
                  "Consent",
                  "Bottom aeration is started in {title} from {startDate} with the ramp \"{ramp}\", day by "
                  "day as the start-up schedule of the same run lists it.")},
    TemplateLine{Text,
                 QT_TRANSLATE_NOOP("Consent",
                                   "Surface air of {surfacePower} kW runs every night from {surfaceFrom} to "
                                   "{surfaceUntil}."),
                 "surfacePower"},
    TemplateLine{Heading, QT_TRANSLATE_NOOP("Consent", "What can go wrong")},
    TemplateLine{
        Text, QT_TRANSLATE_NOOP(
                  "Consent",
                  "Starting the air moves bottom water that lacks oxygen and takes more. It can lower the "
                  "oxygen where the fish are, for hours or days, and fish can die of it. A pond can also run "
                  "short of oxygen by bloom, weather, heat or ice, with aeration or without.")},
    TemplateLine{Insert, "chances"},
    TemplateLine{Text,
                 QT_TRANSLATE_NOOP("Consent",
                                   "**Of 100 ponds like this one, {lethalWith} go below the lethal line of "
                                   "{lethal} mg/L with the ramp, "
                                   "and {lethalAlone} left alone.** Below the stress line of {line} mg/L go "
                                   "{stressWith} with the ramp and "
                                   "{stressAlone} left alone."),
                 "lethalWith"},
    TemplateLine{Text, QT_TRANSLATE_NOOP("Consent",
                                         "The chances describe computed ponds, not your fish. Fish may die "
                                         "with or without air. This method has "
                                         "not been validated on a measured start of this kind of pond.")},
    TemplateLine{Text, QT_TRANSLATE_NOOP("Consent", "{provisional}"), "provisional"},
    TemplateLine{
        Text,
        QT_TRANSLATE_NOOP("Consent",
                          "Run on as the ramp ends, the dawn low settles near {endState} mg/L; left alone "
                          "near {endNothing} mg/L."),
        "endState endNothing"},
    TemplateLine{Heading, QT_TRANSLATE_NOOP("Consent", "What each side does")},
    TemplateLine{Bullet, QT_TRANSLATE_NOOP(
                             "Consent",
                             "The owner has the oxygen read at dawn on every day of the schedule, keeps the "
                             "log, and runs the air as the reading says, never more than the schedule.")},
    TemplateLine{
        Bullet,
        QT_TRANSLATE_NOOP(
            "Consent",
            "The owner names a stand-in, keeps surface aeration at hand where the proposal asks for it, and "
            "adds nothing to the water until the 60-day review.")},
    TemplateLine{
        Bullet, QT_TRANSLATE_NOOP(
                    "Consent",
                    "The consultant answers the phone during the start-up, makes the plan anew when readings "
                    "or weather call for it, and sends the new plan in writing.")},
    TemplateLine{Bullet, QT_TRANSLATE_NOOP("Consent",
                                           "Permits, and consent of landlord and neighbours, are the "
                                           "owner\u2019s to get; electrical work is "
                                           "done and signed for by a licensed electrician.")},
    TemplateLine{Heading, QT_TRANSLATE_NOOP("Consent", "What remains with the owner")},
    TemplateLine{
        Text,
        QT_TRANSLATE_NOOP(
            "Consent",
            "The residual risk: fish may die although both sides kept to this paper. The system is not for "
            "the life "
            "support of high-value stock. Air that runs in winter makes thin ice, which is to be marked and "
            "kept clear of people.")},
    TemplateLine{Tick, QT_TRANSLATE_NOOP("Consent",
                                         "I have had the start-up explained and have received the schedule, "
                                         "the owner\u2019s sheet and the "
                                         "maintenance card.")},
    TemplateLine{Tick,
                 QT_TRANSLATE_NOOP("Consent",
                                   "I have seen what the same pond does when left alone, and what the "
                                   "other options cost: surface air only, "
                                   "fewer fish or less feed, waiting. I choose the plan on this paper.")},
    TemplateLine{Tick, QT_TRANSLATE_NOOP("Consent", "I accept the residual risk.")},
    TemplateLine{Fields, QT_TRANSLATE_NOOP("Consent", "Owner={client}|Place and date|Signature")},
    TemplateLine{Fields, QT_TRANSLATE_NOOP("Consent", "Consultant={consultant}|Place and date|Signature")},
    TemplateLine{Fields, QT_TRANSLATE_NOOP("Consent", "Checked locally by|Date|Signature")},
};

}  // namespace

std::span<const TemplateLine> ownerTemplate() {
    return kOwner;
}

Paper ownerSheet(const PaperRun& run) {
    const PaperImprint imprint = imprintOf(run);
    Paper paper;
    // It has one page, on which the words come before the size of the picture, and both before that of the
    // type.
    for (const auto& [high, scale] : {std::pair(52.0, 1.0),
                                      {47.0, 1.0},
                                      {42.0, 1.0},
                                      {37.0, 1.0},
                                      {42.0, 0.94},
                                      {37.0, 0.94},
                                      {37.0, 0.88},
                                      {32.0, 0.88},
                                      {32.0, 0.84}}) {
        const PaperInserts inserts{
            {QStringLiteral("night"),
             [&, high = high](PaperFlow& flow) {
                 flow.figure(nightFigure(run.figures(), high * kMillimetre));
             }},
            {QStringLiteral("chances"), [&](PaperFlow& flow) { flow.table(chanceTable(run)); }},
            {QStringLiteral("dawn"), [&](PaperFlow& flow) { flow.table(dawnTable(run)); }}};
        paper = paperOf(run, QStringLiteral("owners-sheet"),
                        QCoreApplication::translate("OwnerSheet", "Starting the air in your pond"),
                        "OwnerSheet", kOwner, inserts, scale);
        if (PaperPainter(paper, imprint, run.format, PaperLook::standard()).pageCount() == 1) {
            break;
        }
    }
    return paper;
}

Paper consentPaper(const PaperRun& run) {
    const PaperInserts inserts{
        {QStringLiteral("chances"), [&](PaperFlow& flow) { flow.table(chanceTable(run)); }}};
    return paperOf(run, QStringLiteral("consent"),
                   QCoreApplication::translate("Consent", "Consent and residual risk"), "Consent", kConsent,
                   inserts);
}

}  // namespace widgets
