// Tables, sentences, papers, calendar and the text for the phone: the same answer, for every scenario.
#include "engine/base/text.h"
#include "engine/output/advice_io.h"
#include "engine/wording/sentence_advice.h"
#include "engine/wording/wording.h"
#include "tests/papers/made_papers.h"

#include <QRegularExpression>

#include <set>

namespace widgets {
namespace {

using test::MadePapers;

/// The fields of advice.csv as they are written.
std::map<std::string, std::string> fieldsOf(const std::string& csv) {
    std::map<std::string, std::string> out;
    for (const QString& line : QString::fromStdString(csv).split(QStringLiteral("\r\n"))) {
        const qsizetype comma = line.indexOf(QLatin1Char(','));
        if (comma > 0) {
            out[line.first(comma).toStdString()] =
                line.sliced(comma + 1).remove(QLatin1Char('"')).toStdString();
        }
    }
    return out;
}

/// All that a pattern's group finds in a text.
std::set<std::string> found(const std::string& text, const QString& pattern, int group = 1) {
    std::set<std::string> out;
    auto matches = QRegularExpression(pattern).globalMatch(QString::fromStdString(text).simplified());
    while (matches.hasNext()) {
        out.insert(matches.next().captured(group).toStdString());
    }
    return out;
}

std::string oneDecimal(const std::string& number) {
    return engine::fixed(std::stod(number), 1);
}

class OneAnswer : public testing::TestWithParam<const char*> {};

TEST_P(OneAnswer, IsTheSameInEveryOutput) {
    const MadePapers made(engine::test::scenario(GetParam()), test::madeUpConsultant(), 8);
    const engine::Advice& advice = made.run.advice();
    ASSERT_TRUE(advice.kind);
    auto table = fieldsOf(made.bytes("advice.csv"));
    EXPECT_EQ(table["kind"], engine::wordOf(*advice.kind));

    // A start has a schedule and runs; where not to start nothing can be read as one.
    const std::vector<std::string> names = made.papers();
    const auto isThere = [&](const char* name) {
        return std::find(names.begin(), names.end(), name) != names.end();
    };
    for (const char* name : {"start-up-schedule.pdf", "owners-sheet.pdf", "consent.pdf", "proposal.pdf"}) {
        EXPECT_EQ(isThere(name), advice.mayStart()) << name;
    }
    EXPECT_EQ(isThere("letter.pdf"), !advice.mayStart());
    const std::string& calendar = made.bytes("schedule.ics");
    EXPECT_EQ(calendar.find("Air on") != std::string::npos, advice.mayStart());
    const std::string& message = made.bytes("message.txt");
    EXPECT_LT(message.size(), 300U) << message;
    EXPECT_EQ(message.find("Leave the bottom air off") != std::string::npos, !advice.mayStart()) << message;

    // Ramp, night, lows and end states of the table stand in the verdict, and the verdict on the paper.
    const engine::Sentence verdict = verdictOf(advice, made.run.comparison().model);
    const std::string said = english(verdict);
    const bool isOfEnd = advice.kind == engine::AdviceKind::NoGain;
    if (advice.kind != engine::AdviceKind::WaitUntil) {
        EXPECT_NE(said.find('"' + table["ramp"] + '"'), std::string::npos) << said;
        const std::string& low = isOfEnd ? table["end_state_mg_per_l"] : table["worst_mg_per_l"];
        EXPECT_NE(said.find(oneDecimal(low) + " mg/L"), std::string::npos) << said;
    } else {
        EXPECT_NE(said.find(table["wait_from"]), std::string::npos) << said;
        EXPECT_NE(said.find('"' + table["ramp"] + '"'), std::string::npos) << said;
    }
    const std::string lead = made.text(advice.mayStart() ? "proposal.pdf" : "letter.pdf", false);
    EXPECT_TRUE(QString::fromStdString(lead)
                    .simplified()
                    .remove(QLatin1Char(' '))
                    .contains(QString::fromStdString(said).remove(QLatin1Char(' '))))
        << said << "\n"
        << lead;

    // Chances: one number with the ramp, one left alone, on whatever page.
    const auto of100 = [](double share) {
        return engine::shownValue({"", engine::Measure::Of100, share, {}});
    };
    ASSERT_TRUE(advice.lethal);
    EXPECT_NEAR(std::stod(table["lethal_chance_percent"]), 100.0 * advice.lethal->with, 0.01);
    EXPECT_NEAR(std::stod(table["lethal_chance_alone_percent"]), 100.0 * advice.lethal->alone, 0.01);
    const std::set<std::string> saysChances{"owners-sheet.pdf", "consent.pdf", "proposal.pdf", "letter.pdf"};
    for (const std::string& name : names) {
        const std::string text = made.text(name, false);
        const std::set<std::string> chances =
            found(text, QStringLiteral("100 ponds like (?:this one|yours), ([\\w ]+?) (?:go below the lethal "
                                       "line of [\\d.]+ mg/L with|get so low that fish can die with)"));
        for (const std::string& with : chances) {
            EXPECT_EQ(with, of100(advice.lethal->with)) << name;
        }
        EXPECT_TRUE(!chances.empty() || !saysChances.contains(name)) << name;
        for (const std::string& night : found(text, QStringLiteral("lowest on night (\\d+) at [\\d:]+, "
                                                                   "[\\d.]+ mg/L; left alone"))) {
            EXPECT_EQ(night, table["worst_night"]) << name;
        }
        for (const std::string& end :
             found(text, QStringLiteral("dawn low (?:ends|settles) near ([\\d.]+)"))) {
            EXPECT_EQ(end, oneDecimal(table["end_state_mg_per_l"])) << name;
        }
        if (advice.surfaceAir.transfer > 0.0 && advice.mayStart()) {
            for (const std::string& power : found(text, QStringLiteral("surface air of ([\\d.]+) kW"))) {
                EXPECT_EQ(power, table["surface_air_kw"]) << name;
            }
        }
        EXPECT_EQ(text.find("PROVISIONAL") != std::string::npos, table["provisional"] == "yes") << name;
    }
    EXPECT_EQ(table["run"], engine::nameOf(*made.run.frozen));
}

INSTANTIATE_TEST_SUITE_P(Of, OneAnswer,
                         testing::Values("courtyard-koi", "fee-cats", "grandfathers-pond", "high-meadow",
                                         "new-clay", "old-quarry", "pea-soup", "salt-lens", "spring-trout",
                                         "weedy-woodland", "windy-dugout"),
                         [](const auto& of) {
                             std::string name = of.param;
                             std::replace(name.begin(), name.end(), '-', '_');
                             return name;
                         });

}  // namespace
}  // namespace widgets
