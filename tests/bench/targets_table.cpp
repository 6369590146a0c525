#include "tests/bench/targets_table.h"

#include "tests/bench/words.h"

#include <cmath>
#include <cstdio>

namespace bench {

double exponent(const std::vector<double>& size, const std::vector<double>& cost) {
    if (size.size() < 2) {
        return 0.0;
    }
    const auto n = static_cast<double>(size.size());
    double x = 0.0, y = 0.0, xx = 0.0, xy = 0.0;
    for (std::size_t i = 0; i < size.size(); ++i) {
        const double a = std::log(size[i]), b = std::log(cost[i]);
        x += a / n;
        y += b / n;
        xx += a * a / n;
        xy += a * b / n;
    }
    return (xy - x * y) / (xx - x * x);
}

void printTargets(const std::vector<TargetRow>& rows) {
    std::printf("\n%-58s %16s  %-34s %s\n", "", "measured", "ratio over a yardstick of this run", "target");
    for (const TargetRow& row : rows) {
        const std::string ratio = row.ratio > 0.0 ? words("%.3g x %s", row.ratio, row.yardstick.c_str()) : "";
        std::string target;
        if (row.target > 0.0) {
            const bool isMet = row.atLeast ? row.value >= row.target : row.value <= row.target;
            target = words("%s %g: %s", row.atLeast ? "at least" : "at most", row.target,
                           isMet ? "met" : "MISSED");
        }
        std::printf("%-58s %10.3g %-5s  %-34s %s\n", row.what.c_str(), row.value, row.unit.c_str(),
                    ratio.c_str(), target.c_str());
    }
}

}  // namespace bench
