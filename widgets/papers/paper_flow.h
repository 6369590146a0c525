#pragma once

#include <QColor>
#include <QFont>
#include <QImage>
#include <QPointF>
#include <QString>
#include <QStringList>

#include <functional>
#include <memory>
#include <optional>
#include <vector>

class QCPPainter;
class QPainter;

namespace widgets {

// What a paper is laid out of. All lengths are in units of a twentieth of a point, so that the layout is the
// same on every device; a painter is scaled to it.

inline constexpr double kPoint = 20.0;
inline constexpr double kMillimetre = 72.0 / 25.4 * kPoint;
inline constexpr double kPixel = 72.0 / 96.0 * kPoint;  ///< Of a chart, at 96 dots an inch

/// Type and colours of every paper: white ground, dark ink, one accent, and nothing that greyscale loses.
struct PaperLook {
    QString family;
    QColor ink, quiet, hairline, tint, accent;
    double scale = 1.0;  ///< Of all type, for a sheet that must not pass its one page

    [[nodiscard]] static PaperLook standard();
    [[nodiscard]] QFont font(double points, bool isBold = false) const;
};

/// A line half a point wide.
void paintHairline(QPainter& painter, const QColor& colour, const QPointF& from, const QPointF& to);

/// A strip of a page that is never parted.
struct PaperStrip {
    double before = 0.0;  ///< Space above it, unless it stands first on a page
    double height = 0.0;
    bool keepsNext = false;  ///< Stands on the same page as the next strip
    bool closes = false;     ///< Ends what stands before it, and means nothing on a page without that
    bool startsPage = false;
    std::function<void(QCPPainter& painter, const QPointF& at)> paint;
    std::shared_ptr<const PaperStrip>
        head;         ///< Painted above it where it comes first on a page: a table's head
    QString outline;  ///< Heading, for the outline; empty for all else
    int level = 0;    ///< Of the heading, from 1
};

/// A strip with its place on a page.
struct PlacedStrip {
    double top = 0.0;
    const PaperStrip* strip = nullptr;
};
using PaperPage = std::vector<PlacedStrip>;

/// Sets strips on pages of a height: strips that keep the next one move on with it, unless they would not fit
/// on a page of their own either. What closes a section takes all of it along, or of a long one the strip
/// before it.
[[nodiscard]] std::vector<PaperPage> paginated(const std::vector<PaperStrip>& strips, double height);

/// The same strips with less space between them where that saves a last page that would hold little, as they
/// are where it does not.
[[nodiscard]] std::vector<PaperStrip> closedUp(std::vector<PaperStrip> strips, double height);

enum class TextStyle { Body, Lead, Small, Large };

/// A table on paper. A cell may hold **bold** text; an empty cell is a box to write in.
struct PaperTable {
    struct Column {
        QString title;
        double share = 1.0;  ///< Of the width
        bool isNumber = false;
    };
    std::vector<Column> columns;
    std::vector<QStringList> rows;
    double rowHeight = 0.0;  ///< At least; more for rows to be written in
    double points = 8.5;
    std::vector<std::size_t> strong;  ///< Rows that stand out
};

/// A drawing with its caption and its text alternative.
struct PaperFigure {
    QString caption;                                 ///< What to see
    QString words;                                   ///< The same for who cannot see it
    double width = 0.0, height = 0.0;                ///< Of the drawing [units]
    std::function<void(QCPPainter& painter)> paint;  ///< In units, from the origin
};

/// What a paper says, apart from how it is set on pages: for an office's word processor (paper_office.h).
struct PaperPiece {
    enum class Kind { Heading, Text, Bullet, Tick, Table, Figure, Fields, Box, Lines, Break };
    Kind kind{};
    QString text;       ///< Of a heading, a text, a box's title
    QStringList texts;  ///< Of a list, of fields, in a box
    int count = 0;      ///< Level of a heading; lines
    TextStyle style = TextStyle::Body;
    PaperTable table = {};
    PaperFigure figure = {};
};

/// Builds the strips of a paper from top to bottom.
class PaperFlow {
public:
    PaperFlow(PaperLook look, double width) : m_look(std::move(look)), m_width(width) {}

    /// The head of a first page: title and subtitle on the left, whose paper it is on the right.
    void title(const QString& title, const QString& subtitle, const QStringList& sender, const QImage& logo);
    void heading(int level, const QString& text);
    void paragraph(const QString& text, TextStyle style = TextStyle::Body);
    void bullets(const QStringList& texts, TextStyle style = TextStyle::Body);
    /// Squares to tick.
    void ticks(const QStringList& texts);
    void table(const PaperTable& table);
    void figure(const PaperFigure& figure);
    /// Labels with a line to write on, some in a row. A text behind "=" stands on the line already.
    void fields(const QStringList& labels, int perRow);
    /// Paragraphs in a tinted frame that is never parted. @param closes  As in PaperStrip.
    void box(const QString& title, const QStringList& texts, TextStyle style = TextStyle::Body,
             bool closes = false);
    /// Empty lines to write on, on one page with what is asked for.
    void lines(int count);
    void gap(double points);
    void pageBreak();

    [[nodiscard]] const PaperLook& look() const { return m_look; }
    [[nodiscard]] double width() const { return m_width; }
    [[nodiscard]] std::vector<PaperStrip> take() { return std::move(m_strips); }
    [[nodiscard]] std::vector<PaperPiece> takePieces() { return std::move(m_pieces); }

private:
    void add(PaperStrip strip);
    void text(const QString& text, TextStyle style, double indent, const QString& bullet,
              bool isTick = false);

    PaperLook m_look;
    double m_width;
    double m_gap = 0.0;
    bool m_breaks = false;
    std::vector<PaperStrip> m_strips;
    std::vector<PaperPiece> m_pieces;
};

}  // namespace widgets
