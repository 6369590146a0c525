#include "engine/water/basin.h"

#include "engine/base/error.h"

#include <algorithm>
#include <cmath>

namespace engine {

Basin::Basin(const BasinShape& shape) {
    if (!shape.contours.empty()) {
        for (const Contour& contour : shape.contours) {
            m_depths.push_back(contour.depth);
            m_areas.push_back(contour.area);
        }
        m_maxDepth = m_depths.back();
        m_surface = m_areas.front();
    } else {
        m_maxDepth = *shape.maxDepth;
        m_surface = *shape.area;
        m_power = m_maxDepth / *shape.meanDepth - 1.0;
    }
    ensure(m_maxDepth > 0.0 && m_surface > 0.0, "a basin has depth and area");
}

double Basin::area(double depth) const {
    const double z = std::clamp(depth, 0.0, m_maxDepth);
    if (m_depths.empty()) {
        return m_surface * std::pow(1.0 - z / m_maxDepth, m_power);
    }
    const auto above = std::upper_bound(m_depths.begin(), m_depths.end(), z);
    const std::size_t i = std::clamp<std::size_t>(
        static_cast<std::size_t>(above - m_depths.begin()), 1, m_depths.size() - 1);
    const double share = (z - m_depths[i - 1]) / (m_depths[i] - m_depths[i - 1]);
    return m_areas[i - 1] + share * (m_areas[i] - m_areas[i - 1]);
}

double Basin::volumeBelow(double depth) const {
    const double z = std::clamp(depth, 0.0, m_maxDepth);
    if (m_depths.empty()) {
        return m_surface * m_maxDepth / (m_power + 1.0) * std::pow(1.0 - z / m_maxDepth, m_power + 1.0);
    }
    double volume = 0.0;
    for (std::size_t i = 1; i < m_depths.size(); ++i) {
        const double top = std::max(z, m_depths[i - 1]);
        if (top < m_depths[i]) {
            volume += 0.5 * (area(top) + m_areas[i]) * (m_depths[i] - top);
        }
    }
    return volume;
}

int Grid::layerAt(double depth) const {
    const auto below = std::upper_bound(face.begin() + 1, face.end() - 1, depth);
    return static_cast<int>(below - face.begin()) - 1;
}

namespace {

/// How many layers a metre wants at a depth, up to a common factor.
class LayerDensity {
public:
    LayerDensity(double fineDepth, const std::vector<double>& depth, const std::vector<double>& density)
        : m_fineDepth(fineDepth), m_depth(depth), m_density(density) {
        for (std::size_t i = 1; i < depth.size(); ++i) {
            m_steepest = std::max(m_steepest, slope(0.5 * (depth[i - 1] + depth[i])));
        }
    }

    [[nodiscard]] double operator()(double z) const {
        const double gradient = m_steepest > 0.0 ? slope(z) / m_steepest : 0.0;
        return (z <= m_fineDepth ? 1.0 : 0.5) * (1.0 + gradient);
    }

private:
    /// Density gradient over 0.4 m around z, so that the spacing changes smoothly [kg/m^4].
    [[nodiscard]] double slope(double z) const {
        constexpr double kHalfWindow = 0.2;
        return std::fabs(interpolate(m_depth, m_density, z + kHalfWindow) -
                         interpolate(m_depth, m_density, z - kHalfWindow)) /
               (2.0 * kHalfWindow);
    }

    double m_fineDepth;
    const std::vector<double>& m_depth;
    const std::vector<double>& m_density;
    double m_steepest = 0.0;
};

}  // namespace

Grid makeGrid(const Basin& basin, int layers, double fineDepth, const std::vector<double>& depth,
              const std::vector<double>& density) {
    ensure(layers >= 4 && layers <= 400, "a column has 4 to 400 layers");
    const double bottom = basin.maxDepth();
    const LayerDensity wanted(fineDepth, depth, density);
    // Faces stand where the running integral of the wanted density passes whole shares of its total.
    constexpr int kSamples = 2000;
    std::vector<double> at(kSamples + 1, 0.0), sum(kSamples + 1, 0.0);
    for (int i = 1; i <= kSamples; ++i) {
        at[i] = bottom * i / kSamples;
        sum[i] = sum[i - 1] + wanted(bottom * (i - 0.5) / kSamples);
    }
    Grid grid;
    for (int i = 0; i <= layers; ++i) {
        grid.face.push_back(interpolate(sum, at, sum.back() * i / layers));
    }
    grid.face.front() = 0.0;
    grid.face.back() = bottom;
    for (int i = 0; i < layers; ++i) {
        grid.thickness.push_back(grid.face[i + 1] - grid.face[i]);
        grid.middle.push_back(0.5 * (grid.face[i] + grid.face[i + 1]));
        grid.volume.push_back(basin.volumeBelow(grid.face[i]) - basin.volumeBelow(grid.face[i + 1]));
    }
    for (const double z : grid.face) {
        grid.faceArea.push_back(basin.area(z));
    }
    grid.distance.assign(grid.face.size(), grid.thickness.front());
    for (int i = 0; i < layers; ++i) {
        // The last layer keeps the rest.
        grid.bottomArea.push_back(grid.faceArea[i] - (i + 1 < layers ? grid.faceArea[i + 1] : 0.0));
        if (i > 0) {
            grid.distance[i] = grid.middle[i] - grid.middle[i - 1];
        }
    }
    return grid;
}

double interpolate(const std::vector<double>& depths, const std::vector<double>& values, double depth) {
    const auto below = std::upper_bound(depths.begin(), depths.end(), depth);
    if (depths.empty()) {
        return 0.0;
    }
    if (below == depths.begin()) {
        return values.front();
    }
    if (below == depths.end()) {
        return values.back();
    }
    const std::size_t i = static_cast<std::size_t>(below - depths.begin());
    const double share = (depth - depths[i - 1]) / (depths[i] - depths[i - 1]);
    return values[i - 1] + share * (values[i] - values[i - 1]);
}

}  // namespace engine
