#include "engine/base/units.h"
#include "tests/papers/made_papers.h"

#include <algorithm>
#include <cmath>
#include <libical/ical.h>
#include <set>

namespace widgets {
namespace {

using test::headline;
using test::printed;

struct ReadEvent {
    std::string uid, summary, description;
    std::time_t start = 0, end = 0;
    std::vector<std::time_t> alarms;
};

/// What libical finds in a calendar; fails on anything it cannot read.
std::vector<ReadEvent> readByLibical(const std::string& text) {
    std::vector<ReadEvent> events;
    icalcomponent* root = icalparser_parse_string(text.c_str());
    EXPECT_NE(root, nullptr);
    EXPECT_EQ(icalcomponent_count_errors(root), 0);
    EXPECT_EQ(icalcomponent_get_method(root), ICAL_METHOD_NONE);
    EXPECT_TRUE(icalrestriction_check(root));
    for (icalcomponent* item = icalcomponent_get_first_component(root, ICAL_VEVENT_COMPONENT);
         item != nullptr; item = icalcomponent_get_next_component(root, ICAL_VEVENT_COMPONENT)) {
        ReadEvent event;
        event.uid = icalcomponent_get_uid(item);
        event.summary = icalcomponent_get_summary(item);
        event.description = icalcomponent_get_description(item);
        const icaltimetype start = icalcomponent_get_dtstart(item), end = icalcomponent_get_dtend(item);
        EXPECT_TRUE(icaltime_is_utc(start));
        event.start = icaltime_as_timet(start);
        event.end = icaltime_as_timet(end);
        EXPECT_FALSE(icaltime_is_null_time(icalcomponent_get_dtstamp(item)));
        for (icalcomponent* alarm = icalcomponent_get_first_component(item, ICAL_VALARM_COMPONENT);
             alarm != nullptr; alarm = icalcomponent_get_next_component(item, ICAL_VALARM_COMPONENT)) {
            icalproperty* trigger = icalcomponent_get_first_property(alarm, ICAL_TRIGGER_PROPERTY);
            const icalparameter* related = icalproperty_get_first_parameter(trigger, ICAL_RELATED_PARAMETER);
            const bool fromEnd = related != nullptr && icalparameter_get_related(related) == ICAL_RELATED_END;
            event.alarms.push_back((fromEnd ? event.end : event.start) +
                                   icaldurationtype_as_int(icalproperty_get_trigger(trigger).duration));
        }
        events.push_back(std::move(event));
    }
    icalcomponent_free(root);
    return events;
}

TEST(PaperCalendar, IsReadByLibicalWithEveryRunItsStopAndItsAlarms) {
    const auto events = readByLibical(headline().bytes("schedule.ics"));
    const engine::Comparison& comparison = headline().run.comparison();
    // Local midnight of day 1 at UTC-6.
    const std::time_t midnight =
        std::chrono::sys_days(*comparison.model.pond.place.firstDay).time_since_epoch().count() * 86400L +
        6 * 3600;
    std::size_t found = 0;
    for (const engine::RunRow& row : engine::runList(comparison, headline().run.plan)) {
        ASSERT_TRUE(row.start);
        const std::time_t start = midnight + std::lround(*row.start),
                          stop = midnight + std::lround(row.stop.value_or(*row.start + 900.0));
        const auto event = std::find_if(events.begin(), events.end(),
                                        [&](const ReadEvent& one) { return one.start == start; });
        ASSERT_NE(event, events.end())
            << "day " << row.day << ", the answer is " << engine::wordOf(*headline().run.advice().kind);
        EXPECT_EQ(event->end, stop);
        EXPECT_NE(event->summary.find(row.stop ? "off at" : "it stays on"), std::string::npos);
        EXPECT_EQ(event->alarms, row.stop ? (std::vector<std::time_t>{start - 900, stop})
                                          : std::vector<std::time_t>{start - 900});
        EXPECT_NE(event->description.find(engine::nameOf(*headline().run.frozen)), std::string::npos);
        ++found;
    }
    EXPECT_GT(found, 10U);
    std::set<std::string> names;
    for (const ReadEvent& event : events) {
        EXPECT_TRUE(names.insert(event.uid).second) << event.uid;
    }
    EXPECT_EQ(names.count(events.front().uid), 1U);
    EXPECT_GT(events.size(), 2 * found - 1) << "a dawn reading for every day";
}

TEST(PaperCalendar, AStartOnAnotherDayKeepsTheNames) {
    engine::FrozenRun later = *headline().run.frozen;
    auto& place = later.comparison.model.pond.place;
    place.firstDay = engine::Date(std::chrono::sys_days(*place.firstDay) + std::chrono::days(7));
    const auto moved = scheduleCalendar(paperRun(std::make_shared<const engine::FrozenRun>(later), {}));
    const auto before = scheduleCalendar(headline().run);
    ASSERT_EQ(moved.events.size(), before.events.size());
    for (std::size_t i = 0; i < moved.events.size(); ++i) {
        EXPECT_EQ(moved.events[i].uid, before.events[i].uid);
    }
    EXPECT_EQ(moved.events[0].start - before.events[0].start, std::chrono::days(7));
}

// Debian's python3-icalendar reads the same events.
TEST(PaperCalendar, IsReadByAnotherReader) {
    const std::string said =
        printed(QStringLiteral(DAWNLINE_SYSTEM_PYTHON),
                {QStringLiteral("-c"),
                 QStringLiteral("import sys, icalendar\n"
                                "c = icalendar.Calendar.from_ical(open(sys.argv[1], 'rb').read())\n"
                                "for e in c.walk('VEVENT'):\n"
                                "    assert e['DTSTART'].dt.utcoffset().total_seconds() == 0\n"
                                "    print(e['UID'], int(e['DTSTART'].dt.timestamp()), "
                                "int(e['DTEND'].dt.timestamp()), len(e.subcomponents))\n"),
                 headline().path("schedule.ics")});
    std::string wanted;
    for (const ReadEvent& event : readByLibical(headline().bytes("schedule.ics"))) {
        wanted += event.uid + ' ' + std::to_string(event.start) + ' ' + std::to_string(event.end) + ' ' +
                  std::to_string(event.alarms.size()) + '\n';
    }
    EXPECT_EQ(said, wanted);
}

}  // namespace
}  // namespace widgets
