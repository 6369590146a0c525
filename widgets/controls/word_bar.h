#pragma once

#include <QTabBar>

namespace widgets {

/// Tabs as words: the places of the window, one after the other, or a small switch between the views of one.
/// Like any tab bar it is reached by Tab and gone through with the arrow keys.
class WordBar final : public QTabBar {
    Q_OBJECT
public:
    enum class Kind { Places, Switch };

    WordBar(Kind kind, const QString& name, QWidget* parent);

    [[nodiscard]] QSize sizeHint() const override;
    [[nodiscard]] QSize minimumSizeHint() const override { return sizeHint(); }

protected:
    [[nodiscard]] QSize tabSizeHint(int index) const override;
    [[nodiscard]] QSize minimumTabSizeHint(int index) const override { return tabSizeHint(index); }
    void paintEvent(QPaintEvent* event) override;
    void changeEvent(QEvent* event) override;

private:
    [[nodiscard]] QFont wordFont(bool isShown) const;
    void paintWord(QPainter& painter, int index) const;

    Kind m_kind;
};

}  // namespace widgets
