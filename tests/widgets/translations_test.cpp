#include "widgets/translations.h"

#include "tests/widgets/typing.h"
#include "widgets/wording.h"

#include <QFile>
#include <QRegularExpression>
#include <QXmlStreamReader>

#include <gtest/gtest.h>

namespace widgets {
namespace {

using test::plain;

TEST(Translations, AreReadByContextAndAnUnfinishedOneIsLeftInEnglish) {
    TextTranslator german;
    ASSERT_TRUE(german
                    .read("<TS><context><name>A</name><message><source>pond</source><translation>Teich</"
                          "translation></message>"
                          "<message><source>ramp</source><translation "
                          "type=\"unfinished\">x</translation></message></context></TS>")
                    .isEmpty());
    EXPECT_EQ(plain(german.translate("A", "pond", nullptr, -1)), "Teich");
    EXPECT_EQ(plain(german.translate("app::A", "pond", nullptr, -1)), "Teich") << "a namespace is left out";
    EXPECT_TRUE(german.translate("B", "pond", nullptr, -1).isNull());
    EXPECT_TRUE(german.translate("A", "ramp", nullptr, -1).isNull());
    TextTranslator broken;
    EXPECT_FALSE(broken.read("<TS><context>").isEmpty());
}

TEST(Translations, TheSampleLanguageIsInTheProgram) {
    ASSERT_TRUE(installLanguage(QStringLiteral("de")));
    EXPECT_EQ(plain(QCoreApplication::translate("Views", "Debt")), "Schuld");
    EXPECT_EQ(plain(rampText("do-nothing", 0)), "nichts tun");
    for (auto* translator : qApp->findChildren<QTranslator*>(Qt::FindDirectChildrenOnly)) {
        QCoreApplication::removeTranslator(translator);
        delete translator;
    }
    EXPECT_EQ(plain(rampText("do-nothing", 0)), "do nothing");
    EXPECT_FALSE(installLanguage(QStringLiteral("fi")));
}

/// The places of a text that are filled in later, %1 or {name}, sorted.
QStringList placesOf(const QString& text) {
    static const QRegularExpression kPlace(QStringLiteral("%L?[0-9]|%n|\\{\\w+\\}"));
    QStringList places;
    for (auto found = kPlace.globalMatch(text); found.hasNext();) {
        places << found.next().captured();
    }
    places.sort();
    return places;
}

TEST(Translations, EveryGermanTextKeepsThePlacesOfItsSource) {
    ASSERT_TRUE(installLanguage(QStringLiteral("en")));  // asks for the resources
    QFile file(QStringLiteral(":/translations/dawnline_de.ts"));
    ASSERT_TRUE(file.open(QIODevice::ReadOnly));
    QXmlStreamReader reader(file.readAll());
    QString source;
    int count = 0;
    while (!reader.atEnd()) {
        reader.readNext();
        if (reader.isStartElement() && reader.name() == QLatin1String("source")) {
            source = reader.readElementText();
        } else if (reader.isStartElement() && reader.name() == QLatin1String("translation")) {
            const QString text = reader.readElementText();
            EXPECT_FALSE(text.trimmed().isEmpty()) << plain(source);
            EXPECT_TRUE(placesOf(text) == placesOf(source)) << plain(source);
            EXPECT_EQ(text.count(u'&'), source.count(u'&')) << plain(source);
            ++count;
        }
    }
    EXPECT_FALSE(reader.hasError()) << plain(reader.errorString());
    EXPECT_GT(count, 0);
}

TEST(Translations, ThePseudoLanguageKeepsPlacesAndMarkup) {
    const std::string text = plain(pseudo(QStringLiteral("Low %1 of {ramp} in <b>bold</b> &Save")));
    EXPECT_NE(text.find("%1"), std::string::npos);
    EXPECT_NE(text.find("{ramp}"), std::string::npos);
    EXPECT_NE(text.find("<b>"), std::string::npos);
    EXPECT_NE(text.find('&'), std::string::npos);
    EXPECT_EQ(text.find("Low"), std::string::npos);
}

}  // namespace
}  // namespace widgets
