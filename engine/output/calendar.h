#pragma once

#include <chrono>
#include <string>
#include <vector>

namespace engine {

/// A reminder of an event.
struct CalendarAlarm {
    bool fromEnd = false;  ///< Else from the start
    int minutesBefore = 0;
    std::string text;
};

struct CalendarEvent {
    std::string uid;                      ///< The same for the same event in every export
    std::chrono::sys_seconds start, end;  ///< UTC; the end after the start
    std::string summary;
    std::string description;
    std::vector<CalendarAlarm> alarms;
};

struct Calendar {
    std::string name;
    std::string program;            ///< Name and version of what wrote it
    std::chrono::sys_seconds time;  ///< When it was made, UTC
    std::vector<CalendarEvent> events;
};

/// The calendar as RFC 5545: CRLF, lines folded to 75 octets between characters, all moments in UTC so that
/// no time zone need be described. It has no METHOD: PUBLISH would ask for an organizer with a mail address
/// (RFC 5546, 3.2.1), and without one the object is a snapshot to be imported, no scheduling message (RFC
/// 5545, 3.7.2), which is what a plan that a person carries out is. SEQUENCE is the minute in which the
/// calendar was made (since 2020), so a later export updates events of the same UID. Control characters other
/// than line breaks are left out of texts, since the format has no way to hold them.
[[nodiscard]] std::string icalendar(const Calendar& calendar);

}  // namespace engine
