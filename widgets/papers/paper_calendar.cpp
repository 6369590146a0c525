#include "engine/base/digest.h"
#include "engine/base/text.h"
#include "engine/base/units.h"
#include "engine/run/backdrop.h"
#include "widgets/document/to_qstring.h"
#include "widgets/document/wording.h"
#include "widgets/papers/paper_parts.h"
#include "widgets/papers/papers.h"

#include <QCoreApplication>

#include <algorithm>
#include <cmath>

namespace widgets {
namespace {

constexpr int kReadingMinutes = 15, kWarningMinutes = 15;
constexpr int kReadingsAfter = 3;  ///< Dawns that are read after the last run of the list

QString tr(const char* text) {
    return QCoreApplication::translate("PaperCalendar", text);
}

/// Local midnight of day 1 as an instant.
std::chrono::sys_seconds firstMidnight(const engine::Pond& pond) {
    const double offset = pond.place.utcOffset_h.value_or(engine::Quantity(0.0)).value;
    return std::chrono::sys_days(*pond.place.firstDay) -
           std::chrono::seconds(std::lround(offset * engine::kHour));
}

std::chrono::sys_seconds instant(const engine::Pond& pond, double time) {
    return firstMidnight(pond) + std::chrono::minutes(std::lround(time / engine::kMinute));
}

/// A pond's own part of names of events, the same whenever its schedule is exported, also for another start.
std::string pondMark(const engine::Pond& pond) {
    const auto number = [](const engine::MaybeQuantity& value) {
        return value ? engine::shortest(value->value) : std::string();
    };
    return engine::sha256(pond.title + '\n' + number(pond.place.latitude_deg) + '\n' +
                          number(pond.place.longitude_deg))
        .substr(0, 16);
}

std::string text(const QString& words) {
    return words.toStdString();
}

bool isHold(const engine::Advice& advice, const engine::Date& date) {
    return std::find(advice.holdDays.begin(), advice.holdDays.end(), date) != advice.holdDays.end();
}

engine::CalendarEvent runEvent(const PaperRun& run, const engine::RunRow& row, const std::string& uid) {
    const engine::Pond& pond = run.comparison().model.pond;
    const engine::DawnLimits limits = dawnLimits(run);
    engine::CalendarEvent event;
    event.uid = uid;
    event.start = instant(pond, *row.start);
    const QString settings = tr("%1 open at %2").arg(row.open).arg(run.units.depth(row.depth));
    const QString rule =
        tr("Only if this dawn\u2019s reading was %1 mg/L or more. Between %2 and %1 run the same minutes as "
           "the day before; under %2 "
           "leave the air off; under %3 take the incident sheet and call.")
            .arg(fixedText(limits.go, 1), fixedText(limits.hold, 1), fixedText(limits.back, 1));
    if (row.stop) {
        event.end = instant(pond, *row.stop);
        event.summary = text(tr("Air on for %1 min, off at %2 (day %3)")
                                 .arg(row.minutes, 0, 'f', 0)
                                 .arg(runClock(run, row, *row.stop))
                                 .arg(row.day));
        event.alarms = {
            {false, kWarningMinutes,
             text(tr("Air on in %1 min: was this dawn\u2019s reading good enough?").arg(kWarningMinutes))},
            {true, 0, text(tr("Switch the air off now."))}};
    } else {
        event.end = event.start + std::chrono::minutes(kReadingMinutes);
        event.summary = text(tr("Air on, and from now on it stays on (day %1)").arg(row.day));
        event.alarms = {{false, kWarningMinutes,
                         text(tr("Air on to stay in %1 min: was this dawn\u2019s reading good enough?")
                                  .arg(kWarningMinutes))}};
    }
    if (isHold(run.advice(), engine::dateOfDay(pond, row.day))) {
        event.summary = text(tr("Hold day, call first: ")) + event.summary;
    }
    event.description =
        text(tr("%1.\n%2\n%3\nRun %4").arg(settings, rule, imprintOf(run).caution, imprintOf(run).run));
    return event;
}

/// The morning from which on the pond is looked at again.
engine::CalendarEvent recheckEvent(const PaperRun& run, const std::string& uid) {
    constexpr double kMorning = 9.0 * engine::kHour;
    const engine::Pond& pond = run.comparison().model.pond;
    engine::CalendarEvent event;
    event.uid = uid;
    event.start =
        instant(pond, (engine::dayNumber(pond, run.advice().wait->dates.from) - 1) * engine::kDay + kMorning);
    event.end = event.start + std::chrono::hours(1);
    event.summary = text(tr("Read a new profile and plan the start of the air again"));
    event.description =
        text(tr("%1\n%2\nRun %3").arg(adviceOn(run).front(), imprintOf(run).caution, imprintOf(run).run));
    return event;
}

}  // namespace

QString ownerMessage(const PaperRun& run) {
    const engine::Advice& advice = run.advice();
    const engine::Pond& pond = run.comparison().model.pond;
    const engine::DawnLimits limits = dawnLimits(run);
    if (!advice.mayStart()) {
        return advice.wait
                   ? tr("Leave the bottom air off. We look again from %1. Fish gasping: surface air on, no "
                        "feed, call us.")
                         .arg(paperDate(advice.wait->dates.from))
                   : tr("Leave the bottom air off. Fish gasping: surface air on, no feed, call us.");
    }
    for (const engine::RunRow& row : engine::runList(run.comparison(), run.plan)) {
        if (!row.start) {
            continue;
        }
        const engine::Date date = engine::dateOfDay(pond, row.day);
        if (isHold(advice, date)) {
            return tr("%1 is a hold day by the forecast: no start without our call. Read oxygen at dawn and "
                      "write it down. Fish gasping: surface air on, no feed, call.")
                .arg(paperDay(date));
        }
        const QString runs =
            row.stop
                ? tr("%1 min of air from %2").arg(fixedText(row.minutes, 0), ownersClock(pond, *row.start))
                : tr("air on from %1 to stay").arg(ownersClock(pond, *row.start));
        const QString night =
            advice.surfaceAir.transfer > 0.0
                ? tr(" Surface air %1 to %2 every night from %3 on.")
                      .arg(ownersClock(pond, advice.surfaceAir.from),
                           ownersClock(pond, advice.surfaceAir.until), paperDay(*pond.place.firstDay))
                : QString();
        return tr("%1: read oxygen at dawn. %2 mg/L or more: %3. Less: no air, call us.%4 Fish gasping: "
                  "surface air "
                  "on, no feed, call.")
            .arg(paperDay(date), fixedText(limits.go, 1), runs, night);
    }
    return tr("No air today. Read oxygen at dawn and call us.");
}

engine::Calendar scheduleCalendar(const PaperRun& run) {
    const engine::Pond& pond = run.comparison().model.pond;
    engine::Calendar calendar;
    calendar.name =
        text(tr("Start-up of the air: %1").arg(pond.title.empty() ? tr("pond") : toQString(pond.title)));
    calendar.program = "Dawnline " + run.frozen->stamp.version;
    calendar.time = run.frozen->stamp.time;
    const std::string mark = std::string("@").append(pondMark(pond)).append(".dawnline.invalid");
    if (!run.advice().mayStart()) {
        if (run.advice().wait) {
            calendar.events.push_back(recheckEvent(run, "recheck" + mark));
        }
        return calendar;
    }
    int day = 0, pulse = 0;
    for (const engine::RunRow& row : engine::runList(run.comparison(), run.plan)) {
        pulse = row.day == day ? pulse + 1 : 1;
        day = row.day;
        if (row.start) {
            calendar.events.push_back(
                runEvent(run, row, "day-" + std::to_string(day) + "-run-" + std::to_string(pulse) + mark));
        }
    }
    const int last = std::min(day + kReadingsAfter, run.comparison().days);
    const auto& nights = run.outcome->backdrop.nights;
    for (int dawn = 1; dawn <= last + 1; ++dawn) {
        // The dawn of day d + 1 belongs to night d; before night 1 the sun is a day earlier at nearly the
        // same time.
        const engine::NightSky& sky = nights[static_cast<std::size_t>(std::max(dawn - 2, 0))];
        const double sunrise = sky.sunrise.value_or((sky.night + 0.25) * engine::kDay);
        engine::CalendarEvent event;
        event.uid = "dawn-" + std::to_string(dawn) + mark;
        event.start = instant(pond, dawn == 1 ? sunrise - engine::kDay : sunrise);
        event.end = event.start + std::chrono::minutes(kReadingMinutes);
        event.summary = text(tr("Read oxygen and temperature at dawn (day %1)").arg(dawn));
        event.description =
            text(tr("Three depths: 0.5 m (1.6 ft) down, mid-depth, 0.5 m (1.6 ft) off the bottom. Write it "
                    "into the daily log."));
        event.alarms = {{false, kWarningMinutes, event.summary}};
        calendar.events.push_back(std::move(event));
    }
    return calendar;
}

}  // namespace widgets
