// What a proposal says of the power that a start takes.
#include "engine/run/power_use.h"
#include "tests/papers/made_papers.h"

namespace widgets {
namespace {

/// Cells of the row that begins with a text, in the table whose first heading is another; empty if there is
/// none.
QStringList rowOf(const Paper& paper, const QString& heading, const QString& first) {
    for (const PaperPiece& piece : paper.pieces) {
        if (piece.kind == PaperPiece::Kind::Table && piece.table.columns.front().title == heading) {
            for (const QStringList& row : piece.table.rows) {
                if (row.front() == first) {
                    return row;
                }
            }
        }
    }
    return {};
}

PaperRun airedRun(std::optional<double> perKWh) {
    constexpr int kNights = 4;
    engine::Pond pond = test::startingPond();
    pond.aerator->power_kW = engine::Quantity(0.75);
    for (engine::Ramp& ramp : pond.ramps) {
        ramp.surfaceAir_kW = engine::Quantity(3.0);
    }
    engine::Consultant who = test::madeUpConsultant();
    if (perKWh) {
        who.prices.push_back({"Power from the grid", "kWh", perKWh});
    }
    return paperRun(test::frozenRun(pond, 2, kNights), std::move(who));
}

TEST(ProposalPower, PricesTheSurfaceAirAsTheCompressor) {
    const PaperRun run = airedRun(0.25);
    const Paper paper = proposal(run);
    const QString heading = QStringLiteral("Power");
    const auto compressor = engine::compressorUse(run.comparison().model, run.planRun());
    ASSERT_TRUE(compressor);
    // 22:00 to 08:00 on each of four nights.
    for (const auto& [name, power, hours] :
         {std::tuple("Compressor", 0.75, compressor->hours), std::tuple("Surface air at night", 3.0, 40.0)}) {
        const QStringList row = rowOf(paper, heading, QLatin1String(name));
        ASSERT_EQ(row.size(), 5) << name;
        EXPECT_EQ(row[1], fixedText(power, 2));
        EXPECT_EQ(row[2], fixedText(hours, 0));
        EXPECT_EQ(row[3], fixedText(power * hours, 0));
        EXPECT_EQ(row[4], fixedText(0.25 * power * hours, 2));
    }
    const QStringList sum = rowOf(paper, heading, QStringLiteral("Together"));
    ASSERT_EQ(sum.size(), 5);
    EXPECT_EQ(sum[4], fixedText(0.25 * (compressor->energy_kWh() + 120.0), 2));
    EXPECT_TRUE(rowOf(paper, QStringLiteral("Item"), QStringLiteral("Power from the grid")).isEmpty())
        << "its number is computed, so that no blank waits for it";
}

TEST(ProposalPower, LeavesTheAmountBlankWithoutAPrice) {
    const QStringList row =
        rowOf(proposal(airedRun({})), QStringLiteral("Power"), QStringLiteral("Surface air at night"));
    ASSERT_EQ(row.size(), 5);
    EXPECT_EQ(row[3], fixedText(120.0, 0));
    EXPECT_TRUE(row[4].isEmpty());
}

}  // namespace
}  // namespace widgets
