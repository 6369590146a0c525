// The technical proposal.
#include "engine/base/units.h"
#include "engine/ensemble/chances.h"
#include "engine/wording/wording.h"
#include "widgets/document/to_qstring.h"
#include "widgets/document/wording.h"
#include "widgets/papers/paper_parts.h"
#include "widgets/papers/papers.h"

#include <QCoreApplication>
#include <QLocale>

#include <array>
#include <cmath>

namespace widgets {
namespace {

using enum Say;

constexpr std::array kProposal{
    TemplateLine{Heading, QT_TRANSLATE_NOOP("Proposal", "1. Finding and recommendation")},
    TemplateLine{BoxTitle, QT_TRANSLATE_NOOP("Proposal", "Do not start now"), "doNotStart"},
    TemplateLine{
        BoxText,
        QT_TRANSLATE_NOOP("Proposal",
                          "The bottom water owes more oxygen ({debt}) than the water above it holds "
                          "({pool}). We recommend to wait for the cool season or to raise the diffusers, and "
                          "to run the plan anew then. The plan below is shown for comparison."),
        "doNotStart"},
    TemplateLine{Lead,
                 QT_TRANSLATE_NOOP("Proposal",
                                   "We propose to start the air under the plan \"{plan}\" from {startDate}, "
                                   "one dawn reading before each step."),
                 "!doNotStart !moreLethal"},
    TemplateLine{Lead,
                 QT_TRANSLATE_NOOP("Proposal",
                                   "The plan \"{plan}\" would start the air on {startDate}. It carries more "
                                   "risk than leaving the pond alone; the frame below says how much."),
                 "!doNotStart moreLethal"},
    TemplateLine{
        Text,
        QT_TRANSLATE_NOOP(
            "Proposal",
            "On the worst night, {worstDate}, the model\u2019s fish water falls to {planLow} mg/L under the "
            "plan, to {fastLow} mg/L when started under \"{fast}\", and to {nothingLow} mg/L when the pond "
            "is left alone. The stress line is {line} mg/L, the lethal line {lethal} mg/L."),
        "fast"},
    TemplateLine{
        Text,
        QT_TRANSLATE_NOOP("Proposal",
                          "On the worst night, {worstDate}, the model\u2019s fish water falls to {planLow} "
                          "mg/L under the plan and to {nothingLow} mg/L when the pond is left alone. The "
                          "stress line is {line} mg/L, the lethal line {lethal} mg/L."),
        "!fast"},
    TemplateLine{Insert, "night"},
    TemplateLine{Insert, "chances"},
    TemplateLine{
        Text,
        QT_TRANSLATE_NOOP("Proposal",
                          "Of ten ponds like this one, {added} would go under the stress line with the plan "
                          "that would not when left alone: that is what a plan can control."),
        "added"},
    TemplateLine{BoxTitle, QT_TRANSLATE_NOOP("Proposal", "The plan takes ponds below the lethal line"),
                 "addedLethal"},
    TemplateLine{BoxText,
                 QT_TRANSLATE_NOOP("Proposal",
                                   "Of ten ponds like this one, {addedLethal} would go under the lethal line "
                                   "of {lethal} mg/L with the plan that would not when left alone."),
                 "addedLethal"},
    TemplateLine{BoxText,
                 QT_TRANSLATE_NOOP("Proposal",
                                   "Over all, more of them go under the lethal line with the plan than when "
                                   "left alone. Slower steps, shallower diffusers or a start in cool water "
                                   "should be looked at first, and surface aeration has to stand by."),
                 "moreLethal"},
    TemplateLine{BoxTitle, QT_TRANSLATE_NOOP("Proposal", "Not around the clock in this season"),
                 "endState !doNotStart"},
    TemplateLine{
        BoxText,
        QT_TRANSLATE_NOOP("Proposal",
                          "Held for a month of usual days, the plan\u2019s last schedule settles at a dawn "
                          "low of {endState} mg/L, under the stress line of {line} mg/L; left alone the pond "
                          "settles at {endNothing} mg/L. Surface aeration should stand by, and running hours "
                          "should not go beyond the plan before the readings allow it."),
        "endState endNothing !doNotStart"},

    TemplateLine{Heading, QT_TRANSLATE_NOOP("Proposal", "2. What we found")},
    TemplateLine{Insert, "found"},
    TemplateLine{Insert, "profileFigure"},
    TemplateLine{Insert, "profileTable"},

    TemplateLine{Heading, QT_TRANSLATE_NOOP("Proposal", "3. Diagnosis")},
    TemplateLine{Insert, "pondSentences"},
    TemplateLine{Subheading, QT_TRANSLATE_NOOP("Proposal", "The pond left alone")},
    TemplateLine{Insert, "nothingSentences"},
    TemplateLine{Insert, "budget"},

    TemplateLine{Heading, QT_TRANSLATE_NOOP("Proposal", "4. Options")},
    TemplateLine{Insert, "options"},
    TemplateLine{Small, QT_TRANSLATE_NOOP("Proposal",
                                          "Worst night and end state: every input at its value. Chances: so "
                                          "many of ten ponds like this one, over {nights} nights. Added: "
                                          "under the stress line with the option and not when left alone.")},
    TemplateLine{Bullet,
                 QT_TRANSLATE_NOOP(
                     "Proposal",
                     "**Do nothing.** Stands first in every table and picture. A pond that fails by itself "
                     "fails with any plan; that is neither to the credit nor to the blame of the aerator.")},
    TemplateLine{Bullet,
                 QT_TRANSLATE_NOOP(
                     "Proposal",
                     "**Wait for the cool season.** After the natural turnover in autumn, or before layers "
                     "form in spring, the debt is small and a ramp of two or three days will do (common "
                     "practice, no published source). Nothing is lost by waiting but the summer.")},
    TemplateLine{
        Bullet,
        QT_TRANSLATE_NOOP("Proposal",
                          "**Surface aeration only.** Helps the fish near it on a bad night and leaves the "
                          "bottom as it is. Recommended to stand by with every start in a warm season.")},
    TemplateLine{Bullet, QT_TRANSLATE_NOOP("Proposal",
                                           "**Fewer fish, less feed, fewer nutrients.** Slow, but the only "
                                           "one that lowers what the pond uses at night.")},

    TemplateLine{Heading, QT_TRANSLATE_NOOP("Proposal", "5. Design")},
    TemplateLine{Insert, "design"},
    TemplateLine{
        Text,
        QT_TRANSLATE_NOOP("Proposal",
                          "Bubbles mix; they hardly feed oxygen. A diffuser is no life support in a crash.")},

    TemplateLine{Heading, QT_TRANSLATE_NOOP("Proposal", "6. Risk of the start")},
    TemplateLine{Insert, "planSentences"},
    TemplateLine{Insert, "lows"},
    TemplateLine{Insert, "dose"},
    TemplateLine{Insert, "run"},

    TemplateLine{Heading, QT_TRANSLATE_NOOP("Proposal", "7. Schedule and hold rules")},
    TemplateLine{Insert, "runs"},
    TemplateLine{Small,
                 QT_TRANSLATE_NOOP("Proposal",
                                   "Clock times are the pond\u2019s own, without daylight-saving time. Low: "
                                   "fish-water oxygen of the night, mg/L; one pond in twenty like this one "
                                   "is lower than the first, half are lower than the second. \"Open\" counts "
                                   "diffusers. The dose is the share of the bottom water lifted that day.")},
    TemplateLine{Subheading, QT_TRANSLATE_NOOP("Proposal", "What the dawn reading decides")},
    TemplateLine{Insert, "dawn"},
    TemplateLine{Text,
                 QT_TRANSLATE_NOOP(
                     "Proposal",
                     "Hold as well for the weather: two dull days ahead, air of 35 \u00b0C (95 \u00b0F), "
                     "still heat, a storm or front within two days. These limits are common practice without "
                     "a published source; they are the owner\u2019s and ours to change in writing.")},

    TemplateLine{Heading, QT_TRANSLATE_NOOP("Proposal", "8. Monitoring for sixty days")},
    TemplateLine{Bullet, QT_TRANSLATE_NOOP("Proposal",
                                           "Days 1 to 10, and on every day of a step: oxygen and temperature "
                                           "at dawn, three depths; smell; fish.")},
    TemplateLine{
        Bullet,
        QT_TRANSLATE_NOOP(
            "Proposal",
            "After that weekly: dawn oxygen, Secchi depth, temperature, a photograph from the same place.")},
    TemplateLine{Bullet, QT_TRANSLATE_NOOP(
                             "Proposal",
                             "Nothing is added to the water for thirty to sixty days. At the review one "
                             "thing may be changed, on a part of the pond, and is watched before the next.")},
    TemplateLine{Bullet, QT_TRANSLATE_NOOP("Proposal",
                                           "Readings that leave the band are entered and the plan is run "
                                           "anew; the new schedule replaces this one.")},

    TemplateLine{Heading, QT_TRANSLATE_NOOP("Proposal", "9. Responsibilities, safety, permits")},
    TemplateLine{Insert, "duties"},
    TemplateLine{
        Bullet,
        QT_TRANSLATE_NOOP(
            "Proposal",
            "Electrical work by a licensed electrician to local code, every circuit on a ground-fault or "
            "residual-current device, compressor on shore, no mains voltage in the water.")},
    TemplateLine{Bullet,
                 QT_TRANSLATE_NOOP(
                     "Proposal",
                     "Boat work by two, life jackets on. Closed pits and sumps may hold hydrogen sulfide.")},
    TemplateLine{Bullet, QT_TRANSLATE_NOOP(
                             "Proposal",
                             "Thin ice wherever air runs in winter: signs, barriers, inspection, permits.")},
    TemplateLine{
        Text,
        QT_TRANSLATE_NOOP("Proposal",
                          "Permits and consents that may be needed here (a list to tick, no legal advice):")},
    TemplateLine{Tick, QT_TRANSLATE_NOOP("Proposal", "Aeration permit")},
    TemplateLine{Tick, QT_TRANSLATE_NOOP("Proposal", "Works in the bed, a stream or a wetland")},
    TemplateLine{Tick, QT_TRANSLATE_NOOP("Proposal", "Dam safety")},
    TemplateLine{Tick, QT_TRANSLATE_NOOP("Proposal", "Discharge of stirred-up water downstream")},
    TemplateLine{Tick, QT_TRANSLATE_NOOP("Proposal", "Landlord and neighbours")},
    TemplateLine{Tick, QT_TRANSLATE_NOOP("Proposal", "Protected species")},

    TemplateLine{Heading, QT_TRANSLATE_NOOP("Proposal", "10. Assumptions, and what would change our mind")},
    TemplateLine{Insert, "assumptions"},
    TemplateLine{Subheading, QT_TRANSLATE_NOOP("Proposal", "What would change our mind")},
    TemplateLine{
        Bullet, QT_TRANSLATE_NOOP(
                    "Proposal", "A bottle test that finds an oxygen debt outside the range that was taken.")},
    TemplateLine{Bullet, QT_TRANSLATE_NOOP(
                             "Proposal",
                             "A dawn reading more than 1 mg/L away from the model on a calm clear night.")},
    TemplateLine{Bullet, QT_TRANSLATE_NOOP("Proposal",
                                           "A profile older than seven days at the start, a turnover, a "
                                           "bloom that changes colour, a treatment.")},
    TemplateLine{Bullet,
                 QT_TRANSLATE_NOOP("Proposal", "Air flow, depth or number of diffusers other than above.")},
    TemplateLine{Insert, "cautions"},

    TemplateLine{Heading, QT_TRANSLATE_NOOP("Proposal", "11. Price and exclusions")},
    TemplateLine{Insert, "prices"},
    TemplateLine{Insert, "exclusions"},

    TemplateLine{Heading, QT_TRANSLATE_NOOP("Proposal", "12. Method and sources")},
    TemplateLine{Text,
                 QT_TRANSLATE_NOOP(
                     "Proposal",
                     "One column of water from surface to bottom, with sun, wind, surface exchange, the "
                     "plume of the diffusers, the oxygen debt of the bottom water, mud, algae and fish, in "
                     "steps of minutes. {members} ponds like this one were drawn (seed {seed}), the same for "
                     "every option. All numbers on this and the accompanying papers come from one run; its "
                     "name below is the SHA-256 of its inputs, and the bundle holds them.")},
    TemplateLine{Text,
                 QT_TRANSLATE_NOOP("Proposal",
                                   "Head of the log that the run was made with: {logHead}. It shows whether "
                                   "entries were changed since, not whether they are true."),
                 "logHead"},
    TemplateLine{
        Small,
        QT_TRANSLATE_NOOP(
            "Proposal",
            "Oxygen saturation: Benson and Krause (1984). Density: UNESCO (1983). Bubble plume: W\u00fcest, "
            "Brooks and Imboden (1992), Water Resources Research 28. Criteria for oxygen: U.S. EPA "
            "440/5-86-003 (1986). Points of a sequence: Sobol, scrambled after Owen (1995). Percentiles: "
            "Hyndman and Fan (1996), type 7. Ramps by doubling, ratios of debt to oxygen, dawn limits and "
            "waiting times: common practice without a published source. Signs in the incident sheet: U.S. "
            "Fish and Wildlife Service, Field Manual for the Investigation of Fish Kills (1990).")},
};

QString tr(const char* text) {
    return QCoreApplication::translate("Proposal", text);
}

/// Facts in two columns; what is not given stays a box to write in.
void setFound(const PaperRun& run, const PaperValues& values, PaperFlow& flow) {
    const engine::Pond& pond = run.comparison().model.pond;
    PaperTable table;
    table.points = 8.5;
    table.columns = {{tr("What"), 1.2, false},
                     {tr("Value"), 1.4, false},
                     {tr("What"), 1.2, false},
                     {tr("Value"), 1.4, false}};
    QStringList fish;
    for (const engine::FishStock& stock : pond.fish) {
        fish << tr("%1 %2").arg(toQString(stock.kind), stock.stock_kgPerHa
                                                           ? run.units.stock(stock.stock_kgPerHa->value)
                                                           : QString());
    }
    const QString smell = !pond.bottom.smell                           ? QString()
                          : *pond.bottom.smell == engine::Smell::None  ? tr("none")
                          : *pond.bottom.smell == engine::Smell::Faint ? tr("faint")
                                                                       : tr("strong");
    const auto value = [&](const char* name) { return values.value(QString::fromLatin1(name)); };
    const QString years = value("age").isEmpty() ? QString() : tr("%1 years").arg(value("age"));
    table.rows = {
        {tr("Area"), value("area"), tr("Age"), years},
        {tr("Greatest depth"), value("maxDepth"), tr("Muck"), value("muck")},
        {tr("Volume"), value("volume"), tr("Smell of the bottom"), smell},
        {tr("Secchi depth"), value("secchi"), tr("Profile taken"), value("profileDate")},
        {tr("Chlorophyll, \u00b5g/L"),
         pond.water.chlorophyll_ugPerL ? plainText(pond.water.chlorophyll_ugPerL->value) : QString(),
         tr("Meter, calibrated on"), QString()}};
    flow.table(table);
    flow.paragraph(fish.isEmpty() ? tr("Fish: not given.")
                                  : tr("Fish: %1.").arg(fish.join(QStringLiteral("; "))));
}

void setProfile(const PaperRun& run, PaperFlow& flow) {
    const engine::PondModel& model = run.comparison().model;
    if (model.profileIsGuess) {
        return;
    }
    PaperTable table;
    table.columns = {{tr("Depth, %1").arg(run.units.depthHead()), 1, true},
                     {tr("Temperature, %1").arg(run.units.temperatureHead()), 1, true},
                     {tr("Oxygen, mg/L"), 1, true}};
    for (std::size_t i = 0; i < model.profile.depth.size(); ++i) {
        table.rows.push_back({run.units.depthCell(model.profile.depth[i]),
                              run.units.temperatureCell(model.profile.temperature[i]),
                              fixedText(model.profile.oxygen[i], 1)});
    }
    flow.table(table);
}

void setOptions(const PaperRun& run, PaperFlow& flow) {
    const engine::Comparison& comparison = run.comparison();
    PaperTable table;
    table.points = 8.0;
    table.columns = {{tr("Option"), 2.4, false},
                     {tr("Days to continuous"), 1, true},
                     {tr("Worst low, mg/L"), 0.9, true},
                     {tr("on night"), 0.7, true},
                     {tr("Largest dose, %"), 0.9, true},
                     {tr("End state, mg/L"), 0.9, true},
                     {tr("Under stress line"), 1, true},
                     {tr("Under lethal line"), 1, true},
                     {tr("Added"), 0.9, true}};
    const QString none = QStringLiteral("\u2013");
    for (std::size_t i = 0; i < comparison.runs.size(); ++i) {
        const engine::RampRun& one = comparison.runs[i];
        if (!isDrawn(one)) {
            continue;
        }
        const engine::Chances chances = engine::chancesOf(comparison, one);
        const engine::DayRow* largest = i == 0 ? nullptr : one.largestDose();
        const auto ten = [](double share) {
            return toQString(engine::shownValue({"", engine::Measure::OfTen, share, {}}));
        };
        if (i == run.plan) {
            table.strong.push_back(table.rows.size());
        }
        table.rows.push_back(
            {rampText(one.name, i), one.daysToContinuous ? QString::number(*one.daysToContinuous) : none,
             fixedText(one.worst().lowest, 1), QString::number(one.worst().day),
             largest != nullptr && comparison.model.bottom.exists()
                 ? fixedText(100.0 * largest->liftedVolume / comparison.model.bottom.volume, 0)
                 : none,
             one.endState ? fixedText(*one.endState, 1) : none, ten(chances.belowStress),
             ten(chances.belowLethal), i == 0 ? none : ten(chances.added.value_or(0.0))});
    }
    flow.table(table);
}

void setDesign(const PaperRun& run, const PaperValues& values, PaperFlow& flow) {
    const engine::PondModel& model = run.comparison().model;
    const auto value = [&](const char* name) { return values.value(QString::fromLatin1(name)); };
    PaperTable table;
    table.columns = {{tr("Part"), 1.6, false}, {tr("As planned"), 2.4, false}};
    table.rows = {{tr("Diffusers"), value("diffusers")},
                  {tr("Depth of the diffusers"), value("diffuserDepth")},
                  {tr("Free air for each (20 \u00b0C, 1 atm)"), value("air")},
                  {tr("Power, kW"), value("power")}};
    if (model.pond.aerator && model.pond.aerator->depth) {
        const double depth = model.pond.aerator->depth->value;
        // Weight of the water alone: lines and diffusers come on top and are the maker's to say.
        table.rows.push_back({tr("Pressure of the water at that depth"),
                              run.units.pressure(1000.0 * engine::kGravity * depth)});
        table.rows.push_back(
            {tr("Water below the diffusers"),
             tr("%1 % of the volume; it stays as it is")
                 .arg(fixedText(100.0 * model.basin.volumeBelow(depth) / model.basin.volume(), 0))});
    }
    const engine::DayRow* largest = run.planRun().largestDose();
    if (largest != nullptr && largest->liftedVolume > 0.0) {
        const double turnover =
            largest->liftedVolume / (largest->runMinutes / 60.0) * 24.0 / model.basin.volume();
        table.rows.push_back({tr("Lifted out of the bottom water on day %1").arg(largest->day),
                              tr("%1 in %2 min")
                                  .arg(run.units.volume(largest->liftedVolume))
                                  .arg(largest->runMinutes, 0, 'f', 0)});
        table.rows.push_back(
            {tr("The same rate for a whole day"), tr("%1 pond volumes").arg(fixedText(turnover, 1))});
    }
    flow.table(table);
}

void setPrices(const PaperRun& run, PaperFlow& flow) {
    const engine::Consultant& who = run.consultant;
    PaperTable table;
    table.rowHeight = 15.0 * kPoint;
    table.columns = {
        {tr("Item"), 3, false},
        {tr("Unit"), 1, false},
        {tr("Number"), 0.8, true},
        {who.currency.empty() ? tr("Price of one") : tr("Price of one, %1").arg(toQString(who.currency)), 1.2,
         true},
        {tr("Amount"), 1.2, true}};
    for (const engine::Price& price : who.prices) {
        table.rows.push_back({toQString(price.item), toQString(price.unit), QString(),
                              price.amount ? fixedText(*price.amount, 2) : QString(), QString()});
    }
    if (table.rows.empty()) {
        table.rows.assign(5, QStringList(5));
    }
    table.rows.push_back({tr("Sum"), QString(), QString(), QString(), QString()});
    table.strong = {table.rows.size() - 1};
    flow.table(table);
}

void setExclusions(const PaperRun& run, PaperFlow& flow) {
    QStringList texts;
    for (const std::string& text : run.consultant.exclusions) {
        texts << toQString(text);
    }
    if (texts.isEmpty()) {
        flow.paragraph(tr("Not in the price:"));
        flow.lines(3);
    } else {
        flow.paragraph(tr("Not in the price: %1.").arg(texts.join(QStringLiteral("; "))));
    }
}

void setDuties(PaperFlow& flow) {
    PaperTable table;
    table.columns = {{tr("Who"), 1, false}, {tr("Does"), 4, false}};
    table.rows = {{tr("Owner"), tr("dawn readings and log, or names who does; runs the air by the schedule; "
                                   "permits; nothing added to the water")},
                  {tr("Deputy"), tr("stands in for the owner, with meter, log and phone numbers at hand")},
                  {tr("Consultant"), tr("plan, commissioning, phone during the start-up, new run when "
                                        "readings or weather call for it, 60-day review")},
                  {tr("Electrician"), tr("supply, protective devices and certificate")}};
    flow.table(table);
}

/// What is said of the plan alone, without the other ramps.
QStringList planSentences(const PaperRun& run) {
    QStringList texts;
    std::size_t at = 0;
    for (const engine::Sentence& sentence : engine::sentencesOf(run.comparison())) {
        if (sentence.part != engine::SentencePart::Ramp || sentence.key == engine::SentenceKey::RampsApart) {
            continue;
        }
        at += sentence.key == engine::SentenceKey::RampWorst ||
                      sentence.key == engine::SentenceKey::RampEndedEarly
                  ? 1
                  : 0;
        if (at == run.plan) {
            texts << onPaper(run, sentence);
        }
    }
    return texts;
}

}  // namespace

Paper proposal(const PaperRun& run) {
    const PaperValues values = valuesOf(run);
    const FigureSource figures = run.figures();
    PaperInserts inserts = cautionInsert(run);
    const auto insert = [&](const char* name, std::function<void(PaperFlow&)> set) {
        inserts[QString::fromLatin1(name)] = std::move(set);
    };
    const auto sentences = [&run](engine::SentencePart part) {
        return
            [&run, part](PaperFlow& flow) { flow.paragraph(sentencesOn(run, part).join(QLatin1Char(' '))); };
    };
    insert("night", [&](PaperFlow& flow) { flow.figure(nightFigure(figures, 72.0 * kMillimetre)); });
    insert("chances", [&](PaperFlow& flow) { flow.table(chanceTable(run)); });
    insert("found", [&](PaperFlow& flow) { setFound(run, values, flow); });
    insert("profileFigure", [&](PaperFlow& flow) { flow.figure(profileFigure(figures)); });
    insert("profileTable", [&](PaperFlow& flow) { setProfile(run, flow); });
    insert("pondSentences", [&run](PaperFlow& flow) {
        QStringList said;
        for (const auto part :
             {engine::SentencePart::Pond, engine::SentencePart::Profile, engine::SentencePart::Triage}) {
            said << sentencesOn(run, part);
        }
        flow.paragraph(said.join(QLatin1Char(' ')));
    });
    insert("nothingSentences", sentences(engine::SentencePart::DoNothing));
    insert("budget", [&](PaperFlow& flow) { flow.figure(budgetFigure(figures)); });
    insert("options", [&](PaperFlow& flow) { setOptions(run, flow); });
    insert("design", [&](PaperFlow& flow) { setDesign(run, values, flow); });
    insert("lows", [&](PaperFlow& flow) { flow.figure(lowsFigure(figures)); });
    insert("planSentences", [&](PaperFlow& flow) { flow.bullets(planSentences(run)); });
    insert("dose", [&](PaperFlow& flow) { flow.figure(doseFigure(figures)); });
    insert("run", [&](PaperFlow& flow) { flow.figure(wholeRunFigure(figures)); });
    insert("runs", [&](PaperFlow& flow) { flow.table(runTable(run, false)); });
    insert("dawn", [&](PaperFlow& flow) { flow.table(dawnTable(run)); });
    insert("duties", setDuties);
    insert("assumptions",
           [&](PaperFlow& flow) { flow.bullets(sentencesOn(run, engine::SentencePart::Assumption)); });
    insert("prices", [&](PaperFlow& flow) { setPrices(run, flow); });
    insert("exclusions", [&](PaperFlow& flow) { setExclusions(run, flow); });
    return paperOf(run, QStringLiteral("proposal"), tr("Starting bottom aeration: proposal"), "Proposal",
                   kProposal, inserts);
}

}  // namespace widgets
