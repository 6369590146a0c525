// The ladder of accuracy: how far each night's low of the headline pond is from that of 160 layers and steps of
// 75 s. Prints the greatest and mean differences over 14 nights; it decides nothing (tests/property does).
#include "tests/scenario.h"

#include <cmath>
#include <iomanip>
#include <iostream>

namespace {

using namespace engine;

std::vector<RampRun> runs(const Pond& pond, const Resolution& resolution) {
    CompareOptions options;
    options.days = 14;
    options.resolution = resolution;
    options.endStates = false;
    options.causes = false;
    return compare(pond, options).runs;
}

}  // namespace

int main() {
    const Pond pond = test::scenario("grandfathers-pond");
    const std::vector<RampRun> finest = runs(pond, {160, 75.0});
    std::cout << std::fixed << std::setprecision(3);
    for (const double step : {900.0, 600.0, 300.0, 150.0, 75.0}) {
        for (const int layers : {20, 40, 80, 160}) {
            const std::vector<RampRun> coarse = runs(pond, {layers, step});
            for (std::size_t ramp = 0; ramp < finest.size(); ++ramp) {
                double most = 0.0, sum = 0.0;
                int night = 0;
                for (std::size_t i = 0; i < finest[ramp].days.size(); ++i) {
                    const double miss = std::fabs(coarse[ramp].days[i].lowest - finest[ramp].days[i].lowest);
                    night = miss > most ? coarse[ramp].days[i].day : night;
                    most = std::max(most, miss);
                    sum += miss;
                }
                std::cout << std::setw(4) << layers << " layers " << std::setw(4) << static_cast<int>(step)
                          << " s  " << std::left << std::setw(28) << finest[ramp].name << std::right
                          << " greatest " << most << " (night " << std::setw(2) << night << ")  mean "
                          << sum / static_cast<double>(finest[ramp].days.size()) << " mg/L\n";
            }
        }
    }
    return 0;
}
