#include "widgets/papers/paper_office.h"

#include "engine/base/error.h"
#include "engine/output/bundle.h"

#include <QBuffer>
#include <QHashFunctions>
#include <QTextCursor>
#include <QTextDocument>
#include <QTextDocumentWriter>
#include <QTextTable>
#include <QXmlStreamWriter>
#include <qcustomplot.h>

#include <algorithm>

namespace widgets {
namespace {

constexpr double kDotsPerPoint = 96.0 / 72.0;  // Qt takes the sizes of pictures in dots of a screen
constexpr double kFigureDots = 200.0;          // an inch of a figure
constexpr double kBodyPoints = 10.0, kSmallPoints = 8.0, kTablePoints = 8.5;
constexpr double kIndent = 12.0;  // of what follows a bullet
constexpr const char* kTick = "\u2610 ";
constexpr const char* kLine = "____________________";

double pointsOf(TextStyle style) {
    switch (style) {
        case TextStyle::Body:
            return kBodyPoints;
        case TextStyle::Lead:
            return 12.0;
        case TextStyle::Small:
            return kSmallPoints;
        case TextStyle::Large:
            return 14.0;
    }
    return kBodyPoints;
}

/// Hashes of a fixed seed for as long as it lives: Qt's writer lists its styles in the order of a hash, which
/// a random seed would change from run to run.
class SameHashes {
public:
    SameHashes() { QHashSeed::setDeterministicGlobalSeed(); }
    ~SameHashes() { QHashSeed::resetRandomGlobalSeed(); }
    SameHashes(const SameHashes&) = delete;
    SameHashes& operator=(const SameHashes&) = delete;
};

/// Writes a paper's pieces behind each other.
class OfficeWriter {
public:
    OfficeWriter(QTextDocument& document, double width)
        : m_cursor(&document), m_document(document), m_width(width) {}

    void heading(int level, const QString& text) {
        QTextBlockFormat block;
        block.setHeadingLevel(level);
        block.setTopMargin(level == 1 ? 12.0 : 8.0);
        block.setBottomMargin(3.0);
        start(block);
        write(text, level == 0 ? 19.0 : level == 1 ? 13.0 : 10.5, true);
    }

    void text(const QString& text, TextStyle style) {
        QTextBlockFormat block;
        block.setBottomMargin(4.0);
        start(block);
        write(text, pointsOf(style), false);
    }

    void list(const QStringList& texts, TextStyle style) {
        for (const QString& one : texts) {
            QTextBlockFormat block;
            block.setLeftMargin(kIndent);
            block.setTextIndent(-kIndent);
            block.setBottomMargin(2.0);
            start(block);
            write(QString::fromUtf8("\u2022\u2002") + one, pointsOf(style), false);
        }
    }

    void table(const PaperTable& table) {
        QTextTableFormat format;
        format.setBorder(0.5);
        format.setBorderStyle(QTextFrameFormat::BorderStyle_Solid);
        format.setBorderCollapse(true);
        format.setCellPadding(2.0);
        format.setCellSpacing(0.0);
        format.setHeaderRowCount(1);
        const double width = m_width / kPoint;  // Qt writes widths of tables as points
        format.setWidth(QTextLength(QTextLength::FixedLength, width));
        double shares = 0.0;
        for (const PaperTable::Column& column : table.columns) {
            shares += column.share;
        }
        QList<QTextLength> widths;
        for (const PaperTable::Column& column : table.columns) {
            // Qt writes a share into the file as a width, which a word processor takes for none.
            widths << QTextLength(QTextLength::FixedLength, width * column.share / shares);
        }
        format.setColumnWidthConstraints(widths);
        start({});
        QTextTable* grid = m_cursor.insertTable(static_cast<int>(table.rows.size()) + 1,
                                                static_cast<int>(table.columns.size()), format);
        for (std::size_t c = 0; c < table.columns.size(); ++c) {
            cell(*grid, 0, c, table, table.columns[c].title, true);
            for (std::size_t r = 0; r < table.rows.size(); ++r) {
                const bool isStrong =
                    std::find(table.strong.begin(), table.strong.end(), r) != table.strong.end();
                const QStringList& row = table.rows[r];
                cell(*grid, static_cast<int>(r) + 1, c, table, row.value(static_cast<qsizetype>(c)),
                     isStrong);
            }
        }
        m_cursor.movePosition(QTextCursor::End);
        m_isFirst = true;  // behind a table stands an empty paragraph already
    }

    void figure(const PaperFigure& figure) {
        const double scale = kFigureDots / 72.0 / kPoint;
        QImage image((QSizeF(figure.width, figure.height) * scale).toSize(), QImage::Format_RGB32);
        image.fill(Qt::white);
        {
            QCPPainter painter(&image);
            painter.setRenderHint(QPainter::Antialiasing);
            painter.scale(scale, scale);
            figure.paint(painter);
        }
        const QString name = QStringLiteral("figure-%1.png").arg(++m_figures);
        m_document.addResource(QTextDocument::ImageResource, QUrl(name), image);
        QTextImageFormat format;
        format.setName(name);
        format.setWidth(kDotsPerPoint * m_width / kPoint);
        format.setHeight(kDotsPerPoint * m_width / kPoint * figure.height / figure.width);
        start({});
        m_cursor.insertImage(format);
        text(figure.caption, TextStyle::Small);
        text(figure.words, TextStyle::Small);
    }

    /// The next piece begins a page.
    void breakPage() { m_breaks = true; }

private:
    void start(QTextBlockFormat block) {
        if (m_breaks) {
            block.setPageBreakPolicy(QTextFormat::PageBreak_AlwaysBefore);
            m_breaks = false;
        }
        if (m_isFirst) {
            m_cursor.setBlockFormat(block);
            m_isFirst = false;
        } else {
            m_cursor.insertBlock(block);
        }
    }

    /// Text with **bold** stretches.
    void write(const QString& text, double points, bool isBold) { write(m_cursor, text, points, isBold); }
    static void write(QTextCursor& cursor, const QString& text, double points, bool isBold) {
        bool isMarked = false;
        for (const QString& part : text.split(QStringLiteral("**"))) {
            QTextCharFormat format;
            format.setFontPointSize(points);
            format.setFontWeight(isBold || isMarked ? QFont::Bold : QFont::Normal);
            cursor.insertText(part, format);
            isMarked = !isMarked;
        }
    }

    void cell(QTextTable& grid, int row, std::size_t column, const PaperTable& table, const QString& text,
              bool isBold) {
        QTextCursor at = grid.cellAt(row, static_cast<int>(column)).firstCursorPosition();
        QTextBlockFormat block;
        block.setAlignment(table.columns[column].isNumber ? Qt::AlignRight : Qt::AlignLeft);
        at.setBlockFormat(block);
        write(at, text, kTablePoints, isBold);
    }

    QTextCursor m_cursor;
    QTextDocument& m_document;
    double m_width;
    int m_figures = 0;
    bool m_isFirst = true;
    bool m_breaks = false;
};

void write(OfficeWriter& writer, const PaperPiece& piece) {
    switch (piece.kind) {
        case PaperPiece::Kind::Heading:
            return writer.heading(piece.count, piece.text);
        case PaperPiece::Kind::Text:
            return writer.text(piece.text, piece.style);
        case PaperPiece::Kind::Bullet:
            return writer.list(piece.texts, piece.style);
        case PaperPiece::Kind::Tick:
            for (const QString& one : piece.texts) {
                writer.text(QString::fromUtf8(kTick) + one, piece.style);
            }
            return;
        case PaperPiece::Kind::Table:
            return writer.table(piece.table);
        case PaperPiece::Kind::Figure:
            return writer.figure(piece.figure);
        case PaperPiece::Kind::Fields:
            for (const QString& label : piece.texts) {
                const QStringList parts = label.split(QLatin1Char('='));
                writer.text(parts.front() + QLatin1String(": ") +
                                (parts.size() > 1 && !parts[1].isEmpty() ? parts[1] : QLatin1String(kLine)),
                            TextStyle::Body);
            }
            return;
        case PaperPiece::Kind::Box:
            if (!piece.text.isEmpty()) {
                writer.heading(2, piece.text);
            }
            for (const QString& one : piece.texts) {
                writer.text(one, piece.style);
            }
            return;
        case PaperPiece::Kind::Lines:
            for (int i = 0; i < piece.count; ++i) {
                writer.text(QString::fromLatin1(kLine).repeated(4), TextStyle::Body);
            }
            return;
        case PaperPiece::Kind::Break:
            return writer.breakPage();
    }
}

constexpr const char* kStylesFile = "styles.xml";
constexpr const char* kManifestFile = "META-INF/manifest.xml";

/// The size and the margins of the pages, which Qt's writer leaves out: OpenDocument 1.2, part 1
/// (2011), page layouts and master pages; paragraphs without another stand on the one named "Standard".
QByteArray stylesOf(const PaperFormat& format) {
    const QString office = QStringLiteral("urn:oasis:names:tc:opendocument:xmlns:office:1.0"),
                  style = QStringLiteral("urn:oasis:names:tc:opendocument:xmlns:style:1.0"),
                  fo = QStringLiteral("urn:oasis:names:tc:opendocument:xmlns:xsl-fo-compatible:1.0"),
                  layout = QStringLiteral("page");
    const auto points = [](double units) {
        return QString::number(units / kPoint, 'f', 2) + QLatin1String("pt");
    };
    const QSizeF page = format.page();
    const QMarginsF margins = format.margins();
    QByteArray bytes;
    QXmlStreamWriter xml(&bytes);
    xml.writeNamespace(office, QStringLiteral("office"));
    xml.writeNamespace(style, QStringLiteral("style"));
    xml.writeNamespace(fo, QStringLiteral("fo"));
    xml.writeStartDocument();
    xml.writeStartElement(office, QStringLiteral("document-styles"));
    xml.writeAttribute(office, QStringLiteral("version"), QStringLiteral("1.2"));
    xml.writeStartElement(office, QStringLiteral("automatic-styles"));
    xml.writeStartElement(style, QStringLiteral("page-layout"));
    xml.writeAttribute(style, QStringLiteral("name"), layout);
    xml.writeEmptyElement(style, QStringLiteral("page-layout-properties"));
    for (const auto& [name, units] : {std::pair("page-width", page.width()),
                                      {"page-height", page.height()},
                                      {"margin-left", margins.left()},
                                      {"margin-top", margins.top()},
                                      {"margin-right", margins.right()},
                                      {"margin-bottom", margins.bottom()}}) {
        xml.writeAttribute(fo, QLatin1String(name), points(units));
    }
    xml.writeAttribute(style, QStringLiteral("print-orientation"), QStringLiteral("portrait"));
    xml.writeEndElement();
    xml.writeEndElement();
    xml.writeStartElement(office, QStringLiteral("master-styles"));
    xml.writeEmptyElement(style, QStringLiteral("master-page"));
    xml.writeAttribute(style, QStringLiteral("name"), QStringLiteral("Standard"));
    xml.writeAttribute(style, QStringLiteral("page-layout-name"), layout);
    xml.writeEndDocument();
    return bytes;
}

/// A document as Qt has written it, with the styles of its pages, which its list of files has to name.
std::string withPages(const std::string& document, const PaperFormat& format, std::chrono::sys_seconds time) {
    const engine::BundleFiles files = engine::readBundleBytes(document, "the text");
    QString manifest = QString::fromStdString(files.text(kManifestFile).value_or(std::string()));
    const auto end = manifest.lastIndexOf(QLatin1String("</"));
    engine::ensure(end > 0, "Qt lists the files of its text");
    manifest.insert(end, QStringLiteral(" <manifest:file-entry manifest:media-type=\"text/xml\" "
                                        "manifest:full-path=\"%1\"/>\n")
                             .arg(QLatin1String(kStylesFile)));
    return engine::restamped(
        document, time,
        {{kManifestFile, manifest.toStdString()}, {kStylesFile, stylesOf(format).toStdString()}});
}

}  // namespace

std::string odtOf(const Paper& paper, const PaperImprint& imprint, const PaperFormat& format) {
    const SameHashes same;
    QTextDocument document;
    document.setDefaultFont(PaperLook::standard().font(kBodyPoints));
    document.setMetaInformation(QTextDocument::DocumentTitle, paper.title);
    OfficeWriter writer(document, format.inner().width());
    writer.heading(1, paper.title);
    writer.text(
        imprint.sender.isEmpty() ? imprint.pond : imprint.pond + QLatin1String(" \u00b7 ") + imprint.sender,
        TextStyle::Body);
    for (const PaperPiece& piece : paper.pieces) {
        write(writer, piece);
    }
    for (const QString& one : {imprint.caution, imprint.stamp, QLatin1String("Run ") + imprint.run}) {
        writer.text(one, TextStyle::Small);
    }
    QByteArray bytes;
    QBuffer buffer(&bytes);
    engine::ensure(QTextDocumentWriter(&buffer, "odf").write(&document), "a text in memory is written");
    return withPages(bytes.toStdString(), format, imprint.time);
}

}  // namespace widgets
