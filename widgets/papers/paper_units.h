#pragma once

#include <QString>

namespace widgets {

/// Quantities as papers print them: in the reader's units, the other system in brackets behind, since a depth
/// or a flow read in the wrong one hurts. Numbers with the locale's decimal sign.
class PaperUnits {
public:
    explicit PaperUnits(bool us) : m_us(us) {}

    [[nodiscard]] QString depth(double metres) const;
    [[nodiscard]] QString area(double squareMetres) const;
    [[nodiscard]] QString volume(double cubicMetres) const;
    [[nodiscard]] QString air(double litresPerMinute) const;
    [[nodiscard]] QString mass(double kilograms) const;
    [[nodiscard]] QString stock(double kilogramsPerHectare) const;
    [[nodiscard]] QString temperature(double celsius) const;
    [[nodiscard]] QString pressure(double pascals) const;
    [[nodiscard]] QString wind(double metresPerSecond) const;

    /// For columns of tables: the unit stands in the head, both numbers in the cell.
    [[nodiscard]] QString depthHead() const;
    [[nodiscard]] QString depthCell(double metres) const;
    [[nodiscard]] QString temperatureHead() const;
    [[nodiscard]] QString temperatureCell(double celsius) const;

private:
    [[nodiscard]] QString both(const QString& si, const QString& us) const;

    bool m_us;
};

/// Fixed decimals with the locale's decimal sign; never a minus before nothing.
[[nodiscard]] QString fixedText(double value, int decimals);

/// A number as the user gave it, with the locale's decimal sign.
[[nodiscard]] QString plainText(double value);

/// Three figures: what a reading of mass or volume is good for.
[[nodiscard]] QString figuresText(double value);

}  // namespace widgets
