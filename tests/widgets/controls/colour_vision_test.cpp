// Lines can be told apart by those who see fewer colours, and where colours come near each other, by dashes.

#include "widgets/controls/plot_style.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <array>
#include <cmath>

namespace widgets {
namespace {

using Rgb = std::array<double, 3>;
using Matrix = std::array<Rgb, 3>;

// Machado, Oliveira and Fernandes (2009), IEEE Trans. Vis. Comput. Graph. 15:1291-1298, severity 1, on linear
// light; the numbers are from memory.
constexpr Matrix kProtan{Rgb{0.152286, 1.052583, -0.204868}, Rgb{0.114503, 0.786281, 0.099216},
                         Rgb{-0.003882, -0.048116, 1.051998}};
constexpr Matrix kDeutan{Rgb{0.367322, 0.860646, -0.227968}, Rgb{0.280085, 0.672501, 0.047413},
                         Rgb{-0.011820, 0.042940, 0.968881}};
constexpr Matrix kTritan{Rgb{1.255528, -0.076749, -0.178779}, Rgb{-0.078411, 0.930809, 0.147602},
                         Rgb{0.004733, 0.691367, 0.303900}};
constexpr Matrix kAll{Rgb{1, 0, 0}, Rgb{0, 1, 0}, Rgb{0, 0, 1}};

/// Four of the differences in CIE 1976 L*a*b* that are just seen, 2.3 (Mahy, Van Eycken and Oosterlinck 1994,
/// Color Res. Appl. 19:105-121, from memory): enough for lines that are not side by side.
constexpr double kClearlyApart = 4 * 2.3;

double linear(double c) {
    return c <= 0.04045 ? c / 12.92 : std::pow((c + 0.055) / 1.055, 2.4);
}

Rgb seen(const Matrix& eye, const QColor& colour) {
    const Rgb light{linear(static_cast<double>(colour.redF())), linear(static_cast<double>(colour.greenF())),
                    linear(static_cast<double>(colour.blueF()))};
    Rgb out{};
    for (std::size_t i = 0; i < 3; ++i) {
        for (std::size_t j = 0; j < 3; ++j) {
            out[i] += eye[i][j] * light[j];
        }
        out[i] = std::clamp(out[i], 0.0, 1.0);
    }
    return out;
}

/// CIE 1976 L*a*b* of linear sRGB under D65.
Rgb labOf(const Rgb& light) {
    const auto f = [](double t) { return t > 0.008856 ? std::cbrt(t) : 7.787 * t + 16.0 / 116.0; };
    const double x = f((0.4124 * light[0] + 0.3576 * light[1] + 0.1805 * light[2]) / 0.95047);
    const double y = f(0.2126 * light[0] + 0.7152 * light[1] + 0.0722 * light[2]);
    const double z = f((0.0193 * light[0] + 0.1192 * light[1] + 0.9505 * light[2]) / 1.08883);
    return {116.0 * y - 16.0, 500.0 * (x - y), 200.0 * (y - z)};
}

double apart(const Matrix& eye, const QColor& a, const QColor& b) {
    const Rgb p = labOf(seen(eye, a)), q = labOf(seen(eye, b));
    return std::hypot(p[0] - q[0], p[1] - q[1], p[2] - q[2]);
}

TEST(ColourVision, LinesDifferInColourOrInDashesForEveryEye) {
    for (const PlotStyle& style : {PlotStyle::light({}), PlotStyle::dark({})}) {
        for (const Matrix* eye : {&kAll, &kProtan, &kDeutan, &kTritan}) {
            for (std::size_t a = 0; a <= 12; ++a) {
                for (std::size_t b = a + 1; b <= 12; ++b) {
                    const QPen first = style.linePen(a, false), second = style.linePen(b, false);
                    const bool areDashesSame =
                        first.style() == second.style() && first.dashPattern() == second.dashPattern();
                    if (areDashesSame) {
                        EXPECT_GE(apart(*eye, first.color(), second.color()), kClearlyApart)
                            << a << " and " << b << ", dark " << style.isDark;
                    }
                }
            }
        }
    }
}

TEST(ColourVision, EveryLineStandsOutOfThePaperForEveryEye) {
    for (const PlotStyle& style : {PlotStyle::light({}), PlotStyle::dark({})}) {
        for (const Matrix* eye : {&kAll, &kProtan, &kDeutan, &kTritan}) {
            for (std::size_t line = 0; line <= 12; ++line) {
                EXPECT_GE(apart(*eye, style.lineColour(line), style.paper), 2 * kClearlyApart) << line;
            }
        }
    }
}

}  // namespace
}  // namespace widgets
