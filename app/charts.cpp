#include "app/charts.h"

#include "app/main_window_words.h"
#include "app/window_say.h"
#include "engine/base/files.h"
#include "engine/ensemble/measure.h"
#include "engine/pond/pond_io.h"
#include "widgets/charts/sheets.h"
#include "widgets/document/recomputation.h"

#include <algorithm>

namespace app {
int writeCharts(const std::filesystem::path& pond, const std::filesystem::path& folder) {
    const engine::PondReading reading = engine::readPond(pond);
    complain(reading.diagnostics);
    const auto folderFault = engine::folderFault(folder);
    if (folderFault) {
        complain(*folderFault);
    }
    if (!reading.pond || folderFault) {
        return 2;
    }
    const auto outcome = std::make_shared<const widgets::Outcome>(widgets::withMeasured(
        widgets::withAnswer(widgets::withMembers(widgets::outcomeOf(*reading.pond, std::nullopt, true),
                                                 engine::kMembersOfBand, true)),
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
    sayWritten(folder, files);
    return saidAll();
}

}  // namespace app
