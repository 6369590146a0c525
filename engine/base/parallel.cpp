#include "engine/base/parallel.h"

#include "engine/base/error.h"

#include <algorithm>
#include <atomic>
#include <exception>
#include <limits>
#include <mutex>
#include <system_error>
#include <thread>
#include <vector>

namespace engine {
namespace {

/// What the threads of one call share.
struct Loop {
    std::size_t count = 0;
    const std::stop_token& stop;
    const std::function<void(std::size_t)>& body;

    std::atomic<std::size_t> next = 0;
    std::atomic<bool> failed = false;
    std::mutex errorMutex{};
    std::exception_ptr error{};
    std::size_t errorIndex = 0;
};

void work(Loop& loop) {
    while (!loop.stop.stop_requested() && !loop.failed) {
        const std::size_t index = loop.next++;
        if (index >= loop.count) {
            return;
        }
        try {
            loop.body(index);
        } catch (...) {
            // Every lower index was handed out before and will finish, so the lowest throw is always seen.
            const std::lock_guard lock(loop.errorMutex);
            if (!loop.error || index < loop.errorIndex) {
                loop.error = std::current_exception();
                loop.errorIndex = index;
            }
            loop.failed = true;
        }
    }
}

}  // namespace

std::size_t forEachIndex(std::size_t count, int threads, const std::stop_token& stop,
                         const std::function<void(std::size_t)>& body) {
    requireRange("threads", threads, 1, std::numeric_limits<int>::max(), "threads");
    Loop loop{.count = count, .stop = stop, .body = body};
    {
        const std::size_t helpers = std::min(count, static_cast<std::size_t>(threads)) - (count > 0 ? 1 : 0);
        std::vector<std::jthread> pool;
        pool.reserve(helpers);
        try {
            while (pool.size() < helpers) {
                pool.emplace_back([&loop] { work(loop); });
            }
        } catch (const std::system_error&) {  // the system has no more threads
        }
        work(loop);
    }
    if (loop.error) {
        std::rethrow_exception(loop.error);
    }
    return std::min(loop.next.load(), count);
}

int threadsFor(int asked) {
    return asked > 0 ? asked : std::max(1, static_cast<int>(std::thread::hardware_concurrency()));
}

}  // namespace engine
