#include "widgets/papers/paper_figures.h"

#include "engine/pond/local_time.h"
#include "engine/run/nights.h"
#include "engine/run/warm_night.h"
#include "engine/wording/sentence_advice.h"
#include "widgets/charts/chart_parts.h"
#include "widgets/charts/night_plot.h"
#include "widgets/charts/picture.h"
#include "widgets/charts/sheets.h"
#include "widgets/charts/whole_run_plot.h"
#include "widgets/document/to_qstring.h"
#include "widgets/document/wording.h"
#include "widgets/papers/paper_axes.h"

#include <QCoreApplication>
#include <QLocale>
#include <qcustomplot.h>

#include <algorithm>
#include <cmath>

namespace widgets {
namespace {

QString tr(const char* text) {
    return QCoreApplication::translate("PaperFigure", text);
}

/// The charts' own style on white paper, in the papers' type.
PlotStyle paperStyle() {
    const PaperLook look = PaperLook::standard();
    QFont font(look.family);
    font.setPointSizeF(8.5);
    font.setHintingPreference(QFont::PreferNoHinting);
    font.setLetterSpacing(QFont::AbsoluteSpacing, 0.01);
    PlotStyle style = PlotStyle::light(font);
    const QColor dusk(0x6f, 0x7f, 0xb0);
    style.paper = Qt::white;
    style.ink = look.ink;
    style.hairline = look.hairline;
    style.night[0] = mixed(style.paper, dusk, 0.06);
    style.night[1] = mixed(style.paper, dusk, 0.12);
    style.night[2] = mixed(style.paper, dusk, 0.19);
    return style;
}

/// A drawing of the charts as a figure. @param draw  Into a plot of a size in dots.
std::function<void(QCPPainter&)> plotted(const QSizeF& size,
                                         std::function<void(QCustomPlot&, const PlotStyle&)> draw) {
    return [size, draw = std::move(draw)](QCPPainter& painter) {
        QCustomPlot plot;
        const QSize dots = (size / kPixel).toSize();
        const PlotStyle style = paperStyle();
        plot.setFont(style.font);
        plot.setViewport(QRect(QPoint(0, 0), dots));
        draw(plot, style);
        painter.scale(kPixel, kPixel);
        plot.toPainter(&painter, dots.width(), dots.height());
    };
}

/// The low of a line, which is no oxygen where no water is cool enough.
QString lowInWords(const engine::Comparison& comparison, const NightLine& line, int night) {
    for (std::size_t i = 0; i < comparison.runs.size(); ++i) {
        const engine::RampRun& run = comparison.runs[i];
        if (lookOf(comparison, i) == line.look && isDrawn(run) &&
            engine::warmNight(comparison.model, run, engine::nightRow(run, night))) {
            return tr("%1: too warm for the fish at %2").arg(line.name, clockText(line.lowTime));
        }
    }
    return tr("%1: low of %2 mg/L at %3").arg(line.name, oxygenText(line.low), clockText(line.lowTime));
}

}  // namespace

PaperFigure nightFigure(const FigureSource& source, double height) {
    const engine::Comparison& comparison = source.outcome->comparison;
    Selection selection;
    selection.setExtent(comparison.days, comparison.runs.size());
    selection.setRamp(source.plan);
    selection.setNight(source.night);
    NightScene scene = nightScene(*source.outcome, selection, {false, false});
    const std::size_t plan = lookOf(comparison, source.plan);
    const std::size_t fast = source.fast ? lookOf(comparison, *source.fast) : plan;
    std::erase_if(scene.lines, [&](const NightLine& line) {
        return line.look != 0 && line.look != plan && line.look != fast;
    });
    for (NightLine& line : scene.lines) {
        line.isLowSaid = line.look != 0;
    }
    scene.readings.clear();
    scene.bands.clear();
    if (source.fast) {
        scene.bands.push_back(bandOf(comparison, *source.fast, selection.night()));
        scene.bands.back().isDotted = true;
    }
    scene.bands.push_back(bandOf(comparison, source.plan, selection.night()));
    const bool hasBands = !scene.bands.back().hour.empty();
    double highest = scene.top;
    for (const NightBand& band : scene.bands) {
        highest =
            hasBands ? std::max(highest, *std::max_element(band.high.begin(), band.high.end())) : highest;
    }
    scene.top = axisTop(highest);
    PaperFigure figure;
    figure.width = source.width;
    figure.height = height;
    figure.paint = plotted(QSizeF(figure.width, height), [scene](QCustomPlot& plot, const PlotStyle& style) {
        drawNight(plot, scene, style);
    });
    QStringList lows;
    for (const NightLine& line : scene.lines) {
        lows << lowInWords(comparison, line, selection.night());
    }
    const QString bandText = hasBands ? tr(" Tinted: where nine of ten ponds like this one run.") : QString();
    figure.caption =
        tr("**%1, %2.** Oxygen in the fish water from noon to noon, mg/L.%3")
            .arg(source.isOfPlan ? tr("The worst night of this start") : tr("The worst night left alone"),
                 nightName(*source.outcome, selection.night()), bandText);
    figure.words = tr("In words: %1.").arg(lows.join(QStringLiteral("; ")));
    return figure;
}

PaperFigure monthsFigure(const FigureSource& source) {
    const Picture picture = monthsPicture(source.outcome, Selection());
    PaperFigure figure;
    figure.width = source.width;
    figure.height = 46.0 * kMillimetre;
    figure.paint = plotted(QSizeF(figure.width, figure.height), picture.draw);
    figure.caption = tr("**The next twelve months.** %1 %2").arg(picture.headline, picture.detail);
    const auto& answer = source.outcome->answer;
    if (answer == nullptr || answer->calendar.months.empty()) {
        figure.words = picture.words;
        return figure;
    }
    // The numbers of the months in one row instead of a sentence each.
    QStringList chances, rest;
    for (const engine::MonthOfStart& month : answer->calendar.months) {
        const QString name = monthName(month, QLocale::LongFormat);
        chances << (month.isIcy ? tr("%1 ice").arg(name)
                                : tr("%1 %2 and %3")
                                      .arg(name, fixedText(100.0 * month.lethal, 0),
                                           fixedText(100.0 * month.lethalAlone, 0)));
    }
    for (const engine::Sentence& sentence :
         engine::sentencesOf(answer->calendar, source.outcome->comparison.model)) {
        using enum engine::SentenceKey;
        if (sentence.key != CalendarMay && sentence.key != CalendarNot && sentence.key != CalendarIce) {
            rest << localized(sentence);
        }
    }
    figure.words = tr("In words, of 100 ponds with the ramp and left alone: %1. %2")
                       .arg(chances.join(QStringLiteral("; ")), rest.join(QLatin1Char(' ')));
    return figure;
}

PaperFigure wholeRunFigure(const FigureSource& source) {
    const engine::Comparison& comparison = source.outcome->comparison;
    PaperFigure figure;
    figure.width = source.width;
    figure.height = 82.0 * kMillimetre;
    figure.paint = plotted(QSizeF(figure.width, figure.height),
                           [outcome = source.outcome, plan = source.plan, night = source.night](
                               QCustomPlot& plot, const PlotStyle& style) {
                               Selection selection;
                               selection.setExtent(outcome->comparison.days, outcome->comparison.runs.size());
                               selection.setRamp(plan);
                               selection.setNight(night);
                               drawWholeRun(plot, outcome, selection, style);
                           });
    figure.caption = tr("**The whole run, %1 days from %2.** Fish-water oxygen under every ramp (mg/L), when "
                        "the air runs, and the "
                        "weather that was taken. Framed: the night shown above.")
                         .arg(comparison.days)
                         .arg(toQString(engine::formatDate(*comparison.model.pond.place.firstDay)));
    return figure;
}

}  // namespace widgets
