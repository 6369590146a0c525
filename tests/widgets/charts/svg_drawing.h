// A drawing by Qt's SVG writer taken apart: what was painted, in its order, with colours, pens and places.
#pragma once

#include <QColor>
#include <QFontMetricsF>
#include <QImage>
#include <QPainterPath>
#include <QRegularExpression>
#include <QTransform>
#include <QXmlStreamReader>

#include <gtest/gtest.h>

#include <algorithm>
#include <optional>
#include <vector>

namespace widgets::test {

struct DrawnText {
    QString text;
    QRectF box;         ///< What is inked [px of the sheet]
    double size = 0.0;  ///< Of its font [px]
    QColor colour;
    std::size_t over = 0;  ///< Number of shapes that were painted before
};

struct DrawnShape {
    QPainterPath path;  ///< [px of the sheet]
    std::optional<QColor> fill, stroke;
    double width = 0.0;          ///< Of the stroke [px]
    std::vector<double> dashes;  ///< In widths of the stroke
    bool isCurved = false;       ///< A circle, or a rectangle with round corners
    bool isImage = false;
};

struct SvgDrawing {
    std::vector<DrawnShape> shapes;
    std::vector<DrawnText> texts;
};

inline std::vector<double> numbersIn(const QString& text) {
    static const QRegularExpression kNumbers(QStringLiteral("[-+]?[0-9.]+(?:e[-+]?[0-9]+)?"));
    std::vector<double> numbers;
    for (auto found = kNumbers.globalMatch(text); found.hasNext();) {
        numbers.push_back(found.next().captured().toDouble());
    }
    return numbers;
}

class SvgReader {
public:
    SvgDrawing read(const QByteArray& svg) {
        QXmlStreamReader xml(svg);
        while (!xml.atEnd()) {
            xml.readNext();
            if (xml.isEndElement() && xml.name() == QLatin1String("g")) {
                m_groups.pop_back();
            } else if (xml.isStartElement() && xml.name() == QLatin1String("g")) {
                m_groups.push_back(xml.attributes());
            } else if (xml.isStartElement()) {
                take(xml);
            }
        }
        EXPECT_FALSE(xml.hasError()) << xml.errorString().toStdString();
        return std::move(m_drawing);
    }

private:
    /// An element's own attribute, or that of the nearest group that has it.
    [[nodiscard]] QString value(const QXmlStreamAttributes& own, const char* key) const {
        QString text = own.value(QLatin1String(key)).toString();
        for (auto group = m_groups.rbegin(); text.isEmpty() && group != m_groups.rend(); ++group) {
            text = group->value(QLatin1String(key)).toString();
        }
        return text;
    }

    [[nodiscard]] QTransform turn() const {
        const auto m = numbersIn(m_groups.back().value(QStringLiteral("transform")).toString());
        return m.size() == 6 ? QTransform(m[0], m[1], m[2], m[3], m[4], m[5]) : QTransform();
    }

    [[nodiscard]] std::optional<QColor> colour(const QXmlStreamAttributes& own, const char* key) const {
        const QColor named(value(own, key));
        return named.isValid() ? std::optional(named) : std::nullopt;  // "none" is no colour
    }

    void take(QXmlStreamReader& xml) {
        const QXmlStreamAttributes own = xml.attributes();
        if (xml.name() == QLatin1String("text")) {
            takeText(own, xml.readElementText());
        } else if (xml.name() == QLatin1String("polyline")) {
            QPainterPath path;
            const auto at = numbersIn(own.value(QStringLiteral("points")).toString());
            for (std::size_t i = 0; i + 1 < at.size(); i += 2) {
                i == 0 ? path.moveTo(at[i], at[i + 1]) : path.lineTo(at[i], at[i + 1]);
            }
            add(own, path);
        } else if (xml.name() == QLatin1String("path")) {
            add(own, pathOf(own.value(QStringLiteral("d")).toString()));
        } else if (xml.name() == QLatin1String("rect") || xml.name() == QLatin1String("image")) {
            const auto at = [&](const char* key) { return own.value(QLatin1String(key)).toDouble(); };
            QPainterPath path;
            path.addRect(QRectF(at("x"), at("y"), at("width"), at("height")));
            add(own, path);
            m_drawing.shapes.back().isImage = xml.name() == QLatin1String("image");
        }
    }

    void takeText(const QXmlStreamAttributes& own, const QString& text) {
        if (text.trimmed().isEmpty()) {
            return;
        }
        QFont font(value(own, "font-family"));
        const double size = value(own, "font-size").toDouble();
        font.setPixelSize(std::max(1, qRound(size)));
        font.setWeight(static_cast<QFont::Weight>(value(own, "font-weight").toInt()));
        const QPointF place(own.value(QStringLiteral("x")).toDouble(),
                            own.value(QStringLiteral("y")).toDouble());
        const QRectF ink = QFontMetricsF(font).tightBoundingRect(text).translated(place);
        m_drawing.texts.push_back({text, turn().mapRect(ink), size * turn().m22(),
                                   colour(own, "fill").value_or(QColor(Qt::black)), m_drawing.shapes.size()});
    }

    static QPainterPath pathOf(const QString& steps) {
        static const QRegularExpression kStep(QStringLiteral("([MLC])([^MLC]*)"));
        QPainterPath path;
        for (auto found = kStep.globalMatch(steps); found.hasNext();) {
            const auto step = found.next();
            const auto at = numbersIn(step.captured(2));
            if (step.captured(1) == QLatin1String("M")) {
                path.moveTo(at.at(0), at.at(1));
            } else if (step.captured(1) == QLatin1String("L")) {
                path.lineTo(at.at(0), at.at(1));
            } else {
                path.cubicTo(at.at(0), at.at(1), at.at(2), at.at(3), at.at(4), at.at(5));
            }
        }
        return path;
    }

    void add(const QXmlStreamAttributes& own, const QPainterPath& path) {
        DrawnShape shape;
        shape.path = turn().map(path);
        shape.fill = colour(own, "fill");
        shape.stroke = colour(own, "stroke");
        const double width = std::max(value(own, "stroke-width").toDouble(), 1e-6);
        shape.width = width * turn().m22();
        for (const double dash : numbersIn(value(own, "stroke-dasharray"))) {
            shape.dashes.push_back(dash / width);
        }
        for (int i = 0; i < path.elementCount(); ++i) {
            shape.isCurved = shape.isCurved || path.elementAt(i).isCurveTo();
        }
        m_drawing.shapes.push_back(std::move(shape));
    }

    std::vector<QXmlStreamAttributes> m_groups;
    SvgDrawing m_drawing;
};

inline SvgDrawing drawingOf(const QByteArray& svg) {
    return SvgReader().read(svg);
}

}  // namespace widgets::test
