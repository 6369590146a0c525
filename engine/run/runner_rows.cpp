// What a run writes down (engine/run/runner.h).
#include "engine/base/units.h"
#include "engine/run/runner.h"

#include <algorithm>
#include <cmath>

namespace engine {

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
    m_run.hoursBelowStress += below(m_model.parameters.thresholds.stress) / kHour;
    m_run.hoursBelowLethal += below(m_model.parameters.thresholds.lethal) / kHour;
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
    row.warmth = m_column.temperatureAtFish();
    row.ph = phWith(m_model.parameters.toxicants.known, m_column.oxygenAtFish(), row.warmth);
    row.unionisedAmmonia = m_column.unionisedAmmonia(row.ph);
    row.hydrogenSulfide = m_column.hydrogenSulfide(row.ph);
    const OxygenThresholds& thresholds = m_model.parameters.thresholds;
    for (int i = 0; i < grid.layers(); ++i) {
        const bool good = oxygen[i] >= thresholds.stress && temperature[i] <= thresholds.fishMax;
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
    row.organic = ledger.organic;
    const double organic = m_column.organicStored();
    row.organicChange = organic - m_organic;
    m_organic = organic;
    m_run.budget.push_back(row);
    if (day >= 1 && day <= m_request.days) {
        m_run.days[day - 1].liftedVolume = ledger.liftedVolume;
    }
    m_debtIn += ledger.debtRegenerated + ledger.debtStirred + ledger.debtInflow;
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

void Runner::finish() {
    m_run.schedule = joined(m_clock.schedule());
    m_run.surfaceAir = m_clock.nightAir();
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

}  // namespace engine
