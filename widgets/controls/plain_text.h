#pragma once

#include <QMessageBox>

namespace widgets {

/// A message box that takes its text as it is. Qt's own guess whether a text is HTML, so that a pond's title
/// could show pictures and links in a question of ours.
QMessageBox::StandardButton askPlainly(QWidget* parent, const QString& title, const QString& text,
                                       QMessageBox::StandardButtons buttons,
                                       QMessageBox::StandardButton usual = QMessageBox::NoButton,
                                       QMessageBox::Icon icon = QMessageBox::Question);

/// A tool tip that shows a text as it is, and folds its lines.
[[nodiscard]] QString plainTip(const QString& text);

/// The same as askPlainly() with nothing to decide.
void tellPlainly(QWidget* parent, const QString& title, const QString& text);

}  // namespace widgets
