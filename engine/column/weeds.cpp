#include "engine/column/weeds.h"

namespace engine {

std::vector<double> weedShares(const Grid& grid, double deepest) {
    const int layers = grid.layers();
    std::vector<double> share(layers, 0.0);
    double ground = 0.0;
    for (int i = 0; i < layers; ++i) {
        ground += grid.middle[i] <= deepest || i == 0 ? grid.bottomArea[i] : 0.0;
    }
    if (ground <= 0.0) {
        return share;  // upright walls down to where it is dark: no ground for weeds
    }
    for (int i = 0; i < layers; ++i) {
        if (grid.middle[i] > deepest && i > 0) {
            continue;
        }
        for (int j = 0; j <= i; ++j) {
            const double inside = grid.thickness[j] / grid.face[i + 1];
            share[j] += grid.bottomArea[i] / ground * inside * grid.faceArea[0] / grid.volume[j];
        }
    }
    return share;
}

}  // namespace engine
