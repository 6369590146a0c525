#include "app/cli_signals.h"

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
    constexpr timespec kPatience{0, 20'000'000};
    while (!end.stop_requested()) {
        if (sigtimedwait(&m_signals, nullptr, &kPatience) > 0) {
            m_stop.request_stop();
            pthread_sigmask(SIG_UNBLOCK, &m_signals, nullptr);  // the next one finds this thread
            return;
        }
    }
}

}  // namespace app
