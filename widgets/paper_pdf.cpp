#include "widgets/paper_pdf.h"

#include "engine/error.h"

#include <QBuffer>
#include <QCoreApplication>
#include <QPageLayout>
#include <QPdfWriter>
#include <qcustomplot.h>
#include <qpdf/Buffer.hh>
#include <qpdf/QPDF.hh>
#include <qpdf/QPDFPageDocumentHelper.hh>
#include <qpdf/QPDFWriter.hh>

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

QPDFObjectHandle text(const QString& words) {
    return QPDFObjectHandle::newUnicodeString(words.toStdString());
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

/// Bookmarks of two levels.
class Outline {
public:
    Outline(QPDF& pdf, double height) : m_pdf(pdf), m_height(height) {
        m_root = pdf.makeIndirectObject(QPDFObjectHandle::parse("<< /Type /Outlines >>"));
        for (const auto& page : QPDFPageDocumentHelper(pdf).getAllPages()) {
            m_pages.push_back(page.getObjectHandle());
        }
    }
    void add(const PaperPainter::Mark& mark) {
        QPDFObjectHandle parent = mark.level > 1 && m_last.isInitialized() ? m_last : m_root;
        QPDFObjectHandle item = m_pdf.makeIndirectObject(QPDFObjectHandle::newDictionary());
        item.replaceKey("/Title", text(mark.title));
        item.replaceKey("/Parent", parent);
        QPDFObjectHandle place = QPDFObjectHandle::newArray();
        place.appendItem(m_pages.at(static_cast<std::size_t>(mark.page)));
        place.appendItem(QPDFObjectHandle::newName("/XYZ"));
        place.appendItem(QPDFObjectHandle::newNull());
        place.appendItem(QPDFObjectHandle::newReal((m_height - mark.top) / kPoint, 1));
        place.appendItem(QPDFObjectHandle::newNull());
        item.replaceKey("/Dest", place);
        if (parent.hasKey("/Last")) {
            QPDFObjectHandle before = parent.getKey("/Last");
            before.replaceKey("/Next", item);
            item.replaceKey("/Prev", before);
        } else {
            parent.replaceKey("/First", item);
        }
        parent.replaceKey("/Last", item);
        const bool isTop = parent.getObjGen() == m_root.getObjGen();
        // Lower levels stay folded: their number is negative.
        const long long count = parent.hasKey("/Count") ? parent.getKey("/Count").getIntValue() : 0;
        parent.replaceKey("/Count", QPDFObjectHandle::newInteger(isTop ? count + 1 : count - 1));
        if (isTop) {
            m_last = item;
        }
    }
    [[nodiscard]] QPDFObjectHandle root() const { return m_root; }

private:
    QPDF& m_pdf;
    double m_height;
    QPDFObjectHandle m_root, m_last;
    std::vector<QPDFObjectHandle> m_pages;
};

/// Title, author, language and outline, and nothing that differs from one time to the next.
std::string finished(const QByteArray& raw, const Paper& paper, const PaperDress& dress,
                     const PaperPainter& pages, double height) {
    QPDF pdf;
    pdf.setSuppressWarnings(true);
    pdf.processMemoryFile("paper", raw.constData(), static_cast<std::size_t>(raw.size()));
    QPDFObjectHandle root = pdf.getRoot();
    root.removeKey("/Metadata");
    root.replaceKey("/Lang", QPDFObjectHandle::newString(tr("en").toStdString()));
    root.replaceKey("/ViewerPreferences", QPDFObjectHandle::parse("<< /DisplayDocTitle true >>"));
    Outline outline(pdf, height);
    const std::vector<PaperPainter::Mark> marks = pages.marks();
    for (const PaperPainter::Mark& mark : marks) {
        outline.add(mark);
    }
    if (!marks.empty()) {
        root.replaceKey("/Outlines", outline.root());
    }
    QPDFObjectHandle info = pdf.makeIndirectObject(QPDFObjectHandle::newDictionary());
    info.replaceKey(
        "/Title", text(dress.pond.isEmpty() ? paper.title : tr("%1 \u2013 %2").arg(paper.title, dress.pond)));
    if (!dress.sender.isEmpty()) {
        info.replaceKey("/Author", text(dress.sender));
    }
    info.replaceKey("/Subject", text(dress.caution));
    info.replaceKey("/Keywords", QPDFObjectHandle::newString("run " + dress.run.toStdString()));
    info.replaceKey("/Creator", text(dress.stamp));
    info.replaceKey("/CreationDate", QPDFObjectHandle::newString(pdfDate(dress.time)));
    pdf.getTrailer().replaceKey("/Info", info);
    QPDFWriter writer(pdf);
    writer.setOutputMemory();
    writer.setObjectStreamMode(qpdf_o_disable);  // so that the run's name stands in the file in plain
    writer.setDeterministicID(true);
    writer.write();
    const auto buffer = writer.getBufferSharedPointer();
    return {reinterpret_cast<const char*>(buffer->getBuffer()), buffer->getSize()};
}

}  // namespace

std::string pdfOf(const Paper& paper, const PaperDress& dress, const PaperFormat& format) {
    const PaperPainter pages(paper, dress, format, PaperLook::standard());
    return finished(painted(paper, pages, format), paper, dress, pages, format.page().height());
}

void printPapers(const std::vector<Paper>& papers, const PaperDress& dress, const PaperFormat& format,
                 QPagedPaintDevice& device) {
    QCPPainter painter;
    painter.begin(&device);
    bool isFirst = true;
    for (const Paper& paper : papers) {
        const PaperPainter pages(paper, dress, format, PaperLook::standard());
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
