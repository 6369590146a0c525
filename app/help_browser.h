#pragma once

#include <QTextBrowser>

namespace app {

/// A page of the help, as it is in the program's resources: Markdown with pictures beside it, which are shown
/// as wide as the page is read.
class HelpBrowser final : public QTextBrowser {
public:
    /// @param page  Name in the resources, such as "tutorial.md".
    explicit HelpBrowser(const QString& page, QWidget* parent = nullptr);

    [[nodiscard]] QVariant loadResource(int type, const QUrl& name) override;
};

}  // namespace app
