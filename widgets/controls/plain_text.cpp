#include "widgets/controls/plain_text.h"

namespace widgets {

QMessageBox::StandardButton askPlainly(QWidget* parent, const QString& title, const QString& text,
                                       QMessageBox::StandardButtons buttons,
                                       QMessageBox::StandardButton usual, QMessageBox::Icon icon) {
    QMessageBox box(icon, title, text, buttons, parent);
    box.setTextFormat(Qt::PlainText);
    box.setDefaultButton(usual);
    return static_cast<QMessageBox::StandardButton>(box.exec());
}

QString plainTip(const QString& text) {
    return text.isEmpty() ? QString()
                          : QStringLiteral("<qt>%1</qt>")
                                .arg(text.toHtmlEscaped().replace(u'\n', QLatin1String("<br>")));
}

void tellPlainly(QWidget* parent, const QString& title, const QString& text) {
    askPlainly(parent, title, text, QMessageBox::Ok, QMessageBox::Ok, QMessageBox::Information);
}

}  // namespace widgets
