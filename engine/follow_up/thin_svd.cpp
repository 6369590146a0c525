#include "engine/follow_up/thin_svd.h"

#include <Eigen/SVD>

namespace engine {

ThinSvd thinSvd(const Eigen::MatrixXd& matrix) {
    const Eigen::BDCSVD<Eigen::MatrixXd> svd(matrix, Eigen::ComputeThinU | Eigen::ComputeThinV);
    return {svd.matrixU(), svd.matrixV(), svd.singularValues()};
}

}  // namespace engine
