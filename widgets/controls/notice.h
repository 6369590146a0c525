#pragma once

#include <QWidget>

#include <functional>

class QLabel;
class QPushButton;

namespace widgets {

/// A line above the page that says what went wrong, or what to know, until it is closed.
class Notice final : public QWidget {
    Q_OBJECT
public:
    explicit Notice(QWidget* parent = nullptr);

    void say(const QString& sentences);
    /// The same with something that can be done about it; `act` runs when its button is pressed.
    void ask(const QString& sentences, const QString& action, std::function<void()> act);
    void clear();
    [[nodiscard]] QString text() const;

private:
    QLabel* m_text;
    QPushButton* m_action;
    std::function<void()> m_act;
};

}  // namespace widgets
