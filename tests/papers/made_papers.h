#pragma once

#include "engine/advice/frozen_run.h"
#include "engine/pond/pond_io.h"
#include "tests/scenario.h"
#include "tests/temporary_folder.h"
#include "widgets/papers/papers.h"

#include <QProcess>

#include <gtest/gtest.h>

#include <map>

namespace widgets::test {

using engine::test::TemporaryFolder;

inline const std::chrono::sys_seconds kTime =
    std::chrono::sys_days(std::chrono::year(2026) / 6 / 14) + std::chrono::hours(9);

inline engine::Consultant madeUpConsultant() {
    engine::Consultant who;
    who.business = "Still Water Works";
    who.name = "\u0141ucja \u0160t\u011bp\u00e1nov\u00e1";
    who.phone = "+00 000 000";
    who.address = {"1 Bank Road", "Weir"};
    who.currency = "USD";
    who.prices = {{"Site visit with profile", "each", 120.0},
                  {"Start-up with ten days on the phone", "", std::nullopt}};
    return who;
}

inline std::shared_ptr<const engine::FrozenRun> frozenRun(const engine::Pond& pond, int members,
                                                          std::optional<int> nights = {}) {
    const auto frozen = std::get<engine::FrozenPond>(engine::freeze(pond, "pond.toml"));
    return std::make_shared<const engine::FrozenRun>(engine::runFrozen(
        frozen, {"0.1.0", kTime, 1, members, 0, ""}, nights ? nights : engine::defaultDays(pond)));
}

/// What a program printed; empty and a failed test if it did not end with 0.
inline std::string printed(const QString& program, const QStringList& arguments) {
    QProcess process;
    process.start(program, arguments);
    EXPECT_TRUE(process.waitForFinished(60000)) << program.toStdString();
    EXPECT_EQ(process.exitStatus(), QProcess::NormalExit);
    EXPECT_EQ(process.exitCode(), 0) << program.toStdString() << ": "
                                     << process.readAllStandardError().toStdString();
    return process.readAllStandardOutput().toStdString();
}

/// The papers of a run as files in a folder, and their texts as poppler's pdftotext reads them.
class MadePapers {
public:
    MadePapers(const engine::Pond& pond, engine::Consultant consultant, int members,
               std::optional<int> nights = {})
        : run(paperRun(frozenRun(pond, members, nights), std::move(consultant))), files(paperFiles(run)) {
        for (const engine::TextFile& file : files) {
            m_folder.write(file.name, file.text);
        }
    }
    [[nodiscard]] QString path(const std::string& name) const {
        return QString::fromStdString((m_folder.path() / name).string());
    }
    [[nodiscard]] std::vector<std::string> papers() const {
        std::vector<std::string> names;
        for (const engine::TextFile& file : files) {
            if (file.name.ends_with(".pdf")) {
                names.push_back(file.name);
            }
        }
        return names;
    }
    [[nodiscard]] const std::string& bytes(const std::string& name) const {
        for (const engine::TextFile& file : files) {
            if (file.name == name) {
                return file.text;
            }
        }
        throw std::runtime_error("there is no file " + name);
    }
    /// In reading order, lines of a table whole.
    [[nodiscard]] std::string text(const std::string& name, bool asTable = true) const {
        std::string& kept = m_texts[name + (asTable ? "t" : "r")];
        if (kept.empty()) {
            QStringList arguments{QStringLiteral("-enc"), QStringLiteral("UTF-8")};
            arguments << (asTable ? QStringLiteral("-layout") : QStringLiteral("-raw")) << path(name)
                      << QStringLiteral("-");
            kept = printed(QStringLiteral("pdftotext"), arguments);
        }
        return kept;
    }
    [[nodiscard]] int pages(const std::string& name) const {
        return QString::fromStdString(
                   printed(QStringLiteral("qpdf"), {QStringLiteral("--show-npages"), path(name)}))
            .trimmed()
            .toInt();
    }

    PaperRun run;
    std::vector<engine::TextFile> files;

private:
    TemporaryFolder m_folder;
    mutable std::map<std::string, std::string> m_texts;
};

/// The headline pond under rules that let its slow ramp start, so that all papers of a start are made.
inline engine::Pond startingPond() {
    engine::Pond pond = engine::test::scenario("grandfathers-pond");
    pond.chosenRamp = "gentle, twelve days";
    pond.startRules.emplace();
    pond.startRules->lethal_percent = engine::Quantity(100.0);
    pond.startRules->lethalAlone_percent = engine::Quantity(100.0);
    pond.startRules->lethalAdded_percent = engine::Quantity(100.0);
    pond.dawnRules.emplace();
    pond.dawnRules->go = engine::Quantity(0.7);
    pond.dawnRules->hold = engine::Quantity(0.6);
    pond.dawnRules->back = engine::Quantity(0.5);
    pond.weather.holdDays = {engine::dateOfDay(pond, 40)};  // beyond the run
    return pond;
}

/// Its papers, made once.
inline const MadePapers& headline() {
    static const MadePapers papers = [] {
        engine::Pond pond = startingPond();
        pond.client = engine::Client{"\u017dofie Nov\u00e1kov\u00e1-\u00c5str\u00f6m", "+00 111 111"};
        return MadePapers(pond, madeUpConsultant(), 8);
    }();
    return papers;
}

}  // namespace widgets::test
