#include "widgets/papers/paper_flow.h"

#include "widgets/papers/paper_text.h"

#include <qcustomplot.h>

#include <algorithm>

namespace widgets {
namespace {

constexpr double kParagraphGap = 5.0, kBulletGap = 2.5;  // [pt]

struct Type {
    double points = 9.5;
    bool isBold = false;
};

Type typeOf(TextStyle style) {
    switch (style) {
        case TextStyle::Lead:
            return {11.5, false};
        case TextStyle::Small:
            return {7.5, false};
        case TextStyle::Large:
            return {10.5, false};
        case TextStyle::Body:
            break;
    }
    return {9.5, false};
}

}  // namespace

void paintHairline(QPainter& painter, const QColor& colour, const QPointF& from, const QPointF& to) {
    painter.setPen(QPen(colour, 0.5 * kPoint, Qt::SolidLine, Qt::FlatCap));
    painter.drawLine(from, to);
}

PaperLook PaperLook::standard() {
    PaperLook look;
    // The first that the machine has; app/run sees to it that it has Lato.
    const QStringList wanted{QStringLiteral("Lato"), QStringLiteral("Liberation Sans"),
                             QStringLiteral("DejaVu Sans")};
    const QStringList there = QFontDatabase::families();
    const auto found =
        std::find_if(wanted.begin(), wanted.end(), [&](const QString& one) { return there.contains(one); });
    look.family = found == wanted.end() ? QApplication::font().family() : *found;
    look.ink = QColor(0x1b, 0x26, 0x2e);
    look.quiet = QColor(0x55, 0x60, 0x68);
    look.hairline = QColor(0xb8, 0xbd, 0xc0);
    look.tint = QColor(0xee, 0xf2, 0xf5);
    look.accent = QColor(0x0b, 0x5a, 0x8a);
    return look;
}

QFont PaperLook::font(double points, bool isBold) const {
    QFont font(family);
    font.setPixelSize(qRound(points * scale * kPoint));
    font.setBold(isBold);
    font.setHintingPreference(QFont::PreferNoHinting);
    // Letters set apart by nothing that shows: it keeps "fi" two letters, which a reader can search for.
    font.setLetterSpacing(QFont::AbsoluteSpacing, 0.1);
    return font;
}

void PaperFlow::add(PaperStrip strip) {
    strip.before += m_gap;
    strip.startsPage = m_breaks;
    m_gap = 0.0;
    m_breaks = false;
    m_strips.push_back(std::move(strip));
}

void PaperFlow::gap(double points) {
    m_gap += points * kPoint;
}

void PaperFlow::title(const QString& title, const QString& subtitle, const QStringList& sender,
                      const QImage& logo) {
    const double right = sender.isEmpty() && logo.isNull() ? 0.0 : 0.34 * m_width;
    const LaidText large(title, m_look.font(19.0, true), m_width - right);
    const LaidText under(subtitle, m_look.font(9.5), m_width - right);
    const LaidText beside(sender.join(QLatin1Char('\n')), m_look.font(8.0), right, Qt::AlignRight);
    const QSizeF mark =
        logo.isNull() ? QSizeF() : QSizeF(logo.size()).scaled(right, 40.0 * kPoint, Qt::KeepAspectRatio);
    const double left = large.height() + under.height() + 2.0 * kPoint;
    const double side =
        mark.height() + (logo.isNull() ? 0.0 : 3.0 * kPoint) + (sender.isEmpty() ? 0.0 : beside.height());
    PaperStrip strip;
    strip.height = std::max(left, side) + 7.0 * kPoint;
    strip.keepsNext = true;
    strip.outline = title;
    strip.level = 1;
    strip.paint = [=, look = m_look, width = m_width, height = strip.height](QCPPainter& painter,
                                                                             const QPointF& at) {
        painter.setPen(look.accent);
        large.paint(painter, at);
        painter.setPen(look.quiet);
        under.paint(painter, at + QPointF(0, large.height() + 2.0 * kPoint));
        if (!logo.isNull()) {
            painter.drawImage(QRectF(at + QPointF(width - mark.width(), 0), mark), logo);
        }
        beside.paint(painter,
                     at + QPointF(width - right, mark.height() + (logo.isNull() ? 0.0 : 3.0 * kPoint)));
        painter.fillRect(QRectF(at + QPointF(0, height - 1.2 * kPoint), QSizeF(width, 1.2 * kPoint)),
                         look.accent);
    };
    add(std::move(strip));
    gap(2.0);
}

void PaperFlow::heading(int level, const QString& text) {
    m_pieces.push_back({PaperPiece::Kind::Heading, text, {}, level});
    const double points = level == 1 ? 13.0 : 10.5;
    const LaidText laid(text, m_look.font(points, true), m_width);
    PaperStrip strip;
    strip.before = (level == 1 ? 15.0 : 9.0) * kPoint;
    strip.height = laid.height() + 2.0 * kPoint;
    strip.keepsNext = true;
    strip.outline = text;
    strip.level = level;
    strip.paint = [laid, colour = level == 1 ? m_look.accent : m_look.ink](QCPPainter& painter,
                                                                           const QPointF& at) {
        painter.setPen(colour);
        laid.paint(painter, at);
    };
    add(std::move(strip));
}

void PaperFlow::text(const QString& text, TextStyle style, double indent, const QString& bullet,
                     bool isTick) {
    const Type type = typeOf(style);
    const QFont font = m_look.font(type.points, type.isBold);
    const LaidText laid(text, font, m_width - indent);
    const int count = laid.lines();
    for (int i = 0; i < count; ++i) {
        const double next = i + 1 < count ? laid.line(i + 1).top() : laid.height();
        PaperStrip strip;
        strip.before = i > 0 ? 0.0 : (indent > 0.0 ? kBulletGap : kParagraphGap) * kPoint;
        strip.height = next - laid.line(i).top();
        strip.keepsNext = i + 1 < count && (i == 0 || i + 2 >= count);  // no line of it stands alone
        const QColor colour = style == TextStyle::Small ? m_look.quiet : m_look.ink;
        strip.paint = [=, look = m_look](QCPPainter& painter, const QPointF& at) {
            painter.setPen(colour);
            laid.paintLine(painter, i, at + QPointF(indent, 0));
            if (i == 0 && isTick) {
                const double side = 7.5 * kPoint;
                painter.setPen(QPen(look.quiet, 0.7 * kPoint));
                painter.setBrush(Qt::NoBrush);
                painter.drawRect(QRectF(at.x(), at.y() + 2.2 * kPoint, side, side));
            } else if (i == 0 && !bullet.isEmpty()) {
                painter.setFont(font);
                painter.drawText(at + QPointF(2.0 * kPoint, QFontMetricsF(font).ascent()), bullet);
            }
        };
        add(std::move(strip));
    }
}

void PaperFlow::paragraph(const QString& words, TextStyle style) {
    m_pieces.push_back({PaperPiece::Kind::Text, words, {}, 0, style});
    text(words, style, 0.0, {});
}

void PaperFlow::bullets(const QStringList& texts, TextStyle style) {
    m_pieces.push_back({PaperPiece::Kind::Bullet, {}, texts, 0, style});
    for (const QString& one : texts) {
        text(one, style, 11.0 * kPoint, QStringLiteral("\u2022"));
    }
}

void PaperFlow::ticks(const QStringList& texts) {
    m_pieces.push_back({PaperPiece::Kind::Tick, {}, texts});
    for (const QString& one : texts) {
        text(one, TextStyle::Body, 14.0 * kPoint, {}, true);
    }
}

void PaperFlow::pageBreak() {
    m_breaks = true;
    m_pieces.push_back({PaperPiece::Kind::Break, {}, {}});
}

void PaperFlow::figure(const PaperFigure& figure) {
    m_pieces.push_back({PaperPiece::Kind::Figure, {}, {}, 0, TextStyle::Body, {}, figure});
    const LaidText caption(figure.caption, m_look.font(8.5), m_width);
    const LaidText words(figure.words, m_look.font(7.0), m_width);
    PaperStrip strip;
    strip.before = 8.0 * kPoint;
    const double under = figure.height + 3.0 * kPoint;
    const double below = under + caption.height() + 1.5 * kPoint;
    strip.height = figure.words.isEmpty() ? under + caption.height() : below + words.height();
    strip.paint = [=, look = m_look, hasWords = !figure.words.isEmpty()](QCPPainter& painter,
                                                                         const QPointF& at) {
        painter.save();
        painter.translate(at);
        figure.paint(painter);
        painter.restore();
        painter.setPen(look.ink);
        caption.paint(painter, at + QPointF(0, under));
        if (hasWords) {
            painter.setPen(look.quiet);
            words.paint(painter, at + QPointF(0, below));
        }
    };
    add(std::move(strip));
    gap(4.0);
}

void PaperFlow::fields(const QStringList& labels, int perRow) {
    m_pieces.push_back({PaperPiece::Kind::Fields, {}, labels});
    const double column = (m_width - (perRow - 1) * 10.0 * kPoint) / perRow;
    for (qsizetype from = 0; from < labels.size(); from += perRow) {
        std::vector<std::pair<LaidText, LaidText>> cells;
        double height = 0.0, above = 0.0;
        const QFont font = m_look.font(8.0), written = m_look.font(9.5), narrow = m_look.font(7.5);
        for (qsizetype i = from; i < std::min<qsizetype>(from + perRow, labels.size()); ++i) {
            const qsizetype split = labels[i].indexOf(QLatin1Char('='));
            const QString text = split < 0 ? QString() : labels[i].mid(split + 1);
            const double inner = column - 2.0 * kPoint;
            const bool fits = QFontMetricsF(written).horizontalAdvance(text) <= inner;
            cells.emplace_back(LaidText(split < 0 ? labels[i] : labels[i].left(split), font, column),
                               LaidText(text, fits ? written : narrow, inner));
            height = std::max(height, cells.back().first.height());
            above = std::max(above, text.isEmpty() ? 0.0 : cells.back().second.height());
        }
        PaperStrip strip;
        const double foot = std::max(16.0 * kPoint, above + 1.0 * kPoint);
        strip.before = 3.0 * kPoint;
        strip.height = foot + 1.0 * kPoint + height;
        strip.keepsNext = from + perRow < labels.size();
        strip.closes = true;
        strip.paint = [=, look = m_look](QCPPainter& painter, const QPointF& at) {
            double x = at.x();
            for (const auto& [label, text] : cells) {
                const double line = at.y() + foot;
                paintHairline(painter, look.quiet, QPointF(x, line), QPointF(x + column, line));
                painter.setPen(look.quiet);
                label.paint(painter, QPointF(x, line + 1.0 * kPoint));
                painter.setPen(look.ink);
                text.paint(painter, QPointF(x + 2.0 * kPoint, line - text.height() - 0.5 * kPoint));
                x += column + 10.0 * kPoint;
            }
        };
        add(std::move(strip));
    }
}

void PaperFlow::box(const QString& title, const QStringList& texts, TextStyle style, bool closes) {
    m_pieces.push_back({PaperPiece::Kind::Box, title, texts, 0, style});
    const double inset = 7.0 * kPoint, inner = m_width - 2 * inset;
    std::vector<LaidText> laid;
    if (!title.isEmpty()) {
        laid.emplace_back(title, m_look.font(typeOf(style).points + 0.5, true), inner);
    }
    for (const QString& one : texts) {
        laid.emplace_back(one, m_look.font(typeOf(style).points), inner);
    }
    const double between = 2.5 * kPoint;
    PaperStrip strip;
    strip.before = 8.0 * kPoint;
    strip.closes = closes;
    strip.height = 2 * inset - between;
    for (const LaidText& one : laid) {
        strip.height += one.height() + between;
    }
    strip.paint = [=, look = m_look, width = m_width, height = strip.height](QCPPainter& painter,
                                                                             const QPointF& at) {
        painter.fillRect(QRectF(at, QSizeF(width, height)), look.tint);
        painter.fillRect(QRectF(at, QSizeF(2.0 * kPoint, height)), look.accent);
        painter.setPen(look.ink);
        double y = at.y() + inset;
        for (const LaidText& one : laid) {
            one.paint(painter, QPointF(at.x() + inset, y));
            y += one.height() + between;
        }
    };
    add(std::move(strip));
    gap(4.0);
}

void PaperFlow::lines(int count) {
    m_pieces.push_back({PaperPiece::Kind::Lines, {}, {}, count});
    if (!m_strips.empty()) {
        m_strips.back().keepsNext = true;
    }
    for (int i = 0; i < count; ++i) {
        PaperStrip strip;
        strip.height = 19.0 * kPoint;
        strip.keepsNext = i + 1 < count;
        strip.paint = [look = m_look, width = m_width](QCPPainter& painter, const QPointF& at) {
            const QPointF foot = at + QPointF(0, 19.0 * kPoint);
            paintHairline(painter, look.hairline, foot, foot + QPointF(width, 0));
        };
        add(std::move(strip));
    }
}

}  // namespace widgets
