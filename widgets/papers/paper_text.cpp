#include "widgets/papers/paper_text.h"

#include <QPainter>
#include <QTextOption>

namespace widgets {
namespace {

constexpr double kLeading = 1.12;  // of the line's own height

}  // namespace

LaidText::LaidText(const QString& marked, const QFont& font, double width, Qt::Alignment alignment)
    : m_layout(std::make_shared<QTextLayout>()) {
    QString plain;
    QList<QTextLayout::FormatRange> ranges;
    const QStringList parts = marked.split(QStringLiteral("**"));
    for (qsizetype i = 0; i < parts.size(); ++i) {
        if (i % 2 == 1) {
            QTextLayout::FormatRange range;
            range.start = static_cast<int>(plain.size());
            range.length = static_cast<int>(parts[i].size());
            QFont bold = font;
            bold.setBold(true);
            range.format.setFont(bold);
            ranges << range;
        }
        plain += parts[i];
    }
    plain.replace(QLatin1Char('\n'), QChar::LineSeparator);
    m_layout->setText(plain);
    m_layout->setFont(font);
    m_layout->setFormats(ranges);
    m_layout->setCacheEnabled(true);
    QTextOption option(alignment);
    option.setWrapMode(QTextOption::WrapAtWordBoundaryOrAnywhere);
    m_layout->setTextOption(option);
    m_layout->beginLayout();
    for (QTextLine line = m_layout->createLine(); line.isValid(); line = m_layout->createLine()) {
        line.setLineWidth(width);
        line.setPosition(QPointF(0, m_height));
        m_height += line.height() * kLeading;
    }
    m_layout->endLayout();
    if (const int count = m_layout->lineCount(); count > 0) {  // no leading under the last line
        m_height = m_layout->lineAt(count - 1).rect().bottom();
    }
}

void LaidText::paintLine(QPainter& painter, int index, const QPointF& at) const {
    const QTextLine line = m_layout->lineAt(index);
    line.draw(&painter, at - QPointF(0, line.y()));
}

}  // namespace widgets
