#pragma once

#include "widgets/document/document.h"
#include "widgets/document/outcome.h"

#include <QWidget>

namespace widgets {

class Selection;
struct PlotStyle;

/// The runs of the selected ramp hour by day, to be drawn and dragged: the end of a block changes the minutes
/// of its day, a block moved sideways the hour at which the ramp starts. What is drawn makes the ramp a
/// table. The dose that a day came to stands beside its minutes. One drag is one step of undo.
///
/// Up and Down go from day to day, Left and Right change the minutes by ten, with Shift by one and with Ctrl
/// by an hour; Delete makes a day without air.
class ScheduleGrid final : public QWidget {
    Q_OBJECT
public:
    ScheduleGrid(Document& document, Selection& selection, QWidget* parent = nullptr);

    void setOutcome(const OutcomePtr& outcome);
    /// Where a moment of a day stands [px]. @param day  1 is the first. @param minute  After midnight.
    [[nodiscard]] QPointF placeOf(int day, double minute) const;
    [[nodiscard]] int day() const { return m_day; }

signals:
    void refused(const QString& sentence);

protected:
    void paintEvent(QPaintEvent* event) override;
    void mousePressEvent(QMouseEvent* event) override;
    void mouseMoveEvent(QMouseEvent* event) override;
    void mouseReleaseEvent(QMouseEvent* event) override;
    void keyPressEvent(QKeyEvent* event) override;

private:
    enum class Drag { None, End, Whole };

    [[nodiscard]] const engine::Ramp* ramp() const;
    [[nodiscard]] const engine::RampRun* run() const;
    [[nodiscard]] int days() const;
    [[nodiscard]] QRectF area() const;
    [[nodiscard]] double rowHeight() const { return area().height() / days(); }  // [px]
    void paintNights(QPainter& painter, const PlotStyle& style) const;
    void paintRules(QPainter& painter, const PlotStyle& style) const;
    void paintRuns(QPainter& painter, const engine::Ramp& shown, const PlotStyle& style) const;
    void paintDays(QPainter& painter, const PlotStyle& style) const;
    [[nodiscard]] int minutesOf(int day) const;
    [[nodiscard]] int startMinute() const;
    [[nodiscard]] QString dayText(int day) const;
    void setMinutes(int day, int minutes);
    void setStart(int minute);
    void edit(const std::function<void(engine::Ramp&)>& change);
    void describe();

    Document& m_document;
    Selection& m_selection;
    OutcomePtr m_outcome;
    Drag m_drag = Drag::None;
    int m_day = 1;
    int m_burst = 0;         ///< Counts drags, so that each is one step
    double m_grabbed = 0.0;  ///< Minutes between the block's start and the hand
};

}  // namespace widgets
