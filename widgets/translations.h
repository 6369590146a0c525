#pragma once

#include <QHash>
#include <QTranslator>

#include <memory>

namespace widgets {

/// A translation read from the XML that translators work on, so that no tool stands between. Numbers in texts
/// are places such as %1, so that there are no plural forms to choose from.
class TextTranslator final : public QTranslator {
    Q_OBJECT
public:
    explicit TextTranslator(QObject* parent = nullptr) : QTranslator(parent) {}

    /// @return a sentence if the text is no such file.
    [[nodiscard]] QString read(const QByteArray& xml);
    [[nodiscard]] QString translate(const char* context, const char* source, const char* disambiguation,
                                    int n) const override;
    [[nodiscard]] bool isEmpty() const override { return m_texts.isEmpty(); }
    [[nodiscard]] int count() const { return static_cast<int>(m_texts.size()); }

private:
    QHash<QByteArray, QString> m_texts;  ///< By context, a zero and the source
};

/// A language that no one speaks: every text longer, with accents and in brackets, so that a text that is not
/// translated, or has no room to grow, is seen.
class PseudoTranslator final : public QTranslator {
    Q_OBJECT
public:
    explicit PseudoTranslator(QObject* parent = nullptr) : QTranslator(parent) {}
    [[nodiscard]] QString translate(const char* context, const char* source, const char* disambiguation,
                                    int n) const override;
    [[nodiscard]] bool isEmpty() const override { return false; }
};

/// A text in that language; places such as %1 or {low}, markup and the mark of a mnemonic stay.
[[nodiscard]] QString pseudo(const QString& text);

/// Installs a language in the running program, Qt's own texts too where the system has them: its code such as
/// "de", "pseudo", or empty for the system's. Before any window is made.
/// @return false if there is no such language; English stays then.
bool installLanguage(const QString& code);

}  // namespace widgets
