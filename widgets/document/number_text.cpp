#include "widgets/document/number_text.h"

#include "engine/base/text.h"
#include "widgets/document/pond_units.h"
#include "widgets/document/to_qstring.h"

#include <QCoreApplication>
#include <QRegularExpression>

#include <cmath>
#include <cstring>

namespace widgets {
namespace {

QString tr(const char* text) {
    return QCoreApplication::translate("NumberText", text);
}

QString withUnit(double value, const engine::NumberRule& rule, const QLocale& locale) {
    const QString unit = shownUnit(rule.unit);
    return unit.isEmpty() ? numberText(value, locale) : numberText(value, locale) + u' ' + unit;
}

/// The sentence for a number outside its rule; empty if it is inside.
QString faultOf(double value, const engine::NumberRule& rule, const QLocale& locale) {
    if (!(value >= rule.low && value <= rule.high) || (rule.above && value <= rule.low)) {
        const QString sentence = rule.above ? tr("The value is %1, but must be above %2 and at most %3.")
                                            : tr("The value is %1, but must be from %2 to %3.");
        return sentence.arg(withUnit(value, rule, locale), numberText(rule.low, locale),
                            withUnit(rule.high, rule, locale));
    }
    if (rule.whole && std::floor(value) != value) {
        return tr("The value is %1, but must be a whole number.").arg(withUnit(value, rule, locale));
    }
    return {};
}

bool isDecimalSign(QChar c, const QLocale& locale) {
    return c == u',' || c == u'.' || QString(c) == locale.decimalPoint();
}

TextReading<std::vector<double>> readEach(const QStringList& parts, const engine::NumberRule& rule,
                                          const QLocale& locale) {
    TextReading<std::vector<double>> all;
    for (const QString& part : parts) {
        if (part.isEmpty()) {
            return {{}, tr("A number is missing between two separators.")};
        }
        const TextReading<double> one = readNumber(part, rule, locale);
        if (!one.fault.isEmpty()) {
            return {{}, one.fault};
        }
        all.value.push_back(one.value);
    }
    return all;
}

}  // namespace

QString shownUnit(const char* unit) {
    if (std::strcmp(unit, "degC") == 0) {
        return QStringLiteral("°C");
    }
    if (std::strcmp(unit, "percent") == 0) {
        return QStringLiteral("%");
    }
    return toQString(unit);
}

QString numberText(double value, const QLocale& locale) {
    return toQString(engine::shortest(value)).replace(u'.', locale.decimalPoint());
}

TextReading<double> readNumber(const QString& text, const QLocale& locale) {
    const QString trimmed = text.trimmed();
    QString plain;
    int signs = 0;
    for (const QChar c : trimmed) {
        const bool isSign = isDecimalSign(c, locale);
        signs += isSign ? 1 : 0;
        plain += isSign ? QChar(u'.') : c == QChar(0x2212) ? QChar(u'-') : c;
    }
    if (plain.startsWith(u'+')) {
        plain.remove(0, 1);
    }
    if (signs > 1) {
        return {0.0, tr("“%1” has more than one decimal sign.").arg(trimmed)};
    }
    static const QRegularExpression kForm(QStringLiteral("^(-?)([0-9]*)(?:\\.([0-9]*))?([eE][+-]?[0-9]+)?$"));
    const QRegularExpressionMatch match = kForm.match(plain);
    const QString whole = match.captured(2), decimals = match.captured(3);
    if (!match.hasMatch() || (whole.isEmpty() && decimals.isEmpty())) {
        return {0.0, tr("“%1” is not a number.").arg(trimmed)};
    }
    // The engine wants digits on both sides of the point.
    plain = QStringLiteral("%1%2.%3%4")
                .arg(match.captured(1), whole.isEmpty() ? QStringLiteral("0") : whole,
                     decimals.isEmpty() ? QStringLiteral("0") : decimals, match.captured(4));
    const auto value = engine::toNumber(plain.toStdString());
    if (!value) {
        return {0.0, tr("“%1” is not a number.").arg(trimmed)};
    }
    return {*value == 0.0 ? 0.0 : *value, {}};  // no minus zero
}

TextReading<double> readNumber(const QString& text, const engine::NumberRule& rule, const QLocale& locale) {
    TextReading<double> reading = readNumber(text, locale);
    if (reading.fault.isEmpty()) {
        reading.fault = faultOf(reading.value, rule, locale);
    }
    return reading;
}

TextReading<double> readQuantity(const QString& text, const engine::NumberRule& rule,
                                 engine::UnitSystem system, const QLocale& locale) {
    static const QRegularExpression kForm(
        QStringLiteral("^([-+\\x{2212}]?[0-9.,]*(?:[eE][-+]?[0-9]+)?)\\s*([^0-9.,\\s].*)?$"));
    const QRegularExpressionMatch match = kForm.match(text.trimmed());
    const QString word = match.captured(2).trimmed();
    const ShownUnit shownIn = shownUnitOf(rule.unit, system);
    const bool isFileUnit = shownIn.factor == 1.0 && shownIn.offset == 0.0;
    if (!match.hasMatch() || match.captured(1).isEmpty() || word.isEmpty()) {
        if (isFileUnit) {
            return readNumber(text, rule, locale);
        }
        TextReading<double> reading = readNumber(text, shownRule(rule, system), locale);
        reading.value = shownIn.toFile(reading.value);
        return reading;
    }
    const auto typed = typedUnit(rule.unit, word);
    if (!typed) {
        const QString units = typedUnits(rule.unit);
        return {0.0, units.isEmpty()
                         ? tr("“%1” is not a number.").arg(text.trimmed())
                         : tr("“%1” is no unit that is known here; known are %2.").arg(word, units)};
    }
    TextReading<double> reading = readNumber(match.captured(1), locale);
    reading.value = typed->toFile(reading.value);
    // Twelve digits: what is left of the conversion's rounding would only be noise in the file.
    reading.value =
        engine::toNumber(QString::number(reading.value, 'g', 12).toStdString()).value_or(reading.value);
    if (reading.fault.isEmpty()) {
        if (const QString fault = faultOf(reading.value, rule, locale); !fault.isEmpty()) {
            reading.fault =
                isFileUnit ? fault
                           : faultOf(shownNumber(reading.value, shownIn), shownRule(rule, system), locale);
        }
    }
    return reading;
}

QString numbersText(const std::vector<double>& values, const QLocale& locale) {
    QStringList parts;
    for (const double value : values) {
        parts += numberText(value, locale);
    }
    return parts.join(locale.decimalPoint() == QStringLiteral(",") ? QStringLiteral("; ")
                                                                   : QStringLiteral(", "));
}

TextReading<std::vector<double>> readNumbers(const QString& text, const engine::NumberRule& rule,
                                             const QLocale& locale) {
    static const QRegularExpression kLastSeparator(QStringLiteral("\\s*[;,]?\\s*$"));
    static const QRegularExpression kSeparator(QStringLiteral("\\s*;\\s*|\\s*,\\s+|\\s+,\\s*|\\s+"));
    const QString trimmed = text.trimmed().remove(kLastSeparator);
    if (trimmed.isEmpty()) {
        return {};
    }
    const QStringList parts = trimmed.split(kSeparator);
    auto asDecimals = readEach(parts, rule, locale);
    const bool hasTightComma = parts.join(u' ').contains(u',');
    if (!hasTightComma || trimmed.contains(u';')) {
        return asDecimals;
    }
    QStringList finer;
    for (const QString& part : parts) {
        finer += part.split(u',');
    }
    const auto asSeparators = readEach(finer, rule, locale);
    const bool isComma = locale.decimalPoint() == QStringLiteral(",");
    if (isComma) {
        return asDecimals.fault.isEmpty() || !rule.whole || !asSeparators.fault.isEmpty() ? asDecimals
                                                                                          : asSeparators;
    }
    if (!rule.whole && asDecimals.fault.isEmpty() && asSeparators.fault.isEmpty()) {
        return {{},
                tr("“%1” could be read in two ways. Write a point in a number, and a semicolon between two "
                   "numbers.")
                    .arg(trimmed)};
    }
    return asSeparators.fault.isEmpty() || !asDecimals.fault.isEmpty() ? asSeparators : asDecimals;
}

}  // namespace widgets
