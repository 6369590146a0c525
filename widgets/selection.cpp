#include "widgets/selection.h"

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

}  // namespace widgets
