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
    TemplateLine{BoxTitle, QT_TRANSLATE_NOOP("OwnerSheet", "Do not start now"), "doNotStart"},
    TemplateLine{
        BoxText,
        QT_TRANSLATE_NOOP("OwnerSheet",
                          "This pond owes more oxygen than it holds. Wait for cool water, or hang the air "
                          "stones higher. Talk to us first."),
        "doNotStart"},
    TemplateLine{
        Text,
        QT_TRANSLATE_NOOP("OwnerSheet",
                          "**Why slowly?** The bottom of your pond has been without air. It holds an oxygen "
                          "bill. If we lift it all at once, the bill is paid from the water your fish "
                          "breathe. So we lift a little each day, and the pond can earn it back."),
        "bottomDepth"},
    TemplateLine{Text,
                 QT_TRANSLATE_NOOP(
                     "OwnerSheet",
                     "**Why with care?** Your pond is mixed now and has no old bottom water. The air still "
                     "changes how it breathes. So we start in steps and read the oxygen at dawn."),
                 "!bottomDepth"},
    TemplateLine{Text,
                 QT_TRANSLATE_NOOP("OwnerSheet",
                                   "**Start:** {startDate}. Not if a storm, a heat wave or two dull days are "
                                   "near, or if the dawn reading is low."),
                 "!doNotStart"},
    TemplateLine{Insert, "night"},
    TemplateLine{Insert, "chances"},
    TemplateLine{Text,
                 QT_TRANSLATE_NOOP("OwnerSheet",
                                   "**Know this:** Of ten ponds like yours, {addedLethal} would go under the "
                                   "danger line of {lethal} with the plan but not when left alone."),
                 "addedLethal !moreLethal"},
    TemplateLine{Text,
                 QT_TRANSLATE_NOOP("OwnerSheet",
                                   "**With the plan, more ponds go under the danger line of {lethal} than "
                                   "when left alone. Ask us for a slower plan first.** Of ten ponds like "
                                   "yours, {addedLethal} would go under it with the plan but not when left "
                                   "alone."),
                 "moreLethal"},
    TemplateLine{
        Small,
        QT_TRANSLATE_NOOP(
            "OwnerSheet",
            "We ran {members} ponds like yours on the computer. The runs compare plans. They can not tell "
            "what your own pond will do. Your readings come first.")},
    TemplateLine{BoxTitle, QT_TRANSLATE_NOOP("OwnerSheet", "Not around the clock yet"),
                 "endState !doNotStart"},
    TemplateLine{BoxText,
                 QT_TRANSLATE_NOOP(
                     "OwnerSheet",
                     "Run on like this in this weather, the pond settles at a dawn low near {endState} mg/L. "
                     "That is under the safe line of {line}. Left alone it settles near {endNothing}. Ask us "
                     "before you run more."),
                 "endState endNothing !doNotStart"},
    TemplateLine{Subheading, QT_TRANSLATE_NOOP("OwnerSheet", "Each dawn: read the oxygen, then choose")},
    TemplateLine{Insert, "dawn"},
    TemplateLine{Bullet, QT_TRANSLATE_NOOP(
                             "OwnerSheet",
                             "**You may see:** green or brown water for a week or three, some smell near the "
                             "bubbles, cloudy water.")},
    TemplateLine{Bullet,
                 QT_TRANSLATE_NOOP(
                     "OwnerSheet",
                     "**Not right:** fish at the top at dawn, or an egg smell on the whole pond. Call us.")},
    TemplateLine{
        Bullet,
        QT_TRANSLATE_NOOP("OwnerSheet",
                          "**Do not** add a thing to the water. Do not feed. Do not run at night yet. Stay "
                          "near on days 3 to 7.")},
    TemplateLine{
        Bullet,
        QT_TRANSLATE_NOOP("OwnerSheet",
                          "**Power cut:** if the air was off for three warm days or more, leave it off and "
                          "call. We start again with small steps.")},
    TemplateLine{
        Bullet,
        QT_TRANSLATE_NOOP("OwnerSheet",
                          "**Winter:** air makes thin ice. Mark it and keep people off. **Power:** leave all "
                          "wires to a licensed electrician. Local rules and permits hold.")},
    TemplateLine{Fields, QT_TRANSLATE_NOOP("OwnerSheet",
                                           "Who reads at dawn|Who stands in|Call us at={phone}|Other phone")},
    TemplateLine{
        Small,
        QT_TRANSLATE_NOOP(
            "OwnerSheet",
            "I was told how the start works. I have the schedule and the care card. I know that fish can "
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
                  "Bottom aeration is started in {title} from {startDate} under the plan \"{plan}\", as the "
                  "start-up schedule of the same run shows it.")},
    TemplateLine{Heading, QT_TRANSLATE_NOOP("Consent", "What can go wrong")},
    TemplateLine{
        Text, QT_TRANSLATE_NOOP(
                  "Consent",
                  "Starting the air moves bottom water that lacks oxygen and takes more. It can lower the "
                  "oxygen where the fish are, for hours or days, and fish can die of it. A pond can also run "
                  "short of oxygen by itself: by bloom, weather, heat or ice, with aeration or without.")},
    TemplateLine{Insert, "chances"},
    TemplateLine{
        Text,
        QT_TRANSLATE_NOOP(
            "Consent",
            "Of ten ponds like this one, {added} would go under the safe line of {line} mg/L with the "
            "plan that would not when left alone. That is the part that the plan can control."),
        "added"},
    TemplateLine{
        Text,
        QT_TRANSLATE_NOOP("Consent",
                          "**Of ten ponds like this one, {addedLethal} would go under the danger line of "
                          "{lethal} mg/L with the plan that would not when left alone.**"),
        "addedLethal"},
    TemplateLine{
        Text,
        QT_TRANSLATE_NOOP(
            "Consent",
            "**Over all, more of them go under the danger line with the plan than when left alone.**"),
        "moreLethal"},
    TemplateLine{
        Text,
        QT_TRANSLATE_NOOP(
            "Consent",
            "These numbers compare plans under stated assumptions, by {members} runs of ponds like this one. "
            "They are about oxygen; they do not say how many fish live or die, and they are no promise.")},
    TemplateLine{
        Text,
        QT_TRANSLATE_NOOP(
            "Consent",
            "**This pond owes more oxygen than it holds. The consultant advises not to start now.**"),
        "doNotStart"},
    TemplateLine{Text,
                 QT_TRANSLATE_NOOP("Consent",
                                   "Where the plan ends, the model\u2019s dawn low settles at {endState} "
                                   "mg/L, under the safe line of "
                                   "{line} mg/L; left alone the pond settles at {endNothing} mg/L."),
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
            "The owner names a deputy, keeps surface aeration at hand where the proposal asks for it, and "
            "adds nothing to the water until the 60-day review.")},
    TemplateLine{Bullet,
                 QT_TRANSLATE_NOOP(
                     "Consent",
                     "The consultant answers the phone during the start-up, runs the plan anew when readings "
                     "or weather call for it, and says so in writing.")},
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
    TemplateLine{
        Tick, QT_TRANSLATE_NOOP(
                  "Consent",
                  "I have seen what the same pond does when left alone, and I choose the plan named above.")},
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
