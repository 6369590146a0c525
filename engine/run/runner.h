#pragma once

#include "engine/column/column.h"
#include "engine/ramps/inflow.h"
#include "engine/ramps/plants.h"
#include "engine/run/air_clock.h"
#include "engine/run/run.h"
#include "engine/run/step_clock.h"

#include <cmath>

namespace engine {

/// One run on its way: the column, the clock and what has been written down.
class Runner {
public:
    Runner(const PondModel& model, const Ramp* ramp, const RunRequest& request, const RunControl& control)
        : m_model(model),
          m_request(request),
          m_control(control),
          m_end((request.stopAfterNight ? *request.stopAfterNight : request.days) * kDay + kDay / 2),
          m_weather(model.pond, weatherOf(request), dayOf(model.startTime) - 1,
                    request.days + 1 + (request.endState ? kEndStateDays : 0)),
          m_plants(model.pond, model.startTime),
          m_inflow(model.pond),
          m_column(model.grid, model.parameters, model.aerator, model.bottom, model.start, request.switches),
          m_clock(model, ramp, request, m_end) {
        m_run.name = ramp != nullptr ? ramp->name : "do-nothing";
        m_run.days.resize(request.days);
        for (int day = 1; day <= request.days; ++day) {
            m_run.days[day - 1].day = day;
            m_run.days[day - 1].lowest = kNever;
        }
    }

    RampRun go();

private:
    static WeatherPlan weatherOf(const RunRequest& request) {
        WeatherPlan plan = request.weather;
        if (request.endState && !plan.usualAfterDay) {
            plan.usualAfterDay = request.days + 1;
        }
        return plan;
    }
    static int dayOf(double time) { return static_cast<int>(std::floor(time / kDay)) + 1; }
    [[nodiscard]] double nextMark(double time) const;
    [[nodiscard]] EvenSteps stepsTo(double until) const;
    void advance(double until);
    void oneStep(double dt);
    void stepColumn(double dt);
    void note(double dt, double before, double after);
    void hourRow();
    void midnight();
    void dawn(int day);
    void closeBudget(int day);
    void finish();
    void findEndState();

    const PondModel& m_model;
    const RunRequest& m_request;
    const RunControl& m_control;
    double m_end;
    WeatherSeries m_weather;
    PlantTable m_plants;
    InflowTable m_inflow;
    Column<double> m_column;
    AirClock m_clock;
    RampRun m_run;
    double m_time = 0.0;
    double m_fishWater = 0.0;
    double m_stored = 0.0, m_organic = 0.0;
    double m_debtAtStart = 0.0, m_debtIn = 0.0, m_debtOut = 0.0;
};

}  // namespace engine
