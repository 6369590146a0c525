#include "widgets/papers/pdf_finish.h"

#include <qpdf/Buffer.hh>
#include <qpdf/QPDF.hh>
#include <qpdf/QPDFPageDocumentHelper.hh>
#include <qpdf/QPDFWriter.hh>

#include <set>

namespace widgets {
namespace {

QPDFObjectHandle text(const QString& words) {
    return QPDFObjectHandle::newUnicodeString(words.toStdString());
}

/// Bookmarks of two levels.
class Outline {
public:
    explicit Outline(QPDF& pdf) : m_pdf(pdf) {
        m_root = pdf.makeIndirectObject(QPDFObjectHandle::parse("<< /Type /Outlines >>"));
        for (const auto& page : QPDFPageDocumentHelper(pdf).getAllPages()) {
            m_pages.push_back(page.getObjectHandle());
        }
    }
    void add(const PdfMark& mark) {
        QPDFObjectHandle parent = mark.level > 1 && m_last.isInitialized() ? m_last : m_root;
        QPDFObjectHandle item = m_pdf.makeIndirectObject(QPDFObjectHandle::newDictionary());
        item.replaceKey("/Title", text(mark.title));
        item.replaceKey("/Parent", parent);
        QPDFObjectHandle place = QPDFObjectHandle::newArray();
        place.appendItem(m_pages.at(static_cast<std::size_t>(mark.page)));
        place.appendItem(QPDFObjectHandle::newName("/XYZ"));
        place.appendItem(QPDFObjectHandle::newNull());
        place.appendItem(QPDFObjectHandle::newReal(mark.up, 1));
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
    QPDFObjectHandle m_root, m_last;
    std::vector<QPDFObjectHandle> m_pages;
};

/// Names the subsets of fonts by their order on the pages. Qt numbers them in the order of a hash table,
/// which is another one each time a program starts.
void nameSubsets(QPDF& pdf) {
    std::set<QPDFObjGen> named;
    for (QPDFPageObjectHelper page : QPDFPageDocumentHelper(pdf).getAllPages()) {
        QPDFObjectHandle resources = page.getObjectHandle().getKey("/Resources");
        QPDFObjectHandle fonts =
            resources.isDictionary() ? resources.getKey("/Font") : QPDFObjectHandle::newNull();
        if (!fonts.isDictionary()) {
            continue;
        }
        for (const std::string& key : fonts.getKeys()) {
            QPDFObjectHandle font = fonts.getKey(key), parts = font.getKey("/DescendantFonts");
            QPDFObjectHandle own =
                parts.isArray() && parts.getArrayNItems() > 0 ? parts.getArrayItem(0) : font;
            QPDFObjectHandle descriptor = own.getKey("/FontDescriptor");
            if (!descriptor.isDictionary() || !descriptor.getKey("/FontName").isName() ||
                !named.insert(descriptor.getObjGen()).second) {
                continue;
            }
            const std::string name = descriptor.getKey("/FontName").getName();
            const std::size_t plus = name.find('+');
            if (plus != std::string::npos) {  // six capitals stand before it
                const std::size_t number = named.size() - 1;
                std::string tag = "/AAAA";
                tag += static_cast<char>('A' + number / 26 % 26);
                tag += static_cast<char>('A' + number % 26);
                descriptor.replaceKey("/FontName", QPDFObjectHandle::newName(tag + name.substr(plus)));
            }
        }
    }
}

}  // namespace

std::string finishedPdf(const QByteArray& raw, const PdfIdentity& identity,
                        const std::vector<PdfMark>& marks) {
    QPDF pdf;
    pdf.setSuppressWarnings(true);
    pdf.processMemoryFile("paper", raw.constData(), static_cast<std::size_t>(raw.size()));
    QPDFObjectHandle root = pdf.getRoot();
    root.removeKey("/Metadata");
    nameSubsets(pdf);
    root.replaceKey("/Lang", QPDFObjectHandle::newString(identity.language.toStdString()));
    root.replaceKey("/ViewerPreferences", QPDFObjectHandle::parse("<< /DisplayDocTitle true >>"));
    Outline outline(pdf);
    for (const PdfMark& mark : marks) {
        outline.add(mark);
    }
    if (!marks.empty()) {
        root.replaceKey("/Outlines", outline.root());
    }
    QPDFObjectHandle info = pdf.makeIndirectObject(QPDFObjectHandle::newDictionary());
    const auto say = [&info](const char* key, const QString& words) {
        if (!words.isEmpty()) {
            info.replaceKey(key, text(words));
        }
    };
    say("/Title", identity.title);
    say("/Author", identity.author);
    say("/Subject", identity.subject);
    say("/Creator", identity.creator);
    info.replaceKey("/Keywords", QPDFObjectHandle::newString(identity.keywords.toStdString()));
    info.replaceKey("/CreationDate", QPDFObjectHandle::newString(identity.date.toStdString()));
    pdf.getTrailer().replaceKey("/Info", info);
    QPDFWriter writer(pdf);
    writer.setOutputMemory();
    writer.setObjectStreamMode(qpdf_o_disable);  // so that the keywords stand in the file in plain
    writer.setDeterministicID(true);
    writer.write();
    const auto buffer = writer.getBufferSharedPointer();
    return {reinterpret_cast<const char*>(buffer->getBuffer()), buffer->getSize()};
}

}  // namespace widgets
