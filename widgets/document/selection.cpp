#include "widgets/document/selection.h"

#include <algorithm>

namespace widgets {

void Selection::setExtent(int nights, std::size_t ramps) {
    m_nights = std::max(1, nights);
    m_ramps = std::max<std::size_t>(1, ramps);
    const int night = std::min(m_night, m_nights);
    const std::size_t ramp = std::min(m_ramp, m_ramps - 1);
    if (night != m_night || ramp != m_ramp) {
        m_night = night;
        m_ramp = ramp;
        emit changed();
    }
}

void Selection::setNight(int night) {
    night = std::clamp(night, 1, m_nights);
    if (night != m_night) {
        m_night = night;
        emit changed();
    }
}

void Selection::setRamp(std::size_t ramp) {
    ramp = std::min(ramp, m_ramps - 1);
    if (ramp != m_ramp) {
        m_ramp = ramp;
        emit changed();
    }
}

void Selection::setMode(Mode mode) {
    if (mode != m_mode) {
        m_mode = mode;
        emit changed();
    }
}

void Selection::setCursor(std::optional<double> time) {
    if (time != m_cursor) {
        m_cursor = time;
        emit changed();
    }
}

void Selection::setSpan(std::optional<Span> span) {
    constexpr double kLeast = 0.5, kBefore = 1.0, kAfter = 0.5;  // [d]; runs begin the evening before
    if (span) {
        const double width = std::clamp(span->to - span->from, kLeast, m_nights + kBefore + kAfter);
        span->from = std::clamp(span->from, -kBefore, m_nights + kAfter - width);
        span->to = span->from + width;
    }
    if (span != m_span) {
        m_span = span;
        emit changed();
    }
}

void Selection::setHours(std::optional<Span> hours) {
    constexpr double kLeast = 3.0, kAll = 24.0;
    if (hours) {
        const double width = std::max(hours->to - hours->from, kLeast);
        hours->from = std::clamp(hours->from, 0.0, std::max(kAll - width, 0.0));
        hours->to = hours->from + width;
        hours = width < kAll ? hours : std::nullopt;
    }
    if (hours != m_hours) {
        m_hours = hours;
        emit changed();
    }
}

void Selection::setHidden(const std::string& ramp, bool isHidden) {
    if (isHidden ? m_hidden.insert(ramp).second : m_hidden.erase(ramp) > 0) {
        emit changed();
    }
}

void Selection::copy(const Selection& other) {
    m_night = other.m_night;
    m_nights = other.m_nights;
    m_ramp = other.m_ramp;
    m_ramps = other.m_ramps;
    m_mode = other.m_mode;
    m_cursor = other.m_cursor;
    m_span = other.m_span;
    m_hours = other.m_hours;
    m_hidden = other.m_hidden;
    emit changed();
}

}  // namespace widgets
