#include "engine/base/text.h"
#include "engine/base/units.h"
#include "engine/water/water.h"

#include <gtest/gtest.h>

#include <array>
#include <cmath>
#include <cstdio>
#include <sstream>
#include <string>
#include <vector>

// Against the Gibbs SeaWater toolbox (TEOS-10; Debian's python3-gsw), run here and now. Without it these
// tests fail: a check that quietly does not run is none.

namespace {

struct Row {
    double temperature = 0.0;
    double salinity = 0.0;
    double saturation = 0.0;
    double density = 0.0;
};

std::vector<Row> gswTable() {
    const std::string command = "\"" DAWNLINE_SYSTEM_PYTHON "\" \"" DAWNLINE_PUBLISHED "/gsw_table.py\"";
    std::string output;
    if (std::FILE* pipe = popen(command.c_str(), "r")) {
        std::array<char, 4096> buffer{};
        for (std::size_t n = 0; (n = std::fread(buffer.data(), 1, buffer.size(), pipe)) > 0;) {
            output.append(buffer.data(), n);
        }
        if (pclose(pipe) != 0) {
            return {};
        }
    }
    std::vector<Row> rows;
    std::istringstream lines(output);
    for (std::string t, s, saturation, density; lines >> t >> s >> saturation >> density;) {
        rows.push_back({engine::toNumber(t).value(), engine::toNumber(s).value(),
                        engine::toNumber(saturation).value(), engine::toNumber(density).value()});
    }
    return rows;
}

class Gsw : public ::testing::Test {
protected:
    void SetUp() override {
        m_rows = gswTable();
        ASSERT_EQ(m_rows.size(), 7u * 36u)
            << "no table from " DAWNLINE_SYSTEM_PYTHON ": install python3-gsw or set DAWNLINE_SYSTEM_PYTHON";
    }

    std::vector<Row> m_rows;
};

// gsw carries the fit of Garcia & Gordon (1992) to the data that Benson & Krause fitted themselves.
// Tolerance in fresh water 0.0015 g/m^3. In salt water 0.1 % on top: one fit is per volume, the other per
// mass with another equation of density.
TEST_F(Gsw, OxygenSaturation) {
    for (const Row& row : m_rows) {
        const double ours =
            engine::oxygenSaturation(row.temperature, row.salinity, engine::kStandardPressure);
        const double tolerance = 0.0015 + (row.salinity > 0.0 ? 0.001 * row.saturation : 0.0);
        EXPECT_NEAR(ours, row.saturation, tolerance) << row.temperature << " degC, salinity " << row.salinity;
    }
}

// EOS-80 against TEOS-10. Both rest on measurements good to a few 1e-3 kg/m^3, and TEOS-10 moved fresh and
// brackish water by up to a few 1e-2. Tolerance 0.03 kg/m^3: a tenth of what 1 degC does at 25 degC, so no
// layering that the program can tell hangs on the choice.
TEST_F(Gsw, Density) {
    for (const Row& row : m_rows) {
        EXPECT_NEAR(engine::waterDensity(row.temperature, row.salinity), row.density, 0.03)
            << row.temperature << " degC, salinity " << row.salinity;
    }
}

}  // namespace
