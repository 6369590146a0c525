#pragma once

#include <QFont>
#include <QPointF>
#include <QRectF>
#include <QString>
#include <QTextLayout>

#include <memory>

class QPainter;

namespace widgets {

/// Text with **bold** stretches laid out for a width.
class LaidText {
public:
    LaidText(const QString& marked, const QFont& font, double width, Qt::Alignment alignment = Qt::AlignLeft);

    [[nodiscard]] double height() const { return m_height; }
    [[nodiscard]] int lines() const { return m_layout->lineCount(); }
    [[nodiscard]] QRectF line(int index) const { return m_layout->lineAt(index).rect(); }
    void paint(QPainter& painter, const QPointF& at) const { m_layout->draw(&painter, at); }
    void paintLine(QPainter& painter, int index, const QPointF& at) const;

private:
    std::shared_ptr<QTextLayout> m_layout;
    double m_height = 0.0;
};

}  // namespace widgets
