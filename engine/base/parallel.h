#pragma once

#include <cstddef>
#include <functional>
#include <stop_token>

namespace engine {

/// Runs body(0), body(1), ... body(count - 1), each once, on at most `threads` threads of which the
/// caller's is one, and returns when all are done. No thread outlives the call.
///
/// Indices are handed out in rising order, and what was handed out is finished, so the finished ones
/// are always 0 to n - 1. `body` writes to the slot of its own index only and draws nothing from
/// shared state; then the results are the same bits for any number of threads.
///
/// @param count    Number of indices.
/// @param threads  At least 1; with 1 everything runs inline. Where the system refuses a thread, the
///                 work goes on with fewer.
/// @param stop     Read before each index; once stop is requested, no further index is handed out.
/// @return n, the number of finished indices; less than `count` only after a stop.
/// @throws ArgumentError if threads < 1.
/// @throws What `body` threw at the lowest index that threw, after all threads have ended. No further
///         index is handed out after a throw; which one is thrown does not depend on `threads`.
[[nodiscard]] std::size_t forEachIndex(std::size_t count, int threads, const std::stop_token& stop,
                                       const std::function<void(std::size_t index)>& body);

/// How many threads to work on: as asked, or as many as cores where `asked` is 0 or less.
[[nodiscard]] int threadsFor(int asked);

}  // namespace engine
