#include "widgets/controls/visit_time.h"

#include "engine/pond/local_time.h"

namespace widgets {
namespace {

std::string textOf(std::optional<engine::LocalTime> at) {
    return at ? engine::formatLocalTime(*at) : std::string();
}

}  // namespace

void VisitTime::propose(std::optional<engine::LocalTime> at) {
    const bool isTyped = entry().isPending() || value() != m_proposed;
    m_proposed = textOf(at);
    if (!isTyped) {
        setValue(m_proposed);
    }
}

void VisitTime::set(std::optional<engine::LocalTime> at) {
    m_proposed = textOf(at);
    forget();
}

void VisitTime::forget() {
    entry().reset();
    setValue(m_proposed);
}

std::optional<engine::LocalTime> VisitTime::time() const {
    return engine::parseLocalTime(value());
}

}  // namespace widgets
