#include "engine/base/digest.h"
#include "engine/output/results_io.h"
#include "engine/pond/csv.h"
#include "tests/papers/made_papers.h"
#include "widgets/papers/paper_pdf.h"

#include <QRegularExpression>

#include <iterator>
#include <regex>
#include <set>

namespace widgets {
namespace {

using test::headline;
using test::MadePapers;
using test::printed;

bool has(const std::string& text, const std::string& part) {
    return text.find(part) != std::string::npos;
}

/// Text with every stretch of white as one blank, as lines break where they will.
std::string flat(const std::string& text) {
    return QString::fromStdString(text).simplified().toStdString();
}

TEST(PaperPdf, IsCleanAndNamesRunLanguageAndTitle) {
    const std::string run = engine::nameOf(*headline().run.frozen);
    for (const std::string& name : headline().papers()) {
        SCOPED_TRACE(name);
        EXPECT_TRUE(has(printed(QStringLiteral("qpdf"), {QStringLiteral("--check"), headline().path(name)}),
                        "No syntax or stream encoding errors found"));
        const std::string& bytes = headline().bytes(name);
        EXPECT_TRUE(has(bytes, "/Lang (en)"));
        EXPECT_TRUE(has(bytes, "/Outlines"));
        EXPECT_TRUE(has(bytes, run));
        const std::string info = printed(QStringLiteral("pdfinfo"), {headline().path(name)});
        EXPECT_TRUE(has(info, "Grandfather's Pond")) << info;
        EXPECT_TRUE(has(info, "Author:          Still Water Works")) << info;
        EXPECT_TRUE(has(info, "A4")) << info;
        const std::string text = headline().text(name);
        const int pages = headline().pages(name);
        int seen = 0;
        for (std::size_t at = text.find(run); at != std::string::npos; at = text.find(run, at + 1)) {
            ++seen;
        }
        EXPECT_EQ(seen, pages) << "the run's name stands on every page";
        EXPECT_TRUE(has(flat(text), "not a prediction of survival. Readings override the model."));
    }
}

TEST(PaperPdf, HasTheCautionsOfTheTrade) {
    for (const std::string& name : headline().papers()) {
        if (name == "owners-sheet.pdf" || name == "consent.pdf" || name == "daily-log.pdf") {
            continue;  // in their own words; the log has the two of the foot
        }
        const std::string text = flat(headline().text(name, false));
        EXPECT_TRUE(has(text, "not for the life support of high-value stock")) << name;
        EXPECT_TRUE(has(text, "licensed electrician")) << name;
        EXPECT_TRUE(has(text, "thin ice")) << name;
    }
    for (const char* name : {"owners-sheet.pdf", "consent.pdf"}) {
        const std::string text = flat(headline().text(name, false));
        EXPECT_TRUE(has(text, "thin ice")) << name;
        EXPECT_TRUE(has(text, "licensed electrician")) << name;
        EXPECT_TRUE(has(text, "ermits")) << name;
    }
    EXPECT_TRUE(has(headline().text("consent.pdf"), "Have it checked locally"));
}

TEST(PaperPdf, HasTheRightNumberOfPages) {
    EXPECT_EQ(headline().pages("owners-sheet.pdf"), 1);
    EXPECT_GE(headline().pages("proposal.pdf"), 4);
    EXPECT_LE(headline().pages("proposal.pdf"), 8);
    EXPECT_LT(headline().bytes("proposal.pdf").size(), 3U << 20U);
}

TEST(PaperPdf, IsTheSameBytesTwice) {
    const auto again = paperFiles(headline().run);
    ASSERT_EQ(again.size(), headline().files.size());
    for (std::size_t i = 0; i < again.size(); ++i) {
        EXPECT_EQ(engine::sha256(again[i].text), engine::sha256(headline().files[i].text)) << again[i].name;
    }
}

TEST(PaperPdf, HasNoTransparency) {
    for (const std::string& name : headline().papers()) {
        const std::string plain = printed(
            QStringLiteral("qpdf"), {QStringLiteral("--qdf"), QStringLiteral("--stream-data=uncompress"),
                                     headline().path(name), QStringLiteral("-")});
        EXPECT_FALSE(has(plain, "/SMask ") && !has(plain, "/SMask /None")) << name;
        const QRegularExpression alpha(QStringLiteral("/[cC][aA] ([0-9.]+)"));
        for (auto it =
                 alpha.globalMatch(QString::fromLatin1(plain.c_str(), static_cast<qsizetype>(plain.size())));
             it.hasNext();) {
            EXPECT_EQ(it.next().captured(1).toDouble(), 1.0) << name;
        }
    }
}

/// A CSV of ours as rows of fields.
std::vector<std::vector<std::string>> rowsOf(const std::string& csv) {
    std::vector<std::vector<std::string>> rows(1);
    std::string field;
    bool isQuoted = false;
    for (const char c : csv) {
        if (c == '"') {
            isQuoted = !isQuoted;
        } else if (!isQuoted && (c == ',' || c == '\n')) {
            rows.back().push_back(std::move(field));
            field.clear();
            if (c == '\n') {
                rows.emplace_back();
            }
        } else if (c != '\r') {
            field += c;
        }
    }
    rows.pop_back();
    return rows;
}

QString rounded(const std::string& field, int decimals) {
    return field.empty() ? QStringLiteral("\u2013") : QString::number(std::stod(field), 'f', decimals);
}

// Every number of the options table against summary.csv, to the digit that is printed.
TEST(PaperPdf, OptionsAreThoseOfTheSummaryTable) {
    const auto rows = rowsOf(engine::summaryCsv(headline().run.comparison()));
    const std::string text = headline().text("proposal.pdf");
    ASSERT_EQ(rows.size(), 6U);
    for (std::size_t i = 1; i < rows.size(); ++i) {
        const auto& row = rows[i];
        const QString name = i == 1 ? QStringLiteral("do nothing") : QString::fromStdString(row[0]);
        QStringList numbers{rounded(row[1], 0), rounded(row[2], 1), rounded(row[4], 0)};
        numbers << (i == 1 ? QStringLiteral("\u2013") : rounded(row[8], 0)) << rounded(row[7], 1);
        const QRegularExpression line(QRegularExpression::escape(name.left(20)) +
                                      QStringLiteral("[^\\n]*?\\s+") + numbers.join(QStringLiteral("\\s+")) +
                                      QStringLiteral("\\s"));
        EXPECT_TRUE(line.match(QString::fromStdString(text)).hasMatch())
            << line.pattern().toStdString() << "\n"
            << text;
    }
}

TEST(PaperPdf, RunsAreThoseOfTheScheduleTable) {
    const auto rows =
        rowsOf(engine::runListCsv(engine::runList(headline().run.comparison(), headline().run.plan)));
    ASSERT_GT(rows.size(), 10U);
    for (const char* name : {"start-up-schedule.pdf", "proposal.pdf"}) {
        const QString text = QString::fromStdString(headline().text(name));
        for (std::size_t i = 1; i < rows.size(); ++i) {
            const auto& row = rows[i];
            const bool stays = i + 1 == rows.size();  // no stop and no minutes
            const QRegularExpression line(
                QStringLiteral(
                    "\\n\\s*%1\\s+\\d+ \\w+ 2026\\s+%2\\s+\\S.*?\\s+%3\\s+%4\\s+%5 \\(.*?\\)\\s+%6%7")
                    .arg(QString::fromStdString(row[0]), QString::fromStdString(row[2]),
                         stays ? QStringLiteral("\u2013") : rounded(row[3], 0),
                         QString::fromStdString(row[4]), rounded(row[5], 1), rounded(row[6], 0),
                         name == std::string("proposal.pdf")
                             ? QStringLiteral("\\s+%1\\s+%2").arg(rounded(row[7], 1), rounded(row[8], 1))
                             : QString()));
            EXPECT_TRUE(line.match(text).hasMatch()) << name << " " << line.pattern().toStdString() << "\n"
                                                     << text.toStdString();
        }
    }
}

TEST(PaperPdf, OxygenHasAtMostOneDecimalAndNoOneSurvivesByPercent) {
    const QRegularExpression fine(QStringLiteral("\\d\\.\\d\\d+ mg/L"));
    const QRegularExpression survival(QStringLiteral("(\\d+ ?%[^.]{0,40}surviv|surviv[^.]{0,40}\\d+ ?%)"),
                                      QRegularExpression::CaseInsensitiveOption);
    for (const std::string& name : headline().papers()) {
        const QString text = QString::fromStdString(flat(headline().text(name, false)));
        EXPECT_FALSE(fine.match(text).hasMatch())
            << name << ": " << fine.match(text).captured().toStdString();
        EXPECT_FALSE(survival.match(text).hasMatch()) << name;
        EXPECT_FALSE(text.contains(QStringLiteral("{"))) << name << ": a place without its value";
        EXPECT_FALSE(text.contains(QStringLiteral("**"))) << name;
    }
}

TEST(PaperPdf, TextCanBeSearchedLettersApart) {
    const std::string text = flat(headline().text("proposal.pdf", false));
    EXPECT_TRUE(has(text, "diffusers"));  // no ligature swallows a letter
    EXPECT_TRUE(
        has(flat(headline().text("consent.pdf", false)), "\u017dofie Nov\u00e1kov\u00e1-\u00c5str\u00f6m"));
    EXPECT_TRUE(has(text, "\u0141ucja \u0160t\u011bp\u00e1nov\u00e1"));
}

TEST(PaperPdf, OnLetterInUsUnitsWithTheOtherBeside) {
    engine::Consultant who;
    who.letter = who.usUnits = true;
    const PaperRun run = paperRun(headline().run.frozen, who);
    const engine::test::TemporaryFolder folder;
    const auto path = folder.write("p.pdf", pdfOf(proposal(run), imprintOf(run), run.format));
    const QString name = QString::fromStdString(path.string());
    EXPECT_TRUE(has(printed(QStringLiteral("pdfinfo"), {name}), "letter"));
    const std::string text =
        flat(printed(QStringLiteral("pdftotext"), {QStringLiteral("-raw"), name, QStringLiteral("-")}));
    EXPECT_TRUE(has(text, "1.98 acres (0.80 ha)")) << text;
    EXPECT_TRUE(has(text, "9.8 ft (3.0 m)"));
    EXPECT_TRUE(has(text, "1.59 cfm (45.0 L/min)"));
    EXPECT_FALSE(has(text, "Still Water"));
}

// What is signed stands with what it is signed under, and the longest names leave the owner one page.
TEST(PaperPdf, LongNamesKeepTheOwnersSheetOnOnePageAndSignaturesWithTheirText) {
    engine::Pond pond = test::startingPond();
    pond.title = "The Upper Old Mill Pond behind the Long Meadow and the Northern Orchard of Farms";
    pond.client = engine::Client{
        "Kate\u0159ina \u0160\u0165astn\u00e1-Dvo\u0159\u00e1\u010dkov\u00e1 & J\u00fcrgen "
        "M\u00fc\u00dfigbrodt-\u00c5ngstr\u00f6m",
        ""};
    pond.ramps[3].name = "a little of the bottom water each day until the layers are gone";
    pond.chosenRamp = pond.ramps[3].name;
    for (const bool isLetter : {false, true}) {
        engine::Consultant who = test::madeUpConsultant();
        who.letter = isLetter;
        const MadePapers papers(pond, who, 4);
        EXPECT_EQ(papers.pages("owners-sheet.pdf"), 1) << isLetter;
        EXPECT_EQ(papers.pages("daily-log.pdf"), 1) << isLetter;
        const std::regex worst("worst [0-9.]+ mg/L");  // stands above each ramp's lows, however long its name
        const std::string proposal = flat(papers.text("proposal.pdf", false));
        EXPECT_EQ(std::distance(std::sregex_iterator(proposal.begin(), proposal.end(), worst),
                                std::sregex_iterator()),
                  static_cast<std::ptrdiff_t>(pond.ramps.size() + 1));
        for (const auto& [name, heading] : {std::pair("consent.pdf", "What remains with the owner"),
                                            {"commissioning.pdf", "First run"},
                                            {"start-up-schedule.pdf", "Before each run"}}) {
            const std::string text = papers.text(name, false);
            const std::string last = text.substr(text.rfind('\f', text.size() - 2) + 1);
            EXPECT_TRUE(has(last, heading)) << name << ' ' << isLetter;
        }
        EXPECT_TRUE(has(flat(papers.text("consent.pdf", false)), "M\u00fc\u00dfigbrodt-\u00c5ngstr\u00f6m"));
    }
}

// A long name, forty days, no aerator's power, no profile, no title, no client: everything still has its
// place.
TEST(PaperPdf, HoldsOddPonds) {
    engine::Pond pond = engine::test::scenario("new-clay");
    pond.title.clear();
    pond.chosenRamp.clear();
    pond.profile.reset();
    pond.fish.clear();
    engine::Ramp slow = engine::test::minutesEachDay(10);
    slow.name =
        "a ramp with a name that goes on and on, since someone wanted to say all about it in its name / and "
        "a slash";
    slow.minutes.clear();
    for (int day = 1; day < 40; ++day) {
        slow.minutes.push_back(day * 20);
    }
    slow.minutes.push_back(1440);
    pond.ramps = {slow};
    pond.chosenRamp = slow.name;
    const MadePapers papers(pond, {}, 1);
    for (const std::string& name : papers.papers()) {
        SCOPED_TRACE(name);
        EXPECT_TRUE(has(printed(QStringLiteral("qpdf"), {QStringLiteral("--check"), papers.path(name)}),
                        "No syntax or stream encoding errors found"));
        EXPECT_FALSE(has(papers.text(name), "{"));
    }
    EXPECT_EQ(papers.pages("owners-sheet.pdf"), 1);
    EXPECT_GT(papers.pages("start-up-schedule.pdf"), 1);
    // The table's head stands again on each page that its rows reach.
    const std::string schedule = papers.text("start-up-schedule.pdf");
    int heads = 0;
    for (std::size_t at = schedule.find("Initials"); at != std::string::npos;
         at = schedule.find("Initials", at + 1)) {
        ++heads;
    }
    EXPECT_GE(heads, 2);
}

}  // namespace
}  // namespace widgets
