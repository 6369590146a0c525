#pragma once

#include <Eigen/Core>

namespace engine {

/// u diag(values) v^T of a matrix, with as many columns of u and v as the shorter side is long. The values
/// are at least 0, the greatest first; signs of columns are Eigen's.
struct ThinSvd {
    Eigen::MatrixXd u, v;
    Eigen::VectorXd values;
};

/// By divide and conquer. In a file of its own, since Eigen's templates of it take most of a minute to
/// compile.
[[nodiscard]] ThinSvd thinSvd(const Eigen::MatrixXd& matrix);

}  // namespace engine
