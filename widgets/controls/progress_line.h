#pragma once

#include <QTimer>
#include <QWidget>

class QLabel;
class QProgressBar;

namespace widgets {

/// What is being computed, how far it is, and a way to stop it. Comes after 0.3 s, since what only flickers
/// says nothing.
class ProgressLine final : public QWidget {
    Q_OBJECT
public:
    explicit ProgressLine(QWidget* parent = nullptr);

    void start(const QString& what);
    void set(double fraction);
    void finish();

signals:
    void stopped();

private:
    QLabel* m_what;
    QProgressBar* m_bar;
    QTimer m_delay;
};

}  // namespace widgets
