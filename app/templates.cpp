#include "app/templates.h"

#include "engine/pond/pond_io.h"
#include "widgets/document/to_qstring.h"

#include <QCoreApplication>
#include <QDir>

#include <algorithm>

namespace app {

std::vector<Template> templates() {
    std::vector<Template> found;
    const QDir beside(QCoreApplication::applicationDirPath());
    for (const char* place : {"../share/dawnline/scenarios", "../scenarios"}) {
        const QDir folder(beside.filePath(QString::fromLatin1(place)));
        for (const QFileInfo& info : folder.entryInfoList({QStringLiteral("*.toml")}, QDir::Files)) {
            const std::filesystem::path path = info.absoluteFilePath().toStdString();
            const engine::PondReading reading = engine::readPond(path);
            if (reading.pond) {
                found.push_back({widgets::toQString(reading.pond->title.empty() ? path.stem().string()
                                                                                : reading.pond->title),
                                 path});
            }
        }
        if (!found.empty()) {
            break;
        }
    }
    std::sort(found.begin(), found.end(),
              [](const Template& a, const Template& b) { return a.title.localeAwareCompare(b.title) < 0; });
    return found;
}

}  // namespace app
