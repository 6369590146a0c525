#pragma once

#include <gtest/gtest.h>

#include <algorithm>
#include <cvode/cvode.h>
#include <functional>
#include <nvector/nvector_serial.h>
#include <sundials/sundials_context.h>
#include <sunlinsol/sunlinsol_dense.h>
#include <sunmatrix/sunmatrix_dense.h>
#include <vector>

namespace engine::test {

/// d/dt of a state at a time [s]; both vectors have the size of the start.
using Derivative =
    std::function<void(double time, const std::vector<double>& state, std::vector<double>& rate)>;

namespace cvode_detail {

struct Problem {
    const Derivative* derivative = nullptr;
    std::vector<double> state, rate;
};

inline int evaluate(realtype time, N_Vector y, N_Vector ydot, void* user) {
    Problem& problem = *static_cast<Problem*>(user);
    const double* from = N_VGetArrayPointer(y);
    std::copy(from, from + problem.state.size(), problem.state.begin());
    (*problem.derivative)(time, problem.state, problem.rate);
    std::copy(problem.rate.begin(), problem.rate.end(), N_VGetArrayPointer(ydot));
    return 0;
}

}  // namespace cvode_detail

/// The state at `end` [s] from the state at time 0 by CVODE of SUNDIALS: variable-order BDF with Newton and a
/// dense matrix of difference quotients. A failure of the solver fails the test and returns nothing.
inline std::vector<double> integrateByCvode(const Derivative& derivative, std::vector<double> start,
                                            double end, double relative, double absolute) {
    const sunindextype size = static_cast<sunindextype>(start.size());
    SUNContext context = nullptr;
    if (SUNContext_Create(nullptr, &context) != 0) {
        ADD_FAILURE() << "SUNDIALS gives no context";
        return {};
    }
    N_Vector y = N_VMake_Serial(size, start.data(), context);
    SUNMatrix matrix = SUNDenseMatrix(size, size, context);
    SUNLinearSolver solver = SUNLinSol_Dense(y, matrix, context);
    void* memory = CVodeCreate(CV_BDF, context);
    cvode_detail::Problem problem{&derivative, start, start};
    bool good = CVodeInit(memory, cvode_detail::evaluate, 0.0, y) == CV_SUCCESS;
    good = good && CVodeSStolerances(memory, relative, absolute) == CV_SUCCESS;
    good = good && CVodeSetUserData(memory, &problem) == CV_SUCCESS;
    good = good && CVodeSetLinearSolver(memory, solver, matrix) == CV_SUCCESS;
    good = good && CVodeSetMaxNumSteps(memory, 200000) == CV_SUCCESS;
    good = good && CVodeSetStopTime(memory, end) == CV_SUCCESS;
    double reached = 0.0;
    const int flag = good ? CVode(memory, end, y, &reached, CV_NORMAL) : -1000;
    EXPECT_TRUE(flag >= 0) << "CVODE ended with flag " << flag << " at " << reached << " s";
    CVodeFree(&memory);
    SUNLinSolFree(solver);
    SUNMatDestroy(matrix);
    N_VDestroy(y);
    SUNContext_Free(&context);
    return flag >= 0 ? start : std::vector<double>{};
}

}  // namespace engine::test
