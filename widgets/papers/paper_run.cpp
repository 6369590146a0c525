#include "widgets/papers/paper_run.h"

#include "engine/base/error.h"
#include "engine/base/units.h"
#include "engine/ensemble/chances.h"
#include "engine/follow_up/log_chain.h"
#include "engine/pond/local_time.h"
#include "engine/ramps/weather.h"
#include "engine/run/nights.h"
#include "engine/run/shares.h"
#include "engine/run/warm_night.h"
#include "engine/water/oxygen_state.h"
#include "engine/wording/sentence_advice.h"
#include "engine/wording/wording.h"
#include "widgets/charts/sheets.h"
#include "widgets/document/to_qstring.h"
#include "widgets/document/wording.h"

#include <QCoreApplication>
#include <QDate>
#include <QDateTime>
#include <QTimeZone>

#include <algorithm>
#include <cmath>

namespace widgets {
namespace {

QString tr(const char* text, int count = -1) {
    return QCoreApplication::translate("PaperValues", text, nullptr, count);
}

/// So many of 100, in words that fit a sentence.
QString of100(double share) {
    return toQString(engine::shownValue({"", engine::Measure::Of100, share, {}}));
}

engine::LocalTime localTime(const PaperRun& run) {
    const double offset = run.comparison().model.pond.place.utcOffset_h.value_or(engine::Quantity(0.0)).value;
    return engine::LocalTime(run.frozen->stamp.time.time_since_epoch()) +
           std::chrono::seconds(std::lround(offset * engine::kHour));
}

QString runStampText(const PaperRun& run) {
    const engine::RunStamp& stamp = run.frozen->stamp;
    return tr("Dawnline %1; run of %2 (pond\u2019s own clock); seed %3; %4 members; %5 nights")
        .arg(toQString(stamp.version), toQString(engine::formatLocalTime(localTime(run))))
        .arg(stamp.seed)
        .arg(stamp.members)
        .arg(stamp.nights);
}

void setPeople(const PaperRun& run, PaperValues& values) {
    const engine::Consultant& who = run.consultant;
    const engine::Pond& pond = run.comparison().model.pond;
    values.set(QStringLiteral("business"), toQString(who.business));
    values.set(QStringLiteral("consultant"), toQString(who.name));
    values.set(QStringLiteral("phone"), toQString(who.phone));
    values.set(QStringLiteral("email"), toQString(who.email));
    values.set(QStringLiteral("licence"), toQString(who.licence));
    values.set(QStringLiteral("title"), toQString(pond.title));
    values.set(QStringLiteral("client"), pond.client ? toQString(pond.client->name) : QString());
    values.set(QStringLiteral("clientPhone"), pond.client ? toQString(pond.client->phone) : QString());
}

void setPond(const PaperRun& run, PaperValues& values) {
    const engine::PondModel& model = run.comparison().model;
    const engine::Pond& pond = model.pond;
    const PaperUnits& units = run.units;
    const auto quantity = [&](const char* name, const engine::MaybeQuantity& value, auto text) {
        values.set(QString::fromLatin1(name), value ? text(value->value) : QString());
    };
    const auto plain = [](double value) { return plainText(value); };
    values.set(QStringLiteral("area"), units.area(model.basin.area(0.0)));
    values.set(QStringLiteral("maxDepth"), units.depth(model.basin.maxDepth()));
    values.set(QStringLiteral("volume"), units.volume(model.basin.volume()));
    quantity("age", pond.bottom.age_years, plain);
    quantity("muck", pond.bottom.muck, [&](double value) { return units.depth(value); });
    quantity("secchi", pond.water.secchi, [&](double value) { return units.depth(value); });
    quantity("alkalinity", pond.water.alkalinity, plain);
    values.set(QStringLiteral("debt"), units.mass(model.debt_kg));
    values.set(QStringLiteral("pool"), units.mass(model.oxygenReserve_kg));
    if (const auto ratio = engine::debtToReserve(model)) {
        values.set(QStringLiteral("ratio"), fixedText(*ratio, 2));
    }
    if (const auto share = engine::bottomPercent(model)) {
        values.set(QStringLiteral("bottomDepth"), units.depth(model.bottom.depth));
        values.set(QStringLiteral("bottomShare"), fixedText(*share, 0));
    }
    if (pond.profile && pond.profile->at) {
        values.set(QStringLiteral("profileDate"), toQString(engine::formatLocalTime(*pond.profile->at)));
    }
    if (pond.aerator) {
        quantity("diffusers", pond.aerator->diffusers, plain);
        quantity("diffuserDepth", pond.aerator->depth, [&](double value) { return units.depth(value); });
        quantity("air", pond.aerator->freeAir_lPerMin, [&](double value) { return units.air(value); });
        quantity("power", pond.aerator->power_kW, [](double value) { return fixedText(value, 2); });
    }
}

QDate ownDate(const engine::Date& date) {
    return {static_cast<int>(date.year()), static_cast<int>(static_cast<unsigned>(date.month())),
            static_cast<int>(static_cast<unsigned>(date.day()))};
}

/// Hours that the owner's clocks are ahead of the pond's on the first day, by the zone of the pond file [h].
double clocksAhead_h(const engine::Pond& pond) {
    const QTimeZone zone(QByteArray::fromStdString(pond.place.timeZone));
    if (pond.place.timeZone.empty() || !zone.isValid()) {
        return 0.0;
    }
    const double own = pond.place.utcOffset_h.value_or(engine::Quantity(0.0)).value;
    const QDateTime noon(ownDate(*pond.place.firstDay), QTime(12, 0), zone);
    return noon.offsetFromUtc() / engine::kHour - own;
}

/// "UTC-6"
QString clockName(const engine::Pond& pond) {
    const double hours = pond.place.utcOffset_h.value_or(engine::Quantity(0.0)).value;
    return QStringLiteral("UTC%1%2").arg(QString(hours < 0.0 ? QChar(0x2212) : QChar(0x2b)),
                                         plainText(std::fabs(hours)));
}

void setPlan(const PaperRun& run, PaperValues& values) {
    const engine::Comparison& comparison = run.comparison();
    const engine::RampRun& plan = run.planRun();
    const engine::Advice& advice = run.advice();
    const engine::Pond& pond = comparison.model.pond;
    values.set(QStringLiteral("ramp"), toQString(plan.name));
    values.set(QStringLiteral("nights"), QString::number(comparison.days));
    values.set(QStringLiteral("startDate"), paperDate(advice.firstDay));
    values.set(QStringLiteral("runDate"),
               paperDate(engine::Date(std::chrono::floor<std::chrono::days>(localTime(run)))));
    const bool isFastOfOxygen = run.fast && !engine::warmNight(comparison.model, comparison.runs[*run.fast],
                                                               comparison.runs[*run.fast].worst());
    if (isFastOfOxygen) {
        const engine::RampRun& fast = comparison.runs[*run.fast];
        values.set(QStringLiteral("fast"), toQString(fast.name));
        const engine::DayRow& worst = fast.worst();
        values.set(QStringLiteral("fastLow"), oxygenText(worst.lowest));
        values.set(QStringLiteral("fastDate"),
                   paperDate(engine::dateOfDay(
                       pond, static_cast<int>(std::floor(worst.lowestTime / engine::kDay)) + 1)));
    }
    if (plan.daysToContinuous) {
        values.set(QStringLiteral("rampDays"), QString::number(*plan.daysToContinuous));
        values.set(QStringLiteral("rampDate"), paperDate(engine::dateOfDay(pond, *plan.daysToContinuous)));
    } else {
        values.set(QStringLiteral("rampPart"), QString::number(comparison.days));
    }
    if (const auto dose = engine::largestDosePercent(comparison.model, plan)) {
        values.set(QStringLiteral("largestDose"), fixedText(*dose, 0));
        values.set(QStringLiteral("largestDoseDay"), QString::number(plan.largestDose()->day));
    }
    if (run.frozen->review) {
        values.set(QStringLiteral("reviewed"), QStringLiteral("1"));
    }
    if (advice.lethal && advice.stress) {
        values.set(QStringLiteral("lethalWith"), of100(advice.lethal->with));
        values.set(QStringLiteral("lethalAlone"), of100(advice.lethal->alone));
        values.set(QStringLiteral("stressWith"), of100(advice.stress->with));
        values.set(QStringLiteral("stressAlone"), of100(advice.stress->alone));
        values.set(QStringLiteral("effective"), fixedText(advice.effective, 0));
        values.set(QStringLiteral("plainLethalAlone"), of100(advice.plainLethalAlone.value_or(0.0)));
    }
}

/// What the answer adds: surface air, the time to wait for, what is not measured yet.
void setAdvice(const PaperRun& run, PaperValues& values) {
    const engine::Advice& advice = run.advice();
    if (advice.surfaceAir.transfer > 0.0) {
        values.set(QStringLiteral("surfaceFirst"), paperDay(*run.comparison().model.pond.place.firstDay));
        values.set(QStringLiteral("surfacePower"), plainText(advice.surfaceAir_kW));
        values.set(QStringLiteral("surfaceFrom"), clockText(advice.surfaceAir.from));
        values.set(QStringLiteral("surfaceUntil"), clockText(advice.surfaceAir.until));
    }
    if (advice.wait) {
        values.set(QStringLiteral("waitFrom"), paperDate(advice.wait->dates.from));
        values.set(QStringLiteral("waitUntil"), paperDate(advice.wait->dates.until));
    }
    if (!advice.provisional.empty()) {
        QStringList reasons;
        for (const engine::Sentence& sentence : engine::sentencesOf(advice, run.comparison().model)) {
            if (sentence.key == engine::SentenceKey::ProvisionalDebt ||
                sentence.key == engine::SentenceKey::ProvisionalProfile ||
                sentence.key == engine::SentenceKey::ProvisionalDawns) {
                reasons << onPaper(run, sentence);
            }
        }
        values.set(QStringLiteral("provisional"), reasons.join(QLatin1Char(' ')));
    }
    if (advice.endState && advice.endStateAlone) {
        values.set(QStringLiteral("endState"), oxygenText(*advice.endState));
        values.set(QStringLiteral("endNothing"), oxygenText(*advice.endStateAlone));
    }
}

void setLines(const PaperRun& run, PaperValues& values) {
    const engine::OxygenThresholds& thresholds = run.comparison().model.parameters.thresholds;
    const engine::DawnLimits limits = dawnLimits(run);
    values.set(QStringLiteral("line"), oxygenText(thresholds.stress));
    values.set(QStringLiteral("lethal"), oxygenText(thresholds.lethal));
    values.set(QStringLiteral("go"), oxygenText(limits.go));
    values.set(QStringLiteral("hold"), oxygenText(limits.hold));
    values.set(QStringLiteral("back"), oxygenText(limits.back));
    values.set(QStringLiteral("morningRise"), plainText(limits.morningRise));
    values.set(QStringLiteral("holdWeather"), onPaper(run, engine::holdWeather()));
}

}  // namespace

engine::DawnLimits dawnLimits(const PaperRun& run) {
    const engine::PondModel& model = run.comparison().model;
    return engine::dawnLimits(model, model.profile.temperature.front());
}

FigureSource PaperRun::figures() const {
    const engine::Advice& answer = advice();
    const bool isOfPlan = answer.mayStart();
    return {outcome,
            plan,
            fast,
            isOfPlan ? answer.worst.day : answer.worstAlone.day,
            isOfPlan,
            units,
            format.inner().width()};
}

PaperRun paperRun(std::shared_ptr<const engine::FrozenRun> frozen, engine::Consultant consultant,
                  engine::StartLedger ledger) {
    PaperRun run;
    run.ledger = std::move(ledger);
    auto outcome = std::make_shared<Outcome>();
    outcome->comparison = frozen->comparison;
    outcome->backdrop = engine::backdropOf(outcome->comparison.model, outcome->comparison.days);
    outcome->isWhole = true;
    outcome->answer = std::make_shared<const engine::Advice>(frozen->advice);
    run.plan = frozen->advice.run;
    run.fast = engine::fastestRamp(outcome->comparison, run.plan);
    engine::ensure(run.plan > 0, "papers are made of a pond with a ramp");
    run.outcome = std::move(outcome);
    run.frozen = std::move(frozen);
    const auto& units = run.outcome->comparison.model.pond.units;  // the pond's own come before the profile's
    run.isUs = units ? *units == engine::UnitSystem::Us : consultant.usUnits;
    run.units = PaperUnits(run.isUs);
    run.format.size = consultant.letter ? QPageSize::Letter : QPageSize::A4;
    run.consultant = std::move(consultant);
    return run;
}

PaperImprint imprintOf(const PaperRun& run) {
    PaperImprint imprint;
    const engine::Consultant& who = run.consultant;
    imprint.sender = toQString(who.business.empty() ? who.name : who.business);
    imprint.pond = toQString(run.comparison().model.pond.title);
    QStringList cautions;
    for (const auto key : {engine::SentenceKey::CautionComparison, engine::SentenceKey::CautionReadings}) {
        cautions << localized({engine::SentencePart::Caution, key, {}});
    }
    if (run.comparison().model.profileIsGuess) {
        cautions.prepend(tr("THE PROFILE IS A GUESS."));
    }
    if (!run.advice().provisional.empty()) {
        cautions.prepend(tr("PROVISIONAL."));
    }
    imprint.caution = cautions.join(QLatin1Char(' '));
    imprint.run = toQString(engine::nameOf(*run.frozen));
    imprint.stamp = runStampText(run);
    imprint.time = run.frozen->stamp.time;
    return imprint;
}

PaperValues valuesOf(const PaperRun& run) {
    PaperValues values;
    setPeople(run, values);
    setPond(run, values);
    setPlan(run, values);
    setLines(run, values);
    setAdvice(run, values);
    values.set(QStringLiteral("run"), toQString(engine::nameOf(*run.frozen)));
    const auto starts = run.ledger.starts.size();
    const QString off = fixedText(run.ledger.meanDistance(), 1);
    values.set(QStringLiteral("checked"),
               starts == 0 ? tr("no start has been checked against readings so far")
               : starts == 1
                   ? tr("one start has been checked against readings, %1 mg/L off on average").arg(off)
                   : tr("%1 starts have been checked against readings, %2 mg/L off on average")
                         .arg(starts)
                         .arg(off));
    const engine::Pond& pond = run.comparison().model.pond;
    values.set(QStringLiteral("clock"), clockName(pond));
    if (const double ahead = clocksAhead_h(pond); ahead != 0.0) {
        values.set(
            QStringLiteral("ownClock"),
            (ahead > 0.0 ? tr("Your clocks (%1) show %2 h more.") : tr("Your clocks (%1) show %2 h less."))
                .arg(toQString(pond.place.timeZone), plainText(std::fabs(ahead))));
    }
    if (run.advice().mayStart()) {
        values.set(QStringLiteral("starts"), QStringLiteral("yes"));
        QStringList holds;
        for (const engine::Date& date : run.advice().holdDays) {
            holds << paperDay(date);
        }
        if (!holds.isEmpty()) {
            values.set(QStringLiteral("holdDays"), holds.join(QStringLiteral(", ")));
        }
    }
    values.set(QStringLiteral("degrees"), run.isUs ? tr("\u00b0F") : tr("\u00b0C"));
    values.set(QStringLiteral("members"), QString::number(run.frozen->stamp.members));
    values.set(QStringLiteral("seed"), QString::number(run.frozen->stamp.seed));
    values.set(QStringLiteral("version"), toQString(run.frozen->stamp.version));
    const engine::LogHead head = engine::logHead(pond);
    if (head.readings + head.events + head.rows > 0) {
        values.set(QStringLiteral("logHead"), toQString(engine::shown(head)));
    }
    return values;
}

QString paperDate(const engine::Date& date) {
    return ownDate(date).toString(QStringLiteral("d MMM yyyy"));
}

QString paperDay(const engine::Date& date) {
    return ownDate(date).toString(QStringLiteral("d MMM"));
}

QString ownersClock(const engine::Pond& pond, double time) {
    const double ahead = clocksAhead_h(pond);
    return ahead == 0.0
               ? clockText(time)
               : tr("%1 (%2 on your clock)").arg(clockText(time), clockText(time + ahead * engine::kHour));
}

QString runClock(const PaperRun& run, const engine::RunRow& row, double time) {
    const int day = static_cast<int>(std::floor(time / engine::kDay + 1e-9)) + 1;
    const QString clock = clockText(time);
    if (day == row.day) {
        return clock;
    }
    return tr("%1 on %2").arg(clock, paperDay(engine::dateOfDay(run.comparison().model.pond, day)));
}

QString onPaper(const PaperRun& run, engine::Sentence sentence) {
    sentence.units = run.isUs ? engine::UnitSystem::Us : engine::UnitSystem::Metric;
    return localized(sentence)
        .replace(QLatin1String("degC"), tr("\u00b0C"))
        .replace(QLatin1String("degF"), tr("\u00b0F"));
}

QStringList adviceOn(const PaperRun& run) {
    QStringList texts;
    for (const engine::Sentence& sentence : engine::sentencesOf(run.advice(), run.comparison().model)) {
        texts << onPaper(run, sentence);
    }
    return texts;
}

QStringList sentencesOn(const PaperRun& run, engine::SentencePart part) {
    QStringList texts;
    for (const engine::Sentence& sentence : engine::sentencesOf(run.comparison())) {
        if (sentence.part == part && sentence.key != engine::SentenceKey::Title) {
            texts << onPaper(run, sentence);
        }
    }
    return texts;
}

}  // namespace widgets
