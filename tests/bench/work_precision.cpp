#include "tests/bench/work_precision.h"

#include "tests/bench/words.h"

#include <algorithm>
#include <array>
#include <cmath>

namespace bench {
namespace {

constexpr double kWidth = 470.0, kHeight = 470.0;  // Of a panel
constexpr double kLeft = 62.0, kRight = 18.0, kTop = 40.0, kBottom = 62.0, kLegendLine = 17.0;
constexpr double kSmallestError = 1e-4;  // What is less is drawn there

// Okabe and Ito (2008), Color universal design, of differing lightness: black, blue, vermilion, green,
// orange.
constexpr std::array<const char*, 5> kColours{"#000000", "#0072B2", "#D55E00", "#009E73", "#E69F00"};
constexpr std::array<const char*, 5> kDashes{"none", "7 3", "2 3", "9 3 2 3", "4 4"};

struct Axis {
    int low = 0, high = 0;  // Powers of ten
    double from = 0.0, to = 0.0;
    [[nodiscard]] double at(double value) const {
        return from + (std::log10(value) - low) / (high - low) * (to - from);
    }
};

std::string mark(std::size_t kind, double x, double y, const char* colour) {
    const std::string fill = std::string("\" fill=\"") + colour + "\"/>\n";
    switch (kind % 5) {
        case 0:
            return words("<circle cx=\"%.1f\" cy=\"%.1f\" r=\"4", x, y) + fill;
        case 1:
            return words("<rect x=\"%.1f\" y=\"%.1f\" width=\"7\" height=\"7", x - 3.5, y - 3.5) + fill;
        case 2:
            return words("<path d=\"M%.1f %.1fl4.5 8h-9z", x, y - 5.0) + fill;
        case 3:
            return words("<path d=\"M%.1f %.1fl5 5l-5 5l-5 -5z", x, y - 5.0) + fill;
        default:
            return words("<path d=\"M%.1f %.1fl8 8m0 -8l-8 8", x - 4.0, y - 4.0) + "\" stroke=\"" + colour +
                   "\" stroke-width=\"2\" fill=\"none\"/>\n";
    }
}

std::string text(double x, double y, const char* anchor, const std::string& what) {
    return words("<text x=\"%.1f\" y=\"%.1f\"", x, y) + " text-anchor=\"" + anchor + "\">" + what +
           "</text>\n";
}

double drawn(double error) {
    return std::max(error, kSmallestError);
}

std::string axes(const Axis& x, const Axis& y, const WorkPanel& panel) {
    std::string out = text(0.5 * (x.from + x.to), 22.0, "middle", panel.title);
    for (int power = x.low; power <= x.high; ++power) {
        const double at = x.at(std::pow(10.0, power));
        out += words("<path d=\"M%.1f %.1fV%.1f\" stroke=\"#ddd\"/>\n", at, y.from, y.to);
        out += text(at, y.from + 16.0, "middle", words("%g", std::pow(10.0, power)));
    }
    for (int power = y.low; power <= y.high; ++power) {
        const double at = y.at(std::pow(10.0, power));
        out += words("<path d=\"M%.1f %.1fH%.1f\" stroke=\"#ddd\"/>\n", x.from, at, x.to);
        out += text(x.from - 6.0, at + 4.0, "end", words("%g", std::pow(10.0, power)));
    }
    const double line = y.at(panel.wanted);
    out +=
        words("<path d=\"M%.1f %.1fH%.1f\" stroke=\"#555\" stroke-dasharray=\"1 3\"/>\n", x.from, line, x.to);
    out += text(x.to - 3.0, line - 4.0, "end", words("%g mg/L", panel.wanted));
    out += words("<path d=\"M%.1f %.1fV%.1fH%.1f\" stroke=\"#000\" fill=\"none\"/>\n", x.from, y.to, y.from,
                 x.to);
    out += text(0.5 * (x.from + x.to), y.from + 34.0, "middle", "processor time, ms");
    out += text(0.5 * (x.from + x.to), y.from + 52.0, "middle", panel.below);
    return out;
}

std::string curveOf(const WorkCurve& curve, std::size_t kind, const Axis& x, const Axis& y, double legend) {
    const char* colour = kColours[kind % kColours.size()];
    std::string path, marks;
    for (const WorkPoint& point : curve.points) {
        const double px = x.at(point.time_ms), py = y.at(drawn(point.error));
        path += words("%c%.1f %.1f", path.empty() ? 'M' : 'L', px, py);
        marks += mark(kind, px, py, colour);
    }
    const std::string pen = std::string("\" stroke=\"") + colour + "\" stroke-dasharray=\"" +
                            kDashes[kind % kDashes.size()] + "\" fill=\"none\"/>\n";
    std::string out = "<path d=\"" + path + pen + marks;
    out += words("<path d=\"M%.1f %.1fh28", kLeft, legend) + pen + mark(kind, kLeft + 14.0, legend, colour);
    return out + text(kLeft + 36.0, legend + 4.0, "start", curve.solver);
}

std::string panelOf(const WorkPanel& panel, double height) {
    Axis x{99, -99, kLeft, kWidth - kRight}, y{99, -99, kHeight - kBottom, kTop};
    const auto widen = [](Axis& axis, double value) {
        axis.low = std::min(axis.low, static_cast<int>(std::floor(std::log10(value))));
        axis.high = std::max(axis.high, static_cast<int>(std::ceil(std::log10(value))));
    };
    widen(y, panel.wanted);
    for (const WorkCurve& curve : panel.curves) {
        for (const WorkPoint& point : curve.points) {
            widen(x, point.time_ms);
            widen(y, drawn(point.error));
        }
    }
    std::string out = axes(x, y, panel);
    double legend = height - kLegendLine * static_cast<double>(panel.curves.size());
    for (std::size_t i = 0; i < panel.curves.size(); ++i, legend += kLegendLine) {
        out += curveOf(panel.curves[i], i, x, y, legend);
    }
    return out;
}

}  // namespace

std::string workPrecisionSvg(const std::vector<WorkPanel>& panels) {
    std::size_t curves = 0;
    std::string titles;
    for (const WorkPanel& panel : panels) {
        curves = std::max(curves, panel.curves.size());
        titles += (titles.empty() ? "" : "; ") + panel.title;
    }
    const double width = kWidth * static_cast<double>(panels.size()),
                 height = kHeight + 10.0 + kLegendLine * static_cast<double>(curves);
    std::string out = words(
        "<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 %.0f %.0f\" width=\"%.0f\" "
        "height=\"%.0f\" font-family=\"sans-serif\" font-size=\"12\">\n",
        width, height, width, height);
    out += "<title>Error over processor time: " + titles + "</title>\n";
    out += words("<rect width=\"%.0f\" height=\"%.0f\" fill=\"#fff\"/>\n", width, height);
    for (std::size_t i = 0; i < panels.size(); ++i) {
        out += words("<g transform=\"translate(%.0f 0)\">\n", kWidth * static_cast<double>(i));
        out += panelOf(panels[i], height) + "</g>\n";
    }
    return out + "</svg>\n";
}

}  // namespace bench
