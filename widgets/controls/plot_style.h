#pragma once

#include <QColor>
#include <QFont>
#include <QPen>
#include <QString>
#include <QVector>

class QPalette;

namespace widgets {

/// Colours and pens of every chart. Opaque throughout: what lies over something else is mixed beforehand, so
/// that screen, paper and SVG show the same.
///
/// Lines follow Okabe and Ito (2008), Color Universal Design, in this order: blue, vermilion,
/// bluish green, orange, sky blue, reddish purple (hex values from memory); then the same with other dashes.
/// Ink with long dashes is do-nothing's alone. On paper their hues are darkened until they stand out of the
/// darkest ground that they cross, in a grey copy too, where only dashes, widths and names tell them apart.
struct PlotStyle {
    bool isDark = false;
    QColor paper, ink, quietInk, hairline;
    QColor night[3];  ///< Mixed into the paper, from early twilight to full night
    QColor stress, lethal, hatch, stressInk, lethalInk;
    QFont font;   ///< Of labels; the sentence and the small print derive from it
    QFont small;  ///< Of rows of numbers

    explicit PlotStyle(const QFont& labels);
    [[nodiscard]] static PlotStyle light(const QFont& font);
    [[nodiscard]] static PlotStyle dark(const QFont& font);
    /// Light or dark after the window's own colours.
    [[nodiscard]] static PlotStyle of(const QPalette& palette, const QFont& font);

    /// @param index  Place in the comparison; 0 is do-nothing.
    [[nodiscard]] QColor lineColour(std::size_t index) const;
    [[nodiscard]] QPen linePen(std::size_t index, bool isHeavy) const;
    /// The line's colour, moved towards ink until text of it can be read on the paper (WCAG 2.1, 1.4.3: 4.5
    /// to 1).
    [[nodiscard]] QColor textColour(std::size_t index) const;
};

/// What a band of stress or death, and the tint between two curves, take of their colour over what they lie
/// on: half, so that a grey copy of a band too tells day from night.
inline constexpr double kBandShare = 0.5, kTintShare = 0.2;

/// `over` laid on `under` with that share of `over`.
[[nodiscard]] QColor mixed(const QColor& under, const QColor& over, double share);

/// Contrast of two colours, 1 to 21 (WCAG 2.1).
[[nodiscard]] double contrast(const QColor& a, const QColor& b);

}  // namespace widgets
