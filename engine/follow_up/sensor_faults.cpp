#include "engine/follow_up/sensor_faults.h"

#include "engine/base/units.h"
#include "engine/follow_up/constants_follow_up.h"
#include "engine/follow_up/readings_beside.h"
#include "engine/water/water.h"

#include <algorithm>
#include <cmath>
#include <map>

namespace engine {
namespace {

using std::chrono::seconds;

constexpr std::size_t kStuckReadings = 6;
constexpr std::size_t kDriftPairs = 3;

constexpr seconds hours(const Constant& span_h) {
    return seconds(static_cast<seconds::rep>(span_h.value * kHour));
}

constexpr seconds minutes(const Constant& span_min) {
    return seconds(static_cast<seconds::rep>(span_min.value * kMinute));
}

/// Readings of one meter at one depth, by their places in the whole list, in the order of time.
using Series = std::vector<std::size_t>;

class Detective {
public:
    Detective(const std::vector<Reading>& readings, double pressure)
        : m_readings(readings), m_pressure(pressure), m_faults(readings.size(), SensorFault::None) {
        std::map<std::pair<std::string, long>, Series> byPlace;
        for (std::size_t i = 0; i < readings.size(); ++i) {
            if (readings[i].at && readings[i].depth && readings[i].oxygen) {
                // Rows of the readings file that name no meter are of one source, entries of the pond file of
                // another.
                const std::string source =
                    readings[i].meter.empty() ? (readings[i].line > 0 ? "file" : "") : readings[i].meter;
                byPlace[{source, std::lround(20.0 * readings[i].depth->value)}].push_back(i);
            }
        }
        for (auto& [place, series] : byPlace) {
            m_series.push_back(std::move(series));
        }
    }

    std::vector<SensorFault> find() {
        for (const Series& series : m_series) {
            stuck(series);
            dropped(series);
            dry(series);
        }
        for (const Series& series : m_series) {
            drifting(series);
        }
        disagreeing();
        return std::move(m_faults);
    }

private:
    [[nodiscard]] double oxygen(std::size_t i) const { return *m_readings[i].oxygen; }
    [[nodiscard]] seconds between(std::size_t a, std::size_t b) const {
        return *m_readings[b].at - *m_readings[a].at;
    }
    void flag(std::size_t i, SensorFault fault) {
        m_faults[i] = m_faults[i] == SensorFault::None ? fault : m_faults[i];
    }

    void stuck(const Series& series) {
        for (std::size_t first = 0; first < series.size();) {
            std::size_t last = first;
            while (last + 1 < series.size() && oxygen(series[last + 1]) == oxygen(series[first])) {
                ++last;
            }
            if (last - first + 1 >= kStuckReadings &&
                between(series[first], series[last]) >= hours(kStuck_h) &&
                oxygen(series[first]) > kNoOxygen.value) {
                for (std::size_t k = first; k <= last; ++k) {
                    flag(series[k], SensorFault::Stuck);
                }
            }
            first = last + 1;
        }
    }

    void dropped(const Series& series) {
        for (std::size_t k = 1; k < series.size(); ++k) {
            const double before = oxygen(series[k - 1]);
            if (m_faults[series[k - 1]] == SensorFault::StepDrop ||
                between(series[k - 1], series[k]) > hours(kOneStep_h) ||
                oxygen(series[k]) > before - kStepDrop.value) {
                continue;
            }
            std::size_t back = k;
            while (back < series.size() && between(series[k - 1], series[back]) <= hours(kComesBack_h) &&
                   oxygen(series[back]) < before - kDropIsOver.value) {
                ++back;
            }
            const bool isBack =
                back < series.size() && between(series[k - 1], series[back]) <= hours(kComesBack_h);
            for (std::size_t j = k; j < (isBack ? back : k + 1); ++j) {
                flag(series[j], SensorFault::StepDrop);
            }
        }
    }

    /// A sensor in the air shows a step of temperature, and oxygen at saturation until it is back in the
    /// water.
    void dry(const Series& series) {
        bool isDry = false;
        for (std::size_t k = 1; k < series.size(); ++k) {
            const Reading& before = m_readings[series[k - 1]];
            const Reading& now = m_readings[series[k]];
            if (!before.temperature || !now.temperature ||
                between(series[k - 1], series[k]) > hours(kOneStep_h)) {
                isDry = false;
                continue;
            }
            const double step = *now.temperature - *before.temperature;
            const double full = oxygenSaturationKernel(now.temperature->value, 0.0, m_pressure);
            const bool isFull = std::fabs(oxygen(series[k]) / full - 1.0) < kNearSaturation.value;
            isDry = std::fabs(step) > kAirStep.value ? !isDry && isFull : isDry && isFull;
            if (isDry) {
                flag(series[k], SensorFault::OutOfWater);
            }
        }
    }

    void drifting(const Series& series) {
        struct Pair {
            std::size_t place;  ///< In the series
            double day, difference;
        };
        std::vector<Pair> pairs;
        for (std::size_t k = 0; k < series.size(); ++k) {
            for (const Series& other : m_series) {
                if (&other == &series || other.size() >= series.size() ||
                    m_faults[series[k]] != SensorFault::None) {
                    continue;  // the one that reads more often is the logger, which is what drifts
                }
                for (const std::size_t hand : other) {
                    const auto apart = std::chrono::abs(between(series[k], hand));
                    const double depths = std::fabs(*m_readings[hand].depth - *m_readings[series[k]].depth);
                    const bool isNearest =
                        k + 1 >= series.size() || std::chrono::abs(between(series[k + 1], hand)) > apart;
                    if (apart <= minutes(kSamePair_min) && depths <= kSamePair.value && isNearest &&
                        m_readings[hand].meter != m_readings[series[k]].meter) {
                        pairs.push_back({k, static_cast<double>(between(series.front(), hand).count()) / kDay,
                                         oxygen(series[k]) - oxygen(hand)});
                    }
                }
            }
        }
        if (pairs.size() < kDriftPairs || pairs.back().day - pairs.front().day < kDriftSpan_d.value) {
            return;
        }
        double meanDay = 0.0, meanDifference = 0.0, dayDay = 0.0, both = 0.0, square = 0.0;
        for (const Pair& pair : pairs) {
            meanDay += pair.day / static_cast<double>(pairs.size());
            meanDifference += pair.difference / static_cast<double>(pairs.size());
        }
        for (const Pair& pair : pairs) {
            dayDay += (pair.day - meanDay) * (pair.day - meanDay);
            both += (pair.day - meanDay) * (pair.difference - meanDifference);
            square += (pair.difference - meanDifference) * (pair.difference - meanDifference);
        }
        const double slope = both / dayDay;
        const bool isOneWay =
            square > 0.0 && std::fabs(both) / std::sqrt(dayDay * square) > kDriftCorrelation.value;
        if (!isOneWay || std::fabs(slope) * (pairs.back().day - pairs.front().day) <= kDrift.value) {
            return;
        }
        const auto off = std::find_if(pairs.begin(), pairs.end(), [&](const Pair& pair) {
            return std::fabs(pair.difference - pairs.front().difference) > kDrift.value;
        });
        for (std::size_t k = off == pairs.end() ? series.size() : off->place; k < series.size(); ++k) {
            flag(series[k], SensorFault::Drifting);
        }
    }

    void disagreeing() {
        for (std::size_t i = 0; i < m_readings.size(); ++i) {
            for (std::size_t j = i + 1; j < m_readings.size(); ++j) {
                const Reading& a = m_readings[i];
                const Reading& b = m_readings[j];
                if (!a.at || !b.at || *b.at - *a.at > minutes(kSameTime_min)) {
                    break;
                }
                const bool isPair = a.depth && b.depth && a.oxygen && b.oxygen &&
                                    std::fabs(*a.depth - *b.depth) <= kSamePlace.value &&
                                    m_faults[i] == SensorFault::None && m_faults[j] == SensorFault::None;
                if (isPair && std::fabs(*a.oxygen - *b.oxygen) > kDisagreement.value * kOxygenMeterError) {
                    m_faults[i] = m_faults[j] = SensorFault::Disagrees;
                }
            }
        }
    }

    const std::vector<Reading>& m_readings;
    double m_pressure;
    std::vector<SensorFault> m_faults;
    std::vector<Series> m_series;
};

}  // namespace

std::string_view faultWord(SensorFault fault) {
    switch (fault) {
        case SensorFault::None:
            return "";
        case SensorFault::Stuck:
            return "stuck";
        case SensorFault::Drifting:
            return "drifting";
        case SensorFault::StepDrop:
            return "single-step drop";
        case SensorFault::OutOfWater:
            return "out of water";
        case SensorFault::Disagrees:
            return "two values";
    }
    return "";
}

std::vector<SensorFault> sensorFaults(const std::vector<Reading>& readings, double pressure) {
    return Detective(readings, pressure).find();
}

}  // namespace engine
