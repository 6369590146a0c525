// The proposal and the letter as a text for an office's word processor.
#include "engine/output/bundle.h"
#include "engine/wording/sentence_advice.h"
#include "engine/wording/wording.h"
#include "tests/papers/made_papers.h"
#include "widgets/papers/paper_office.h"

#include <QRegularExpression>
#include <QXmlStreamReader>

namespace widgets {
namespace {

using test::headline;
using test::printed;

/// The words of an OpenDocument text, cells and paragraphs parted by a blank; a failed test if it is no XML.
QString wordsOf(const std::string& xml) {
    QXmlStreamReader reader(QByteArray::fromStdString(xml));
    QString words;
    while (!reader.atEnd()) {
        reader.readNext();
        if (reader.isCharacters()) {
            words += reader.text().toString();
        } else if (reader.isEndElement() &&
                   (reader.name() == QLatin1String("p") || reader.name() == QLatin1String("h"))) {
            words += QLatin1Char(' ');
        }
    }
    EXPECT_FALSE(reader.hasError()) << reader.errorString().toStdString();
    return words.simplified();
}

engine::BundleFiles opened(const std::string& name) {
    engine::BundleFiles read = engine::readBundle(headline().path(name).toStdString());
    EXPECT_TRUE(read.faults.empty());
    return read;
}

TEST(PaperOffice, HasTheWordsTheNumbersAndTheFiguresOfThePdf) {
    const engine::BundleFiles read = opened("proposal.odt");
    const auto& files = read.files;
    const QString words = wordsOf(read.text("content.xml").value_or(std::string()));
    const PaperRun& run = headline().run;
    EXPECT_TRUE(words.contains(
        QString::fromStdString(engine::english(engine::verdictOf(run.advice(), run.comparison().model)))))
        << words.toStdString();
    EXPECT_TRUE(words.contains(QString::fromStdString(engine::nameOf(*run.frozen))));
    EXPECT_TRUE(words.contains(imprintOf(run).caution));
    EXPECT_FALSE(words.contains(QLatin1String("**")));
    // Every number with a decimal that the paper shows in words and tables stands in the text as well.
    const Paper paper = proposal(run);
    int tables = 0, figures = 0;
    for (const PaperPiece& piece : paper.pieces) {
        tables += piece.kind == PaperPiece::Kind::Table;
        figures += piece.kind == PaperPiece::Kind::Figure;
        for (const QStringList& row : piece.table.rows) {
            for (const QString& cell : row) {
                EXPECT_TRUE(words.contains(QString(cell).remove(QLatin1String("**")).simplified()))
                    << cell.toStdString();
            }
        }
    }
    EXPECT_GE(tables, 3);
    EXPECT_GE(figures, 3);
    const auto pictures = std::count_if(files.begin(), files.end(), [&](const auto& file) {
        return file.first.starts_with("Pictures/") &&
               read.text(file.first).value_or(std::string()).starts_with("\x89PNG");
    });
    EXPECT_EQ(pictures, figures);
}

TEST(PaperOffice, IsAnOpenDocumentAndTheSameBytesTwice) {
    const std::string& bytes = headline().bytes("proposal.odt");
    // OpenDocument 1.2, part 3, section 3.3: the type stands first, unpacked, so that it can be seen at
    // byte 38.
    EXPECT_EQ(bytes.substr(30, 8), "mimetype");
    EXPECT_EQ(bytes.substr(38, 39), "application/vnd.oasis.opendocument.text");
    const PaperRun& run = headline().run;
    EXPECT_TRUE(odtOf(proposal(run), imprintOf(run), run.format) == bytes);
}

TEST(PaperOffice, HasPagesOfTheSizeOfThePdf) {
    const PaperRun& run = headline().run;
    // ISO 216 and ANSI Y14.1, to the half point that Qt rounds a sheet to.
    for (const auto& [size, width, height] :
         {std::tuple(QPageSize::A4, 210.0 / 25.4 * 72.0, 297.0 / 25.4 * 72.0),
          std::tuple(QPageSize::Letter, 612.0, 792.0)}) {
        PaperFormat format = run.format;
        format.size = size;
        const engine::BundleFiles read =
            engine::readBundleBytes(odtOf(proposal(run), imprintOf(run), format), "proposal.odt");
        QXmlStreamReader styles(QByteArray::fromStdString(read.text("styles.xml").value_or(std::string())));
        QString layout, master;
        double wide = 0.0, high = 0.0;
        while (!styles.atEnd()) {
            styles.readNext();
            const auto value = [&](const char* name) {
                for (const QXmlStreamAttribute& one : styles.attributes()) {
                    if (one.name() == QLatin1String(name)) {
                        return one.value().toString();
                    }
                }
                return QString();
            };
            if (!styles.isStartElement()) {
                continue;
            }
            if (styles.name() == QLatin1String("page-layout")) {
                layout = value("name");
            } else if (styles.name() == QLatin1String("page-layout-properties")) {
                wide = value("page-width").remove(QLatin1String("pt")).toDouble();
                high = value("page-height").remove(QLatin1String("pt")).toDouble();
            } else if (styles.name() == QLatin1String("master-page") &&
                       value("name") == QLatin1String("Standard")) {
                master = value("page-layout-name");
            }
        }
        EXPECT_FALSE(styles.hasError()) << styles.errorString().toStdString();
        EXPECT_NEAR(wide, width, 0.5);
        EXPECT_NEAR(high, height, 0.5);
        EXPECT_FALSE(layout.isEmpty());
        EXPECT_EQ(layout, master) << "the pages are those of the layout";
        // OpenDocument 1.2, part 3, section 3.2: every file of the package is listed.
        EXPECT_NE(read.text("META-INF/manifest.xml").value_or("").find("\"styles.xml\""), std::string::npos);
    }
}

// A word processor opens it and prints the words that the paper has. It takes long to install, so that only
// slow tests ask for it.
TEST(PaperOffice, IsOpenedByAWordProcessor) {
    if (qEnvironmentVariableIsEmpty("DAWNLINE_SLOW")) {
        GTEST_SKIP() << "only with DAWNLINE_SLOW";
    }
    const engine::test::TemporaryFolder folder;
    const QString out = QString::fromStdString(folder.path().string());
    QProcess office;
    office.start(QStringLiteral("soffice"),
                 {QStringLiteral("-env:UserInstallation=file://") + out + QStringLiteral("/profile"),
                  QStringLiteral("--headless"), QStringLiteral("--convert-to"), QStringLiteral("pdf"),
                  QStringLiteral("--outdir"), out, headline().path("proposal.odt")});
    ASSERT_TRUE(office.waitForFinished(120000)) << "soffice";
    const std::string text =
        printed(QStringLiteral("pdftotext"),
                {QStringLiteral("-raw"), out + QStringLiteral("/proposal.pdf"), QStringLiteral("-")});
    const auto bare = [](const std::string& words) {
        return QString::fromStdString(words).remove(QRegularExpression(QStringLiteral("\\s")));
    };
    const PaperRun& run = headline().run;
    EXPECT_TRUE(
        bare(text).contains(bare(engine::english(engine::verdictOf(run.advice(), run.comparison().model)))))
        << text;
    for (const PaperPiece& piece : proposal(run).pieces) {
        for (const QStringList& row : piece.table.rows) {
            for (const QString& cell : row) {
                EXPECT_TRUE(
                    bare(text).contains(bare(QString(cell).remove(QLatin1String("**")).toStdString())))
                    << cell.toStdString();
            }
        }
    }
}

}  // namespace
}  // namespace widgets
