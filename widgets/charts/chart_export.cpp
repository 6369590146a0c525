#include "widgets/charts/chart_export.h"

#include "engine/base/durable.h"
#include "widgets/document/to_qstring.h"

#include <QApplication>
#include <QBuffer>
#include <QImageWriter>
#include <QMimeData>
#include <QPainter>
#include <QSvgGenerator>
#include <QTextLayout>
#include <qcustomplot.h>

#include <cmath>

namespace widgets {
namespace {

constexpr double kDotsPerInch = 300.0;
constexpr double kLogicalDotsPerInch = 96.0;
constexpr double kMargin = 14.0;
// Where a sheet of 600 px is printed 80 mm wide, as in a column, 5.04 pt of it are left. 5 pt are a common
// floor of print (judgement), so that nothing on a sheet is smaller than its labels.
constexpr double kPointSize = 10.0;

/// A paragraph of text laid out for a width.
class Paragraph {
public:
    Paragraph(const QString& text, const QFont& font, double width) : m_layout(text, font) {
        m_layout.setCacheEnabled(true);
        m_layout.beginLayout();
        for (QTextLine line = m_layout.createLine(); line.isValid(); line = m_layout.createLine()) {
            line.setLineWidth(width);
            line.setPosition(QPointF(0, m_height));
            m_height += line.height();
        }
        m_layout.endLayout();
    }
    [[nodiscard]] double height() const { return m_layout.text().isEmpty() ? 0.0 : m_height; }
    void paint(QPainter& painter, const QPointF& at) const { m_layout.draw(&painter, at); }

private:
    QTextLayout m_layout;
    double m_height = 0.0;
};

/// Lines with their names, in rows.
class Key {
public:
    Key(const std::vector<KeyLine>& lines, const PlotStyle& style, double width) : m_style(style) {
        QPointF at;
        for (const KeyLine& line : lines) {
            const QFontMetricsF metrics(fontOf(line));
            const QString name = metrics.elidedText(line.name, Qt::ElideRight, width - kSample);
            const double room = kSample + metrics.horizontalAdvance(name);
            if (at.x() > 0.0 && at.x() + room > width) {
                at = QPointF(0, at.y() + metrics.height());
            }
            m_entries.push_back({line, name, at});
            m_height = at.y() + metrics.height();
            at.rx() += room + kBetween;
        }
    }
    [[nodiscard]] double height() const { return m_entries.empty() ? 0.0 : m_height + kUnder; }
    void paint(QCPPainter& painter, const QPointF& from) const {
        for (const Entry& entry : m_entries) {
            const QFontMetricsF metrics(fontOf(entry.line));
            const QPointF at = from + entry.at;
            const double middle = at.y() + metrics.height() / 2;
            painter.setPen(m_style.linePen(entry.line.look, entry.line.isHeavy));
            painter.drawLine(QPointF(at.x(), middle), QPointF(at.x() + kSample - 6.0, middle));
            painter.setFont(fontOf(entry.line));
            painter.setPen(m_style.ink);
            painter.drawText(at + QPointF(kSample, metrics.ascent()), entry.name);
        }
    }

private:
    static constexpr double kSample = 46.0, kBetween = 18.0, kUnder = 6.0;  // [px]
    struct Entry {
        KeyLine line;
        QString name;
        QPointF at;
    };
    [[nodiscard]] QFont fontOf(const KeyLine& line) const {
        QFont font = m_style.font;
        font.setBold(line.isHeavy);
        return font;
    }

    const PlotStyle& m_style;
    std::vector<Entry> m_entries;
    double m_height = 0.0;
};

/// The sheet laid out: where its parts go.
class Layout {
public:
    explicit Layout(const ChartSheet& sheet)
        : m_sheet(sheet),
          m_style(sheetStyle()),
          m_headline(sheet.headline, headlineFont(), sheet.size.width() - 2 * kMargin),
          m_detail(sheet.detail, m_style.font, sheet.size.width() - 2 * kMargin),
          m_foot(sheet.foot, m_style.font, sheet.size.width() - 2 * kMargin),
          m_key(sheet.key, m_style, sheet.size.width() - 2 * kMargin) {}

    [[nodiscard]] QSize size() const {
        return {m_sheet.size.width(),
                static_cast<int>(std::ceil(chartTop() + m_sheet.size.height() + m_foot.height() + kMargin))};
    }

    void paint(QCPPainter& painter) const {
        painter.fillRect(QRectF(QPointF(0, 0), QSizeF(size())), m_style.paper);
        painter.setPen(m_style.ink);
        m_headline.paint(painter, QPointF(kMargin, kMargin));
        painter.setPen(m_style.quietInk);
        m_detail.paint(painter, QPointF(kMargin, kMargin + m_headline.height() + 3));
        m_key.paint(painter, QPointF(kMargin, chartTop() - m_key.height()));
        painter.setPen(m_style.quietInk);
        m_foot.paint(painter, QPointF(kMargin, chartTop() + m_sheet.size.height() + 2));
        QCustomPlot plot;
        plot.setFont(m_style.font);
        plot.setViewport(QRect(QPoint(0, 0), m_sheet.size));
        m_sheet.draw(plot, m_style);
        painter.translate(kMargin / 2, chartTop());
        plot.toPainter(&painter, m_sheet.size.width() - static_cast<int>(kMargin), m_sheet.size.height());
    }

private:
    static QFont baseFont() {
        QFont font = QApplication::font();
        font.setPointSizeF(kPointSize);
        return font;
    }
    static PlotStyle sheetStyle() {
        PlotStyle style = PlotStyle::light(baseFont());
        style.small = style.font;
        return style;
    }
    static QFont headlineFont() {
        QFont font = baseFont();
        font.setPointSizeF(1.1 * kPointSize);
        font.setBold(true);
        return font;
    }
    [[nodiscard]] double chartTop() const {
        return kMargin + m_headline.height() + 3 + m_detail.height() + 8 + m_key.height();
    }

    const ChartSheet& m_sheet;
    PlotStyle m_style;
    Paragraph m_headline, m_detail, m_foot;
    Key m_key;
};

}  // namespace

QImage imageOf(const ChartSheet& sheet) {
    const Layout layout(sheet);
    const double scale = kDotsPerInch / kLogicalDotsPerInch;
    const QSize size = layout.size();
    QImage image(qRound(size.width() * scale), qRound(size.height() * scale), QImage::Format_RGB32);
    // Fonts follow the screen's dots an inch while painting; the scale takes them to paper.
    QCPPainter painter;
    painter.begin(&image);
    painter.setRenderHint(QPainter::TextAntialiasing);
    painter.scale(scale, scale);
    layout.paint(painter);
    painter.end();
    image.setDotsPerMeterX(qRound(kDotsPerInch / 0.0254));
    image.setDotsPerMeterY(qRound(kDotsPerInch / 0.0254));
    image.setText(QStringLiteral("Description"), sheet.words);
    return image;
}

QByteArray pngOf(const ChartSheet& sheet) {
    return pngOf(imageOf(sheet));
}

QByteArray pngOf(const QImage& image) {
    QByteArray bytes;
    QBuffer buffer(&bytes);
    buffer.open(QIODevice::WriteOnly);
    QImageWriter(&buffer, "png").write(image);
    return bytes;
}

QByteArray svgOf(const ChartSheet& sheet) {
    const Layout layout(sheet);
    QByteArray bytes;
    QBuffer buffer(&bytes);
    buffer.open(QIODevice::WriteOnly);
    QSvgGenerator generator;
    generator.setOutputDevice(&buffer);
    generator.setSize(layout.size());
    generator.setViewBox(QRect(QPoint(0, 0), layout.size()));
    generator.setResolution(static_cast<int>(kLogicalDotsPerInch));
    generator.setTitle(sheet.headline);
    generator.setDescription(sheet.words);
    QCPPainter painter;
    painter.begin(&generator);
    painter.setMode(QCPPainter::pmVectorized);
    painter.setMode(QCPPainter::pmNoCaching);
    layout.paint(painter);
    painter.end();
    return bytes;
}

std::optional<QString> saveSheet(const ChartSheet& sheet, const std::filesystem::path& path) {
    const QString ending = toQString(path.extension().string()).toLower();
    std::optional<std::string> bytes;
    if (ending == QLatin1String(".png")) {
        bytes = pngOf(sheet).toStdString();
    } else if (ending == QLatin1String(".svg")) {
        bytes = svgOf(sheet).toStdString();
    } else if (ending == QLatin1String(".csv")) {
        bytes = sheet.csv;
    } else {
        return QCoreApplication::translate(
                   "ChartExport", "The file \"%1\" was not saved: its name must end in .png, .svg or .csv.")
            .arg(toQString(path.string()));
    }
    const auto fault = engine::saveDurably(path, *bytes, engine::OldFile::Replaced);
    return fault ? std::optional(toQString(*fault)) : std::nullopt;
}

QMimeData* clippingOf(const ChartSheet& sheet) {
    auto* clipping = new QMimeData;
    clipping->setImageData(imageOf(sheet));
    clipping->setData(QStringLiteral("image/svg+xml"), svgOf(sheet));
    clipping->setText(sheet.words);
    return clipping;
}

}  // namespace widgets
