#include "widgets/papers/papers.h"

#include "engine/base/parallel.h"
#include "engine/ensemble/measure.h"
#include "engine/output/bundle.h"
#include "engine/output/run_tables.h"
#include "widgets/charts/chart_export.h"
#include "widgets/charts/sheets.h"
#include "widgets/papers/paper_office.h"
#include "widgets/papers/paper_pdf.h"

#include <QImage>

#include <algorithm>
#include <iterator>

namespace widgets {
namespace {

/// With what to measure before the ramp of the papers, whatever was looked at in a window, so that the same
/// run gives the same bytes.
OutcomePtr measuredToo(const PaperRun& run) {
    engine::MeasureOptions options;
    options.ramp = run.frozen->stamp.ramp;
    options.seed = run.frozen->stamp.seed;
    options.members =
        std::clamp(run.frozen->stamp.members, engine::kLeastMembersToMeasure, engine::kMembersToMeasure);
    auto outcome = std::make_shared<Outcome>(*run.outcome);
    engine::MeasureResult measured = engine::measure(outcome->comparison.model.pond, options);
    if (measured.end == engine::EnsembleEnd::Completed) {
        outcome->measured = std::make_shared<const engine::MeasureResult>(std::move(measured));
    }
    return outcome;
}

/// Every chart as picture, drawing and numbers. Pictures are drawn one by one and packed on all cores, since
/// packing them takes most of the time; a few at once, since each is large until it is packed.
void addCharts(const OutcomePtr& outcome, std::vector<engine::TextFile>& files) {
    const std::vector<ChartSheet> sheets = allSheets(outcome);
    const int threads = engine::threadsFor(0);
    const auto atOnce = static_cast<std::size_t>(threads);
    for (std::size_t from = 0; from < sheets.size(); from += atOnce) {
        const std::size_t count = std::min(atOnce, sheets.size() - from);
        std::vector<QImage> drawn(count);
        std::vector<std::string> packed(count);
        for (std::size_t i = 0; i < count; ++i) {
            drawn[i] = imageOf(sheets[from + i]);
        }
        static_cast<void>(engine::forEachIndex(
            count, threads, {}, [&](std::size_t i) { packed[i] = pngOf(drawn[i]).toStdString(); }));
        for (std::size_t i = 0; i < count; ++i) {
            const ChartSheet& sheet = sheets[from + i];
            const std::string name = "charts/" + sheet.name.toStdString();
            files.push_back({name + ".png", std::move(packed[i])});
            files.push_back({name + ".svg", svgOf(sheet).toStdString()});
            files.push_back({name + ".csv", sheet.csv});
        }
    }
}

}  // namespace

std::vector<Paper> allPapers(const PaperRun& run) {
    if (!run.advice().mayStart()) {
        return {letter(run), incidentSheet(run)};
    }
    return {ownerSheet(run),    schedulePaper(run),  dailyLog(run),
            consentPaper(run),  proposal(run),       commissioningSheet(run),
            incidentSheet(run), sixtyDayReview(run), maintenanceCard(run)};
}

std::vector<engine::TextFile> paperFiles(const PaperRun& run) {
    const PaperImprint imprint = imprintOf(run);
    std::vector<engine::TextFile> files;
    for (const Paper& paper : allPapers(run)) {
        files.push_back(
            {(paper.file + QLatin1String(".pdf")).toStdString(), pdfOf(paper, imprint, run.format)});
    }
    const Paper main = run.advice().mayStart() ? proposal(run) : letter(run);
    files.push_back({main.file.toStdString() + ".odt", odtOf(main, imprint, run.format)});
    files.push_back({"schedule.ics", engine::icalendar(scheduleCalendar(run))});
    files.push_back({"message.txt", ownerMessage(run).toStdString() + "\n"});
    std::vector<engine::TextFile> tables = engine::runTables(*run.frozen);
    files.push_back(tables.front());  // the answer
    std::vector<engine::TextFile> bundled = files;
    for (const engine::TextFile& file : run.frozen->files) {
        bundled.push_back(file);
    }
    bundled.push_back(
        {std::string(engine::kFrozenStatement), engine::statementOf(run.frozen->files, run.frozen->stamp)});
    bundled.insert(bundled.end(), std::make_move_iterator(tables.begin() + 1),
                   std::make_move_iterator(tables.end()));
    addCharts(measuredToo(run), bundled);
    files.push_back(
        {std::string(engine::kBundleName), engine::bundleOf(std::move(bundled), run.frozen->stamp.time)});
    return files;
}

}  // namespace widgets
