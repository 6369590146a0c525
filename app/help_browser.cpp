#include "app/help_browser.h"

#include <QFile>
#include <QImageReader>

namespace app {
namespace {

constexpr int kPictureWidth = 680;  // in the dialog that a page is opened in

QString inResources(const QString& name) {
    return QStringLiteral(":/") + name;
}

}  // namespace

HelpBrowser::HelpBrowser(const QString& page, QWidget* parent) : QTextBrowser(parent) {
    QFile file(inResources(page));
    if (file.open(QIODevice::ReadOnly)) {
        setMarkdown(QString::fromUtf8(file.readAll()));
    }
}

QVariant HelpBrowser::loadResource(int type, const QUrl& name) {
    if (type != QTextDocument::ImageResource) {
        return QTextBrowser::loadResource(type, name);
    }
    QImageReader reader(inResources(name.path()));
    reader.setScaledSize(reader.size().scaled(kPictureWidth, kPictureWidth, Qt::KeepAspectRatio));
    return reader.read();
}

}  // namespace app
