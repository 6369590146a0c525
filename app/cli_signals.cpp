#include "app/cli_signals.h"

#include <chrono>
#include <ctime>

namespace app {

StopOnSignal::StopOnSignal() {
    sigemptyset(&m_signals);
    for (const int signal : {SIGINT, SIGTERM, SIGHUP}) {
        sigaddset(&m_signals, signal);
    }
    pthread_sigmask(SIG_BLOCK, &m_signals, &m_before);
    m_watcher = std::jthread([this](const std::stop_token& end) { watch(end); });
}

StopOnSignal::~StopOnSignal() {
    m_watcher.request_stop();
    m_watcher.join();
    pthread_sigmask(SIG_SETMASK, &m_before, nullptr);
}

void StopOnSignal::watch(const std::stop_token& end) {
    using Clock = std::chrono::steady_clock;
    constexpr timespec kPatience{0, 20'000'000};
    constexpr auto kEcho = std::chrono::seconds(1);  // a terminal and its programs may all pass one signal on
    Clock::time_point first;
    while (!end.stop_requested()) {
        const int signal = sigtimedwait(&m_signals, nullptr, &kPatience);
        if (signal <= 0) {
            continue;
        }
        if (!m_stop.stop_requested()) {
            first = Clock::now();
            m_stop.request_stop();
        } else if (Clock::now() - first > kEcho) {
            pthread_sigmask(SIG_UNBLOCK, &m_signals, nullptr);
            raise(signal);
        }
    }
}

}  // namespace app
