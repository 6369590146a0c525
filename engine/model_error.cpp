#include "engine/model_error.h"

#include "engine/units.h"

#include <cmath>

namespace engine {

Eigen::MatrixXd modelCovariance(const ModelError& error, const std::vector<FitPoint>& a,
                                const std::vector<FitPoint>& b) {
    Eigen::MatrixXd out(a.size(), b.size());
    for (std::size_t i = 0; i < a.size(); ++i) {
        for (std::size_t j = 0; j < b.size(); ++j) {
            const double apart = std::fabs(a[i].time - b[j].time);
            const double wave = std::sin(kPi * apart / kDay);
            const double shape = (std::exp(-apart / error.passing) + std::exp(-apart / error.forgotten) +
                                  std::exp(-apart / error.daily - 2.0 * wave * wave)) /
                                 3.0;
            out(static_cast<Eigen::Index>(i), static_cast<Eigen::Index>(j)) =
                error.sigma * error.sigma * shape *
                std::exp(-std::fabs(a[i].depth - b[j].depth) / error.depth);
        }
    }
    return out;
}

}  // namespace engine
