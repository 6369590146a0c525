// The papers of one frozen run (engine/advice/frozen_run.h), from which all their numbers come.
//
// PaperRun holds that run with profile, units and page. A paper's text is a template, a table of TemplateLine
// with places in braces that valuesOf() fills. The flow (widgets/papers/paper_flow.h) makes strips of
// headings, paragraphs, tables and figures in units of a twentieth of a point; paginated() sets them on
// pages. Signatures and the box of cautions close a section: they take it along to a new page, so that nobody
// signs a page of nothing. The pages are painted with Qt, and qpdf gives title, language, outline and a fixed
// identity: the same run gives the same bytes (SOURCE_DATE_EPOCH stands for the clock). Figures reuse the
// window's drawings on white, or stand on axes of their own (widgets/papers/paper_axes.h); nothing is
// transparent. The calendar is RFC 5545 (engine/output/calendar.h), the bundle a ZIP
// (engine/output/bundle.h).
#pragma once

#include "engine/base/files.h"
#include "engine/output/calendar.h"
#include "widgets/papers/paper_run.h"

#include <string>
#include <vector>

namespace widgets {

// The papers of one frozen run. All numbers are the run's.

[[nodiscard]] Paper ownerSheet(const PaperRun& run);
[[nodiscard]] Paper schedulePaper(const PaperRun& run);
[[nodiscard]] Paper dailyLog(const PaperRun& run);
[[nodiscard]] Paper consentPaper(const PaperRun& run);
[[nodiscard]] Paper proposal(const PaperRun& run);
[[nodiscard]] Paper commissioningSheet(const PaperRun& run);
[[nodiscard]] Paper incidentSheet(const PaperRun& run);
[[nodiscard]] Paper sixtyDayReview(const PaperRun& run);
[[nodiscard]] Paper maintenanceCard(const PaperRun& run);

/// Of an answer that is not to start.
[[nodiscard]] Paper letter(const PaperRun& run);

/// The papers of the answer's kind: those of a start, or the letter and the incident sheet.
[[nodiscard]] std::vector<Paper> allPapers(const PaperRun& run);

/// The first day's instruction for the owner's phone, under 300 characters.
[[nodiscard]] QString ownerMessage(const PaperRun& run);

/// What the owner's sheet says, context "OwnerSheet".
[[nodiscard]] std::span<const TemplateLine> ownerTemplate();

/// A frame with every caution, for templates under the name "cautions". @param run  Outlives it.
[[nodiscard]] PaperInserts cautionInsert(const PaperRun& run);

/// Runs of the plan and dawn readings, with alarms to start and to stop; where the answer is not to start,
/// the day on which to look again.
[[nodiscard]] engine::Calendar scheduleCalendar(const PaperRun& run);

/// Every paper as PDF, the calendar, and a bundle of these with pond file, tables and charts.
[[nodiscard]] std::vector<engine::TextFile> paperFiles(const PaperRun& run);

}  // namespace widgets
