#include "widgets/papers/paper_pdf.h"

#include "widgets/papers/pdf_finish.h"

#include <QBuffer>
#include <QCoreApplication>
#include <QPageLayout>
#include <QPdfWriter>
#include <qcustomplot.h>

namespace widgets {
namespace {

QString tr(const char* text) {
    return QCoreApplication::translate("Paper", text);
}

QByteArray painted(const Paper& paper, const PaperPainter& pages, const PaperFormat& format) {
    QByteArray bytes;
    QBuffer buffer(&bytes);
    buffer.open(QIODevice::WriteOnly);
    QPdfWriter writer(&buffer);
    writer.setResolution(kPaperDots);
    writer.setPageSize(QPageSize(format.size));
    writer.setPageMargins(QMarginsF(0, 0, 0, 0));
    writer.setTitle(paper.title);
    QCPPainter painter;
    painter.begin(&writer);
    for (int page = 0; page < pages.pageCount(); ++page) {
        if (page > 0) {
            writer.newPage();
        }
        pages.paint(painter, page);
    }
    painter.end();
    return bytes;
}

std::string pdfDate(std::chrono::sys_seconds time) {
    const auto day = std::chrono::floor<std::chrono::days>(time);
    const std::chrono::year_month_day date(day);
    const std::chrono::hh_mm_ss clock(time - day);
    return QStringLiteral("D:%1%2%3%4%5%6Z")
        .arg(static_cast<int>(date.year()), 4, 10, QLatin1Char('0'))
        .arg(static_cast<unsigned>(date.month()), 2, 10, QLatin1Char('0'))
        .arg(static_cast<unsigned>(date.day()), 2, 10, QLatin1Char('0'))
        .arg(clock.hours().count(), 2, 10, QLatin1Char('0'))
        .arg(clock.minutes().count(), 2, 10, QLatin1Char('0'))
        .arg(clock.seconds().count(), 2, 10, QLatin1Char('0'))
        .toStdString();
}

/// What a paper's PDF says of itself.
PdfIdentity identityOf(const Paper& paper, const PaperImprint& imprint) {
    PdfIdentity identity;
    identity.title = imprint.pond.isEmpty() ? paper.title : tr("%1 \u2013 %2").arg(paper.title, imprint.pond);
    identity.author = imprint.sender;
    identity.subject = imprint.caution;
    identity.creator = imprint.stamp;
    identity.keywords = "run " + imprint.run.toLatin1();
    identity.language = tr("en").toLatin1();
    identity.date = QByteArray::fromStdString(pdfDate(imprint.time));
    return identity;
}

}  // namespace

std::string pdfOf(const Paper& paper, const PaperImprint& imprint, const PaperFormat& format) {
    const PaperPainter pages(paper, imprint, format, PaperLook::standard());
    std::vector<PdfMark> marks;
    for (const PaperPainter::Mark& mark : pages.marks()) {
        marks.push_back({mark.title, mark.level, mark.page, (format.page().height() - mark.top) / kPoint});
    }
    return finishedPdf(painted(paper, pages, format), identityOf(paper, imprint), marks);
}

void printPapers(const std::vector<Paper>& papers, const PaperImprint& imprint, const PaperFormat& format,
                 QPagedPaintDevice& device) {
    QCPPainter painter;
    painter.begin(&device);
    bool isFirst = true;
    for (const Paper& paper : papers) {
        const PaperPainter pages(paper, imprint, format, PaperLook::standard());
        for (int page = 0; page < pages.pageCount(); ++page) {
            if (!isFirst) {
                device.newPage();
            }
            isFirst = false;
            pages.paint(painter, page);
        }
    }
    painter.end();
}

}  // namespace widgets
