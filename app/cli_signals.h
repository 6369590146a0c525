#pragma once

#include <csignal>
#include <stop_token>
#include <thread>

namespace app {

/// Turns the first interrupt, hang-up or termination into a request to stop, so that nothing is left half
/// written; one more after a second ends the program as usual. Threads started while it lives do not see the
/// signals.
class StopOnSignal {
public:
    StopOnSignal();
    StopOnSignal(const StopOnSignal&) = delete;
    StopOnSignal& operator=(const StopOnSignal&) = delete;
    ~StopOnSignal();

    [[nodiscard]] std::stop_token token() const { return m_stop.get_token(); }

private:
    void watch(const std::stop_token& end);

    sigset_t m_signals{};
    sigset_t m_before{};
    std::stop_source m_stop;
    std::jthread m_watcher;  // last: it uses all of the above
};

}  // namespace app
