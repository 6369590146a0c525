#pragma once

#include "widgets/papers/paper_flow.h"

#include <QImage>
#include <QMarginsF>
#include <QPageSize>

#include <chrono>

namespace widgets {

/// A sheet of paper and its margins.
struct PaperFormat {
    QPageSize::PageSizeId size = QPageSize::A4;

    [[nodiscard]] QSizeF page() const;        ///< [units]
    [[nodiscard]] QMarginsF margins() const;  ///< With head and foot [units]
    [[nodiscard]] QSizeF inner() const;       ///< Between them [units]
};

/// What every page of every paper of one run bears.
struct PaperImprint {
    QString sender;   ///< Whose paper it is; empty if the profile does not say
    QString pond;     ///< Its title
    QString caution;  ///< The two that stand on each page
    QString run;      ///< Name of the run
    QString stamp;    ///< Version, time, seed, members, nights
    std::chrono::sys_seconds time;
};

/// One paper, ready to be set on pages.
struct Paper {
    QString file;   ///< Name without an ending
    QString title;  ///< As it stands on it
    std::vector<PaperStrip> strips;
    std::vector<PaperPiece> pieces = {};  ///< The same, but for the head of its first page
};

/// Paints papers page by page, on a device of 96 dots an inch: charts keep their type in points.
class PaperPainter {
public:
    PaperPainter(const Paper& paper, const PaperImprint& imprint, const PaperFormat& format, PaperLook look);

    [[nodiscard]] int pageCount() const { return static_cast<int>(m_pages.size()); }
    void paint(QCPPainter& painter, int page) const;

    /// A heading with its page (from 0) and its height on it from the top edge [units].
    struct Mark {
        QString title;
        int level = 1;
        int page = 0;
        double top = 0.0;
    };
    [[nodiscard]] std::vector<Mark> marks() const;

private:
    const Paper& m_paper;
    const PaperImprint& m_imprint;
    PaperFormat m_format;
    PaperLook m_look;
    std::vector<PaperPage> m_pages;
};

}  // namespace widgets
