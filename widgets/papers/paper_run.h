#pragma once

#include "engine/advice/frozen_run.h"
#include "engine/output/consultant.h"
#include "engine/output/run_list.h"
#include "engine/output/start_ledger.h"
#include "engine/plan/dawn_rules.h"
#include "engine/wording/sentence.h"
#include "widgets/document/outcome.h"
#include "widgets/papers/paper.h"
#include "widgets/papers/paper_figures.h"
#include "widgets/papers/paper_template.h"

namespace widgets {

/// All that the papers of one run are made from.
struct PaperRun {
    std::shared_ptr<const engine::FrozenRun> frozen;
    engine::Consultant consultant;
    OutcomePtr outcome;  ///< Of the frozen comparison
    std::size_t plan = 0;
    std::optional<std::size_t> fast;
    engine::StartLedger ledger;  ///< The consultant's
    bool isUs = false;
    PaperUnits units{false};  ///< Those of isUs first
    PaperFormat format;

    [[nodiscard]] const engine::Comparison& comparison() const { return outcome->comparison; }
    [[nodiscard]] const engine::Advice& advice() const { return frozen->advice; }
    [[nodiscard]] const engine::RampRun& planRun() const { return comparison().runs[plan]; }
    [[nodiscard]] FigureSource figures() const;
};

/// @pre the comparison completed and has a ramp.
[[nodiscard]] PaperRun paperRun(std::shared_ptr<const engine::FrozenRun> frozen,
                                engine::Consultant consultant, engine::StartLedger ledger = {});

/// Dawn readings that decide on the day's run. Saturation is taken at the surface of the profile, as long as
/// no reading of the day is known.
[[nodiscard]] engine::DawnLimits dawnLimits(const PaperRun& run);

/// What every page bears.
[[nodiscard]] PaperImprint imprintOf(const PaperRun& run);

/// Every place that templates may name.
[[nodiscard]] PaperValues valuesOf(const PaperRun& run);

/// "14 Jun 2026"
[[nodiscard]] QString paperDate(const engine::Date& date);
/// "14 Jun"
[[nodiscard]] QString paperDay(const engine::Date& date);

/// A clock time, and the same on the owner's clock where that is another (`time_zone` of the pond file).
[[nodiscard]] QString ownersClock(const engine::Pond& pond, double time);

/// A start or a stop as a clock time, with the date where it is not that of the row's day.
[[nodiscard]] QString runClock(const PaperRun& run, const engine::RunRow& row, double time);

/// A sentence of the engine in the paper's units, with the signs of print instead of those of a terminal.
[[nodiscard]] QString onPaper(const PaperRun& run, engine::Sentence sentence);

/// What is advised, sentence by sentence, the answer first.
[[nodiscard]] QStringList adviceOn(const PaperRun& run);

/// The engine's sentences of one part about the pond or the plan, as paragraphs.
[[nodiscard]] QStringList sentencesOn(const PaperRun& run, engine::SentencePart part);

}  // namespace widgets
