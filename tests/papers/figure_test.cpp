// Whether the pictures can still be read when they are printed 80 mm wide and grey (trade practice for charts
// in a report).
#include "tests/papers/made_papers.h"
#include "widgets/papers/paper_figures.h"

#include <QPaintDevice>
#include <QPaintEngine>
#include <qcustomplot.h>

#include <cmath>
#include <set>

namespace widgets {
namespace {

using test::headline;

constexpr double kWidth_mm = 80.0;
constexpr double kSmallest_pt = 6.0;
constexpr int kCurvePoints = 12;  ///< What has fewer is an axis, a frame or a mark

/// A stroke that a grey copy must tell from others.
struct Stroke {
    int grey = 0;   ///< 0 to 255
    int width = 0;  ///< [tenths of a unit of the drawing]
    std::vector<int> dashes;
    auto operator<=>(const Stroke&) const = default;
};

/// Takes down what is painted.
class Notes final : public QPaintEngine {
public:
    Notes() : QPaintEngine(AllFeatures) {}
    bool begin(QPaintDevice*) override { return true; }
    bool end() override { return true; }
    void updateState(const QPaintEngineState&) override {}
    void drawPixmap(const QRectF&, const QPixmap& pixmap, const QRectF&) override {
        isClear = isClear || pixmap.hasAlpha();
    }
    void drawTextItem(const QPointF&, const QTextItem& item) override {
        const QFont font = item.font();
        const double dots = font.pixelSize() > 0 ? font.pixelSize() : font.pointSizeF() * 96.0 / 72.0;
        const QTransform turn = painter()->worldTransform();
        const double points = dots * std::hypot(turn.m21(), turn.m22()) / kPoint;
        if (!item.text().trimmed().isEmpty()) {
            ++texts;
            smallest = std::min(smallest, points);
        }
    }
    void drawPath(const QPainterPath& path) override { note(path.elementCount()); }
    void drawPolygon(const QPointF*, int count, PolygonDrawMode) override { note(count); }
    void drawPolygon(const QPoint*, int count, PolygonDrawMode) override { note(count); }
    void drawLines(const QLineF*, int) override { note(2); }
    void drawLines(const QLine*, int) override { note(2); }
    void drawRects(const QRectF*, int) override { note(4); }
    void drawRects(const QRect*, int) override { note(4); }
    [[nodiscard]] Type type() const override { return User; }

    int texts = 0;
    double smallest = 1e9;  ///< Text [pt]
    bool isClear = false;   ///< Something can be seen through
    std::set<Stroke> strokes;

private:
    void note(int points) {
        const QPen pen = painter()->pen();
        const QBrush brush = painter()->brush();
        isClear = isClear || (pen.style() != Qt::NoPen && pen.color().alpha() < 255) ||
                  (brush.style() != Qt::NoBrush && brush.color().alpha() < 255) || painter()->opacity() < 1.0;
        if (pen.style() == Qt::NoPen || points < kCurvePoints || brush.style() != Qt::NoBrush) {
            return;
        }
        Stroke stroke{qGray(pen.color().rgb()), static_cast<int>(std::lround(10.0 * pen.widthF())), {}};
        for (const double dash : pen.dashPattern()) {
            stroke.dashes.push_back(static_cast<int>(std::lround(10.0 * dash)));
        }
        strokes.insert(std::move(stroke));
    }
};

/// Paper at 96 dots an inch.
class Sheet final : public QPaintDevice {
public:
    [[nodiscard]] QPaintEngine* paintEngine() const override { return &notes; }
    mutable Notes notes;

protected:
    [[nodiscard]] int metric(PaintDeviceMetric what) const override {
        switch (what) {
            case PdmDpiX:
            case PdmDpiY:
            case PdmPhysicalDpiX:
            case PdmPhysicalDpiY:
                return 96;
            case PdmDevicePixelRatio:
                return 1;
            case PdmDevicePixelRatioScaled:
                return static_cast<int>(devicePixelRatioFScale());
            case PdmDepth:
                return 32;
            default:
                return 100000;
        }
    }
};

void paintOn(Sheet& sheet, const PaperFigure& figure) {
    QCPPainter painter(&sheet);
    painter.setMode(QCPPainter::pmVectorized);
    painter.setMode(QCPPainter::pmNoCaching);
    figure.paint(painter);
}

std::vector<std::pair<const char*, PaperFigure>> narrowFigures() {
    FigureSource source = headline().run.figures();
    source.width = kWidth_mm * kMillimetre;
    return {{"night", nightFigure(source, 52.0 * kMillimetre)},
            {"lows", lowsFigure(source)},
            {"dose", doseFigure(source)},
            {"profile", profileFigure(source)},
            {"budget", budgetFigure(source)},
            {"run", wholeRunFigure(source)}};
}

TEST(PaperFigures, AreReadAtEightyMillimetres) {
    for (const auto& [name, figure] : narrowFigures()) {
        SCOPED_TRACE(name);
        EXPECT_LE(figure.width, kWidth_mm * kMillimetre + 1e-9);
        Sheet sheet;
        paintOn(sheet, figure);
        EXPECT_GT(sheet.notes.texts, 3);
        EXPECT_GE(sheet.notes.smallest, kSmallest_pt);
        EXPECT_FALSE(sheet.notes.isClear) << "something in it can be seen through";
    }
}

// A grey copy keeps lightness, dashes and widths. A tenth of the way from black to white is told apart on
// office paper, and so is the edge of a band from a curve twice as wide (our judgement).
TEST(PaperFigures, LinesOfOneNightDifferInGreyOrDash) {
    constexpr int kTellsApart = 26;
    Sheet sheet;
    paintOn(sheet, narrowFigures().front().second);
    const std::set<Stroke>& strokes = sheet.notes.strokes;
    ASSERT_GE(strokes.size(), 3U) << "the plan, the fastest ramp and do-nothing";
    for (auto one = strokes.begin(); one != strokes.end(); ++one) {
        for (auto other = std::next(one); other != strokes.end(); ++other) {
            const auto [thin, wide] = std::minmax(one->width, other->width);
            EXPECT_TRUE(one->dashes != other->dashes || std::abs(one->grey - other->grey) >= kTellsApart ||
                        wide >= 2 * thin)
                << "greys " << one->grey << " and " << other->grey << ", dashes "
                << testing::PrintToString(one->dashes) << ", widths " << one->width << " and "
                << other->width;
        }
    }
}

}  // namespace
}  // namespace widgets
