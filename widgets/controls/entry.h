#pragma once

#include "widgets/document/text_reading.h"

#include <QLineEdit>
#include <QObject>
#include <QString>
#include <QWidget>

#include <optional>

namespace widgets {

/// Who knows what the text of an Entry means.
class EntryOwner {
public:
    /// Keeps what the text means for accept(), or returns a sentence.
    virtual std::optional<QString> readText(const QString& text) = 0;
    /// Takes what was read last as the value, and returns its text.
    virtual QString accept() = 0;
    /// Takes the document's value again, and returns its text.
    virtual QString restore() = 0;

protected:
    ~EntryOwner() = default;
};

/// How typing in a field takes effect, the same for every field of the forms.
///
/// A text is taken on Enter and when the field loses the focus, never while it is being typed. One that
/// cannot be taken stays as it was typed, marked with a sentence, until it is corrected or Escape brings
/// the document's value back. While nothing is typed, the keys of undo and redo are left to the window.
class Entry final : public QObject {
    Q_OBJECT
public:
    /// @param field  Has the focus; the line edit itself, or the spin box around it.
    Entry(QWidget* field, QLineEdit* edit, EntryOwner& owner);

    /// Replaces the text; the mark goes.
    void show(const QString& text);
    /// A text is typed and not taken yet, or could not be taken.
    [[nodiscard]] bool isPending() const;
    /// Takes what is typed. @return false if it cannot be taken.
    bool commit();
    /// Says that the owner's value was changed in one go, as by an arrow.
    void step();
    /// Brings the document's value back.
    void reset();
    /// Marks the text as it stands.
    void refuse(const QString& sentence);
    /// Why the text cannot be taken; empty if it can.
    [[nodiscard]] const QString& fault() const { return m_fault; }
    [[nodiscard]] QWidget& field() const { return *m_field; }
    /// The same for changes that make one step of undo: arrow after arrow.
    [[nodiscard]] int burst() const { return m_burst; }

    bool eventFilter(QObject* watched, QEvent* event) override;

signals:
    void committed();
    void faultChanged();

private:
    bool press(int key);
    void take();
    void setFault(const QString& sentence);

    QWidget* m_field;
    QLineEdit* m_edit;
    EntryOwner& m_owner;
    QString m_shown;  ///< What the program put there itself.
    QString m_fault;
    int m_burst = 0;
};

/// A field over a value: the document's, and the one that the user has put in.
template <class T>
class EntryOf : public EntryOwner {
public:
    using Value = T;

    [[nodiscard]] const T& value() const { return m_value; }
    /// Shows the document's value. What is typed stays if that value is the one it was typed over.
    void setValue(const T& value) {
        if (value == m_document && m_entry.isPending()) {
            return;
        }
        m_document = m_value = value;
        m_entry.show(format(value));
    }
    [[nodiscard]] Entry& entry() { return m_entry; }
    [[nodiscard]] const Entry& entry() const { return m_entry; }

    std::optional<QString> readText(const QString& text) override {
        TextReading<T> reading = parse(text);
        if (!reading.fault.isEmpty()) {
            return reading.fault;
        }
        m_read = std::move(reading.value);
        return std::nullopt;
    }
    QString accept() override {
        m_value = m_read;
        return format(m_value);
    }
    QString restore() override {
        m_value = m_document;
        return format(m_value);
    }

protected:
    EntryOf(QWidget* field, QLineEdit* edit) : m_entry(field, edit, *this) {}
    ~EntryOf() = default;

    [[nodiscard]] virtual TextReading<T> parse(const QString& text) const = 0;
    [[nodiscard]] virtual QString format(const T& value) const = 0;

    /// Puts a value in as the user's, as an arrow does.
    void step(const T& value) {
        if (!(value == m_value)) {
            m_value = value;
            m_entry.show(format(value));
            m_entry.step();
        }
    }
    /// After a change of the locale.
    void showAgain() {
        if (!m_entry.isPending()) {
            m_entry.show(format(m_value));
        }
    }

private:
    Entry m_entry;
    T m_document{}, m_value{}, m_read{};
};

/// A heavy frame in ink around a field whose text cannot be taken.
void paintFaultMark(QWidget& field);

}  // namespace widgets
