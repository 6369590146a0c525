#pragma once

#include "widgets/controls/plot_style.h"

#include <QByteArray>
#include <QImage>
#include <QSize>
#include <QString>

#include <filesystem>
#include <functional>
#include <optional>
#include <string>
#include <vector>

class QCustomPlot;
class QMimeData;

namespace widgets {

/// A line that a drawing does not name itself.
struct KeyLine {
    QString name;
    std::size_t look = 0;
    bool isHeavy = false;
};

/// A chart for paper: its sentences above it, the caution below, and its numbers. Always on the light theme.
struct ChartSheet {
    QString name;              ///< Of the file, without an ending
    QString headline;          ///< What to see, in large type
    QString detail;            ///< In small type; may be empty
    QString foot;              ///< Pond, date and caution
    std::vector<KeyLine> key;  ///< Above the chart
    QString words;             ///< The text alternative
    QSize size{560, 360};      ///< Of the chart without its sentences, at 96 dots an inch
    std::function<void(QCustomPlot& plot, const PlotStyle& style)> draw;
    std::string csv;
};

/// At 300 dots an inch, which the image says of itself.
[[nodiscard]] QImage imageOf(const ChartSheet& sheet);

/// Vector drawing that stays inside its axes; carries the text alternative as its description.
[[nodiscard]] QByteArray svgOf(const ChartSheet& sheet);

/// PNG as bytes, the text alternative among its texts.
[[nodiscard]] QByteArray pngOf(const ChartSheet& sheet);
/// That of imageOf(), drawn before; on any thread.
[[nodiscard]] QByteArray pngOf(const QImage& image);

/// Writes PNG, SVG or CSV, as the ending of the name says.
/// @return a sentence if it could not be written; nothing is left half-written.
[[nodiscard]] std::optional<QString> saveSheet(const ChartSheet& sheet, const std::filesystem::path& path);

/// Image, vector drawing and text alternative, for the clipboard. The caller owns it.
[[nodiscard]] QMimeData* clippingOf(const ChartSheet& sheet);

}  // namespace widgets
