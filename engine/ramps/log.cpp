#include "engine/ramps/log.h"

#include "engine/base/units.h"
#include "engine/pond/pond_words.h"
#include "engine/ramps/weather.h"

#include <algorithm>
#include <array>
#include <cmath>

namespace engine {
namespace {

constexpr std::chrono::hours kDayIsKnown{18};

std::chrono::local_days dayOf(LocalTime at) {
    return std::chrono::floor<std::chrono::days>(at);
}

const Ramp* rampNamed(const Pond& pond, std::string_view name) {
    const auto found = std::find_if(pond.ramps.begin(), pond.ramps.end(),
                                    [name](const Ramp& ramp) { return ramp.name == name; });
    return found != pond.ramps.end() ? &*found : nullptr;
}

const Ramp* rampOf(const Pond& pond, const Event& started) {
    const Ramp* ramp = rampNamed(pond, started.ramp);
    return ramp != nullptr || !started.ramp.empty() ? ramp : rampNamed(pond, started.note);
}

bool isOf(const Event& event, EventKind kind) {
    return eventKind(event.kind) == kind;
}

/// Two depths of one meter are the same place within a centimetre, the least that a cable can be read to.
bool isSamePlace(const Reading& a, const Reading& b) {
    const bool isSameDepth = a.depth.has_value() == b.depth.has_value() &&
                             (!a.depth || std::fabs(a.depth->value - b.depth->value) < 0.01);
    return isSameDepth && a.meter == b.meter;
}

/// Entries that no later one stands for, in the order of time.
/// @param isSame  Whether a correction is about the same place or kind as an entry.
template <class T, class Same>
std::vector<T> inForce(std::vector<T> entries, const Same& isSame) {
    std::vector<const T*> corrections;
    for (const T& entry : entries) {
        if (entry.corrects) {
            corrections.push_back(&entry);
        }
    }
    const auto isOutOfForce = [&](const T& entry) {
        return std::any_of(corrections.begin(), corrections.end(), [&](const T* later) {
            const bool isCorrected =
                later != &entry && later->corrects == entry.at && later->corrects != entry.corrects;
            // Of two corrections of one entry the last written one counts.
            const bool isReplaced = later > &entry && later->corrects == entry.corrects;
            return (isCorrected || isReplaced) && isSame(*later, entry);
        });
    };
    std::vector<T> out;
    for (const T& entry : entries) {
        if (entry.at && !isOutOfForce(entry)) {
            out.push_back(entry);
        }
    }
    std::stable_sort(out.begin(), out.end(), [](const T& a, const T& b) { return *a.at < *b.at; });
    return out;
}

/// Takes [from, to) out of a schedule.
void cut(Schedule& schedule, double from, double to) {
    Schedule out;
    for (const RunBlock& block : schedule) {
        for (const auto& [start, end] : {std::pair(block.start, std::min(block.end, from)),
                                         std::pair(std::max(block.start, to), block.end)}) {
            if (end > start) {
                out.push_back({start, end, block.open, block.depth, block.day});
            }
        }
    }
    schedule = std::move(out);
}

constexpr double kForever = kDay * 1e6;  // [s]

/// What the events of a log, in the order of time, make of the air.
class LogReplay {
public:
    /// The rest as in airOfLog().
    /// @param events  Those in force, all of which are to be taken after. @pre the pond has an aerator.
    LogReplay(const Pond& pond, const std::vector<Event>& events, const Schedule* capped, int lastDay,
              double end)
        : m_pond(pond), m_events(events), m_capped(capped), m_lastDay(lastDay), m_end(end) {
        for (const Event& event : events) {
            if (isOf(event, EventKind::Run)) {
                m_runDays.push_back(dayOfEvent(event));
            }
        }
    }

    void take(const Event& event) {
        const double time = secondsOf(m_pond, *event.at);
        const auto kind = eventKind(event.kind);
        if (kind == EventKind::Started) {
            start(event, time);
        } else if (kind == EventKind::Stopped) {
            cut(m_air.schedule, time, kForever);
            m_air.stoppedSince = time;
        } else if (kind == EventKind::Run) {
            run(event, time);
        } else if (kind == EventKind::PowerCut) {
            m_cutSince = time;
            if (event.until) {
                endPowerCut(secondsOf(m_pond, *event.until));
            }
        } else if (kind == EventKind::PowerBack) {
            endPowerCut(time);
        }
    }

    [[nodiscard]] LoggedAir finish() {
        if (m_cutSince) {
            m_air.stoppedSince = m_cutSince;
            endPowerCut(kForever);
        }
        std::erase_if(m_air.schedule, [this](const RunBlock& block) {
            return block.start >= m_end || block.end <= block.start;
        });
        for (RunBlock& block : m_air.schedule) {
            block.end = std::min(block.end, m_end);
        }
        std::sort(m_air.schedule.begin(), m_air.schedule.end(),
                  [](const RunBlock& a, const RunBlock& b) { return a.start < b.start; });
        return std::move(m_air);
    }

private:
    [[nodiscard]] int dayOfEvent(const Event& event) const {
        return dayNumber(m_pond, Date(dayOf(*event.at)));
    }
    void endPowerCut(double at) {
        if (m_cutSince) {
            cut(m_air.schedule, *m_cutSince, at);
            m_cutSince.reset();
        }
    }
    void start(const Event& event, double time);
    void run(const Event& event, double time);

    const Pond& m_pond;
    const std::vector<Event>& m_events;
    const Schedule* m_capped;
    int m_lastDay;
    double m_end;
    std::vector<int> m_runDays;  // days whose runs are in the log
    std::optional<double> m_cutSince;
    LoggedAir m_air;
};

/// Puts the ramp's runs in the place of all that was to come, but for days whose runs are logged.
void LogReplay::start(const Event& event, double time) {
    endPowerCut(time);
    const Ramp* named = rampOf(m_pond, event);
    const Ramp* ramp = named != nullptr ? named : rampMeant(m_pond, m_events);
    cut(m_air.schedule, time, kForever);
    m_air.isStarted = true;
    m_air.stoppedSince.reset();
    m_air.firstDay = dayOfEvent(event);
    if (ramp == nullptr) {
        return;
    }
    const double shift = (m_air.firstDay - 1) * kDay;
    double cutMinutes = 0.0;
    Schedule runs = ramp->kind == RampKind::Capped
                        ? (m_capped != nullptr ? *m_capped : Schedule{})
                        : scheduleOf(*ramp, *m_pond.aerator, std::max(m_lastDay - m_air.firstDay + 1, 1),
                                     m_end - shift, {}, cutMinutes);
    for (RunBlock& block : runs) {
        block.start += shift;
        block.end += shift;
        block.day += m_air.firstDay - 1;
    }
    std::erase_if(runs, [this](const RunBlock& block) {
        return std::find(m_runDays.begin(), m_runDays.end(), block.day) != m_runDays.end();
    });
    cut(runs, -kForever, time);
    m_air.schedule.insert(m_air.schedule.end(), runs.begin(), runs.end());
}

void LogReplay::run(const Event& event, double time) {
    endPowerCut(time);
    const double until = event.until     ? secondsOf(m_pond, *event.until)
                         : event.minutes ? time + *event.minutes * kMinute
                                         : time;
    cut(m_air.schedule, time, until);
    m_air.schedule.push_back({time, until,
                              event.diffusers ? static_cast<int>(event.diffusers->value)
                                              : static_cast<int>(m_pond.aerator->diffusers->value),
                              event.depth ? event.depth->value : m_pond.aerator->depth->value,
                              dayOfEvent(event)});
}

}  // namespace

std::vector<Reading> readingsInForce(const Pond& pond) {
    std::vector<Reading> all = pond.readings;
    all.insert(all.end(), pond.fileReadings.begin(), pond.fileReadings.end());
    return inForce(std::move(all), isSamePlace);
}

std::vector<Event> eventsInForce(const Pond& pond) {
    return inForce(pond.events, [](const Event& a, const Event& b) { return a.kind == b.kind; });
}

LogInForce logInForce(const Pond& pond) {
    return {readingsInForce(pond), eventsInForce(pond)};
}

Weather weatherKnownAt(const Pond& pond, std::optional<LocalTime> at) {
    Weather out = pond.weather;
    const auto isLater = [&](const WeatherDay& day) {
        if (!at) {
            return false;
        }
        const LocalTime evening = LocalTime(std::chrono::local_days(day.date)) + kDayIsKnown;
        return day.knownAt ? *day.knownAt > *at : pond.weather.observed && !day.forecast && evening > *at;
    };
    std::erase_if(out.days, isLater);
    std::vector<WeatherDay> rows;
    for (WeatherDay& day : out.days) {
        if (!rows.empty() && rows.back().date == day.date) {
            rows.back() = std::move(day);  // rows of one date stand in the order in which they were known
        } else {
            rows.push_back(std::move(day));
        }
    }
    out.days.clear();
    WeatherDay mean;
    mean.airMin = mean.airMax = mean.wind = mean.cloud_percent = mean.humidity_percent = Quantity(0.0);
    const auto count = static_cast<double>(rows.size());
    double humid = 0.0;
    for (const WeatherDay& day : rows) {
        mean.airMin->value += *day.airMin / count;
        mean.airMax->value += *day.airMax / count;
        mean.wind->value += *day.wind / count;
        mean.cloud_percent->value += *day.cloud_percent / count;
        humid += day.humidity_percent ? 1.0 : 0.0;
        mean.humidity_percent->value += day.humidity_percent ? day.humidity_percent->value : 0.0;
    }
    mean.humidity_percent->value = humid > 0.0 ? *mean.humidity_percent / humid
                                               : 70.0;  // [%], used only where rows have dew points instead
    mean.forecast = true;
    for (WeatherDay& day : rows) {
        while (!out.days.empty() && std::chrono::local_days(out.days.back().date) + std::chrono::days(1) <
                                        std::chrono::local_days(day.date)) {
            mean.date = Date(std::chrono::local_days(out.days.back().date) + std::chrono::days(1));
            out.days.push_back(mean);
        }
        out.days.push_back(std::move(day));
    }
    if (at && pond.weather.observed) {
        std::erase_if(out.hours,
                      [&](const WeatherHour& hour) { return hour.start + std::chrono::hours(1) > *at; });
    }
    return out;
}

Pond knownAt(const Pond& pond, LocalTime at) {
    Pond out = pond;
    const auto isLater = [at](const auto& entry) { return !entry.at || *entry.at > at; };
    std::erase_if(out.readings, isLater);
    std::erase_if(out.fileReadings, isLater);
    std::erase_if(out.events, isLater);
    out.weather = weatherKnownAt(pond, at);
    return out;
}

bool hasWeather(const Pond& pond) {
    return !pond.weather.days.empty() || pond.weather.hours.size() >= 12;
}

std::optional<LocalTime> lastEntry(const Pond& pond) {
    std::optional<LocalTime> last = pond.profile ? pond.profile->at : std::nullopt;
    const auto take = [&](const auto& entries) {
        for (const auto& entry : entries) {
            last = entry.at && (!last || *entry.at > *last) ? entry.at : last;
        }
    };
    take(pond.readings);
    take(pond.fileReadings);
    return last;
}

const Ramp* rampMeant(const Pond& pond) {
    return rampMeant(pond, eventsInForce(pond));
}

const Ramp* rampMeant(const Pond& pond, const std::vector<Event>& events) {
    for (auto event = events.rbegin(); event != events.rend(); ++event) {
        const Ramp* ramp = isOf(*event, EventKind::Started) ? rampOf(pond, *event) : nullptr;
        if (ramp != nullptr) {
            return ramp;
        }
    }
    if (const Ramp* chosen = rampNamed(pond, pond.chosenRamp)) {
        return chosen;
    }
    return pond.ramps.size() == 1 ? &pond.ramps.front() : nullptr;
}

LoggedAir airOfLog(const Pond& pond, const Schedule* capped, int lastDay, double end) {
    return airOfLog(pond, eventsInForce(pond), capped, lastDay, end);
}

LoggedAir airOfLog(const Pond& pond, const std::vector<Event>& events, const Schedule* capped, int lastDay,
                   double end) {
    if (!pond.aerator) {
        return {};
    }
    LogReplay replay(pond, events, capped, lastDay, end);
    for (const Event& event : events) {
        replay.take(event);
    }
    return replay.finish();
}

Schedule joinedAt(const Schedule& before, const Schedule& after, double time) {
    Schedule out = before, rest = after;
    cut(out, time, kForever);
    cut(rest, -kForever, time);
    out.insert(out.end(), rest.begin(), rest.end());
    return out;
}

}  // namespace engine
