#include "engine/output/advice_io.h"

#include "engine/base/csv_table.h"
#include "engine/base/text.h"
#include "engine/base/units.h"
#include "engine/pond/local_time.h"

#include <cmath>

namespace engine {
namespace {

std::string clockCell(double seconds) {
    return formatClock(ClockTime{static_cast<int>(std::lround(seconds / kMinute)) % 1440});
}

}  // namespace

std::string readingText(const TellingReading& reading) {
    const std::string unit = reading.unit.empty() || reading.unit == "1" ? "" : " " + reading.unit;
    return !reading.turns
               ? reading.input
               : reading.input + (reading.isBelow ? " below " : " above ") + figures(*reading.turns) + unit;
}

std::string adviceCsv(const Advice& advice, std::string_view run) {
    CsvWriter table("field,value");
    const auto text = [&](const char* field, std::string_view value) { table.text(field).text(value).end(); };
    const auto number = [&](const char* field, std::optional<double> value) {
        table.text(field).number(value).end();
    };
    const auto date = [&](const char* field, const std::optional<Date>& value) {
        text(field, value ? formatDate(*value) : std::string());
    };
    const auto chance = [&](const std::string& line, const std::optional<LineChance>& value) {
        const auto percent = [&](double share) {
            // Hundredths of a percent: a member of 200 is half a percent.
            return value ? std::optional(std::round(1e4 * share) / 1e2) : std::nullopt;
        };
        number((line + "_chance_percent").c_str(), percent(value ? value->with : 0.0));
        number((line + "_chance_alone_percent").c_str(), percent(value ? value->alone : 0.0));
        number((line + "_chance_added_percent").c_str(), percent(value ? value->added() : 0.0));
    };
    text("kind", advice.kind ? wordOf(*advice.kind) : std::string_view());
    text("ramp", advice.run > 0 ? advice.ramp : std::string());
    date("first_day", advice.firstDay);
    number("days_to_sustained",
           advice.daysToSustained ? std::optional<double>(*advice.daysToSustained) : std::nullopt);
    number("worst_mg_per_l", advice.worst.lowest);
    number("worst_night", advice.worst.day);
    chance("lethal", advice.lethal);
    chance("stress", advice.stress);
    number("end_state_mg_per_l", advice.endState);
    number("end_state_alone_mg_per_l", advice.endStateAlone);
    number("debt_left_percent", advice.debtLeft_percent);
    const bool hasAir = advice.surfaceAir.transfer > 0.0;
    number("surface_air_kw", hasAir ? std::optional(advice.surfaceAir_kW) : std::nullopt);
    text("surface_air_from", hasAir ? clockCell(advice.surfaceAir.from) : std::string());
    text("surface_air_until", hasAir ? clockCell(advice.surfaceAir.until) : std::string());
    date("wait_from", advice.wait ? std::optional(advice.wait->dates.from) : std::nullopt);
    date("wait_until", advice.wait ? std::optional(advice.wait->dates.until) : std::nullopt);
    std::string days;
    for (const Date& day : advice.holdDays) {
        days += (days.empty() ? "" : " ") + formatDate(day);
    }
    text("hold_days", days);
    text("first_reading", !advice.readings.empty() ? readingText(advice.readings.front()) : std::string());
    text("second_reading", advice.readings.size() > 1 ? readingText(advice.readings[1]) : std::string());
    text("provisional", advice.provisional.empty() ? "no" : "yes");
    text("run", run);
    const auto& weakest = advice.weakest;
    date("dull_days_from", weakest ? std::optional(weakest->from) : std::nullopt);
    number("dull_days_worst_mg_per_l", weakest ? std::optional(weakest->lowest) : std::nullopt);
    number("dull_days_alone_mg_per_l", weakest ? std::optional(weakest->alone) : std::nullopt);
    return table.take();
}

std::string calendarCsv(const Advice& advice) {
    CsvWriter table(
        "ramp,from,ice,oxygen_to_the_bottom,debt_mg_per_l,lowest_mg_per_l,lowest_alone_mg_per_l,lethal_"
        "chance_percent,"
        "lethal_chance_alone_percent,may_start");
    for (const MonthOfStart& month : advice.calendar.months) {
        const auto known = [&](double value) { return month.isIcy ? std::nullopt : std::optional(value); };
        const auto word = [&](bool is) { return month.isIcy ? "" : is ? "yes" : "no"; };
        table.text(advice.ramp).text(formatDate(month.from)).text(month.isIcy ? "yes" : "no");
        table.text(word(month.isAired)).number(known(month.debt));
        table.number(known(month.lowest)).number(known(month.alone));
        table.number(known(std::round(1e4 * month.lethal) / 1e2));
        table.number(known(std::round(1e4 * month.lethalAlone) / 1e2)).text(word(month.mayStart())).end();
    }
    return table.take();
}

TextFile adviceFile(const Advice& advice, std::string_view run) {
    return {"advice.csv", adviceCsv(advice, run)};
}

}  // namespace engine
