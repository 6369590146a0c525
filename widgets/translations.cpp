#include "widgets/translations.h"

#include <QCoreApplication>
#include <QFile>
#include <QLibraryInfo>
#include <QLocale>
#include <QXmlStreamReader>

/// A static library's resources have to be asked for. Outside of any namespace, as Qt wants it.
static void keepResources() {
    Q_INIT_RESOURCE(dawnline);
}

namespace widgets {
namespace {

QByteArray keyOf(const QByteArray& context, const QByteArray& source) {
    // Classes in a namespace have it in their context; the files leave it out.
    const qsizetype colon = context.lastIndexOf(':');
    return context.mid(colon + 1) + '\0' + source;
}

}  // namespace

QString TextTranslator::read(const QByteArray& xml) {
    QXmlStreamReader reader(xml);
    QByteArray context, source;
    while (!reader.atEnd()) {
        reader.readNext();
        if (!reader.isStartElement()) {
            continue;
        }
        if (reader.name() == QLatin1String("name")) {
            context = reader.readElementText().toUtf8();
        } else if (reader.name() == QLatin1String("source")) {
            source = reader.readElementText().toUtf8();
        } else if (reader.name() == QLatin1String("translation")) {
            const bool isDone =
                reader.attributes().value(QLatin1String("type")) != QLatin1String("unfinished");
            const QString text = reader.readElementText();
            if (isDone && !text.isEmpty()) {
                m_texts.insert(keyOf(context, source), text);
            }
        }
    }
    return reader.hasError() ? reader.errorString() : QString();
}

QString TextTranslator::translate(const char* context, const char* source, const char* /*disambiguation*/,
                                  int /*n*/) const {
    return m_texts.value(keyOf(context, source));
}

QString pseudo(const QString& text) {
    static const QString kPlain = QStringLiteral("aeiouAEIOUcnsyz");
    static const QString kAccented = QStringLiteral(
        "\u00e1\u00e9\u00ed\u00f3\u00fa\u00c1\u00c9\u00cd\u00d3\u00da\u00e7\u00f1\u0161\u00fd\u017e");
    QString out;
    bool isPlace = false;
    for (qsizetype i = 0; i < text.size(); ++i) {
        const QChar c = text[i];
        isPlace = c == u'{' || c == u'<' ? true : isPlace;
        const qsizetype at = isPlace ? -1 : kPlain.indexOf(c);
        const bool isAfterPercent = i > 0 && text[i - 1] == u'%';
        out += at < 0 || isAfterPercent ? c : kAccented[at];
        isPlace = c == u'}' || c == u'>' ? false : isPlace;
    }
    // German runs about a third longer than English.
    const QString more(std::max<qsizetype>(1, text.size() / 3), QLatin1Char('~'));
    return QStringLiteral("[") + out + more + QStringLiteral("]");
}

QString PseudoTranslator::translate(const char* context, const char* source, const char* /*disambiguation*/,
                                    int /*n*/) const {
    // Qt's own texts too, but not its names of fonts and the like.
    if (context == nullptr || source == nullptr || qstrcmp(context, "QFont") == 0 ||
        qstrcmp(context, "QFontDatabase") == 0 || *source == '\0') {
        return {};
    }
    return pseudo(QString::fromUtf8(source));
}

bool installLanguage(const QString& code) {
    ::keepResources();
    if (code == QLatin1String("pseudo")) {
        return QCoreApplication::installTranslator(new PseudoTranslator(qApp));
    }
    const QLocale locale = code.isEmpty() ? QLocale::system() : QLocale(code);
    if (locale.language() == QLocale::English || locale.language() == QLocale::C) {
        return true;
    }
    const QString language = QLocale(locale.language()).name().section(QLatin1Char('_'), 0, 0);
    QFile file(QStringLiteral(":/translations/dawnline_%1.ts").arg(language));
    auto* own = new TextTranslator(qApp);
    if (!file.open(QIODevice::ReadOnly) || !own->read(file.readAll()).isEmpty()) {
        delete own;
        return false;
    }
    auto* qt = new QTranslator(qApp);
    if (qt->load(QStringLiteral("qtbase_") + language, QLibraryInfo::path(QLibraryInfo::TranslationsPath))) {
        QCoreApplication::installTranslator(qt);
    }
    return QCoreApplication::installTranslator(own);
}

}  // namespace widgets
