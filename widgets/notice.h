#pragma once

#include <QWidget>

class QLabel;

namespace widgets {

/// A line above the page that says what went wrong, or what to know, until it is closed.
class Notice final : public QWidget {
    Q_OBJECT
public:
    explicit Notice(QWidget* parent = nullptr);

    void say(const QString& sentences);
    void clear();
    [[nodiscard]] QString text() const;

private:
    QLabel* m_text;
};

}  // namespace widgets
