#pragma once

#include "widgets/papers/paper_flow.h"

#include <QHash>
#include <QString>

#include <functional>
#include <map>
#include <span>
#include <vector>

namespace widgets {

/// What a line of a template is on paper.
enum class Say {
    Heading,
    Subheading,
    Lead,
    Text,
    Small,
    Bullet,
    Tick,
    BoxTitle,  ///< Opens a frame, which BoxText lines fill
    BoxText,
    Fields,  ///< Labels to write beside, parted by "|"; a text after "=" stands there already
    Lines,   ///< As many empty lines to write on as the number says
    Insert,  ///< A table or a figure by its name
    Break    ///< A new page
};

/// One line of a paper. Places such as {title} are filled in; one without a value becomes a blank to write
/// on.
struct TemplateLine {
    Say say = Say::Text;
    const char* text = "";
    /// Names of values that must be there, or with "!" must not, for the line to be there; "all": every place
    /// of it.
    const char* needs = "";
};

/// What stands in the places of templates; an empty text is no value.
class PaperValues {
public:
    void set(const QString& name, const QString& text);
    [[nodiscard]] QString value(const QString& name) const { return m_values.value(name); }
    [[nodiscard]] bool has(const QString& name) const { return m_values.contains(name); }

    /// A text with its places filled in.
    [[nodiscard]] QString filled(const QString& pattern) const;
    /// True if what a line needs is there.
    [[nodiscard]] bool meets(const QString& needs, const QString& pattern) const;

private:
    QHash<QString, QString> m_values;
};

/// A line of a template with its places filled in.
struct FilledLine {
    Say say = Say::Text;
    QString text;
};
/// The lines of a template that stand on a paper: each text is translated in the context first, then filled
/// in.
[[nodiscard]] std::vector<FilledLine> filledLines(const char* context, std::span<const TemplateLine> lines,
                                                  const PaperValues& values);

using PaperInserts = std::map<QString, std::function<void(PaperFlow&)>>;

/// Sets the lines of a template one below the other.
void setTemplate(PaperFlow& flow, const char* context, std::span<const TemplateLine> lines,
                 const PaperValues& values, const PaperInserts& inserts = {});

}  // namespace widgets
