#pragma once

#include <QByteArray>
#include <QString>

#include <string>
#include <vector>

namespace widgets {

/// What a PDF says of itself. Empty texts are left out.
struct PdfIdentity {
    QString title, author, subject, creator;
    QByteArray keywords;  ///< Plain letters, which stand in the file as they are
    QByteArray language;  ///< "en"
    QByteArray date;      ///< "D:20260614090000Z"
};

/// A bookmark.
struct PdfMark {
    QString title;
    int level = 1;    ///< 1 or 2
    int page = 0;     ///< From 0
    double up = 0.0;  ///< Above the lower edge of the page [pt]
};

/// Gives a PDF title, author, language and outline, and takes away what differs from one time to the next:
/// the same input gives the same bytes.
///
/// Its source is compiled as C++17, since Clang 14 cannot read qpdf's headers as C++20.
[[nodiscard]] std::string finishedPdf(const QByteArray& raw, const PdfIdentity& identity,
                                      const std::vector<PdfMark>& marks);

}  // namespace widgets
