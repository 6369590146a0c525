#include "engine/follow_up/log_chain.h"

#include "engine/base/digest.h"
#include "engine/base/text.h"
#include "engine/pond/local_time.h"
#include "engine/pond/pond_words.h"

#include <charconv>

namespace engine {
namespace {

/// One entry as text in which no two entries are alike: each part with its length in front.
class EntryText {
public:
    EntryText& text(std::string_view part) {
        m_text.append(std::to_string(part.size())).append(":").append(part);
        return *this;
    }
    EntryText& time(const std::optional<LocalTime>& at) { return text(at ? formatIsoTime(*at) : ""); }
    EntryText& number(const MaybeQuantity& value) {
        if (!value) {
            return text("");
        }
        std::string all = shortest(value->value);
        for (const auto& end : {value->low, value->high}) {
            all.append(" ").append(end ? shortest(*end) : "");
        }
        all.append(" ")
            .append(value->confidence ? wordOf(*value->confidence) : "")
            .append(" ")
            .append(value->source);
        return text(all);
    }
    [[nodiscard]] const std::string& all() const { return m_text; }

private:
    std::string m_text;
};

std::string textOf(const Reading& r) {
    EntryText out;
    out.text("reading").time(r.at).number(r.depth).number(r.temperature).number(r.oxygen).number(r.secchi);
    out.text(r.smell ? wordOf(*r.smell) : "").text(r.fish ? wordOf(*r.fish) : "");
    return out.text(r.meter).text(r.photo).time(r.corrects).text(r.note).all();
}

std::string textOf(const Event& e) {
    EntryText out;
    out.text("event").time(e.at).text(e.kind).time(e.until).number(e.minutes).number(e.diffusers);
    out.number(e.depth).text(e.ramp).text(e.what).number(e.area_percent).number(e.amount_kg);
    return out.number(e.rain_mm).number(e.cost).time(e.corrects).text(e.photo).text(e.note).all();
}

template <class T>
std::string chained(const std::vector<T>& entries, std::size_t count) {
    std::string hash(64, '0');
    for (std::size_t i = 0; i < count; ++i) {
        hash = sha256(hash + textOf(entries[i]));
    }
    return hash;
}

LogHead headOf(const Pond& pond, std::size_t readings, std::size_t events, std::size_t rows) {
    LogHead head{readings, events, rows, {}};
    head.hash = sha256(chained(pond.readings, readings) + chained(pond.events, events) +
                       chained(pond.fileReadings, rows));
    return head;
}

}  // namespace

LogHead logHead(const Pond& pond) {
    return headOf(pond, pond.readings.size(), pond.events.size(), pond.fileReadings.size());
}

std::string shown(const LogHead& head) {
    return std::to_string(head.readings) + "-" + std::to_string(head.events) + "-" +
           std::to_string(head.rows) + "-" + head.hash;
}

std::optional<LogHead> parseLogHead(std::string_view text) {
    LogHead head;
    for (std::size_t* count : {&head.readings, &head.events, &head.rows}) {
        const std::size_t dash = text.find('-');
        if (dash == std::string_view::npos) {
            return std::nullopt;
        }
        const auto [end, fault] = std::from_chars(text.data(), text.data() + dash, *count);
        if (fault != std::errc() || end != text.data() + dash) {
            return std::nullopt;
        }
        text.remove_prefix(dash + 1);
    }
    if (text.size() != 64 || text.find_first_not_of("0123456789abcdef") != std::string_view::npos) {
        return std::nullopt;
    }
    head.hash = text;
    return head;
}

HeadMatch matchHead(const Pond& pond, const LogHead& printed) {
    if (printed.readings > pond.readings.size() || printed.events > pond.events.size() ||
        printed.rows > pond.fileReadings.size() ||
        headOf(pond, printed.readings, printed.events, printed.rows) != printed) {
        return HeadMatch::Changed;
    }
    const bool isAll = printed.readings == pond.readings.size() && printed.events == pond.events.size() &&
                       printed.rows == pond.fileReadings.size();
    return isAll ? HeadMatch::Same : HeadMatch::OnlyAdded;
}

}  // namespace engine
