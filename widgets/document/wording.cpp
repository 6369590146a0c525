#include "widgets/document/wording.h"

#include "engine/wording/wording.h"
#include "widgets/document/pond_units.h"
#include "widgets/document/to_qstring.h"

#include <QCoreApplication>
#include <QLocale>

#include <algorithm>

namespace widgets {
namespace {

QString translated(const char* context, std::string_view english) {
    const std::string source(english);
    return QCoreApplication::translate(context, source.c_str());
}

bool isNumber(engine::Measure measure) {
    return measure != engine::Measure::Text && measure != engine::Measure::Term &&
           measure != engine::Measure::Clock && measure != engine::Measure::Day;
}

QString valueText(const engine::SentenceValue& value) {
    if (value.measure == engine::Measure::Term) {
        return translated("Term", engine::englishTerm(value.text));
    }
    QString text = toQString(engine::shownValue(value));
    if (isNumber(value.measure)) {
        text.replace(QLatin1Char('.'), QLocale().decimalPoint());
    }
    return text;
}

template <class Condition>
QString localizedIf(const std::vector<engine::Sentence>& sentences, Condition isMeant) {
    QStringList texts;
    for (const engine::Sentence& sentence : sentences) {
        if (isMeant(sentence)) {
            texts << localized(sentence);
        }
    }
    return texts.join(QLatin1Char(' '));
}

}  // namespace

QString localized(const engine::Sentence& sentence) {
    const QString pattern = translated("Sentence", engine::englishTemplate(sentence.key));
    return toQString(engine::filled(
        pattern.toStdString(), sentence.values,
        [](const engine::SentenceValue& value) { return valueText(value).toStdString(); },
        sentence.units.value_or(unitsOfLocale())));
}

QString localized(const std::vector<engine::Sentence>& sentences, engine::SentencePart part) {
    return localizedIf(sentences, [part](const engine::Sentence& one) { return one.part == part; });
}

QString localized(const std::vector<engine::Sentence>& sentences,
                  const std::vector<engine::SentenceKey>& keys) {
    return localizedIf(sentences, [&keys](const engine::Sentence& one) {
        return std::find(keys.begin(), keys.end(), one.key) != keys.end();
    });
}

QString unbroken(QString text) {
    return text.replace(QLatin1String(" mg/L"), QStringLiteral("\u00a0mg/L"));
}

QString oxygenText(double oxygen) {
    return valueText({"oxygen", engine::Measure::Oxygen, oxygen, {}});
}

QString clockText(double time) {
    return valueText({"clock", engine::Measure::Clock, time, {}});
}

QString rampText(const std::string& name, std::size_t index) {
    return index == 0 ? QCoreApplication::translate("Ramp", "do nothing") : toQString(name);
}

}  // namespace widgets
