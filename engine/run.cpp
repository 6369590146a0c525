#include "engine/run.h"

#include "engine/air_clock.h"
#include "engine/error.h"
#include "engine/plants.h"
#include "engine/text.h"
#include "engine/units.h"

#include <algorithm>
#include <cmath>
#include <numeric>

namespace engine {
namespace {

constexpr int kEndStateDays = 30;
constexpr int kEndStateNights = 7;

Air<double> airOf(const Forcing& forcing, const PlantTable::Scale& plants) {
    return {forcing.shortwave,  forcing.air, forcing.vapourPressure, forcing.wind10, forcing.cloud,
            plants.chlorophyll, plants.weeds};
}

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
    [[nodiscard]] int stepsOf(double span) const;
    void advance(double until);
    void oneStep(double dt);
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
    Column<double> m_column;
    AirClock m_clock;
    RampRun m_run;
    double m_time = 0.0;
    double m_fishWater = 0.0;
    double m_stored = 0.0;
    double m_debtAtStart = 0.0, m_debtIn = 0.0, m_debtOut = 0.0;
};

double Runner::nextMark(double time) const {
    double mark = std::min(m_end, (std::floor(time / kHour + 1e-9) + 1.0) * kHour);
    for (int day = dayOf(time); day <= dayOf(time) + 1; ++day) {
        const double rise = m_weather.sunrise(day);
        if (rise > time + kInstant) {
            mark = std::min(mark, rise);
        }
    }
    return std::min({mark, m_clock.nextSwitch(time), m_clock.nextDayStart(time)});
}

void Runner::oneStep(double dt) {
    m_column.step(dt, airOf(m_weather.at(m_time + 0.5 * dt), m_plants.at(m_time + dt)), m_clock.at(m_time));
    m_clock.lifted(dt * m_column.lifting());
    m_time += dt;
    const double after = m_column.fishWater();
    note(dt, m_fishWater, after);
    m_fishWater = after;
    ++m_run.steps;
}

/// Steps come in pairs (engine/column.h).
int Runner::stepsOf(double span) const {
    return 2 * static_cast<int>(std::ceil(0.5 * span / m_model.resolution.largestStep - 1e-9));
}

void Runner::advance(double until) {
    while (m_time < until - kInstant) {
        double span = until - m_time;
        if (m_clock.watching(m_time)) {
            m_column.refreshPlume();  // the dose depends on it
            m_column.preparePlume(m_clock.at(m_time));
            span = std::min(span, m_clock.allowance(m_time, m_column.lifting()));
            if (span <= kInstant) {
                m_clock.endRun(m_time);
                return;  // the marks have changed
            }
            // Whole minutes after the start of the run, so that it can end on one.
            const double step = std::min(span, m_model.resolution.largestStep);
            oneStep(step < span ? std::max(std::floor(step / kMinute), 1.0) * kMinute : step);
            continue;
        }
        const int count = stepsOf(span);
        const double dt = span / count;
        m_column.startPair();
        for (int i = 0; i < count; ++i) {
            if (2 * i == count) {
                m_column.refreshPlume();  // halfway between marks, so at least every half hour
            }
            oneStep(dt);
        }
        m_time = until;
    }
}

void Runner::note(double dt, double before, double after) {
    // Nights run from noon to noon; what lies before the noon of day 1 belongs to none.
    const int night = static_cast<int>(std::floor((m_time - kInstant - kDay / 2) / kDay)) + 1;
    if (night < 1 || night > m_request.days) {
        return;
    }
    DayRow& row = m_run.days[night - 1];
    if (after < row.lowest) {
        row.lowest = after;
        row.lowestTime = m_time;
    }
    const auto below = [&](double line) {
        const double high = std::max(before, after), low = std::min(before, after);
        return low >= line ? 0.0 : high < line ? dt : dt * (line - low) / (high - low);
    };
    m_run.hoursBelowStress += below(m_model.parameters.lines.stress) / kHour;
    m_run.hoursBelowLethal += below(m_model.parameters.lines.lethal) / kHour;
}

void Runner::hourRow() {
    const Grid& grid = m_model.grid;
    const std::vector<double> oxygen = m_column.solutes(kOxygen, 0), temperature = m_column.temperatures(0);
    HourRow row;
    row.time = m_time;
    row.surface = interpolate(grid.middle, oxygen, m_model.surfaceDepth);
    row.bottom = interpolate(grid.middle, oxygen, m_model.bottomDepth);
    row.fishWater = m_fishWater;
    row.mean = m_column.oxygenStored() / m_model.basin.volume();
    row.surfaceTemperature = interpolate(grid.middle, temperature, m_model.surfaceDepth);
    row.bottomTemperature = interpolate(grid.middle, temperature, m_model.bottomDepth);
    row.unionisedAmmonia = m_column.unionisedAmmonia();
    row.hydrogenSulfide = m_column.hydrogenSulfide();
    const Lines& lines = m_model.parameters.lines;
    for (int i = 0; i < grid.layers(); ++i) {
        const bool good = oxygen[i] >= lines.stress && temperature[i] <= lines.fishMax;
        row.habitat += good ? grid.volume[i] / m_model.basin.volume() : 0.0;
    }
    m_run.hours.push_back(row);
    if (m_request.keepLayers) {
        std::vector<LayerRow> layers;
        const State<double>& state = m_column.state();
        for (int i = 0; i < grid.layers(); ++i) {
            layers.push_back(
                {temperature[i], oxygen[i], state.solutes[i][kFast] + state.solutes[i][kMedium]});
        }
        m_run.layers.push_back(std::move(layers));
    }
    m_column.refreshPlume();
}

void Runner::closeBudget(int day) {
    Ledger<double>& ledger = m_column.ledger();
    BudgetRow row;
    row.day = day;
    row.terms = ledger.oxygen;
    const double stored = m_column.oxygenStored();
    row.storedChange = stored - m_stored;
    m_stored = stored;
    m_run.budget.push_back(row);
    if (day >= 1 && day <= m_request.days) {
        m_run.days[day - 1].lifted = ledger.lifted;
    }
    m_debtIn += ledger.debtRegenerated + ledger.debtStirred + ledger.debtOfPlants + ledger.debtInflow;
    m_debtOut += ledger.debtOxidised;
    ledger = {};
}

void Runner::midnight() {
    const int day = dayOf(m_time) - 1;  // the day that ends
    closeBudget(day);
    if (day >= 1 && day <= m_request.days && m_debtAtStart > 0.0) {
        m_run.days[day - 1].debtLeft = m_column.debtStored() / m_debtAtStart;
    }
}

void Runner::dawn(int day) {
    const Grid& grid = m_model.grid;
    const std::vector<double> oxygen = m_column.solutes(kOxygen, 0), temperature = m_column.temperatures(0);
    const double bottom = interpolate(grid.middle, oxygen, m_model.bottomDepth);
    const double contrast = interpolate(grid.middle, temperature, m_model.surfaceDepth) -
                            interpolate(grid.middle, temperature, m_model.bottomDepth);
    if (day >= 2 && day <= m_request.days + 1) {
        DayRow& row = m_run.days[day - 2];
        row.dawnSurface = interpolate(grid.middle, oxygen, m_model.surfaceDepth);
        row.dawnBottom = bottom;
        row.dawnTopMinusBottom = contrast;
    }
    m_clock.dawn(day, contrast, bottom);
}

RampRun Runner::go() {
    m_time = m_model.startTime;
    m_fishWater = m_column.fishWater();
    m_stored = m_column.oxygenStored();
    m_debtAtStart = m_column.debtStored();
    hourRow();
    while (m_time < m_end - kInstant) {
        if (m_control.stop.stop_requested()) {
            m_run.end = RunEnd::Cancelled;
            m_run.message = "The run was stopped at hour " + fixed(m_time / kHour, 0) + ".";
            finish();
            return std::move(m_run);
        }
        const double mark = nextMark(m_time);
        advance(mark);
        if (m_time < mark - kInstant) {
            continue;  // a capped run has just ended
        }
        if (!std::isfinite(m_fishWater)) {
            m_run.end = RunEnd::NotFinite;
            m_run.message = "The oxygen of ramp \"" + m_run.name + "\" is not a finite number at hour " +
                            fixed(m_time / kHour, 1) + " after midnight of day 1.";
            finish();
            return std::move(m_run);
        }
        const double hours = m_time / kHour;
        const bool wholeHour = std::fabs(hours - std::round(hours)) * kHour < kInstant;
        if (wholeHour && std::fmod(std::round(hours), 24.0) == 0.0) {
            midnight();
        }
        if (std::fabs(m_time - m_weather.sunrise(dayOf(m_time))) < kInstant) {
            dawn(dayOf(m_time));
        }
        if (std::fabs(m_time - m_clock.nextDayStart(m_time - 1.0)) < kInstant) {
            m_clock.startDay(dayOf(m_time));
        }
        if (wholeHour) {
            hourRow();
            if (m_control.progress) {
                m_control.progress((m_time - m_model.startTime) / (m_end - m_model.startTime));
            }
        }
        if (m_clock.liftedDay() && *m_clock.liftedDay() < m_request.stopWhenLiftedBefore) {
            m_run.capLiftedDay = m_clock.liftedDay();
            m_run.end = RunEnd::Completed;
            return std::move(m_run);
        }
    }
    closeBudget(dayOf(m_end));
    m_run.end = RunEnd::Completed;
    finish();
    if (m_request.endState) {
        findEndState();
    }
    return std::move(m_run);
}

void Runner::findEndState() {
    // Only the fish water's lows are wanted of these days.
    const double end = m_end + kEndStateDays * kDay;
    m_clock.hold(m_request.days, end);
    std::vector<double> lows(kEndStateDays, kNever);
    while (m_time < end - kInstant && !m_control.stop.stop_requested()) {
        const int night = static_cast<int>((m_time - m_end + kInstant) / kDay);
        const double hour = (std::floor(m_time / kHour + 1e-9) + 1.0) * kHour;
        const double mark = std::min({end, hour, m_clock.nextSwitch(m_time)});
        const int count =
            static_cast<int>(std::ceil((mark - m_time) / m_model.resolution.largestStep - 1e-9));
        const double dt = (mark - m_time) / count;
        for (int i = 0; i < count; ++i) {
            if (2 * i == count) {
                m_column.refreshPlume();
            }
            m_column.step(dt, airOf(m_weather.at(m_time + 0.5 * dt), m_plants.at(m_time + dt)),
                          m_clock.at(m_time));
            m_time += dt;
            lows[night] = std::min(lows[night], m_column.fishWater());
        }
        m_time = mark;
        if (mark == hour) {
            m_column.refreshPlume();
        }
    }
    if (m_time < end - kInstant) {
        m_run.end = RunEnd::Cancelled;
        m_run.message = "The run was stopped before its end state was found.";
        return;
    }
    double mean = 0.0, slope = 0.0;
    for (int i = 0; i < kEndStateNights; ++i) {
        const double low = lows[static_cast<std::size_t>(kEndStateDays - kEndStateNights + i)];
        mean += low / kEndStateNights;
        slope += low * (i - 3) / 28.0;  // least squares over seven evenly spaced nights
    }
    m_run.endState = mean;
    m_run.endDrift = slope;
}

void Runner::finish() {
    m_run.schedule = joined(m_clock.schedule());
    m_run.cutMinutes = m_clock.cutMinutes();
    m_run.capLiftedDay = m_clock.liftedDay();
    m_run.daysToContinuous = daysToContinuous(m_run.schedule, m_end);
    for (HourRow& row : m_run.hours) {
        row.running = runningBetween(m_run.schedule, row.time, row.time + kHour) / kHour;
    }
    for (DayRow& row : m_run.days) {
        row.runMinutes = runningBetween(m_run.schedule, (row.day - 1) * kDay, row.day * kDay) / kMinute;
    }
    if (m_model.pond.aerator && m_model.pond.aerator->power_kW) {
        m_run.energy_kWh = *m_model.pond.aerator->power_kW *
                           runningBetween(m_run.schedule, m_model.startTime, m_end) / kHour;
    }
    m_run.usualDays = m_weather.usualDays();
    m_run.plumes = m_column.plumeCount();
    const double moved = m_debtAtStart + m_debtIn + m_debtOut;
    m_run.debtClosing =
        moved > 0.0 ? (m_column.debtStored() - m_debtAtStart - m_debtIn + m_debtOut) / moved : 0.0;
}

}  // namespace

double BudgetRow::closingError() const {
    return storedChange - std::accumulate(terms.begin(), terms.end(), 0.0);
}

double BudgetRow::throughput() const {
    return std::accumulate(terms.begin(), terms.end(), 0.0,
                           [](double sum, double term) { return sum + std::fabs(term); });
}

const DayRow& RampRun::worst() const {
    ensure(!days.empty(), "a run has at least one night");
    return *std::min_element(days.begin(), days.end(),
                             [](const DayRow& a, const DayRow& b) { return a.lowest < b.lowest; });
}

const DayRow* RampRun::largestDose() const {
    const auto most = std::max_element(days.begin(), days.end(),
                                       [](const DayRow& a, const DayRow& b) { return a.lifted < b.lifted; });
    return most == days.end() || most->lifted <= 0.0 ? nullptr : &*most;
}

RampRun runRamp(const PondModel& model, const Ramp* ramp, const RunRequest& request,
                const RunControl& control) {
    ensure(request.days >= 1, "a run has at least a day");
    return Runner(model, ramp, request, control).go();
}

}  // namespace engine
