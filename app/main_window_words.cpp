#include "app/main_window_words.h"

#include "engine/sentence.h"
#include "widgets/shown.h"
#include "widgets/wording.h"

#include <QCoreApplication>
#include <QLabel>
#include <QVBoxLayout>

namespace app {
namespace {

constexpr std::size_t kMostShown = 6;  // faults; more do not help at once

QString tr(const char* text) {
    return QCoreApplication::translate("MainWindow", text);
}

QString listed(const engine::Diagnostics& said) {
    QStringList lines;
    for (engine::Diagnostic one : said) {
        one.file = std::filesystem::path(one.file).filename().string();  // the folder is known and long
        if (lines.size() < static_cast<qsizetype>(kMostShown)) {
            lines << widgets::shown(engine::format(one));
        }
    }
    if (said.size() > kMostShown) {
        lines << tr("And %1 more.").arg(said.size() - kMostShown);
    }
    return lines.join(QLatin1Char('\n'));
}

}  // namespace

QString pondFilter() {
    return tr("Pond files (*.toml);;All files (*)");
}

QString notOpened(const std::filesystem::path& path, const engine::Diagnostics& faults, bool keepsOld) {
    const QString name = widgets::shown(path.filename().string());
    const QString lead = keepsOld ? tr("\"%1\" was not opened; the pond you had stays.").arg(name)
                                  : tr("\"%1\" was not opened.").arg(name);
    return lead + QLatin1Char('\n') + listed(faults);
}

QString warnings(const engine::Diagnostics& said) {
    return tr("Opened, with remarks:") + QLatin1Char('\n') + listed(said);
}

QString commentsAreLost() {
    return tr(
        "Saving writes this file in the program's own form: comments and layout of the file are lost. Notes "
        "that "
        "stand in a \"source\" key stay. The file as it is now is kept beside it, as .bak.");
}

QString endedEarly(const engine::Comparison& comparison) {
    QStringList lines;
    for (std::size_t i = 0; i < comparison.runs.size(); ++i) {
        const engine::RampRun& run = comparison.runs[i];
        if (run.end != engine::RunEnd::Completed && run.end != engine::RunEnd::Cancelled) {
            lines << widgets::shown(run.message);
        }
    }
    return lines.join(QLatin1Char('\n'));
}

QString cautions() {
    QStringList lines;
    for (const auto key : {engine::SentenceKey::CautionComparison, engine::SentenceKey::CautionReadings,
                           engine::SentenceKey::CautionPermits, engine::SentenceKey::CautionLifeSupport,
                           engine::SentenceKey::CautionIce}) {
        lines << widgets::worded({engine::SentencePart::Caution, key, {}});
    }
    return lines.join(QStringLiteral("\n\n"));
}

QString about() {
    return tr("Dawnline %1\n\nHow the oxygen of a pond would go, hour by hour, under different start-up "
              "ramps of "
              "bottom aeration.\n\nFree software under the GNU General Public License, version 3 or later.")
               .arg(QStringLiteral(DAWNLINE_VERSION)) +
           QStringLiteral("\n\n") + cautions();
}

QWidget* emptyPage(QWidget* parent) {
    auto* page = new QWidget(parent);
    auto* column = new QVBoxLayout(page);
    auto* text = new QLabel(tr("No pond is open.\n\nOpen a pond file (File, Open), or drop one here."), page);
    text->setAlignment(Qt::AlignCenter);
    text->setAccessibleName(tr("No pond is open"));
    column->addWidget(text);
    return page;
}

}  // namespace app
