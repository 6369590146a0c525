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
constexpr double kPointSize = 9.5;

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

/// The sheet laid out: where its parts go.
class Layout {
public:
    explicit Layout(const ChartSheet& sheet)
        : m_sheet(sheet),
          m_style(PlotStyle::light(baseFont())),
          m_headline(sheet.headline, scaled(1.1, true), sheet.size.width() - 2 * kMargin),
          m_detail(sheet.detail, scaled(0.9, false), sheet.size.width() - 2 * kMargin),
          m_foot(sheet.foot, scaled(0.75, false), sheet.size.width() - 2 * kMargin) {}

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
    [[nodiscard]] QFont scaled(double factor, bool isBold) const {
        QFont font = m_style.font;
        font.setPointSizeF(font.pointSizeF() * factor);
        font.setBold(isBold);
        return font;
    }
    [[nodiscard]] double chartTop() const {
        return kMargin + m_headline.height() + 3 + m_detail.height() + 8;
    }

    const ChartSheet& m_sheet;
    PlotStyle m_style;
    Paragraph m_headline, m_detail, m_foot;
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
