#include "widgets/controls/plot_style.h"

#include <QPalette>

#include <algorithm>
#include <array>
#include <cmath>

namespace widgets {
namespace {

constexpr std::array<QRgb, 6> kLines{0xff0072b2, 0xffd55e00, 0xff009e73, 0xffe69f00, 0xff56b4e9, 0xffcc79a7};

// Dashes in pen widths; the order keeps neighbours in the list apart on a photocopy.
const std::array<QVector<qreal>, 12> kDashes{{{},
                                              {1.5, 2.5},
                                              {8, 2.5, 1.5, 2.5},
                                              {5, 3},
                                              {10, 2.5, 1.5, 2.5, 1.5, 2.5},
                                              {3, 1.5},
                                              {14, 2},
                                              {2, 6},
                                              {8, 2.5, 3, 2.5, 3, 2.5},
                                              {3, 5},
                                              {12, 2.5, 1.5, 2.5, 1.5, 2.5, 1.5, 2.5},
                                              {5, 1.5, 1.5, 1.5}}};
const QVector<qreal> kNothingDashes{9, 5};

constexpr double kReadable = 4.5;   // text; WCAG 2.1, 1.4.3
constexpr double kStandsOut = 3.0;  // graphics; WCAG 2.1, 1.4.11
constexpr double kSmall = 0.85;     // of the labels' size

/// Red, green and blue from 0 to 1; Qt gives floats.
std::array<double, 3> channels(const QColor& colour) {
    return {static_cast<double>(colour.redF()), static_cast<double>(colour.greenF()),
            static_cast<double>(colour.blueF())};
}

double luminance(const QColor& colour) {
    const auto linear = [](double channel) {
        return channel <= 0.03928 ? channel / 12.92 : std::pow((channel + 0.055) / 1.055, 2.4);
    };
    const auto [red, green, blue] = channels(colour);
    return 0.2126 * linear(red) + 0.7152 * linear(green) + 0.0722 * linear(blue);
}

}  // namespace

QColor mixed(const QColor& under, const QColor& over, double share) {
    const auto a = channels(under), b = channels(over);
    const auto mix = [&](std::size_t i) { return static_cast<float>(a[i] + (b[i] - a[i]) * share); };
    return QColor::fromRgbF(mix(0), mix(1), mix(2));
}

double contrast(const QColor& a, const QColor& b) {
    const double one = luminance(a) + 0.05, other = luminance(b) + 0.05;
    return std::max(one, other) / std::min(one, other);
}

PlotStyle::PlotStyle(const QFont& labels) : font(labels), small(labels) {
    small.setPointSizeF(labels.pointSizeF() * kSmall);
}

PlotStyle PlotStyle::light(const QFont& font) {
    PlotStyle style(font);
    style.paper = QColor(0xfa, 0xf8, 0xf2);
    style.ink = QColor(0x1f, 0x2d, 0x36);
    style.quietInk = QColor(0x4a, 0x54, 0x5c);
    style.hairline = QColor(0xd6, 0xd2, 0xc6);
    const QColor dusk(0x6f, 0x7f, 0xb0);
    style.night[0] = mixed(style.paper, dusk, 0.07);
    style.night[1] = mixed(style.paper, dusk, 0.14);
    style.night[2] = mixed(style.paper, dusk, 0.22);
    style.stress = QColor(0xee, 0xd4, 0x92);
    style.lethal = QColor(0xec, 0xa6, 0x82);
    style.hatch = QColor(0xc9, 0x8d, 0x70);
    style.stressInk = QColor(0x5e, 0x42, 0x0a);
    style.lethalInk = QColor(0x7a, 0x2c, 0x10);
    return style;
}

PlotStyle PlotStyle::dark(const QFont& font) {
    PlotStyle style(font);
    style.isDark = true;
    style.paper = QColor(0x16, 0x1d, 0x24);
    style.ink = QColor(0xec, 0xea, 0xe2);
    style.quietInk = QColor(0xa4, 0xae, 0xb6);
    style.hairline = QColor(0x39, 0x43, 0x4d);
    const QColor dusk(0x6c, 0x86, 0xc8);
    style.night[0] = mixed(style.paper, dusk, 0.10);
    style.night[1] = mixed(style.paper, dusk, 0.17);
    style.night[2] = mixed(style.paper, dusk, 0.25);
    style.stress = QColor(0x61, 0x4e, 0x21);
    style.lethal = QColor(0x6f, 0x35, 0x21);
    style.hatch = QColor(0x8a, 0x54, 0x40);
    style.stressInk = QColor(0xe6, 0xcf, 0x97);
    style.lethalInk = QColor(0xf2, 0xb9, 0xa2);
    return style;
}

PlotStyle PlotStyle::of(const QPalette& palette, const QFont& font) {
    const bool isDark =
        palette.color(QPalette::Window).lightness() < palette.color(QPalette::WindowText).lightness();
    return isDark ? dark(font) : light(font);
}

QColor PlotStyle::lineColour(std::size_t index) const {
    if (index == 0) {
        return ink;
    }
    QColor colour = QColor::fromRgb(kLines[(index - 1) % kLines.size()]);
    if (isDark) {
        return mixed(colour, QColor(Qt::white), 0.18);
    }
    const QColor under = mixed(night[2], lethal, kBandShare);
    for (int i = 0; i < 50 && contrast(colour, mixed(under, colour, kTintShare)) < kStandsOut; ++i) {
        colour = mixed(colour, ink, 0.04);
    }
    return colour;
}

QPen PlotStyle::linePen(std::size_t index, bool isHeavy) const {
    QPen pen(lineColour(index), isHeavy ? 3.0 : 1.8);
    pen.setCapStyle(Qt::FlatCap);
    pen.setJoinStyle(Qt::RoundJoin);
    // The next round of dashes takes the colours one further on.
    const std::size_t dash = index == 0 ? 0 : (index - 1 + (index - 1) / kDashes.size()) % kDashes.size();
    const QVector<qreal>& dashes = index == 0 ? kNothingDashes : kDashes[dash];
    if (!dashes.isEmpty()) {
        pen.setDashPattern(dashes);
    }
    return pen;
}

QColor PlotStyle::textColour(std::size_t index) const {
    QColor colour = lineColour(index);
    for (int i = 0; i < 20 && contrast(colour, paper) < kReadable; ++i) {
        colour = mixed(colour, ink, 0.1);
    }
    return colour;
}

}  // namespace widgets
