#pragma once

#include <QDialog>
#include <QString>

class QLineEdit;
class QListWidget;
class QPlainTextEdit;

namespace widgets {

/// Help on the pond file's keys: a search over names and meanings, and what the reference says of the one
/// chosen.
class KeyHelp final : public QDialog {
    Q_OBJECT

public:
    explicit KeyHelp(QWidget* parent = nullptr);

    /// Lists the keys in whose name or text every word of `words` stands.
    void search(const QString& words);

private:
    void showCurrent();

    QLineEdit* m_words;
    QListWidget* m_keys;
    QPlainTextEdit* m_text;
};

}  // namespace widgets
