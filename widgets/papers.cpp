#include "widgets/papers.h"

#include "engine/bundle.h"
#include "engine/results_io.h"
#include "widgets/chart_export.h"
#include "widgets/paper_pdf.h"
#include "widgets/sheets.h"

namespace widgets {

std::vector<Paper> allPapers(const PaperRun& run) {
    return {ownerSheet(run),    schedulePaper(run),  dailyLog(run),
            consentPaper(run),  proposal(run),       commissioningSheet(run),
            incidentSheet(run), sixtyDayReview(run), maintenanceCard(run)};
}

std::vector<engine::TextFile> paperFiles(const PaperRun& run) {
    const PaperDress dress = dressOf(run);
    std::vector<engine::TextFile> files;
    for (const Paper& paper : allPapers(run)) {
        files.push_back(
            {(paper.file + QLatin1String(".pdf")).toStdString(), pdfOf(paper, dress, run.format)});
    }
    files.push_back({"schedule.ics", engine::icalendar(scheduleCalendar(run))});
    std::vector<engine::TextFile> bundled = files;
    for (const engine::TextFile& file : run.frozen->files) {
        bundled.push_back(file);
    }
    bundled.push_back(
        {std::string(engine::kFrozenStatement), engine::statementOf(run.frozen->files, run.frozen->stamp)});
    bundled.push_back({"schedule.csv", engine::runListCsv(engine::runList(run.comparison(), run.plan))});
    if (run.frozen->review) {
        bundled.push_back({"review.csv", engine::reviewCsv(*run.frozen->review)});
    }
    for (engine::TextFile& table : engine::comparisonFiles(run.comparison())) {
        bundled.push_back(std::move(table));
    }
    for (const ChartSheet& sheet : allSheets(run.outcome)) {
        const std::string name = "charts/" + sheet.name.toStdString();
        bundled.push_back({name + ".png", pngOf(sheet).toStdString()});
        bundled.push_back({name + ".svg", svgOf(sheet).toStdString()});
        bundled.push_back({name + ".csv", sheet.csv});
    }
    files.push_back({"bundle.zip", engine::bundleOf(std::move(bundled), run.frozen->stamp.time)});
    return files;
}

}  // namespace widgets
