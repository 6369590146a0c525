#include "widgets/papers/paper_parts.h"

#include "engine/base/files.h"
#include "engine/base/text_file.h"
#include "engine/base/units.h"
#include "engine/ensemble/chances.h"
#include "engine/wording/wording.h"
#include "widgets/document/to_qstring.h"
#include "widgets/document/wording.h"

#include <QBuffer>
#include <QCoreApplication>
#include <QImageReader>
#include <QPainter>

#include <cmath>

namespace widgets {
namespace {

constexpr int kLogo_px = 900;

/// Far more than the file of a logo has.
constexpr std::uintmax_t kLogoFileLimit_bytes = std::uintmax_t{64} << 20;

QString tr(const char* text) {
    return QCoreApplication::translate("PaperParts", text);
}

struct Logo {
    QImage picture;
    std::string fault;  ///< A sentence; empty if and only if there is a picture.
};

/// Read whole before it is looked at, since Qt would wait at a pipe for ever.
Logo readLogo(const std::string& path) {
    const engine::FileText file = engine::readWholeFile(path, kLogoFileLimit_bytes);
    if (!file.text) {
        return {{}, file.fault};
    }
    QByteArray bytes = QByteArray::fromRawData(file.text->data(), static_cast<qsizetype>(file.text->size()));
    QBuffer buffer(&bytes);
    QImageReader reader(&buffer);
    QImage picture = reader.read();
    return {picture, picture.isNull() ? reader.errorString().toStdString() + "." : ""};
}

QStringList senderOf(const engine::Consultant& who) {
    QStringList lines;
    for (const std::string& text : {who.business, who.name, who.licence}) {
        lines << toQString(text);
    }
    for (const std::string& text : who.address) {
        lines << toQString(text);
    }
    lines << toQString(who.phone) << toQString(who.email);
    lines.removeAll(QString());
    return lines;
}

QString numberOr(const std::optional<double>& value, int decimals) {
    return value ? fixedText(*value, decimals) : QStringLiteral("\u2013");
}

/// A share as so many of 100.
QString hundredText(double share) {
    return toQString(engine::shownValue({"", engine::Measure::Of100, share, {}}));
}

}  // namespace

Paper paperOf(const PaperRun& run, const QString& file, const QString& title, const char* context,
              std::span<const TemplateLine> lines, const PaperInserts& inserts, double scale) {
    const PaperValues values = valuesOf(run);
    PaperLook look = PaperLook::standard();
    look.scale = scale;
    PaperFlow flow(std::move(look), run.format.inner().width());
    QStringList under;
    for (const char* part : {QT_TRANSLATE_NOOP("PaperParts", "{title}"),
                             QT_TRANSLATE_NOOP("PaperParts", "prepared for {client}"),
                             QT_TRANSLATE_NOOP("PaperParts", "{runDate}")}) {
        if (values.meets(QStringLiteral("all"), tr(part))) {
            under << values.filled(tr(part));
        }
    }
    flow.title(title, under.join(QStringLiteral("  \u00b7  ")), senderOf(run.consultant),
               logoOf(run.consultant));
    setTemplate(flow, context, lines, values, inserts);
    return {file, title, closedUp(flow.take(), run.format.inner().height()), flow.takePieces()};
}

PaperTable runTable(const PaperRun& run, bool hasBoxes) {
    PaperTable table;
    table.points = 8.0;
    table.columns = {{tr("Day"), 0.6, true},
                     {tr("Date"), 1.5, false},
                     {tr("On"), 0.9, true},
                     {tr("Off"), hasBoxes ? 1.7 : 1.5, true},
                     {tr("Min"), 0.8, true},
                     {tr("Open"), 0.8, true},
                     {tr("Depth, %1").arg(run.units.depthHead()), 1.5, true},
                     {tr("Dose, %"), 0.9, true}};
    if (hasBoxes) {
        table.rowHeight = 17.0 * kPoint;
        for (const QString& title : {tr("Dawn mg/L"), tr("Smell"), tr("Fish"), tr("Initials")}) {
            table.columns.push_back({title, 1.0, false});
        }
    } else {
        table.columns.push_back({tr("Low, 1 in 20"), 1.1, true});
        table.columns.push_back({tr("Low, middle"), 1.1, true});
    }
    for (const engine::RunRow& row : engine::runList(run.comparison(), run.plan)) {
        const bool runs = row.start.has_value();
        QStringList cells{QString::number(row.day), paperDate(row.date)};
        cells << (runs ? runClock(run, row, *row.start) : tr("hold"));
        cells << (!runs      ? QStringLiteral("\u2013")
                  : row.stop ? runClock(run, row, *row.stop)
                             : tr("stays on"));
        cells << (runs && !row.stop ? QStringLiteral("\u2013") : fixedText(runs ? row.minutes : 0.0, 0));
        cells << (runs ? QString::number(row.open) : QStringLiteral("\u2013"));
        cells << (runs ? run.units.depthCell(row.depth) : QStringLiteral("\u2013"));
        cells << numberOr(row.dose_percent, 0);
        if (hasBoxes) {
            cells << QString() << QString() << QString() << QString();
        } else {
            cells << numberOr(row.lowestP05, 1) << numberOr(row.lowestP50, 1);
        }
        table.rows.push_back(cells);
    }
    return table;
}

PaperTable chanceTable(const PaperRun& run) {
    const engine::Comparison& comparison = run.comparison();
    const engine::OxygenThresholds& thresholds = comparison.model.parameters.thresholds;
    PaperTable table;
    table.columns = {
        {tr("Of 100 ponds like this one, in %1 nights").arg(comparison.days), 2.4, false},
        {tr("below the stress line, %1 mg/L: fish suffer").arg(oxygenText(thresholds.stress)), 1.4, true},
        {tr("below the lethal line, %1 mg/L: fish can die").arg(oxygenText(thresholds.lethal)), 1.4, true}};
    table.strong = {1};
    const auto add = [&](const QString& name, std::size_t ramp) {
        const engine::Chances chances = engine::chancesOf(comparison, comparison.runs[ramp]);
        table.rows.push_back({name, hundredText(chances.belowStress), hundredText(chances.belowLethal)});
    };
    add(tr("left alone"), 0);
    if (run.plan > 0) {
        const QString name = rampText(run.planRun().name, run.plan);
        add(tr("with %1").arg(name), run.plan);
    }
    if (run.fast) {
        add(tr("the fastest start: %1").arg(rampText(comparison.runs[*run.fast].name, *run.fast)), *run.fast);
    }
    return table;
}

PaperTable dawnTable(const PaperRun& run) {
    const engine::DawnLimits limits = dawnLimits(run);
    const auto number = [](double oxygen) { return oxygenText(oxygen); };
    PaperTable table;
    table.points = 9.0;
    table.columns = {
        {tr("Dawn reading"), 0.9, false}, {tr("mg/L"), 1.0, false}, {tr("What to do"), 4.0, false}};
    table.rows = {
        {tr("**Go**"), tr("%1 or more").arg(number(limits.go)), tr("Run the next step.")},
        {tr("**Hold**"), tr("%1 to %2").arg(number(limits.hold), number(limits.go)),
         tr("Run as long as the last time; on day 1 do not start. The same if it is down by more than %1 "
            "mg/L "
            "since before the start.")
             .arg(plainText(limits.fallHold))},
        {tr("**Ease off**"), tr("%1 to %2").arg(number(limits.back), number(limits.hold)),
         tr("No bottom air today. On the next go day run half as long as the last time. The same if it is "
            "more "
            "than %1 mg/L below the dawn before, or if the smell is strong.")
             .arg(plainText(limits.fallBack))},
        {tr("**Stop**"), tr("under %1").arg(number(limits.back)),
         tr("Leave the bottom air off and call us. Fish gasping at the top: start surface air, stop feeding, "
            "call. Bottom air that runs goes off only if the top is over 2 \u00b0C (3.6 \u00b0F) warmer than "
            "the "
            "bottom.")}};
    return table;
}

PaperTable blankTable(const QStringList& titles, const std::vector<double>& shares, int rows, double points) {
    PaperTable table;
    table.points = points;
    table.rowHeight = 20.0 * kPoint;
    for (qsizetype i = 0; i < titles.size(); ++i) {
        table.columns.push_back({titles[i], shares[static_cast<std::size_t>(i)], false});
    }
    QStringList empty;
    for (qsizetype i = 0; i < titles.size(); ++i) {
        empty << QString();
    }
    table.rows.assign(static_cast<std::size_t>(rows), empty);
    return table;
}

std::optional<std::string> logoFault(const engine::Consultant& consultant) {
    if (consultant.logo.empty()) {
        return std::nullopt;
    }
    const Logo logo = readLogo(consultant.logo);
    if (!logo.picture.isNull()) {
        return std::nullopt;
    }
    return "The picture " + engine::shownPath(consultant.logo) + " cannot be read: " + logo.fault;
}

QImage logoOf(const engine::Consultant& consultant) {
    if (consultant.logo.empty()) {
        return {};
    }
    QImage picture = readLogo(consultant.logo).picture;
    if (picture.isNull()) {
        return {};
    }
    if (picture.width() > kLogo_px || picture.height() > kLogo_px) {
        picture = picture.scaled(kLogo_px, kLogo_px, Qt::KeepAspectRatio, Qt::SmoothTransformation);
    }
    // Without transparency, which has no place in a paper.
    QImage white(picture.size(), QImage::Format_RGB32);
    white.fill(Qt::white);
    QPainter painter(&white);
    painter.drawImage(0, 0, picture);
    return white;
}

}  // namespace widgets
