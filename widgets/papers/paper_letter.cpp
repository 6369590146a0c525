// The letter where the answer is not to start: why, until when, and what to do until then. Nothing in it is
// to be ticked off.
#include "widgets/papers/paper_parts.h"
#include "widgets/papers/papers.h"

#include <QCoreApplication>

#include <array>

namespace widgets {
namespace {

using enum Say;

constexpr std::array kLetter{
    TemplateLine{Insert, "advice"},
    TemplateLine{Insert, "night"},
    TemplateLine{Insert, "chances"},
    TemplateLine{Heading, QT_TRANSLATE_NOOP("Letter", "What to do until then")},
    TemplateLine{Bullet, QT_TRANSLATE_NOOP("Letter", "Leave the bottom air off.")},
    TemplateLine{
        Bullet,
        QT_TRANSLATE_NOOP("Letter",
                          "Have surface air ready: wired, run for an hour, with a named person who switches "
                          "it. On still, hot or dull evenings decide at 8 pm; run it from 10 pm to two hours "
                          "after sunrise.")},
    TemplateLine{
        Bullet,
        QT_TRANSLATE_NOOP("Letter",
                          "Feed less, or not at all on such days. Fewer fish help more than anything else.")},
    TemplateLine{
        Bullet,
        QT_TRANSLATE_NOOP("Letter",
                          "**Fish gasping:** start surface air, stop feeding, call us. Do not start the "
                          "bottom air. If it runs, switch it off only if the top is more than 2 \u00b0C (3.6 "
                          "\u00b0F) warmer than the bottom.")},
    TemplateLine{Bullet,
                 QT_TRANSLATE_NOOP(
                     "Letter",
                     "A tripped breaker: stay out of the water until a licensed electrician has cleared it. "
                     "Local rules and permits hold.")},
    TemplateLine{Heading, QT_TRANSLATE_NOOP("Letter", "When we look again")},
    TemplateLine{
        Text,
        QT_TRANSLATE_NOOP("Letter",
                          "From {waitFrom} on, and before {waitUntil}: a new profile at five depths, two "
                          "dawn readings, and a new plan."),
        "waitFrom"},
    TemplateLine{
        Text,
        QT_TRANSLATE_NOOP("Letter",
                          "When something has changed: fewer fish, less feed, less muck, or another place or "
                          "depth of the diffusers."),
        "!waitFrom"},
    TemplateLine{Insert, "months"},
    TemplateLine{Text, QT_TRANSLATE_NOOP(
                           "Letter",
                           "The chances describe computed ponds, not your fish. Fish may die with or without "
                           "air. This method has not been validated on a measured start of this kind of "
                           "pond.")},
    TemplateLine{Fields, QT_TRANSLATE_NOOP("Letter", "Consultant={consultant}|Call us at={phone}|Date")},
    TemplateLine{Insert, "cautions"},
};

}  // namespace

Paper letter(const PaperRun& run) {
    PaperInserts inserts = cautionInsert(run);
    inserts[QStringLiteral("advice")] = [&](PaperFlow& flow) {
        QStringList said = adviceOn(run);
        flow.paragraph(said.takeFirst(), TextStyle::Lead);
        flow.bullets(said);
    };
    inserts[QStringLiteral("night")] = [&](PaperFlow& flow) {
        flow.figure(nightFigure(run.figures(), 62.0 * kMillimetre));
    };
    inserts[QStringLiteral("months")] = [&](PaperFlow& flow) { flow.figure(monthsFigure(run.figures())); };
    inserts[QStringLiteral("chances")] = [&](PaperFlow& flow) { flow.table(chanceTable(run)); };
    return paperOf(run, QStringLiteral("letter"),
                   QCoreApplication::translate("Letter", "Your pond: not to be started now"), "Letter",
                   kLetter, inserts);
}

}  // namespace widgets
