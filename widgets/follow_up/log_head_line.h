#pragma once

#include <QWidget>

class QLabel;
class QLineEdit;

namespace widgets {

class Document;

/// The head of a pond's log, and a field for one as it was printed: whether the log is still that of the
/// paper.
class LogHeadLine final : public QWidget {
    Q_OBJECT
public:
    /// @param document  Must outlive it.
    explicit LogHeadLine(const Document& document, QWidget* parent = nullptr);

    /// Of the log as it is now. @pre the document is not empty
    void showAnew();
    /// Without the spaces by which it is shown.
    [[nodiscard]] const QString& head() const { return m_number; }
    void clear();  ///< Forgets the printed head.

private:
    void compare();

    const Document& m_document;
    QString m_number;
    QLabel *m_head, *m_match;
    QLineEdit* m_printed;
};

}  // namespace widgets
