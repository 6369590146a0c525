#pragma once

#include <algorithm>
#include <ctime>
#include <fstream>
#include <string>
#include <vector>

namespace bench {

/// Time that this thread has had a processor for [s], which other programs on the machine do not lengthen
/// much.
inline double threadSeconds() {
    timespec now{};
    clock_gettime(CLOCK_THREAD_CPUTIME_ID, &now);
    return static_cast<double>(now.tv_sec) + 1e-9 * static_cast<double>(now.tv_nsec);
}

inline double median(std::vector<double> values) {
    const auto middle = values.begin() + static_cast<std::ptrdiff_t>(values.size() / 2);
    std::nth_element(values.begin(), middle, values.end());
    return *middle;
}

/// Median of the processor times of `repeats` calls [ms].
template <class Work>
double median_ms(int repeats, const Work& work) {
    std::vector<double> times;
    for (int i = 0; i < repeats; ++i) {
        const double before = threadSeconds();
        work();
        times.push_back(1e3 * (threadSeconds() - before));
    }
    return median(times);
}

/// Largest resident memory of this process so far [MiB]; 0 where the system does not say.
inline double peak_MiB() {
    std::ifstream status("/proc/self/status");
    for (std::string word; status >> word;) {
        if (word == "VmHWM:") {
            double kib = 0.0;
            status >> kib;
            return kib / 1024.0;
        }
    }
    return 0.0;
}

}  // namespace bench
