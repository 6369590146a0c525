// What fourteen days of the headline pond cost: the continuous ramp with its plume running, and do-nothing,
// alone on one core. Prints medians; it decides nothing. With a number as argument it runs that many times
// the continuous ramp at the default layers and prints nothing, for a profiler.
#include "tests/scenario.h"

#include <algorithm>
#include <chrono>
#include <cstdlib>
#include <iomanip>
#include <iostream>
#include <vector>

namespace {

using namespace engine;

constexpr int kRepeats = 41;

RunRequest fourteenDays(int days) {
    RunRequest request;
    request.days = days;
    request.keepLayers = false;
    return request;
}

double median_ms(const PondModel& model, const Ramp* ramp, int days) {
    std::vector<double> times;
    for (int i = 0; i < kRepeats; ++i) {
        const auto start = std::chrono::steady_clock::now();
        const RampRun run = runRamp(model, ramp, fourteenDays(days));
        const std::chrono::duration<double, std::milli> took = std::chrono::steady_clock::now() - start;
        times.push_back(run.end == RunEnd::Completed ? took.count() : -1.0);
    }
    std::nth_element(times.begin(), times.begin() + kRepeats / 2, times.end());
    return times[kRepeats / 2];
}

}  // namespace

int main(int argc, char** argv) {
    const Pond pond = test::scenario("grandfathers-pond");
    const Ramp& ramp = test::rampOfKind(pond, RampKind::Continuous);
    if (argc > 1) {
        const PondModel model = prepareUnbalanced(pond, {});
        for (int i = 0; i < std::atoi(argv[1]); ++i) {
            static_cast<void>(runRamp(model, &ramp, fourteenDays(14)));
        }
        return 0;
    }
    std::cout << std::fixed << std::setprecision(2);
    for (const int layers : {20, 40, 80}) {
        Resolution resolution;
        resolution.layers = layers;
        const PondModel model = prepare(pond, resolution);
        const RampRun run = runRamp(model, &ramp, fourteenDays(14));
        std::cout << std::setw(3) << layers << " layers, 14 days: continuous " << median_ms(model, &ramp, 14)
                  << " ms, do-nothing " << median_ms(model, nullptr, 14) << " ms; 28 days: continuous "
                  << median_ms(model, &ramp, 28) << " ms; " << run.steps << " steps, " << run.plumes
                  << " plumes\n";
    }
    return 0;
}
