// The technical proposal.
#include "engine/ensemble/chances.h"
#include "engine/run/power_use.h"
#include "engine/run/shares.h"
#include "engine/run/warm_night.h"
#include "engine/wording/wording.h"
#include "widgets/document/to_qstring.h"
#include "widgets/document/wording.h"
#include "widgets/papers/paper_parts.h"
#include "widgets/papers/papers.h"
#include "widgets/papers/proposal_words.h"

#include <QCoreApplication>

#include <algorithm>
#include <cmath>

namespace widgets {
namespace {

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
    table.columns = {{tr("Ramp"), 2.4, false},
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
        const auto largest = i == 0 ? std::nullopt : engine::largestDosePercent(comparison.model, one);
        const auto hundred = [](double share) {
            return toQString(engine::shownValue({"", engine::Measure::Of100, share, {}}));
        };
        const double added = std::round(100.0 * chances.addedLethal.value_or(0.0));
        if (i == run.plan) {
            table.strong.push_back(table.rows.size());
        }
        table.rows.push_back(
            {rampText(one.name, i), one.daysToContinuous ? QString::number(*one.daysToContinuous) : none,
             engine::warmNight(comparison.model, one, one.worst()) ? tr("too warm")
                                                                   : fixedText(one.worst().lowest, 1),
             QString::number(one.worst().day), largest ? fixedText(*largest, 0) : none,
             one.endState ? fixedText(*one.endState, 1) : none, hundred(chances.belowStress),
             hundred(chances.belowLethal),
             i == 0 ? none : (added > 0.0 ? QStringLiteral("+") : QString()) + fixedText(added, 0)});
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
        table.rows.push_back(
            {tr("Pressure of the water at that depth"), run.units.pressure(engine::waterPressure(depth))});
        table.rows.push_back({tr("Water below the diffusers"),
                              tr("%1 % of the volume; it stays as it is")
                                  .arg(fixedText(engine::percentBelow(model.basin, depth), 0))});
    }
    const engine::DayRow* largest = run.planRun().largestDose();
    if (largest != nullptr && largest->liftedVolume > 0.0) {
        const double turnover = engine::turnoversPerDay(model, *largest);
        table.rows.push_back({tr("Lifted out of the bottom water on day %1").arg(largest->day),
                              tr("%1 in %2 min")
                                  .arg(run.units.volume(largest->liftedVolume))
                                  .arg(largest->runMinutes, 0, 'f', 0)});
        table.rows.push_back(
            {tr("The same rate for a whole day"), tr("%1 pond volumes").arg(fixedText(turnover, 1))});
    }
    flow.table(table);
}

/// True of the price of a kilowatt-hour, by its unit.
bool isOfPower(const engine::Price& price) {
    return toQString(price.unit).trimmed().compare(QLatin1String("kWh"), Qt::CaseInsensitive) == 0;
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
        if (isOfPower(price)) {
            continue;  // its number is computed, below
        }
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

/// What the machines of the ramp take over its nights, by the price of a kilowatt-hour if the profile has
/// one.
void setPower(const PaperRun& run, PaperFlow& flow) {
    const engine::PondModel& model = run.comparison().model;
    const engine::Consultant& who = run.consultant;
    const auto price = std::find_if(who.prices.begin(), who.prices.end(), isOfPower);
    const auto perKWh = price != who.prices.end() ? price->amount : std::nullopt;
    PaperTable table;
    table.columns = {
        {tr("Power"), 3, false},
        {tr("kW"), 0.8, true},
        {tr("Hours"), 0.8, true},
        {tr("kWh"), 0.8, true},
        {who.currency.empty() ? tr("Amount") : tr("Amount, %1").arg(toQString(who.currency)), 1.2, true}};
    double energy = 0.0;
    const auto amount = [&](double kWh) { return perKWh ? fixedText(kWh * *perKWh, 2) : QString(); };
    const auto add = [&](const QString& name, const std::optional<engine::PowerUse>& use) {
        if (use) {
            energy += use->energy_kWh();
            table.rows.push_back({name, fixedText(use->power_kW, 2), fixedText(use->hours, 0),
                                  fixedText(use->energy_kWh(), 0), amount(use->energy_kWh())});
        }
    };
    add(tr("Compressor"), engine::compressorUse(model, run.planRun()));
    add(tr("Surface air at night"), engine::surfaceAirUse(run.planRun()));
    add(tr("Surface aerator that is there"), engine::surfaceAeratorUse(model, run.planRun()));
    if (table.rows.empty()) {
        flow.paragraph(tr("Power: what the machines draw is not given, so that it is not in this price."));
        return;
    }
    table.rows.push_back({tr("Together"), QString(), QString(), fixedText(energy, 0), amount(energy)});
    table.strong = {table.rows.size() - 1};
    flow.paragraph(
        perKWh
            ? tr("Power over the first %1 nights, at %2 for a kilowatt-hour. The owner pays it; it is not in "
                 "the sum above.")
                  .arg(run.comparison().days)
                  .arg(plainText(*perKWh))
            : tr("Power over the first %1 nights. The owner pays it; it is not in the sum above.")
                  .arg(run.comparison().days));
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
    table.rows = {
        {tr("Owner"),
         tr("reads at dawn and keeps the log, or names who does; runs the air by the schedule; gets "
            "the permits; adds nothing to the water")},
        {tr("Stand-in"), tr("takes the owner\u2019s place, with meter, log and phone numbers at hand")},
        {tr("Consultant"),
         tr("makes the plan, is there for the first run, answers the phone during the start-up, makes "
            "the plan anew when readings or weather call for it, reviews after 60 days")},
        {tr("Electrician"), tr("sees to supply and protective devices, and certifies them")}};
    flow.table(table);
}

/// The answer as a lead, the rest of it below.
void setAdvice(const PaperRun& run, PaperFlow& flow) {
    QStringList said = adviceOn(run);
    flow.paragraph(said.takeFirst(), TextStyle::Lead);
    flow.bullets(said);
}

/// What the first section says already.
bool isInRecommendation(engine::SentenceKey key) {
    using enum engine::SentenceKey;
    return key == RampWorst || key == RampTooWarm || key == NightNothing || key == AdviceChance ||
           key == AdviceMore || key == AdviceFewer || key == RampEndState;
}

/// What is said of the ramp of the papers alone, without the others.
QStringList rampSentences(const PaperRun& run) {
    QStringList texts;
    std::size_t at = 0;
    for (const engine::Sentence& sentence : engine::sentencesOf(run.comparison())) {
        if (sentence.part != engine::SentencePart::Ramp || sentence.key == engine::SentenceKey::RampsApart) {
            continue;
        }
        at += sentence.key == engine::SentenceKey::RampWorst ||
                      sentence.key == engine::SentenceKey::RampTooWarm ||
                      sentence.key == engine::SentenceKey::RampEndedEarly
                  ? 1
                  : 0;
        if (at == run.plan && !isInRecommendation(sentence.key)) {
            texts << onPaper(run, sentence);
        }
    }
    return texts;
}

/// The pond and its profile. What the trade makes of them without a run stays away: the answer stands above.
QStringList diagnosis(const PaperRun& run) {
    QStringList said;
    for (const auto part :
         {engine::SentencePart::Pond, engine::SentencePart::Profile, engine::SentencePart::Triage}) {
        for (const engine::Sentence& sentence : engine::sentencesOf(run.comparison())) {
            if (sentence.part == part && sentence.key != engine::SentenceKey::Title &&
                !engine::isRuleOfThumb(sentence.key)) {
                said << onPaper(run, sentence);
            }
        }
    }
    return said;
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
    insert("advice", [&](PaperFlow& flow) { setAdvice(run, flow); });
    insert("night", [&](PaperFlow& flow) { flow.figure(nightFigure(figures, 72.0 * kMillimetre)); });
    insert("chances", [&](PaperFlow& flow) { flow.table(chanceTable(run)); });
    insert("found", [&](PaperFlow& flow) { setFound(run, values, flow); });
    insert("profileFigure", [&](PaperFlow& flow) { flow.figure(profileFigure(figures)); });
    insert("profileTable", [&](PaperFlow& flow) { setProfile(run, flow); });
    insert("pondSentences",
           [&run](PaperFlow& flow) { flow.paragraph(diagnosis(run).join(QLatin1Char(' '))); });
    insert("nothingSentences", sentences(engine::SentencePart::DoNothing));
    insert("budget", [&](PaperFlow& flow) { flow.figure(budgetFigure(figures)); });
    insert("options", [&](PaperFlow& flow) { setOptions(run, flow); });
    insert("months", [&](PaperFlow& flow) { flow.figure(monthsFigure(figures)); });
    insert("design", [&](PaperFlow& flow) { setDesign(run, values, flow); });
    insert("lows", [&](PaperFlow& flow) { flow.figure(lowsFigure(figures)); });
    insert("rampSentences", [&](PaperFlow& flow) { flow.bullets(rampSentences(run)); });
    insert("dose", [&](PaperFlow& flow) { flow.figure(doseFigure(figures)); });
    insert("run", [&](PaperFlow& flow) { flow.figure(wholeRunFigure(figures)); });
    insert("runs", [&](PaperFlow& flow) { flow.table(runTable(run, false)); });
    insert("dawn", [&](PaperFlow& flow) { flow.table(dawnTable(run)); });
    insert("duties", setDuties);
    insert("assumptions",
           [&](PaperFlow& flow) { flow.bullets(sentencesOn(run, engine::SentencePart::Assumption)); });
    insert("grounds",
           [&](PaperFlow& flow) { flow.bullets(sentencesOn(run, engine::SentencePart::Grounds)); });
    insert("prices", [&](PaperFlow& flow) { setPrices(run, flow); });
    insert("power", [&](PaperFlow& flow) { setPower(run, flow); });
    insert("exclusions", [&](PaperFlow& flow) { setExclusions(run, flow); });
    return paperOf(run, QStringLiteral("proposal"), tr("Starting bottom aeration: proposal"), "Proposal",
                   kProposal, inserts);
}

}  // namespace widgets
