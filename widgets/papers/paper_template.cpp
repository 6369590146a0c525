#include "widgets/papers/paper_template.h"

#include "engine/base/error.h"

#include <QCoreApplication>
#include <QRegularExpression>

namespace widgets {
namespace {

constexpr const char* kBlank = "__________";

const QRegularExpression& place() {
    static const QRegularExpression pattern(QStringLiteral("\\{([A-Za-z]+)\\}"));
    return pattern;
}

/// A frame whose texts are still coming.
struct OpenBox {
    bool isOpen = false;
    QString title;
    QStringList texts;

    void close(PaperFlow& flow) {
        if (isOpen) {
            flow.box(title, texts);
        }
        *this = {};
    }
};

void setLine(PaperFlow& flow, Say say, const QString& text, const PaperInserts& inserts) {
    switch (say) {
        case Say::Heading:
            return flow.heading(1, text);
        case Say::Subheading:
            return flow.heading(2, text);
        case Say::Lead:
            return flow.paragraph(text, TextStyle::Lead);
        case Say::Text:
            return flow.paragraph(text);
        case Say::Small:
            return flow.paragraph(text, TextStyle::Small);
        case Say::Bullet:
            return flow.bullets({text});
        case Say::Tick:
            return flow.ticks({text});
        case Say::Fields: {
            const QStringList labels = text.split(QLatin1Char('|'));
            return flow.fields(labels, static_cast<int>(labels.size()));
        }
        case Say::Lines:
            return flow.lines(text.toInt());
        case Say::Break:
            return flow.pageBreak();
        case Say::Insert: {
            const auto found = inserts.find(text);
            engine::ensure(found != inserts.end(), "a template inserts what its paper has");
            return found->second(flow);
        }
        case Say::BoxTitle:
        case Say::BoxText:
            break;
    }
}

}  // namespace

void PaperValues::set(const QString& name, const QString& text) {
    if (!text.isEmpty()) {
        m_values.insert(name, text);
    }
}

QString PaperValues::filled(const QString& pattern) const {
    QString text;
    qsizetype from = 0;
    for (auto it = place().globalMatch(pattern); it.hasNext();) {
        const QRegularExpressionMatch match = it.next();
        text += pattern.mid(from, match.capturedStart() - from);
        text += m_values.value(match.captured(1), QLatin1String(kBlank));
        from = match.capturedEnd();
    }
    return text + pattern.mid(from);
}

bool PaperValues::meets(const QString& needs, const QString& pattern) const {
    for (const QString& need : needs.split(QLatin1Char(' '), Qt::SkipEmptyParts)) {
        if (need == QLatin1String("all")) {
            for (auto it = place().globalMatch(pattern); it.hasNext();) {
                if (!has(it.next().captured(1))) {
                    return false;
                }
            }
        } else if (need.startsWith(QLatin1Char('!')) ? has(need.mid(1)) : !has(need)) {
            return false;
        }
    }
    return true;
}

std::vector<FilledLine> filledLines(const char* context, std::span<const TemplateLine> lines,
                                    const PaperValues& values) {
    std::vector<FilledLine> filled;
    for (const TemplateLine& line : lines) {
        const bool isWord = line.say != Say::Insert && line.say != Say::Lines && line.say != Say::Break;
        const QString pattern =
            isWord ? QCoreApplication::translate(context, line.text) : QString::fromLatin1(line.text);
        if (!values.meets(QString::fromLatin1(line.needs), pattern)) {
            continue;
        }
        QString text = isWord ? values.filled(pattern) : pattern;
        if (line.say == Say::Fields) {  // beside a label, what is not known is the empty line itself
            text.replace(QLatin1String("=") + QLatin1String(kBlank), QString());
        }
        filled.push_back({line.say, text});
    }
    return filled;
}

void setTemplate(PaperFlow& flow, const char* context, std::span<const TemplateLine> lines,
                 const PaperValues& values, const PaperInserts& inserts) {
    OpenBox box;
    for (const FilledLine& line : filledLines(context, lines, values)) {
        if (line.say == Say::BoxText) {
            box.texts << line.text;
            continue;
        }
        box.close(flow);
        if (line.say == Say::BoxTitle) {
            box.isOpen = true;
            box.title = line.text;
        } else {
            setLine(flow, line.say, line.text, inserts);
        }
    }
    box.close(flow);
}

}  // namespace widgets
