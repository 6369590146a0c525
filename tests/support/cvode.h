#pragma once

#include <algorithm>
#include <cvode/cvode.h>
#include <cvode/cvode_bandpre.h>
#include <functional>
#include <nvector/nvector_serial.h>
#include <sundials/sundials_context.h>
#include <sunlinsol/sunlinsol_band.h>
#include <sunlinsol/sunlinsol_dense.h>
#include <sunlinsol/sunlinsol_spgmr.h>
#include <sunmatrix/sunmatrix_band.h>
#include <sunmatrix/sunmatrix_dense.h>
#include <vector>

namespace engine::test {

/// d/dt of a state at a time [s]; both arrays have the size of the start.
using Derivative = std::function<void(double time, const double* state, double* rate)>;

/// How CVODE solves the linear systems of its Newton iteration, always from difference quotients.
enum class LinearSolver {
    Dense,
    Band,         ///< Leaves out what couples numbers farther apart than the half bandwidth
    Krylov,       ///< GMRES without a preconditioner
    BandedKrylov  ///< GMRES, the band its preconditioner
};

struct CvodeOptions {
    LinearSolver solver = LinearSolver::Dense;
    int halfBandwidth = 0;  ///< Of the band
    double relative = 1e-7, absolute = 1e-8;
    long mostSteps = 200000;
};

/// Variable-order BDF of SUNDIALS' CVODE on one problem, started as often as asked for.
class Cvode {
public:
    Cvode(const Derivative& derivative, std::vector<double> start, const CvodeOptions& options)
        : m_derivative(derivative), m_state(std::move(start)) {
        const auto size = static_cast<sunindextype>(m_state.size());
        const auto half = static_cast<sunindextype>(options.halfBandwidth);
        m_good = SUNContext_Create(nullptr, &m_context) == 0;
        m_y = N_VMake_Serial(size, m_state.data(), m_context);
        m_memory = CVodeCreate(CV_BDF, m_context);
        expect(CVodeInit(m_memory, evaluate, 0.0, m_y));
        expect(CVodeSStolerances(m_memory, options.relative, options.absolute));
        expect(CVodeSetUserData(m_memory, this));
        switch (options.solver) {
            case LinearSolver::Dense:
                m_matrix = SUNDenseMatrix(size, size, m_context);
                m_solver = SUNLinSol_Dense(m_y, m_matrix, m_context);
                break;
            case LinearSolver::Band:
                m_matrix = SUNBandMatrix(size, half, half, m_context);
                m_solver = SUNLinSol_Band(m_y, m_matrix, m_context);
                break;
            case LinearSolver::Krylov:
                m_solver = SUNLinSol_SPGMR(m_y, PREC_NONE, 0, m_context);
                break;
            case LinearSolver::BandedKrylov:
                m_solver = SUNLinSol_SPGMR(m_y, PREC_LEFT, 0, m_context);
                break;
        }
        expect(CVodeSetLinearSolver(m_memory, m_solver, m_matrix));
        if (options.solver == LinearSolver::BandedKrylov) {
            expect(CVBandPrecInit(m_memory, size, half, half));
        }
        expect(CVodeSetMaxNumSteps(m_memory, options.mostSteps));
    }
    Cvode(const Cvode&) = delete;
    Cvode& operator=(const Cvode&) = delete;
    ~Cvode() {
        CVodeFree(&m_memory);
        SUNLinSolFree(m_solver);
        if (m_matrix != nullptr) {
            SUNMatDestroy(m_matrix);
        }
        N_VDestroy(m_y);
        SUNContext_Free(&m_context);
    }

    /// Goes on to `until` [s]. Returns whether it got there; flag() says why not.
    [[nodiscard]] bool advance(double until) {
        if (!m_good) {
            return false;
        }
        CVodeSetStopTime(m_memory, until);
        m_flag = CVode(m_memory, until, m_y, &m_reached, CV_NORMAL);
        return m_flag >= 0;
    }
    /// The right-hand side has jumped at `time`: starts anew from the state as it is.
    void restart(double time) { expect(CVodeReInit(m_memory, time, m_y)); }

    [[nodiscard]] const std::vector<double>& state() const { return m_state; }
    [[nodiscard]] int flag() const { return m_good ? m_flag : -1000; }
    [[nodiscard]] double reached() const { return m_reached; }

private:
    static int evaluate(realtype time, N_Vector y, N_Vector ydot, void* user) {
        static_cast<Cvode*>(user)->m_derivative(time, N_VGetArrayPointer(y), N_VGetArrayPointer(ydot));
        return 0;
    }
    void expect(int flag) { m_good = m_good && flag == CV_SUCCESS; }

    const Derivative& m_derivative;
    std::vector<double> m_state;  // What m_y holds
    SUNContext m_context = nullptr;
    N_Vector m_y = nullptr;
    SUNMatrix m_matrix = nullptr;
    SUNLinearSolver m_solver = nullptr;
    void* m_memory = nullptr;
    double m_reached = 0.0;
    int m_flag = 0;
    bool m_good = false;
};

}  // namespace engine::test
