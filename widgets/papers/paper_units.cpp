#include "widgets/papers/paper_units.h"

#include "engine/base/text.h"
#include "engine/base/units.h"
#include "widgets/document/to_qstring.h"

#include <QCoreApplication>
#include <QLocale>

#include <algorithm>
#include <cmath>

namespace widgets {
namespace {

constexpr double kPsi_Pa = 6894.757293;

QString tr(const char* text) {
    return QCoreApplication::translate("PaperUnits", text);
}

double fahrenheit(double celsius) {
    return celsius * 9.0 / 5.0 + 32.0;
}

}  // namespace

QString fixedText(double value, int decimals) {
    QString text = toQString(engine::fixed(value, decimals));
    return text.replace(QLatin1Char('.'), QLocale().decimalPoint());
}

QString plainText(double value) {
    return toQString(engine::shortest(value)).replace(QLatin1Char('.'), QLocale().decimalPoint());
}

QString figuresText(double value) {
    if (value == 0.0) {
        return QStringLiteral("0");
    }
    const int whole = static_cast<int>(std::floor(std::log10(std::fabs(value)))) + 1;
    const double step = std::pow(10.0, std::clamp(whole - 3, -2, 12));
    return fixedText(std::round(value / step) * step, std::clamp(3 - whole, 0, 2));
}

QString PaperUnits::both(const QString& si, const QString& us) const {
    return m_us ? tr("%1 (%2)").arg(us, si) : tr("%1 (%2)").arg(si, us);
}

QString PaperUnits::depth(double metres) const {
    return both(tr("%1 m").arg(fixedText(metres, 1)),
                tr("%1 ft").arg(fixedText(metres / engine::kMetrePerFoot, 1)));
}

QString PaperUnits::area(double squareMetres) const {
    return both(tr("%1 ha").arg(figuresText(squareMetres / 1e4)),
                tr("%1 acres").arg(figuresText(squareMetres / engine::kSquareMetrePerAcre)));
}

QString PaperUnits::volume(double cubicMetres) const {
    return both(tr("%1 m\u00b3").arg(figuresText(cubicMetres)),
                tr("%1 acre-feet")
                    .arg(figuresText(cubicMetres / (engine::kSquareMetrePerAcre * engine::kMetrePerFoot))));
}

QString PaperUnits::air(double litresPerMinute) const {
    const double cubicFeet =
        litresPerMinute * 1e-3 / (engine::kMetrePerFoot * engine::kMetrePerFoot * engine::kMetrePerFoot);
    return both(tr("%1 L/min").arg(figuresText(litresPerMinute)), tr("%1 cfm").arg(figuresText(cubicFeet)));
}

QString PaperUnits::mass(double kilograms) const {
    return both(tr("%1 kg").arg(figuresText(kilograms)),
                tr("%1 lb").arg(figuresText(kilograms / engine::kKilogramPerPound)));
}

QString PaperUnits::stock(double kilogramsPerHectare) const {
    const double perAcre =
        kilogramsPerHectare / engine::kKilogramPerPound * engine::kSquareMetrePerAcre / 1e4;
    return both(tr("%1 kg/ha").arg(figuresText(kilogramsPerHectare)),
                tr("%1 lb/acre").arg(figuresText(perAcre)));
}

QString PaperUnits::temperature(double celsius) const {
    return both(tr("%1 \u00b0C").arg(fixedText(celsius, 1)),
                tr("%1 \u00b0F").arg(fixedText(fahrenheit(celsius), 0)));
}

QString PaperUnits::pressure(double pascals) const {
    return both(tr("%1 kPa").arg(fixedText(pascals / 1e3, 0)),
                tr("%1 psi").arg(fixedText(pascals / kPsi_Pa, 1)));
}

QString PaperUnits::wind(double metresPerSecond) const {
    return both(tr("%1 m/s").arg(fixedText(metresPerSecond, 1)),
                tr("%1 mph").arg(fixedText(metresPerSecond * 3600.0 / engine::kMetrePerMile, 0)));
}

QString PaperUnits::depthHead() const {
    return both(tr("m"), tr("ft"));
}

QString PaperUnits::depthCell(double metres) const {
    return both(fixedText(metres, 1), fixedText(metres / engine::kMetrePerFoot, 1));
}

QString PaperUnits::temperatureHead() const {
    return both(tr("\u00b0C"), tr("\u00b0F"));
}

QString PaperUnits::temperatureCell(double celsius) const {
    return both(fixedText(celsius, 1), fixedText(fahrenheit(celsius), 0));
}

}  // namespace widgets
