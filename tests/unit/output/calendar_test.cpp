#include "engine/output/calendar.h"

#include "engine/base/error.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <string_view>

namespace engine {
namespace {

using namespace std::chrono_literals;

const std::chrono::sys_seconds kMoment = std::chrono::sys_days(std::chrono::year(2026) / 6 / 14) + 16h + 5min;

Calendar oneEvent(const std::string& summary, const std::string& description = "") {
    return {"name", "Program 1", kMoment, {{"uid-1", kMoment, kMoment + 30min, summary, description, {}}}};
}

/// Lines without their CRLF; fails on a lone CR or LF.
std::vector<std::string> linesOf(const std::string& text) {
    std::vector<std::string> lines(1);
    for (std::size_t i = 0; i < text.size(); ++i) {
        if (text[i] == '\r') {
            EXPECT_TRUE(i + 1 < text.size() && text[i + 1] == '\n') << "a lone CR";
        } else if (text[i] == '\n') {
            EXPECT_TRUE(i > 0 && text[i - 1] == '\r') << "a lone LF";
            lines.emplace_back();
        } else {
            lines.back() += text[i];
        }
    }
    EXPECT_EQ(lines.back(), "");
    lines.pop_back();
    return lines;
}

std::string unfolded(const std::string& text) {
    std::string out = text;
    for (std::size_t at = out.find("\r\n "); at != std::string::npos; at = out.find("\r\n ", at)) {
        out.erase(at, 3);
    }
    return out;
}

bool hasLine(const std::string& text, const std::string& line) {
    return unfolded(text).find("\r\n" + line + "\r\n") != std::string::npos;
}

TEST(Calendar, HasWhatEveryEventNeedsInUtc) {
    const std::string text = icalendar(oneEvent("a run"));
    for (const char* line : {"VERSION:2.0", "UID:uid-1", "DTSTAMP:20260614T160500Z",
                             "DTSTART:20260614T160500Z", "DTEND:20260614T163500Z", "SUMMARY:a run"}) {
        EXPECT_TRUE(hasLine(text, line)) << line << "\n" << text;
    }
    EXPECT_EQ(text.find("METHOD"), std::string::npos);
    EXPECT_EQ(text.find("TZID"), std::string::npos);  // a zone would need its own description
    EXPECT_TRUE(text.starts_with("BEGIN:VCALENDAR\r\n"));
    EXPECT_TRUE(text.ends_with("END:VCALENDAR\r\n"));
}

// RFC 5545, 3.6 and 3.6.1: PRODID once for the calendar; UID and DTSTAMP in each event, not only in the
// first.
TEST(Calendar, NamesItsProgramOnceAndStampsEachOfSeveralEvents) {
    Calendar calendar = oneEvent("a");
    calendar.events.push_back(calendar.events[0]);
    calendar.events[1].uid = "uid-2";
    int programs = 0, events = 0, uids = 0, stamps = 0;
    for (const std::string& line : linesOf(icalendar(calendar))) {
        if (line == "BEGIN:VEVENT") {
            uids = stamps = 0;
        } else if (line == "END:VEVENT") {
            ++events;
            EXPECT_EQ(uids, 1) << "event " << events;
            EXPECT_EQ(stamps, 1) << "event " << events;
        }
        programs += line.starts_with("PRODID:") ? 1 : 0;
        uids += line.starts_with("UID:") ? 1 : 0;
        stamps += line.starts_with("DTSTAMP:") ? 1 : 0;
    }
    EXPECT_EQ(programs, 1);
    EXPECT_EQ(events, 2);
}

// RFC 5545, 3.1: 75 octets without the line break, the leading space among them, no character parted.
TEST(Calendar, FoldsAt75OctetsBetweenCharacters) {
    for (int length = 60; length < 160; ++length) {
        for (const std::string letter : {"a", "\u00e9", "\u20ac", "\U0001F41F"}) {
            std::string summary;
            for (int i = 0; i < length; ++i) {
                summary += letter;
            }
            const std::string text = icalendar(oneEvent(summary));
            for (const std::string& line : linesOf(text)) {
                EXPECT_LE(line.size(), 75U);
                const std::size_t first = line.starts_with(' ') ? 1 : 0;
                EXPECT_NE(static_cast<unsigned char>(line[first]) & 0xC0U, 0x80U)
                    << "begins within a character";
            }
            EXPECT_TRUE(hasLine(text, "SUMMARY:" + summary));
        }
    }
}

TEST(Calendar, ALineOfExactly75OctetsIsNotFolded) {
    const std::string summary(75 - std::string_view("SUMMARY:").size(), 'x');
    const auto lines = linesOf(icalendar(oneEvent(summary)));
    EXPECT_NE(std::find(lines.begin(), lines.end(), "SUMMARY:" + summary), lines.end());
}

// RFC 5545, 3.3.11; the backslash must come first.
TEST(Calendar, EscapesTexts) {
    EXPECT_TRUE(hasLine(icalendar(oneEvent("a\\n;b,c\nd\r\ne:f\"g")), "SUMMARY:a\\\\n\\;b\\,c\\nd\\ne:f\"g"));
    EXPECT_TRUE(hasLine(icalendar(oneEvent(std::string("a\x01\x1b\x7f") + "b")), "SUMMARY:ab"));
}

TEST(Calendar, ALaterExportHasAHigherSequence) {
    const auto sequence = [](const std::string& text) {
        const std::size_t at = text.find("SEQUENCE:") + 9;
        return std::stol(text.substr(at));
    };
    Calendar later = oneEvent("a");
    later.time += 1min;
    // Minutes since 2020: 2356 days to 14 June 2026, and 16 h 5 min.
    EXPECT_EQ(sequence(icalendar(oneEvent("a"))), 2356L * 1440L + 965L);
    EXPECT_EQ(sequence(icalendar(later)), 2356L * 1440L + 966L);
}

TEST(Calendar, RefusesAnEventThatDoesNotLast) {
    Calendar calendar = oneEvent("a");
    calendar.events[0].end = calendar.events[0].start;
    EXPECT_THROW((void)icalendar(calendar), InternalError);
}

}  // namespace
}  // namespace engine
