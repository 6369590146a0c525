#include "engine/output/calendar.h"

#include "engine/base/error.h"
#include "engine/pond/local_time.h"

#include <algorithm>
#include <cstddef>
#include <string_view>

namespace engine {
namespace {

constexpr std::size_t kLine_octets = 75;

/// "20260614T160000Z"
std::string utc(std::chrono::sys_seconds time) {
    std::string text = formatIsoTime(LocalTime(time.time_since_epoch())) + 'Z';
    std::erase_if(text, [](char c) { return c == '-' || c == ':'; });
    return text;
}

/// A value of type TEXT (RFC 5545, 3.3.11): the backslash first, then what it escapes.
std::string escaped(std::string_view text) {
    std::string out;
    for (std::size_t i = 0; i < text.size(); ++i) {
        const char c = text[i];
        if (c == '\\' || c == ';' || c == ',') {
            out += '\\';
            out += c;
        } else if (c == '\n' || (c == '\r' && (i + 1 == text.size() || text[i + 1] != '\n'))) {
            out += "\\n";
        } else if (static_cast<unsigned char>(c) >= 0x20 && c != 0x7F) {
            out += c;
        }
    }
    return out;
}

/// Lines with CRLF, folded so that none has more than 75 octets, its leading space among them, and none
/// begins or ends within a character.
class Lines {
public:
    void add(std::string_view name, std::string_view value) {
        std::string line(name);
        line.append(":").append(value);
        std::string_view rest = line;
        std::size_t room = kLine_octets;
        while (rest.size() > room) {
            std::size_t at = room;
            while (at > 0 && (static_cast<unsigned char>(rest[at]) & 0xC0U) == 0x80U) {
                --at;
            }
            m_text.append(rest.substr(0, at)).append("\r\n ");
            rest.remove_prefix(at);
            room = kLine_octets - 1;
        }
        m_text.append(rest).append("\r\n");
    }
    [[nodiscard]] std::string take() { return std::move(m_text); }

private:
    std::string m_text;
};

void add(Lines& lines, const CalendarAlarm& alarm) {
    lines.add("BEGIN", "VALARM");
    lines.add("ACTION", "DISPLAY");
    lines.add(alarm.fromEnd ? "TRIGGER;RELATED=END" : "TRIGGER",
              alarm.minutesBefore == 0 ? "PT0S" : "-PT" + std::to_string(alarm.minutesBefore) + "M");
    lines.add("DESCRIPTION", escaped(alarm.text));
    lines.add("END", "VALARM");
}

}  // namespace

std::string icalendar(const Calendar& calendar) {
    const auto since = calendar.time - std::chrono::sys_days(std::chrono::year(2020) / 1 / 1);
    const long sequence = std::max<long>(0, std::chrono::floor<std::chrono::minutes>(since).count());
    Lines lines;
    lines.add("BEGIN", "VCALENDAR");
    lines.add("VERSION", "2.0");
    lines.add("PRODID", "-//" + escaped(calendar.program) + "//EN");
    lines.add("CALSCALE", "GREGORIAN");
    lines.add("X-WR-CALNAME", escaped(calendar.name));
    for (const CalendarEvent& event : calendar.events) {
        ensure(event.end > event.start && !event.uid.empty(), "an event has a name and lasts");
        lines.add("BEGIN", "VEVENT");
        lines.add("UID", event.uid);
        lines.add("DTSTAMP", utc(calendar.time));
        lines.add("SEQUENCE", std::to_string(sequence));
        lines.add("DTSTART", utc(event.start));
        lines.add("DTEND", utc(event.end));
        lines.add("SUMMARY", escaped(event.summary));
        lines.add("DESCRIPTION", escaped(event.description));
        for (const CalendarAlarm& alarm : event.alarms) {
            add(lines, alarm);
        }
        lines.add("END", "VEVENT");
    }
    lines.add("END", "VCALENDAR");
    return lines.take();
}

}  // namespace engine
