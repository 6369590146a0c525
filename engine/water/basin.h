#pragma once

#include "engine/pond/pond.h"

#include <vector>

namespace engine {

/// The shape of the pond: horizontal area by depth.
class Basin {
public:
    /// From the pond file: contours (linear between them, areas of the volumes exact for that line)
    /// or surface area, greatest and mean depth, A(z) = A0 (1 - z/zmax)^p with p = zmax/zmean - 1.
    /// @pre the shape passed the checks of the pond file.
    explicit Basin(const BasinShape& shape);

    [[nodiscard]] double maxDepth() const { return m_maxDepth; }  ///< [m]
    [[nodiscard]] double area(double depth) const;         ///< Horizontal area at a depth [m^2]
    [[nodiscard]] double volumeBelow(double depth) const;  ///< Water below a depth [m^3], exact
    [[nodiscard]] double volume() const { return volumeBelow(0.0); }

private:
    double m_maxDepth = 0.0;
    double m_surface = 0.0;
    double m_power = 1.0;
    std::vector<double> m_depths, m_areas;  // Contours; empty with the power form.
};

/// Uneven layers from the surface down. Arrays over layers have size N (layer 0 at the surface), over
/// faces N + 1 (face 0 is the surface).
struct Grid {
    std::vector<double> face;       ///< Depth of each face [m], N + 1
    std::vector<double> middle;     ///< Depth of each layer's middle [m], N
    std::vector<double> thickness;  ///< [m], N
    std::vector<double> faceArea;   ///< [m^2], N + 1
    std::vector<double> volume;     ///< [m^3], N, integrated exactly
    std::vector<double> bottomArea;  ///< Sediment by layer [m^2], N: area at its top minus at its bottom
    std::vector<double> distance;   ///< Between the middles across a face [m], N + 1; ends unused

    [[nodiscard]] int layers() const { return static_cast<int>(middle.size()); }
    /// The layer that holds a depth; the last one below the bottom.
    [[nodiscard]] int layerAt(double depth) const;
};

/// Layers from the surface to the bottom: even down to `fineDepth`, twice as fine through the steepest
/// gradients of the start profile, twice as coarse below.
/// @param layers     4 to 400.
/// @param fineDepth  Depth of the deepest diffuser [m].
/// @param depth, density  The start profile: depths [m] and water densities [kg/m^3], same size; may be empty.
[[nodiscard]] Grid makeGrid(const Basin& basin, int layers, double fineDepth,
                            const std::vector<double>& depth, const std::vector<double>& density);

/// Value at a depth, interpolated linearly between the points, constant beyond the outer ones.
/// @param depths  Rising [m]; `values` has the same size.
[[nodiscard]] double interpolate(const std::vector<double>& depths, const std::vector<double>& values,
                                 double depth);

}  // namespace engine
