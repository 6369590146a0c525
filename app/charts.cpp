#include "app/charts.h"

#include "app/main_window_words.h"
#include "engine/base/files.h"
#include "engine/ensemble/measure.h"
#include "engine/pond/pond_io.h"
#include "widgets/charts/sheets.h"
#include "widgets/document/recomputation.h"

#include <algorithm>
#include <cstdio>

namespace app {
namespace {

void complain(const std::string& sentence) {
    std::fprintf(stderr, "dawnline: %s\n", sentence.c_str());
}

}  // namespace

int writeCharts(const std::filesystem::path& pond, const std::filesystem::path& folder) {
    const engine::PondReading reading = engine::readPond(pond);
    for (const engine::Diagnostic& diagnostic : reading.diagnostics) {
        std::fprintf(stderr, "%s\n", engine::format(diagnostic).c_str());
    }
    const auto folderFault = engine::folderFault(folder);
    if (folderFault) {
        complain(*folderFault);
    }
    if (!reading.pond || folderFault) {
        return 2;
    }
    const auto outcome = std::make_shared<const widgets::Outcome>(
        widgets::withMeasured(widgets::withMembers(widgets::outcomeOf(*reading.pond, std::nullopt, true),
                                                   engine::kMembersOfBand, true),
                              engine::kMembersToMeasure));
    if (const QString fault = endedEarly(outcome->comparison); !fault.isEmpty()) {
        complain(fault.toStdString() + " Nothing was written.");
        return 1;
    }
    std::vector<engine::TextFile> files;
    for (const widgets::ChartSheet& sheet : widgets::allSheets(outcome)) {
        const std::string name = sheet.name.toStdString();
        files.push_back({name + ".png", widgets::pngOf(sheet).toStdString()});
        files.push_back({name + ".svg", widgets::svgOf(sheet).toStdString()});
        files.push_back({name + ".csv", sheet.csv});
    }
    if (const auto fault = engine::writeFiles(folder, files)) {
        complain(*fault + " Nothing was written.");
        return 2;
    }
    for (const engine::TextFile& file : files) {
        std::printf("%s\n", (folder / file.name).c_str());
    }
    return std::fflush(stdout) == 0 ? 0 : 2;
}

}  // namespace app
