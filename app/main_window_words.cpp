#include "app/main_window_words.h"

#include "engine/wording/sentence.h"
#include "widgets/document/to_qstring.h"
#include "widgets/document/wording.h"

#include <QCoreApplication>
#include <QDir>
#include <QFileInfo>
#include <QLabel>
#include <QPushButton>
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
            lines << widgets::toQString(engine::format(one));
        }
    }
    if (said.size() > kMostShown) {
        lines << tr("And %1 more.").arg(said.size() - kMostShown);
    }
    return lines.join(QLatin1Char('\n'));
}

}  // namespace

QString pondFilter(bool forComparing) {
    return forComparing ? tr("Pond files, their backups and bundles (*.toml *.bak *.zip);;All files (*)")
                        : tr("Pond files (*.toml);;All files (*)");
}

QString pondName(const QString& typed) {
    return QFileInfo(typed).suffix().isEmpty() ? typed + QStringLiteral(".toml") : typed;
}

QStringList chartFilters() {
    return {tr("Picture, 300 dots an inch (*.png)"), tr("Drawing (*.svg)"), tr("Numbers (*.csv)")};
}

QString chartName(const QString& typed, const QString& filter) {
    const QStringList filters = chartFilters(),
                      endings{QStringLiteral("png"), QStringLiteral("svg"), QStringLiteral("csv")};
    const qsizetype chosen = std::max<qsizetype>(filters.indexOf(filter), 0);
    const QString ending = QFileInfo(typed).suffix().toLower();
    if (ending.isEmpty()) {
        return typed + QLatin1Char('.') + endings[chosen];
    }
    return chosen > 0 && endings.contains(ending) ? typed.chopped(ending.size()) + endings[chosen] : typed;
}

QString changedOnDisk() {
    return tr("The file was changed by another program since it was read.");
}

QString leftBehindText(const LeftBehind& left, std::size_t count) {
    const QString title = left.pond.title.empty() ? tr("A pond") : widgets::toQString(left.pond.title);
    const QString text = left.original.empty()
                             ? tr("\"%1\" was not saved when the program ended.").arg(title)
                             : tr("\"%1\" (%2) had changes that were not saved when the program ended.")
                                   .arg(title, widgets::toQString(left.original.filename().string()));
    return count > 1 ? text + QLatin1Char(' ') + tr("There are %1 more after it.").arg(count - 1) : text;
}

QString notOpened(const std::filesystem::path& path, const engine::Diagnostics& faults, bool keepsOld) {
    const QString name = widgets::toQString(path.filename().string());
    const QString lead = keepsOld ? tr("\"%1\" was not opened; the pond you had stays.").arg(name)
                                  : tr("\"%1\" was not opened.").arg(name);
    return lead + QLatin1Char('\n') + listed(faults);
}

QString warnings(const engine::Diagnostics& said) {
    return tr("Opened, with remarks:") + QLatin1Char('\n') + listed(said);
}

QString chartKeys() {
    return tr(
        "In a view:\n"
        "Left, Right\tthe night before, the next night\n"
        "Shift+Left, Shift+Right\tmove the cursor by an hour\n"
        "+, \u2212, 0\tzoom days or hours in, out, and back; also the wheel with Ctrl\n"
        "Escape\tput cursor and zoom away\n"
        "In the schedule:\n"
        "Up, Down\tchoose a day\n"
        "Left, Right\tten minutes less, more; with Shift one, with Ctrl sixty\n"
        "Delete\ta day without air");
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
            lines << widgets::toQString(run.message);
        }
    }
    return lines.join(QLatin1Char('\n'));
}

QString cautions() {
    QStringList lines;
    for (const auto key : {engine::SentenceKey::CautionComparison, engine::SentenceKey::CautionReadings,
                           engine::SentenceKey::CautionPermits, engine::SentenceKey::CautionLifeSupport,
                           engine::SentenceKey::CautionIce}) {
        lines << widgets::localized({engine::SentencePart::Caution, key, {}});
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

QStringList pondsBeside(const QString& file) {
    constexpr qsizetype kMost = 20;
    QStringList files;
    if (file.isEmpty()) {
        return files;
    }
    const QFileInfo own(file);
    for (const QFileInfo& one :
         own.dir().entryInfoList({QStringLiteral("*.toml")}, QDir::Files, QDir::Name | QDir::IgnoreCase)) {
        if (one != own && files.size() < kMost) {
            files << one.absoluteFilePath();
        }
    }
    return files;
}

QWidget* emptyPage(QWidget* parent, const std::vector<Way>& ways, const std::vector<WaysUnder>& known) {
    auto* page = new QWidget(parent);
    auto* column = new QVBoxLayout(page);
    const auto line = [&](const QString& said, double scale) {
        auto* label = new QLabel(said, page);
        label->setAlignment(Qt::AlignCenter);
        label->setWordWrap(true);
        label->setTextFormat(Qt::PlainText);
        QFont font = label->font();
        font.setPointSizeF(font.pointSizeF() * scale);
        label->setFont(font);
        column->addWidget(label);
    };
    const auto add = [&](const Way& way, bool isFlat) {
        auto* button = new QPushButton(way.first, page);
        button->setAccessibleDescription(way.first);
        button->setFlat(isFlat);
        button->setMinimumWidth(button->fontMetrics().averageCharWidth() * 40);
        QObject::connect(button, &QPushButton::clicked, page, way.second);
        column->addWidget(button, 0, Qt::AlignHCenter);
    };
    column->addStretch(1);
    line(tr("How fast may the air be switched on?"), 1.6);
    line(
        tr("Dawnline shows the oxygen of a pond night by night under different ways to start bottom air, and "
           "which of them the fish can bear."),
        1.1);
    column->addSpacing(14);
    for (const Way& way : ways) {
        add(way, false);
    }
    line(tr("or drop a pond file here"), 1.0);
    for (const WaysUnder& list : known) {
        column->addSpacing(14);
        line(list.heading, 1.0);
        for (const Way& way : list.ways) {
            add(way, true);
        }
    }
    column->addStretch(2);
    return page;
}

}  // namespace app
