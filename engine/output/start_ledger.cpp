#include "engine/output/start_ledger.h"

#include "engine/base/csv_table.h"
#include "engine/base/durable.h"
#include "engine/base/text_file.h"
#include "engine/pond/csv.h"
#include "engine/pond/local_time.h"
#include "engine/pond/pond_io.h"

#include <algorithm>

namespace engine {
namespace {

constexpr const char* kHeader = "first_day,pond,ramp,dawns,mean_miss_mg_per_l,mean_distance_mg_per_l";
constexpr std::uintmax_t kLargest_bytes = std::uintmax_t{1} << 20;
constexpr NumberRule kDawnsRule{1.0, 1000.0, "dawns"}, kMissRule{-30.0, 30.0, "mg/L"},
    kDistanceRule{0.0, 30.0, "mg/L"};

}  // namespace

double StartLedger::meanDistance() const {
    double sum = 0.0;
    for (const StartCheck& start : starts) {
        sum += start.distance;
    }
    return starts.empty() ? 0.0 : sum / static_cast<double>(starts.size());
}

StartLedgerReading readStartLedger(const std::filesystem::path& path) {
    StartLedgerReading out;
    std::error_code unknown;
    if (!std::filesystem::exists(path, unknown)) {
        out.ledger.emplace();
        return out;
    }
    const FileText file = readWholeFile(path, kLargest_bytes);
    if (file.text) {
        return readStartLedgerText(*file.text, shownPath(path));
    }
    out.diagnostics.push_back(
        {Severity::Error, shownPath(path), 0, "", "The ledger of starts cannot be read: " + file.fault});
    return out;
}

StartLedgerReading readStartLedgerText(std::string_view text, const std::string& name) {
    StartLedgerReading out;
    if (const auto fault = findTextFault(text)) {
        out.diagnostics.push_back({Severity::Error, name, fault->line, "", fault->sentence});
        return out;
    }
    CsvFaults faults(name);
    StartLedger ledger;
    CsvTable table(text, faults);
    bool isThere = table.readHeader();
    for (const char* column :
         {"first_day", "pond", "ramp", "dawns", "mean_miss_mg_per_l", "mean_distance_mg_per_l"}) {
        isThere = isThere && table.require(column);
    }
    while (isThere && table.nextRow()) {
        StartCheck start;
        const auto day = parseDate(table.cell("first_day"));
        if (!day) {
            faults.add(table.line(), "first_day", "This must be a date such as 2026-06-14.");
        }
        start.firstDay = day.value_or(Date());
        start.pond = ofCsvText(table.cell("pond"));
        start.ramp = ofCsvText(table.cell("ramp"));
        start.dawns = static_cast<int>(table.number("dawns", kDawnsRule).value_or(0.0));
        start.miss = table.number("mean_miss_mg_per_l", kMissRule).value_or(0.0);
        start.distance = table.number("mean_distance_mg_per_l", kDistanceRule).value_or(0.0);
        ledger.starts.push_back(std::move(start));
    }
    if (!faults.any() && isThere) {
        out.ledger = std::move(ledger);
    }
    out.diagnostics = faults.take();
    return out;
}

std::string startLedgerCsv(const StartLedger& ledger) {
    CsvWriter table(kHeader);
    for (const StartCheck& start : ledger.starts) {
        table.text(formatDate(start.firstDay)).text(start.pond).text(start.ramp);
        table.number(start.dawns).number(start.miss).number(start.distance).end();
    }
    return table.take();
}

NotedStart noteStart(const std::filesystem::path& path, const StartCheck& start) {
    const std::filesystem::path folder = folderOf(linkTarget(path));
    std::error_code said;  // by what fails in a folder that is not there
    std::filesystem::create_directories(folder, said);
    const FolderLock lock(folder);
    StartLedgerReading read = readStartLedger(path);
    NotedStart out{std::nullopt, std::move(read.diagnostics), std::nullopt};
    if (read.ledger) {
        out.ledger = withStart(std::move(*read.ledger), start);
        out.notSaved = saveDurably(lock, path, startLedgerCsv(*out.ledger), OldFile::Replaced);
    }
    return out;
}

StartLedger withStart(StartLedger ledger, const StartCheck& start) {
    std::erase_if(ledger.starts, [&](const StartCheck& one) {
        return one.pond == start.pond && one.firstDay == start.firstDay;
    });
    ledger.starts.push_back(start);
    return ledger;
}

}  // namespace engine
