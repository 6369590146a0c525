#include "widgets/charts/print_sheet.h"

#include <QPainter>
#include <QPrintDialog>
#include <QPrinter>
#include <QSvgRenderer>

namespace widgets {

void printTo(const ChartSheet& sheet, QPrinter& printer) {
    QSvgRenderer drawing(svgOf(sheet));
    printer.setPageOrientation(QPageLayout::Landscape);
    QPainter painter(&printer);
    QSizeF size = drawing.defaultSize();
    const QRectF page = printer.pageRect(QPrinter::DevicePixel);
    size.scale(page.size(), Qt::KeepAspectRatio);
    drawing.render(&painter, QRectF(QPointF((page.width() - size.width()) / 2, 0), size));
}

void askAndPrint(const ChartSheet& sheet, QWidget* parent) {
    QPrinter printer(QPrinter::HighResolution);
    printer.setDocName(sheet.name);
    QPrintDialog dialog(&printer, parent);
    if (dialog.exec() == QDialog::Accepted) {
        printTo(sheet, printer);
    }
}

}  // namespace widgets
